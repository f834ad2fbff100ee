//! Every fault told by itself, in one plain sentence: it leads, and a cause of it is among the first two.

use breeks::toile::{Past, knowledge, rank, read};

/// A fault by its key, and how it is told.
const PLAIN: &[(&str, &[&str])] = &[
    ("waist-too-tight", &["the waist is too tight", "the waistband digs in when I stand"]),
    ("waist-too-loose", &["the waist is too loose", "the trousers keep falling down"]),
    ("back-waist-gap", &["the waist gapes at the back", "the back of the waistband stands away"]),
    ("roll-under-back-band", &["there is a roll of cloth across just under the band at the back"]),
    ("hip-too-tight", &["it is tight across the hips", "the side pockets gape open"]),
    ("hip-too-loose", &["the hips are too loose", "loose upright folds at the side of the hip"]),
    ("front-over-abdomen", &["it is tight across my belly", "the tummy strains the front"]),
    ("front-flat-abdomen", &["the front pouches over the belly", "baggy over my stomach"]),
    ("waist-tilt", &["the waist is too high at the front", "the waist is too low at the back"]),
    ("back-waist-dips-sitting", &["the back of the waist goes down when I sit"]),
    ("crotch-too-shallow", &["the crotch is too short", "the crotch cuts in when I stand"]),
    ("crotch-too-deep", &["the crotch hangs too low", "the crotch is too long"]),
    ("front-crotch-short", &["the front rise is too short", "smile lines under the fly"]),
    ("front-crotch-long", &["the front rise is too long", "loose folds across the fly"]),
    ("back-crotch-short", &["the back rise is too short", "the back crotch seam is too short"]),
    ("back-crotch-long", &["the back rise is too long"]),
    ("curve-too-shallow", &["a bubble of cloth at the bottom of the fly"]),
    ("curve-too-deep", &["tight slanting lines at the base of the fly"]),
    ("front-fork-too-short", &["tight slanting lines on the inner thigh"]),
    ("front-fork-too-long", &["loose upright folds at the front crotch"]),
    ("back-fork-too-short", &["tight lines slant from the back crotch to the thigh"]),
    ("back-fork-too-long", &["loose folds slant from the back crotch to the knee"]),
    ("seat-too-close", &["the seat is too tight", "tight lines straight across the bum"]),
    ("seat-too-full", &["the seat sags", "folds of cloth lie across under my bum"]),
    ("seat-lies-low", &["it is tight under the seat"]),
    ("seat-lies-high", &["the cloth is loose under the seat and tight in a fan below the back of the band"]),
    ("lean-too-large", &["the seat is too loose", "upright ripples at the seat"]),
    ("lean-too-small", &["the seat holds me back when I sit"]),
    (
        "folds-behind-leg",
        &["folds across the back of the thigh", "the back of the leg is full of slanting folds"],
    ),
    ("front-thigh-strains", &["the front of the thigh is tight", "my quads pull when I sit"]),
    ("inner-thigh-strains", &["the inner thigh is tight", "the inseam is tight at the top when I walk"]),
    ("outer-thigh-strains", &["the outside of the thigh is tight"]),
    ("thigh-too-loose", &["the thigh is too loose", "upright folds down the thigh, loose"]),
    ("thigh-too-tight", &["the thigh is too tight", "the thigh cuts in"]),
    ("thigh-binds-sitting", &["the thigh binds when I sit"]),
    ("knee-stands-in", &["tight on the inside of the knee"]),
    ("knee-stands-out", &["tight on the outside of the knee", "the hem swings outwards"]),
    (
        "knee-pushed-back",
        &["the shin stands off in front", "a tight slanting line from the calf to the seat"],
    ),
    ("knee-bent-forward", &["tight over the front of the knee", "the knee is tight"]),
    ("calf-catches", &["the calf is too tight", "the leg catches on the calf"]),
    ("leg-cut-open", &["a slanting fold from the inner hem to the calf"]),
    ("leg-cut-close", &["a slanting fold from the outer hem to the knee"]),
    ("side-seam-forward", &["the side seam swings forward"]),
    ("side-seam-backward", &["the side seam swings to the back"]),
    ("inseam-twists", &["the inseam twists"]),
    ("crease-off-plumb", &["the crease line leans inward", "the crease line swings outwards"]),
    ("hem-not-level", &["the hem is not level", "the hem is higher in front"]),
    ("leg-too-wide-below", &["the hem is too wide", "the knee is too loose", "the calf is baggy"]),
    ("hem-will-not-pass", &["the hem will not go over my foot", "the hem is too tight"]),
    ("leg-too-short", &["the legs are too short", "the hem is too short"]),
    ("leg-too-long", &["the legs are too long", "the hem drags on the floor"]),
    ("both-legs-twist", &["both legs twist after washing", "the legs twist"]),
    ("one-hip-high", &["the waistband slopes to the right", "my left hip is higher"]),
    ("one-leg-shorter", &["the left hem hangs lower"]),
    ("one-side-fuller", &["only the right thigh is tight", "the left calf is tight"]),
    ("lap-full-sitting", &["there is loose cloth in my lap when I sit"]),
    ("hem-climbs-moving", &["the hem climbs when I sit", "the legs ride up when I walk"]),
    ("knee-drags-stepping", &["the knee holds when I step up"]),
    ("back-works-down", &["the back of the hem drops when I walk"]),
];

#[test]
fn every_fault_leads_where_it_is_all_that_is_told() {
    let mut wrong = Vec::new();
    for (key, sentences) in PLAIN {
        for said in *sentences {
            let report = read(said);
            let ranking = rank(&report, &[], None, &Past::default());
            let (first, second) = (&ranking.faults[0], &ranking.faults[1]);
            let causes = [ranking.causes[0].cause, ranking.causes[1].cause];
            let fault = knowledge().faults.iter().find(|fault| fault.key == *key).expect("a fault");
            let leads = first.0.key == *key
                && first.1 > 1.02 * second.1
                && fault.causes.iter().any(|cause| causes.contains(cause))
                && report.open.is_empty();
            if !leads {
                let read: Vec<String> = report.seen.iter().map(breeks::toile::Seen::plain).collect();
                wrong.push(format!(
                    "{key}: {said}: read {read:?}, open {}: {} {:.2}, {} {:.2}, cause {}",
                    report.open.len(),
                    first.0.key,
                    first.1,
                    second.0.key,
                    second.1,
                    knowledge().of(causes[0]).key
                ));
            }
        }
    }
    assert!(wrong.is_empty(), "{} of {}:\n{}", wrong.len(), PLAIN.len(), wrong.join("\n"));
}

#[test]
fn no_fault_forgotten() {
    let told: Vec<&str> = PLAIN.iter().map(|(key, _)| *key).collect();
    for fault in &knowledge().faults {
        assert!(told.contains(&fault.key.as_str()), "{}", fault.key);
    }
}
