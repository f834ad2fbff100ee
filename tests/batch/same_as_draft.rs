//! A row gives what `draft --json` gives for a file that says the same, field for field.
//!
//! The bodies are 200 of people-507: see tests/data/README.md.

use std::fmt::Write;

use breeks::{
    answer::{Answer, Extent},
    making::make,
    mistake::Source,
    order::{DEMOS, Order, demo},
    pattern::Wanted,
    terms::{Measurement, Word},
    unit::Unit,
};
use serde_json::{Value, json};

use crate::lines;

/// Our keys and the columns of the table, in that order.
const COLUMNS: [(&str, &str); 8] = [
    ("sex", "sex"),
    ("stature", "height_cm"),
    ("waist_girth", "waist_girth"),
    ("hip_girth", "hip_girth"),
    ("thigh_girth", "thigh_girth"),
    ("knee_girth", "knee_girth"),
    ("calf_girth", "calf_girth"),
    ("ankle_girth", "ankle_girth"),
];

/// The people: id and, by column, what was measured.
fn people() -> Vec<(String, Vec<String>)> {
    let table = include_str!("../data/people-507.csv");
    let mut rows = table.lines().map(|line| line.split(',').collect::<Vec<_>>());
    let header = rows.next().unwrap();
    let at = |name: &str| header.iter().position(|column| *column == name).unwrap();
    // every other one, so that both sexes are among them
    rows.step_by(2)
        .take(200)
        .map(|row| (row[at("id")].to_owned(), COLUMNS.map(|(_, column)| row[at(column)].to_owned()).to_vec()))
        .collect()
}

/// What `draft --json` prints for this person, without what a line of a batch leaves out.
fn of_draft(values: &[String]) -> Value {
    let mut text = format!("name = \"body\"\nsex = \"{}\"\n[measurements]\n", values[0]);
    for ((key, _), value) in COLUMNS.iter().zip(values).skip(1) {
        writeln!(text, "{key} = {value}").unwrap();
    }
    let (order, notices) = Order::read(&Source::new("person.toml", text)).unwrap();
    let made = make(order, notices, &Wanted::default()).unwrap();
    without_drawing(&Answer::new(&made, Extent::Whole).to_json())
}

/// What `draft --json` prints without what a line of a batch leaves out.
fn without_drawing(whole: &str) -> Value {
    let mut whole: Value = serde_json::from_str(whole).unwrap();
    whole.as_object_mut().unwrap().remove("steps").unwrap();
    whole.as_object_mut().unwrap().remove("construction").unwrap();
    for piece in whole["pieces"].as_array_mut().unwrap() {
        let piece = piece.as_object_mut().unwrap();
        piece.remove("edges").unwrap();
        piece.remove("sew_outline").unwrap();
        piece.remove("cut_outline").unwrap();
    }
    whole
}

#[test]
fn line_of_200_people_the_same_as_their_draft() {
    let people = people();
    assert_eq!(people.len(), 200);
    let mut csv = "id".to_owned();
    for (key, _) in COLUMNS {
        csv += ",";
        csv += key;
    }
    let mut ndjson = String::new();
    for (id, values) in &people {
        write!(csv, "\n{id},{}", values.join(",")).unwrap();
        write!(ndjson, "{{\"id\":{id},\"sex\":\"{}\"", values[0]).unwrap();
        for ((key, _), value) in COLUMNS.iter().zip(values).skip(1) {
            write!(ndjson, ",\"measurements.{key}\":{value}").unwrap();
        }
        ndjson.push_str("}\n");
    }
    let (of_csv, of_ndjson) = (lines(csv), lines(ndjson));
    assert_eq!((of_csv.len(), of_ndjson.len()), (200, 200));
    for ((id, values), (csv, ndjson)) in people.iter().zip(of_csv.into_iter().zip(of_ndjson)) {
        let mut expected = of_draft(values);
        let fields = expected.as_object_mut().unwrap();
        fields.insert("id".to_owned(), json!(id));
        assert_eq!(csv, expected, "person {id}");
        expected["id"] = json!(id.parse::<u64>().unwrap());
        assert_eq!(ndjson, expected, "person {id}");
    }
}

/// Demo bodies have a crotch length: the fit has something to meet.
#[test]
fn line_of_a_measured_fit_the_same_as_its_draft() {
    for name in DEMOS {
        let (order, notices) = Order::read(&demo(name).unwrap()).unwrap();
        let made = make(order.clone(), notices, &Wanted::default()).unwrap();
        let expected = without_drawing(&Answer::new(&made, Extent::Whole).to_json());
        assert_eq!(expected["fit"], "measured");
        assert!(!expected["adjustments"].as_object().unwrap().is_empty());
        let units = if order.units == Unit::Cm { "cm" } else { "inch" };
        let mut row = json!({
            "id": name, "name": name, "units": units, "sex": order.body.sex.key(),
            "waist_level": order.body.waist_level.key(),
        });
        for measurement in Measurement::ALL {
            if let Some(cm) = order.body.cm(*measurement) {
                row[measurement.key()] = json!(order.units.from_cm(cm));
            }
        }
        for adjustment in &order.adjustments {
            row[adjustment.key.key()] = json!(adjustment.value);
        }
        let mut line = lines(row.to_string()).remove(0);
        line.as_object_mut().unwrap().remove("id");
        assert_eq!(line, expected, "{name}");
    }
}
