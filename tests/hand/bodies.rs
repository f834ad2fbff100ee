//! Who is drafted for: the demo bodies and ten people of the survey, by every shipped recipe.

use std::sync::OnceLock;

use breeks::{
    adjust::{Key, Parameters},
    draft::{PanelPlan, Plan, Shape, draft, shape},
    order::{DEMOS, Order, demo},
    recipe::{load, shipped_names},
    terms::Role,
};

use crate::{closing::Leg, people};

/// One body by one recipe.
pub(crate) struct Fitting {
    pub(crate) name: String,
    plan: Plan,
    /// Drafted with every parameter at its default.
    pub(crate) base: Shape,
}

impl Fitting {
    /// The base outline on paper.
    pub(crate) fn paper(&self) -> Leg {
        self.on_paper(&self.base)
    }

    /// The draft with one parameter on paper.
    pub(crate) fn drafted_on_paper(&self, key: Key, value: f64) -> Leg {
        self.on_paper(&self.drafted(&[(key, value)]))
    }

    fn on_paper(&self, shape: &Shape) -> Leg {
        let constructed = |plan: &PanelPlan| (plan.roles[Role::SideWaist], plan.intake);
        Leg::read(shape, [constructed(&self.plan.front), constructed(&self.plan.back)])
    }

    /// Drafted with these parameters.
    pub(crate) fn drafted(&self, given: &[(Key, f64)]) -> Shape {
        shape(
            &self.plan,
            &given.iter().fold(Parameters::default(), |all, (key, value)| all.with(*key, *value)),
        )
    }
}

/// Every body by every recipe.
pub(crate) fn fittings() -> &'static [Fitting] {
    static FITTINGS: OnceLock<Vec<Fitting>> = OnceLock::new();
    FITTINGS.get_or_init(|| {
        let demos = DEMOS.iter().map(|name| {
            let (order, _) = Order::read(&demo(name).unwrap()).unwrap();
            ((*name).to_owned(), order)
        });
        let surveyed = people::of_507()
            .into_iter()
            .step_by(53)
            .map(|person| (format!("person {}", person.id), person.order));
        let orders: Vec<_> = demos.chain(surveyed).collect();
        let by_recipe = |block: &str| {
            let recipe = load(block).unwrap();
            orders
                .iter()
                .map(|(name, order)| {
                    let drafted = draft(order, &recipe).unwrap();
                    let base = shape(&drafted.plan, &Parameters::default());
                    Fitting { name: format!("{block}, {name}"), plan: drafted.plan, base }
                })
                .collect::<Vec<_>>()
        };
        shipped_names().flat_map(by_recipe).collect()
    })
}
