//! Numbers as text and back.

/// A number with at most so many decimals, trailing zeros left out.
#[must_use]
pub fn number(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    let text = if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.')
    } else {
        &text
    };
    match text {
        "-0" => "0".to_owned(),
        text => text.replacen('-', "−", 1),
    }
}

/// Reads a number as a hurried person types it: a comma or a point, spaces around, either minus. None where it is not
/// one.
#[must_use]
pub fn parse_number(text: &str) -> Option<f64> {
    let plain: String = text
        .chars()
        .filter(|letter| !letter.is_whitespace())
        .map(|letter| match letter {
            ',' => '.',
            '−' => '-',
            other => other,
        })
        .collect();
    let digits = plain.strip_prefix('-').unwrap_or(&plain);
    let only_digits = digits.bytes().all(|b| b.is_ascii_digit() || b == b'.');
    plain
        .parse()
        .ok()
        .filter(|value: &f64| only_digits && value.is_finite())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn zeros_at_the_end_go() {
        assert_eq!(number(3.80, 2), "3.8");
        assert_eq!(number(120.0, 0), "120");
        assert_eq!(number(100.0, 1), "100");
        assert_eq!(number(-2.5, 1), "−2.5");
        assert_eq!(number(-0.01, 1), "0");
    }

    #[test]
    fn what_a_person_types_is_read() {
        assert_eq!(parse_number("3.8"), Some(3.8));
        assert_eq!(parse_number(" 3,8 "), Some(3.8));
        assert_eq!(parse_number("−4"), Some(-4.0));
        assert_eq!(parse_number("1 200"), Some(1200.0));
    }

    #[test]
    fn what_is_not_a_number_is_not_guessed_at() {
        for text in ["", "three", "3.8kg", "1.2.3", "inf", "NaN", "1e9", "-"] {
            assert_eq!(parse_number(text), None, "{text}");
        }
    }
}
