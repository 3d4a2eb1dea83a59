//! What is asked of the cold over all trailers: whether it freezes tonight, and which have no cold package.

use std::collections::BTreeSet;

use chrono::TimeDelta;

use super::reply::Reply;
use crate::book::Stage;
use crate::desk::ahead;
use crate::desk::receive::Hearing;
use crate::desk::situate::Case;
use crate::finding::{Finding, FindingId};
use crate::fleet::Role;
use crate::heard::{Event, ReadingKey, UnitName};
use crate::quantity::Measure;
use crate::reply::Arg;
use crate::rules::FREEZE_F;

/// The air counts for tonight where it was read within this long.
const TONIGHT: TimeDelta = TimeDelta::hours(18);
/// How many rows a list has at most.
const ROWS: usize = 12;

/// How many trailers are named of those with and without a cold package.
const PACKAGES: usize = 40;

/// Does it freeze tonight? By the lows that were told, and by the air as it was read last.
pub(super) fn tonight(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    let named = hearing.names();
    let mut units = units_out(hearing);
    if !named.is_empty() {
        units.retain(|unit| named.contains(unit));
        units.extend(
            named
                .into_iter()
                .filter(|unit| !units.contains(unit))
                .collect::<Vec<_>>(),
        );
    }
    let mut without_low = false;
    let mut freezing = 0;
    let mut rows = Vec::new();
    for unit in &units {
        let low = low_of(hearing, unit);
        without_low |= low.is_none();
        let kept = hearing.desk.book.unit(unit);
        let air = kept.and_then(|kept| kept.state().readings.get(&ReadingKey::AirF));
        let air = air.filter(|read| hearing.now - read.at <= TONIGHT);
        let voice = &reply.voice;
        let value = |value| ("value", Arg::Number(value, Measure::DegF));
        // the low tells of tonight; the air, where nobody told a low, of what it is already
        let cold = match (low, air) {
            (Some(low), _) if low <= FREEZE_F => voice.say("answer-tonight-low", &[value(low)]),
            (None, Some(air)) if air.value <= FREEZE_F => {
                let args = [value(air.value), ("time", air.at.into())];
                voice.say("answer-tonight-air", &args)
            }
            _ => continue,
        };
        freezing += 1;
        if freezing <= ROWS {
            rows.push(row(&hearing.asked_about(unit), cold, reply));
        }
    }
    let freezes = freezing > 0;
    let head = match (freezes, without_low || units.is_empty()) {
        (true, _) => "answer-tonight-freezes",
        (false, true) => "answer-tonight-unknown",
        (false, false) => "answer-tonight-mild",
    };
    let line = reply.voice.word(head);
    reply.first.push(line);
    reply.first.extend(rows);
    if freezes {
        let line = reply.voice.word(ahead::what_to_do(hearing));
        reply.first.push(line);
    }
    if freezing > ROWS {
        let line = reply.voice.word("answer-tonight-more");
        reply.first.push(line);
    }
    if without_low {
        let key = match hearing.member.role {
            Role::Dispatcher => "answer-tonight-tell",
            _ => "answer-tonight-ask",
        };
        let line = reply.voice.word(key);
        reply.first.push(line);
    }
}

/// Returns the low told for the trailer's site, °F.
fn low_of(hearing: &Hearing<'_>, unit: &UnitName) -> Option<f64> {
    let kept = hearing.desk.book.unit(unit);
    let left = kept.and_then(|kept| kept.state().when(Event::Left));
    let site = &hearing.fleet.job_of(unit, hearing.now, left)?.id.site;
    let weather = hearing.desk.book.ahead().weather(Some(site), hearing.now)?;
    Some(weather.low_f)
}

/// Says how cold it gets at a trailer, and what that does to it.
fn row(case: &Case, cold: String, reply: &mut Reply<'_>) -> String {
    let of_the_cold =
        |finding: &Finding| finding.id.topic() == "cold" && finding.id != FindingId::ColdCrewCold;
    let findings: Vec<Finding> = case.findings().into_iter().filter(of_the_cold).collect();
    let name = |finding: &Finding| reply.voice.name(finding.id, finding.level);
    let names: BTreeSet<String> = findings.iter().map(name).collect();
    let names: Vec<String> = names.into_iter().collect();
    let mut args = vec![
        ("unit", Arg::from(case.unit.as_str())),
        ("site", case.place().unwrap_or_default().into()),
        ("read", cold.into()),
    ];
    let key = match names.is_empty() {
        true => "answer-tonight-row",
        false => {
            args.push(("what", reply.voice.all_of(&names).into()));
            "answer-tonight-row-what"
        }
    };
    let row = reply.voice.say(key, &args);
    reply.beside.extend(findings);
    row
}

/// Lists the trailers that stand out there tonight, as far as anybody knows.
fn units_out(hearing: &Hearing<'_>) -> Vec<UnitName> {
    let mut units = ahead::units_out(hearing, hearing.now);
    units.retain(|unit| {
        let kept = hearing.desk.book.unit(unit);
        let stage = kept.map(|kept| kept.state().stage());
        !matches!(stage, Some(Stage::Hitched | Stage::Yard))
    });
    units
}

/// Which trailers have no cold package, those at a job first, and which have one.
pub(super) fn packages(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    let out = units_out(hearing);
    let mut without = Vec::new();
    let mut with = Vec::new();
    for (unit, trailer) in &hearing.fleet.trailers {
        match trailer.cold.package {
            true => with.push(unit.to_string()),
            false => without.push((!out.contains(unit), unit)),
        }
    }
    without.sort();
    let at_work: Vec<String> = without
        .iter()
        .filter(|(idle, _)| !idle)
        .map(|(_, unit)| unit.to_string())
        .collect();
    let without: Vec<String> = without.iter().map(|(_, unit)| unit.to_string()).collect();
    for (key, units) in [
        ("answer-package-none", &without),
        ("answer-package-none-out", &at_work),
        ("answer-package-with", &with),
    ] {
        if !units.is_empty() {
            let shown = &units[..units.len().min(PACKAGES)];
            let mut names = reply.voice.all_of(shown);
            if shown.len() < units.len() {
                names = format!("{} +{}", shown.join(", "), units.len() - shown.len());
            }
            let args = [("units", Arg::from(names))];
            let line = reply.voice.say(key, &args);
            reply.first.push(line);
        }
    }
}
