//! How much room each lane gets, in CSS pixels: beside each other where time runs down, under each other where it runs
//! across.

/// Which way time runs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Direction {
    /// Down, on a phone.
    Down,
    /// To the right, on a wide screen.
    Across,
}

/// Time runs across from this width on; the style sheet has the same figure.
pub const WIDE: f64 = 1000.0;
/// Times, beside the lanes, where time runs down.
const TIMES: f64 = 44.0;
const TIMES_NARROW: f64 = 36.0;
/// Names, beside the lanes, where time runs across.
pub const NAMES: f64 = 112.0;
/// Hours, above the lanes, where time runs across.
pub const HOURS: f64 = 28.0;
/// Least breadth of a lane with tickets, of one with stubs, and of a cooker.
const OPEN: f64 = 99.0;
const SHUT: f64 = 52.0;
/// So much more for a lane with tickets comes before a cooker's name: then no word on a ticket is cut.
const WORD_ON_TICKET: f64 = 3.0;
const COOKER: f64 = 38.0;
/// Where there is room, a cooker's lane is broad enough for a short name.
const COOKER_NAMED: f64 = 46.0;
/// A cooker's lane beside its bars: an edge, and the feeding ticks.
const COOKER_EDGES: f64 = 12.0;
/// A bar with the gap beside it.
const BAR: f64 = 27.0;
const BAR_LEAST: f64 = 10.0;
const BAR_ACROSS: f64 = 45.0;
const BAR_ACROSS_LEAST: f64 = 31.0;
/// More bars than this make them thin where time runs across.
const FEW: usize = 3;
/// A row of tickets with its thread, and one of stubs, where time runs across.
const TICKET_ROW: f64 = 70.0;
const STUB_ROW: f64 = 56.0;

/// A lane across the axis: where it begins and how broad it is.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Strip {
    /// From the edge of the sheet.
    pub at: f64,
    /// Breadth.
    pub size: f64,
}

/// A lane of hands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HandsStrip {
    /// Its room. Several shut lanes may share one.
    pub strip: Strip,
    /// Shows tickets; otherwise stubs.
    pub open: bool,
}

/// The room of all lanes.
#[derive(Clone, Debug, PartialEq)]
pub struct Frame {
    /// Which way time runs.
    pub direction: Direction,
    /// Times or names, before the first lane.
    pub edge: f64,
    /// A bar with its gap.
    pub bar: f64,
    /// Lanes of cookers.
    pub cookers: Vec<Strip>,
    /// Lanes of hands.
    pub hands: Vec<HandsStrip>,
    /// All lanes with the edge.
    pub breadth: f64,
    /// Shut lanes share a strip: their names need a place of their own.
    pub shared: bool,
}

/// How the lanes of hands are shown.
#[derive(Clone, Copy, PartialEq)]
enum Showing {
    AllOpen,
    OneOpen,
    OneOpenRestShared,
}

impl Showing {
    fn least(self, lanes: usize) -> f64 {
        match self {
            Self::AllOpen => OPEN * real(lanes),
            Self::OneOpen => OPEN + SHUT * real(lanes.saturating_sub(1)),
            Self::OneOpenRestShared => OPEN + SHUT,
        }
    }
}

/// Lanes beside each other in so many pixels: `columns` bars in each cooker's lane, `hands` lanes of hands of which
/// `open` is open in any case.
#[must_use]
pub fn down(width: f64, columns: &[usize], hands: usize, open: usize) -> Frame {
    let edge = if width < 380.0 { TIMES_NARROW } else { TIMES };
    let room = width - edge;
    let thinnest: f64 = columns
        .iter()
        .map(|bars| cooker_lane(*bars, BAR_LEAST))
        .sum();
    let fits = |showing: &Showing| room - showing.least(hands) >= thinnest;
    let showing = [Showing::AllOpen, Showing::OneOpen]
        .into_iter()
        .find(fits)
        .unwrap_or(if hands > 2 {
            Showing::OneOpenRestShared
        } else {
            Showing::OneOpen
        });
    let for_cookers = room - showing.least(hands);
    let mut bar = BAR;
    let all = |bar: f64| {
        columns
            .iter()
            .map(|bars| cooker_lane(*bars, bar))
            .sum::<f64>()
    };
    while bar > BAR_LEAST && all(bar) > for_cookers {
        bar -= 1.0;
    }
    let named = |bars: &usize| cooker_lane(*bars, bar).max(COOKER_NAMED);
    let open_count = if showing == Showing::AllOpen {
        hands
    } else {
        1
    };
    let for_names = for_cookers - WORD_ON_TICKET * real(open_count);
    let all_named = columns.iter().map(named).sum::<f64>() <= for_names;
    let mut at = edge;
    let cookers = columns
        .iter()
        .map(|bars| {
            let least = cooker_lane(*bars, bar);
            next_strip(&mut at, if all_named { named(bars) } else { least })
        })
        .collect();
    let spare = (width - at - showing.least(hands)).max(0.0);
    let open_count = if showing == Showing::AllOpen {
        hands
    } else {
        1
    };
    let broad = OPEN + spare / real(open_count.max(1));
    let shares = showing == Showing::OneOpenRestShared;
    let mut strips = Vec::new();
    let mut shared: Option<Strip> = None;
    for lane in 0..hands {
        let is_open = showing == Showing::AllOpen || lane == open;
        let strip = match shared.filter(|_| !is_open) {
            Some(strip) => strip,
            None => next_strip(&mut at, if is_open { broad } else { SHUT }),
        };
        if shares && !is_open {
            shared = Some(strip);
        }
        strips.push(HandsStrip {
            strip,
            open: is_open,
        });
    }
    Frame {
        direction: Direction::Down,
        edge,
        bar,
        cookers,
        hands: strips,
        breadth: at.max(width),
        shared: shares,
    }
}

/// Lanes under each other: `rows` of tickets or stubs in each lane of hands, with whether it is open.
#[must_use]
pub fn across(columns: &[usize], rows: &[(usize, bool)]) -> Frame {
    let bar = if columns.iter().any(|bars| *bars > FEW) {
        BAR_ACROSS_LEAST
    } else {
        BAR_ACROSS
    };
    let mut at = HOURS;
    let cookers = columns
        .iter()
        .map(|bars| next_strip(&mut at, real(*bars) * bar + COOKER_EDGES + 6.0))
        .collect();
    let hands = rows
        .iter()
        .map(|(count, open)| {
            let row = if *open { TICKET_ROW } else { STUB_ROW };
            let strip = next_strip(&mut at, real((*count).max(1)) * row + COOKER_EDGES);
            HandsStrip { strip, open: *open }
        })
        .collect();
    Frame {
        direction: Direction::Across,
        edge: HOURS,
        bar,
        cookers,
        hands,
        breadth: at,
        shared: false,
    }
}

fn cooker_lane(bars: usize, bar: f64) -> f64 {
    (real(bars) * bar + COOKER_EDGES).max(COOKER)
}

fn next_strip(at: &mut f64, size: f64) -> Strip {
    let strip = Strip { at: *at, size };
    *at += size;
    strip
}

fn real(count: usize) -> f64 {
    u32::try_from(count).map_or(f64::MAX, f64::from)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn lie_side_by_side(frame: &Frame) {
        let hands = frame.hands.iter().map(|lane| lane.strip);
        let mut strips: Vec<Strip> = frame.cookers.iter().copied().chain(hands).collect();
        strips.sort_by(|a, b| a.at.total_cmp(&b.at));
        strips.dedup();
        for pair in strips.windows(2) {
            assert!(pair[0].at + pair[0].size <= pair[1].at + 1e-9);
        }
    }

    #[test]
    fn two_hands_and_two_cookers_are_all_open_on_a_phone() {
        for width in [360.0, 390.0] {
            let frame = down(width, &[3, 1], 2, 0);
            lie_side_by_side(&frame);
            assert!(frame.hands.iter().all(|lane| lane.open));
            assert!(frame.hands.iter().all(|lane| lane.strip.size >= OPEN));
            assert!(frame.breadth <= width);
            assert!(frame.bar >= 20.0);
        }
    }

    #[test]
    fn a_third_pair_of_hands_shuts_all_lanes_but_one_on_a_phone() {
        let frame = down(360.0, &[2, 1], 3, 1);
        lie_side_by_side(&frame);
        let open: Vec<bool> = frame.hands.iter().map(|lane| lane.open).collect();
        assert_eq!(open, [false, true, false]);
        assert!(!frame.shared);
        assert!(frame.breadth <= 360.0);
    }

    #[test]
    fn twelve_dishes_three_cookers_and_four_pairs_of_hands_fit_on_the_smallest_phone() {
        for columns in [[4, 4, 4], [12, 0, 0], [6, 5, 1]] {
            let columns: Vec<usize> = columns.into_iter().filter(|bars| *bars > 0).collect();
            let frame = down(360.0, &columns, 4, 2);
            lie_side_by_side(&frame);
            assert!(frame.breadth <= 360.0, "{columns:?}: {}", frame.breadth);
            assert!(frame.bar >= BAR_LEAST);
            assert!(frame.shared);
            assert!(frame.hands[2].open && frame.hands[2].strip.size >= OPEN);
        }
    }

    #[test]
    fn a_tablet_has_room_for_everybody() {
        let frame = down(800.0, &[4, 4], 4, 0);
        assert!(frame.hands.iter().all(|lane| lane.open));
        assert_eq!(frame.bar, BAR);
    }

    #[test]
    fn more_than_fits_makes_the_sheet_broader_than_the_screen() {
        let frame = down(360.0, &[12, 12, 12], 1, 0);
        lie_side_by_side(&frame);
        assert!(frame.breadth > 360.0);
        assert!(frame.hands[0].strip.size >= OPEN);
    }

    #[test]
    fn rows_make_lanes_deeper_where_time_runs_across() {
        let frame = across(&[3, 1], &[(2, true), (1, false)]);
        lie_side_by_side(&frame);
        assert_eq!(frame.cookers[0].at, HOURS);
        assert!(frame.hands[0].strip.size > frame.hands[1].strip.size);
        assert!(across(&[7], &[]).bar < frame.bar);
    }
}
