//! Serves the bundled app on this machine, with the headers that a strict host would send.

use std::{
    io,
    net::{Ipv4Addr, SocketAddr},
    path::Path,
};

use axum::{
    Router,
    http::{HeaderName, HeaderValue, header},
};
use tokio::{net::TcpListener, runtime::Runtime};
use tower_http::{services::ServeDir, set_header::SetResponseHeaderLayer};

/// What the page may load and do. The page carries the same policy in a `<meta>` element for hosts that send no
/// headers; only `frame-ancestors`, which works in a header alone, is added here.
pub const CONTENT_SECURITY_POLICY: &str = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; \
    style-src 'self'; img-src 'self' data:; font-src 'self'; connect-src 'self'; worker-src 'self'; \
    manifest-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

/// A running server. Dropping it, like [`Site::stop`], also ends the connections that browsers keep open: whoever asks
/// afterwards is refused.
pub struct Site {
    address: SocketAddr,
    runtime: Option<Runtime>,
}

impl Site {
    /// Serves the files below `folder` on the loopback interface; port 0 takes any that is free.
    ///
    /// # Errors
    /// When the port is taken or not allowed.
    pub fn start(folder: &Path, port: u16) -> io::Result<Self> {
        let runtime = tokio::runtime::Builder::new_multi_thread()
            .worker_threads(2)
            .enable_io()
            .build()?;
        let listener = std::net::TcpListener::bind((Ipv4Addr::LOCALHOST, port))?;
        listener.set_nonblocking(true)?;
        let address = listener.local_addr()?;
        let router = router(folder);
        let guard = runtime.enter();
        let listener = TcpListener::from_std(listener)?;
        drop(guard);
        runtime.spawn(async move { axum::serve(listener, router).await });
        Ok(Self {
            address,
            runtime: Some(runtime),
        })
    }

    /// The port that was taken.
    #[must_use]
    pub fn port(&self) -> u16 {
        self.address.port()
    }

    /// The address of the app. A loopback address counts as secure, so service worker and installation work.
    #[must_use]
    pub fn url(&self) -> String {
        format!("http://{}/", self.address)
    }

    /// Ends the server and every open connection.
    pub fn stop(self) {}
}

impl Drop for Site {
    fn drop(&mut self) {
        if let Some(runtime) = self.runtime.take() {
            runtime.shutdown_background();
        }
    }
}

fn router(folder: &Path) -> Router {
    let fixed = [
        (header::CONTENT_SECURITY_POLICY, CONTENT_SECURITY_POLICY),
        (header::X_CONTENT_TYPE_OPTIONS, "nosniff"),
        (header::REFERRER_POLICY, "no-referrer"),
        (
            HeaderName::from_static("cross-origin-opener-policy"),
            "same-origin",
        ),
        // Ask again each time: the service worker decides what is kept, by content and not by age.
        (header::CACHE_CONTROL, "no-cache"),
    ];
    fixed.into_iter().fold(
        Router::new().fallback_service(ServeDir::new(folder)),
        |router, (name, value)| {
            let value = HeaderValue::from_static(value);
            router.layer(SetResponseHeaderLayer::overriding(name, value))
        },
    )
}

#[cfg(test)]
mod tests {
    use std::{
        io::{Read, Write},
        net::TcpStream,
    };

    use super::*;

    fn get(port: u16, path: &str) -> io::Result<String> {
        let mut stream = TcpStream::connect((Ipv4Addr::LOCALHOST, port))?;
        write!(
            stream,
            "GET {path} HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n"
        )?;
        let mut answer = String::new();
        stream.read_to_string(&mut answer)?;
        Ok(answer)
    }

    #[test]
    fn answers_with_the_policy_until_it_is_stopped() {
        let folder = tempfile::tempdir().unwrap();
        std::fs::write(folder.path().join("index.html"), "<p>hello").unwrap();
        let site = Site::start(folder.path(), 0).unwrap();
        let port = site.port();

        let answer = get(port, "/").unwrap();
        assert!(answer.starts_with("HTTP/1.1 200"), "{answer}");
        assert!(answer.contains(CONTENT_SECURITY_POLICY), "{answer}");
        assert!(answer.ends_with("<p>hello"), "{answer}");
        assert!(get(port, "/absent").unwrap().starts_with("HTTP/1.1 404"));

        // A connection that a browser would keep open.
        let mut open = TcpStream::connect((Ipv4Addr::LOCALHOST, port)).unwrap();
        open.write_all(b"GET / HTTP/1.1\r\nHost: localhost\r\n\r\n")
            .unwrap();
        assert!(open.read(&mut [0; 16]).unwrap() > 0);
        site.stop();
        assert!(
            open.read_to_end(&mut Vec::new()).is_ok(),
            "the open connection ends"
        );
        assert!(get(port, "/").map_or(true, |answer| answer.is_empty()));
    }

    #[test]
    fn the_page_carries_the_same_policy() {
        let page = include_str!("../../../public/index.html");
        let shared = CONTENT_SECURITY_POLICY
            .strip_suffix("; frame-ancestors 'none'")
            .unwrap();
        assert!(page.contains(&format!("content=\"{shared}\"")));
    }
}
