//! Who a thing is: random ids made once and never reused.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use std::fmt;
use std::str::FromStr;
use ulid::Ulid;

/// Text that is not a ULID (26 characters of Crockford's base 32).
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("“{0}” is not an id: 26 letters and digits are wanted")]
pub struct NotAnId(pub String);

macro_rules! id {
    ($($(#[$doc:meta])* $name:ident)+) => {$(
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema)]
        #[serde(into = "String", try_from = "String")]
        #[schemars(with = "String", extend("pattern" = "^[0-7][0-9A-HJKMNP-TV-Z]{25}$"))]
        pub struct $name(Ulid);

        impl $name {
            /// A new id from the wall clock (milliseconds since 1970, UTC) and 80 random bits, both given by the caller.
            #[must_use]
            pub const fn new(milliseconds: u64, random: u128) -> Self {
                Self(Ulid::from_parts(milliseconds, random))
            }

            /// The wall clock when it was made, milliseconds since 1970, UTC.
            #[must_use]
            pub const fn milliseconds(self) -> u64 {
                self.0.timestamp_ms()
            }
        }

        impl From<$name> for String {
            fn from(id: $name) -> Self {
                id.to_string()
            }
        }

        impl TryFrom<String> for $name {
            type Error = NotAnId;
            fn try_from(text: String) -> Result<Self, NotAnId> {
                text.parse()
            }
        }

        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                self.0.fmt(f)
            }
        }

        impl FromStr for $name {
            type Err = NotAnId;
            fn from_str(text: &str) -> Result<Self, NotAnId> {
                Ulid::from_string(text).map(Self).map_err(|_| NotAnId(text.to_owned()))
            }
        }
    )+};
}

id! {
    /// A plan: one gathering and all that hangs on it.
    PlanId
    /// A dish on the table.
    DishId
    /// A piece of a dish.
    PieceId
    /// A cooker.
    CookerId
    /// Somebody who lends a hand.
    CrewId
    /// An entry of the journal.
    EntryId
    /// A thing of one's own on the shopping list.
    ExtraId
    /// A step of one's own on the run sheet.
    OwnStepId
}

/// A copy of the app: a random number made once on each phone.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct ReplicaId(u64);

impl ReplicaId {
    /// A replica by its random number.
    #[must_use]
    pub const fn new(random: u64) -> Self {
        Self(random)
    }

    /// The random number.
    #[must_use]
    pub const fn get(self) -> u64 {
        self.0
    }
}

impl fmt::Display for ReplicaId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:016x}", self.0)
    }
}
