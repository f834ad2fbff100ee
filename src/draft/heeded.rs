//! Whether the recipe heeds what a measurement file says of ease and style: what no sum of it reckons with would change
//! nothing, and what its book never drew is not the book's draft.

use super::plan::Plan;
use crate::{
    mistake::Notice,
    order::Trousers,
    recipe::{Recipe, Reference},
    terms::{EaseAt, Style, Word},
    voice::{amount, lengths, list, named},
};

/// Beyond a range of the recipe by less than this is rounding, cm.
const ROUNDING: f64 = 1e-6;

/// A notice for every ease, style and ask of the file that the recipe passes over, and for every value in force that lies
/// outside the range for which the recipe says that it is meant.
pub(super) fn notices(recipe: &Recipe, trousers: &Trousers, plan: &Plan) -> Vec<Notice> {
    let mut notices = passed_over(recipe, trousers);
    let styles = Style::ALL.iter().filter_map(|style| {
        let within = recipe.style.row(*style)?.within?;
        Some((style.key(), plan.inputs.style[*style]?, within))
    });
    let asked = recipe.asks.iter().zip(&plan.construction.asks);
    let asks = asked.filter_map(|(ask, value)| Some((ask.name.as_str(), *value, ask.within?)));
    for (name, value, [least, most]) in styles.chain(asks) {
        if !(least - ROUNDING..=most + ROUNDING).contains(&value) {
            notices.push(
                Notice::mind(
                    "outside-the-recipe",
                    "`{name}` is {value}, recipe `{recipe}` is meant for {within}: so wide of it the draft is no longer \
                     the one that was tried",
                )
                .with("name", named(name))
                .with("value", amount(value))
                .with("recipe", named(&recipe.name))
                .with("within", lengths((least, most))),
            );
        }
    }
    notices
}

fn passed_over(recipe: &Recipe, trousers: &Trousers) -> Vec<Notice> {
    let notice = |said, key: String| {
        Notice::mind("passed-over", said).with("key", named(key)).with("recipe", named(&recipe.name))
    };
    let ease = EaseAt::ALL
        .iter()
        .filter(|at| trousers.ease[**at].is_some() && !the_fit_asks_for(**at))
        .map(|at| (Reference::Ease(*at), format!("trousers.ease.{at}"), format!("{at}_ease")));
    // Below the measured waist a panel is cut whatever the recipe.
    let style = Style::ALL
        .iter()
        .filter(|style| trousers.style[**style].is_some() && **style != Style::WaistDrop)
        .map(|style| (Reference::Style(*style), format!("trousers.style.{style}"), style.key().to_owned()));
    let unread = ease.chain(style).filter(|(reference, ..)| !recipe.uses(*reference));
    let mut notices: Vec<Notice> = unread
        .map(|(reference, key, name)| {
            let by_width = matches!(reference, Reference::Ease(EaseAt::Knee | EaseAt::Calf))
                && recipe.uses(Reference::Style(Style::KneeWidth));
            if by_width {
                let said = "recipe `{recipe}` does not use `{key}`: what is given there changes nothing; how wide the leg is \
                            there goes by `trousers.style.knee_width`";
                return notice(said, key);
            }
            let said = "recipe `{recipe}` does not use `{key}`: what is given there changes nothing; another `block` may \
                        use it, or a sum of the recipe with `{name}` in it";
            notice(said, key).with("name", named(name))
        })
        .collect();
    for name in trousers.ask.keys().filter(|name| recipe.asks.iter().all(|ask| ask.name != **name)) {
        let key = format!("trousers.ask.{name}");
        notices.push(if recipe.asks.is_empty() {
            notice("recipe `{recipe}` asks for nothing of its own: `{key}` changes nothing", key)
        } else {
            notice("recipe `{recipe}` does not ask for it: `{key}` changes nothing; it asks for {asks}", key)
                .with("asks", list(recipe.asks.iter().map(|ask| named(&ask.name))))
        });
    }
    notices
}

/// Ease that the measured fit and the crotch budget go by, whatever the recipe draws.
fn the_fit_asks_for(at: EaseAt) -> bool {
    matches!(at, EaseAt::Thigh | EaseAt::CrotchLength)
}
