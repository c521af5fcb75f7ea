//! The march: eight lanes, each with a member of its own, its own clock and its own steps. A lane that is through takes
//! the next member, so what comes out for a member does not depend on its neighbours.

use super::air::pressure_at;
use super::body::Body;
use super::course::{Change, Course, Watched, Where};
use super::environment::Environment;
use super::kernel::Kernel;
use super::properties::heat_contents;
use super::real::{LANES, Row};
use super::recorder::{Arc, Content, Recorder, Step};
use super::{Draw, MemberRun, ModelError, Scenario, Settings, cooker::Climate};

/// First step after a jump of the surroundings, s.
const FIRST_STEP: f64 = 10.0;

/// Longest step, s.
const LONGEST_STEP: f64 = 3600.0;

/// Shortest step that is made to end on an event of the meat, s.
const SHORTEST_LANDING: f64 = 0.5;

/// A step this short is taken although its error is too large: over it nothing that matters changes, s.
const FLOOR: f64 = 0.5;

/// Unless its error is larger than this many times what a step may make.
const MOST_AT_FLOOR: f64 = 50.0;

/// More proposals than this in one cook are a fault.
const MOST_PROPOSALS: u32 = 30_000;

/// Where the core and the probe are in the cells.
#[derive(Clone, Debug)]
struct Places {
    /// Cells of which the coldest is the core.
    core: std::ops::Range<usize>,
    /// Cells on both sides of the probe, and how far it is from the first to the second.
    probe: (usize, usize, f64),
}

impl Places {
    fn new(body: &Body, draw: &Draw) -> Self {
        let middles = body.middles();
        let length: f64 = body.thickness.iter().sum();
        let bone: f64 = body.thickness[..body.bone_cells].iter().sum();
        let middle = if body.bone_cells == 0 {
            0.0
        } else {
            0.5 * (bone + length)
        };
        let at = middle + draw.probe * (length - middle);
        let above = middles.partition_point(|m| *m < at);
        let probe = if above == 0 {
            (0, 0, 0.0)
        } else if above == middles.len() {
            (above - 1, above - 1, 0.0)
        } else {
            let (a, b) = (middles[above - 1], middles[above]);
            (above - 1, above, (at - a) / (b - a))
        };
        let core_end = middles
            .partition_point(|m| *m <= middle)
            .max(body.bone_cells + 1);
        Self {
            core: body.bone_cells..core_end,
            probe,
        }
    }

    fn probe(&self, rows: &[Row<f64>], l: usize) -> f64 {
        let (a, b, share) = self.probe;
        rows[a][l] + share * (rows[b][l] - rows[a][l])
    }

    /// The coldest cell and its temperature.
    fn core(&self, rows: &[Row<f64>], l: usize) -> (usize, f64) {
        self.core.clone().map(|i| (i, rows[i][l])).fold(
            (self.core.start, f64::INFINITY),
            |coldest, other| {
                if other.1 < coldest.1 { other } else { coldest }
            },
        )
    }
}

/// A member under way.
struct Lane<'a> {
    member: usize,
    scenario: &'a Scenario,
    draw: &'a Draw,
    body: Body,
    places: Places,
    course: Course,
    recorder: Recorder,
    time: f64,
    step: f64,
    rejected: bool,
    /// The step was made to end on an event of the meat.
    landing: bool,
    proposals: u32,
    start_content: Content,
    carried: f64,
}

/// The march of many members, each through its scenario.
struct March<'a> {
    settings: &'a Settings,
    kernel: Kernel<f64>,
    lanes: [Option<Lane<'a>>; LANES],
    finished: Vec<Option<MemberRun>>,
}

/// Follows a member for each draw. The runs come in the order of the draws; what comes out for one draw does not depend
/// on the others.
///
/// # Errors
/// [`ModelError`] names the first quantity that is out of range.
pub fn run(
    scenario: &Scenario,
    draws: &[Draw],
    settings: &Settings,
) -> Result<Vec<MemberRun>, ModelError> {
    let cooks: Vec<_> = draws.iter().map(|draw| (scenario, draw)).collect();
    run_each(&cooks, settings)
}

/// Follows a member for each scenario and draw: one cut, in possible worlds that differ in what happened too. What comes
/// out for one does not depend on the others.
///
/// # Errors
/// [`ModelError`] names the first quantity that is out of range.
///
/// # Panics
/// If the scenarios are not all of the same cut.
pub fn run_each(
    cooks: &[(&Scenario, &Draw)],
    settings: &Settings,
) -> Result<Vec<MemberRun>, ModelError> {
    settings.check()?;
    let mut checked: Option<&Scenario> = None;
    for (scenario, draw) in cooks {
        if !checked.is_some_and(|before| std::ptr::eq(before, *scenario)) {
            scenario.check()?;
        }
        checked = Some(scenario);
        draw.check()?;
    }
    let Some((scenario, draw)) = cooks.first() else {
        return Ok(Vec::new());
    };
    assert!(
        cooks.iter().all(|(other, _)| other.cut == scenario.cut),
        "all members are of one cut"
    );
    let body = Body::new(scenario, draw, settings.cells)?;
    let kernel = Kernel::new(settings.cells, body.bone_cells);
    let mut march = March {
        settings,
        kernel,
        lanes: [const { None }; LANES],
        finished: vec![None; cooks.len()],
    };
    let mut waiting = cooks.iter().enumerate();
    for l in 0..LANES {
        match waiting.next() {
            Some((member, cook)) => march.load(l, member, *cook)?,
            // Idle lanes still reckon; give them something sound.
            None => march.fill(l, &body, (scenario, draw)),
        }
    }
    loop {
        for l in 0..LANES {
            let over = |lane: &Lane<'_>| lane.course.whereabouts == Where::Over;
            // One may be over as it goes on: done already, and nothing to come.
            while march.lanes[l].as_ref().is_some_and(over) {
                march.unload(l);
                if let Some((member, cook)) = waiting.next() {
                    march.load(l, member, *cook)?;
                }
            }
        }
        if march.lanes.iter().all(Option::is_none) {
            break;
        }
        march.propose();
        march.settle()?;
    }
    Ok(march.finished.into_iter().flatten().collect())
}

impl<'a> March<'a> {
    /// Puts a piece into a lane, cold and bare on the cooker.
    fn fill(&mut self, l: usize, body: &Body, (scenario, draw): (&Scenario, &Draw)) {
        let mut climate = scenario.cooker.climate();
        climate.humidity *= draw.humidity;
        let pressure = pressure_at(scenario.surroundings.altitude);
        let kernel = &mut self.kernel;
        kernel.pieces.set(l, body, draw, scenario.pieces, pressure);
        kernel.environment.cover(l, super::Cover::Bare);
        kernel.environment.room[l] = scenario.surroundings.resting.celsius();
        kernel
            .environment
            .place(l, &climate, body.flow_length, draw.heat_transfer);
        kernel.environment.moment(l, 100.0, 100.0, 0.0);
        kernel.start(l, scenario.start.celsius(), climate.humidity);
    }

    /// Puts a member into a lane.
    fn load(
        &mut self,
        l: usize,
        member: usize,
        (scenario, draw): (&'a Scenario, &'a Draw),
    ) -> Result<(), ModelError> {
        let body = Body::new(scenario, draw, self.settings.cells)?;
        self.fill(l, &body, (scenario, draw));
        let limit = self.settings.limit.seconds();
        let course = Course::new(scenario, draw, scenario.cut.cut(), limit);
        let every = self.settings.sample_every.seconds();
        let mut lane = Lane {
            member,
            scenario,
            draw,
            places: Places::new(&body, draw),
            recorder: Recorder::new(scenario, &body, course.demand, every),
            body,
            course,
            time: 0.0,
            step: FIRST_STEP,
            rejected: false,
            landing: false,
            proposals: 0,
            start_content: Content::default(),
            carried: 0.0,
        };
        let watched = watch(&lane, &self.kernel.present.temperature, l);
        lane.recorder.begin(&watched, lane.course.air.air(0.0));
        if self.settings.audit {
            lane.start_content = content(&self.kernel, &lane, l);
        }
        self.lanes[l] = Some(lane);
        self.changes(l);
        Ok(())
    }

    /// Takes a member out of its lane.
    fn unload(&mut self, l: usize) {
        if let Some(lane) = self.lanes[l].take() {
            let totals = self.totals(&lane, l);
            self.finished[lane.member] = Some(lane.recorder.finish(totals, lane.proposals));
        }
    }

    /// One step of every lane.
    fn propose(&mut self) {
        let mut steps = [1.0; LANES];
        for (l, lane) in self.lanes.iter_mut().enumerate() {
            let Some(lane) = lane else { continue };
            let left = lane.course.next_time(lane.scenario) - lane.time;
            // Two equal steps rather than a long one and a splinter. A step made to end on an event stays as it is.
            lane.step = if lane.landing {
                lane.step.min(left)
            } else if left <= lane.step * 1.01 {
                left
            } else if left < 2.0 * lane.step {
                0.5 * left
            } else {
                lane.step
            };
            lane.proposals += 1;
            steps[l] = lane.step;
        }
        let lanes = &self.lanes;
        let surroundings = |environment: &mut Environment<f64>, fraction: f64| {
            for (l, lane) in lanes.iter().enumerate() {
                let Some(lane) = lane else { continue };
                let time = lane.time + fraction * lane.step;
                let air = lane.course.air.air(time);
                let walls = lane.course.air.walls(air);
                environment.moment(l, air, walls, lane.course.wrap.vapour_resistance(time));
            }
        };
        self.kernel
            .propose(&steps, self.settings.tolerance, surroundings);
    }

    /// Accepts, shortens or rejects each lane's proposal, and makes the changes that are due.
    fn settle(&mut self) -> Result<(), ModelError> {
        let mut accepted = [false; LANES];
        let mut steps: [Option<Step>; LANES] = [None; LANES];
        for l in 0..LANES {
            let Some(lane) = &mut self.lanes[l] else {
                continue;
            };
            let kernel = &self.kernel;
            let error = kernel.error[l];
            if lane.proposals > MOST_PROPOSALS || lane.step < 1e-5 {
                return Err(ModelError::TooManySteps {
                    steps: lane.proposals,
                    hours: lane.time / 3600.0,
                });
            }
            // Not a number counts as an error.
            let at_floor = lane.step <= FLOOR && error <= MOST_AT_FLOOR;
            if (error.is_nan() || error > 1.0) && !at_floor {
                let factor = if error.is_finite() {
                    0.9 / libm::cbrt(error)
                } else {
                    0.0
                };
                lane.step *= factor.clamp(0.15, 0.8);
                lane.rejected = true;
                continue;
            }
            let step = describe(lane, kernel, l);
            let from = watch(lane, &kernel.present.temperature, l);
            let mut to = watch(lane, &kernel.proposed.temperature, l);
            to.tenderness = lane.recorder.tenderness_with(step.tenderness);
            let falls = lane
                .course
                .falls_at(lane.scenario, &from, &to, |s| step.probe.at(s));
            if let Some(fraction) = falls {
                let shorter = (fraction * lane.step).max(SHORTEST_LANDING);
                if shorter < 0.999 * lane.step {
                    lane.step = shorter;
                    lane.landing = true;
                    continue;
                }
            }
            accepted[l] = true;
            steps[l] = Some(step);
        }
        if self.settings.audit {
            for l in 0..LANES {
                if let (Some(lane), true) = (&mut self.lanes[l], accepted[l]) {
                    lane.carried += carried(&self.kernel, l);
                }
            }
        }
        self.kernel.accept(&accepted);
        for (l, step) in steps.iter().enumerate() {
            let (Some(step), Some(lane)) = (step, &mut self.lanes[l]) else {
                continue;
            };
            let air = &lane.course.air;
            lane.recorder.step(step, |time| air.air(time));
            lane.time += step.length;
            let error = self.kernel.error[l].max(1e-6);
            let most = if lane.rejected { 1.0 } else { 4.0 };
            let factor = (0.9 / libm::cbrt(error)).clamp(0.2, most);
            lane.step = (lane.step * factor).min(LONGEST_STEP);
            lane.rejected = false;
            lane.landing = false;
            self.changes(l);
        }
        Ok(())
    }

    /// Makes every change that is due in a lane.
    fn changes(&mut self, l: usize) {
        let Some(mut lane) = self.lanes[l].take() else {
            return;
        };
        let scenario = lane.scenario;
        loop {
            let watched = watch(&lane, &self.kernel.present.temperature, l);
            let Some(change) = lane.course.due(scenario, lane.time, &watched) else {
                break;
            };
            let cooking = lane.course.whereabouts == Where::Cooking;
            let ready = !lane.course.out_of_time(lane.time);
            if change == Change::Move && cooking {
                let totals = self.totals(&lane, l);
                lane.recorder.off(lane.time, ready, &watched, totals);
            } else if change == Change::Move {
                lane.recorder.stage_ended(lane.time);
            }
            match change {
                Change::Pit(n) => lane.recorder.pit_changed(n, lane.time),
                Change::Wrap(n) => lane.recorder.covered(n, lane.time),
                Change::Spray(amount) => {
                    let water = amount * self.kernel.pieces.flux_ratio[l];
                    self.kernel.present.film[l] += water;
                    lane.recorder.sprayed += water;
                }
                Change::Lid | Change::Move => {}
            }
            let climate = lane
                .course
                .make(change, scenario, lane.draw, lane.time, ready);
            if let Some(climate) = climate {
                self.put_into(l, &lane, &climate);
            }
            self.kernel.environment.cover(l, lane.course.cover);
            lane.step = lane.step.min(FIRST_STEP);
            if lane.course.whereabouts == Where::Over {
                break;
            }
        }
        self.lanes[l] = Some(lane);
    }

    /// Another place.
    fn put_into(&mut self, l: usize, lane: &Lane<'_>, climate: &Climate) {
        let kernel = &mut self.kernel;
        kernel
            .environment
            .place(l, climate, lane.body.flow_length, lane.draw.heat_transfer);
        if climate.boxed {
            kernel.present.rest_box[l] = lane.course.air.air(lane.time);
        }
        kernel.guess_surface(l);
    }

    fn totals(&self, lane: &Lane<'_>, l: usize) -> super::Totals {
        let audit = self.settings.audit;
        let books = audit.then(|| (lane.start_content, content(&self.kernel, lane, l)));
        lane.recorder.totals_now(books)
    }
}

/// What the events of a lane watch.
fn watch(lane: &Lane<'_>, temperatures: &[Row<f64>], l: usize) -> Watched {
    Watched {
        probe: lane.places.probe(temperatures, l),
        core: lane.places.core(temperatures, l).1,
        tenderness: lane.recorder.tenderness(),
    }
}

/// What a lane's proposal would be as a step.
fn describe(lane: &Lane<'_>, kernel: &Kernel<f64>, l: usize) -> Step {
    let (present, proposed) = (&kernel.present.temperature, &kernel.proposed.temperature);
    let probe = Arc::new(
        lane.places.probe(present, l),
        lane.step * lane.places.probe(&kernel.warming, l),
        lane.places.probe(proposed, l),
    );
    let (coldest, core) = lane.places.core(present, l);
    let along = lane.step * kernel.warming[coldest][l];
    Step {
        time: lane.time,
        length: lane.step,
        probe,
        core: Arc::new(core, along, lane.places.core(proposed, l).1),
        surface: [
            kernel.surface_before[l],
            kernel.rates.surface.temperature[l],
        ],
        wet: [kernel.wet_before[l], kernel.rates.surface.wet[l]],
        tenderness: kernel.added_tenderness[l],
        totals: kernel.added.map(|row| row[l]),
        fat: kernel.added_fat[l],
        whereabouts: lane.course.whereabouts,
    }
}

/// Water and heat of a column now.
fn content(kernel: &Kernel<f64>, lane: &Lane<'_>, l: usize) -> Content {
    let (p, y) = (&kernel.pieces, &kernel.present);
    let mut water = y.film[l];
    let mut heat = 0.0;
    for i in 0..y.cells() {
        let (t, w, volume) = (y.temperature[i][l], y.water[i][l], p.volume[i][l]);
        if i < p.bone_cells {
            heat += volume * kernel.rates.cells.capacity[i][l] * t;
            continue;
        }
        let [hw, hp, hf] = heat_contents(t);
        water += p.lean[l] * volume * w;
        heat += volume
            * (p.lean[l] * w * hw
                + p.protein[l] * hp
                + kernel.fat[i][l] * p.raw[l] * hf
                + p.ash_capacity[l] * t);
    }
    Content {
        water,
        heat,
        carried: lane.carried,
    }
}

/// Heat that liquid and fat take along in the proposal, J/m²: what they hold at the mean of both ends.
fn carried(kernel: &Kernel<f64>, l: usize) -> f64 {
    let p = &kernel.pieces;
    let mut sum = 0.0;
    for i in p.bone_cells..kernel.present.cells() {
        let [hw0, _, hf0] = heat_contents(kernel.present.temperature[i][l]);
        let [hw1, _, hf1] = heat_contents(kernel.proposed.temperature[i][l]);
        let water = kernel.present.water[i][l] - kernel.proposed.water[i][l];
        let fat = kernel.fat[i][l] - kernel.proposed_fat(i, l);
        let volume = p.volume[i][l];
        sum += 0.5 * volume * (p.lean[l] * water * (hw0 + hw1) + p.raw[l] * fat * (hf0 + hf1));
    }
    sum
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::meat::CutId;
    use crate::physics::CookerClass;
    use crate::units::{Temperature, TemperatureDifference};

    /// Draws that differ in everything that changes the course.
    fn draws(count: u32) -> Vec<Draw> {
        (0..count)
            .map(|i| {
                let x = (f64::from(i) * 0.618_034).fract() - 0.5;
                let y = (f64::from(i) * 0.754_878).fract() - 0.5;
                Draw {
                    thickness: 1.0 + 0.3 * x,
                    heat_transfer: 1.0 + 0.4 * y,
                    gauge: TemperatureDifference::from_kelvin(16.0 * y),
                    probe: x.abs(),
                    ..Draw::NOMINAL
                }
            })
            .collect()
    }

    #[test]
    fn a_member_does_not_depend_on_its_neighbours() {
        let cut = CutId::PorkBackRibs;
        let scenario = Scenario::usual(cut, cut.cut().shape.mass, CookerClass::Kettle);
        let draws = draws(11);
        let together = run(&scenario, &draws, &Settings::default()).unwrap();
        for (draw, run_together) in draws.iter().zip(&together) {
            let alone = run(&scenario, std::slice::from_ref(draw), &Settings::default()).unwrap();
            assert_eq!(&alone[0], run_together);
        }
    }

    #[test]
    fn a_pit_below_the_target_is_refused_with_both_figures() {
        let cut = CutId::PorkShoulderButt;
        let mut scenario = Scenario::usual(cut, cut.cut().shape.mass, CookerClass::Kettle);
        scenario.pit[0].set = Temperature::from_celsius(90.0);
        let refusal = run(&scenario, &[Draw::NOMINAL], &Settings::default()).unwrap_err();
        assert!(matches!(refusal, ModelError::PitBelowTarget { pit, .. } if pit == 90.0));
    }
}
