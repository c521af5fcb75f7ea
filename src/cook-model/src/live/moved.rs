//! What each reading did to the ready window, one after another.
//!
//! The members from before any reading are moved by one reading more each time, in one step without a new march: the
//! ready time goes along with the readings as it does over those members. What is then left to the forecast that was
//! marched anew is said of what was measured of the pit or done, or shared among the readings where there is no such.

use super::evidence::{Evidence, Seen};
use super::log::PieceLog;
use super::smoother::{Datum, Seen as Figures};
use super::state::MovedBy;
use crate::forecast::{DishForecast, quantile};
use crate::handover::identity::EntryId;
use crate::units::TimeSpan;

/// What an entry did.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shift {
    /// Which entry.
    pub entry: EntryId,
    /// When, since it went on.
    pub after: TimeSpan,
    /// What kind.
    pub what: MovedBy,
    /// The window became so much narrower.
    pub narrowed: TimeSpan,
    /// The likely time came so much later.
    pub later: TimeSpan,
}

/// Likely time and width of a window, h.
#[derive(Clone, Copy, Debug)]
struct Shape {
    likely: f64,
    width: f64,
}

/// What the entries of a piece did, in order of time. Nothing where half of the members or more are never ready.
#[must_use]
pub fn shifts(before: &DishForecast, now: &DishForecast, log: &PieceLog, seed: u64) -> Vec<Shift> {
    let Some((first, last)) = shape_of(before).zip(shape_of(now)) else {
        return Vec::new();
    };
    let evidence = Evidence::of(log);
    let mut shape = first;
    let mut shifts = Vec::new();
    for (n, says) in evidence.iter().enumerate() {
        let Some(next) = with(before, &evidence[..=n], seed) else {
            continue;
        };
        let what = match says.of {
            Seen::Probe | Seen::ThinEnd => MovedBy::Core,
            Seen::Tenderness => MovedBy::Feel,
        };
        shifts.push(shift(says.entry, says.after, what, shape, next));
        shape = next;
    }
    let pit = log
        .pit
        .last()
        .map(|pit| (pit.entry, pit.after, MovedBy::Pit));
    let done = log.done.map(|(entry, after)| (entry, after, MovedBy::Done));
    let other = match (pit, done) {
        (Some(pit), Some(done)) => Some(if pit.1 < done.1 { done } else { pit }),
        (pit, done) => pit.or(done),
    };
    if let Some((entry, after, what)) = other {
        shifts.push(shift(entry, after, what, shape, last));
    } else {
        let share = 1.0 / shifts.len().max(1) as f64;
        for shift in &mut shifts {
            shift.narrowed += TimeSpan::from_hours((shape.width - last.width) * share);
            shift.later += TimeSpan::from_hours((last.likely - shape.likely) * share);
        }
    }
    shifts.sort_by(|a, b| a.after.seconds().total_cmp(&b.after.seconds()));
    shifts
}

fn shift(entry: EntryId, after: TimeSpan, what: MovedBy, from: Shape, to: Shape) -> Shift {
    Shift {
        entry,
        after,
        what,
        narrowed: TimeSpan::from_hours(from.width - to.width),
        later: TimeSpan::from_hours(to.likely - from.likely),
    }
}

fn shape_of(forecast: &DishForecast) -> Option<Shape> {
    let at = |share| Some(forecast.quantile(|run| run.ready, share)?.hours());
    Some(Shape {
        likely: at(0.5)?,
        width: at(0.9)? - at(0.1)?,
    })
}

/// The window after some readings.
fn with(before: &DishForecast, evidence: &[Evidence], seed: u64) -> Option<Shape> {
    let members = before.members().iter();
    let ready: Vec<_> = members.filter_map(|run| Some((run, run.ready?))).collect();
    let data: Vec<Datum> = evidence
        .iter()
        .map(|says| Datum {
            piece: 0,
            says: *says,
        })
        .collect();
    let figures: Option<Vec<Vec<f64>>> = ready
        .iter()
        .map(|(run, ready)| {
            let figure = |says: &Evidence| says.in_member(run, says.after.min(*ready), 1.0);
            evidence.iter().map(figure).collect()
        })
        .collect();
    let mut times: Vec<Vec<f64>> = ready
        .iter()
        .map(|(_, ready)| vec![libm::log(ready.hours().max(0.01))])
        .collect();
    let seen = Figures {
        data: &data,
        figures: &figures?,
    };
    seen.assimilate(&mut times, &seen.weights(), 1.0, seed, |_, _| true);
    let mut hours: Vec<f64> = times.iter().map(|time| libm::exp(time[0])).collect();
    let [low, likely, high] = [0.1, 0.5, 0.9].map(|share| quantile(&mut hours, share));
    Some(Shape {
        likely: likely?,
        width: high? - low?,
    })
}
