//! Who comes, and how much they eat.

use super::read;
use crate::format::Measure;
use crate::parts::{Asked, Choice, Footing, NumberField};
use crate::store::{Edit, use_store};
use crate::words::footing as words;
use cook_model::plan::{Appetite, Food, Guests};
use cook_model::provisions::{Hunger, Sides, appetite as usual_appetite};
use cook_model::units::Mass;
use leptos::prelude::*;

/// Grown and small.
#[component]
pub fn GuestsRow() -> impl IntoView {
    let store = use_store();
    let guests = read(|plan| plan.guests);
    let set = move |change: fn(&mut Guests, u32), number: f64| {
        store.edit(Edit::Guests, |plan| change(&mut plan.guests, whole(number)));
    };
    let one = move |part: fn(&Guests) -> u32| {
        Signal::derive(move || Some(f64::from(part(&guests.get()?))))
    };
    view! {
        <Footing
            name=Signal::stored(words::GUESTS.to_owned())
            note=Signal::derive(move || guests.get().map_or_else(String::new, words::guests))
            amount=Signal::derive(move || guests.get().map_or_else(String::new, |guests| guests.count().to_string()))
            asks=store.anything_wrong_in("guests")
        >
            <div class="fields">
                <NumberField
                    label=Signal::stored(words::GROWN.to_owned())
                    measure=Signal::stored(Measure::Count)
                    value=one(|guests| guests.grown)
                    on_change=move |number| set(|guests, number| guests.grown = number, number)
                />
                <NumberField
                    label=Signal::stored(words::SMALL.to_owned())
                    measure=Signal::stored(Measure::Count)
                    value=one(|guests| guests.small)
                    on_change=move |number| set(|guests, number| guests.small = number, number)
                />
                <NumberField
                    label=Signal::stored(words::HEARTY.to_owned())
                    measure=Signal::stored(Measure::Count)
                    value=one(|guests| guests.hearty)
                    on_change=move |number| set(|guests, number| guests.hearty = number, number)
                />
                <NumberField
                    label=Signal::stored(words::LIGHT.to_owned())
                    measure=Signal::stored(Measure::Count)
                    value=one(|guests| guests.light)
                    on_change=move |number| set(|guests, number| guests.light = number, number)
                />
            </div>
            <p class="note">{words::HEARTY_NOTE}</p>
            <Asked wrong=store.wrong_at("guests") />
        </Footing>
    }
}

/// How much they eat.
#[component]
pub fn AppetiteRow() -> impl IntoView {
    let store = use_store();
    let appetite = read(|plan| plan.appetite);
    let mass = move |part: fn(&Appetite) -> Mass| {
        Signal::derive(move || Some(part(&appetite.get()?).kilograms()))
    };
    let set = move |change: fn(&mut Appetite, Mass), kilograms: f64| {
        let mass = Mass::from_kilograms(kilograms);
        store.edit(Edit::Appetite, |plan| change(&mut plan.appetite, mass));
    };
    let say = move |part: fn(&Appetite) -> Mass| {
        let formats = store.formats.get();
        appetite.get().map(|appetite| formats.mass(part(&appetite)))
    };
    let meats = read(|plan| {
        let cuts = plan.dishes.values();
        cuts.filter(|dish| matches!(dish.food, Food::Cut { .. }))
            .count()
    });
    let usual = move |sides| {
        let meats = u32::try_from(meats.get().unwrap_or(1)).unwrap_or(u32::MAX);
        usual_appetite(sides, Hunger::Usual, meats)
    };
    let sides = move || {
        let now = appetite.get()?;
        let mut all = [Sides::Few, Sides::Some, Sides::Many].into_iter();
        all.find(|sides| {
            let usual = usual(*sides);
            (usual.grown - now.grown).grams().abs() < 0.5
                && (usual.small - now.small).grams().abs() < 0.5
        })
    };
    let by_sides = move |sides| {
        let usual = usual(sides);
        store.edit(Edit::Appetite, |plan| {
            plan.appetite = Appetite {
                leftovers: plan.appetite.leftovers,
                ..usual
            };
        });
    };
    let note = move || {
        let leftovers = appetite
            .get()
            .map_or(Mass::ZERO, |appetite| appetite.leftovers);
        let over = (leftovers > Mass::ZERO).then(|| store.formats.get().mass(leftovers));
        words::appetite(over.as_deref())
    };
    view! {
        <Footing
            name=Signal::stored(words::APPETITE.to_owned())
            note=Signal::derive(note)
            amount=Signal::derive(move || say(|appetite| appetite.grown).unwrap_or_default())
            asks=store.anything_wrong_in("appetite")
        >
            <p class="note">{move || words::appetite_note(store.formats.get().units)}</p>
            <Choice
                label=Signal::stored(words::SIDES.to_owned())
                ways=Signal::stored(words::sides())
                chosen=Signal::derive(sides)
                on_choose=by_sides
            />
            <p class="note">{words::SIDES_NOTE}</p>
            <div class="fields">
                <NumberField
                    label=Signal::stored(words::EACH_GROWN.to_owned())
                    measure=Signal::stored(Measure::SmallMass)
                    value=mass(|appetite| appetite.grown)
                    on_change=move |kilograms| set(|appetite, mass| appetite.grown = mass, kilograms)
                />
                <NumberField
                    label=Signal::stored(words::EACH_SMALL.to_owned())
                    measure=Signal::stored(Measure::SmallMass)
                    value=mass(|appetite| appetite.small)
                    on_change=move |kilograms| set(|appetite, mass| appetite.small = mass, kilograms)
                />
                <NumberField
                    label=Signal::stored(words::LEFT_OVER.to_owned())
                    measure=Signal::stored(Measure::Mass)
                    value=mass(|appetite| appetite.leftovers)
                    on_change=move |kilograms| set(|appetite, mass| appetite.leftovers = mass, kilograms)
                />
            </div>
            <Asked wrong=store.wrong_at("appetite") />
        </Footing>
    }
}

/// A typed number of people, to the nearest that is one.
fn whole(number: f64) -> u32 {
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a saturating cast after rounding"
    )]
    let whole = number.round() as u32;
    whole
}
