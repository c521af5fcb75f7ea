//! What the clock says.

use crate::safety::RuleId;
use crate::units::Moment;
use serde::{Deserialize, Serialize};

/// How it stands, from good to bad. Without news it can only get worse.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Standing {
    /// Nothing told speaks against it, and nothing that is needed is missing.
    LooksSafe,
    /// Be careful: a limit is near or a caution stands.
    Heed,
    /// A reading that is needed is missing: it cannot be shown to be safe.
    Unknown,
    /// Do something now.
    ActNow,
    /// Throw it away.
    Discard,
}

impl Standing {
    /// The words over it. None of them says that food is safe.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::LooksSafe => "Looks safe on what you told me.",
            Self::Heed => "Take care.",
            Self::Unknown => "Not known. On what you told me it cannot be shown to be safe.",
            Self::ActNow => "Act now.",
            Self::Discard => "Throw it away.",
        }
    }

    /// Whether it takes over the screen until the person has said what happened.
    #[must_use]
    pub const fn stops(self) -> bool {
        matches!(self, Self::ActNow | Self::Discard)
    }
}

/// The next moment that matters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Next {
    /// When.
    pub at: Moment,
    /// Which rule has its limit there.
    pub rule: RuleId,
}

/// How a piece of food stands at a moment.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct SafeState {
    /// How it stands.
    pub standing: Standing,
    /// Since when what is said of it holds. None: nothing was told that dates it.
    pub since: Option<Moment>,
    /// The next moment that matters. None: none is known.
    pub next: Option<Next>,
    /// By which rule.
    pub why: RuleId,
}

impl SafeState {
    pub(super) const fn new(standing: Standing, why: RuleId, since: Option<Moment>) -> Self {
        Self {
            standing,
            since,
            next: None,
            why,
        }
    }

    pub(super) const fn until(self, at: Moment, rule: RuleId) -> Self {
        Self {
            next: Some(Next { at, rule }),
            ..self
        }
    }

    /// The worse of two; the first where they are alike.
    pub(super) fn worse(self, other: Self) -> Self {
        if other.standing > self.standing {
            other
        } else {
            self
        }
    }
}
