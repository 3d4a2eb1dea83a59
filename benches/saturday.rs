//! A simulated Saturday of 60 trailers, with crews texting through the desk: `cargo bench --bench saturday`.
//!
//! Prints how many alarms each dispatcher got an hour and how they split by level. An operator can take about one alarm
//! in ten minutes on average (EEMUA 191, Alarm systems: a guide to design, management and procurement), so 6 an hour.
//! The crews, their slips and the crowds are made up, and come from a seed: `HOSEBIB_SEED`, `HOSEBIB_SITES`.

#![allow(clippy::print_stdout)] // a bench is read on the screen

use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write;
use std::time::{Duration, Instant};

use chrono::{DateTime, NaiveDate, TimeDelta, Utc};
use chrono_tz::America::Denver;
use hosebib::book::MessageKey;
use hosebib::desk::{Desk, Inbound, Sender, Turn};
use hosebib::finding::{Level, TaskKind};
use hosebib::fleet::{self, Fleet, FleetFiles};
use hosebib::heard::UnitName;
use hosebib::physics::tank::{BODY_GAL, usual_uses_per_h};

const DISPATCHERS: [&str; 2] = ["desk1", "desk2"];

fn main() {
    let seed = size("HOSEBIB_SEED", 7) as u64;
    let sites = size("HOSEBIB_SITES", 25);
    let fleet = fleet::read(&files(sites)).unwrap_or_else(|problems| panic!("{}", problems[0]));
    let mut day = Day::new(fleet, seed);
    day.plan();
    day.run();
    day.report();
}

/// What a person or a truck does at an instant.
#[derive(Debug, Clone)]
enum Act {
    Says(String, String),
    CheckIn(usize),
    Pumped(UnitName),
}

struct Day {
    desk: Desk,
    fleet: Fleet,
    random: fastrand::Rng,
    queue: BTreeMap<(DateTime<Utc>, usize), Act>,
    /// Gallons of waste aboard, and when that was so.
    waste: BTreeMap<UnitName, (f64, DateTime<Utc>)>,
    /// How far each crowd is from the usual.
    pace: Vec<f64>,
    handled: BTreeSet<u32>,
    messages: i64,
    heard: Vec<(DateTime<Utc>, String, Option<Level>, bool)>,
    slowest_tick: Duration,
    ticks: usize,
}

impl Day {
    fn new(fleet: Fleet, seed: u64) -> Day {
        let mut desk = Desk::default();
        let turn = desk.load(DateTime::UNIX_EPOCH, "saturday", fleet.clone());
        desk.apply(&turn.records);
        let mut random = fastrand::Rng::with_seed(seed);
        let pace = fleet
            .jobs
            .iter()
            .map(|_| 0.7 + 0.6 * random.f64())
            .collect();
        Day {
            desk,
            fleet,
            random,
            queue: BTreeMap::new(),
            waste: BTreeMap::new(),
            pace,
            handled: BTreeSet::new(),
            messages: 0,
            heard: Vec::new(),
            slowest_tick: Duration::ZERO,
            ticks: 0,
        }
    }

    /// Plans what every crew does unasked.
    fn plan(&mut self) {
        for n in 0..self.fleet.jobs.len() {
            let job = self.fleet.jobs[n].clone();
            let who = crew(n);
            let start = job.from - TimeDelta::minutes(self.random.i64(180..260));
            let names: Vec<String> = job.trailers.iter().map(UnitName::to_string).collect();
            let all = names.join(" and ");
            self.at(
                start,
                Act::Says(who.clone(), format!("rolling with {all}, eta 40 min")),
            );
            let late = if self.random.f64() < 0.06 {
                80
            } else {
                self.random.i64(30..65)
            };
            let arrived = start + TimeDelta::minutes(late);
            self.at(arrived, Act::Says(who.clone(), format!("{all} arrived")));
            let up = arrived + TimeDelta::minutes(self.random.i64(25..60));
            let ready = "leveled, chocked, unhitched, jacks down, power on 4 cords 120 volts";
            self.at(up, Act::Says(who.clone(), format!("{all} {ready}")));
            let wet = up + TimeDelta::minutes(8);
            self.at(
                wet,
                Act::Says(
                    who.clone(),
                    format!("{all} regulator on, water on, 48 psi taps off"),
                ),
            );
            let open = job.from - TimeDelta::minutes(self.random.i64(5..30));
            self.at(
                open,
                Act::Says(
                    who.clone(),
                    format!("{all} in service, tank empty, stocked"),
                ),
            );
            let mut next = job.from;
            loop {
                next += TimeDelta::minutes(self.random.i64(80..170));
                if next >= job.to {
                    break;
                }
                // now and then somebody forgets
                if self.random.f64() > 0.15 {
                    self.at(next, Act::CheckIn(n));
                }
            }
            for name in &names {
                if self.random.f64() < 0.25 {
                    let faults = [
                        "no hot water",
                        "a clogged toilet",
                        "a leak under the sink",
                        "breaker tripped",
                        "no lights in room A",
                    ];
                    let fault = faults[self.random.usize(0..faults.len())];
                    let minutes = self.random.i64(30..420);
                    let text = format!("{name} has {fault}");
                    self.at(
                        job.from + TimeDelta::minutes(minutes),
                        Act::Says(who.clone(), text),
                    );
                }
            }
            if n == 3 || n == 11 {
                let text = format!("{} a guest got a shock on the steps", names[0]);
                self.at(job.from + TimeDelta::minutes(150), Act::Says(who, text));
            }
        }
    }

    fn at(&mut self, at: DateTime<Utc>, act: Act) {
        let n = self.queue.len() + self.handled.len() * 1_000_003;
        let mut n = n;
        while self.queue.contains_key(&(at, n)) {
            n += 1;
        }
        self.queue.insert((at, n), act);
    }

    /// Plays the day to its end.
    fn run(&mut self) {
        while let Some(((at, _), act)) = self.queue.pop_first() {
            self.tick_to(at);
            match act {
                Act::Says(who, text) => self.say(at, &who, text),
                Act::CheckIn(n) => self.check_in(at, n),
                Act::Pumped(unit) => {
                    let gal = self.level(&unit, at);
                    self.waste.insert(unit.clone(), (0.0, at));
                    let n = self.job_of(&unit);
                    self.say(at, &crew(n), format!("{unit} pumped {gal:.0} gal"));
                }
            }
        }
    }

    fn tick_to(&mut self, until: DateTime<Utc>) {
        let mut now = DateTime::UNIX_EPOCH;
        while let Some(due) = self
            .desk
            .next_due()
            .map(|due| due.max(now))
            .filter(|due| *due <= until)
        {
            now = due;
            let started = Instant::now();
            let turn = self.desk.tick(due);
            self.slowest_tick = self.slowest_tick.max(started.elapsed());
            self.ticks += 1;
            assert!(!turn.records.is_empty(), "a tick was due and did nothing");
            self.take(due, &turn);
        }
    }

    fn say(&mut self, at: DateTime<Utc>, who: &str, text: String) {
        self.messages += 1;
        let turn = self.desk.receive(&Inbound::says(
            MessageKey::new("saturday", 1, self.messages, 0),
            Sender::Crew(who.to_owned()),
            at,
            text,
        ));
        self.take(at, &turn);
    }

    /// Takes a turn in, and lets people act on what they are told.
    fn take(&mut self, at: DateTime<Utc>, turn: &Turn) {
        self.desk.apply(&turn.records);
        for message in &turn.outgoing {
            let unasked = turn.from.as_deref() != Some(message.to.as_str());
            if !unasked {
                continue;
            }
            let to_dispatcher = DISPATCHERS.contains(&message.to.as_str());
            self.heard
                .push((at, message.to.clone(), message.level, to_dispatcher));
            if std::env::var_os("HOSEBIB_SHOW").is_some() && to_dispatcher {
                println!(
                    "{} {}> {}",
                    at.with_timezone(&Denver).format("%H:%M"),
                    message.to,
                    message.text.text()
                );
            }
            if !to_dispatcher && turn.from.is_none() && self.random.f64() < 0.8 {
                // somebody who is asked after looks and answers
                let n: usize = message
                    .to
                    .trim_start_matches("crew")
                    .parse()
                    .expect("a crew number");
                let soon = at + TimeDelta::minutes(self.random.i64(4..20));
                self.at(soon, Act::CheckIn(n));
            }
            if message.level == Some(Level::Danger) && message.to == DISPATCHERS[0] {
                self.at(
                    at + TimeDelta::minutes(4),
                    Act::Says(message.to.clone(), "got it".into()),
                );
            }
        }
        let told: Vec<(u32, UnitName, bool)> = self
            .desk
            .book()
            .tasks()
            .open()
            .filter(|task| task.escalated.is_some() && task.taken_by.is_none())
            .filter_map(|task| Some((task.id, task.unit.clone()?, task.kind == TaskKind::PumpOut)))
            .collect();
        for (id, unit, truck) in told {
            // one in ten is overlooked
            if !self.handled.insert(id) || self.random.f64() < 0.1 {
                continue;
            }
            let who = DISPATCHERS[self.random.usize(0..2)].to_owned();
            let soon = at + TimeDelta::minutes(self.random.i64(2..10));
            self.at(soon, Act::Says(who.clone(), format!("take {id}")));
            if truck {
                let minutes = self.random.i64(100..190);
                self.at(at + TimeDelta::minutes(minutes), Act::Pumped(unit));
            } else {
                self.at(
                    at + TimeDelta::minutes(45),
                    Act::Says(who, format!("done {id}")),
                );
            }
        }
    }

    fn check_in(&mut self, at: DateTime<Utc>, n: usize) {
        let job = self.fleet.jobs[n].clone();
        if at < job.from || at > job.to {
            return;
        }
        let parts: Vec<String> = job
            .trailers
            .iter()
            .map(|unit| {
                let pct = 100.0 * self.level(unit, at) / self.fleet.trailers[unit].waste_gal;
                // read to the nearest eighth
                let eighths = (pct / 12.5).round().clamp(0.0, 8.0);
                let psi = self.random.i64(44..54);
                format!("{unit} waste {eighths:.0}/8, {psi} psi")
            })
            .collect();
        self.say(at, &crew(n), parts.join(". "));
    }

    /// Returns the gallons of waste aboard.
    fn level(&mut self, unit: &UnitName, at: DateTime<Utc>) -> f64 {
        let n = self.job_of(unit);
        let job = &self.fleet.jobs[n];
        let (gal, since) = self.waste.get(unit).copied().unwrap_or((0.0, job.from));
        let guests = self.fleet.guests_share(job, unit, job.guests);
        let uses = usual_uses_per_h(guests, job.alcohol) * self.pace[n];
        let hours = job.open_hours_between(since, at);
        let spec = &self.fleet.trailers[unit];
        let level = (gal + uses * hours * (spec.gal_per_use + BODY_GAL)).min(spec.waste_gal);
        self.waste.insert(unit.clone(), (level, at.max(since)));
        level
    }

    fn job_of(&self, unit: &UnitName) -> usize {
        let here = |job: &fleet::Job| job.trailers.contains(unit);
        self.fleet
            .jobs
            .iter()
            .position(here)
            .expect("every trailer is at a job")
    }

    fn report(&self) {
        let alarms: Vec<_> = self
            .heard
            .iter()
            .filter(|(.., level, dispatcher)| *dispatcher && level.is_some())
            .collect();
        let (first, last) = (
            self.fleet
                .jobs
                .iter()
                .map(|job| job.from)
                .min()
                .expect("jobs"),
            self.fleet
                .jobs
                .iter()
                .map(|job| job.to)
                .max()
                .expect("jobs"),
        );
        let hours = (last - first).num_minutes() as f64 / 60.0;
        println!(
            "{} trailers at {} sites, {} messages, {} ticks (slowest {:.1} ms), {hours:.1} h from first doors to last",
            self.fleet.trailers.len(),
            self.fleet.jobs.len(),
            self.messages,
            self.ticks,
            self.slowest_tick.as_secs_f64() * 1e3
        );
        for who in DISPATCHERS {
            let mine: Vec<_> = alarms.iter().filter(|(_, to, ..)| to == who).collect();
            let mut by_hour: BTreeMap<i64, usize> = BTreeMap::new();
            for (at, ..) in &mine {
                *by_hour.entry((*at - first).num_hours()).or_default() += 1;
            }
            println!(
                "{who}: {} alarms, {:.1} an hour on average (budget 6), {} in the worst hour",
                mine.len(),
                mine.len() as f64 / hours,
                by_hour.values().max().copied().unwrap_or(0)
            );
        }
        for level in [Level::Danger, Level::Warning, Level::Caution, Level::Notice] {
            let count = alarms
                .iter()
                .filter(|(_, _, of, _)| *of == Some(level))
                .count();
            let share = 100.0 * count as f64 / alarms.len().max(1) as f64;
            println!("  {level:?}: {count} ({share:.0} %)");
        }
        let crews = self
            .heard
            .iter()
            .filter(|(.., dispatcher)| !dispatcher)
            .count();
        println!("crews: {crews} messages unasked");
    }
}

fn crew(n: usize) -> String {
    format!("crew{n}")
}

fn size(name: &str, usual: usize) -> usize {
    let set = std::env::var(name).ok();
    set.and_then(|value| value.parse().ok()).unwrap_or(usual)
}

/// Makes a fleet of one to four trailers a site, all of them out on one Saturday.
fn files(sites: usize) -> FleetFiles {
    let mut random = fastrand::Rng::with_seed(11);
    let mut fleet = String::from(
        "company = \"Lantern Ferry Comforts\"\ntime_zone = \"America/Denver\"\nquiet_hours = \"00:30-05:00\"\ndigest_at = [\"07:00\", \"23:30\"]\n",
    );
    let mut jobs = String::new();
    let mut crew = String::new();
    for who in DISPATCHERS {
        write!(
            crew,
            "[[crew]]\nid = \"{who}\"\nname = \"{who}\"\nrole = \"dispatcher\"\n"
        )
        .expect("a string");
    }
    let day = NaiveDate::from_ymd_opt(2027, 6, 19).expect("a Saturday");
    let mut next = 101;
    for site in 0..sites {
        let count = [2, 3, 1, 4, 2][site % 5];
        let names: Vec<String> = (next..next + count).map(|n| n.to_string()).collect();
        next += count;
        for name in &names {
            let gal = [300, 400, 500, 650][random.usize(0..4)];
            write!(
                fleet,
                "[[trailer]]\nid = \"{name}\"\nwaste_gal = {gal}\nfresh_gal = 200\nwaste_gauge = {{ kind = \"sight\", step_pct = 12.5 }}\nrooms = [ {{ name = \"A\", toilets = 3, urinals = 1, sinks = 2 }}, {{ name = \"B\", toilets = 3, sinks = 2 }} ]\n"
            )
            .expect("a string");
        }
        let guests = count * random.usize(60..150);
        let (from, to) = (random.usize(10..16), random.usize(20..24));
        let list: Vec<String> = names.iter().map(|name| format!("\"{name}\"")).collect();
        write!(
            jobs,
            "[[site]]\nid = \"green-{site}\"\nname = \"Green {site}\"\npump_truck = {{ lead_h = 2.0, outlet_to_road_ft = 30 }}\n[[job]]\nsite = \"green-{site}\"\ntrailers = [{}]\nfrom = {day}T{from}:00:00\nto = {day}T{to}:00:00\nguests = {guests}\nalcohol = {}\n",
            list.join(", "),
            site % 2 == 0
        )
        .expect("a string");
        write!(
            crew,
            "[[crew]]\nid = \"crew{site}\"\nname = \"Crew {site}\"\nrole = \"driver\"\n"
        )
        .expect("a string");
    }
    FleetFiles {
        fleet,
        jobs,
        crew,
        ..FleetFiles::default()
    }
}
