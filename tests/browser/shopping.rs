//! The trip to the shop: ticks and things of one's own, with the server gone.

use crate::support::{App, with_app};

async fn tick(app: &App, thing: &str) -> anyhow::Result<()> {
    let script = format!(
        "const tick = document.querySelector('.tick[aria-label=\"{thing}\"]'); tick?.click(); return Boolean(tick)"
    );
    app.browser.until(&script).await
}

async fn is_ticked(app: &App, thing: &str) -> anyhow::Result<()> {
    let script = format!(
        "return document.querySelector('.tick[aria-label=\"{thing}\"]')?.getAttribute('aria-checked') === 'true'"
    );
    app.browser.until(&script).await
}

async fn order(app: &App) -> anyhow::Result<serde_json::Value> {
    let script = "return [...document.querySelectorAll('.tick')].map((tick) => tick.ariaLabel)";
    Ok(app.browser.execute(script, vec![]).await?)
}

#[test]
fn a_trip_to_the_shop_with_no_signal() {
    with_app(async |app| {
        app.open().await?;
        app.browser.sees_a_ready_window().await?;
        app.wait_until_kept().await?;
        app.stop_server();
        app.forgive("ERR_CONNECTION_REFUSED");
        app.browser.press("Shopping").await?;
        app.browser.sees("Butcher").await?;
        app.browser.sees("16.8\u{a0}lb").await?;
        let before = order(app).await?;
        tick(app, "Salt").await?;
        app.browser
            .execute("document.querySelector('.buy details').open = true", vec![])
            .await?;
        app.browser.fill("Price", "-3").await?;
        app.browser.sees("This cannot be a price").await?;
        app.browser.fill("Price", "4").await?;
        // 7.6 kg at 4 dollars for 0.45359237 kg.
        app.browser.sees("$67.02").await?;
        app.browser.fill("What is it?", "Pickled beetroot").await?;
        app.browser.press("Put it on the list").await?;
        app.browser.sees("Pickled beetroot").await?;
        tick(app, "Pickled beetroot").await?;
        app.browser.saved().await?;
        app.reload().await?;
        app.browser.press("Shopping").await?;
        is_ticked(app, "Salt").await?;
        is_ticked(app, "Pickled beetroot").await?;
        let after = order(app).await?;
        let (before, after) = (before.as_array(), after.as_array());
        let stays = before.zip(after).is_some_and(|(before, after)| {
            let kept = after.iter().filter(|thing| before.contains(thing));
            kept.eq(before.iter())
        });
        assert!(stays, "a line moved: {before:?} {after:?}");
        Ok(())
    });
}
