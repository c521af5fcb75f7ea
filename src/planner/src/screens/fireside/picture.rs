//! The geometry of the picture: tenderness against the clock, ending in the grain on the line “tender”, with the
//! readings on a strip below. Everything in it comes from the forecast and the journal.

use super::yard::Day;
use crate::format::Formats;
use crate::parts::{Tile, tiles};
use crate::screens::run_sheet::axis::Axis;
use chrono::Timelike;
use cook_model::handover::identity::DishId;
use cook_model::handover::{Event, KnownEvent, ProbeFeel};
use cook_model::live::Stage;
use cook_model::plan::outlook::{DishTimes, Window};
use cook_model::units::{Moment, Temperature, TimeSpan};

/// Where the line “tender” stands, from the top.
pub const TENDER_LINE: f64 = 46.0;
/// Room below the base for the strip of readings.
pub const STRIP: f64 = 62.0;
/// Two figures nearer than this would touch.
const FIGURE: f64 = 25.0;
/// Half of an hour's label, of the label of now, and of the table's.
const HOUR_LABEL: f64 = 12.0;
const NOW_LABEL: f64 = 34.0;
const TABLE_LABEL: f64 = 76.0;

/// A dot on the strip.
#[derive(Clone, Debug, PartialEq)]
pub struct Dot {
    /// Where.
    pub x: f64,
    /// Its figure; none where it would touch another.
    pub figure: Option<String>,
    /// It counts little.
    pub doubtful: bool,
}

/// A label on top.
#[derive(Clone, Debug, PartialEq)]
pub struct Hour {
    /// Where.
    pub x: f64,
    /// What is written; none where it would touch another.
    pub text: Option<String>,
}

/// The picture.
#[derive(Clone, Debug, PartialEq)]
pub struct Picture {
    /// Width.
    pub width: f64,
    /// Height.
    pub height: f64,
    /// The base: nothing of the tenderness yet.
    pub base: f64,
    /// Now, while it lies on the axis.
    pub now: Option<f64>,
    /// The table.
    pub table: f64,
    /// Full hours.
    pub hours: Vec<Hour>,
    /// The tiles of the window on the line, in pixels.
    pub grain: Vec<Tile>,
    /// The likely time.
    pub likely: f64,
    /// The eight stripes as outlines, outer ones first and last.
    pub stripes: Vec<String>,
    /// What is likely.
    pub will: String,
    /// Where the ring stands.
    pub ring: Option<(f64, f64)>,
    /// How the probe went in.
    pub feels: Vec<(f64, f64)>,
    /// Core readings.
    pub core: Vec<Dot>,
    /// Pit readings.
    pub pit: Vec<Dot>,
    /// It is cooked to a temperature: the curve is the core's way to it.
    pub to_temperature: bool,
}

/// One of the three curves: a moment and how far it is, 0 to 1.
type Curve = Vec<(Moment, f64)>;

/// The three curves of a dish: 10, 50 and 90 %.
struct Curves {
    low: Curve,
    likely: Curve,
    high: Curve,
}

/// Draws a dish. None where there is no forecast.
#[must_use]
pub fn picture(
    day: &Day,
    dish: DishId,
    now: Moment,
    formats: &Formats,
    (width, height): (f64, f64),
) -> Option<Picture> {
    let seen = day.seen(dish)?;
    let times = seen.forecast.as_ref().ok()?;
    let progress = day.progress();
    let (stage, _) = progress.stage(dish);
    let on = progress.on(dish).unwrap_or(times.on);
    let ready = times.ready;
    let serving = day.plan.serving.moment();
    let to_temperature = times.tenderness.is_none();
    let curves = curves(times, on)?;

    let first = if stage == Stage::NotOn {
        on
    } else {
        on.min(now)
    };
    let last = serving
        .max(ready.to())
        .max(if stage == Stage::NotOn { on } else { now });
    let axis = Axis::around(first, last + TimeSpan::from_minutes(10.0), &formats.zone);
    let scale = Scale {
        axis,
        width,
        base: height - STRIP,
    };
    let holds_now = axis.holds(now);
    let now_x = holds_now.then(|| scale.x(now));
    let table = scale.x(serving);
    let stripes = stripes(&curves, &ready, &scale);
    let from = if stage > Stage::NotOn { now } else { on };
    let line = |points: &[(Moment, f64)]| path(points.iter().map(|(at, y)| scale.point(*at, *y)));
    let ring = (stage > Stage::NotOn && stage < Stage::Resting && holds_now)
        .then(|| scale.point(now, value(&curves.likely, from)));
    let feels = feels(day, dish)
        .filter(|(at, _)| axis.holds(*at))
        .map(|(at, feel)| scale.point(at, felt(feel)))
        .collect();
    Some(Picture {
        width,
        height,
        base: scale.base,
        now: now_x,
        table,
        hours: hours(&scale, formats, now_x, table),
        grain: grain(&ready, &scale),
        likely: scale.x(ready.likely()),
        stripes,
        will: line(&curves.likely),
        ring,
        feels,
        core: core_dots(day, dish, &scale, formats),
        pit: pit_dots(day, dish, on, &scale, formats),
        to_temperature,
    })
}

/// Where a feel is drawn: what the words say, not a measurement. Set by hand.
const fn felt(feel: ProbeFeel) -> f64 {
    match feel {
        ProbeFeel::Tight => 0.3,
        ProbeFeel::Drags => 0.75,
        ProbeFeel::SoftButter => 1.0,
    }
}

fn curves(times: &DishTimes, on: Moment) -> Option<Curves> {
    let to_temperature = times.tenderness.is_none();
    let target = times.target?;
    let points = times.course.iter();
    let points: Vec<(Moment, [f64; 3], [Temperature; 3])> = points
        .map(|point| (on + point.after, point.tenderness, point.core))
        .collect();
    let start = points.first()?.2[1].celsius();
    let whole = (target.celsius() - start).max(1.0);
    let far = |n: usize| -> Curve {
        let mut reached = 0.0_f64;
        let each = points.iter().map(|(at, tender, core)| {
            let far = if to_temperature {
                (core[n].celsius() - start) / whole
            } else {
                tender[n]
            };
            // Neither the integral nor the hottest it has been ever falls.
            reached = reached.max(far.clamp(0.0, 1.0));
            (*at, reached)
        });
        each.collect()
    };
    Some(Curves {
        low: far(0),
        likely: far(1),
        high: far(2),
    })
}

/// From moments and shares to pixels.
struct Scale {
    axis: Axis,
    width: f64,
    base: f64,
}

impl Scale {
    fn x(&self, at: Moment) -> f64 {
        self.axis.within(at) / self.axis.hours() * self.width
    }

    fn point(&self, at: Moment, far: f64) -> (f64, f64) {
        (self.x(at), self.base - (self.base - TENDER_LINE) * far)
    }
}

/// When a curve reaches a level. None where it does not.
fn reaches(curve: &Curve, level: f64) -> Option<Moment> {
    let mut before: Option<(Moment, f64)> = None;
    for (at, far) in curve {
        if *far >= level {
            let Some((earlier, was)) = before.filter(|(_, was)| was < far) else {
                return Some(*at);
            };
            let share = ((level - was) / (far - was)).clamp(0.0, 1.0);
            return Some(earlier + (*at - earlier) * share);
        }
        before = Some((*at, *far));
    }
    None
}

/// How far a curve is at a moment.
fn value(curve: &Curve, at: Moment) -> f64 {
    let (before, after) = split(curve, at);
    before.last().or(after.first()).map_or(0.0, |(_, far)| *far)
}

/// A curve cut in two at a moment, which belongs to both.
fn split(curve: &Curve, at: Moment) -> (Curve, Curve) {
    let mut before: Curve = curve
        .iter()
        .copied()
        .filter(|(moment, _)| *moment <= at)
        .collect();
    let mut after: Curve = curve
        .iter()
        .copied()
        .filter(|(moment, _)| *moment > at)
        .collect();
    if let (Some((earlier, was)), Some((later, will))) =
        (before.last().copied(), after.first().copied())
        && later > earlier
    {
        let share = (at - earlier).seconds() / (later - earlier).seconds();
        let here = (at, was + (will - was) * share);
        before.push(here);
        after.insert(0, here);
    }
    (before, after)
}

/// Levels at which the stripes are drawn.
const LEVELS: usize = 24;

/// The eight stripes. Between the three curves of the forecast the others are drawn in proportion, so that on the line
/// “tender” each ends exactly under its tile.
fn stripes(curves: &Curves, ready: &Window, scale: &Scale) -> Vec<String> {
    let levels: Vec<f64> = (0..=LEVELS).map(|n| n as f64 / LEVELS as f64).collect();
    let edge = |decile: usize| -> Vec<(f64, f64)> {
        let goal = ready.deciles[decile];
        let [from, likely, to] = [ready.from(), ready.likely(), ready.to()];
        let share = |a: Moment, b: Moment| {
            let whole = (b - a).seconds();
            if whole > 0.0 {
                (goal - a).seconds() / whole
            } else {
                0.0
            }
        };
        let points = levels.iter().filter_map(|level| {
            // The quick end of the window is the high curve.
            let (quick, middle, slow) = (
                reaches(&curves.high, *level)?,
                reaches(&curves.likely, *level).unwrap_or(likely),
                reaches(&curves.low, *level).unwrap_or(to),
            );
            let at = if decile <= 4 {
                quick + (middle - quick) * share(from, likely)
            } else {
                middle + (slow - middle) * share(likely, to)
            };
            Some(scale.point(at.min(to), *level))
        });
        let mut points: Vec<_> = points.collect();
        if let Some(last) = points.last_mut() {
            *last = (scale.x(goal), TENDER_LINE);
        }
        points
    };
    let edges: Vec<_> = (0..9).map(edge).collect();
    edges
        .windows(2)
        .map(|pair| {
            let back = pair[1].iter().rev();
            let outline = path(pair[0].iter().chain(back).copied());
            if outline.is_empty() {
                outline
            } else {
                outline + "Z"
            }
        })
        .collect()
}

/// A path through points.
fn path(points: impl IntoIterator<Item = (f64, f64)>) -> String {
    let mut text = String::new();
    for (x, y) in points {
        let letter = if text.is_empty() { 'M' } else { 'L' };
        text.push_str(&format!("{letter}{x:.1} {y:.1}"));
    }
    text
}

fn grain(ready: &Window, scale: &Scale) -> Vec<Tile> {
    let deciles = ready.deciles.map(|at| scale.x(at) / scale.width);
    let pixels = |tile: Tile| Tile {
        at: tile.at / 100.0 * scale.width,
        width: tile.width / 100.0 * scale.width,
        depth: tile.depth,
    };
    tiles(&deciles).map(pixels).to_vec()
}

fn hours(scale: &Scale, formats: &Formats, now: Option<f64>, table: f64) -> Vec<Hour> {
    let ticks = scale.axis.ticks(&formats.zone);
    let every = [1, 2, 3, 4, 6, 12, 24]
        .into_iter()
        .find(|every| scale.axis.hours() / f64::from(*every) <= (scale.width / 44.0).max(2.0))
        .unwrap_or(24);
    let full = ticks.iter().filter(|tick| {
        let local = tick.local;
        local.minute() == 0 && local.hour().is_multiple_of(every)
    });
    let table_from = (table - TABLE_LABEL).max(0.0);
    full.map(|tick| {
        let x = tick.at / scale.axis.hours() * scale.width;
        let free = now.is_none_or(|now| (x - now).abs() > HOUR_LABEL + NOW_LABEL)
            && (x < table_from - HOUR_LABEL || x > table + HOUR_LABEL)
            && x > HOUR_LABEL
            && x < scale.width - HOUR_LABEL;
        Hour {
            x,
            text: free.then(|| formats.clock.hour(tick.local.time())),
        }
    })
    .collect()
}

/// Readings as dots, the last first when it comes to figures: those give way where two would touch.
fn dots(
    readings: impl Iterator<Item = (Moment, Temperature, bool)>,
    scale: &Scale,
    formats: &Formats,
) -> Vec<Dot> {
    let mut readings: Vec<_> = readings.filter(|(at, ..)| scale.axis.holds(*at)).collect();
    readings.sort_by_key(|(at, ..)| *at);
    let mut taken: Vec<f64> = Vec::new();
    let mut dots: Vec<Dot> = readings
        .into_iter()
        .rev()
        .map(|(at, reading, doubtful)| {
            let x = scale.x(at);
            let free = taken.iter().all(|other| (x - other).abs() >= FIGURE);
            let figure = free.then(|| {
                taken.push(x);
                let mark = if doubtful { "?" } else { "" };
                format!("{}{mark}", formats.bare_temperature(reading))
            });
            Dot {
                x,
                figure,
                doubtful,
            }
        })
        .collect();
    dots.reverse();
    dots
}

fn core_dots(day: &Day, dish: DishId, scale: &Scale, formats: &Formats) -> Vec<Dot> {
    let pieces = day.pieces(dish);
    let readings = day
        .journal
        .standing()
        .filter_map(|(_, entry)| match entry.event {
            Event::Known(KnownEvent::Core {
                piece,
                reading,
                doubtful,
                ..
            }) if pieces.contains(&piece) => Some((entry.at, reading, doubtful)),
            _ => None,
        });
    dots(readings, scale, formats)
}

fn pit_dots(day: &Day, dish: DishId, on: Moment, scale: &Scale, formats: &Formats) -> Vec<Dot> {
    let cooker = day.cooker(Some(dish));
    let readings = day
        .journal
        .standing()
        .filter_map(|(_, entry)| match entry.event {
            Event::Known(KnownEvent::Pit {
                cooker: it,
                reading,
                doubtful,
                ..
            }) if Some(it) == cooker && entry.at >= on => Some((entry.at, reading, doubtful)),
            _ => None,
        });
    dots(readings, scale, formats)
}

fn feels(day: &Day, dish: DishId) -> impl Iterator<Item = (Moment, ProbeFeel)> {
    let pieces = day.pieces(dish);
    day.journal
        .standing()
        .filter_map(move |(_, entry)| match entry.event {
            Event::Known(KnownEvent::Felt { piece, feel }) if pieces.contains(&piece) => {
                Some((entry.at, feel))
            }
            _ => None,
        })
}

#[cfg(test)]
mod tests {
    use super::super::super::run_sheet::sample::{Sample, around, at, formats};
    use super::*;
    use cook_model::handover::Journal;
    use cook_model::plan::outlook::CoursePoint;
    use std::sync::Arc;

    /// Tender after 8 h give or take 1 h; the slow ones rise later.
    fn day() -> (Day, DishId) {
        let mut sample = Sample::new("2026-09-12T18:00:00");
        let dish = sample.dish("Pork", None, "2026-09-12T02:00:00");
        let Ok(times) = &mut sample.outlook.dishes[0].forecast else {
            unreachable!("the sample has a forecast")
        };
        times.ready = around(at("2026-09-12T10:00:00"), 60.0);
        times.tenderness = Some([0.9, 1.0, 1.2]);
        times.course = (0..=10)
            .map(|hour| {
                let hour = f64::from(hour);
                CoursePoint {
                    after: TimeSpan::from_hours(hour),
                    core: [50.0, 55.0, 60.0]
                        .map(|core| Temperature::from_celsius(core + 3.0 * hour)),
                    tenderness: [hour / 9.0, hour / 8.0, hour / 7.0],
                    loss: 0.3,
                }
            })
            .collect();
        let day = Day {
            plan: Arc::new(sample.plan),
            journal: Arc::new(Journal::default()),
            outlook: Some(Arc::new(sample.outlook)),
        };
        (day, dish)
    }

    #[test]
    fn every_stripe_ends_under_its_own_tile() {
        let (day, dish) = day();
        let now = at("2026-09-12T01:00:00");
        let picture = picture(&day, dish, now, &formats(), (358.0, 194.0)).expect("a picture");
        assert_eq!(picture.stripes.len(), 8);
        for (stripe, tile) in picture.stripes.iter().zip(&picture.grain) {
            let end = format!("L{:.1} {TENDER_LINE:.1}", tile.at);
            assert!(stripe.contains(&end), "{end} in {stripe}");
        }
        let first = picture.stripes[0].split('L').next().expect("a start");
        assert!(first.ends_with("132.0"), "it rises from the base: {first}");
    }

    #[test]
    fn no_ring_is_drawn_before_it_is_on() {
        let (day, dish) = day();
        let now = at("2026-09-12T06:00:00");
        let picture = picture(&day, dish, now, &formats(), (358.0, 194.0)).expect("a picture");
        assert_eq!(picture.ring, None, "nobody said that it is on");
    }

    #[test]
    fn a_figure_gives_way_and_the_last_reading_keeps_its_own() {
        let axis = Axis {
            start: at("2026-09-12T00:00:00"),
            end: at("2026-09-12T10:00:00"),
        };
        let scale = Scale {
            axis,
            width: 300.0,
            base: 130.0,
        };
        let read = |time: &str, core: f64| (at(time), Temperature::from_celsius(core), false);
        let readings = [
            read("2026-09-12T02:00:00", 54.0),
            read("2026-09-12T05:40:00", 66.0),
            read("2026-09-12T06:00:00", 69.0),
        ];
        let dots = dots(readings.into_iter(), &scale, &formats());
        let figures: Vec<_> = dots.iter().map(|dot| dot.figure.as_deref()).collect();
        assert_eq!(figures, [Some("54"), None, Some("69")]);
    }

    #[test]
    fn labels_do_not_touch() {
        let (day, dish) = day();
        for minutes in 0..40 {
            let now = at("2026-09-12T02:00:00") + TimeSpan::from_minutes(f64::from(minutes) * 20.0);
            let picture = picture(&day, dish, now, &formats(), (328.0, 160.0)).expect("a picture");
            let mut places: Vec<f64> = picture
                .hours
                .iter()
                .filter(|hour| hour.text.is_some())
                .map(|hour| hour.x)
                .collect();
            places.sort_by(f64::total_cmp);
            for pair in places.windows(2) {
                assert!(pair[1] - pair[0] >= 2.0 * HOUR_LABEL, "{places:?}");
            }
        }
    }
}
