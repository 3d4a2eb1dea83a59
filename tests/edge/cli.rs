//! The command line: the real binary on folders, pipes and running bots.

mod backup;
mod doctor;
mod export;
mod fleet;
mod forget;
mod incident;
mod input;
mod metrics;
mod refused;
mod review;
mod stickers;
mod words;

use std::ffi::OsStr;
use std::io::Write;
use std::path::Path;
use std::process::{Child, Command, Output, Stdio};

use tempfile::TempDir;

use crate::small_fleet::{CREW, FLEET};
use crate::telegram::botapi::{BotApi, TOKEN};

/// What a command printed and how it ended.
#[derive(Debug)]
struct Ran {
    code: Option<i32>,
    out: String,
    err: String,
}

impl Ran {
    /// Its standard output, of a run that went well.
    #[track_caller]
    fn good(self) -> String {
        assert_eq!(self.code, Some(0), "{self:?}");
        self.out
    }

    /// Its standard error, of a run that failed with one sentence.
    #[track_caller]
    fn bad(self) -> String {
        assert_eq!(self.code, Some(1), "{self:?}");
        assert_eq!(self.err.lines().count(), 1, "{self:?}");
        self.err
    }
}

/// Runs the program to its end with nothing on its standard input.
fn run<A: AsRef<OsStr>>(args: impl IntoIterator<Item = A>) -> Ran {
    run_with(args, b"")
}

/// Runs the program to its end with this on its standard input.
fn run_with<A: AsRef<OsStr>>(args: impl IntoIterator<Item = A>, input: &[u8]) -> Ran {
    let mut child = program()
        .args(args)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    let mut pipe = child.stdin.take().unwrap();
    let input = input.to_vec();
    // a program that refuses early does not read to the end
    let writer = std::thread::spawn(move || drop(pipe.write_all(&input)));
    let output = child.wait_with_output().unwrap();
    writer.join().unwrap();
    ran(&output)
}

fn ran(output: &Output) -> Ran {
    let err = String::from_utf8_lossy(&output.stderr).into_owned();
    assert!(
        !err.contains("panicked") && !err.contains("a fault in hosebib"),
        "{err}"
    );
    Ran {
        code: output.status.code(),
        out: String::from_utf8_lossy(&output.stdout).into_owned(),
        err,
    }
}

fn program() -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_hosebib"));
    command
        .env_remove("HOSEBIB_TOKEN")
        .env("NO_PROXY", "127.0.0.1");
    command
}

/// A fleet's folder and a data directory, both to be thrown away.
struct Folders {
    fleet: TempDir,
    data: TempDir,
}

impl Folders {
    fn new() -> Self {
        let folders = Folders {
            fleet: tempfile::tempdir().unwrap(),
            data: tempfile::tempdir().unwrap(),
        };
        folders.write("fleet.toml", FLEET);
        folders.write("jobs.toml", "");
        folders.write("crew.toml", CREW);
        folders
    }

    fn write(&self, name: &str, text: &str) {
        std::fs::write(self.fleet.path().join(name), text).unwrap();
    }

    fn fleet(&self) -> &str {
        self.fleet.path().to_str().unwrap()
    }

    fn data(&self) -> &str {
        self.data.path().to_str().unwrap()
    }

    /// Loads the fleet into the data directory.
    #[track_caller]
    fn load(&self) -> String {
        run(["fleet", "load", self.fleet(), "--data", self.data()]).good()
    }

    /// Sends messages through the console chat, a line each, at a time.
    #[track_caller]
    fn says(&self, who: &str, at: &str, texts: &str) -> String {
        let args = ["chat", "--data", self.data(), "--as", who, "--at", at];
        run_with(args, texts.as_bytes()).good()
    }
}

/// A bot that serves a data directory until it is dropped.
struct Bot {
    child: Child,
}

impl Bot {
    /// Starts it and waits until it polls.
    fn start(api: &BotApi, data: &Path) -> Self {
        let child = program()
            .args(["serve", "--api-url", &api.url(), "--data"])
            .arg(data)
            .env("HOSEBIB_TOKEN", TOKEN)
            .stdin(Stdio::null())
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .unwrap();
        let before = api.state().polls;
        let bot = Bot { child };
        api.wait("a poll", |state| state.polls > before);
        bot
    }
}

impl Drop for Bot {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}
