//! The rows of every log sheet: when, and who.

use super::telling::When;
use super::yard::use_yard;
use crate::parts::{Choice, TimeField, Way};
use crate::words::fireside as words;
use cook_model::handover::identity::CrewId;
use cook_model::plan::in_order;
use leptos::prelude::*;

/// When it happened, and who tells it. The choice of who stays for the next entry.
#[component]
pub fn WhenWho() -> impl IntoView {
    let yard = use_yard();
    let telling = yard.telling;
    #[derive(Clone, Copy, PartialEq)]
    enum Pick {
        Now,
        FiveAgo,
        At,
    }
    let ways = vec![
        Way::new(Pick::Now, words::NOW),
        Way::new(Pick::FiveAgo, words::FIVE_AGO),
        Way::new(Pick::At, words::ANOTHER_TIME),
    ];
    let chosen = Signal::derive(move || {
        Some(match telling.when.get() {
            When::Now => Pick::Now,
            When::FiveAgo => Pick::FiveAgo,
            When::At(_) => Pick::At,
        })
    });
    let clock = move || {
        yard.store()
            .zone
            .get_untracked()
            .local(yard.store().now.get_untracked())
            .time()
    };
    let choose = move |pick| {
        telling.when.set(match pick {
            Pick::Now => When::Now,
            Pick::FiveAgo => When::FiveAgo,
            Pick::At => When::At(clock()),
        });
    };
    let field = move || match telling.when.get() {
        When::At(time) => Some(view! {
            <TimeField
                label=words::AT
                value=Signal::stored(time)
                on_change=move |time| telling.when.set(When::At(time))
            />
        }),
        When::Now | When::FiveAgo => None,
    };
    view! {
        <Choice label=words::WHEN ways=Signal::stored(ways) chosen on_choose=choose />
        {field}
        <Who />
    }
}

/// Who tells it, where there is more than one.
#[component]
fn Who() -> impl IntoView {
    let yard = use_yard();
    let telling = yard.telling;
    let ways = Memo::new(move |_| {
        yard.with(|day| {
            let crew = in_order(&day.plan.crew, |member| &member.order);
            let mut ways: Vec<Way<Option<CrewId>>> = crew
                .into_iter()
                .map(|(id, member)| Way::new(Some(id), member.name.clone()))
                .collect();
            ways.push(Way::new(None, words::NOBODY));
            ways
        })
        .unwrap_or_default()
    });
    let chosen = Signal::derive(move || Some(telling.who.get()));
    view! {
        <Show when=move || { ways.with(|ways| ways.len() > 1) }>
            <Choice
                label=words::WHO
                ways
                chosen
                on_choose=move |who| telling.hand_to(who)
            />
        </Show>
    }
}
