//! Fluxes between neighbouring cells, and what leaves a cell directly.

use super::air::{LATENT_HEAT, LATENT_HEAT_FALL, VAPOUR_GAS_CONSTANT};
use super::cells::Cells;
use super::constants::{MOBILITY_GROWTH, STEAM, STEAM_WIDTH};
use super::real::{LANES, Real, Row, positive_part};
use super::state::{Pieces, State};

/// A 2 × 2 block for each lane: heat by temperature, heat by water, water by temperature, water by water.
pub(crate) type Block<S> = [Row<S>; 4];

/// Heat of evaporation at a temperature in °C, J/kg.
#[inline(always)]
pub(crate) fn latent_heat<S: Real>(t: S) -> S {
    S::of(LATENT_HEAT) - S::of(LATENT_HEAT_FALL) * t
}

/// Fluxes of a column and their derivatives.
#[derive(Clone, Debug)]
pub(crate) struct Inside<S> {
    /// Through the face above each cell: heat W/m² and water kg/m² s.
    pub(crate) heat: Vec<Row<S>>,
    pub(crate) water: Vec<Row<S>>,
    /// Those by the cell below and by the cell above the face.
    pub(crate) by_below: Vec<Block<S>>,
    pub(crate) by_above: Vec<Block<S>>,
    /// Drip and steam of each cell, kg/m² s.
    pub(crate) drip: Vec<Row<S>>,
    pub(crate) steam: Vec<Row<S>>,
    /// Those by temperature and by water of the cell.
    pub(crate) drip_by: Vec<[Row<S>; 2]>,
    pub(crate) steam_by: Vec<[Row<S>; 2]>,
}

impl<S: Real> Inside<S> {
    pub(crate) fn new(cells: usize) -> Self {
        let rows = || vec![Row::default(); cells];
        let pairs = || vec![[Row::default(); 2]; cells];
        let blocks = || vec![[Row::default(); 4]; cells];
        Self {
            heat: rows(),
            water: rows(),
            by_below: blocks(),
            by_above: blocks(),
            drip: rows(),
            steam: rows(),
            drip_by: pairs(),
            steam_by: pairs(),
        }
    }

    /// Works out all fluxes; with `SLOPES` their derivatives too. `shorter` and `smaller` are the present distances and
    /// areas over the raw ones.
    #[inline(never)]
    pub(crate) fn work_out<const SLOPES: bool>(
        &mut self,
        y: &State<S>,
        c: &Cells<S>,
        p: &Pieces<S>,
        shorter: &Row<S>,
        smaller: &Row<S>,
    ) {
        let n = y.cells();
        for i in 0..n - 1 {
            if i < p.bone_cells {
                self.conduction::<SLOPES>(i, y, c, p, shorter, smaller);
            } else {
                self.face::<SLOPES>(i, y, c, p, shorter, smaller);
            }
        }
        for i in p.bone_cells..n {
            self.leaving::<SLOPES>(i, c, p, shorter);
        }
    }

    /// Heat through the face above a cell of bone.
    #[inline(always)]
    fn conduction<const SLOPES: bool>(
        &mut self,
        i: usize,
        y: &State<S>,
        c: &Cells<S>,
        p: &Pieces<S>,
        shorter: &Row<S>,
        smaller: &Row<S>,
    ) {
        let (t0, t1) = (y.temperature[i], y.temperature[i + 1]);
        let (k0, k1) = (c.conductivity[i], c.conductivity[i + 1]);
        let (d0, d1) = (p.half[i], p.half[i + 1]);
        let area = p.area[i];
        let mut heat: Row<S> = Row::default();
        let mut conductance: Row<S> = Row::default();
        for l in 0..LANES {
            let g = area[l] * smaller[l] * k0[l] * k1[l]
                / (shorter[l] * (d0[l] * k1[l] + d1[l] * k0[l]));
            conductance[l] = g;
            heat[l] = g * (t0[l] - t1[l]);
        }
        self.heat[i] = heat;
        self.water[i] = Row::default();
        if SLOPES {
            let zero = Row::default();
            self.by_below[i] = [conductance, zero, zero, zero];
            self.by_above[i] = [conductance.map(|g| -g), zero, zero, zero];
        }
    }

    /// Heat, juice and vapour through the face above a cell of meat.
    #[inline(always)]
    fn face<const SLOPES: bool>(
        &mut self,
        i: usize,
        y: &State<S>,
        c: &Cells<S>,
        p: &Pieces<S>,
        shorter: &Row<S>,
        smaller: &Row<S>,
    ) {
        let j = i + 1;
        let (t0, t1) = (y.temperature[i], y.temperature[j]);
        let (k0, k1) = (c.conductivity[i], c.conductivity[j]);
        let (d0, d1) = (p.half[i], p.half[j]);
        let (surplus0, surplus1) = (c.surplus[i], c.surplus[j]);
        let (free0, free1) = (c.free[i], c.free[j]);
        let (mobile0, mobile1) = (c.mobile[i], c.mobile[j]);
        let (bound0, bound1) = (c.bound[i], c.bound[j]);
        let (dry0, dry1) = (c.dryness[i], c.dryness[j]);
        let (vapour0, vapour1) = (c.vapour[i], c.vapour[j]);
        let area = p.area[i];
        let (lean, crust) = (p.lean, p.crust_vapour);
        let half = S::of(0.5);

        let mut heat: Row<S> = Row::default();
        let mut water: Row<S> = Row::default();
        let mut below: Block<S> = [Row::default(); 4];
        let mut above: Block<S> = [Row::default(); 4];
        let (slope0, slope1) = (c.free_slope[i], c.free_slope[j]);
        let (bound_slope0, bound_slope1) = (c.bound_slope[i], c.bound_slope[j]);
        let (held0, held1) = (c.held_slope[i], c.held_slope[j]);
        let (dry_slope0, dry_slope1) = (c.dryness_slope[i], c.dryness_slope[j]);
        let (vt0, vt1) = (c.vapour_by_temperature[i], c.vapour_by_temperature[j]);
        let (vw0, vw1) = (c.vapour_by_water[i], c.vapour_by_water[j]);
        for l in 0..LANES {
            let open = area[l] * smaller[l] / shorter[l];
            // Heat by conduction.
            let g = open * k0[l] * k1[l] / (d0[l] * k1[l] + d1[l] * k0[l]);
            let fall = t0[l] - t1[l];
            // Juice, bound and free.
            let across = open * lean[l] / (d0[l] + d1[l]);
            let bound = half * (bound0[l] + bound1[l]);
            let mobile = half * (mobile0[l] + mobile1[l]);
            let surplus = surplus0[l] - surplus1[l];
            let free = free0[l] - free1[l];
            let juice = across * (bound * surplus + mobile * free);
            // Vapour: the path opens as the outer cell dries.
            let gate = dry1[l] * dry1[l] * (S::of(3.0) - dry1[l] - dry1[l]);
            let path = d0[l] * dry0[l] + d1[l];
            let mean = half * (t0[l] + t1[l]);
            let full =
                open * crust[l] / (path * S::of(VAPOUR_GAS_CONSTANT) * (mean + S::of(273.15)));
            let push = vapour0[l] - vapour1[l];
            let vapour = full * gate * push;
            let latent = latent_heat(mean);
            heat[l] = g * fall + latent * vapour;
            water[l] = juice + vapour;
            if SLOPES {
                let warm = across * S::of(0.5 * MOBILITY_GROWTH);
                let pull0 = across * (bound + mobile * slope0[l]);
                let pull1 = across * (bound + mobile * slope1[l]);
                let juice_t0 = warm * (bound0[l] * surplus + mobile0[l] * free) - pull0 * held0[l];
                let juice_t1 = warm * (bound1[l] * surplus + mobile1[l] * free) + pull1 * held1[l];
                let drawn = across * half * surplus;
                let b = full * gate;
                let vapour_t0 = b * vt0[l];
                let vapour_t1 = -b * vt1[l];
                let vapour_w0 = b * vw0[l] - vapour * d0[l] / path * dry_slope0[l];
                let gate_slope = S::of(6.0) * dry1[l] * (S::of(1.0) - dry1[l]);
                let vapour_w1 = full * gate_slope * push * dry_slope1[l] - b * vw1[l];
                below[0][l] = g + latent * vapour_t0;
                below[1][l] = latent * vapour_w0;
                below[2][l] = juice_t0 + vapour_t0;
                below[3][l] = pull0 + drawn * bound_slope0[l] + vapour_w0;
                above[0][l] = latent * vapour_t1 - g;
                above[1][l] = latent * vapour_w1;
                above[2][l] = juice_t1 + vapour_t1;
                above[3][l] = vapour_w1 + drawn * bound_slope1[l] - pull1;
            }
        }
        self.heat[i] = heat;
        self.water[i] = water;
        if SLOPES {
            self.by_below[i] = below;
            self.by_above[i] = above;
        }
    }

    /// Drip and steam of a cell of meat.
    #[inline(always)]
    fn leaving<const SLOPES: bool>(
        &mut self,
        i: usize,
        c: &Cells<S>,
        p: &Pieces<S>,
        shorter: &Row<S>,
    ) {
        let (mobile, free, slope, held) =
            (c.mobile[i], c.free[i], c.free_slope[i], c.held_slope[i]);
        let (vapour, vt, vw) = (
            c.vapour[i],
            c.vapour_by_temperature[i],
            c.vapour_by_water[i],
        );
        let volume = p.volume[i];
        let (rate, pressure) = (p.drip, p.pressure);
        let mut drip: Row<S> = Row::default();
        let mut steam: Row<S> = Row::default();
        let mut drip_by: [Row<S>; 2] = [Row::default(); 2];
        let mut steam_by: [Row<S>; 2] = [Row::default(); 2];
        for l in 0..LANES {
            let d = rate[l] * mobile[l] * volume[l] / (shorter[l] * shorter[l]);
            drip[l] = d * free[l];
            let (over, open) = positive_part(vapour[l] - pressure[l], S::of(STEAM_WIDTH));
            let s = S::of(STEAM) * volume[l];
            steam[l] = s * over;
            if SLOPES {
                drip_by[0][l] = d * (S::of(MOBILITY_GROWTH) * free[l] - slope[l] * held[l]);
                drip_by[1][l] = d * slope[l];
                steam_by[0][l] = s * open * vt[l];
                steam_by[1][l] = s * open * vw[l];
            }
        }
        self.drip[i] = drip;
        self.steam[i] = steam;
        if SLOPES {
            self.drip_by[i] = drip_by;
            self.steam_by[i] = steam_by;
        }
    }
}
