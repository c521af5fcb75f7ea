//! The rules, by their keys.

mod cold;
mod cooking;
mod fire;
mod heating;
mod hygiene;
mod keeping;
mod serving;

use super::Rule;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use std::fmt;
use std::str::FromStr;
use thiserror::Error;

macro_rules! rules {
    ($($(#[$doc:meta])* $id:ident, $slug:literal, $rule:path;)+) => {
        /// The key of a rule. Stored and passed on as a slug of words and hyphens, the same as [`RuleId::slug`].
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema)]
        pub enum RuleId {
            $($(#[$doc])* #[serde(rename = $slug)] $id,)+
        }

        impl RuleId {
            /// Every key, in reading order.
            pub const ALL: &'static [Self] = &[$(Self::$id,)+];

            /// The spelling outside.
            #[must_use]
            pub const fn slug(self) -> &'static str {
                match self {
                    $(Self::$id => $slug,)+
                }
            }

            /// The rule.
            #[must_use]
            pub const fn rule(self) -> &'static Rule {
                match self {
                    $(Self::$id => &$rule,)+
                }
            }
        }
    };
}

rules! {
    /// Intact whole red meat.
    MinimumWholeMuscle, "minimum-whole-muscle", cooking::WHOLE_MUSCLE;
    /// Whole red meat that is not intact.
    MinimumPierced, "minimum-pierced", cooking::PIERCED;
    /// Ground red meat.
    MinimumGround, "minimum-ground", cooking::GROUND;
    /// Poultry.
    MinimumPoultry, "minimum-poultry", cooking::POULTRY;
    /// Stuffed food.
    MinimumStuffed, "minimum-stuffed", cooking::STUFFED;
    /// Fish.
    MinimumFish, "minimum-fish", cooking::FISH;
    /// Pink roasts by the printed table.
    RoastByTable, "roast-by-table", cooking::ROAST_BY_TABLE;
    /// Poultry by the printed table.
    PoultryByTable, "poultry-by-table", cooking::POULTRY_BY_TABLE;
    /// Who must not eat it less done.
    WhoMustNotEat, "who-must-not-eat", cooking::WHO_MUST_NOT_EAT;
    /// The coldest point counts.
    ColdestPoint, "coldest-point", cooking::COLDEST_POINT;
    /// A rise after coming off is never counted.
    NoCreditForCarryover, "no-credit-for-carryover", cooking::NO_CREDIT_FOR_CARRYOVER;

    /// Is it intact?
    AskIntact, "ask-intact", heating::ASK_INTACT;
    /// Intact: the surface governs.
    SurfaceHotInTime, "surface-hot-in-time", heating::SURFACE_HOT_IN_TIME;
    /// Not intact: the core governs.
    CoreHotInTime, "core-hot-in-time", heating::CORE_HOT_IN_TIME;
    /// Intact, and the core is slow.
    SlowCoreIntact, "slow-core-intact", heating::SLOW_CORE_INTACT;
    /// Air of the smoker.
    SmokerAir, "smoker-air", heating::SMOKER_AIR;
    /// Probe in once the surface is hot.
    ProbeOnceHot, "probe-once-hot", heating::PROBE_ONCE_HOT;
    /// Never part-cooked and chilled.
    NeverPartCook, "never-part-cook", heating::NEVER_PART_COOK;
    /// No reading, no verdict.
    UnknownIsTooLong, "unknown-is-too-long", heating::UNKNOWN_IS_TOO_LONG;

    /// The two-hour clock.
    TwoHours, "two-hours", cold::TWO_HOURS;
    /// The clock above 32 °C.
    OneHourInHeat, "one-hour-in-heat", cold::ONE_HOUR_IN_HEAT;
    /// Raw food stays cold.
    KeepCold, "keep-cold", cold::KEEP_COLD;
    /// Days in the fridge, raw.
    KeepsRaw, "keeps-raw", cold::KEEPS_RAW;
    /// Thaw through before it goes on.
    ThawThrough, "thaw-through", cold::THAW_THROUGH;
    /// Thaw in the fridge.
    ThawInFridge, "thaw-in-fridge", cold::THAW_IN_FRIDGE;
    /// Thaw in cold water.
    ThawInColdWater, "thaw-in-cold-water", cold::THAW_IN_COLD_WATER;
    /// Thaw under running water, food service.
    ThawUnderRunningWater, "thaw-under-running-water", cold::THAW_UNDER_RUNNING_WATER;
    /// Brine stays cold.
    BrineCold, "brine-cold", cold::BRINE_COLD;

    /// Hold hot, household.
    HoldHot, "hold-hot", keeping::HOLD_HOT;
    /// Hold hot, food service.
    HoldHotPublic, "hold-hot-public", keeping::HOLD_HOT_PUBLIC;
    /// Hold a roast cooked by the table.
    HoldRoastByTable, "hold-roast-by-table", keeping::HOLD_ROAST_BY_TABLE;
    /// A box is probed, not trusted.
    ProbeTheBox, "probe-the-box", keeping::PROBE_THE_BOX;
    /// Vent before a box.
    VentBeforeBox, "vent-before-box", keeping::VENT_BEFORE_BOX;
    /// Four hours without heat, food service.
    TimeAsControl, "time-as-control", keeping::TIME_AS_CONTROL;
    /// Chill what is left.
    ChillLeftovers, "chill-leftovers", keeping::CHILL_LEFTOVERS;
    /// Cool in two stages.
    CoolInTwoStages, "cool-in-two-stages", keeping::COOL_IN_TWO_STAGES;
    /// Shallow portions cool.
    ShallowPortions, "shallow-portions", keeping::SHALLOW_PORTIONS;
    /// Reheat through.
    ReheatThrough, "reheat-through", keeping::REHEAT_THROUGH;
    /// Reheat quickly.
    ReheatQuickly, "reheat-quickly", keeping::REHEAT_QUICKLY;
    /// Days in the fridge, cooked.
    KeepsCooked, "keeps-cooked", keeping::KEEPS_COOKED;

    /// Raw and ready apart.
    RawApart, "raw-apart", hygiene::RAW_APART;
    /// Wash hands.
    WashHands, "wash-hands", hygiene::WASH_HANDS;
    /// Never wash raw poultry.
    RawPoultryLowest, "raw-poultry-lowest", hygiene::RAW_POULTRY_LOWEST;
    /// Marinade and rub that touched raw meat.
    RubAndMarinade, "rub-and-marinade", hygiene::RUB_AND_MARINADE;
    /// The spray bottle.
    SprayBottle, "spray-bottle", hygiene::SPRAY_BOTTLE;
    /// A clean thermometer.
    CleanThermometer, "clean-thermometer", hygiene::CLEAN_THERMOMETER;
    /// A thermometer that reads right.
    TrueThermometer, "true-thermometer", hygiene::TRUE_THERMOMETER;
    /// Clean board and knife for what is cooked.
    CleanBoard, "clean-board", hygiene::CLEAN_BOARD;

    /// Carbon monoxide.
    CarbonMonoxide, "carbon-monoxide", fire::CARBON_MONOXIDE;
    /// Distance from everything that burns.
    Distance, "distance", fire::DISTANCE;
    /// Never under a roof for rain or wind.
    NoShelterUnderARoof, "no-shelter-under-a-roof", fire::NO_SHELTER_UNDER_A_ROOF;
    /// How to light.
    LightingFuel, "lighting-fuel", fire::LIGHTING_FUEL;
    /// A lit fire is not left alone.
    NeverLeftAlone, "never-left-alone", fire::NEVER_LEFT_ALONE;
    /// Who minds it.
    AwakeAndSober, "awake-and-sober", fire::AWAKE_AND_SOBER;
    /// Wind and dry grass.
    WindAndDryGrass, "wind-and-dry-grass", fire::WIND_AND_DRY_GRASS;
    /// Gloves and steam.
    HotSurfaces, "hot-surfaces", fire::HOT_SURFACES;
    /// Grease.
    Grease, "grease", fire::GREASE;
    /// Ash and coals.
    HotAsh, "hot-ash", fire::HOT_ASH;
    /// Gas.
    GasLeaks, "gas-leaks", fire::GAS_LEAKS;

    /// Food on the table.
    OnTheTable, "on-the-table", serving::ON_THE_TABLE;
    /// Local code and licence.
    LocalCode, "local-code", serving::LOCAL_CODE;
    /// Two alarms.
    SecondAlarm, "second-alarm", serving::SECOND_ALARM;
    /// Who to ask.
    WhoToAsk, "who-to-ask", serving::WHO_TO_ASK;
}

impl fmt::Display for RuleId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.slug())
    }
}

/// A slug that no rule has.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
#[error("no safety rule is called \"{0}\"; it may be one of a later version")]
pub struct UnknownRule(pub String);

impl FromStr for RuleId {
    type Err = UnknownRule;

    fn from_str(slug: &str) -> Result<Self, UnknownRule> {
        let known = Self::ALL.iter().copied().find(|id| id.slug() == slug);
        known.ok_or_else(|| UnknownRule(slug.to_owned()))
    }
}

#[cfg(test)]
mod tests;
