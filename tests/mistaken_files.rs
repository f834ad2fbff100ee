//! Mistaken and hostile files and options: each ends with exit 2, says where and what to do, and writes nothing.
#![allow(clippy::unwrap_used, reason = "a folder that cannot be written fails the test")]

#[cfg(unix)]
mod anybody;

use std::{
    fs,
    path::{Path, PathBuf},
    process::{Command, Output},
};

#[cfg(unix)]
use anybody::Anybody;

/// A folder of its own for one dialogue, gone afterwards.
struct Folder(PathBuf);

impl Folder {
    fn new(name: &str) -> Self {
        let path = std::env::temp_dir().join(format!("breeks-mistaken-{name}-{}", std::process::id()));
        let _ = fs::remove_dir_all(&path);
        fs::create_dir_all(&path).unwrap();
        Self(path)
    }

    fn write(&self, name: &str, bytes: impl AsRef<[u8]>) {
        fs::write(self.0.join(name), bytes).unwrap();
    }

    /// Drafts what stands in `body.toml`, with options.
    fn draft(&self, mut program: Command, options: &[&str]) -> Output {
        program
            .current_dir(&self.0)
            .args(["draft", "body.toml", "--out", "out"])
            .args(options)
            .output()
            .unwrap()
    }

    fn names(&self) -> Vec<String> {
        let names =
            fs::read_dir(&self.0).unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap());
        let mut names: Vec<String> = names.collect();
        names.sort();
        names
    }
}

impl Drop for Folder {
    fn drop(&mut self) {
        let _ = fs::remove_dir_all(&self.0);
    }
}

/// Runs a dialogue that must be refused and compares what was said with the snapshot of that name.
#[track_caller]
fn refused(name: &str, folder: &Folder, options: &[&str]) {
    refused_to(Command::new(env!("CARGO_BIN_EXE_breeks")), name, folder, options);
}

#[track_caller]
fn refused_to(program: Command, name: &str, folder: &Folder, options: &[&str]) {
    let before = folder.names();
    let output = folder.draft(program, options);
    let said = String::from_utf8(output.stderr).unwrap();
    assert_eq!(output.status.code(), Some(2), "{name}: {said}");
    assert!(output.stdout.is_empty(), "{name}");
    assert_eq!(folder.names(), before, "{name}: something was written");
    for line in said.lines() {
        assert!(line.chars().count() <= 160, "{name}: a line of {} columns", line.chars().count());
    }
    let mut settings = insta::Settings::clone_current();
    settings.set_snapshot_path(concat!(env!("CARGO_MANIFEST_DIR"), "/snapshots"));
    settings.set_prepend_module_to_snapshot(false);
    settings.set_omit_expression(true);
    settings.bind(|| insta::assert_snapshot!(format!("mistaken_{name}"), said));
}

#[track_caller]
fn text(name: &str, text: impl AsRef<[u8]>) {
    let folder = Folder::new(name);
    folder.write("body.toml", text);
    refused(name, &folder, &[]);
}

/// A sound body, to put one mistake into.
const SOUND: &str = "\
sex = \"female\"
[measurements]
waist_girth = 74.0
hip_girth = 101.5
inside_leg = 79.0
";

fn with(more: &str) -> String {
    format!("{SOUND}{more}\n")
}

#[test]
fn misspelt_key() {
    text("misspelt_key", SOUND.replace("hip_girth", "hip_grith"));
}

#[test]
fn misspelt_table() {
    text("misspelt_table", SOUND.replace("measurements", "measurement"));
}

#[test]
fn key_in_the_wrong_table() {
    text("key_in_the_wrong_table", "hip_girth = 101.5\n[trousers]\nknee_width = 22\n");
}

#[test]
fn table_that_is_a_value() {
    text("table_that_is_a_value", "measurements = 3\n");
}

#[test]
fn many_at_once_from_top_to_bottom() {
    text(
        "many_at_once",
        "sex = \"femal\"\n[measurements]\nhip_grith = 101\nwaist_girth = nan\ninside_leg = \"38 1/0\"\n\
         [thigh]\nfrotn = 1.9\nfront = 9\n[trousers]\nset = \"clen\"\n",
    );
}

#[test]
fn inches_in_a_file_of_centimetres() {
    text("inches_for_cm", "[measurements]\nwaist_girth = 29\nhip_girth = 40\ninside_leg = 31\n");
}

#[test]
fn centimetres_in_a_file_of_inches() {
    text(
        "cm_for_inches",
        "units = \"inch\"\n[measurements]\nwaist_girth = 74\nhip_girth = 101.5\ninside_leg = 79\n",
    );
}

#[test]
fn millimetres() {
    text("millimetres", SOUND.replace("101.5", "1015").replace("79.0", "\"790 mm\""));
}

#[test]
fn decimal_comma() {
    text("decimal_comma", SOUND.replace("101.5", "\"1,015\""));
}

#[test]
fn fraction_without_quotation_marks() {
    text("bare_fraction", SOUND.replace("101.5", "39 1/2"));
}

#[test]
fn fraction_over_nothing() {
    text("fraction_over_nothing", SOUND.replace("79.0", "\"38 1/0\""));
}

#[test]
fn no_number() {
    text("nan", SOUND.replace("74.0", "nan"));
}

#[test]
fn number_without_end() {
    text("inf", SOUND.replace("74.0", "-inf"));
}

#[test]
fn number_beyond_all_bodies() {
    text("1e308", with("stature = 1e308\nbody_rise = 1e999\nknee_height = 99999999999999999999"));
}

#[test]
fn number_as_text_and_text_as_number() {
    text("wrong_types", "name = 3\nsex = true\nunits = [\"cm\"]\n[measurements]\nhip_girth = \"wide\"\n");
}

#[test]
fn blank_value() {
    text("blank_value", SOUND.replace("74.0", "\"\""));
}

#[test]
fn nothing_measured() {
    text("nothing_measured", "");
}

#[test]
fn worn_waist_without_its_rise() {
    text("worn_without_rise", format!("waist_level = \"worn\"\n{SOUND}"));
}

#[test]
fn two_measurements_of_no_body() {
    text("no_body", with("thigh_girth = 40\nwaist_height = 84"));
}

#[test]
fn crotch_length_shorter_than_twice_the_rise() {
    text("short_crotch", with("body_rise = 30\ntotal_crotch_length = 60"));
}

#[test]
fn sum_that_does_not_close() {
    text("open_sum", with("body_rise = 27\nwaist_height = 115"));
}

#[test]
fn key_given_twice() {
    text("twice", with("hip_girth = 102"));
}

#[test]
fn quotation_mark_not_closed() {
    text("open_quote", "name = \"stroke\n[measurements\nhip_girth = = 3\n");
}

#[test]
fn nested_without_end() {
    text("nested", format!("name = {}", "[".repeat(50_000)));
}

#[test]
fn tables_nested_without_end() {
    text("nested_tables", format!("{} = 1\n", vec!["left"; 20_000].join(".")));
}

#[test]
fn one_line_of_a_quarter_megabyte() {
    text("long_line", format!("# {}\nname = \"{}\"\n", "x".repeat(100), "y".repeat(200_000)));
}

#[test]
fn thousands_of_unknown_keys() {
    let keys: String = (0..5000).map(|n| format!("key_{n} = {n}\n")).collect();
    text("many_unknown", keys);
}

#[test]
fn thirty_megabytes_of_junk() {
    text("junk", vec![b'x'; 30_000_000]);
}

#[test]
fn binary() {
    text("binary", [b"PK\x03\x04".as_slice(), &[0, 159, 146, 150, 255, 0]].concat());
}

#[test]
fn other_encoding() {
    text("utf16", [0xff, 0xfe].into_iter().chain(SOUND.bytes().flat_map(|b| [b, 0])).collect::<Vec<u8>>());
}

#[test]
fn characters_that_hide_and_turn() {
    text(
        "hidden_characters",
        "name = \"a\u{202e}b\"\nse\u{200b}x = \"female\"\n\u{1b}[31m = 1\nunits = \"\u{7}\u{2066}cm\"\n",
    );
}

#[test]
fn first_mark_and_dos_line_ends_before_the_mistake() {
    text(
        "bom_crlf",
        format!("\u{feff}{}", with("hip_hight = 86").replace("sex", "sxe").replace('\n', "\r\n")),
    );
}

#[test]
fn whole_body_under_one_leg() {
    text(
        "left_and_right",
        with(
            "[left.measurements]\nhip_girth = 100\n[right.seat]\nlength = 1\n[hip]\nuneven = 1\n[left]\nthigh = 3",
        ),
    );
}

#[test]
fn parameters_out_of_bounds() {
    text("out_of_bounds", with("[thigh]\nfront = 4.1\n[seat]\nangle = \"2\"\n[leg]\nclose = -9"));
}

#[test]
fn record_of_a_toile_gone_wrong() {
    text(
        "fitting",
        with(
            "[[fitting]]\ndate = 2025-11-20\nsen = \"x\"\nseen = 3\nchanged = { \"thigh.frnt\" = 1 }\n[fitting.changed2]",
        ),
    );
}

#[test]
fn unknown_block() {
    text("unknown_block", with("[trousers]\nblock = \"clasic\""));
}

#[test]
fn block_that_is_a_file_of_the_system() {
    if Path::new("/etc/passwd").exists() {
        text("block_of_the_system", with("[trousers]\nblock = \"../../../../../../../../etc/passwd\""));
    }
}

#[test]
fn block_with_control_characters() {
    text("block_control", with("[trousers]\nblock = \"a\\u0000b\\n\""));
}

#[test]
fn block_that_is_the_measurement_file_itself() {
    text("block_itself", with("[trousers]\nblock = \"body.toml\""));
}

#[test]
fn block_that_is_a_folder() {
    text("block_folder", with("[trousers]\nblock = \"./\""));
}

#[test]
fn recipe_that_refers_to_itself() {
    let folder = Folder::new("recipe_itself");
    folder.write("body.toml", with("[trousers]\nblock = \"own.toml\""));
    let recipe = include_str!("../blocks/classic.toml");
    let line = recipe.lines().find(|line| line.starts_with("hip_line")).unwrap();
    folder
        .write("own.toml", recipe.replacen(line, "hip_line = { at = \"1/2 hip_line\", say = \"round\" }", 1));
    refused("recipe_itself", &folder, &[]);
}

#[test]
fn file_that_is_not_there() {
    refused("no_file", &Folder::new("no_file"), &[]);
}

#[test]
fn folder_in_place_of_a_file() {
    let folder = Folder::new("folder");
    fs::create_dir(folder.0.join("body.toml")).unwrap();
    refused("folder", &folder, &[]);
}

#[cfg(unix)]
#[test]
fn file_without_permission() {
    use std::os::unix::fs::PermissionsExt;
    let folder = Folder::new("no_permission");
    folder.write("body.toml", SOUND);
    fs::set_permissions(folder.0.join("body.toml"), fs::Permissions::from_mode(0o000)).unwrap();
    let anybody = Anybody::of(&folder.0);
    refused_to(anybody.command(), "no_permission", &folder, &[]);
}

#[test]
fn options_gone_wrong() {
    let folder = Folder::new("options");
    folder.write("body.toml", SOUND);
    let sets = [
        "hip_girth=3",
        "thigh.frnt=1",
        "thigh.front=99",
        "nonsense",
        "seat.angle=3 degrees",
        "seat.angle=",
        "units=feet",
        "=",
        "measurements.hip_girth=\u{1b}[2J",
    ];
    let options: Vec<&str> = sets.into_iter().flat_map(|set| ["--set", set]).collect();
    refused("options", &folder, &options);
}
