//! A newer version waits for the person, and a torn one is never taken.

use std::fs;

use anyhow::Context;
use serde_json::{Value, json};

use crate::support::{App, with_app};

/// How often a person starts the page again before the switch counts as failed.
const RELOADS: usize = 5;

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
            .run_async(
                "const registration = await navigator.serviceWorker.getRegistration();
                 registration.waiting.postMessage('switch');",
                vec![],
            )
            .await?;
        // A browser may let the old version end what it is still handing out before the new one takes over; whoever
        // starts the page again ends that.
        for _ in 0..RELOADS {
            app.reload().await?;
            let names = app.browser.run_async(
                "await new Promise((resume) => setTimeout(resume, 2000)); return (await caches.keys()).length",
                vec![],
            );
            // The page starts again by itself once the new version has taken over: then nobody answers.
            if names.await.ok() == Some(json!(1)) {
                break;
            }
        }
        app.browser
            .until("return caches.keys().then((names) => names.length === 1)")
            .await
            .context("the old version's files are given back")?;
        app.reload().await?;
        assert_eq!(mark(app).await?, json!("newer"));
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
