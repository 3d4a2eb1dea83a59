//! A disk that is full under the running service, and one that is read-only when it starts.
//!
//! A small file system in memory is mounted for it; where that cannot be done, the test says so and does nothing. Injected
//! faults of every kind are tried in `clerk` and `store`.

use std::path::Path;
use std::process::Command;

use super::botapi::BotApi;
use super::{Bot, Folders, recorded};

/// A small file system in memory, until it is dropped.
struct Small<'a> {
    at: &'a Path,
}

impl<'a> Small<'a> {
    /// Mounts one; none where that is not allowed here.
    fn mount(at: &'a Path) -> Option<Self> {
        let mounted = Command::new("mount")
            .args(["-t", "tmpfs", "-o", "size=24m,mode=700", "tmpfs"])
            .arg(at)
            .output();
        match mounted {
            Ok(output) if output.status.success() => Some(Small { at }),
            other => {
                eprintln!("not tried: no small file system can be mounted here: {other:?}");
                None
            }
        }
    }

    fn turn(&self, how: &str) {
        let turned = Command::new("mount")
            .args(["-o", &format!("remount,{how}")])
            .arg(self.at)
            .status();
        assert!(turned.unwrap().success());
    }

    /// Fills it to the last byte.
    fn fill(&self) {
        let mut size = 1 << 20;
        let mut number = 0;
        while size > 0 {
            let path = self.at.join(format!("filler-{number}"));
            number += 1;
            if std::fs::write(&path, vec![0; size]).is_err() {
                size /= 4;
            }
        }
    }

    fn empty(&self) {
        for entry in std::fs::read_dir(self.at).unwrap() {
            let path = entry.unwrap().path();
            if path.to_string_lossy().contains("filler-") {
                std::fs::remove_file(path).unwrap();
            }
        }
    }
}

impl Drop for Small<'_> {
    fn drop(&mut self) {
        let _ = Command::new("umount").arg("-l").arg(self.at).status();
    }
}

#[test]
fn a_full_disk_is_said_waited_out_and_loses_nothing() {
    let (api, folders) = (BotApi::start(), Folders::new());
    let Some(disk) = Small::mount(folders.data.path()) else {
        return;
    };
    let bot = Bot::start(&api, &folders);
    api.says(77, "12 pressure 50");
    api.replies(77, 1);
    disk.fill();
    api.says(77, "12 pressure 51");
    let told = api.replies(77, 2);
    assert!(told[1].starts_with("NOT LOGGED yet"), "{told:?}");
    folders.wait_for_log("nothing can be logged", 1);
    api.says(77, "12 someone got a shock, he is down");
    let danger = api.replies(77, 3);
    assert!(
        danger[2].contains("DANGER"),
        "first words go out even then: {danger:?}"
    );
    disk.empty();
    api.wait("all confirmed", |state| state.updates.is_empty());
    folders.wait_for_log("logging works again", 1);
    api.replies(77, 5);
    assert!(bot.stop());
    assert_eq!(recorded(folders.data.path()).len(), 3);
    assert_eq!(
        hosebib::store::verify(folders.data.path()).unwrap().damage,
        []
    );
}

#[test]
fn a_start_on_a_read_only_disk_is_refused_and_the_next_one_serves() {
    let (api, folders) = (BotApi::start(), Folders::new());
    let Some(disk) = Small::mount(folders.data.path()) else {
        return;
    };
    let bot = Bot::start(&api, &folders);
    api.says(77, "12 pressure 50");
    api.replies(77, 1);
    bot.kill();
    disk.turn("ro");
    // a start is refused in one sentence
    let refused = super::command(&api.url(), folders.data.path())
        .output()
        .unwrap();
    assert_eq!(refused.status.code(), Some(1));
    let bot = {
        disk.turn("rw");
        Bot::start(&api, &folders)
    };
    api.says(77, "12 pressure 51");
    api.wait("all confirmed", |state| state.updates.is_empty());
    assert!(bot.stop());
    assert_eq!(recorded(folders.data.path()).len(), 2);
}
