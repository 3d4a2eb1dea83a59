//! The live service end to end: the real binary against a loopback stand-in for the Bot API.

#[path = "botapi/mod.rs"]
mod botapi;

use std::path::Path;
use std::process::{Child, Command, Stdio};

use botapi::{BotApi, Fault, TOKEN};
use tempfile::TempDir;

/// People with a user number on the network: Dana drives, Mo dispatches, Ray has no chat.
const CREW: &str = r#"
[[crew]]
id = "dana"
name = "Dana"
role = "driver"
language = "en"
chat_user = 77

[[crew]]
id = "mo"
name = "Mo"
role = "dispatcher"
language = "en"
chat_user = 88
"#;

const FLEET: &str = r#"
company = "Saltbox Lane Comforts"
time_zone = "America/Halifax"

[[trailer]]
id = "12"
waste_gal = 500

[[trailer]]
id = "14"
waste_gal = 300
"#;

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

/// The messages that a data directory holds, by key, each as often as it is recorded.
fn recorded(data: &Path) -> Vec<String> {
    hosebib::store::read_only(data)
        .unwrap()
        .flat_map(|line| line.unwrap().key)
        .collect()
}

#[test]
fn a_message_is_answered_where_it_was_written() {
    let (api, folders) = (BotApi::start(), Folders::new());
    let bot = Bot::start(&api, &folders);
    let number = api.says(77, "unit 12 pressure 95 tank 3/4 temp -5");
    api.replies(77, 1);
    let sent = api.state().sent[0].clone();
    assert_eq!((sent.chat, sent.answers), (77, Some(number)));
    assert!(bot.stop());
    assert_eq!(recorded(folders.data.path()), ["telegram:77:1:0"]);
    assert!(
        api.state().offences.is_empty(),
        "{:?}",
        api.state().offences
    );
}
