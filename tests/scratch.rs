use breeks::{body::*, draft::*, fit::*, order::*, recipe::*, terms::*, mistake::*, paper::*, drawing::SvgScale};
use std::sync::Arc;
use Measurement as M;
fn trousers() -> Trousers { Trousers{block:"classic".into(),fit:None,set:SeatSet::Clean,cloth_stretch:0.,inseam_stretch:0.,ease:[None;8],style:[None;4],allowance:[None;6],ask:Default::default()} }
fn people(natural: bool) -> Vec<(String, Body)> {
    let text = std::fs::read_to_string("../shared/reference/people-985-army-1988.csv").unwrap();
    let mut lines = text.lines();
    let head: Vec<&str> = lines.next().unwrap().split(',').collect();
    lines.map(|l| {
        let c: Vec<&str> = l.split(',').collect();
        let g = |k: &str| -> f64 { c[head.iter().position(|h| *h==k).unwrap()].parse().unwrap() };
        let sfx = if natural {"natural"} else {"navel"};
        let sex = if c[1]=="female" {Sex::Female} else {Sex::Male};
        let mut b = Body{sex, waist_level: WaistLevel::Natural, values: [None; M::COUNT]};
        let mut s = |m: M, v: f64| b.values[m as usize]=Some(Value{cm:v,from:Origin::Measured,sd:0.5,extrapolated:false});
        let wh = g(&format!("waist_height_{sfx}"));
        s(M::WaistGirth, g(&format!("waist_girth_{sfx}"))); s(M::HipGirth, g("hip_girth"));
        s(M::InsideLeg, g("crotch_height")); s(M::WaistHeight, wh); s(M::BodyRise, wh-g("crotch_height")); s(M::WaistToHip, wh-g("hip_height"));
        s(M::ThighGirth, g("thigh_girth")); s(M::KneeGirth, g("knee_girth")); s(M::CalfGirth, g("calf_girth")); s(M::HeelGirth, g("heel_ankle_girth")); s(M::KneeHeight, g("knee_height"));
        s(M::TotalCrotchLength, g(&format!("crotch_length_{sfx}"))); s(M::Stature, g("stature"));
        (c[0].to_string(), b)
    }).collect()
}
fn q(mut v: Vec<f64>, p: f64) -> f64 { v.sort_by(f64::total_cmp); v[((v.len()-1) as f64*p) as usize] }
#[test] fn all() {
    let natural = std::env::var("NAVEL").is_err();
    let path = std::env::var("RECIPE").unwrap_or("blocks/classic.toml".into());
    let text = std::fs::read_to_string(&path).unwrap();
    let recipe = Recipe::parse(&Source::new(&*path, text)).unwrap_or_else(|m| panic!("{m}"));
    let recipe = Arc::new(recipe);
    let only = std::env::var("ONLY").ok();
    for sex in [Sex::Female, Sex::Male] {
        let mut rows: std::collections::BTreeMap<&str, Vec<f64>> = Default::default();
        let mut bad = 0; let mut n=0; let mut tight: std::collections::BTreeMap<&str,usize> = Default::default();
        let mut codes: std::collections::BTreeMap<&str,usize> = Default::default();
        for (id, body) in people(natural) {
            if body.sex != sex { continue; }
            if only.as_ref().is_some_and(|o| *o!=id) {continue;}
            n+=1;
            let d = match draft(&id, &body, &recipe, &trousers()) { Ok(d)=>d, Err(m)=>{ println!("{id}: {m}"); bad+=1; continue} };
            let r = Report::of(&d.plan, &d.shape, &d.body);
            for l in &r.levels { rows.entry(l.level.key()).or_default().push(l.ease()); if l.is_tight() {*tight.entry(l.level.key()).or_default()+=1} if l.is_loose() {*tight.entry(match l.level {Level::Hip=>"hip loose",Level::Waist=>"waist loose",_=>"loose"}).or_default()+=1} }
            rows.entry("crotch").or_default().push(r.crotch.ease().unwrap());
            rows.entry("drop").or_default().push(d.back_drop());
            rows.entry("fdart").or_default().push(d.shape.front.darts.iter().map(|d| d.intake()).sum());
            rows.entry("bdart").or_default().push(d.shape.back.darts.iter().map(|d| d.intake()).sum());
            rows.entry("share").or_default().push(r.crotch.back/r.crotch.total());
            for x in &d.notices { *codes.entry(x.code).or_default()+=1; }
            if !r.faults.is_empty() || !r.seams.iter().all(|s| s.holds()) || !r.joins.iter().all(|j| j.holds()) { bad+=1; if bad<6 {println!("{id} {:?} {:?} {:?}", r.faults, r.seams, r.joins);} }
            if only.is_some() { std::fs::write("/tmp/one.svg", block_drawing(&d).to_svg(SvgScale::TrueScale)).unwrap(); std::fs::write("/tmp/one.png", block_drawing(&d).to_png(8.0).unwrap()).unwrap(); println!("{}", fit_table(&d,&r,breeks::unit::Unit::Cm)); for x in d.notices {println!("{}",x.text)} }
        }
        println!("== {sex} n={n} bad={bad} {tight:?} {codes:?}");
        for (k,v) in rows { println!("{k:10} min {:7.2} p5 {:7.2} med {:7.2} p95 {:7.2} max {:7.2}", q(v.clone(),0.),q(v.clone(),0.05),q(v.clone(),0.5),q(v.clone(),0.95),q(v,1.)); }
    }
}
