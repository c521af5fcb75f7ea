//! The app starts cleanly and can be put on the home screen.

use serde_json::{Value, json};

use crate::support::with_app;

#[test]
fn starts_and_says_nothing_in_the_console() {
    // `with_app` ends by reading the console: anything that counts as an error there fails the test.
    with_app(async |app| {
        app.open().await?;
        assert_eq!(app.browser.title().await?, "Longcook");
        Ok(())
    });
}

#[test]
fn can_be_installed() {
    with_app(async |app| {
        app.open().await?;
        app.wait_until_kept().await?;
        let faults = app
            .browser
            .devtools("Page.getInstallabilityErrors", json!({}))
            .await?;
        assert_eq!(faults["installabilityErrors"], json!([]));
        let manifest = app
            .browser
            .devtools("Page.getAppManifest", json!({}))
            .await?;
        assert_eq!(manifest["errors"], json!([]));
        assert_ne!(manifest["data"], Value::Null);
        Ok(())
    });
}
