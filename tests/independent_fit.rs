//! The measured fit against SciPy's bounded least squares: `tests/measured_fit/independent.py` fits twenty invented bodies
//! again through `breeks batch`, with a cost of its own.

mod tool;

use std::process::Command;

#[test]
fn cost_of_twenty_fits_no_more_than_that_of_another_optimiser() {
    if !tool::python_has("scipy.optimize") {
        return tool::missing("Python has no SciPy; `BREEKS_PYTHON` names one that has");
    }
    let script = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/measured_fit/independent.py");
    let run = Command::new(tool::python()).args([script, env!("CARGO_BIN_EXE_breeks")]).output();
    let run = run.expect("it runs");
    print!("{}", String::from_utf8_lossy(&run.stdout));
    assert!(run.status.success(), "{}", String::from_utf8_lossy(&run.stderr));
}
