//! The answers of the program, run as a person runs it, and their fields by name.

use std::{path::Path as FilePath, process::Command, sync::OnceLock};

use serde_json::Value;

use crate::ruler::{Path, Place};

/// One answer.
pub(crate) struct Answer(Value);

/// A row or a table of an answer.
pub(crate) struct Row(Value);

pub(crate) struct Piece(Value);

pub(crate) struct Dart {
    pub(crate) apex: Place,
    pub(crate) legs: [Place; 2],
    pub(crate) intake: f64,
    pub(crate) length: f64,
}

pub(crate) struct Notch {
    pub(crate) edge: String,
    pub(crate) name: String,
    pub(crate) from_start: f64,
    pub(crate) point: Place,
}

fn drafted(arguments: &[&str]) -> Answer {
    let ended = Command::new(env!("CARGO_BIN_EXE_breeks"))
        .args(["draft", "--json"])
        .args(arguments)
        .output()
        .expect("the program runs");
    assert_ne!(ended.status.code(), Some(2), "{}", String::from_utf8_lossy(&ended.stderr));
    Answer(serde_json::from_slice(&ended.stdout).expect("JSON"))
}

pub(crate) fn drafted_demo(name: &str) -> Answer {
    drafted(&["--demo", name])
}

/// The stroke with fit parameters.
pub(crate) fn drafted_with(parameters: &str) -> Answer {
    let sets = parameters.split(' ').flat_map(|set| ["--set", set]);
    drafted(&["--demo", "stroke"].into_iter().chain(sets).collect::<Vec<_>>())
}

/// The lines of one layer in the drawing of a demo body, each in parts: the mouths of darts are open.
pub(crate) fn drawn(layer: &str, demo: &str, more: &[&str]) -> Vec<Vec<Path>> {
    let folder =
        FilePath::new(env!("CARGO_TARGET_TMPDIR")).join("lengths").join(layer).join(demo).join(more.concat());
    let _ = std::fs::remove_dir_all(&folder);
    let ended = Command::new(env!("CARGO_BIN_EXE_breeks"))
        .args(["draft", "--demo", demo, "--out"])
        .arg(&folder)
        .args(more)
        .output()
        .expect("the program runs");
    assert_ne!(ended.status.code(), Some(2), "{}", String::from_utf8_lossy(&ended.stderr));
    let drawing = std::fs::read_to_string(folder.join(format!("{demo}-classic.svg"))).expect("a drawing");
    let (_, layer) = drawing.split_once(&format!("data-layer=\"{layer}\"")).expect("a layer of that name");
    let (layer, _) = layer.split_once("</g>").expect("its end");
    let data = layer.split(r#" d=""#).skip(1);
    data.map(|rest| {
        let data = rest.split('"').next().expect("path data");
        data.split("M ").skip(1).map(|part| Path::read(&format!("M {}", part.trim_end()))).collect()
    })
    .collect()
}

/// A person of people-507: the columns of the survey as keys of a measurement file.
pub(crate) struct Person {
    id: String,
    file: String,
}

pub(crate) fn people() -> &'static [Person] {
    static PEOPLE: OnceLock<Vec<Person>> = OnceLock::new();
    PEOPLE.get_or_init(|| {
        let text = include_str!("../data/people-507.csv");
        let mut lines = text.lines();
        let header: Vec<&str> = lines.next().expect("a header").split(',').collect();
        lines.map(|line| person(&header, &line.split(',').collect::<Vec<_>>())).collect()
    })
}

fn person(header: &[&str], row: &[&str]) -> Person {
    let column = |name: &str| row[header.iter().position(|column| *column == name).expect("a column")];
    let mut file = format!("name = \"{}\"\nsex = \"{}\"\n[measurements]\n", column("id"), column("sex"));
    file.push_str(&format!("stature = {}\n", column("height_cm")));
    for girth in ["waist_girth", "hip_girth", "thigh_girth", "knee_girth", "calf_girth", "ankle_girth"] {
        file.push_str(&format!("{girth} = {}\n", column(girth)));
    }
    Person { id: column("id").to_owned(), file }
}

pub(crate) fn drafted_person(person: &Person) -> Answer {
    let folder = FilePath::new(env!("CARGO_TARGET_TMPDIR")).join("lengths");
    std::fs::create_dir_all(&folder).expect("a folder");
    let file = folder.join(format!("{}.toml", person.id));
    std::fs::write(&file, &person.file).expect("a file");
    drafted(&[file.to_str().expect("a path of plain letters")])
}

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap_or_else(|| panic!("{value} is no number"))
}

fn text(value: &Value) -> &str {
    value.as_str().unwrap_or_else(|| panic!("{value} is no text"))
}

fn list(value: &Value) -> &[Value] {
    value.as_array().unwrap_or_else(|| panic!("{value} is no list"))
}

fn place(value: &Value) -> Place {
    [0, 1].map(|axis| number(&value[axis]))
}

impl Answer {
    pub(crate) fn name(&self) -> &str {
        text(&self.0["name"])
    }

    pub(crate) fn pieces(&self) -> Vec<Piece> {
        list(&self.0["pieces"]).iter().cloned().map(Piece).collect()
    }

    /// The one front and the one back of a body whose legs are alike.
    pub(crate) fn panels(&self) -> [Piece; 2] {
        let [front, back]: [Piece; 2] = self.pieces().try_into().unwrap_or_else(|_| panic!("two pieces"));
        assert_eq!([front.panel(), back.panel()], ["front", "back"]);
        [front, back]
    }

    pub(crate) fn rows(&self, name: &str) -> Vec<Row> {
        list(&self.0[name]).iter().cloned().map(Row).collect()
    }

    pub(crate) fn row(&self, name: &str) -> Row {
        Row(self.0[name].clone())
    }
}

impl Row {
    pub(crate) fn text(&self, name: &str) -> &str {
        text(&self.0[name])
    }

    pub(crate) fn number(&self, name: &str) -> f64 {
        number(&self.0[name])
    }
}

impl Piece {
    pub(crate) fn panel(&self) -> &str {
        text(&self.0["panel"])
    }

    pub(crate) fn level(&self, name: &str) -> f64 {
        number(&self.0["levels"][name])
    }

    pub(crate) fn point(&self, role: &str) -> Place {
        place(&self.0["points"][role])
    }

    /// Name, length as said, and path of every edge.
    pub(crate) fn edges(&self) -> Vec<(String, f64, Path)> {
        list(&self.0["edges"])
            .iter()
            .map(|edge| {
                (text(&edge["edge"]).to_owned(), number(&edge["length"]), Path::read(text(&edge["path"])))
            })
            .collect()
    }

    pub(crate) fn outline(&self) -> Path {
        Path::read(text(&self.0["sew_outline"]))
    }

    pub(crate) fn grain(&self) -> [Place; 2] {
        [0, 1].map(|end| place(&self.0["grain"][end]))
    }

    pub(crate) fn darts(&self) -> Vec<Dart> {
        list(&self.0["darts"])
            .iter()
            .map(|dart| Dart {
                apex: place(&dart["apex"]),
                legs: [0, 1].map(|leg| place(&dart["legs"][leg])),
                intake: number(&dart["intake"]),
                length: number(&dart["length"]),
            })
            .collect()
    }

    pub(crate) fn notches(&self) -> Vec<Notch> {
        list(&self.0["notches"])
            .iter()
            .map(|notch| Notch {
                edge: text(&notch["edge"]).to_owned(),
                name: text(&notch["name"]).to_owned(),
                from_start: number(&notch["from_start"]),
                point: place(&notch["point"]),
            })
            .collect()
    }
}
