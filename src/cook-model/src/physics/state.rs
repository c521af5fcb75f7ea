//! What the march carries for eight members side by side, and what does not change while it marches.

use super::body::Body;
use super::properties::{
    DENSITY_OF_ASH, DENSITY_OF_FAT, DENSITY_OF_PROTEIN, DENSITY_OF_WATER, HEAT_CAPACITY_OF_ASH,
    WATER_HELD_WHEN_COOKED,
};
use super::real::{LANES, Real, Row};
use super::{Draw, constants};

/// The unknowns of the coupled system, and also any change of them.
#[derive(Clone, Debug)]
pub(crate) struct State<S> {
    /// Temperature of each cell, °C.
    pub(crate) temperature: Vec<Row<S>>,
    /// Water of each cell, kg per kg of protein and ash.
    pub(crate) water: Vec<Row<S>>,
    /// Liquid on the surface, kg per m² of column.
    pub(crate) film: Row<S>,
    /// Humidity ratio of the cooker's air.
    pub(crate) air: Row<S>,
    /// Air and liner of the rest box, °C.
    pub(crate) rest_box: Row<S>,
}

impl<S: Real> State<S> {
    pub(crate) fn new(cells: usize) -> Self {
        Self {
            temperature: vec![Row::default(); cells],
            water: vec![Row::default(); cells],
            film: Row::default(),
            air: Row::default(),
            rest_box: Row::default(),
        }
    }

    pub(crate) fn cells(&self) -> usize {
        self.temperature.len()
    }

    /// Copies another state of the same size.
    pub(crate) fn copy_from(&mut self, other: &Self) {
        self.temperature.copy_from_slice(&other.temperature);
        self.water.copy_from_slice(&other.water);
        self.film = other.film;
        self.air = other.air;
        self.rest_box = other.rest_box;
    }

    /// Sets everything to zero.
    pub(crate) fn clear(&mut self) {
        self.temperature.fill(Row::default());
        self.water.fill(Row::default());
        self.film = Row::default();
        self.air = Row::default();
        self.rest_box = Row::default();
    }

    /// Adds a multiple of another.
    #[inline]
    pub(crate) fn add_scaled(&mut self, factor: S, other: &Self) {
        let add = |to: &mut Row<S>, from: &Row<S>| {
            for l in 0..LANES {
                to[l] += factor * from[l];
            }
        };
        for (to, from) in self.temperature.iter_mut().zip(&other.temperature) {
            add(to, from);
        }
        for (to, from) in self.water.iter_mut().zip(&other.water) {
            add(to, from);
        }
        add(&mut self.film, &other.film);
        add(&mut self.air, &other.air);
        add(&mut self.rest_box, &other.rest_box);
    }

    /// Takes over the lanes that are marked.
    pub(crate) fn take_lanes(&mut self, marked: &[bool; LANES], from: &Self) {
        let take = |to: &mut Row<S>, from: &Row<S>| {
            for l in 0..LANES {
                to[l] = if marked[l] { from[l] } else { to[l] };
            }
        };
        for (to, from) in self.temperature.iter_mut().zip(&from.temperature) {
            take(to, from);
        }
        for (to, from) in self.water.iter_mut().zip(&from.water) {
            take(to, from);
        }
        take(&mut self.film, &from.film);
        take(&mut self.air, &from.air);
        take(&mut self.rest_box, &from.rest_box);
    }
}

/// Geometry and material of eight pieces. Volumes are per m² of column and of raw meat.
#[derive(Clone, Debug)]
pub(crate) struct Pieces<S> {
    /// Cells of bone at the bottom, the same in all lanes.
    pub(crate) bone_cells: usize,
    /// Half the thickness of each cell, m.
    pub(crate) half: Vec<Row<S>>,
    /// Relative area of the face above each cell.
    pub(crate) area: Vec<Row<S>>,
    /// Relative area of the bottom face.
    pub(crate) bottom_area: Row<S>,
    /// Volume of each cell, m.
    pub(crate) volume: Vec<Row<S>>,
    /// One over the volume of the meat of a column, 1/m.
    pub(crate) per_meat: Row<S>,
    /// Protein and ash, kg/m³.
    pub(crate) lean: Row<S>,
    /// Volume shares: of water for each kg/kg, of protein, of ash, and of fat for each kg/kg.
    pub(crate) water_share: Row<S>,
    pub(crate) protein_share: Row<S>,
    pub(crate) ash_share: Row<S>,
    pub(crate) fat_share: Row<S>,
    /// Densities that carry heat: protein, kg/m³; raw meat, kg/m³; the heat capacity of ash, J/m³ K.
    pub(crate) protein: Row<S>,
    pub(crate) raw: Row<S>,
    pub(crate) ash_capacity: Row<S>,
    /// Water raw, and held when fully heated, kg per kg of protein and ash.
    pub(crate) water_raw: Row<S>,
    pub(crate) water_cooked: Row<S>,
    /// One over the water below which meat counts as dry.
    pub(crate) per_dry_limit: Row<S>,
    /// Mobility of free water at 60 °C and of vapour in crust, m²/s.
    pub(crate) free_water: Row<S>,
    pub(crate) crust_vapour: Row<S>,
    /// Exponent by which lost volume shortens distances.
    pub(crate) shrink: Row<S>,
    /// Rate of dripping over mobility and surplus, kg/m³ m⁻².
    pub(crate) drip: Row<S>,
    /// Multiplies the surface fluxes.
    pub(crate) flux_ratio: Row<S>,
    /// Columns in the piece, m²; and in all pieces that share the air.
    pub(crate) columns: Row<S>,
    pub(crate) columns_in_air: Row<S>,
    /// Share of the surface that gives off water.
    pub(crate) evaporating_share: Row<S>,
    /// One over the length along which air flows, 1/m.
    pub(crate) per_flow_length: Row<S>,
    /// Multiplies the convective transfer.
    pub(crate) transfer: Row<S>,
    /// Air pressure, Pa.
    pub(crate) pressure: Row<S>,
    /// Fat raw, kg per kg.
    pub(crate) fat_raw: Row<S>,
}

impl<S: Real> Pieces<S> {
    /// Room for pieces of so many cells; every lane has to be set before use.
    pub(crate) fn new(cells: usize, bone_cells: usize) -> Self {
        let rows = || vec![Row::default(); cells];
        Self {
            bone_cells,
            half: rows(),
            area: rows(),
            bottom_area: Row::default(),
            volume: rows(),
            per_meat: Row::default(),
            lean: Row::default(),
            water_share: Row::default(),
            protein_share: Row::default(),
            ash_share: Row::default(),
            fat_share: Row::default(),
            protein: Row::default(),
            raw: Row::default(),
            ash_capacity: Row::default(),
            water_raw: Row::default(),
            water_cooked: Row::default(),
            per_dry_limit: Row::default(),
            free_water: Row::default(),
            crust_vapour: Row::default(),
            shrink: Row::default(),
            drip: Row::default(),
            flux_ratio: Row::default(),
            columns: Row::default(),
            columns_in_air: Row::default(),
            evaporating_share: Row::default(),
            per_flow_length: Row::default(),
            transfer: Row::default(),
            pressure: Row::default(),
            fat_raw: Row::default(),
        }
    }

    /// Puts a member's piece into a lane.
    pub(crate) fn set(&mut self, l: usize, body: &Body, draw: &Draw, pieces: u32, pressure: f64) {
        for (i, thickness) in body.thickness.iter().enumerate() {
            self.half[i][l] = S::of(0.5 * thickness);
            self.area[i][l] = S::of(body.area[i + 1]);
            self.volume[i][l] = S::of(body.volume[i]);
        }
        self.bottom_area[l] = S::of(body.area[0]);
        let meat: f64 = body.volume[body.bone_cells.min(body.volume.len() - 1)..]
            .iter()
            .sum();
        let composition = &body.composition;
        let raw = super::properties::density(composition);
        let lean = raw * (composition.protein + composition.ash);
        let water_raw = composition.water / (composition.protein + composition.ash);
        let water_cooked = (WATER_HELD_WHEN_COOKED + draw.water_holding).min(0.9 * water_raw);
        let put = |row: &mut Row<S>, value: f64| row[l] = S::of(value);
        put(&mut self.per_meat, 1.0 / meat);
        put(&mut self.lean, lean);
        put(&mut self.water_share, lean / DENSITY_OF_WATER);
        put(
            &mut self.protein_share,
            raw * composition.protein / DENSITY_OF_PROTEIN,
        );
        put(&mut self.ash_share, raw * composition.ash / DENSITY_OF_ASH);
        put(&mut self.fat_share, raw / DENSITY_OF_FAT);
        put(&mut self.protein, raw * composition.protein);
        put(&mut self.raw, raw);
        put(
            &mut self.ash_capacity,
            raw * composition.ash * HEAT_CAPACITY_OF_ASH,
        );
        put(&mut self.water_raw, water_raw);
        put(&mut self.water_cooked, water_cooked);
        put(
            &mut self.per_dry_limit,
            1.0 / (constants::DRY_LIMIT * water_cooked),
        );
        put(
            &mut self.free_water,
            constants::FREE_WATER * draw.free_water,
        );
        put(
            &mut self.crust_vapour,
            constants::CRUST_VAPOUR * draw.crust_vapour,
        );
        put(&mut self.shrink, constants::SHRINK * draw.shrink);
        let path = body.drip_length * body.drip_length;
        put(&mut self.drip, constants::DRIP * 2.467 / path * lean);
        put(&mut self.flux_ratio, body.flux_ratio);
        put(&mut self.columns, body.columns);
        put(&mut self.columns_in_air, body.columns * f64::from(pieces));
        put(&mut self.evaporating_share, body.evaporating_share);
        put(&mut self.per_flow_length, 1.0 / body.flow_length);
        put(&mut self.transfer, draw.heat_transfer);
        put(&mut self.pressure, pressure);
        put(&mut self.fat_raw, composition.fat);
    }
}
