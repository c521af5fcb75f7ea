//! The linear system of a step: blocks of two along the cells, film, air and box at the end, the film's row full where a
//! wrap holds what drips. Eliminated from the middle outwards without pivoting: the diagonal leads.

use super::air::{LATENT_HEAT, LATENT_HEAT_FALL};
use super::constants::{AIR_MASS, BOX_CAPACITY, BOX_LOSS};
use super::environment::Environment;
use super::inside::{Block, latent_heat};
use super::rates::Rates;
use super::real::{LANES, Real, Row};
use super::state::{Pieces, State};

/// A factorised system.
#[derive(Clone, Debug)]
pub(crate) struct Linear<S> {
    /// Heat capacity and water capacity of each cell: what a rate is divided by.
    heat_mass: Vec<Row<S>>,
    water_mass: Vec<Row<S>>,
    /// Inverses of the reduced diagonal blocks.
    inverse: Vec<Block<S>>,
    /// Multipliers of the block below each.
    below: Vec<Block<S>>,
    /// Blocks above each.
    above: Vec<Block<S>>,
    /// Multipliers of the film's row.
    film: Vec<[Row<S>; 2]>,
    /// Multipliers of the rows of air and box at the last cell.
    air: [Row<S>; 2],
    rest_box: [Row<S>; 2],
    /// The last cell by film, air and box.
    last_by: [[Row<S>; 3]; 2],
    /// Inverse of the end block, by rows.
    end: [[Row<S>; 3]; 3],
}

impl<S: Real> Linear<S> {
    pub(crate) fn new(cells: usize) -> Self {
        let rows = || vec![Row::default(); cells];
        let blocks = || vec![[Row::default(); 4]; cells];
        Self {
            heat_mass: rows(),
            water_mass: rows(),
            inverse: blocks(),
            below: blocks(),
            above: blocks(),
            film: vec![[Row::default(); 2]; cells],
            air: [Row::default(); 2],
            rest_box: [Row::default(); 2],
            last_by: [[Row::default(); 3]; 2],
            end: [[Row::default(); 3]; 3],
        }
    }

    /// Writes down what rates are divided by, from the rates at the beginning of the step.
    pub(crate) fn weigh(&mut self, r: &Rates<S>, p: &Pieces<S>) {
        for (i, volume) in p.volume.iter().enumerate() {
            let capacity = r.cells.capacity[i];
            let bone = i < p.bone_cells;
            for l in 0..LANES {
                self.heat_mass[i][l] = capacity[l] * volume[l];
                self.water_mass[i][l] = if bone {
                    S::of(1.0)
                } else {
                    p.lean[l] * volume[l]
                };
            }
        }
    }

    /// Factorises masses × `per_step` − slopes of the rates.
    #[inline(never)]
    pub(crate) fn factorise(
        &mut self,
        per_step: &Row<S>,
        y: &State<S>,
        r: &Rates<S>,
        p: &Pieces<S>,
        e: &Environment<S>,
    ) {
        let n = y.cells();
        let last = n - 1;
        let (inside, surface) = (&r.inside, &r.surface);
        let zero: Row<S> = Row::default();
        let no_block: Block<S> = [zero; 4];
        let meat = p.bone_cells;
        let mut before_inverse = no_block;
        let mut before_above = no_block;
        let mut before_film = [zero; 2];
        for i in 0..n {
            let own = if i < last {
                inside.by_below[i]
            } else {
                no_block
            };
            let other = if i > 0 {
                inside.by_above[i - 1]
            } else {
                no_block
            };
            let from_below = if i > 0 {
                inside.by_below[i - 1]
            } else {
                no_block
            };
            let above = if i < last {
                inside.by_above[i]
            } else {
                no_block
            };
            let (drip_by, steam_by, t) = (inside.drip_by[i], inside.steam_by[i], y.temperature[i]);
            let (heat_mass, water_mass) = (self.heat_mass[i], self.water_mass[i]);
            // What only the ends have: at the surface, at the bottom of a bone, at the first cell of meat above bone.
            let mut extra = no_block;
            if i == last {
                extra = [
                    surface.heat_by[0].map(|x| -x),
                    surface.heat_by[1].map(|x| -x),
                    surface.water_by[0],
                    surface.water_by[1],
                ];
            }
            if i == 0 && meat > 0 {
                for l in 0..LANES {
                    extra[0][l] -= surface.bottom_heat_by[l];
                }
            }
            if i == meat && meat > 0 {
                let [by_t, by_w] = surface.bottom_water_by;
                for l in 0..LANES {
                    extra[0][l] += latent_heat(t[l]) * by_t[l];
                    extra[1][l] += latent_heat(t[l]) * by_w[l];
                    extra[2][l] += by_t[l];
                    extra[3][l] += by_w[l];
                }
            }
            let mut inverse = no_block;
            let mut below = no_block;
            let mut film = [zero; 2];
            for l in 0..LANES {
                let latent = latent_heat(t[l]);
                let a = heat_mass[l] * per_step[l] + own[0][l] - other[0][l]
                    + latent * steam_by[0][l]
                    + extra[0][l];
                let b = own[1][l] - other[1][l] + latent * steam_by[1][l] + extra[1][l];
                let c = own[2][l] - other[2][l] + drip_by[0][l] + steam_by[0][l] + extra[2][l];
                let d = water_mass[l] * per_step[l] + own[3][l] - other[3][l]
                    + drip_by[1][l]
                    + steam_by[1][l]
                    + extra[3][l];
                // Multiplier: −(rows from below) × inverse before; the block below is minus that.
                let [ia, ib, ic, id] = before_inverse.map(|row| row[l]);
                let [fa, fb, fc, fd] = from_below.map(|row| row[l]);
                let ga = fa * ia + fb * ic;
                let gb = fa * ib + fb * id;
                let gc = fc * ia + fd * ic;
                let gd = fc * ib + fd * id;
                let [ua, ub, uc, ud] = before_above.map(|row| row[l]);
                let a = a + ga * ua + gb * uc;
                let b = b + ga * ub + gb * ud;
                let c = c + gc * ua + gd * uc;
                let d = d + gc * ub + gd * ud;
                let per_determinant = S::of(1.0) / (a * d - b * c);
                let (na, nb, nc, nd) = (
                    d * per_determinant,
                    -b * per_determinant,
                    -c * per_determinant,
                    a * per_determinant,
                );
                inverse[0][l] = na;
                inverse[1][l] = nb;
                inverse[2][l] = nc;
                inverse[3][l] = nd;
                below[0][l] = ga;
                below[1][l] = gb;
                below[2][l] = gc;
                below[3][l] = gd;
                // The film's row.
                let last_t = if i == last {
                    surface.film_by[0][l]
                } else {
                    S::of(0.0)
                };
                let last_w = if i == last {
                    surface.film_by[1][l]
                } else {
                    S::of(0.0)
                };
                let (ft, fw) = (before_film[0][l], before_film[1][l]);
                let st = -e.tight[l] * drip_by[0][l] - last_t - ft * ua - fw * uc;
                let sw = -e.tight[l] * drip_by[1][l] - last_w - ft * ub - fw * ud;
                film[0][l] = st * na + sw * nc;
                film[1][l] = st * nb + sw * nd;
            }
            self.inverse[i] = inverse;
            self.below[i] = below;
            self.above[i] = above;
            self.film[i] = film;
            before_inverse = inverse;
            before_above = above;
            before_film = film;
        }
        self.factorise_end(per_step, y, r, p, e);
    }

    /// Film, air and box after the cells are eliminated.
    #[inline(never)]
    fn factorise_end(
        &mut self,
        per_step: &Row<S>,
        y: &State<S>,
        r: &Rates<S>,
        p: &Pieces<S>,
        e: &Environment<S>,
    ) {
        let last = y.cells() - 1;
        let s = &r.surface;
        let [na, nb, nc, nd] = self.inverse[last];
        let film = self.film[last];
        let mut air: [Row<S>; 2] = [Row::default(); 2];
        let mut rest_box: [Row<S>; 2] = [Row::default(); 2];
        let mut last_by: [[Row<S>; 3]; 2] = [[Row::default(); 3]; 2];
        let mut end: [[Row<S>; 3]; 3] = [[Row::default(); 3]; 3];
        for l in 0..LANES {
            let open = (S::of(1.0) - e.boxed[l]) * p.columns_in_air[l];
            let boxed = e.boxed[l] * p.columns[l];
            let condensing = S::of(LATENT_HEAT) - S::of(LATENT_HEAT_FALL) * y.rest_box[l];
            let by_air: [S; 5] = std::array::from_fn(|k| -open * s.evaporated_by[k][l]);
            let by_box: [S; 5] = std::array::from_fn(|k| {
                boxed * (s.taken_by[k][l] - condensing * s.evaporated_by[k][l])
            });
            let air_t = by_air[0] * na[l] + by_air[1] * nc[l];
            let air_w = by_air[0] * nb[l] + by_air[1] * nd[l];
            let box_t = by_box[0] * na[l] + by_box[1] * nc[l];
            let box_w = by_box[0] * nb[l] + by_box[1] * nd[l];
            air[0][l] = air_t;
            air[1][l] = air_w;
            rest_box[0][l] = box_t;
            rest_box[1][l] = box_w;
            let mut z = [[S::of(0.0); 3]; 3];
            for k in 0..3 {
                let (heat, water) = (-s.heat_by[k + 2][l], s.water_by[k + 2][l]);
                last_by[0][k][l] = heat;
                last_by[1][k][l] = water;
                z[0][k] = -s.film_by[k + 2][l] - film[0][l] * heat - film[1][l] * water;
                z[1][k] = by_air[k + 2] - air_t * heat - air_w * water;
                z[2][k] = by_box[k + 2] - box_t * heat - box_w * water;
            }
            z[0][0] += per_step[l];
            z[1][1] += S::of(AIR_MASS) * per_step[l] + (S::of(1.0) - e.boxed[l]) * e.draught[l];
            z[2][2] += S::of(BOX_CAPACITY) * per_step[l] + e.boxed[l] * S::of(BOX_LOSS);
            let minor =
                |a: usize, b: usize, c: usize, d: usize| z[a][c] * z[b][d] - z[a][d] * z[b][c];
            let (m00, m01, m02) = (minor(1, 2, 1, 2), minor(1, 2, 0, 2), minor(1, 2, 0, 1));
            let per = S::of(1.0) / (z[0][0] * m00 - z[0][1] * m01 + z[0][2] * m02);
            end[0][0][l] = m00 * per;
            end[0][1][l] = -minor(0, 2, 1, 2) * per;
            end[0][2][l] = minor(0, 1, 1, 2) * per;
            end[1][0][l] = -m01 * per;
            end[1][1][l] = minor(0, 2, 0, 2) * per;
            end[1][2][l] = -minor(0, 1, 0, 2) * per;
            end[2][0][l] = m02 * per;
            end[2][1][l] = -minor(0, 2, 0, 1) * per;
            end[2][2][l] = minor(0, 1, 0, 1) * per;
        }
        self.air = air;
        self.rest_box = rest_box;
        self.last_by = last_by;
        self.end = end;
    }

    /// Mass × a rate of change, added to a right-hand side: `to += factor × mass × from`.
    #[inline(never)]
    pub(crate) fn add_mass_times(&self, to: &mut State<S>, factor: &Row<S>, from: &State<S>) {
        let n = to.cells();
        for i in 0..n {
            let (heat_mass, water_mass) = (self.heat_mass[i], self.water_mass[i]);
            let (t, w) = (from.temperature[i], from.water[i]);
            for l in 0..LANES {
                to.temperature[i][l] += factor[l] * heat_mass[l] * t[l];
                to.water[i][l] += factor[l] * water_mass[l] * w[l];
            }
        }
        for l in 0..LANES {
            to.film[l] += factor[l] * from.film[l];
            to.air[l] += factor[l] * S::of(AIR_MASS) * from.air[l];
            to.rest_box[l] += factor[l] * S::of(BOX_CAPACITY) * from.rest_box[l];
        }
    }

    /// Takes over the gains of a stage as a right-hand side. Where the heat capacity has changed since the beginning of
    /// the step, the gain of heat is scaled so that it stands for the same rate of temperature.
    #[inline(never)]
    pub(crate) fn load(&self, to: &mut State<S>, r: &Rates<S>, p: &Pieces<S>) {
        let n = to.cells();
        for i in 0..n {
            let (mass, capacity, volume) = (self.heat_mass[i], r.cells.capacity[i], p.volume[i]);
            let gain = r.gain.temperature[i];
            for l in 0..LANES {
                to.temperature[i][l] = gain[l] * mass[l] / (capacity[l] * volume[l]);
            }
            to.water[i] = r.gain.water[i];
        }
        to.film = r.gain.film;
        to.air = r.gain.air;
        to.rest_box = r.gain.rest_box;
    }

    /// Rates of temperature from gains of heat, K/s.
    pub(crate) fn warming(&self, gain: &[Row<S>], to: &mut [Row<S>]) {
        for ((to, gain), mass) in to.iter_mut().zip(gain).zip(&self.heat_mass) {
            for l in 0..LANES {
                to[l] = gain[l] / mass[l];
            }
        }
    }

    /// Solves in place.
    #[inline(never)]
    pub(crate) fn solve(&self, x: &mut State<S>) {
        let n = x.cells();
        let last = n - 1;
        let mut before_t: Row<S> = Row::default();
        let mut before_w: Row<S> = Row::default();
        let mut film = x.film;
        for i in 0..n {
            let [ga, gb, gc, gd] = self.below[i];
            let [ft, fw] = self.film[i];
            let (mut t, mut w) = (x.temperature[i], x.water[i]);
            for l in 0..LANES {
                t[l] += ga[l] * before_t[l] + gb[l] * before_w[l];
                w[l] += gc[l] * before_t[l] + gd[l] * before_w[l];
                film[l] -= ft[l] * t[l] + fw[l] * w[l];
            }
            x.temperature[i] = t;
            x.water[i] = w;
            before_t = t;
            before_w = w;
        }
        let mut end: [Row<S>; 3] = [Row::default(); 3];
        for l in 0..LANES {
            let air = x.air[l] - self.air[0][l] * before_t[l] - self.air[1][l] * before_w[l];
            let rest_box = x.rest_box[l]
                - self.rest_box[0][l] * before_t[l]
                - self.rest_box[1][l] * before_w[l];
            for (k, row) in end.iter_mut().enumerate() {
                row[l] = self.end[k][0][l] * film[l]
                    + self.end[k][1][l] * air
                    + self.end[k][2][l] * rest_box;
            }
        }
        [x.film, x.air, x.rest_box] = end;
        let mut next_t: Row<S> = Row::default();
        let mut next_w: Row<S> = Row::default();
        for i in (0..n).rev() {
            let [na, nb, nc, nd] = self.inverse[i];
            let [ua, ub, uc, ud] = self.above[i];
            let (mut t, mut w) = (x.temperature[i], x.water[i]);
            if i == last {
                for k in 0..3 {
                    for l in 0..LANES {
                        t[l] -= self.last_by[0][k][l] * end[k][l];
                        w[l] -= self.last_by[1][k][l] * end[k][l];
                    }
                }
            }
            for l in 0..LANES {
                let rt = t[l] - ua[l] * next_t[l] - ub[l] * next_w[l];
                let rw = w[l] - uc[l] * next_t[l] - ud[l] * next_w[l];
                t[l] = na[l] * rt + nb[l] * rw;
                w[l] = nc[l] * rt + nd[l] * rw;
            }
            x.temperature[i] = t;
            x.water[i] = w;
            next_t = t;
            next_w = w;
        }
    }
}
