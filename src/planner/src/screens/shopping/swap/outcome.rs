//! What changes at once: the price of a plate, what lies on the plates, and how long it takes.

use super::{Swap, number};
use crate::device::money;
use crate::screens::shopping::Listed;
use crate::words::swap as words;
use cook_model::provisions::{SwapEffect, SwapWay, swap_effect};
use cook_model::units::TimeSpan;
use leptos::prelude::*;

/// Before and after, without waiting for the forecast.
pub(super) fn effect(swap: Swap, way: SwapWay) -> Option<SwapEffect> {
    let tries = swap.plans.get().ok()?;
    let plan = swap.store.plan.get()?;
    let learned = swap.learned.get();
    swap.store.forecast().with(|forecast| {
        let outlook = forecast.outlook.as_deref();
        swap_effect(&plan, outlook, &learned, swap.dish, tries.of(way)).ok()
    })
}

/// The three figures.
#[component]
pub fn Outcome() -> impl IntoView {
    let swap = expect_context::<Swap>();
    let Listed { currency, .. } = expect_context();
    let effect = Memo::new(move |_| effect(swap, swap.chosen.get().way()));
    let plate = move || {
        let effect = effect.get()?;
        let say = |bill: cook_model::provisions::shopping::Bill| {
            let plate = bill.per_plate.filter(|_| bill.total.0 > 0);
            plate.map_or_else(
                || words::NO_PRICE.to_owned(),
                |plate| money::say(plate, currency.get()),
            )
        };
        Some((say(effect.after.bill), words::was(&say(effect.before.bill))))
    };
    let cooked = move || {
        let effect = effect.get()?;
        let formats = swap.store.formats.get();
        let portions = effect.after.portions;
        Some((
            formats.mass(portions.planned),
            words::wanted(&formats.mass(portions.wanted)),
        ))
    };
    let longer = move || {
        let planned = swap.planned()?;
        let before = planned.ready.likely() - planned.on;
        let after = swap.store.trials().with(|trials| {
            let tried = trials.get(&number(swap.chosen.get().way()))?;
            Some(tried.trial.as_ref().ok()?.takes)
        })?;
        let formats = swap.store.formats.get();
        Some((
            words::longer(after - before, &formats),
            words::was(&formats.span(before)),
        ))
    };
    let figure = |heading: &'static str, figure: Signal<Option<(String, String)>>| {
        let number = move || {
            figure
                .get()
                .map_or_else(|| "…".to_owned(), |(number, _)| number)
        };
        let note = move || figure.get().map(|(_, note)| note);
        view! {
            <div>
                <dt>{heading}</dt>
                <dd class="num">{number}</dd>
                <dd class="was">{note}</dd>
            </div>
        }
    };
    view! {
        <dl class="outcome" aria-live="polite">
            {figure(words::A_PLATE, Signal::derive(plate))}
            {figure(words::COOKED, Signal::derive(cooked))}
            {figure(words::TAKES, Signal::derive(longer))}
        </dl>
    }
}

/// Whether a span is worth naming.
pub(super) fn is_nothing(span: TimeSpan) -> bool {
    span.minutes().abs() < 5.0
}
