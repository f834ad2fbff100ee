//! Real people for the tests, as orders. `tests/data/README.md` says who they are.
#![allow(dead_code, reason = "each test file uses its own part")]
#![allow(clippy::unwrap_used, reason = "a survey that cannot be read fails the test that asked for it")]

use std::path::Path;

use breeks::{
    body::Given,
    order::{Order, demo},
    terms::{Measurement, Sex, WaistLevel},
};

/// One person of a survey.
pub(crate) struct Person {
    /// As the survey numbers them.
    pub(crate) id: String,
    /// What a measurement file of theirs would say.
    pub(crate) order: Order,
}

/// A table with a header, by column name.
struct Table {
    header: Vec<String>,
    rows: Vec<Vec<String>>,
}

impl Table {
    fn read(path: &Path) -> Self {
        let text = std::fs::read_to_string(path).unwrap();
        let mut lines = text.lines().map(|line| line.split(',').map(str::to_owned).collect::<Vec<_>>());
        Self { header: lines.next().unwrap(), rows: lines.collect() }
    }

    fn text<'a>(&self, row: &'a [String], column: &str) -> &'a str {
        &row[self.header.iter().position(|name| name == column).unwrap()]
    }

    fn number(&self, row: &[String], column: &str) -> f64 {
        self.text(row, column).parse().unwrap()
    }
}

fn order(id: &str, given: Given) -> Order {
    let (mut order, _) = Order::read(&demo("stroke").unwrap()).unwrap();
    order.name = Some(id.to_owned());
    order.body = given;
    order
}

fn sex(text: &str) -> Sex {
    if text == "female" { Sex::Female } else { Sex::Male }
}

/// people-507: girths and stature measured, everything else estimated.
pub(crate) fn of_507() -> Vec<Person> {
    of_507_at(WaistLevel::Natural)
}

/// The same people with their waist girthed at the natural waist or at the navel.
pub(crate) fn of_507_at(waist: WaistLevel) -> Vec<Person> {
    let waist_column = if waist == WaistLevel::Natural { "waist_girth" } else { "navel_girth" };
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/data/people-507.csv");
    let table = Table::read(&path);
    let person = |row: &Vec<String>| {
        let mut given = Given::new(sex(table.text(row, "sex")), waist);
        for (measurement, column) in [
            (Measurement::Stature, "height_cm"),
            (Measurement::WaistGirth, waist_column),
            (Measurement::HipGirth, "hip_girth"),
            (Measurement::ThighGirth, "thigh_girth"),
            (Measurement::KneeGirth, "knee_girth"),
            (Measurement::CalfGirth, "calf_girth"),
            (Measurement::AnkleGirth, "ankle_girth"),
        ] {
            given = given.with(measurement, table.number(row, column));
        }
        let id = table.text(row, "id");
        Person { id: id.to_owned(), order: order(id, given) }
    };
    table.rows.iter().map(person).collect()
}

/// people-985: everything that a draft needs measured, the crotch length and its split too.
pub(crate) fn of_985(waist: WaistLevel) -> Vec<Person> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/data/people-985.csv");
    let level = if waist == WaistLevel::Natural { "natural" } else { "navel" };
    let table = Table::read(&path);
    let person = |row: &Vec<String>| {
        let number = |column: &str| table.number(row, column);
        let waist_height = number(&format!("waist_height_{level}"));
        let given = Given::new(sex(table.text(row, "sex")), waist)
            .with(Measurement::Stature, number("stature"))
            .with(Measurement::WaistGirth, number(&format!("waist_girth_{level}")))
            .with(Measurement::HipGirth, number("hip_girth"))
            .with(Measurement::ThighGirth, number("thigh_girth"))
            .with(Measurement::KneeGirth, number("knee_girth"))
            .with(Measurement::CalfGirth, number("calf_girth"))
            .with(Measurement::AnkleGirth, number("ankle_girth"))
            .with(Measurement::HeelGirth, number("heel_ankle_girth"))
            .with(Measurement::InsideLeg, number("crotch_height"))
            .with(Measurement::KneeHeight, number("knee_height"))
            .with(Measurement::WaistHeight, waist_height)
            .with(Measurement::HipHeight, number("hip_height"))
            .with(Measurement::BodyRiseSitting, number(&format!("waist_height_sitting_{level}")))
            .with(Measurement::TotalCrotchLength, number(&format!("crotch_length_{level}")))
            .with(Measurement::BackCrotchLength, number(&format!("crotch_length_posterior_{level}")));
        let id = table.text(row, "subject_id");
        Person { id: id.to_owned(), order: order(id, given) }
    };
    table.rows.iter().map(person).collect()
}

/// The value below which `part` of the sorted values lie.
pub(crate) fn quantile(values: &mut [f64], part: f64) -> f64 {
    values.sort_by(f64::total_cmp);
    values[((values.len() - 1) as f64 * part).round() as usize]
}
