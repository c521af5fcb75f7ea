//! After it is cooked: held hot, cooled, kept, heated up again.

use crate::plan::Audience;
use crate::safety::source::{
    FOOD_CODE_COOLING, FOOD_CODE_HOLDING, FOOD_CODE_REHEATING, FOOD_CODE_TIME, FSIS_APPENDIX_B,
    FSIS_HANDLING, FSIS_SMOKING, MINIMUM_CHART, STORAGE_CHART,
};
use crate::safety::{Basis, Rule, RuleId, Severity, Subject};

pub(super) const HOLD_HOT: Rule = Rule {
    id: RuleId::HoldHot,
    applies: &[Subject::AnyFood],
    condition: "{60 °C|140 °F} or more at the coldest point until it is served",
    severity: Severity::ActNow,
    words: "Keep cooked food at {60 °C|140 °F} or more until it is eaten. Once below that, the 2 h clock runs.",
    basis: Basis::Published,
    sources: &[FSIS_SMOKING, FSIS_HANDLING],
    audience: Some(Audience::Household),
    differs: Some("Food service may hold at {57 °C|135 °F}."),
};

pub(super) const HOLD_HOT_PUBLIC: Rule = Rule {
    id: RuleId::HoldHotPublic,
    applies: &[Subject::AnyFood],
    condition: "{57 °C|135 °F} or more at the coldest point until it is served",
    severity: Severity::ActNow,
    words: "Food for the public is held at {57 °C|135 °F} or more. Your local code may say otherwise, and then it stands.",
    basis: Basis::Published,
    sources: &[FOOD_CODE_HOLDING],
    audience: Some(Audience::Public),
    differs: Some("The sheet for homes says {60 °C|140 °F}."),
};

pub(super) const HOLD_ROAST_BY_TABLE: Rule = Rule {
    id: RuleId::HoldRoastByTable,
    applies: &[Subject::IntactWholeMuscle],
    condition: "{54.4 °C|130 °F} or more, only for a whole roast cooked by the table",
    severity: Severity::ActNow,
    words: "A whole roast that was cooked by the table may be held at {54.4 °C|130 °F} or more. Nothing else may.",
    basis: Basis::Published,
    sources: &[FOOD_CODE_HOLDING],
    audience: None,
    differs: Some("The sheet for homes says {60 °C|140 °F} for all food."),
};

pub(super) const PROBE_THE_BOX: Rule = Rule {
    id: RuleId::ProbeTheBox,
    applies: &[Subject::AnyFood],
    condition: "a probe in the meat for as long as it waits",
    severity: Severity::Caution,
    words: "A box keeps no promise. Leave a probe in the meat while it waits. At {63 °C|145 °F} act: serve it, or put it in a warm oven.",
    basis: Basis::CommonPractice,
    sources: &[],
    audience: None,
    differs: None,
};

pub(super) const VENT_BEFORE_BOX: Rule = Rule {
    id: RuleId::VentBeforeBox,
    applies: &[Subject::AnyFood],
    condition: "opened for 10 to 15 min, to about {80 °C|175 °F} core, before it goes into a box",
    severity: Severity::Caution,
    words: "Open the wrap for 10 to 15 min before the box, or the meat goes on cooking. The steam burns: open it away from your face.",
    basis: Basis::CommonPractice,
    sources: &[],
    audience: None,
    differs: None,
};

pub(super) const TIME_AS_CONTROL: Rule = Rule {
    id: RuleId::TimeAsControl,
    applies: &[Subject::AnyFood],
    condition: "without heat for 4 h at most, from {57 °C|135 °F} or more, marked and then thrown away",
    severity: Severity::Discard,
    words: "Food service may keep hot food off the heat for 4 h. It needs a written plan, and the time must stand on the food. After 4 h throw it away. At home the clock is 2 h.",
    basis: Basis::Published,
    sources: &[FOOD_CODE_TIME],
    audience: Some(Audience::Public),
    differs: None,
};

pub(super) const CHILL_LEFTOVERS: Rule = Rule {
    id: RuleId::ChillLeftovers,
    applies: &[Subject::Leftovers],
    condition: "in the fridge within 2 h of falling below {60 °C|140 °F}, 1 h in air above {32 °C|90 °F}",
    severity: Severity::Discard,
    words: "Put what is left in the fridge within 2 h of the meal. In air above {32 °C|90 °F} it is 1 h.",
    basis: Basis::Published,
    sources: &[FSIS_HANDLING],
    audience: None,
    differs: None,
};

pub(super) const COOL_IN_TWO_STAGES: Rule = Rule {
    id: RuleId::CoolInTwoStages,
    applies: &[Subject::Leftovers],
    condition: "from {57 to 21 °C|135 to 70 °F} within 2 h, and to {5 °C|41 °F} within 6 h in all",
    severity: Severity::Discard,
    words: "Cooked food must fall from {57 to 21 °C|135 to 70 °F} within 2 h, and to {5 °C|41 °F} within 6 h in all. A big piece in a fridge is far too slow.",
    basis: Basis::Published,
    sources: &[FOOD_CODE_COOLING, FSIS_APPENDIX_B],
    audience: None,
    differs: Some(
        "The rule for meat plants lets {54 to 27 °C|130 to 80 °F} take 1.5 h and {27 to 4 °C|80 to 40 °F} another 5 h. A training page starts at {60 °C|140 °F}; that start is used where the middle was never below it.",
    ),
};

pub(super) const SHALLOW_PORTIONS: Rule = Rule {
    id: RuleId::ShallowPortions,
    applies: &[Subject::Leftovers],
    condition: "no deeper than {76 mm|3 in}; thinner portions, ice, or a water bath with ice",
    severity: Severity::Caution,
    words: "Slice or pull it first. Spread it in flat pans, no deeper than {25 mm|1 in}, lids off until cold. Deeper only with ice water around the pan.",
    basis: Basis::Published,
    sources: &[FOOD_CODE_COOLING],
    audience: None,
    differs: Some(
        "The code allows {76 mm|3 in}. The cooling model here finds that too deep for meat in a fridge: without ice only {25 mm|1 in} cools in time.",
    ),
};

pub(super) const REHEAT_THROUGH: Rule = Rule {
    id: RuleId::ReheatThrough,
    applies: &[Subject::Leftovers],
    condition: "{73.9 °C|165 °F} all through for 15 s",
    severity: Severity::ActNow,
    words: "Heat cooked food up again to {73.9 °C|165 °F} all through.",
    basis: Basis::Published,
    sources: &[MINIMUM_CHART, FOOD_CODE_REHEATING],
    audience: None,
    differs: None,
};

pub(super) const REHEAT_QUICKLY: Rule = Rule {
    id: RuleId::ReheatQuickly,
    applies: &[Subject::Leftovers],
    condition: "from the fridge to {73.9 °C|165 °F} within 2 h",
    severity: Severity::Discard,
    words: "It must get from the fridge to {73.9 °C|165 °F} within 2 h. So use small portions and an oven at {150 °C|300 °F} or more, covered. A box, a slow cooker or a cool smoker is too slow.",
    basis: Basis::Published,
    sources: &[FOOD_CODE_REHEATING],
    audience: None,
    differs: None,
};

pub(super) const KEEPS_COOKED: Rule = Rule {
    id: RuleId::KeepsCooked,
    applies: &[Subject::Leftovers],
    condition: "cooked in the fridge 3 to 4 days, in the freezer 2 to 6 months",
    severity: Severity::Discard,
    words: "Cooked meat keeps 3 to 4 days in the fridge. Write the day on it. In the freezer it stays good for 2 to 6 months.",
    basis: Basis::Published,
    sources: &[STORAGE_CHART],
    audience: None,
    differs: None,
};
