//! A dish on its slip: everything about it that can be told, each change kept and reckoned with at once.

pub mod method;
mod method_parts;
pub mod own;
pub mod pieces;
pub mod what;

use super::OverScreen;
use crate::parts::{Slip, TextField};
use crate::store::{Edit, Store, use_store};
use crate::words::{dish_form as words, gathering};
use cook_model::handover::identity::DishId;
use cook_model::plan::{Dish, Food};
use leptos::prelude::*;
use method::Method;
use own::OwnTimes;
use pieces::Pieces;
use what::What;

/// A dish of the open plan: read as a signal, changed through the store.
#[derive(Clone, Copy)]
pub(crate) struct DishHandle {
    pub(crate) id: DishId,
    pub(crate) store: Store,
}

impl DishHandle {
    /// Something about the dish; none once it is off the menu.
    pub(crate) fn read<T>(
        self,
        part: impl Fn(&Dish) -> T + Send + Sync + 'static,
    ) -> Memo<Option<T>>
    where
        T: PartialEq + Send + Sync + 'static,
    {
        Memo::new(move |_| {
            self.store
                .plan
                .with(|plan| Some(part(plan.as_ref()?.dishes.get(&self.id)?)))
        })
    }

    /// Changes the dish.
    pub(crate) fn edit(self, change: impl FnOnce(&mut Dish)) {
        self.store.edit(Edit::Dish(self.id), |plan| {
            if let Some(dish) = plan.dishes.get_mut(&self.id) {
                change(dish);
            }
        });
    }

    /// What is wrong at one of its fields.
    pub(crate) fn wrong_at(self, field: &str) -> Signal<Option<String>> {
        self.store.wrong_at(format!("dishes/{}/{field}", self.id))
    }
}

/// The slip of a dish.
#[component]
pub fn EditDish(
    /// Which.
    dish: DishId,
) -> impl IntoView {
    let store = use_store();
    let over = expect_context::<OverScreen>().0;
    let handle = DishHandle { id: dish, store };
    provide_context(handle);
    let name = handle.read(|dish| dish.name.clone());
    let is_own = handle.read(|dish| matches!(dish.food, Food::Own { .. }));
    // The dish may be taken off from elsewhere, by an undo or another tab.
    Effect::new(move |_| {
        if name.get().is_none() {
            over.set(None);
        }
    });
    let title =
        Signal::derive(move || gathering::dish_name(&name.get().unwrap_or_default()).to_owned());
    let take_off = move |_| {
        let name = name.get_untracked().unwrap_or_default();
        over.set(None);
        store.edit(Edit::DishTakenOff(name), |plan| {
            plan.dishes.remove(&dish);
        });
    };
    view! {
        <Slip title close="Done" on_close=move |()| over.set(None)>
            <TextField
                label=Signal::stored(words::NAME.to_owned())
                value=Signal::derive(move || name.get().unwrap_or_default())
                on_change=move |text: String| handle.edit(|dish| dish.name = text)
            />
            <What />
            <Show
                when=move || is_own.get() == Some(true)
                fallback=|| view! { <Pieces /><Method /> }
            >
                <OwnTimes />
            </Show>
            <Note />
            <button type="button" class="btn" on:click=take_off>
                {move || words::take_off(&name.get().unwrap_or_default())}
            </button>
        </Slip>
    }
}

/// Words of one's own.
#[component]
fn Note() -> impl IntoView {
    let handle = expect_context::<DishHandle>();
    let note = handle.read(|dish| dish.note.clone());
    view! {
        <div class="field">
            <label for="dish-note">{words::NOTE}</label>
            <textarea
                id="dish-note"
                rows="2"
                maxlength="2000"
                prop:value=move || note.get().unwrap_or_default()
                on:change=move |event| {
                    let text = event_target_value(&event);
                    handle.edit(|dish| dish.note = text);
                }
            ></textarea>
        </div>
    }
}
