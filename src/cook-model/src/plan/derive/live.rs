//! What the readings say of a dish that went on.

use crate::forecast::{DishForecast, quantile, sample_at};
use crate::handover::identity::PieceId;
use crate::live::{
    Bark, Fit, Live, Moved, News, PieceLog, Reading, ReadingFit, Stage, Stall, Wanted, shifts,
    stage_of,
};
use crate::physics::{MemberRun, Sample};
use crate::plan::day::{Day, Placed, counted, is_minded};
use crate::plan::derive::SEED;
use crate::plan::window::{window, window_of_those};
use crate::units::{Moment, TimeSpan};

/// What was logged of a piece and how it went into its forecast.
#[derive(Clone)]
pub(in crate::plan) struct PieceNews<'a> {
    /// Which.
    pub(in crate::plan) piece: PieceId,
    /// What was logged.
    pub(in crate::plan) log: &'a PieceLog,
    /// The members before anything was read.
    pub(in crate::plan) before: &'a DishForecast,
    /// How the readings went in.
    pub(in crate::plan) fits: Vec<Fit>,
}

/// A core is to be read again after this share of the time still likely ahead, within these bounds. Set by hand.
const READ_AGAIN: f64 = 0.2;
const READ_AGAIN_WITHIN: [TimeSpan; 2] = [TimeSpan::from_minutes(20.0), TimeSpan::from_hours(2.0)];
/// The air of a fire that is minded is to be read this often, of others that often. Set by hand.
const READ_MINDED_PIT: TimeSpan = TimeSpan::from_hours(1.0);
const READ_PIT: TimeSpan = TimeSpan::from_hours(2.0);
/// Probed by hand again after this. Common practice: every quarter to half hour near the end.
const FEEL_AGAIN: TimeSpan = TimeSpan::from_minutes(30.0);
/// The error of a core reading with the model's own, K.
const READING_ERROR: f64 = 2.5;

/// What the readings say of a dish. None before it went on.
pub(super) fn live(day: &Day<'_>, placed: &Placed<'_>) -> Option<Live> {
    let id = placed.settled.id;
    let dish = placed.settled.dish;
    let (stage, since) = stage_of(&day.situation.journal, id, dish)?;
    let slowest = slowest(placed)?;
    let (forecast, news) = (placed.pieces[slowest], placed.news.get(slowest)?);
    let now = news.log.now;
    let at = |after: TimeSpan| placed.on + after;
    let tender = placed.settled.cut()?.cut.demand.is_some();
    let cooking = matches!(stage, Stage::On | Stage::Wrapped);
    Some(Live {
        since,
        foreseen: window(placed.on, news.before.members().iter().map(|run| run.ready)),
        moved: moved(placed),
        readings: readings(placed),
        stall: stall(placed.on, forecast, now),
        loss: points(forecast, now, |sample| sample.loss),
        tenderness: tender.then(|| points(forecast, now, |sample| sample.tenderness)),
        bark: bark(placed.on, forecast, now),
        news: News {
            last: last(placed).map(at),
            would_narrow: cooking.then(|| would_narrow(forecast, now)).flatten(),
        },
        wanted: if cooking { wanted(placed) } else { Vec::new() },
    })
}

/// The piece that takes longest speaks for its dish.
fn slowest(placed: &Placed<'_>) -> Option<usize> {
    let likely = |forecast: &DishForecast| {
        let ready = forecast.quantile(|run| run.ready, 0.5);
        ready.map_or(f64::INFINITY, TimeSpan::seconds)
    };
    let pieces = placed.pieces.iter().enumerate();
    let last = pieces.max_by(|a, b| likely(a.1).total_cmp(&likely(b.1)));
    last.map(|(place, _)| place)
}

fn moved(placed: &Placed<'_>) -> Vec<Moved> {
    let mut all = Vec::new();
    for (news, forecast) in placed.news.iter().zip(&placed.pieces) {
        let shifts = shifts(news.before, forecast, news.log, SEED);
        all.extend(shifts.into_iter().map(|shift| Moved {
            entry: shift.entry,
            at: placed.on + shift.after,
            what: shift.what,
            narrowed: shift.narrowed,
            later: shift.later,
        }));
    }
    all.sort_by_key(|moved| moved.at);
    all
}

fn readings(placed: &Placed<'_>) -> Vec<ReadingFit> {
    let each = placed.news.iter().flat_map(|news| {
        news.fits.iter().map(|fit| ReadingFit {
            entry: fit.entry,
            piece: news.piece,
            at: placed.on + fit.after,
            expected: fit.expected,
            weight: fit.weight,
        })
    });
    let mut all: Vec<_> = each.collect();
    all.sort_by_key(|reading| reading.at);
    all
}

/// The 10, 50 and 90 % points of something at a time.
fn points(forecast: &DishForecast, after: TimeSpan, of: impl Fn(&Sample) -> f64) -> [f64; 3] {
    let members = forecast.members().iter();
    let mut values: Vec<f64> = members
        .filter_map(|run| Some(of(&sample_at(&run.samples, after)?)))
        .collect();
    [0.1, 0.5, 0.9].map(|share| quantile(&mut values, share).unwrap_or(0.0))
}

fn stall(on: Moment, forecast: &DishForecast, now: TimeSpan) -> Stall {
    let members = || forecast.members().iter();
    let begins = window_of_those(on, members().map(|run| run.stall.map(|stall| stall.from)));
    let ends = window_of_those(on, members().map(|run| run.stall.map(|stall| stall.to)));
    let Some((begins, ends)) = begins.zip(ends) else {
        return Stall::None;
    };
    if ends.likely() <= on + now {
        Stall::Over {
            since: ends.likely(),
        }
    } else if begins.likely() <= on + now {
        Stall::Begun {
            since: begins.likely(),
            ends,
        }
    } else {
        Stall::Ahead { begins, ends }
    }
}

fn bark(on: Moment, forecast: &DishForecast, now: TimeSpan) -> Bark {
    let by_now = |time: fn(&MemberRun) -> Option<TimeSpan>| {
        counted(forecast.count_within(time, now), forecast.members().len())
    };
    Bark {
        firm: by_now(|run| run.bark_firm),
        set: by_now(|run| run.bark_set),
        sets: window_of_those(on, forecast.members().iter().map(|run| run.bark_set)),
    }
}

/// The last reading of the meat that is in, since it went on.
fn last(placed: &Placed<'_>) -> Option<TimeSpan> {
    let each = placed.news.iter().flat_map(|news| {
        let cores = news.log.cores.iter().map(|core| core.after);
        cores.chain(news.log.feels.iter().map(|felt| felt.after))
    });
    each.reduce(TimeSpan::max)
}

/// By how much a core reading now would narrow the ready window: as the times still ahead go along with the probe over
/// the members, as straight lines (conditional variance of two normal variables).
fn would_narrow(forecast: &DishForecast, now: TimeSpan) -> Option<TimeSpan> {
    let pairs: Vec<(f64, f64)> = forecast
        .members()
        .iter()
        .filter_map(|run| {
            let ready = run.ready?;
            let probe = sample_at(&run.samples, now.min(ready))?.probe.celsius();
            Some((probe, ready.hours()))
        })
        .collect();
    let n = pairs.len() as f64;
    let mean = |of: fn(&(f64, f64)) -> f64| pairs.iter().map(of).sum::<f64>() / n;
    let (probe, ready) = (mean(|pair| pair.0), mean(|pair| pair.1));
    let sum = |of: &dyn Fn(f64, f64) -> f64| {
        let each = pairs.iter().map(|pair| of(pair.0 - probe, pair.1 - ready));
        each.sum::<f64>() / n
    };
    let (own, both, time) = (sum(&|p, _| p * p), sum(&|p, t| p * t), sum(&|_, t| t * t));
    let told = both * both / (own + READING_ERROR * READING_ERROR) / time;
    let width =
        forecast.quantile(|run| run.ready, 0.9)? - forecast.quantile(|run| run.ready, 0.1)?;
    let narrower = width * (1.0 - libm::sqrt((1.0 - told).max(0.0)));
    narrower.seconds().is_finite().then_some(narrower)
}

/// What is to be read next: cores, by hand where it is near, and the air.
fn wanted(placed: &Placed<'_>) -> Vec<Wanted> {
    let mut all = Vec::new();
    for (news, forecast) in placed.news.iter().zip(&placed.pieces) {
        if news.log.off.is_some() {
            continue;
        }
        let piece = news.piece;
        let ready = forecast.quantile(|run| run.ready, 0.5);
        let core = news.log.cores.last().map(|core| core.after);
        let felt = news.log.feels.last().map(|felt| felt.after);
        let [least, most] = READ_AGAIN_WITHIN;
        let last = core.unwrap_or(TimeSpan::ZERO);
        let ahead = ready.map_or(most, |ready| (ready - last) * READ_AGAIN);
        all.push(Wanted {
            what: Reading::Core { piece },
            by: placed.on + last + ahead.max(least).min(most),
        });
        let tender = placed
            .settled
            .cut()
            .is_some_and(|method| method.cut.demand.is_some());
        let near = placed.window_on_the_way(|member| member.probing);
        if let Some(near) = near.filter(|_| tender) {
            let again = felt.map(|felt| placed.on + felt + FEEL_AGAIN);
            let by = again.unwrap_or(near.likely()).max(near.from());
            all.push(Wanted {
                what: Reading::Feel { piece },
                by,
            });
        }
    }
    if let Some((cooker, kind)) = placed.on_a_fire() {
        let every = if is_minded(kind) {
            READ_MINDED_PIT
        } else {
            READ_PIT
        };
        let pits = placed.news.iter().filter_map(|news| news.log.pit.last());
        let last = pits.map(|pit| pit.after).reduce(TimeSpan::max);
        all.push(Wanted {
            what: Reading::Pit { cooker },
            by: placed.on + last.unwrap_or(TimeSpan::ZERO) + every,
        });
    }
    all.sort_by_key(|wanted| wanted.by);
    all
}
