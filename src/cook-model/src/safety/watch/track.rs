//! What is known of one piece of food.

use crate::plan::Audience;
use crate::safety::cooling::Chilling;
use crate::safety::{LethalityTable, Sort};
use crate::units::{Length, Mass, Moment, Temperature, TimeSpan};
use serde::{Deserialize, Serialize};

/// A piece of food and everything that was told about it.
#[derive(Clone, Debug, PartialEq)]
pub struct Track {
    /// What it is and what was done to it.
    pub sort: Sort,
    /// By which standard it counts as cooked.
    pub standard: Standard,
    /// Who is served.
    pub audience: Audience,
    /// Air around it when it is out.
    pub air: Temperature,
    /// Cooked weight of what is kept together. None: not known, reckoned with 1 kg.
    pub mass: Option<Mass>,
    /// From on to a hot surface, as long as the model thinks it may take with the fire as planned.
    pub surface_takes: TimeSpan,
    /// Out of the fridge right before it went on, counted where nobody told when it left the cold.
    pub out_before_on: TimeSpan,
    /// What happened, in any order.
    pub happenings: Vec<Happening>,
}

impl Track {
    /// Nothing told yet, at home on a mild day. The surface is taken to be hot 2 h after it went on (set by hand, the
    /// slow end of what the cook model gives).
    #[must_use]
    pub const fn new(sort: Sort) -> Self {
        Self {
            sort,
            standard: Standard::Minimum,
            audience: Audience::Household,
            air: Temperature::from_celsius(20.0),
            mass: None,
            surface_takes: TimeSpan::from_hours(2.0),
            out_before_on: TimeSpan::ZERO,
            happenings: Vec::new(),
        }
    }

    /// The same with one thing more.
    #[must_use]
    pub fn with(mut self, at: Moment, what: Happened) -> Self {
        self.happenings.push(Happening { at, what });
        self
    }
}

/// By which standard it counts as cooked.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Standard {
    /// The minimum of its sort.
    Minimum,
    /// Time at temperature by the printed table: a choice that was made knowingly.
    Table,
}

impl Standard {
    /// The table that a sort may be cooked by. None: there is none for it.
    #[must_use]
    pub const fn table(self, sort: Sort) -> Option<LethalityTable> {
        match (self, sort) {
            (Self::Table, Sort::IntactMuscle) => Some(LethalityTable::RedMeat),
            (Self::Table, Sort::Poultry) => Some(LethalityTable::Poultry),
            _ => None,
        }
    }
}

/// One thing that happened.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Happening {
    /// When.
    pub at: Moment,
    /// What.
    pub what: Happened,
}

/// What can happen to a piece of food.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Happened {
    /// Raw, out of the fridge.
    TakenOut,
    /// Raw, back in the fridge.
    PutBack,
    /// On the heat.
    On,
    /// The air at the meat was read.
    Pit(Temperature),
    /// Its coldest point was read; the lowest of several places.
    Core(Temperature),
    /// The fire went out, or the power.
    HeatLost,
    /// Off the heat.
    Off(Waiting),
    /// On the table, or sliced and off the heat.
    Served,
    /// Put away to get cold.
    Chilled(Option<Portion>),
    /// Cold, and back on heat to be eaten hot.
    Reheating,
}

/// Where cooked food waits.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Waiting {
    /// Wrapped or bare, in the open.
    Out,
    /// In a lidded box.
    Box,
    /// In an oven or warming drawer at this air.
    WarmOven(Temperature),
}

/// How what is left was put away.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Portion {
    /// Depth of the layer, or thickness of the piece.
    pub depth: Length,
    /// How it is chilled.
    pub chilling: Chilling,
}
