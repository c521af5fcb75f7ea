//! What a checker can find of what would keep people out.

use crate::support::with_app;

#[test]
fn nothing_serious_at_the_start() {
    with_app(async |app| {
        app.open().await?;
        assert_eq!(app.browser.serious_barriers().await?, Vec::<String>::new());
        Ok(())
    });
}

#[test]
fn the_checker_finds_what_is_wrong() {
    with_app(async |app| {
        app.open().await?;
        app.browser
            .execute(
                "document.body.append(Object.assign(document.createElement('img'), { src: 'icons/longcook.svg' }))",
                vec![],
            )
            .await?;
        let found = app.browser.serious_barriers().await?;
        assert!(
            found.iter().any(|line| line.starts_with("image-alt")),
            "{found:?}"
        );
        Ok(())
    });
}

#[test]
fn nothing_serious_on_any_screen_in_any_light() {
    with_app(async |app| {
        app.open().await?;
        app.browser.sees_a_ready_window().await?;
        for screen in ["Gathering", "Shopping", "Run sheet", "Fireside"] {
            app.browser.press(screen).await?;
            for light in ["Day", "Night", "Sun"] {
                app.browser.press(light).await?;
                let found = app.browser.serious_barriers().await?;
                assert_eq!(found, Vec::<String>::new(), "{screen} by {light}");
            }
        }
        Ok(())
    });
}
