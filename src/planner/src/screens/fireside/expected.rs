//! What a reading is expected to show now.

use super::yard::Day;
use cook_model::handover::identity::{CookerId, DishId, PieceId};
use cook_model::handover::{Event, KnownEvent};
use cook_model::units::{Moment, Temperature, TimeSpan};

/// Where a reading is expected: the likely one, and one chance in ten to either side.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Expected {
    /// The likely one.
    pub likely: Temperature,
    /// The 10 and 90 % points, where the model has a say.
    pub spread: Option<[Temperature; 2]>,
}

/// The last core reading of a piece that is not doubtful.
#[must_use]
pub fn last_core(day: &Day, piece: PieceId) -> Option<(Moment, Temperature)> {
    let told = day
        .journal
        .standing()
        .filter_map(|(_, entry)| match entry.event {
            Event::Known(KnownEvent::Core {
                piece: it,
                reading,
                doubtful: false,
                ..
            }) if it == piece => Some((entry.at, reading)),
            _ => None,
        });
    told.max_by_key(|(at, _)| *at)
}

/// The last pit reading of a cooker.
#[must_use]
pub fn last_pit(day: &Day, cooker: CookerId) -> Option<(Moment, Temperature)> {
    let told = day
        .journal
        .standing()
        .filter_map(|(_, entry)| match entry.event {
            Event::Known(KnownEvent::Pit {
                cooker: it,
                reading,
                ..
            }) if it == cooker => Some((entry.at, reading)),
            _ => None,
        });
    told.max_by_key(|(at, _)| *at)
}

/// The core that a piece of a dish is expected to have. Without any forecast, a raw core out of the fridge.
#[must_use]
pub fn core(day: &Day, dish: DishId, piece: PieceId, now: Moment) -> Expected {
    let last = last_core(day, piece);
    let forecast = |at| planned_core(day, dish, at);
    match (forecast(now), last) {
        // The plan's forecast does not know the last reading: it is moved on to it.
        (Some([low, likely, high]), last) => {
            let by = last.and_then(|(at, was)| Some(was - forecast(at)?[1]));
            let shift = |temperature: Temperature| by.map_or(temperature, |by| temperature + by);
            Expected {
                likely: shift(likely),
                spread: Some([shift(low), shift(high)]),
            }
        }
        (None, Some((_, was))) => Expected {
            likely: was,
            spread: None,
        },
        (None, None) => Expected {
            likely: Temperature::from_celsius(5.0),
            spread: None,
        },
    }
}

/// The air that a cooker is expected to have: as it was read last, else as it is run.
#[must_use]
pub fn pit(day: &Day, cooker: CookerId) -> Expected {
    let run_at = || {
        let steps = &day.plan.cookers.get(&cooker)?.programme;
        Some(steps.first()?.set)
    };
    let last = last_pit(day, cooker).map(|(_, reading)| reading);
    Expected {
        likely: last
            .or_else(run_at)
            .unwrap_or(Temperature::from_celsius(121.0)),
        spread: None,
    }
}

fn planned_core(day: &Day, dish: DishId, at: Moment) -> Option<[Temperature; 3]> {
    let on = day.progress().on(dish)?;
    let times = day.seen(dish)?.forecast.as_ref().ok()?;
    let points = times
        .course
        .iter()
        .map(|point| (on + point.after, point.core));
    between(points, at)
}

/// Three curves at a moment, drawn straight between their points; none outside them.
fn between(
    points: impl Iterator<Item = (Moment, [Temperature; 3])>,
    at: Moment,
) -> Option<[Temperature; 3]> {
    let mut before: Option<(Moment, [Temperature; 3])> = None;
    for (moment, core) in points {
        if moment >= at {
            let Some((earlier, was)) = before else {
                return (moment == at).then_some(core);
            };
            let whole = moment - earlier;
            let share = if whole > TimeSpan::ZERO {
                (at - earlier).seconds() / whole.seconds()
            } else {
                1.0
            };
            return Some(std::array::from_fn(|n| {
                let (from, to) = (was[n].celsius(), core[n].celsius());
                Temperature::from_celsius(from + (to - from) * share)
            }));
        }
        before = Some((moment, core));
    }
    None
}

#[cfg(test)]
mod tests {
    use super::super::super::run_sheet::sample::at;
    use super::*;

    #[test]
    fn curves_are_read_between_their_points_and_not_beyond() {
        let core =
            |celsius: f64| [celsius - 1.0, celsius, celsius + 1.0].map(Temperature::from_celsius);
        let points = [
            (at("2026-09-12T06:00:00"), core(60.0)),
            (at("2026-09-12T06:10:00"), core(64.0)),
        ];
        let read = |time| between(points.into_iter(), at(time)).map(|core| core[1].celsius());
        assert_eq!(read("2026-09-12T06:05:00"), Some(62.0));
        assert_eq!(read("2026-09-12T06:00:00"), Some(60.0));
        assert_eq!(read("2026-09-12T05:00:00"), None);
        assert_eq!(read("2026-09-12T07:00:00"), None);
    }
}
