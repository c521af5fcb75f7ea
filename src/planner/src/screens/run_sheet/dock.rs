//! The Dock: what the chosen step is, when it may fall, why, and what to be careful about.

use super::board::{Board, Chosen, use_board};
use super::cooker_view::place_name;
use super::facts::{Caution, Facts, facts};
use super::moving::keys_view::{MoveKeys, Notice, NoticeView, notice};
use crate::parts::{LastLine, Mark, Rule};
use crate::route::question_href;
use crate::words::{run_sheet as words, safety};
use cook_model::answers::Question;
use cook_model::plan::StepKey;
use cook_model::safety::RuleId;
use leptos::prelude::*;

/// What the Dock shows.
#[derive(Clone, Debug, PartialEq)]
enum Shown {
    Steps {
        key: StepKey,
        facts: Vec<Facts>,
        movable: bool,
    },
    Unattended {
        head: String,
        note: String,
        cautions: Vec<Caution>,
    },
}

fn shown(board: Board) -> Option<Shown> {
    let chosen = board.chosen.get()?;
    board.with_all(|sheet, plan, outlook, formats| match chosen {
        Chosen::Step(key) => {
            let steps = board.chosen_steps.get();
            let mut tickets = sheet.tickets.iter();
            let ticket = tickets.find(|placed| board.is_chosen(placed));
            let steps = steps.iter().filter_map(|index| outlook.steps.get(*index));
            let told = steps.map(|step| facts(step, plan, outlook, formats));
            Some(Shown::Steps {
                key: ticket.map_or(key, |placed| placed.ticket.key),
                facts: told.collect(),
                movable: ticket.is_none_or(|placed| !placed.ticket.bundle),
            })
        }
        Chosen::Unattended { place, nth } => {
            let lane = sheet.cookers.iter().find(|lane| lane.place == place)?;
            let stretch = lane.unattended.get(nth)?;
            let rules = [RuleId::NeverLeftAlone, RuleId::AwakeAndSober];
            Some(Shown::Unattended {
                head: words::unattended_head(stretch, formats),
                note: words::unattended_note(stretch, &place_name(place, plan)),
                cautions: rules
                    .map(|id| Caution {
                        rule: safety::rule(id, formats),
                        before: false,
                    })
                    .to_vec(),
            })
        }
    })
}

/// The Dock.
#[component]
pub fn Dock() -> impl IntoView {
    let board = use_board();
    let told = Memo::new(move |_| shown(board));
    let notice = Memo::new(move |_| notice(board, board.chosen_key()?));
    let says = move || notice.with(|notice| notice.as_ref().map(Notice::class));
    let inside = move || match told.get()? {
        Shown::Steps {
            key,
            facts,
            movable,
        } => {
            let single = facts.len() == 1;
            let steps = facts
                .into_iter()
                .map(|facts| view! { <StepFacts facts single /> });
            let told = move || {
                notice
                    .get()
                    .map(|notice| view! { <NoticeView key notice /> })
            };
            let held = move || {
                board
                    .mover
                    .moving
                    .with(|moving| moving.as_ref().is_some_and(|moving| moving.held))
            };
            Some(
                view! {
                    {told}
                    <div class="dock-all" class:in-hand=held>
                        {movable.then(|| view! { <MoveKeys key /> })}
                        <div class="dock-steps">{steps.collect_view()}</div>
                        <LastLine />
                    </div>
                }
                .into_any(),
            )
        }
        Shown::Unattended {
            head,
            note,
            cautions,
        } => {
            let ways = words::WAYS_OUT.map(|way| view! { <li>{way}</li> });
            Some(
                view! {
                    <p class="say">
                        <b class="heed-word">{head}</b>
                    </p>
                    <p class="note ink">{note}</p>
                    <ul class="dock-ways">{ways.collect_view()}</ul>
                    <Cautions cautions />
                }
                .into_any(),
            )
        }
    };
    let heed =
        move || matches!(told.get(), Some(Shown::Unattended { .. })) || says() == Some("heeds");
    let stops = move || says() == Some("stops");
    let label = move || match told.get() {
        Some(Shown::Unattended { .. }) => words::NOBODY_UP,
        _ => words::CHOSEN,
    };
    view! {
        <section class="dock" class:heeds=heed class:stops=stops aria-label=label>
            {inside}
        </section>
    }
}

#[component]
fn StepFacts(facts: Facts, single: bool) -> impl IntoView {
    let mark = facts.mark.map(|mark| {
        let (letter, hue) = (mark.letter, mark.hue);
        view! { <Mark letter=Signal::stored(letter) hue=Signal::stored(hue) small=true /> }
    });
    let mut line: Vec<String> = Vec::new();
    line.extend(facts.likely.map(words::likely));
    line.push(facts.hands);
    line.extend(facts.amount);
    line.retain(|part| !part.is_empty());
    view! {
        <div class="dock-step" class:single=single>
            <p class="say">
                {mark}
                <span>
                    <b>{facts.what}</b>
                    " "
                    {facts.with}
                </span>
            </p>
            <p class="num">{facts.when}</p>
            <p class="line note ink" class:heed-word=facts.unmanned>{line.join(" · ")}</p>
            <p class="why note">{facts.reason}</p>
            <div class="dock-cautions">
                <Cautions cautions=facts.cautions />
                <Asks asks=facts.asks />
            </div>
        </div>
    }
}

/// Cautions. The gravest of those that no earlier step had stands in full; its source and the others are in the fold.
#[component]
fn Cautions(cautions: Vec<Caution>) -> impl IntoView {
    let count = cautions.len();
    let first = cautions.iter().position(|caution| !caution.before);
    let stands = first.map(|place| cautions[place].rule.words.clone());
    let summary = if stands.is_some() {
        words::source_and_more(count - 1)
    } else {
        words::cautions(count)
    };
    let rules = cautions.into_iter().enumerate().map(|(place, caution)| {
        let said = caution.before || Some(place) == first;
        view! { <li><Rule rule=caution.rule before=said /></li> }
    });
    (count > 0).then(|| {
        view! {
            {stands.map(|words| view! { <p class="caution">{words}</p> })}
            <details class="cautions">
                <summary>{summary}</summary>
                <ul>{rules.collect_view()}</ul>
            </details>
        }
    })
}

/// Ways to the questions that come up at a step.
#[component]
fn Asks(asks: &'static [&'static str]) -> impl IntoView {
    let link = |key: &&'static str| {
        let (kind, title) = Question::KINDS.iter().find(|(kind, _)| kind == key)?;
        Some(view! { <a class="dock-ask" href=question_href(kind)>{*title}</a> })
    };
    asks.iter().filter_map(link).collect_view()
}
