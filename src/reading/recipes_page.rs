//! The written reference of recipes, in Markdown: what is fixed comes from the tables that read a recipe, what is shown
//! was carried out.

use std::fmt::Write;

use super::lesson::of_role;
use crate::{
    recipe::{EVERY_STEP, FORMS, Key, Makes, Rule, body_name},
    terms::{EaseAt, Edge, Measurement, Panel, Role, Style, Word},
};

/// A rule's example as it came out.
#[derive(Clone, Debug)]
pub struct ShownRule {
    /// The rule.
    pub rule: &'static Rule,
    /// Where its picture lies, as seen from the page.
    pub picture: String,
    /// Row by row what was made, in plain words and with its place.
    pub made: Vec<String>,
    /// A row that is wrong, and the message that it earns.
    pub slip: Option<ShownSlip>,
}

/// Something wrong, and what is said about it.
#[derive(Clone, Debug)]
pub struct ShownSlip {
    /// The wrong text.
    pub text: String,
    /// The message.
    pub message: String,
}

/// The whole reference. `sound` is the small recipe that the examples stand in, `forms` a row with each kind of line and what
/// it makes, `sums` are sums as they may be written
/// with what they are read as, `slips` further wrong texts with their messages.
pub fn recipes_page(
    sound: &str,
    rules: &[ShownRule],
    forms: &[(String, String)],
    sums: &[(String, String)],
    slips: &[ShownSlip],
) -> String {
    let mut out = String::new();
    // Writing to a string cannot fail.
    let _ = write_page(&mut out, sound, rules, forms, sums, slips);
    out
}

fn write_page(
    out: &mut String,
    sound: &str,
    rules: &[ShownRule],
    forms: &[(String, String)],
    sums: &[(String, String)],
    slips: &[ShownSlip],
) -> std::fmt::Result {
    out.push_str(BEGINNING);
    writeln!(out, "{COPYING}")?;
    writeln!(out, "## The parts of a file\n\n{PARTS}")?;
    writeln!(
        out,
        "This is the recipe in which every example below stands. It has a front alone; that can be constructed and"
    )?;
    writeln!(
        out,
        "compared, and a `[back]` makes it one to draft with.\n\n```toml\n{}\n```\n",
        sound.trim_end()
    )?;

    writeln!(out, "## Sums\n\n{SUMS}")?;
    writeln!(out, "| written | read as |\n|---|---|")?;
    for (written, read) in sums {
        writeln!(out, "| `{written}` | `{read}` |")?;
    }
    writeln!(out, "\nThe names of the body; girths go by their short name:\n")?;
    writeln!(out, "| name | what it is |\n|---|---|")?;
    for measurement in Measurement::ALL {
        writeln!(out, "| `{}` | {} |", body_name(*measurement), measurement.about().title)?;
    }
    let ease: Vec<String> = EaseAt::ALL.iter().map(|at| format!("`{}_ease`", at.key())).collect();
    let style: Vec<String> = Style::ALL.iter().map(|style| format!("`{}`", style.key())).collect();
    writeln!(out, "\nThe ease: {}. The style: {}; `knee_width` and", ease.join(", "), style.join(", "))?;
    writeln!(
        out,
        "`hem_width` are laid flat, half the girth. Besides these: what `[asks]` asks for, level lines (how far below"
    )?;
    writeln!(
        out,
        "the waist line, `waist_line` is 0) and quantities, each from the row after the one that makes it.\n"
    )?;

    writeln!(out, "## Steps\n\n{STEPS}")?;
    keys(out, EVERY_STEP)?;
    for makes in Makes::ALL {
        let title = match makes {
            Makes::Quantity => "A length with a name: `quantity`",
            Makes::Level => "A level line: `level`",
            Makes::Point => "A point: `point`",
        };
        writeln!(out, "\n### {title}\n")?;
        for shown in rules.iter().filter(|shown| shown.rule.makes == makes) {
            rule(out, shown)?;
        }
    }
    writeln!(out, "## Lines to lay a point on\n\n{LINES}")?;
    writeln!(out, "| written | the line |\n|---|---|")?;
    writeln!(out, "| `\"hip_line\"` | a level line by its name |")?;
    writeln!(out, "| `[\"A\", \"B\"]` | the straight through two points, beyond them too |")?;
    for form in FORMS {
        let keys: Vec<String> = form.keys.iter().map(|key| format!("`{}`: {}", key.name, key.says)).collect();
        writeln!(out, "| `{{ {} }}` | {}; {} |", form_keys(form.keys), form.says, keys.join("; "))?;
    }
    writeln!(out, "\nOne row with each, and what it makes:\n")?;
    for (example, made) in forms {
        writeln!(out, "```toml\n{example},\n```\n\n- {made}\n")?;
    }
    writeln!(out, "## Panels: which point is what\n\n{PANELS}")?;
    writeln!(out, "| key | of the front | of the back |\n|---|---|---|")?;
    for role in Role::ALL {
        writeln!(
            out,
            "| `{}` | {} | {} |",
            role.key(),
            of_role(Panel::Front, *role),
            of_role(Panel::Back, *role)
        )?;
    }
    let edges: Vec<&str> = Edge::ALL.iter().map(|edge| edge.key()).collect();
    writeln!(out, "\n{FURTHER}\n`[seams_included]` knows {}.\n\n{TRUING}", edges.join(", "))?;
    writeln!(out, "{SEEING}")?;
    writeln!(out, "## What is said of slips\n")?;
    writeln!(out, "Every message shows the line, what was expected there, and what to do. Some:\n")?;
    for slip in slips {
        said(out, slip)?;
    }
    Ok(())
}

fn form_keys(keys: &[Key]) -> String {
    keys.iter().map(|key| format!("{} = ...", key.name)).collect::<Vec<_>>().join(", ")
}

fn keys(out: &mut String, keys: &[Key]) -> std::fmt::Result {
    for key in keys {
        writeln!(out, "- `{}`: {}", key.name, key.says)?;
    }
    Ok(())
}

fn rule(out: &mut String, shown: &ShownRule) -> std::fmt::Result {
    let rule = shown.rule;
    writeln!(out, "#### `{}` by `{}`\n\n{}\n", rule.makes.key(), rule.chosen_by, rule.says)?;
    writeln!(out, "- `{}`: the new name", rule.makes.key())?;
    keys(out, rule.keys)?;
    writeln!(out, "\n```toml")?;
    for row in rule.example {
        writeln!(out, "{row},")?;
    }
    writeln!(out, "```\n")?;
    for made in &shown.made {
        writeln!(out, "- {made}")?;
    }
    if !shown.picture.is_empty() {
        writeln!(out, "\n![the example drawn]({})", shown.picture)?;
    }
    writeln!(out)?;
    if let Some(slip) = &shown.slip {
        said(out, slip)?;
    }
    Ok(())
}

fn said(out: &mut String, slip: &ShownSlip) -> std::fmt::Result {
    writeln!(out, "`{}` is answered\n\n```text\n{}\n```\n", slip.text, slip.message.trim_end())
}

const BEGINNING: &str = "\
# Writing a recipe

Made by a test from the tables that read a recipe (`REFRESH_PAGES=1 cargo test --test recipe`); change the tables, not this
page. Every example was run.

A recipe is the construction of a handbook as a list: level lines, then steps that mark points, then which point is what.
It is a text file in TOML: `key = value`, texts between quotes, `#` before remarks. Lengths are centimetres unless the file
says `units = \"inch\"`. Toile first: a copied draft fits the body it was printed for, and no other before it is tried.

## A first recipe in ten steps

1. `breeks blocks new mine.toml --from women` (or `men`) writes a skeleton: a small whole recipe to change row by row.
   `--from classic` begins with a shipped recipe, `--from other.toml` with a file.
2. `breeks draft --demo stroke --block mine.toml` drafts it as it is, so that you begin from something that works.
3. Write `title` and, in `notes`, the source and what you read into it where it is silent.
4. `[lines]`: write the level lines of your book, from the waist down, each as a sum.
5. `[construction]`: `start` names the first point, where your book begins; it lies on the waist line. Everything is counted
   from there: *side* is towards the side seam, *fork* towards the crotch point, whichever way round the book draws.
6. Write the first steps of the front, one row for each sentence of the book, with the book's own numbers or letters as names.
7. `breeks blocks check mine.toml --until 3` prints where everything lies after three steps, and draws it. Do this often.
8. When the front is there, name its ten points under `[front]`; then the back, drawn over the front, and `[back]`.
9. Darts, pleats, the fullness of the crotch curve, ease and style; `breeks blocks check mine.toml` drafts twenty bodies of
   both sexes and says where the recipe breaks.
10. `breeks blocks mine.toml --compare book.csv` sets the figures that the book prints beside yours.

";

const COPYING: &str = "\
## Copying a page of a handbook

- **A sentence of the book is a row.** `5 on the crotch line, a twelfth of the hip and 1.5 from 1 towards the centre` is
  `{ point = \"5\", from = \"1\", fork = \"1/12 hip + 1.5\" }`. Keep the book's names: numbers and letters are good names,
  an apostrophe may follow (`3'`). Names of quantities and lines are small letters, digits and `_`.
- **From which side?** Books draw the front now left, now right. Ask only: does the new point go towards the side seam or
  towards the crotch? Front and back lie over each other, their side seams on the same side.
- **Half hip.** Where a book reckons with half the hip, `1/4 of the half hip` is `1/8 hip`.
- **A vertical through a point** is not drawn by itself: `from = \"5\", on = \"hip_line\"` marks where it meets a level.
- **Measured obliquely**, swung with the tape until it meets a line: `span`. **Along a line**: `toward` with `along`.
- **Square to the slanted centre back**: `{ square_to = [\"D\", \"11\"], at = \"D\" }` as the line to lie `on`.
- **A length that is measured and used again** (the front seam, to make the back as long): a `quantity` with `length` or
  `curve`.
- **Sizes in a table**: `by`, `rungs`, `between = \"step\"`.
- **Seams included**: draft the lines as printed and say under `[seams_included]` how wide the seams are; the panel is drawn
  inside them.
- **No knee line, no hip line**: leave `knee_line` or `hip_line` out, and with them `side_knee`, `inner_knee` or `centre_hip`.
  The hip is then taken where the body's is, the knee 5 cm above the middle of crotch and hem. A point of a panel may also be
  two points, `side_hip = [\"9\", \"6\"]`: where their line meets that level.
- **Front and back in one piece**: fold the paper in your mind on the side line, so that the back lies over the front; what
  the book lays out beyond the side line for the back goes towards the fork. Name the same side points in both panels and
  write `one_piece = true`.
- **A tangent to an arc** touches it where it is square to the radius. Mark the middle between your point and the centre,
  measure half the way as a quantity, and strike an arc of it about the middle: it meets the first arc where the line touches.
- **The waist as printed**: the program trues a waist (square to the centres, smooth over closed darts) and takes hip less
  waist by rules of the trade. `[truing]` with `waist = \"as drawn\"` leaves it; `true = false` leaves everything. Otherwise
  `breeks draft` notes every figure of yours that was changed, and by how much.
";

const PARTS: &str = "\
| part | what it says |
|---|---|
| `title`, `notes` | what it is; its source, what it is for, what was read into it |
| `units` | `\"cm\"` or `\"inch\"`: every plain number of the file that is a length |
| `[asks]` | numbers that only this recipe asks for, with what holds where nobody says otherwise; a measurement file answers under `[trousers.ask]` |
| `[lines]` | level lines below the waist line, in order, `name = \"sum\"`, or `{ at = \"sum\", say = \"...\" }`, or by size `{ by = \"hip\", rungs = [[88, 17], [96, 17.5]], between = \"step\" }`. `crotch_line` and `hem_line` are needed, `hip_line` and `knee_line` wanted |
| `[construction]` | `start` and `steps` |
| `[front]`, `[back]` | which point is what, darts, pleats, curves |
| `[ease]`, `[style]` | what holds where a measurement file says nothing: `hip = 4`, or `{ women = 4, men = 5, within = [3, 8] }` |
| `[seams_included]` | seams that the printed lines include, by edge |
| `[truing]` | `true`, `waist`, `crossing_tilt` |
| `one_piece` | front and back are drafted with one side line |
";

const SUMS: &str = "\
A length is a sum as the trade says it: fractions of names, and constants. A plain number is a constant. Brackets hold a sum
that is multiplied or divided by a number; two names are never multiplied.
";

const STEPS: &str = "\
A step is a row `{ ... }` of the list `steps`. It makes one thing, which the rows after it may use, and follows one rule. The
rule is known by its key. Every step may also have:
";

const LINES: &str = "\
Where a rule says `on` or `line`, it may be any of these:
";

const PANELS: &str = "\
`crease` is a point on the crease, which is the grain; then the ten points. `vertical` (if it is not the centre hip) is the
point from whose upright the crotch extension is counted.
";

const FURTHER: &str = "\
- `bend = { fullness = 0.7 }`: how far the crotch curve is drawn into the corner of its tangents, 0.5 to 0.85 as a rule; or
  `bend = { guide = \"touch\" }`, a point that it passes through, as books give it on the diagonal.
- `bow = { side_above_hip = 0.5, inseam_above_knee = -0.75 }`: how far the seams stand out from straight; a minus is hollow.
- `dart = [{ on = \"P\", intake = \"2\", length = 10 }]`: a dart under the point P of the waist, with its width and length.
- `pleat = [{ on = \"P\", intake = 3, length = 5 }]`: a pleat, laid and not sewn down; `length` is how far its folds are marked.
- `line = [[\"A\", \"B\"]]`: a line of style across the panel, a yoke.
";

const TRUING: &str = "\
`[truing]`: `true = false` draws the panels as the book prints them and only reports what does not agree; `waist = \"as drawn\"`
leaves the waist, its darts and its ends alone; `crossing_tilt` is how far the crotch crossing leans from square, in degrees.
";

const SEEING: &str = "\
## Seeing where a step went wrong

`breeks blocks check mine.toml --until 7` carries the recipe out up to the seventh row of `steps`, prints every line, length and
point so far with its place, and draws them (`drafts/mine-until-7.svg`, the last point largest). `--demo five` or
`--body mine.toml` takes another body. It also works while a later step has no answer on that body.

`breeks blocks mine.toml` prints the recipe as a handbook would: read it beside the book. `breeks lesson --demo stroke --block
mine.toml` teaches it step by step, and `breeks draft --json` has every point under `construction`.

## Checking a copy: `--compare`

`breeks blocks mine.toml --compare book.csv` needs a table of what the book prints, `what,of,book` and if wanted `within`:

```csv
what,of,book
given,units,cm
given,hip,96
given,waist,72
given,knee_width,22
across,9,-16
down,24,28.5
across,9 5,6.5
length,9 15 14,76.2
lean,19 21,8.13
value,crotch_line,28
```

`given` rows are what the book drafted for: measurements, ease (`hip_ease`), style, asks, `units`, `sex`. `across` and `down`
with one point count from the start (minus: towards the fork, above the waist line), with two how far they lie apart; `length`
goes straight from point to point; `lean` is the angle from the upright of the line up from the first point, towards the side;
`value` is a quantity or a level line. 0.05 cm is near enough unless the row says otherwise. The figures are those of the
construction, before anything is trued.
";
