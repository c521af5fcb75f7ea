//! The plate: the answer in large print, or what is missing for it.

use super::answer::{Answer, Ready, answer};
use super::scale::{Label, Scale};
use super::{Over, OverScreen};
use crate::parts::Grain;
use crate::store::use_store;
use crate::words::{Told, gathering as words};
use leptos::prelude::*;

/// The plate of this screen.
#[component]
pub fn AnswerPlate() -> impl IntoView {
    let store = use_store();
    let answer = Memo::new(move |_| {
        let plan = store.plan.get();
        plan.map_or(Answer::Empty, |plan| {
            let forecast = store.forecast().get();
            answer(&plan, &forecast, &store.formats.get())
        })
    });
    // The last figures stay while there are none, so that the plate moves from one answer to the next.
    let ready = Memo::new(move |before: Option<&Option<Ready>>| match answer.get() {
        Answer::Ready(ready) => Some(*ready),
        _ => before.cloned().flatten(),
    });
    let is_ready = Memo::new(move |_| answer.with(|answer| matches!(answer, Answer::Ready(_))));
    let other = move || match answer.get() {
        Answer::Empty | Answer::Ready(_) => view! { <Empty /> }.into_any(),
        Answer::Working => told(words::WORKING, words::WORKING_NOTE, true).into_any(),
        Answer::Broken => told(words::BROKEN, words::BROKEN_NOTE, false).into_any(),
        Answer::Hindered(Told { head, note }) => told(head, note, false).into_any(),
    };
    view! {
        <Show when=move || is_ready.get() fallback=move || view! { {other} }>
            <ReadyPlate ready />
        </Show>
    }
}

/// Nothing to reckon yet.
#[component]
fn Empty() -> impl IntoView {
    let store = use_store();
    let over = expect_context::<OverScreen>().0;
    let add = move |_| {
        if store.open_id.get_untracked().is_none() {
            store.new_plan();
        }
        over.set(Some(Over::NewDish));
    };
    let has_sample = move || {
        let sample = store.preferences().with(|preferences| preferences.sample);
        sample.is_some_and(|sample| {
            store.library().with(|library| {
                library.plans.contains_key(&sample) && !library.index.is_away(sample)
            })
        })
    };
    view! {
        <section class="plate empty" aria-labelledby="answer">
            <h2 class="mid" id="answer">{words::NO_DISH}</h2>
            <p>{words::NO_DISH_NOTE}</p>
            <button type="button" class="btn act one" on:click=add>{words::ADD_A_DISH}</button>
            <button type="button" class="btn one" on:click=move |_| store.open_sample()>
                {words::LOOK_AT_SAMPLE}
            </button>
            <p class="note" hidden=has_sample>{words::STAYS_HERE}</p>
        </section>
    }
}

fn told(head: impl Into<String>, note: impl Into<String>, working: bool) -> impl IntoView {
    view! {
        <section class="plate empty" aria-labelledby="answer" aria-busy=working.to_string()>
            <h2 class="mid" id="answer">{head.into()}</h2>
            <p>{note.into()}</p>
            {working.then(|| view! { <div class="working" aria-hidden="true"></div> })}
        </section>
    }
}

/// The answer.
#[component]
fn ReadyPlate(
    /// Its figures.
    ready: Memo<Option<Ready>>,
) -> impl IntoView {
    let store = use_store();
    let say = move |part: fn(&Ready) -> String| {
        move || ready.with(|ready| ready.as_ref().map_or_else(String::new, part))
    };
    let scale = Memo::new(move |_| {
        let serving = store
            .plan
            .with(|plan| Some(plan.as_ref()?.serving.moment()));
        let formats = store.formats.get();
        ready.with(|ready| {
            let window = &ready.as_ref()?.window;
            Some(Scale::around(std::iter::once(window), serving?, &formats))
        })
    });
    let deciles = Signal::derive(move || {
        let scale = scale.get();
        ready
            .with(|ready| Some(scale?.deciles(&ready.as_ref()?.window)))
            .unwrap_or_default()
    });
    let stale =
        move || ready.with(|ready| ready.as_ref().is_some_and(|ready| ready.standing.is_some()));
    let halves =
        move || ready.with(|ready| ready.as_ref().is_some_and(|ready| ready.from.1.is_some()));
    let time = move |part: fn(&Ready) -> &(String, Option<&'static str>)| {
        move || {
            ready.with(|ready| {
                let (digits, half) = part(ready.as_ref()?).clone();
                Some(
                    view! { {digits}{half.map(|half| view! { <span class="half">{half}</span> })} },
                )
            })
        }
    };
    view! {
        <section class="plate answer" class:stale=stale aria-labelledby="answer" aria-busy=move || stale().to_string()>
            <h2 class="head" id="answer">{say(|ready| ready.heading.clone())}</h2>
            <p class="num big" class:halves=halves>
                {time(|ready| &ready.from)}<span class="to">"to"</span>{time(|ready| &ready.to)}
            </p>
            <p class="note" role="status">
                {say(|ready| ready.standing.map_or_else(|| ready.note.clone(), str::to_owned))}
            </p>
            <div class="working" aria-hidden="true"></div>
            <div class="track">
                <Grain deciles label=Signal::derive(say(|ready| ready.label.clone())) />
                <TableLine scale />
            </div>
            <AxisLabels scale />
            <dl class="duo">
                <div>
                    <dt>{say(|ready| ready.on[0].clone())}</dt>
                    <dd class="num">{say(|ready| ready.on[1].clone())}</dd>
                    <dd class="note">{say(|ready| ready.on[2].clone())}</dd>
                </div>
                <div>
                    <dt>{say(|ready| ready.table[0].clone())}</dt>
                    <dd class="num">{say(|ready| ready.table[1].clone())}</dd>
                    <dd class="note">{say(|ready| ready.table[2].clone())}</dd>
                </div>
            </dl>
        </section>
    }
}

/// The double line at the serving hour.
#[component]
pub fn TableLine(
    /// The axis that it stands on.
    scale: Memo<Option<Scale>>,
) -> impl IntoView {
    let at = move || scale.with(|scale| scale.as_ref().map_or(0.0, Scale::table));
    view! { <span class="table-line" style=("--a", move || format!("{:.3}%", at()))></span> }
}

/// The hours under the windows.
#[component]
pub fn AxisLabels(
    /// The axis.
    scale: Memo<Option<Scale>>,
) -> impl IntoView {
    let store = use_store();
    let labels = move || {
        let formats = store.formats.get();
        scale.with(|scale| {
            let labels = scale
                .as_ref()
                .map(|scale| scale.labels(&formats, words::TABLE));
            labels.unwrap_or_default()
        })
    };
    let label = |label: Label| {
        let at_end = label.ends_there;
        let text = if label.table {
            view! { <b>{label.text}</b> }.into_any()
        } else {
            label.text.into_any()
        };
        view! {
            <span class:at-end=at_end style=("--a", format!("{:.3}%", label.at))>{text}</span>
        }
    };
    view! {
        <div class="axis" aria-hidden="true">{move || labels().into_iter().map(label).collect_view()}</div>
    }
}
