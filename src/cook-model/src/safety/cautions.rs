//! Cautions, tied to the step where they matter.

use super::RuleId;
use crate::meat::Make;
use crate::plan::outlook::StepKind;
use crate::plan::{Audience, CookerKind, HoldPlace, Intact};
use crate::units::Temperature;

/// What the cautions of a step depend on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CautionContext {
    /// What is cooked. None: a dish of one's own.
    pub make: Option<Make>,
    /// Whether every piece of the dish is known to be intact.
    pub intact: Intact,
    /// A piece comes frozen.
    pub frozen: bool,
    /// The cooker. None: none chosen, or a step in the kitchen.
    pub cooker: Option<CookerKind>,
    /// Where it waits.
    pub hold: Option<HoldPlace>,
    /// Who is served.
    pub audience: Audience,
    /// A target below the minimum was chosen.
    pub below_minimum: bool,
    /// Air outside.
    pub air: Temperature,
    /// Wind at the cooker, m/s.
    pub wind_metres_per_second: f64,
}

/// A wind in which sparks carry: Beaufort 5, 8 m/s (common practice).
const SPARKS_FLY: f64 = 8.0;

impl CautionContext {
    /// Burns wood or charcoal.
    fn solid_fuel(&self) -> bool {
        use CookerKind::{Cabinet, Ceramic, Drum, Kettle, Offset, Pellet};
        matches!(
            self.cooker,
            Some(Offset | Kettle | Drum | Ceramic | Cabinet | Pellet)
        )
    }

    fn gas(&self) -> bool {
        self.cooker == Some(CookerKind::Gas)
    }

    fn burns(&self) -> bool {
        self.solid_fuel() || self.gas()
    }

    fn hot_day(&self) -> bool {
        super::out_of_fridge_limit(self.air)
            < super::out_of_fridge_limit(Temperature::from_celsius(20.0))
    }

    fn out_of_fridge(&self) -> RuleId {
        if self.hot_day() {
            RuleId::OneHourInHeat
        } else {
            RuleId::TwoHours
        }
    }

    fn whole_muscle(&self) -> bool {
        self.make == Some(Make::WholeMuscle)
    }
}

/// The minimum that a dish must reach, by its rule.
fn minimum_rule(context: &CautionContext) -> Option<RuleId> {
    let sort = super::Sort::of(context.make?, context.intact);
    Some(super::minimum(sort).rule)
}

/// The cautions of a step, the gravest first. The same caution may come up at several steps: show it at the first and
/// keep it readable at the others.
#[must_use]
pub fn cautions_for(step: StepKind, context: &CautionContext) -> Vec<RuleId> {
    use RuleId as R;
    let mut cautions = Vec::new();
    let mut add = |wanted: bool, id: RuleId| {
        if wanted && !cautions.contains(&id) {
            cautions.push(id);
        }
    };
    let meat = context.make.is_some();
    let poultry = context.make == Some(Make::Poultry);
    let public = context.audience == Audience::Public;
    match step {
        StepKind::Buy => {
            add(public, R::LocalCode);
            add(
                context.whole_muscle() && context.intact == Intact::Unknown,
                R::AskIntact,
            );
            add(meat, R::KeepCold);
            add(meat, R::KeepsRaw);
            add(meat, R::RawApart);
        }
        StepKind::Thaw => {
            add(meat, R::ThawThrough);
            add(meat, R::ThawInFridge);
            add(meat, R::ThawInColdWater);
            add(
                meat && context.audience == Audience::Public,
                R::ThawUnderRunningWater,
            );
            add(meat, R::KeepsRaw);
            add(poultry, R::RawPoultryLowest);
        }
        StepKind::Trim => {
            add(
                context.whole_muscle() && context.intact == Intact::Unknown,
                R::AskIntact,
            );
            add(meat, context.out_of_fridge());
            add(meat, R::RawApart);
            add(meat, R::WashHands);
            add(poultry, R::RawPoultryLowest);
        }
        StepKind::Salt => {
            add(meat, context.out_of_fridge());
            add(meat, R::BrineCold);
            add(meat, R::RawApart);
            add(meat, R::WashHands);
        }
        StepKind::Rub => {
            add(meat, context.out_of_fridge());
            add(meat, R::RubAndMarinade);
            add(meat, R::WashHands);
        }
        StepKind::Light => {
            add(context.burns(), R::CarbonMonoxide);
            add(context.burns(), R::Distance);
            add(context.burns(), R::NoShelterUnderARoof);
            add(context.gas(), R::GasLeaks);
            add(context.solid_fuel(), R::LightingFuel);
            // Wind that is not a number counts as strong.
            let calm = context.wind_metres_per_second < SPARKS_FLY;
            add(context.burns() && !calm, R::WindAndDryGrass);
            add(context.burns(), R::NeverLeftAlone);
            add(context.burns() && calm, R::WindAndDryGrass);
            add(context.burns(), R::HotSurfaces);
            add(context.burns() && public, R::LocalCode);
        }
        StepKind::SteadyFire => {
            add(context.burns(), R::NeverLeftAlone);
            add(context.burns(), R::AwakeAndSober);
            add(context.burns(), R::Grease);
            add(true, R::TrueThermometer);
            add(true, R::SmokerAir);
        }
        StepKind::Feed => {
            add(context.burns(), R::NeverLeftAlone);
            add(context.burns(), R::AwakeAndSober);
            add(context.burns(), R::HotSurfaces);
            add(context.solid_fuel(), R::HotAsh);
        }
        StepKind::PitChange => {
            add(context.burns(), R::HotSurfaces);
            add(meat, R::SmokerAir);
        }
        StepKind::On => {
            add(context.frozen, R::ThawThrough);
            add(
                context.whole_muscle() && context.intact == Intact::Unknown,
                R::AskIntact,
            );
            if let Some(make) = context.make {
                add(
                    true,
                    super::governing(super::Sort::of(make, context.intact)).rule(),
                );
            }
            add(meat, context.out_of_fridge());
            add(poultry, R::RawPoultryLowest);
            add(meat, R::NeverPartCook);
            add(meat, R::WashHands);
        }
        StepKind::ProbeIn => {
            add(context.whole_muscle(), R::ProbeOnceHot);
            add(meat, R::CleanThermometer);
            add(meat, R::TrueThermometer);
            add(meat, R::SecondAlarm);
        }
        StepKind::Turn => {
            add(true, R::HotSurfaces);
            add(meat, R::CleanBoard);
        }
        StepKind::Spray => {
            add(true, R::SprayBottle);
            add(true, R::HotSurfaces);
        }
        StepKind::Wrap => {
            add(true, R::HotSurfaces);
            add(meat, R::CleanBoard);
        }
        StepKind::Probe => {
            add(meat, R::ColdestPoint);
            if let Some(rule) = minimum_rule(context) {
                add(true, rule);
            }
            add(
                context.below_minimum && context.whole_muscle(),
                R::RoastByTable,
            );
            add(context.below_minimum && poultry, R::PoultryByTable);
            add(context.below_minimum, R::WhoMustNotEat);
            add(meat, R::CleanThermometer);
        }
        StepKind::Off => {
            if let Some(rule) = minimum_rule(context) {
                add(true, rule);
            }
            add(
                meat && context.make != Some(Make::Fish),
                R::NoCreditForCarryover,
            );
            add(context.hold == Some(HoldPlace::RestBox), R::VentBeforeBox);
            add(meat, R::CleanBoard);
            add(context.burns(), R::Grease);
            add(context.solid_fuel(), R::HotAsh);
        }
        StepKind::Hold => {
            let (_, rule) = super::hold_minimum(context.audience, false);
            add(true, rule);
            add(
                context.below_minimum && context.whole_muscle(),
                R::HoldRoastByTable,
            );
            add(context.hold == Some(HoldPlace::RestBox), R::ProbeTheBox);
            add(context.hold == Some(HoldPlace::RestBox), R::VentBeforeBox);
            add(true, R::SecondAlarm);
        }
        StepKind::Slice => {
            add(true, R::CleanBoard);
            add(true, R::WashHands);
        }
        StepKind::Serve => {
            add(context.below_minimum, R::WhoMustNotEat);
            add(true, R::OnTheTable);
            add(public, R::LocalCode);
            add(public, R::TimeAsControl);
        }
        StepKind::Chill => {
            add(true, R::ChillLeftovers);
            add(true, R::CoolInTwoStages);
            add(true, R::ShallowPortions);
            add(true, R::KeepsCooked);
            add(true, R::ReheatThrough);
            add(context.solid_fuel(), R::HotAsh);
        }
        StepKind::Own => {}
        StepKind::Make => {
            add(true, R::RawApart);
            add(true, context.out_of_fridge());
            add(true, R::OnTheTable);
        }
    }
    cautions.retain(|id| {
        let audience = id.rule().audience;
        audience.is_none_or(|audience| audience == context.audience)
    });
    cautions
}

#[cfg(test)]
mod tests {
    use super::*;

    fn context(make: Option<Make>) -> CautionContext {
        CautionContext {
            make,
            intact: Intact::Unknown,
            frozen: false,
            cooker: Some(CookerKind::Offset),
            hold: Some(HoldPlace::RestBox),
            audience: Audience::Household,
            below_minimum: false,
            air: Temperature::from_celsius(20.0),
            wind_metres_per_second: 2.0,
        }
    }

    #[test]
    fn lighting_a_fire_begins_with_carbon_monoxide() {
        for cooker in [
            CookerKind::Offset,
            CookerKind::Kettle,
            CookerKind::Pellet,
            CookerKind::Gas,
        ] {
            let at = CautionContext {
                cooker: Some(cooker),
                ..context(Some(Make::WholeMuscle))
            };
            let cautions = cautions_for(StepKind::Light, &at);
            assert_eq!(
                cautions.first(),
                Some(&RuleId::CarbonMonoxide),
                "{cooker:?}"
            );
            assert!(
                cautions.contains(&RuleId::NeverLeftAlone) && cautions.contains(&RuleId::Distance)
            );
        }
        let oven = CautionContext {
            cooker: Some(CookerKind::Oven),
            ..context(None)
        };
        assert!(cautions_for(StepKind::Light, &oven).is_empty());
    }

    #[test]
    fn hands_on_raw_meat_run_the_clock_of_the_day() {
        let mild = context(Some(Make::WholeMuscle));
        let hot = CautionContext {
            air: Temperature::from_celsius(34.0),
            ..mild
        };
        let unknown = CautionContext {
            air: Temperature::from_celsius(f64::NAN),
            ..mild
        };
        for step in [StepKind::Trim, StepKind::Salt, StepKind::Rub, StepKind::On] {
            assert!(cautions_for(step, &mild).contains(&RuleId::TwoHours));
            assert!(cautions_for(step, &hot).contains(&RuleId::OneHourInHeat));
            assert!(cautions_for(step, &unknown).contains(&RuleId::OneHourInHeat));
        }
    }

    #[test]
    fn the_rule_that_governs_follows_the_answer_to_intact() {
        let unknown = context(Some(Make::WholeMuscle));
        let intact = CautionContext {
            intact: Intact::Yes,
            ..unknown
        };
        assert!(cautions_for(StepKind::On, &intact).contains(&RuleId::SurfaceHotInTime));
        assert!(!cautions_for(StepKind::On, &intact).contains(&RuleId::AskIntact));
        let on = cautions_for(StepKind::On, &unknown);
        assert!(on.contains(&RuleId::CoreHotInTime) && on.contains(&RuleId::AskIntact));
    }

    #[test]
    fn each_audience_sees_its_own_rules() {
        let home = context(Some(Make::Poultry));
        let public = CautionContext {
            audience: Audience::Public,
            ..home
        };
        assert!(cautions_for(StepKind::Hold, &home).contains(&RuleId::HoldHot));
        assert!(cautions_for(StepKind::Hold, &public).contains(&RuleId::HoldHotPublic));
        assert!(cautions_for(StepKind::Serve, &public).contains(&RuleId::LocalCode));
        for step in [StepKind::Buy, StepKind::Light, StepKind::Serve] {
            assert!(cautions_for(step, &public).contains(&RuleId::LocalCode));
            assert!(!cautions_for(step, &home).contains(&RuleId::LocalCode));
        }
    }

    #[test]
    fn a_lower_target_names_its_table_and_who_must_not_eat_it() {
        let roast = CautionContext {
            below_minimum: true,
            intact: Intact::Yes,
            ..context(Some(Make::WholeMuscle))
        };
        let probe = cautions_for(StepKind::Probe, &roast);
        assert!(probe.contains(&RuleId::RoastByTable) && probe.contains(&RuleId::WhoMustNotEat));
        let bird = CautionContext {
            make: Some(Make::Poultry),
            ..roast
        };
        let probe = cautions_for(StepKind::Probe, &bird);
        assert!(probe.contains(&RuleId::PoultryByTable) && !probe.contains(&RuleId::RoastByTable));
    }
}
