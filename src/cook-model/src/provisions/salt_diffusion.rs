//! How salt from both faces evens out through a piece: Fick's law in a slab, with a finite amount put on at once.

use crate::units::{Length, TimeSpan};
use serde::{Deserialize, Serialize};
use std::f64::consts::PI;

/// How fast salt moves in meat, m²/s.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Diffusivity {
    /// Slow meat: fat and connective tissue.
    pub slow: f64,
    /// Usual.
    pub usual: f64,
    /// Fast meat.
    pub fast: f64,
}

/// Salt in pork at fridge temperature: 3 to 7 ×10⁻¹⁰ m²/s.
///
/// Source: Hansen et al. 2008, Meat Science 80:851.
pub const IN_FRIDGE: Diffusivity = Diffusivity {
    slow: 3e-10,
    usual: 5e-10,
    fast: 7e-10,
};

/// Salt at the centre over the mean, for a layer put on both faces at once. 0 at the start, 1 when even.
///
/// `half` is half the thickness. Two series for the same thing: images near the start, cosines later.
#[must_use]
pub fn centre_over_mean(half: Length, after: TimeSpan, diffusivity: f64) -> f64 {
    let fourier = diffusivity * after.seconds() / (half.metres() * half.metres());
    if fourier <= 0.0 {
        return 0.0;
    }
    if fourier < 0.2 {
        // Sources at ±half and their images at odd multiples, seen from the centre.
        let images: f64 = (0..4)
            .map(|k| {
                let distance = f64::from(2 * k + 1);
                libm::exp(-distance * distance / (4.0 * fourier))
            })
            .sum();
        return 2.0 * images / libm::sqrt(PI * fourier);
    }
    let cosines: f64 = (1..=6)
        .map(|k| {
            let order = f64::from(k);
            let sign = if k % 2 == 0 { 1.0 } else { -1.0 };
            sign * libm::exp(-order * order * PI * PI * fourier)
        })
        .sum();
    1.0 + 2.0 * cosines
}

/// How long until the centre has its share.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct EvenOut {
    /// In fast meat.
    pub fast: TimeSpan,
    /// Usually.
    pub usual: TimeSpan,
    /// In slow meat.
    pub slow: TimeSpan,
}

/// How long until salt at the centre has reached `share` (0.01 to 0.99) of the mean, in a piece of this thickness that
/// is salted on both faces.
#[must_use]
pub fn even_out(thickness: Length, share: f64, diffusivity: Diffusivity) -> EvenOut {
    let half = thickness / 2.0;
    let until = |diffusivity: f64| {
        // The share only ever rises with time: bisect in Fourier numbers.
        let scale = half.metres() * half.metres() / diffusivity;
        let (mut early, mut late) = (0.0, 2.0);
        for _ in 0..60 {
            let middle = 0.5 * (early + late);
            if centre_over_mean(half, TimeSpan::from_seconds(middle * scale), diffusivity) < share {
                early = middle;
            } else {
                late = middle;
            }
        }
        TimeSpan::from_seconds(late * scale)
    };
    EvenOut {
        fast: until(diffusivity.fast),
        usual: until(diffusivity.usual),
        slow: until(diffusivity.slow),
    }
}

/// How far a wet brine has got into a slab that lies in plenty of it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Soak {
    /// Share of all the salt that it will ever take up, 0 to 1.
    pub uptake: f64,
    /// Salt at the centre over that at the surface, 0 to 1.
    pub centre: f64,
}

/// How far a wet brine has got; `half` is half the thickness. The series for a plane sheet whose faces stay as salty as
/// the brine.
///
/// Source: Crank, The Mathematics of Diffusion, section 4.3.
#[must_use]
pub fn soak(half: Length, after: TimeSpan, diffusivity: f64) -> Soak {
    let fourier = diffusivity * after.seconds() / (half.metres() * half.metres());
    if fourier <= 0.0 {
        return Soak {
            uptake: 0.0,
            centre: 0.0,
        };
    }
    let (mut uptake, mut centre) = (1.0, 1.0);
    for n in 0..60 {
        let odd = f64::from(2 * n + 1);
        let fading = libm::exp(-odd * odd * PI * PI * fourier / 4.0);
        let sign = if n % 2 == 0 { 1.0 } else { -1.0 };
        uptake -= 8.0 / (odd * odd * PI * PI) * fading;
        centre -= 4.0 * sign / (odd * PI) * fading;
    }
    Soak {
        uptake: uptake.clamp(0.0, 1.0),
        centre: centre.clamp(0.0, 1.0),
    }
}

/// Depth at which salt has reached half of what it is at a face that stays salty: 0.954 √(D t), from the complementary
/// error function.
#[must_use]
pub fn reach(after: TimeSpan, diffusivity: f64) -> Length {
    const HALF_OF_ERFC: f64 = 0.953_872_552_4;
    Length::from_metres(HALF_OF_ERFC * libm::sqrt(diffusivity * after.seconds().max(0.0)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_two_series_meet() {
        let half = Length::from_metres(0.02);
        let at = |fourier: f64| {
            centre_over_mean(half, TimeSpan::from_seconds(fourier * 4e-4 / 5e-10), 5e-10)
        };
        assert!((at(0.2 - 1e-9) - at(0.2 + 1e-9)).abs() < 1e-7);
    }

    #[test]
    fn evening_out_goes_with_the_square_of_the_thickness() {
        let thin = even_out(Length::from_millimetres(30.0), 0.9, IN_FRIDGE);
        let thick = even_out(Length::from_millimetres(60.0), 0.9, IN_FRIDGE);
        assert!((thick.usual / thin.usual - 4.0).abs() < 1e-9);
        assert!(thin.fast < thin.usual && thin.usual < thin.slow);
    }

    #[test]
    fn half_of_the_face_is_where_the_error_function_says() {
        let after = TimeSpan::from_hours(24.0);
        let depth = reach(after, 5e-10).metres();
        let there = libm::erfc(depth / (2.0 * libm::sqrt(5e-10 * after.seconds())));
        assert!((there - 0.5).abs() < 1e-9);
    }
}
