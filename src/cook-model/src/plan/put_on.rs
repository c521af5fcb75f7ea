//! When a dish goes on: from the serving moment backwards.

use super::member::{After, Member};
use crate::units::{Moment, TimeSpan};

/// The hold limit is to be respected in so many of all members.
const HOLD_SHARE: f64 = 0.9;

/// What is put on in the night is put on at a round time.
const GRID_SECONDS: i64 = 300;

/// Where there is room, the time aimed for lies so long before the latest.
const MARGIN: TimeSpan = TimeSpan::from_minutes(30.0);

/// The put-on span. Where the spread is wider than the hold allows, the earliest lies after the latest: no time keeps
/// both the promise and the hold limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct PutOn {
    /// From here on the hold limit is respected.
    pub(super) earliest: Moment,
    /// Until here the promise is kept.
    pub(super) latest: Moment,
}

/// Members of `of` that must do something so that a share of them does.
pub(super) fn needed(share: f64, of: usize) -> usize {
    // Binary fractions: 0.9 of 10 is 9, not 9.000000000000002.
    let needed = libm::ceil(share * of as f64 - 1e-9);
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "between 0 and the number of members"
    )]
    let needed = needed.clamp(0.0, of as f64) as usize;
    needed
}

/// The put-on span of a dish, in whole minutes. None when no member is ever ready.
pub(super) fn put_on(
    members: &[Member],
    after: After,
    serving: Moment,
    promise: f64,
) -> Option<PutOn> {
    let seconds = |span: Option<TimeSpan>| span.map_or(f64::INFINITY, TimeSpan::seconds);
    let mut table: Vec<f64> = members
        .iter()
        .map(|member| seconds(member.table_ready(after)))
        .collect();
    table.sort_unstable_by(f64::total_cmp);
    let mut kept: Vec<f64> = members
        .iter()
        .map(|member| seconds(member.first_ready.map(|ready| ready + member.keeps)))
        .collect();
    kept.sort_unstable_by(f64::total_cmp);

    let last_needed = needed(promise, table.len()).max(1) - 1;
    let slowest = table[..=last_needed.min(table.len().checked_sub(1)?)]
        .iter()
        .rev()
        .find(|time| time.is_finite())?;
    let may_fail = kept.len() - needed(HOLD_SHARE, kept.len());
    let soonest = kept[may_fail.min(kept.len() - 1)];

    let latest = whole_minutes(serving - TimeSpan::from_seconds(*slowest), Rounding::Down);
    let earliest = if soonest.is_finite() {
        let spoilt = after.slicing + TimeSpan::from_seconds(soonest);
        whole_minutes(serving - spoilt, Rounding::Up)
    } else {
        latest - TimeSpan::from_hours(24.0)
    };
    Some(PutOn { earliest, latest })
}

#[derive(Clone, Copy)]
enum Rounding {
    Down,
    Up,
}

fn whole_minutes(moment: Moment, rounding: Rounding) -> Moment {
    rounded(moment, 60, rounding)
}

fn rounded(moment: Moment, grid: i64, rounding: Rounding) -> Moment {
    let seconds = moment.unix_seconds();
    // A span of fractional seconds was rounded to the nearest one; a minute's end is safe from that only one second in.
    let steps = match rounding {
        Rounding::Down => (seconds - 1).div_euclid(grid),
        Rounding::Up => -(-(seconds + 1)).div_euclid(grid),
    };
    Moment::from_unix_seconds(steps * grid)
}

/// The next round time at or after a moment.
pub(super) fn next_round_time(moment: Moment) -> Moment {
    let steps = -(-moment.unix_seconds()).div_euclid(GRID_SECONDS);
    Moment::from_unix_seconds(steps * GRID_SECONDS)
}

/// The time aimed for: a round one inside the span with the least trouble, and among equals the nearest to a quarter of
/// the span before the latest, half an hour at most. Never before `soonest`; where the span leaves nothing, the latest,
/// or `soonest` if even that is past.
pub(super) fn aim(span: PutOn, soonest: Moment, trouble: impl Fn(Moment) -> u32) -> Moment {
    let room = (span.latest - span.earliest).max(TimeSpan::ZERO);
    let liked = span.latest - (room / 4.0).min(MARGIN);
    let last = Moment::from_unix_seconds(
        span.latest.unix_seconds().div_euclid(GRID_SECONDS) * GRID_SECONDS,
    );
    let first = next_round_time(span.earliest.max(soonest));
    let distance = |on: Moment| (on - liked).seconds().abs();
    let mut best = None;
    let mut on = first;
    while on <= last {
        let rank = (trouble(on), distance(on));
        if best.is_none_or(|(least, _)| rank <= least) {
            best = Some((rank, on));
        }
        on = Moment::from_unix_seconds(on.unix_seconds() + GRID_SECONDS);
    }
    best.map_or_else(|| last.max(next_round_time(soonest)), |(_, on)| on)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const AFTER: After = After {
        rest: TimeSpan::from_minutes(45.0),
        slicing: TimeSpan::from_minutes(20.0),
    };

    fn serving() -> Moment {
        Moment::from_unix_seconds(1_789_000_000)
    }

    fn member(ready: f64, keeps: f64) -> Member {
        let ready = Some(TimeSpan::from_hours(ready));
        Member {
            ready,
            first_ready: ready,
            keeps: TimeSpan::from_hours(keeps),
            ..Member::default()
        }
    }

    fn kept(members: &[Member], on: Moment) -> usize {
        let in_time = |member: &&Member| {
            member
                .table_ready(AFTER)
                .is_some_and(|ready| on + ready <= serving())
        };
        members.iter().filter(in_time).count()
    }

    fn held(members: &[Member], on: Moment) -> usize {
        let good = |member: &&Member| {
            member
                .waits(AFTER, serving() - on)
                .is_none_or(|waits| waits <= member.keeps)
        };
        members.iter().filter(good).count()
    }

    #[test]
    fn nine_of_ten_means_nine_of_ten() {
        assert_eq!(needed(0.9, 10), 9);
        assert_eq!(needed(0.9, 256), 231);
        assert_eq!(needed(0.5, 1), 1);
        assert_eq!(needed(0.99, 8), 8);
    }

    #[test]
    fn a_cook_without_spread() {
        let members = vec![member(10.0, 5.0); 8];
        let span = put_on(&members, AFTER, serving(), 0.9).unwrap();
        let before = |moment: Moment| (serving() - moment).hours();
        assert!((before(span.latest) - (10.0 + 65.0 / 60.0)).abs() < 0.04);
        assert!((before(span.earliest) - (15.0 + 20.0 / 60.0)).abs() < 0.04);
        assert_eq!(aim(span, span.earliest, |_| 0).unix_seconds() % 300, 0);
    }

    #[test]
    fn without_room_it_goes_on_at_the_latest_and_never_in_the_past() {
        let span = PutOn {
            earliest: serving(),
            latest: serving() - TimeSpan::from_hours(6.0),
        };
        let on = aim(span, Moment::from_unix_seconds(0), |_| 0);
        assert!(on <= span.latest && span.latest - on < TimeSpan::from_minutes(5.0));
        let now = serving() - TimeSpan::from_hours(1.0);
        assert!(aim(span, now, |_| 0) >= now);
    }

    #[test]
    fn trouble_is_avoided_where_there_is_room() {
        let span = PutOn {
            earliest: serving() - TimeSpan::from_hours(16.0),
            latest: serving() - TimeSpan::from_hours(12.0),
        };
        let night = serving() - TimeSpan::from_hours(14.0);
        let on = aim(span, span.earliest, |on| u32::from(on > night));
        assert!(on <= night && night - on < TimeSpan::from_minutes(5.0));
    }

    fn ensemble() -> impl Strategy<Value = Vec<Member>> {
        prop::collection::vec((1.0..30.0f64, 0.1..8.0f64, 0..20u8), 1..60).prop_map(|members| {
            let one = |(ready, keeps, luck)| {
                if luck == 0 {
                    Member::default()
                } else {
                    member(ready, keeps)
                }
            };
            members.into_iter().map(one).collect()
        })
    }

    proptest! {
        #[test]
        fn the_latest_keeps_the_promise_and_a_minute_later_would_not(members in ensemble(), promise in 0.5..0.99f64) {
            let Some(span) = put_on(&members, AFTER, serving(), promise) else {
                prop_assert!(members.iter().all(|member| member.ready.is_none()));
                return Ok(());
            };
            let wanted = needed(promise, members.len());
            let ready = members.iter().filter(|member| member.ready.is_some()).count();
            if ready >= wanted {
                prop_assert!(kept(&members, span.latest) >= wanted);
                prop_assert!(kept(&members, span.latest + TimeSpan::from_seconds(62.0)) < wanted);
            }
        }

        #[test]
        fn from_the_earliest_on_the_hold_limit_is_respected(members in ensemble(), later in 0.0..6.0f64) {
            let Some(span) = put_on(&members, AFTER, serving(), 0.9) else { return Ok(()) };
            // A member whose rest alone is longer than it keeps fails whenever it goes on.
            let members: Vec<Member> = members.into_iter().filter(|m| m.keeps >= AFTER.rest).collect();
            let Some(same) = put_on(&members, AFTER, serving(), 0.9) else { return Ok(()) };
            prop_assert!(held(&members, same.earliest + TimeSpan::from_hours(later)) >= needed(0.9, members.len()));
            prop_assert!(span.latest.unix_seconds() % 60 == 0);
        }

        #[test]
        fn a_later_serving_moves_everything_by_as_much(members in ensemble(), minutes in -3000..3000i64) {
            let by = TimeSpan::from_minutes(minutes as f64);
            let here = put_on(&members, AFTER, serving(), 0.9);
            let there = put_on(&members, AFTER, serving() + by, 0.9);
            prop_assert_eq!(here.map(|span| (span.earliest + by, span.latest + by)), there.map(|span| (span.earliest, span.latest)));
        }
    }
}
