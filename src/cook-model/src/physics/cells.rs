//! What each cell is like at a moment: properties that depend only on its own temperature, water and fat.

use super::air::saturation;
use super::constants::{ACTIVITY, ACTIVITY_WATER, BOUND_WATER, FREE_WIDTH, MOBILITY_GROWTH};
use super::properties::{
    CONDUCTIVITY_FACTOR, CONDUCTIVITY_OF_ASH, CONDUCTIVITY_OF_BONE, HEAT_CAPACITY_OF_BONE,
    conductivities, heat_capacities, water_held,
};
use super::real::{LANES, Real, Row, positive_part};
use super::state::{Pieces, State};

/// Properties of every cell in every lane, and the slopes that the linear system needs.
#[derive(Clone, Debug)]
pub(crate) struct Cells<S> {
    /// Conductivity, W/m K.
    pub(crate) conductivity: Vec<Row<S>>,
    /// Heat capacity of raw volume, J/m³ K.
    pub(crate) capacity: Vec<Row<S>>,
    /// Water above what is held, and its free (positive) part with its slope, kg per kg of protein and ash.
    pub(crate) surplus: Vec<Row<S>>,
    pub(crate) free: Vec<Row<S>>,
    pub(crate) free_slope: Vec<Row<S>>,
    /// Change of the water held per K.
    pub(crate) held_slope: Vec<Row<S>>,
    /// Dryness 0 to 1 and its change with water.
    pub(crate) dryness: Vec<Row<S>>,
    pub(crate) dryness_slope: Vec<Row<S>>,
    /// Vapour pressure, Pa, and its change with temperature and with water.
    pub(crate) vapour: Vec<Row<S>>,
    pub(crate) vapour_by_temperature: Vec<Row<S>>,
    pub(crate) vapour_by_water: Vec<Row<S>>,
    /// Mobility of free and of bound water, m²/s.
    pub(crate) mobile: Vec<Row<S>>,
    pub(crate) bound: Vec<Row<S>>,
    /// Change of the latter with water.
    pub(crate) bound_slope: Vec<Row<S>>,
}

impl<S: Real> Cells<S> {
    pub(crate) fn new(cells: usize) -> Self {
        let rows = || vec![Row::default(); cells];
        let constant = |value: f64| vec![[S::of(value); LANES]; cells];
        Self {
            // Bone keeps these for good.
            conductivity: constant(CONDUCTIVITY_OF_BONE),
            capacity: constant(HEAT_CAPACITY_OF_BONE),
            surplus: rows(),
            free: rows(),
            free_slope: rows(),
            held_slope: rows(),
            dryness: rows(),
            dryness_slope: rows(),
            vapour: rows(),
            vapour_by_temperature: rows(),
            vapour_by_water: rows(),
            mobile: rows(),
            bound: rows(),
            bound_slope: rows(),
        }
    }

    /// Works out every cell of meat. Returns the present over the raw volume of the meat.
    #[inline(never)]
    pub(crate) fn work_out(&mut self, y: &State<S>, fat: &[Row<S>], p: &Pieces<S>) -> Row<S> {
        let n = y.cells();
        let one = S::of(1.0);
        let mut present: Row<S> = [S::of(0.0); LANES];
        for i in p.bone_cells..n {
            let (t, w, f) = (y.temperature[i], y.water[i], fat[i]);
            let volume = p.volume[i];
            let mut out: [Row<S>; 14] = [Row::default(); 14];
            for l in 0..LANES {
                // Heat.
                let water_volume = w[l] * p.water_share[l];
                let fat_volume = f[l] * p.fat_share[l];
                let ratio = water_volume + p.protein_share[l] + p.ash_share[l] + fat_volume;
                present[l] += ratio * volume[l];
                let [kw, kp, kf] = conductivities(t[l]);
                let sum = kw * water_volume
                    + kp * p.protein_share[l]
                    + kf * fat_volume
                    + S::of(CONDUCTIVITY_OF_ASH) * p.ash_share[l];
                out[0][l] = S::of(CONDUCTIVITY_FACTOR) * sum / ratio;
                let [cw, cp, cf] = heat_capacities(t[l]);
                out[1][l] = w[l] * p.lean[l] * cw
                    + p.protein[l] * cp
                    + f[l] * p.raw[l] * cf
                    + p.ash_capacity[l];
                // Water against what is held.
                let (held, held_slope) = water_held(t[l], p.water_raw[l], p.water_cooked[l]);
                let surplus = w[l] - held;
                let (free, free_slope) = positive_part(surplus, S::of(FREE_WIDTH));
                out[2][l] = surplus;
                out[3][l] = free;
                out[4][l] = free_slope;
                out[5][l] = held_slope;
                // Dryness: the positive part of u, rounded off, at most 1.
                let u = one - w[l] * p.per_dry_limit[l];
                let root = (u * u + S::of(1e-4)).root();
                let dryness = S::of(0.5) * (u + root);
                let slope = -p.per_dry_limit[l] * dryness / root;
                out[6][l] = dryness.at_most(one);
                out[7][l] = if dryness < one { slope } else { S::of(0.0) };
                // Vapour pressure: activity times saturation.
                let (saturated, log_slope) = saturation(t[l]);
                let lack = (-w[l] * S::of(1.0 / ACTIVITY_WATER)).exp();
                let full = S::of(ACTIVITY) * saturated;
                let vapour = full * (one - lack);
                out[8][l] = vapour;
                out[9][l] = vapour * log_slope;
                out[10][l] = full * lack * S::of(1.0 / ACTIVITY_WATER);
                // Mobilities.
                let warm = (S::of(MOBILITY_GROWTH) * (t[l] - S::of(60.0))).exp();
                let wetness = w[l] / p.water_raw[l];
                let partly = wetness > S::of(0.0) && wetness < one;
                let wetness = wetness.at_most(one).at_least(S::of(0.0));
                out[11][l] = p.free_water[l] * warm;
                out[12][l] = S::of(BOUND_WATER) * warm * wetness;
                let slope = S::of(BOUND_WATER) * warm / p.water_raw[l];
                out[13][l] = if partly { slope } else { S::of(0.0) };
            }
            let [k, c, s, fr, frs, hs, d, ds, v, vt, vw, m, b, bs] = out;
            self.conductivity[i] = k;
            self.capacity[i] = c;
            self.surplus[i] = s;
            self.free[i] = fr;
            self.free_slope[i] = frs;
            self.held_slope[i] = hs;
            self.dryness[i] = d;
            self.dryness_slope[i] = ds;
            self.vapour[i] = v;
            self.vapour_by_temperature[i] = vt;
            self.vapour_by_water[i] = vw;
            self.mobile[i] = m;
            self.bound[i] = b;
            self.bound_slope[i] = bs;
        }
        for l in 0..LANES {
            // A body without meat keeps its volume.
            let scaled = present[l] * p.per_meat[l];
            present[l] = if scaled > S::of(0.0) { scaled } else { one };
        }
        present
    }
}
