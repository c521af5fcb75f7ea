//! What the page has said in its console.

use fantoccini::wd::WebDriverCompatibleCommand;
use serde::Deserialize;
use serde_json::json;

/// One message.
#[derive(Debug, Clone, Deserialize)]
pub(crate) struct Message {
    /// `SEVERE` for errors, `WARNING`, `INFO`.
    pub(crate) level: String,
    /// Where it was said, and what.
    pub(crate) message: String,
}

/// Asks the driver for a command beyond the standard: `session/ID/` and these words.
#[derive(Debug)]
pub(crate) struct Vendor {
    pub(crate) path: &'static str,
    pub(crate) body: serde_json::Value,
}

impl Vendor {
    /// The messages since the last time that this was asked.
    pub(crate) fn console() -> Self {
        Self {
            path: "se/log",
            body: json!({ "type": "browser" }),
        }
    }

    /// A command of the browser's own tools for developers.
    pub(crate) fn devtools(command: &str, parameters: &serde_json::Value) -> Self {
        Self {
            path: "goog/cdp/execute",
            body: json!({ "cmd": command, "params": parameters }),
        }
    }
}

impl WebDriverCompatibleCommand for Vendor {
    fn endpoint(
        &self,
        base: &url::Url,
        session: Option<&str>,
    ) -> Result<url::Url, url::ParseError> {
        base.join(&format!(
            "session/{}/{}",
            session.unwrap_or_default(),
            self.path
        ))
    }

    fn method_and_body(&self, _url: &url::Url) -> (http::Method, Option<String>) {
        (http::Method::POST, Some(self.body.to_string()))
    }
}
