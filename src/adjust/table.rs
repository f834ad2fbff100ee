//! The rows. Ranges are our own reading of handbooks and fitting practice (common practice, no source, where a hand
//! method names none); a hard limit is twice the usual range unless the row says otherwise.

use super::Key::{self, *};
use super::Measure::{Cm, Degrees};
use super::OneLeg::{Free, Never, Only, WithCare};
use super::{About, Measure, OneLeg};

/// A row whose hard limit is twice its usual range, whose default is nothing and whose ordinary amount is half of what
/// is usual at the most.
const fn row(
    key: Key,
    title: &'static str,
    region: &'static str,
    usual: (f64, f64),
    one_leg: OneLeg,
) -> About {
    About {
        key,
        title,
        region,
        unit: Cm,
        usual,
        hard: (2.0 * usual.0, 2.0 * usual.1),
        default: 0.0,
        ordinary: 0.5 * usual.1,
        purpose: "",
        moves: "",
        stays: "",
        hand_method: "",
        companions: &[],
        one_leg,
    }
}

const DEGREES: Measure = Degrees;

/// In the order of the enum.
pub(super) static ABOUT: [About; Key::COUNT] = [
    About {
        // a hard limit of its own: a small negative value folds the front thigh for a flat one
        hard: (-1.3, 4.0),
        purpose: "a thigh that is full in front, as rowing makes it: the front strains across the thigh and its crease swings inwards",
        // three quarters of an inch: common practice, no source
        ordinary: 1.9,
        moves: "the front crotch point, the lower end of the front crotch curve and the upper front inseam, turned outwards together",
        stays: "side seam, waist, hem, the centre front above the curve, and the length of the inseam",
        hand_method: "Slash the front from where the crotch curve leaves the straight centre front down to a point on the inseam seam line, 20 to 25 cm below the crotch point, where the front of the thigh ends. With that point as pivot swing the inner part outwards until the slash is open by the amount, tape paper behind, redraw the curve in one sweep that begins as much higher on the centre front as the slash is open, and smooth the inseam at the pivot.",
        companions: &[
            (
                ThighBackTake,
                "the front crotch grew: where the back already fitted, take up to half of it back there",
            ),
            (CrotchFrontScoop, "cloth that hangs loose at the base of the fly is scooped away first"),
            (
                ThighFrontSide,
                "is for a thigh that is full to the outside as well: part of the width then comes in at the side seam",
            ),
        ],
        ..row(ThighFront, "prominent front thigh", "thigh", (0.6, 2.5), WithCare)
    },
    About {
        // a place, not an amount: twice its range would be below the knee
        hard: (10.0, 40.0),
        default: 22.0,
        purpose: "putting the pivot of the front thigh turn where the front of the thigh ends",
        ordinary: 25.0,
        moves: "the pivot of `thigh.front`; at least 5 cm above the knee line",
        stays: "everything, while `thigh.front` is 0",
        hand_method: "Choose the pivot on the inseam where the front of the thigh ends: higher for a thigh that is full close under the crotch, lower for one that is full far down.",
        companions: &[(ThighFront, "only the place of its pivot")],
        ..row(ThighFrontReach, "pivot of the front thigh turn", "thigh", (20.0, 25.0), WithCare)
    },
    About {
        usual: (0.0, 2.0),
        purpose: "a thigh that is full behind, under the seat: the back strains across the thigh below the fold of the seat",
        ordinary: 1.0,
        moves: "the back crotch point, the lower end of the back crotch curve and the upper back inseam, turned outwards together",
        stays: "side seam, waist, hem, the centre back above the curve, and the length of the inseam",
        hand_method: "Slash the back from where the crotch curve leaves the straight centre back down to a point on the inseam level with the front's pivot. Swing the inner part outwards until the slash is open by the amount, tape paper behind, redraw the curve in one sweep and smooth the inseam at the pivot.",
        companions: &[
            (SeatLength, "the back crotch grew: where the seat already fitted, fold some of it out"),
            (CrotchBackExtension, "if only the fork pulls, give it there"),
        ],
        ..row(ThighBack, "full back of the thigh", "thigh", (0.0, 2.0), WithCare)
    },
    About {
        // half of what `thigh.front` may be
        usual: (0.0, 1.25),
        hard: (0.0, 2.0),
        purpose: "a back that already fitted and grows too long in the crotch when the front thigh is opened",
        // half of an ordinary front opening
        ordinary: 0.95,
        moves: "the back crotch point, the lower end of the back crotch curve and the upper back inseam, turned inwards together",
        stays: "side seam, waist, hem, the centre back above the curve, and the length of the inseam",
        hand_method: "Slash the back from where the crotch curve leaves the straight centre back down to a point on the inseam level with the front's pivot, walked up from the knee. Lap the slash by the amount, the mirror of the front, redraw the curve in one sweep and smooth the inseam at the pivot.",
        companions: &[(ThighFront, "its companion: at most half of it")],
        ..row(ThighBackTake, "take back on the back", "thigh", (0.0, 1.25), WithCare)
    },
    About {
        purpose: "a thigh that is full on the inside: both panels strain from the fork",
        moves: "both crotch points outwards, to nothing on the inseam 25 cm below",
        stays: "side seams, waist, hem, centre front and centre back above the curves",
        hand_method: "Mark the amount outwards from both crotch points, draw each curve out to the mark with its old direction, and run both inseams into the old ones 25 cm below. Slide the back crotch point until both inseams are alike.",
        companions: &[
            (CrotchFrontExtension, "if only the front pulls at the fork, give it there"),
            (LegKneeIn, "lines that run on to the knee ask for the knee, not the thigh"),
        ],
        ..row(ThighInner, "full inner thigh", "thigh", (-1.3, 1.2), WithCare)
    },
    About {
        purpose: "a thigh that is full on the outside, below the hip",
        moves: "the side seams of both panels: nothing 7 cm above the hip, the amount 5 cm below the crotch line, nothing at the knee",
        stays: "inseams, crotch, waist, hem",
        hand_method: "Draw a long lens outside both side seams from 7 cm above the hip to the knee, fullest 5 cm below the crotch line, where the thigh is girthed.",
        companions: &[(SideForward, "first see whether the seam only stands in the wrong place")],
        ..row(ThighOuter, "full outer thigh", "thigh", (-0.5, 1.2), Free)
    },
    About {
        purpose: "a front thigh that is full towards the side as well",
        ordinary: 0.5,
        moves: "the side seam of the front: nothing 7 cm above the hip, the amount 5 cm below the crotch line, nothing 20 cm further down",
        stays: "the back, the inseam, waist and hem",
        hand_method: "Draw a lens outside the front side seam alone, from 7 cm above the hip, fullest 5 cm below the crotch line, to nothing 20 cm further down.",
        companions: &[(ThighFront, "the front of the thigh is given its room there first")],
        ..row(ThighFrontSide, "front thigh at the side", "thigh", (0.0, 0.6), Free)
    },
    About {
        purpose: "a seat that wants a longer (or shorter) way from waist to fork: the back waist is pulled down, or cloth hangs under the seat",
        moves: "the back above the hip line, turned about the side seam so that the centre back opens (or folds)",
        stays: "the side seam's length, the crotch point, everything below the hip line",
        hand_method: "Cut level from the centre back on the hip line to the side seam, leaving a hinge; spread (or lap) at the centre back. Produce the centre back and redraw the curve into it, so that the whole seam is longer (or shorter) by the amount, and blend the side seam from 5 cm above the cut to 5 cm below.",
        companions: &[
            (
                SeatAngle,
                "the wedge also leans the centre back; take the lean back if standing shows folds under the seat",
            ),
            (SeatWidth, "a seat that is full sideways too"),
        ],
        ..row(SeatLength, "length over the seat", "seat", (-2.0, 3.0), Never)
    },
    About {
        unit: DEGREES,
        purpose: "how the back hangs: upright for standing clean, leaning for sitting",
        moves: "the centre back above the hip line and the back waist, turned about the centre back on the hip line",
        stays: "hip width, waist length, the crotch curve, everything below the hip line",
        hand_method: "Pin the centre back on the hip line and swing its top in towards the side (for less angle, out); move the top of the side seam the same way by about as much, to nothing at the hip line. Then raise the centre back until the waist is square to it again, and redraw the waist.",
        companions: &[
            (SeatLength, "more lean already lengthens the centre back a little"),
            (WaistRaiseBack, "where only the top of the centre back is short when sitting"),
        ],
        ..row(SeatAngle, "seat angle", "seat", (-3.0, 4.0), Never)
    },
    About {
        purpose: "a seat that stands out behind and wants width",
        moves: "the centre back line, its curve and the back crotch point outwards; the back dart takes the surplus at the waist",
        stays: "the sewn waist, the side seam, knee and hem",
        hand_method: "Add the amount along the whole centre back from the waist to the crotch point, run it into the inseam to nothing at the knee, slide the crotch point until the inseam is as long as the front's, and take the width out of the waist by larger darts.",
        companions: &[(SeatLength, "a full seat needs length as well as width")],
        ..row(SeatWidth, "width of the seat", "seat", (-1.0, 1.5), Never)
    },
    About {
        purpose: "a back curve that cuts into the seat",
        ordinary: 0.4,
        moves: "the back crotch curve towards its corner",
        stays: "both ends of the curve and their directions",
        hand_method: "Redraw the back curve deeper between its two ends, measured from the middle of the straight line between them towards the corner of their directions, about 0.3 cm at a time: cloth cut away cannot be put back.",
        companions: &[
            (CrotchBackExtension, "a curve that cuts into the seat may be short rather than shallow"),
            (SeatLow, "if the seat itself sits low"),
        ],
        ..row(SeatScoop, "scoop of the back crotch", "seat", (-0.5, 1.2), Never)
    },
    About {
        purpose: "a seat whose fullest place lies low",
        moves: "the back crotch curve straight down, and the ends of the back darts with it",
        stays: "the back crotch point, the inseam, the side seam",
        hand_method: "Mark where the seat stands out most, lower the bottom of the back curve by the amount and lengthen the darts to the new level.",
        companions: &[(SeatScoop, "if the curve is shallow rather than high")],
        ..row(SeatLow, "low seat", "seat", (0.0, 1.2), Never)
    },
    About {
        purpose: "a crotch that is too high or hangs too low, front and back alike",
        moves: "everything below the hip line of both panels, down",
        stays: "inseams, waist to hip, all widths",
        hand_method: "Cut both pieces level on the hip line and spread (or lap) them by the same amount; produce the centre lines and redraw the curves into them, so that each crotch seam is longer (or shorter) by the amount, and join the side seams with a ruler.",
        companions: &[
            (SeatLength, "if only the back is short"),
            (AbdomenLength, "if only the front is short"),
        ],
        ..row(CrotchDepth, "crotch depth", "crotch", (-1.0, 2.0), Never)
    },
    About {
        purpose: "a front that is too short round the inside of the thigh",
        moves: "the front crotch point outwards, to nothing on the inseam 25 cm below; the back crotch point up or down with the length of the inseam",
        stays: "centre front, side seam, waist, hem",
        hand_method: "Draw the front curve out to a point the amount further from the centre front, then the inseam to nothing 25 cm below. Slide the back crotch point until the back inseam is as long, and redraw its curve.",
        companions: &[(ThighInner, "if the back pulls at the fork as well")],
        ..row(CrotchFrontExtension, "front crotch extension", "crotch", (-1.0, 1.5), Never)
    },
    About {
        purpose: "a back that is too short round the inside of the thigh",
        moves: "the back crotch point outwards, to nothing on the inseam 25 cm below",
        stays: "centre back, side seam, waist, hem",
        hand_method: "Draw the back curve out to a point the amount further from the centre back, then the inseam to nothing 25 cm below; slide the point until the inseam is as long as the front's.",
        companions: &[
            (SeatAngle, "for room to sit, lean and length come before fork"),
            (SeatScoop, "if the curve is shallow rather than short"),
        ],
        ..row(CrotchBackExtension, "back crotch extension", "crotch", (-1.5, 2.5), Never)
    },
    About {
        purpose: "loose cloth at the base of the fly",
        ordinary: 0.4,
        moves: "the front crotch curve towards its corner",
        stays: "both ends of the curve and their directions",
        hand_method: "Redraw the front curve deeper between its two ends, measured from the middle of the straight line between them towards the corner of their directions, about 0.3 cm at a time.",
        companions: &[(
            ThighFront,
            "loose cloth at the base of the fly is scooped before the thigh is opened",
        )],
        ..row(CrotchFrontScoop, "scoop of the front crotch", "crotch", (-0.5, 1.0), Never)
    },
    About {
        purpose: "a waist that sits higher or lower in front than it was drafted",
        moves: "the top of the centre front, along the centre front",
        stays: "side and centre back, everything below the waist with the ends of the darts",
        hand_method: "Tie an elastic over the toile where the waist shall sit, mark along it, and redraw the waist from the marks, square to the centre front.",
        companions: &[(WaistRaiseBack, "front and back usually move against each other")],
        ..row(WaistRaiseFront, "waist at the centre front", "waist", (-2.5, 2.5), Never)
    },
    About {
        purpose: "a waist that sits higher or lower behind than it was drafted",
        moves: "the top of the centre back, along the centre back",
        stays: "side and centre front, everything below the waist with the ends of the darts",
        hand_method: "Tie an elastic over the toile where the waist shall sit, mark along it, and redraw the waist from the marks, square to the centre back.",
        companions: &[
            (WaistRaiseFront, "front and back usually move against each other"),
            (CrotchBackExtension, "a lowered back that now cuts at the fork gets it back there"),
        ],
        ..row(WaistRaiseBack, "waist at the centre back", "waist", (-2.5, 2.5), Never)
    },
    About {
        purpose: "a waist that sits higher or lower at both sides than it was drafted",
        moves: "the top of the side seam on both panels, along the seam",
        stays: "centre front, centre back, everything below the waist with the ends of the darts",
        hand_method: "Tie an elastic over the toile where the waist shall sit, mark along it at the side, and redraw the waist through the mark.",
        companions: &[(HipUneven, "if only one side is high")],
        ..row(WaistRaiseSide, "waist at the side", "waist", (-2.5, 2.5), Free)
    },
    About {
        purpose: "an abdomen that wants a longer way over it: the front waist is pulled down",
        moves: "the top of the centre front, up its own line; the ends of the front darts with what they stand on",
        stays: "side seam, crotch curve, the width of the darts, the sewn waist",
        hand_method: "Cut level from the centre front on the hip line to the side seam, leaving a hinge; spread at the centre front. Stand the centre front back to its old lean, take the width that gives off at the side, not in darts that lie over the belly, and redraw the waist.",
        companions: &[(AbdomenWidth, "a front that is short over the belly is usually narrow as well")],
        ..row(AbdomenLength, "length over the abdomen", "abdomen", (-1.0, 2.5), Never)
    },
    About {
        purpose: "an abdomen that wants more of the waist in front",
        moves: "front dart and front side seam at the waist; the back darts take the same amount",
        stays: "the whole sewn waist, and the side seam at the hip",
        hand_method: "Make the front dart smaller or leave it out, let the front side seam out from nothing at the hip, and deepen the back darts by as much.",
        companions: &[(AbdomenLength, "a front that is narrow over the belly is usually short as well")],
        ..row(AbdomenWidth, "width over the abdomen", "abdomen", (-0.6, 1.5), Never)
    },
    About {
        // a small negative value lowers the other side instead
        hard: (-2.5, 5.0),
        purpose: "one hip that stands higher than the other",
        moves: "side waist and side hip of both panels of this side, up",
        stays: "centre front, centre back, the other side",
        hand_method: "On the high side cut both pieces on the hip line from the side seam to hinges at centre front and centre back and open at the side. Stand the centres back on their old lines, draw the side seam straight above its old line by the amount from the hip up, to nothing at the knee, and redraw the waist.",
        companions: &[(WaistRaiseSide, "if both sides want the same")],
        ..row(HipUneven, "one hip higher", "hip", (0.5, 2.5), Only)
    },
    About {
        purpose: "a body that is fuller in front (or behind) than half at the hip",
        moves: "the side seam at the hip: front wider, back narrower by the same",
        stays: "the hip girth, waist, knee and hem",
        hand_method: "Add to the front side seam at the hip what is taken off the back, to nothing at waist and knee.",
        companions: &[(SideForward, "if the seam stands wrong all the way down")],
        ..row(HipFrontShare, "front share of the hip", "hip", (-1.5, 1.5), Free)
    },
    About {
        purpose: "knees that stand inwards (or outwards) of hip and foot",
        moves: "inner and side edge of both panels inwards at the knee, to nothing at crotch line and hem",
        stays: "knee girth, crotch, hem",
        hand_method: "Give at the inside of the knee what is taken at the outside, both panels alike, and redraw the seams from crotch line to hem.",
        companions: &[(LegClose, "if the foot stands in or out as well")],
        ..row(LegKneeIn, "knees inwards", "leg", (-1.5, 1.5), Free)
    },
    About {
        purpose: "a hem that stands up in front and drags behind, or the other way, on knees pushed back or bent forward",
        moves: "the front hem up and the back hem down at the crease",
        stays: "all seams",
        hand_method: "On paper a level tuck at the knee, from the crease to nothing at the seams, leaves only this: redraw the hem, front shorter, back longer in the middle of the panel, nothing at the seams. It levels the hem; the knee itself is shaped with the iron, easing or stretching the seams over it.",
        companions: &[(LegCalf, "a calf that stands out behind needs width rather than length")],
        ..row(LegKneeForward, "hem for knees back or forward", "leg", (-1.0, 1.0), Free)
    },
    About {
        purpose: "feet that stand closer together (or wider) than the legs are drafted",
        moves: "both edges of both panels inwards: nothing at the crotch line, 0.8 of it at the knee, all of it at the hem",
        stays: "all girths, the crotch, the hip",
        hand_method: "Draw the leg anew with its middle line moved inwards, from nothing at the crotch line to the amount at the hem.",
        companions: &[(LegKneeIn, "if only the knee stands in")],
        ..row(LegClose, "leg closed", "leg", (-1.6, 1.6), Free)
    },
    About {
        purpose: "a calf that catches the leg",
        moves: "all four edges outwards at the calf, a quarter of the girth each, to nothing at knee and hem",
        stays: "knee and hem",
        hand_method: "Add a quarter of the girth wanted outside every seam at the calf and run it to nothing at knee and hem.",
        companions: &[(LegKneeForward, "if the calf pushes the leg forward")],
        ..row(LegCalf, "full calf", "leg", (0.0, 3.0), Free)
    },
    About {
        purpose: "a side seam that stands too far forward or back all the way down",
        moves: "the side seam from hip to hem: front wider, back narrower by the same",
        stays: "all girths, the waist",
        hand_method: "Add to the front side edge what is taken off the back, from the hip to the hem.",
        companions: &[(HipFrontShare, "if the seam stands wrong at the hip alone")],
        ..row(SideForward, "side seam forward or back", "side", (-1.0, 1.0), Free)
    },
];
