//! Numbers for the style sheet, short and always with a point.

/// Hours along the axis.
#[must_use]
pub fn hours(hours: f64) -> String {
    plain(hours, 4)
}

/// Pixels without their unit.
#[must_use]
pub fn pixels(pixels: f64) -> String {
    plain(pixels, 1)
}

/// A share of one as a percentage.
#[must_use]
pub fn percent(share: f64) -> String {
    format!("{}%", plain(share * 100.0, 2))
}

fn plain(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    match text {
        "-0" | "" => "0".to_owned(),
        text => text.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_short() {
        assert_eq!(hours(8.0), "8");
        assert_eq!(hours(-0.000_001), "0");
        assert_eq!(hours(1.0 / 3.0), "0.3333");
        assert_eq!(pixels(100.0), "100");
        assert_eq!(pixels(0.0), "0");
        assert_eq!(percent(0.125), "12.5%");
    }
}
