//! What was passed over without a word: it no longer leads, and can still be ticked off.

use super::due;
use super::moment::events_of;
use super::yard::use_yard;
use crate::words::fireside as words;
use leptos::prelude::*;

/// The list, where there is anything on it.
#[component]
pub fn LeftOut() -> impl IntoView {
    let yard = use_yard();
    let lines = Memo::new(move |_| {
        let (now, formats) = (yard.now(), yard.formats());
        let dues = yard.dues.get();
        yard.with(|day| {
            let left = due::left_out(&dues, now).into_iter().map(|at| &dues[at]);
            let line = |due: &due::Due| {
                let outlook = day.outlook.as_ref()?;
                let steps = || due.steps.iter().filter_map(|step| outlook.steps.get(*step));
                let cooker = steps().find_map(|step| step.cooker);
                let events = steps().filter_map(|step| events_of(day, step, now));
                let events: Vec<_> = events.flatten().collect();
                let what = words::due(due, &day.plan, cooker);
                let when = words::span(due, &day.plan, now, &formats);
                Some((what, when, events))
            };
            left.filter_map(line).collect::<Vec<_>>()
        })
        .unwrap_or_default()
    });
    let row = move |(what, when, events): (
        String,
        String,
        Vec<cook_model::handover::KnownEvent>,
    )| {
        view! {
            <div class="fire">
                <p><b>{what}</b> <small>{when}</small></p>
                <button type="button" class="btn" on:click=move |_| yard.log_now(events.clone())>{words::DONE}</button>
            </div>
        }
    };
    view! {
        <Show when=move || { lines.with(|lines| !lines.is_empty()) }>
            <section class="band a4" aria-labelledby="left-out">
                <h2 class="head" id="left-out">
                    <span>{words::LEFT_OUT}</span>
                    <span class="note">{words::LEFT_OUT_NOTE}</span>
                </h2>
                {move || lines.get().into_iter().map(row).collect_view()}
            </section>
        </Show>
    }
}
