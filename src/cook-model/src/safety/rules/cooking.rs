//! How hot the coldest point must get.

use crate::plan::Audience;
use crate::safety::source::{FOOD_CODE_COOKING, FSIS_APPENDIX_A, FSIS_POULTRY, MINIMUM_CHART};
use crate::safety::{Basis, Rule, RuleId, Severity, Subject};

pub(super) const WHOLE_MUSCLE: Rule = Rule {
    id: RuleId::MinimumWholeMuscle,
    applies: &[Subject::IntactWholeMuscle],
    condition: "{62.8 °C|145 °F} at the coldest point, then a rest of 3 min",
    severity: Severity::ActNow,
    words: "Whole red meat must reach {62.8 °C|145 °F} at its coldest point and then rest for 3 min. Most long cooks go well past that.",
    basis: Basis::Published,
    sources: &[MINIMUM_CHART],
    audience: None,
    differs: Some(
        "The Food Code prints {63 °C|145 °F} for 15 s for whole cuts and 4 min for whole roasts. The chart for homes with its rest stands here.",
    ),
};

pub(super) const PIERCED: Rule = Rule {
    id: RuleId::MinimumPierced,
    applies: &[Subject::PiercedWholeMuscle],
    condition: "{68.3 °C|155 °F} at the coldest point for 17 s",
    severity: Severity::ActNow,
    words: "A needle, a blade or a rolled joint can carry germs inside. Such meat must reach {68.3 °C|155 °F} at its coldest point. If you do not know, treat it as such.",
    basis: Basis::Published,
    sources: &[FOOD_CODE_COOKING],
    audience: None,
    differs: Some(
        "The chart for homes asks for {62.8 °C|145 °F} and 3 min of rest for all whole cuts. The stricter figure stands here. Older codes print 15 s.",
    ),
};

pub(super) const GROUND: Rule = Rule {
    id: RuleId::MinimumGround,
    applies: &[Subject::Ground],
    condition: "{71.1 °C|160 °F} at the coldest point",
    severity: Severity::ActNow,
    words: "Ground meat and sausages must reach {71.1 °C|160 °F} in the middle: what was outside is now inside. With poultry in them it is {73.9 °C|165 °F}.",
    basis: Basis::Published,
    sources: &[MINIMUM_CHART],
    audience: None,
    differs: Some(
        "The Food Code prints {68 °C|155 °F} for 17 s. The stricter figure of the chart for homes stands here.",
    ),
};

pub(super) const POULTRY: Rule = Rule {
    id: RuleId::MinimumPoultry,
    applies: &[Subject::Poultry],
    condition: "{73.9 °C|165 °F} at the coldest point",
    severity: Severity::ActNow,
    words: "Poultry must reach {73.9 °C|165 °F} in the thickest part of the breast and in the thigh, away from bone. Pink juice or clear juice proves nothing.",
    basis: Basis::Published,
    sources: &[MINIMUM_CHART, FOOD_CODE_COOKING],
    audience: None,
    differs: None,
};

pub(super) const STUFFED: Rule = Rule {
    id: RuleId::MinimumStuffed,
    applies: &[Subject::Stuffed],
    condition: "{73.9 °C|165 °F} in the meat and in the middle of the stuffing",
    severity: Severity::ActNow,
    words: "Stuffed meat must reach {73.9 °C|165 °F}, the middle of the stuffing too. Over slow heat the stuffing warms last, so cook it beside the meat instead.",
    basis: Basis::Published,
    sources: &[MINIMUM_CHART, FOOD_CODE_COOKING],
    audience: None,
    differs: None,
};

pub(super) const FISH: Rule = Rule {
    id: RuleId::MinimumFish,
    applies: &[Subject::Fish],
    condition: "{62.8 °C|145 °F} at the coldest point",
    severity: Severity::ActNow,
    words: "Fish must reach {62.8 °C|145 °F} in the thickest part.",
    basis: Basis::Published,
    sources: &[MINIMUM_CHART, FOOD_CODE_COOKING],
    audience: None,
    differs: None,
};

pub(super) const ROAST_BY_TABLE: Rule = Rule {
    id: RuleId::RoastByTable,
    applies: &[Subject::IntactWholeMuscle],
    condition: "the printed time at the coldest point, from 121 min at {54.4 °C|130 °F} to 4 min at {62.8 °C|145 °F}; nothing below {54.4 °C|130 °F}",
    severity: Severity::ActNow,
    words: "A pink roast is your own choice. It must be whole and not pierced. Its coldest point must stay at the heat in the table for the full time that the table prints: 121 min at {54.4 °C|130 °F}, 12 min at {60 °C|140 °F}.",
    basis: Basis::Published,
    sources: &[FSIS_APPENDIX_A],
    audience: None,
    differs: Some(
        "The Food Code of today prints the shorter column: 112 min at {54.4 °C|130 °F}. The longer one stands here. A study of 2022 found the times at {54.4 °C|130 °F} too short for some germs.",
    ),
};

pub(super) const POULTRY_BY_TABLE: Rule = Rule {
    id: RuleId::PoultryByTable,
    applies: &[Subject::Poultry],
    condition: "the printed time at the coldest point, from 81.4 min at {57.8 °C|136 °F} to 16.6 min at {62.2 °C|144 °F}; else {73.9 °C|165 °F}",
    severity: Severity::ActNow,
    words: "Poultry below {73.9 °C|165 °F} is your own choice. Its coldest point must stay at the heat in the table for poultry for the full time: 35 min at {60 °C|140 °F}. The table for red meat is too short for it.",
    basis: Basis::Published,
    sources: &[FSIS_POULTRY],
    audience: None,
    differs: Some(
        "Only part of this table could be read, and only in copies. The fattest chicken in it is used, which asks for the longest times.",
    ),
};

pub(super) const WHO_MUST_NOT_EAT: Rule = Rule {
    id: RuleId::WhoMustNotEat,
    applies: &[Subject::IntactWholeMuscle, Subject::Poultry, Subject::Fish],
    condition: "a target below the chart for homes",
    severity: Severity::Caution,
    words: "Do not serve it less done than the chart says to small children, to old people, to anyone who is pregnant or to anyone who is ill. Cook theirs to the full heat.",
    basis: Basis::CommonPractice,
    sources: &[],
    audience: None,
    differs: None,
};

pub(super) const COLDEST_POINT: Rule = Rule {
    id: RuleId::ColdestPoint,
    applies: &[Subject::AnyFood],
    condition: "the lowest of several readings in the thickest part, away from bone and fat",
    severity: Severity::Caution,
    words: "Probe the thickest part in several places, away from bone and fat. The lowest reading counts.",
    basis: Basis::CommonPractice,
    sources: &[],
    audience: None,
    differs: None,
};

pub(super) const NO_CREDIT_FOR_CARRYOVER: Rule = Rule {
    id: RuleId::NoCreditForCarryover,
    applies: &[Subject::AnyFood],
    condition: "the minimum is met before it comes off, or is measured while it rests",
    severity: Severity::Caution,
    words: "Meat may go on warming after it comes off. Do not count on that. Take it off when it has reached its heat, not before.",
    basis: Basis::CommonPractice,
    sources: &[],
    audience: Some(Audience::Household),
    differs: Some(
        "The Food Code lets the rise after the oven count for roasts by the table. It is not counted here.",
    ),
};
