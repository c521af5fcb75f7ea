//! What was logged, the last first; each entry can be mended by another one.

use super::telling::When;
use super::when_who::WhenWho;
use super::yard::{Over, use_yard};
use crate::parts::Slip;
use crate::store::{Happening, use_store};
use crate::words::{fireside as words, journal as said};
use cook_model::handover::identity::EntryId;
use cook_model::handover::{Entry, Event, KnownEvent};
use leptos::prelude::*;
use std::collections::BTreeSet;

/// Shown at first.
const FEW: usize = 12;

/// One line of the list.
#[derive(Clone, Debug, PartialEq)]
struct Line {
    id: EntryId,
    said: String,
    by: String,
    struck: bool,
}

/// The list.
#[component]
pub fn JournalList() -> impl IntoView {
    let yard = use_yard();
    let all = RwSignal::new(false);
    let lines = Memo::new(move |_| {
        let formats = yard.formats();
        yard.with(|day| {
            let standing: BTreeSet<EntryId> = day.journal.standing().map(|(id, _)| id).collect();
            let strikes =
                |entry: &Entry| matches!(entry.event, Event::Known(KnownEvent::Struck { .. }));
            let mut entries: Vec<_> = day
                .journal
                .0
                .iter()
                .filter(|(_, entry)| !strikes(entry))
                .collect();
            entries.sort_by_key(|(id, entry)| std::cmp::Reverse((entry.at, **id)));
            let line = |(id, entry): (&EntryId, &Entry)| Line {
                id: *id,
                said: said::entry(entry, &day.plan, &formats),
                by: entry
                    .by
                    .and_then(|by| day.plan.crew.get(&by))
                    .map_or_else(String::new, |member| member.name.clone()),
                struck: !standing.contains(id),
            };
            entries.into_iter().map(line).collect::<Vec<_>>()
        })
        .unwrap_or_default()
    });
    let row = move |line: Line| {
        let id = line.id;
        let words = if line.struck {
            view! { <del>{line.said}</del> }.into_any()
        } else {
            line.said.into_any()
        };
        view! {
            <button type="button" class="entry" on:click=move |_| yard.open(Over::Entry(id))>
                <span>{words}</span>
                <span class="note">{line.by}</span>
            </button>
        }
    };
    let shown = move || {
        let most = if all.get() { usize::MAX } else { FEW };
        lines.get().into_iter().take(most).map(row).collect_view()
    };
    let more = move || lines.with(|lines| lines.len() > FEW) && !all.get();
    view! {
        <section class="band a5" aria-labelledby="journal">
            <h2 class="head" id="journal">
                <span>{words::LOGGED}</span>
                <span class="note">{words::TAP_TO_MEND}</span>
            </h2>
            {shown}
            <Show when=more>
                <button type="button" class="btn all" on:click=move |_| all.set(true)>
                    {move || words::show_all(lines.with(Vec::len))}
                </button>
            </Show>
        </section>
    }
}

/// An entry that is to be mended.
#[component]
pub fn EntrySlip(
    /// Which.
    id: EntryId,
) -> impl IntoView {
    let store = use_store();
    let yard = use_yard();
    let found = yard.read(|day| {
        let entry = day.journal.0.get(&id)?.clone();
        let standing = day.journal.standing().any(|(other, _)| other == id);
        let strike = day.journal.standing().find(|(_, other)| {
            matches!(other.event, Event::Known(KnownEvent::Struck { entry }) if entry == id)
        });
        Some((entry, standing, strike.map(|(id, _)| id)))
    });
    let Some((entry, standing, strike)) = found.flatten() else {
        return view! { <Slip title=words::LOGGED on_close=move |()| yard.shut()>{words::NOTHING_LOGGED}</Slip> }
            .into_any();
    };
    let title = yard
        .read(|day| said::entry(&entry, &day.plan, &yard.store().formats.get_untracked()))
        .unwrap_or_default();
    let by = yard.telling.who;
    let strike_out = move |_| {
        store.strike(&[id], by.get_untracked());
        yard.shut();
    };
    let bring_back = move |_| {
        if let Some(strike) = strike {
            store.strike(&[strike], by.get_untracked());
        }
        yard.shut();
    };
    let known = match entry.event.clone() {
        Event::Known(known) => Some(known),
        Event::Other(_) => None,
    };
    let body = if standing {
        let doubt = known.as_ref().and_then(doubted).map(|event| {
            let word = if is_doubtful(&event) {
                words::MARK_DOUBTFUL
            } else {
                words::MARK_SURE
            };
            let at = entry.at;
            let mend = move |_| {
                let right = Happening {
                    at,
                    by: entry.by,
                    event: event.clone(),
                };
                store.correct(id, right);
                yard.shut();
            };
            view! { <button type="button" class="btn knuckle" on:click=mend>{word}</button> }
        });
        let later = known.map(|event| {
            let mend = move |_| {
                let (at, _) = yard.telling.told();
                store.correct(id, Happening { at, by: by.get_untracked(), event: event.clone() });
                yard.shut();
            };
            let same = move || yard.telling.when.get() == When::Now;
            view! {
                <WhenWho />
                <button type="button" class="btn knuckle" disabled=same on:click=mend>{words::OTHER_TIME}</button>
            }
        });
        view! {
            <button type="button" class="btn act knuckle" on:click=strike_out>{words::STRIKE}</button>
            <p class="note">{words::STRIKE_NOTE}</p>
            {doubt}
            {later}
        }
        .into_any()
    } else {
        view! {
            <button type="button" class="btn act knuckle" disabled=strike.is_none() on:click=bring_back>
                {words::BRING_BACK}
            </button>
        }
        .into_any()
    };
    view! { <Slip title on_close=move |()| yard.shut()>{body}</Slip> }.into_any()
}

/// The same reading with the doubt turned round. None for what is no reading.
#[must_use]
pub fn doubted(event: &KnownEvent) -> Option<KnownEvent> {
    let mut event = event.clone();
    match &mut event {
        KnownEvent::Core { doubtful, .. } | KnownEvent::Pit { doubtful, .. } => {
            *doubtful = !*doubtful;
            Some(event)
        }
        _ => None,
    }
}

const fn is_doubtful(event: &KnownEvent) -> bool {
    matches!(
        event,
        KnownEvent::Core { doubtful: true, .. } | KnownEvent::Pit { doubtful: true, .. }
    )
}
