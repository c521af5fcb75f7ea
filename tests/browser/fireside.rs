//! The day in the yard: entries in two taps, kept whatever happens to the browser.

use crate::support::{App, with_app};

/// The entry that the line over the keys offers to take back; it does so only once the entry is on the disk.
async fn kept(app: &App, entry: &str) -> anyhow::Result<()> {
    app.browser
        .until(&format!(
            "const last = document.querySelector('button.last');
             return Boolean(last?.textContent.includes('{entry}') && last.textContent.includes('undo'))"
        ))
        .await
}

/// The journal, the last entry first, as a person reads it; struck ones in brackets.
async fn journal(app: &App) -> anyhow::Result<Vec<String>> {
    let lines = app
        .browser
        .execute(
            "return [...document.querySelectorAll('.entry')].map((entry) => {
               const said = entry.querySelector('span').textContent.replace(/ at \\d.*$/, '');
               return entry.querySelector('del') ? `(${said})` : said;
             })",
            vec![],
        )
        .await?;
    Ok(serde_json::from_value(lines)?)
}

async fn go_to_fireside(app: &App) -> anyhow::Result<()> {
    app.open().await?;
    app.browser.sees_a_ready_window().await?;
    app.browser.press("Fireside").await?;
    app.browser.sees("Nothing logged yet").await
}

async fn put_on(app: &App) -> anyhow::Result<()> {
    app.browser.press("On").await?;
    app.browser.press("It went on").await?;
    kept(app, "on at").await
}

#[test]
fn an_entry_that_is_called_kept_outlives_the_browser() {
    with_app(async |app| {
        go_to_fireside(app).await?;
        put_on(app).await?;
        app.browser.press("Core").await?;
        app.browser.press("42").await?;
        kept(app, "core 42").await?;
        app.kill_browser_and_start_again().await?;
        app.open_at("#fireside").await?;
        kept(app, "core 42").await?;
        let entries = journal(app).await?;
        assert!(entries[0].contains("core 42"), "{entries:?}");
        assert!(entries[1].ends_with(": on"), "{entries:?}");
        assert_eq!(entries.len(), 2, "{entries:?}");
        Ok(())
    });
}

#[test]
fn nothing_is_edited_away() {
    with_app(async |app| {
        go_to_fireside(app).await?;
        put_on(app).await?;
        app.browser.press("Spray").await?;
        app.browser.press("Sprayed").await?;
        kept(app, "sprayed").await?;
        let undo = "document.querySelector('button.last').click()";
        app.browser.execute(undo, vec![]).await?;
        kept(app, "on at").await?;
        let struck = journal(app).await?;
        assert!(
            struck[0].starts_with('(') && struck[0].contains("sprayed"),
            "{struck:?}"
        );
        app.browser
            .execute("document.querySelector('.entry').click()", vec![])
            .await?;
        app.browser.press("Bring it back").await?;
        kept(app, "sprayed").await?;
        app.reload().await?;
        kept(app, "sprayed").await?;
        let back = journal(app).await?;
        assert!(
            back[0].contains("sprayed") && !back[0].starts_with('('),
            "{back:?}"
        );
        Ok(())
    });
}
