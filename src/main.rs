//! The command line of breeks; everything is in the library.

fn main() -> std::process::ExitCode {
    breeks::command::run()
}
