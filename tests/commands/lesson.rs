//! `breeks lesson`, and the guide of `breeks new`.

use super::dialogue::Folder;

#[test]
fn lesson_of_a_demo_body() {
    let run = Folder::new("lesson").run(&["lesson", "--demo", "cox", "--block", "jeans"]);
    assert_eq!(run.code, 0, "{}", run.err);
    assert_eq!(run.files, ["drafts/cox-jeans-lesson.html", "drafts/cox-jeans-lesson.pdf"]);
    run.assert_tidy();
    run.snapshot("command_lesson");
}

#[test]
fn marking_page_beside_the_lesson() {
    let folder = Folder::new("lesson_mark");
    let run = folder.run(&["lesson", "--demo", "five", "--mark"]);
    assert_eq!(
        run.files,
        [
            "drafts/five-classic-lesson.html",
            "drafts/five-classic-lesson.pdf",
            "drafts/five-classic-mark.html",
            "drafts/five-classic-mark.pdf"
        ]
    );
    let html = String::from_utf8(folder.bytes("drafts/five-classic-mark.html")).expect("text");
    for line in
        ["its points as constructed", "its edges", "crotch curve, off the straight line", "45 degrees"]
    {
        assert!(html.contains(line), "{line}");
    }
}

#[test]
fn lesson_in_the_unit_asked_for() {
    let folder = Folder::new("lesson_units");
    folder.run(&["lesson", "--demo", "stroke", "--units", "inch", "--out", "club"]);
    let html = String::from_utf8(folder.bytes("club/stroke-classic-lesson.html")).expect("text");
    // What is no sixteenth stands in a sum with decimals, so that it comes out.
    assert!(html.contains("front extension = 1/16 hip + 1/4 fuller + 0."));
    assert!(html.contains(" = 39.961 : 16 + "));
}

#[test]
fn a_lesson_for_each_of_two_legs() {
    let folder = Folder::new("lesson_legs");
    let file = "name = \"bow\"\n[measurements]\nwaist_girth = 72\nhip_girth = 98\ninside_leg = 77\n\
                [left.thigh]\nouter = 0.6\n";
    folder.put("bow.toml", file);
    let run = folder.run(&["lesson", "bow.toml"]);
    assert_eq!(run.code, 0, "{}", run.err);
    assert_eq!(
        run.files,
        [
            "bow.toml",
            "drafts/bow-classic-left-lesson.html",
            "drafts/bow-classic-left-lesson.pdf",
            "drafts/bow-classic-right-lesson.html",
            "drafts/bow-classic-right-lesson.pdf"
        ]
    );
}

#[test]
fn lesson_on_a_block_that_is_not_to_be_cut() {
    let tight = ["lesson", "--demo", "stroke", "--set", "trousers.style.knee_width=17"];
    let run = Folder::new("lesson_tight").run(&tight);
    assert_eq!(run.code, 1, "{}{}", run.out, run.err);
    assert!(run.out.contains("not to be cut"), "{}", run.out);
    assert_eq!(run.files.len(), 2);
}

#[test]
fn lesson_of_somebody_else_left_alone() {
    let folder = Folder::new("lesson_foreign");
    folder.put("drafts/stroke-classic-lesson.html", "my own notes");
    let run = folder.run(&["lesson", "--demo", "stroke"]);
    run.assert_refused(&["drafts/stroke-classic-lesson.html"]);
    assert_eq!(folder.bytes("drafts/stroke-classic-lesson.html"), b"my own notes");
    assert_eq!(run.files, ["drafts/stroke-classic-lesson.html"]);
}

#[test]
fn guide_alone_and_beside_a_new_file() {
    let folder = Folder::new("guide");
    let run = folder.run(&["new", "--guide"]);
    assert_eq!(
        (run.code, run.files),
        (0, vec!["measuring-guide.html".to_owned(), "measuring-guide.pdf".to_owned()])
    );
    let run = folder.run(&["new", "club/bow.toml", "--guide", "--units", "inch"]);
    assert_eq!(run.code, 0, "{}", run.err);
    for name in ["club/bow.toml", "club/measuring-guide.html", "club/measuring-guide.pdf"] {
        assert!(run.files.iter().any(|file| file == name), "{name}: {:?}", run.files);
    }
    run.snapshot("command_new_guide");
}

#[test]
fn neither_guide_nor_file_where_the_file_is_there() {
    let folder = Folder::new("guide_taken");
    folder.put("bow.toml", "name = \"bow\"\n");
    let run = folder.run(&["new", "bow.toml", "--guide"]);
    run.assert_refused(&["bow.toml"]);
    assert_eq!(run.files, ["bow.toml"]);
}

#[test]
fn guide_of_somebody_else_left_alone() {
    let folder = Folder::new("guide_foreign");
    folder.put("measuring-guide.html", "my own guide");
    let run = folder.run(&["new", "bow.toml", "--guide"]);
    run.assert_refused(&["measuring-guide.html"]);
    assert_eq!(run.files, ["measuring-guide.html"]);
}

#[test]
fn new_without_a_file_or_the_guide_refused() {
    let run = Folder::new("guide_nothing").run(&["new"]);
    assert_eq!(run.code, 2);
    assert!(run.files.is_empty());
}
