//! What comes back for a question.

use crate::safety::RuleId;
use crate::units::{Length, Mass, Moment, Temperature, TimeSpan};
use serde::{Deserialize, Serialize};

/// A straight answer: the verdict, what to do in a few sentences, the figures and the rules behind it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Answer {
    /// In a word.
    pub verdict: Verdict,
    /// What to do, the most urgent first. Figures stand in it on both scales: see [`crate::safety::say`].
    pub says: Vec<String>,
    /// The rules behind it, the one that decided first. Each has its source.
    pub rules: Vec<RuleId>,
    /// What was reckoned.
    pub figures: Vec<Figure>,
    /// What was not told and would sharpen or change the answer.
    pub missing: Vec<Missing>,
}

/// The answer in a word. None of them says that food is safe.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Verdict {
    /// Nothing to decide: advice.
    GoodToKnow,
    /// Nothing told speaks against it.
    LooksFine,
    /// It can be done, with the care that is said.
    WithCare,
    /// There is a better way, which is said.
    BetterNot,
    /// It cannot be told without a reading.
    NotKnown,
    /// Something must be done now.
    ActNow,
    /// Not like this.
    No,
    /// The food is lost.
    ThrowAway,
}

impl Verdict {
    /// The verdict as the first line.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::GoodToKnow => "Good to know.",
            Self::LooksFine => "Looks fine on what you told me.",
            Self::WithCare => "It can work, with care.",
            Self::BetterNot => "Better another way.",
            Self::NotKnown => "Nobody can tell from this.",
            Self::ActNow => "Act now.",
            Self::No => "No. Do not do this.",
            Self::ThrowAway => "Throw it away.",
        }
    }
}

/// Something reckoned.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(tag = "what", rename_all = "snake_case")]
pub enum Figure {
    /// It stays hot enough for so long: count on no more, likely, at best.
    StaysHot {
        /// Count on no more.
        short: TimeSpan,
        /// Likely.
        likely: TimeSpan,
        /// At best.
        long: TimeSpan,
    },
    /// It was below the floor for so long.
    BelowFor {
        /// How long.
        span: TimeSpan,
    },
    /// So long is left.
    Left {
        /// How long.
        span: TimeSpan,
    },
    /// At most so long.
    AtMost {
        /// How long.
        span: TimeSpan,
    },
    /// It takes so long: shortest, likely, longest.
    Takes {
        /// Shortest.
        short: TimeSpan,
        /// Likely.
        likely: TimeSpan,
        /// Longest.
        long: TimeSpan,
    },
    /// Core that counts.
    Core {
        /// The reading.
        core: Temperature,
    },
    /// Water boils at.
    Boils {
        /// Temperature.
        at: Temperature,
    },
    /// Target to aim for.
    Target {
        /// Core.
        core: Temperature,
    },
    /// Time as a share of what it was.
    TimeShare {
        /// 0 to 1 and above.
        share: f64,
    },
    /// To buy.
    Buy {
        /// Raw weight.
        mass: Mass,
    },
    /// On the plate.
    OnPlate {
        /// Cooked weight.
        mass: Mass,
    },
    /// Depth of a layer that cools in time.
    Depth {
        /// Depth.
        depth: Length,
    },
    /// A moment.
    At {
        /// When.
        moment: Moment,
    },
}

/// What was not told.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Missing {
    /// The core now, at the coldest of several places.
    CoreNow,
    /// The core before.
    CoreBefore,
    /// Since when.
    SinceWhen,
    /// Whether it is whole, with nothing put inside it.
    Intact,
    /// The weight.
    Weight,
    /// Air at the meat.
    Pit,
    /// Air around.
    Air,
    /// A second thermometer.
    SecondThermometer,
    /// How deep it lies.
    Depth,
}

impl Answer {
    pub(super) const fn new(verdict: Verdict) -> Self {
        Self {
            verdict,
            says: Vec::new(),
            rules: Vec::new(),
            figures: Vec::new(),
            missing: Vec::new(),
        }
    }

    /// One more sentence.
    pub(super) fn say(mut self, sentence: impl Into<String>) -> Self {
        self.says.push(sentence.into());
        self
    }

    /// One more sentence where it fits.
    pub(super) fn say_if(self, fits: bool, sentence: impl Into<String>) -> Self {
        if fits { self.say(sentence) } else { self }
    }

    /// One more rule.
    pub(super) fn by(mut self, rule: RuleId) -> Self {
        if !self.rules.contains(&rule) {
            self.rules.push(rule);
        }
        self
    }

    /// One more rule where it applies.
    pub(super) fn by_if(self, applies: bool, rule: RuleId) -> Self {
        if applies { self.by(rule) } else { self }
    }

    pub(super) fn figure(mut self, figure: Figure) -> Self {
        self.figures.push(figure);
        self
    }

    pub(super) fn missing(mut self, missing: Missing) -> Self {
        self.missing.push(missing);
        self
    }

    pub(super) fn missing_if(self, lacks: bool, missing: Missing) -> Self {
        if lacks { self.missing(missing) } else { self }
    }

    /// A verdict at least this grave.
    pub(super) fn at_least(mut self, verdict: Verdict) -> Self {
        self.verdict = self.verdict.max(verdict);
        self
    }
}
