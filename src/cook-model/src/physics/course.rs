//! What happens to one member and when: the scenario's events in order, as the march meets them.

use super::cooker::Climate;
use super::environment::WrapCourse;
use super::pit::Air;
use super::{Cover, Draw, Finish, Place, Scenario, When, constants};
use crate::doneness::tenderness::PROBE_MARGIN_KELVIN;
use crate::meat::Cut;

/// Steps end on events within this, s.
const SAME_MOMENT: f64 = 1e-6;

/// Where a member is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Where {
    /// On the cooker.
    Cooking,
    /// In the n-th stage after it.
    After(usize),
    /// At the end of everything.
    Over,
}

/// Something that changes what the meat sees.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Change {
    /// Pit to the n-th setting.
    Pit(usize),
    /// The n-th cover on.
    Wrap(usize),
    /// Water sprayed on, kg/m² of surface.
    Spray(f64),
    /// Lid opened.
    Lid,
    /// Off, or to the next stage.
    Move,
}

/// What the events watch.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Watched {
    /// Where the probe is, °C.
    pub(crate) probe: f64,
    /// Coldest point, °C.
    pub(crate) core: f64,
    /// Tenderness integral over the demand.
    pub(crate) tenderness: f64,
}

/// One member's way through the scenario.
#[derive(Clone, Debug)]
pub(crate) struct Course {
    pub(crate) whereabouts: Where,
    pub(crate) air: Air,
    pub(crate) wrap: WrapCourse,
    pub(crate) cover: Cover,
    /// Demand with the draw's factor; none for a cut cooked to temperature.
    pub(crate) demand: Option<f64>,
    next_pit: usize,
    next_wrap: usize,
    next_spray: f64,
    next_lid: usize,
    stage_end: f64,
    limit: f64,
}

impl Course {
    /// At the moment it goes on.
    pub(crate) fn new(scenario: &Scenario, draw: &Draw, cut: &Cut, limit: f64) -> Self {
        let climate = scenario.cooker.climate();
        let tender = matches!(scenario.finish, Finish::Tender { .. });
        Self {
            whereabouts: Where::Cooking,
            air: Air::cooker(scenario, &climate, draw),
            wrap: WrapCourse::new(Cover::Bare, 0.0, draw.paper),
            cover: Cover::Bare,
            demand: cut
                .demand
                .filter(|_| tender)
                .map(|demand| demand * draw.tenderness),
            next_pit: 1,
            next_wrap: 0,
            next_spray: scenario
                .spray
                .map_or(f64::INFINITY, |spray| spray.first.seconds()),
            next_lid: 0,
            stage_end: f64::INFINITY,
            limit,
        }
    }

    /// The next moment that is known beforehand.
    pub(crate) fn next_time(&self, scenario: &Scenario) -> f64 {
        if self.whereabouts != Where::Cooking {
            return self.stage_end;
        }
        let at = |when: When| match when {
            When::AfterOn(span) => span.seconds(),
            When::Probe(_) => f64::INFINITY,
        };
        let pit = scenario
            .pit
            .get(self.next_pit)
            .map_or(f64::INFINITY, |c| at(c.when));
        let wrap = scenario
            .wraps
            .get(self.next_wrap)
            .map_or(f64::INFINITY, |c| at(c.when));
        let lid = scenario
            .lid_openings
            .get(self.next_lid)
            .map_or(f64::INFINITY, |l| l.seconds());
        let off = match scenario.finish {
            Finish::AfterOn(span) => span.seconds(),
            Finish::Tender { .. } | Finish::Temperature { .. } => f64::INFINITY,
        };
        let spray = if self.cover == Cover::Bare {
            self.next_spray
        } else {
            f64::INFINITY
        };
        pit.min(wrap).min(lid).min(off).min(spray).min(self.limit)
    }

    /// Where between two moments an event falls that depends on the meat: 0 to 1, the earliest. Events that already
    /// hold at the beginning fall at 0.
    pub(crate) fn falls_at(
        &self,
        scenario: &Scenario,
        from: &Watched,
        to: &Watched,
        probe_at: impl Fn(f64) -> f64,
    ) -> Option<f64> {
        let rises = |goal: f64| -> Option<f64> {
            if from.probe >= goal {
                Some(0.0)
            } else if to.probe >= goal {
                Some(crossing(|s| probe_at(s) - goal))
            } else {
                None
            }
        };
        let linear = |a: f64, b: f64, goal: f64| -> Option<f64> {
            if a >= goal {
                Some(0.0)
            } else if b >= goal {
                Some((goal - a) / (b - a))
            } else {
                None
            }
        };
        let probe_event = |when: When| match when {
            When::Probe(goal) => rises(goal.celsius()),
            When::AfterOn(_) => None,
        };
        match self.whereabouts {
            Where::Cooking => {
                let pit = scenario
                    .pit
                    .get(self.next_pit)
                    .and_then(|c| probe_event(c.when));
                let wrap = scenario
                    .wraps
                    .get(self.next_wrap)
                    .and_then(|c| probe_event(c.when));
                let off = match scenario.finish {
                    Finish::AfterOn(_) => None,
                    Finish::Temperature { target, minimum } => both(
                        rises(target.celsius()),
                        linear(from.core, to.core, minimum.celsius()),
                    ),
                    Finish::Tender { target, minimum } => {
                        let margin = self.demand.map_or(0.0, |_| PROBE_MARGIN_KELVIN);
                        let tender = self
                            .demand
                            .map_or(Some(0.0), |_| linear(from.tenderness, to.tenderness, 1.0));
                        both(
                            both(
                                rises(target.celsius() - margin),
                                linear(from.core, to.core, minimum.celsius()),
                            ),
                            tender,
                        )
                    }
                };
                earliest(earliest(pit, wrap), off)
            }
            Where::After(stage) => {
                let goal = scenario.after[stage].until_core?.celsius();
                if from.core <= goal {
                    Some(0.0)
                } else if to.core <= goal {
                    Some((from.core - goal) / (from.core - to.core))
                } else {
                    None
                }
            }
            Where::Over => None,
        }
    }

    /// The next change that is due, if any. `watched` is the meat now; the step may have been made to end on an event,
    /// so a hair's breadth below a goal counts as reached.
    pub(crate) fn due(&self, scenario: &Scenario, time: f64, watched: &Watched) -> Option<Change> {
        /// How near a goal counts as reached, K and in tenderness: what a step made to end there may miss it by.
        const NEAR: f64 = 0.02;
        const NEAR_TENDER: f64 = 1e-4;
        let now = |when: When| match when {
            When::AfterOn(span) => span.seconds() <= time + SAME_MOMENT,
            When::Probe(goal) => watched.probe + NEAR >= goal.celsius(),
        };
        match self.whereabouts {
            Where::Cooking => {
                if scenario.pit.get(self.next_pit).is_some_and(|c| now(c.when)) {
                    return Some(Change::Pit(self.next_pit));
                }
                if scenario
                    .wraps
                    .get(self.next_wrap)
                    .is_some_and(|c| now(c.when))
                {
                    return Some(Change::Wrap(self.next_wrap));
                }
                let off = match scenario.finish {
                    Finish::AfterOn(span) => now(When::AfterOn(span)),
                    Finish::Temperature { target, minimum } => {
                        now(When::Probe(target)) && watched.core + NEAR >= minimum.celsius()
                    }
                    Finish::Tender { target, minimum } => {
                        let margin = self.demand.map_or(0.0, |_| PROBE_MARGIN_KELVIN);
                        watched.probe + NEAR >= target.celsius() - margin
                            && watched.core + NEAR >= minimum.celsius()
                            && (self.demand.is_none() || watched.tenderness + NEAR_TENDER >= 1.0)
                    }
                };
                if off || time + SAME_MOMENT >= self.limit {
                    return Some(Change::Move);
                }
                if scenario
                    .lid_openings
                    .get(self.next_lid)
                    .is_some_and(|l| now(When::AfterOn(*l)))
                {
                    return Some(Change::Lid);
                }
                match scenario.spray {
                    Some(spray)
                        if self.cover == Cover::Bare && self.next_spray <= time + SAME_MOMENT =>
                    {
                        Some(Change::Spray(spray.kilograms_per_square_metre))
                    }
                    _ => None,
                }
            }
            Where::After(stage) => {
                let cooled = scenario.after[stage]
                    .until_core
                    .is_some_and(|goal| watched.core - NEAR <= goal.celsius());
                (cooled || time + SAME_MOMENT >= self.stage_end).then_some(Change::Move)
            }
            Where::Over => None,
        }
    }

    /// True when the limit came before it was ready.
    pub(crate) fn out_of_time(&self, time: f64) -> bool {
        time + SAME_MOMENT >= self.limit
    }

    /// Makes a change and says what climate the meat is in, if that is another one.
    pub(crate) fn make(
        &mut self,
        change: Change,
        scenario: &Scenario,
        draw: &Draw,
        time: f64,
        ready: bool,
    ) -> Option<Climate> {
        match change {
            Change::Pit(n) => {
                self.air.set(scenario.pit[n].set.celsius(), draw);
                self.next_pit = n + 1;
                None
            }
            Change::Wrap(n) => {
                self.put_on(scenario.wraps[n].cover, time, draw);
                self.next_wrap = n + 1;
                None
            }
            Change::Spray(_) => {
                let every = scenario
                    .spray
                    .map_or(f64::INFINITY, |spray| spray.every.seconds());
                self.next_spray += every;
                None
            }
            Change::Lid => {
                let (share, back) = scenario.cooker.lid();
                self.air.open(time, share, back * 60.0);
                self.next_lid += 1;
                None
            }
            Change::Move => {
                let next = match self.whereabouts {
                    Where::Cooking if ready => 0,
                    Where::After(stage) => stage + 1,
                    Where::Cooking | Where::Over => usize::MAX,
                };
                let Some(stage) = scenario.after.get(next) else {
                    self.whereabouts = Where::Over;
                    return None;
                };
                self.whereabouts = Where::After(next);
                self.stage_end = time + stage.lasts.seconds();
                if let Some(cover) = stage.cover {
                    self.put_on(cover, time, draw);
                }
                let room = scenario.surroundings.resting.celsius();
                let (celsius, climate) = match stage.place {
                    Place::Counter => (room, Climate::COUNTER),
                    Place::WarmOven(air) => (air.celsius(), Climate::WARM_OVEN),
                    Place::RestBox => (room + constants::BOX_START, Climate::REST_BOX),
                };
                self.air = Air::steady(celsius, room);
                Some(climate)
            }
        }
    }

    fn put_on(&mut self, cover: Cover, time: f64, draw: &Draw) {
        if cover != self.cover {
            self.wrap = WrapCourse::new(cover, time, draw.paper);
            self.cover = cover;
        }
    }
}

/// The later of two that both have to come.
fn both(a: Option<f64>, b: Option<f64>) -> Option<f64> {
    Some(a?.max(b?))
}

/// The earlier of two.
fn earliest(a: Option<f64>, b: Option<f64>) -> Option<f64> {
    match (a, b) {
        (Some(a), Some(b)) => Some(a.min(b)),
        (a, b) => a.or(b),
    }
}

/// Where a function that is negative at 0 and not at 1 passes through zero.
pub(crate) fn crossing(f: impl Fn(f64) -> f64) -> f64 {
    let (mut low, mut high) = (0.0, 1.0);
    for _ in 0..40 {
        let middle = 0.5 * (low + high);
        if f(middle) < 0.0 {
            low = middle;
        } else {
            high = middle;
        }
    }
    high
}
