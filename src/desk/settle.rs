//! From what a message says to what it reports on which trailer at which time: units found, times set, numbers that
//! cannot be true of this trailer taken out.

use chrono::{DateTime, Utc};

use crate::dialogue::Talk;
use crate::finding::{Facts, Finding, FindingId, Level, Origin, Urgency};
use crate::fleet::{Fleet, Trailer};
use crate::heard::{Entry, Event, Heard, MAINS_V, ReadingKey, UnitName};
use crate::quantity::Measure;
use crate::rules::first_words;

use super::when;

/// What a message comes to once its units and times are settled.
#[derive(Debug, Default)]
pub(super) struct Settled {
    /// What it reports on known trailers, in the order told.
    pub(super) reports: Vec<(UnitName, DateTime<Utc>, Entry)>,
    /// Findings about the message itself: unknown units, numbers that cannot be.
    pub(super) findings: Vec<Finding>,
    /// The trailer that was taken from the talk so far, to be said back.
    pub(super) from_context: Option<UnitName>,
    /// The report that waits for its trailer.
    pub(super) homeless: Option<Entry>,
    /// Trailers that a message from the crew names and reports nothing on: a word about them all the same.
    pub(super) words: Vec<UnitName>,
    /// Trailers that are about to go.
    pub(super) leaving: Vec<UnitName>,
    /// Trailers of which the message says something that is no report and that the rules judge all the same.
    pub(super) also: Vec<UnitName>,
    /// Reports whose time could not be placed, with the time as it was told.
    pub(super) odd_times: Vec<(String, Entry)>,
}

impl Settled {
    /// Returns the report on a trailer, begun at `at` where there is none yet.
    pub(super) fn report_on(&mut self, unit: &UnitName, at: DateTime<Utc>) -> &mut Entry {
        let known = self.reports.iter().position(|(of, ..)| of == unit);
        let place = known.unwrap_or_else(|| {
            let entry = Entry {
                unit: Some(unit.clone()),
                ..Entry::default()
            };
            self.reports.push((unit.clone(), at, entry));
            self.reports.len() - 1
        });
        &mut self.reports[place].2
    }

    /// Changes what is reported on a trailer, and drops the report of which nothing is left.
    pub(super) fn amend(&mut self, unit: &UnitName, mut change: impl FnMut(&mut Entry)) {
        self.amend_all(|of, entry| {
            if of == unit {
                change(entry);
            }
        });
    }

    /// Changes what is reported on each trailer, and drops the reports of which nothing is left.
    pub(super) fn amend_all(&mut self, mut change: impl FnMut(&UnitName, &mut Entry)) {
        for (unit, _, entry) in &mut self.reports {
            change(unit, entry);
        }
        self.reports.retain(|(.., entry)| !entry.is_empty());
    }
}

/// Settles the entries of a message written at `at`.
pub(super) fn settle(
    heard: &Heard,
    fleet: &Fleet,
    talk: Option<&Talk>,
    at: DateTime<Utc>,
) -> Settled {
    let mut settled = Settled::default();
    let meant = |by_talk: bool| match by_talk {
        true => talk.and_then(|talk| talk.unit_at(at)),
        false => context(heard, talk, at),
    };
    for entry in &heard.entries {
        let volts = volts_for_a_name(entry, fleet);
        let entry = volts.as_ref().unwrap_or(entry);
        let unit = match &entry.unit {
            Some(name) => match known(fleet, name) {
                Some(unit) => unit.clone(),
                None => {
                    settled.findings.push(unknown_unit(fleet, name));
                    settled
                        .findings
                        .extend(entry.faults.iter().filter_map(|fault| first_words(*fault)));
                    continue;
                }
            },
            None => match meant(volts.is_some()).and_then(|name| known(fleet, name)) {
                Some(unit) => {
                    settled.from_context = Some(unit.clone());
                    unit.clone()
                }
                None => {
                    settled
                        .findings
                        .extend(entry.faults.iter().filter_map(|fault| first_words(*fault)));
                    let homeless = settled.homeless.get_or_insert_with(Entry::default);
                    merge(homeless, entry);
                    continue;
                }
            },
        };
        let zone = fleet.zone_at(Some(&unit), at);
        let told = match entry
            .when
            .as_deref()
            .map(|text| (text, when::instant(text, at, zone)))
        {
            None => at,
            Some((_, Some(earlier))) => earlier,
            Some((text, None)) => {
                let report = Entry {
                    unit: Some(unit),
                    when: None,
                    ..entry.clone()
                };
                settled.odd_times.push((text.to_owned(), report));
                continue;
            }
        };
        let mut entry = entry.clone();
        entry.unit = Some(unit.clone());
        if let Some(spec) = fleet.trailers.get(&unit) {
            settled
                .findings
                .extend(take_out_impossible(spec, &mut entry));
        }
        if !entry.is_empty() {
            settled.reports.push((unit, told, entry));
        }
    }
    settled
}

/// "power on 121" where no trailer bears that name: the volts that came with it.
fn volts_for_a_name(entry: &Entry, fleet: &Fleet) -> Option<Entry> {
    let name = entry.unit.as_ref()?;
    let volts: f64 = name.as_str().parse().ok()?;
    let on = entry.events.contains(&Event::PowerOn) && entry.faults.is_empty();
    let free = known(fleet, name).is_none() && entry.readings.value(ReadingKey::Volts).is_none();
    (on && free && MAINS_V.contains(&volts)).then(|| {
        let mut told = entry.clone();
        told.unit = None;
        told.readings.set(ReadingKey::Volts, volts);
        told
    })
}

/// Finds the trailer a name means.
pub(super) fn known<'a>(fleet: &'a Fleet, name: &UnitName) -> Option<&'a UnitName> {
    fleet.trailer_called(name)
}

/// Makes the finding about a name that no trailer bears.
pub(super) fn unknown_unit(fleet: &Fleet, name: &UnitName) -> Finding {
    let near: Vec<&str> = fleet
        .nearest_units(name.as_str())
        .into_iter()
        .take(3)
        .map(UnitName::as_str)
        .collect();
    let facts = Facts::new().text("name", name.as_str(), Origin::Read).text(
        "near",
        near.join(", "),
        Origin::Spec,
    );
    let finding = Finding::new(
        FindingId::DeskUnknownUnit,
        Level::Notice,
        Urgency::Now,
        facts,
    );
    if near.is_empty() {
        finding.says("desk-unknown-unit-alone")
    } else {
        finding
    }
}

/// Returns the one trailer that a message without a name means: the only one it names, or the sender's last.
fn context<'a>(
    heard: &'a Heard,
    talk: Option<&'a Talk>,
    at: DateTime<Utc>,
) -> Option<&'a UnitName> {
    match heard.named.as_slice() {
        [] => talk.and_then(|talk| talk.unit_at(at)),
        [one] if heard.entries.len() == 1 => Some(one),
        _ => None,
    }
}

/// Adds one entry without a trailer to another.
pub(super) fn merge(into: &mut Entry, from: &Entry) {
    into.when = into.when.take().or_else(|| from.when.clone());
    into.events.extend(&from.events);
    into.faults.extend(&from.faults);
    into.cleared.extend(&from.cleared);
    into.hazards.extend(from.hazards.iter().cloned());
    into.hazards_over.extend(from.hazards_over.iter().cloned());
    into.readings.values.extend(
        from.readings
            .values
            .iter()
            .map(|(key, value)| (*key, *value)),
    );
    into.readings.amps.extend(&from.readings.amps);
    into.readings.taps = into.readings.taps.or(from.readings.taps);
    if into.readings.circuits_live.is_none() {
        into.readings
            .circuits_live
            .clone_from(&from.readings.circuits_live);
    }
}

/// Takes numbers out that cannot be true of this trailer, and makes a finding of each.
fn take_out_impossible(spec: &Trailer, entry: &mut Entry) -> Vec<Finding> {
    let mut findings = Vec::new();
    // a tank holds a little more than its plate says, to the brim
    let limits = [
        (ReadingKey::PumpedGal, spec.waste_gal * 1.1, "pumped"),
        (ReadingKey::WasteGal, spec.waste_gal * 1.05, "waste"),
        (ReadingKey::FreshGal, spec.fresh_gal * 1.05, "fresh"),
    ];
    for (key, limit, what) in limits {
        let Some(value) = entry.readings.value(key).filter(|value| *value > limit) else {
            continue;
        };
        entry.readings.values.remove(&key);
        // more than it holds came out of another tank: this one is not taken for emptied
        if key == ReadingKey::PumpedGal {
            entry.events.retain(|event| *event != Event::WastePumped);
        }
        let capacity = if key == ReadingKey::FreshGal {
            spec.fresh_gal
        } else {
            spec.waste_gal
        };
        let facts = Facts::new()
            .read("value", value, Measure::Gal)
            .spec("limit", capacity, Measure::Gal)
            .text("what", what, Origin::Read);
        findings.push(implausible(&spec.id, facts, "desk-implausible"));
    }
    let circuits = spec.circuits.len() as u8;
    entry.readings.amps.retain(|current| {
        let Some(circuit) = current.circuit.filter(|circuit| *circuit > circuits) else {
            return true;
        };
        let facts = Facts::new()
            .read("circuit", f64::from(circuit), Measure::Count)
            .spec("limit", f64::from(circuits), Measure::Count)
            .read("value", current.amps, Measure::Amp);
        findings.push(implausible(&spec.id, facts, "desk-implausible-circuit"));
        false
    });
    findings
}

fn implausible(unit: &UnitName, facts: Facts, action: &'static str) -> Finding {
    let mut finding = Finding::new(
        FindingId::DeskImplausible,
        Level::Notice,
        Urgency::Now,
        facts,
    )
    .says(action);
    finding.unit = Some(unit.clone());
    finding
}
