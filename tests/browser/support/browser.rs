//! A browser the size of a phone.

use std::{fs, ops::Deref, path::Path, time::Duration};

use anyhow::Context;
use fantoccini::{Client, ClientBuilder};
use hyper_util::client::legacy::connect::HttpConnector;
use serde_json::{Value, json};
use tokio::time::Instant;

use super::{
    console::{Message, Vendor},
    path,
    process::kill_tree,
};

/// How long a thing may take before a test gives up; a busy machine is slow, and no test measures time.
const PATIENCE: Duration = Duration::from_secs(30);

/// One browser with its first window. Everything that a WebDriver client can do is there as well.
pub(crate) struct Browser {
    client: Client,
    process: u32,
}

impl Deref for Browser {
    type Target = Client;

    fn deref(&self) -> &Client {
        &self.client
    }
}

impl Browser {
    /// Starts one with the profile in this folder.
    pub(crate) async fn start(driver: &str, profile: &Path) -> anyhow::Result<Self> {
        let Value::Object(wanted) = json!({
            "browserName": "chrome",
            "goog:loggingPrefs": { "browser": "ALL" },
            "goog:chromeOptions": {
                "binary": path("LONGCOOK_CHROMIUM"),
                "args": [
                    "--headless", "--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage", "--no-first-run",
                    "--disable-background-networking", "--disable-component-update", "--disable-sync",
                    format!("--user-data-dir={}", profile.display()),
                ],
                "mobileEmulation": {
                    "deviceMetrics": { "width": 390, "height": 844, "pixelRatio": 3.0, "touch": true, "mobile": true },
                },
            },
        }) else {
            unreachable!("an object was written above")
        };
        let mut builder = ClientBuilder::new(HttpConnector::new());
        builder.capabilities(wanted);
        // The very first browsers on a machine, two at once, have been seen to trip over each other.
        let client = match builder.connect(driver).await {
            Ok(client) => client,
            Err(error) => {
                eprintln!("the browser did not start, trying once more: {error}");
                builder
                    .connect(driver)
                    .await
                    .context("the browser did not start")?
            }
        };
        let process = client
            .capabilities()
            .and_then(|told| told.get("goog:processID"))
            .and_then(Value::as_u64)
            .and_then(|id| u32::try_from(id).ok())
            .context("the driver does not tell the browser's process")?;
        Ok(Self { client, process })
    }

    /// Closes it as a person would.
    pub(crate) async fn close(self) -> anyhow::Result<()> {
        Ok(self.client.close().await?)
    }

    /// Kills every process of it at once.
    pub(crate) fn kill(self) {
        kill_tree(self.process);
    }

    /// A command of the browser's own tools for developers.
    pub(crate) async fn devtools(&self, command: &str, parameters: Value) -> anyhow::Result<Value> {
        Ok(self
            .client
            .issue_cmd(Vendor::devtools(command, &parameters))
            .await?)
    }

    /// The messages in the console since the last time.
    pub(crate) async fn console(&self) -> anyhow::Result<Vec<Message>> {
        let messages = self.client.issue_cmd(Vendor::console()).await?;
        Ok(serde_json::from_value(messages)?)
    }

    /// Runs the body of an async function in the page; what it returns or throws comes back.
    pub(crate) async fn run_async(
        &self,
        body: &str,
        arguments: Vec<Value>,
    ) -> anyhow::Result<Value> {
        let script = format!(
            "const done = arguments[arguments.length - 1]; const given = [...arguments].slice(0, -1);
             (async (...given) => {{ {body} }})(...given).then(
               (value) => done({{ value: value ?? null }}),
               (error) => done({{ error: String(error) }}));"
        );
        let mut answer = self.client.execute_async(&script, arguments).await?;
        match answer.get("error").and_then(Value::as_str) {
            Some(error) => anyhow::bail!("in the page: {error}"),
            None => Ok(answer["value"].take()),
        }
    }

    /// Waits until this script returns true.
    pub(crate) async fn until(&self, script: &str) -> anyhow::Result<()> {
        let end = Instant::now() + PATIENCE;
        loop {
            let answer = self.client.execute(script, vec![]).await;
            if matches!(answer, Ok(Value::Bool(true))) {
                return Ok(());
            }
            if Instant::now() > end {
                anyhow::bail!("waited {PATIENCE:?} in vain for: {script} (last: {answer:?})");
            }
            tokio::time::sleep(Duration::from_millis(50)).await;
        }
    }

    /// What axe-core counts as serious or critical: the rule, what it says, and the first element.
    pub(crate) async fn serious_barriers(&self) -> anyhow::Result<Vec<String>> {
        let file = path("LONGCOOK_AXE");
        let script = fs::read_to_string(&file).with_context(|| file.display().to_string())?;
        self.client.execute(&script, vec![]).await?;
        let found = self
            .run_async(
                "const { violations } = await axe.run();
                 return violations
                   .filter(({ impact }) => impact === 'serious' || impact === 'critical')
                   .map(({ id, help, nodes }) => `${id}: ${help}: ${nodes[0].html}`);",
                vec![],
            )
            .await?;
        Ok(serde_json::from_value(found)?)
    }
}
