//! The app, open in a browser, served from a folder of its own.

use std::{
    fs,
    panic::{AssertUnwindSafe, catch_unwind, resume_unwind},
    path::{Path, PathBuf},
    thread,
};

use anyhow::{Context, bail};
use tempfile::TempDir;
use walkdir::WalkDir;
use xtask::site::Site;

use super::{browser::Browser, driver::Driver, path};

/// Everything that one test has to itself. The fields are dropped in this order.
pub(crate) struct App {
    pub(crate) browser: Browser,
    driver: Driver,
    site: Option<Site>,
    url: String,
    files: TempDir,
    profile: TempDir,
    forgiven: Vec<&'static str>,
}

/// Runs a test with the app in a fresh browser. Afterwards the console must hold no error, and whatever happened, the
/// browser, its driver and the server are ended; a picture of the page is kept when the test has failed.
pub(crate) fn with_app(test: impl AsyncFnOnce(&mut App) -> anyhow::Result<()>) {
    let runtime = tokio::runtime::Builder::new_current_thread()
        .enable_all()
        .build()
        .expect("a runtime for the test");
    let mut app = runtime
        .block_on(App::start())
        .expect("browser, driver and server");
    let outcome = catch_unwind(AssertUnwindSafe(|| {
        runtime.block_on(async {
            test(&mut app).await?;
            app.check_console().await
        })
    }));
    let failed = !matches!(outcome, Ok(Ok(())));
    runtime.block_on(app.end(failed));
    match outcome {
        Err(panic) => resume_unwind(panic),
        Ok(Err(error)) => panic!("{error:#}"),
        Ok(Ok(())) => {}
    }
}

impl App {
    async fn start() -> anyhow::Result<Self> {
        // A copy: tests may change what the server has.
        let files = tempfile::tempdir()?;
        copy(&path("LONGCOOK_DIST"), files.path())?;
        let site = Site::start(files.path(), 0)?;
        let profile = tempfile::tempdir()?;
        let driver = Driver::start()?;
        let browser = Browser::start(&driver.url(), profile.path()).await?;
        Ok(Self {
            browser,
            driver,
            url: site.url(),
            site: Some(site),
            files,
            profile,
            forgiven: Vec::new(),
        })
    }

    /// Opens the app and waits until it has started.
    pub(crate) async fn open(&self) -> anyhow::Result<()> {
        self.open_at("").await
    }

    /// Opens the app with something after its address.
    pub(crate) async fn open_at(&self, rest: &str) -> anyhow::Result<()> {
        self.visit(rest).await?;
        self.started().await
    }

    /// Goes to the app's address and does not wait for it to start.
    pub(crate) async fn visit(&self, rest: &str) -> anyhow::Result<()> {
        Ok(self.browser.goto(&format!("{}{rest}", self.url)).await?)
    }

    /// Reloads the page and waits until the app has started again.
    pub(crate) async fn reload(&self) -> anyhow::Result<()> {
        self.browser.refresh().await?;
        self.started().await
    }

    /// Waits until the app has started.
    pub(crate) async fn started(&self) -> anyhow::Result<()> {
        self.browser
            .until("return document.documentElement.dataset.app === 'started'")
            .await
            .context("the app did not start")
    }

    /// Waits until the service worker has kept every file and answers for this page.
    pub(crate) async fn wait_until_kept(&self) -> anyhow::Result<()> {
        self.browser
            .until("return navigator.serviceWorker.controller !== null")
            .await
            .context("the service worker did not take over")
    }

    /// The folder that the server serves, this test's own.
    pub(crate) fn files(&self) -> &Path {
        self.files.path()
    }

    /// The service worker as it is before its list of files is written.
    pub(crate) fn service_worker_template(&self) -> anyhow::Result<String> {
        let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("../public/sw.js");
        fs::read_to_string(&file).with_context(|| file.display().to_string())
    }

    /// Ends the server and its open connections; the browser is refused from now on.
    pub(crate) fn stop_server(&mut self) {
        self.site = None;
    }

    /// Kills the browser, process by process, and starts another with the same profile.
    pub(crate) async fn kill_browser_and_start_again(&mut self) -> anyhow::Result<()> {
        // The old one has to be gone before the profile is free, and a new one is needed to take its place.
        let scratch = tempfile::tempdir()?;
        let stand_in = Browser::start(&self.driver.url(), scratch.path()).await?;
        std::mem::replace(&mut self.browser, stand_in).kill();
        let next = Browser::start(&self.driver.url(), self.profile.path()).await?;
        std::mem::replace(&mut self.browser, next).close().await
    }

    /// Lets errors in the console pass that contain these words.
    pub(crate) fn forgive(&mut self, words: &'static str) {
        self.forgiven.push(words);
    }

    async fn check_console(&self) -> anyhow::Result<()> {
        let mut errors = self.browser.console().await?;
        errors.retain(|entry| entry.level == "SEVERE");
        errors.retain(|entry| {
            !self
                .forgiven
                .iter()
                .any(|words| entry.message.contains(words))
        });
        if errors.is_empty() {
            return Ok(());
        }
        bail!("errors in the console: {errors:#?}")
    }

    async fn end(self, failed: bool) {
        if failed {
            match self.keep_picture().await {
                Ok(file) => eprintln!("the page when the test failed: {}", file.display()),
                Err(error) => eprintln!("no picture of the page: {error:#}"),
            }
        }
        // The driver's drop ends what cannot be closed.
        if let Err(error) = self.browser.close().await {
            eprintln!("the browser did not close by itself: {error:#}");
        }
    }

    async fn keep_picture(&self) -> anyhow::Result<PathBuf> {
        for entry in self.browser.console().await? {
            eprintln!("console: {} {}", entry.level, entry.message);
        }
        let picture = self.browser.screenshot().await?;
        let name = thread::current()
            .name()
            .unwrap_or("test")
            .replace("::", "-");
        let folder = path("LONGCOOK_SHOTS");
        fs::create_dir_all(&folder)?;
        let file = folder.join(format!("{name}.png"));
        fs::write(&file, picture)?;
        Ok(file)
    }
}

fn copy(from: &Path, to: &Path) -> anyhow::Result<()> {
    for entry in WalkDir::new(from) {
        let entry = entry.with_context(|| format!("the bundled app in {}", from.display()))?;
        let target = to.join(entry.path().strip_prefix(from)?);
        if entry.file_type().is_dir() {
            fs::create_dir_all(&target)?;
        } else {
            fs::write(&target, fs::read(entry.path())?)?;
        }
    }
    Ok(())
}
