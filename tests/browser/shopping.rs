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

/// Taps the first label that begins with these words.
async fn tap(app: &App, words: &str) -> anyhow::Result<()> {
    let script = format!(
        "const label = [...document.querySelectorAll('label')].find((label) => label.textContent.trim().startsWith(\"{words}\"));
         label?.click(); return Boolean(label)"
    );
    app.browser.until(&script).await
}

#[test]
fn another_piece_is_tried_taken_and_given_back_with_no_signal() {
    with_app(async |app| {
        app.open().await?;
        app.browser.sees_a_ready_window().await?;
        app.wait_until_kept().await?;
        app.stop_server();
        app.forgive("ERR_CONNECTION_REFUSED");
        for (light, unit, bought, one, all) in [
            ("Sun", "lb, oz", "16.8\u{a0}lb", "11", "22\u{a0}lb"),
            ("Day", "kg, g", "7.6\u{a0}kg", "5", "10\u{a0}kg"),
        ] {
            app.browser.press(light).await?;
            app.browser.press("Gathering").await?;
            tap(app, unit).await?;
            app.browser.press("Shopping").await?;
            app.browser.sees(bought).await?;
            app.browser.press("The shop has another piece").await?;
            app.browser.sees("What does the shop have?").await?;
            app.browser.fill("Weight of one", "400").await?;
            app.browser.sees("weighs that").await?;
            app.browser.fill("Weight of one", one).await?;
            app.browser.sees("earlier than planned").await?;
            app.browser.sees("Same start,").await?;
            app.browser.sees("Cut in two, on at").await?;
            let found = app.browser.serious_barriers().await?;
            assert_eq!(found, Vec::<String>::new(), "the slip by {light}");
            app.browser.press("Take this piece").await?;
            app.browser.sees(all).await?;
            app.browser.press("Undo: another piece").await?;
            app.browser.sees(bought).await?;
        }
        Ok(())
    });
}

#[test]
fn frozen_meat_is_never_thawed_on_the_counter() {
    with_app(async |app| {
        app.open().await?;
        app.browser.sees_a_ready_window().await?;
        app.browser.press("Shopping").await?;
        app.browser.sees("buy by").await?;
        app.browser.press("The shop has another piece").await?;
        app.browser.sees("What does the shop have?").await?;
        tap(app, "Frozen").await?;
        app.browser.press("Take this piece").await?;
        app.browser.sees("frozen:").await?;
        app.browser
            .execute("document.querySelector('.buy details').open = true", vec![])
            .await?;
        tap(app, "On the counter").await?;
        app.browser.sees("while the inside is still frozen").await?;
        app.browser
            .until("return !document.querySelector('.buy input[type=radio]:checked')?.closest('label').textContent.includes('counter')")
            .await?;
        Ok(())
    });
}
