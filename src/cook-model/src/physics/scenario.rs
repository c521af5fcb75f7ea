//! What is cooked and how: the same for every member of an ensemble.

use super::{CookerClass, ModelError};
use crate::meat::CutId;
use crate::units::{Length, Mass, Temperature, TemperatureDifference, TimeSpan};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// One kind of piece and everything that is done with it.
#[derive(Clone, Debug, PartialEq)]
pub struct Scenario {
    /// The cut.
    pub cut: CutId,
    /// Weight of one piece as it goes on, bones included. 0.02 to 40 kg.
    pub mass: Mass,
    /// Thickness by the ruler, bones under a slab included, if it was measured; else it follows from the weight.
    /// 8 to 400 mm.
    pub thickness: Option<Length>,
    /// Temperature all through when it goes on. −1 to 40 °C: frozen meat is outside the model.
    pub start: Temperature,
    /// What it is cooked in.
    pub cooker: CookerClass,
    /// Alike pieces that share the cooker's air. Other dishes in it are left out: they change only its humidity, which
    /// hardly matters. 1 to 200.
    pub pieces: u32,
    /// Pit temperatures: the first from the start, each until the next. 40 to 300 °C.
    pub pit: Vec<PitChange>,
    /// Measured: by how much the air was off what was set, in order of time, with straight lines between. As set before
    /// the first and after the last.
    pub departures: Vec<PitDeparture>,
    /// Covers, in the order in which they are put on. Bare until the first.
    pub wraps: Vec<WrapChange>,
    /// Spraying, while it is bare.
    pub spray: Option<Spray>,
    /// Times at which the lid is opened: the air falls and comes back as the class of cooker does.
    pub lid_openings: Vec<TimeSpan>,
    /// When it comes off.
    pub finish: Finish,
    /// Where it goes after that, in order.
    pub after: Vec<RestStage>,
    /// The world around.
    pub surroundings: Surroundings,
}

/// When something is done.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum When {
    /// So long after the piece went on. 0 to 72 h.
    AfterOn(TimeSpan),
    /// When the probe reaches this. −1 to 110 °C.
    Probe(Temperature),
}

/// A change of the pit's temperature.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PitChange {
    /// When.
    pub when: When,
    /// Air at the meat by the gauge, from then on.
    pub set: Temperature,
}

/// How far the pit was off its setting at one time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PitDeparture {
    /// Since the piece went on. 0 to 72 h, not before the one before.
    pub after: TimeSpan,
    /// Air above what was set. −300 to 300 K.
    pub by: TemperatureDifference,
}

/// What a piece is wrapped in.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum Cover {
    /// Nothing.
    Bare,
    /// Unwaxed butcher paper.
    Paper,
    /// Foil, or a covered pan.
    Foil,
}

/// A change of cover.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WrapChange {
    /// When.
    pub when: When,
    /// In what, from then on.
    pub cover: Cover,
}

/// Spraying with water, until the piece is wrapped or off.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spray {
    /// The first round. 0 to 72 h.
    pub first: TimeSpan,
    /// Then every so often. 5 min to 24 h.
    pub every: TimeSpan,
    /// Water that stays on the meat each round, per area of surface. 0 to 1 kg/m².
    pub kilograms_per_square_metre: f64,
}

/// When a piece comes off.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Finish {
    /// Tender: the cut's demand met, the probe not more than 4.5 K below the target, the minimum met at the coldest
    /// point. A cut without a demand is taken off by temperature instead.
    Tender {
        /// Where the trade's finish lies.
        target: Temperature,
        /// Safety minimum at the coldest point.
        minimum: Temperature,
    },
    /// By temperature: the probe at the target and the minimum met at the coldest point.
    Temperature {
        /// Where the probe must be.
        target: Temperature,
        /// Safety minimum at the coldest point.
        minimum: Temperature,
    },
    /// By the clock, whatever it is like.
    AfterOn(TimeSpan),
}

/// Where a piece goes when it has come off.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Place {
    /// In the open, at the temperature of [`Surroundings::resting`].
    Counter,
    /// In a lidded box with towels.
    RestBox,
    /// In an oven or warming drawer. 40 to 150 °C.
    WarmOven(Temperature),
}

/// A stage after the cooker.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RestStage {
    /// Where.
    pub place: Place,
    /// A change of cover on the way there; none keeps what is on.
    pub cover: Option<Cover>,
    /// It ends after this long. Up to 48 h.
    pub lasts: TimeSpan,
    /// It ends early when the coldest point has fallen to this: venting before a box.
    pub until_core: Option<Temperature>,
}

/// The world around a cook.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Surroundings {
    /// Air outside the cooker. −40 to 50 °C.
    pub outside: Temperature,
    /// Air around the counter and the rest box. −20 to 50 °C.
    pub resting: Temperature,
    /// Height above the sea. −430 to 5,000 m.
    pub altitude: Length,
}

impl Default for Surroundings {
    /// A mild day at sea level.
    fn default() -> Self {
        Self {
            outside: Temperature::from_celsius(20.0),
            resting: Temperature::from_celsius(20.0),
            altitude: Length::ZERO,
        }
    }
}

impl Scenario {
    /// A cut as it is usually cooked: programme, wrap and default target of the catalogue, fridge-cold (4 °C), nothing
    /// after it comes off.
    #[must_use]
    pub fn usual(cut: CutId, mass: Mass, cooker: CookerClass) -> Self {
        let entry = cut.cut();
        let target = entry.default_target();
        let minimum = entry.make.consumer_minimum();
        let programme = entry.programme;
        Self {
            cut,
            mass,
            thickness: None,
            start: Temperature::from_celsius(4.0),
            cooker,
            pieces: 1,
            pit: vec![PitChange {
                when: When::AfterOn(TimeSpan::ZERO),
                set: programme.pit,
            }],
            departures: Vec::new(),
            wraps: programme
                .wrap
                .map(|(cover, core)| WrapChange {
                    when: When::Probe(core),
                    cover,
                })
                .into_iter()
                .collect(),
            spray: None,
            lid_openings: Vec::new(),
            finish: if entry.cooks_to_tenderness() {
                Finish::Tender { target, minimum }
            } else {
                Finish::Temperature { target, minimum }
            },
            after: Vec::new(),
            surroundings: Surroundings::default(),
        }
    }
}

impl Scenario {
    /// Checks everything that does not depend on the draw.
    ///
    /// # Errors
    /// [`ModelError`] names the first quantity that is outside, with its range.
    pub fn check(&self) -> Result<(), ModelError> {
        let ok = ModelError::check;
        ok("weight", self.mass.kilograms(), 0.02, 40.0, "kg")?;
        if let Some(thickness) = self.thickness {
            ok("thickness", thickness.millimetres(), 8.0, 400.0, "mm")?;
        }
        ok(
            "temperature at the start",
            self.start.celsius(),
            -1.0,
            40.0,
            "°C",
        )?;
        ok(
            "number of pieces",
            f64::from(self.pieces),
            1.0,
            200.0,
            "pieces",
        )?;
        self.check_cooking()?;
        for stage in &self.after {
            ok("length of a stage", stage.lasts.hours(), 0.0, 48.0, "h")?;
            if let Place::WarmOven(air) = stage.place {
                ok("warm oven", air.celsius(), 40.0, 150.0, "°C")?;
            }
            if let Some(core) = stage.until_core {
                ok(
                    "core at the end of a stage",
                    core.celsius(),
                    0.0,
                    110.0,
                    "°C",
                )?;
            }
        }
        let s = &self.surroundings;
        ok("air outside", s.outside.celsius(), -40.0, 50.0, "°C")?;
        ok(
            "air around the rest",
            s.resting.celsius(),
            -20.0,
            50.0,
            "°C",
        )?;
        ok(
            "height above the sea",
            s.altitude.metres(),
            -430.0,
            5000.0,
            "m",
        )
    }

    /// The pit, the wraps, the spray, the lid and the finish.
    fn check_cooking(&self) -> Result<(), ModelError> {
        let ok = ModelError::check;
        let when = |quantity, when| match when {
            When::AfterOn(span) => ok(quantity, span.hours(), 0.0, 72.0, "h"),
            When::Probe(probe) => ok(quantity, probe.celsius(), -1.0, 110.0, "°C"),
        };
        match self.pit.first() {
            Some(first) if first.when == When::AfterOn(TimeSpan::ZERO) => {}
            _ => return Err(ModelError::NoPitAtStart),
        }
        for change in &self.pit {
            when("time of a pit change", change.when)?;
            ok("pit", change.set.celsius(), 40.0, 300.0, "°C")?;
        }
        let mut before = TimeSpan::ZERO;
        for departure in &self.departures {
            ok(
                "time of a pit reading",
                departure.after.hours(),
                before.hours(),
                72.0,
                "h",
            )?;
            ok(
                "pit off its setting",
                departure.by.kelvin(),
                -300.0,
                300.0,
                "K",
            )?;
            before = departure.after;
        }
        for change in &self.wraps {
            when("time of wrapping", change.when)?;
        }
        if let Some(spray) = self.spray {
            let water = spray.kilograms_per_square_metre;
            ok("first spray", spray.first.hours(), 0.0, 72.0, "h")?;
            ok(
                "time between sprays",
                spray.every.minutes(),
                5.0,
                1440.0,
                "min",
            )?;
            ok("water of a spray", water, 0.0, 1.0, "kg/m²")?;
        }
        for opening in &self.lid_openings {
            ok("time of opening the lid", opening.hours(), 0.0, 72.0, "h")?;
        }
        match self.finish {
            Finish::AfterOn(span) => ok("time it comes off", span.hours(), 0.0, 72.0, "h"),
            Finish::Tender { target, minimum } | Finish::Temperature { target, minimum } => {
                ok("target", target.celsius(), 30.0, 110.0, "°C")?;
                ok("safety minimum", minimum.celsius(), 0.0, 100.0, "°C")?;
                let wanted = target.celsius().max(minimum.celsius());
                let pit = self.pit.iter().map(|p| p.set.celsius()).fold(0.0, f64::max);
                if pit <= wanted {
                    return Err(ModelError::PitBelowTarget {
                        pit,
                        target: wanted,
                    });
                }
                Ok(())
            }
        }
    }
}
