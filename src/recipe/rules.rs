//! The one table of what a step may say: the reader takes its keys from it, and the written reference is made from it.

/// A rule by which a step makes something.
#[derive(Clone, Copy, Debug)]
pub struct Rule {
    /// What the step makes: the key that gives it its name.
    pub makes: Makes,
    /// The key that chooses this rule among those that make the same.
    pub chosen_by: &'static str,
    /// What is done, in one sentence.
    pub says: &'static str,
    /// Its further keys.
    pub keys: &'static [Key],
    /// Rows that follow it, each making something new from what the small sound recipe has.
    pub example: &'static [&'static str],
}

/// What a step makes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Makes {
    /// A length with a name.
    Quantity,
    /// A level line.
    Level,
    /// A point.
    Point,
}

/// A key of a step or of a line.
#[derive(Clone, Copy, Debug)]
pub struct Key {
    /// As it is written.
    pub name: &'static str,
    /// What it says.
    pub says: &'static str,
}

/// A key of `[front]` and `[back]` beside the ten points.
#[derive(Clone, Copy, Debug)]
pub struct PanelKey {
    /// As it is written.
    pub name: &'static str,
    /// How its value may look.
    pub form: &'static str,
    /// What it says, and what holds without it.
    pub says: &'static str,
    /// A panel cannot be drawn without it.
    pub needed: bool,
}

/// A line that a point is to lie on, written as a table.
#[derive(Clone, Copy, Debug)]
pub struct Form {
    /// The key that chooses it.
    pub chosen_by: &'static str,
    /// What the line is.
    pub says: &'static str,
    /// Its further keys.
    pub keys: &'static [Key],
    /// A row that follows it, making something new from what the small sound recipe has.
    pub example: &'static str,
}

impl Makes {
    /// All, in the order in which the reference tells them.
    pub const ALL: [Self; 3] = [Self::Quantity, Self::Level, Self::Point];

    /// The key that names what is made.
    pub fn key(self) -> &'static str {
        match self {
            Self::Quantity => "quantity",
            Self::Level => "level",
            Self::Point => "point",
        }
    }
}

/// Keys that every step may have.
pub const EVERY_STEP: &[Key] = &[
    key("say", "the sentence of the lesson: why, or how a teacher says it"),
    key("panel", "`\"front\"` or `\"back\"`, where it is not the panel that first needs the step"),
];

const BY: &[Key] = &[
    key("by", "the name that the size goes by, `\"hip\"`"),
    key("rungs", "`[[size, value], ...]`, sizes rising, two at least; beyond the ends the end values hold"),
    key(
        "between",
        "`\"step\"`: the value of the size below holds up to the next; `\"ramp\"`: it rises in proportion",
    ),
];

const fn key(name: &'static str, says: &'static str) -> Key {
    Key { name, says }
}

/// Every rule of a step.
pub const RULES: &[Rule] = &[
    Rule {
        makes: Makes::Quantity,
        chosen_by: "is",
        says: "A length worked out from the body, the ease and the style.",
        keys: &[key("is", "a sum as the trade says it: `\"1/16 hip + 0.5\"`")],
        example: &[r#"{ quantity = "gain", is = "(hip + hip_ease)/20 - 1/2 extension" }"#],
    },
    Rule {
        makes: Makes::Quantity,
        chosen_by: "by",
        says: "A length that goes by size, as a table of the handbook prints it.",
        keys: BY,
        example: &[
            r#"{ quantity = "touch_depth", by = "hip", rungs = [[88, 3], [104, 3.25]], between = "step" }"#,
        ],
    },
    Rule {
        makes: Makes::Quantity,
        chosen_by: "length",
        says: "A length read on the paper: straight from point to point, with the tape on its edge round a corner.",
        keys: &[key("length", "the points in order, `[\"a\", \"b\"]` or more")],
        example: &[r#"{ quantity = "side_length", length = ["side_top", "side", "side_low"] }"#],
    },
    Rule {
        makes: Makes::Quantity,
        chosen_by: "curve",
        says: "A length read along a curve: from the first point to the second, leaving each towards the corner.",
        keys: &[
            key("curve", "the two ends, `[\"a\", \"b\"]`"),
            key("corner", "the point where the two end tangents cross"),
            key("fullness", "how far the curve is drawn into the corner, over 0 and at most 0.98; or"),
            key("guide", "a point that it passes through"),
        ],
        example: &[
            r#"{ quantity = "crotch_curve", curve = ["centre", "fork"], corner = "corner", fullness = 0.6 }"#,
        ],
    },
    Rule {
        makes: Makes::Level,
        chosen_by: "at",
        says: "A level line so far below the waist line. One that needs only the body stands under `[lines]`.",
        keys: &[key("at", "a sum, in which quantities and earlier lines may stand")],
        example: &[r#"{ level = "yoke_line", at = "hip_line - 1/2 extension" }"#],
    },
    Rule {
        makes: Makes::Level,
        chosen_by: "by",
        says: "A level line that goes by size. Under `[lines]` the same keys say it.",
        keys: BY,
        example: &[
            r#"{ level = "seat_line", by = "hip", rungs = [[88, 17.1], [96, 17.5]], between = "step" }"#,
        ],
    },
    Rule {
        makes: Makes::Level,
        chosen_by: "through",
        says: "The level line through a point.",
        keys: &[key("through", "the point")],
        example: &[r#"{ level = "calf_line", through = "in_mid" }"#],
    },
    Rule {
        makes: Makes::Point,
        chosen_by: "from",
        says: "From a point, squared across, up or down.",
        keys: &[
            key("from", "the point to start from"),
            key("side", "so far towards the side seam; or"),
            key("fork", "so far towards the fork, the crotch point"),
            key("up", "so far up; or"),
            key("down", "so far down; or"),
            key("on", "straight up or down to a line"),
        ],
        example: &[
            r#"{ point = "P", from = "corner", side = "1/24 hip", up = 3 }"#,
            r#"{ point = "Q", from = "side", on = "crotch_line" }"#,
            r#"{ point = "R", from = "waist", side = 2, on = ["waist", "side"] }"#,
        ],
    },
    Rule {
        makes: Makes::Point,
        chosen_by: "fork_up",
        says: "From a point along the diagonal towards the fork and up: the touching point of a crotch curve.",
        keys: &[key("from", "the corner to start from"), key("fork_up", "so far along the diagonal")],
        example: &[r#"{ point = "P", from = "corner", fork_up = 3 }"#],
    },
    Rule {
        makes: Makes::Point,
        chosen_by: "toward",
        says: "On the line from one point through another.",
        keys: &[
            key("from", "the first point"),
            key("toward", "the second point"),
            key(
                "part",
                "a part of the way from the first: `\"1/2\"` the middle, 2 as far again beyond the second, a minus backwards; or",
            ),
            key("along", "so far from the first; or"),
            key("past", "so far beyond the second"),
        ],
        example: &[
            r#"{ point = "P", from = "fork", toward = "in_low", part = "1/3" }"#,
            r#"{ point = "Q", from = "fork", toward = "in_low", along = 12 }"#,
            r#"{ point = "R", from = "centre", toward = "waist", past = "1/24 hip" }"#,
        ],
    },
    Rule {
        makes: Makes::Point,
        chosen_by: "span",
        says: "So far from a point, laid obliquely until it meets a line: the tape or the compasses are swung.",
        keys: &[
            key("from", "the point that the tape is held on"),
            key("span", "the length"),
            key("on", "the line that it is swung to"),
            key(
                "towards",
                "which of the two places: the one farther `\"side\"` (as where nothing is said), `\"fork\"`, `\"up\"` or `\"down\"`",
            ),
        ],
        example: &[
            r#"{ point = "P", from = "waist", span = "1/4 waist + 4", on = "hip_line" }"#,
            r#"{ point = "Q", from = "waist", span = 22, on = { about = "fork", reach = 30 }, towards = "side" }"#,
        ],
    },
    Rule {
        makes: Makes::Point,
        chosen_by: "line",
        says: "Where two lines meet.",
        keys: &[
            key("line", "the one: two points, or any line of the table of lines"),
            key("on", "the other"),
            key(
                "towards",
                "where an arc is met, which of the two places: the one farther `\"side\"`, `\"fork\"`, `\"up\"` or `\"down\"`",
            ),
        ],
        example: &[
            r#"{ point = "P", line = ["side", "side_low"], on = "crotch_line" }"#,
            r#"{ point = "Q", line = ["waist", "side"], on = ["centre", "side_top"] }"#,
            r#"{ point = "R", line = { square_to = ["waist", "side"], at = "side_top" }, on = { upright = "corner" } }"#,
        ],
    },
];

/// Every line that is written as a table. Besides these a line is a level's name, or two points.
pub const FORMS: &[Form] = &[
    Form {
        chosen_by: "level_of",
        says: "the level through a point: squared across from it",
        keys: &[key("level_of", "the point")],
        example: r#"{ point = "P", line = ["waist", "side"], on = { level_of = "corner" } }"#,
    },
    Form {
        chosen_by: "upright",
        says: "the upright through a point: squared up and down from it",
        keys: &[key("upright", "the point")],
        example: r#"{ point = "P", line = ["waist", "side"], on = { upright = "O" } }"#,
    },
    Form {
        chosen_by: "square_to",
        says: "the line through a point, square to a slanted line",
        keys: &[key("square_to", "two points of the slanted line"), key("at", "the point it passes through")],
        example: r#"{ point = "P", from = "waist", span = 20, on = { square_to = ["fork", "waist"], at = "waist" } }"#,
    },
    Form {
        chosen_by: "beside",
        says: "the line through a point, parallel to a slanted line",
        keys: &[key("beside", "two points of the slanted line"), key("at", "the point it passes through")],
        example: r#"{ point = "P", line = { beside = ["waist", "side"], at = "centre" }, on = "crotch_line" }"#,
    },
    Form {
        chosen_by: "slope",
        says: "the line through a point that leans from the upright",
        keys: &[
            key("slope", "`\"15 : 3.5\"`, 15 up for 3.5 across, or `\"12 degrees\"` from the upright"),
            key("at", "the point it passes through"),
            key("towards", "`\"side\"` or `\"fork\"`: where it leans going up"),
        ],
        example: r#"{ point = "P", line = { slope = "15 : 3.5", at = "corner", towards = "side" }, on = "waist_line" }"#,
    },
    Form {
        chosen_by: "about",
        says: "the arc about a point, struck with the compasses",
        keys: &[key("about", "where the compasses stand"), key("reach", "how far they are opened")],
        example: r#"{ point = "P", line = { about = "centre", reach = 5 }, on = { about = "corner", reach = "extension" }, towards = "side" }"#,
    },
];

/// What a panel says beside its ten points.
pub const PANEL_KEYS: &[PanelKey] = &[
    PanelKey {
        name: "crease",
        form: "crease = \"P\"",
        says: "a point on the crease, which is the grain",
        needed: true,
    },
    PanelKey {
        name: "bend",
        form: "bend = { fullness = 0.6 }",
        says: "the crotch curve, drawn into the corner where its end tangents cross (the centre line produced, and the line on \
               which it lands at the crotch point). From each end its handle reaches the part `fullness` of the way to that \
               corner: at 0 it would be the straight between the ends, at 1 the corner itself. 0.5 to 0.85 as a rule, 0.6 \
               where a book says only \"as in the figure\" (common practice, no source). Or `bend = { guide = \"P\" }`: the \
               point that it passes through, as books give it on the diagonal of the corner",
        needed: true,
    },
    PanelKey {
        name: "bow",
        form: "bow = { side_above_hip = 0.5, side_below_hip = 0, inseam_above_knee = -0.75 }",
        says: "how far a seam stands out from the straight, in the middle between waist and hip, hip and knee, crotch point \
               and knee; a minus is hollow, 0 is straight. Each may be left out: the seam then runs as smoothly as its points \
               let it, the side rounded over the hip. The side follows the bow where the hip stands farther out than the \
               waist; the inseam runs on from the leg below the knee, and cannot be less hollow than the turn there asks for. \
               `breeks draft` notes a bow that had to give way",
        needed: false,
    },
    PanelKey {
        name: "dart",
        form: "dart = [{ on = \"P\", intake = 2, length = 10 }]",
        says: "a dart under the point P of the waist, with its width there and its length; without, no dart is the recipe's, \
               and truing makes one where hip less waist asks for it. A book that gives no length: 9 to 11 in front, 12 to 14 \
               behind (common practice, no source)",
        needed: false,
    },
    PanelKey {
        name: "pleat",
        form: "pleat = [{ on = \"P\", intake = 3, length = 5 }]",
        says: "a pleat, laid and not sewn down; `length` is how far its folds are marked",
        needed: false,
    },
    PanelKey {
        name: "vertical",
        form: "vertical = \"P\"",
        says: "the point from whose upright the crotch extension is counted when two drafts are compared and where the lesson \
               explains it; it moves nothing. Without it the centre hip",
        needed: false,
    },
    PanelKey {
        name: "line",
        form: "line = [[\"A\", \"B\"]]",
        says: "a line of style across the panel, a yoke",
        needed: false,
    },
];

/// How a key that is lacking is written, as a remedy; `row` is how messages call the table that lacks it.
pub(super) fn form_of(row: &str, key: &str) -> Option<String> {
    let of_panel = |name: &str| PANEL_KEYS.iter().find(|known| known.name == name);
    match row {
        "[front]" | "[back]" => {
            if let Some(known) = of_panel(key) {
                return Some(format!("write `{}`", known.form));
            }
            let where_silent = match key {
                "curve_start" => {
                    "; where the book does not say: the centre line 1/16 of the hip and 1.5 above the crotch line, or at \
                     the hip (common practice, no source)"
                }
                "side_knee" | "inner_knee" => {
                    "; a recipe without `knee_line` leaves the knee out, and the program marks it"
                }
                _ => "",
            };
            Some(format!("name a point that a step makes: `{key} = \"P\"`{where_silent}"))
        }
        "dart" | "pleat" | "bend" | "bow" => of_panel(row).map(|known| format!("write `{}`", known.form)),
        "[construction]" if key == "steps" => {
            Some("write `steps = [{ point = \"corner\", from = \"O\", on = \"crotch_line\" }]`".to_owned())
        }
        "[construction]" => Some("write `start = \"O\"`: the point where the book begins".to_owned()),
        "ask" => Some("write `{ is = 9, within = [8, 10] }`, or the number alone".to_owned()),
        "ease" | "style" => Some(format!(
            "write `{{ women = 4, men = 5, within = [3, 8] }}`, `within` only if wanted, or one {} for both",
            if row == "ease" { "number" } else { "sum" }
        )),
        _ => None,
    }
}

impl Rule {
    /// The keys in the order of writing, the name of what is made first.
    pub fn all_keys(&self) -> impl Iterator<Item = &'static str> {
        [self.makes.key()].into_iter().chain(self.keys.iter().map(|key| key.name))
    }
}

/// The rules that make one kind of thing.
pub(super) fn making(makes: Makes) -> impl Iterator<Item = &'static Rule> {
    RULES.iter().filter(move |rule| rule.makes == makes)
}
