//! A dish of one's own: minutes with a spread, and where it is made.

use super::DishHandle;
use crate::device::ids::Ids;
use crate::format::Measure;
use crate::parts::{Asked, Choice, NumberField};
use crate::words::dish_form as words;
use cook_model::plan::{BasisOfWeight, Dish, Food, Intact, Order, OwnPlace, Piece};
use cook_model::units::{Mass, TimeSpan};
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

/// So many of it: cobs, potatoes. What one weighs is not asked.
fn set_number(dish: &mut Dish, number: u32) {
    let first = dish.pieces.keys().next().copied();
    dish.pieces.clear();
    if number > 0 {
        let piece = Piece {
            order: Order::default(),
            count: number.min(200),
            mass: Mass::from_grams(250.0),
            weighed: BasisOfWeight::Bought,
            thickness: None,
            intact: Intact::Unknown,
            frozen: false,
        };
        dish.pieces
            .insert(first.unwrap_or_else(|| Ids.piece()), piece);
    }
}

/// A typed number of things, to the nearest whole one.
fn whole(number: f64) -> u32 {
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a saturating cast after rounding"
    )]
    let whole = number.round() as u32;
    whole
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
    let number = handle.read(|dish| {
        let counts = dish.pieces.values().map(|piece| piece.count);
        f64::from(counts.fold(0, u32::saturating_add))
    });
    let number = Signal::derive(move || number.get().filter(|number| *number > 0.0));
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
        <NumberField
            label=Signal::stored(words::HOW_MANY.to_owned())
            measure=Signal::stored(Measure::Count)
            value=number
            on_change=move |number: f64| handle.edit(|dish| set_number(dish, whole(number)))
            on_clear=move |()| handle.edit(|dish| dish.pieces.clear())
        />
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
