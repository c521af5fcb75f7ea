//! The pit programme of a cooker as one dish on it lives through it.

use super::{Dish, PitStep, PitWhen};
use crate::handover::identity::DishId;
use crate::physics::{PitChange, When};
use crate::units::{Moment, Temperature, TimeSpan};

/// What other dishes do to the pit is taken at their likely time, rounded so that small shifts change no forecast.
const GRID: TimeSpan = TimeSpan::from_minutes(5.0);

/// The pit over time since this dish goes on: the first at zero.
///
/// Steps that go by this dish stay tied to it. A step that goes by another falls at that one's likely moment, which
/// `moment_of` tells by the place of the step in the programme; where it is not known, or this dish is not placed yet,
/// the step is left out. A temperature of the dish's own stands for the whole programme.
pub(super) fn pit_of_dish(
    id: DishId,
    dish: &Dish,
    programme: &[PitStep],
    on: Option<Moment>,
    moment_of: impl Fn(usize) -> Option<Moment>,
) -> Vec<PitChange> {
    if let Some(pit) = dish.pit {
        return vec![from_the_start(pit)];
    }
    let mut changes = Vec::new();
    for (place, step) in programme.iter().enumerate() {
        let when = match step.when {
            PitWhen::Start => When::AfterOn(TimeSpan::ZERO),
            PitWhen::AfterOn { dish, span } if dish == id => When::AfterOn(span),
            PitWhen::CoreReaches { dish, core } if dish == id => When::Probe(core),
            PitWhen::AfterOn { .. } | PitWhen::CoreReaches { .. } => {
                let Some((moment, on)) = moment_of(place).zip(on) else {
                    continue;
                };
                When::AfterOn(GRID * libm::round((moment - on) / GRID))
            }
        };
        match when {
            When::AfterOn(span) if span <= TimeSpan::ZERO => {
                // It was so before this dish went on, and whatever came before it is over.
                changes.clear();
                changes.push(from_the_start(step.set));
            }
            _ => changes.push(PitChange {
                when,
                set: step.set,
            }),
        }
    }
    changes
}

const fn from_the_start(set: Temperature) -> PitChange {
    PitChange {
        when: When::AfterOn(TimeSpan::ZERO),
        set,
    }
}

/// The hottest air that a dish sees. None without a programme.
pub(super) fn hottest(changes: &[PitChange]) -> Option<Temperature> {
    changes
        .iter()
        .map(|change| change.set)
        .max_by(|a, b| a.celsius().total_cmp(&b.celsius()))
}

#[cfg(test)]
mod tests {
    use super::*;

    const ME: u128 = 1;
    const OTHER: u128 = 2;

    fn id(number: u128) -> DishId {
        DishId::new(0, number)
    }

    fn celsius(value: f64) -> Temperature {
        Temperature::from_celsius(value)
    }

    fn dish() -> Dish {
        let food = serde_json::json!({"is": "cut", "cut": "lamb-shoulder"});
        serde_json::from_value(serde_json::json!({"name": "Lamb", "food": food})).expect("a dish")
    }

    fn programme(driver: u128) -> Vec<PitStep> {
        let (dish, core) = (id(driver), celsius(80.0));
        [
            (PitWhen::Start, 107.0),
            (
                PitWhen::AfterOn {
                    dish,
                    span: TimeSpan::from_hours(3.0),
                },
                121.0,
            ),
            (PitWhen::CoreReaches { dish, core }, 135.0),
        ]
        .map(|(when, set)| PitStep {
            when,
            set: celsius(set),
        })
        .into()
    }

    fn seen(driver: u128, hours: [f64; 3]) -> Vec<(When, f64)> {
        let on = Moment::from_unix_seconds(1_000_000);
        let moment = |place: usize| Some(on + TimeSpan::from_hours(hours[place]));
        pit_of_dish(id(ME), &dish(), &programme(driver), Some(on), moment)
            .into_iter()
            .map(|change| (change.when, change.set.celsius()))
            .collect()
    }

    fn after(hours: f64) -> When {
        When::AfterOn(TimeSpan::from_hours(hours))
    }

    #[test]
    fn own_steps_stay_tied_to_the_dish() {
        let own = [
            (after(0.0), 107.0),
            (after(3.0), 121.0),
            (When::Probe(celsius(80.0)), 135.0),
        ];
        assert_eq!(seen(ME, [0.0, 99.0, 99.0]), own);
    }

    #[test]
    fn steps_of_another_dish_fall_at_its_likely_time() {
        assert_eq!(
            seen(OTHER, [0.0, 1.01, 4.0]),
            [
                (after(0.0), 107.0),
                (after(1.0), 121.0),
                (after(4.0), 135.0)
            ]
        );
        assert_eq!(
            seen(OTHER, [0.0, -2.0, 1.0]),
            [(after(0.0), 121.0), (after(1.0), 135.0)]
        );
        assert_eq!(seen(OTHER, [0.0, -5.0, -3.0]), [(after(0.0), 135.0)]);
    }

    #[test]
    fn a_dish_that_is_not_placed_yet_sees_the_start() {
        let pit = pit_of_dish(id(ME), &dish(), &programme(OTHER), None, |_| None);
        assert_eq!(pit, [from_the_start(celsius(107.0))]);
        assert_eq!(hottest(&pit), Some(celsius(107.0)));
    }

    #[test]
    fn a_cool_end_has_its_own_air() {
        let cool = Dish {
            pit: Some(celsius(95.0)),
            ..dish()
        };
        let pit = pit_of_dish(id(ME), &cool, &programme(ME), None, |_| None);
        assert_eq!(pit, [from_the_start(celsius(95.0))]);
    }
}
