//! Several dishes, switched by their marks.

use super::yard::use_yard;
use crate::format::Formats;
use crate::parts::Mark;
use crate::words::{fireside as words, journal::dish_name};
use cook_model::handover::identity::DishId;
use cook_model::live::Stage;
use cook_model::plan::outlook::DishOutlook;
use leptos::prelude::*;

/// One dish to switch to.
#[derive(Clone, Debug, PartialEq)]
struct Tab {
    dish: DishId,
    letter: char,
    hue: u8,
    name: String,
    is: String,
}

/// The row of dishes, where there are several.
#[component]
pub fn Tabs() -> impl IntoView {
    let yard = use_yard();
    let tabs = Memo::new(move |_| {
        let formats = yard.formats();
        yard.with(|day| {
            let dishes = day.dishes().into_iter();
            let tab = |dish: DishId| {
                let seen = day.seen(dish)?;
                let (stage, _) = day.progress().stage(dish);
                Some(Tab {
                    dish,
                    letter: seen.letter,
                    hue: seen.hue,
                    name: dish_name(&day.plan, dish),
                    is: is(stage, seen, &formats),
                })
            };
            dishes.filter_map(tab).collect::<Vec<_>>()
        })
        .unwrap_or_default()
    });
    let many = move || tabs.with(|tabs| tabs.len() > 3);
    let key = move |tab: Tab| {
        let dish = tab.dish;
        let checked = move || (yard.dish.get() == Some(dish)).to_string();
        view! {
            <button type="button" class="tab" aria-pressed=checked on:click=move |_| yard.choose(dish)>
                <Mark letter=Signal::stored(tab.letter) hue=Signal::stored(tab.hue) small=true />
                <b class:hush=many>{tab.name}</b>
                <span class="in">{tab.is}</span>
            </button>
        }
    };
    view! {
        <Show when=move || { tabs.with(|tabs| tabs.len() > 1) }>
            <div class="tabs" class:many=many role="group" aria-label=words::DISHES>
                {move || tabs.get().into_iter().map(key).collect_view()}
            </div>
        </Show>
    }
}

fn is(stage: Stage, seen: &DishOutlook, formats: &Formats) -> String {
    match (stage, &seen.forecast) {
        (Stage::On | Stage::Wrapped, Ok(times)) => formats.window(&times.ready),
        (Stage::NotOn, _) => match &seen.forecast {
            Ok(times) => words::on_at(&formats.time(times.on)),
            Err(_) => words::stage(stage).to_owned(),
        },
        _ => words::stage(stage).to_owned(),
    }
}
