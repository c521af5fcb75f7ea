//! What burns: heating values, the air it needs, and the water that its smoke carries.

use crate::plan::CookerKind;
use crate::provisions::Quantity;
use crate::units::{Energy, Mass};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What is burnt.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "is", rename_all = "snake_case")]
pub enum Fuel {
    /// Split hardwood.
    Wood {
        /// Water per weight as it lies there (wet basis), 0 to 0.6. A meter in a shop reads the dry basis: 25 % there
        /// is 20 % here.
        moisture: f64,
    },
    /// Lump charcoal.
    Lump,
    /// Charcoal briquettes.
    Briquettes,
    /// Wood pellets.
    Pellets,
    /// Propane from a bottle.
    Propane,
    /// Current from a socket, in kilowatt-hours instead of kilograms.
    Electricity,
}

/// Shares of carbon, hydrogen and oxygen in the weight as it burns.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ultimate {
    /// Carbon, kg/kg.
    pub carbon: f64,
    /// Hydrogen, kg/kg, that of the water left out.
    pub hydrogen: f64,
    /// Oxygen, kg/kg, that of the water left out.
    pub oxygen: f64,
    /// Water, kg/kg.
    pub water: f64,
}

/// Latent heat of water at 25 °C, MJ/kg.
const LATENT: f64 = 2.442;

/// Oven-dry hardwood, gross: 20.0 MJ/kg (8,600 Btu/lb, as the US Forest Products Laboratory reckons).
const DRY_WOOD_GROSS: f64 = 20.0;

/// Water in wood that was split, covered and seasoned, wet basis. Source: EPA Burn Wise wants 20 % or less; 18 % is the
/// usual of dry splits (common practice).
const SEASONED: f64 = 0.18;

/// Water in pellets, wet basis (common practice: 5 to 8 %).
const PELLET_MOISTURE: f64 = 0.07;

impl Fuel {
    /// What a kind of cooker usually burns. None for kitchen ovens.
    #[must_use]
    pub const fn usual(kind: CookerKind) -> Option<Self> {
        match kind {
            CookerKind::Offset => Some(Self::Wood { moisture: SEASONED }),
            CookerKind::Kettle | CookerKind::Drum | CookerKind::Cabinet => Some(Self::Briquettes),
            CookerKind::Ceramic => Some(Self::Lump),
            CookerKind::Pellet => Some(Self::Pellets),
            CookerKind::Gas => Some(Self::Propane),
            CookerKind::Electric => Some(Self::Electricity),
            CookerKind::Oven | CookerKind::FanOven => None,
        }
    }

    /// An amount of it from its number of kilograms, or of kilowatt-hours.
    pub(super) const fn amount(self, number: f64) -> Quantity {
        match self {
            Self::Electricity => Quantity::Energy(Energy::from_kilowatt_hours(number)),
            _ => Quantity::Mass(Mass::from_kilograms(number)),
        }
    }

    /// Composition. Wood 50 % carbon, 6 % hydrogen, 44 % oxygen when dry; charcoal 85 % carbon (both common rounded
    /// values); briquettes from memory within EN 1860-2 (fixed carbon over 60 %, ash below 18 %, water below 8 %).
    #[must_use]
    pub fn ultimate(self) -> Ultimate {
        let wood = |moisture: f64| Ultimate {
            carbon: 0.50 * (1.0 - moisture),
            hydrogen: 0.06 * (1.0 - moisture),
            oxygen: 0.44 * (1.0 - moisture),
            water: moisture,
        };
        match self {
            Self::Wood { moisture } => wood(moisture),
            Self::Pellets => wood(PELLET_MOISTURE),
            Self::Lump => Ultimate {
                carbon: 0.85,
                hydrogen: 0.03,
                oxygen: 0.05,
                water: 0.05,
            },
            Self::Briquettes => Ultimate {
                carbon: 0.66,
                hydrogen: 0.02,
                oxygen: 0.08,
                water: 0.07,
            },
            Self::Propane => Ultimate {
                carbon: 36.0 / 44.0,
                hydrogen: 8.0 / 44.0,
                oxygen: 0.0,
                water: 0.0,
            },
            Self::Electricity => Ultimate {
                carbon: 0.0,
                hydrogen: 0.0,
                oxygen: 0.0,
                water: 0.0,
            },
        }
    }

    /// Net heating value, MJ/kg: the water of the smoke stays steam. Electricity: MJ for each kilowatt-hour.
    ///
    /// Wood and pellets from the gross value of dry wood less what its water and hydrogen carry off as steam. Lump 29
    /// (a general page on charcoal that cites EN 1860 gives 29 to 33 gross). Briquettes 22.5 and propane 46.4 from
    /// memory.
    #[must_use]
    pub fn net_heating_value(self) -> f64 {
        match self {
            Self::Wood { moisture } => net_of_wood(moisture),
            Self::Pellets => net_of_wood(PELLET_MOISTURE),
            Self::Lump => 29.0,
            Self::Briquettes => 22.5,
            Self::Propane => 46.4,
            Self::Electricity => 3.6,
        }
    }

    /// Dry air that a kilogram needs to burn out, kg.
    ///
    /// Stoichiometry: 32/12 kg of oxygen for carbon, 8 for hydrogen, less the fuel's own; 23.2 % of dry air's weight is
    /// oxygen.
    #[must_use]
    pub fn air_needed(self) -> f64 {
        let parts = self.ultimate();
        (parts.carbon * 32.0 / 12.0 + parts.hydrogen * 8.0 - parts.oxygen) / 0.232
    }

    /// Water in the smoke per dry air, kg/kg, with so many times the air needed.
    #[must_use]
    pub fn smoke_humidity(self, excess_air: f64) -> f64 {
        let parts = self.ultimate();
        let air = excess_air * self.air_needed();
        if air > 0.0 {
            (9.0 * parts.hydrogen + parts.water) / air
        } else {
            0.0
        }
    }
}

fn net_of_wood(moisture: f64) -> f64 {
    let dry = 1.0 - moisture;
    DRY_WOOD_GROSS * dry - LATENT * (9.0 * 0.06 * dry + moisture)
}
