//! The program `tureen`: everything is in the library.

fn main() -> std::process::ExitCode {
    tureen::cli::run()
}
