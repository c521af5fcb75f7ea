//! A newer version waits for the person, and a torn one is never taken.

use std::fs;

use anyhow::Context;
use serde_json::{Value, json};

use crate::support::{App, with_app};

/// Puts another version on the server, which can be told by a mark on the page.
fn publish(app: &App, mark: &str) -> anyhow::Result<()> {
    let boot = app.files().join("boot.js");
    let text = fs::read_to_string(&boot)?;
    fs::write(
        &boot,
        format!("{text}\ndocument.documentElement.dataset.mark = '{mark}';\n"),
    )?;
    xtask::precache::write(app.files(), &app.service_worker_template()?)
}

async fn mark(app: &App) -> anyhow::Result<Value> {
    Ok(app
        .browser
        .execute(
            "return document.documentElement.dataset.mark ?? null",
            vec![],
        )
        .await?)
}

/// Looks for a newer version, and tells what became of it: `installed` or `redundant`.
async fn look_for_update(app: &App) -> anyhow::Result<Value> {
    app.browser
        .run_async(
            "const registration = await navigator.serviceWorker.getRegistration();
             const found = new Promise((resolve) => registration.addEventListener('updatefound', () => {
               const next = registration.installing;
               next.addEventListener('statechange', () => resolve(next.state), { once: true });
             }));
             await registration.update();
             return await found;",
            vec![],
        )
        .await
}

async fn versions_kept(app: &App) -> anyhow::Result<Value> {
    app.browser
        .run_async("return (await caches.keys()).length", vec![])
        .await
}

#[test]
fn a_newer_version_waits_until_a_person_switches() {
    with_app(async |app| {
        app.open().await?;
        app.wait_until_kept().await?;
        publish(app, "newer")?;
        assert_eq!(look_for_update(app).await?, json!("installed"));

        app.reload().await?;
        assert_eq!(
            mark(app).await?,
            Value::Null,
            "the old version is still the one in use"
        );
        assert_eq!(versions_kept(app).await?, json!(2));

        app.browser
            .sees("A newer Longcook is on this device")
            .await?;
        app.browser.press("Switch to it").await?;
        app.browser
            .until("return document.documentElement.dataset.mark === 'newer'")
            .await
            .context("the newer version runs")?;
        app.browser
            .until("return caches.keys().then((names) => names.length === 1)")
            .await
            .context("the old version's files are given back")?;
        Ok(())
    });
}

#[test]
fn a_switch_that_the_browser_holds_up_is_told() {
    with_app(async |app| {
        app.open().await?;
        app.wait_until_kept().await?;
        publish(app, "newer")?;
        assert_eq!(look_for_update(app).await?, json!("installed"));
        app.reload().await?;
        app.browser
            .sees("A newer Longcook is on this device")
            .await?;
        // What a busy old version comes to: the newer one is asked and does not take over.
        app.browser
            .execute("ServiceWorker.prototype.postMessage = () => {};", vec![])
            .await?;
        app.browser.press("Switch to it").await?;
        app.browser.sees("The old one is still busy").await?;
        assert_eq!(mark(app).await?, Value::Null);
        Ok(())
    });
}

#[test]
fn a_version_with_a_foreign_file_is_not_taken() {
    with_app(async |app| {
        app.open().await?;
        app.wait_until_kept().await?;
        app.forgive("not the file that belongs to version");
        publish(app, "torn")?;
        // The server has the new list but, halfway through an upload, still another file.
        fs::write(app.files().join("worker_boot.js"), "// half a file")?;
        assert_eq!(look_for_update(app).await?, json!("redundant"));
        app.stop_server();
        app.forgive("ERR_CONNECTION_REFUSED");
        app.reload().await?;
        assert_eq!(mark(app).await?, Value::Null);
        Ok(())
    });
}
