//! Rows of a comparison: what came out, what was wanted, how near it must be, and how far off it is known to be.

/// A table of rows; prints every error and fails at the end if any row is out of line.
pub(crate) struct Rows {
    title: String,
    faults: Vec<String>,
}

impl Rows {
    pub(crate) fn new(title: &str, source: &str) -> Self {
        assert!(!source.is_empty(), "{title} has no source");
        println!("{title}\n  source: {source}");
        Self {
            title: title.to_owned(),
            faults: Vec::new(),
        }
    }

    /// A row that holds.
    pub(crate) fn holds(&mut self, name: &str, got: f64, wanted: f64, tolerance: f64) {
        let error = got - wanted;
        println!("  {name}: {got:.4}, wanted {wanted:.4} ± {tolerance:.4}, error {error:+.4}");
        if error.is_nan() || error.abs() > tolerance {
            self.faults.push(format!(
                "{name}: off by {error:+.4}, allowed {tolerance:.4}"
            ));
        }
    }

    /// A row that is known not to hold: `miss` is the error on record. It may shrink, never grow; a record that is more
    /// than a tenth too large, or no longer needed, has to be brought up to date.
    pub(crate) fn known_miss(
        &mut self,
        name: &str,
        got: f64,
        wanted: f64,
        tolerance: f64,
        miss: f64,
    ) {
        let error = got - wanted;
        println!(
            "  {name}: {got:.4}, wanted {wanted:.4} ± {tolerance:.4}, error {error:+.4}, KNOWN MISS of {miss:+.4}"
        );
        let fault = if error.is_nan() {
            "is not a number".to_owned()
        } else if error.abs() <= tolerance {
            format!(
                "holds now (off by {error:+.4}): take the known miss of {miss:+.4} off the record"
            )
        } else if error.signum() != miss.signum() || error.abs() > miss.abs() {
            format!("misses by {error:+.4}, more than the {miss:+.4} on record")
        } else if error.abs() < 0.9 * miss.abs() {
            format!("misses by only {error:+.4}: lower the {miss:+.4} on record")
        } else {
            return;
        };
        self.faults.push(format!("{name}: {fault}"));
    }

    /// The same row, with or without a miss on record.
    pub(crate) fn row(
        &mut self,
        name: &str,
        got: f64,
        wanted: f64,
        tolerance: f64,
        miss: Option<f64>,
    ) {
        match miss {
            None => self.holds(name, got, wanted, tolerance),
            Some(miss) => self.known_miss(name, got, wanted, tolerance, miss),
        }
    }
}

impl Drop for Rows {
    fn drop(&mut self) {
        if !std::thread::panicking() {
            let faults = self.faults.join("\n  ");
            assert!(self.faults.is_empty(), "{}:\n  {faults}", self.title);
        }
    }
}
