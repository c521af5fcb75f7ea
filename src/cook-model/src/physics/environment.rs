//! What surrounds each of eight pieces at a moment: air, walls, wrap, box.

use super::real::{Real, Row};
use super::{constants, cooker};
use crate::physics::Cover;

/// Surroundings of eight lanes. The first part changes only between steps, the last within them.
#[derive(Clone, Debug, Default)]
pub(crate) struct Environment<S> {
    /// Forced convection, W/m² K.
    pub(crate) forced: Row<S>,
    /// Coefficient of natural convection.
    pub(crate) natural: Row<S>,
    /// Emissivity of what is seen from outside.
    pub(crate) emissivity: Row<S>,
    /// Heat resistance of the wrap, m² K/W.
    pub(crate) wrap_resistance: Row<S>,
    /// 1 in any wrap.
    pub(crate) wrapped: Row<S>,
    /// 1 where what drips stays in the wrap.
    pub(crate) tight: Row<S>,
    /// Liquid that stays on the meat, kg/m².
    pub(crate) film_limit: Row<S>,
    /// Air through the cooker, kg/s, and its humidity ratio.
    pub(crate) draught: Row<S>,
    pub(crate) humidity: Row<S>,
    /// 1 in the rest box; its room, °C.
    pub(crate) boxed: Row<S>,
    pub(crate) room: Row<S>,
    /// Air and walls, °C.
    pub(crate) air: Row<S>,
    pub(crate) walls: Row<S>,
    /// Resistance of the wrap to vapour, m² s Pa/kg.
    pub(crate) vapour_resistance: Row<S>,
}

/// A wrap as one lane sees it over time.
#[derive(Clone, Copy, Debug)]
pub(crate) struct WrapCourse {
    cover: Cover,
    /// When it was put on, s.
    since: f64,
    /// Multiplies the vapour that passes paper.
    paper: f64,
}

impl WrapCourse {
    pub(crate) const fn new(cover: Cover, since: f64, paper: f64) -> Self {
        Self {
            cover,
            since,
            paper,
        }
    }

    /// Resistance to vapour at a time, m² s Pa/kg.
    pub(crate) fn vapour_resistance(&self, time: f64) -> f64 {
        match self.cover {
            Cover::Bare => 0.0,
            Cover::Paper => {
                let fresh = constants::PAPER_VAPOUR_FRESH * self.paper;
                let soaked = constants::PAPER_VAPOUR_SOAKED * self.paper;
                let share = Real::exp((self.since - time) / constants::PAPER_SOAK_TIME);
                1.0 / (soaked + (fresh - soaked) * share)
            }
            Cover::Foil => 1.0 / constants::FOIL_VAPOUR,
        }
    }
}

impl<S: Real> Environment<S> {
    /// Puts a cover on a lane.
    pub(crate) fn cover(&mut self, l: usize, cover: Cover) {
        let (emissivity, resistance, limit) = match cover {
            Cover::Bare => (constants::EMISSIVITY, 0.0, constants::FILM_BARE),
            Cover::Paper => (
                constants::EMISSIVITY,
                constants::PAPER_RESISTANCE,
                constants::FILM_PAPER,
            ),
            Cover::Foil => (
                constants::EMISSIVITY_OF_FOIL,
                constants::FOIL_RESISTANCE,
                constants::FILM_FOIL,
            ),
        };
        let flag = |on: bool| S::of(f64::from(u8::from(on)));
        self.emissivity[l] = S::of(emissivity);
        self.wrap_resistance[l] = S::of(resistance);
        self.film_limit[l] = S::of(limit);
        self.wrapped[l] = flag(cover != Cover::Bare);
        self.tight[l] = flag(cover == Cover::Foil);
    }

    /// Puts a lane into a place whose air moves and is renewed like this.
    pub(crate) fn place(
        &mut self,
        l: usize,
        place: &cooker::Climate,
        flow_length: f64,
        transfer: f64,
    ) {
        self.forced[l] = S::of(transfer * cooker::forced_convection(place.speed, flow_length));
        self.natural[l] = S::of(transfer * constants::NATURAL_CONVECTION);
        self.draught[l] = S::of(place.draught);
        self.humidity[l] = S::of(place.humidity);
        self.boxed[l] = S::of(f64::from(u8::from(place.boxed)));
    }

    /// Copies what a lane sees at one moment.
    pub(crate) fn moment(&mut self, l: usize, air: f64, walls: f64, vapour_resistance: f64) {
        self.air[l] = S::of(air);
        self.walls[l] = S::of(walls);
        self.vapour_resistance[l] = S::of(vapour_resistance);
    }
}
