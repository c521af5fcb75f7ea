//! It will not be ready in time.

use super::{Answer, Figure, Missing, Verdict};
use crate::meat::{CutId, Make};
use crate::plan::Intact;
use crate::safety::wording::{degrees, span};
use crate::safety::{RuleId, Sort, minimum};
use crate::units::{Temperature, TimeSpan};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// The guests wait, or soon will. What can be done?
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct RunningLate {
    /// What it is.
    pub cut: CutId,
    /// Whether it is whole, with nothing put inside it.
    #[serde(default)]
    pub intact: Intact,
    /// Its core now, at the coldest place.
    #[serde(default)]
    pub core: Option<Temperature>,
    /// Time left until serving.
    pub left: TimeSpan,
    /// How much longer the forecast gives it: shortest, likely, longest. None: no forecast.
    #[serde(default)]
    pub still_takes: Option<[TimeSpan; 3]>,
    /// Air at the meat as it reads.
    #[serde(default)]
    pub pit: Option<Temperature>,
    /// Air at the meat as it was planned.
    #[serde(default)]
    pub pit_planned: Option<Temperature>,
    /// It is wrapped.
    #[serde(default)]
    pub wrapped: bool,
}

impl RunningLate {
    /// The answer.
    #[must_use]
    pub fn answer(&self) -> Answer {
        let cut = self.cut.cut();
        let least = minimum(Sort::of(cut.make, self.intact));
        let cooked = self.core.is_some_and(|core| core >= least.temperature);
        let short_of_pit = self
            .pit
            .zip(self.pit_planned)
            .is_some_and(|(is, planned)| (planned - is).kelvin() > 8.0);
        let in_time = self
            .still_takes
            .is_some_and(|[_, likely, _]| likely <= self.left);
        let never = self
            .still_takes
            .is_some_and(|[short, ..]| short > self.left);
        let verdict = if short_of_pit {
            Verdict::ActNow
        } else if in_time {
            Verdict::LooksFine
        } else if cooked {
            Verdict::WithCare
        } else if never {
            Verdict::No
        } else {
            Verdict::BetterNot
        };
        let mut answer = Answer::new(verdict)
            .say_if(short_of_pit, "The pit is short of heat. More air first: open the vents, prop the lid. Take out the water pan, add lit fuel, or move a piece to the oven. Each cold piece pulls the pit down.")
            .say_if(in_time && !short_of_pit, "By the forecast it still makes it.")
            .say_if(never && !cooked, format!("It cannot be done by then, hot and wrapped or not. It needs at least {}.", self.still_takes.map_or(String::new(), |[short, ..]| span(short))))
            .say_if(never && !cooked, "Say a later time now, or serve something smaller first.")
            .say_if(cooked && !in_time && cut.cooks_to_tenderness(), format!("At {} it is past the least heat for eating after its rest, but it will not pull. Slice it thin, or serve later.", self.core.map_or(String::new(), degrees)))
            .say_if(!self.wrapped && !in_time && cut.cooks_to_tenderness(), format!("Wrap it now and raise the pit to {}. Next time decide that when the core first stands still.", degrees(Temperature::from_fahrenheit(300.0))))
            .by(least.rule)
            .by_if(cut.make == Make::Poultry, RuleId::CoreHotInTime)
            .missing_if(self.core.is_none(), Missing::CoreNow);
        if let Some([short, likely, long]) = self.still_takes {
            answer = answer.figure(Figure::Takes {
                short,
                likely,
                long,
            });
        }
        answer.figure(Figure::Left { span: self.left })
    }
}
