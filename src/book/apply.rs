//! The book and how each kind of record changes it.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use chrono::{DateTime, TimeDelta, Utc};
use serde::{Deserialize, Serialize};

use super::ahead::Ahead;
use super::incidents::Incidents;
use super::lessons::Lessons;
use super::offers::Offers;
use super::people::{CrewChange, People};
use super::record::{AlarmChange, Message, MessageKey, Personal, Record, Report};
use super::refusals::Refusals;
use super::standing::{DoneStep, Standing};
use super::tasks::{Task, Tasks};
use super::taught::TaughtWords;
use super::unit::UnitBook;
use crate::dialogue::{Talk, Watch};
use crate::finding::{FindingId, Level};
use crate::fleet::Fleet;
use crate::heard::UnitName;

/// How long closed tasks and a person's own messages are kept at hand, for undo and for lists.
const RECENT: TimeDelta = TimeDelta::hours(48);

/// How many of a person's messages are kept at hand at most.
const MOST_SENT: usize = 512;

/// Something that needs an answer from a person.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Alarm {
    /// What it is about.
    pub id: FindingId,
    /// The trailer.
    pub unit: Option<UnitName>,
    /// How badly someone can be hurt.
    pub level: Level,
    /// When it was first raised.
    pub raised: DateTime<Utc>,
    /// When it was last said.
    pub said: DateTime<Utc>,
    /// Who took note of it, and when.
    pub acknowledged: Option<(String, DateTime<Utc>)>,
}

/// A message of a person that can still be taken back.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Sent {
    /// Its key.
    pub key: MessageKey,
    /// Its key on the network, by which an edit finds it.
    #[serde(default)]
    pub network: Personal,
    /// When it was written.
    pub at: DateTime<Utc>,
    /// The trailers it reports on.
    pub units: Vec<UnitName>,
    /// When it was worked through: what it changed bears this time.
    #[serde(default)]
    pub worked: Option<DateTime<Utc>>,
    /// The tasks that it changed, as they stood before.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub tasks_before: Vec<Task>,
    /// The messages it took the place of, by their keys in the book and on the network.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub instead_of: Vec<(MessageKey, Personal)>,
    /// What the message said that this one corrects: an undo takes the correction back first.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub corrects: Vec<Report>,
}

impl Sent {
    /// Tells whether it is known under a key of the network, its own or one of those it took the place of.
    pub fn is_of(&self, network: &MessageKey) -> bool {
        let replaced = self.instead_of.iter().map(|(_, other)| other);
        replaced
            .chain([&self.network])
            .any(|key| key.text() == network.0)
    }

    /// Iterates over the keys in the book that its reports and tasks may bear.
    pub fn keys(&self) -> impl Iterator<Item = &MessageKey> {
        let replaced = self.instead_of.iter().map(|(key, _)| key);
        replaced.chain([&self.key])
    }
}

/// Everything known, folded from records.
#[derive(Debug, Clone, Default, Serialize, Deserialize)]
pub struct Book {
    fleets: Vec<(DateTime<Utc>, Arc<Fleet>)>,
    fleet_digest: String,
    units: BTreeMap<UnitName, UnitBook>,
    open_units: BTreeSet<UnitName>,
    faulty_units: BTreeSet<UnitName>,
    tasks: Tasks,
    talks: BTreeMap<String, Talk>,
    sent: BTreeMap<String, Vec<Sent>>,
    watches: Vec<Watch>,
    alarms: BTreeMap<String, Alarm>,
    refused: BTreeMap<String, DateTime<Utc>>,
    refusals: Refusals,
    ticked: Option<DateTime<Utc>>,
    messages: u64,
    #[serde(default)]
    standing: Standing,
    #[serde(default)]
    ahead: Ahead,
    #[serde(default)]
    lessons: Lessons,
    #[serde(default)]
    taught: TaughtWords,
    #[serde(default)]
    incidents: Incidents,
    people: People,
    #[serde(default)]
    offers: Offers,
    /// The first message ever, and each person's last.
    #[serde(default)]
    heard: HeardFrom,
}

/// When people were heard from.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
pub struct HeardFrom {
    /// When the first message ever was received.
    pub first: Option<DateTime<Utc>>,
    /// When each person last wrote.
    pub last: BTreeMap<String, DateTime<Utc>>,
}

impl Book {
    /// Takes in one record.
    pub fn apply(&mut self, record: &Record) {
        match record {
            Record::Fleet { at, digest, fleet } => self.load(*at, digest, fleet),
            Record::Message(message) => self.take_in(message),
            Record::Undone { key, by, .. } => {
                self.take_back(key, by);
            }
            Record::Task { at, change } => self.tasks.apply(*at, change),
            Record::Talk { who, talk } => {
                self.talks.insert(who.clone(), (**talk).clone());
            }
            Record::Watch { watch } => self.watches.push(watch.clone()),
            Record::Unwatch { watch } => self.watches.retain(|other| other != watch),
            Record::Alarm { at, change } => self.change_alarm(*at, change),
            Record::Refused {
                at,
                who,
                answered,
                tried,
            } => {
                self.refusals.take_in(*at, who.text(), *tried);
                self.refused
                    .retain(|_, last| *at - *last <= TimeDelta::hours(24));
                if *answered {
                    self.refused.insert(who.text().to_owned(), *at);
                }
            }
            Record::RefusedTold { at } => self.refusals.told(*at),
            Record::Offered {
                at,
                who,
                chat,
                offers,
            } => self.offers.take_in(*at, who, *chat, offers),
            // the files are the clerk's to keep
            Record::Photo { .. } | Record::PhotoOf { .. } => {}
            Record::Pressed { who, digest, .. } => self.offers.pressed(who, digest),
            Record::Crew { at, change, .. } => self.change_crew(*at, change),
            Record::Incident { at, by, change } => self.incidents.apply(*at, by, change),
            Record::Note { note } => self.standing.note(note),
            Record::NotesCleared { at, by, unit } => self.standing.clear(unit, *at, by),
            Record::Confirmed { at, by, unit, step } => self.standing.confirm(DoneStep {
                unit: unit.clone(),
                step: step.clone(),
                at: *at,
                by: by.clone(),
            }),
            Record::Override { decided } => self.standing.decide(decided),
            Record::TakenBack { what, .. } => self.standing.take_back(what),
            Record::Ahead { at, change } => self.ahead.apply(*at, change),
            Record::Taught { taught } => self.taught.learn(taught),
            Record::Untaught { say, .. } => self.taught.forget(say),
            Record::Lesson { lesson } => self.lessons.take_in(lesson),
            Record::Relearn { unit, .. } => self.lessons.forget(unit),
            Record::Ticked { at } => self.ticked = Some(*at),
        }
    }

    /// Returns the fleet in force now.
    pub fn fleet(&self) -> Option<&Arc<Fleet>> {
        self.fleets.last().map(|(_, fleet)| fleet)
    }

    /// Returns the fleet in force at `at`; the oldest kept where `at` is earlier than all.
    pub fn fleet_at(&self, at: DateTime<Utc>) -> Option<&Arc<Fleet>> {
        self.fleets
            .iter()
            .rev()
            .find(|(since, _)| *since <= at)
            .or(self.fleets.first())
            .map(|(_, fleet)| fleet)
    }

    /// Returns the digest of the files the fleet in force came from.
    pub fn fleet_digest(&self) -> &str {
        &self.fleet_digest
    }

    /// Returns what is known of a trailer; none where nothing was ever reported.
    pub fn unit(&self, unit: &UnitName) -> Option<&UnitBook> {
        self.units.get(unit)
    }

    /// Iterates over every trailer that was ever reported on.
    pub fn units(&self) -> impl Iterator<Item = (&UnitName, &UnitBook)> {
        self.units.iter()
    }

    /// Iterates over the trailers that are open for guests.
    pub fn open_units(&self) -> impl Iterator<Item = (&UnitName, &UnitBook)> {
        self.open_units
            .iter()
            .filter_map(|unit| self.units.get_key_value(unit))
    }

    /// Iterates over the trailers on which something is wrong, by name.
    pub fn faulty_units(&self) -> impl Iterator<Item = (&UnitName, &UnitBook)> {
        self.faulty_units
            .iter()
            .filter_map(|unit| self.units.get_key_value(unit))
    }

    /// Returns the tasks.
    pub fn tasks(&self) -> &Tasks {
        &self.tasks
    }

    /// Returns the incidents.
    pub fn incidents(&self) -> &Incidents {
        &self.incidents
    }

    /// Returns the notes and overrides that stand with trailers.
    pub fn standing(&self) -> &Standing {
        &self.standing
    }

    /// Returns what is open with a person.
    pub fn talk(&self, who: &str) -> Option<&Talk> {
        self.talks.get(who)
    }

    /// Returns what is open with each person, by crew id.
    pub fn talks(&self) -> impl Iterator<Item = (&String, &Talk)> {
        self.talks.iter()
    }

    /// Returns a person's messages that can still be taken back, oldest first.
    pub fn sent(&self, who: &str) -> &[Sent] {
        self.sent.get(who).map_or(&[], Vec::as_slice)
    }

    /// Returns the alarms people asked for.
    pub fn watches(&self) -> &[Watch] {
        &self.watches
    }

    /// Returns the alarms that stand, by key.
    pub fn alarms(&self) -> &BTreeMap<String, Alarm> {
        &self.alarms
    }

    /// Iterates over the alarms that are forgotten once another is raised at `at`, by key.
    pub fn forgotten_alarms(&self, at: DateTime<Utc>) -> impl Iterator<Item = &str> {
        let old = self
            .alarms
            .iter()
            .filter(move |(_, alarm)| at - alarm.said > RECENT);
        old.map(|(key, _)| key.as_str())
    }

    /// Returns when a stranger was last answered, within a day.
    pub fn refused(&self, who: &str) -> Option<DateTime<Utc>> {
        self.refused.get(who).copied()
    }

    /// Returns what was refused.
    pub fn refusals(&self) -> &Refusals {
        &self.refusals
    }

    /// Returns who works here, was invited or shut out.
    pub fn people(&self) -> &People {
        &self.people
    }

    /// Returns the buttons that were offered lately.
    pub fn offers(&self) -> &Offers {
        &self.offers
    }

    /// Returns the instant up to which ticks were worked through.
    pub fn ticked(&self) -> Option<DateTime<Utc>> {
        self.ticked
    }

    /// Returns what the bot has to speak of by itself.
    pub fn ahead(&self) -> &Ahead {
        &self.ahead
    }

    /// Returns the words that were taught in chat.
    pub fn taught(&self) -> &TaughtWords {
        &self.taught
    }

    /// Returns what pump-outs taught of the trailers.
    pub fn lessons(&self) -> &Lessons {
        &self.lessons
    }

    /// Returns when people were heard from.
    pub fn heard(&self) -> &HeardFrom {
        &self.heard
    }

    /// Returns how many messages were ever taken in.
    pub fn messages(&self) -> u64 {
        self.messages
    }

    fn load(&mut self, at: DateTime<Utc>, digest: &str, fleet: &Fleet) {
        self.fleet_digest = digest.to_owned();
        self.people.load(&fleet.crew);
        let mut fleet = fleet.clone();
        fleet.crew = self.people.crew();
        self.fleets.push((at, Arc::new(fleet)));
        // the one in force three days ago still judges late words; older ones are done with
        let spent = self
            .fleets
            .iter()
            .skip(1)
            .take_while(|(since, _)| at - *since > TimeDelta::hours(72))
            .count();
        self.fleets.drain(..spent);
    }

    /// Takes in a change to who works here; every fleet that is kept shows the people as they stand now.
    fn change_crew(&mut self, at: DateTime<Utc>, change: &CrewChange) {
        self.people.apply(at, change);
        let crew = self.people.crew();
        for (_, fleet) in &mut self.fleets {
            Arc::make_mut(fleet).crew.clone_from(&crew);
        }
        if let Some(who) = change.shuts_out() {
            self.talks.remove(who);
            self.watches.retain(|watch| watch.who != who);
            self.ahead.let_go(who);
            self.offers.shut_out(who);
        }
    }

    fn take_in(&mut self, message: &Message) {
        self.messages += 1;
        self.heard.first.get_or_insert(message.received);
        let last = self.heard.last.entry(message.from.clone());
        let last = last.or_insert(message.at);
        *last = message.at.max(*last);
        let corrects = self.corrected(message);
        let replaced = message.replaces.as_ref();
        let replaced = replaced.and_then(|replaced| self.take_back(replaced, &message.from));
        for report in message.reports.iter().filter(|report| !report.too_old) {
            let unit = self.units.entry(report.unit.clone()).or_default();
            unit.take_in(report.at, &message.key, &message.from, &report.entry);
            self.list(&report.unit);
        }
        let units = message
            .reports
            .iter()
            .map(|report| report.unit.clone())
            .collect();
        let mut tasks_before = message.tasks_before.clone();
        let mut instead_of = Vec::new();
        if let Some(mut replaced) = replaced {
            // the oldest state of a task is the one to go back to
            tasks_before.retain(|task| replaced.tasks_before.iter().all(|old| old.id != task.id));
            tasks_before.append(&mut replaced.tasks_before);
            instead_of.append(&mut replaced.instead_of);
            instead_of.push((replaced.key, replaced.network));
        }
        let sent = self.sent.entry(message.from.clone()).or_default();
        sent.push(Sent {
            key: message.key.clone(),
            network: message.network.clone(),
            at: message.at,
            units,
            worked: Some(message.received),
            tasks_before,
            instead_of,
            corrects,
        });
        // now and then, not at every message: a busy person sends hundreds a day
        if sent.len() > MOST_SENT {
            sent.drain(..MOST_SENT / 2);
            sent.retain(|other| message.at - other.at <= RECENT);
        }
    }

    /// Returns what stood before a message that corrects another; an edit of the network's is no correction.
    fn corrected(&self, message: &Message) -> Vec<Report> {
        let Some(key) = &message.replaces else {
            return Vec::new();
        };
        let network =
            |personal: &Personal| MessageKey(personal.text().to_owned()).unedited().to_owned();
        let mut sent = self.sent(&message.from).iter();
        let Some(sent) = sent.find(|sent| sent.key == *key) else {
            return Vec::new();
        };
        if network(&sent.network) == network(&message.network) {
            return Vec::new();
        }
        let reports = |unit: &UnitName| {
            let kept = self.units.get(unit).into_iter();
            let told = kept.flat_map(|kept| kept.reports_of(key));
            let told = told.filter(|(_, entry)| !entry.is_empty());
            told.map(|(at, entry)| Report {
                unit: unit.clone(),
                at,
                entry: entry.clone(),
                too_old: false,
            })
            .collect::<Vec<_>>()
        };
        let units: BTreeSet<&UnitName> = sent.units.iter().collect();
        units.into_iter().flat_map(reports).collect()
    }

    /// Takes back what one message of a person reported, and returns what was kept of it.
    fn take_back(&mut self, key: &MessageKey, by: &str) -> Option<Sent> {
        let sent = self.sent.get_mut(by)?;
        let place = sent.iter().position(|sent| sent.key == *key)?;
        let taken = sent.remove(place);
        for unit in &taken.units {
            if let Some(kept) = self.units.get_mut(unit) {
                kept.take_back(key);
            }
            self.lessons.take_back(unit, key);
            self.list(unit);
        }
        Some(taken)
    }

    /// Keeps the lists of trailers that are open, and of those with a fault: a turn must not walk a whole fleet for them.
    fn list(&mut self, unit: &UnitName) {
        let state = self.units.get(unit).map(UnitBook::state);
        let open = state.is_some_and(|state| state.in_service().is_some());
        let faulty = state.is_some_and(|state| !state.faults.is_empty());
        for (units, listed) in [
            (&mut self.open_units, open),
            (&mut self.faulty_units, faulty),
        ] {
            if listed {
                units.insert(unit.clone());
            } else {
                units.remove(unit);
            }
        }
    }

    fn change_alarm(&mut self, at: DateTime<Utc>, change: &AlarmChange) {
        match change {
            AlarmChange::Raised {
                key,
                id,
                unit,
                level,
            } => {
                self.alarms
                    .retain(|other, alarm| other == key || at - alarm.said <= RECENT);
                let raised = self.alarms.get(key).map_or(at, |alarm| alarm.raised);
                let alarm = Alarm {
                    id: *id,
                    unit: unit.clone(),
                    level: *level,
                    raised,
                    said: at,
                    acknowledged: None,
                };
                self.alarms.insert(key.clone(), alarm);
            }
            AlarmChange::Acknowledged { key, by } => {
                if let Some(alarm) = self.alarms.get_mut(key) {
                    alarm.acknowledged = Some((by.clone(), at));
                }
            }
            AlarmChange::Over { key } => {
                self.alarms.remove(key);
            }
        }
    }
}
