//! A plain project with limited resources: activities that follow one another, and rooms that they share. The day's inner
//! scheme without anything that is particular to a day; used to compare it with published problems.

use super::network::{Arc, Network};
use super::serial::serial;
use super::timetable::Timetable;
use thiserror::Error;

/// One activity.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Activity {
    /// How long it takes, in steps of time.
    pub takes: u32,
    /// How much of each room it takes, in the order of the rooms.
    pub wants: Vec<u32>,
    /// The activities that are over before it begins.
    pub after: Vec<usize>,
}

/// Why a project cannot be laid out.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum NoProject {
    /// It goes after one that is not there.
    #[error(
        "activity {activity} goes after activity {after}, which is not there: number them from 0"
    )]
    NoSuchActivity {
        /// Which.
        activity: usize,
        /// The one that is missing.
        after: usize,
    },
    /// It wants more of a room than there is, or its list has another length than there are rooms.
    #[error(
        "activity {activity} wants {wants:?} of rooms of {rooms:?}: it never fits. Give it less, or the rooms more"
    )]
    NeverFits {
        /// Which.
        activity: usize,
        /// What it wants.
        wants: Vec<u32>,
        /// The rooms.
        rooms: Vec<u32>,
    },
    /// Activities go after one another in a circle.
    #[error("activity {activity} goes after itself: take one of the rules out")]
    Circle {
        /// One of them.
        activity: usize,
    },
}

/// A project whose rules can be kept.
#[derive(Clone, Debug)]
pub struct Project {
    rooms: Vec<u32>,
    activities: Vec<Activity>,
    /// An order in which each comes after those it goes after.
    sorted: Vec<usize>,
    /// Those that go after each.
    before: Vec<Vec<usize>>,
    /// Rules alone, from 0 to the sum of all times.
    network: Network,
}

/// A schedule: when each activity begins.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Laid {
    pub(super) begins: Vec<i64>,
    pub(super) length: i64,
}

impl Project {
    /// Checks a project.
    ///
    /// # Errors
    /// Where no schedule keeps its rules.
    pub fn new(rooms: Vec<u32>, activities: Vec<Activity>) -> Result<Self, NoProject> {
        let count = activities.len();
        let mut before = vec![Vec::new(); count];
        for (place, activity) in activities.iter().enumerate() {
            let never = activity.wants.len() != rooms.len()
                || activity
                    .wants
                    .iter()
                    .zip(&rooms)
                    .any(|(want, room)| want > room);
            if never {
                return Err(NoProject::NeverFits {
                    activity: place,
                    wants: activity.wants.clone(),
                    rooms,
                });
            }
            for after in &activity.after {
                let followers = before.get_mut(*after).ok_or(NoProject::NoSuchActivity {
                    activity: place,
                    after: *after,
                })?;
                followers.push(place);
            }
        }
        let sorted = sort(&activities, &before)?;
        let horizon: i64 = activities.iter().map(|one| i64::from(one.takes)).sum();
        let mut network = Network::new(count);
        for place in &sorted {
            let last = horizon - i64::from(activities[*place].takes);
            network.hold(*place, 0, last).ok();
        }
        for later in &sorted {
            for sooner in &activities[*later].after {
                let arc = Arc {
                    from: *sooner,
                    to: *later,
                    least: i64::from(activities[*sooner].takes),
                };
                network
                    .add(arc)
                    .map_err(|_| NoProject::Circle { activity: *later })?;
            }
        }
        Ok(Self {
            rooms,
            activities,
            sorted,
            before,
            network,
        })
    }

    /// How many activities.
    #[must_use]
    pub const fn len(&self) -> usize {
        self.activities.len()
    }

    /// Whether there is nothing to do.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        self.activities.is_empty()
    }

    /// The length if every room were large enough: no schedule is shorter.
    #[must_use]
    pub fn critical_path(&self) -> i64 {
        let ends = (0..self.len()).map(|place| self.network.window(place).0 + self.takes(place));
        ends.max().unwrap_or(0)
    }

    pub(super) fn takes(&self, place: usize) -> i64 {
        i64::from(self.activities[place].takes)
    }

    /// The earliest and the latest beginning by the rules alone.
    pub(super) fn window(&self, place: usize) -> (i64, i64) {
        self.network.window(place)
    }

    pub(super) fn after(&self, place: usize) -> &[usize] {
        &self.activities[place].after
    }

    pub(super) fn before(&self, place: usize) -> &[usize] {
        &self.before[place]
    }

    pub(super) fn sorted(&self) -> &[usize] {
        &self.sorted
    }

    /// Lays the list out: backwards, as late as each fits, or forward, as early.
    pub(super) fn lay_out(&self, list: &[usize], backwards: bool) -> Option<Laid> {
        let mut rooms: Vec<Timetable> = self
            .rooms
            .iter()
            .map(|size| Timetable::new(*size))
            .collect();
        let mut network = self.network.clone();
        let begins = serial(&mut network, list, |place, (low, high)| {
            let takes = self.takes(place);
            let wants = &self.activities[place].wants;
            let mut at = if backwards { high } else { low };
            loop {
                let mut moved = at;
                for (room, want) in rooms.iter().zip(wants).filter(|(_, want)| **want > 0) {
                    moved = if backwards {
                        room.latest(moved, takes, *want)?
                    } else {
                        room.earliest(moved, takes, *want)?
                    };
                }
                if moved == at {
                    break;
                }
                at = moved;
            }
            for (room, want) in rooms.iter_mut().zip(wants) {
                room.take(at, at + takes, *want);
            }
            Some(at)
        })?;
        let first = begins.iter().copied().min().unwrap_or(0);
        let begins: Vec<i64> = begins.into_iter().map(|at| at - first).collect();
        let ends = begins
            .iter()
            .enumerate()
            .map(|(place, at)| at + self.takes(place));
        let length = ends.max().unwrap_or(0);
        Some(Laid { begins, length })
    }

    /// Whether a schedule keeps every rule and every room, with its length.
    #[must_use]
    pub fn length_of(&self, begins: &[i64]) -> Option<i64> {
        if begins.len() != self.len() || begins.iter().any(|at| *at < 0) {
            return None;
        }
        let mut rooms: Vec<Timetable> = self
            .rooms
            .iter()
            .map(|size| Timetable::new(*size))
            .collect();
        let mut length = 0;
        for place in 0..self.len() {
            let (from, takes) = (begins[place], self.takes(place));
            let follows = |sooner: &usize| begins[*sooner] + self.takes(*sooner) <= from;
            if !self.after(place).iter().all(follows) {
                return None;
            }
            for (room, want) in rooms.iter_mut().zip(&self.activities[place].wants) {
                if !room.fits(from, takes, *want) {
                    return None;
                }
                room.take(from, from + takes, *want);
            }
            length = length.max(from + takes);
        }
        Some(length)
    }
}

/// Each behind those that it goes after; of several that may come next the first.
fn sort(activities: &[Activity], before: &[Vec<usize>]) -> Result<Vec<usize>, NoProject> {
    let mut waits: Vec<usize> = activities.iter().map(|one| one.after.len()).collect();
    let mut sorted = Vec::new();
    let mut done = vec![false; activities.len()];
    while sorted.len() < activities.len() {
        let next = (0..activities.len()).find(|place| !done[*place] && waits[*place] == 0);
        let Some(next) = next else {
            let activity = done.iter().position(|done| !done).unwrap_or(0);
            return Err(NoProject::Circle { activity });
        };
        done[next] = true;
        sorted.push(next);
        for later in &before[next] {
            waits[*later] -= 1;
        }
    }
    Ok(sorted)
}
