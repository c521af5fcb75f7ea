//! A new dish in four taps: what, on which cooker, intact or not, add.

use super::OverScreen;
use crate::device::ids::Ids;
use crate::parts::{Choice, Slip, Way};
use crate::store::{Edit, Store, new_things, use_store};
use crate::words::{cookers, dish_form as words, dishes};
use cook_model::handover::identity::CookerId;
use cook_model::meat::{CutId, Kind, catalogue};
use cook_model::plan::{CookerKind, Intact, Plan, in_order};
use leptos::prelude::*;

/// What the new dish is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum What {
    Cut(CutId),
    Own,
}

/// The first question: the cuts most often cooked this way (common practice), any other, or a dish of one's own.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum First {
    Common(CutId),
    Another,
    Own,
}

const COMMON: [CutId; 7] = [
    CutId::PorkShoulderButt,
    CutId::BeefPackerBrisket,
    CutId::LambShoulder,
    CutId::PorkSpareRibs,
    CutId::BeefPlateShortRibs,
    CutId::ChickenWhole,
    CutId::SausageLinks,
];

/// What it is cooked on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum On {
    There(CookerId),
    New(CookerKind),
    None,
}

/// The slip.
#[component]
pub fn NewDish() -> impl IntoView {
    let store = use_store();
    let over = expect_context::<OverScreen>().0;
    let what = RwSignal::new(None::<What>);
    let kind = RwSignal::new(None::<Kind>);
    let first_cooker = store.plan.with_untracked(|plan| {
        let cookers = &plan.as_ref()?.cookers;
        in_order(cookers, |cooker| &cooker.order)
            .first()
            .map(|(id, _)| On::There(*id))
    });
    let on = RwSignal::new(first_cooker);
    let intact = RwSignal::new(None::<Intact>);

    let first = RwSignal::new(None::<First>);
    let mut firsts: Vec<Way<First>> = COMMON
        .iter()
        .map(|cut| Way::new(First::Common(*cut), dishes::dish_name(*cut)))
        .collect();
    firsts.push(Way::new(First::Another, words::ANOTHER_CUT));
    firsts.push(Way::new(First::Own, words::OWN));
    let choose_first = move |chosen| {
        first.set(Some(chosen));
        kind.set(None);
        what.set(match chosen {
            First::Common(cut) => Some(What::Cut(cut)),
            First::Another => None,
            First::Own => Some(What::Own),
        });
    };
    let animals = dishes::KINDS
        .map(|kind| Way::new(kind, dishes::kind(kind)))
        .to_vec();
    let cuts = Signal::derive(move || {
        let kind = kind.get();
        let of_kind = catalogue().iter().filter(|cut| Some(cut.kind) == kind);
        let ways: Vec<_> = of_kind
            .map(|cut| {
                Way::new(What::Cut(cut.id), cut.name)
                    .with_note(words::usual(cut, &store.formats.get()))
            })
            .collect();
        ways
    });
    let cookers = Signal::derive(move || {
        store
            .plan
            .with(|plan| plan.as_ref().map_or_else(Vec::new, |plan| places(plan)))
    });
    let asks_intact =
        move || matches!(what.get(), Some(What::Cut(cut)) if words::is_red_muscle(cut));
    let ready = move || what.get().is_some();
    let add = move |_| {
        if let Some(what) = what.get_untracked() {
            let on = on.get_untracked().unwrap_or(On::None);
            let intact = intact.get_untracked().unwrap_or_default();
            add_dish(store, what, on, intact);
            over.set(None);
        }
    };
    view! {
        <Slip title=Signal::stored(words::NEW_DISH.to_owned()) on_close=move |()| over.set(None)>
            <Choice
                label=Signal::stored(words::WHAT.to_owned())
                ways=Signal::stored(firsts)
                chosen=first
                on_choose=choose_first
            />
            <Show when=move || first.get() == Some(First::Another)>
                <Choice
                    label=Signal::stored(words::WHICH_ANIMAL.to_owned())
                    ways=Signal::stored(animals.clone())
                    chosen=kind
                    on_choose=move |chosen| {
                        kind.set(Some(chosen));
                        what.set(None);
                    }
                />
            </Show>
            <Show when=move || kind.get().is_some()>
                <Choice
                    lay="two"
                    label=Signal::stored(words::WHICH_CUT.to_owned())
                    ways=cuts
                    chosen=what
                    on_choose=move |chosen| what.set(Some(chosen))
                />
            </Show>
            <Choice
                label=Signal::stored(words::ON_WHICH_COOKER.to_owned())
                ways=cookers
                chosen=on
                on_choose=move |chosen| on.set(Some(chosen))
            />
            <Show when=asks_intact>
                <Choice
                    lay="column"
                    label=Signal::stored(words::IS_IT_INTACT.to_owned())
                    ways=Signal::stored(words::intact_ways())
                    chosen=intact
                    on_choose=move |chosen| intact.set(Some(chosen))
                />
            </Show>
            <button type="button" class="btn act one" disabled=move || !ready() on:click=add>
                {move || words::add(what.get().and_then(|what| match what {
                    What::Cut(cut) => Some(dishes::dish_name(cut)),
                    What::Own => None,
                }), ready())}
            </button>
        </Slip>
    }
}

/// The cookers of the plan, then every kind that a new one can be, then none.
fn places(plan: &Plan) -> Vec<Way<On>> {
    let there = in_order(&plan.cookers, |cooker| &cooker.order)
        .into_iter()
        .map(|(id, cooker)| Way::new(On::There(id), cookers::name(&cooker.name, cooker.kind)));
    let new = cookers::KINDS.map(|kind| {
        let way = Way::new(On::New(kind), cookers::kind(kind));
        if plan.cookers.is_empty() {
            way
        } else {
            way.with_note(words::A_NEW_ONE)
        }
    });
    let none = Way::new(On::None, words::NOT_SAID);
    there.chain(new).chain([none]).collect()
}

fn add_dish(store: Store, what: What, on: On, intact: Intact) {
    let name = match what {
        What::Cut(cut) => dishes::dish_name(cut),
        What::Own => words::OWN_NAME,
    };
    let units = store.formats.with_untracked(|formats| formats.units);
    store.edit(Edit::DishAdded(name.to_owned()), |plan| {
        let cooker = match on {
            On::There(id) => Some(id),
            On::None => None,
            On::New(kind) => {
                let order = new_things::behind(plan.cookers.values().map(|cooker| &cooker.order));
                let pit = match what {
                    What::Cut(cut) => cut.cut().programme.pit,
                    What::Own => new_things::USUAL_PIT,
                };
                let id = Ids.cooker();
                plan.cookers
                    .insert(id, new_things::cooker(kind, pit, order));
                Some(id)
            }
        };
        let order = new_things::behind(plan.dishes.values().map(|dish| &dish.order));
        let dish = match what {
            What::Cut(cut) => new_things::cut_dish(cut, cooker, intact, order, Ids.piece(), units),
            What::Own => new_things::own_dish(name, cooker, order),
        };
        plan.dishes.insert(Ids.dish(), dish);
    });
}
