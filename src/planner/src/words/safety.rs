//! What the rules and the safe line say. The rules' own words come from the model.

use super::list;
use crate::format::Formats;
use cook_model::plan::Audience;
use cook_model::safety::watch::{SafeState, Standing};
use cook_model::safety::{
    Basis, Concern, DishLine, Measure, Phase, RuleId, Severity, Subject, say,
};
use cook_model::units::{Moment, TimeSpan};

/// A rule as it is shown: what to do first, the rest a tap away.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RuleSaid {
    /// Which.
    pub id: RuleId,
    /// What it is called.
    pub title: &'static str,
    /// What to do.
    pub words: String,
    /// What follows if it is broken.
    pub severity: Severity,
    /// The rule with its figures.
    pub condition: String,
    /// What it applies to and for whom it is written.
    pub applies: String,
    /// Where another rule says otherwise, and why this one stands.
    pub differs: Option<String>,
    /// What it rests on: publication, edition, and where it was read.
    pub sources: Vec<String>,
}

/// A rule in the person's units.
#[must_use]
pub fn rule(id: RuleId, formats: &Formats) -> RuleSaid {
    let units = formats.units.scales();
    let rule = id.rule();
    let subjects: Vec<_> = rule.applies.iter().copied().map(subject).collect();
    let for_whom = match rule.audience {
        None => "at home and for the public",
        Some(Audience::Household) => "at home (consumer rule)",
        Some(Audience::Public) => "for the public (food-service rule)",
    };
    RuleSaid {
        id,
        title: id.title(),
        words: say(rule.words, units),
        severity: rule.severity,
        condition: format!("The rule: {}.", say(rule.condition, units)),
        applies: format!("It holds for {}, {for_whom}.", list(&subjects)),
        differs: rule.differs.map(|text| say(text, units)),
        sources: match rule.basis {
            Basis::CommonPractice => vec![COMMON_PRACTICE.to_owned()],
            Basis::FromMemory => vec![FROM_MEMORY.to_owned()],
            Basis::Published => {
                let sources = rule.sources.iter();
                sources
                    .map(|source| {
                        format!(
                            "{}. Edition: {}. Read at: {}.",
                            source.title, source.edition, source.read_at
                        )
                    })
                    .collect()
            }
        },
    }
}

const fn subject(subject: Subject) -> &'static str {
    match subject {
        Subject::AnyFood => "all food",
        Subject::IntactWholeMuscle => "whole red meat that nobody pierced",
        Subject::PiercedWholeMuscle => "red meat that was pierced or rolled, or that may have been",
        Subject::Ground => "ground meat and sausages",
        Subject::Poultry => "poultry",
        Subject::Stuffed => "stuffed food",
        Subject::Fish => "fish",
        Subject::Leftovers => "leftovers",
        Subject::Tools => "tools",
        Subject::Fire => "the fire",
    }
}

/// What a rule rests on where no publication was read for it.
pub const COMMON_PRACTICE: &str = "Common practice of the trade. No publication was read for it.";
/// What a rule rests on where it was not read again.
pub const FROM_MEMORY: &str = "From memory. It was not read again.";
/// Opens a rule and where it can be read.
pub const SOURCE: &str = "The rule and its source";
/// What follows when a rule is broken.
#[must_use]
pub const fn severity(severity: Severity) -> &'static str {
    match severity {
        Severity::Caution => "Caution",
        Severity::ActNow => "Act now if not",
        Severity::Discard => "Throw it away if not",
    }
}

/// What a dish without a name is called.
pub const A_DISH: &str = "A dish";
/// Name of the safe line.
pub const SAFE_LINE: &str = "Safe line";
/// Opens what the line rests on.
pub const WHY: &str = "Why";
/// Nothing is in play yet: the fact.
pub const NOT_YET: &str = "No food is in play yet.";
/// Nothing is in play yet: what to do.
pub const NOT_YET_NOTE: &str = "Log when it leaves the fridge: then its clock runs here.";
/// What the line rests on.
pub const RESTS_ON: &str = "It goes by what you logged, and by nothing else. A reading that is missing is never taken for a good one.";
/// A dish is over.
pub const OVER: &str = "Nothing is left of it to watch over.";
/// No clock can run over a dish.
pub const NOT_WATCHED: &str = "Not watched: it has no cut that I know, so you keep its clock.";
/// A dish that is not begun.
pub const PLANNED: &str = "Not begun.";
/// Over what a careful friend would say of the plan.
pub const OF_THE_PLAN: &str = "In the plan";
/// Over who to ask.
pub const WHO_TO_ASK: &str = "Who to ask";

/// A dish and how it stands, the fact first.
#[must_use]
pub fn stands(name: &str, state: &SafeState) -> String {
    let words = state.standing.words();
    let mut letters = words.chars();
    let first = letters
        .next()
        .map(|letter| letter.to_lowercase().to_string());
    format!("{name}: {}{}", first.unwrap_or_default(), letters.as_str())
}

/// The same beside its mark, where there is little room.
#[must_use]
pub const fn stands_short(standing: Standing) -> &'static str {
    match standing {
        Standing::LooksSafe => "Looks safe on what you logged.",
        Standing::Heed => "Take care.",
        Standing::Unknown => "Not shown to be safe.",
        Standing::ActNow => "Act now.",
        Standing::Discard => "Throw it away.",
    }
}

/// How a dish is, where it has no state.
#[must_use]
pub const fn phase(phase: Phase) -> &'static str {
    match phase {
        Phase::Planned => PLANNED,
        Phase::InPlay => "",
        Phase::Over => OVER,
        Phase::NotWatched => NOT_WATCHED,
    }
}

/// Since when, and what comes next: `since Sat 04:00 · next Sat 06:00, 2 h out of the fridge`.
#[must_use]
pub fn since_and_next(line: &DishLine, formats: &Formats) -> String {
    let mut parts = Vec::new();
    let state = line.state.as_ref();
    if let Some(since) = state.and_then(|state| state.since) {
        parts.push(format!("since {}", formats.day_time(since)));
    }
    if let Some(look) = line.look {
        parts.push(format!("read its core by {}", formats.day_time(look.at)));
    }
    if let Some(next) = state.and_then(|state| state.next) {
        parts.push(next_moment(next.at, next.rule, formats));
    }
    parts.join(" · ")
}

/// The next moment that matters: `limit Sat 06:00, 2 h out of the fridge`.
#[must_use]
pub fn next_moment(at: Moment, rule: RuleId, formats: &Formats) -> String {
    let title = rule.title();
    let what = match rule {
        RuleId::ProbeTheBox => "probe it by",
        _ => "limit",
    };
    format!("{what} {}, {}", formats.day_time(at), decapital(title))
}

fn decapital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_lowercase().chain(letters).collect()
    })
}

/// The key of a standing: which ground it gets. Never colour alone: the words are always there.
#[must_use]
pub const fn ground(standing: Standing) -> &'static str {
    match standing {
        Standing::LooksSafe => "plain",
        Standing::Heed | Standing::Unknown => "heed",
        Standing::ActNow | Standing::Discard => "stop",
    }
}

/// A stop: the fact, the largest words on the screen.
#[must_use]
pub fn stop_head(name: &str, state: &SafeState) -> String {
    format!("Stop. {}", stands(name, state))
}

/// Since when it has been so.
#[must_use]
pub fn stop_since(since: Moment, now: Moment, formats: &Formats) -> String {
    format!(
        "Since {}, for {}, by what you logged.",
        formats.day_time(since),
        for_how_long(since, now, formats)
    )
}

/// By when something must be done.
#[must_use]
pub fn stop_by(at: Moment, rule: RuleId, formats: &Formats) -> String {
    format!(
        "You have until {}: {}.",
        formats.day_time(at),
        decapital(rule.title())
    )
}

/// The log told something that was not so.
pub const LOG_IS_WRONG: &str = "The log is wrong";
/// Says what was done.
pub const WHAT_I_DID: &str = "What I did";
/// Says that it is gone.
pub const GONE: &str = "It is thrown away";
/// Under a stop.
pub const STAYS: &str = "This stays until you say what happened. You can go on logging meanwhile.";
/// It was thrown away.
pub const THROWN_AWAY: &str = "I threw it away";
/// It went back into the fridge, raw.
pub const PUT_BACK: &str = "It went back in the fridge";
/// It went on.
pub const WENT_ON: &str = "It went on the heat";
/// It is heated up again.
pub const ON_AGAIN: &str = "It is back on strong heat";
/// It came off.
pub const CAME_OFF: &str = "It came off the heat";
/// What is left was put away to get cold.
pub const PUT_AWAY: &str = "It is in the fridge, to get cold";
/// Nothing is left.
pub const EATEN: &str = "It is eaten, nothing is left";
/// A reading.
pub const READ_ITS_CORE: &str = "I read its core";
/// Which reading.
pub const COLDEST_PLACE: &str = "Core at its coldest place";
/// Writes the reading down.
pub const LOG_THIS_CORE: &str = "Log this core";
/// Strikes an entry out.
pub const STRIKE_OUT: &str = "Not so: strike it out";
/// What striking out does.
pub const STRIKE_NOTE: &str = "What you strike out stays readable in the log, and can be brought back there. If something is missing, choose its time above and say what you did.";

/// A concern about the plan with its figure.
#[must_use]
pub fn concern(concern: &Concern, formats: &Formats) -> String {
    let title = concern.rule.title();
    match concern.measure {
        Measure::Time { is, at_most } => {
            let is = is.map_or_else(|| "not at all".to_owned(), |is| formats.span(is));
            format!(
                "{title}: {is} as planned, {} at most.",
                formats.span(at_most)
            )
        }
        Measure::Temperature { is, at_least } => format!(
            "{title}: {} as planned, {} at least.",
            formats.temperature(is),
            formats.temperature(at_least)
        ),
        Measure::Fact => format!("{title}."),
    }
}

/// How long something has been so: `2 h 20`.
#[must_use]
pub fn for_how_long(since: Moment, now: Moment, formats: &Formats) -> String {
    formats.span((now - since).max(TimeSpan::ZERO))
}
