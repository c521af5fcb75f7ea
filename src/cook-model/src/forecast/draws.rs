//! From evenly spread points to the draws of one member.

use super::normal::{normal_quantile, normal_share};
use super::owner::Owner;
use super::{OwnerKey, Prior};
use crate::physics::{Draw, SWING_PERIODS_HOURS, SwingMode};

/// Who owns the draws of a dish.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Owners {
    /// The cooker; all dishes on it share its draws.
    pub cooker: OwnerKey,
    /// The piece, or the dish where its pieces are drawn as one.
    pub piece: OwnerKey,
}

/// Numbers each owner's own dimensions as they are asked for. The order is part of the format: another order gives
/// other members for the same seed.
struct Coordinates {
    owner: Owner,
    seed: u64,
    member: u32,
    next: u32,
}

impl Coordinates {
    const fn new(owner: Owner, seed: u64, member: u32) -> Self {
        Self {
            owner,
            seed,
            member,
            next: 0,
        }
    }

    fn normal(&mut self) -> f64 {
        let dimension = self.next;
        self.next += 1;
        normal_quantile(self.owner.coordinate(self.seed, self.member, dimension))
    }
}

/// One member's draws, and the probability at which its remainder stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MemberDraw {
    /// What the physics sees.
    pub draw: Draw,
    /// Probability of the remainder, 0 to 1; see [`super::Remainder::stretch`].
    pub remainder: f64,
}

/// One member's draws as standard normal variables, by owner: what a forecast that learns from readings moves.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Standard {
    /// Of the world: air outside.
    pub world: [f64; 1],
    /// Of the cooker: gauge, heat transfer, sine and cosine of each mode of swing, humidity, walls.
    pub cooker: [f64; 10],
    /// Of the piece: remainder, thickness, juice, probe, crust, evaporating share, tenderness, paper, fat, shrinking.
    pub piece: [f64; 10],
}

impl Standard {
    /// One member's. `member` below 65,536. The same arguments give the same bits everywhere, and members of several
    /// dishes with the same seed and index share their world and, on one cooker, their cooker.
    #[must_use]
    pub fn of(owners: Owners, seed: u64, member: u32) -> Self {
        let mut world = Coordinates::new(Owner::World, seed, member);
        let mut cooker = Coordinates::new(Owner::Cooker(owners.cooker), seed, member);
        let mut piece = Coordinates::new(Owner::Piece(owners.piece), seed, member);
        Self {
            world: std::array::from_fn(|_| world.normal()),
            cooker: std::array::from_fn(|_| cooker.normal()),
            piece: std::array::from_fn(|_| piece.normal()),
        }
    }

    /// The draws under a prior. Variables are held within 3.5 (one in 2,000 would be outside), so that no draw leaves
    /// the model's ranges; that of the remainder is not.
    #[must_use]
    pub fn draw(&self, prior: &Prior) -> MemberDraw {
        let held = |z: f64| z.clamp(-3.5, 3.5);
        let factor = |deviation: f64, z: f64| libm::exp(deviation * held(z));
        let [outside] = self.world;
        let [gauge, heat_transfer, swings @ .., humidity, walls] = self.cooker;
        let [
            remainder,
            thickness,
            juice,
            probe,
            crust_vapour,
            evaporating_share,
            tenderness,
            paper,
            fat,
            shrink,
        ] = self.piece;
        // Every mode carries the same share of the swing. Sine and cosine parts are normal, so that the air at any one
        // moment is normal too.
        let part = 1.0 / libm::sqrt(SWING_PERIODS_HOURS.len() as f64);
        let mut swing = [SwingMode::default(); SWING_PERIODS_HOURS.len()];
        for (mode, pair) in swing.iter_mut().zip(swings.chunks_exact(2)) {
            let (sine, cosine) = (held(pair[0]), held(pair[1]));
            mode.amplitude = prior.swing * (part * libm::hypot(sine, cosine));
            mode.phase = libm::atan2(cosine, sine);
        }
        MemberDraw {
            draw: Draw {
                thickness: factor(prior.thickness, thickness),
                free_water: factor(prior.free_water, juice),
                crust_vapour: factor(prior.crust_vapour, crust_vapour),
                water_holding: prior.water_holding * held(juice),
                heat_transfer: factor(prior.heat_transfer, heat_transfer),
                evaporating_share: factor(prior.evaporating_share, evaporating_share),
                paper: factor(prior.paper, paper),
                fat: prior.fat * held(fat),
                shrink: factor(prior.shrink, shrink),
                humidity: factor(prior.humidity, humidity),
                walls: factor(prior.walls, walls),
                gauge: prior.gauge * held(gauge),
                outside: prior.outside * held(outside),
                swing,
                probe: (prior.probe * held(probe)).abs().min(0.9),
                tenderness: factor(prior.tenderness, tenderness),
            },
            remainder: normal_share(remainder),
        }
    }
}

/// The draws of one member; see [`Standard::of`].
#[must_use]
pub fn draw(prior: &Prior, owners: Owners, seed: u64, member: u32) -> MemberDraw {
    Standard::of(owners, seed, member).draw(prior)
}

#[cfg(test)]
mod tests {
    use super::super::Knowledge;
    use super::*;
    use crate::physics::CookerClass;

    fn prior() -> Prior {
        Prior::of(CookerClass::Kettle, Knowledge::default())
    }

    fn owners(cooker: &str, piece: &str) -> Owners {
        Owners {
            cooker: OwnerKey::from_text(cooker),
            piece: OwnerKey::from_text(piece),
        }
    }

    #[test]
    fn the_same_index_shares_what_its_owners_share() {
        for member in 0..32 {
            let one = draw(&prior(), owners("kettle", "shoulder"), 3, member).draw;
            let same_cooker = draw(&prior(), owners("kettle", "ribs"), 3, member).draw;
            let elsewhere = draw(&prior(), owners("drum", "shoulder"), 3, member).draw;
            assert_eq!(one.gauge, same_cooker.gauge);
            assert_eq!(one.swing, same_cooker.swing);
            assert_ne!(one.thickness, same_cooker.thickness);
            assert_eq!(one.outside, elsewhere.outside);
            assert_eq!(one.thickness, elsewhere.thickness);
            assert_ne!(one.gauge, elsewhere.gauge);
            let again = draw(&prior(), owners("kettle", "shoulder"), 3, member).draw;
            assert_eq!(one, again);
            let reseeded = draw(&prior(), owners("kettle", "shoulder"), 4, member).draw;
            assert_ne!(one.outside, reseeded.outside);
        }
    }

    #[test]
    fn the_members_have_the_stated_sizes() {
        let members: Vec<Draw> = (0..256)
            .map(|member| draw(&prior(), owners("a", "b"), 11, member).draw)
            .collect();
        let deviation = |value: &dyn Fn(&Draw) -> f64| {
            let n = members.len() as f64;
            let mean = members.iter().map(value).sum::<f64>() / n;
            let square: f64 = members
                .iter()
                .map(|m| (value(m) - mean) * (value(m) - mean))
                .sum();
            (mean, libm::sqrt(square / n))
        };
        let close = |(mean, sd): (f64, f64), size: f64| {
            assert!(mean.abs() < 0.02 * size, "mean {mean} of {size}");
            assert!((sd / size - 1.0).abs() < 0.03, "deviation {sd} of {size}");
        };
        close(deviation(&|m| m.gauge.kelvin()), 8.0);
        close(deviation(&|m| m.outside.kelvin()), 3.0);
        close(deviation(&|m| libm::log(m.thickness)), 0.12);
        close(deviation(&|m| libm::log(m.paper)), 0.60);
        close(deviation(&|m| m.fat), 0.03);
        // Air at one moment, all modes together.
        let air = |m: &Draw, hours: f64| -> f64 {
            m.swing
                .iter()
                .zip(SWING_PERIODS_HOURS)
                .map(|(mode, period)| {
                    let angle = std::f64::consts::TAU * hours / period + mode.phase;
                    mode.amplitude.kelvin() * libm::sin(angle)
                })
                .sum()
        };
        for hours in [0.0, 1.7, 9.3] {
            let (mean, sd) = deviation(&|m| air(m, hours));
            assert!(mean.abs() < 0.4, "{mean} K at {hours} h");
            assert!((sd - 4.0).abs() < 0.4, "{sd} K at {hours} h");
        }
    }

    #[test]
    fn measuring_narrows() {
        let known = Knowledge {
            thickness_measured: true,
            gauge_at_meat: true,
            ..Knowledge::default()
        };
        let narrow = Prior::of(CookerClass::Kettle, known);
        assert!(narrow.gauge < prior().gauge);
        assert!(narrow.thickness < prior().thickness);
        let unknown = Knowledge {
            cooker_unknown: true,
            ..Knowledge::default()
        };
        assert!(
            Prior::of(CookerClass::Generic, unknown).gauge
                > Prior::of(CookerClass::Generic, Knowledge::default()).gauge
        );
    }

    /// The bits that every machine must give: changing them changes every plan's members.
    #[test]
    fn the_bits_are_part_of_the_format() {
        let mut fold = 0_u64;
        for member in 0..64 {
            let MemberDraw { draw, remainder } =
                draw(&prior(), owners("kettle", "shoulder"), 20_261_010, member);
            for value in [
                draw.thickness,
                draw.gauge.kelvin(),
                draw.swing[2].phase,
                draw.outside.kelvin(),
                draw.paper,
                remainder,
            ] {
                fold = fold.rotate_left(5) ^ value.to_bits();
            }
        }
        assert_eq!(fold, 0x94b9_d923_b1ff_d049, "now {fold:#018x}");
    }
}
