//! The control socket in the data directory: one JSON line in, one out, for whoever may write there.
//!
//! `{"do": "load", "digest": "...", "fleet": {...}}` loads a fleet, `{"do": "show"}` says how things stand,
//! `{"do": "forget", "crew": "..."}` and `{"do": "forget-before", "before": "..."}` take out texts,
//! `{"do": "invite", "role": "tech", "name": "Sam", "language": "es"}` makes an invite. The answer is
//! `{"ok": ...}` or `{"error": "..."}`.

use std::fs::{self, File};
use std::io::{self, BufRead, BufReader, ErrorKind, Write};
use std::os::fd::AsRawFd;
use std::os::unix::fs::PermissionsExt;
use std::path::{Path, PathBuf};
use std::time::Duration;

use chrono::{DateTime, Utc};
use serde::{Deserialize, Serialize};
use serde_json::{Value, json};
use tokio::io::{AsyncBufReadExt, AsyncReadExt, AsyncWriteExt};
use tokio::net::{UnixListener, UnixStream};
use tracing::{info, warn};

use super::clerk::{Forget, Invite, NotDone, Window};
use crate::fleet::Fleet;

/// The socket's name in the data directory.
pub const NAME: &str = "control.sock";

/// The longest line taken, bytes: a fleet of 10,000 trailers has some 20 MB.
const LONGEST: u64 = 256 << 20;
/// The longest path of a socket that every system takes, bytes.
const LONGEST_PATH: usize = 100;

/// What can be asked.
#[derive(Debug, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", tag = "do")]
pub enum Request {
    /// Load this fleet.
    Load {
        /// Tells its files from others.
        digest: String,
        /// The fleet.
        fleet: Box<Fleet>,
    },
    /// Take out a person's texts.
    Forget {
        /// The crew id.
        crew: String,
    },
    /// Take out the texts from before an instant.
    ForgetBefore {
        /// The instant.
        before: DateTime<Utc>,
    },
    /// Make an invite.
    Invite {
        /// Whom to invite.
        #[serde(flatten)]
        invite: Invite,
    },
    /// Say how things stand.
    Show,
}

impl Request {
    /// How long the answer may take: taking out texts rewrites the journal.
    fn answered_within(&self) -> Duration {
        match self {
            Request::Load { .. } | Request::Invite { .. } | Request::Show => {
                Duration::from_secs(60)
            }
            Request::Forget { .. } | Request::ForgetBefore { .. } => Duration::from_secs(1800),
        }
    }
}

/// A listening control socket; its file goes when it is dropped.
pub struct Socket {
    listener: UnixListener,
    path: PathBuf,
}

impl Socket {
    /// Listens in a data directory that this process holds; a file left by an earlier process is replaced.
    ///
    /// # Errors
    ///
    /// The system's.
    pub fn listen(dir: &Path) -> io::Result<Self> {
        let path = dir.join(NAME);
        match fs::remove_file(&path) {
            Err(error) if error.kind() != ErrorKind::NotFound => return Err(error),
            _ => {}
        }
        let listener = short(dir, UnixListener::bind)?;
        fs::set_permissions(&path, fs::Permissions::from_mode(0o600))?;
        Ok(Socket { listener, path })
    }

    /// Answers until it is dropped.
    pub async fn serve(self, window: Window) {
        loop {
            match self.listener.accept().await {
                Ok((stream, _)) => {
                    let window = window.clone();
                    tokio::spawn(async move {
                        if let Err(error) = converse(stream, &window).await {
                            warn!("the control socket broke off: {error}");
                        }
                    });
                }
                Err(error) => {
                    warn!("the control socket does not take a caller: {error}");
                    tokio::time::sleep(Duration::from_secs(1)).await;
                }
            }
        }
    }
}

impl Drop for Socket {
    fn drop(&mut self) {
        // one left behind is replaced at the next start
        let _ = fs::remove_file(&self.path);
    }
}

/// Asks the bot that runs on a data directory; none when no bot runs there.
///
/// # Errors
///
/// What the bot answered, or why it could not be asked.
pub fn ask(dir: &Path, request: &Request) -> Result<Option<Value>, String> {
    let broken = |error: io::Error| {
        let remedy = match error.kind() {
            ErrorKind::PermissionDenied => "run this as the user who runs it",
            _ => "see its log, then try again",
        };
        format!(
            "the bot that runs on `{}` does not answer: {error}: {remedy}",
            dir.display()
        )
    };
    let mut stream = match short(dir, std::os::unix::net::UnixStream::connect) {
        Ok(stream) => stream,
        Err(error)
            if matches!(
                error.kind(),
                ErrorKind::NotFound | ErrorKind::ConnectionRefused | ErrorKind::NotADirectory
            ) =>
        {
            return Ok(None);
        }
        Err(error) => return Err(broken(error)),
    };
    let mut line = serde_json::to_vec(request).expect("a request is plain data");
    line.push(b'\n');
    stream
        .set_read_timeout(Some(request.answered_within()))
        .map_err(broken)?;
    stream.write_all(&line).map_err(broken)?;
    let mut answer = String::new();
    BufReader::new(stream)
        .read_line(&mut answer)
        .map_err(broken)?;
    let mut answer: Value = serde_json::from_str(&answer).map_err(|_| {
        format!(
            "the bot that runs on `{}` broke off: see its log, then try again",
            dir.display()
        )
    })?;
    match answer.get("error").and_then(Value::as_str) {
        Some(error) => Err(error.to_owned()),
        None => Ok(Some(answer["ok"].take())),
    }
}

async fn converse(stream: UnixStream, window: &Window) -> io::Result<()> {
    let (read, mut write) = stream.into_split();
    let mut lines = tokio::io::BufReader::new(read.take(LONGEST));
    let mut line = Vec::new();
    while lines.read_until(b'\n', &mut line).await? > 0 {
        let mut answer = serde_json::to_vec(&answer(&line, window).await)?;
        answer.push(b'\n');
        write.write_all(&answer).await?;
        line.clear();
        lines.get_mut().set_limit(LONGEST);
    }
    Ok(())
}

async fn answer(line: &[u8], window: &Window) -> Value {
    let outcome = match serde_json::from_slice(line) {
        Ok(Request::Load { digest, fleet }) => {
            let (trailers, crew) = (fleet.trailers.len(), fleet.crew.len());
            let outcome = window.load(digest, *fleet).await;
            outcome.map(|()| {
                info!("a fleet was loaded over the socket: {trailers} trailers, {crew} people");
                json!({"trailers": trailers, "crew": crew})
            })
        }
        Ok(Request::Forget { crew }) => forget(window, Forget::Person(crew)).await,
        Ok(Request::ForgetBefore { before }) => forget(window, Forget::Before(before)).await,
        Ok(Request::Invite { invite }) => {
            let outcome = window.invite(invite).await;
            outcome.map(|invited| json!(invited))
        }
        Ok(Request::Show) => window.show().await,
        Err(error) => return json!({"error": format!("the request is not understood: {error}")}),
    };
    match outcome {
        Ok(value) => json!({ "ok": value }),
        Err(error) => json!({ "error": error.to_string() }),
    }
}

async fn forget(window: &Window, what: Forget) -> Result<Value, NotDone> {
    window.forget(what).await.map(|forgotten| json!(forgotten))
}

/// Does something with the socket's path, by way of the open directory where the path itself is too long for a socket.
fn short<R>(dir: &Path, doing: impl FnOnce(PathBuf) -> io::Result<R>) -> io::Result<R> {
    let path = dir.join(NAME);
    if path.as_os_str().len() <= LONGEST_PATH {
        return doing(path);
    }
    let open = File::open(dir)?;
    doing(PathBuf::from(format!(
        "/proc/self/fd/{}/{NAME}",
        open.as_raw_fd()
    )))
}
