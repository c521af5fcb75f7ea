//! While it heats up.

use crate::safety::source::{FOOD_CODE_TIME, FSIS_SMOKER_AIR, FSIS_SMOKING};
use crate::safety::{Basis, Rule, RuleId, Severity, Subject};

pub(super) const ASK_INTACT: Rule = Rule {
    id: RuleId::AskIntact,
    applies: &[Subject::IntactWholeMuscle, Subject::PiercedWholeMuscle],
    condition: "not injected, blade-tenderised, boned and rolled, stuffed or ground",
    severity: Severity::Caution,
    words: "Is this piece whole, with nothing put inside it? No needle, no blades, not boned and rolled, not stuffed. The label says if it was injected or tenderised. If you do not know, say so: it then counts as no.",
    basis: Basis::CommonPractice,
    sources: &[],
    audience: None,
    differs: None,
};

pub(super) const SURFACE_HOT_IN_TIME: Rule = Rule {
    id: RuleId::SurfaceHotInTime,
    applies: &[Subject::IntactWholeMuscle],
    condition: "the surface is past {54.4 °C|130 °F} within 4 h of leaving the cold",
    severity: Severity::Discard,
    words: "On whole meat the germs sit on the outside. The outside must be past {54.4 °C|130 °F} within 4 h of leaving the fridge. With a steady fire it is there in an hour or two.",
    basis: Basis::CommonPractice,
    sources: &[FOOD_CODE_TIME],
    audience: None,
    differs: Some(
        "A strict reading of the danger range, {4 to 60 °C|40 to 140 °F} for the core as well, would call every slow cook of a large whole piece unsafe. For whole muscle that nobody has pierced the surface stands, and the slow core is said as a caution.",
    ),
};

pub(super) const CORE_HOT_IN_TIME: Rule = Rule {
    id: RuleId::CoreHotInTime,
    applies: &[
        Subject::PiercedWholeMuscle,
        Subject::Ground,
        Subject::Poultry,
        Subject::Stuffed,
        Subject::Fish,
    ],
    condition: "the core is between {4 and 60 °C|40 and 140 °F} for no more than 4 h",
    severity: Severity::Discard,
    words: "Germs may be inside this piece. Its middle must pass from {4 to 60 °C|40 to 140 °F} within 4 h. If it will not, cook it hotter or cut it thinner before you start. If it did not, throw it away.",
    basis: Basis::CommonPractice,
    sources: &[FOOD_CODE_TIME],
    audience: None,
    differs: None,
};

pub(super) const SLOW_CORE_INTACT: Rule = Rule {
    id: RuleId::SlowCoreIntact,
    applies: &[Subject::IntactWholeMuscle],
    condition: "the core is between {4 and 60 °C|40 and 140 °F} for more than 4 h",
    severity: Severity::Caution,
    words: "The middle warms slowly. For a whole piece that nobody pierced, most cooks accept that, because the germs are outside. A hotter pit shortens it. Keep the probe out until the outside is hot.",
    basis: Basis::CommonPractice,
    sources: &[FSIS_SMOKING],
    audience: None,
    differs: Some(
        "Official sheets ask for smoker air of {107 to 149 °C|225 to 300 °F}, so that the danger range is passed sooner.",
    ),
};

pub(super) const SMOKER_AIR: Rule = Rule {
    id: RuleId::SmokerAir,
    applies: &[Subject::AnyFood],
    condition: "smoker air of {107 to 149 °C|225 to 300 °F} at the meat",
    severity: Severity::Caution,
    words: "Keep the air at the meat at {107 °C|225 °F} or more. Check it with a thermometer on the grate. The one in the lid may be well off.",
    basis: Basis::Published,
    sources: &[FSIS_SMOKER_AIR, FSIS_SMOKING],
    audience: None,
    differs: Some("Older sheets say {121 to 149 °C|250 to 300 °F}."),
};

pub(super) const PROBE_ONCE_HOT: Rule = Rule {
    id: RuleId::ProbeOnceHot,
    applies: &[Subject::IntactWholeMuscle],
    condition: "no probe before the surface is hot",
    severity: Severity::Caution,
    words: "Put the probe in once the outside is hot. A cold probe through a raw surface carries germs inside.",
    basis: Basis::CommonPractice,
    sources: &[],
    audience: None,
    differs: None,
};

pub(super) const NEVER_PART_COOK: Rule = Rule {
    id: RuleId::NeverPartCook,
    applies: &[Subject::AnyFood],
    condition: "cooked through in one go, or moved hot straight to the next heat",
    severity: Severity::ActNow,
    words: "Never cook meat part of the way, chill it and finish it later. Cook it through, chill it fast and heat it up again. Or move it hot, at once, from the smoker to the oven.",
    basis: Basis::Published,
    sources: &[FSIS_SMOKING],
    audience: None,
    differs: None,
};

pub(super) const UNKNOWN_IS_TOO_LONG: Rule = Rule {
    id: RuleId::UnknownIsTooLong,
    applies: &[Subject::AnyFood],
    condition: "a time or a reading that nobody knows",
    severity: Severity::Discard,
    words: "If nobody knows how long it was too warm or too cool, count it as too long. Smell, look and taste cannot tell you. When in doubt, throw it out.",
    basis: Basis::CommonPractice,
    sources: &[],
    audience: None,
    differs: None,
};
