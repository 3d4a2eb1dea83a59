//! What is planned with: the jobs of a day to come, who is on them, who is free, how many guests a trailer takes, and how
//! big a generator it wants.

use chrono::{DateTime, TimeDelta, Utc};

use super::question::warn;
use super::reply::Reply;
use crate::desk::receive::Hearing;
use crate::desk::situate::Case;
use crate::desk::{digest, when};
use crate::finding::{Caution, FindingId};
use crate::fleet::{CrewMember, Job, Role, Source};
use crate::heard::UnitName;
use crate::outlook::{FRESH_LIMIT_PCT, WASTE_LIMIT_PCT};
use crate::physics::tank::{BODY_GAL, usual_uses_per_h};
use crate::quantity::Measure;
use crate::reply::Arg;
use crate::rules;

/// Whoever wrote from a trailer within this long is taken to be at work.
const AT_WORK: TimeDelta = TimeDelta::hours(6);
/// How far ahead a trailer's next job is told.
const SOON: TimeDelta = TimeDelta::days(14);

/// Tells what a day that is named brings, tomorrow where none is.
pub(super) fn day(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    let text = digest::day_named(hearing);
    reply.first.push(text);
}

/// Tells who is named for no job of today and has not written from a trailer.
pub(super) fn free(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    let (fleet, now, book) = (&hearing.fleet, hearing.now, &hearing.desk.book);
    let day = when::names_a_day(hearing.text).then(|| digest::day_span(hearing));
    let span = day.flatten().unwrap_or((now, now));
    let overlaps = |job: &&Job| {
        let begins = job.from - TimeDelta::minutes((job.set_up_h.min(4.0) * 60.0) as i64);
        begins <= span.1 && span.0 <= job.to
    };
    let named = |member: &CrewMember| {
        let mut jobs = fleet.jobs.iter().filter(overlaps);
        jobs.any(|job| job.crew.contains(&member.id))
    };
    let at_work = |member: &CrewMember| {
        let lately = |at: DateTime<Utc>| at <= now && now - at <= AT_WORK;
        let mut sent = book.sent(&member.id).iter();
        span.0 == now
            && (book.ahead().road(&member.id, now).is_some()
                || sent.any(|sent| lately(sent.at) && !sent.units.is_empty()))
    };
    let free: Vec<String> = fleet
        .crew
        .values()
        .filter(|member| member.role != Role::Dispatcher && !named(member) && !at_work(member))
        .map(|member| member.name.clone())
        .collect();
    let line = match free.is_empty() {
        true => reply.voice.word("answer-free-none"),
        false => {
            let names = reply.voice.all_of(&free);
            reply.voice.say("answer-free", &[("names", names.into())])
        }
    };
    reply.first.push(line);
}

/// Tells of a trailer's next job, for one that is at none: where, when, for how many, and by whom.
pub(super) fn next_job(hearing: &Hearing<'_>, unit: &UnitName, reply: &mut Reply<'_>) -> bool {
    let fleet = &hearing.fleet;
    let next = fleet.next_job_of(unit, hearing.now);
    let Some(job) = next.filter(|job| job.from - hearing.now <= SOON) else {
        return false;
    };
    let site = fleet.site_of(job);
    let name = site.map_or(job.id.site.as_str(), |site| site.name.as_str());
    let args = [
        ("unit", Arg::from(unit.as_str())),
        ("site", name.into()),
        ("time", job.from.into()),
        ("last", job.to.into()),
        ("count", Arg::Count(job.guests.round() as i64)),
    ];
    let line = reply.voice.say("answer-next-job", &args);
    reply.first.push(line);
    let full = digest::fills_by_guests(hearing.desk, fleet, job, unit, job.from);
    let line = match full.filter(|at| *at <= job.to) {
        Some(at) => reply
            .voice
            .say("answer-next-job-full", &[("time", at.into())]),
        None => reply.voice.word("ahead-no-truck"),
    };
    reply.first.push(line);
    let lacks = [
        (
            site.is_some_and(|site| site.water.source == Source::None),
            "answer-next-job-no-water",
        ),
        (
            site.is_some_and(|site| site.power.source == Source::None),
            "answer-next-job-no-power",
        ),
    ];
    for (_, key) in lacks.iter().filter(|(lacks, _)| *lacks) {
        let line = reply.voice.word(key);
        reply.first.push(line);
    }
    crew(job, reply);
    true
}

/// Says who is named for a job, and that nobody is.
pub(super) fn crew(job: &Job, reply: &mut Reply<'_>) {
    let crew = job.crew.iter();
    let crew: Vec<String> = crew
        .map(|person| reply.voice.person(person).into_owned())
        .collect();
    let line = match crew.is_empty() {
        true => reply.voice.word("answer-next-job-nobody"),
        false => {
            let names = reply.voice.all_of(&crew);
            reply
                .voice
                .say("answer-who-crew", &[("names", names.into())])
        }
    };
    reply.first.push(line);
}

/// How many uses and guests a trailer takes before its waste is at its stop level, and its fresh water low.
pub(super) fn guests_taken(case: &Case, reply: &mut Reply<'_>) {
    let Some(spec) = case.spec() else {
        return;
    };
    let read = case
        .outlook
        .waste
        .as_ref()
        .filter(|_| case.now.last_word.is_some());
    let level = read.map_or(0.0, |waste| waste.likely_pct);
    let left = (WASTE_LIMIT_PCT - level).max(0.0) / 100.0;
    let mut uses = spec.waste_gal * left / (spec.gal_per_use + BODY_GAL);
    let mut key = match read {
        Some(_) => "answer-takes-waste",
        None => "answer-takes-empty",
    };
    let no_water = case
        .site()
        .is_some_and(|site| site.water.source == Source::None);
    if no_water || case.outlook.fresh.is_some() {
        let level = case
            .outlook
            .fresh
            .as_ref()
            .map_or(100.0, |fresh| fresh.likely_pct);
        let left = (level - FRESH_LIMIT_PCT).max(0.0) / 100.0;
        let fresh = spec.fresh_gal * left / spec.gal_per_use.max(0.1);
        if fresh < uses {
            uses = fresh;
            key = "answer-takes-fresh";
        }
    }
    // a false precision would be believed
    let rounded = (uses / 10.0).floor() as i64 * 10;
    let args = [
        ("unit", Arg::from(case.unit.as_str())),
        ("count", Arg::Count(rounded)),
        ("limit", Arg::Number(WASTE_LIMIT_PCT, Measure::Pct)),
        ("value", Arg::Number(level, Measure::Pct)),
    ];
    let line = reply.voice.say(key, &args);
    reply.first.push(line);
    let Some(job) = case.job() else {
        return;
    };
    let hours = job.open_hours_between(case.at, job.to).min(24.0);
    let each = usual_uses_per_h(1.0, job.alcohol);
    if hours <= 0.0 || each <= 0.0 {
        return;
    }
    let guests = (uses / (each * hours) / 5.0).floor() as i64 * 5;
    let args = [
        ("count", Arg::Count(guests)),
        ("value", Arg::Count(hours.ceil() as i64)),
    ];
    let line = reply.voice.say("answer-takes-guests", &args);
    reply.first.push(line);
}

/// How big a generator must be that runs all of a trailer; and whether one that is told of is big enough.
pub(super) fn generator(
    hearing: &Hearing<'_>,
    case: &Case,
    reply: &mut Reply<'_>,
) -> Vec<FindingId> {
    let Some(situation) = case.situation() else {
        return Vec::new();
    };
    let next = hearing.fleet.next_job_of(&case.unit, hearing.now);
    let there = next.and_then(|job| hearing.fleet.site_of(job));
    let over = case.job().is_none_or(|job| job.to <= hearing.now);
    let site = match over {
        true => there.or(case.site()),
        false => case.site(),
    };
    let altitude_ft = site.map_or(0.0, |site| site.altitude_ft);
    let size = rules::generator_size(&situation, altitude_ft);
    let mut args = vec![
        ("unit", Arg::from(case.unit.as_str())),
        ("value", Arg::Number(size.running_w, Measure::Watt)),
        ("limit", Arg::Number(size.needed_w, Measure::Watt)),
        ("first", Arg::Number(altitude_ft, Measure::Ft)),
        ("last", Arg::Number(size.air_f, Measure::DegF)),
    ];
    if let Some(told) = watts_told(hearing.text) {
        args.push(("read", Arg::Number(told, Measure::Watt)));
        let key = match told {
            told if told >= size.needed_w => "answer-generator-enough",
            told if told >= size.running_w => "answer-generator-tight",
            _ => "answer-generator-too-small",
        };
        let line = reply.voice.say(key, &args);
        reply.first.push(line);
    }
    let line = reply.voice.say("answer-generator-size", &args);
    reply.first.push(line);
    warn(
        &[Caution::CarbonMonoxide, Caution::GeneratorHandling],
        reply,
    );
    vec![FindingId::PowerGenerator]
}

/// Finds the size of a generator in words: "4kw", "4000 watts", "5.5 kw".
fn watts_told(text: &str) -> Option<f64> {
    let folded = text.to_lowercase();
    let apart = |c: char| c.is_whitespace() || "?!()".contains(c);
    let words: Vec<&str> = folded
        .split(apart)
        .filter(|word| !word.is_empty())
        .collect();
    words.iter().enumerate().find_map(|(at, word)| {
        let word = word.trim_end_matches([',', '.']);
        let end = word.find(|c: char| !(c.is_ascii_digit() || c == '.' || c == ','));
        let (digits, glued) = word.split_at(end.unwrap_or(word.len()));
        let value: f64 = digits.replace(',', "").parse().ok()?;
        let measure = match glued {
            "" => words.get(at + 1).copied().unwrap_or_default(),
            glued => glued,
        };
        let watts = match measure.trim_end_matches([',', '.']) {
            "kw" | "kilowatt" | "kilowatts" | "kva" => value * 1000.0,
            "w" | "watt" | "watts" => value,
            _ => return None,
        };
        (500.0..=200_000.0).contains(&watts).then_some(watts)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_size_of_a_generator_is_read_in_watts_and_kilowatts() {
        for (text, wanted) in [
            ("brought a 4kw set, is that enough for 23", Some(4000.0)),
            ("is 5.5 kw enough", Some(5500.0)),
            ("is a 6,500 watt one ok", Some(6500.0)),
            ("how big a generator for 12", None),
        ] {
            assert_eq!(watts_told(text), wanted, "{text}");
        }
    }
}
