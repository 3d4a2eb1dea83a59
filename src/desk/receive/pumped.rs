//! A level that fell though no pump-out was told: the sender is asked, and a yes takes its place between the two readings.
//!
//! Logged for the moment of the answer, the pump-out would come after the low reading, and leave that unexplained.

use chrono::{DateTime, TimeDelta, Utc};

use super::super::answer::Reply;
use super::super::gallons;
use super::super::settle::Settled;
use super::super::when;
use super::Hearing;
use super::bare::Answered;
use crate::dialogue::About;
use crate::finding::{FactValue, FindingId};
use crate::heard::{Entry, Event, Heard, ReadingKey, UnitName};
use crate::reply::Voice;

/// The most words that an answer has.
const LONGEST: usize = 9;
/// Fewer gallons than this are an hour or a count of something else.
const LEAST_GAL: f64 = 20.0;

impl Hearing<'_> {
    /// Returns the question whether a trailer was pumped, where the gauge fell and the message does not say so itself.
    pub(super) fn ask_if_pumped(&self, reply: &Reply<'_>) -> Option<About> {
        let fell = reply
            .findings
            .iter()
            .find(|finding| finding.id == FindingId::WasteDroppedUnexplained)?;
        let instant = |name| match fell.facts.find(name)?.value {
            FactValue::Time(at) => Some(at),
            _ => None,
        };
        if self.desk.phrases.holds("pumped", "not", self.text) {
            return None;
        }
        Some(About::WasPumped {
            unit: fell.unit.clone()?,
            since: instant("since")?,
            until: instant("until")?,
        })
    }

    /// Takes a yes for a pump-out between the readings: at the hour it gives, else half way.
    pub(super) fn pumped_between(&self, heard: &Heard) -> Option<Answered> {
        let (unit, since, until) = self.asked_if_pumped()?;
        let yes = self.desk.phrases.after("pumped", "yes", self.text);
        // "it was 5/8" tells how full it was
        let yes = yes.filter(|rest| !tells_a_level(rest));
        let told = match heard.entries.as_slice() {
            [] => None,
            [entry] if is_pump_out(entry, unit) => Some(entry),
            // "yes, pumped at 4": the hour, and no trailer 4
            [entry] if yes.is_some() && is_of_an_hour(entry) => None,
            _ => return None,
        };
        let short = self.text.split_whitespace().count() <= LONGEST;
        if !short || told.is_none() && (yes.is_none() || self.says_no()) {
            return None;
        }
        let mut entry = Entry {
            unit: Some(unit.clone()),
            events: vec![Event::WastePumped],
            ..Entry::default()
        };
        let gal = told
            .and_then(|told| told.readings.value(ReadingKey::PumpedGal))
            .or_else(|| gallons(yes?));
        if let Some(gal) = gal {
            entry.readings.set(ReadingKey::PumpedGal, gal);
        }
        Some(Answered::Report {
            entries: vec![entry],
            at: self
                .hour_told(unit, since, until)
                .unwrap_or(half_way(since, until)),
            instead: false,
        })
    }

    /// Returns the trailer that nobody pumped, by the answer to that question.
    pub(super) fn not_pumped(&mut self) -> Option<UnitName> {
        let unit = self.asked_if_pumped()?.0.clone();
        let only = self.heard.entries.iter().all(Entry::is_empty) && self.heard.command.is_none();
        // "no, the pressure was 60" is of another thing
        if !only
            || self.mends_a_thing()
            || !self.says_no()
            || self.text.split_whitespace().count() > LONGEST
        {
            return None;
        }
        self.heard = Heard {
            language: self.heard.language,
            ..Heard::default()
        };
        self.talk.question = None;
        Some(unit)
    }

    /// Tells how a pump-out that answers the question was placed; none where the message is no such answer, nothing to
    /// say where the answer gave the hour.
    pub(in crate::desk) fn pump_out_taken(
        &self,
        settled: &Settled,
        voice: &Voice<'_>,
    ) -> Option<Option<String>> {
        let open = self.desk.book.talk(&self.member.id)?;
        let About::WasPumped { unit, since, until } = &open.question_at(self.inbound.at)?.about
        else {
            return None;
        };
        let told = |(of, at, entry): &&(UnitName, DateTime<Utc>, Entry)| {
            of == unit && at <= until && is_pump_out(entry, unit)
        };
        let (_, at, _) = settled.reports.iter().find(told)?;
        let guessed = *at == half_way(*since, *until);
        Some(guessed.then(|| voice.say("pumped-taken", &[("time", (*at).into())])))
    }

    fn says_no(&self) -> bool {
        let phrases = self.desk.phrases;
        phrases.after("pumped", "no", self.text).is_some()
            || phrases.holds("pumped", "not", self.text)
    }

    fn asked_if_pumped(&self) -> Option<(&UnitName, DateTime<Utc>, DateTime<Utc>)> {
        match &self.talk.question_at(self.inbound.at)?.about {
            About::WasPumped { unit, since, until } => Some((unit, *since, *until)),
            _ => None,
        }
    }

    /// Returns the instant of the hour that the answer gives; none that is not between the two readings.
    fn hour_told(
        &self,
        unit: &UnitName,
        since: DateTime<Utc>,
        until: DateTime<Utc>,
    ) -> Option<DateTime<Utc>> {
        let zone = self.fleet.zone_at(Some(unit), until);
        when::instant(&when::clock_in(self.text)?, until, zone)
            .filter(|at| *at > since && *at <= until)
    }
}

/// Says what a no means: it did not go by itself.
pub(super) fn tell_not_pumped(hearing: &Hearing<'_>, unit: &UnitName, reply: &mut Reply<'_>) {
    reply.say("pumped-not", &[("unit", unit.as_str().into())]);
    let case = hearing.standing(unit);
    let coming = reply.voice.forecast_of("waste", &case.outlook);
    reply.lines.extend(coming);
}

/// Tells whether no more than a pump-out is told, of a "trailer" that can be the hour.
fn is_of_an_hour(entry: &Entry) -> bool {
    let hour = entry
        .unit
        .as_ref()
        .and_then(|unit| unit.as_str().parse().ok());
    let only = entry.events == [Event::WastePumped] && entry.readings.values.is_empty();
    only && hour.is_some_and(|hour: u8| (1..=12).contains(&hour))
}

/// Tells whether an entry says that this trailer, or one it does not name, was pumped, at no time of its own, and no more.
fn is_pump_out(entry: &Entry, unit: &UnitName) -> bool {
    let its = entry.unit.as_ref().is_none_or(|name| name == unit);
    let only = |events: &[Event]| events.iter().all(|event| *event == Event::WastePumped);
    let gallons = |key: &ReadingKey| *key == ReadingKey::PumpedGal;
    its && entry.when.is_none()
        && only(&entry.events)
        && entry.faults.is_empty()
        && entry.cleared.is_empty()
        && entry.readings.values.keys().all(gallons)
        && !entry.is_empty()
}

/// Tells whether words hold a level: a fraction or a share of a hundred.
fn tells_a_level(words: &str) -> bool {
    words.split_whitespace().any(|word| {
        let word = word.trim_end_matches(['.', ',', '!']);
        let digits = |part: &str| !part.is_empty() && part.chars().all(|c| c.is_ascii_digit());
        let fraction = word.split_once('/');
        let fraction = fraction.is_some_and(|(top, bottom)| digits(top) && digits(bottom));
        fraction || word.strip_suffix('%').is_some_and(digits)
    })
}

/// Finds gallons behind a yes: "yes 350", "si, 1,200 galones".
fn gallons(rest: &str) -> Option<f64> {
    let told = gallons::amounts(&gallons::words_of(rest));
    let measured = told.iter().rev().find(|told| told.measured);
    // "yes 1730" is an hour, "yes 17:40, 300 gal" an hour and gallons
    let bare = told.iter().rev().find(|told| told.gal >= LEAST_GAL);
    let bare = bare.filter(|_| when::clock_in(rest).is_none());
    measured.or(bare).map(|told| told.gal)
}

/// Returns the whole minute half way between two instants.
fn half_way(since: DateTime<Utc>, until: DateTime<Utc>) -> DateTime<Utc> {
    since + TimeDelta::minutes((until - since).num_minutes() / 2)
}
