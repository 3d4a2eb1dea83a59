//! A bare message held against the question that waits for an answer.

use chrono::{DateTime, TimeDelta, Utc};

use super::super::answer;
use super::super::phrases::{Phrases, is_marked, plain};
use super::super::settle::known;
use super::super::{Desk, lone, truck, when, withdrawn, worry};
use super::Hearing;
use crate::dialogue::{About, Mend};
use crate::fleet::Fleet;
use crate::heard::{
    Answer, Ask, Entry, Event, Fault, Heard, MOST_CORDS, PlanKind, ReadingKey, ShortAnswer, Taps,
    UnitName,
};

/// The most words that an answer has.
const LONGEST: usize = 6;

/// What the answer to an open question makes of a bare message.
pub(super) enum Answered {
    /// Reports of one time, which may take the place of the sender's last on that trailer.
    Report {
        entries: Vec<Entry>,
        at: DateTime<Utc>,
        instead: bool,
    },
    /// The messages that may be read in place of the bare answer, likeliest first.
    Reread(Vec<String>, Option<UnitName>, DateTime<Utc>),
    /// The sender's report under this key is mended.
    Mends(String, Mend),
    /// Tasks that are done.
    Tasks(Vec<u32>),
    /// An older message is taken back, by its key.
    TakeBack(String),
    /// What the sender put there before is taken back too.
    TakeBackNext,
    /// The last pictures show this trailer.
    Shows(UnitName),
    /// The question is dropped.
    Dropped,
}

impl Hearing<'_> {
    /// Returns what a bare message answers; none where nothing is open, or it says something else.
    pub(super) fn answered(&self) -> Option<Answered> {
        let heard = &self.heard;
        if let Some(answered) = self.pumped_between(heard) {
            return Some(answered);
        }
        if !heard.entries.is_empty() || heard.command.is_some() {
            return None;
        }
        // "truck for 12 at 8" is an order, whatever was asked before it
        if self.is_about_another_thing() {
            return None;
        }
        // "12 gate code" asks, and does not say that 12 arrived
        if heard.ask.is_some() || answer::asks_of_something(self) {
            return None;
        }
        let question = self.talk.question_at(self.inbound.at)?;
        let bare = Bare {
            phrases: self.desk.phrases,
            fleet: &self.fleet,
            text: self.text,
            answer: heard.answer.clone().unwrap_or_default(),
        };
        bare.answers(&question.about, self.inbound.at, |unit| {
            let state = self.desk.book.unit(unit)?.state();
            state.pressures.last().map(|read| read.psi)
        })
    }
}

/// Returns the message that a bare answer completes: the one that waits for its trailer, with the trailer before it.
pub(super) fn completed(
    desk: &Desk,
    fleet: &Fleet,
    heard: &Heard,
    text: &str,
    (about, at): (&About, DateTime<Utc>),
) -> Option<String> {
    let phrases = desk.phrases;
    if let About::OverrideWhy { unit, text: waits } = about {
        let reason = !only_answers(phrases, text) && reason_of(heard, text);
        return reason.then(|| match waits.trim() {
            "" => format!("override {unit} {text}"),
            waits => format!("override {unit} {waits}: {text}"),
        });
    }
    if let About::ReleaseWhy { number } = about {
        let incident = desk.book.incidents().incident(*number)?;
        let is_its_own = |name: &UnitName| known(fleet, name) == Some(&incident.hold.unit);
        let asks = phrases.after("incident", "asks", text).is_some() || is_marked(text);
        // what is wanted of a truck is no reason
        let says = |list| phrases.holds("truck", list, text);
        let of_a_truck = says("who") && (says("request") || says("called"));
        let other = asks || of_a_truck || only_answers(phrases, text);
        let reason = !other && settles(heard, text, is_its_own);
        return reason.then(|| format!("release incident {number} {text}"));
    }
    if let About::ReleaseSure { number, text: why } = about {
        let sure = phrases.is("choice", "yes", text);
        return sure.then(|| format!("release incident {number} {why}"));
    }
    if let About::Worry { person } = about {
        return worry::completed(desk, text, *person);
    }
    if let About::Alone { unit } = about {
        return lone::offer_taken(desk, fleet, text, unit);
    }
    if let About::CordsLive { unit, .. } = about {
        return live_cords(phrases, heard, text).map(|count| format!("{unit}: {count} cords live"));
    }
    let (waits, likely): (&str, &[UnitName]) = match about {
        About::WhichUnitOf { text, likely } => (text, likely),
        // the trailer may be what was missing of a value
        About::WhatValue { text, .. } if !names_one(fleet, text) => (text.as_str(), &[]),
        About::TruckWhen { .. } | About::HowMuch { .. } => ("", &[]),
        _ => return None,
    };
    if !heard.entries.iter().all(|entry| entry.unit.is_none())
        || heard.ask.is_some()
        || heard.command.is_some()
    {
        return None;
    }
    if let Some(whole) = truck::answered(desk, fleet, text, about, at) {
        return Some(whole);
    }
    if !heard.entries.is_empty() || waits.is_empty() {
        return None;
    }
    let bare = Bare {
        phrases,
        fleet,
        text,
        answer: heard.answer.clone().unwrap_or_default(),
    };
    if !bare.names_only(likely) {
        return None;
    }
    match bare.units_among(likely)?.as_slice() {
        [] => None,
        [unit] => Some(format!("{unit}: {waits}")),
        // a load or a time is of one: "both" tells it of none
        units if truck::none_comes(phrases, waits) => {
            let names: Vec<&str> = units.iter().map(UnitName::as_str).collect();
            Some(format!("{waits} for {}", names.join(" and ")))
        }
        _ => None,
    }
}

/// Tells whether a message only says yes or no, or puts the question off: it gives no reason.
fn only_answers(phrases: &Phrases, text: &str) -> bool {
    let is = |topic, list| phrases.is(topic, list, text);
    is("choice", "yes") || is("incident", "skip") || leaves_it(phrases, text)
}

/// Tells whether a message says no to what was asked, or puts it off.
fn leaves_it(phrases: &Phrases, text: &str) -> bool {
    let is = |topic, list| phrases.is(topic, list, text);
    is("choice", "no") || is("incident", "stop") || is("incident", "goes-on")
}

/// Reads how many cords have power, where a message says no more than a number.
fn live_cords(phrases: &Phrases, heard: &Heard, text: &str) -> Option<f64> {
    let none = || phrases.is("choice", "none", text).then_some(0.0);
    let reports = heard.entries.iter().any(|entry| !entry.is_empty());
    let answer = heard.answer.as_ref();
    let measured = answer.is_some_and(|answer| answer.measure.is_some() || answer.noun.is_some());
    if reports || measured || heard.ask.is_some() || heard.command.is_some() {
        return None;
    }
    let count = answer.and_then(|answer| answer.number).or_else(none)?;
    (count.fract() == 0.0 && (0.0..=MOST_CORDS).contains(&count)).then_some(count)
}

/// Tells whether a message can be the reason that was asked for: no order, no question, no report of a trailer.
fn reason_of(heard: &Heard, text: &str) -> bool {
    let reports = heard.entries.iter().any(|entry| entry.unit.is_some());
    !(reports || heard.ask.is_some() || heard.command.is_some() || text.trim().is_empty())
}

/// Tells whether a message can be the reason that an incident is released: it may name its trailer and what was mended,
/// and tells of no reading, no danger, nothing that was done or is wanted, and of no other trailer.
fn settles(heard: &Heard, text: &str, is_its_own: impl Fn(&UnitName) -> bool) -> bool {
    let danger = |fault: &Fault| Fault::DANGERS.contains(fault);
    let elsewhere = |entry: &Entry| {
        let other = entry.unit.as_ref().is_some_and(|name| !is_its_own(name));
        other && !entry.is_empty()
    };
    let reports = |entry: &Entry| {
        let happened = !entry.readings.is_empty() || !entry.events.is_empty();
        happened || elsewhere(entry) || entry.faults.iter().any(danger)
    };
    let wants = heard.plans.iter().any(|plan| plan.kind != PlanKind::Other);
    let else_wise = heard.ask.is_some() || heard.command.is_some() || wants;
    !(else_wise || heard.entries.iter().any(reports) || text.trim().is_empty())
}

/// Tells whether a word of a text is a trailer's name.
fn names_one(fleet: &Fleet, text: &str) -> bool {
    let mut words = text.split(|c: char| !(c.is_alphanumeric() || c == '-'));
    words.any(|word| known(fleet, &UnitName::new(word)).is_some())
}

/// Returns the messages that a value and what was missing of it make: the words as they stand, or, where a word behind
/// the number is not known, without that.
fn with_answer(value: &str, answer: &str) -> Vec<String> {
    let end = value.rfind(|c: char| c.is_ascii_digit());
    let short = end.map(|end| &value[..=end]);
    let ways = std::iter::once(value).chain(short);
    ways.map(|value| format!("{value} {answer}")).collect()
}

/// Returns what is told of each of these trailers.
fn of_each(units: Vec<UnitName>, told: &Entry) -> Vec<Entry> {
    let told_of = |unit| Entry {
        unit: Some(unit),
        ..told.clone()
    };
    units.into_iter().map(told_of).collect()
}

/// Returns an answer that is a report.
fn reported(entries: Vec<Entry>, at: DateTime<Utc>) -> Answered {
    Answered::Report {
        entries,
        at,
        instead: false,
    }
}

/// A bare message.
struct Bare<'a> {
    phrases: &'a Phrases,
    fleet: &'a Fleet,
    text: &'a str,
    answer: Answer,
}

impl Bare<'_> {
    fn answers(
        &self,
        about: &About,
        at: DateTime<Utc>,
        last_pressure: impl Fn(&UnitName) -> Option<f64>,
    ) -> Option<Answered> {
        if let About::NoDanger { unit, faults } = about {
            return self.of_no_danger(unit.as_ref(), faults, at);
        }
        if self.text.split_whitespace().count() > LONGEST {
            return None;
        }
        match about {
            About::WhichUnit { entry, at, likely } => {
                Some(reported(of_each(self.units_among(likely)?, entry), *at))
            }
            About::WhatValue { unit, text, at, .. } => {
                let told = self.answer.measure.is_some() || self.answer.noun.is_some();
                told.then(|| Answered::Reread(with_answer(text, self.text), unit.clone(), *at))
            }
            About::TapsShut { unit } => self.of_taps(unit, last_pressure(unit)?, at),
            About::BeforeRegulator { unit } => self.of_regulator(unit, last_pressure(unit)?, at),
            About::When { entry, .. } => {
                let told = self.time(entry, at)?;
                Some(reported(vec![entry.clone()], told))
            }
            // completed, or taken as it stands, before it is heard; a danger taken back is answered above
            About::WhichUnitOf { .. }
            | About::Alone { .. }
            | About::CordsLive { .. }
            | About::IncidentFact { .. }
            | About::WasPumped { .. }
            | About::NoDanger { .. } => None,
            About::OverrideWhy { .. } | About::ReleaseWhy { .. } | About::ReleaseSure { .. } => {
                leaves_it(self.phrases, self.text).then_some(Answered::Dropped)
            }
            About::TruckWhen { .. } | About::HowMuch { .. } => {
                self.says("no").then_some(Answered::Dropped)
            }
            About::Worry { .. } => {
                worry::denied(self.phrases, self.text).then_some(Answered::Dropped)
            }
            About::Leaves { unit } => self.of_leaving(unit.as_ref(), at),
            About::HurtNow { unit, .. } => {
                let hurt = Entry {
                    unit: Some(unit.clone()),
                    faults: vec![Fault::PersonHurt],
                    ..Entry::default()
                };
                self.says("yes").then(|| reported(vec![hurt], at))
            }
            About::WhichMend { key, ways } => {
                let way = self.way_among(ways)?;
                Some(Answered::Mends(key.clone(), way))
            }
            About::WhichTask { ids } => self.of_tasks(ids),
            About::PhotoOf { likely } => {
                let unit = self.units_among(likely)?.into_iter().next();
                unit.map(Answered::Shows)
            }
            About::Arrived { units, .. } => self.of_arrival(units, at),
            About::UndoNext => {
                if self.says("no") {
                    return Some(Answered::Dropped);
                }
                self.says("yes").then_some(Answered::TakeBackNext)
            }
            About::UndoOlder { key } => {
                if self.says("no") {
                    return Some(Answered::Dropped);
                }
                self.says("yes").then(|| Answered::TakeBack(key.clone()))
            }
        }
    }

    /// Reads how the taps stood when a pressure was read.
    fn of_taps(&self, unit: &UnitName, psi: f64, at: DateTime<Utc>) -> Option<Answered> {
        let mut entry = Entry {
            unit: Some(unit.clone()),
            ..Entry::default()
        };
        entry.readings.taps = Some(self.taps()?);
        entry.readings.set(ReadingKey::PressurePsi, psi);
        Some(reported(vec![entry], at))
    }

    /// Reads on which side of the regulator a pressure was read: before it, it takes the place of what was logged.
    fn of_regulator(&self, unit: &UnitName, psi: f64, at: DateTime<Utc>) -> Option<Answered> {
        let before = match self.answer.word {
            Some(ShortAnswer::Before) => true,
            Some(ShortAnswer::After) => false,
            _ if self.phrases.is("choice", "before", self.text) => true,
            _ if self.phrases.is("choice", "after", self.text) => false,
            _ => return None,
        };
        let mut entry = Entry {
            unit: Some(unit.clone()),
            ..Entry::default()
        };
        let key = match before {
            true => ReadingKey::SupplyPsi,
            false => ReadingKey::PressurePsi,
        };
        entry.readings.set(key, psi);
        Some(Answered::Report {
            entries: vec![entry],
            at,
            instead: before,
        })
    }

    /// Reads which trailer leaves: the one asked about, others, or nobody but the sender.
    fn of_leaving(&self, unit: Option<&UnitName>, at: DateTime<Utc>) -> Option<Answered> {
        if self.says("no") || self.phrases.is("leave", "me", self.text) {
            return Some(Answered::Dropped);
        }
        let it = unit.filter(|_| self.says("yes")).cloned();
        let units = it
            .map(|unit| vec![unit])
            .or_else(|| self.units_among(&[]))?;
        let left = Entry {
            events: vec![Event::Left],
            ..Entry::default()
        };
        Some(reported(of_each(units, &left), at))
    }

    /// Reads whether they arrived, and with which trailers.
    fn of_arrival(&self, likely: &[UnitName], at: DateTime<Utc>) -> Option<Answered> {
        if self.says("no") {
            return Some(Answered::Dropped);
        }
        let all = self.says("yes").then(|| likely.to_vec());
        let units = all.or_else(|| self.units_among(likely))?;
        let arrived = Entry {
            events: vec![Event::Arrived],
            ..Entry::default()
        };
        Some(reported(of_each(units, &arrived), at))
    }

    /// Reads which of the tasks offered are done.
    fn of_tasks(&self, ids: &[u32]) -> Option<Answered> {
        let named = self.answer.number.map(|number| number as u32);
        if let Some(id) = named.filter(|id| ids.contains(id)) {
            return Some(Answered::Tasks(vec![id]));
        }
        match self.chosen(ids.len()) {
            Some(places) => {
                let ids = places.into_iter().map(|place| ids[place]).collect();
                Some(Answered::Tasks(ids))
            }
            None => self.says("no").then_some(Answered::Dropped),
        }
    }

    /// Takes a danger that was taken back for a mistake only on a clear yes; with any doubt it stands again.
    fn of_no_danger(
        &self,
        unit: Option<&UnitName>,
        faults: &[Fault],
        at: DateTime<Utc>,
    ) -> Option<Answered> {
        match withdrawn::verdict(self.phrases, self.text)? {
            withdrawn::Verdict::Mistake => Some(Answered::Dropped),
            withdrawn::Verdict::Stands => {
                let again = Entry {
                    unit: unit.cloned(),
                    faults: faults.to_vec(),
                    ..Entry::default()
                };
                Some(reported(vec![again], at))
            }
        }
    }

    /// Reads when a report was so: "now", "14:30".
    fn time(&self, entry: &Entry, at: DateTime<Utc>) -> Option<DateTime<Utc>> {
        if self.phrases.is("choice", "now", self.text) {
            return Some(at);
        }
        let unit = entry.unit.as_ref()?;
        let zone = self.fleet.zone_at(Some(unit), at);
        when::instant(&when::clock_in(self.text)?, at, zone)
    }

    fn says(&self, list: &str) -> bool {
        let word = match list {
            "yes" => matches!(self.answer.word, Some(ShortAnswer::Yes | ShortAnswer::Ok)),
            "no" => self.answer.word == Some(ShortAnswer::No) && self.answer.number.is_none(),
            _ => false,
        };
        word || self.phrases.is("choice", list, self.text)
    }

    /// Returns which of so many offered things are chosen, by place: "the first", "both", or yes to the only one.
    fn chosen(&self, of: usize) -> Option<Vec<usize>> {
        for (place, list) in ["first", "second", "third"].into_iter().enumerate() {
            if place < of && self.phrases.is("choice", list, self.text) {
                return Some(vec![place]);
            }
        }
        if of == 1 && self.says("yes") {
            return Some(vec![0]);
        }
        (of > 1 && self.phrases.is("choice", "both", self.text)).then(|| (0..of).collect())
    }

    /// Tells whether the message names trailers and says nothing else: "called the truck for 12" answers nothing.
    fn names_only(&self, likely: &[UnitName]) -> bool {
        const BESIDE: &[&str] = &[
            "unit", "trailer", "the", "la", "el", "for", "on", "it", "its", "is", "and", "y", "en",
            "para", "de", "number", "no", "sorry", "thats", "that", "one", "i", "mean", "meant",
            "es", "era", "yes", "si", "unidad", "a", "at", "was", "ok", "please", "los", "las",
            "por", "favor", "esa", "este", "esta", "ese", "to", "of", "ah", "oh", "oops", "perdon",
        ];
        let folded = plain(self.text);
        let mut words = folded.split(' ').filter(|word| !word.is_empty());
        let named = |word: &str| {
            word.contains(|c: char| c.is_ascii_digit())
                || known(self.fleet, &UnitName::new(word)).is_some()
        };
        self.chosen(likely.len()).is_some()
            || words.all(|word| named(word) || BESIDE.contains(&word))
    }

    /// Returns the known trailers that are named, or chosen among those offered.
    fn units_among(&self, likely: &[UnitName]) -> Option<Vec<UnitName>> {
        if let Some(places) = self.chosen(likely.len()) {
            return Some(
                places
                    .into_iter()
                    .map(|place| likely[place].clone())
                    .collect(),
            );
        }
        let number = self.answer.number.filter(|number| number.fract() == 0.0);
        let number = number.map(|number| UnitName::new(&format!("{number:.0}")));
        // "12 and 14", "la 12 y la 14"
        let words = self
            .text
            .split(|c: char| !(c.is_alphanumeric() || c == '-'));
        let mut units: Vec<UnitName> = Vec::new();
        for word in words.filter(|word| word.chars().any(|c| c.is_ascii_digit())) {
            let unit = known(self.fleet, &UnitName::new(word))?;
            if !units.contains(unit) {
                units.push(unit.clone());
            }
        }
        if !units.is_empty() {
            return Some(units);
        }
        let name = self.answer.unit.clone().or(number)?;
        Some(vec![known(self.fleet, &name)?.clone()])
    }

    /// Returns the way of mending that is chosen: by its place, its trailer or the name of its reading.
    fn way_among(&self, ways: &[Mend]) -> Option<Mend> {
        if let Some(places) = self.chosen(ways.len()) {
            let [place] = places.as_slice() else {
                return None;
            };
            return ways.get(*place).cloned();
        }
        let to_unit = |way: &&Mend| matches!(way, Mend::Unit { .. });
        if self.phrases.is("choice", "unit", self.text) {
            return ways.iter().find(to_unit).cloned();
        }
        if let Some(noun) = self.answer.noun.as_deref() {
            let mut named = ways.iter().filter(|way| match way {
                Mend::Value { key, .. } => keys_of(noun).contains(key),
                Mend::Label { to, .. } => keys_of(noun).contains(to),
                _ => false,
            });
            let first = named.next().cloned();
            return first.filter(|_| named.next().is_none());
        }
        let unit = self.units_among(&[])?;
        let mut named = ways.iter().filter(|way| match way {
            Mend::Unit { to, .. } => unit.contains(to),
            other => unit.contains(other.unit()),
        });
        let first = named.next().cloned();
        first.filter(|_| named.next().is_none())
    }

    /// Reads whether the taps were shut or running.
    fn taps(&self) -> Option<Taps> {
        // "nothing was running" says that they were shut; what else is denied may be either
        let rest = self.phrases.without("taps", "shut", self.text);
        let shut = rest != plain(self.text);
        let says = |list| self.phrases.holds("taps", list, &rest);
        match (shut, says("running"), says("not")) {
            (true, false, false) => Some(Taps::Shut),
            (false, true, false) => Some(Taps::Running),
            _ => None,
        }
    }
}

/// Returns the readings that a noun alone can mean.
pub(super) fn keys_of(noun: &str) -> &'static [ReadingKey] {
    match noun {
        "waste" => &[ReadingKey::WastePct, ReadingKey::WasteGal],
        "fresh" => &[ReadingKey::FreshPct, ReadingKey::FreshGal],
        "fuel" => &[ReadingKey::FuelPct, ReadingKey::FuelGal],
        "battery" => &[ReadingKey::BatteryPct, ReadingKey::BatteryV],
        "pressure" | "water" => &[ReadingKey::PressurePsi],
        "supply" => &[ReadingKey::SupplyPsi],
        "air" => &[ReadingKey::AirF],
        "inside" => &[ReadingKey::InsideF],
        "volts" | "mains" | "power" => &[ReadingKey::Volts],
        _ => &[],
    }
}

/// Words are late when they come in this long after they were written.
pub(in crate::desk) const LATE: TimeDelta = TimeDelta::minutes(10);

/// Returns a message that asks for nothing but tasks to be closed.
pub(super) fn done(task: u32) -> Heard {
    Heard {
        ask: Some(Ask::Done { task }),
        ..Heard::default()
    }
}
