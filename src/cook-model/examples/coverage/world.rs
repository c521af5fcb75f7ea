//! Invented cooks, from a wider world than the forecast believes in: gauges further off, fires that sag, pieces thicker or
//! thinner than reckoned, a model that is wrong by more and differently before and after half time, probes that slip.

use crate::chance::Chance;
use anyhow::{Context, Result};
use cook_model::forecast::{DishScenario, Knowledge, OwnerKey, Owners, Standard, sample_at};
use cook_model::handover::identity::EntryId;
use cook_model::handover::{Gauge, ProbeFeel, ProbePlace};
use cook_model::live::{CoreReading, Felt, PieceLog, PitReading};
use cook_model::meat::CutId;
use cook_model::physics::{self, CookerClass, MemberRun, PitDeparture, Sample, Scenario, Settings};
use cook_model::units::{Mass, Temperature, TemperatureDifference, TimeSpan};

/// Every draw lies further out than the forecast believes, by this factor.
const WIDER: f64 = 1.15;
/// The model's own error before half time against after it, log.
const CHANGES: f64 = 0.10;

const CUTS: [CutId; 6] = [
    CutId::BeefPackerBrisket,
    CutId::PorkShoulderButt,
    CutId::BeefChuckRoast,
    CutId::BeefPlateShortRibs,
    CutId::LambShoulder,
    CutId::PorkPicnic,
];

const COOKERS: [CookerClass; 6] = [
    CookerClass::Offset,
    CookerClass::Kettle,
    CookerClass::Drum,
    CookerClass::Ceramic,
    CookerClass::Cabinet,
    CookerClass::Generic,
];

/// A cook as it happened, and as it was planned.
pub(crate) struct Cook {
    pub(crate) planned: DishScenario,
    run: MemberRun,
    tempo: Tempo,
    /// Air by the gauge is off by this, K.
    gauge: f64,
    at_meat: bool,
    tenderness: f64,
    chance: Chance,
}

/// The true clock against the model's.
#[derive(Clone, Copy)]
struct Tempo {
    first: f64,
    half: f64,
    then: f64,
}

impl Tempo {
    fn yard(self, model: f64) -> f64 {
        self.first * model.min(self.half) + self.then * (model - self.half).max(0.0)
    }

    fn model(self, yard: f64) -> f64 {
        let half = self.first * self.half;
        yard.min(half) / self.first + (yard - half).max(0.0) / self.then
    }
}

impl Cook {
    /// None for one that is never ready.
    pub(crate) fn new(index: u32) -> Result<Option<Self>> {
        let mut chance = Chance::of(index);
        let cut = chance.any(&CUTS);
        let cooker = chance.any(&COOKERS);
        let mass = cut.cut().shape.mass.kilograms() * libm::exp(0.2 * chance.normal());
        let mut scenario = Scenario::usual(cut, Mass::from_kilograms(mass), cooker);
        scenario.pit[0].set = Temperature::from_celsius(chance.between(110.0, 140.0));
        if chance.one_in(3.0) {
            scenario.wraps.clear();
        }
        let owners = Owners {
            cooker: OwnerKey::from_text("cooker 0"),
            piece: OwnerKey::from_text(cut.slug()),
        };
        let at_meat = chance.one_in(3.0);
        let planned = DishScenario {
            scenario: scenario.clone(),
            knowledge: Knowledge {
                gauge_at_meat: at_meat,
                ..Knowledge::default()
            },
            owners,
        };
        let mut wider = || WIDER * chance.normal();
        let standard = Standard {
            world: std::array::from_fn(|_| wider()),
            cooker: std::array::from_fn(|_| wider()),
            piece: std::array::from_fn(|_| wider()),
        };
        let drawn = standard.draw(&planned.prior());
        if chance.one_in(2.5) {
            scenario.departures = sag(&mut chance);
        }
        let runs = physics::run(&scenario, &[drawn.draw], &Settings::default())
            .with_context(|| format!("cook {index}"))?;
        let run = runs.into_iter().next().context("no member")?;
        let Some(ready) = run.ready else {
            return Ok(None);
        };
        let first = planned
            .remainder()
            .stretch(drawn.remainder.clamp(1e-6, 1.0 - 1e-6));
        let tempo = Tempo {
            first,
            half: 0.5 * ready.hours(),
            then: first * libm::exp(CHANGES * chance.normal()),
        };
        Ok(Some(Self {
            planned,
            run,
            tempo,
            gauge: if at_meat {
                0.0
            } else {
                drawn.draw.gauge.kelvin()
            },
            at_meat,
            tenderness: drawn.draw.tenderness,
            chance,
        }))
    }

    /// When it was ready, h.
    pub(crate) fn ready(&self) -> f64 {
        self.run
            .ready
            .map_or(0.0, |ready| self.tempo.yard(ready.hours()))
    }

    fn sample(&self, yard: f64) -> Option<Sample> {
        let after = TimeSpan::from_hours(self.tempo.model(yard));
        sample_at(&self.run.samples, after)
    }

    /// What a cook would have logged by a time, h: cores every hour or so once the probe is in, the air as often, the
    /// wrap when it was made, and the probe by hand near the end.
    pub(crate) fn log(&self, now: f64) -> PieceLog {
        let mut chance = self.chance.clone();
        let mut log = PieceLog {
            now: TimeSpan::from_hours(now),
            ..PieceLog::default()
        };
        let mut number = 0;
        let mut entry = || {
            number += 1;
            EntryId::new(number, 0)
        };
        let mut at = chance.between(1.0, 2.0);
        while at <= now {
            if let Some(sample) = self.sample(at) {
                log.cores.push(core(&mut chance, entry(), at, &sample));
                if sample.probe.celsius() > 90.0 {
                    log.feels.push(self.felt(&mut chance, entry(), at, &sample));
                }
            }
            at += chance.between(0.6, 1.6);
        }
        let mut at = chance.between(0.3, 1.0);
        while at <= now {
            if let Some(sample) = self.sample(at) {
                let off = 2.0 * chance.normal() - self.gauge;
                log.pit.push(PitReading {
                    entry: entry(),
                    after: TimeSpan::from_hours(at),
                    reading: sample.air + TemperatureDifference::from_kelvin(off),
                    gauge: if self.at_meat {
                        Gauge::AtMeat
                    } else {
                        Gauge::Lid
                    },
                });
            }
            at += chance.between(0.5, 1.5);
        }
        for (wrap, covered) in self.planned.scenario.wraps.iter().zip(&self.run.covered) {
            let wrapped = covered.map(|time| self.tempo.yard(time.hours()));
            if let Some(wrapped) = wrapped.filter(|wrapped| *wrapped <= now) {
                log.covers.push((TimeSpan::from_hours(wrapped), wrap.cover));
            }
        }
        log
    }

    fn felt(&self, chance: &mut Chance, entry: EntryId, at: f64, sample: &Sample) -> Felt {
        let tenderness = sample.tenderness + 0.08 * chance.normal();
        Felt {
            entry,
            after: TimeSpan::from_hours(at),
            feel: if tenderness < 0.7 * self.tenderness.clamp(0.9, 1.1) {
                ProbeFeel::Tight
            } else {
                ProbeFeel::Drags
            },
        }
    }
}

/// A probe that is read to a degree; one in twenty touched bone or air, and half of those are marked.
fn core(chance: &mut Chance, entry: EntryId, at: f64, sample: &Sample) -> CoreReading {
    let slipped = chance.one_in(20.0);
    let off = if slipped {
        chance.any(&[-20.0, 15.0, 30.0])
    } else {
        0.7 * chance.normal()
    };
    let marked = chance.one_in(2.0);
    CoreReading {
        entry,
        after: TimeSpan::from_hours(at),
        reading: sample.probe + TemperatureDifference::from_kelvin(off),
        place: ProbePlace::ThickMiddle,
        doubtful: slipped && marked,
    }
}

/// A fire that sags for a while.
fn sag(chance: &mut Chance) -> Vec<PitDeparture> {
    let from = chance.between(0.5, 6.0);
    let long = chance.between(0.5, 3.0);
    let deep = -chance.between(8.0, 30.0);
    let points = [
        (0.0, 0.0),
        (0.4, deep),
        (0.4 + long, deep),
        (0.8 + long, 0.0),
    ];
    points
        .map(|(after, by)| PitDeparture {
            after: TimeSpan::from_hours(from + after),
            by: TemperatureDifference::from_kelvin(by),
        })
        .to_vec()
}
