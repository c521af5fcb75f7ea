//! Hands, boards, bottles and thermometers.

use crate::safety::source::{FSIS_HANDLING, FSIS_SMOKING};
use crate::safety::{Basis, Rule, RuleId, Severity, Subject};

const fn practice(
    id: RuleId,
    applies: &'static [Subject],
    condition: &'static str,
    words: &'static str,
) -> Rule {
    Rule {
        id,
        applies,
        condition,
        severity: Severity::Caution,
        words,
        basis: Basis::CommonPractice,
        sources: &[],
        audience: None,
        differs: None,
    }
}

pub(super) const RAW_APART: Rule = Rule {
    basis: Basis::Published,
    sources: &[FSIS_HANDLING],
    ..practice(
        RuleId::RawApart,
        &[Subject::AnyFood, Subject::Tools],
        "raw meat and its juice touch nothing that is eaten as it is",
        "Keep raw meat and its juice away from food that is ready to eat. Use another board and knife, and wash them hot with soap.",
    )
};

pub(super) const WASH_HANDS: Rule = Rule {
    basis: Basis::Published,
    sources: &[FSIS_HANDLING],
    ..practice(
        RuleId::WashHands,
        &[Subject::AnyFood, Subject::Tools],
        "hands washed with soap for 20 s before and after raw meat",
        "Wash your hands with soap for 20 s before and after you touch raw meat. Wash them before you touch this screen, too.",
    )
};

pub(super) const RAW_POULTRY_LOWEST: Rule = practice(
    RuleId::RawPoultryLowest,
    &[Subject::Poultry],
    "raw poultry below other food, in the fridge and on the racks; never washed",
    "Put raw poultry lowest, so that it drips on nothing. Do not wash it: that sprays germs about.",
);

pub(super) const RUB_AND_MARINADE: Rule = practice(
    RuleId::RubAndMarinade,
    &[Subject::AnyFood],
    "what has touched raw meat is thrown away or boiled",
    "Pour out the rub or sauce you need into a small bowl. What has touched raw meat is thrown away, or boiled before it goes on cooked food.",
);

pub(super) const SPRAY_BOTTLE: Rule = practice(
    RuleId::SprayBottle,
    &[Subject::Tools],
    "the bottle is clean, filled the same day, and never handled with raw juice on the hands",
    "Fill a clean spray bottle on the day. Touch it with clean hands only, keep it cool, and empty it when you are done.",
);

pub(super) const CLEAN_THERMOMETER: Rule = Rule {
    sources: &[FSIS_SMOKING],
    ..practice(
        RuleId::CleanThermometer,
        &[Subject::Tools],
        "the stem is washed before it goes into another piece and after every raw or doubtful one",
        "Wipe and wash the stem before each piece. A stem that was in undercooked meat must not go into meat that is done.",
    )
};

pub(super) const TRUE_THERMOMETER: Rule = practice(
    RuleId::TrueThermometer,
    &[Subject::Tools],
    "{0 °C|32 °F} in ice water, and the boiling point of the place in boiling water",
    "Check the thermometer first. It must read {0 °C|32 °F} in ice water. In boiling water it must read the boiling point of your place, which is lower high up.",
);

pub(super) const CLEAN_BOARD: Rule = practice(
    RuleId::CleanBoard,
    &[Subject::Tools],
    "cooked meat on a clean board, with a clean knife",
    "Cooked meat goes on a clean board, under a clean knife, and into clean pans. Never back on the raw tray.",
);
