//! A rule: what to do, and with a tap the rule itself, for whom it is written, where another one differs, and where it
//! can be read.

use crate::words::safety::{self as words, RuleSaid};
use leptos::prelude::*;

/// A rule. Its words are shown unless they were said before: then only its name.
#[component]
pub fn Rule(
    /// The rule in words.
    rule: RuleSaid,
    /// Said before: only its name is shown, the words are in the fold.
    #[prop(optional)]
    before: bool,
) -> impl IntoView {
    let sources = rule.sources.into_iter();
    let sources = sources.map(|source| view! { <li>{source}</li> });
    let summary = if before { rule.title } else { words::SOURCE };
    let (outside, inside) = if before {
        (None, Some(rule.words))
    } else {
        (Some(rule.words), None)
    };
    view! {
        <div class="rule" data-rule=rule.id.slug()>
            {outside.map(|words| view! { <p>{words}</p> })}
            <details>
                <summary>{summary}</summary>
                {inside.map(|words| view! { <p>{words}</p> })}
                <p class="small">{rule.condition}</p>
                <p class="small">{rule.applies}</p>
                {rule.differs.map(|differs| view! { <p class="small">{differs}</p> })}
                <ul class="sources small">{sources.collect_view()}</ul>
            </details>
        </div>
    }
}
