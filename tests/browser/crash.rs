//! A browser that dies and is started again with the same profile.

use crate::support::with_app;

#[test]
fn a_killed_browser_starts_the_app_again_without_a_server() {
    with_app(async |app| {
        app.open().await?;
        app.wait_until_kept().await?;
        app.stop_server();
        app.forgive("ERR_CONNECTION_REFUSED");
        app.kill_browser_and_start_again().await?;
        app.open().await
    });
}
