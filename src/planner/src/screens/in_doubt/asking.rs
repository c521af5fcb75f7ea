//! A question that is being asked: about which dish, what plan and journal know, and what the person told over it.

use crate::store::Store;
use cook_model::answers::{Answer, FactsError, Prompt, Question, Setting};
use cook_model::handover::identity::DishId;
use cook_model::plan::{Food, in_order};
use leptos::prelude::*;
use serde_json::{Map, Value};

/// A question with its facts so far. Cheap to copy.
#[derive(Clone, Copy)]
pub struct Asking {
    /// The key of the question.
    pub kind: &'static str,
    /// About which dish of the plan; none: about something else.
    pub dish: RwSignal<Option<DishId>>,
    /// What plan and journal know.
    pub known: Memo<Map<String, Value>>,
    /// What the person told; null for a fact that was taken away.
    told: RwSignal<Map<String, Value>>,
    /// Both together.
    pub facts: Memo<Map<String, Value>>,
}

impl Asking {
    /// Begins with what is known of the dish that stands worst, or of the first.
    #[must_use]
    pub fn begin(store: Store, kind: &'static str) -> Self {
        let dish = RwSignal::new(first_dish(store));
        // What is known is settled when the question begins or its dish changes, so that no field moves under a finger.
        let known = Memo::new(move |_| {
            let dish = dish.get();
            untrack(|| known(store, kind, dish))
        });
        let told = RwSignal::new(Map::new());
        let facts = Memo::new(move |_| {
            let mut facts = known.get();
            told.with(|told| facts.extend(told.clone()));
            facts.retain(|_, fact| !fact.is_null());
            facts
        });
        Self {
            kind,
            dish,
            known,
            told,
            facts,
        }
    }

    /// Asks about another dish. What was told was of the one before.
    pub fn about(self, dish: Option<DishId>) {
        self.told.update(Map::clear);
        self.dish.set(dish);
    }

    /// The facts that are asked for.
    #[must_use]
    pub fn prompts(self) -> &'static [Prompt] {
        Question::prompts(self.kind).unwrap_or_default()
    }

    /// A fact as it stands.
    #[must_use]
    pub fn fact(self, key: &'static str) -> Signal<Option<Value>> {
        Signal::derive(move || self.facts.with(|facts| facts.get(key).cloned()))
    }

    /// Tells a fact; none takes it away.
    pub fn tell(self, key: &'static str, fact: Option<Value>) {
        self.told.update(|told| {
            told.insert(key.to_owned(), fact.unwrap_or(Value::Null));
        });
    }

    /// The answer to what was told so far.
    ///
    /// # Errors
    /// [`FactsError`]: a fact is missing or cannot be.
    pub fn answer(self) -> Result<Answer, FactsError> {
        let question = self.facts.with(|facts| Question::of(self.kind, facts))?;
        Ok(question.answer())
    }
}

fn known(store: Store, kind: &str, dish: Option<DishId>) -> Map<String, Value> {
    let Some(plan) = store.plan.get() else {
        return Map::new();
    };
    let forecast = store.forecast().get();
    let outlook = forecast
        .outlook
        .filter(|_| forecast.of == store.open_id.get());
    let setting = Setting {
        plan: &plan,
        outlook: outlook.as_deref(),
        journal: &store.journal.get(),
        now: store.now.get(),
        zone: &store.zone.get(),
        dish,
    };
    Question::known(kind, &setting)
}

fn first_dish(store: Store) -> Option<DishId> {
    let plan = store.plan.get_untracked()?;
    let worst = store
        .safe
        .with_untracked(|safe| safe.worst().map(|worst| worst.dish));
    let first = || {
        let dishes = in_order(&plan.dishes, |dish| &dish.order).into_iter();
        let mut cuts = dishes.filter(|(_, dish)| matches!(dish.food, Food::Cut { .. }));
        cuts.next().map(|(id, _)| id)
    };
    worst.or_else(first)
}
