//! Where the counts are asked for: HTTP on a port of the loopback, since they are nobody else's business.

use std::io;
use std::net::SocketAddr;
use std::time::Duration;

use thiserror::Error;
use tokio::io::{AsyncReadExt, AsyncWriteExt};
use tokio::net::{TcpListener, TcpStream};
use tokio::time::timeout;
use tracing::debug;

use super::Metrics;
use crate::chat::clerk::Window;

/// The longest head of a request that is read, bytes.
const LONGEST: usize = 8 << 10;
/// How long one caller may take.
const ANSWERED_WITHIN: Duration = Duration::from_secs(5);

/// Why an address is not listened on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Error)]
#[error(
    "`{0}` is not an address of this machine alone: give one of the loopback, as in `127.0.0.1:9464`, and have a proxy carry it further if need be"
)]
pub struct NotLoopback(pub SocketAddr);

/// A port on which the counts are told.
pub struct Listener {
    listener: TcpListener,
}

impl Listener {
    /// Checks that an address is one of the loopback.
    ///
    /// # Errors
    ///
    /// [`NotLoopback`].
    pub fn check(address: SocketAddr) -> Result<SocketAddr, NotLoopback> {
        match address.ip().to_canonical().is_loopback() {
            true => Ok(address),
            false => Err(NotLoopback(address)),
        }
    }

    /// Listens on a checked address.
    ///
    /// # Errors
    ///
    /// The system's: the port is taken, most likely.
    pub async fn bind(address: SocketAddr) -> io::Result<Self> {
        let listener = TcpListener::bind(address).await?;
        Ok(Listener { listener })
    }

    /// Returns where it listens.
    ///
    /// # Errors
    ///
    /// The system's.
    pub fn address(&self) -> io::Result<SocketAddr> {
        self.listener.local_addr()
    }

    /// Answers one caller after the other until it is dropped.
    pub async fn serve(self, metrics: Metrics, window: Window) {
        loop {
            let Ok((stream, _)) = self.listener.accept().await else {
                tokio::time::sleep(Duration::from_secs(1)).await;
                continue;
            };
            match timeout(ANSWERED_WITHIN, converse(stream, &metrics, &window)).await {
                Ok(Ok(())) => {}
                Ok(Err(error)) => debug!("a caller for metrics broke off: {error}"),
                Err(_) => debug!("a caller for metrics took too long"),
            }
        }
    }
}

async fn converse(mut stream: TcpStream, metrics: &Metrics, window: &Window) -> io::Result<()> {
    let mut head = Vec::new();
    while !head.windows(4).any(|end| end == b"\r\n\r\n") && head.len() < LONGEST {
        if stream.read_buf(&mut head).await? == 0 {
            break;
        }
    }
    let head = String::from_utf8_lossy(&head);
    let mut words = head.split_whitespace();
    let path = match (words.next(), words.next()) {
        (Some("GET" | "HEAD"), Some(path)) => path.split('?').next(),
        _ => None,
    };
    let (status, body) = match path {
        // a clerk that has ended leaves the last that was known
        Some("/metrics") => ("200 OK", metrics.print(window.standing().await.ok())),
        Some(_) => ("404 Not Found", "the counts are at /metrics\n".to_owned()),
        None => ("405 Method Not Allowed", "ask with GET\n".to_owned()),
    };
    let kind = match status {
        "200 OK" => prometheus::TEXT_FORMAT,
        _ => "text/plain",
    };
    let answer = format!(
        "HTTP/1.1 {status}\r\nContent-Type: {kind}\r\nContent-Length: {}\r\nConnection: close\r\n\r\n",
        body.len()
    );
    stream.write_all(answer.as_bytes()).await?;
    if !head.starts_with("HEAD") {
        stream.write_all(body.as_bytes()).await?;
    }
    stream.shutdown().await
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_the_loopback_is_listened_on() {
        let checked = |address: &str| Listener::check(address.parse().unwrap());
        for good in [
            "127.0.0.1:9464",
            "127.8.0.1:1",
            "[::1]:9464",
            "[::ffff:127.0.0.1]:9464",
        ] {
            assert!(checked(good).is_ok(), "{good}");
        }
        for bad in [
            "0.0.0.0:9464",
            "192.168.1.4:9464",
            "[::]:9464",
            "[fe80::1]:9464",
        ] {
            let error = checked(bad).unwrap_err().to_string();
            assert!(
                error.contains(bad) && error.contains("127.0.0.1:9464"),
                "{error}"
            );
        }
    }
}
