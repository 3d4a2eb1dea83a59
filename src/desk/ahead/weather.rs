//! A freeze expected tonight: a low that a dispatcher tells or pastes holds for all sites, or for the one they name.

use chrono::{DateTime, Datelike, TimeDelta, Utc};

use super::super::answer::Reply;
use super::super::others::last_there;
use super::super::phrases::plain;
use super::super::receive::Hearing;
use super::super::settle::Settled;
use super::super::sites;
use super::super::situate::Case;
use super::super::when;
use super::low;
use super::warn;
use crate::book::{AheadChange, Record, Stage, Weather};
use crate::rules::FREEZE_F;

use crate::finding::{Finding, FindingId};
use crate::fleet::Role;
use crate::heard::{Ask, Entry, Plan, PlanKind, ReadingKey, UnitName};
use crate::quantity::Measure;
use crate::reply::Arg;
use crate::situation::Occasion;
use crate::words;

/// Units whose doors open within this long are looked at too.
const TONIGHT: TimeDelta = TimeDelta::hours(18);
/// So long after its job a trailer that nobody spoke of is still taken to stand there.
const ABANDONED: TimeDelta = TimeDelta::hours(24);
/// So long after the last word of it a trailer is taken to stand where it stood.
const STANDS: TimeDelta = TimeDelta::hours(72);

/// Takes the weather out of a message, where it belongs to no trailer, and warns of what it will do.
pub(in super::super) fn told(
    hearing: &Hearing<'_>,
    settled: &mut Settled,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    wind_to_come(hearing, settled, reply);
    let Some((low_f, is_low)) = low_told(hearing) else {
        let pasted = |plan: &Plan| plan.kind == PlanKind::Weather;
        if hearing.heard.plans.iter().any(pasted) && hearing.heard.entries.is_empty() {
            reply.say("speak-report-unread", &[]);
        }
        return;
    };
    settled.homeless = None;
    settled.from_context = None;
    settled.reports.clear();
    if let Some(at) = observed_long_ago(hearing).filter(|_| !is_low) {
        return reply.say("speak-report-old", &[("time", at.into())]);
    }
    // "low tomorrow 10" is no word of this night
    let phrases = hearing.desk.phrases;
    let zone = hearing.fleet.time_zone;
    let today = hearing.inbound.at.with_timezone(&zone).date_naive();
    let day = when::day_ahead(hearing.written, hearing.inbound.at, zone);
    let other = day.is_some_and(|day| day > today);
    if is_low && other && !phrases.holds("weather", "till-dawn", hearing.written) {
        let value = Arg::Number(low_f, Measure::DegF);
        return reply.say("speak-low-other-day", &[("value", value)]);
    }
    if is_low && let Some(at) = forecast_over(hearing) {
        return reply.say("speak-forecast-over", &[("time", at.into())]);
    }
    let named = sites::placed_in(&hearing.fleet, hearing.written);
    let site = named.map(|(site, _)| site.id.clone());
    let site = site.or_else(|| low::site_mended(hearing));
    if is_low && low_f < COLDEST_F {
        let value = Arg::Number(low_f, Measure::DegF);
        return reply.say("speak-low-odd", &[("value", value)]);
    }
    if is_low
        && low_f > FREEZE_F
        && let Some((unit, was, at)) = frost_read(hearing)
        && (!has_measure(hearing.text) || low_f - was > MOST_RISE_F)
    {
        let args = [
            ("value", Arg::Number(low_f, Measure::DegF)),
            ("was", Arg::Number(was, Measure::DegF)),
            ("unit", unit.as_str().into()),
            ("time", at.into()),
        ];
        let key = match has_measure(hearing.text) {
            true => "speak-low-rise",
            false => "speak-low-warm",
        };
        return reply.say(key, &args);
    }
    let mut weather = Weather {
        by: hearing.member.id.clone(),
        at: hearing.now,
        site,
        low_f,
        air: !is_low,
        wind_mph: wind_read(hearing).filter(|_| !is_low),
        warned_f: None,
    };
    weather.warned_f = warn::warned_before(hearing, &weather);
    // warm air is the afternoon's, and says nothing of the night
    if weather.air && low_f > FREEZE_F {
        return warn::tell_mild_air(hearing, &weather, reply);
    }
    warn::warn(hearing, &weather, reply);
    let change = AheadChange::Weather { weather };
    records.push(Record::Ahead {
        at: hearing.now,
        change,
    });
}

/// Returns the wind of a pasted report, mph.
fn wind_read(hearing: &Hearing<'_>) -> Option<f64> {
    let entry = hearing.heard.entries.first()?;
    entry.readings.value(ReadingKey::WindMph)
}

/// A frost that was read this lately makes a mild night doubtful: a minus is lost more easily than a frost (common practice, no
/// source).
const FROST_LATELY: TimeDelta = TimeDelta::hours(12);

/// A low so much warmer than a frost of the same day was told in the wrong measure, °F: common practice, no source.
const MOST_RISE_F: f64 = 55.0;

/// A report of the air that is older than this says nothing of the air now (they are made hourly: ICAO Annex 3).
const REPORT_LASTS: TimeDelta = TimeDelta::hours(3);

/// Returns when a pasted report of the air was made, where that is too long ago.
fn observed_long_ago(hearing: &Hearing<'_>) -> Option<DateTime<Utc>> {
    let (day, hour, minute) = words::observed_at(hearing.written)?;
    let now = hearing.inbound.at;
    // the last such day of a month that is not to come
    let made = (0..31).find_map(|back| {
        let date = (now + TimeDelta::hours(1) - TimeDelta::days(back)).date_naive();
        let at = date.and_hms_opt(hour, minute, 0)?.and_utc();
        (date.day() == day && at <= now + TimeDelta::hours(1)).then_some(at)
    })?;
    (now - made > REPORT_LASTS).then_some(made)
}

/// Takes a wind that is told of later out of what is reported: it is not the wind now.
fn wind_to_come(hearing: &Hearing<'_>, settled: &mut Settled, reply: &mut Reply<'_>) {
    let later = hearing
        .desk
        .phrases
        .holds("weather", "to-come", hearing.text);
    let wind = |entry: &Entry| entry.readings.value(ReadingKey::WindMph).is_some();
    let homeless = settled.homeless.as_ref().is_some_and(wind);
    let told = homeless || settled.reports.iter().any(|(.., entry)| wind(entry));
    let pasted = |plan: &Plan| plan.kind == PlanKind::Weather;
    if !later || !told || hearing.heard.plans.iter().any(pasted) {
        return;
    }
    let drop = |entry: &mut Entry| {
        entry.readings.values.remove(&ReadingKey::WindMph);
    };
    settled.amend_all(|_, entry| drop(entry));
    settled.homeless.iter_mut().for_each(drop);
    settled.homeless = settled.homeless.take().filter(|entry| !entry.is_empty());
    if settled.reports.is_empty() {
        settled.from_context = None;
    }
    reply.say("wind-to-come", &[]);
}

/// Returns when the low of a pasted forecast was, or the forecast ran out, where that is past.
fn forecast_over(hearing: &Hearing<'_>) -> Option<DateTime<Utc>> {
    let now = hearing.inbound.at;
    let (low, ends) = words::forecast_for(hearing.written)?;
    let instant = |(day, hour): (u32, u32)| {
        // "2324" is the end of that day; of the months around the one that is nearest
        let days = (-16..=16).filter_map(|days| {
            let date = (now + TimeDelta::days(days)).date_naive();
            (date.day() == day).then(|| date.and_hms_opt(0, 0, 0))?
        });
        let at = days.map(|midnight| midnight.and_utc() + TimeDelta::hours(i64::from(hour)));
        at.min_by_key(|at| (*at - now).abs())
    };
    let past = |at: &DateTime<Utc>| *at + LOW_LASTS < now;
    let low = low.and_then(instant).filter(past);
    low.or_else(|| ends.and_then(instant).filter(|at| *at <= now))
}

/// A night's low is as cold for so long after its hour (common practice, no source).
const LOW_LASTS: TimeDelta = TimeDelta::hours(2);

/// Returns the coldest frost that was read lately: on which trailer, how cold, °F, and when.
fn frost_read(hearing: &Hearing<'_>) -> Option<(UnitName, f64, DateTime<Utc>)> {
    let now = hearing.now;
    let read = units_out(hearing, now).into_iter().filter_map(|unit| {
        let kept = hearing.desk.book.unit(&unit)?;
        let air = kept.state().readings.get(&ReadingKey::AirF)?;
        let frost = air.value <= FREEZE_F && now - air.at <= FROST_LATELY;
        frost.then_some((unit, air.value, air.at))
    });
    read.min_by(|a, b| a.1.total_cmp(&b.1))
}

/// Tells whether a temperature is told with its measure: "40F", "4 °C".
fn has_measure(text: &str) -> bool {
    plain(text).split(' ').any(|word| {
        let digits = word.trim_end_matches(['f', 'c']);
        let glued = digits.len() < word.len() && digits.parse::<u32>().is_ok();
        glued || ["f", "c"].contains(&word)
    })
}

/// Colder than this no night is taken to be that nobody confirmed, °F: common practice, no source.
const COLDEST_F: f64 = -50.0;

/// Returns the low that a dispatcher tells of no trailer, °F, and whether it is one: a pasted report of the air as it is
/// counts too.
fn low_told(hearing: &Hearing<'_>) -> Option<(f64, bool)> {
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
    // "low tonight 12F. status 16": the trailer is asked about, and the low is told of none
    let asked = match &hearing.heard.ask {
        Some(Ask::Status { unit } | Ask::Forecast { unit } | Ask::History { unit }) => {
            unit.as_ref()
        }
        _ => None,
    };
    let asked = asked.filter(|_| low.is_some());
    let only_weather = (entry.unit.is_none() || entry.unit.as_ref() == asked)
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

/// The trailers that stand out there, as a low finds them.
pub(super) struct Looked {
    /// Those that the cold will do something to, each with what.
    pub(super) at_risk: Vec<(Case, Vec<Finding>)>,
    /// Those that nothing was found on, by what was told.
    pub(super) safe: Vec<String>,
}

/// Returns who is told of a trailer: who wrote of it within a day, else the crew of its job.
pub(super) fn there(hearing: &Hearing<'_>, case: &Case) -> Vec<String> {
    let day = (hearing.now, TimeDelta::hours(24));
    match last_there(hearing.desk, &hearing.fleet, &case.unit, day) {
        Some(who) => vec![who],
        None => case.job().map_or_else(Vec::new, |job| job.crew.clone()),
    }
}

/// Looks at every trailer that is out, or whose state nobody told.
pub(super) fn look(hearing: &Hearing<'_>, weather: &Weather) -> Looked {
    let now = hearing.now;
    let mut looked = Looked {
        at_risk: Vec::new(),
        safe: Vec::new(),
    };
    for unit in units_out(hearing, now) {
        let kept = hearing.desk.book.unit(&unit);
        let before = kept.map(|kept| kept.state().clone()).unwrap_or_default();
        if matches!(before.stage(), Stage::Hitched | Stage::Yard) {
            continue;
        }
        let mut state = before.clone();
        let mut told = Entry::default();
        told.readings.set(ReadingKey::LowF, weather.low_f);
        state.take_in(now, &weather.by, &told);
        state.last_word.clone_from(&before.last_word);
        let case = Case::new(
            hearing.desk,
            &hearing.fleet,
            &unit,
            now,
            (before, state),
            Entry::default(),
            Vec::new(),
            Occasion::Tick,
        );
        if !stands_out(&case, weather, now) || is_told_colder(hearing, &case, weather) {
            continue;
        }
        let mut findings = case.findings();
        findings.retain(|finding| {
            finding.id.topic() == "cold" && finding.id != FindingId::ColdCrewCold
        });
        findings.sort_by_key(Finding::order);
        if weather.low_f <= FREEZE_F && !findings.is_empty() {
            looked.at_risk.push((case, findings));
        } else {
            looked.safe.push(unit.to_string());
        }
    }
    looked
}

/// Tells whether of the site of a trailer a colder low was told by itself: a milder one of all sites changes nothing there.
fn is_told_colder(hearing: &Hearing<'_>, case: &Case, weather: &Weather) -> bool {
    let site = case.job().map(|job| &job.id.site);
    let told = hearing.desk.book.ahead().all_weather(hearing.now);
    let mut own = told.filter(|low| !low.air && low.site.is_some() && low.site.as_ref() == site);
    weather.site.is_none() && own.any(|low| low.low_f < weather.low_f)
}

/// Tells whether a trailer stands at the site of a low, as far as anybody knows.
fn stands_out(case: &Case, weather: &Weather, now: DateTime<Utc>) -> bool {
    let Some(job) = case.job() else {
        return false;
    };
    let told = case.now.last_word.as_ref();
    let lately = told.is_some_and(|word| now - word.at <= STANDS);
    // after its job it stands there until somebody says that it left
    let here = now - job.to <= ABANDONED || lately;
    let site = weather.site.as_ref();
    here && site.is_none_or(|site| *site == job.id.site)
}

/// Lists the trailers whose job is on or begins before the night is over, and those that may stand at their site.
pub(in super::super) fn units_out(hearing: &Hearing<'_>, now: DateTime<Utc>) -> Vec<UnitName> {
    let jobs = hearing.fleet.jobs.iter().filter(|job| {
        let set_up = TimeDelta::minutes((job.set_up_h * 60.0) as i64);
        job.from - TONIGHT.max(set_up) <= now && now - job.to <= STANDS
    });
    let mut units: Vec<UnitName> = jobs.flat_map(|job| job.trailers.iter().cloned()).collect();
    units.sort();
    units.dedup();
    units
}
