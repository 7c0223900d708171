//! Compiles the interface in `ui/`, where the `app` feature asks for one.

fn main() {
    #[cfg(feature = "app")]
    interface();
}

#[cfg(feature = "app")]
fn interface() {
    // Debug info lets the tests of the interface find elements by their accessible label.
    let config = slint_build::CompilerConfiguration::new()
        .with_style("fluent".into())
        .with_debug_info(std::env::var("PROFILE").is_ok_and(|profile| profile == "debug"));
    if let Err(error) = slint_build::compile_with_config("ui/app.slint", config) {
        println!("cargo::error={error}");
        std::process::exit(1);
    }
}
