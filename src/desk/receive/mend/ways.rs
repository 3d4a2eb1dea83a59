//! The ways in which a correction can be meant.

use super::said::Said;
use super::{Told, bare_number};
use crate::desk::receive::Hearing;
use crate::desk::receive::bare::keys_of;
use crate::desk::settle::known;
use crate::dialogue::Mend;
use crate::heard::{Answer, Entry, ReadingKey, UnitName};

impl Hearing<'_> {
    /// Finds every way in which a correction can be meant.
    pub(super) fn ways(&self, said: &Said<'_>, told: &[Told]) -> Vec<Mend> {
        let meant = self.meant_of_a_thing(said.right);
        let right = self.desk.reader.hear(
            meant.as_deref().unwrap_or(said.right),
            self.fleet.style.temperature,
        );
        let answer = right.answer.clone().unwrap_or_default();
        if let Some(wrong) = said.wrong {
            return self.contrasted(said.right, wrong, &answer, told);
        }
        if let Some((of, number)) = self.of_a_trailer(said.right, told) {
            let own: Vec<Told> = told
                .iter()
                .filter(|(unit, ..)| *unit == of)
                .cloned()
                .collect();
            let (near, far) = self.values(number, &own);
            return if near.is_empty() && said.sure {
                far
            } else {
                near
            };
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
        let measure = answer.measure.is_some() && answer.number.is_none() && answer.noun.is_none();
        if measure {
            return self.in_measure(said.right, told);
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
        if let Some(to) = self.was_right(said.right) {
            return units_alone(to);
        }
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

    /// "oops 23 was 62": a trailer of the report, and the number that was meant for it.
    fn of_a_trailer<'t>(&self, right: &'t str, told: &[Told]) -> Option<(UnitName, &'t str)> {
        let (mut name, number) = right.trim().rsplit_once(' ')?;
        while let Some(shorter) = self.desk.phrases.before("mend", "is", name) {
            name = shorter;
        }
        let unit = self.names_a_unit(name)?;
        let of_it = told.iter().any(|(of, ..)| of == unit);
        (of_it && bare_number(number)).then(|| (unit.clone(), number))
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

    /// "perdón, no está nivelada", "not chocked": what the sender called so before and denies now. Without a mark that begins
    /// nothing but a correction, only where the message is no report of its own.
    pub(super) fn untrue(&self, said: &Said<'_>, told: &[Told]) -> Vec<Mend> {
        // "nope, still leaking" denies nothing
        let stands = self.desk.answers.says("any", "stands", said.right);
        if stands || !said.denied || !(said.sure || self.heard.entries.is_empty()) {
            return Vec::new();
        }
        let scale = self.fleet.style.temperature;
        // "its not level yet": what is not yet so was called so too early
        let right = said.right.trim_end_matches(['.', '!', ' ']);
        let yet = [" yet", " todavia", " todavía", " aún", " aun"];
        let right = yet.iter().find_map(|yet| right.strip_suffix(yet));
        let heard = self.desk.reader.hear(right.unwrap_or(said.right), scale);
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
}

/// "oops, pressure 52": a reading with its name mends the one of that name, or gives another name to the same value.
pub(super) fn labelled(right: &Entry, told: &[Told]) -> Vec<Mend> {
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
