//! One number for a whole ensemble, to compare machines with.

use super::{
    CookerClass, Cover, Draw, MemberRun, Place, RestStage, Scenario, Settings, SwingMode, run,
};
use crate::meat::CutId;
use crate::units::{TemperatureDifference, TimeSpan};

/// A hash of the bits that a packer brisket in paper with its rest box gives for so many members. The same on every
/// machine and in every browser, with and without vector instructions, if the march is.
#[must_use]
pub fn fingerprint(members: usize) -> u64 {
    let cut = CutId::BeefPackerBrisket;
    let mut scenario = Scenario::usual(cut, cut.cut().shape.mass, CookerClass::Offset);
    scenario.lid_openings = vec![TimeSpan::from_hours(4.0), TimeSpan::from_hours(6.5)];
    scenario.after = vec![
        RestStage {
            place: Place::Counter,
            cover: None,
            lasts: TimeSpan::from_minutes(15.0),
            until_core: None,
        },
        RestStage {
            place: Place::RestBox,
            cover: Some(Cover::Foil),
            lasts: TimeSpan::from_hours(4.0),
            until_core: None,
        },
    ];
    let draws: Vec<Draw> = (0..members).map(spread).collect();
    let mut hash = Fnv::new();
    match run(&scenario, &draws, &Settings::default()) {
        Ok(runs) => runs.iter().for_each(|run| hash.member(run)),
        // An error is a result too, and a wrong one.
        Err(error) => hash.bytes(error.to_string().as_bytes()),
    }
    hash.0
}

/// A draw that departs in everything, by multiples of irrational steps.
fn spread(member: usize) -> Draw {
    #[expect(clippy::cast_precision_loss, reason = "members are few")]
    let at = |step: f64| {
        let turns = (member as f64 + 0.5) * step;
        2.0 * (turns - turns.floor()) - 1.0
    };
    let kelvin = TemperatureDifference::from_kelvin;
    Draw {
        thickness: 1.0 + 0.2 * at(0.754_877_666_246_692_8),
        free_water: 1.0 + 0.4 * at(0.569_840_290_998_053_3),
        crust_vapour: 1.0 + 0.4 * at(0.430_159_709_001_946_7),
        water_holding: 0.1 * at(0.245_122_333_753_307_2),
        heat_transfer: 1.0 + 0.3 * at(0.618_033_988_749_894_9),
        evaporating_share: 1.0 + 0.2 * at(0.414_213_562_373_095),
        paper: 1.0 + 0.7 * at(0.732_050_807_568_877_2),
        fat: 0.03 * at(0.236_067_977_499_789_8),
        gauge: kelvin(8.0 * at(0.302_775_637_731_994_6)),
        swing: [
            0.316_624_790_355_399_8,
            0.605_551_275_463_989_2,
            0.123_105_625_617_660_5,
        ]
        .map(|step| SwingMode {
            amplitude: kelvin(2.0 + at(step)),
            phase: 3.0 * at(0.5 * step),
        }),
        probe: 0.1 * (1.0 + at(0.358_898_943_540_673_6)),
        tenderness: 1.0 + 0.2 * at(0.795_831_523_312_719_5),
        ..Draw::NOMINAL
    }
}

/// Fowler, Noll and Vo's hash, 1a, 64 bits (public domain constants).
struct Fnv(u64);

impl Fnv {
    const fn new() -> Self {
        Self(0xcbf2_9ce4_8422_2325)
    }

    fn bytes(&mut self, bytes: &[u8]) {
        for byte in bytes {
            self.0 = (self.0 ^ u64::from(*byte)).wrapping_mul(0x0100_0000_01b3);
        }
    }

    fn number(&mut self, value: f64) {
        self.bytes(&value.to_bits().to_le_bytes());
    }

    fn member(&mut self, run: &MemberRun) {
        self.number(run.ready.map_or(-1.0, TimeSpan::seconds));
        self.number(run.bark);
        self.number(run.at_end.evaporated.kilograms());
        self.number(run.at_end.dripped.kilograms());
        self.number(run.at_end.heat);
        for sample in &run.samples {
            self.number(sample.core.celsius());
            self.number(sample.surface.celsius());
            self.number(sample.tenderness);
            self.number(sample.loss);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_same_twice_and_another_for_another_ensemble() {
        assert_eq!(fingerprint(5), fingerprint(5));
        assert_ne!(fingerprint(5), fingerprint(6));
    }
}
