//! Fire, smoke and ash.

use crate::safety::source::{
    CPSC_CARBON_MONOXIDE, FIRE_CODE_BALCONY, FIRE_DEPARTMENT_ASH, FSIS_SMOKING, Source, USFA_GRILLS,
};
use crate::safety::{Basis, Rule, RuleId, Severity, Subject};

const fn fire(
    id: RuleId,
    severity: Severity,
    condition: &'static str,
    words: &'static str,
    sources: &'static [Source],
) -> Rule {
    Rule {
        id,
        applies: &[Subject::Fire],
        condition,
        severity,
        words,
        basis: if sources.is_empty() {
            Basis::CommonPractice
        } else {
            Basis::Published
        },
        sources,
        audience: None,
        differs: None,
    }
}

pub(super) const CARBON_MONOXIDE: Rule = fire(
    RuleId::CarbonMonoxide,
    Severity::ActNow,
    "never in a house, garage, tent or vehicle, open doors or not, until the fuel is fully out",
    "Burning charcoal and wood give off carbon monoxide. You cannot see or smell it, and it kills. Cook in the open air only. Never in a house, garage, tent or car, not even with the doors open. Headache or dizzy? Get out and call for help.",
    &[CPSC_CARBON_MONOXIDE],
);

pub(super) const DISTANCE: Rule = Rule {
    differs: Some(
        "The fire sheet for homes says {0.9 m|3 ft} from walls, rails and eaves. The fire code says {3 m|10 ft} for all but small houses. Farther is better, and your local code stands.",
    ),
    ..fire(
        RuleId::Distance,
        Severity::ActNow,
        "{3 m|10 ft} from anything that burns; children and pets {0.9 m|3 ft} away",
        "Stand it on firm ground, {3 m|10 ft} from walls, fences, eaves and trees. Keep children and pets {0.9 m|3 ft} away.",
        &[USFA_GRILLS, FIRE_CODE_BALCONY, FSIS_SMOKING],
    )
};

pub(super) const NO_SHELTER_UNDER_A_ROOF: Rule = fire(
    RuleId::NoShelterUnderARoof,
    Severity::ActNow,
    "rain and wind never move the fire under a roof",
    "Rain or wind is no reason to move the fire under a roof or next to the house. If it cannot stay in the open, put it out and use the kitchen oven.",
    &[CPSC_CARBON_MONOXIDE, FIRE_CODE_BALCONY],
);

pub(super) const LIGHTING_FUEL: Rule = fire(
    RuleId::LightingFuel,
    Severity::ActNow,
    "no petrol; nothing poured on a fire; no galvanised metal",
    "Light it with a chimney or a fire starter. Never use petrol, and never pour anything on hot coals. No galvanised cans or racks: they give off fumes.",
    &[FSIS_SMOKING, USFA_GRILLS],
);

pub(super) const NEVER_LEFT_ALONE: Rule = fire(
    RuleId::NeverLeftAlone,
    Severity::ActNow,
    "someone stays by a lit fire",
    "Never leave a lit fire alone. Someone stays with it, day and night. If nobody can, put it out and finish in the kitchen oven.",
    &[USFA_GRILLS],
);

pub(super) const AWAKE_AND_SOBER: Rule = fire(
    RuleId::AwakeAndSober,
    Severity::Caution,
    "whoever minds a fire is awake and sober",
    "Whoever minds the fire is awake and sober. Set a second alarm on another clock.",
    &[],
);

pub(super) const WIND_AND_DRY_GRASS: Rule = fire(
    RuleId::WindAndDryGrass,
    Severity::ActNow,
    "no fire in a gale, on dry grass or under a fire ban",
    "Sparks fly in wind. No fire on dry grass, in a gale, or where there is a fire ban. Keep water or a hose at hand.",
    &[],
);

pub(super) const HOT_SURFACES: Rule = fire(
    RuleId::HotSurfaces,
    Severity::Caution,
    "heat-proof gloves for lids, grates, coals and wrapped meat",
    "Wear gloves that stand heat. Lids, grates and steam burn. Open the lid away from your face.",
    &[],
);

pub(super) const GREASE: Rule = fire(
    RuleId::Grease,
    Severity::ActNow,
    "drip pan emptied and grease kept away from the fire; no water on burning fat",
    "Empty the drip pan before it fills. If fat burns, shut the lid and the vents. Never throw water on it.",
    &[],
);

pub(super) const HOT_ASH: Rule = fire(
    RuleId::HotAsh,
    Severity::ActNow,
    "cold ash only, into a metal bin with a lid, outside",
    "Ash stays hot for a day or more. Let it go cold with the vents shut. Then put it in a metal bin with a lid, outside and away from the house.",
    &[FIRE_DEPARTMENT_ASH],
);

pub(super) const GAS_LEAKS: Rule = fire(
    RuleId::GasLeaks,
    Severity::ActNow,
    "hoses checked for leaks; lid open while it is lit",
    "Open the lid before you light gas. If you smell gas, shut the bottle and walk away. Do not move it while it is hot.",
    &[USFA_GRILLS],
);
