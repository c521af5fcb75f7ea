//! Evenly spread chance: cook `index` gets the same numbers on every machine.

use cook_model::forecast::normal_quantile;

/// The numbers of one cook, one after another.
#[derive(Clone, Debug)]
pub(crate) struct Chance {
    index: u32,
    next: u32,
}

impl Chance {
    pub(crate) const fn of(index: u32) -> Self {
        Self { index, next: 0 }
    }

    /// Between 0 and 1: Owen-scrambled Sobol points, one dimension after another.
    pub(crate) fn share(&mut self) -> f64 {
        let dimension = self.next;
        self.next += 1;
        let drawn =
            sobol_burley::sample(self.index, dimension % 256, 0xc0ff_ee00 + dimension / 256);
        (f64::from(drawn) + 1e-9).min(1.0 - 1e-9)
    }

    pub(crate) fn between(&mut self, low: f64, high: f64) -> f64 {
        low + self.share() * (high - low)
    }

    pub(crate) fn normal(&mut self) -> f64 {
        normal_quantile(self.share())
    }

    pub(crate) fn one_in(&mut self, few: f64) -> bool {
        self.share() < 1.0 / few
    }

    pub(crate) fn any<T: Copy>(&mut self, of: &[T]) -> T {
        let place = (self.share() * of.len() as f64) as usize;
        of[place.min(of.len() - 1)]
    }
}
