//! The surface: convection, radiation, wrap, film, crust, and for a slab on the bone its lower face.

use super::air::{AIR_HEAT_LEWIS, MOLAR_RATIO, VAPOUR_GAS_CONSTANT, saturation};
use super::cells::Cells;
use super::constants::{
    BETWEEN_BONES, BOX_WIDTH, FILM_HALF, FILM_WIDTH, FLUX_WIDTH, MOBILITY_GROWTH, RADIATION,
    RUN_OFF, STEAM_WIDTH, WRAP_STEAM,
};
use super::environment::Environment;
use super::inside::latent_heat;
use super::real::{LANES, Real, Row, positive_part, root_of_cubes};
use super::state::{Pieces, State};

/// By temperature and water of the last cell, film, cooker's air, rest box.
pub(crate) type ByFive<S> = [Row<S>; 5];

/// Fluxes at the surface of a column, and what they depend on.
#[derive(Clone, Debug)]
pub(crate) struct Surface<S> {
    /// Temperature, °C; kept as the first guess of the next balance.
    pub(crate) temperature: Row<S>,
    /// Share that is wet.
    pub(crate) wet: Row<S>,
    /// Heat into the last cell, evaporation from inside it taken off, W/m².
    pub(crate) heat: Row<S>,
    pub(crate) heat_by: ByFive<S>,
    /// Water out of the last cell, kg/m² s.
    pub(crate) water: Row<S>,
    pub(crate) water_by: ByFive<S>,
    /// Growth of the film, without what drips into it, kg/m² s.
    pub(crate) film: Row<S>,
    pub(crate) film_by: ByFive<S>,
    /// Evaporated from film and crust, kg/m² s.
    pub(crate) evaporated: Row<S>,
    pub(crate) evaporated_by: ByFive<S>,
    /// Heat taken in, W/m².
    pub(crate) taken: Row<S>,
    pub(crate) taken_by: ByFive<S>,
    /// Heat that goes into evaporation, W/m².
    pub(crate) latent: Row<S>,
    pub(crate) latent_by: ByFive<S>,
    /// What the film cannot hold, kg/m² s, and its change with the film.
    pub(crate) run_off: Row<S>,
    pub(crate) run_off_by_film: Row<S>,
    /// Lower face of a bone-in slab: its temperature, heat into the bottom cell and its change, water from the first
    /// cell of meat and its changes with temperature and water.
    pub(crate) bottom_temperature: Row<S>,
    pub(crate) bottom_heat: Row<S>,
    pub(crate) bottom_heat_by: Row<S>,
    pub(crate) bottom_water: Row<S>,
    pub(crate) bottom_water_by: [Row<S>; 2],
}

impl<S: Real> Default for Surface<S> {
    fn default() -> Self {
        let row = Row::default();
        let five = [row; 5];
        Self {
            temperature: row,
            wet: row,
            heat: row,
            heat_by: five,
            water: row,
            water_by: five,
            film: row,
            film_by: five,
            evaporated: row,
            evaporated_by: five,
            taken: row,
            taken_by: five,
            latent: row,
            latent_by: five,
            run_off: row,
            run_off_by_film: row,
            bottom_temperature: row,
            bottom_heat: row,
            bottom_heat_by: row,
            bottom_water: row,
            bottom_water_by: [row; 2],
        }
    }
}

/// What a face sees, apart from its own temperature.
#[derive(Clone, Copy)]
struct Outlook<S> {
    air: S,
    walls: S,
    forced: S,
    natural: S,
    per_length: S,
    emissivity: S,
    resistance: S,
}

/// Heat from air and walls to a face at a temperature.
struct Exchange<S> {
    /// W/m², and its change with the face's temperature and with that of air and walls together.
    heat: S,
    by_face: S,
    by_outlook: S,
    /// Convective coefficient, and its relative change with the face's temperature.
    convection: S,
    convection_slope: S,
}

#[inline(always)]
fn exchange<S: Real>(o: &Outlook<S>, face: S) -> Exchange<S> {
    let difference = o.air - face;
    let square = difference * difference + S::of(4.0);
    let driving = square.root() * o.per_length;
    let natural = o.natural * driving.root().root();
    let convection = root_of_cubes(natural, o.forced).at_least(S::of(1e-6));
    let ratio = natural / convection;
    // d ln h / dT = (h_n/h)³ d ln h_n / dT, and h_n goes with the driving force to the power of one quarter.
    let convection_slope = ratio * ratio * ratio * S::of(-0.25) * difference / square;
    let (tw, ts) = (o.walls + S::of(273.15), face + S::of(273.15));
    let coefficient = o.emissivity * S::of(RADIATION);
    let radiation = coefficient * (tw * tw + ts * ts) * (tw + ts);
    let radiation_slope = coefficient * (S::of(3.0) * ts * ts + S::of(2.0) * ts * tw + tw * tw);
    let through = S::of(1.0) / (S::of(1.0) + (convection + radiation) * o.resistance);
    let toward = convection * difference + radiation * (o.walls - face);
    let heat = toward * through;
    let both = convection + radiation;
    let loosening = heat * o.resistance;
    // By the face: the coefficients change with it, and so does the difference.
    let convection_by_face = convection * convection_slope;
    let by_face = convection_by_face * (difference - loosening)
        + radiation_slope * (o.walls - face - loosening)
        - both;
    // By air and walls together: natural convection goes by the difference alone.
    let radiation_by_walls = coefficient * (S::of(3.0) * tw * tw + S::of(2.0) * ts * tw + ts * ts);
    let by_outlook = both - convection_by_face * (difference - loosening)
        + radiation_by_walls * (o.walls - face - loosening);
    Exchange {
        heat,
        by_face: by_face * through,
        by_outlook: by_outlook * through,
        convection,
        convection_slope,
    }
}

/// The vapour side of the surface.
#[derive(Clone, Copy)]
struct Vapour<S> {
    pressure: S,
    /// Of the cooker's air, Pa.
    air: S,
    /// Of the rest box at saturation, Pa; used where `boxed`.
    rest_box: S,
    boxed: bool,
    share: S,
    wrap: S,
    wrapped: S,
    wet: S,
}

/// Evaporation from the film at a surface temperature.
struct Evaporation<S> {
    /// kg/m² s, and its change with the surface's temperature.
    flux: S,
    by_face: S,
    /// Its change with the wet share, and with the vapour pressure outside.
    by_wet: S,
    by_outside: S,
    /// Vapour pressure outside, and how much of a change of the box's saturation it follows.
    outside: S,
    outside_by_box: S,
    /// Its change with the air's temperature: natural convection carries vapour too.
    by_air: S,
    /// Change of the pressure outside with the surface's temperature.
    outside_by_face: S,
    /// Resistance of air and wrap, m² s Pa/kg, and its change with the surface's temperature.
    resistance: S,
    resistance_by_face: S,
    /// And with the vapour pressure outside, and with the air's temperature.
    resistance_by_outside: S,
    resistance_by_air: S,
}

#[inline(always)]
fn evaporation<S: Real>(v: &Vapour<S>, heat: &Exchange<S>, face: S) -> Evaporation<S> {
    let (zero, half) = (S::of(0.0), S::of(0.5));
    let (saturated, log_slope) = saturation(face);
    let slope = saturated * log_slope;
    // The box's air is saturated at the colder of box and meat.
    let apart = v.rest_box - saturated;
    let root = (apart * apart + S::of(BOX_WIDTH * BOX_WIDTH)).root();
    let colder = half * (v.rest_box + saturated - root);
    let follows = half + half * apart / root;
    let outside = if v.boxed { colder } else { v.air };
    let outside_by_face = if v.boxed { follows * slope } else { zero };
    let outside_by_box = if v.boxed { S::of(1.0) - follows } else { zero };
    let most = S::of(0.95) * v.pressure;
    let between = v.pressure - half * (saturated.at_most(most) + outside.at_most(most));
    let between_slope = if saturated < most {
        -half * slope
    } else {
        zero
    };
    let of_air = between * S::of(AIR_HEAT_LEWIS / MOLAR_RATIO) / heat.convection;
    let of_air_slope = of_air * (between_slope / between - heat.convection_slope);
    let resistance = of_air + v.wrap;
    let drive = v.share / resistance;
    let diffusing = drive * (saturated - outside);
    let (over, open) = positive_part(saturated - v.pressure, S::of(STEAM_WIDTH));
    let bursting = v.wrapped * v.share * S::of(WRAP_STEAM);
    let x = diffusing + bursting * over;
    let x_by_face = drive * (slope - outside_by_face) - diffusing * of_air_slope / resistance
        + bursting * open * slope;
    // Condensation falls on the whole face, evaporation only leaves what is wet.
    let rising = x > zero;
    let factor = if rising { v.wet } else { S::of(1.0) };
    // A denser vapour outside also eases the way through the air.
    let easing = if outside < most {
        -half * of_air / between
    } else {
        zero
    };
    Evaporation {
        flux: factor * x,
        by_face: factor * x_by_face,
        by_wet: if rising { x } else { zero },
        by_air: -factor * diffusing * of_air * heat.convection_slope / resistance,
        by_outside: -factor * (drive + diffusing * easing / resistance),
        outside,
        outside_by_box,
        outside_by_face,
        resistance,
        resistance_by_face: of_air_slope,
        resistance_by_outside: easing,
        resistance_by_air: of_air * heat.convection_slope,
    }
}

/// Newton steps that the surface balance takes from the temperature it had before.
const NEWTON_STEPS: usize = 3;

impl<S: Real> Surface<S> {
    /// Works out the fluxes at the surface; with `SLOPES` their derivatives too.
    #[inline(never)]
    #[expect(
        clippy::too_many_lines,
        reason = "one surface, one loop: apart it would not become vector code"
    )]
    pub(crate) fn work_out<const SLOPES: bool>(
        &mut self,
        y: &State<S>,
        c: &Cells<S>,
        p: &Pieces<S>,
        e: &Environment<S>,
        shorter: &Row<S>,
        smaller: &Row<S>,
    ) {
        let last = y.cells() - 1;
        let (zero, one) = (S::of(0.0), S::of(1.0));
        let (t, half) = (y.temperature[last], p.half[last]);
        let (film, air, rest_box) = (y.film, y.air, y.rest_box);
        let conductivity = c.conductivity[last];
        let (surplus, free, free_slope) = (c.surplus[last], c.free[last], c.free_slope[last]);
        let held_slope = c.held_slope[last];
        let (dryness, dryness_slope) = (c.dryness[last], c.dryness_slope[last]);
        let vapour = c.vapour[last];
        let (vapour_by_t, vapour_by_w) = (c.vapour_by_temperature[last], c.vapour_by_water[last]);
        let (mobile, bound, bound_slope) = (c.mobile[last], c.bound[last], c.bound_slope[last]);
        let before = self.temperature;
        let mut out: [Row<S>; 9] = [Row::default(); 9];
        let mut by: [ByFive<S>; 6] = [[Row::default(); 5]; 6];
        let mut run_off_by_film: Row<S> = Row::default();
        for l in 0..LANES {
            let boxed = e.boxed[l] > S::of(0.5);
            let outlook = Outlook {
                air: if boxed { rest_box[l] } else { e.air[l] },
                walls: if boxed { rest_box[l] } else { e.walls[l] },
                forced: e.forced[l],
                natural: e.natural[l],
                per_length: p.per_flow_length[l],
                emissivity: e.emissivity[l],
                resistance: e.wrap_resistance[l],
            };
            let per_area = one / (p.flux_ratio[l] * smaller[l]);
            let liquid = film[l] * per_area;
            let room = S::of(FILM_HALF) + liquid.at_least(zero);
            let wet = liquid / room;
            let wet_by_film = S::of(FILM_HALF) / (room * room) * per_area;
            let damp = one / (S::of(MOLAR_RATIO) + air[l]);
            let pressure = p.pressure[l];
            let (box_saturated, box_log_slope) = saturation(rest_box[l]);
            let around = Vapour {
                pressure,
                air: pressure * air[l] * damp,
                rest_box: box_saturated,
                boxed,
                share: p.evaporating_share[l],
                wrap: e.vapour_resistance[l],
                wrapped: e.wrapped[l],
                wet,
            };
            let inward = conductivity[l] / (half[l] * shorter[l] * p.flux_ratio[l]);

            let mut face = before[l];
            for _ in 0..NEWTON_STEPS {
                let heat = exchange(&outlook, face);
                let steam = evaporation(&around, &heat, face);
                let latent = latent_heat(face);
                let excess = heat.heat - inward * (face - t[l]) - latent * steam.flux;
                let slope = heat.by_face - inward - latent * steam.by_face;
                let step = (excess / slope).at_most(S::of(30.0)).at_least(S::of(-30.0));
                face -= step;
            }
            let heat = exchange(&outlook, face);
            let steam = evaporation(&around, &heat, face);
            let latent = latent_heat(face);

            // Through the crust of the last cell.
            let beta = p.evaporating_share[l];
            let kelvin = t[l] + S::of(273.15);
            let crust =
                half[l] * shorter[l] * S::of(VAPOUR_GAS_CONSTANT) * kelvin / p.crust_vapour[l];
            let resistance = steam.resistance + crust * dryness[l];
            let push = vapour[l] - steam.outside;
            let (open, open_slope) = positive_part(beta * push / resistance, S::of(FLUX_WIDTH));
            let dry = one - wet;
            let through = dry * open;
            let latent_inside = latent_heat(t[l]);

            // From the cell into the film; where the meat lacks water, the crust drinks from what is wet.
            let flux = p.flux_ratio[l] * smaller[l];
            let drainage = flux * p.lean[l] / (half[l] * shorter[l]);
            let thirst = surplus[l].at_most(zero);
            let drain = drainage * ((mobile[l] + bound[l]) * free[l] + bound[l] * thirst * wet);
            let (spill, spilling) = positive_part(liquid - e.film_limit[l], S::of(FILM_WIDTH));
            let run_off = flux * spill * S::of(1.0 / RUN_OFF);

            out[0][l] = face;
            out[1][l] = wet;
            out[2][l] = flux * (heat.heat - latent * steam.flux - latent_inside * through);
            out[3][l] = flux * through + drain;
            out[4][l] = drain - flux * steam.flux - run_off;
            out[5][l] = flux * (steam.flux + through);
            out[6][l] = flux * heat.heat;
            out[7][l] = flux * (latent * steam.flux + latent_inside * through);
            out[8][l] = run_off;

            if SLOPES {
                // How the surface's temperature follows each of the five.
                let stiffness = heat.by_face - inward - latent * steam.by_face;
                let per_stiffness = -one / stiffness;
                let outside_by_air = if boxed {
                    zero
                } else {
                    pressure * S::of(MOLAR_RATIO) * damp * damp
                };
                let outside_by_box = steam.outside_by_box * box_saturated * box_log_slope;
                let heat_by_box = if boxed { heat.by_outlook } else { zero };
                let steam_by_air = if boxed { steam.by_air } else { zero };
                let face_by = [
                    inward * per_stiffness,
                    zero,
                    -latent * steam.by_wet * wet_by_film * per_stiffness,
                    -latent * steam.by_outside * outside_by_air * per_stiffness,
                    (heat_by_box - latent * (steam.by_outside * outside_by_box + steam_by_air))
                        * per_stiffness,
                ];
                // Evaporation from the film, directly and through the surface's temperature.
                let film_direct = [
                    zero,
                    zero,
                    steam.by_wet * wet_by_film,
                    steam.by_outside * outside_by_air,
                    steam.by_outside * outside_by_box + steam_by_air,
                ];
                let crust_open = dry * open_slope * beta / resistance;
                let widening = push / resistance;
                let crust_by_outside =
                    crust_open * (S::of(1.0) + widening * steam.resistance_by_outside);
                let widening_by_air = if boxed { steam.resistance_by_air } else { zero };
                let through_direct = [
                    crust_open * (vapour_by_t[l] - widening * crust * dryness[l] / kelvin),
                    crust_open * (vapour_by_w[l] - widening * crust * dryness_slope[l]),
                    -open * wet_by_film,
                    -crust_by_outside * outside_by_air,
                    -crust_by_outside * outside_by_box - crust_open * widening * widening_by_air,
                ];
                let through_by_face =
                    -crust_open * (steam.outside_by_face + widening * steam.resistance_by_face);
                let moves = mobile[l] + bound[l];
                // The crust drinks with a mobility that itself goes with its water.
                let thirsty = surplus[l] < zero;
                let drinks = if thirsty { bound[l] * wet } else { zero };
                let eases = if thirsty {
                    bound_slope[l] * thirst * wet
                } else {
                    zero
                };
                let by_surplus = drainage * (moves * free_slope[l] + drinks);
                let pull = by_surplus + drainage * eases;
                let drain_by = [
                    S::of(MOBILITY_GROWTH) * drain - by_surplus * held_slope[l],
                    pull,
                    drainage * bound[l] * thirst * wet_by_film,
                    zero,
                    zero,
                ];
                let spill_by_film = spilling * S::of(1.0 / RUN_OFF);
                run_off_by_film[l] = spill_by_film;
                for k in 0..5 {
                    let steam_by = film_direct[k] + steam.by_face * face_by[k];
                    let heat_direct = if k == 4 { heat_by_box } else { zero };
                    let heat_by = heat_direct + heat.by_face * face_by[k];
                    let through_by = through_direct[k] + through_by_face * face_by[k];
                    let inside = latent_inside * through_by;
                    by[0][k][l] = flux * (heat_by - latent * steam_by - inside);
                    by[1][k][l] = flux * through_by + drain_by[k];
                    let spilled = if k == 2 { spill_by_film } else { zero };
                    by[2][k][l] = drain_by[k] - flux * steam_by - spilled;
                    by[3][k][l] = flux * (steam_by + through_by);
                    by[4][k][l] = flux * heat_by;
                    by[5][k][l] = flux * (latent * steam_by + inside);
                }
            }
        }
        let [
            face,
            wet,
            heat,
            water,
            film_growth,
            evaporated,
            taken,
            latent,
            run_off,
        ] = out;
        self.temperature = face;
        self.wet = wet;
        self.heat = heat;
        self.water = water;
        self.film = film_growth;
        self.evaporated = evaporated;
        self.taken = taken;
        self.latent = latent;
        self.run_off = run_off;
        if SLOPES {
            [
                self.heat_by,
                self.water_by,
                self.film_by,
                self.evaporated_by,
                self.taken_by,
                self.latent_by,
            ] = by;
            self.run_off_by_film = run_off_by_film;
        }
        if (1..=last).contains(&p.bone_cells) {
            self.bottom::<SLOPES>(y, c, p, e, shorter, smaller);
        }
    }

    /// The lower face of a slab on the bone: bone that takes up heat, and meat between the bones that dries.
    #[inline(never)]
    fn bottom<const SLOPES: bool>(
        &mut self,
        y: &State<S>,
        c: &Cells<S>,
        p: &Pieces<S>,
        e: &Environment<S>,
        shorter: &Row<S>,
        smaller: &Row<S>,
    ) {
        let meat = p.bone_cells;
        let (t, k, half) = (y.temperature[0], c.conductivity[0], p.half[0]);
        let (rest_box, air) = (y.rest_box, y.air);
        let (tm, half_meat, dryness) = (y.temperature[meat], p.half[meat], c.dryness[meat]);
        let (vapour, dryness_slope) = (c.vapour[meat], c.dryness_slope[meat]);
        let (vapour_by_t, vapour_by_w) = (c.vapour_by_temperature[meat], c.vapour_by_water[meat]);
        let before = self.bottom_temperature;
        let mut out: [Row<S>; 6] = [Row::default(); 6];
        for l in 0..LANES {
            let boxed = e.boxed[l] > S::of(0.5);
            let outlook = Outlook {
                air: if boxed { rest_box[l] } else { e.air[l] },
                walls: if boxed { rest_box[l] } else { e.walls[l] },
                forced: e.forced[l],
                natural: e.natural[l],
                per_length: p.per_flow_length[l],
                emissivity: e.emissivity[l],
                resistance: e.wrap_resistance[l],
            };
            let inward = k[l] / (half[l] * shorter[l]);
            let mut face = before[l];
            for _ in 0..NEWTON_STEPS {
                let heat = exchange(&outlook, face);
                let excess = heat.heat - inward * (face - t[l]);
                let step = excess / (heat.by_face - inward);
                face -= step.at_most(S::of(30.0)).at_least(S::of(-30.0));
            }
            let heat = exchange(&outlook, face);
            let follows = inward / (inward - heat.by_face);
            let area = smaller[l] * p.bottom_area[l];
            out[0][l] = face;
            out[1][l] = area * heat.heat;
            out[2][l] = area * heat.by_face * follows;

            let pressure = p.pressure[l];
            let (saturated, log_slope) = saturation(tm[l]);
            let (box_saturated, _) = saturation(rest_box[l]);
            let of_air = pressure * air[l] / (S::of(MOLAR_RATIO) + air[l]);
            let outside = if boxed { box_saturated } else { of_air };
            let most = S::of(0.95) * pressure;
            let between = pressure - S::of(0.5) * (saturated.at_most(most) + outside.at_most(most));
            let crust =
                half_meat[l] * shorter[l] * S::of(VAPOUR_GAS_CONSTANT) * (tm[l] + S::of(273.15))
                    / p.crust_vapour[l];
            let per_between = S::of(AIR_HEAT_LEWIS / MOLAR_RATIO) / heat.convection;
            let resistance = between * per_between + e.vapour_resistance[l] + crust * dryness[l];
            let steep = if saturated < most {
                saturated * log_slope
            } else {
                S::of(0.0)
            };
            let resistance_by_t =
                S::of(-0.5) * steep * per_between + crust * dryness[l] / (tm[l] + S::of(273.15));
            let push = vapour[l] - outside;
            let drive = p.evaporating_share[l] / resistance;
            let (open, open_slope) = positive_part(drive * push, S::of(FLUX_WIDTH));
            let share = area * S::of(BETWEEN_BONES);
            out[3][l] = share * open;
            let slope = share * open_slope * drive;
            let widening = push / resistance;
            out[4][l] = slope * (vapour_by_t[l] - widening * resistance_by_t);
            out[5][l] = slope * (vapour_by_w[l] - widening * crust * dryness_slope[l]);
        }
        let [face, heat, heat_by, water, by_t, by_w] = out;
        self.bottom_temperature = face;
        self.bottom_heat = heat;
        self.bottom_water = water;
        if SLOPES {
            self.bottom_heat_by = heat_by;
            self.bottom_water_by = [by_t, by_w];
        }
    }
}
