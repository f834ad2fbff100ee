//! The people of two surveys, as measurement files would have them.
#![allow(dead_code, reason = "each test file that shares this module uses a part of it")]

use breeks::body::Given;
use breeks::terms::{Measurement, Sex, WaistLevel, Word};

/// One person.
pub(crate) struct Person {
    pub(crate) id: String,
    pub(crate) given: Given,
}

/// The levels at which both surveys measured a waist.
pub(crate) const LEVELS: [WaistLevel; 2] = [WaistLevel::Natural, WaistLevel::Navel];

/// 507 civilians; waist at its narrowest, read as the natural waist.
pub(crate) fn people_507() -> Vec<Person> {
    let columns = [
        ("height_cm", Measurement::Stature),
        ("waist_girth", Measurement::WaistGirth),
        ("hip_girth", Measurement::HipGirth),
        ("thigh_girth", Measurement::ThighGirth),
        ("knee_girth", Measurement::KneeGirth),
        ("calf_girth", Measurement::CalfGirth),
        ("ankle_girth", Measurement::AnkleGirth),
    ];
    read(include_str!("people-507.csv"), "id", WaistLevel::Natural, &columns)
}

/// 985 people of the 1988 survey, where the reference folder is beside this one.
pub(crate) fn people_985(level: WaistLevel) -> Option<Vec<Person>> {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../shared/reference/people-985-army-1988.csv");
    let Ok(text) = std::fs::read_to_string(path) else {
        eprintln!("SKIPPED: the 985 people of 1988 are not at hand");
        return None;
    };
    let at = if level == WaistLevel::Natural { "natural" } else { "navel" };
    let columns = [
        ("stature", Measurement::Stature),
        (&*format!("waist_girth_{at}"), Measurement::WaistGirth),
        ("hip_girth", Measurement::HipGirth),
        ("thigh_girth", Measurement::ThighGirth),
        ("knee_girth", Measurement::KneeGirth),
        ("calf_girth", Measurement::CalfGirth),
        ("ankle_girth", Measurement::AnkleGirth),
        ("heel_ankle_girth", Measurement::HeelGirth),
        ("crotch_height", Measurement::InsideLeg),
        (&*format!("waist_height_{at}"), Measurement::WaistHeight),
        ("hip_height", Measurement::HipHeight),
        ("knee_height", Measurement::KneeHeight),
        (&*format!("waist_height_sitting_{at}"), Measurement::BodyRiseSitting),
        (&*format!("crotch_length_{at}"), Measurement::TotalCrotchLength),
        (&*format!("crotch_length_posterior_{at}"), Measurement::BackCrotchLength),
    ];
    Some(read(&text, "subject_id", level, &columns))
}

fn read(text: &str, id: &str, level: WaistLevel, columns: &[(&str, Measurement)]) -> Vec<Person> {
    let mut lines = text.lines().filter(|line| !line.starts_with('#'));
    let header: Vec<&str> = lines.next().unwrap().split(',').collect();
    let column = |name: &str| header.iter().position(|column| *column == name).unwrap();
    lines
        .map(|line| {
            let fields: Vec<&str> = line.split(',').collect();
            let sex = Sex::from_key(fields[column("sex")]).unwrap();
            let given = columns.iter().fold(Given::new(sex, level), |given, (name, measurement)| {
                given.with(*measurement, fields[column(name)].parse().unwrap())
            });
            Person { id: fields[column(id)].to_owned(), given }
        })
        .collect()
}

/// Standard deviation of a measurement among those of a sex, where it was measured (of both for unsaid).
pub(crate) fn sd(people: &[Person], sex: Sex, measurement: Measurement) -> Option<f64> {
    let values: Vec<f64> =
        people.iter().filter(|p| p.given.sex == sex).filter_map(|p| p.given.cm(measurement)).collect();
    let mean = values.iter().sum::<f64>() / values.len() as f64;
    let variance = values.iter().map(|v| (v - mean).powi(2)).sum::<f64>() / (values.len() as f64 - 1.0);
    (!values.is_empty()).then(|| variance.sqrt())
}
