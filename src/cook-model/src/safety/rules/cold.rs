//! Out of the fridge, in the fridge, and thawing.

use crate::plan::Audience;
use crate::safety::source::{
    FOOD_CODE_THAWING, FSIS_HANDLING, FSIS_SMOKING, FSIS_THAWING, STORAGE_CHART,
};
use crate::safety::{Basis, Rule, RuleId, Severity, Subject};

pub(super) const TWO_HOURS: Rule = Rule {
    id: RuleId::TwoHours,
    applies: &[Subject::AnyFood],
    condition: "out of the fridge and off the heat for no more than 2 h in all",
    severity: Severity::Discard,
    words: "Food may be out of the fridge and off the heat for 2 h in all. Trimming, salting and rubbing count. Past that, throw it away.",
    basis: Basis::Published,
    sources: &[FSIS_HANDLING],
    audience: None,
    differs: Some(
        "In food service the Food Code lets raw meat be above {5 °C|41 °F} for 4 h in all while it is thawed and prepared. The shorter clock stands here.",
    ),
};

pub(super) const ONE_HOUR_IN_HEAT: Rule = Rule {
    id: RuleId::OneHourInHeat,
    applies: &[Subject::AnyFood],
    condition: "in air above {32 °C|90 °F}, for no more than 1 h in all",
    severity: Severity::Discard,
    words: "It is hot today. Above {32 °C|90 °F} food may be out of the fridge and off the heat for 1 h in all. Past that, throw it away.",
    basis: Basis::Published,
    sources: &[FSIS_HANDLING],
    audience: None,
    differs: None,
};

pub(super) const KEEP_COLD: Rule = Rule {
    id: RuleId::KeepCold,
    applies: &[Subject::AnyFood],
    condition: "the fridge at {4 °C|40 °F} or below",
    severity: Severity::Caution,
    words: "Bring meat home cold and put it away at once. Keep the fridge at {4 °C|40 °F} or below, and let a thermometer in it tell you.",
    basis: Basis::Published,
    sources: &[STORAGE_CHART],
    audience: None,
    differs: Some("Food service counts {5 °C|41 °F}."),
};

pub(super) const KEEPS_RAW: Rule = Rule {
    id: RuleId::KeepsRaw,
    applies: &[Subject::AnyFood],
    condition: "raw in the fridge: red meat 3 to 5 days, poultry, ground meat and fish 1 to 2 days",
    severity: Severity::Caution,
    words: "Raw red meat keeps 3 to 5 days in the fridge. Raw poultry, ground meat and fish keep 1 to 2. Freeze it if the cook is further off.",
    basis: Basis::Published,
    sources: &[STORAGE_CHART],
    audience: None,
    differs: None,
};

pub(super) const THAW_THROUGH: Rule = Rule {
    id: RuleId::ThawThrough,
    applies: &[Subject::AnyFood],
    condition: "thawed all through before it goes on",
    severity: Severity::ActNow,
    words: "Thaw meat all through before it goes on the smoker. Frozen meat over slow heat stays in the danger range far too long.",
    basis: Basis::Published,
    sources: &[FSIS_SMOKING],
    audience: None,
    differs: Some(
        "A hot oven may take frozen meat and needs about half as long again (from memory). Slow heat may not.",
    ),
};

pub(super) const THAW_IN_FRIDGE: Rule = Rule {
    id: RuleId::ThawInFridge,
    applies: &[Subject::AnyFood],
    condition: "in the fridge at {4 °C|40 °F} or below, a day for every {1.8 to 2.3 kg|4 to 5 lb}",
    severity: Severity::Caution,
    words: "Thaw it in the fridge: a day for every {1.8 to 2.3 kg|4 to 5 lb}. Put it on a tray, low down, so that nothing drips on other food. Never thaw on the counter.",
    basis: Basis::Published,
    sources: &[FSIS_THAWING],
    audience: None,
    differs: None,
};

pub(super) const THAW_IN_COLD_WATER: Rule = Rule {
    id: RuleId::ThawInColdWater,
    applies: &[Subject::AnyFood],
    condition: "in a bag that does not leak, under cold water changed every 30 min, 30 min for each {0.45 kg|1 lb}; then cooked at once",
    severity: Severity::ActNow,
    words: "To thaw in water, seal the meat in a bag that does not leak. Cover it with cold tap water and change the water every 30 min. Allow 30 min for each {0.45 kg|1 lb}. Then cook it at once.",
    basis: Basis::Published,
    sources: &[FSIS_THAWING],
    audience: None,
    differs: None,
};

pub(super) const THAW_UNDER_RUNNING_WATER: Rule = Rule {
    id: RuleId::ThawUnderRunningWater,
    applies: &[Subject::AnyFood],
    condition: "fully under running water at {21 °C|70 °F} or below; no part of raw meat above {5 °C|41 °F} for more than 4 h, getting ready and chilling included",
    severity: Severity::ActNow,
    words: "In food service, thaw fully under running water at {21 °C|70 °F} or below. No part may be above {5 °C|41 °F} for more than 4 h, getting it ready included.",
    basis: Basis::Published,
    sources: &[FOOD_CODE_THAWING],
    audience: Some(Audience::Public),
    differs: None,
};

pub(super) const BRINE_COLD: Rule = Rule {
    id: RuleId::BrineCold,
    applies: &[Subject::AnyFood],
    condition: "salted or in brine at {4 °C|40 °F} or below; brine thrown away after",
    severity: Severity::Caution,
    words: "Meat that is salted or in brine belongs in the fridge. Throw used brine away and never use it twice. Then clean the sink.",
    basis: Basis::CommonPractice,
    sources: &[],
    audience: None,
    differs: None,
};
