//! Prints what came out.

use crate::rules::{LogNormal, mean};
use crate::score::{Fits, Run, Verdict, floored, naive};
use cook_model::forecast::{Remainder, quantile};
use serde::Serialize;
use std::io::{self, Write};

/// The last line.
#[derive(Serialize)]
struct Summary {
    exact: usize,
    median_abs_pct: f64,
    mean_abs_pct: f64,
    bias_pct: f64,
    in_window_pct: f64,
    bounds: usize,
    bounds_missed: usize,
    reading_rms_c: f64,
    crps_h: f64,
    crps_weight_rule_h: f64,
    crps_regression_h: f64,
    /// Exact finishes with a reading by half time, and the forecast that took those readings in.
    half_time: usize,
    half_time_median_abs_pct: f64,
    half_time_in_window_pct: f64,
}

/// Sums over the exact finishes.
struct Sum {
    count: usize,
    median_abs: f64,
    mean_abs: f64,
    bias: f64,
    mean_bias: f64,
    held: usize,
    crps: f64,
    width: f64,
}

impl Sum {
    fn of<'a>(verdicts: impl IntoIterator<Item = &'a Verdict>) -> Self {
        let verdicts: Vec<&Verdict> = verdicts.into_iter().collect();
        let errors: Vec<f64> = verdicts.iter().map(|v| 100.0 * v.error()).collect();
        let sizes: Vec<f64> = errors.iter().map(|error| error.abs()).collect();
        let widths: Vec<f64> = verdicts
            .iter()
            .map(|v| libm::log(v.window[2] / v.window[0]))
            .collect();
        Self {
            count: verdicts.len(),
            median_abs: median(&sizes),
            mean_abs: mean(&sizes),
            bias: median(&errors),
            mean_bias: mean(&errors),
            held: verdicts.iter().filter(|v| v.held()).count(),
            crps: mean(&verdicts.iter().map(|v| v.crps).collect::<Vec<_>>()),
            width: median(&widths),
        }
    }

    fn print(&self, out: &mut impl Write, name: &str) -> io::Result<()> {
        writeln!(
            out,
            "{name:<34} {:>3}  |error| median {:>5.1} % mean {:>5.1} %  bias median {:>+6.1} % mean {:>+6.1} %  \
             held {:>3} ({:>3.0} %)  ln(90/10) {:>4.2}  CRPS {:>5.3} h",
            self.count,
            self.median_abs,
            self.mean_abs,
            self.bias,
            self.mean_bias,
            self.held,
            100.0 * self.held as f64 / self.count as f64,
            self.width,
            self.crps,
        )
    }
}

/// To three places; the figures mean no more.
fn rounded(value: f64) -> f64 {
    (value * 1000.0).round() / 1000.0
}

fn median(values: &[f64]) -> f64 {
    quantile(&mut values.to_vec(), 0.5).unwrap_or(f64::NAN)
}

/// Prints the whole report.
pub(crate) fn print(out: &mut impl Write, runs: &[Run], left_out: &[String]) -> io::Result<()> {
    writeln!(
        out,
        "Hindsight: pit and wrap are taken as told afterwards, so these are errors of the model given the cook, not of \
         a forecast made the day before.\n\
         Usual rack where ribs have no weight; wraps of untold material are taken for foil.\n"
    )?;
    for record in left_out {
        writeln!(out, "Left out, {record}")?;
    }
    let fits = Fits::new(runs);
    let indexed: Vec<(usize, &Run)> = runs
        .iter()
        .enumerate()
        .filter(|(_, run)| run.exactly().is_some())
        .collect();
    let exact: Vec<&Run> = indexed.iter().map(|(_, run)| *run).collect();
    let verdicts = |remainder: &dyn Fn(usize, &Run) -> Option<Remainder>| -> Vec<Verdict> {
        indexed
            .iter()
            .filter_map(|(index, run)| run.verdict(remainder(*index, run)))
            .collect()
    };
    let shipped = verdicts(&|_, run| Some(run.shipped()));
    let plain = verdicts(&|_, _| None);
    let cross_validated = verdicts(&|index, run| Some(floored(fits.of(run.bird, Some(index)))));
    let (by_weight, by_regression) = naive(&exact);

    each_exact(out, &exact, &shipped, &by_weight, &by_regression)?;
    let bounds = each_bound(out, runs)?;
    let reading_rms = each_reading(out, runs)?;

    writeln!(out, "\nExact finishes")?;
    Sum::of(&shipped).print(out, "as shipped")?;
    Sum::of(&plain).print(out, "draws alone, no remainder")?;
    Sum::of(&cross_validated).print(out, "remainder fitted leave-one-out")?;
    rule(out, "hours per weight, leave-one-out", &exact, &by_weight)?;
    rule(out, "regression, leave-one-out", &exact, &by_regression)?;
    groups(out, "by kind", &exact, &shipped, |run| run.group.to_owned())?;
    groups(out, "by cooker", &exact, &shipped, |run| {
        run.record.cooker.clone()
    })?;
    groups(out, "by wrap", &exact, &shipped, |run| {
        let wrap = if run.question.wrapped {
            "wrapped"
        } else {
            "bare"
        };
        wrap.to_owned()
    })?;
    groups(out, "by mean pit", &exact, &shipped, |run| {
        let ends = [112.0, 125.0, 140.0];
        let place = ends
            .iter()
            .filter(|end| run.question.mean_pit >= **end)
            .count();
        [
            "below 112 °C",
            "112 to 125 °C",
            "125 to 140 °C",
            "140 °C and more",
        ][place]
            .to_owned()
    })?;
    histogram(out, &shipped)?;
    for (bird, name) in [(true, "birds"), (false, "other meat")] {
        let found = fits.of(bird, None);
        let (centre, scale) = (found.centre, found.scale);
        writeln!(
            out,
            "remainder fitted to all {name}: centre {centre:+.2}, scale {scale:.2}"
        )?;
    }

    let at_half_time = half_time(out, &exact, &shipped)?;
    let sum = Sum::of(&shipped);
    let score = |rule: &[LogNormal]| {
        let scores = exact
            .iter()
            .zip(rule)
            .filter_map(|(run, rule)| Some(rule.score(run.exactly()?)));
        mean(&scores.collect::<Vec<_>>())
    };
    let summary = Summary {
        exact: sum.count,
        median_abs_pct: rounded(sum.median_abs),
        mean_abs_pct: rounded(sum.mean_abs),
        bias_pct: rounded(sum.bias),
        in_window_pct: rounded(100.0 * sum.held as f64 / sum.count as f64),
        bounds: bounds.len(),
        bounds_missed: bounds.iter().filter(|missed| **missed).count(),
        reading_rms_c: rounded(reading_rms),
        crps_h: rounded(sum.crps),
        crps_weight_rule_h: rounded(score(&by_weight)),
        crps_regression_h: rounded(score(&by_regression)),
        half_time: at_half_time.count,
        half_time_median_abs_pct: rounded(at_half_time.median_abs),
        half_time_in_window_pct: rounded(
            100.0 * at_half_time.held as f64 / at_half_time.count.max(1) as f64,
        ),
    };
    writeln!(out)?;
    serde_json::to_writer(&mut *out, &summary)?;
    writeln!(out)
}

/// The same cooks before and at half time, those with a reading by then.
fn half_time(out: &mut impl Write, exact: &[&Run], before: &[Verdict]) -> io::Result<Sum> {
    writeln!(out, "\nAt half time, with the readings told by then")?;
    let (mut then, mut first) = (Vec::new(), Vec::new());
    for (run, verdict) in exact.iter().zip(before) {
        let Some(now) = run.half_time_verdict() else {
            continue;
        };
        let [low, likely, high] = now.window;
        let [from, middle, to] = verdict.window;
        writeln!(
            out,
            "{:<28} {:5.1} h; before {from:.1} {middle:.1} {to:.1}, at half time {low:.1} {likely:.1} {high:.1}",
            run.record.id, verdict.happened,
        )?;
        then.push(now);
        first.push(*verdict);
    }
    Sum::of(&first).print(out, "before, these cooks")?;
    let sum = Sum::of(&then);
    sum.print(out, "at half time")?;
    Ok(sum)
}

fn each_exact(
    out: &mut impl Write,
    exact: &[&Run],
    verdicts: &[Verdict],
    by_weight: &[LogNormal],
    by_regression: &[LogNormal],
) -> io::Result<()> {
    writeln!(
        out,
        "{:<5} {:<24} {:>5} {:<14} {:>4} {:>7}  {:>6} {:>15} {:>7} {:<4} {:>6}   {:>6} {:>6}   {:>6} {:>6}",
        "cook",
        "cut",
        "kg",
        "cooker",
        "°C",
        "told h",
        "likely",
        "80 % window",
        "error",
        "held",
        "CRPS",
        "weight",
        "CRPS",
        "regr.",
        "CRPS",
    )?;
    for (((run, verdict), weight), regression) in
        exact.iter().zip(verdicts).zip(by_weight).zip(by_regression)
    {
        let [from, likely, to] = verdict.window;
        writeln!(
            out,
            "{:<5} {:<24} {:>5.2} {:<14} {:>4.0} {:>7.2}  {likely:>6.2} {:>15} {:>+6.0} % {:<4} {:>6.2}   {:>6.2} {:>6.2}   \
             {:>6.2} {:>6.2}",
            run.record.id,
            run.record.cut,
            run.question.dish.scenario.mass.kilograms(),
            run.record.cooker,
            run.question.mean_pit,
            verdict.happened,
            format!("{from:.2} to {to:.2}"),
            100.0 * verdict.error(),
            if verdict.held() { "yes" } else { "no" },
            verdict.crps,
            weight.likely(),
            weight.score(verdict.happened),
            regression.likely(),
            regression.score(verdict.happened),
        )?;
    }
    Ok(())
}

fn each_bound(out: &mut impl Write, runs: &[Run]) -> io::Result<Vec<bool>> {
    writeln!(
        out,
        "\nBounds: the likely time must not lie on the wrong side"
    )?;
    let mut missed = Vec::new();
    for run in runs {
        let (Some(told), Some(miss)) = (run.told, run.bound_missed()) else {
            continue;
        };
        let Some([from, likely, to]) = run.window(&mut run.hours(run.shipped())) else {
            continue;
        };
        let verdict = if miss { "missed" } else { "kept" };
        writeln!(
            out,
            "{:<5} {:<24} {told:?}: likely {likely:.2} ({from:.2} to {to:.2}) {verdict}",
            run.record.id, run.record.cut,
        )?;
        missed.push(miss);
    }
    Ok(missed)
}

fn each_reading(out: &mut impl Write, runs: &[Run]) -> io::Result<f64> {
    writeln!(
        out,
        "\nReadings of the core on the way (hour: told, likely − told)"
    )?;
    let mut squares = Vec::new();
    for run in runs.iter().filter(|run| !run.readings.is_empty()) {
        write!(out, "{:<5} {:<24}", run.record.id, run.record.cut)?;
        for (hour, told, likely) in &run.readings {
            write!(out, "  {hour} h: {told:.0} °C {:+.1}", likely - told)?;
            squares.push((likely - told) * (likely - told));
        }
        writeln!(out)?;
    }
    let rms = mean(&squares).sqrt();
    writeln!(
        out,
        "{} readings, root mean square {rms:.1} °C",
        squares.len()
    )?;
    Ok(rms)
}

fn rule(out: &mut impl Write, name: &str, exact: &[&Run], rule: &[LogNormal]) -> io::Result<()> {
    let verdicts: Vec<Verdict> = exact
        .iter()
        .zip(rule)
        .filter_map(|(run, rule)| {
            let happened = run.exactly()?;
            let reach = cook_model::forecast::normal_quantile(0.9) * rule.deviation;
            Some(Verdict {
                happened,
                window: [rule.mean - reach, rule.mean, rule.mean + reach].map(libm::exp),
                place: f64::NAN,
                crps: rule.score(happened),
            })
        })
        .collect();
    Sum::of(&verdicts).print(out, name)
}

fn groups(
    out: &mut impl Write,
    name: &str,
    exact: &[&Run],
    verdicts: &[Verdict],
    group: impl Fn(&Run) -> String,
) -> io::Result<()> {
    let mut names: Vec<String> = exact.iter().map(|run| group(run)).collect();
    names.sort_unstable();
    names.dedup();
    writeln!(out, "{name}")?;
    for name in names {
        let of_group = exact
            .iter()
            .zip(verdicts)
            .filter(|(run, _)| group(run) == name);
        Sum::of(of_group.map(|(_, verdict)| verdict)).print(out, &format!("  {name}"))?;
    }
    Ok(())
}

fn histogram(out: &mut impl Write, verdicts: &[Verdict]) -> io::Result<()> {
    let mut counts = [0_u32; 10];
    for verdict in verdicts {
        let tenth = ((verdict.place * 10.0) as usize).min(9);
        counts[tenth] += 1;
    }
    writeln!(
        out,
        "told hours in each tenth of the forecast, earliest first: {counts:?}"
    )
}
