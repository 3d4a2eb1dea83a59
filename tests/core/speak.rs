//! What the bot says by itself, beyond single conversations: after a restart, over a month with a change of clocks, within
//! the dispatcher's budget, and a slice at a time.

use chrono::{DateTime, NaiveDate, TimeDelta, TimeZone, Utc};
use chrono_tz::America::Denver;
use hosebib::book::{MessageKey, Record};
use hosebib::desk::{Desk, Inbound, Sender, Turn};
use hosebib::fleet::{self, Fleet, FleetFiles};

/// A desk with every record it was given, so that it can be folded anew.
struct Bot {
    desk: Desk,
    records: Vec<Record>,
    said: i64,
}

impl Bot {
    fn new(fleet: Fleet) -> Bot {
        let mut bot = Bot {
            desk: Desk::default(),
            records: Vec::new(),
            said: 0,
        };
        let turn = bot.desk.load(DateTime::UNIX_EPOCH, "test", fleet);
        bot.take(turn);
        bot
    }

    fn take(&mut self, turn: Turn) -> Turn {
        self.desk.apply(&turn.records);
        self.records.extend(turn.records.iter().cloned());
        turn
    }

    fn hears(&mut self, at: DateTime<Utc>, from: &str, text: &str) -> Turn {
        self.said += 1;
        let turn = self.desk.receive(&Inbound::says(
            MessageKey::new("test", 1, self.said, 0),
            Sender::Crew(from.to_owned()),
            at,
            text,
        ));
        self.take(turn)
    }

    /// Ticks once at `now`, if something is due.
    fn ticks(&mut self, now: DateTime<Utc>) -> Option<Turn> {
        self.desk.next_due().filter(|due| *due <= now)?;
        let turn = self.desk.tick(now);
        assert!(!turn.records.is_empty(), "what is due leaves a record");
        Some(self.take(turn))
    }

    /// Lets the clock run to `until`, and returns every turn with its instant.
    fn runs(&mut self, from: DateTime<Utc>, until: DateTime<Utc>) -> Vec<Turn> {
        let mut turns = Vec::new();
        let mut now = from;
        while let Some(due) = self.desk.next_due().map(|due| due.max(now)) {
            if due > until {
                break;
            }
            now = due;
            turns.extend(self.ticks(now));
            assert!(turns.len() < 10_000, "the clock does not come to rest");
            if turns.len().is_multiple_of(16) {
                self.keeps_what_falls_due();
            }
        }
        self.keeps_what_falls_due();
        turns
    }

    /// What falls due is kept from record to record: it must be what a fresh desk reads off the book.
    fn keeps_what_falls_due(&self) {
        let fresh = Desk::new(self.desk.book().clone());
        assert_eq!(self.desk.next_due(), fresh.next_due());
    }

    /// Starts anew from what was written down, through JSON as the journal keeps it.
    fn restarted(&self) -> Bot {
        let mut desk = Desk::default();
        for record in &self.records {
            let line = serde_json::to_string(record).expect("a record is JSON");
            let read: Record = serde_json::from_str(&line).expect("JSON is a record");
            desk.apply(&[read]);
        }
        Bot {
            desk,
            records: self.records.clone(),
            said: self.said,
        }
    }
}

fn local(day: (i32, u32, u32), hour: u32, minute: u32) -> DateTime<Utc> {
    let date = NaiveDate::from_ymd_opt(day.0, day.1, day.2).expect("a date");
    let time = date.and_hms_opt(hour, minute, 0).expect("a time");
    Denver
        .from_local_datetime(&time)
        .earliest()
        .expect("a local time")
        .to_utc()
}

fn texts(turn: &Turn) -> Vec<(String, String)> {
    let said = turn.outgoing.iter();
    said.map(|message| (message.to.clone(), message.text.text().to_owned()))
        .collect()
}

#[test]
fn a_lone_workers_clock_survives_a_restart_and_says_how_late_it_is() {
    let day = (2027, 7, 24);
    let mut bot = Bot::new(fleet::demo::fleet());
    bot.hears(local(day, 12, 0), "abel", "going under 23, check me in 15");
    let mut bot = bot.restarted();
    assert_eq!(bot.desk.next_due(), Some(local(day, 12, 15)));
    let back = local(day, 14, 0);
    let asked = bot.ticks(back).expect("it was due while the bot was down");
    let to_abel: Vec<_> = texts(&asked);
    let said = &to_abel
        .iter()
        .find(|(to, _)| to == "abel")
        .expect("abel is asked")
        .1;
    assert!(
        said.contains("due at 12:15") && said.contains("OK?"),
        "{said}"
    );
    let mut bot = bot.restarted();
    let alarm = bot
        .ticks(back + TimeDelta::minutes(3))
        .expect("nobody answered");
    let alarm = texts(&alarm);
    let to_nadia = &alarm
        .iter()
        .find(|(to, _)| to == "nadia")
        .expect("nadia is alarmed")
        .1;
    assert!(
        to_nadia.contains("DANGER") && to_nadia.contains("23, Windlass Flat"),
        "{to_nadia}"
    );
}

#[test]
fn a_folded_book_is_the_book_that_was_written_down() {
    let day = (2027, 1, 23);
    let mut bot = Bot::new(fleet::demo::fleet());
    bot.hears(
        local(day, 11, 0),
        "tobin",
        "12 in service, waste empty, temp 20",
    );
    bot.hears(local(day, 11, 5), "juno", "rolling with 16, eta 40");
    bot.hears(local(day, 11, 6), "nadia", "tell juno call me");
    bot.hears(local(day, 11, 7), "nadia", "low 10 tonight");
    let start = local(day, 11, 7);
    let mut again = bot.restarted();
    let (a, b) = (
        bot.runs(start, local(day, 23, 0)),
        again.runs(start, local(day, 23, 0)),
    );
    assert_eq!(
        a.iter().map(texts).collect::<Vec<_>>(),
        b.iter().map(texts).collect::<Vec<_>>()
    );
    assert!(!a.is_empty());
}

#[test]
fn a_month_of_ticks_keeps_its_times_over_a_change_of_clocks() {
    // clocks go forward on 2027-03-14 in this zone: 02:30 does not exist that night
    let mut fleet = fleet::demo::fleet();
    let half_past_two = chrono::NaiveTime::from_hms_opt(2, 30, 0).expect("a time");
    let seven = chrono::NaiveTime::from_hms_opt(7, 0, 0).expect("a time");
    fleet.digest_at = vec![half_past_two, seven];
    fleet.quiet_hours = None;
    let mut bot = Bot::new(fleet);
    let start = local((2027, 3, 1), 6, 0);
    bot.hears(start, "ines", "la 4 en servicio, 45 grados, tanque vacío");
    let mut by_day: std::collections::BTreeMap<NaiveDate, Vec<String>> = Default::default();
    for turn in bot.runs(start, local((2027, 4, 1), 0, 0)) {
        let digest = turn.outgoing.iter().any(|message| message.level.is_none());
        if digest {
            let at = turn.at.with_timezone(&Denver);
            let clock = at.format("%H:%M").to_string();
            by_day.entry(at.date_naive()).or_default().push(clock);
        }
    }
    let changed = NaiveDate::from_ymd_opt(2027, 3, 14).expect("a date");
    assert_eq!(by_day[&changed], ["03:30", "07:00"]);
    let usual = by_day
        .iter()
        .filter(|(day, _)| **day != changed && day.to_string() != "2027-03-01");
    for (day, clocks) in usual {
        // without a job the digest is left out
        assert!(*clocks == ["02:30", "07:00"], "{day}: {clocks:?}");
    }
    assert!(by_day.len() > 20, "{} days", by_day.len());
}

#[test]
fn the_demo_day_keeps_the_dispatchers_budget() {
    let mut bot = Bot::new(fleet::demo::fleet());
    let mut alarms = Vec::new();
    let (mut first, mut last) = (None, DateTime::UNIX_EPOCH);
    let mut note = |turn: &Turn| {
        let unasked = turn.outgoing.iter().filter(|message| {
            message.to == "nadia"
                && message.level.is_some()
                && turn.from.as_deref() != Some("nadia")
        });
        alarms.extend(unasked.map(|message| (turn.at, message.text.text().to_owned())));
    };
    for line in fleet::demo::DAY
        .lines()
        .filter(|line| !line.trim().is_empty())
    {
        let line: serde_json::Value = serde_json::from_str(line).expect("a message");
        let text = |key: &str| line[key].as_str().unwrap_or_default().to_owned();
        let at: DateTime<Utc> = DateTime::parse_from_rfc3339(&text("at"))
            .expect("a time")
            .to_utc();
        let received = DateTime::parse_from_rfc3339(&text("received")).map_or(at, |at| at.to_utc());
        if first.is_some() {
            bot.runs(last, received).iter().for_each(&mut note);
        }
        first.get_or_insert(received);
        last = last.max(received);
        note(&bot.hears(at, &text("from"), &text("text")));
    }
    let hours = (last - first.expect("a day")).num_minutes() as f64 / 60.0;
    let rate = alarms.len() as f64 / hours;
    // about one alarm in ten minutes on average: EEMUA 191
    assert!(rate <= 6.0, "{rate:.1} an hour: {alarms:#?}");
    assert!(!alarms.is_empty());
}

#[test]
fn an_hour_that_comes_twice_has_one_digest() {
    // clocks go back on 2027-11-07 in this zone: 01:30 comes twice that night
    let files = FleetFiles {
        fleet: "time_zone = \"America/Denver\"\ndigest_at = [\"01:30\", \"07:00\"]\n[[trailer]]\nid = \"4\"\n".into(),
        jobs: "[[site]]\nid = \"mill\"\n[[job]]\nsite = \"mill\"\ntrailers = [\"4\"]\nfrom = 2027-10-25T06:00:00\nto = 2027-11-30T18:00:00\nhours = \"06:00-18:00\"\nguests = 12\n".into(),
        crew: "[[crew]]\nid = \"dot\"\nname = \"Dot\"\nrole = \"dispatcher\"\n".into(),
        ..FleetFiles::default()
    };
    let fleet = fleet::read(&files).unwrap_or_else(|problems| panic!("{}", problems[0]));
    let mut bot = Bot::new(fleet);
    let start = local((2027, 11, 1), 8, 0);
    bot.hears(start, "dot", "4 in service, waste empty");
    let mut at = Vec::new();
    for turn in bot.runs(start, local((2027, 11, 30), 0, 0)) {
        let digest = turn
            .outgoing
            .iter()
            .any(|out| out.text.text().contains("unit"));
        let local = turn.at.with_timezone(&Denver);
        if digest && ["01:30", "07:00"].contains(&local.format("%H:%M").to_string().as_str()) {
            at.push(local.naive_local());
        }
    }
    let days = 28;
    assert_eq!(
        at.iter()
            .filter(|at| at.to_string().ends_with("01:30:00"))
            .count(),
        days
    );
    assert_eq!(
        at.iter()
            .filter(|at| at.to_string().ends_with("07:00:00"))
            .count(),
        days
    );
}

#[test]
fn a_digest_of_many_trailers_is_gathered_in_slices_and_survives_a_restart() {
    let day = (2027, 6, 19);
    let mut bot = Bot::new(thirty("digest_at = [\"14:00\"]\n"));
    for n in 1..=30 {
        bot.hears(
            local(day, 12, 0),
            "ana",
            &format!("{n} in service, tank empty"),
        );
    }
    let due = local(day, 14, 0);
    bot.runs(local(day, 12, 0), due - TimeDelta::seconds(1));
    let (slices, digests) = gathered(bot, due, "30 units");
    // four to look at them, one to write the list
    assert!(slices >= 5, "{slices}");
    assert_eq!(digests.len(), 1, "{digests:?}");
}

#[test]
fn a_digest_that_is_asked_for_over_many_trailers_is_gathered_in_slices() {
    let day = (2027, 6, 19);
    let mut bot = Bot::new(many(60, ""));
    for n in 1..=60 {
        let text = format!("{n} in service, tank empty");
        bot.hears(local(day, 12, 0), "ana", &text);
    }
    let asked = local(day, 12, 10);
    bot.runs(local(day, 12, 0), asked);
    let turn = bot.hears(asked, "dot", "digest");
    assert!(turn.forecast.is_empty(), "{} at once", turn.forecast.len());
    // somebody is answered in between
    let between = bot.hears(asked, "ana", "7 pressure 50");
    assert_eq!(between.outgoing[0].to, "ana");
    let (slices, digests) = gathered(bot, asked, "60 units");
    // eight to look at them, one to write the list
    assert!(slices >= 9, "{slices}");
    let [(to, text)] = digests.as_slice() else {
        panic!("{digests:?}");
    };
    assert_eq!(to, "dot", "{text}");
}

/// Ticks through what is due, restarted after each slice; returns how many there were, and what was said with `words`.
fn gathered(bot: Bot, due: DateTime<Utc>, words: &str) -> (usize, Vec<(String, String)>) {
    let mut bot = bot.restarted();
    let (mut slices, mut said) = (0, Vec::new());
    while bot.desk.next_due().is_some_and(|next| next <= due) {
        let turn = bot.ticks(due).expect("it is due");
        slices += 1;
        assert!(turn.forecast.len() <= 8, "{} at once", turn.forecast.len());
        let told = texts(&turn).into_iter();
        said.extend(told.filter(|(_, text)| text.contains(words)));
        bot = bot.restarted();
        assert!(slices < 20);
    }
    (slices, said)
}

fn thirty(more: &str) -> Fleet {
    many(30, more)
}

/// A fleet of so many trailers at one job, a driver and a dispatcher.
fn many(count: usize, more: &str) -> Fleet {
    use std::fmt::Write;
    let mut trailers = format!("company = \"Reed Lane\"\ntime_zone = \"America/Denver\"\n{more}");
    let mut names = Vec::new();
    for n in 1..=count {
        write!(trailers, "[[trailer]]\nid = \"{n}\"\n").expect("a string");
        names.push(format!("\"{n}\""));
    }
    let jobs = format!(
        "[[site]]\nid = \"green\"\n[[job]]\nsite = \"green\"\ntrailers = [{}]\nfrom = 2027-06-19T12:00:00\nto = 2027-06-19T23:00:00\nguests = 300\n",
        names.join(", ")
    );
    let crew = "[[crew]]\nid = \"ana\"\nname = \"Ana\"\nrole = \"driver\"\n[[crew]]\nid = \"dot\"\nname = \"Dot\"\nrole = \"dispatcher\"\n";
    let files = FleetFiles {
        fleet: trailers,
        jobs,
        crew: crew.to_owned(),
        ..FleetFiles::default()
    };
    fleet::read(&files).unwrap_or_else(|problems| panic!("{}", problems[0]))
}

#[test]
fn many_trailers_at_once_are_looked_into_a_slice_at_a_time() {
    let day = (2027, 6, 19);
    let mut bot = Bot::new(thirty(""));
    for n in 1..=30 {
        bot.hears(
            local(day, 12, 0),
            "ana",
            &format!("{n} in service, tank empty"),
        );
    }
    let mut asked_after = 0;
    for turn in bot.runs(local(day, 12, 0), local(day, 18, 0)) {
        assert!(turn.findings.len() <= 8, "{} at once", turn.findings.len());
        let mine = turn.outgoing.iter().filter(|message| message.to == "dot");
        assert!(mine.count() <= 1, "one message a person a tick");
        asked_after += turn.findings.len();
    }
    assert!(asked_after >= 30, "{asked_after}");
}
