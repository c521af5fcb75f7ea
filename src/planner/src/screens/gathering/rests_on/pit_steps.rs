//! The pit programme of a cooker: how hot it is run from the start, and what is changed when.

use super::read;
use crate::format::Measure;
use crate::parts::{Asked, Choice, NumberField, SelectField, Way};
use crate::store::{Edit, use_store};
use crate::words::{footing as words, gathering};
use cook_model::handover::identity::{CookerId, DishId};
use cook_model::plan::{PitStep, PitWhen, in_order};
use cook_model::units::{Temperature, TimeSpan};
use leptos::prelude::*;

/// By what a step goes, and the dish it looks at.
fn parts(when: PitWhen) -> Option<(DishId, bool)> {
    match when {
        PitWhen::Start => None,
        PitWhen::AfterOn { dish, .. } => Some((dish, false)),
        PitWhen::CoreReaches { dish, .. } => Some((dish, true)),
    }
}

/// The same step by another dish.
fn with_dish(when: PitWhen, dish: DishId) -> PitWhen {
    match when {
        PitWhen::Start => PitWhen::Start,
        PitWhen::AfterOn { span, .. } => PitWhen::AfterOn { dish, span },
        PitWhen::CoreReaches { core, .. } => PitWhen::CoreReaches { dish, core },
    }
}

/// A step that goes by the core of a dish, near the end of the stall, or by the clock.
fn by(dish: DishId, core: bool) -> PitWhen {
    if core {
        PitWhen::CoreReaches {
            dish,
            core: Temperature::from_celsius(88.0),
        }
    } else {
        PitWhen::AfterOn {
            dish,
            span: TimeSpan::from_hours(4.0),
        }
    }
}

/// The steps.
#[component]
pub fn PitSteps(
    /// Of which cooker.
    cooker: CookerId,
) -> impl IntoView {
    let store = use_store();
    let number = read(move |plan| {
        plan.cookers
            .get(&cooker)
            .map_or(0, |cooker| cooker.programme.len())
    });
    let dishes = read(move |plan| {
        let dishes = in_order(&plan.dishes, |dish| &dish.order).into_iter();
        let there = dishes.filter(|(_, dish)| dish.cooker == Some(cooker));
        there
            .map(|(id, dish)| (id, dish.name.clone()))
            .collect::<Vec<_>>()
    });
    let first_dish = move || dishes.with(|dishes| Some(dishes.as_ref()?.first()?.0));
    let add = move |_| {
        let Some(dish) = first_dish() else { return };
        store.edit(Edit::Cooker(cooker), |plan| {
            if let Some(cooker) = plan.cookers.get_mut(&cooker)
                && let Some(last) = cooker.programme.last()
            {
                let set = last.set;
                cooker.programme.push(PitStep {
                    when: by(dish, true),
                    set,
                });
            }
        });
    };
    view! {
        <For each=move || 0..number.get().unwrap_or(0) key=|at| *at let:at>
            <Step cooker at dishes />
        </For>
        <Asked wrong=store.wrong_at(format!("cookers/{cooker}/programme")) />
        <Show when=move || first_dish().is_some()>
            <button type="button" class="btn" on:click=add>{words::ADD_PIT_STEP}</button>
        </Show>
    }
}

/// One step.
#[component]
fn Step(
    /// Of which cooker.
    cooker: CookerId,
    /// Its place in the programme, from 0.
    at: usize,
    /// The dishes that lie on the cooker.
    dishes: Memo<Option<Vec<(DishId, String)>>>,
) -> impl IntoView {
    let store = use_store();
    let step = read(move |plan| plan.cookers.get(&cooker)?.programme.get(at).copied());
    let step = move || step.get().flatten();
    let edit = move |change: &dyn Fn(&mut PitStep)| {
        store.edit(Edit::Cooker(cooker), |plan| {
            let step = plan
                .cookers
                .get_mut(&cooker)
                .and_then(|cooker| cooker.programme.get_mut(at));
            if let Some(step) = step {
                change(step);
            }
        });
    };
    let remove = move |_| {
        store.edit(Edit::Cooker(cooker), |plan| {
            if let Some(cooker) = plan.cookers.get_mut(&cooker)
                && at < cooker.programme.len()
            {
                cooker.programme.remove(at);
            }
        });
    };
    let by_dish = Memo::new(move |_| parts(step()?.when));
    let label = if at == 0 { words::PIT } else { words::THEN_PIT };
    let set = view! {
        <NumberField
            label=Signal::stored(label.to_owned())
            measure=Signal::stored(Measure::Pit)
            value=Signal::derive(move || Some(step()?.set.celsius()))
            on_change=move |celsius: f64| edit(&|step| step.set = Temperature::from_celsius(celsius))
        />
    };
    let when = move || {
        let (_, core) = by_dish.get()?;
        let groups = dishes.with(|dishes| {
            let entries = dishes.iter().flatten();
            let entries =
                entries.map(|(id, name)| (id.to_string(), gathering::dish_name(name).to_owned()));
            vec![(words::DISHES_ON_IT.to_owned(), entries.collect::<Vec<_>>())]
        });
        let measure = if core { Measure::Core } else { Measure::Hours };
        let amount = Signal::derive(move || match step()?.when {
            PitWhen::CoreReaches { core, .. } => Some(core.celsius()),
            PitWhen::AfterOn { span, .. } => Some(span.seconds()),
            PitWhen::Start => None,
        });
        let set_amount = move |value: f64| {
            edit(&|step| match &mut step.when {
                PitWhen::CoreReaches { core, .. } => *core = Temperature::from_celsius(value),
                PitWhen::AfterOn { span, .. } => *span = TimeSpan::from_seconds(value),
                PitWhen::Start => {}
            });
        };
        Some(view! {
            <SelectField
                label=Signal::stored(words::STEP_DISH.to_owned())
                groups
                value=Signal::derive(move || by_dish.get().map_or_else(String::new, |(dish, _)| dish.to_string()))
                on_change=move |id: String| {
                    if let Ok(dish) = id.parse() {
                        edit(&|step| step.when = with_dish(step.when, dish));
                    }
                }
            />
            <Choice
                lay="two"
                label=Signal::stored(words::STEP_WHEN.to_owned())
                ways=Signal::stored(vec![Way::new(true, words::STEP_CORE), Way::new(false, words::STEP_AFTER)])
                chosen=Signal::stored(Some(core))
                on_choose=move |core| edit(&|step| {
                    if let Some((dish, _)) = parts(step.when) {
                        step.when = by(dish, core);
                    }
                })
            />
            <NumberField
                label=Signal::stored(if core { words::STEP_CORE } else { words::STEP_HOURS }.to_owned())
                measure=Signal::stored(measure)
                value=amount
                on_change=set_amount
            />
            <button type="button" class="btn" on:click=remove>{words::REMOVE_PIT_STEP}</button>
        })
    };
    view! {
        <div class="pit-step" class:further={at > 0}>{set}{when}</div>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_step_keeps_its_figure_when_it_looks_at_another_dish() {
        let (lamb, pork) = (DishId::new(1, 1), DishId::new(1, 2));
        for core in [true, false] {
            let step = with_dish(by(lamb, core), pork);
            assert_eq!(parts(step), Some((pork, core)));
            assert_eq!(step, by(pork, core));
        }
        assert_eq!(parts(PitWhen::Start), None);
    }
}
