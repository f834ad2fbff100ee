//! What is seen on a toile, taken apart: where, how the cloth feels, how the lines run, what happens, and when. Names of
//! wrinkles are not used alike in the trade; these are what a person can point at.

use crate::terms::{Word, words};

words! {
    /// Where on the trousers a sign is.
    Place {
        /// The band and the top edge.
        Waist = "waist",
        /// Over the abdomen, below the front band.
        Abdomen = "abdomen",
        /// The hip, with the high hip and the side pockets.
        Hip = "hip",
        /// Over the seat.
        Seat = "seat",
        /// Under the seat, where it turns into the thigh.
        UnderSeat = "under_seat",
        /// The base of the fly.
        Fly = "fly",
        /// Where the legs meet: crotch seam and fork.
        Crotch = "crotch",
        /// From crotch to knee.
        Thigh = "thigh",
        /// The knee.
        Knee = "knee",
        /// The lower leg, with the shin.
        Calf = "calf",
        /// The hem.
        Hem = "hem",
        /// The seam at the side.
        SideSeam = "side_seam",
        /// The seam inside the leg.
        Inseam = "inseam",
        /// The crease line, which shows the grain.
        Crease = "crease",
        /// The legs as a whole.
        Legs = "legs",
    }
}

words! {
    /// Which face of the trousers.
    Face {
        /// The front.
        Front = "front",
        /// The back.
        Back = "back",
        /// The inside of the leg.
        Inner = "inner",
        /// The side.
        Outer = "outer",
    }
}

words! {
    /// How the cloth feels there.
    Feel {
        /// Strained: too little.
        Tight = "tight",
        /// Slack: too much.
        Loose = "loose",
    }
}

words! {
    /// How lines or folds run.
    Lines {
        /// Across.
        Level = "level",
        /// Up and down.
        Upright = "upright",
        /// At a slant.
        Slanting = "slanting",
        /// Out from one place like a fan.
        Fan = "fan",
        /// Curved, the ends up.
        Smile = "smile",
        /// Curved, the ends down.
        Frown = "frown",
    }
}

words! {
    /// What the cloth does there.
    Does {
        /// Stands off the body or opens.
        Gapes = "gapes",
        /// Cuts into the body.
        Cuts = "cuts",
        /// Goes up and stays.
        Climbs = "climbs",
        /// Goes or hangs down.
        Drops = "drops",
        /// Stands above its place.
        TooHigh = "too_high",
        /// Swings to the front.
        Forward = "forward",
        /// Swings to the back.
        Backward = "backward",
        /// Swings away from the other leg.
        Outward = "outward",
        /// Swings towards the other leg.
        Inward = "inward",
        /// Winds round the leg.
        Twists = "twists",
        /// Does not go over the foot.
        WillNotPass = "will_not_pass",
        /// Is lower at one end than at the other.
        Slopes = "slopes",
        /// Stands out in a pouch.
        Bulges = "bulges",
        /// Hangs on the body or the shoe.
        Catches = "catches",
        /// Is drawn in under the seat.
        Cups = "cups",
        /// Holds in moving.
        Binds = "binds",
        /// Has not the length it needs.
        TooShort = "too_short",
        /// Has more length than it needs.
        TooLong = "too_long",
    }
}

words! {
    /// How much of it there is, where that was said.
    Degree {
        /// A little.
        Slight = "slight",
        /// A great deal.
        Strong = "strong",
    }
}

words! {
    /// When it shows.
    When {
        /// Standing.
        Standing = "standing",
        /// Sitting.
        Sitting = "sitting",
        /// Walking, stepping, bending.
        Walking = "walking",
        /// After washing.
        Washed = "washed",
        /// Putting the trousers on.
        Dressing = "dressing",
    }
}

/// One sign. What was not said stays open.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Sign {
    /// Where.
    pub at: Option<Place>,
    /// On which face.
    pub face: Option<Face>,
    /// Tight or loose.
    pub feel: Option<Feel>,
    /// How lines run.
    pub lines: Option<Lines>,
    /// Where they point.
    pub to: Option<Place>,
    /// What happens.
    pub does: Option<Does>,
    /// When.
    pub when: Option<When>,
    /// On one side of the body only.
    pub one_side: bool,
    /// Nothing is wrong there.
    pub fine: bool,
}

impl Sign {
    /// Whether anything is said of the cloth, beyond a place.
    pub fn says_something(&self) -> bool {
        self.feel.is_some() || self.lines.is_some() || self.does.is_some() || self.fine || self.one_side
    }

    /// The sign in plain words.
    pub fn plain(&self) -> String {
        let mut said: Vec<String> = Vec::new();
        if let Some(at) = self.place() {
            said.push(at);
        }
        if self.one_side {
            said.push("on one side".to_owned());
        }
        if self.fine {
            said.push("nothing wrong".to_owned());
        }
        said.extend(self.feel.map(|feel| feel.key().to_owned()));
        let folds = if self.feel == Some(Feel::Loose) { "folds" } else { "lines" };
        said.extend(self.lines.map(|lines| lines.said(folds)));
        said.extend(self.does.map(|does| does.said().to_owned()));
        said.extend(self.to.map(|to| format!("towards the {}", to.key().replace('_', " "))));
        said.extend(self.when.map(|when| when.said().to_owned()));
        said.join(", ")
    }

    /// Where it is, in plain words.
    pub fn place(&self) -> Option<String> {
        let spoken = |key: &str| key.replace('_', " ");
        match (self.at, self.face) {
            (Some(Place::UnderSeat), _) => Some("under the seat".to_owned()),
            (Some(at), Some(face)) if at.has_faces() => {
                Some(format!("{} of the {}", face.said(), spoken(at.key())))
            }
            (Some(at), _) => Some(spoken(at.key())),
            (None, Some(face)) => Some(face.said().to_owned()),
            (None, None) => None,
        }
    }
}

impl Place {
    /// Whether one may ask on which face of it.
    pub fn has_faces(self) -> bool {
        !matches!(
            self,
            Self::Seat | Self::UnderSeat | Self::Abdomen | Self::Fly | Self::SideSeam | Self::Inseam
        )
    }

    /// Places of which a person may mean one and say the other.
    pub(super) fn is_near(self, other: Self) -> bool {
        use Place::{
            Abdomen, Calf, Crotch, Fly, Hem, Hip, Inseam, Knee, Legs, Seat, SideSeam, Thigh, UnderSeat, Waist,
        };
        let near = |a: Self, b: Self| {
            matches!(
                (a, b),
                (Waist, Hip | Abdomen)
                    | (Abdomen, Fly | Hip)
                    | (Hip, Seat | SideSeam)
                    | (Seat, UnderSeat | Crotch)
                    | (UnderSeat, Thigh)
                    | (Fly, Crotch)
                    | (Crotch, Thigh | Inseam)
                    | (Thigh, Inseam | Legs | SideSeam)
                    | (Knee, Legs | Calf)
                    | (Calf, Legs | Hem)
                    | (Legs, Inseam)
            )
        };
        near(self, other) || near(other, self)
    }
}

impl Lines {
    /// As a sentence says it, of lines or of folds.
    fn said(self, folds: &str) -> String {
        match self {
            Self::Level => format!("{folds} across"),
            Self::Upright => format!("{folds} up and down"),
            Self::Slanting => format!("slanting {folds}"),
            Self::Fan => format!("{folds} like a fan"),
            Self::Smile => format!("curved {folds}, the ends up"),
            Self::Frown => format!("curved {folds}, the ends down"),
        }
    }
}

impl When {
    /// As a sentence says it.
    fn said(self) -> &'static str {
        match self {
            Self::Standing => "standing",
            Self::Sitting => "sitting",
            Self::Walking => "walking or stepping",
            Self::Washed => "after washing",
            Self::Dressing => "putting them on",
        }
    }
}

impl Face {
    fn said(self) -> &'static str {
        match self {
            Self::Front => "front",
            Self::Back => "back",
            Self::Inner => "inside",
            Self::Outer => "outside",
        }
    }

    /// Front and back, inside and outside exclude each other; the others meet at an edge.
    pub(super) fn is_opposite(self, other: Self) -> bool {
        matches!(
            (self, other),
            (Self::Front, Self::Back)
                | (Self::Back, Self::Front)
                | (Self::Inner, Self::Outer)
                | (Self::Outer, Self::Inner)
        )
    }
}

impl Does {
    /// As a sentence says it.
    pub fn said(self) -> &'static str {
        match self {
            Self::Gapes => "stands off or opens",
            Self::Cuts => "cuts in",
            Self::Climbs => "climbs or is pulled up",
            Self::Drops => "goes or hangs down",
            Self::TooHigh => "stands too high",
            Self::Forward => "swings forward",
            Self::Backward => "swings back",
            Self::Outward => "swings out",
            Self::Inward => "swings in",
            Self::Twists => "twists",
            Self::WillNotPass => "will not pass the foot",
            Self::Slopes => "slopes",
            Self::Bulges => "pouches",
            Self::Catches => "catches",
            Self::Cups => "cups under the seat",
            Self::Binds => "binds in moving",
            Self::TooShort => "is too short",
            Self::TooLong => "is too long",
        }
    }
}
