//! Asks about every cook at every stage and sums up.

use crate::world::Cook;
use anyhow::{Context, Result};
use cook_model::forecast::{DishForecast, forecast, quantile};
use cook_model::live::{PASSES, Reforecast, UnderWay};
use cook_model::physics::Settings;
use serde::Serialize;
use std::ops::Range;
use std::sync::atomic::{AtomicU32, Ordering};
use std::thread;

/// Names of the stages, and the share of the time that is over then.
const STAGES: [(&str, f64); 3] = [("put-on", 0.0), ("half time", 0.5), ("80 %", 0.8)];

/// What was said of one cook at one stage, h.
#[derive(Clone, Copy, Debug)]
struct Said {
    window: [f64; 3],
    ready: f64,
}

/// Every cook at every stage.
pub(crate) struct Report {
    cooks: Vec<[Said; 3]>,
    never_ready: usize,
}

/// Sums over the cooks at one stage.
#[derive(Clone, Copy, Debug, Serialize)]
pub(crate) struct Stage {
    pub(crate) at: &'static str,
    pub(crate) in_window_pct: f64,
    pub(crate) mean_abs_h: f64,
    pub(crate) width_h: f64,
    /// The likely finish is off by so much of the whole cook, median.
    pub(crate) median_abs_pct: f64,
}

/// The last line.
#[derive(Serialize)]
pub(crate) struct Summary {
    pub(crate) cooks: usize,
    pub(crate) stages: Vec<Stage>,
}

/// Asks about the cooks with these numbers, side by side; the result does not depend on how many at once.
pub(crate) fn ask(cooks: Range<u32>, members: u32) -> Result<Report> {
    let next = AtomicU32::new(cooks.start);
    let workers = thread::available_parallelism().map_or(1, usize::from);
    let work = || -> Result<Vec<(u32, Option<[Said; 3]>)>> {
        let mut done = Vec::new();
        loop {
            let index = next.fetch_add(1, Ordering::Relaxed);
            if index >= cooks.end {
                return Ok(done);
            }
            let said = Cook::new(index)?.map(|cook| stages(&cook, index, members));
            done.push((
                index,
                said.transpose().with_context(|| format!("cook {index}"))?,
            ));
        }
    };
    let mut done = Vec::new();
    thread::scope(|scope| -> Result<()> {
        let handles: Vec<_> = (0..workers).map(|_| scope.spawn(work)).collect();
        for handle in handles {
            let part = handle.join();
            done.extend(part.unwrap_or_else(|panic| std::panic::resume_unwind(panic))?);
        }
        Ok(())
    })?;
    done.sort_by_key(|(index, _)| *index);
    let never_ready = done.iter().filter(|(_, said)| said.is_none()).count();
    Ok(Report {
        cooks: done.into_iter().filter_map(|(_, said)| said).collect(),
        never_ready,
    })
}

fn stages(cook: &Cook, index: u32, members: u32) -> Result<[Said; 3]> {
    let settings = Settings::default();
    let seed = u64::from(index);
    let ready = cook.ready();
    let mut said = [Said {
        window: [0.0; 3],
        ready,
    }; 3];
    for ((_, share), said) in STAGES.iter().zip(&mut said) {
        said.window = if *share == 0.0 {
            window(&forecast(&cook.planned, members, seed, &settings)?)?
        } else {
            let under_way = UnderWay {
                dish: cook.planned.clone(),
                log: cook.log(share * ready),
            };
            let mut run = Reforecast::new(vec![under_way], members, PASSES, seed, settings);
            while !run.step()? {}
            window(run.forecast(0).context("not done")?)?
        };
    }
    Ok(said)
}

fn window(forecast: &DishForecast) -> Result<[f64; 3]> {
    let at = |share| {
        let ready = forecast.quantile(|run| run.ready, share);
        // A window that reaches beyond the longest cook ends there.
        ready.map_or(Settings::default().limit.hours(), |ready| ready.hours())
    };
    Ok([0.1, 0.5, 0.9].map(at))
}

impl Report {
    pub(crate) fn summary(&self) -> Summary {
        let stage = |n: usize| {
            let said = || self.cooks.iter().map(move |cook| cook[n]);
            let count = self.cooks.len() as f64;
            let mean = |of: &dyn Fn(Said) -> f64| rounded(said().map(of).sum::<f64>() / count);
            let mut shares: Vec<f64> = said()
                .map(|said| (said.window[1] / said.ready - 1.0).abs())
                .collect();
            Stage {
                at: STAGES[n].0,
                in_window_pct: mean(&|said| {
                    let held = (said.window[0]..=said.window[2]).contains(&said.ready);
                    if held { 100.0 } else { 0.0 }
                }),
                mean_abs_h: mean(&|said| (said.window[1] - said.ready).abs()),
                width_h: mean(&|said| said.window[2] - said.window[0]),
                median_abs_pct: rounded(100.0 * quantile(&mut shares, 0.5).unwrap_or(0.0)),
            }
        };
        Summary {
            cooks: self.cooks.len(),
            stages: (0..STAGES.len()).map(stage).collect(),
        }
    }

    pub(crate) fn print(&self) {
        println!(
            "{} invented cooks; {} that were never ready are left out",
            self.cooks.len(),
            self.never_ready
        );
        let summary = self.summary();
        let whole = summary.stages[0].width_h;
        for (n, stage) in summary.stages.iter().enumerate() {
            let said = || self.cooks.iter().map(move |cook| cook[n]);
            let count = self.cooks.len() as f64;
            let share = |of: &dyn Fn(Said) -> bool| {
                100.0 * said().filter(|said| of(*said)).count() as f64 / count
            };
            println!(
                "{:>9}: {:5.1} % in the window ({:.1} % sooner, {:.1} % later), {:.2} h wide ({:.0} % of put-on), off by \
                 {:.2} h, {:.1} % median",
                stage.at,
                stage.in_window_pct,
                share(&|said| said.ready < said.window[0]),
                share(&|said| said.ready > said.window[2]),
                stage.width_h,
                100.0 * stage.width_h / whole,
                stage.mean_abs_h,
                stage.median_abs_pct,
            );
        }
    }
}

fn rounded(value: f64) -> f64 {
    (value * 1000.0).round() / 1000.0
}
