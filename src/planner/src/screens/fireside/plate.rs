//! The plate: the next thing with its countdown; and the fire's standing line, which trades places with it when overdue.

use super::due::{Due, countdown};
use super::fire::FireLine;
use super::moment::events_of;
use super::yard::{Over, use_yard};
use crate::parts::Mark;
use crate::store::{Progress, use_store};
use crate::words::fireside as words;
use cook_model::handover::KnownEvent;
use cook_model::handover::identity::CookerId;
use cook_model::plan::outlook::StepKind;
use cook_model::units::TimeSpan;
use leptos::prelude::*;

/// A fire that is not lit yet is of no interest before this.
const NEAR: TimeSpan = TimeSpan::from_hours(3.0);

/// What the large key does.
#[derive(Clone, Debug, PartialEq)]
enum Tick {
    /// Writes these.
    Events(Vec<KnownEvent>),
    /// Has to be told.
    Ask,
}

/// What stands on the plate or on the line under it.
#[derive(Clone, Debug, PartialEq)]
struct Shown {
    marks: Vec<(char, u8)>,
    what: String,
    count: (String, String),
    over: bool,
    note: String,
    key: &'static str,
    tick: Option<Tick>,
}

/// The plate and the line.
#[component]
pub fn NextPlate() -> impl IntoView {
    let store = use_store();
    let yard = use_yard();
    let overdue = Memo::new(move |_| {
        let now = yard.now();
        yard.fires
            .with(|fires| fires.iter().find(|fire| fire.is_over(now)).copied())
    });
    let next = Memo::new(move |_| yard.lead.get().map(|due| shown_due(&due)));
    let fire = Memo::new(move |_| {
        let now = yard.now();
        let near = |fire: &&FireLine| fire.burning || fire.from - now < NEAR;
        yard.fires.with(|fires| fires.iter().find(near).copied())
    });
    let after = Memo::new(move |_| {
        let lead = yard.lead.get()?;
        yard.dues.with(|dues| {
            let at = dues.iter().position(|due| due.steps == lead.steps)?;
            dues.get(at + 1).cloned()
        })
    });
    let plate = move || match (overdue.get(), next.get()) {
        (Some(fire), next) => {
            let then = next.map(|next| view! { <ThenLine next /> });
            view! {
                <Plate shown=shown_fire(&fire) then=None />
                {then}
            }
            .into_any()
        }
        (None, Some(next)) => {
            let then = after
                .get()
                .map(|due| shown_due(&due))
                .map(|due| due.note_after());
            view! {
                <Plate shown=next then />
                {fire.get().map(|fire| view! { <FireRow fire /> })}
            }
            .into_any()
        }
        (None, None) => {
            let progress = store.forecast().with(|forecast| forecast.progress);
            let has_outlook = yard.with(|day| day.outlook.is_some()).unwrap_or_default();
            let (head, note) = match (yard.day.with(Option::is_some), has_outlook, progress) {
                (false, ..) => (words::NO_PLAN, words::NO_PLAN_NOTE),
                (true, true, _) => (words::ALL_DONE, ""),
                (true, false, Progress::Broken) => (words::BROKEN, words::BROKEN_NOTE),
                (true, false, _) => (words::WORKING, words::WORKING_NOTE),
            };
            view! {
                <section class="plate next" aria-labelledby="next">
                    <h2 class="what" id="next">{head}</h2>
                    <p class="span note">{note}</p>
                </section>
                {fire.get().map(|fire| view! { <FireRow fire /> })}
            }
            .into_any()
        }
    };
    view! { <div class="a1">{plate}</div> }
}

impl Shown {
    fn note_after(&self) -> String {
        words::then(&self.what, &self.note)
    }
}

fn shown_due(due: &Due) -> Shown {
    let yard = use_yard();
    let (now, formats) = (yard.now(), yard.formats());
    yard.with(|day| {
        let outlook = day.outlook.as_ref();
        let steps = || {
            due.steps
                .iter()
                .filter_map(|step| outlook?.steps.get(*step))
        };
        let cooker: Option<CookerId> = steps().find_map(|step| step.cooker);
        let marks = due.dishes.iter().filter_map(|dish| day.seen(*dish));
        let over = due.over(now).is_some();
        let (number, unit) = countdown(if over { due.to } else { due.likely.max(now) }, now);
        let events: Option<Vec<Vec<KnownEvent>>> =
            steps().map(|step| events_of(day, step, now)).collect();
        let tick = match events {
            Some(events) => Tick::Events(events.concat()),
            None => Tick::Ask,
        };
        Shown {
            marks: marks.map(|seen| (seen.letter, seen.hue)).collect(),
            what: words::due(
                due,
                &day.plan,
                cooker.filter(|_| due.kind != StepKind::Serve),
            ),
            count: (number, if over { words::over(&unit) } else { unit }),
            over,
            note: words::span(due, &day.plan, now, &formats),
            key: match tick {
                Tick::Ask => words::TELL,
                Tick::Events(_) => words::DONE,
            },
            tick: Some(tick),
        }
    })
    .unwrap_or_else(|| Shown {
        marks: Vec::new(),
        what: String::new(),
        count: Default::default(),
        over: false,
        note: String::new(),
        key: words::DONE,
        tick: None,
    })
}

fn shown_fire(fire: &FireLine) -> Shown {
    let yard = use_yard();
    let (now, formats) = (yard.now(), yard.formats());
    let (number, unit) = countdown(fire.to, now);
    Shown {
        marks: Vec::new(),
        what: yard
            .with(|day| words::feed_now(fire, &day.plan))
            .unwrap_or_default(),
        count: (number, words::over(&unit)),
        over: true,
        note: words::feed_note(fire, &formats),
        key: words::FED,
        tick: Some(Tick::Events(fed(fire))),
    }
}

/// One round by the habit of the cooker.
fn fed(fire: &FireLine) -> Vec<KnownEvent> {
    vec![KnownEvent::Fed {
        cooker: fire.cooker,
        fuel: fire.piece,
        kind: None,
    }]
}

#[component]
fn Plate(shown: Shown, then: Option<String>) -> impl IntoView {
    let Shown {
        marks,
        what,
        count: (number, unit),
        over,
        note,
        key,
        tick,
    } = shown;
    let marks = marks.into_iter().map(|(letter, hue)| {
        view! { <Mark letter=Signal::stored(letter) hue=Signal::stored(hue) small=true /> }
    });
    let role = over.then_some("alert");
    let long = number.chars().count() + unit.chars().count() > 9;
    view! {
        <section class="plate next" class:late=over role=role aria-labelledby="next">
            <h2 class="what" id="next">{marks.collect_view()} " " {what}</h2>
            <p class="num count" class:long=long>{number} <small>{unit}</small></p>
            {tick.map(|tick| view! { <TickKey tick key_word=key class="btn act did" /> })}
            <p class="span note">{note} {then.map(|then| format!(". {then}"))}</p>
        </section>
    }
}

#[component]
fn TickKey(tick: Tick, key_word: &'static str, class: &'static str) -> impl IntoView {
    let yard = use_yard();
    let press = move |_| match &tick {
        Tick::Events(events) => yard.log_now(events.clone()),
        Tick::Ask => {
            let lead = yard
                .lead
                .with_untracked(|lead| lead.as_ref().and_then(|due| due.dishes.first().copied()));
            if let Some(dish) = lead {
                yard.choose(dish);
            }
            yard.open(Over::Feel);
        }
    };
    view! { <button type="button" class=class on:click=press>{key_word}</button> }
}

/// The fire, while it is not overdue.
#[component]
fn FireRow(fire: FireLine) -> impl IntoView {
    let yard = use_yard();
    let next = move || words::next_feed(&fire, yard.now(), &yard.formats());
    let known = move || {
        let formats = yard.formats();
        yard.with(|day| words::fed(&fire, &day.plan, &formats))
    };
    view! {
        <div class="fire">
            <p>
                <b>{words::FIRE}</b>
                {next}
                <small>{known}</small>
            </p>
            <button type="button" class="btn" on:click=move |_| yard.log_now(fed(&fire))>{words::FED}</button>
        </div>
    }
}

/// What the fire has pushed off the plate.
#[component]
fn ThenLine(next: Shown) -> impl IntoView {
    let line = next.what;
    let key = next.key;
    view! {
        <div class="fire">
            <p>
                <b>{words::THEN}</b>
                {line}
                <small>{next.note}</small>
            </p>
            {next.tick.map(|tick| view! { <TickKey tick key_word=key class="btn" /> })}
        </div>
    }
}
