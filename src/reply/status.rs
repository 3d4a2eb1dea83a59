//! How one unit stands, and what was reported on it before.

use chrono::{DateTime, Utc};

use super::voice::{Arg, Voice};
use crate::book::{Task, UnitState};
use crate::fleet::Trailer;
use crate::heard::{Amps, Entry, ReadingKey, UnitName};
use crate::outlook::Outlook;

/// How many times of telling a status goes back to.
const TIMES: usize = 4;

/// Everything a status tells.
#[derive(Debug, Clone)]
pub struct Status<'a> {
    /// The trailer.
    pub unit: &'a UnitName,
    /// The site it stands at, by name.
    pub site: Option<&'a str>,
    /// What is known of it.
    pub state: &'a UnitState,
    /// Its spec.
    pub spec: Option<&'a Trailer>,
    /// What is coming; none to leave it out.
    pub outlook: Option<&'a Outlook>,
    /// Its open tasks.
    pub tasks: Vec<&'a Task>,
}

/// One report of the past.
#[derive(Debug, Clone, Copy)]
pub struct Past<'a> {
    /// When it was so.
    pub at: DateTime<Utc>,
    /// Who told it, by crew id.
    pub from: &'a str,
    /// What was reported.
    pub entry: &'a Entry,
}

impl Voice<'_> {
    /// Says how a unit stands: where, last word, last readings with their times, what is wrong, what is coming, tasks.
    pub fn status(&self, status: &Status<'_>) -> String {
        let state = status.state;
        let mut out = self.status_head(status);
        for (at, entry) in last_told(state) {
            out.push('\n');
            self.write_read(&mut out, at, &entry, status.spec);
        }
        self.write_faults(&mut out, status.unit, state);
        if let Some(outlook) = status.outlook
            && *outlook != Outlook::default()
        {
            out.push('\n');
            out.push_str(&self.forecast(outlook));
        }
        for task in &status.tasks {
            out.push('\n');
            self.write(&mut out, "task-stands", &[("task", self.task(task).into())]);
        }
        out
    }

    /// Says in short how a unit stands: where, last word, what was read last, what is wrong.
    pub fn status_in_short(&self, status: &Status<'_>) -> String {
        let mut out = self.status_head(status);
        if let Some((at, entry)) = last_told(status.state).into_iter().next() {
            out.push('\n');
            self.write_read(&mut out, at, &entry, status.spec);
        }
        self.write_faults(&mut out, status.unit, status.state);
        out
    }

    /// Says where a unit is, and who spoke of it last.
    pub fn status_head(&self, status: &Status<'_>) -> String {
        let state = status.state;
        let mut args = vec![
            ("unit", Arg::from(status.unit.as_str())),
            ("stage", self.stage(state.stage()).into()),
        ];
        let mut key = String::from("status");
        if let Some(site) = status.site {
            key.push_str("-site");
            args.push(("site", site.into()));
        }
        let mut out = self.say(&key, &args);
        out.push(' ');
        match &state.last_word {
            Some(word) => {
                let args = [
                    ("age", Arg::from(self.age(word.at))),
                    ("who", self.person(&word.from).into()),
                ];
                self.write(&mut out, "status-last-word", &args);
            }
            None => self.write(&mut out, "status-no-word", &[]),
        }
        out
    }

    fn write_read(
        &self,
        out: &mut String,
        at: DateTime<Utc>,
        entry: &Entry,
        spec: Option<&Trailer>,
    ) {
        let args = [
            ("time", Arg::from(at)),
            ("what", self.readings(entry, spec).into()),
        ];
        self.write(out, "status-read", &args);
    }

    fn write_faults(&self, out: &mut String, unit: &UnitName, state: &UnitState) {
        let faults = state.faults.iter();
        let faults = faults.map(|(fault, since)| (self.fault(*fault), *since));
        let hazards = state.hazards.iter();
        let hazards = hazards.map(|(code, since)| (self.hazard(code), *since));
        let stands = faults.chain(hazards).map(|(what, since)| {
            let args = [("fault", Arg::from(what)), ("time", Arg::from(since))];
            self.say("status-fault", &args)
        });
        let stands = stands.collect::<Vec<_>>().join(", ");
        if stands.is_empty() {
            return;
        }
        out.push('\n');
        self.write(out, "status-faults", &[("faults", stands.into())]);
        if !state.hazards.is_empty() {
            out.push(' ');
            self.write(out, "status-hazard-ends", &[("unit", unit.as_str().into())]);
        }
    }

    /// Says on one line what was reported on a unit, and when.
    pub fn report_line(
        &self,
        unit: &UnitName,
        at: DateTime<Utc>,
        entry: &Entry,
        spec: Option<&Trailer>,
    ) -> String {
        let args = [
            ("time", Arg::from(at)),
            ("unit", unit.as_str().into()),
            ("what", self.readings(entry, spec).into()),
        ];
        self.say("report-line", &args)
    }

    /// Says what was reported on a unit before, a line a report, in the order given.
    pub fn history<'p>(
        &self,
        unit: &UnitName,
        past: impl IntoIterator<Item = Past<'p>>,
        spec: Option<&Trailer>,
    ) -> String {
        let lines: Vec<String> = past
            .into_iter()
            .map(|past| {
                let args = [
                    ("time", Arg::from(past.at)),
                    ("who", self.person(past.from).into()),
                    ("what", self.readings(past.entry, spec).into()),
                ];
                self.say("history-line", &args)
            })
            .collect();
        let unit = ("unit", Arg::from(unit.as_str()));
        if lines.is_empty() {
            return self.say("history-none", &[unit]);
        }
        let head = self.say("history", &[unit]);
        format!("{head}\n{}", lines.join("\n"))
    }
}

/// Gathers the last value of each reading by the time it was told, newest first.
fn last_told(state: &UnitState) -> Vec<(DateTime<Utc>, Entry)> {
    let mut times: Vec<(DateTime<Utc>, Entry)> = Vec::new();
    let mut at = |when: DateTime<Utc>| -> usize {
        match times.iter().position(|(other, _)| *other == when) {
            Some(place) => place,
            None => {
                times.push((when, Entry::default()));
                times.len() - 1
            }
        }
    };
    let mut placed: Vec<(usize, ReadingKey, f64)> = Vec::new();
    for (key, latest) in &state.readings {
        placed.push((at(latest.at), *key, latest.value));
    }
    let mut currents: Vec<(usize, Amps)> = Vec::new();
    for (circuit, latest) in &state.amps {
        let circuit = (*circuit > 0).then_some(*circuit);
        currents.push((
            at(latest.at),
            Amps {
                circuit,
                amps: latest.value,
            },
        ));
    }
    for (place, key, value) in placed {
        times[place].1.readings.set(key, value);
    }
    for (place, current) in currents {
        times[place].1.readings.amps.push(current);
    }
    times.sort_by_key(|(when, _)| std::cmp::Reverse(*when));
    times.truncate(TIMES);
    times
}
