//! What a rule is.

use super::{RuleId, Source};
use crate::plan::Audience;
use serde::{Deserialize, Serialize};

/// A rule of food or fire.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rule {
    /// Its key.
    pub id: RuleId,
    /// What it applies to.
    pub applies: &'static [Subject],
    /// When it is met or broken, in words with its figures. Both scales stand in it: see [`super::say`].
    pub condition: &'static str,
    /// What follows if it is broken.
    pub severity: Severity,
    /// What to do, for a reader of twelve. Both scales stand in it: see [`super::say`].
    pub words: &'static str,
    /// What it rests on.
    pub basis: Basis,
    /// Where it can be read.
    pub sources: &'static [Source],
    /// For whom it is written. None: for a household and for the public alike.
    pub audience: Option<Audience>,
    /// Where another published rule says otherwise: what it says, and why this one stands.
    pub differs: Option<&'static str>,
}

/// What a rule applies to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Subject {
    /// Food of any kind.
    AnyFood,
    /// Whole muscle of red meat that nobody has pierced, rolled, stuffed or ground.
    IntactWholeMuscle,
    /// Whole muscle that was injected, blade-tenderised, boned and rolled, or of which that is not known.
    PiercedWholeMuscle,
    /// Ground or chopped meat, sausages.
    Ground,
    /// Poultry in any form.
    Poultry,
    /// Anything stuffed, and the stuffing.
    Stuffed,
    /// Fish.
    Fish,
    /// Cooked food that is kept for later.
    Leftovers,
    /// Thermometers, boards, knives, bottles, brushes.
    Tools,
    /// Fire, fuel, smoke and ash.
    Fire,
}

/// What follows when a rule is broken.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Severity {
    /// Be careful.
    Caution,
    /// Do something now.
    ActNow,
    /// Throw the food away.
    Discard,
}

/// What a rule rests on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Basis {
    /// Published, and read in the places named.
    Published,
    /// What the trade does; no publication was read for it.
    CommonPractice,
    /// Published as far as is remembered; not read.
    FromMemory,
}
