//! Planning a cook: the sample, a plan by hand, its file, and nothing lost.

use serde_json::json;

use crate::support::{App, with_app};

#[test]
fn the_first_start_shows_when_the_sample_is_ready() {
    with_app(async |app| {
        app.open().await?;
        app.browser.sees("Harvest supper").await?;
        app.browser.sees_a_ready_window().await?;
        app.browser.press("Run sheet").await?;
        app.browser.sees("Put on").await?;
        app.browser.sees("table").await
    });
}

async fn plan_by_hand(app: &App) -> anyhow::Result<()> {
    let person = &app.browser;
    person.press("Start a plan of my own").await?;
    person.sees("No dish yet").await?;
    person
        .fill(
            "Name of the gathering",
            "Midsummer with a very long name for a narrow screen",
        )
        .await?;
    person.press("Add a dish").await?;
    person.choose("Pork shoulder butt").await?;
    person.choose("Kettle").await?;
    person.choose("Yes, intact").await?;
    person.press("Add: Pork shoulder butt").await?;
    person.sees_a_ready_window().await?;
    person.sees("Put pork shoulder butt on").await?;
    person.saved().await
}

#[test]
fn a_plan_made_by_hand_is_there_after_a_reload_and_without_a_server() {
    with_app(async |app| {
        app.open().await?;
        app.wait_until_kept().await?;
        plan_by_hand(app).await?;
        app.reload().await?;
        app.browser.sees("Midsummer with a very long name").await?;
        app.browser.sees_a_ready_window().await?;

        app.stop_server();
        app.forgive("ERR_CONNECTION_REFUSED");
        app.reload().await?;
        app.browser.sees("Midsummer with a very long name").await?;
        app.browser.sees_a_ready_window().await
    });
}

#[test]
fn a_plan_handed_on_as_a_file_comes_back_the_same_after_everything_is_wiped() {
    with_app(async |app| {
        app.open().await?;
        plan_by_hand(app).await?;
        // Neither a share sheet nor a download can be looked into from here: the text is taken on its way out.
        app.browser
            .execute(
                "navigator.canShare = undefined;
                 const make = URL.createObjectURL;
                 URL.createObjectURL = (blob) => { blob.text().then((text) => { window.sentText = text; }); return make(blob); };",
                vec![],
            )
            .await?;
        app.browser.press("Hand this plan on").await?;
        app.browser
            .until("return typeof window.sentText === 'string'")
            .await?;
        let text = app
            .browser
            .execute("return window.sentText", vec![])
            .await?;

        app.browser
            .run_async(
                "localStorage.clear();
                 for (const { name } of await indexedDB.databases()) indexedDB.deleteDatabase(name);",
                vec![],
            )
            .await?;
        app.reload().await?;
        app.browser.sees("Harvest supper").await?;
        app.browser
            .execute(
                "const files = new DataTransfer();
                 files.items.add(new File([arguments[0]], 'plan.json', { type: 'application/json' }));
                 const field = document.querySelector('input[type=file]');
                 field.files = files.files;
                 field.dispatchEvent(new Event('change', { bubbles: true }));",
                vec![text.clone()],
            )
            .await?;
        app.browser.sees("Midsummer with a very long name").await?;
        app.browser.sees_a_ready_window().await?;
        let sent: serde_json::Value = serde_json::from_str(text.as_str().unwrap_or_default())?;
        assert_eq!(sent["format"], json!("longcook-plan"));
        Ok(())
    });
}

#[test]
fn a_wrong_file_is_told_and_changes_nothing() {
    with_app(async |app| {
        app.open().await?;
        app.browser.sees("Harvest supper").await?;
        for text in [
            "not a plan",
            "{\"format\":\"longcook-plan\",\"version\":99}",
        ] {
            app.browser
                .execute(
                    "const files = new DataTransfer();
                     files.items.add(new File([arguments[0]], 'plan.json'));
                     const field = document.querySelector('input[type=file]');
                     field.files = files.files;
                     field.dispatchEvent(new Event('change', { bubbles: true }));",
                    vec![json!(text)],
                )
                .await?;
            app.browser
                .until("return document.querySelector('[role=alert], [role=status], dialog[open]')?.innerText.length > 20")
                .await?;
        }
        app.browser.sees("Harvest supper").await?;
        app.browser.sees_a_ready_window().await
    });
}

#[test]
fn killing_the_browser_right_after_a_change_is_confirmed_loses_nothing() {
    with_app(async |app| {
        app.open().await?;
        app.browser.sees("Harvest supper").await?;
        for kill in 1..=10 {
            let name = format!("Supper number {kill}");
            app.browser.fill("Name of the gathering", &name).await?;
            app.browser.sees(&name).await?;
            app.browser.saved().await?;
            app.kill_browser_and_start_again().await?;
            app.open().await?;
            app.browser.sees(&name).await?;
        }
        Ok(())
    });
}
