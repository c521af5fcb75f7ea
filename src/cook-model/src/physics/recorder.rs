//! What is written down of one member while the march goes by.

use super::body::Body;
use super::course::{Watched, Where, crossing};
use super::member::{MemberRun, Sample, Span, Totals};
use super::scenario::{Finish, Scenario};
use crate::doneness::bark;
use crate::meat::Make;
use crate::safety::{Dwell, LethalityTable};
use crate::units::{Mass, Temperature, TimeSpan};

/// A temperature over a step: through its value and slope at the beginning and its value at the end.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Arc {
    from: f64,
    slope: f64,
    bend: f64,
}

impl Arc {
    /// From a value that changes by `along` over the step if it goes on as it began, to another value.
    pub(crate) fn new(from: f64, along: f64, to: f64) -> Self {
        let straight = to - from;
        let bend = straight - along;
        // A transient that dies out within the step says nothing about the step: go straight.
        if bend.abs() > 2.0 * straight.abs() + 0.5 {
            return Self {
                from,
                slope: straight,
                bend: 0.0,
            };
        }
        Self {
            from,
            slope: along,
            bend,
        }
    }

    /// The value at a fraction of the step.
    pub(crate) fn at(&self, s: f64) -> f64 {
        self.from + s * (self.slope + s * self.bend)
    }

    fn end(&self) -> f64 {
        self.at(1.0)
    }

    /// The fraction at which it first rises to a goal.
    fn rises_to(&self, goal: f64) -> Option<f64> {
        if self.from >= goal {
            Some(0.0)
        } else if self.end() >= goal {
            Some(crossing(|s| self.at(s) - goal))
        } else {
            None
        }
    }

    /// The fraction at which it falls to a goal that it was above.
    fn falls_to(&self, goal: f64) -> Option<f64> {
        (self.from > goal && self.end() <= goal).then(|| crossing(|s| goal - self.at(s)))
    }
}

/// One accepted step of one member.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Step {
    /// Beginning and length, s.
    pub(crate) time: f64,
    pub(crate) length: f64,
    pub(crate) probe: Arc,
    pub(crate) core: Arc,
    /// Surface at beginning and end, °C, and its wet share.
    pub(crate) surface: [f64; 2],
    pub(crate) wet: [f64; 2],
    /// Tenderness integral added.
    pub(crate) tenderness: f64,
    /// Of a column: evaporated and dripped kg/m², heat taken in and into evaporation J/m².
    pub(crate) totals: [f64; 4],
    /// Fat lost of a column, kg/m².
    pub(crate) fat: f64,
    pub(crate) whereabouts: Where,
}

/// What a member has come to so far.
#[derive(Clone, Debug)]
pub(crate) struct Recorder {
    run: MemberRun,
    columns: f64,
    demand: Option<f64>,
    target: Option<f64>,
    sample_every: f64,
    next_sample: f64,
    /// Running totals of a column.
    totals: [f64; 4],
    fat: f64,
    tenderness: f64,
    lethality: Lethality,
    bark: f64,
    slow_since: Option<f64>,
    /// Water sprayed on, of a column, kg/m².
    pub(crate) sprayed: f64,
}

/// How the coldest point comes to be safe.
#[derive(Clone, Debug)]
enum Lethality {
    /// By time at temperature.
    Table(Box<Dwell>),
    /// By reaching a temperature, °C: ground meat and fish have no table here.
    AtOnce(f64),
}

impl Lethality {
    fn of(make: Make) -> Self {
        match make {
            Make::WholeMuscle => Self::Table(Box::new(Dwell::new(LethalityTable::RedMeat))),
            Make::Poultry => Self::Table(Box::new(Dwell::new(LethalityTable::Poultry))),
            Make::Ground | Make::Fish => Self::AtOnce(make.consumer_minimum().celsius()),
        }
    }
}

/// Water and heat that a column holds, for the balances.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Content {
    /// Water in cells and film, kg/m².
    pub(crate) water: f64,
    /// Heat above 0 °C, J/m².
    pub(crate) heat: f64,
    /// Heat that liquid and fat took along so far, J/m².
    pub(crate) carried: f64,
}

impl Recorder {
    pub(crate) fn new(
        scenario: &Scenario,
        body: &Body,
        demand: Option<f64>,
        sample_every: f64,
    ) -> Self {
        let cut = scenario.cut.cut();
        let target = match scenario.finish {
            Finish::Tender { target, .. } | Finish::Temperature { target, .. } => {
                Some(target.celsius())
            }
            Finish::AfterOn(_) => None,
        };
        let start = scenario.start.celsius();
        Self {
            run: MemberRun {
                ready: None,
                target_reached: None,
                covered: vec![None; scenario.wraps.len()],
                pit_changed: vec![None; scenario.pit.len()],
                stall: None,
                bark: 0.0,
                bark_firm: None,
                bark_set: None,
                lethality_met: None,
                surface_hot: None,
                core_past_4: (start >= 4.0).then_some(TimeSpan::ZERO),
                core_past_60: None,
                tenderness_at_ready: None,
                probe_at_ready: None,
                core_peak_after: None,
                core_below_73_9: None,
                core_below_60: None,
                stage_ends: Vec::new(),
                samples: Vec::new(),
                at_ready: Totals::default(),
                at_end: Totals::default(),
                meat: Mass::from_kilograms(body.meat),
                steps: 0,
            },
            columns: body.columns,
            // A cut without a demand, or one taken off by temperature, still shows the bare integral or its own.
            demand: demand.or(cut.demand),
            target,
            sample_every,
            next_sample: 0.0,
            totals: [0.0; 4],
            fat: 0.0,
            tenderness: 0.0,
            lethality: Lethality::of(cut.make),
            bark: 0.0,
            slow_since: None,
            sprayed: 0.0,
        }
    }

    /// Tenderness integral so far over the demand.
    pub(crate) fn tenderness(&self) -> f64 {
        self.tenderness / self.demand.unwrap_or(1.0)
    }

    /// What it would be with more added.
    pub(crate) fn tenderness_with(&self, added: f64) -> f64 {
        (self.tenderness + added) / self.demand.unwrap_or(1.0)
    }

    /// The moment it goes on.
    pub(crate) fn begin(&mut self, watched: &Watched, air: f64) {
        self.run.pit_changed[0] = Some(TimeSpan::ZERO);
        self.run.samples.push(Sample {
            after: TimeSpan::ZERO,
            core: Temperature::from_celsius(watched.core),
            probe: Temperature::from_celsius(watched.probe),
            surface: Temperature::from_celsius(watched.core),
            air: Temperature::from_celsius(air),
            tenderness: 0.0,
            loss: 0.0,
        });
        self.next_sample = self.sample_every;
    }

    /// Writes an accepted step down.
    pub(crate) fn step(&mut self, step: &Step, air_at: impl Fn(f64) -> f64) {
        let at = |s: f64| TimeSpan::from_seconds(step.time + s * step.length);
        let first = |slot: &mut Option<TimeSpan>, fraction: Option<f64>| {
            if slot.is_none() {
                *slot = fraction.map(at);
            }
        };
        let run = &mut self.run;
        if let Some(target) = self.target {
            first(&mut run.target_reached, step.probe.rises_to(target));
        }
        first(&mut run.core_past_4, step.core.rises_to(4.0));
        first(&mut run.core_past_60, step.core.rises_to(60.0));
        let [surface0, surface1] = step.surface;
        if surface1 >= SURFACE_HOT {
            let share = (SURFACE_HOT - surface0) / (surface1 - surface0);
            let share = if surface0 >= SURFACE_HOT { 0.0 } else { share };
            first(&mut run.surface_hot, Some(share));
        }

        // Bark grows on the cooker.
        if step.whereabouts == Where::Cooking {
            let rate =
                0.5 * (bark::rate(surface0, step.wet[0]) + bark::rate(surface1, step.wet[1]));
            let grown = rate * step.length / 3600.0;
            for (slot, goal) in [
                (&mut run.bark_firm, bark::FIRM_HOURS),
                (&mut run.bark_set, bark::SET_HOURS),
            ] {
                if self.bark + grown >= goal {
                    first(slot, Some((goal - self.bark) / grown.max(1e-12)));
                }
            }
            self.bark += grown;
            self.slow_stretch(step);
        } else {
            let run = &mut self.run;
            let peak = step.core.at(0.0).max(step.core.end());
            let before = run.core_peak_after.map_or(peak, Temperature::celsius);
            run.core_peak_after = Some(Temperature::from_celsius(peak.max(before)));
            first(&mut run.core_below_73_9, step.core.falls_to(73.9));
            first(&mut run.core_below_60, step.core.falls_to(60.0));
        }
        self.time_at_temperature(step);
        self.samples(step, air_at);
        for (total, added) in self.totals.iter_mut().zip(step.totals) {
            *total += added;
        }
        self.fat += step.fat;
        self.tenderness += step.tenderness;
        self.run.steps += 1;
    }

    /// Samples that fall into the step.
    fn samples(&mut self, step: &Step, air_at: impl Fn(f64) -> f64) {
        let end = step.time + step.length;
        while self.next_sample <= end + 1e-6 {
            let s = ((self.next_sample - step.time) / step.length).clamp(0.0, 1.0);
            let [surface0, surface1] = step.surface;
            let lost = self.totals[0]
                + self.totals[1]
                + self.fat
                + s * (step.totals[0] + step.totals[1] + step.fat);
            self.run.samples.push(Sample {
                after: TimeSpan::from_seconds(self.next_sample),
                core: Temperature::from_celsius(step.core.at(s)),
                probe: Temperature::from_celsius(step.probe.at(s)),
                surface: Temperature::from_celsius(surface0 + s * (surface1 - surface0)),
                air: Temperature::from_celsius(air_at(self.next_sample)),
                tenderness: self.tenderness_with(s * step.tenderness),
                loss: lost * self.columns / self.run.meat.kilograms(),
            });
            self.next_sample += self.sample_every;
        }
    }

    /// Published time at temperature. A part of a step counts with its colder end.
    fn time_at_temperature(&mut self, step: &Step) {
        const PARTS: u32 = 8;
        if self.run.lethality_met.is_some() {
            return;
        }
        let at = |s: f64| Some(TimeSpan::from_seconds(step.time + s * step.length));
        match &mut self.lethality {
            Lethality::AtOnce(minimum) => {
                self.run.lethality_met = step.core.rises_to(*minimum).and_then(at);
            }
            Lethality::Table(dwell) => {
                let span = TimeSpan::from_seconds(step.length / f64::from(PARTS));
                for part in 0..PARTS {
                    let from = f64::from(part) / f64::from(PARTS);
                    let to = f64::from(part + 1) / f64::from(PARTS);
                    let [before, after] =
                        [from, to].map(|s| Temperature::from_celsius(step.core.at(s)));
                    dwell.add(span, before, after);
                    if dwell.met() {
                        self.run.lethality_met = at(to);
                        return;
                    }
                }
            }
        }
    }

    /// Follows slow stretches of the probe.
    fn slow_stretch(&mut self, step: &Step) {
        let (from, to) = (step.probe.at(0.0), step.probe.end());
        let rate = (to - from) / step.length * 3600.0;
        if rate < SLOW_KELVIN_PER_HOUR && from > SLOW_FROM && to < SLOW_TO {
            let since = *self.slow_since.get_or_insert(step.time);
            let until = step.time + step.length;
            let longest = self
                .run
                .stall
                .map_or(SLOW_AT_LEAST, |s| (s.to - s.from).seconds());
            if until - since >= longest {
                self.run.stall = Some(Span {
                    from: TimeSpan::from_seconds(since),
                    to: TimeSpan::from_seconds(until),
                });
            }
        } else {
            self.slow_since = None;
        }
    }

    /// A cover was put on.
    pub(crate) fn covered(&mut self, n: usize, time: f64) {
        self.run.covered[n] = Some(TimeSpan::from_seconds(time));
    }

    /// The pit was changed.
    pub(crate) fn pit_changed(&mut self, n: usize, time: f64) {
        self.run.pit_changed[n] = Some(TimeSpan::from_seconds(time));
    }

    /// It came off, ready or because the limit came.
    pub(crate) fn off(&mut self, time: f64, ready: bool, watched: &Watched, totals: Totals) {
        self.run.bark = self.bark;
        self.run.at_ready = totals;
        if ready {
            self.run.ready = Some(TimeSpan::from_seconds(time));
            // A step that ends on the target may end a rounding below it.
            if self
                .target
                .is_some_and(|target| watched.probe >= target - 0.05)
            {
                let reached = &mut self.run.target_reached;
                *reached = reached.or(self.run.ready);
            }
            self.run.probe_at_ready = Some(Temperature::from_celsius(watched.probe));
            self.run.tenderness_at_ready = self.demand.map(|_| self.tenderness());
        }
    }

    /// A stage after the cooker ended.
    pub(crate) fn stage_ended(&mut self, time: f64) {
        self.run.stage_ends.push(TimeSpan::from_seconds(time));
    }

    /// Totals so far, with the balances if the content is known.
    pub(crate) fn totals_now(&self, content: Option<(Content, Content)>) -> Totals {
        let [evaporated, dripped, taken, latent] = self.totals;
        let residuals = content.map(|(start, now)| {
            let lost = evaporated + dripped;
            let water = now.water + lost - start.water - self.sprayed;
            let heat = now.heat - start.heat + latent + now.carried - taken;
            (water / lost.max(1e-6), heat / taken.abs().max(1.0))
        });
        Totals {
            evaporated: Mass::from_kilograms(evaporated * self.columns),
            dripped: Mass::from_kilograms(dripped * self.columns),
            fat: Mass::from_kilograms(self.fat * self.columns),
            heat: taken * self.columns,
            water_residual: residuals.map(|(water, _)| water),
            energy_residual: residuals.map(|(_, heat)| heat),
        }
    }

    /// The finished record.
    pub(crate) fn finish(mut self, totals: Totals, proposals: u32) -> MemberRun {
        self.run.at_end = totals;
        self.run.steps = proposals;
        self.run
    }
}

/// The surface counts as hot from here on, °C (130 °F).
const SURFACE_HOT: f64 = 54.4;

/// A slow stretch: slower than this, between these, for at least this long (s). By hand: some 5 °F an hour.
const SLOW_KELVIN_PER_HOUR: f64 = 3.0;
const SLOW_FROM: f64 = 55.0;
const SLOW_TO: f64 = 90.0;
const SLOW_AT_LEAST: f64 = 1800.0;
