//! A message that does no more than mend the sender's last report: `*3/4`, `oops 52`, `no, la 10`, `not 12, 14`.
//!
//! What it means is found by trying: each reading of that report is read again with the new number in its place. One
//! way is taken; where it could mean either, it is asked. The mended report takes the place of the old one, which the
//! journal keeps.

use chrono::{DateTime, TimeDelta, Utc};

use super::super::settle::known;
use super::Hearing;
use super::bare::keys_of;
use crate::book::{MessageKey, Sent};
use crate::dialogue::{About, Mend};
use crate::heard::{Answer, Entry, ReadingKey, UnitName};

/// A correction comes within this long of what it mends.
const MENDS_WITHIN: TimeDelta = TimeDelta::minutes(90);
/// A longer message is a report of its own.
const LONGEST: usize = 9;
/// A number that corrects another is of its size, up to this ratio.
const LIKE_SIZE: f64 = 2.5;
/// Temperatures have no ratio: this far apart, °F.
const LIKE_WARMTH: f64 = 60.0;

/// A report of a sender as it stands in the book.
pub(super) type Told = (UnitName, DateTime<Utc>, Entry);

/// What a correction comes to.
pub(super) enum Mending {
    /// It mends the report under a key in this way.
    Plain(MessageKey, Vec<Mend>),
    /// It could mean one or the other.
    Either(About),
    /// It mends something, and nobody can tell what.
    Unknown,
}

/// What a correction says: what is right, and what was wrong where that is said too.
struct Said<'t> {
    right: &'t str,
    wrong: Option<&'t str>,
    /// True for a mark that begins nothing but a correction: `*`, "oops", "perdón".
    sure: bool,
    /// True for one that opens reports too: "its", "era".
    weak: bool,
    /// True where "no" or "not" stands before what is said.
    denied: bool,
}

impl Hearing<'_> {
    /// Returns what this message mends of the sender's last report; none where it is no correction alone.
    pub(super) fn mending(&self) -> Option<Mending> {
        let heard = &self.heard;
        if heard.ask.is_some()
            || heard.command.is_some()
            || self.text.split_whitespace().count() > LONGEST
            || self.text.trim_end().ends_with('?')
        {
            return None;
        }
        let said = self.correction()?;
        let sent = self.mended()?;
        let told = self.told_in(sent);
        if told.is_empty() {
            return None;
        }
        let untrue = self.untrue(&said, &told);
        if !untrue.is_empty() {
            return Some(Mending::Plain(sent.key.clone(), untrue));
        }
        let ways = if said.wrong.is_some() {
            self.ways(&said, &told)
        } else if heard.entries.is_empty() {
            self.firmly_meant(&said, self.ways(&said, &told))
        } else if said.sure {
            self.said_again(&told)
                .unwrap_or_else(|| self.ways(&said, &told))
        } else {
            // "no water", "no, 46 psi now": a report of its own
            return None;
        };
        match ways.len() {
            0 if !said.sure || self.says_more(&said) => None,
            0 => Some(Mending::Unknown),
            1 => Some(Mending::Plain(sent.key.clone(), ways)),
            _ => Some(Mending::Either(About::WhichMend {
                key: sent.key.0.clone(),
                ways,
            })),
        }
    }

    /// Keeps of the ways those that a mark such as "no" or "its" alone can mean.
    fn firmly_meant(&self, said: &Said<'_>, ways: Vec<Mend>) -> Vec<Mend> {
        let of_a_unit = |way: &Mend| matches!(way, Mend::Unit { .. } | Mend::Off { .. });
        if said.sure {
            return ways;
        }
        // "its 14": as well a new reading as another trailer
        if said.weak {
            return match self.explicit(said.right) && ways.iter().all(of_a_unit) {
                true => ways,
                false => Vec::new(),
            };
        }
        // beside a step that waits for an answer, "no, 46" answers it
        let waits = !self.talk.checks.is_empty() || self.talk.round.is_some();
        if waits && !ways.iter().all(of_a_unit) {
            return Vec::new();
        }
        ways
    }

    /// "oops, 12 pressure 52": the whole report again, with another number or another trailer; none where it tells more.
    fn said_again(&self, told: &[Told]) -> Option<Vec<Mend>> {
        let [entry] = self.heard.entries.as_slice() else {
            return None;
        };
        let ([(unit, _, old)], Some(named)) = (told, &entry.unit) else {
            return None;
        };
        let named = known(&self.fleet, named)?;
        let bare = entry.events.is_empty() && entry.faults.is_empty() && entry.cleared.is_empty();
        let values = &entry.readings.values;
        if !bare || values.is_empty() || !entry.readings.amps.is_empty() {
            return Some(Vec::new());
        }
        if named == unit && values.keys().all(|key| old.readings.value(*key).is_some()) {
            return Some(labelled(entry, told));
        }
        let same = values
            .iter()
            .all(|(key, value)| old.readings.value(*key) == Some(*value));
        if named != unit && same && values.len() == old.readings.values.len() {
            return Some(vec![Mend::Unit {
                from: unit.clone(),
                to: named.clone(),
            }]);
        }
        Some(Vec::new())
    }

    /// Returns the sender's report that a correction means: the one this message edits, or the last within reach.
    fn mended(&self) -> Option<&Sent> {
        let sent = self.desk.book.sent(&self.member.id);
        if let Some(key) = &self.edited {
            return sent.iter().find(|sent| sent.key == *key);
        }
        let at = self.inbound.at;
        let last = sent
            .iter()
            .rev()
            .find(|sent| sent.at <= at && !self.told_in(sent).is_empty())?;
        (at - last.at <= MENDS_WITHIN).then_some(last)
    }

    /// Returns what a message of the sender reported, a word without a reading left out.
    pub(in crate::desk) fn told_in(&self, sent: &Sent) -> Vec<Told> {
        let mut told = Vec::new();
        for unit in &sent.units {
            let Some(kept) = self.desk.book.unit(unit) else {
                continue;
            };
            if told.iter().any(|(other, ..): &Told| other == unit) {
                continue;
            }
            let reports = kept
                .reports_of(&sent.key)
                .filter(|(_, entry)| !entry.is_empty());
            told.extend(reports.map(|(at, entry)| (unit.clone(), at, entry.clone())));
        }
        told
    }

    /// Takes the mark of a correction off the message.
    fn correction(&self) -> Option<Said<'_>> {
        let phrases = &self.desk.phrases;
        let text = self.text.trim();
        let plain = |right, sure| Said {
            right,
            wrong: None,
            sure,
            weak: false,
            denied: false,
        };
        if let Some(right) = text.strip_prefix('*').or(text.strip_suffix('*')) {
            let right = right.trim_matches('*').trim();
            return (!right.is_empty()).then(|| plain(right, true));
        }
        let mut rest = text;
        let (mut sure, mut denied) = (false, false);
        while let Some(after) = phrases.after("mend", "opens", rest) {
            let head = &rest[..rest.len() - after.len()];
            sure |= !phrases.is("mend", "weak", head);
            // "perdón, no está": the denial went with the mark
            denied |= phrases.ends("mend", "no", head);
            rest = after;
            if rest.is_empty() {
                return None;
            }
        }
        if let Some(after) = phrases.after("mend", "no", rest) {
            // "not 12, 14", "no la 12, la 14", "no es la 12 es la 14"
            let parts = after
                .split_once([',', ';'])
                .or_else(|| phrases.parted("mend", "between", after));
            if let Some((wrong, after)) = parts {
                let after = self.without_is(after.trim());
                return (!after.is_empty()).then_some(Said {
                    right: after,
                    wrong: Some(self.without_is(wrong.trim())),
                    sure,
                    weak: false,
                    denied: false,
                });
            }
            return (!after.is_empty()).then(|| Said {
                denied: true,
                ..plain(after, sure)
            });
        }
        // "14 not 12", "es la 14, no la 12"
        if let Some((right, wrong)) = phrases.parted("mend", "not", rest)
            && !wrong.is_empty()
        {
            return Some(Said {
                right: self.without_is(right),
                wrong: Some(self.without_is(wrong)),
                sure,
                weak: false,
                denied: false,
            });
        }
        // "119, I mean", "48, perdón"
        if rest == text
            && let Some(right) = phrases.before("mend", "closes", text)
        {
            return Some(plain(right, true));
        }
        (rest != text).then_some(Said {
            weak: !sure,
            denied,
            ..plain(rest, sure)
        })
    }

    /// "perdón, no está nivelada", "not chocked": what the sender called so before and denies now. Without a mark that begins
    /// nothing but a correction, only where the message is no report of its own.
    fn untrue(&self, said: &Said<'_>, told: &[Told]) -> Vec<Mend> {
        if !said.denied || !(said.sure || self.heard.entries.is_empty()) {
            return Vec::new();
        }
        let scale = self.fleet.style.temperature;
        let heard = self.desk.reader.hear(said.right, scale);
        let [entry] = heard.entries.as_slice() else {
            return Vec::new();
        };
        let named = entry.unit.as_ref();
        let named = named.and_then(|name| known(&self.fleet, name));
        let meant: Vec<&Told> = told
            .iter()
            .filter(|(unit, ..)| named.is_none_or(|named| named == unit))
            .collect();
        let [(unit, _, old)] = meant.as_slice() else {
            return Vec::new();
        };
        let events = entry
            .events
            .iter()
            .filter(|event| old.events.contains(event));
        let faults = entry
            .faults
            .iter()
            .filter(|fault| old.faults.contains(fault));
        let unit = || unit.clone();
        let events = events.map(|event| Mend::Event {
            unit: unit(),
            event: *event,
        });
        let faults = faults.map(|fault| Mend::Fault {
            unit: unit(),
            fault: *fault,
        });
        let ways: Vec<Mend> = events.chain(faults).collect();
        let all = entry.events.len() + entry.faults.len();
        if ways.len() == all && entry.readings.is_empty() {
            ways
        } else {
            Vec::new()
        }
    }

    /// "circuit 3 not 2": the current was read on another circuit.
    fn on_circuit(&self, right: &str, wrong: &str, told: &[Told]) -> Vec<Mend> {
        let phrases = &self.desk.phrases;
        let named = |text| phrases.after("mend", "circuit", text);
        let number = |text| named(text).unwrap_or(text).trim().parse::<u8>().ok();
        let (Some(to), Some(from)) = (number(right), number(wrong)) else {
            return Vec::new();
        };
        let read_there = |(_, _, entry): &&Told| {
            let mut amps = entry.readings.amps.iter();
            amps.any(|current| current.circuit == Some(from))
        };
        let ways = told
            .iter()
            .filter(read_there)
            .map(|(unit, ..)| Mend::Circuit {
                unit: unit.clone(),
                from,
                to,
            });
        ways.collect()
    }

    fn without_is<'t>(&self, text: &'t str) -> &'t str {
        let mut rest = text;
        // the word before a trailer's number tells that it is one
        while let Some(after) = self.desk.phrases.after("mend", "is", rest) {
            if after.is_empty() || self.names_a_unit(rest).is_some() && self.explicit(rest) {
                break;
            }
            rest = after;
        }
        rest
    }

    /// Tells whether what follows the mark is a message of its own: a report, a plan, a longer word.
    fn says_more(&self, said: &Said<'_>) -> bool {
        let heard = &self.heard;
        !heard.entries.is_empty()
            || !heard.plans.is_empty()
            || !said.right.chars().any(|c| c.is_ascii_digit())
    }

    /// Finds every way in which a correction can be meant.
    fn ways(&self, said: &Said<'_>, told: &[Told]) -> Vec<Mend> {
        let right = self
            .desk
            .reader
            .hear(said.right, self.fleet.style.temperature);
        let answer = right.answer.clone().unwrap_or_default();
        if let Some(wrong) = said.wrong {
            return self.contrasted(said.right, wrong, &answer, told);
        }
        let mut ways: Vec<Mend> = Vec::new();
        // "oops, pressure 52", "sorry, waste 3/4"
        if let [entry] = right.entries.as_slice() {
            let bare = entry.unit.is_none() && entry.events.is_empty() && entry.faults.is_empty();
            if !entry.faults.is_empty() || !entry.events.is_empty() || !entry.cleared.is_empty() {
                return Vec::new();
            }
            if bare && !entry.readings.values.is_empty() {
                return labelled(entry, told);
            }
        }
        // "sorry, fresh": the label alone
        if let Some(noun) = answer.noun.as_deref().filter(|_| answer.number.is_none()) {
            return relabelled(noun, None, told);
        }
        let unit = self.names_a_unit(said.right);
        let units_alone = |to: &UnitName| -> Vec<Mend> {
            let mut ways: Vec<Mend> = Vec::new();
            // one of those reported on is not the one that was meant instead
            if told.iter().any(|(unit, ..)| unit == to) {
                return ways;
            }
            for (from, ..) in told {
                let way = Mend::Unit {
                    from: from.clone(),
                    to: to.clone(),
                };
                if !ways.contains(&way) {
                    ways.push(way);
                }
            }
            ways
        };
        // "not 23" after "10 and 23 closed"
        if let Some(unit) =
            unit.filter(|unit| !said.sure && told.iter().any(|(of, ..)| of == *unit))
        {
            let several = told.iter().any(|(of, ..)| of != unit);
            let off = Mend::Off { unit: unit.clone() };
            return several.then_some(off).into_iter().collect();
        }
        if let Some(to) = unit.filter(|_| self.explicit(said.right)) {
            return units_alone(to);
        }
        let (near, far) = self.values(said.right, told);
        ways.extend(unit.into_iter().flat_map(units_alone));
        if near.is_empty() && ways.is_empty() && said.sure {
            ways.extend(far);
        }
        ways.extend(near);
        // "oops, 10 is half": the others are as they were
        let names = self.names();
        if names.len() == 1 && told.iter().any(|(unit, ..)| *unit == names[0]) {
            ways.retain(|way| way.unit() == &names[0]);
        }
        ways
    }

    /// "not 12, 14", "not 95, 52", "not waste, fresh": what was wrong tells what is mended.
    fn contrasted(&self, right: &str, wrong: &str, answer: &Answer, told: &[Told]) -> Vec<Mend> {
        let wrong_heard = self.desk.reader.hear(wrong, self.fleet.style.temperature);
        let wrong_answer = wrong_heard.answer.unwrap_or_default();
        if let (Some(noun), Some(was)) = (answer.noun.as_deref(), wrong_answer.noun.as_deref())
            && answer.number.is_none()
        {
            return relabelled(noun, Some(was), told);
        }
        let named = |text| self.desk.phrases.after("mend", "circuit", text).is_some();
        if named(right) || named(wrong) {
            let ways = self.on_circuit(right, wrong, told);
            if !ways.is_empty() {
                return ways;
            }
        }
        let mut ways = Vec::new();
        if let (Some(to), Some(from)) = (self.names_a_unit(right), self.names_a_unit(wrong))
            && told.iter().any(|(unit, ..)| unit == from)
        {
            ways.push(Mend::Unit {
                from: from.clone(),
                to: to.clone(),
            });
        }
        let (near, far) = self.values(right, told);
        let was_so: Vec<Mend> = self.values(wrong, told).0;
        let same = |way: &Mend| {
            was_so.iter().any(|old| match (way, old) {
                (
                    Mend::Value { unit, key, was, .. },
                    Mend::Value {
                        unit: of,
                        key: old_key,
                        value,
                        ..
                    },
                ) => unit == of && key == old_key && (was - value).abs() < 0.01,
                _ => false,
            })
        };
        ways.extend(near.into_iter().chain(far).filter(same));
        if ways.is_empty() {
            ways = self.on_circuit(right, wrong, told);
        }
        ways
    }

    /// Tells whether a trailer is named as one: "la 10", "unit 10", "#10".
    fn explicit(&self, text: &str) -> bool {
        let named = self.desk.phrases.after("mend", "trailer", text);
        text.trim_start().starts_with('#') || named.is_some_and(|rest| !rest.is_empty())
    }

    /// Finds the trailer that a few words name.
    fn names_a_unit(&self, text: &str) -> Option<&UnitName> {
        if text.trim_start().starts_with(['-', '+', '−']) {
            return None;
        }
        let words: Vec<&str> = text
            .split(|c: char| !(c.is_alphanumeric() || c == '-' || c == '/' || c == '.' || c == '%'))
            .filter(|word| !word.is_empty())
            .collect();
        let name = match words.as_slice() {
            [name] | [_, name] => name,
            _ => return None,
        };
        if words.len() == 2 && !self.explicit(text) {
            return None;
        }
        let name = name.trim_end_matches('.');
        // a fraction, a decimal number or one with a sign is none
        if name.contains(['/', '.', '%']) {
            return None;
        }
        known(&self.fleet, &UnitName::new(name))
    }

    /// Tries a number in the place of every reading: those of the old one's size, and the others.
    fn values(&self, right: &str, told: &[Told]) -> (Vec<Mend>, Vec<Mend>) {
        let mut near = Vec::new();
        let mut far = Vec::new();
        for (unit, _, entry) in told {
            for (key, was) in &entry.readings.values {
                let Some(value) = self.tried(*key, *was, right) else {
                    continue;
                };
                let way = Mend::Value {
                    unit: unit.clone(),
                    key: *key,
                    was: *was,
                    value,
                };
                if alike(*key, *was, value) {
                    near.push(way);
                } else {
                    far.push(way);
                }
            }
            for current in &entry.readings.amps {
                let circuit = current.circuit.unwrap_or(1);
                let heard = self.desk.reader.hear(
                    &format!(
                        "circuit {circuit} {} amps",
                        right.trim_end_matches("amps").trim()
                    ),
                    self.fleet.style.temperature,
                );
                let [read] = heard.entries.as_slice() else {
                    continue;
                };
                if let [amps] = read.readings.amps.as_slice() {
                    let way = Mend::Amps {
                        unit: unit.clone(),
                        circuit: current.circuit,
                        amps: amps.amps,
                    };
                    if alike(ReadingKey::FlowGpm, current.amps, amps.amps) {
                        near.push(way);
                    } else {
                        far.push(way);
                    }
                }
            }
        }
        (near, far)
    }

    /// Reads a number as another value of one reading; none where it cannot be one.
    fn tried(&self, key: ReadingKey, was: f64, right: &str) -> Option<f64> {
        let bare = right.trim().trim_start_matches(['-', '+', '−']);
        let bare = !bare.is_empty()
            && bare
                .chars()
                .all(|c| c.is_ascii_digit() || c == '.' || c == ',');
        let by_marks = |pct: f64| (pct / 12.5).fract() == 0.0 || (pct * 3.0 / 100.0).fract() < 0.02;
        let (before, after) = match key {
            ReadingKey::PressurePsi => ("pressure ", if bare { " psi" } else { "" }),
            ReadingKey::SupplyPsi => ("supply ", if bare { " psi" } else { "" }),
            // a level told by the gauge's marks is mended by them
            ReadingKey::WastePct | ReadingKey::FreshPct | ReadingKey::FuelPct
                if bare && by_marks(was) && !by_marks(right.trim().parse().ok()?) =>
            {
                return None;
            }
            ReadingKey::WastePct => ("waste ", if bare { "%" } else { "" }),
            ReadingKey::FreshPct => ("fresh ", if bare { "%" } else { "" }),
            ReadingKey::FuelPct => ("fuel ", if bare { "%" } else { "" }),
            ReadingKey::BatteryPct => ("battery ", if bare { "%" } else { "" }),
            ReadingKey::WasteGal => ("waste ", if bare { " gal" } else { "" }),
            ReadingKey::FreshGal => ("fresh ", if bare { " gal" } else { "" }),
            ReadingKey::FuelGal => ("fuel ", if bare { " gal" } else { "" }),
            ReadingKey::PumpedGal => ("pumped ", if bare { " gal" } else { "" }),
            ReadingKey::HoseFt => ("hose ", if bare { " ft" } else { "" }),
            ReadingKey::CordFt => ("cord ", if bare { " ft" } else { "" }),
            ReadingKey::FlowGpm => ("flow ", ""),
            ReadingKey::AirF => ("outside ", ""),
            ReadingKey::InsideF => ("inside temp ", ""),
            ReadingKey::LowF => ("low tonight ", ""),
            ReadingKey::HumidityPct => ("humidity ", ""),
            ReadingKey::WindMph => ("wind ", ""),
            ReadingKey::SlopePct => ("slope ", if bare { "%" } else { "" }),
            ReadingKey::Volts | ReadingKey::VoltsHigh | ReadingKey::VoltsLow => {
                ("outlet ", if bare { " volts" } else { "" })
            }
            ReadingKey::BatteryV => ("battery ", if bare { " volts" } else { "" }),
            ReadingKey::Cords => ("cords ", ""),
            ReadingKey::Guests => ("guests ", ""),
            ReadingKey::EtaMin => ("eta ", if bare { " min" } else { "" }),
            ReadingKey::StallsOut => ("", if bare { " stalls out" } else { "" }),
        };
        let text = format!("{before}{right}{after}");
        let heard = self.desk.reader.hear(&text, self.fleet.style.temperature);
        match heard.entries.as_slice() {
            [entry] if heard.unclear.is_empty() && entry.readings.values.len() == 1 => {
                entry.readings.value(key)
            }
            _ => None,
        }
    }
}

/// Applies ways of mending to a report.
pub(super) fn apply(ways: &[Mend], told: Vec<Told>) -> Vec<Told> {
    told.into_iter()
        .map(|(unit, at, mut entry)| {
            entry.when = None;
            let mut of = unit.clone();
            for way in ways {
                match way {
                    Mend::Off { unit: off } if *off == unit => entry = Entry::default(),
                    Mend::Event { unit: on, event } if *on == unit => {
                        entry.events.retain(|other| other != event);
                    }
                    // told as over, so that a check that was begun for it ends
                    Mend::Fault { unit: on, fault } if *on == unit => {
                        entry.faults.retain(|other| other != fault);
                        entry.cleared.push(*fault);
                    }
                    Mend::Circuit { unit: on, from, to } if *on == unit => {
                        let mut all = entry.readings.amps.iter_mut();
                        if let Some(current) = all.find(|current| current.circuit == Some(*from)) {
                            current.circuit = Some(*to);
                        }
                    }
                    Mend::Unit { from, to } if *from == unit => of = to.clone(),
                    Mend::Value {
                        unit: on,
                        key,
                        was,
                        value,
                    } if *on == unit
                        && (entry.readings.value(*key))
                            .is_some_and(|old| (old - was).abs() < 0.001) =>
                    {
                        entry.readings.set(*key, *value);
                    }
                    Mend::Amps {
                        unit: on,
                        circuit,
                        amps,
                    } if *on == unit => {
                        let mut all = entry.readings.amps.iter_mut();
                        if let Some(current) = all.find(|current| current.circuit == *circuit) {
                            current.amps = *amps;
                        }
                    }
                    Mend::Label {
                        unit: on, from, to, ..
                    } if *on == unit => {
                        if let Some(value) = entry.readings.values.remove(from) {
                            entry.readings.set(*to, value);
                        }
                    }
                    _ => {}
                }
            }
            entry.unit = Some(of.clone());
            (of, at, entry)
        })
        .filter(|(.., entry)| !entry.is_empty())
        .collect()
}

/// "oops, pressure 52": a reading with its name mends the one of that name, or gives another name to the same value.
fn labelled(right: &Entry, told: &[Told]) -> Vec<Mend> {
    let mut ways = Vec::new();
    for (key, value) in &right.readings.values {
        let old = told.iter().filter_map(|(unit, _, entry)| {
            let was = entry.readings.value(*key)?;
            Some(Mend::Value {
                unit: unit.clone(),
                key: *key,
                was,
                value: *value,
            })
        });
        let before = ways.len();
        ways.extend(old);
        if ways.len() > before {
            continue;
        }
        let same = told.iter().flat_map(|(unit, _, entry)| {
            let values = entry.readings.values.iter();
            let alike = values
                .filter(|(from, was)| family(**from).contains(key) && (*was - *value).abs() < 0.01);
            alike.map(|(from, _)| Mend::Label {
                unit: unit.clone(),
                from: *from,
                to: *key,
                value: *value,
            })
        });
        ways.extend(same);
    }
    ways
}

/// "sorry, fresh", "not fresh, waste": the value belongs to another reading of its kind.
fn relabelled(noun: &str, was: Option<&str>, told: &[Told]) -> Vec<Mend> {
    let wanted = keys_of(noun);
    let mut ways = Vec::new();
    for (unit, _, entry) in told {
        for (from, value) in &entry.readings.values {
            let to = family(*from)
                .iter()
                .find(|to| wanted.contains(to) && *to != from);
            let meant = was.is_none_or(|was| keys_of(was).contains(from));
            if let Some(to) = to
                && meant
                && entry.readings.value(*to).is_none()
            {
                ways.push(Mend::Label {
                    unit: unit.clone(),
                    from: *from,
                    to: *to,
                    value: *value,
                });
            }
        }
    }
    ways
}

/// Returns the readings whose numbers are alike, so that one can have been written for the other.
fn family(key: ReadingKey) -> &'static [ReadingKey] {
    use ReadingKey as K;
    const FAMILIES: [&[ReadingKey]; 5] = [
        &[K::WastePct, K::FreshPct, K::FuelPct, K::BatteryPct],
        &[K::WasteGal, K::FreshGal, K::FuelGal],
        &[K::PressurePsi, K::SupplyPsi],
        &[K::AirF, K::InsideF, K::LowF],
        &[K::Volts, K::BatteryV],
    ];
    FAMILIES
        .into_iter()
        .find(|family| family.contains(&key))
        .unwrap_or_default()
}

/// Tells whether a number is of the size of the one it would mend.
fn alike(key: ReadingKey, was: f64, value: f64) -> bool {
    match key {
        ReadingKey::WastePct
        | ReadingKey::FreshPct
        | ReadingKey::FuelPct
        | ReadingKey::BatteryPct
        | ReadingKey::HumidityPct => true,
        ReadingKey::AirF | ReadingKey::InsideF | ReadingKey::LowF => {
            (was - value).abs() <= LIKE_WARMTH
        }
        _ => {
            let (was, value) = (was.abs().max(1.0), value.abs().max(1.0));
            was / value <= LIKE_SIZE && value / was <= LIKE_SIZE
        }
    }
}
