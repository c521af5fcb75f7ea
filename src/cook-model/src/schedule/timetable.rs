//! How much of a room is taken over time, and where something more fits.

/// One renewable resource over time: a room, or a pair of hands.
#[derive(Clone, Debug)]
pub(super) struct Timetable {
    size: u32,
    /// From each moment on so much is taken, until the next; nothing before the first. Times rise.
    edges: Vec<(i64, u32)>,
}

impl Timetable {
    /// An empty room of a size.
    pub(super) const fn new(size: u32) -> Self {
        Self {
            size,
            edges: Vec::new(),
        }
    }

    /// The last stretch within `from..to` in which so much more does not fit.
    fn clash(&self, from: i64, to: i64, amount: u32) -> Option<(i64, i64)> {
        let end = self.edges.partition_point(|(at, _)| *at < to);
        for place in (0..end).rev() {
            let (at, taken) = self.edges[place];
            let until = self.edges.get(place + 1).map_or(i64::MAX, |next| next.0);
            if until <= from {
                return None;
            }
            if taken + amount > self.size {
                return Some((at, until));
            }
        }
        None
    }

    /// Whether so much more fits all the time.
    pub(super) fn fits(&self, from: i64, takes: i64, amount: u32) -> bool {
        amount == 0 || (amount <= self.size && self.clash(from, from + takes, amount).is_none())
    }

    /// The latest beginning, not after the one given, at which so much fits for so long. None if it never does.
    pub(super) fn latest(&self, not_after: i64, takes: i64, amount: u32) -> Option<i64> {
        if amount > self.size {
            return None;
        }
        let mut begin = not_after;
        while let Some((from, _)) = self.clash(begin, begin + takes, amount) {
            begin = from - takes;
        }
        Some(begin)
    }

    /// The earliest beginning, not before the one given, likewise.
    pub(super) fn earliest(&self, not_before: i64, takes: i64, amount: u32) -> Option<i64> {
        if amount > self.size {
            return None;
        }
        let mut begin = not_before;
        while let Some((_, to)) = self.clash(begin, begin + takes, amount) {
            begin = to;
        }
        Some(begin)
    }

    /// Takes so much from one moment to another, whether it fits or not.
    pub(super) fn take(&mut self, from: i64, to: i64, amount: u32) {
        if amount == 0 || to <= from {
            return;
        }
        let first = self.edge(from);
        let last = self.edge(to);
        for edge in &mut self.edges[first..last] {
            edge.1 += amount;
        }
    }

    /// The place of an edge at a moment, made where there is none.
    fn edge(&mut self, at: i64) -> usize {
        let place = self.edges.partition_point(|(edge, _)| *edge < at);
        if self.edges.get(place).is_none_or(|(edge, _)| *edge != at) {
            let before = place
                .checked_sub(1)
                .map_or(0, |before| self.edges[before].1);
            self.edges.insert(place, (at, before));
        }
        place
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn two_fit_where_there_is_room_for_two() {
        let mut room = Timetable::new(2);
        room.take(10, 20, 1);
        room.take(15, 30, 1);
        assert!(room.fits(10, 5, 1) && !room.fits(10, 6, 1) && room.fits(30, 9, 2));
        assert_eq!(room.latest(25, 5, 2), Some(5));
        assert_eq!(room.latest(14, 5, 1), Some(10));
        assert_eq!(room.earliest(12, 5, 1), Some(20));
        assert_eq!(room.earliest(0, 5, 3), None);
    }

    proptest! {
        #[test]
        fn what_is_found_fits_and_nothing_nearer_does(taken in prop::collection::vec((0..60_i64, 1..20_i64, 1..3_u32), 0..8), at in 0..80_i64, takes in 1..15_i64, amount in 1..4_u32) {
            let mut room = Timetable::new(4);
            for (from, takes, amount) in taken {
                if room.fits(from, takes, amount) {
                    room.take(from, from + takes, amount);
                }
            }
            let latest = room.latest(at, takes, amount).unwrap();
            prop_assert!(room.fits(latest, takes, amount));
            prop_assert!((latest + 1..=at).all(|begin| !room.fits(begin, takes, amount)));
            let earliest = room.earliest(at, takes, amount).unwrap();
            prop_assert!(room.fits(earliest, takes, amount));
            prop_assert!((at..earliest).all(|begin| !room.fits(begin, takes, amount)));
        }
    }
}
