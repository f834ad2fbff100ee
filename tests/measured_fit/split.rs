//! The tape of the crotch length divided elsewhere for everybody: what two surveys differ in is no property of a person.

use breeks::terms::{Measurement, Sex, WaistLevel};

use super::{fitted, over, people, per_cent};

/// By how much the share of the back differs between the surveys of 1988 and 2012, for all people alike.
const SHIFTED: f64 = 0.05;

#[test]
fn crotch_length_divided_elsewhere() {
    let (mut all, mut met, mut doubtful) = (0, [0; 2], [0; 2]);
    for sex in [Sex::Female, Sex::Male] {
        for order in people(WaistLevel::Natural, sex, 6) {
            all += 1;
            for (shifted, by) in [(0, 0.0), (1, SHIFTED)] {
                let mut order = order.clone();
                let cm = |measurement| order.body.cm(measurement).unwrap();
                let back = cm(Measurement::BackCrotchLength) + by * cm(Measurement::TotalCrotchLength);
                order.body = order.body.with(Measurement::BackCrotchLength, back);
                let (draft, report) = fitted(&order);
                met[shifted] += usize::from(over(&report, &order).abs() <= 0.5);
                let named = |code: &str| matches!(code, "fit-doubtful" | "doubtful-measurement");
                doubtful[shifted] += usize::from(draft.notices.iter().any(|notice| named(notice.code)));
            }
        }
    }
    let [met, doubtful] = [met, doubtful].map(|counts| counts.map(|count| per_cent(count, all)));
    println!(
        "{all} people, the back's share of the crotch length as it is and {SHIFTED} more: met {:.1} and {:.1} per cent, \
         doubted {:.1} and {:.1}",
        met[0], met[1], doubtful[0], doubtful[1]
    );
    assert!(met[0] - met[1] < 1.0 && doubtful[1] - doubtful[0] < 5.0);
}
