//! Bodies to draw.

use breeks::{
    draft::Draft,
    drawing::{Drawing, Mark, Text},
    fit::{Overlaid, Report, drafted},
    order::{DEMOS, Order, demo},
    paper::cloth_picture,
    pattern::{Allowances, Band, BandShape, Cloth, Lap, Lay, Pattern, Wanted},
    recipe::load,
    terms::EnumMap,
    told::Subject,
    unit::Unit,
};

use crate::people::of_507;

/// A drafted body with its report.
pub(crate) struct Drawn {
    pub(crate) draft: Draft,
    pub(crate) report: Report,
    pub(crate) unit: Unit,
}

impl Drawn {
    /// Drafts an order by a recipe.
    pub(crate) fn of(order: &Order, block: &str) -> Self {
        let (draft, report) = drafted(order, &load(block).expect("a shipped recipe")).expect("a body");
        Self { draft, report, unit: order.units }
    }

    /// A demo body, with what is set for it.
    pub(crate) fn demo(name: &str, set: &[&str]) -> Self {
        let set: Vec<String> = set.iter().map(|text| (*text).to_owned()).collect();
        let (order, _) = Order::read_with(&demo(name).expect("a demo"), &set).expect("a sound demo");
        Self::of(&order, "classic")
    }

    pub(crate) fn compared(&self) -> Overlaid<'_> {
        Overlaid { said: &self.draft.name, draft: &self.draft, report: &self.report }
    }

    pub(crate) fn subject(&self) -> Subject<'_> {
        Subject { draft: &self.draft, report: &self.report, unit: self.unit }
    }
}

/// A front, a back, a band and a fly of a draft, laid on cloth of this kind.
pub(crate) fn on_cloth(drawn: &Drawn, cloth: &Cloth) -> Drawing {
    let waistband = Some(Band { shape: BandShape::Straight, height: Band::HEIGHT });
    let wanted = Wanted { waistband, fly: Some(Lap::Left), ..Wanted::default() };
    let allowances = Allowances::of(&EnumMap::default(), wanted.purpose);
    let pieces = Pattern::of([&drawn.draft], &allowances, &wanted).expect("room for allowances").pieces;
    let lay = Lay::of(&pieces, cloth).expect("wide cloth");
    cloth_picture(&drawn.subject(), &pieces, &lay, &lay.notices)
}

/// The demo bodies and some of people-507, thirty in all, by the shipped recipes in turn.
pub(crate) fn thirty() -> Vec<Drawn> {
    let people = of_507();
    let demos = DEMOS.iter().map(|name| Order::read(&demo(name).expect("a demo")).expect("a sound demo").0);
    let others = people.into_iter().step_by(19).map(|person| person.order);
    let orders: Vec<Order> = demos.chain(others).take(30).collect();
    assert_eq!(orders.len(), 30);
    let blocks: Vec<&str> = breeks::recipe::shipped_names().collect();
    orders.iter().zip(blocks.into_iter().cycle()).map(|(order, block)| Drawn::of(order, block)).collect()
}

/// All words of a picture.
pub(crate) fn texts(drawing: &Drawing) -> Vec<&Text> {
    let marks = drawing.layers.iter().flat_map(|layer| &layer.marks);
    marks
        .filter_map(|mark| match mark {
            Mark::Text(text) if !text.words.as_str().is_empty() => Some(text),
            _ => None,
        })
        .collect()
}
