//! The currency in which a plan's prices stand.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use std::fmt;
use std::str::FromStr;
use thiserror::Error;

/// A currency by its three letters.
///
/// Source: ISO 4217. How many digits its smaller coins take is left to the device, which knows the standard's table.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(into = "String", try_from = "String")]
#[schemars(with = "String", extend("pattern" = "^[A-Z]{3}$"))]
pub struct Currency([u8; 3]);

/// Text that is not the code of a currency.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
#[error("“{0}” is not a currency: three large letters are wanted, such as EUR")]
pub struct NotACurrency(pub String);

impl FromStr for Currency {
    type Err = NotACurrency;

    fn from_str(text: &str) -> Result<Self, NotACurrency> {
        match text.as_bytes() {
            [a, b, c] if text.bytes().all(|letter| letter.is_ascii_uppercase()) => {
                Ok(Self([*a, *b, *c]))
            }
            _ => Err(NotACurrency(text.to_owned())),
        }
    }
}

impl fmt::Display for Currency {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0
            .iter()
            .try_for_each(|letter| write!(f, "{}", char::from(*letter)))
    }
}

impl From<Currency> for String {
    fn from(currency: Currency) -> Self {
        currency.to_string()
    }
}

impl TryFrom<String> for Currency {
    type Error = NotACurrency;
    fn try_from(text: String) -> Result<Self, NotACurrency> {
        text.parse()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn three_large_letters_and_nothing_else() {
        for code in ["EUR", "GBP", "JPY"] {
            assert_eq!(
                code.parse::<Currency>().map(String::from),
                Ok(code.to_owned())
            );
        }
        for text in ["", "EU", "eur", "EURO", "E1R", "€€€"] {
            assert!(text.parse::<Currency>().is_err(), "{text}");
        }
    }
}
