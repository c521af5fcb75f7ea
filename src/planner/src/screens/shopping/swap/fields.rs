//! What the shop has: weight, thickness or bones, how many, price; and what else there is to say about it.

use super::Swap;
use crate::device::money;
use crate::format::{MassUnit, Measure};
use crate::parts::{CheckField, Choice, NumberField, SelectField, Way};
use crate::screens::shopping::Listed;
use crate::words::{dish_form, dishes, shopping, swap as words};
use cook_model::meat::{CutId, catalogue};
use cook_model::plan::in_order;
use cook_model::provisions::shopping::{Money, Price, PricedBy};
use cook_model::provisions::{Instead, Offer, OfferError, Quantity, Size, Weights, mass_per_bone};
use cook_model::units::{Length, Mass};
use leptos::prelude::*;

/// All of it.
#[component]
pub fn OfferFields() -> impl IntoView {
    let swap = expect_context::<Swap>();
    view! {
        <div class="fields">
            <WeightField />
            <ThicknessField />
            <PriceFields />
            <CountField />
            <CheckField
                label=Signal::stored(words::FROZEN.to_owned())
                value=Signal::derive(move || swap.offer.with(|offer| offer.frozen))
                on_change=move |frozen| swap.offer.update(|offer| offer.frozen = frozen)
            />
        </div>
        <InsteadChoice />
        <details class="group">
            <summary class="head">{words::MORE}</summary>
            <CutField />
            <IntactChoice />
        </details>
    }
}

/// What is wrong with the offer, where it is about a field.
fn wrong(swap: Swap, about: fn(&OfferError) -> bool) -> Signal<Option<String>> {
    Signal::derive(move || {
        let formats = swap.store.formats.get();
        swap.plans.with(|plans| {
            let error = plans.as_ref().err().filter(|error| about(error))?;
            Some(words::error(error, &formats))
        })
    })
}

#[component]
fn WeightField() -> impl IntoView {
    let swap = expect_context::<Swap>();
    let small = Memo::new(move |_| {
        swap.offer
            .with(|offer| offer.cut.cut().shape.mass.kilograms() < 0.7)
    });
    let measure = Signal::derive(move || {
        if small.get() {
            Measure::SmallMass
        } else {
            Measure::Mass
        }
    });
    let by_bones = Signal::derive(move || {
        let offer = swap.offer.get();
        Some((mass_per_bone(offer.cut)? * f64::from(offer.bones?)).kilograms())
    });
    view! {
        <NumberField
            label=Signal::stored(dish_form::WEIGHT.to_owned())
            measure
            value=Signal::derive(move || Some(swap.offer.get().mass?.kilograms()))
            assumed=by_bones
            on_change=move |kilograms: f64| {
                swap.offer.update(|offer| offer.mass = Some(Mass::from_kilograms(kilograms)));
            }
            on_clear=move |()| swap.offer.update(|offer| offer.mass = None)
            problem=wrong(swap, |error| matches!(error, OfferError::Weight { .. } | OfferError::NoWeight))
        />
        <Show when=move || swap.offer.with(|offer| mass_per_bone(offer.cut).is_some())>
            <NumberField
                label=Signal::stored(words::BONES.to_owned())
                measure=Signal::stored(Measure::Count)
                value=Signal::derive(move || Some(f64::from(swap.offer.get().bones?)))
                on_change=move |bones: f64| {
                    swap.offer.update(|offer| {
                        offer.bones = Some(whole(bones));
                        // A rack is told by its bones or by its weight: what was said last counts.
                        offer.mass = None;
                    });
                }
                on_clear=move |()| swap.offer.update(|offer| offer.bones = None)
            />
        </Show>
    }
}

#[component]
fn ThicknessField() -> impl IntoView {
    let swap = expect_context::<Swap>();
    let guessed = Signal::derive(move || {
        let offer = swap.offer.get();
        let bought = Offer {
            thickness: None,
            ..offer
        }
        .checked()
        .ok()?;
        let trimmed = Weights::from_bought(offer.cut, bought).trimmed;
        let size = Size::of(offer.cut, trimmed, None);
        Some((size.thickness + size.bone).metres())
    });
    view! {
        <NumberField
            label=Signal::stored(dish_form::THICKNESS.to_owned())
            measure=Signal::stored(Measure::Thickness)
            value=Signal::derive(move || Some(swap.offer.get().thickness?.metres()))
            assumed=guessed
            on_change=move |metres: f64| {
                swap.offer.update(|offer| offer.thickness = Some(Length::from_metres(metres)));
            }
            on_clear=move |()| swap.offer.update(|offer| offer.thickness = None)
            problem=wrong(swap, |error| matches!(error, OfferError::Thickness { .. }))
        />
    }
}

#[component]
fn CountField() -> impl IntoView {
    let swap = expect_context::<Swap>();
    view! {
        <NumberField
            label=Signal::stored(dish_form::ALIKE.to_owned())
            measure=Signal::stored(Measure::Count)
            value=Signal::derive(move || Some(f64::from(swap.offer.get().count)))
            on_change=move |count: f64| swap.offer.update(|offer| offer.count = whole(count))
            problem=wrong(swap, |error| matches!(error, OfferError::Count(_)))
        />
    }
}

/// A price as it stands on the label, and what it is for.
#[component]
fn PriceFields() -> impl IntoView {
    let swap = expect_context::<Swap>();
    let Listed { currency, .. } = expect_context();
    let pounds = swap
        .store
        .formats
        .with_untracked(|formats| formats.units.mass == MassUnit::Pounds);
    let ways = shopping::ways_to_price(Some(Quantity::Mass(Mass::ZERO)), pounds);
    let first = ways.first().copied().unwrap_or(PricedBy::All);
    let said = swap.offer.with_untracked(|offer| offer.price);
    let by = RwSignal::new(said.map_or(first, |price| price.by));
    let coins = Signal::derive(move || {
        #[expect(
            clippy::cast_precision_loss,
            reason = "prices are far below 2^53 coins"
        )]
        let coins = swap.offer.get().price?.money.0 as f64;
        Some(coins)
    });
    let set = move |coins: f64| {
        #[expect(clippy::cast_possible_truncation, reason = "a saturating cast")]
        let money = Money((coins.round() as i64).max(0));
        let by = by.get_untracked();
        swap.offer
            .update(|offer| offer.price = Some(Price { money, by }));
    };
    let names = ways
        .iter()
        .map(|by| shopping::priced_by(*by).to_owned())
        .map(|name| (name.clone(), name))
        .collect();
    let choose = move |chosen: String| {
        let found = ways.iter().find(|by| shopping::priced_by(**by) == chosen);
        if let Some(found) = found.copied() {
            by.set(found);
            swap.offer.update(|offer| {
                if let Some(price) = &mut offer.price {
                    price.by = found;
                }
            });
        }
    };
    view! {
        <NumberField
            label=Signal::derive(move || format!("{}, {}", shopping::PRICE, currency.get()))
            measure=Signal::derive(move || Measure::Money(money::digits(currency.get())))
            value=coins
            on_change=set
            on_clear=move |()| swap.offer.update(|offer| offer.price = None)
        />
        <SelectField
            label=Signal::stored(shopping::PRICE_FOR.to_owned())
            groups=vec![(shopping::PRICE_FOR.to_owned(), names)]
            value=Signal::derive(move || shopping::priced_by(by.get()).to_owned())
            on_change=choose
        />
    }
}

/// All pieces of the dish, or one of them; asked only where there are several of the same cut.
#[component]
fn InsteadChoice() -> impl IntoView {
    let swap = expect_context::<Swap>();
    let ways = Memo::new(move |_| {
        let formats = swap.store.formats.get();
        let cut = swap.offer.with(|offer| offer.cut);
        swap.store.plan.with(|plan| {
            let dish = plan.as_ref().and_then(|plan| plan.dishes.get(&swap.dish));
            let dish = dish.filter(|dish| super::cut_of(&dish.food) == Some(cut));
            let pieces = dish.map(|dish| in_order(&dish.pieces, |piece| &piece.order));
            let pieces = pieces.unwrap_or_default();
            let mut ways = vec![Way::new(Instead::All, words::INSTEAD_OF_ALL)];
            ways.extend(pieces.iter().map(|(id, piece)| {
                let mass = formats.mass(Weights::of_one(cut, piece).bought);
                Way::new(
                    Instead::OneOf { piece: *id },
                    words::instead_of_one(piece.count, &mass),
                )
            }));
            let several = pieces.iter().map(|(_, piece)| piece.count).sum::<u32>() > 1;
            if several { ways } else { Vec::new() }
        })
    });
    let choose = move |instead| {
        swap.instead.set(instead);
        // One stands in for one, until it is said otherwise.
        if matches!(instead, Instead::OneOf { .. }) {
            swap.offer.update(|offer| offer.count = 1);
        }
    };
    view! {
        <Show when=move || ways.with(|ways| !ways.is_empty())>
            <Choice
                lay="two"
                label=Signal::stored(words::INSTEAD.to_owned())
                ways
                chosen=Signal::derive(move || Some(swap.instead.get()))
                on_choose=choose
            />
        </Show>
    }
}

/// Another cut instead.
#[component]
fn CutField() -> impl IntoView {
    let swap = expect_context::<Swap>();
    let groups = dishes::KINDS
        .iter()
        .map(|kind| {
            let of_kind = catalogue().iter().filter(|cut| cut.kind == *kind);
            let cuts = of_kind.map(|cut| (cut.id.slug().to_owned(), cut.name.to_owned()));
            (dishes::kind(*kind).to_owned(), cuts.collect())
        })
        .collect();
    let choose = move |slug: String| {
        if let Ok(cut) = slug.parse::<CutId>() {
            swap.offer.update(|offer| {
                offer.cut = cut;
                // What was measured was of the other cut.
                offer.thickness = None;
                offer.bones = None;
            });
        }
    };
    view! {
        <SelectField
            label=Signal::stored(words::ANOTHER_CUT.to_owned())
            groups
            value=Signal::derive(move || swap.offer.with(|offer| offer.cut.slug().to_owned()))
            on_change=choose
        />
    }
}

#[component]
fn IntactChoice() -> impl IntoView {
    let swap = expect_context::<Swap>();
    view! {
        <Show when=move || swap.offer.with(|offer| dish_form::is_red_muscle(offer.cut))>
            <Choice
                lay="column"
                label=Signal::stored(dish_form::IS_IT_INTACT.to_owned())
                ways=Signal::stored(dish_form::intact_ways())
                chosen=Signal::derive(move || Some(swap.offer.with(|offer| offer.intact)))
                on_choose=move |intact| swap.offer.update(|offer| offer.intact = intact)
            />
        </Show>
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
