//! Fitted and hand-set numbers of the march, each with where it is from.
//!
//! Fitted means: together with the thicknesses in the catalogue, one set for all cuts, to 45 real cooks, government
//! roasting charts and the trade's programmes, each held near what was known of it before. Mobility of free water,
//! dripping and water held when cooked trade against each other; none of the three is a measurement.

/// Mobility of free water at 60 °C, m²/s. Fitted.
pub(crate) const FREE_WATER: f64 = 1.57e-7;

/// Mobility of bound water at 60 °C, m²/s. Set by hand; nothing depends on it much.
pub(crate) const BOUND_WATER: f64 = 3e-10;

/// Growth of both mobilities per K.
pub(crate) const MOBILITY_GROWTH: f64 = 0.0155;

/// Dripping against the mobility of free water. Fitted.
pub(crate) const DRIP: f64 = 0.975;

/// Mobility of vapour in dry crust, m²/s. Fitted.
pub(crate) const CRUST_VAPOUR: f64 = 7.9e-8;

/// Meat counts as dry below this share of the water that cooked meat holds.
pub(crate) const DRY_LIMIT: f64 = 0.9;

/// Water activity: highest value and the water (kg per kg of protein and ash) that brings it down. From memory: 0.74 at
/// 0.2, 0.96 at 0.5.
pub(crate) const ACTIVITY: f64 = 0.985;
pub(crate) const ACTIVITY_WATER: f64 = 0.15;

/// Steam that leaves a cell for each Pa above the air's pressure, kg/m³ s Pa. Set by hand: it keeps wet meat within
/// 0.5 K of the boiling point.
pub(crate) const STEAM: f64 = 1e-5;

/// Exponent by which lost volume shortens the thickness: the same in all directions.
pub(crate) const SHRINK: f64 = 1.0 / 3.0;

/// Fat: share that never leaves, rate at which the rest does when hot (1/s), and the logistic in temperature. By hand.
pub(crate) const FAT_KEPT: f64 = 0.45;
pub(crate) const FAT_RATE: f64 = 1.0 / (5.0 * 3600.0);
pub(crate) const FAT_CENTRE: f64 = 60.0;
pub(crate) const FAT_WIDTH: f64 = 6.0;

/// Film on the surface: the amount at which half of it is wet (kg/m²), and how fast more than it can hold runs off (s).
pub(crate) const FILM_HALF: f64 = 0.02;
pub(crate) const RUN_OFF: f64 = 120.0;

/// Share of the lower face of a bone-in slab that is meat between bones. By hand, one cook; flat above 0.35.
pub(crate) const BETWEEN_BONES: f64 = 0.5;

/// Widths over which positive parts are rounded off: free water kg/kg, steam Pa, surface flux kg/m² s, film kg/m². Ours:
/// a hundredth of the water that meat gives up, a tenth of a kelvin at boiling; wide enough for large steps.
pub(crate) const FREE_WIDTH: f64 = 1e-2;
pub(crate) const STEAM_WIDTH: f64 = 200.0;
pub(crate) const FLUX_WIDTH: f64 = 1e-7;
pub(crate) const FILM_WIDTH: f64 = 1e-3;
/// Width over which the colder of box and meat is chosen for condensation, Pa.
pub(crate) const BOX_WIDTH: f64 = 100.0;

/// Steam past a wrap, kg/m² s Pa.
pub(crate) const WRAP_STEAM: f64 = 2e-7;

/// Natural convection: h = 1.42 (ΔT/L)^¼ W/m² K, simplified for air (from memory), with ΔT rounded off at 2 K.
pub(crate) const NATURAL_CONVECTION: f64 = 1.42;

/// Radiation constant, W/m² K⁴ (CODATA).
pub(crate) const RADIATION: f64 = 5.670_374e-8;

/// Emissivity of meat and paper, and of sooted foil.
pub(crate) const EMISSIVITY: f64 = 0.9;
pub(crate) const EMISSIVITY_OF_FOIL: f64 = 0.6;

/// Heat resistance of paper (fitted) and foil (by hand) with the air under them, m² K/W.
pub(crate) const PAPER_RESISTANCE: f64 = 0.0041;
pub(crate) const FOIL_RESISTANCE: f64 = 0.0041;

/// Vapour through paper: fresh (fitted) and soaked (three tenths of it, by hand), kg/m² s Pa, and the time in which it
/// soaks, s (by hand).
pub(crate) const PAPER_VAPOUR_FRESH: f64 = 1.47e-9;
pub(crate) const PAPER_VAPOUR_SOAKED: f64 = 0.44e-9;
pub(crate) const PAPER_SOAK_TIME: f64 = 2.5 * 3600.0;

/// Vapour through the seams of foil, kg/m² s Pa. By hand.
pub(crate) const FOIL_VAPOUR: f64 = 2e-10;

/// Liquid that stays on the meat, bare, in paper, in foil, kg/m². By hand.
pub(crate) const FILM_BARE: f64 = 0.10;
pub(crate) const FILM_PAPER: f64 = 0.3;
pub(crate) const FILM_FOIL: f64 = 3.0;

/// Air that a cooker holds, kg.
pub(crate) const AIR_MASS: f64 = 0.12;

/// Rest box: heat capacity J/K, loss W/K, how much warmer than the room it starts, K. By hand.
pub(crate) const BOX_CAPACITY: f64 = 6000.0;
pub(crate) const BOX_LOSS: f64 = 0.6;
pub(crate) const BOX_START: f64 = 5.0;
