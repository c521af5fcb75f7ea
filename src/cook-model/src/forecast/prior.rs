//! How much is not known before a cook: the sizes of the draws, and what measuring takes away from them.

use crate::physics::CookerClass;
use crate::units::TemperatureDifference;

/// What the person knows better than usual. All false: nothing measured, done before.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub struct Knowledge {
    /// The thickness was measured with a ruler.
    pub thickness_measured: bool,
    /// The pit gauge is a probe on the grate beside the meat.
    pub gauge_at_meat: bool,
    /// The class of cooker is a guess.
    pub cooker_unknown: bool,
    /// The first time this cook makes this cut.
    pub first_time: bool,
}

/// Standard deviations of the draws, one field for each uncertain input. Those named *log* are of the natural
/// logarithm of a multiplier. Unless a field says otherwise the sizes were set by hand, by judgement, before the model
/// was compared with cooks; they are not fitted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Prior {
    /// World: air outside against what was told. From memory: day-ahead forecasts miss by about 2 K, and the yard is
    /// not the weather station.
    pub outside: TemperatureDifference,
    /// Cooker: air at the meat against the gauge.
    pub gauge: TemperatureDifference,
    /// Cooker: swing of the pit about its setting, all modes together, at any one moment.
    pub swing: TemperatureDifference,
    /// Cooker, log: convective heat transfer.
    pub heat_transfer: f64,
    /// Cooker, log: humidity of the cooker's air.
    pub humidity: f64,
    /// Cooker, log: how warm its walls are.
    pub walls: f64,
    /// Piece, log: thickness.
    pub thickness: f64,
    /// Piece, log: share of the surface that gives off water.
    pub evaporating_share: f64,
    /// Piece, log: mobility of free water. The mobility and the water held when hot are one uncertain direction (the
    /// fit trades one for the other), so one draw moves both.
    pub free_water: f64,
    /// Piece, kg per kg dry lean: water held when hot; goes with [`Prior::free_water`].
    pub water_holding: f64,
    /// Piece, log: mobility of vapour in dry crust.
    pub crust_vapour: f64,
    /// Piece, log: how easily vapour passes through paper.
    pub paper: f64,
    /// Piece, mass fraction: fat.
    pub fat: f64,
    /// Piece, log: how lost volume shortens the thickness.
    pub shrink: f64,
    /// Piece: place of the probe off the coldest point as a fraction of the way to the surface; one-sided.
    pub probe: f64,
    /// Piece, log: tenderness that the cut demands.
    pub tenderness: f64,
}

impl Prior {
    /// The prior of a class of cooker.
    #[must_use]
    pub const fn of(cooker: CookerClass, knowledge: Knowledge) -> Self {
        let told = match cooker {
            CookerClass::Offset | CookerClass::Kettle => 8.0,
            CookerClass::Cabinet | CookerClass::Electric => 7.0,
            CookerClass::Drum
            | CookerClass::Ceramic
            | CookerClass::StillOven
            | CookerClass::FanOven => 6.0,
            CookerClass::Generic => 5.0,
        };
        let gauge = if knowledge.gauge_at_meat {
            2.5
        } else if knowledge.cooker_unknown {
            8.0
        } else {
            told
        };
        Self {
            outside: TemperatureDifference::from_kelvin(3.0),
            gauge: TemperatureDifference::from_kelvin(gauge),
            swing: TemperatureDifference::from_kelvin(4.0),
            heat_transfer: 0.20,
            humidity: 0.25,
            walls: 0.03,
            thickness: if knowledge.thickness_measured {
                0.05
            } else {
                0.12
            },
            evaporating_share: 0.12,
            free_water: 0.30,
            water_holding: 0.10,
            crust_vapour: 0.35,
            paper: 0.60,
            fat: 0.03,
            shrink: 0.30,
            probe: 0.12,
            tenderness: 0.10,
        }
    }
}
