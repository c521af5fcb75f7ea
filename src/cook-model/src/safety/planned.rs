//! A planned cook judged by the rules, over the members of its ensemble.

use super::watch::Standard;
use super::{
    CORE_LIMIT, Governs, RuleId, SURFACE_LIMIT, Severity, Sort, governing, minimum,
    out_of_fridge_limit,
};
use crate::physics::MemberRun;
use crate::units::{Temperature, TimeSpan};
use serde::{Deserialize, Serialize};

/// What of a plan matters here, beside its members.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlannedFood {
    /// What it is and what was done to it.
    pub sort: Sort,
    /// By which standard it is to count as cooked.
    pub standard: Standard,
    /// Hands on it out of the fridge before it goes on: trimming, salting, rubbing.
    pub hands_on: TimeSpan,
    /// Time out of the fridge right before it goes on, of these.
    pub out_before_on: TimeSpan,
    /// Air where that is done.
    pub air: Temperature,
    /// Lowest air of its pit programme.
    pub coolest_pit: Temperature,
    /// Core at which it is to come off.
    pub target: Temperature,
    /// It goes on frozen, or not thawed through.
    pub goes_on_frozen: bool,
}

/// Something that a careful friend would say of the plan, with its figures.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Concern {
    /// By which rule.
    pub rule: RuleId,
    /// How grave it is here; never graver than the rule's own.
    pub severity: Severity,
    /// In so many members.
    pub members: u32,
    /// Of so many.
    pub of: u32,
    /// What was measured against what.
    pub measure: Measure,
}

/// A figure against its limit.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(tag = "of", rename_all = "snake_case")]
pub enum Measure {
    /// A time; the middle one of the members.
    Time {
        /// As planned. None: more than half of the members never get there.
        is: Option<TimeSpan>,
        /// At most.
        at_most: TimeSpan,
    },
    /// A temperature.
    Temperature {
        /// As planned.
        is: Temperature,
        /// At least.
        at_least: Temperature,
    },
    /// Yes or no.
    Fact,
}

/// One member in ten may miss a limit before it is a concern.
const TOLERATED: f64 = 0.1;

/// What the rules say of a plan, the gravest first. Without members only what needs none is judged.
#[must_use]
pub fn judge_planned(food: &PlannedFood, members: &[MemberRun]) -> Vec<Concern> {
    let mut concerns = Vec::new();
    before_it_goes_on(food, &mut concerns);
    target(food, &mut concerns);
    if !members.is_empty() {
        heats_up(food, members, &mut concerns);
        by_the_table(food, members, &mut concerns);
    }
    concerns.sort_by_key(|concern| core::cmp::Reverse(concern.severity));
    concerns
}

const fn certain(rule: RuleId, severity: Severity, measure: Measure) -> Concern {
    Concern {
        rule,
        severity,
        members: 1,
        of: 1,
        measure,
    }
}

fn before_it_goes_on(food: &PlannedFood, concerns: &mut Vec<Concern>) {
    let limit = out_of_fridge_limit(food.air);
    // A span that is not a number is too long.
    let in_time = food.hands_on <= limit;
    if !in_time {
        let hot = limit < TimeSpan::from_hours(2.0);
        let rule = if hot {
            RuleId::OneHourInHeat
        } else {
            RuleId::TwoHours
        };
        let measure = Measure::Time {
            is: Some(food.hands_on),
            at_most: limit,
        };
        concerns.push(certain(rule, Severity::Discard, measure));
    }
    if food.goes_on_frozen {
        concerns.push(certain(
            RuleId::ThawThrough,
            Severity::ActNow,
            Measure::Fact,
        ));
    }
    let least = Temperature::from_celsius(107.0);
    if food.coolest_pit < least {
        let measure = Measure::Temperature {
            is: food.coolest_pit,
            at_least: least,
        };
        concerns.push(certain(RuleId::SmokerAir, Severity::Caution, measure));
    }
}

fn target(food: &PlannedFood, concerns: &mut Vec<Concern>) {
    let least = minimum(food.sort);
    let high_enough = food.target >= least.temperature;
    if high_enough {
        return;
    }
    let measure = Measure::Temperature {
        is: food.target,
        at_least: least.temperature,
    };
    match food.standard.table(food.sort) {
        Some(_) => {
            concerns.push(certain(RuleId::WhoMustNotEat, Severity::Caution, measure));
        }
        None => concerns.push(certain(least.rule, Severity::ActNow, measure)),
    }
}

/// The surface or the core, from leaving the cold.
fn heats_up(food: &PlannedFood, members: &[MemberRun], concerns: &mut Vec<Concern>) {
    let core = |member: &MemberRun| {
        let from = member.core_past_4.unwrap_or(TimeSpan::ZERO);
        Some(member.core_past_60? - from)
    };
    match governing(food.sort) {
        Governs::Surface => {
            let surface = |member: &MemberRun| Some(member.surface_hot? + food.out_before_on);
            let rule = RuleId::SurfaceHotInTime;
            push_if_late(
                members,
                surface,
                SURFACE_LIMIT,
                rule,
                Severity::Discard,
                concerns,
            );
            let rule = RuleId::SlowCoreIntact;
            push_if_late(members, core, CORE_LIMIT, rule, Severity::Caution, concerns);
        }
        Governs::Core => {
            let rule = RuleId::CoreHotInTime;
            push_if_late(members, core, CORE_LIMIT, rule, Severity::Discard, concerns);
        }
    }
}

fn push_if_late(
    members: &[MemberRun],
    time: impl Fn(&MemberRun) -> Option<TimeSpan>,
    limit: TimeSpan,
    rule: RuleId,
    severity: Severity,
    concerns: &mut Vec<Concern>,
) {
    let late = members
        .iter()
        .filter(|member| time(member).is_none_or(|time| time > limit))
        .count();
    if exceeds(late, members.len()) {
        let is = crate::forecast::time_quantile(members.iter().map(time), 0.5);
        let measure = Measure::Time { is, at_most: limit };
        concerns.push(Concern {
            rule,
            severity,
            members: count(late),
            of: count(members.len()),
            measure,
        });
    }
}

/// A lower target that was chosen knowingly: the printed time is met by when it comes off.
fn by_the_table(food: &PlannedFood, members: &[MemberRun], concerns: &mut Vec<Concern>) {
    let below = food.target < minimum(food.sort).temperature;
    let Some(_) = food.standard.table(food.sort).filter(|_| below) else {
        return;
    };
    let unmet = members
        .iter()
        .filter(|member| match (member.lethality_met, member.ready) {
            (Some(met), Some(ready)) => met > ready,
            _ => true,
        });
    let unmet = unmet.count();
    if exceeds(unmet, members.len()) {
        let rule = if food.sort == Sort::Poultry {
            RuleId::PoultryByTable
        } else {
            RuleId::RoastByTable
        };
        let (members, of) = (count(unmet), count(members.len()));
        concerns.push(Concern {
            rule,
            severity: Severity::ActNow,
            members,
            of,
            measure: Measure::Fact,
        });
    }
}

fn exceeds(broken: usize, of: usize) -> bool {
    f64::from(count(broken)) > TOLERATED * f64::from(count(of))
}

fn count(members: usize) -> u32 {
    u32::try_from(members).unwrap_or(u32::MAX)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::physics::Totals;
    use crate::units::Mass;

    fn member(surface_h: f64, core_h: f64, met_h: Option<f64>) -> MemberRun {
        MemberRun {
            ready: Some(TimeSpan::from_hours(10.0)),
            target_reached: Some(TimeSpan::from_hours(10.0)),
            covered: Vec::new(),
            pit_changed: Vec::new(),
            stall: None,
            bark: 0.0,
            bark_firm: None,
            bark_set: None,
            lethality_met: met_h.map(TimeSpan::from_hours),
            surface_hot: Some(TimeSpan::from_hours(surface_h)),
            core_past_4: Some(TimeSpan::ZERO),
            core_past_60: Some(TimeSpan::from_hours(core_h)),
            tenderness_at_ready: None,
            probe_at_ready: None,
            core_peak_after: None,
            core_below_73_9: None,
            core_below_60: None,
            stage_ends: Vec::new(),
            samples: Vec::new(),
            at_ready: Totals::default(),
            at_end: Totals::default(),
            meat: Mass::from_kilograms(3.0),
            steps: 1,
        }
    }

    fn butt() -> PlannedFood {
        PlannedFood {
            sort: Sort::IntactMuscle,
            standard: Standard::Minimum,
            hands_on: TimeSpan::from_minutes(40.0),
            out_before_on: TimeSpan::from_minutes(20.0),
            air: Temperature::from_celsius(20.0),
            coolest_pit: Temperature::from_celsius(121.0),
            target: Temperature::from_celsius(95.0),
            goes_on_frozen: false,
        }
    }

    fn rules(food: &PlannedFood, members: &[MemberRun]) -> Vec<RuleId> {
        judge_planned(food, members)
            .into_iter()
            .map(|concern| concern.rule)
            .collect()
    }

    #[test]
    fn a_slow_core_is_a_caution_for_intact_and_a_stop_for_pierced_meat() {
        let slow = vec![member(1.5, 5.0, Some(6.0)); 10];
        assert_eq!(rules(&butt(), &slow), [RuleId::SlowCoreIntact]);
        let pierced = PlannedFood {
            sort: Sort::PiercedMuscle,
            ..butt()
        };
        let concerns = judge_planned(&pierced, &slow);
        assert_eq!(concerns[0].rule, RuleId::CoreHotInTime);
        assert_eq!(concerns[0].severity, Severity::Discard);
        let quick = vec![member(1.5, 4.0, Some(6.0)); 10];
        assert_eq!(rules(&butt(), &quick), []);
        assert_eq!(rules(&pierced, &quick), []);
    }

    #[test]
    fn one_member_in_ten_may_miss_and_no_more() {
        let mut members = vec![member(1.5, 3.0, None); 9];
        members.push(member(1.5, 6.0, None));
        let pierced = PlannedFood {
            sort: Sort::PiercedMuscle,
            ..butt()
        };
        assert_eq!(rules(&pierced, &members), []);
        members.push(member(1.5, 6.0, None));
        let concerns = judge_planned(&pierced, &members);
        assert_eq!((concerns[0].members, concerns[0].of), (2, 11));
    }

    #[test]
    fn a_surface_counts_from_leaving_the_cold() {
        assert_eq!(rules(&butt(), &vec![member(3.6, 3.9, None); 4]), []);
        assert_eq!(
            rules(&butt(), &vec![member(3.7, 3.9, None); 4]),
            [RuleId::SurfaceHotInTime]
        );
    }

    #[test]
    fn a_lower_target_needs_a_table_and_its_time() {
        let pink = PlannedFood {
            target: Temperature::from_celsius(56.0),
            ..butt()
        };
        assert_eq!(rules(&pink, &[]), [RuleId::MinimumWholeMuscle]);
        let knowingly = PlannedFood {
            standard: Standard::Table,
            ..pink
        };
        let met = vec![member(1.0, 3.0, Some(9.5)); 5];
        assert_eq!(rules(&knowingly, &met), [RuleId::WhoMustNotEat]);
        let unmet = vec![member(1.0, 3.0, Some(10.5)); 5];
        assert_eq!(
            rules(&knowingly, &unmet),
            [RuleId::RoastByTable, RuleId::WhoMustNotEat]
        );
        // No table for what is pierced.
        let pierced = PlannedFood {
            sort: Sort::PiercedMuscle,
            ..knowingly
        };
        assert_eq!(rules(&pierced, &[]), [RuleId::MinimumPierced]);
    }

    #[test]
    fn the_two_hour_clock_and_a_cool_pit_and_ice_are_seen_without_members() {
        let food = PlannedFood {
            hands_on: TimeSpan::from_minutes(121.0),
            coolest_pit: Temperature::from_celsius(95.0),
            goes_on_frozen: true,
            ..butt()
        };
        assert_eq!(
            rules(&food, &[]),
            [RuleId::TwoHours, RuleId::ThawThrough, RuleId::SmokerAir]
        );
        let hot = PlannedFood {
            air: Temperature::from_celsius(33.0),
            hands_on: TimeSpan::from_minutes(61.0),
            ..butt()
        };
        assert_eq!(rules(&hot, &[]), [RuleId::OneHourInHeat]);
        let unknown = PlannedFood {
            hands_on: TimeSpan::from_seconds(f64::NAN),
            ..butt()
        };
        assert_eq!(rules(&unknown, &[]), [RuleId::TwoHours]);
    }
}
