//! `hosebib chat`: the console chat, with line editing or piped input.

use std::io::{IsTerminal, Write};
use std::path::{Path, PathBuf};
use std::process::ExitCode;
use std::sync::{Arc, mpsc};

use chrono::{DateTime, NaiveTime, TimeZone, Utc};

use super::CliError;
use super::clock::{self, Clock};
use super::data::{self, Random};
use super::input::{LONGEST, Lines, Typed};
use super::{load, replay};
use crate::book::MessageKey;
use crate::chat::clerk::{Clerk, Parcel, SNAPSHOT_EVERY, Setup, Window};
use crate::chat::metrics::Metrics;
use crate::desk::{Desk, Inbound, Sender};

use crate::fleet::{CrewMember, Fleet, demo};
use crate::reply::{Arg, Replies, Voice};
use crate::store::Files;

/// The file in the data directory that keeps what was typed, for the terminal's editing.
pub(super) const HISTORY: &str = "history.txt";

/// Arguments of `hosebib chat`.
#[derive(Debug, clap::Args)]
pub(super) struct Args {
    /// Use the demo fleet that is built in; its clock starts at 17:10 on its busiest day
    #[arg(long, conflicts_with = "fleet")]
    demo: bool,
    /// Use the fleet in this folder
    #[arg(long, value_name = "DIR")]
    fleet: Option<PathBuf>,
    /// Keep records in this folder; without it a temporary one is used
    #[arg(long, value_name = "DIR")]
    data: Option<PathBuf>,
    /// Chat as this crew member
    #[arg(long = "as", value_name = "CREW")]
    crew: Option<String>,
    /// Start the clock at this time (RFC 3339, with its offset: 2027-01-23T17:10:00-07:00) instead of now
    #[arg(long, value_name = "TIME", value_parser = replay::instant)]
    at: Option<DateTime<Utc>>,
}

pub(super) fn run(args: &Args) -> Result<ExitCode, CliError> {
    let fleet = match (&args.fleet, args.demo) {
        (Some(dir), _) => Some(load::read(dir)?),
        (None, true) => Some(load::demo()),
        (None, false) if args.data.is_none() => {
            let what = "nothing to chat with: give `--demo`, `--fleet DIR`, or `--data DIR` of an earlier chat".into();
            return Err(CliError::Usage(what));
        }
        (None, false) => None,
    };
    let clock = Clock::default();
    match args.at {
        Some(at) => clock.set(at),
        None if args.demo => clock.set(demo::starts()),
        None => {}
    }
    let folder = data::Folder::open(args.data.as_deref())?;
    let (parcels, letters) = mpsc::channel();
    let setup = Setup {
        salt: Box::new(Random),
        clock: {
            let clock = clock.clone();
            Box::new(move || clock.now())
        },
        deliver: Box::new(move |parcel| {
            // nobody reads any more once the chat has ended; the outbox keeps what was not read
            let _ = parcels.send(parcel);
        }),
        comes_again: false,
        disk: Box::new(Files),
        snapshot_every: SNAPSHOT_EVERY,
        metrics: Metrics::default(),
    };
    let (clerk, notes) = Clerk::open::<Desk>(folder.path(), setup)
        .map_err(|error| CliError::Failed(error.to_string()))?;
    let mut err = std::io::stderr();
    for note in notes {
        writeln!(err, "hosebib: {note}")?;
    }
    let window = clerk.window();
    let fleet = data::bring_up(&window, fleet)?;
    let crew = sender(args, &fleet)?;
    let mut chat = Chat {
        window,
        letters,
        clock,
        fleet,
        crew,
        sent: 0,
        started: clock::now().timestamp_micros(),
    };
    if args.demo {
        chat.play_day()?;
    } else if let Some(at) = args.at {
        // a long log took its time to open
        chat.clock.set(at);
    }
    chat.greet(args.demo, folder.path())?;
    let outcome = if std::io::stdin().is_terminal() {
        chat.converse(folder.path())
    } else {
        chat.read_piped()
    };
    clerk
        .stop()
        .map_err(|error| CliError::Failed(error.to_string()))?;
    outcome.map(|()| ExitCode::SUCCESS)
}

/// Finds who chats: the one named, the demo's driver, or the only one there is.
fn sender(args: &Args, fleet: &Fleet) -> Result<CrewMember, CliError> {
    let id = match &args.crew {
        Some(id) => id.clone(),
        None if args.demo => demo::SENDER.to_owned(),
        None if fleet.crew.len() == 1 => fleet.crew.keys().next().cloned().unwrap_or_default(),
        None => {
            return Err(CliError::Usage(format!(
                "who are you? Give `--as` one of: {}",
                everyone(fleet)
            )));
        }
    };
    let unknown = || {
        CliError::Usage(format!(
            "`{id}` is not on the crew list: give `--as` one of: {}",
            everyone(fleet)
        ))
    };
    fleet.crew.get(&id).cloned().ok_or_else(unknown)
}

fn everyone(fleet: &Fleet) -> String {
    let mut ids: Vec<&str> = fleet.crew.keys().map(String::as_str).take(20).collect();
    if ids.is_empty() {
        ids.push("nobody: crew.toml is empty");
    }
    ids.join(", ")
}

/// What falls due while the clock is moved on is done in at most so many turns; the rest comes at the time moved to.
const MOST_STEPS: usize = 10_000;

struct Chat {
    window: Window,
    letters: mpsc::Receiver<Parcel>,
    clock: Clock,
    fleet: Arc<Fleet>,
    crew: CrewMember,
    sent: i64,
    started: i64,
}

impl Chat {
    /// Puts in what the demo's crew wrote before the clock's start, so that there is a day to ask about.
    fn play_day(&mut self) -> Result<(), CliError> {
        let start = self.clock.now();
        // what was written at the very minute of the start is for the newcomer to write
        let day = replay::day()
            .into_iter()
            .filter(|inbound| inbound.received < start)
            .collect();
        self.window.batch_blocking(day).map_err(not_done)?;
        self.barrier()?;
        // what fell due on that day is done slice by slice
        let mut steps = 0;
        while self.next_due()?.is_some_and(|due| due <= start) && steps < MOST_STEPS {
            self.barrier()?;
            steps += 1;
        }
        while let Ok(parcel) = self.letters.try_recv() {
            self.accept(&parcel);
        }
        Ok(())
    }

    fn greet(&self, demo: bool, folder: &Path) -> Result<(), CliError> {
        let replies = Replies::new();
        let voice = self.voice(&replies);
        let mut err = std::io::stderr();
        let name = ("name", Arg::from(self.crew.name.as_str()));
        let time = ("time", Arg::from(voice.date_and_time(self.clock.now())));
        let key = if demo {
            "demo-greeting"
        } else {
            "console-greeting"
        };
        writeln!(err, "{}", voice.say(key, &[name, time]))?;
        writeln!(
            err,
            "{}\n",
            voice.say(
                "demo-data",
                &[("folder", folder.display().to_string().into())]
            )
        )?;
        Ok(())
    }

    fn voice<'a>(&'a self, replies: &'a Replies) -> Voice<'a> {
        let language = self.crew.language.unwrap_or(self.fleet.language);
        replies.voice(
            language,
            self.fleet.style,
            self.fleet.time_zone,
            self.clock.now(),
        )
    }

    fn local(&self) -> DateTime<chrono_tz::Tz> {
        self.clock.now().with_timezone(&self.fleet.time_zone)
    }

    /// Reads messages from a pipe, one a line, and prints what is said.
    fn read_piped(&mut self) -> Result<(), CliError> {
        let mut input = Lines::new(std::io::stdin().lock(), LONGEST);
        while let Some(typed) = input.next()? {
            match typed {
                Typed::Text(text) => self.say(&text)?,
                Typed::Unreadable(why) => {
                    self.print(&[format!("Not read: {why}. Nothing of it was logged.")])?;
                }
            }
        }
        Ok(())
    }

    /// Reads messages from a terminal, with editing and history.
    fn converse(&mut self, folder: &Path) -> Result<(), CliError> {
        let failed = |error: rustyline::error::ReadlineError| {
            CliError::Failed(format!("the terminal failed: {error}"))
        };
        let mut editor = rustyline::DefaultEditor::new().map_err(failed)?;
        let history = folder.join(HISTORY);
        // no history yet is no failure
        let _ = editor.load_history(&history);
        loop {
            let prompt = format!("{} {}> ", self.local().format("%H:%M"), self.crew.id);
            match editor.readline(&prompt) {
                Ok(line) => {
                    // a history that cannot be kept is no reason to stop the chat
                    let _ = editor.add_history_entry(line.as_str());
                    self.say(&line)?;
                }
                Err(
                    rustyline::error::ReadlineError::Eof
                    | rustyline::error::ReadlineError::Interrupted,
                ) => break,
                Err(error) => return Err(failed(error)),
            }
        }
        let _ = editor.save_history(&history);
        Ok(())
    }

    /// Takes one line: an order to the console itself, or a message.
    fn say(&mut self, text: &str) -> Result<(), CliError> {
        // `/start u-12` is what a trailer's sticker sends
        if let Some(order) = text
            .strip_prefix('/')
            .filter(|order| !order.starts_with("start "))
        {
            return self.order(order);
        }
        if text.trim().is_empty() {
            return self.print_letters();
        }
        self.sent += 1;
        let now = self.clock.now();
        let inbound = Inbound::says(
            MessageKey::new("console", self.started, self.sent, 0),
            Sender::Crew(self.crew.id.clone()),
            now,
            text,
        );
        match self.window.batch_blocking(vec![inbound]) {
            Ok(()) => self.print_letters(),
            Err(error) => {
                self.print_letters()?;
                self.print(&[format!(
                    "Not logged: {error}. Mend that, then send it again."
                )])
            }
        }
    }

    /// Obeys an order to the console: `/as CREW` changes who chats, `/at HH:MM` moves the clock on.
    fn order(&mut self, order: &str) -> Result<(), CliError> {
        let (word, rest) = order.trim().split_once(' ').unwrap_or((order.trim(), ""));
        let said = match (word, rest.trim()) {
            ("as", id) => match self.fleet.crew.get(id) {
                Some(member) => {
                    self.crew = member.clone();
                    format!("You are {} now.", member.name)
                }
                None => format!("`{id}` is not on the crew list: {}", everyone(&self.fleet)),
            },
            ("at", time) => match NaiveTime::parse_from_str(time, "%H:%M") {
                Ok(time) => self.move_clock(time)?,
                Err(_) => format!("`{time}` is no clock time: give one such as `/at 19:30`"),
            },
            _ => "The console knows `/as CREW` and `/at HH:MM`. Everything else is a message; ctrl-D ends.".to_owned(),
        };
        self.print(&[said])?;
        self.print_letters()
    }

    /// Moves the clock on to the next such time, with all that falls due on the way at its own instant.
    fn move_clock(&mut self, time: NaiveTime) -> Result<String, CliError> {
        let local = self.local();
        let today = self
            .fleet
            .time_zone
            .from_local_datetime(&local.date_naive().and_time(time))
            .earliest();
        let next = today.filter(|at| *at > local).or_else(|| {
            let tomorrow = local.date_naive().succ_opt()?;
            self.fleet
                .time_zone
                .from_local_datetime(&tomorrow.and_time(time))
                .earliest()
        });
        let Some(at) = next else {
            return Ok("That time does not exist on that day.".to_owned());
        };
        self.pass_until(at.to_utc())?;
        Ok(format!("It is {} now.", self.local().format("%a %H:%M")))
    }

    /// Lets the time pass, and prints what is said on the way.
    fn pass_until(&mut self, to: DateTime<Utc>) -> Result<(), CliError> {
        let mut steps = 0;
        while let Some(due) = self.next_due()?.filter(|due| *due <= to)
            && steps < MOST_STEPS
        {
            if due > self.clock.now() {
                self.clock.set(due);
            }
            steps += 1;
            // the clerk looks at the clock behind each job: behind this one, it does what is due
            self.barrier()?;
            let local = self.local().format("%a %H:%M").to_string();
            self.print_letters_under(&format!("({local})"))?;
        }
        self.clock.set(to);
        self.barrier()
    }

    fn next_due(&self) -> Result<Option<DateTime<Utc>>, CliError> {
        self.window.next_due_blocking().map_err(not_done)
    }

    /// Waits until the clerk has done all it was handed.
    fn barrier(&self) -> Result<(), CliError> {
        self.window.show_blocking().map(|_| ()).map_err(not_done)
    }

    fn print_letters(&mut self) -> Result<(), CliError> {
        let lines = self.letters()?;
        self.print(&lines)
    }

    /// Prints what was said, under a heading where anything was.
    fn print_letters_under(&mut self, heading: &str) -> Result<(), CliError> {
        let mut lines = self.letters()?;
        if !lines.is_empty() {
            lines.insert(0, heading.to_owned());
        }
        self.print(&lines)
    }

    /// Takes what was said since this was last asked, as the console shows it.
    fn letters(&mut self) -> Result<Vec<String>, CliError> {
        self.barrier()?;
        let mut lines = Vec::new();
        while let Ok(parcel) = self.letters.try_recv() {
            if parcel.is_recall() || parcel.fetch.is_some() {
                continue;
            }
            self.accept(&parcel);
            let name = self
                .fleet
                .crew
                .get(&parcel.to)
                .map_or(parcel.to.as_str(), |member| member.name.as_str());
            lines.push(if parcel.to == self.crew.id {
                parcel.text
            } else {
                format!("(to {name}) {}", parcel.text)
            });
        }
        Ok(lines)
    }

    fn accept(&self, parcel: &Parcel) {
        if let Some(id) = parcel.id {
            self.window.sent(id, 0, 1, 0);
        }
    }

    #[allow(clippy::print_stdout)]
    fn print(&self, lines: &[String]) -> Result<(), CliError> {
        let mut out = std::io::stdout().lock();
        for line in lines {
            writeln!(out, "{line}\n")?;
        }
        out.flush()?;
        Ok(())
    }
}

fn not_done(error: crate::chat::clerk::NotDone) -> CliError {
    CliError::Failed(error.to_string())
}
