//! The way of a finger as a time: where a ticket in hand would land, and when the sheet scrolls under it.

use cook_model::units::{Moment, TimeSpan};

/// Times chosen by hand are round, s.
pub const GRID: i64 = 300;
/// A hand that moved less than this has not moved, CSS pixels.
const STILL: f64 = 4.0;
/// The sheet scrolls when the finger comes so near to an edge, CSS pixels.
const EDGE: f64 = 56.0;
/// So far at most in one frame, CSS pixels.
const FASTEST: f64 = 14.0;

/// A moment on the grid of times chosen by hand.
#[must_use]
pub fn snapped(moment: Moment) -> Moment {
    let half = GRID / 2;
    Moment::from_unix_seconds((moment.unix_seconds() + half).div_euclid(GRID) * GRID)
}

/// The last moment of the grid that is no later.
#[must_use]
pub fn no_later(moment: Moment) -> Moment {
    Moment::from_unix_seconds(moment.unix_seconds().div_euclid(GRID) * GRID)
}

/// The next moment of the grid so many steps away; a moment off the grid first comes onto it.
#[must_use]
pub fn stepped(moment: Moment, steps: i64) -> Moment {
    let seconds = moment.unix_seconds();
    let near = if steps < 0 {
        seconds.div_euclid(GRID) + i64::from(seconds.rem_euclid(GRID) != 0)
    } else {
        seconds.div_euclid(GRID)
    };
    Moment::from_unix_seconds((near + steps) * GRID)
}

/// A hand with a ticket in it. All lengths are CSS pixels along the axis of time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hand {
    /// Where the ticket's step began when it was picked up.
    pub from: Moment,
    /// Where the finger was then.
    pub start: f64,
    /// Where it is now.
    pub last: f64,
    /// How far the sheet has scrolled under it since.
    pub scrolled: f64,
    /// How far it can scroll: back (not positive) and on.
    pub scrolls: (f64, f64),
    /// Where the sheet can be seen: its first and last pixel.
    pub sight: (f64, f64),
    /// An hour.
    pub hour: f64,
    /// Where the sheet begins and ends: nothing lands outside it.
    pub sheet: (Moment, Moment),
}

impl Hand {
    /// How far it has moved on the sheet.
    #[must_use]
    pub fn way(&self) -> f64 {
        self.last - self.start + self.scrolled
    }

    /// Where the ticket would land: on the grid, or where it was if the hand is still.
    #[must_use]
    pub fn lands(&self) -> Moment {
        if self.way().abs() < STILL {
            return self.from;
        }
        let (first, last) = self.sheet;
        let lands = snapped(self.from + TimeSpan::from_hours(self.way() / self.hour));
        lands.clamp(first.min(self.from), last.max(self.from))
    }

    /// How far the sheet scrolls in the next frame, and takes note of it.
    pub fn scroll(&mut self) -> f64 {
        let (first, last) = self.sight;
        let near = |distance: f64| ((EDGE - distance) / EDGE).clamp(0.0, 1.0) * FASTEST;
        let wanted = near(last - self.last) - near(self.last - first);
        let (back, on) = self.scrolls;
        let by = (self.scrolled + wanted).clamp(back, on) - self.scrolled;
        // Less than a pixel does not scroll.
        let by = by.round();
        self.scrolled += by;
        by
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn hand() -> Hand {
        Hand {
            from: Moment::from_unix_seconds(3_600),
            start: 400.0,
            last: 400.0,
            scrolled: 0.0,
            scrolls: (-100.0, 300.0),
            sight: (100.0, 600.0),
            hour: 60.0,
            sheet: (
                Moment::from_unix_seconds(0),
                Moment::from_unix_seconds(360_000),
            ),
        }
    }

    #[test]
    fn a_still_hand_leaves_a_ticket_where_it_was_even_off_the_grid() {
        let mut hand = Hand {
            from: Moment::from_unix_seconds(3_612),
            ..hand()
        };
        hand.last += 3.0;
        assert_eq!(hand.lands(), hand.from);
        hand.last += 2.0;
        assert_eq!(hand.lands().unix_seconds(), 3_900);
    }

    #[test]
    fn a_ticket_lands_every_five_minutes() {
        let mut hand = hand();
        hand.last = 400.0 + 60.0 + 2.0;
        assert_eq!(hand.lands().unix_seconds(), 7_200);
        hand.last = 400.0 - 33.0;
        assert_eq!(hand.lands().unix_seconds(), 1_500);
        hand.scrolled = 60.0;
        assert_eq!(hand.lands().unix_seconds(), 5_100);
    }

    #[test]
    fn nothing_lands_before_the_sheet_begins_or_after_it_ends() {
        let mut hand = hand();
        hand.last = -4_000.0;
        assert_eq!(hand.lands().unix_seconds(), 0);
        hand.last = 400_000.0;
        assert_eq!(hand.lands().unix_seconds(), 360_000);
    }

    #[test]
    fn the_sheet_scrolls_near_its_edges_and_no_further_than_it_goes() {
        let mut hand = hand();
        assert_eq!(hand.scroll(), 0.0);
        hand.last = 590.0;
        let mut far = 0.0;
        for _ in 0..100 {
            far += hand.scroll();
        }
        assert_eq!(far, 300.0);
        assert_eq!(hand.scrolled, 300.0);
        hand.last = 90.0;
        assert_eq!(hand.scroll(), -FASTEST);
        for _ in 0..100 {
            hand.scroll();
        }
        assert_eq!(hand.scrolled, -100.0);
    }

    #[test]
    fn keys_step_onto_the_grid_first() {
        let at = |seconds| Moment::from_unix_seconds(seconds);
        assert_eq!(stepped(at(3_600), 1), at(3_900));
        assert_eq!(stepped(at(3_600), -2), at(3_000));
        assert_eq!(stepped(at(3_612), 1), at(3_900));
        assert_eq!(stepped(at(3_612), -1), at(3_600));
    }
}
