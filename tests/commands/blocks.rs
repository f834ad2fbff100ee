//! `breeks blocks`.

use super::dialogue::Folder;

#[test]
fn recipes_in_a_list() {
    let run = Folder::new("blocks").run(&["blocks"]);
    assert_eq!((run.code, run.err.as_str()), (0, ""));
    run.snapshot("command_blocks");
}

#[test]
fn recipe_as_a_handbook_prints_it() {
    let run = Folder::new("blocks_classic").run(&["blocks", "classic"]);
    assert_eq!((run.code, run.err.as_str()), (0, ""));
    run.snapshot("command_blocks_classic");
}

#[test]
fn unknown_recipe_refused() {
    let run = Folder::new("blocks_unknown").run(&["blocks", "clasic"]);
    run.assert_refused(&[]);
    run.snapshot("command_blocks_unknown");
}
