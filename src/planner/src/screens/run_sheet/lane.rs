//! The lanes: cookers with what lies on them and how their fire is fed, and hands with the hours in which they rest.

use super::quiet::quiet_stretches;
use super::scope::Scope;
use super::stay::{Place, Stay};
use cook_model::handover::identity::CrewId;
use cook_model::plan::outlook::{FindingKind, Outlook, Step};
use cook_model::plan::{CrewMember, Plan, QuietHours, Zone, in_order};
use cook_model::units::Moment;

/// A cooker's lane.
#[derive(Clone, Debug, PartialEq)]
pub struct CookerLane {
    /// Which.
    pub place: Place,
    /// What the person calls it; empty for the kitchen.
    pub name: String,
    /// How many bars lie side by side, at least one.
    pub columns: usize,
    /// When the fire is likely fed.
    pub feeds: Vec<Moment>,
    /// Where the fire wants hands and nobody is up.
    pub unattended: Vec<Unattended>,
}

/// A stretch in which a fire wants feeding and nobody is up.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Unattended {
    /// From.
    pub from: Moment,
    /// To.
    pub to: Moment,
    /// How often in that time.
    pub rounds: u32,
    /// Place among the findings.
    pub finding: usize,
}

/// Whose hands a lane is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Hands {
    /// Somebody of the crew.
    Member(CrewId),
    /// Nobody is up: such steps hang in the lane that is open.
    Nobody,
    /// The plan names no crew: all steps.
    Anybody,
}

impl Hands {
    /// Whose lane a step belongs to.
    #[must_use]
    pub fn of(step: &Step, plan: &Plan) -> Self {
        match step.who {
            Some(who) if plan.crew.contains_key(&who) => Self::Member(who),
            _ if plan.crew.is_empty() => Self::Anybody,
            _ => Self::Nobody,
        }
    }
}

/// A lane of hands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct HandsLane {
    /// Whose.
    pub hands: Hands,
    /// What they are called; empty where nobody is meant.
    pub name: String,
    /// When they are not woken, by their own clock.
    pub hours: Option<QuietHours>,
    /// When they are not woken, along the axis.
    pub quiet: Vec<(Moment, Moment)>,
}

/// The lanes of the cookers in the person's order, those on which nothing happens left out; the kitchen last.
#[must_use]
pub fn cooker_lanes(
    plan: &Plan,
    outlook: &Outlook,
    scope: &Scope,
    stays: &[Stay],
) -> Vec<CookerLane> {
    let named = in_order(&plan.cookers, |cooker| &cooker.order);
    let cookers = named
        .into_iter()
        .map(|(id, cooker)| (Place::Cooker(id), cooker.name.clone()));
    cookers
        .chain([(Place::Kitchen, String::new())])
        .map(|(place, name)| CookerLane {
            place,
            name,
            columns: bars_side_by_side(stays, place),
            feeds: feeds(outlook, scope, place),
            unattended: unattended(outlook, scope, place),
        })
        .filter(|lane| lane.columns > 0 || !lane.feeds.is_empty() || !lane.unattended.is_empty())
        .map(|lane| CookerLane {
            columns: lane.columns.max(1),
            ..lane
        })
        .collect()
}

fn bars_side_by_side(stays: &[Stay], place: Place) -> usize {
    let here = stays.iter().filter(|stay| stay.place == place);
    here.map(|stay| stay.column + 1).max().unwrap_or(0)
}

fn feeds(outlook: &Outlook, scope: &Scope, place: Place) -> Vec<Moment> {
    let steps = scope.feeds.iter().map(|index| &outlook.steps[*index]);
    steps
        .filter(|step| step.cooker.map(Place::Cooker) == Some(place))
        .map(|step| step.when.likely())
        .filter(|likely| scope.axis.holds(*likely))
        .collect()
}

fn unattended(outlook: &Outlook, scope: &Scope, place: Place) -> Vec<Unattended> {
    let axis = scope.axis;
    let mut stretches: Vec<Unattended> = outlook
        .findings
        .iter()
        .enumerate()
        .filter(|(_, finding)| finding.cooker.map(Place::Cooker) == Some(place))
        .filter_map(|(index, finding)| match finding.what {
            FindingKind::NobodyForFire { from, to, rounds } => Some(Unattended {
                from,
                to,
                rounds,
                finding: index,
            }),
            _ => None,
        })
        .filter(|stretch| stretch.from < axis.end && axis.start < stretch.to)
        .collect();
    stretches.sort_by_key(|stretch| stretch.from);
    stretches
}

/// The lanes of the crew in the person's order; one for everybody where no crew is named.
#[must_use]
pub fn hands_lanes(plan: &Plan, scope: &Scope, zone: &Zone) -> Vec<HandsLane> {
    if plan.crew.is_empty() {
        return vec![HandsLane {
            hands: Hands::Anybody,
            name: String::new(),
            hours: None,
            quiet: Vec::new(),
        }];
    }
    let crew = in_order(&plan.crew, |member| &member.order);
    let lane = |(id, member): (CrewId, &CrewMember)| HandsLane {
        hands: Hands::Member(id),
        name: member.name.clone(),
        hours: member.quiet,
        quiet: member
            .quiet
            .map(|quiet| quiet_stretches(quiet, scope.axis, zone))
            .unwrap_or_default(),
    };
    crew.into_iter().map(lane).collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::{Sample, at};
    use super::super::stay::stays;
    use super::*;
    use cook_model::plan::outlook::{Finding, Gravity, StepKind};

    const NOW: &str = "2026-09-05T12:00:00";

    fn lanes(sample: &Sample) -> (Vec<CookerLane>, Vec<HandsLane>) {
        let scope = sample.scope(NOW);
        let bars = stays(&sample.plan, &sample.outlook, scope.axis);
        (
            cooker_lanes(&sample.plan, &sample.outlook, &scope, &bars),
            hands_lanes(&sample.plan, &scope, &sample.zone),
        )
    }

    #[test]
    fn cookers_without_anything_on_have_no_lane() {
        let mut sample = Sample::new("2026-09-12T18:00:00");
        let offset = sample.cooker("Offset");
        sample.cooker("Kettle");
        sample.dish("Pork", Some(offset), "2026-09-12T05:00:00");
        sample.dish("Lamb", Some(offset), "2026-09-12T06:00:00");
        let feed = sample.step(StepKind::Feed, "2026-09-12T07:00:00", 5.0);
        feed.cooker = Some(offset);
        let (cookers, _) = lanes(&sample);
        assert_eq!(cookers.len(), 1);
        assert_eq!(cookers[0].name, "Offset");
        assert_eq!(cookers[0].columns, 2);
        assert_eq!(cookers[0].feeds, [at("2026-09-12T07:00:00")]);
    }

    #[test]
    fn a_fire_with_nobody_up_stands_in_its_cookers_lane() {
        let mut sample = Sample::new("2026-09-12T18:00:00");
        let offset = sample.cooker("Offset");
        sample.dish("Pork", Some(offset), "2026-09-12T00:30:00");
        sample.outlook.findings.push(Finding {
            gravity: Gravity::Heed,
            dish: None,
            cooker: Some(offset),
            what: FindingKind::NobodyForFire {
                from: at("2026-09-12T01:00:00"),
                to: at("2026-09-12T03:00:00"),
                rounds: 3,
            },
        });
        let (cookers, _) = lanes(&sample);
        assert_eq!(cookers[0].unattended.len(), 1);
        assert_eq!(cookers[0].unattended[0].rounds, 3);
    }

    #[test]
    fn each_of_the_crew_has_a_lane_and_a_step_belongs_to_who_does_it() {
        let mut sample = Sample::new("2026-09-12T18:00:00");
        let first = sample.crew("Joss");
        sample.crew("Mirela");
        sample.step(StepKind::On, "2026-09-12T05:00:00", 5.0).who = Some(first);
        sample.step(StepKind::Wrap, "2026-09-12T08:00:00", 5.0);
        let (_, hands) = lanes(&sample);
        let names: Vec<_> = hands.iter().map(|lane| lane.name.as_str()).collect();
        assert_eq!(names, ["Joss", "Mirela"]);
        let whose = |index: usize| Hands::of(&sample.outlook.steps[index], &sample.plan);
        assert_eq!(whose(0), Hands::Member(first));
        assert_eq!(whose(1), Hands::Nobody);
    }

    #[test]
    fn without_a_crew_there_is_one_lane() {
        let mut sample = Sample::new("2026-09-12T18:00:00");
        sample.step(StepKind::On, "2026-09-12T05:00:00", 5.0);
        let (_, hands) = lanes(&sample);
        assert_eq!(hands.len(), 1);
        assert_eq!(hands[0].hands, Hands::Anybody);
    }
}
