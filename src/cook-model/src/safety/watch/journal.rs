//! From the journal of a plan to the track of each piece.

use super::{Happened, Happening, Portion, SafeState, Standard, Track, Waiting, judge};
use crate::handover::identity::{CookerId, DishId, PieceId};
use crate::handover::{Entry, Event, Journal, KnownEvent, ProbePlace};
use crate::live::OVEN_COOKS;
use crate::meat::CutId;
use crate::plan::{Food, Plan};
use crate::safety::cooling::Chilling;
use crate::safety::{Sort, minimum};
use crate::units::{Moment, Temperature};

/// One piece and how it stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Watched {
    /// The dish.
    pub dish: DishId,
    /// The piece.
    pub piece: PieceId,
    /// How it stands.
    pub state: SafeState,
}

/// How every piece of a dish stands at a moment, the worst first. Empty for a dish of one's own, an unknown cut, or a
/// dish without pieces: of those nothing can be said.
#[must_use]
pub fn watch_dish(plan: &Plan, journal: &Journal, dish: DishId, now: Moment) -> Vec<Watched> {
    let Some(there) = plan.dishes.get(&dish) else {
        return Vec::new();
    };
    let pieces = there.pieces.keys();
    let mut watched: Vec<_> = pieces
        .filter_map(|piece| {
            let track = track_of(plan, journal, dish, *piece)?;
            Some(Watched {
                dish,
                piece: *piece,
                state: judge(&track, now),
            })
        })
        .collect();
    watched.sort_by_key(|one| core::cmp::Reverse(one.state.standing));
    watched
}

/// What is known of a piece: its sort from the plan, what happened from the journal. Doubtful readings, those
/// of a thin end and what was struck out are left aside. None for a dish of one's own, or a cut or piece that the plan does not have.
#[must_use]
pub fn track_of(plan: &Plan, journal: &Journal, dish: DishId, piece: PieceId) -> Option<Track> {
    let there = plan.dishes.get(&dish)?;
    let Food::Cut { cut } = &there.food else {
        return None;
    };
    let cut = cut.parse::<CutId>().ok()?.cut();
    let sort = Sort::of(cut.make, there.pieces.get(&piece)?.intact);
    let low_target = there
        .target
        .is_some_and(|target| target < minimum(sort).temperature);
    let entries = journal.standing().map(|(_, entry)| entry);
    let ours = Ours {
        dish,
        piece,
        cooker: there.cooker,
    };
    Some(Track {
        standard: if low_target {
            Standard::Table
        } else {
            Standard::Minimum
        },
        audience: plan.audience,
        air: plan.place.air,
        happenings: at_its_cooker(entries.flat_map(|entry| ours.happenings(entry)).collect()),
        ..Track::new(sort)
    })
}

/// Something that happened, and to what it happened.
struct Seen {
    happening: Happening,
    of: Of,
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Of {
    /// The dish.
    Dish,
    /// It went on its cooker.
    OnItsCooker,
    /// Its cooker, whether or not the dish was on it.
    Cooker,
}

/// What happened, oldest first. What was told of its cooker counts only while the dish lay on it: a fire that dies after
/// the dish has come off, or has moved to an oven, cools nothing.
fn at_its_cooker(mut seen: Vec<Seen>) -> Vec<Happening> {
    seen.sort_by_key(|one| one.happening.at);
    let mut on_it = false;
    seen.retain(|one| {
        let moves = super::judge::stage(one.happening.what).is_some();
        match one.of {
            Of::OnItsCooker => on_it = true,
            Of::Dish if moves => on_it = false,
            Of::Dish => {}
            Of::Cooker => return on_it,
        }
        true
    });
    seen.into_iter().map(|one| one.happening).collect()
}

struct Ours {
    dish: DishId,
    piece: PieceId,
    cooker: Option<CookerId>,
}

impl Ours {
    fn happenings(&self, entry: &Entry) -> Vec<Seen> {
        let Event::Known(event) = &entry.event else {
            return Vec::new();
        };
        let mine = |dish: &DishId| *dish == self.dish;
        let on_mine = |cooker: &CookerId| Some(*cooker) == self.cooker;
        let mut of = Of::Dish;
        let seen = |what, of| Seen {
            happening: Happening { at: entry.at, what },
            of,
        };
        let what = match event {
            KnownEvent::TakenOut { dish } if mine(dish) => Happened::TakenOut,
            KnownEvent::PutBack { dish } if mine(dish) => Happened::PutBack,
            KnownEvent::On { dish } if mine(dish) => {
                of = Of::OnItsCooker;
                Happened::On
            }
            KnownEvent::Core {
                piece,
                reading,
                place: ProbePlace::NotSaid | ProbePlace::ThickMiddle,
                doubtful: false,
            } if *piece == self.piece => Happened::Core(*reading),
            KnownEvent::Pit {
                cooker,
                reading,
                doubtful: false,
                ..
            } if on_mine(cooker) => {
                of = Of::Cooker;
                Happened::Pit(*reading)
            }
            KnownEvent::FireOut { cooker, .. } if on_mine(cooker) => {
                of = Of::Cooker;
                Happened::HeatLost
            }
            KnownEvent::FireBack { cooker } if on_mine(cooker) => {
                of = Of::Cooker;
                Happened::On
            }
            KnownEvent::MovedToOven { dish, air } if mine(dish) && *air >= OVEN_COOKS => {
                return [Happened::On, Happened::Pit(*air)]
                    .map(|what| seen(what, of))
                    .into();
            }
            KnownEvent::MovedBack { dish } if mine(dish) => {
                of = Of::OnItsCooker;
                Happened::On
            }
            KnownEvent::MovedToOven { dish, air } if mine(dish) => {
                Happened::Off(Waiting::WarmOven(*air))
            }
            KnownEvent::Off { dish } | KnownEvent::Unboxed { dish } if mine(dish) => {
                Happened::Off(Waiting::Out)
            }
            KnownEvent::Boxed { dish } if mine(dish) => Happened::Off(Waiting::Box),
            KnownEvent::Sliced { dish } | KnownEvent::Served { dish } if mine(dish) => {
                Happened::Served
            }
            KnownEvent::Chilled { dish, depth, ice } if mine(dish) => {
                // A usual fridge: 3 °C, so that it is never above 4 °C (common practice).
                let air = Temperature::from_celsius(3.0);
                let chilling = if *ice {
                    Chilling::PanInIceWater { air }
                } else {
                    Chilling::Fridge { air }
                };
                Happened::Chilled(depth.map(|depth| Portion { depth, chilling }))
            }
            KnownEvent::Reheating { dish } if mine(dish) => Happened::Reheating,
            _ => return Vec::new(),
        };
        vec![seen(what, of)]
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::handover::Gauge;
    use crate::handover::identity::EntryId;
    use crate::plan::{Dish, Intact, Order, Piece, Serving};
    use crate::safety::RuleId;
    use crate::safety::watch::Standing;
    use crate::units::{Mass, TimeSpan};
    use std::collections::BTreeMap;

    fn at(hours: f64) -> Moment {
        Moment::from_unix_seconds(1_790_000_000) + TimeSpan::from_hours(hours)
    }

    fn plan(dish: DishId, piece: PieceId, cooker: CookerId, intact: Intact) -> Plan {
        let local = "2026-09-12T18:00:00".parse().expect("a time");
        let serving = Serving {
            local,
            zone: "Europe/London".to_owned(),
            offset_seconds: 3600,
        };
        let mut plan = Plan::new(serving);
        let piece_of = Piece {
            order: Order::default(),
            count: 1,
            mass: Mass::from_kilograms(3.6),
            weighed: crate::plan::BasisOfWeight::Bought,
            thickness: None,
            intact,
            frozen: false,
        };
        let dish_of = Dish {
            name: "shoulder".to_owned(),
            order: Order::default(),
            food: Food::Cut {
                cut: "pork-shoulder-butt".to_owned(),
            },
            cooker: Some(cooker),
            pit: None,
            pieces: BTreeMap::from([(piece, piece_of)]),
            target: None,
            thaw: None,
            salt: None,
            wrap: None,
            spray: None,
            rest: None,
            hold: None,
            slicing: None,
            first_time: false,
            note: String::new(),
        };
        plan.dishes.insert(dish, dish_of);
        plan
    }

    fn journal(events: &[(f64, KnownEvent)]) -> Journal {
        let mut journal = Journal::default();
        for (index, (hours, event)) in (0..).zip(events) {
            let entry = Entry::told(at(*hours), Event::Known(event.clone()));
            journal.0.insert(EntryId::new(1000 + index, 1), entry);
        }
        journal
    }

    #[test]
    fn the_journal_of_a_night_is_judged() {
        let (dish, piece, cooker) = (DishId::new(1, 1), PieceId::new(2, 2), CookerId::new(3, 3));
        let celsius = Temperature::from_celsius;
        let read = |reading: f64, doubtful| KnownEvent::Core {
            piece,
            reading: celsius(reading),
            place: ProbePlace::NotSaid,
            doubtful,
        };
        let events = [
            (0.0, KnownEvent::TakenOut { dish }),
            (0.7, KnownEvent::On { dish }),
            (
                1.5,
                KnownEvent::Pit {
                    cooker,
                    reading: celsius(121.0),
                    gauge: Gauge::NotSaid,
                    doubtful: false,
                },
            ),
            (3.9, read(52.0, false)),
            (4.1, read(88.0, true)),
        ];
        let plan_of = |intact| plan(dish, piece, cooker, intact);
        let state = |events: &[(f64, KnownEvent)], intact, hours| {
            let watched = watch_dish(&plan_of(intact), &journal(events), dish, at(hours));
            (watched[0].state.standing, watched[0].state.why)
        };
        // The doubtful reading of 88 °C proves nothing: the core is slow, which is a caution or a stop.
        let late = [events.as_slice(), &[(4.2, read(54.0, false))]].concat();
        assert_eq!(
            state(&late, Intact::Yes, 4.3),
            (Standing::Heed, RuleId::SlowCoreIntact)
        );
        assert_eq!(
            state(&late, Intact::Unknown, 4.3),
            (Standing::Discard, RuleId::CoreHotInTime)
        );
        // Struck out, it is gone.
        let slip = EntryId::new(1005, 1);
        let struck = [
            late.as_slice(),
            &[(4.25, KnownEvent::Struck { entry: slip })],
        ]
        .concat();
        assert_eq!(state(&struck, Intact::Unknown, 4.3).0, Standing::Unknown);
    }

    #[test]
    fn other_dishes_and_cookers_do_not_count() {
        let (dish, piece, cooker) = (DishId::new(1, 1), PieceId::new(2, 2), CookerId::new(3, 3));
        let events = [
            (
                0.0,
                KnownEvent::On {
                    dish: DishId::new(9, 9),
                },
            ),
            (
                0.1,
                KnownEvent::Pit {
                    cooker: CookerId::new(9, 9),
                    reading: Temperature::from_celsius(130.0),
                    gauge: Gauge::NotSaid,
                    doubtful: false,
                },
            ),
            (
                0.2,
                KnownEvent::Note {
                    text: "windy".to_owned(),
                },
            ),
        ];
        let plan = plan(dish, piece, cooker, Intact::Yes);
        let track = track_of(&plan, &journal(&events), dish, piece).expect("a cut");
        assert_eq!(track.happenings, []);
        assert_eq!(
            watch_dish(&plan, &journal(&events), DishId::new(8, 8), at(1.0)),
            []
        );
    }
}
