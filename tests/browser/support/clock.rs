//! Another time of day for the page, as a phone whose clock is set to it would have.

use serde_json::json;

use super::browser::Browser;

/// `Date` in the page is so many milliseconds ahead of the machine's; `window.ahead` adds to it.
const SHIFTED: &str = "(() => {
  const Machine = Date;
  const shift = SHIFT;
  window.ahead = 0;
  window.Date = class extends Machine {
    constructor(...given) {
      if (given.length === 0) super(Machine.now() + shift + window.ahead);
      else super(...given);
    }
    static now() { return Machine.now() + shift + window.ahead; }
  };
})()";

impl Browser {
    /// From the next page on, the clock is ahead by so many minutes.
    pub(crate) async fn set_clock_ahead(&self, minutes: i64) -> anyhow::Result<()> {
        let source = SHIFTED.replace("SHIFT", &(minutes * 60_000).to_string());
        self.devtools(
            "Page.addScriptToEvaluateOnNewDocument",
            json!({ "source": source }),
        )
        .await?;
        Ok(())
    }

    /// Lets time pass on the page, which then looks at the clock as one does that was out of sight.
    pub(crate) async fn pass_minutes(&self, minutes: i64) -> anyhow::Result<()> {
        self.execute(
            "window.ahead += arguments[0] * 60000;
             document.dispatchEvent(new Event('visibilitychange', { bubbles: true }));",
            vec![json!(minutes)],
        )
        .await?;
        Ok(())
    }
}
