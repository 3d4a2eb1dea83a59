//! Which trailer is meant by the name of a site: "gas smell at dovecote", "waste 3/4 at ice harp". The one last talked about
//! may stand somewhere else, and help would be sent there.

use chrono::{DateTime, TimeDelta, Utc};

use super::super::answer::Reply;
use super::super::phrases::plain;
use super::super::settle::{self, Settled};
use super::super::{Desk, sites};
use super::Hearing;
use super::meaning::{Came, Meaning};
use crate::finding::Level;
use crate::fleet::{Fleet, Site};
use crate::heard::{Entry, ReadingKey, UnitName};
use crate::reply::Arg;

/// A trailer may stand at a site so long before its doors open and after they close.
const AROUND: TimeDelta = TimeDelta::days(7);

/// A shorter word does not tell a site alone.
const LONG: usize = 5;

impl Meaning {
    /// Takes the trailer of the site that a message names for the one it means, where it names none. Of several there it is
    /// the one last talked about; a danger is given to the first of them rather than to none.
    pub(super) fn take_unit_at_site(&mut self, came: &Came<'_>, danger: bool) {
        let text = self.whole.as_deref().unwrap_or(came.text);
        let is_known = |name: &UnitName| settle::known(came.fleet, name).is_some();
        self.elsewhere = danger.then(|| self.other_site(came, text)).flatten();
        let heard = &self.heard;
        if heard.named.iter().any(is_known)
            || heard.command.is_some()
            || came.inbound.replaces.is_some()
        {
            return;
        }
        let text = self.whole.as_deref().unwrap_or(came.text);
        let reports = heard.entries.iter().any(|entry| !Entry::is_empty(entry));
        // a danger is not left without a place for a name that nobody bears: "fire at quince terrace"
        if !(danger || reports && heard.named.is_empty()) {
            return;
        }
        // "10 wire down": beside a danger the number in front is no thickness of a wire
        if danger && let Some(unit) = came.opens_with_unit(text) {
            let nameless = self.heard.entries.iter_mut();
            for entry in nameless.filter(|entry| entry.unit.is_none()) {
                entry.unit = Some(unit.clone());
            }
            self.heard.named.push(unit);
            return;
        }
        let Some(site) = came.site_told(text) else {
            return;
        };
        let at = came.inbound.at;
        let here = units_at(came.desk, came.fleet, &site.id, at);
        let only_people = heard.entries.iter().all(counts_people);
        let last = self.talk.unit_at(at);
        let checked = self.talk.checks.iter().rev().map(|check| &check.unit);
        let before = last.into_iter().chain(checked);
        let unit = before
            .into_iter()
            .find(|unit| here.contains(unit))
            .or(match here.as_slice() {
                // people are counted for the whole site
                [first, rest @ ..] if rest.is_empty() || danger || only_people => Some(first),
                _ => None,
            })
            .cloned();
        self.heard.named.clear();
        for entry in &mut self.heard.entries {
            entry.unit = None;
        }
        self.site = Some(site.id.clone());
        self.talk.unit = unit.map(|unit| (unit, at));
    }
}

impl Meaning {
    /// Takes the trailer that is named last where the first was a slip in a danger: "12 guy collapsed, its 23 sorry".
    pub(super) fn take_unit_mended(&mut self, came: &Came<'_>) {
        let text = self.whole.as_deref().unwrap_or(came.text);
        let known = |name: &UnitName| settle::known(came.fleet, name).cloned();
        let Some(first) = self.heard.named.iter().find_map(known) else {
            return;
        };
        let mended = |tail: &str| {
            let is = |list, word: &str| came.desk.phrases.is("place", list, word);
            let folded = plain(tail);
            let (mut unit, mut wrong) = (None, false);
            for word in folded.split(' ').filter(|word| !word.is_empty()) {
                match known(&UnitName::new(word)) {
                    Some(named) => unit = Some(named),
                    None if is("wrong", word) => wrong = true,
                    None if is("beside", word) => {}
                    None => return None,
                }
            }
            unit.filter(|unit| wrong && *unit != first)
        };
        let mut ends = text.match_indices([',', '.', ';']);
        let Some((told, unit)) =
            ends.find_map(|(at, _)| Some((&text[..at], mended(&text[at + 1..])?)))
        else {
            return;
        };
        let mut heard = came.hear(told);
        for entry in &mut heard.entries {
            entry.unit = Some(unit.clone());
        }
        heard.named = vec![unit];
        self.whole = Some(told.to_owned());
        self.heard = heard;
    }

    /// Returns the site that a danger is told of beside a trailer that stands at another.
    fn other_site(&self, came: &Came<'_>, text: &str) -> Option<String> {
        let heard = &self.heard;
        let known = |name: &UnitName| settle::known(came.fleet, name).cloned();
        let unit = heard.named.iter().find_map(known)?;
        if heard.command.is_some() {
            return None;
        }
        let site = came.site_told(text)?;
        let here = units_at(came.desk, came.fleet, &site.id, came.inbound.at);
        (!here.contains(&unit)).then(|| site.id.clone())
    }
}

impl<'a> Came<'a> {
    /// Returns the trailer whose name opens a text.
    fn opens_with_unit(&self, text: &str) -> Option<UnitName> {
        let first = text.split_whitespace().next()?;
        let name = first.trim_end_matches([',', ':', '.', ';']);
        settle::known(self.fleet, &UnitName::new(name)).cloned()
    }

    /// Finds the one site that a text names: by a spelling that tells it alone, or by words of its name behind a word of
    /// place, with nothing behind them that makes them another thing ("at the green cord").
    fn site_told(&self, text: &str) -> Option<&'a Site> {
        if let Some((site, _)) = sites::named_in(self.fleet, text) {
            return Some(site);
        }
        let phrases = self.desk.phrases;
        text.split([',', ';', '.', '!', '?', '\n'])
            .find_map(|part| {
                let folded = plain(part);
                let words: Vec<&str> = folded.split(' ').collect();
                let place = |word: &str| phrases.is("arrive", "place", word);
                let article = |word: &str| phrases.is("arrive", "article", word);
                let behind = (0..words.len().saturating_sub(1)).rev();
                behind.filter(|at| place(words[*at])).find_map(|at| {
                    let name = &words[at + 1..];
                    let name = match name {
                        [first, rest @ ..] if article(first) && !rest.is_empty() => rest,
                        name => name,
                    };
                    let telling = name.len() > 1 || name.iter().all(|word| word.len() >= LONG);
                    let all_of_it = |site: &&Site| {
                        let own = plain(&format!("{} {}", site.name, site.id));
                        name.iter()
                            .all(|word| own.split(' ').any(|own| own == *word))
                    };
                    let mut sites: Vec<&Site> = self.fleet.sites.values().collect();
                    sites.retain(all_of_it);
                    if sites.len() > 1 {
                        // of two film sets it is the one that is on
                        let now = self.inbound.at;
                        let on = |site: &&Site| {
                            !units_at(self.desk, self.fleet, &site.id, now).is_empty()
                        };
                        sites.retain(on);
                    }
                    match sites.as_slice() {
                        [site] if telling => Some(*site),
                        _ => None,
                    }
                })
            })
    }
}

impl Hearing<'_> {
    /// Says where help is to be sent where a danger is told of a site and no trailer is known to stand there.
    pub(super) fn tell_site_without_unit(&self, settled: &Settled, reply: &mut Reply<'_>) {
        let told = settled.findings.iter();
        let danger = told
            .filter(|found| found.unit.is_none())
            .any(|found| found.level >= Level::Warning);
        let site = self
            .site
            .as_ref()
            .and_then(|site| self.fleet.sites.get(site));
        if let Some(site) = site.filter(|_| danger) {
            let place = site.emergency_address.as_ref().unwrap_or(&site.name);
            reply.say("walk-emergency-at", &[("site", place.as_str().into())]);
        }
    }
}

impl Hearing<'_> {
    /// Says that the trailer and the site which a danger is told of are not at one place, with the address of that site.
    pub(super) fn tell_other_site(&self, settled: &Settled, reply: &mut Reply<'_>) {
        let site = self.elsewhere.as_ref();
        let Some(site) = site.and_then(|site| self.fleet.sites.get(site)) else {
            return;
        };
        let unit = settled.reports.first().map(|(unit, ..)| unit.clone());
        let Some(unit) = unit.or_else(|| self.unit_meant()) else {
            return;
        };
        let planned = self.standing(&unit).place();
        let address = site.emergency_address.as_ref().unwrap_or(&site.name);
        let mut args = vec![
            ("unit", Arg::from(unit.as_str())),
            ("site", site.name.as_str().into()),
            ("address", address.as_str().into()),
        ];
        match planned {
            Some(planned) => {
                args.push(("was", planned.into()));
                reply.say("danger-site-differs", &args);
            }
            None => reply.say("danger-site-beside", &args),
        }
    }
}

/// Tells whether a report counts people and tells nothing else.
fn counts_people(entry: &Entry) -> bool {
    let readings = entry.readings.values.keys().eq([&ReadingKey::Guests]);
    let nothing_else = entry.events.is_empty() && entry.faults.is_empty();
    readings && nothing_else && entry.readings.amps.is_empty()
}

/// Lists the trailers that stand at a site, by the plan or by what was told.
pub(super) fn units_at(
    desk: &Desk,
    fleet: &Fleet,
    site: &str,
    now: DateTime<Utc>,
) -> Vec<UnitName> {
    let ahead = desk.book.ahead();
    let jobs = fleet.jobs_between(now - AROUND, now + AROUND);
    let planned = jobs.filter(|job| job.id.site == site);
    let mut here: Vec<UnitName> = Vec::new();
    for unit in planned.flat_map(|job| &job.trailers) {
        let stands = match ahead.stands_at(unit) {
            Some((told, _)) => told == site,
            None => {
                let job = fleet.job_of(unit, now, None);
                job.is_some_and(|job| job.id.site == site)
            }
        };
        if stands && !here.contains(unit) {
            here.push(unit.clone());
        }
    }
    for (unit, told) in ahead.all_stands_at() {
        if told == site && !here.contains(unit) {
            here.push(unit.clone());
        }
    }
    here
}
