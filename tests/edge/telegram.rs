//! The live service end to end: the real binary against a loopback stand-in for the Bot API.

mod access;
#[path = "botapi/mod.rs"]
pub(crate) mod botapi;
mod buttons;
mod disks;
mod edits;
mod groups;
mod kills;
mod mangled;
mod menu;
mod messages;
mod outages;
mod photos;
mod places;
mod running;

use std::collections::BTreeSet;
use std::path::Path;
use std::process::{Child, Command, Stdio};

use botapi::{BotApi, Fault, TOKEN};
use serde_json::Value;
use tempfile::TempDir;

use crate::small_fleet::{CREW, FLEET};

/// A bot that runs as its own process, with its folders.
struct Bot {
    child: Child,
}

struct Folders {
    data: TempDir,
    fleet: TempDir,
}

impl Folders {
    fn new() -> Self {
        let folders = Folders {
            data: TempDir::new().unwrap(),
            fleet: TempDir::new().unwrap(),
        };
        folders.write("fleet.toml", FLEET);
        folders.write("jobs.toml", "");
        folders.write("crew.toml", CREW);
        folders
    }

    fn write(&self, name: &str, text: &str) {
        std::fs::write(self.fleet.path().join(name), text).unwrap();
    }

    fn log(&self) -> String {
        std::fs::read_to_string(self.fleet.path().join("log")).unwrap_or_default()
    }

    /// Waits until the bot has noted what the network accepted.
    #[track_caller]
    fn wait_until_noted(&self) {
        use hosebib::chat::socket::{Request, ask};
        for _ in 0..3000 {
            let shown = ask(self.data.path(), &Request::Show);
            if shown.is_ok_and(|shown| shown.is_some_and(|shown| shown["waiting"] == 0)) {
                return;
            }
            std::thread::sleep(std::time::Duration::from_millis(20));
        }
        panic!("something waits for ever");
    }

    #[track_caller]
    fn wait_for_log(&self, text: &str, times: usize) {
        for _ in 0..3000 {
            if self.log().matches(text).count() >= times {
                return;
            }
            std::thread::sleep(std::time::Duration::from_millis(20));
        }
        panic!("never logged {times} times: {text}\n{}", self.log());
    }
}

impl Bot {
    fn start(api: &BotApi, folders: &Folders) -> Self {
        let log = std::fs::OpenOptions::new()
            .append(true)
            .create(true)
            .open(folders.fleet.path().join("log"))
            .unwrap();
        let child = command(&api.url(), folders.data.path())
            .args(["--fleet".as_ref(), folders.fleet.path().as_os_str()])
            .stderr(log)
            .spawn()
            .unwrap();
        Bot { child }
    }

    fn kill(mut self) {
        self.child.kill().unwrap();
        self.child.wait().unwrap();
    }

    fn signal(&self, name: &str) {
        let sent = Command::new("kill")
            .args([&format!("-{name}"), &self.child.id().to_string()])
            .status()
            .unwrap();
        assert!(sent.success());
    }

    /// Stops it as a service manager would, and returns whether it ended well.
    fn stop(mut self) -> bool {
        self.signal("TERM");
        self.child.wait().unwrap().success()
    }
}

impl Drop for Bot {
    fn drop(&mut self) {
        // already gone after `kill` and `stop`
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

fn command(url: &str, data: &Path) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_hosebib"));
    command
        .args(["serve", "--api-url", url, "--data"])
        .arg(data)
        .env("HOSEBIB_TOKEN", TOKEN)
        .env("NO_PROXY", "127.0.0.1")
        .stdin(Stdio::null())
        .stdout(Stdio::null())
        .stderr(Stdio::null());
    command
}

/// The messages that a data directory holds, by key; none is recorded twice.
#[track_caller]
fn recorded(data: &Path) -> BTreeSet<String> {
    let mut recorded = BTreeSet::new();
    let lines = hosebib::store::read_only(data).unwrap();
    for key in lines.filter_map(|line| line.unwrap().key) {
        assert!(recorded.insert(key.clone()), "{key} is recorded twice");
    }
    recorded
}

/// The records and notes of one kind that a data directory holds.
fn records(data: &Path, kind: &str) -> Vec<Value> {
    hosebib::store::read_only(data)
        .unwrap()
        .flat_map(|line| line.unwrap().records)
        .filter(|record| record["record"] == kind || record["note"] == kind)
        .collect()
}
