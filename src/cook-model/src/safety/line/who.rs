//! Who to ask where the tool's word ends.

use crate::plan::Audience;
use crate::safety::RuleId;

/// The rules that say who to ask: for everybody, and beside it the local code for whoever serves the public.
#[must_use]
pub const fn who_to_ask(audience: Audience) -> &'static [RuleId] {
    match audience {
        Audience::Household => &[RuleId::WhoToAsk],
        Audience::Public => &[RuleId::LocalCode, RuleId::WhoToAsk],
    }
}
