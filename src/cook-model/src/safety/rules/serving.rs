//! At the table, for the public, and who to ask.

use crate::plan::Audience;
use crate::safety::source::FSIS_HANDLING;
use crate::safety::{Basis, Rule, RuleId, Severity, Subject};

pub(super) const ON_THE_TABLE: Rule = Rule {
    id: RuleId::OnTheTable,
    applies: &[Subject::AnyFood],
    condition: "on the table without heat for no more than 2 h, 1 h in air above {32 °C|90 °F}",
    severity: Severity::Discard,
    words: "Food on the table without heat is good for 2 h, or for 1 h above {32 °C|90 °F}. Bring it out in small pans and keep the rest hot.",
    basis: Basis::Published,
    sources: &[FSIS_HANDLING],
    audience: None,
    differs: None,
};

pub(super) const LOCAL_CODE: Rule = Rule {
    id: RuleId::LocalCode,
    applies: &[Subject::AnyFood, Subject::Fire],
    condition: "food sold or served to the public",
    severity: Severity::Caution,
    words: "You serve the public. Local codes and licences come first, for food and for fire. Ask your health office and your fire office before the day. A trained person must be in charge.",
    basis: Basis::CommonPractice,
    sources: &[],
    audience: Some(Audience::Public),
    differs: None,
};

pub(super) const SECOND_ALARM: Rule = Rule {
    id: RuleId::SecondAlarm,
    applies: &[Subject::AnyFood, Subject::Fire],
    condition: "an alarm in a page lives only while its screen is on",
    severity: Severity::Caution,
    words: "This alarm rings only while this screen stays on. Set a second alarm on another clock.",
    basis: Basis::CommonPractice,
    sources: &[],
    audience: None,
    differs: None,
};

pub(super) const WHO_TO_ASK: Rule = Rule {
    id: RuleId::WhoToAsk,
    applies: &[Subject::AnyFood],
    condition: "in doubt, or somebody feels ill",
    severity: Severity::Caution,
    words: "In doubt, throw it away, or ask your local food safety office. If somebody feels ill, ask a doctor, and say what was eaten and when.",
    basis: Basis::CommonPractice,
    sources: &[],
    audience: None,
    differs: None,
};
