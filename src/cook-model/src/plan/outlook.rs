//! What the model makes of a plan: windows, odds, steps and findings. Worked out anew each time; never stored.

use super::step_key::{StepKey, StepOf};
use crate::handover::identity::{CookerId, CrewId, DishId};
use crate::live::{Live, Stage};
use crate::safety::SafeLine;
use crate::schedule::{Allowed, Lattice, Pin, Reason};
use crate::units::{Mass, Moment, Temperature, TemperatureDifference, TimeSpan};
use serde::{Deserialize, Serialize};

/// Everything that the model derives from a plan.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Outlook {
    /// Members of the ensemble behind it.
    pub members: u32,
    /// Each dish, in the person's order.
    pub dishes: Vec<DishOutlook>,
    /// All dishes at once.
    pub table: TableOutlook,
    /// What to do, in order of likely time.
    pub steps: Vec<Step>,
    /// The day as the rules bind it: what a move of a step is judged by.
    #[serde(default)]
    pub lattice: Lattice,
    /// What a careful friend would say about the plan, the gravest first.
    pub findings: Vec<Finding>,
    /// Food wanted and food planned.
    pub portions: Portions,
    /// How the food stands by the rules, dish by dish.
    #[serde(default)]
    pub safe: SafeLine,
}

/// A window: nine moments between which the members fall, one chance in ten in each of the eight gaps.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Window {
    /// The 10, 20, … 90 % points, in rising order.
    pub deciles: [Moment; 9],
}

impl Window {
    /// A window without spread.
    #[must_use]
    pub const fn at(moment: Moment) -> Self {
        Self {
            deciles: [moment; 9],
        }
    }

    /// One in ten falls before.
    #[must_use]
    pub const fn from(&self) -> Moment {
        self.deciles[0]
    }

    /// As many fall before as after.
    #[must_use]
    pub const fn likely(&self) -> Moment {
        self.deciles[4]
    }

    /// One in ten falls after.
    #[must_use]
    pub const fn to(&self) -> Moment {
        self.deciles[8]
    }

    /// The same window at another time.
    #[must_use]
    pub fn moved(&self, by: TimeSpan) -> Self {
        Self {
            deciles: self.deciles.map(|moment| moment + by),
        }
    }
}

/// Odds, kept as counted members and said as so many in twenty, rounded down and never twenty.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Odds {
    /// Members in which it comes true.
    pub kept: u32,
    /// Members in all.
    pub of: u32,
}

impl Odds {
    /// So many in twenty: rounded down, at most nineteen.
    #[must_use]
    pub const fn in_twenty(self) -> u32 {
        if self.of == 0 {
            return 0;
        }
        let count = self.kept * 20 / self.of;
        if count > 19 { 19 } else { count }
    }
}

/// One dish as the model sees it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct DishOutlook {
    /// Which.
    pub dish: DishId,
    /// Its letter on marks, unique in the plan.
    pub letter: char,
    /// Its hue on marks, 1 to 5, repeating.
    pub hue: u8,
    /// The forecast, or why there is none.
    pub forecast: Result<DishTimes, Hindrance>,
    /// How far it is, by what was logged.
    #[serde(default)]
    pub stage: Stage,
    /// What the readings say. None before it is on, or without a forecast.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub live: Option<Box<Live>>,
}

/// When a dish goes on and is ready, if it goes on at the time aimed for.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct DishTimes {
    /// The hold limit is still respected in nine of ten. It lies after [`DishTimes::latest_on`] where the window is wider
    /// than the hold: then no time keeps both, the promise goes first, and only the latest is worth showing.
    pub earliest_on: Moment,
    /// The promise is still kept.
    pub latest_on: Moment,
    /// The time aimed for, between the two.
    pub on: Moment,
    /// Tender, or at temperature: ready to come off.
    pub ready: Window,
    /// Rested and sliced.
    pub table_ready: Window,
    /// Table-ready by serving.
    pub odds: Odds,
    /// When it is wrapped.
    pub wrap: Option<Window>,
    /// The slow stretch: when the core begins to stand and when it moves again, in the likely member.
    pub stall: Option<(Moment, Moment)>,
    /// Course of the cook over time since it went on.
    pub course: Vec<CoursePoint>,
    /// Core temperature aimed for. None for a dish of one's own.
    pub target: Option<Temperature>,
    /// How far the target was lowered because water boils too low at this height.
    pub target_lowered: Option<TemperatureDifference>,
    /// Water, juice and fat lost of the weight that went on: the 10, 50 and 90 % points, 0 to 1.
    pub loss: [f64; 3],
    /// Tenderness when ready, 1 is tender: the 10, 50 and 90 % points. None for cuts cooked to temperature.
    pub tenderness: Option<[f64; 3]>,
    /// Safe by the published table at the coldest point by the time it is ready.
    pub lethality_met: Odds,
    /// How long it stays above 60 °C in its holding place: the 10, 50 and 90 % points.
    pub stays_hot: Option<[TimeSpan; 3]>,
    /// Cooked, on the plate, all pieces.
    pub served: Mass,
    /// What the forecast rests on that was assumed, not told.
    pub assumed: Vec<Assumption>,
}

/// Why a dish has no forecast.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(tag = "why", rename_all = "snake_case")]
pub enum Hindrance {
    /// No piece has a weight yet.
    NoPieces,
    /// No cooker is chosen.
    NoCooker,
    /// The cut is not in the catalogue.
    UnknownCut {
        /// The slug as it stands.
        cut: String,
    },
    /// The air never gets hot enough for the core to reach the target.
    PitBelowTarget {
        /// Hottest air.
        pit: Temperature,
        /// Wanted core.
        target: Temperature,
    },
    /// A quantity is outside what the model can reckon with.
    OutOfRange {
        /// In the model's words.
        message: String,
    },
    /// Fewer than half of the members get ready within the longest cook reckoned with.
    NeverReady {
        /// The longest cook.
        limit: TimeSpan,
    },
}

/// A point on the course of a cook.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct CoursePoint {
    /// Since it went on.
    pub after: TimeSpan,
    /// Core: the 10, 50 and 90 % points.
    pub core: [Temperature; 3],
    /// Tenderness: the 10, 50 and 90 % points.
    pub tenderness: [f64; 3],
    /// Lost of the weight that went on, median.
    pub loss: f64,
}

/// Something assumed because it was not told.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Assumption {
    /// Thickness from the weight.
    Thickness,
    /// Trimmed weight from the weight as bought.
    Trim,
    /// Not asked whether it is intact: counted as not.
    NotIntact,
    /// The usual wrap of the cut.
    Wrap,
    /// The usual target of the cut.
    Target,
    /// The usual salt and its time.
    Salt,
    /// The usual place to wait.
    Hold,
}

/// All dishes at once.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct TableOutlook {
    /// Serving moment.
    pub serving: Moment,
    /// Every dish table-ready by serving, counted over members.
    pub odds: Odds,
    /// The last dish is table-ready. None without a forecast.
    pub ready: Option<Window>,
    /// From the likely end of the window's last tenth to serving; negative where it is late.
    pub slack: Option<TimeSpan>,
}

/// What is done in a step.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum StepKind {
    /// Buy, at the latest.
    Buy,
    /// Into the fridge to thaw.
    Thaw,
    /// Trim.
    Trim,
    /// Salt.
    Salt,
    /// Rub.
    Rub,
    /// Light the fire.
    Light,
    /// The fire is steady and clean.
    SteadyFire,
    /// Feed the fire.
    Feed,
    /// Change the pit temperature.
    PitChange,
    /// On.
    On,
    /// Probe in, once the surface is hot.
    ProbeIn,
    /// Turn.
    Turn,
    /// Spray.
    Spray,
    /// Wrap.
    Wrap,
    /// Probe for tenderness.
    Probe,
    /// Off, and vent before a box.
    Off,
    /// Into the box or warm oven.
    Hold,
    /// Slice or pull.
    Slice,
    /// Serve.
    Serve,
    /// Chill what is left.
    Chill,
    /// Make a dish of one's own.
    Make,
    /// A step of one's own.
    Own,
}

impl StepKind {
    /// Every kind.
    pub const ALL: [Self; 22] = [
        Self::Buy,
        Self::Thaw,
        Self::Trim,
        Self::Salt,
        Self::Rub,
        Self::Light,
        Self::SteadyFire,
        Self::Feed,
        Self::PitChange,
        Self::On,
        Self::ProbeIn,
        Self::Turn,
        Self::Spray,
        Self::Wrap,
        Self::Probe,
        Self::Off,
        Self::Hold,
        Self::Slice,
        Self::Serve,
        Self::Chill,
        Self::Make,
        Self::Own,
    ];

    /// Its name in files.
    #[must_use]
    pub const fn slug(self) -> &'static str {
        match self {
            Self::Buy => "buy",
            Self::Thaw => "thaw",
            Self::Trim => "trim",
            Self::Salt => "salt",
            Self::Rub => "rub",
            Self::Light => "light",
            Self::SteadyFire => "steady_fire",
            Self::Feed => "feed",
            Self::PitChange => "pit_change",
            Self::On => "on",
            Self::ProbeIn => "probe_in",
            Self::Turn => "turn",
            Self::Spray => "spray",
            Self::Wrap => "wrap",
            Self::Probe => "probe",
            Self::Off => "off",
            Self::Hold => "hold",
            Self::Slice => "slice",
            Self::Serve => "serve",
            Self::Chill => "chill",
            Self::Make => "make",
            Self::Own => "own",
        }
    }

    /// The kind of that name.
    #[must_use]
    pub fn of_slug(slug: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|kind| kind.slug() == slug)
    }

    /// Whether it goes by the meat: its time follows from when its dish went on.
    #[must_use]
    pub const fn goes_by_the_meat(self) -> bool {
        matches!(
            self,
            Self::ProbeIn | Self::Turn | Self::Wrap | Self::Probe | Self::Off | Self::Hold
        )
    }
}

/// Something to do.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Step {
    /// What.
    pub kind: StepKind,
    /// Which round of several, from 1; 0 where there is only one.
    pub round: u32,
    /// For which dish.
    pub dish: Option<DishId>,
    /// At which cooker.
    pub cooker: Option<CookerId>,
    /// When it may fall.
    pub when: Window,
    /// How long hands are at it.
    pub takes: TimeSpan,
    /// Who does it. None: nobody is up.
    pub who: Option<CrewId>,
    /// Core temperature at which it is due, where it goes by that.
    pub core: Option<Temperature>,
    /// Amount, where there is one: salt.
    pub amount: Option<Mass>,
    /// Cautions that belong here, by the id of their rule.
    pub cautions: Vec<String>,
    /// Its name, the same however often the day is worked out anew.
    pub key: StepKey,
    /// Between which moments hard rules let it begin.
    #[serde(default)]
    pub allowed: Allowed,
    /// What holds it where it is: the first holds the step, each next one holds what the one before speaks of.
    #[serde(default)]
    pub held_by: Vec<Reason>,
    /// Whether the person pinned it, and what became of that.
    #[serde(default)]
    pub pin: Pin,
}

impl Step {
    /// A step of the whole table, with nothing else said yet.
    #[must_use]
    pub const fn new(kind: StepKind, when: Window, takes: TimeSpan) -> Self {
        Self {
            kind,
            round: 0,
            dish: None,
            cooker: None,
            when,
            takes,
            who: None,
            core: None,
            amount: None,
            cautions: Vec::new(),
            key: StepKey {
                of: StepOf::Table,
                kind,
                round: 0,
            },
            allowed: Allowed {
                earliest: None,
                latest: None,
            },
            held_by: Vec::new(),
            pin: Pin::Free,
        }
    }
}

/// How grave a finding is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Gravity {
    /// Somebody may get hurt: not like this.
    Stop,
    /// Think about it.
    Heed,
    /// Good to know.
    Note,
}

/// What a careful friend would say.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Finding {
    /// How grave.
    pub gravity: Gravity,
    /// About which dish.
    pub dish: Option<DishId>,
    /// About which cooker.
    pub cooker: Option<CookerId>,
    /// What it is.
    pub what: FindingKind,
}

/// The findings, with the figures that their words need.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(tag = "is", rename_all = "snake_case")]
pub enum FindingKind {
    /// Serving lies in the past.
    ServingPast,
    /// The time to put it on is past.
    OnPast {
        /// It should have gone on.
        latest: Moment,
    },
    /// More room is wanted on a cooker than its grate has.
    TooLittleGrate {
        /// Wanted, m².
        wanted: f64,
        /// There, m².
        there: f64,
    },
    /// Two dishes want different air on one cooker at once.
    TwoPitTemperatures {
        /// The one.
        low: Temperature,
        /// The other.
        high: Temperature,
    },
    /// The fire wants feeding and nobody is up.
    NobodyForFire {
        /// From.
        from: Moment,
        /// To.
        to: Moment,
        /// How often in that time.
        rounds: u32,
    },
    /// A step wants hands and nobody is up.
    NobodyUp {
        /// Which step.
        step: StepKind,
        /// When it may fall.
        when: Window,
    },
    /// It would not be thawed in time.
    NotThawed {
        /// Into the fridge by then at the latest.
        by: Moment,
        /// Hours in cold water, where those still fit.
        cold_water: Option<TimeSpan>,
    },
    /// It would have to wait longer than it stays hot.
    HoldTooLong {
        /// It waits, in one member of ten, longer than.
        waits: TimeSpan,
        /// It stays hot or good, in one member of ten, no longer than.
        limit: TimeSpan,
        /// Members in which it stays hot and good until it is sliced.
        odds: Odds,
    },
    /// The promise cannot be kept even if it goes on now.
    PromiseBroken {
        /// The odds as they are.
        odds: Odds,
    },
    /// The target was lowered to what water's boiling point allows at this height.
    TargetLowered {
        /// Wanted.
        from: Temperature,
        /// Lowered to.
        to: Temperature,
        /// Water boils at.
        boiling: Temperature,
    },
    /// A target below the consumer minimum was chosen.
    TargetBelowMinimum {
        /// Chosen.
        target: Temperature,
        /// Published minimum.
        minimum: Temperature,
        /// The printed time that it must stay there. None: no table allows it, and the minimum stands.
        by_table: Option<TimeSpan>,
    },
    /// Intact, and the surface is past 54.4 °C too late: it must be so within 4 h of leaving the cold.
    SlowSurface {
        /// Likely time out of the cold until the surface is hot.
        likely: TimeSpan,
    },
    /// Not intact, or not known: the core must pass 4 to 60 °C within 4 h, and it does not in so many members.
    SlowCoreNotIntact {
        /// Likely time of the core between 4 and 60 °C.
        likely: TimeSpan,
    },
    /// Intact, and the core is slow: a caution.
    SlowCoreIntact {
        /// Likely time of the core between 4 and 60 °C.
        likely: TimeSpan,
    },
    /// Not asked whether every piece is intact.
    AskIntact,
    /// The food planned is less than what is wanted.
    TooLittleFood {
        /// Wanted, cooked.
        wanted: Mass,
        /// Planned, cooked.
        planned: Mass,
    },
    /// The salt has less time than it wants.
    SaltTooShort {
        /// As planned.
        ahead: TimeSpan,
        /// At least.
        least: TimeSpan,
    },
}

/// Food wanted and food planned, cooked, on the plate.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Portions {
    /// Wanted by the guests, with what is to be left over.
    pub wanted: Mass,
    /// Planned.
    pub planned: Mass,
}
