//! What keeps people from harm: the stop that stays until it is answered, and straight answers with no signal.

use crate::support::{App, with_app};

/// Tells on Fireside that the first dish left the fridge three hours ago.
async fn out_of_the_fridge_three_hours_ago(app: &App) -> anyhow::Result<()> {
    app.browser.press("Fireside").await?;
    app.browser.press("More").await?;
    app.browser.choose("At").await?;
    app.browser
        .until(
            "const field = document.querySelector('dialog[open] input[type=time]');
             if (!field) return false;
             const then = new Date(Date.now() - 3 * 3600 * 1000);
             const two = (number) => String(number).padStart(2, '0');
             field.value = `${two(then.getHours())}:${two(then.getMinutes())}`;
             field.dispatchEvent(new Event('change', { bubbles: true }));
             return true",
        )
        .await?;
    app.browser.press("Out of the fridge").await?;
    app.browser.sees("Stop. ").await
}

async fn no_stop(app: &App) -> anyhow::Result<()> {
    app.browser
        .until("return !document.querySelector('.halt')")
        .await
}

#[test]
fn a_stop_stays_until_it_is_said_what_happened_and_blocks_no_log() {
    with_app(async |app| {
        app.open().await?;
        app.browser.sees_a_ready_window().await?;
        out_of_the_fridge_three_hours_ago(app).await?;
        for screen in ["Gathering", "Shopping", "Run sheet", "Fireside"] {
            app.browser.press(screen).await?;
            app.browser.sees("Stop. ").await?;
            app.browser.sees("hrow it away").await?;
        }
        for light in ["Day", "Night", "Sun"] {
            app.browser.press(light).await?;
            let found = app.browser.serious_barriers().await?;
            assert_eq!(found, Vec::<String>::new(), "a stop by {light}");
        }
        app.browser.saved().await?;
        app.reload().await?;
        app.browser.sees("Stop. ").await?;
        // The log keys are there all the same.
        app.browser.press("More").await?;
        app.browser.press("Close").await?;
        app.browser.sees("Stop. ").await?;
        app.browser.press("The log is wrong").await?;
        app.browser.press("Close").await?;
        app.browser.sees("Stop. ").await?;
        app.browser.press("The log is wrong").await?;
        app.browser.press("Not so: strike it out").await?;
        no_stop(app).await
    });
}

#[test]
fn what_was_thrown_away_stops_nobody() {
    with_app(async |app| {
        app.open().await?;
        app.browser.sees_a_ready_window().await?;
        out_of_the_fridge_three_hours_ago(app).await?;
        app.browser.press("It is thrown away").await?;
        app.browser.press("I threw it away").await?;
        no_stop(app).await
    });
}

#[test]
fn a_question_is_answered_with_no_signal() {
    with_app(async |app| {
        app.open().await?;
        app.browser.sees_a_ready_window().await?;
        app.wait_until_kept().await?;
        app.stop_server();
        app.forgive("ERR_CONNECTION_REFUSED");
        app.browser.press("In doubt?").await?;
        app.browser.press("It was left out").await?;
        app.browser.sees("Still needed: Is it raw?").await?;
        app.browser
            .execute(
                "[...document.querySelectorAll('label')].find((label) => label.textContent.trim() === 'Yes').click()",
                vec![],
            )
            .await?;
        app.browser.press("Answer me").await?;
        app.browser
            .sees("Nobody knows how long it was too warm.")
            .await?;
        app.browser.fill("Hours", "1").await?;
        app.browser.sees("It can work, with care.").await?;
        app.browser.fill("Hours", "3").await?;
        app.browser.sees("Throw it away.").await?;
        app.browser.sees("Who to ask").await?;
        for light in ["Day", "Night", "Sun"] {
            app.browser.press(light).await?;
            let found = app.browser.serious_barriers().await?;
            assert_eq!(found, Vec::<String>::new(), "an answer by {light}");
        }
        app.browser.press("Another question").await?;
        app.browser.sees("Every rule, with its source").await?;
        let found = app.browser.serious_barriers().await?;
        assert_eq!(found, Vec::<String>::new(), "the questions");
        Ok(())
    });
}
