//! The right-hand side as one: how fast every unknown and every running total changes.

use super::air::{LATENT_HEAT, LATENT_HEAT_FALL};
use super::cells::Cells;
use super::constants::BOX_LOSS;
use super::environment::Environment;
use super::inside::{Inside, latent_heat};
use super::real::{LANES, Real, Row, log_near_one};
use super::state::{Pieces, State};
use super::surface::Surface;

/// Running totals of a column: evaporated and dripped kg/m², heat taken in and heat into evaporation J/m².
pub(crate) type Totals<S> = [Row<S>; 4];

/// Everything that the right-hand side is made of.
#[derive(Clone, Debug)]
pub(crate) struct Rates<S> {
    pub(crate) cells: Cells<S>,
    pub(crate) inside: Inside<S>,
    pub(crate) surface: Surface<S>,
    /// Heat W/m² and water kg/m² s that each cell gains; kg/m² s of film; kg/s of air humidity; W of the rest box.
    pub(crate) gain: State<S>,
    /// Rates of the running totals.
    pub(crate) totals: Totals<S>,
}

impl<S: Real> Rates<S> {
    pub(crate) fn new(cells: usize) -> Self {
        Self {
            cells: Cells::new(cells),
            inside: Inside::new(cells),
            surface: Surface::default(),
            gain: State::new(cells),
            totals: [Row::default(); 4],
        }
    }

    /// Works out the right-hand side; with `SLOPES` also what the linear system needs. `fat_lag` is the change of the
    /// volume ratio by fat that has left since `fat` was written down.
    pub(crate) fn work_out<const SLOPES: bool>(
        &mut self,
        y: &State<S>,
        fat: &[Row<S>],
        fat_lag: &Row<S>,
        p: &Pieces<S>,
        e: &Environment<S>,
    ) {
        let mut present = self.cells.work_out(y, fat, p);
        for l in 0..LANES {
            present[l] += fat_lag[l];
        }
        self.fluxes::<SLOPES>(y, present, p, e);
    }

    /// Works out everything that follows from the cells and from the present volume over raw.
    pub(crate) fn fluxes<const SLOPES: bool>(
        &mut self,
        y: &State<S>,
        present: Row<S>,
        p: &Pieces<S>,
        e: &Environment<S>,
    ) {
        let mut shorter: Row<S> = Row::default();
        let mut smaller: Row<S> = Row::default();
        for l in 0..LANES {
            shorter[l] = (p.shrink[l] * log_near_one(present[l])).exp();
            smaller[l] = present[l] / shorter[l];
        }
        self.inside
            .work_out::<SLOPES>(y, &self.cells, p, &shorter, &smaller);
        self.surface
            .work_out::<SLOPES>(y, &self.cells, p, e, &shorter, &smaller);
        self.gather(y, p, e);
    }

    /// Adds the fluxes up.
    #[inline(never)]
    fn gather(&mut self, y: &State<S>, p: &Pieces<S>, e: &Environment<S>) {
        let n = y.cells();
        let last = n - 1;
        let zero: Row<S> = Row::default();
        let (inside, surface) = (&self.inside, &self.surface);
        let (mut dripping, mut steaming, mut steam_heat) = (zero, zero, zero);
        for i in 0..n {
            let heat_in = if i > 0 { inside.heat[i - 1] } else { zero };
            let water_in = if i > 0 { inside.water[i - 1] } else { zero };
            let heat_out = if i < last { inside.heat[i] } else { zero };
            let water_out = if i < last { inside.water[i] } else { zero };
            let (drip, steam, t) = (inside.drip[i], inside.steam[i], y.temperature[i]);
            let heat = &mut self.gain.temperature[i];
            let water = &mut self.gain.water[i];
            for l in 0..LANES {
                let carried = latent_heat(t[l]) * steam[l];
                heat[l] = heat_in[l] - heat_out[l] - carried;
                water[l] = water_in[l] - water_out[l] - drip[l] - steam[l];
                dripping[l] += drip[l];
                steaming[l] += steam[l];
                steam_heat[l] += carried;
            }
        }
        let mut taken = surface.taken;
        for l in 0..LANES {
            self.gain.temperature[last][l] += surface.heat[l];
            self.gain.water[last][l] -= surface.water[l];
        }
        if (1..n).contains(&p.bone_cells) {
            for l in 0..LANES {
                self.gain.temperature[0][l] += surface.bottom_heat[l];
                taken[l] += surface.bottom_heat[l];
            }
        }
        if (1..n).contains(&p.bone_cells) {
            let meat = p.bone_cells;
            for l in 0..LANES {
                let carried = latent_heat(y.temperature[meat][l]) * surface.bottom_water[l];
                self.gain.temperature[meat][l] -= carried;
                self.gain.water[meat][l] -= surface.bottom_water[l];
                steaming[l] += surface.bottom_water[l];
                steam_heat[l] += carried;
            }
        }
        for l in 0..LANES {
            let evaporated = steaming[l] + surface.evaporated[l];
            self.totals[0][l] = evaporated;
            self.totals[1][l] = (S::of(1.0) - e.tight[l]) * dripping[l] + surface.run_off[l];
            self.totals[2][l] = taken[l];
            self.totals[3][l] = steam_heat[l] + surface.latent[l];
            self.gain.film[l] = surface.film[l] + e.tight[l] * dripping[l];
            let renewed = e.draught[l] * (e.humidity[l] - y.air[l]);
            let open = S::of(1.0) - e.boxed[l];
            self.gain.air[l] = open * (renewed + p.columns_in_air[l] * evaporated);
            let condensing = S::of(LATENT_HEAT) - S::of(LATENT_HEAT_FALL) * y.rest_box[l];
            let lost = S::of(BOX_LOSS) * (y.rest_box[l] - e.room[l]);
            self.gain.rest_box[l] =
                e.boxed[l] * (p.columns[l] * (condensing * evaporated - taken[l]) - lost);
        }
    }
}
