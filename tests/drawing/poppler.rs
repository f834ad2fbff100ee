//! PDF pages as poppler prints them; where poppler is not installed its tests say that they skip.

use std::process::Command;

use crate::tool;

pub(crate) struct Print {
    width: usize,
    dots: Vec<u8>,
    dots_per_cm: f64,
}

/// Page `number`, from 1, in greys at so many dots an inch; `None` without poppler.
pub(crate) fn print(pdf: &[u8], number: usize, dots_per_inch: f64) -> Option<Print> {
    if Command::new("pdftoppm").arg("-v").output().is_err() {
        tool::missing("pdftoppm (poppler) is not installed, no page is measured");
        return None;
    }
    let folder = std::env::temp_dir().join(format!(
        "breeks-print-{}-{:?}",
        std::process::id(),
        std::thread::current().id()
    ));
    std::fs::create_dir_all(&folder).expect("a folder");
    let file = folder.join("drawing.pdf");
    std::fs::write(&file, pdf).expect("a file");
    let page = number.to_string();
    let print = Command::new("pdftoppm")
        .args(["-gray", "-r", &dots_per_inch.to_string(), "-f", &page, "-l", &page])
        .arg(&file)
        .output()
        .expect("pdftoppm runs");
    std::fs::remove_dir_all(&folder).expect("our own folder");
    assert!(print.stderr.is_empty(), "{}", String::from_utf8_lossy(&print.stderr));
    let mut head = print.stdout.splitn(4, |byte| *byte == b'\n');
    assert_eq!(head.next(), Some(&b"P5"[..]));
    let size = String::from_utf8_lossy(head.next().expect("a size")).into_owned();
    let width = size.split(' ').next().and_then(|width| width.parse().ok()).expect("a width");
    let dots = head.nth(1).expect("dots").to_vec();
    Some(Print { width, dots, dots_per_cm: dots_per_inch / 2.54 })
}

impl Print {
    /// How dark the dot at a place of the page is, from 0 for black; the place in cm.
    pub(crate) fn grey(&self, x: f64, y: f64) -> u8 {
        let (column, row) = ((x * self.dots_per_cm) as usize, (y * self.dots_per_cm) as usize);
        self.dots.get(row * self.width + column).copied().unwrap_or(255)
    }

    /// Middles of the dark runs that a straight look from one place to another meets, cm from its start; a run counts
    /// as far as it is darker than the faintest line.
    pub(crate) fn lines_between(&self, from: (f64, f64), to: (f64, f64)) -> Vec<f64> {
        let length = (to.0 - from.0).hypot(to.1 - from.1);
        let steps = (length * self.dots_per_cm).round() as usize;
        let (mut lines, mut run) = (Vec::new(), None);
        for step in 0..=steps {
            let part = step as f64 / steps as f64;
            let dark = self.grey(from.0 + part * (to.0 - from.0), from.1 + part * (to.1 - from.1)) < 160;
            match (dark, run) {
                (true, None) => run = Some(step),
                (false, Some(start)) => {
                    lines.push((start + step - 1) as f64 / 2.0 / steps as f64 * length);
                    run = None;
                }
                _ => {}
            }
        }
        lines
    }
}
