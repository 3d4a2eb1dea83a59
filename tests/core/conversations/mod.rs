//! Conversations as script files: each `*.chat` beside this file is played through the desk, and what the bot says must
//! be, to the letter, what the file says. `UPDATE=1 cargo test --test core conversations` writes the files anew: read
//! the difference before you keep it. `ONLY=walk` plays those whose name holds that.
//!
//! A script starts with `fleet NAME` (a folder of `tests/data/fleets`, `demo`, `demo-es`: all of it in Spanish, `many`: 60
//! trailers at one job, with a dispatcher of each language, or `demo-phones`: everybody on the chat network, so that buttons are offered, `[in brackets]` below a message) and has cases, each headed by `== title` and `day YYYY-MM-DD`. A message is `HH:MM crew> words`; further lines of it are
//! indented. It may carry `(received HH:MM)` before the `>`, or `(edits N)` for the Nth message of the case, or be
//! `(presses LABEL)`, the last button of theirs with that label, `(is at 40.021, -106.910)`, a place that is shared, or
//! `(passes ...)`, one that a moving phone sends. `HH:MM` alone lets the clock run on; `HH:MM (was down)` has the bot come back then. A sender of digits alone is a user of the chat network, perhaps a stranger; an invite's code is
//! the count of the case's messages in two hex digits, 16 times. `bot> ...` answers the sender, `bot to crew> ...` goes to somebody else.

mod fleets;
mod proactive;

use std::collections::BTreeSet;
use std::fmt::Write;
use std::path::{Path, PathBuf};
use std::sync::LazyLock;

use chrono::{DateTime, NaiveDate, NaiveTime, TimeDelta, TimeZone, Utc};
use chrono_tz::Tz;
use hosebib::book::MessageKey;
use hosebib::desk::{Body, Desk, Inbound, Means, Place, Press, Sender, Turn};
use hosebib::finding::FindingId;
use hosebib::fleet::Fleet;

/// One step of a script.
#[derive(Debug)]
enum Step {
    Says {
        at: NaiveTime,
        from: String,
        note: String,
        text: String,
    },
    Clock {
        at: NaiveTime,
        was_down: bool,
    },
}

/// A script with what it came to.
struct Played {
    path: PathBuf,
    script: String,
    spoken: String,
    brought_up: BTreeSet<FindingId>,
}

/// The scripts, each played once.
static PLAYED: LazyLock<Vec<Played>> = LazyLock::new(|| {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/core/conversations");
    let mut scripts: Vec<PathBuf> = std::fs::read_dir(&folder)
        .expect("the scripts' folder")
        .map(|entry| entry.expect("a readable folder").path())
        .filter(|path| path.extension().is_some_and(|ending| ending == "chat"))
        .collect();
    if let Some(only) = only() {
        scripts.retain(|path| path.to_string_lossy().contains(&only));
    }
    scripts.sort();
    assert!(!scripts.is_empty(), "no scripts in {}", folder.display());
    let play_one = |path: PathBuf| {
        let script = std::fs::read_to_string(&path).expect("a readable script");
        let (spoken, brought_up) = play(&script);
        Played {
            path,
            script,
            spoken,
            brought_up,
        }
    };
    // whoever asks first plays them, and whoever asks next waits: so they are played on all cores
    let cores = std::thread::available_parallelism().map_or(1, usize::from);
    let next = std::sync::Mutex::new(scripts.into_iter());
    let played = std::sync::Mutex::new(Vec::new());
    std::thread::scope(|scope| {
        for _ in 0..cores {
            scope.spawn(|| {
                loop {
                    let path = next.lock().expect("no panic").next();
                    let Some(path) = path else { break };
                    let one = play_one(path);
                    played.lock().expect("no panic").push(one);
                }
            });
        }
    });
    let mut played = played.into_inner().expect("no panic");
    played.sort_by(|a: &Played, b| a.path.cmp(&b.path));
    played
});

/// What the names of the scripts to play hold, where not all are played.
fn only() -> Option<String> {
    std::env::var("ONLY").ok()
}

#[test]
fn every_script_is_spoken_to_the_letter() {
    let mut wrong = Vec::new();
    for played in PLAYED
        .iter()
        .filter(|played| played.spoken != played.script)
    {
        if std::env::var_os("UPDATE").is_some() {
            std::fs::write(&played.path, &played.spoken).expect("a writable script");
        } else {
            wrong.push(format!(
                "{}:\n{}",
                played.path.display(),
                difference(&played.script, &played.spoken)
            ));
        }
    }
    assert!(
        wrong.is_empty(),
        "{}\nUPDATE=1 writes what was said into the files",
        wrong.join("\n")
    );
}

#[test]
fn every_finding_is_brought_up_in_a_conversation() {
    let met: BTreeSet<FindingId> = PLAYED
        .iter()
        .flat_map(|one| one.brought_up.clone())
        .collect();
    let missing: Vec<&FindingId> = FindingId::ALL
        .iter()
        .filter(|id| !met.contains(id))
        .collect();
    assert!(missing.is_empty() || only().is_some(), "{missing:?}");
}

/// Plays a script and returns it as it was spoken, with the findings that were told of in it.
fn play(script: &str) -> (String, BTreeSet<FindingId>) {
    let mut brought_up = BTreeSet::new();
    let mut out = String::new();
    let mut lines = script.lines().peekable();
    let mut fleet: Option<(Tz, Desk)> = None;
    let mut case: Option<Case> = None;
    while let Some(line) = lines.next() {
        if let Some(name) = line.strip_prefix("fleet ") {
            fleet = Some(at_desk(fleets::load(name)));
            writeln!(out, "{line}").expect("a string");
        } else if line.starts_with("== ") || line.starts_with('#') {
            if !out.ends_with("\n\n") {
                out.push('\n');
            }
            writeln!(out, "{line}").expect("a string");
        } else if let Some(day) = line.strip_prefix("day ") {
            let day = day.parse().expect("a day such as 2027-01-23");
            let (zone, desk) = fleet.clone().expect("a script names its fleet first");
            let ended = case.replace(Case::new(zone, desk, day));
            brought_up.extend(ended.into_iter().flat_map(|case| case.brought_up));
            writeln!(out, "{line}").expect("a string");
        } else if let Some(at) = line.strip_suffix(" (was down)").and_then(clock) {
            let was_down = true;
            let case = case.as_mut().expect("a case starts with its day");
            out.push_str(&case.step(Step::Clock { at, was_down }));
        } else if let Some((at, rest)) = line.split_once(' ').filter(|(at, _)| clock(at).is_some())
        {
            let at = clock(at).expect("just seen");
            let (head, text) = rest
                .split_once("> ")
                .unwrap_or((rest.trim_end_matches('>'), ""));
            let mut text = text.to_owned();
            while let Some(more) =
                lines.next_if(|line| line.starts_with("    ") && !line.trim().is_empty())
            {
                text.push('\n');
                text.push_str(more.strip_prefix("    ").unwrap_or(more));
            }
            let (from, note) = head.split_once(' ').unwrap_or((head, ""));
            let step = Step::Says {
                at,
                from: from.to_owned(),
                note: note.to_owned(),
                text,
            };
            out.push_str(
                &case
                    .as_mut()
                    .expect("a case starts with its day")
                    .step(step),
            );
        } else if let Some(at) = clock(line) {
            out.push_str(
                &case
                    .as_mut()
                    .expect("a case starts with its day")
                    .step(Step::Clock {
                        at,
                        was_down: false,
                    }),
            );
        }
        // what the bot said last time is left out, and written anew
    }
    brought_up.extend(case.into_iter().flat_map(|case| case.brought_up));
    (out, brought_up)
}

/// Loads a fleet, and tells its time zone.
fn at_desk(fleet: Fleet) -> (Tz, Desk) {
    let zone = fleet.time_zone;
    (zone, crate::desks::at_work(fleet))
}

struct Case {
    desk: Desk,
    zone: Tz,
    day: NaiveDate,
    now: DateTime<Utc>,
    said: i64,
    edits: i64,
    /// The buttons offered so far: to whom, label and key.
    offered: Vec<(String, String, String)>,
    /// The findings that were told of so far.
    brought_up: BTreeSet<FindingId>,
}

impl Case {
    fn new(zone: Tz, desk: Desk, day: NaiveDate) -> Self {
        let now = zone
            .from_local_datetime(&day.and_time(NaiveTime::MIN))
            .earliest()
            .expect("a day starts")
            .to_utc();
        Case {
            desk,
            zone,
            day,
            now,
            said: 0,
            edits: 0,
            offered: Vec::new(),
            brought_up: BTreeSet::new(),
        }
    }

    /// Returns the instant of a clock time: the first one after now.
    fn instant(&mut self, time: NaiveTime) -> DateTime<Utc> {
        let at = |day: NaiveDate| {
            self.zone
                .from_local_datetime(&day.and_time(time))
                .earliest()
                .expect("a local time")
                .to_utc()
        };
        let mut instant = at(self.day);
        if instant < self.now - TimeDelta::hours(12) {
            self.day = self.day.succ_opt().expect("another day");
            instant = at(self.day);
        }
        instant
    }

    fn step(&mut self, step: Step) -> String {
        let mut out = String::new();
        match step {
            Step::Clock { at, was_down } => {
                let until = self.instant(at);
                // what was due meanwhile is found when the bot is back
                if was_down {
                    self.now = self.now.max(until);
                }
                self.run_to(until, &mut out);
                let note = if was_down { " (was down)" } else { "" };
                writeln!(out, "{}{note}", at.format("%H:%M")).expect("a string");
            }
            Step::Says {
                at,
                from,
                note,
                text,
            } => {
                let shown = at.format("%H:%M");
                let at = self.instant(at);
                let (mut received, mut replaces) = (at, None);
                self.said += 1;
                let mut key = MessageKey::new("script", 0, self.said, 0);
                if let Some(time) = note
                    .strip_prefix("(received ")
                    .and_then(|rest| clock(rest.trim_end_matches(')')))
                {
                    received = self.instant(time);
                }
                if let Some(n) = note
                    .strip_prefix("(edits ")
                    .and_then(|rest| rest.trim_end_matches(')').parse::<i64>().ok())
                {
                    self.edits += 1;
                    key = MessageKey::new("script", 0, n, self.edits);
                    replaces = Some(MessageKey::new("script", 0, n, self.edits - 1));
                }
                self.run_to(received, &mut out);
                let space = if note.is_empty() { "" } else { " " };
                let line = format!(
                    "{shown} {from}{space}{note}> {}",
                    text.replace('\n', "\n    ")
                );
                writeln!(out, "{}", line.trim_end()).expect("a string");
                let mut inbound = Inbound {
                    received,
                    replaces,
                    chat: self.chat_of(&from),
                    ..Inbound::says(key, Sender::Crew(from.clone()), at, text)
                };
                if let Some(label) = bracketed(&note, "presses") {
                    inbound.body = self.press(&from, label);
                }
                if let Some(place) = bracketed(&note, "is at").or(bracketed(&note, "passes")) {
                    inbound.body = place_of(place, note.contains("passes"));
                }
                if let Ok(user) = from.parse() {
                    inbound.from = Sender::ChatUser(user);
                }
                self.lend();
                let turn = self.desk.receive(&inbound);
                self.desk.apply(&turn.records);
                self.take(&turn, &mut out);
            }
        }
        out
    }

    fn lend(&mut self) {
        self.desk.lend(Means {
            chance: Some([u8::try_from(self.said).expect("a short case"); 16]),
            ..Means::default()
        });
    }

    /// The chat a person writes in, where the fleet says that they have one.
    fn chat_of(&self, who: &str) -> Option<i64> {
        self.desk.book().fleet()?.crew.get(who)?.chat_user
    }

    /// The press of a person's last button with a label.
    fn press(&self, from: &str, label: &str) -> Body {
        let mut theirs = self.offered.iter().rev();
        let key = theirs
            .find(|(to, other, _)| to == from && other == label)
            .map(|(.., key)| key.clone());
        Body::Press(Press {
            // one that was never offered is refused as such, where a reader of the script sees it
            key: key.unwrap_or_default(),
            id: "press".into(),
        })
    }

    /// Writes down what a turn says and offers.
    fn take(&mut self, turn: &Turn, out: &mut String) {
        said(turn, out);
        if !turn.outgoing.is_empty() {
            let found = turn.findings.iter().map(|finding| finding.id);
            self.brought_up.extend(found);
        }
        for message in &turn.outgoing {
            for choice in &message.choices {
                let (label, key) = (choice.label.clone(), choice.key.clone());
                self.offered.push((message.to.clone(), label, key));
            }
        }
    }

    /// Lets the clock run on, ticking whenever something falls due.
    fn run_to(&mut self, until: DateTime<Utc>, out: &mut String) {
        while let Some(due) = self
            .desk
            .next_due()
            .map(|due| due.max(self.now))
            .filter(|due| *due <= until)
        {
            self.lend();
            let turn = self.desk.tick(due);
            assert!(
                !turn.records.is_empty(),
                "a tick at {due} was due and did nothing"
            );
            self.desk.apply(&turn.records);
            if !turn.outgoing.is_empty() {
                writeln!(out, "({})", due.with_timezone(&self.zone).format("%H:%M"))
                    .expect("a string");
                self.take(&turn, out);
            }
        }
        self.now = self.now.max(until);
    }
}

fn said(turn: &Turn, out: &mut String) {
    for message in &turn.outgoing {
        let to = if turn.from.as_deref() == Some(message.to.as_str()) {
            String::new()
        } else {
            format!(" to {}", message.to)
        };
        writeln!(
            out,
            "bot{to}> {}",
            message.text.text().replace('\n', "\n     ")
        )
        .expect("a string");
        let labels = message.choices.iter().map(|choice| choice.label.as_str());
        let labels: Vec<String> = labels.map(|label| format!("[{label}]")).collect();
        if !labels.is_empty() {
            writeln!(out, "     {}", labels.join(" ")).expect("a string");
        }
    }
    if let Some(toast) = &turn.toast {
        writeln!(out, "bot shows> {toast}").expect("a string");
    }
}

/// Reads a place in degrees: `40.021, -106.910`.
fn place_of(text: &str, moves: bool) -> Body {
    let (north, east) = text.split_once(", ").expect("a place has two numbers");
    Body::Place(Place {
        latitude: north.parse().expect("degrees north"),
        longitude: east.parse().expect("degrees east"),
        moves,
    })
}

/// Returns what a note in brackets says after its word: `(presses Done 6)`.
fn bracketed<'a>(note: &'a str, word: &str) -> Option<&'a str> {
    let inside = note.strip_prefix('(')?.strip_suffix(')')?;
    inside.strip_prefix(word).map(str::trim)
}

fn clock(text: &str) -> Option<NaiveTime> {
    NaiveTime::parse_from_str(text, "%H:%M").ok()
}

fn difference(wanted: &str, got: &str) -> String {
    let mut out = String::new();
    for (n, pair) in wanted
        .lines()
        .map(Some)
        .chain(std::iter::repeat(None))
        .zip(got.lines().map(Some).chain(std::iter::repeat(None)))
        .enumerate()
    {
        match pair {
            (None, None) => break,
            (a, b) if a != b => {
                write!(
                    out,
                    "  line {}\n  - {}\n  + {}\n",
                    n + 1,
                    a.unwrap_or("(end)"),
                    b.unwrap_or("(end)")
                )
                .expect("a string");
                if out.lines().count() > 30 {
                    break;
                }
            }
            _ => {}
        }
    }
    out
}
