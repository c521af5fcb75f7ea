//! How sure the table is to be, and who is served.

use super::read;
use crate::parts::{Asked, Choice, Footing, Rule, Way};
use crate::store::{Edit, use_store};
use crate::words::{footing as words, safety};
use cook_model::plan::Audience;
use cook_model::safety::RuleId;
use leptos::prelude::*;

/// The promises offered, as dishes in time out of twenty.
const PROMISES: [u32; 4] = [14, 16, 18, 19];

/// How sure, and for whom.
#[component]
pub fn SureRow() -> impl IntoView {
    let store = use_store();
    let promise = read(|plan| plan.promise);
    let audience = read(|plan| plan.audience);
    let in_twenty = move || promise.get().map(|promise| (promise * 20.0).round());
    let amount = move || in_twenty().map_or_else(String::new, |count| format!("{count} in 20"));
    let ways = PROMISES
        .map(|count| Way::new(count, format!("{count} in 20")))
        .to_vec();
    let chosen = move || {
        let count = in_twenty()?;
        PROMISES.into_iter().find(|one| f64::from(*one) == count)
    };
    view! {
        <Footing
            name=Signal::stored(words::SURE.to_owned())
            note=Signal::derive(move || audience.get().map_or("", words::audience).to_owned())
            amount=Signal::derive(amount)
            asks=store.anything_wrong_in("promise")
        >
            <p class="note">{words::SURE_NOTE}</p>
            <Choice
                lay="four"
                label=Signal::stored(words::SURE_QUESTION.to_owned())
                ways=Signal::stored(ways)
                chosen=Signal::derive(chosen)
                on_choose=move |count: u32| {
                    store.edit(Edit::Promise, |plan| plan.promise = f64::from(count) / 20.0);
                }
            />
            <Asked wrong=store.wrong_at("promise") />
            <Choice
                lay="column"
                label=Signal::stored(words::AUDIENCE.to_owned())
                ways=Signal::stored(words::audience_ways())
                chosen=audience
                on_choose=move |audience: Audience| {
                    store.edit(Edit::Audience, |plan| plan.audience = audience);
                }
            />
            <Show when=move || audience.get() == Some(Audience::Public)>
                <Rule rule=safety::rule(RuleId::LocalCode, &store.formats.get()) />
            </Show>
        </Footing>
    }
}
