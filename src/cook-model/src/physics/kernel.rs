//! One step of the march for eight lanes, each with its own time and its own step.

use super::constants::{FAT_CENTRE, FAT_KEPT, FAT_RATE, FAT_WIDTH};
use super::environment::Environment;
use super::inside::latent_heat;
use super::linear::Linear;
use super::rates::{Rates, Totals};
use super::real::{LANES, Real, Row};
use super::state::{Pieces, State};
use super::tableau::{STAGES, Tableau};
use crate::doneness::tenderness;

/// Error that a step may make: K, kg per kg of protein and ash, kg/m² of film, humidity ratio, K of the box. The sizes
/// were chosen so that the reference curves are met within 0.1 K.
const TEMPERATURE_ERROR: f64 = 0.015;
const WATER_ERROR: f64 = 0.006;
const FILM_ERROR: f64 = 0.005;
const AIR_ERROR: f64 = 0.01;
const BOX_ERROR: f64 = 0.05;

/// A film that a step would leave below nothing counts as an error against this, kg/m²: the stages of a step that runs
/// through the end of the film do not see it.
const FILM_BELOW_NOTHING: f64 = 0.001;

/// The march of eight members.
#[derive(Clone, Debug)]
pub(crate) struct Kernel<S> {
    tableau: Tableau,
    pub(crate) pieces: Pieces<S>,
    pub(crate) environment: Environment<S>,
    /// Present state, and the one that the step proposes.
    pub(crate) present: State<S>,
    pub(crate) proposed: State<S>,
    /// Fat left, kg per kg raw, and what the step proposes.
    pub(crate) fat: Vec<Row<S>>,
    proposed_fat: Vec<Row<S>>,
    /// Rate of tenderness at the present state, mean of the meat, 1/s.
    tender_rate: Row<S>,
    proposed_tender_rate: Row<S>,
    /// Share of loose fat that leaves, per second over [`FAT_RATE`], of each cell at the present state.
    fat_rate: Vec<Row<S>>,
    proposed_fat_rate: Vec<Row<S>>,
    /// Growth of the volume ratio by fat, 1/s.
    fat_lag_rate: Row<S>,
    proposed_fat_lag_rate: Row<S>,
    /// How fast each cell warms at the present state, K/s.
    pub(crate) warming: Vec<Row<S>>,
    pub(crate) rates: Rates<S>,
    linear: Linear<S>,
    stage: State<S>,
    increments: Vec<State<S>>,
    /// Increments of the running totals by stage.
    total_increments: [Totals<S>; STAGES],
    /// What the step proposes to add: totals of a column, tenderness integral, fat lost of a column kg/m².
    pub(crate) added: Totals<S>,
    pub(crate) added_tenderness: Row<S>,
    pub(crate) added_fat: Row<S>,
    /// Error of the proposal over what it may be.
    pub(crate) error: Row<S>,
    /// Temperature of the surface and wet share at the beginning and at the end of the proposal.
    pub(crate) surface_before: Row<S>,
    pub(crate) wet_before: Row<S>,
}

impl<S: Real> Kernel<S> {
    /// Room for eight pieces of so many cells. Every lane must be filled before the first step.
    pub(crate) fn new(cells: usize, bone_cells: usize) -> Self {
        let rows = || vec![Row::default(); cells];
        Self {
            tableau: Tableau::new(),
            pieces: Pieces::new(cells, bone_cells),
            environment: Environment::default(),
            present: State::new(cells),
            proposed: State::new(cells),
            fat: rows(),
            proposed_fat: rows(),
            tender_rate: Row::default(),
            proposed_tender_rate: Row::default(),
            fat_rate: rows(),
            proposed_fat_rate: rows(),
            fat_lag_rate: Row::default(),
            proposed_fat_lag_rate: Row::default(),
            warming: rows(),
            rates: Rates::new(cells),
            linear: Linear::new(cells),
            stage: State::new(cells),
            increments: vec![State::new(cells); STAGES],
            total_increments: [[Row::default(); 4]; STAGES],
            added: [Row::default(); 4],
            added_tenderness: Row::default(),
            added_fat: Row::default(),
            error: Row::default(),
            surface_before: Row::default(),
            wet_before: Row::default(),
        }
    }

    /// Fills a lane with a piece at one temperature.
    pub(crate) fn start(&mut self, l: usize, temperature: f64, humidity: f64) {
        let n = self.present.cells();
        for i in 0..n {
            let bone = i < self.pieces.bone_cells;
            self.present.temperature[i][l] = S::of(temperature);
            self.present.water[i][l] = if bone {
                S::of(0.0)
            } else {
                self.pieces.water_raw[l]
            };
            self.fat[i][l] = if bone {
                S::of(0.0)
            } else {
                self.pieces.fat_raw[l]
            };
            self.fat_rate[i][l] = fat_rate(S::of(temperature));
        }
        self.present.film[l] = S::of(0.0);
        self.present.air[l] = S::of(humidity);
        self.present.rest_box[l] = S::of(temperature);
        self.tender_rate[l] = tenderness::rate(S::of(temperature));
        self.fat_lag_rate[l] = S::of(0.0);
        self.guess_surface(l);
    }

    /// After a jump of the surroundings: the surface balance begins from the last cell.
    pub(crate) fn guess_surface(&mut self, l: usize) {
        let n = self.present.cells();
        self.rates.surface.temperature[l] = self.present.temperature[n - 1][l];
        self.rates.surface.bottom_temperature[l] = self.present.temperature[0][l];
    }

    /// Proposes a step of `step` seconds in each lane. `surroundings` sets the environment for a fraction of the step.
    pub(crate) fn propose(
        &mut self,
        step: &Row<f64>,
        tolerance: f64,
        mut surroundings: impl FnMut(&mut Environment<S>, f64),
    ) {
        let h: Row<S> = step.map(S::of);
        let per_step: Row<S> = step.map(|h| S::of(1.0 / (self.tableau.gamma * h)));
        for i in 0..STAGES {
            self.stage.copy_from(&self.present);
            for j in 0..i {
                let a = self.tableau.state[i][j];
                if a != 0.0 {
                    self.stage.add_scaled(S::of(a), &self.increments[j]);
                }
            }
            let time = S::of(self.tableau.time[i]);
            surroundings(&mut self.environment, self.tableau.time[i]);
            let mut lag: Row<S> = Row::default();
            for l in 0..LANES {
                lag[l] = time * h[l] * self.fat_lag_rate[l];
            }
            let (p, e) = (&self.pieces, &self.environment);
            if i == 0 {
                self.rates
                    .work_out::<true>(&self.stage, &self.fat, &lag, p, e);
                self.linear.weigh(&self.rates, p);
                self.linear
                    .factorise(&per_step, &self.stage, &self.rates, p, e);
                self.surface_before = self.rates.surface.temperature;
                self.wet_before = self.rates.surface.wet;
                let gain = &self.rates.gain.temperature;
                self.linear.warming(gain, &mut self.warming);
            } else {
                self.rates
                    .work_out::<false>(&self.stage, &self.fat, &lag, p, e);
            }
            let (done, rest) = self.increments.split_at_mut(i);
            let increment = &mut rest[0];
            self.linear.load(increment, &self.rates, &self.pieces);
            for (j, before) in done.iter().enumerate() {
                let c = self.tableau.carry[i][j];
                let factor: Row<S> = step.map(|h| S::of(c / h));
                self.linear.add_mass_times(increment, &factor, before);
            }
            self.linear.solve(increment);
            self.add_totals(i, step);
        }
        self.combine(tolerance);
        self.slow_changes(&h);
    }
    /// Increments of the running totals by the same linear equations as the unknowns: so that water closes exactly.
    #[inline(never)]
    fn add_totals(&mut self, i: usize, step: &Row<f64>) {
        let n = self.present.cells();
        let last = n - 1;
        let (inside, surface) = (&self.rates.inside, &self.rates.surface);
        let u = &self.increments[i];
        let zero: Row<S> = Row::default();
        let mut sum: Totals<S> = self.rates.totals;
        let mut dripping = zero;
        for cell in self.pieces.bone_cells..n {
            let (ut, uw, t) = (
                u.temperature[cell],
                u.water[cell],
                self.present.temperature[cell],
            );
            let (drip_by, steam_by) = (inside.drip_by[cell], inside.steam_by[cell]);
            for l in 0..LANES {
                dripping[l] += drip_by[0][l] * ut[l] + drip_by[1][l] * uw[l];
                let steam = steam_by[0][l] * ut[l] + steam_by[1][l] * uw[l];
                sum[0][l] += steam;
                sum[3][l] += latent_heat(t[l]) * steam;
            }
        }
        let by_last = [
            u.temperature[last],
            u.water[last],
            u.film,
            u.air,
            u.rest_box,
        ];
        for (k, along) in by_last.iter().enumerate() {
            for l in 0..LANES {
                sum[0][l] += surface.evaporated_by[k][l] * along[l];
                sum[2][l] += surface.taken_by[k][l] * along[l];
                sum[3][l] += surface.latent_by[k][l] * along[l];
            }
        }
        if (1..n).contains(&self.pieces.bone_cells) {
            let meat = self.pieces.bone_cells;
            let [by_t, by_w] = surface.bottom_water_by;
            for l in 0..LANES {
                sum[2][l] += surface.bottom_heat_by[l] * u.temperature[0][l];
                let steam = by_t[l] * u.temperature[meat][l] + by_w[l] * u.water[meat][l];
                sum[0][l] += steam;
                sum[3][l] += latent_heat(self.present.temperature[meat][l]) * steam;
            }
        }
        for l in 0..LANES {
            sum[1][l] += (S::of(1.0) - self.environment.tight[l]) * dripping[l]
                + surface.run_off_by_film[l] * u.film[l];
        }
        for (k, sum) in sum.iter_mut().enumerate() {
            for j in 0..i {
                let c = self.tableau.carry[i][j];
                for l in 0..LANES {
                    sum[l] += S::of(c / step[l]) * self.total_increments[j][k][l];
                }
            }
            for l in 0..LANES {
                sum[l] = S::of(self.tableau.gamma * step[l]) * sum[l];
            }
        }
        self.total_increments[i] = sum;
    }

    /// The proposal and its error.
    #[inline(never)]
    fn combine(&mut self, tolerance: f64) {
        let n = self.present.cells();
        self.proposed.copy_from(&self.present);
        self.stage.clear();
        self.added = [Row::default(); 4];
        for i in 0..STAGES {
            let (m, d) = (S::of(self.tableau.result[i]), S::of(self.tableau.error[i]));
            self.proposed.add_scaled(m, &self.increments[i]);
            self.stage.add_scaled(d, &self.increments[i]);
            for (added, increment) in self.added.iter_mut().zip(&self.total_increments[i]) {
                for l in 0..LANES {
                    added[l] += m * increment[l];
                }
            }
        }
        let mut sum: Row<S> = Row::default();
        for i in 0..n {
            let (t, w) = (self.stage.temperature[i], self.stage.water[i]);
            for l in 0..LANES {
                let et = t[l] * S::of(1.0 / TEMPERATURE_ERROR);
                let ew = w[l] * S::of(1.0 / WATER_ERROR);
                sum[l] += et * et + ew * ew;
            }
        }
        #[expect(clippy::cast_precision_loss, reason = "at most 60")]
        let per_cell = S::of(1.0 / n as f64);
        for l in 0..LANES {
            let ef = self.stage.film[l] * S::of(1.0 / FILM_ERROR);
            let ea = self.stage.air[l] * S::of(1.0 / AIR_ERROR);
            let eb = self.stage.rest_box[l] * S::of(1.0 / BOX_ERROR);
            let below = (-self.proposed.film[l]).at_least(S::of(0.0));
            let en = below * S::of(1.0 / FILM_BELOW_NOTHING);
            let all = sum[l] * per_cell + ef * ef + ea * ea + eb * eb + en * en;
            self.error[l] = all.root() * S::of(1.0 / tolerance);
        }
    }

    /// Tenderness and fat over the proposal: nothing else waits for them within a step.
    #[inline(never)]
    fn slow_changes(&mut self, h: &Row<S>) {
        let n = self.present.cells();
        let mut middle: Row<S> = Row::default();
        let mut end: Row<S> = Row::default();
        let mut lag: Row<S> = Row::default();
        let mut lost: Row<S> = Row::default();
        let half = S::of(0.5);
        for i in self.pieces.bone_cells..n {
            let (t0, t1) = (self.present.temperature[i], self.proposed.temperature[i]);
            let (fat, rate0, volume) = (self.fat[i], self.fat_rate[i], self.pieces.volume[i]);
            for l in 0..LANES {
                let mean = half * (t0[l] + t1[l]);
                middle[l] += volume[l] * tenderness::rate(mean);
                end[l] += volume[l] * tenderness::rate(t1[l]);
                let rate1 = fat_rate(t1[l]);
                let share = h[l] * S::of(FAT_RATE) * half * (rate0[l] + rate1);
                let kept = S::of(FAT_KEPT) * self.pieces.fat_raw[l];
                let loose = fat[l] - kept;
                // e^-x to second order in a form that stays between 0 and 1.
                let left = loose / (S::of(1.0) + share + half * share * share);
                self.proposed_fat[i][l] = kept + left;
                self.proposed_fat_rate[i][l] = rate1;
                lag[l] -= volume[l] * S::of(FAT_RATE) * rate1 * left;
                lost[l] += volume[l] * (loose - left);
            }
        }
        for l in 0..LANES {
            let per = self.pieces.per_meat[l];
            self.proposed_tender_rate[l] = end[l] * per;
            self.added_tenderness[l] = h[l]
                * S::of(1.0 / 6.0)
                * (self.tender_rate[l] + per * (S::of(4.0) * middle[l] + end[l]));
            self.proposed_fat_lag_rate[l] = lag[l] * per * self.pieces.fat_share[l];
            self.added_fat[l] = lost[l] * self.pieces.raw[l];
        }
    }

    /// Fat that a cell would have left, kg per kg raw.
    pub(crate) fn proposed_fat(&self, cell: usize, l: usize) -> S {
        self.proposed_fat[cell][l]
    }

    /// Takes the proposal over in the marked lanes.
    pub(crate) fn accept(&mut self, marked: &[bool; LANES]) {
        self.present.take_lanes(marked, &self.proposed);
        let take = |to: &mut Row<S>, from: &Row<S>| {
            for l in 0..LANES {
                to[l] = if marked[l] { from[l] } else { to[l] };
            }
        };
        for i in self.pieces.bone_cells..self.fat.len() {
            take(&mut self.fat[i], &self.proposed_fat[i]);
            take(&mut self.fat_rate[i], &self.proposed_fat_rate[i]);
        }
        take(&mut self.tender_rate, &self.proposed_tender_rate);
        take(&mut self.fat_lag_rate, &self.proposed_fat_lag_rate);
    }
}

/// Share of loose fat that leaves at a temperature, over the rate of the hottest.
#[inline(always)]
fn fat_rate<S: Real>(t: S) -> S {
    S::of(1.0) / (S::of(1.0) + ((S::of(FAT_CENTRE) - t) * S::of(1.0 / FAT_WIDTH)).exp())
}
