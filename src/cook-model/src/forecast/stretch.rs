//! Puts a remainder on the times of a member.

use crate::physics::{MemberRun, Scenario, Span, When};
use crate::units::TimeSpan;

/// Makes the cook of one member slower by `factor` (quicker below 1), as if every rate in it had been slower: all
/// times until it comes off are multiplied, what is done by the clock stays where it was told, and the stages after
/// keep their length and are moved. Temperatures, losses, tenderness and the bark index stay. A member that was never
/// ready stays so.
pub(super) fn stretch(run: &mut MemberRun, scenario: &Scenario, factor: f64) {
    let off = run.ready;
    let shift = off.map_or(TimeSpan::ZERO, |off| off * (factor - 1.0));
    let cooking = |time: TimeSpan| time * factor;
    let moved = |time: TimeSpan| match off {
        Some(off) if time > off => time + shift,
        _ => time * factor,
    };
    let told = |when: When, time: TimeSpan| match when {
        When::AfterOn(_) => run.ready.map_or(time, |off| time.min(off * factor)),
        When::Probe(_) => time * factor,
    };

    for (wrap, time) in scenario.wraps.iter().zip(&mut run.covered) {
        *time = time.map(|time| told(wrap.when, time));
    }
    for (change, time) in scenario.pit.iter().zip(&mut run.pit_changed) {
        *time = time.map(|time| told(change.when, time));
    }
    for time in [
        &mut run.ready,
        &mut run.target_reached,
        &mut run.bark_firm,
        &mut run.bark_set,
    ] {
        *time = time.map(cooking);
    }
    for time in [
        &mut run.lethality_met,
        &mut run.surface_hot,
        &mut run.core_past_4,
        &mut run.core_past_60,
        &mut run.core_below_73_9,
        &mut run.core_below_60,
    ] {
        *time = time.map(moved);
    }
    run.stall = run.stall.map(|stall| Span {
        from: moved(stall.from),
        to: moved(stall.to),
    });
    for end in &mut run.stage_ends {
        *end = moved(*end);
    }
    for sample in &mut run.samples {
        sample.after = moved(sample.after);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::meat::CutId;
    use crate::physics::{CookerClass, Cover, Sample, Totals, WrapChange};
    use crate::units::{Mass, Temperature};

    fn hours(hours: f64) -> TimeSpan {
        TimeSpan::from_hours(hours)
    }

    fn sample(after: f64) -> Sample {
        let celsius = Temperature::from_celsius(50.0);
        Sample {
            after: hours(after),
            core: celsius,
            probe: celsius,
            surface: celsius,
            air: celsius,
            tenderness: 0.0,
            loss: 0.0,
        }
    }

    /// Ready after 10 h, wrapped by probe at 6 h and unwrapped by the clock at 9 h, in the box until 14 h.
    fn invented() -> (MemberRun, Scenario) {
        let mut scenario = Scenario::usual(
            CutId::PorkShoulderButt,
            Mass::from_kilograms(4.0),
            CookerClass::Drum,
        );
        scenario.wraps = vec![
            WrapChange {
                when: When::Probe(Temperature::from_celsius(70.0)),
                cover: Cover::Paper,
            },
            WrapChange {
                when: When::AfterOn(hours(9.0)),
                cover: Cover::Bare,
            },
        ];
        let run = MemberRun {
            ready: Some(hours(10.0)),
            target_reached: Some(hours(9.5)),
            covered: vec![Some(hours(6.0)), Some(hours(9.0))],
            pit_changed: vec![Some(TimeSpan::ZERO)],
            stall: Some(Span {
                from: hours(4.0),
                to: hours(6.0),
            }),
            bark: 8.0,
            bark_firm: Some(hours(3.0)),
            bark_set: None,
            lethality_met: Some(hours(5.0)),
            surface_hot: Some(hours(1.0)),
            core_past_4: Some(TimeSpan::ZERO),
            core_past_60: Some(hours(4.0)),
            tenderness_at_ready: Some(1.0),
            probe_at_ready: Some(Temperature::from_celsius(95.0)),
            core_peak_after: Some(Temperature::from_celsius(96.0)),
            core_below_73_9: Some(hours(12.0)),
            core_below_60: None,
            stage_ends: vec![hours(14.0)],
            samples: vec![sample(0.0), sample(5.0), sample(10.0), sample(14.0)],
            at_ready: Totals::default(),
            at_end: Totals::default(),
            meat: Mass::from_kilograms(3.7),
            steps: 100,
        };
        (run, scenario)
    }

    #[test]
    fn cooking_is_stretched_and_resting_is_moved() {
        let (mut run, scenario) = invented();
        stretch(&mut run, &scenario, 1.2);
        assert_eq!(run.ready, Some(hours(12.0)));
        assert_eq!(run.covered, [Some(hours(7.2)), Some(hours(9.0))]);
        assert_eq!(run.pit_changed, [Some(TimeSpan::ZERO)]);
        assert_eq!(run.core_below_73_9, Some(hours(14.0)));
        assert_eq!(run.stage_ends, [hours(16.0)]);
        let after: Vec<f64> = run.samples.iter().map(|s| s.after.hours()).collect();
        assert_eq!(after, [0.0, 6.0, 12.0, 16.0]);
        assert!(run.core_below_60.is_none() && run.bark_set.is_none());
    }

    #[test]
    fn a_quick_member_is_unwrapped_before_it_comes_off() {
        let (mut run, scenario) = invented();
        stretch(&mut run, &scenario, 0.8);
        assert_eq!(run.ready, Some(hours(8.0)));
        assert_eq!(run.covered[1], Some(hours(8.0)));
    }

    #[test]
    fn a_factor_of_one_changes_nothing() {
        let (run, scenario) = invented();
        let mut same = run.clone();
        stretch(&mut same, &scenario, 1.0);
        assert_eq!(run, same);
    }
}
