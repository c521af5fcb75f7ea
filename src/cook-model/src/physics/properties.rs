//! What raw and cooking meat is like: heat capacity, conductivity, density, how much water it holds.

use super::real::Real;
use crate::meat::Composition;
use crate::units::Temperature;

/// Densities of water, protein, fat and ash at 20 °C, kg/m³ (Choi and Okos 1986), held at all temperatures.
pub(crate) const DENSITY_OF_WATER: f64 = 997.2;
pub(crate) const DENSITY_OF_PROTEIN: f64 = 1319.5;
pub(crate) const DENSITY_OF_FAT: f64 = 917.2;
pub(crate) const DENSITY_OF_ASH: f64 = 2418.2;

/// Conductivity of ash, W/m K, and its heat capacity, J/kg K: round values, it hardly counts.
pub(crate) const CONDUCTIVITY_OF_ASH: f64 = 0.35;
pub(crate) const HEAT_CAPACITY_OF_ASH: f64 = 1000.0;

/// Heat of melting of fat, J/kg, spread around 32 °C with a width of 8 K. From memory, ± half.
pub(crate) const FAT_MELTING_HEAT: f64 = 60e3;
pub(crate) const FAT_MELTING_CENTRE: f64 = 32.0;
pub(crate) const FAT_MELTING_WIDTH: f64 = 8.0;

/// Multiplies the additive conductivity: fitted to hot ovens; juice that moves and the direction of the fibres are the
/// likely reasons.
pub(crate) const CONDUCTIVITY_FACTOR: f64 = 1.328;

/// Conductivity (W/m K) and volumetric heat capacity (J/m³ K) of bone: set by hand to one rack of plate ribs.
pub(crate) const CONDUCTIVITY_OF_BONE: f64 = 0.55;
pub(crate) const HEAT_CAPACITY_OF_BONE: f64 = 2.8e6;

/// Water that fully heated meat holds, kg per kg of protein and ash: fitted. The well-known curve whose form
/// [`water_held`] has ends at 1.57 (from memory); braised lean brisket by its composition at 1.7 (likewise). This is
/// more, because a long cook loses water by drying on top of it.
pub(crate) const WATER_HELD_WHEN_COOKED: f64 = 1.883;

/// a0 + a1 T + a2 T².
type Quadratic = [f64; 3];

/// Conductivities, W/m K, T in °C. Source: Choi and Okos 1986, as in the ASHRAE Handbook Refrigeration.
const CONDUCTIVITY: [Quadratic; 3] = [
    [0.57109, 1.7625e-3, -6.7036e-6],
    [0.17881, 1.1958e-3, -2.7178e-6],
    [0.18071, -2.7604e-4, -1.7749e-7],
];

/// Heat capacities of water, protein and fat, J/kg K, T in °C. Source: as for the conductivities.
pub(crate) const HEAT_CAPACITY: [Quadratic; 3] = [
    [4176.2, -0.090_864, 5.4731e-3],
    [2008.2, 1.2089, -1.3129e-3],
    [1984.2, 1.4733, -4.8008e-3],
];

#[inline(always)]
fn at<S: Real>(q: Quadratic, t: S) -> S {
    S::of(q[0]) + t * (S::of(q[1]) + t * S::of(q[2]))
}

/// Conductivities of water, protein and fat at a temperature in °C.
#[inline(always)]
pub(crate) fn conductivities<S: Real>(t: S) -> [S; 3] {
    CONDUCTIVITY.map(|q| at(q, t))
}

/// Heat capacities of water, protein and fat at a temperature in °C, the melting of fat included.
#[inline(always)]
pub(crate) fn heat_capacities<S: Real>(t: S) -> [S; 3] {
    let [water, protein, fat] = HEAT_CAPACITY.map(|q| at(q, t));
    // 60e3 / (8 sqrt(2π)) at the peak.
    let peak = FAT_MELTING_HEAT / (FAT_MELTING_WIDTH * 2.506_628_274_631_000_5);
    let z = (t - S::of(FAT_MELTING_CENTRE)) * S::of(1.0 / FAT_MELTING_WIDTH);
    [
        water,
        protein,
        fat + S::of(peak) * (S::of(-0.5) * z * z).exp(),
    ]
}

/// Heat content of water, protein and fat above 0 °C, J/kg: the integrals of the heat capacities.
pub(crate) fn heat_contents(t: f64) -> [f64; 3] {
    let [water, protein, fat] =
        HEAT_CAPACITY.map(|q| t * (q[0] + t * (q[1] / 2.0 + t * q[2] / 3.0)));
    let scale = FAT_MELTING_WIDTH * std::f64::consts::SQRT_2;
    let melted =
        libm::erf((t - FAT_MELTING_CENTRE) / scale) + libm::erf(FAT_MELTING_CENTRE / scale);
    [water, protein, fat + 0.5 * FAT_MELTING_HEAT * melted]
}

/// Water that meat holds at a temperature in °C, kg per kg of protein and ash, from `raw` when cold to `cooked` when
/// fully heated, and its slope per K. The logistic form and its constants are from memory; the end value is fitted.
#[inline(always)]
pub(crate) fn water_held<S: Real>(t: S, raw: S, cooked: S) -> (S, S) {
    let e = S::of(30.0) * ((S::of(52.0) - t) * S::of(0.25)).exp();
    let lost = (raw - cooked) / (S::of(1.0) + e);
    let slope = -lost * e / (S::of(1.0) + e) * S::of(0.25);
    (raw - lost, slope)
}

/// Density of the raw meat, kg/m³.
#[must_use]
pub fn density(composition: &Composition) -> f64 {
    1.0 / (composition.water / DENSITY_OF_WATER
        + composition.protein / DENSITY_OF_PROTEIN
        + composition.fat / DENSITY_OF_FAT
        + composition.ash / DENSITY_OF_ASH)
}

/// Conductivity of the raw meat by volume shares, W/m K, before the factor that the march applies.
#[must_use]
pub fn conductivity(composition: &Composition, temperature: Temperature) -> f64 {
    let [water, protein, fat] = conductivities(temperature.celsius());
    density(composition)
        * (water * composition.water / DENSITY_OF_WATER
            + protein * composition.protein / DENSITY_OF_PROTEIN
            + fat * composition.fat / DENSITY_OF_FAT
            + CONDUCTIVITY_OF_ASH * composition.ash / DENSITY_OF_ASH)
}

/// Heat capacity of the raw meat, J/kg K, without the melting of fat.
#[must_use]
pub fn heat_capacity(composition: &Composition, temperature: Temperature) -> f64 {
    let [water, protein, fat] = HEAT_CAPACITY.map(|q| at(q, temperature.celsius()));
    water * composition.water
        + protein * composition.protein
        + fat * composition.fat
        + HEAT_CAPACITY_OF_ASH * composition.ash
}

/// Water that meat of this composition holds at a temperature, kg per kg of protein and ash.
#[must_use]
pub fn water_holding(composition: &Composition, temperature: Temperature) -> f64 {
    let raw = composition.water / (composition.protein + composition.ash);
    water_held(temperature.celsius(), raw, WATER_HELD_WHEN_COOKED).0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn heat_content_is_the_integral_of_heat_capacity() {
        for t in [5.0, 32.0, 60.0, 95.0, 150.0] {
            let steps = 20_000;
            let h = t / f64::from(steps);
            let mut sum = [0.0; 3];
            for i in 0..steps {
                let c = heat_capacities((f64::from(i) + 0.5) * h);
                for (total, part) in sum.iter_mut().zip(c) {
                    *total += part * h;
                }
            }
            for (exact, numeric) in heat_contents(t).into_iter().zip(sum) {
                assert!(
                    (exact / numeric - 1.0).abs() < 1e-6,
                    "{t}: {exact} {numeric}"
                );
            }
        }
    }

    #[test]
    fn the_slope_of_water_holding_is_its_derivative() {
        for i in 0..120 {
            let t = f64::from(i);
            let (_, slope) = water_held(t, 3.2, 1.9);
            let numeric =
                (water_held(t + 1e-4, 3.2, 1.9).0 - water_held(t - 1e-4, 3.2, 1.9).0) / 2e-4;
            assert!((slope - numeric).abs() < 1e-6, "{t}");
        }
    }
}
