//! Conduction in one direction, fully implicit on a uniform grid.

use super::Body;
use super::body::{CONDUCTIVITY_W_PER_M_K, HEAT_CAPACITY_J_PER_M3_K};
use crate::units::{Temperature, TimeSpan};

/// What a face sees.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Face {
    /// Temperature around it.
    pub air: Temperature,
    /// Heat transfer, W/(m² K).
    pub transfer: f64,
}

/// The middle and the outside of a body over time.
#[derive(Clone, Debug, PartialEq)]
pub struct Course {
    /// Time between two entries.
    pub every: TimeSpan,
    /// The cell farthest from its surroundings at each entry, °C: the hottest while it cools, the coldest while it warms.
    pub slowest: Vec<f64>,
}

const CELLS: usize = 40;
const STEP_SECONDS: f64 = 10.0;

impl Course {
    /// First time at which the slowest point has come to a temperature from where it began; none if it never does.
    #[must_use]
    pub fn reaches(&self, temperature: Temperature) -> Option<TimeSpan> {
        let goal = temperature.celsius();
        let start = *self.slowest.first()?;
        let there = |value: f64| {
            if start >= goal {
                value <= goal
            } else {
                value >= goal
            }
        };
        if there(start) {
            return Some(TimeSpan::ZERO);
        }
        let index = self.slowest.iter().position(|value| there(*value))?;
        let [before, after] = [self.slowest[index - 1], self.slowest[index]];
        #[expect(clippy::cast_precision_loss, reason = "far fewer entries than 2^53")]
        let entries = (index - 1) as f64 + (goal - before) / (after - before);
        Some(self.every * entries)
    }
}

/// Follows a body that starts at one temperature all through. A layer has its second face at its bottom; round bodies
/// and lumps see the first face all around.
#[must_use]
pub fn follow(body: Body, start: Temperature, top: Face, bottom: Face, until: TimeSpan) -> Course {
    let grid = Grid::new(body);
    let mut cells = [start.celsius(); CELLS];
    let steps = until.seconds() / STEP_SECONDS;
    let cools = start > top.air || start > bottom.air;
    let slowest = |cells: &[f64; CELLS]| {
        let pick = if cools { f64::max } else { f64::min };
        cells.iter().copied().fold(cells[0], pick)
    };
    let mut course = vec![slowest(&cells)];
    let mut step = 0.0;
    while step < steps {
        grid.advance(&mut cells, top, bottom);
        course.push(slowest(&cells));
        step += 1.0;
    }
    Course {
        every: TimeSpan::from_seconds(STEP_SECONDS),
        slowest: course,
    }
}

/// Faces and volumes of the cells from the middle (or the bottom of a layer) outwards, per unit of what does not change.
struct Grid {
    width: f64,
    faces: [f64; CELLS + 1],
    volumes: [f64; CELLS],
    has_bottom: bool,
}

impl Grid {
    fn new(body: Body) -> Self {
        let power = body.power();
        let layer = power == 0;
        let across = body.thickness.metres() * if layer { 1.0 } else { 0.5 };
        #[expect(clippy::cast_precision_loss, reason = "forty cells")]
        let place = |index: usize| across * (index as f64) / (CELLS as f64);
        let raise = |r: f64, power: u8| (0..power).fold(1.0, |product, _| product * r);
        let faces = core::array::from_fn(|index| raise(place(index), power));
        let volumes = core::array::from_fn(|index| {
            let [inner, outer] = [place(index), place(index + 1)].map(|r| raise(r, power + 1));
            (outer - inner) / f64::from(power + 1)
        });
        Self {
            width: place(1),
            faces,
            volumes,
            has_bottom: layer,
        }
    }

    fn advance(&self, cells: &mut [f64; CELLS], top: Face, bottom: Face) {
        let between = CONDUCTIVITY_W_PER_M_K / self.width;
        let through =
            |face: Face| 1.0 / (1.0 / face.transfer + 0.5 * self.width / CONDUCTIVITY_W_PER_M_K);
        let mut diagonal = [0.0; CELLS];
        let mut above = [0.0; CELLS];
        let mut right = [0.0; CELLS];
        for index in 0..CELLS {
            let holds = self.volumes[index] * HEAT_CAPACITY_J_PER_M3_K / STEP_SECONDS;
            diagonal[index] = holds;
            right[index] = holds * cells[index];
            let (inner, outer) = (self.faces[index], self.faces[index + 1]);
            if index > 0 {
                diagonal[index] += between * inner;
            } else if self.has_bottom {
                diagonal[index] += through(bottom) * inner;
                right[index] += through(bottom) * inner * bottom.air.celsius();
            }
            if index + 1 < CELLS {
                diagonal[index] += between * outer;
                above[index] = -between * outer;
            } else {
                diagonal[index] += through(top) * outer;
                right[index] += through(top) * outer * top.air.celsius();
            }
        }
        // The matrix is symmetric and diagonally dominant: elimination without pivoting.
        for index in 1..CELLS {
            let factor = above[index - 1] / diagonal[index - 1];
            diagonal[index] -= factor * above[index - 1];
            right[index] -= factor * right[index - 1];
        }
        cells[CELLS - 1] = right[CELLS - 1] / diagonal[CELLS - 1];
        for index in (0..CELLS - 1).rev() {
            cells[index] = (right[index] - above[index] * cells[index + 1]) / diagonal[index];
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::safety::cooling::Form;
    use crate::units::Length;

    fn face(air: f64, transfer: f64) -> Face {
        Face {
            air: Temperature::from_celsius(air),
            transfer,
        }
    }

    #[test]
    fn a_layer_between_two_faces_ends_on_the_straight_line() {
        let body = Body::layer(Length::from_millimetres(40.0));
        let [hot, cold] = [face(60.0, 1e9), face(0.0, 1e9)];
        let course = follow(
            body,
            Temperature::from_celsius(60.0),
            cold,
            hot,
            TimeSpan::from_hours(20.0),
        );
        let last = course.slowest[course.slowest.len() - 1];
        assert!((last - 60.0 * (1.0 - 0.5 / 40.0)).abs() < 1e-6, "{last}");
    }

    #[test]
    fn at_rest_it_stays() {
        for form in [Form::Layer, Form::Round, Form::Lump] {
            let body = Body {
                form,
                thickness: Length::from_millimetres(60.0),
            };
            let course = follow(
                body,
                Temperature::from_celsius(20.0),
                face(20.0, 8.0),
                face(20.0, 8.0),
                TimeSpan::from_hours(3.0),
            );
            assert!(
                course
                    .slowest
                    .iter()
                    .all(|value| (value - 20.0).abs() < 1e-9)
            );
        }
    }
}
