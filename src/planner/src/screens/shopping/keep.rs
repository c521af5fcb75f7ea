//! When to buy the pieces of a dish, how long they keep raw, and how they thaw.

use crate::parts::{Choice, Way};
use crate::store::{Edit, use_store};
use crate::words::keeping as words;
use cook_model::handover::identity::DishId;
use cook_model::plan::Thawing;
use cook_model::provisions::{Keeping, ThawPlace, ThawRefusal, keeping};
use leptos::prelude::*;

/// How a dish is bought, kept and thawed, as far as the forecast is.
pub(super) fn of_dish(dish: DishId) -> Memo<Option<Keeping>> {
    let store = use_store();
    Memo::new(move |_| {
        let plan = store.plan.get()?;
        let now = store.now.get();
        let open = store.open_id.get();
        store.forecast().with(|forecast| {
            let outlook = forecast.outlook.as_ref();
            let outlook = outlook.filter(|_| forecast.of == open)?;
            keeping(&plan, outlook, dish, now)
        })
    })
}

/// The sentences, and where it thaws.
#[component]
pub fn Keep(
    /// Which dish.
    dish: DishId,
    /// What there is to say.
    keeping: Memo<Option<Keeping>>,
) -> impl IntoView {
    let store = use_store();
    let said = move || {
        let formats = store.formats.get();
        keeping.with(|keeping| {
            let said = keeping
                .as_ref()
                .map(|keeping| words::keeps(keeping, &formats));
            let said = said.unwrap_or_default().into_iter();
            said.map(|said| view! { <p class="note">{said}</p> })
                .collect_view()
        })
    };
    let frozen = Memo::new(move |_| {
        keeping.with(|keeping| {
            keeping
                .as_ref()
                .is_some_and(|keeping| !keeping.thaw.is_empty())
        })
    });
    let ways = Memo::new(move |_| {
        let formats = store.formats.get();
        keeping.with(|keeping| {
            let ways = keeping.as_ref().map(|keeping| keeping.thaw.as_slice());
            let way = |(place, thaw): &(ThawPlace, Result<_, ThawRefusal>)| {
                Way::new(*place, words::place(*place)).with_note(words::thaw(thaw, &formats))
            };
            ways.unwrap_or_default().iter().map(way).collect::<Vec<_>>()
        })
    });
    let chosen = Memo::new(move |_| {
        store.plan.with(|plan| {
            let dish = plan.as_ref()?.dishes.get(&dish)?;
            Some(ThawPlace::from(dish.thaw.unwrap_or_default()))
        })
    });
    let refused = RwSignal::new(None::<ThawRefusal>);
    let choose = move |place: ThawPlace| {
        let refusal = keeping.with_untracked(|keeping| {
            let ways = keeping.as_ref().map(|keeping| keeping.thaw.clone());
            let mut ways = ways.unwrap_or_default().into_iter();
            ways.find(|(other, _)| *other == place)?.1.err()
        });
        refused.set(refusal);
        let thaw = match place {
            _ if refusal.is_some() => return,
            ThawPlace::Counter => return,
            ThawPlace::Fridge => None,
            ThawPlace::ColdWater => Some(Thawing::ColdWater),
        };
        store.edit(Edit::Dish(dish), |plan| {
            if let Some(dish) = plan.dishes.get_mut(&dish) {
                dish.thaw = thaw;
            }
        });
    };
    // A way that was refused is not chosen: the keys are drawn anew, as the plan stands.
    let keys = move || {
        refused.track();
        view! {
            <Choice lay="column" label=Signal::stored(words::WHERE.to_owned()) ways chosen on_choose=choose />
        }
    };
    let told = move || {
        let formats = store.formats.get();
        refused.get().map(|refusal| {
            view! {
                <div class="stop" role="alert">
                    <b class="name">{words::REFUSED}</b>
                    <p class="note ink">{words::refusal(&refusal, &formats)}</p>
                </div>
            }
        })
    };
    view! {
        {said}
        <Show when=move || frozen.get()>{keys} {told}</Show>
    }
}
