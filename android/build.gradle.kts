// Gradle has not been run on this project yet (see README.md): the version is the one to start from, not one that was tried.
plugins {
    id("com.android.application") version "8.13.0" apply false
}
