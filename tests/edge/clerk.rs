//! The clerk alone: a disk that fails, a desk that fails, an outbox that outlives its process.

mod retention;
mod soak;

use std::path::Path;
use std::sync::{Arc, mpsc};
use std::time::Duration;

use chrono::{DateTime, TimeDelta, Utc};
use hosebib::book::{Hold, MessageKey, Record};
use hosebib::chat::clerk::{Clerk, GivenUp, NotDone, Parcel, Setup, Turns, Window};
use hosebib::chat::metrics::Metrics;
use hosebib::desk::{Body, Desk, Inbound, Means, Outgoing, Sender, Turn};
use hosebib::finding::Level;
use hosebib::fleet::{CrewMember, Fleet, Role};
use hosebib::heard::Language;
use hosebib::store::{Disk, Faults, FaultyFiles, Files};
use tempfile::TempDir;

/// A desk that answers every message with its own text, calls `danger` one, breaks on `break`, and on `half` while taking it in.
struct Parrot(Desk);

impl Turns for Parrot {
    const FORMAT: u32 = 1;

    fn restore(snapshot: Option<&[u8]>) -> Result<Self, String> {
        Desk::restore(snapshot).map(Parrot)
    }

    fn snapshot(&self) -> Vec<u8> {
        Turns::snapshot(&self.0)
    }

    fn lend(&mut self, means: Means) {
        self.0.lend(means);
    }

    fn invite(
        &self,
        at: DateTime<Utc>,
        role: Role,
        name: &str,
        language: Language,
    ) -> Result<(Turn, String), String> {
        self.0.invite(at, role, name, language)
    }

    fn receive(&self, inbound: &Inbound) -> Turn {
        let Body::Text(text) = &inbound.body else {
            return Turn::empty(inbound.at);
        };
        assert!(text != "break", "as asked");
        let mut turn = Turn::empty(inbound.at);
        let at = if text == "half" {
            DateTime::UNIX_EPOCH
        } else {
            inbound.at
        };
        turn.records.push(Record::Ticked { at });
        turn.outgoing.push(
            Outgoing::to("dana", text.as_str())
                .answering(inbound)
                .of_level(text.contains("danger").then_some(Level::Danger)),
        );
        turn
    }

    fn apply(&mut self, records: &[Record]) {
        self.0.apply(records);
        assert!(
            !records.contains(&Record::Ticked {
                at: DateTime::UNIX_EPOCH
            }),
            "as asked"
        );
    }

    fn next_due(&self) -> Option<DateTime<Utc>> {
        None
    }

    fn tick(&self, now: DateTime<Utc>) -> Turn {
        Turn::empty(now)
    }

    fn load(&self, at: DateTime<Utc>, digest: &str, fleet: Fleet) -> Turn {
        self.0.load(at, digest, fleet)
    }

    fn crew_of(&self, sender: &Sender) -> Option<CrewMember> {
        self.0.crew_of(sender)
    }

    fn fleet(&self) -> Option<&Arc<Fleet>> {
        self.0.book().fleet()
    }

    fn holds(&self) -> Vec<Hold> {
        Vec::new()
    }

    fn open_tasks(&self) -> usize {
        0
    }

    fn fleet_digest(&self) -> &str {
        self.0.book().fleet_digest()
    }
}

fn start() -> DateTime<Utc> {
    "2027-01-16T21:10:00Z".parse().unwrap()
}

fn fleet() -> Fleet {
    let member = |id: &str, role, user| CrewMember {
        id: id.into(),
        name: id.to_uppercase(),
        role,
        language: Some(Language::En),
        chat_user: Some(user),
    };
    let crew = [
        member("dana", Role::Driver, 77),
        member("mo", Role::Dispatcher, 88),
    ];
    Fleet {
        crew: crew
            .into_iter()
            .map(|member| (member.id.clone(), member))
            .collect(),
        ..Fleet::default()
    }
}

struct Post {
    clerk: Option<Clerk>,
    window: Window,
    parcels: mpsc::Receiver<Parcel>,
    clock: Arc<std::sync::Mutex<DateTime<Utc>>>,
}

impl Post {
    /// Opens a clerk with a parrot and a fleet of two people.
    fn open(dir: &Path, disk: impl Disk + 'static) -> Self {
        let post = Self::with::<Parrot>(dir, disk, 10);
        if post.window.show_blocking().unwrap()["fleet_digest"] == "" {
            post.window.load_blocking("one".into(), fleet()).unwrap();
        }
        post
    }

    /// Opens a clerk as it stands, with a clock of its own and a snapshot after so many turns.
    fn with<T: Turns>(dir: &Path, disk: impl Disk + 'static, snapshot_every: u64) -> Self {
        let (out, parcels) = mpsc::channel();
        let clock = Arc::new(std::sync::Mutex::new(start()));
        let reading = clock.clone();
        let mut salt = 0u128;
        let setup = Setup {
            salt: Box::new(move || {
                salt += 1;
                salt.to_be_bytes()
            }),
            clock: Box::new(move || *reading.lock().unwrap()),
            deliver: Box::new(move |parcel| drop(out.send(parcel))),
            comes_again: true,
            disk: Box::new(disk),
            snapshot_every,
            metrics: Metrics::default(),
        };
        let (clerk, _) = Clerk::open::<T>(dir, setup).unwrap();
        let window = clerk.window();
        Post {
            clerk: Some(clerk),
            window,
            parcels,
            clock,
        }
    }

    fn says(&self, number: i64, text: &str) -> Result<(), NotDone> {
        self.window.batch_blocking(vec![inbound(number, text)])
    }

    /// Lets the network accept everything handed over until now.
    fn accept(&self) {
        for parcel in self.parcels.try_iter() {
            self.window.sent(parcel.id.unwrap(), 0, 1, 1);
        }
    }

    /// The texts handed over until now; what was done before is waited for.
    fn said(&self) -> Vec<String> {
        self.window.show_blocking().unwrap();
        self.parcels.try_iter().map(|parcel| parcel.text).collect()
    }

    fn later(&self, by: TimeDelta) {
        *self.clock.lock().unwrap() += by;
    }

    fn stop(mut self) {
        self.clerk.take().unwrap().stop().unwrap();
    }
}

fn inbound(number: i64, text: &str) -> Inbound {
    Inbound {
        chat: Some(77),
        ..Inbound::says(
            MessageKey::new("telegram", 77, number, 0),
            Sender::ChatUser(77),
            start(),
            text,
        )
    }
}

fn keys(dir: &Path) -> Vec<String> {
    hosebib::store::read_only(dir)
        .unwrap()
        .flat_map(|line| line.unwrap().key)
        .collect()
}

#[test]
fn a_clerk_that_ends_again_and_again_saves_a_snapshot_all_the_same() {
    let dir = TempDir::new().unwrap();
    for life in 0..3 {
        let post = Post::open(dir.path(), Files);
        for number in 1..=7 {
            post.says(10 * life + number, "12 psi 50").unwrap();
        }
        post.window.show_blocking().unwrap();
        // its last window goes, as in a kill: nothing is saved at the end
        drop(post);
        std::thread::sleep(std::time::Duration::from_millis(100));
    }
    let setup = hosebib::store::Setup::new(
        Box::new(|| [0; 16]),
        Box::new(hosebib::chat::clerk::entries),
        1,
    );
    let (_, opened) = hosebib::store::Store::open(dir.path(), setup).unwrap();
    let head = opened.snapshot.map_or(0, |book| book.head.seq);
    assert!(head >= 10, "the last snapshot is of turn {head}");
}

#[test]
fn a_full_disk_takes_nothing_says_so_once_an_hour_and_mends() {
    let dir = TempDir::new().unwrap();
    let disk = FaultyFiles::default();
    let post = Post::open(dir.path(), disk.clone());
    let full = Faults {
        room: Some(100),
        ..Faults::default()
    };
    let broken = Faults {
        syncs: true,
        ..Faults::default()
    };
    for (first, faults) in [(1, full), (3, broken)] {
        let before = keys(dir.path()).len();
        post.later(TimeDelta::hours(2));
        disk.fail(faults);
        let batch = || vec![inbound(first, "hello"), inbound(first + 1, "danger of gas")];
        assert!(matches!(
            post.window.batch_blocking(batch()),
            Err(NotDone::NotLogged(_))
        ));
        let said = post.said();
        assert_eq!(said.len(), 2, "{said:?}");
        assert!(
            said[0].starts_with("danger of gas") && said[0].contains("Not logged"),
            "{said:?}"
        );
        assert!(said[1].starts_with("NOT LOGGED yet"), "{said:?}");
        assert!(post.window.batch_blocking(batch()).is_err());
        post.later(TimeDelta::minutes(59));
        assert!(post.window.batch_blocking(batch()).is_err());
        assert!(
            post.said().is_empty(),
            "nobody is told twice within the hour"
        );
        post.later(TimeDelta::minutes(2));
        assert!(post.window.batch_blocking(batch()).is_err());
        assert_eq!(post.said().len(), 1);
        assert_eq!(post.window.show_blocking().unwrap()["logging"], false);
        assert_eq!(keys(dir.path()).len(), before);
        disk.fail(Faults::default());
        assert_eq!(post.window.batch_blocking(batch()), Ok(()));
        assert_eq!(post.said(), ["hello", "danger of gas"]);
        assert_eq!(post.window.show_blocking().unwrap()["logging"], true);
    }
    post.stop();
    let all: Vec<String> = (1..=4)
        .map(|number| format!("telegram:77:{number}:0"))
        .collect();
    assert_eq!(keys(dir.path()), all);
}

#[test]
fn one_bad_message_is_set_aside_with_its_text_and_the_rest_go_on() {
    let dir = TempDir::new().unwrap();
    let post = Post::open(dir.path(), Files);
    let batch = vec![
        inbound(1, "before"),
        inbound(2, "break"),
        inbound(3, "after"),
    ];
    assert_eq!(post.window.batch_blocking(batch), Ok(()));
    let said = post.said();
    assert_eq!((said[0].as_str(), said[2].as_str()), ("before", "after"));
    assert!(said[1].contains("nothing of it was logged"), "{said:?}");
    // it does not come back to break the next start, and is known when it comes again
    assert_eq!(post.says(2, "break"), Ok(()));
    assert!(post.said().is_empty());
    post.stop();
    let kept: Vec<_> = hosebib::store::read_only(dir.path())
        .unwrap()
        .flat_map(|line| line.unwrap().records)
        .filter(|record| record["note"] == "set-aside")
        .map(|record| record["text"]["personal"].clone())
        .collect();
    assert_eq!(kept, ["break"]);
    Post::open(dir.path(), Files).stop();
}

#[test]
fn what_was_not_accepted_goes_out_again_after_a_restart_and_what_was_does_not() {
    let dir = TempDir::new().unwrap();
    let post = Post::open(dir.path(), Files);
    for number in 1..=30 {
        post.says(number, &format!("reply {number}")).unwrap();
    }
    post.window.show_blocking().unwrap();
    let parcels: Vec<Parcel> = post.parcels.try_iter().collect();
    assert_eq!(parcels.len(), 30);
    for parcel in &parcels[..28] {
        post.window.sent(parcel.id.unwrap(), 0, 1, 1000);
    }
    // a long message of which one part went
    post.window.sent(parcels[28].id.unwrap(), 0, 2, 1001);
    assert_eq!(post.window.show_blocking().unwrap()["waiting"], 2);
    post.stop();
    let post = Post::open(dir.path(), Files);
    post.window.show_blocking().unwrap();
    let again: Vec<(String, u32)> = post
        .parcels
        .try_iter()
        .map(|parcel| (parcel.text, parcel.parts_sent))
        .collect();
    assert_eq!(
        again,
        [("reply 29".to_owned(), 1), ("reply 30".to_owned(), 0)]
    );
    post.stop();
}

#[test]
fn accepted_sends_stay_accepted_when_the_disk_fails_in_between() {
    let dir = TempDir::new().unwrap();
    let disk = FaultyFiles::default();
    let post = Post::open(dir.path(), disk.clone());
    post.says(1, "one").unwrap();
    post.window.show_blocking().unwrap();
    let parcel = post.parcels.try_recv().unwrap();
    disk.fail(Faults {
        room: Some(0),
        ..Faults::default()
    });
    post.window.sent(parcel.id.unwrap(), 0, 1, 1000);
    assert!(post.says(2, "two").is_err());
    disk.fail(Faults::default());
    post.says(2, "two").unwrap();
    assert_eq!(post.window.show_blocking().unwrap()["waiting"], 1);
    post.stop();
    let post = Post::open(dir.path(), Files);
    assert_eq!(post.said(), ["two"]);
    post.stop();
}

#[test]
fn a_danger_that_does_not_arrive_is_told_to_the_dispatchers_and_comes_to_rest() {
    let dir = TempDir::new().unwrap();
    let post = Post::open(dir.path(), Files);
    post.says(1, "danger of gas").unwrap();
    let mut rounds = 0;
    // nobody at all can be reached
    while let Ok(parcel) = post.parcels.recv_timeout(Duration::from_millis(500)) {
        rounds += 1;
        assert!(rounds < 10, "notices beget notices");
        if rounds == 2 {
            assert_eq!(parcel.to, "mo");
            assert!(
                parcel.text.contains("Phone") && parcel.text.contains("danger of gas"),
                "{}",
                parcel.text
            );
        }
        post.window
            .given_up(parcel.id.unwrap(), GivenUp::Unreachable);
        post.window.show_blocking().unwrap();
    }
    assert_eq!(rounds, 2);
    assert_eq!(post.window.show_blocking().unwrap()["unreachable"], 2);
    post.stop();
}

#[test]
fn a_turn_that_breaks_while_it_is_taken_in_is_set_aside_and_leaves_no_half() {
    let dir = TempDir::new().unwrap();
    let post = Post::open(dir.path(), Files);
    let outcome = post
        .window
        .batch_blocking(vec![inbound(1, "half"), inbound(2, "whole")]);
    assert_eq!(outcome, Ok(()));
    let said = post.said();
    assert!(
        said[0].contains("nothing of it was logged") && said[1] == "whole",
        "{said:?}"
    );
    post.says(3, "more").unwrap();
    post.stop();
    let records: Vec<_> = hosebib::store::read_only(dir.path())
        .unwrap()
        .map(|line| line.unwrap().records)
        .collect();
    assert_eq!(records[1][0]["note"], "set-aside");
    assert_eq!(records[2][0]["record"], "ticked");
}

#[test]
fn dangers_are_said_even_when_nothing_can_be_folded_anew() {
    let dir = TempDir::new().unwrap();
    let disk = FaultyFiles::default();
    let post = Post::open(dir.path(), disk.clone());
    post.says(1, "one").unwrap();
    post.window.show_blocking().unwrap();
    let parcel = post.parcels.try_recv().unwrap();
    let full = Faults {
        room: Some(0),
        ..Faults::default()
    };
    disk.fail(full);
    // the accepted send cannot be written, so the next message meets a clerk that is behind
    post.window.sent(parcel.id.unwrap(), 0, 1, 1000);
    assert!(post.says(2, "danger of gas").is_err());
    let said = post.said();
    assert!(
        said[0].starts_with("danger of gas") && said[0].contains("Not logged"),
        "{said:?}"
    );
    assert!(post.says(2, "danger of gas").is_err());
    assert!(post.said().is_empty());
    disk.fail(Faults::default());
    post.says(2, "danger of gas").unwrap();
    assert_eq!(post.said(), ["danger of gas"]);
    post.stop();
}

/// Resident memory of this process, kB (Linux, proc(5)); 0 where there is none to read.
fn resident_kb() -> u64 {
    let status = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let line = status.lines().find_map(|line| line.strip_prefix("VmRSS:"));
    line.and_then(|line| line.trim().trim_end_matches(" kB").parse().ok())
        .unwrap_or(0)
}

/// `HOSEBIB_SOAK` asks for another number of messages.
#[test]
fn a_long_run_leaves_nothing_waiting_and_everything_recorded() {
    let messages: i64 = std::env::var("HOSEBIB_SOAK")
        .ok()
        .and_then(|text| text.parse().ok())
        .unwrap_or(600);
    let dir = TempDir::new().unwrap();
    let post = Post::open(dir.path(), Files);
    let began = std::time::Instant::now();
    for first in (0..messages).step_by(100) {
        let batch = (first..(first + 100).min(messages))
            .map(|number| inbound(number, "reply"))
            .collect();
        post.window.batch_blocking(batch).unwrap();
        post.accept();
        if first % (messages / 10).max(100) == 0 {
            println!(
                "{first} messages, {} kB, {:.1} s",
                resident_kb(),
                began.elapsed().as_secs_f64()
            );
        }
    }
    post.window.show_blocking().unwrap();
    post.accept();
    assert_eq!(post.window.show_blocking().unwrap()["waiting"], 0);
    post.stop();
    assert_eq!(keys(dir.path()).len() as i64, messages);
}
