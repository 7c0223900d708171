plugins {
    id("com.android.application")
}

android {
    namespace = "org.fourcourse.app"
    compileSdk = 36

    defaultConfig {
        applicationId = "org.fourcourse.app"
        minSdk = 27
        targetSdk = 36
        versionCode = 1
        versionName = "0.1.0"
    }
}

// Rust first: cargo-ndk builds the library into src/main/jniLibs, where the plugin picks it up.
val cargoNdk by tasks.registering(Exec::class) {
    workingDir = rootDir.parentFile
    // Slint's build script compiles one Java file against this jar. cargo-ndk sets ANDROID_PLATFORM for its own use,
    // which would send the script to another SDK level, so the jar is named outright.
    environment("ANDROID_JAR", androidComponents.sdkComponents.bootClasspath.get().first().asFile.path)
    commandLine(
        "cargo", "ndk", "--platform", "27",
        "--target", "arm64-v8a", "--target", "x86_64",
        "--output-dir", "android/app/src/main/jniLibs",
        "rustc", "--release", "--lib", "--crate-type", "cdylib",
    )
}

tasks.named("preBuild") { dependsOn(cargoNdk) }
