//! A freeze expected tonight: a low that a dispatcher tells or pastes holds for all sites, or for the one they name.

use std::collections::BTreeMap;

use chrono::{DateTime, TimeDelta, Utc};

use super::super::answer::Reply;
use super::super::inbound::Outgoing;
use super::super::receive::Hearing;
use super::super::settle::Settled;
use super::super::situate::Case;
use super::super::tick::dispatchers;
use crate::book::{AheadChange, Record, Stage, Weather};

use crate::finding::{Finding, FindingId, Level};
use crate::fleet::Role;
use crate::heard::{Entry, PlanKind, ReadingKey, UnitName};
use crate::quantity::Measure;
use crate::reply::Arg;
use crate::situation::Occasion;

/// Units whose doors open within this long are looked at too.
const TONIGHT: TimeDelta = TimeDelta::hours(18);
/// From here down something freezes, °F.
const FREEZE_F: f64 = 32.0;

/// Takes the weather out of a message, where it belongs to no trailer, and warns of what it will do.
pub(in super::super) fn told(
    hearing: &Hearing<'_>,
    settled: &mut Settled,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let Some((low_f, is_low)) = low(hearing) else {
        return;
    };
    settled.homeless = None;
    settled.from_context = None;
    settled.reports.clear();
    let text = hearing.text.to_lowercase();
    let named = |site: &&crate::fleet::Site| {
        text.contains(&site.name.to_lowercase()) || text.contains(&site.id.to_lowercase())
    };
    let site = hearing
        .fleet
        .sites
        .values()
        .find(named)
        .map(|site| site.id.clone());
    let weather = Weather {
        by: hearing.member.id.clone(),
        at: hearing.now,
        site,
        low_f,
    };
    warn(hearing, &weather, is_low, reply);
    let change = AheadChange::Weather { weather };
    records.push(Record::Ahead {
        at: hearing.now,
        change,
    });
}

/// Returns the low that a dispatcher tells of no trailer, °F, and whether it is one: a pasted report of the air as it is
/// counts too.
fn low(hearing: &Hearing<'_>) -> Option<(f64, bool)> {
    if hearing.member.role != Role::Dispatcher {
        return None;
    }
    let [entry] = hearing.heard.entries.as_slice() else {
        return None;
    };
    let pasted = hearing
        .heard
        .plans
        .iter()
        .any(|plan| plan.kind == PlanKind::Weather);
    let readings = &entry.readings;
    let low = readings.value(ReadingKey::LowF);
    let weather = |key: &ReadingKey| {
        matches!(
            key,
            ReadingKey::LowF | ReadingKey::AirF | ReadingKey::WindMph | ReadingKey::HumidityPct
        )
    };
    let only_weather = entry.unit.is_none()
        && entry.events.is_empty()
        && entry.faults.is_empty()
        && readings.amps.is_empty()
        && readings.values.keys().all(weather);
    if !only_weather {
        return None;
    }
    let air = || readings.value(ReadingKey::AirF).filter(|_| pasted);
    low.map(|low| (low, true)).or_else(|| Some((air()?, false)))
}

/// Warns the dispatchers and those on site of each trailer that the low puts at risk, in one message each.
fn warn(hearing: &Hearing<'_>, weather: &Weather, is_low: bool, reply: &mut Reply<'_>) {
    let now = hearing.now;
    let low = || Arg::Number(weather.low_f, Measure::DegF);
    let at_risk = at_risk(hearing, weather);
    if at_risk.is_empty() {
        let key = match (weather.low_f > FREEZE_F, is_low) {
            (true, true) => "speak-low-mild",
            (true, false) => "speak-air-mild",
            (false, true) => "speak-low-nobody",
            (false, false) => "speak-air-nobody",
        };
        reply.say(key, &[("value", low())]);
        return;
    }
    let mut on_site: BTreeMap<String, Vec<usize>> = BTreeMap::new();
    for (n, (case, _)) in at_risk.iter().enumerate() {
        if let Some(word) = &case.now.last_word
            && now - word.at <= TimeDelta::hours(24)
        {
            on_site.entry(word.from.clone()).or_default().push(n);
        }
    }
    for to in dispatchers(&hearing.fleet) {
        on_site.insert(to.to_owned(), (0..at_risk.len()).collect());
    }
    for (to, places) in on_site {
        let Some(member) = hearing.fleet.crew.get(&to) else {
            continue;
        };
        let voice = hearing.desk.voice_for(member, None, &hearing.fleet, now);
        let mut lines = vec![voice.say(
            if is_low { "speak-low" } else { "speak-air" },
            &[("value", low()), ("count", places.len().into())],
        )];
        for n in places {
            let (case, findings) = &at_risk[n];
            let names: Vec<String> = findings
                .iter()
                .map(|finding| voice.name(finding.id, finding.level))
                .collect();
            let what = voice.all_of(&names);
            let site = case.place().unwrap_or_default();
            lines.push(voice.say(
                "speak-low-row",
                &[
                    ("unit", case.unit.as_str().into()),
                    ("site", site.into()),
                    ("what", what.into()),
                ],
            ));
        }
        lines.push(voice.word("speak-low-do"));
        if to == hearing.member.id {
            reply.lines.push(lines.join("\n"));
        } else {
            reply
                .others
                .push(Outgoing::to(&to, lines.join("\n")).of_level(Level::Notice));
        }
    }
}

/// Returns the trailers at a job that the low bears on, each with what the cold will do there.
fn at_risk(hearing: &Hearing<'_>, weather: &Weather) -> Vec<(Case, Vec<Finding>)> {
    let now = hearing.now;
    let mut found = Vec::new();
    for unit in units_out(hearing, now) {
        let standing = Case::standing(hearing.desk, &hearing.fleet, &unit, now, Occasion::Tick);
        let here = standing.job().is_some_and(|job| {
            weather
                .site
                .as_ref()
                .is_none_or(|site| *site == job.id.site)
                && now <= job.to
        });
        if !here || matches!(standing.now.stage(), Stage::Hitched | Stage::Yard) {
            continue;
        }
        let mut state = standing.now.clone();
        let mut told = Entry::default();
        told.readings.set(ReadingKey::LowF, weather.low_f);
        state.take_in(now, &weather.by, &told);
        state.last_word = standing.now.last_word.clone();
        let case = Case::new(
            hearing.desk,
            &hearing.fleet,
            &unit,
            now,
            (standing.before, state),
            Entry::default(),
            Vec::new(),
            Occasion::Tick,
        );
        let mut findings = case.findings();
        findings.retain(|finding| {
            finding.id.topic() == "cold" && finding.id != FindingId::ColdCrewCold
        });
        findings.sort_by_key(Finding::order);
        let freezes = weather.low_f <= FREEZE_F && !findings.is_empty();
        if freezes {
            found.push((case, findings));
        }
    }
    found
}

/// Lists the trailers whose job is on, or begins before the night is over.
fn units_out(hearing: &Hearing<'_>, now: DateTime<Utc>) -> Vec<UnitName> {
    let soon = hearing
        .fleet
        .jobs
        .iter()
        .filter(|job| job.from - TONIGHT <= now && now <= job.to);
    let mut units: Vec<UnitName> = soon.flat_map(|job| job.trailers.iter().cloned()).collect();
    units.sort();
    units.dedup();
    units
}
