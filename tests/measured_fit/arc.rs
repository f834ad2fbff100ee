//! The front thigh arc: its own key, the same number for whoever asks, and nothing else moved for it that was measured.

use breeks::{
    adjust::Key,
    fit::opening_for_arc,
    terms::{Measurement, Sex, WaistLevel},
};

use super::{fitted, people};

#[test]
fn opening_that_never_falls_with_the_arc() {
    for sex in [Sex::Female, Sex::Male] {
        for order in people(WaistLevel::Natural, sex, 60) {
            let mut last = 0.0;
            let mut row = String::new();
            for step in 0..=16 {
                let arc = 30.0 + 0.5 * f64::from(step);
                let mut with = order.clone();
                with.body = with.body.with(Measurement::FrontThighArc, arc);
                let (draft, _) = fitted(&with);
                let opening = draft.parameters[Key::ThighFront];
                assert!(opening >= last, "{:?}, arc {arc}: {opening} after {last}", order.name);
                assert_eq!(
                    Some(opening),
                    opening_for_arc(&draft.plan, &draft.body),
                    "{:?}, arc {arc}",
                    order.name
                );
                let depth = draft.parameters[Key::CrotchDepth];
                assert!(depth.abs() <= 0.3, "{:?}, arc {arc}: a measured rise moved by {depth}", order.name);
                if opening >= 0.3 {
                    let told = draft.notices.iter().any(|notice| notice.code == "take-back");
                    assert!(told, "{:?}, arc {arc}: the back's share is not told", order.name);
                }
                row.push_str(&format!(" {opening:.2}"));
                last = opening;
            }
            println!("{:?}, arc 30 to 38 by 0.5:{row}", order.name);
            assert!(last > 0.0, "{:?}: an arc of 38 cm asks for nothing", order.name);
        }
    }
}
