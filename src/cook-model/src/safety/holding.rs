//! Holding hot.

use super::RuleId;
use super::minimum::printed;
use crate::plan::Audience;
use crate::units::{Temperature, TimeSpan};

/// The least that held food may fall to, and the rule.
///
/// Sources: 60 °C (140 °F) for a household by USDA FSIS, Smoking Meat and Poultry; 57 °C (135 °F) for food service and
/// 54.4 °C (130 °F) for roasts cooked by the table by the Food Code, 3-501.16, as adopted in WAC 246-215-03525.
#[must_use]
pub const fn hold_minimum(audience: Audience, roast_by_the_table: bool) -> (Temperature, RuleId) {
    match (roast_by_the_table, audience) {
        (true, _) => (
            Temperature::from_fahrenheit(130.0),
            RuleId::HoldRoastByTable,
        ),
        (false, Audience::Household) => (printed(140.0, 60.0), RuleId::HoldHot),
        (false, Audience::Public) => (printed(135.0, 57.0), RuleId::HoldHotPublic),
    }
}

/// How long food that starts hot may be kept without heat, marked with its time and thrown away after: four hours, and
/// only in food service under a written plan. A household has its two-hour clock instead: none.
///
/// Source: Food Code, 3-501.19, as adopted in Georgia 511-6-1.
#[must_use]
pub const fn time_without_heat(audience: Audience) -> Option<TimeSpan> {
    match audience {
        Audience::Household => None,
        Audience::Public => Some(TimeSpan::from_hours(4.0)),
    }
}
