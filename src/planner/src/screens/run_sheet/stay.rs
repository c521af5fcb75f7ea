//! What lies where: each dish as a bar in its cooker's lane, from on to the table.

use super::axis::Axis;
use super::pack;
use cook_model::handover::identity::{CookerId, DishId};
use cook_model::plan::outlook::{DishOutlook, DishTimes, Outlook, StepKind, Window};
use cook_model::plan::{Dish, Food, OwnPlace, Plan};
use cook_model::units::Moment;

/// Where a dish is made.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Place {
    /// On a cooker.
    Cooker(CookerId),
    /// On the hob, in the kitchen oven, or on the bench.
    Kitchen,
}

/// A dish in a lane. What is drawn of it, in order: it cooks, it rests, it may be table-ready, it is held hot.
#[derive(Clone, Debug, PartialEq)]
pub struct Stay {
    /// Which.
    pub dish: DishId,
    /// Its letter.
    pub letter: char,
    /// Its hue, 1 to 5.
    pub hue: u8,
    /// The lane.
    pub place: Place,
    /// Which of the bars side by side, from 0.
    pub column: usize,
    /// On.
    pub on: Moment,
    /// Likely off.
    pub off: Moment,
    /// When it may be table-ready.
    pub table: Window,
    /// Sliced, or served where nothing is sliced.
    pub until: Moment,
    /// The core stands still: from, to.
    pub stall: Option<(Moment, Moment)>,
}

impl Stay {
    /// The solid part ends here: it comes off, or the first may be table-ready.
    #[must_use]
    pub fn cooks_to(&self) -> Moment {
        self.off.min(self.table.from()).max(self.on)
    }

    /// The blank part between off and the window, if there is one.
    #[must_use]
    pub fn rests(&self) -> Option<(Moment, Moment)> {
        let (from, to) = (self.cooks_to(), self.table.from());
        (from < to).then_some((from, to))
    }

    /// The ruled part between the window and slicing, if there is one.
    #[must_use]
    pub fn held(&self) -> Option<(Moment, Moment)> {
        let from = self.table.to();
        (from < self.until).then_some((from, self.until))
    }

    /// Its last moment in the lane.
    #[must_use]
    pub fn end(&self) -> Moment {
        self.until.max(self.table.to())
    }
}

/// The bars of all dishes that have a forecast, in the order of the outlook, each with its column in its lane.
#[must_use]
pub fn stays(plan: &Plan, outlook: &Outlook, axis: Axis) -> Vec<Stay> {
    let mut found: Vec<Stay> = outlook
        .dishes
        .iter()
        .filter_map(|seen| {
            let dish = plan.dishes.get(&seen.dish)?;
            let times = seen.forecast.as_ref().ok()?;
            Some(stay(dish, seen, times, outlook))
        })
        .filter(|stay| stay.on <= axis.end && axis.start <= stay.end())
        .collect();
    let mut places: Vec<Place> = found.iter().map(|stay| stay.place).collect();
    places.sort_unstable();
    places.dedup();
    for place in places {
        let mut lane: Vec<&mut Stay> = found
            .iter_mut()
            .filter(|stay| stay.place == place)
            .collect();
        lane.sort_by_key(|stay| stay.on);
        let spans: Vec<(f64, f64)> = lane
            .iter()
            .map(|stay| (axis.at(stay.on), axis.at(stay.end())))
            .collect();
        for (stay, column) in lane.into_iter().zip(pack::rows(&spans)) {
            stay.column = column;
        }
    }
    found
}

fn stay(dish: &Dish, seen: &DishOutlook, times: &DishTimes, outlook: &Outlook) -> Stay {
    let serving = outlook.table.serving;
    let sliced = outlook
        .steps
        .iter()
        .find(|step| step.kind == StepKind::Slice && step.dish == Some(seen.dish))
        .map(|step| step.when.likely());
    Stay {
        dish: seen.dish,
        letter: seen.letter,
        hue: seen.hue,
        place: place(dish),
        column: 0,
        on: times.on,
        off: times.ready.likely(),
        table: times.table_ready,
        until: sliced.unwrap_or(serving),
        stall: times.stall,
    }
}

fn place(dish: &Dish) -> Place {
    let in_the_kitchen = matches!(
        dish.food,
        Food::Own {
            place: OwnPlace::Kitchen | OwnPlace::Bench,
            ..
        }
    );
    match dish.cooker {
        Some(cooker) if !in_the_kitchen => Place::Cooker(cooker),
        _ => Place::Kitchen,
    }
}

#[cfg(test)]
mod tests {
    use super::super::sample::{Sample, around, at};
    use super::*;
    use cook_model::units::TimeSpan;

    fn axis() -> Axis {
        Axis {
            start: at("2026-09-12T00:00:00"),
            end: at("2026-09-12T19:00:00"),
        }
    }

    #[test]
    fn a_dish_cooks_rests_may_be_ready_and_is_held_hot() {
        let mut sample = Sample::new("2026-09-12T18:00:00");
        let offset = sample.cooker("Offset");
        let dish = sample.dish("Pork", Some(offset), "2026-09-12T05:00:00");
        let times = sample.outlook.dishes[0].forecast.as_mut().expect("times");
        times.table_ready = around(at("2026-09-12T15:00:00"), 60.0);
        sample
            .step(StepKind::Slice, "2026-09-12T17:30:00", 0.0)
            .dish = Some(dish);
        let bars = stays(&sample.plan, &sample.outlook, axis());
        let bar = &bars[0];
        assert_eq!(bar.place, Place::Cooker(offset));
        assert_eq!(bar.cooks_to(), at("2026-09-12T13:00:00"));
        assert_eq!(
            bar.rests(),
            Some((at("2026-09-12T13:00:00"), at("2026-09-12T14:00:00")))
        );
        assert_eq!(
            bar.held(),
            Some((at("2026-09-12T16:00:00"), at("2026-09-12T17:30:00")))
        );
    }

    #[test]
    fn a_window_wider_than_the_rest_leaves_no_blank_and_a_late_one_no_hold() {
        let mut sample = Sample::new("2026-09-12T18:00:00");
        let offset = sample.cooker("Offset");
        sample.dish("Ribs", Some(offset), "2026-09-12T09:00:00");
        let times = sample.outlook.dishes[0].forecast.as_mut().expect("times");
        times.table_ready = times.ready.moved(TimeSpan::from_minutes(20.0));
        let bars = stays(&sample.plan, &sample.outlook, axis());
        assert_eq!(bars[0].cooks_to(), at("2026-09-12T16:20:00"));
        assert_eq!(bars[0].rests(), None);
        assert_eq!(bars[0].held(), None);
        assert_eq!(bars[0].end(), at("2026-09-12T18:20:00"));
    }

    #[test]
    fn dishes_at_the_same_time_lie_side_by_side() {
        let mut sample = Sample::new("2026-09-12T18:00:00");
        let offset = sample.cooker("Offset");
        let kettle = sample.cooker("Kettle");
        sample.dish("Lamb", Some(offset), "2026-09-12T08:00:00");
        sample.dish("Pork", Some(offset), "2026-09-12T05:00:00");
        sample.dish("Corn", Some(kettle), "2026-09-12T08:00:00");
        let bars = stays(&sample.plan, &sample.outlook, axis());
        let columns: Vec<_> = bars.iter().map(|bar| bar.column).collect();
        assert_eq!(columns, [1, 0, 0]);
    }

    #[test]
    fn a_dish_of_the_bench_lies_in_the_kitchen_even_when_a_cooker_is_named() {
        let mut sample = Sample::new("2026-09-12T18:00:00");
        let kettle = sample.cooker("Kettle");
        let dish = sample.dish("Slaw", Some(kettle), "2026-09-12T08:00:00");
        sample.plan.dishes.get_mut(&dish).expect("the dish").food = Food::Own {
            least: TimeSpan::from_minutes(20.0),
            likely: TimeSpan::from_minutes(30.0),
            most: TimeSpan::from_minutes(40.0),
            place: OwnPlace::Bench,
        };
        let bars = stays(&sample.plan, &sample.outlook, axis());
        assert_eq!(bars[0].place, Place::Kitchen);
    }
}
