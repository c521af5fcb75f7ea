//! One member's piece: its geometry, mesh and composition, from the cut, what was measured, and the draw.

use super::error::ModelError;
use super::mesh::{fine_at_both_ends, fine_at_surface};
use super::shape::{Shape, sorted};
use super::{Draw, Scenario, properties};
use crate::meat::{Bone, Composition, Cut};

/// Cells of a layer of bone under a slab.
pub(crate) const BONE_CELLS: usize = 4;

/// Share of the edges of a bone-in slab that counts as top face. Set by hand to one cook.
const EDGE_SHARE: f64 = 0.16;

/// A piece as the march sees it. Lengths in m, per m² of raw surface of the one-coordinate body where "column" is said.
#[derive(Clone, Debug)]
pub(crate) struct Body {
    /// Composition of the meat.
    pub(crate) composition: Composition,
    /// Thickness of each cell.
    pub(crate) thickness: Vec<f64>,
    /// Area of the face below each cell and above the last, relative to the surface.
    pub(crate) area: Vec<f64>,
    /// Volume of each cell of a column.
    pub(crate) volume: Vec<f64>,
    /// Cells of bone, from the bottom.
    pub(crate) bone_cells: usize,
    /// Multiplies the surface fluxes.
    pub(crate) flux_ratio: f64,
    /// Columns in the piece: its volume over a column's, m².
    pub(crate) columns: f64,
    /// Distance over which the meat drips.
    pub(crate) drip_length: f64,
    /// Length over which air flows along it.
    pub(crate) flow_length: f64,
    /// Mass of the meat, kg.
    pub(crate) meat: f64,
    /// Share of the surface that gives off water.
    pub(crate) evaporating_share: f64,
}

impl Body {
    /// Builds a member's piece.
    ///
    /// # Errors
    /// [`ModelError::OutOfRange`] if a measured thickness does not fit the weight.
    pub(crate) fn new(scenario: &Scenario, draw: &Draw, cells: usize) -> Result<Self, ModelError> {
        let cut = scenario.cut.cut();
        let [thickness, width, length] = dimensions(scenario, draw, cut)?;
        let fill = cut.shape.fill;
        let composition = with_fat(cut.composition, draw.fat);
        let evaporating_share = (cut.evaporating_share * draw.evaporating_share).min(1.0);
        let middle = sorted([thickness, width, length])[1];
        let mut body = if let Bone::Under {
            thickness: bone, ..
        } = cut.bone
        {
            let bone = bone.metres();
            #[expect(clippy::cast_precision_loss, reason = "four")]
            let mut layers = vec![bone / BONE_CELLS as f64; BONE_CELLS];
            layers.extend(fine_at_both_ends(thickness, cells - BONE_CELLS));
            let volume = thickness * width * length * fill;
            Self {
                area: vec![1.0; cells + 1],
                volume: layers.clone(),
                thickness: layers,
                bone_cells: BONE_CELLS,
                flux_ratio: 1.0
                    + EDGE_SHARE * 2.0 * thickness * (width + length) / (width * length),
                columns: volume / thickness,
                drip_length: thickness,
                flow_length: 0.9 * width,
                meat: volume,
                composition,
                evaporating_share,
            }
        } else {
            let shape = Shape::of([thickness / 2.0, width / 2.0, length / 2.0], fill);
            let layers = fine_at_surface(shape.radius, cells);
            let (area, volume) = faces(&layers, shape.exponent);
            Self {
                area,
                volume,
                thickness: layers,
                bone_cells: 0,
                flux_ratio: shape.flux_ratio,
                columns: shape.volume * (shape.exponent + 1.0) / shape.radius,
                drip_length: shape.radius,
                flow_length: 0.9 * middle,
                meat: shape.volume,
                composition,
                evaporating_share,
            }
        };
        body.meat *= properties::density(&body.composition);
        Ok(body)
    }

    /// A body of `cells` cells without water: what the march reduces to for tests of conduction alone.
    pub(crate) fn of_bone(
        exponent: f64,
        radius: f64,
        cells: usize,
        composition: Composition,
    ) -> Self {
        let layers = fine_at_surface(radius, cells);
        let (area, volume) = faces(&layers, exponent);
        Self {
            composition,
            thickness: layers,
            area,
            volume,
            bone_cells: cells,
            flux_ratio: 1.0,
            columns: 1.0,
            drip_length: radius,
            flow_length: radius,
            meat: 1.0,
            evaporating_share: 0.0,
        }
    }

    /// Middle of each cell above the bottom of the body.
    pub(crate) fn middles(&self) -> Vec<f64> {
        let mut below = 0.0;
        self.thickness
            .iter()
            .map(|d| {
                below += d;
                below - 0.5 * d
            })
            .collect()
    }
}

/// Relative areas of the faces and volumes of the cells of a column.
fn faces(layers: &[f64], exponent: f64) -> (Vec<f64>, Vec<f64>) {
    let radius: f64 = layers.iter().sum();
    let mut radii = vec![0.0];
    let mut at = 0.0;
    for layer in layers {
        at += layer;
        radii.push(at);
    }
    let relative = |r: &f64| libm::pow(r / radius, exponent);
    let mut area: Vec<f64> = radii.iter().map(relative).collect();
    // Nothing passes through the middle, of a slab either.
    area[0] = 0.0;
    let content = |r: f64| radius * libm::pow(r / radius, exponent + 1.0) / (exponent + 1.0);
    let volume = radii
        .windows(2)
        .map(|pair| content(pair[1]) - content(pair[0]))
        .collect();
    (area, volume)
}

/// Thickness, width and length of the meat, m.
fn dimensions(scenario: &Scenario, draw: &Draw, cut: &Cut) -> Result<[f64; 3], ModelError> {
    let reference = &cut.shape;
    let growth = scenario.mass / reference.mass;
    let grown = |length: f64, exponent: f64| length * libm::pow(growth, exponent);
    let [et, ew, el] = reference.exponents;
    let expected = grown(reference.thickness.metres(), et);
    let under = match cut.bone {
        Bone::Under { thickness, .. } => thickness.metres(),
        Bone::None | Bone::Within { .. } => 0.0,
    };
    let told = match scenario.thickness {
        None => expected,
        Some(measured) => {
            let (low, high) = (0.45 * expected + under, 2.2 * expected + under);
            let measured = measured.metres();
            ModelError::check(
                "thickness for this weight",
                1e3 * measured,
                1e3 * low,
                1e3 * high,
                "mm",
            )?;
            measured - under
        }
    };
    let thickness = told * draw.thickness;
    let give = (thickness / expected).sqrt();
    let width = grown(reference.width.metres(), ew) / give;
    let length = grown(reference.length.metres(), el) / give;
    Ok([thickness, width, length])
}

/// More or less fat; the other parts give way in proportion.
fn with_fat(composition: Composition, more: f64) -> Composition {
    let fat = (composition.fat + more).clamp(0.005, 0.75);
    let others = (1.0 - fat) / (composition.water + composition.protein + composition.ash);
    Composition {
        water: composition.water * others,
        protein: composition.protein * others,
        fat,
        ash: composition.ash * others,
        source: composition.source,
    }
}
