//! The written reference of recipes, in Markdown: what is fixed comes from the tables that read a recipe, what is shown
//! was carried out.

use std::fmt::Write;

use super::lesson::of_role;
use crate::{
    recipe::{EVERY_STEP, FORMS, Key, Makes, PANEL_KEYS, Rule, body_name},
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
    writeln!(out, "| name | what it is | how it is taken |\n|---|---|---|")?;
    for measurement in Measurement::ALL {
        let about = measurement.about();
        writeln!(out, "| `{}` | {} | {} |", body_name(*measurement), about.title, about.how)?;
    }
    let ease: Vec<String> = EaseAt::ALL.iter().map(|at| format!("`{}_ease`", at.key())).collect();
    let style: Vec<String> = Style::ALL.iter().map(|style| format!("`{}`", style.key())).collect();
    writeln!(out, "\nThe ease: {}. The style: {}; `knee_width` and", ease.join(", "), style.join(", "))?;
    writeln!(
        out,
        "`hem_width` are laid flat, half the girth; `length` is how far the hem stays above the floor (0 reaches it), so that a hem"
    )?;
    writeln!(
        out,
        "line is `waist_height - length`; `waist_drop` is how far below the measured waist the finished top is cut, which the"
    )?;
    writeln!(
        out,
        "program does after drafting: no sum needs it. Besides these: what `[asks]` asks for, level lines (how far below"
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
    writeln!(out, "\n| key | written | what it says |\n|---|---|---|")?;
    for key in PANEL_KEYS {
        let left_out = if key.needed { "needed" } else { "may be left out" };
        writeln!(out, "| `{}`, {left_out} | `{}` | {} |", key.name, key.form, key.says)?;
    }
    writeln!(out, "\n`[seams_included]` knows {}.\n\n{TRUING}", edges.join(", "))?;
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
- **A knee without a height**: a step that names the knee needs the line. Write it yourself, `knee_line = \"1/2 crotch_line +
  1/2 hem_line - 5\"` (common practice, no source) or `\"waist_height - knee_height\"`, and say in `notes` that it is yours.
- **Side length** is `outside_leg`: the tape from the waist over the hip to the floor. `waist_height` is the same without the
  hip, `body_rise + inside_leg` nearly so. Of a file that gives no outside leg it is reckoned, and said. A measure that only
  the book knows is an ask.
- **8 to 10, about 4**: write the number that you draft with and the range, `{ is = 9, within = [8, 10] }` under `[asks]`,
  `{ women = 18, men = 18, within = [16, 20] }` under `[style]`; what lies outside is told. A choice, a pleat or a dart, is yours: say it in
  `notes`.
- **Ease.** A number that the book prints stays a number: its 2 at the side is `side = 2`, and then no `hip` under `[ease]`
  changes it. To have it changed, write it as ease: `side = \"1/2 hip_ease\"` with `hip = 4`; an ease is of the whole girth.
  `[ease]` moves no point by itself. It is what sums call `hip_ease`, what a measured fit asks for at thigh and crotch, and
  with `within` the range by which a draft is judged; unsaid it is 0, and judged as 0 at least. What a measurement file gives
  and no sum uses (an ease, a width, an ask) changes nothing, and `breeks draft` says so.
- **A straight side**: a trued side is rounded over the hip. `bow = { side_below_hip = 0 }` runs it straight from hip to knee,
  and `true = false` draws every seam from point to point as printed, with the corner that the book leaves to the ruler.
- **Front and back in one piece**: fold the paper in your mind on the side line, so that the back lies over the front; what
  the book lays out beyond the side line for the back goes towards the fork. Name the same side points in both panels and
  write `one_piece = true`. Two panels come out all the same: tape their side lines together from hip to hem, cut them as one
  piece, and sew what opens above the hip as a dart.
- **A tangent to an arc** touches it where it is square to the radius. Mark the middle between your point and the centre,
  measure half the way as a quantity, and strike an arc of it about the middle: it meets the first arc where the line touches.
- **The waist as printed**: the program trues a waist (square to the centres, smooth over closed darts) and takes hip less
  waist by rules of the trade. `[truing]` with `waist = \"as drawn\"` leaves it; `true = false` leaves everything. Otherwise
  `breeks draft` notes every figure of yours that was changed, by how much, by what, and how to keep it.
- **As printed, not as fitted**: `breeks draft` fits a body to what was measured, and that moves points of yours without a
  note of each; its table of fit parameters says by how much. To see the book's draft, set `trousers.fit = \"proportional\"`
  in the measurement file (or `--set`).
- **Where a crotch curve begins above the hip line**, the hip is read between the curve and the side, and comes out wider
  than the book's figure at the hip line. `true = false` leaves the points.
- **What cannot be said**: a hem that dips at the crease; a dart that hangs otherwise than upright in front and, behind, square
  to the line from centre to side. Say it in `notes`, and draw it by hand.
- **Which copy to hand over**: compare and study with `true = false`; sew from one that is trued. What must stay as the book
  has it, keep with `\"as drawn\"`, and see in `breeks draft` what then does not sew.
";

const PARTS: &str = "\
| part | what it says |
|---|---|
| `title`, `notes` | what it is; its source, what it is for, what was read into it |
| `units` | `\"cm\"` or `\"inch\"`: every plain number of the file that is a length |
| `[asks]` | numbers that only this recipe asks for, with what holds where nobody says otherwise: `belt_width = 4`, or `{ is = 4, within = [3, 5] }`; a measurement file answers under `[trousers.ask]` |
| `[lines]` | level lines below the waist line, in order, `name = \"sum\"`, or `{ at = \"sum\", say = \"...\" }`, or by size `{ by = \"hip\", rungs = [[88, 17], [96, 17.5]], between = \"step\" }`. `crotch_line` and `hem_line` are needed, `hip_line` and `knee_line` wanted |
| `[construction]` | `start` and `steps` |
| `[front]`, `[back]` | which point is what, darts, pleats, curves |
| `[ease]`, `[style]` | what holds where a measurement file says nothing: `hip = 4`, or `{ women = 4, men = 5, within = [3, 8] }`; a style may be a sum. `within`, the least and the most, may be left out |
| `[seams_included]` | seams that the printed lines include, by edge |
| `[truing]` | what is made to agree after drawing, and what stays as drawn |
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
Each panel names ten points, all of them needed (but for those of a level that the recipe does not draw), and says how its
curves and darts are.
";

const TRUING: &str = "\
`[truing]`, every key of which may be left out:

| key | what it does |
|---|---|
| `true = false` | trues nothing: every seam runs from point to point as the book prints it, by its `bow` alone, and what does not agree is reported. The other keys then have nothing to do |
| `waist = \"as drawn\"` | keeps both ends of the waist, its darts and its straight line; so the side seams keep what they differ by. Everything else is trued |
| `inseam = \"as drawn\"` | keeps the back crotch point; so the inseams keep what they differ by. Else it slides up or down until they agree |
| `crossing_tilt = 5` | degrees. The front crotch curve meets its inseam at 90 and this, the back at 90 less this, so that the two run on into each other. 0, both square, is the rule; a plus carries the lowest place of the sewn crotch onto the back, a minus onto the front |
";

const SEEING: &str = "\
## Seeing where a step went wrong

`breeks blocks check mine.toml --until 7` carries the recipe out up to the seventh row of `steps`, prints every line, length and
point so far with its place, and draws them (`drafts/mine-until-7.svg`, the last point largest). `--demo five` or
`--body bow.toml` takes another body. It also works while a later step has no answer on that body.

`breeks blocks check mine.toml` tries twenty bodies of both sexes, with `--body stroke.toml` (or `--demo five`) that one alone
and as its file orders. For each refusal it names the rows that make the point or seam, their lines in the file, and what under
`[truing]` or `[front]` mends it. **The book or your row?** Where `--compare` agrees in every figure, your rows are the book's, and
it is the printed draft that does not sew on this body, as printed drafts often do not. Begin with everything trued: what
breaks then is a matter of the rows; what breaks only \"as drawn\" or with `true = false` is the book's.

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
