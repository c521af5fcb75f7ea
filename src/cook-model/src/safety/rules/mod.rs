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
    ($($(#[$doc:meta])* $id:ident, $slug:literal, $title:literal, $rule:path;)+) => {
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

            /// What it is called, in a few words.
            #[must_use]
            pub const fn title(self) -> &'static str {
                match self {
                    $(Self::$id => $title,)+
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
    MinimumWholeMuscle, "minimum-whole-muscle", "Hot enough: whole red meat", cooking::WHOLE_MUSCLE;
    /// Whole red meat that is not intact.
    MinimumPierced, "minimum-pierced", "Hot enough: red meat that is not whole", cooking::PIERCED;
    /// Ground red meat.
    MinimumGround, "minimum-ground", "Hot enough: ground meat", cooking::GROUND;
    /// Poultry.
    MinimumPoultry, "minimum-poultry", "Hot enough: poultry", cooking::POULTRY;
    /// Stuffed food.
    MinimumStuffed, "minimum-stuffed", "Hot enough: stuffed food", cooking::STUFFED;
    /// Fish.
    MinimumFish, "minimum-fish", "Hot enough: fish", cooking::FISH;
    /// Pink roasts by the printed table.
    RoastByTable, "roast-by-table", "Pink roasts by the table", cooking::ROAST_BY_TABLE;
    /// Poultry by the printed table.
    PoultryByTable, "poultry-by-table", "Poultry by the table", cooking::POULTRY_BY_TABLE;
    /// Who must not eat it less done.
    WhoMustNotEat, "who-must-not-eat", "Who must not eat it less done", cooking::WHO_MUST_NOT_EAT;
    /// The coldest point counts.
    ColdestPoint, "coldest-point", "The coldest point counts", cooking::COLDEST_POINT;
    /// A rise after coming off is never counted.
    NoCreditForCarryover, "no-credit-for-carryover", "A rise off the heat does not count", cooking::NO_CREDIT_FOR_CARRYOVER;

    /// Is it intact?
    AskIntact, "ask-intact", "Is it whole inside?", heating::ASK_INTACT;
    /// Intact: the surface governs.
    SurfaceHotInTime, "surface-hot-in-time", "Hot outside within 4 h", heating::SURFACE_HOT_IN_TIME;
    /// Not intact: the core governs.
    CoreHotInTime, "core-hot-in-time", "Hot in the middle within 4 h", heating::CORE_HOT_IN_TIME;
    /// Intact, and the core is slow.
    SlowCoreIntact, "slow-core-intact", "A slow middle", heating::SLOW_CORE_INTACT;
    /// Air of the smoker.
    SmokerAir, "smoker-air", "Air of the smoker", heating::SMOKER_AIR;
    /// Probe in once the surface is hot.
    ProbeOnceHot, "probe-once-hot", "Probe in once the outside is hot", heating::PROBE_ONCE_HOT;
    /// Never part-cooked and chilled.
    NeverPartCook, "never-part-cook", "Never part-cooked and chilled", heating::NEVER_PART_COOK;
    /// No reading, no verdict.
    UnknownIsTooLong, "unknown-is-too-long", "No reading, no verdict", heating::UNKNOWN_IS_TOO_LONG;

    /// The two-hour clock.
    TwoHours, "two-hours", "2 h out of the fridge", cold::TWO_HOURS;
    /// The clock above 32 °C.
    OneHourInHeat, "one-hour-in-heat", "1 h out of the fridge on a hot day", cold::ONE_HOUR_IN_HEAT;
    /// Raw food stays cold.
    KeepCold, "keep-cold", "Raw food stays cold", cold::KEEP_COLD;
    /// Days in the fridge, raw.
    KeepsRaw, "keeps-raw", "Days in the fridge, raw", cold::KEEPS_RAW;
    /// Thaw through before it goes on.
    ThawThrough, "thaw-through", "Thawed right through", cold::THAW_THROUGH;
    /// Thaw in the fridge.
    ThawInFridge, "thaw-in-fridge", "Thawing in the fridge", cold::THAW_IN_FRIDGE;
    /// Thaw in cold water.
    ThawInColdWater, "thaw-in-cold-water", "Thawing in cold water", cold::THAW_IN_COLD_WATER;
    /// Thaw under running water, food service.
    ThawUnderRunningWater, "thaw-under-running-water", "Thawing under running water", cold::THAW_UNDER_RUNNING_WATER;
    /// Brine stays cold.
    BrineCold, "brine-cold", "Brine stays cold", cold::BRINE_COLD;

    /// Hold hot, household.
    HoldHot, "hold-hot", "Held hot", keeping::HOLD_HOT;
    /// Hold hot, food service.
    HoldHotPublic, "hold-hot-public", "Held hot for the public", keeping::HOLD_HOT_PUBLIC;
    /// Hold a roast cooked by the table.
    HoldRoastByTable, "hold-roast-by-table", "A pink roast held hot", keeping::HOLD_ROAST_BY_TABLE;
    /// A box is probed, not trusted.
    ProbeTheBox, "probe-the-box", "A box is probed, not trusted", keeping::PROBE_THE_BOX;
    /// Vent before a box.
    VentBeforeBox, "vent-before-box", "Vent before the box", keeping::VENT_BEFORE_BOX;
    /// Four hours without heat, food service.
    TimeAsControl, "time-as-control", "4 h without heat, food service", keeping::TIME_AS_CONTROL;
    /// Chill what is left.
    ChillLeftovers, "chill-leftovers", "Into the fridge in time", keeping::CHILL_LEFTOVERS;
    /// Cool in two stages.
    CoolInTwoStages, "cool-in-two-stages", "Cooled in two stages", keeping::COOL_IN_TWO_STAGES;
    /// Shallow portions cool.
    ShallowPortions, "shallow-portions", "Shallow pans cool in time", keeping::SHALLOW_PORTIONS;
    /// Reheat through.
    ReheatThrough, "reheat-through", "Hot again all through", keeping::REHEAT_THROUGH;
    /// Reheat quickly.
    ReheatQuickly, "reheat-quickly", "Hot again within 2 h", keeping::REHEAT_QUICKLY;
    /// Days in the fridge, cooked.
    KeepsCooked, "keeps-cooked", "Days in the fridge, cooked", keeping::KEEPS_COOKED;

    /// Raw and ready apart.
    RawApart, "raw-apart", "Raw and ready apart", hygiene::RAW_APART;
    /// Wash hands.
    WashHands, "wash-hands", "Wash hands", hygiene::WASH_HANDS;
    /// Never wash raw poultry.
    RawPoultryLowest, "raw-poultry-lowest", "Raw poultry lowest, never washed", hygiene::RAW_POULTRY_LOWEST;
    /// Marinade and rub that touched raw meat.
    RubAndMarinade, "rub-and-marinade", "Rub and marinade from raw meat", hygiene::RUB_AND_MARINADE;
    /// The spray bottle.
    SprayBottle, "spray-bottle", "The spray bottle", hygiene::SPRAY_BOTTLE;
    /// A clean thermometer.
    CleanThermometer, "clean-thermometer", "A clean thermometer", hygiene::CLEAN_THERMOMETER;
    /// A thermometer that reads right.
    TrueThermometer, "true-thermometer", "A thermometer that reads right", hygiene::TRUE_THERMOMETER;
    /// Clean board and knife for what is cooked.
    CleanBoard, "clean-board", "Clean board and knife", hygiene::CLEAN_BOARD;

    /// Carbon monoxide.
    CarbonMonoxide, "carbon-monoxide", "Carbon monoxide", fire::CARBON_MONOXIDE;
    /// Distance from everything that burns.
    Distance, "distance", "Distance from what burns", fire::DISTANCE;
    /// Never under a roof for rain or wind.
    NoShelterUnderARoof, "no-shelter-under-a-roof", "Never under a roof", fire::NO_SHELTER_UNDER_A_ROOF;
    /// How to light.
    LightingFuel, "lighting-fuel", "Lighting it", fire::LIGHTING_FUEL;
    /// A lit fire is not left alone.
    NeverLeftAlone, "never-left-alone", "A lit fire is not left alone", fire::NEVER_LEFT_ALONE;
    /// Who minds it.
    AwakeAndSober, "awake-and-sober", "Who minds the fire", fire::AWAKE_AND_SOBER;
    /// Wind and dry grass.
    WindAndDryGrass, "wind-and-dry-grass", "Wind and dry grass", fire::WIND_AND_DRY_GRASS;
    /// Gloves and steam.
    HotSurfaces, "hot-surfaces", "Gloves and steam", fire::HOT_SURFACES;
    /// Grease.
    Grease, "grease", "Grease", fire::GREASE;
    /// Ash and coals.
    HotAsh, "hot-ash", "Ash and coals", fire::HOT_ASH;
    /// Gas.
    GasLeaks, "gas-leaks", "Gas leaks", fire::GAS_LEAKS;

    /// Food on the table.
    OnTheTable, "on-the-table", "Time on the table", serving::ON_THE_TABLE;
    /// Local code and licence.
    LocalCode, "local-code", "Local code and licence", serving::LOCAL_CODE;
    /// Two alarms.
    SecondAlarm, "second-alarm", "A second alarm", serving::SECOND_ALARM;
    /// Who to ask.
    WhoToAsk, "who-to-ask", "Who to ask", serving::WHO_TO_ASK;
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
