//! The answer: in a word, what to do, what was worked out, the rules behind it, and who to ask.

use super::asking::Asking;
use super::fact::measure;
use crate::parts::Rule;
use crate::store::use_store;
use crate::words::safety::RuleSaid;
use crate::words::{in_doubt as words, safety};
use cook_model::answers::{Answer, FactsError, Verdict};
use cook_model::plan::Audience;
use cook_model::safety::{RuleId, say, who_to_ask};
use leptos::prelude::*;

/// An answer in words.
#[derive(Clone, Debug, PartialEq)]
struct Said {
    verdict: &'static str,
    ground: &'static str,
    says: Vec<String>,
    figures: Vec<String>,
    missing: Vec<&'static str>,
    rules: Vec<RuleSaid>,
    who: Vec<RuleSaid>,
}

/// The answer, or what is still needed for it.
#[component]
pub fn TheAnswer() -> impl IntoView {
    let store = use_store();
    let asking = expect_context::<Asking>();
    let audience = Memo::new(move |_| {
        let plan = store
            .plan
            .with(|plan| plan.as_ref().map(|plan| plan.audience));
        plan.unwrap_or_default()
    });
    let said = Memo::new(move |_| {
        let formats = store.formats.get();
        let rules = |ids: &[_]| {
            ids.iter()
                .map(|id| safety::rule(*id, &formats))
                .collect::<Vec<_>>()
        };
        let answer: Result<Answer, FactsError> = asking.answer();
        match answer {
            Ok(answer) => Ok(Said {
                verdict: answer.verdict.words(),
                ground: ground(answer.verdict),
                says: answer
                    .says
                    .iter()
                    .map(|text| say(text, formats.units.scales()))
                    .collect(),
                figures: answer
                    .figures
                    .iter()
                    .map(|one| words::figure(one, &formats))
                    .collect(),
                missing: answer
                    .missing
                    .iter()
                    .map(|one| words::missing(*one))
                    .collect(),
                rules: rules(&behind(&answer.rules, audience.get())),
                who: rules(who_to_ask(audience.get())),
            }),
            Err(error) => {
                let key = match &error {
                    FactsError::Missing { key, .. } | FactsError::OutOfRange { key, .. } => {
                        Some(*key)
                    }
                    FactsError::UnknownQuestion(_) | FactsError::Unreadable(_) => None,
                };
                let prompt = asking
                    .prompts()
                    .iter()
                    .find(|prompt| Some(prompt.key) == key);
                let label = prompt.map(|prompt| prompt.say(formats.units.scales()));
                let measured = prompt.and_then(|prompt| measure(&prompt.kind));
                Err(words::not_yet(
                    &error,
                    &label.unwrap_or_default(),
                    measured,
                    &formats,
                ))
            }
        }
    });
    // Not before it is asked for: until then an empty field means that nobody was there yet, not that nobody knows.
    let asked = RwSignal::new(false);
    Effect::new(move |_| {
        asking.dish.track();
        asked.set(false);
    });
    let inside = move || match said.get() {
        Err(needed) => view! { <p class="note ink">{needed}</p> }.into_any(),
        Ok(_) if !asked.get() => view! {
            <p class="note">{words::EMPTY_IS_UNKNOWN}</p>
            <button type="button" class="btn act" on:click=move |_| asked.set(true)>
                {words::ANSWER_ME}
            </button>
        }
        .into_any(),
        Ok(said) => view! { <Told said public=audience.get() == Audience::Public /> }.into_any(),
    };
    view! {
        <section class="the-answer" aria-label=words::ANSWER aria-live="polite">
            <h3 class="head">{words::ANSWER}</h3>
            {inside}
        </section>
    }
}

/// The rules behind an answer, without those that say who to ask: they always stand last.
fn behind(rules: &[RuleId], audience: Audience) -> Vec<RuleId> {
    let who = who_to_ask(audience);
    let behind = rules.iter().filter(|rule| !who.contains(rule));
    behind.copied().collect()
}

const fn ground(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::GoodToKnow | Verdict::LooksFine => "plain",
        Verdict::WithCare | Verdict::BetterNot | Verdict::NotKnown => "heed",
        Verdict::ActNow | Verdict::No | Verdict::ThrowAway => "stop",
    }
}

#[component]
fn Told(said: Said, public: bool) -> impl IntoView {
    let lines = |lines: Vec<String>| {
        lines
            .into_iter()
            .map(|line| view! { <li>{line}</li> })
            .collect_view()
    };
    let rules = |rules: Vec<RuleSaid>| {
        let rules = rules.into_iter();
        rules
            .map(|rule| view! { <li><Rule rule before=true /></li> })
            .collect_view()
    };
    let figures = (!said.figures.is_empty()).then(|| {
        view! {
            <h4 class="head">{words::WORKED_OUT}</h4>
            <ul class="figures">{lines(said.figures)}</ul>
        }
    });
    let missing = (!said.missing.is_empty()).then(|| {
        let missing = said.missing.into_iter().map(|one| view! { <li>{one}</li> });
        view! {
            <h4 class="head">{words::WOULD_HELP}</h4>
            <ul class="would-help">{missing.collect_view()}</ul>
        }
    });
    let behind = (!said.rules.is_empty()).then(|| {
        view! {
            <h4 class="head">{words::RULES}</h4>
            <ul>{rules(said.rules)}</ul>
        }
    });
    view! {
        <div class=format!("verdict {}", said.ground)>
            <p class="head verdict-word">{said.verdict}</p>
            <ul class="says">{lines(said.says)}</ul>
            {public.then(|| view! { <p class="name">{words::PUBLIC}</p> })}
        </div>
        {figures}
        {missing}
        {behind}
        <ul>{rules(said.who)}</ul>
    }
}
