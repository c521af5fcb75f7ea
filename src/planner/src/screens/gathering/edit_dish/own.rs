//! A dish of one's own: minutes with a spread, and where it is made.

use super::DishHandle;
use crate::format::Measure;
use crate::parts::{Asked, Choice, NumberField};
use crate::words::dish_form as words;
use cook_model::plan::{Dish, Food, OwnPlace};
use cook_model::units::TimeSpan;
use leptos::prelude::*;

/// The three times, in the order of the plan.
type Times = [TimeSpan; 3];

fn times(dish: &Dish) -> Times {
    match dish.food {
        Food::Own {
            least,
            likely,
            most,
            ..
        } => [least, likely, most],
        Food::Cut { .. } => Times::default(),
    }
}

fn set_time(dish: &mut Dish, which: usize, seconds: f64) {
    if let Food::Own {
        least,
        likely,
        most,
        ..
    } = &mut dish.food
    {
        *[least, likely, most][which] = TimeSpan::from_seconds(seconds);
    }
}

/// Times and place.
#[component]
pub fn OwnTimes() -> impl IntoView {
    let handle = expect_context::<DishHandle>();
    let now = handle.read(times);
    let place = handle.read(|dish| match dish.food {
        Food::Own { place, .. } => place,
        Food::Cut { .. } => OwnPlace::Cooker,
    });
    let field = move |which: usize, label: &str| {
        view! {
            <NumberField
                label=Signal::stored(label.to_owned())
                measure=Signal::stored(Measure::Minutes)
                value=Signal::derive(move || Some(now.get()?[which].seconds()))
                on_change=move |seconds: f64| handle.edit(|dish| set_time(dish, which, seconds))
            />
        }
    };
    view! {
        <fieldset class="group">
            <legend class="head">{words::OWN_TIMES}</legend>
            <div class="fields">
                {field(0, words::LEAST)} {field(1, words::LIKELY)} {field(2, words::MOST)}
            </div>
            <Asked wrong=handle.wrong_at("food") />
        </fieldset>
        <Choice
            label=Signal::stored(words::WHERE_MADE.to_owned())
            ways=Signal::stored(words::own_places())
            chosen=place
            on_choose=move |chosen| handle.edit(|dish| {
                if let Food::Own { place, .. } = &mut dish.food {
                    *place = chosen;
                }
            })
        />
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_time_is_changed_by_itself() {
        let mut dish =
            crate::store::new_things::own_dish("Corn", None, cook_model::plan::Order::default());
        set_time(&mut dish, 2, 1800.0);
        assert_eq!(times(&dish).map(TimeSpan::minutes), [10.0, 15.0, 30.0]);
    }
}
