//! After one visit the app needs no server.

use std::collections::BTreeSet;

use serde_json::json;
use walkdir::WalkDir;

use crate::support::with_app;

#[test]
fn starts_again_with_the_server_gone() {
    with_app(async |app| {
        app.open().await?;
        app.wait_until_kept().await?;
        app.stop_server();
        app.forgive("ERR_CONNECTION_REFUSED");

        app.reload().await?;
        // A new page and not only a reload, with an address that a link may carry.
        app.browser.goto("about:blank").await?;
        app.open_at("?from=home-screen#somewhere").await?;
        Ok(())
    });
}

#[test]
fn keeps_every_file_of_the_bundle() {
    with_app(async |app| {
        app.open().await?;
        app.wait_until_kept().await?;
        let kept = app
            .browser
            .run_async(
                "const names = await caches.keys(); const cache = await caches.open(names[0]);
                 const requests = await cache.keys();
                 return { caches: names.length, paths: requests.map((request) => new URL(request.url).pathname) };",
                vec![],
            )
            .await?;
        assert_eq!(kept["caches"], json!(1));
        let kept: BTreeSet<String> = serde_json::from_value(kept["paths"].clone())?;

        let mut files = BTreeSet::new();
        for entry in WalkDir::new(app.files()) {
            let entry = entry?;
            if entry.file_type().is_file() {
                let name = entry.path().strip_prefix(app.files())?.to_string_lossy();
                files.insert(format!("/{name}"));
            }
        }
        // The page is kept under the address of the folder; the service worker itself is the browser's business.
        assert!(files.remove("/index.html") && files.insert("/".to_owned()));
        assert!(files.remove("/sw.js"));
        assert_eq!(kept, files);
        Ok(())
    });
}
