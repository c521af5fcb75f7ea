//! What an ensemble says about one dish.

use super::quantile::{quantile, time_quantile};
use crate::physics::{MemberRun, Sample};
use crate::plan::outlook::CoursePoint;
use crate::units::{Temperature, TimeSpan};

/// The members of one dish's ensemble, so far as they have been run. Member i of one dish and member i of another lie
/// in the same world.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct DishForecast {
    members: Vec<MemberRun>,
}

impl DishForecast {
    /// A forecast of members already run, in the order of their index.
    #[must_use]
    pub const fn from_members(members: Vec<MemberRun>) -> Self {
        Self { members }
    }

    /// The members, by index. All times are since the dish went on and carry the remainder.
    #[must_use]
    pub fn members(&self) -> &[MemberRun] {
        &self.members
    }

    /// The members alone.
    #[must_use]
    pub fn into_members(self) -> Vec<MemberRun> {
        self.members
    }

    pub(super) fn extend(&mut self, members: impl IntoIterator<Item = MemberRun>) {
        self.members.extend(members);
    }

    /// The time by which a share `p` (0 to 1) of the members have reached something; members that never do are late.
    #[must_use]
    pub fn quantile(
        &self,
        time: impl Fn(&MemberRun) -> Option<TimeSpan>,
        p: f64,
    ) -> Option<TimeSpan> {
        time_quantile(self.members.iter().map(time), p)
    }

    /// The 10, 20, … 90 % points of something; a point that falls among members that never reach it is none.
    #[must_use]
    pub fn deciles(&self, time: impl Fn(&MemberRun) -> Option<TimeSpan>) -> [Option<TimeSpan>; 9] {
        let times: Vec<_> = self.members.iter().map(time).collect();
        [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9]
            .map(|p| time_quantile(times.iter().copied(), p))
    }

    /// The 10, 50 and 90 % points of a figure; members without one are left out. None if none has one.
    #[must_use]
    pub fn figure(&self, figure: impl Fn(&MemberRun) -> Option<f64>) -> Option<[f64; 3]> {
        let mut values: Vec<f64> = self.members.iter().filter_map(figure).collect();
        three(&mut values)
    }

    /// How many members reach something within a time since the dish went on.
    #[must_use]
    pub fn count_within(
        &self,
        time: impl Fn(&MemberRun) -> Option<TimeSpan>,
        within: TimeSpan,
    ) -> usize {
        let by = |member: &&MemberRun| time(member).is_some_and(|time| time <= within);
        self.members.iter().filter(by).count()
    }

    /// The member whose ready time is the middle one (the lower of two); none if half or more are never ready.
    #[must_use]
    pub fn likely_member(&self) -> Option<&MemberRun> {
        let mut order: Vec<&MemberRun> = self.members.iter().collect();
        let key = |m: &MemberRun| m.ready.map_or(f64::INFINITY, TimeSpan::seconds);
        order.sort_by(|a, b| key(a).total_cmp(&key(b)));
        let middle = order.get(order.len().checked_sub(1)? / 2)?;
        middle.ready.map(|_| *middle)
    }

    /// The course from 0 to `until`, a point every `every`. A member that has ended stays as it ended. None before
    /// any member has been run.
    #[must_use]
    pub fn course(&self, every: TimeSpan, until: TimeSpan) -> Option<Vec<CoursePoint>> {
        let mut points = Vec::new();
        let mut step = 0.0;
        loop {
            let after = every * step;
            points.push(self.point(after)?);
            if after >= until || every <= TimeSpan::ZERO {
                return Some(points);
            }
            step += 1.0;
        }
    }

    /// One point of the course.
    #[must_use]
    pub fn point(&self, after: TimeSpan) -> Option<CoursePoint> {
        let at: Vec<Sample> = self
            .members
            .iter()
            .filter_map(|member| sample_at(&member.samples, after))
            .collect();
        let points =
            |value: fn(&Sample) -> f64| three(&mut at.iter().map(value).collect::<Vec<_>>());
        Some(CoursePoint {
            after,
            core: points(|s| s.core.celsius())?.map(Temperature::from_celsius),
            tenderness: points(|s| s.tenderness)?,
            loss: points(|s| s.loss)?[1],
        })
    }
}

fn three(values: &mut [f64]) -> Option<[f64; 3]> {
    Some([
        quantile(values, 0.1)?,
        quantile(values, 0.5)?,
        quantile(values, 0.9)?,
    ])
}

/// The moment of a course at a time, by straight lines between its samples; the first before it begins and the last
/// after it has ended. None without samples.
#[must_use]
pub fn sample_at(samples: &[Sample], after: TimeSpan) -> Option<Sample> {
    let next = samples.partition_point(|sample| sample.after <= after);
    let Some(before) = next.checked_sub(1).and_then(|before| samples.get(before)) else {
        return samples.first().copied();
    };
    let Some(next) = samples.get(next) else {
        return Some(*before);
    };
    let share = (after - before.after) / (next.after - before.after);
    let point = |a: Temperature, b: Temperature| a + (b - a) * share;
    Some(Sample {
        after,
        core: point(before.core, next.core),
        probe: point(before.probe, next.probe),
        surface: point(before.surface, next.surface),
        air: point(before.air, next.air),
        tenderness: before.tenderness + (next.tenderness - before.tenderness) * share,
        loss: before.loss + (next.loss - before.loss) * share,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sample(hours: f64, celsius: f64) -> Sample {
        let point = Temperature::from_celsius(celsius);
        Sample {
            after: TimeSpan::from_hours(hours),
            core: point,
            probe: point,
            surface: point,
            air: point,
            tenderness: hours / 10.0,
            loss: hours / 100.0,
        }
    }

    #[test]
    fn a_course_is_straight_between_samples_and_flat_outside() {
        let samples = [sample(0.0, 4.0), sample(1.0, 20.0), sample(3.0, 60.0)];
        let core = |hours| {
            sample_at(&samples, TimeSpan::from_hours(hours))
                .unwrap()
                .core
                .celsius()
        };
        assert_eq!(core(0.0), 4.0);
        assert_eq!(core(0.5), 12.0);
        assert_eq!(core(2.0), 40.0);
        assert_eq!(core(3.0), 60.0);
        assert_eq!(core(9.0), 60.0);
        assert!(sample_at(&[], TimeSpan::ZERO).is_none());
    }

    #[test]
    fn nothing_is_said_before_the_first_members() {
        let empty = DishForecast::default();
        assert!(empty.likely_member().is_none());
        assert!(empty.quantile(|m| m.ready, 0.5).is_none());
        assert!(
            empty
                .course(TimeSpan::from_minutes(10.0), TimeSpan::from_hours(1.0))
                .is_none()
        );
    }
}
