//! A dish's bar as it is drawn: its pieces along the axis and its room across it.

use super::frame::{Direction, Frame, Strip};
use super::sheet::Sheet;
use super::stay::Stay;
use cook_model::plan::outlook::Window;
use cook_model::units::Moment;

/// Beside the first bar of a lane.
const LANE_EDGE: f64 = 3.0;
const LANE_EDGE_ACROSS: f64 = 9.0;
/// Between bars.
const GAP: f64 = 3.0;
const GAP_THIN: f64 = 2.0;
const GAP_ACROSS: f64 = 7.0;
/// Bars thinner than this have small marks, every other one a step lower, and no words.
const THIN: f64 = 20.0;
const MARK_STEP: f64 = 24.0;
/// Fewer pixels than this show a window as one block with its notch.
const TILES_FROM: f64 = 24.0;
/// Least room for a word where nobody is up to feed a fire.
const WORD: f64 = 46.0;

/// A stretch of the axis, in hours since its start, cut where the axis is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stretch {
    /// Start.
    pub from: f64,
    /// End.
    pub to: f64,
}

/// A dish's bar.
#[derive(Clone, Debug, PartialEq)]
pub struct Bar {
    /// Its room across the axis.
    pub strip: Strip,
    /// It cooks. None where that is over before the axis begins.
    pub cooks: Option<Stretch>,
    /// It went on before the axis begins.
    pub cut: bool,
    /// It rests.
    pub rests: Option<Stretch>,
    /// It may be table-ready.
    pub table: Option<Stretch>,
    /// Where the tiles of that window join, as shares of it; none where they are too small to be told apart.
    pub joints: Option<[f64; 9]>,
    /// The notch, as a share of the window.
    pub notch: f64,
    /// It is held hot.
    pub held: Option<Stretch>,
    /// Too thin for words.
    pub thin: bool,
    /// Its mark lies so many pixels further along than it would.
    pub mark_shift: f64,
}

impl Sheet {
    /// A stretch between two moments as far as it lies on the axis.
    #[must_use]
    pub fn stretch(&self, from: Moment, to: Moment) -> Option<Stretch> {
        let axis = self.scope.axis;
        let (from, to) = (axis.within(from), axis.within(to));
        (from < to).then_some(Stretch { from, to })
    }

    /// The bar of a dish; none where its cooker has no lane.
    #[must_use]
    pub fn bar(&self, stay: &Stay) -> Option<Bar> {
        let lane = self
            .cookers
            .iter()
            .position(|lane| lane.place == stay.place)?;
        let table = self.stretch(stay.table.from(), stay.table.to());
        let long = table.is_some_and(|table| (table.to - table.from) * self.hour >= TILES_FROM);
        let joints = shares(&stay.table);
        let between = |span: Option<(Moment, Moment)>| {
            let (from, to) = span?;
            self.stretch(from, to)
        };
        let thin = self.frame.bar < THIN;
        Some(Bar {
            strip: column(&self.frame, self.frame.cookers[lane], stay.column),
            cooks: self.stretch(stay.on, stay.cooks_to()),
            cut: stay.on < self.scope.axis.start,
            rests: between(stay.rests()),
            table,
            joints: long.then_some(joints),
            notch: joints[4],
            held: between(stay.held()),
            thin,
            mark_shift: if thin && stay.column % 2 == 1 {
                MARK_STEP
            } else {
                0.0
            },
        })
    }

    /// Where, across the axis, it is drawn that nobody is up for a cooker's fire: beside the bars where there is room
    /// for a word, otherwise over them.
    #[must_use]
    pub fn unattended_strip(&self, lane: usize) -> Strip {
        let strip = self.frame.cookers[lane];
        let columns = u32::try_from(self.cookers[lane].columns).map_or(f64::MAX, f64::from);
        let bars = LANE_EDGE + columns * self.frame.bar;
        let free = strip.size - bars;
        match self.frame.direction {
            Direction::Down if free >= WORD => Strip {
                at: strip.at + bars,
                size: free,
            },
            _ => strip,
        }
    }
}

/// The room of one bar of a lane.
fn column(frame: &Frame, lane: Strip, column: usize) -> Strip {
    let number = u32::try_from(column).map_or(0.0, f64::from);
    let (edge, gap) = match frame.direction {
        Direction::Across => (LANE_EDGE_ACROSS, GAP_ACROSS),
        Direction::Down if frame.bar < THIN => (LANE_EDGE, GAP_THIN),
        Direction::Down => (LANE_EDGE, GAP),
    };
    Strip {
        at: lane.at + edge + number * frame.bar,
        size: frame.bar - gap,
    }
}

/// The nine points of a window as shares of its length; a window without length has its notch in the middle.
fn shares(window: &Window) -> [f64; 9] {
    let whole = (window.to() - window.from()).seconds();
    window.deciles.map(|point| {
        if whole > 0.0 {
            (point - window.from()).seconds() / whole
        } else {
            0.5
        }
    })
}

#[cfg(test)]
mod tests {
    use super::super::sample::{Sample, at};
    use super::super::sheet::View;
    use super::super::zoom::Zoom;
    use super::*;

    fn laid(dishes: usize, width: f64, now: &str) -> Sheet {
        let mut sample = Sample::new("2026-09-12T18:00:00");
        let offset = sample.cooker("Offset");
        for number in 0..dishes {
            sample.dish(
                &format!("Dish {number}"),
                Some(offset),
                "2026-09-12T05:00:00",
            );
        }
        let view = View {
            width,
            height: 740.0,
            zoom: Zoom::Detail,
            open: None,
            fold: true,
        };
        Sheet::lay_out(&sample.plan, &sample.outlook, &sample.zone, at(now), view)
    }

    #[test]
    fn the_pieces_of_a_bar_join() {
        let sheet = laid(1, 390.0, "2026-09-05T12:00:00");
        let bar = sheet.bar(&sheet.stays[0]).expect("a bar");
        let (cooks, table) = (bar.cooks.expect("cooks"), bar.table.expect("a window"));
        let held = bar.held.expect("held");
        assert_eq!((cooks.from, cooks.to), (0.0, 8.0));
        assert_eq!(bar.rests, None);
        assert_eq!((table.from, table.to), (8.0, 10.0));
        assert_eq!((held.from, held.to), (10.0, 13.0));
        assert_eq!(bar.notch, 0.5);
        assert!(bar.joints.is_some());
        assert!(!bar.cut);
    }

    #[test]
    fn what_lies_before_the_axis_is_cut() {
        let sheet = laid(1, 390.0, "2026-09-12T10:20:00");
        let bar = sheet.bar(&sheet.stays[0]).expect("a bar");
        assert!(bar.cut);
        assert_eq!(bar.cooks.map(|cooks| cooks.from), Some(0.0));
        let late = laid(1, 390.0, "2026-09-12T16:50:00");
        let bar = late.bar(&late.stays[0]).expect("a bar");
        assert_eq!(bar.cooks, None);
        assert_eq!(bar.table, None);
        assert!(bar.held.is_some());
    }

    #[test]
    fn bars_of_a_lane_lie_inside_it_side_by_side() {
        for (dishes, width) in [(1, 390.0), (3, 390.0), (12, 360.0), (12, 1280.0)] {
            let sheet = laid(dishes, width, "2026-09-05T12:00:00");
            let lane = sheet.frame.cookers[0];
            let mut end = lane.at;
            for stay in &sheet.stays {
                let strip = sheet.bar(stay).expect("a bar").strip;
                assert!(strip.at >= end && strip.size >= 8.0);
                end = strip.at + strip.size;
            }
            assert!(end <= lane.at + lane.size);
        }
    }

    #[test]
    fn thin_bars_have_their_marks_one_step_apart() {
        let sheet = laid(12, 360.0, "2026-09-05T12:00:00");
        let shifts: Vec<f64> = sheet
            .stays
            .iter()
            .filter_map(|stay| Some(sheet.bar(stay)?.mark_shift))
            .collect();
        assert_eq!(shifts[..4], [0.0, MARK_STEP, 0.0, MARK_STEP]);
    }

    #[test]
    fn the_word_for_nobody_up_stands_beside_the_bars_where_it_fits() {
        let one = laid(1, 900.0, "2026-09-05T12:00:00");
        let lane = one.frame.cookers[0];
        let strip = one.unattended_strip(0);
        assert!(strip.at >= lane.at && strip.at + strip.size <= lane.at + lane.size + 1e-9);
        let many = laid(12, 360.0, "2026-09-05T12:00:00");
        assert_eq!(many.unattended_strip(0), many.frame.cookers[0]);
    }

    #[test]
    fn a_window_without_length_has_its_notch_in_the_middle() {
        let window = Window::at(at("2026-09-12T05:00:00"));
        assert_eq!(shares(&window)[4], 0.5);
    }
}
