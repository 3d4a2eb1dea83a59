//! Somebody works alone: a clock is set, shortened in deep cold, answered with "ok"; and offered where it would help.

use chrono::{DateTime, TimeDelta, Timelike, Utc};

use super::super::aid;
use super::super::answer::Reply;
use super::super::inbound::Outgoing;
use super::super::lone;
use super::super::others::{watchers, whom};
use super::super::receive::Hearing;
use super::super::settle;
use super::super::situate::Case;
use super::super::tick::alone_key;
use crate::book::{AheadChange, AlarmChange, Alone, Personal, Record, UnitState};
use crate::finding::Level;
use crate::fleet::{CrewMember, Role};
use crate::heard::{CommandName, Event, Plan, PlanKind, ReadingKey, ShortAnswer, UnitName};
use crate::physics::cold::{chill_band, wind_chill};
use crate::physics::units::{deg_f, mph};
use crate::quantity::Measure;
use crate::reply::Arg;
use crate::rules::first_words;

/// The wind that is taken where nobody read it, mph.
const WIND_TAKEN_MPH: f64 = 10.0;
/// A reading of the air counts for this long.
const AIR_LASTS: TimeDelta = TimeDelta::hours(6);
/// The hours in which few are about: the clock is offered unasked, local time.
const NIGHT: (u32, u32) = (22, 5);
/// It is offered once in this long.
const OFFER_EVERY: TimeDelta = TimeDelta::hours(12);

/// Sets, answers or offers a lone worker's clock.
pub(super) fn note(
    hearing: &Hearing<'_>,
    cases: &[Case],
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let wish = hearing.heard.plans.iter().find_map(|plan| match plan.kind {
        PlanKind::CheckMe { minutes } => Some((plan.unit.clone(), minutes)),
        _ => None,
    });
    let till = || {
        let until = lone::till(hearing)?;
        let left: u32 = (until - hearing.inbound.at).num_minutes().try_into().ok()?;
        let every = lone::interval(hearing.desk.phrases, hearing.text);
        let minutes = every.map_or(left, |every| every.min(left));
        Some((lone::unit_till(hearing), minutes))
    };
    let running = hearing.desk.book.ahead().alone(&hearing.member.id);
    match (wish.or_else(till), running) {
        (Some((named, minutes)), _) => {
            let unit = named
                .as_ref()
                .and_then(|name| settle::known(&hearing.fleet, name))
                .cloned()
                .or_else(|| lone::unit_worked_on(hearing));
            let clock = fresh(hearing, unit, minutes);
            set(hearing, clock, reply, records);
        }
        (None, Some(clock)) => answered(hearing, clock, cases, reply, records),
        (None, None) => offer(hearing, cases, reply, records),
    }
}

/// Returns a clock that this message sets.
fn fresh(hearing: &Hearing<'_>, unit: Option<UnitName>, minutes: u32) -> Alone {
    Alone {
        unit,
        why: Personal::new(hearing.text.trim()),
        since: hearing.inbound.at,
        minutes,
        due: hearing.inbound.at,
        asked: None,
        alarmed: None,
        by: None,
    }
}

/// Lets a clock run from the sender's words on, shortened to the time in which skin freezes; says so where it is.
fn run(hearing: &Hearing<'_>, clock: &mut Alone, reply: &Reply<'_>) -> Option<String> {
    let state = clock
        .unit
        .as_ref()
        .and_then(|unit| Some(hearing.desk.book.unit(unit)?.state().clone()));
    let limit = state
        .as_ref()
        .and_then(|state| frostbite(state, hearing.now));
    let shortened = limit.filter(|(limit, _)| *limit < clock.minutes);
    if let Some((limit, _)) = shortened {
        clock.minutes = limit;
    }
    clock.due = hearing.inbound.at + TimeDelta::minutes(i64::from(clock.minutes));
    // minutes are whole, and a time of day is told to the minute
    let until = until(hearing, clock);
    if let Some(until) = until.filter(|until| (*until - clock.due).num_seconds().abs() < 60) {
        clock.due = until;
    }
    shortened.map(|(limit, chill)| {
        let value = Arg::Number(chill, Measure::DegF);
        let args = [("value", value), ("count", limit.into())];
        reply.voice.say("speak-alone-cold", &args)
    })
}

/// Sets the sender's clock.
fn set(hearing: &Hearing<'_>, mut clock: Alone, reply: &mut Reply<'_>, records: &mut Vec<Record>) {
    let shorter = run(hearing, &mut clock, reply);
    let till = until(hearing, &clock);
    let every = till.is_none() && repeats(hearing, &clock);
    let interval = lone::interval(hearing.desk.phrases, hearing.text);
    let key = match (clock.unit.is_some(), till.is_some() || every) {
        (true, false) => "speak-alone-set",
        (true, true) => "speak-alone-set-until",
        (false, _) => "speak-alone-set-nowhere",
    };
    let goes_on = match till {
        Some(till) if interval.is_some() && till > clock.due => {
            let args = [("time", till.into()), ("count", clock.minutes.into())];
            Some(reply.voice.say("speak-alone-every-until", &args))
        }
        Some(till) => {
            let args = [("time", till.into())];
            Some(reply.voice.say("speak-alone-until", &args))
        }
        None => every.then(|| {
            let args = [("count", clock.minutes.into())];
            reply.voice.say("speak-alone-every", &args)
        }),
    };
    let unit = clock.unit.as_ref().map_or("", |unit| unit.as_str());
    let whom = whom(&hearing.fleet, &hearing.member.id, &reply.voice);
    let args = [
        ("time", clock.due.into()),
        ("last", reply.voice.time(answer_by(&clock)).into()),
        ("unit", unit.into()),
        ("names", whom.into()),
    ];
    let line = reply.voice.say(key, &args);
    // somebody's life hangs on it: it is not to be looked for below the advice
    reply
        .first
        .splice(..0, std::iter::once(line).chain(shorter).chain(goes_on));
    lone::tell_of_company(hearing, reply);
    put(hearing, &hearing.member.id, Some(clock), records);
}

/// Sets a clock for somebody else, who is told of it.
pub(in super::super) fn set_for(
    hearing: &Hearing<'_>,
    member: &CrewMember,
    minutes: u32,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let talk = hearing.desk.book.talk(&member.id);
    let theirs = talk.and_then(|talk| talk.unit_at(hearing.inbound.at));
    let named = hearing.names();
    let unit = named.first().or(theirs);
    let unit = unit.and_then(|name| settle::known(&hearing.fleet, name));
    let mut clock = fresh(hearing, unit.cloned(), minutes);
    clock.by = Some(hearing.member.id.clone());
    let shorter = run(hearing, &mut clock, reply);
    let args = [
        ("who", Arg::from(member.name.as_str())),
        ("time", clock.due.into()),
        ("last", answer_by(&clock).into()),
        (
            "names",
            whom(&hearing.fleet, &member.id, &reply.voice).into(),
        ),
    ];
    let line = reply.voice.say("alone-for", &args);
    reply
        .first
        .splice(..0, std::iter::once(line).chain(shorter));
    let voice = hearing
        .desk
        .voice_for(member, None, &hearing.fleet, hearing.now);
    let by = voice.person(&hearing.member.id).into_owned();
    let args = [("who", Arg::from(by)), ("time", clock.due.into())];
    let text = voice.say("alone-for-told", &args);
    reply
        .others
        .push(Outgoing::to(&member.id, text).of_level(Level::Warning));
    put(hearing, &member.id, Some(clock), records);
}

/// Returns until when somebody has to answer who is asked at the end of a clock.
fn answer_by(clock: &Alone) -> DateTime<Utc> {
    clock.due + TimeDelta::minutes(3)
}

fn put(hearing: &Hearing<'_>, who: &str, alone: Option<Alone>, records: &mut Vec<Record>) {
    let who = who.to_owned();
    records.push(Record::Ahead {
        at: hearing.now,
        change: AheadChange::Alone { who, alone },
    });
}

/// Takes what somebody writes whose clock runs. After the question, word that they are well or go on working stops the
/// clock, and any other word is passed on; before, only "ok" does, and any other word starts it anew. One that runs until a
/// time of day goes on until then, or until the sender ends it.
fn answered(
    hearing: &Hearing<'_>,
    clock: &Alone,
    cases: &[Case],
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    if hearing.inbound.at < clock.since {
        return; // an older message that came late tells nothing of now
    }
    let who = hearing.member.id.clone();
    // a call for help is no sign that all is well: the clock runs on, and the alarm goes out by itself
    if aid::said(hearing).is_some() || cases.iter().any(tells_of_danger) {
        return;
    }
    // who was called for, or called, is found by word that they are well, and not by any report
    let shows = is_well(hearing) || clock.alarmed.is_none() && !cases.is_empty();
    if clock.asked.is_some() && !shows {
        return pass_on(hearing, clock, reply, records);
    }
    if let Some(ends) = lone::new_end(hearing) {
        let zone = hearing.fleet.zone_at(clock.unit.as_ref(), ends);
        let told = ends.with_timezone(&zone).format("%H:%M").to_string();
        let why = reply
            .voice
            .say("alone-works-till", &[("time", told.into())]);
        let left = (ends - hearing.inbound.at).num_minutes().max(1);
        let left: u32 = left.try_into().unwrap_or(clock.minutes);
        let every = lone::interval(hearing.desk.phrases, clock.why.text());
        let next = Alone {
            why: Personal::new(why),
            ..fresh(
                hearing,
                clock.unit.clone(),
                every.map_or(left, |every| every.min(left)),
            )
        };
        return set(hearing, next, reply, records);
    }
    if let Some(minutes) = lone::more_minutes(hearing) {
        return again(hearing, clock, minutes, reply, records);
    }
    let left = until(hearing, clock).filter(|until| *until > hearing.inbound.at);
    if let Some(left) = left {
        if !ends_a_watch(hearing) {
            let minutes = (left - hearing.inbound.at).num_minutes();
            let minutes: u32 = minutes.try_into().unwrap_or(clock.minutes).max(1);
            let every = lone::interval(hearing.desk.phrases, clock.why.text());
            let minutes = every.map_or(minutes, |every| every.min(minutes));
            return again(hearing, clock, minutes, reply, records);
        }
    } else if runs_anew(hearing, clock) {
        return again(hearing, clock, clock.minutes, reply, records);
    }
    let line = reply.voice.word("speak-alone-over");
    reply.first.insert(0, line);
    put(hearing, &who, None, records);
    found(hearing, reply, records);
}

/// Tells whether a clock of so many minutes runs once more from these words on.
fn runs_anew(hearing: &Hearing<'_>, clock: &Alone) -> bool {
    // what was to go on until a time of day is over then
    match repeats(hearing, clock) {
        true => until(hearing, clock).is_none() && !ends_a_watch(hearing),
        false => goes_on(hearing) || clock.asked.is_none() && !ends(hearing),
    }
}

/// Tells whether a report is of a danger: whoever tells of one may be in it.
fn tells_of_danger(case: &Case) -> bool {
    let mut faults = case.report.faults.iter();
    faults.any(|fault| first_words(*fault).is_some())
}

/// Tells whether words that report nothing say that the sender is well, or goes on.
fn is_well(hearing: &Hearing<'_>) -> bool {
    ends(hearing)
        || goes_on(hearing)
        || ends_a_watch(hearing)
        || lone::more_minutes(hearing).is_some()
        || hearing.desk.phrases.is("alone", "fine", hearing.text)
        || aid::no_but_well(hearing.desk.phrases, hearing.text)
        || hearing.desk.phrases.shows("alone", "thumbs", hearing.text)
}

/// Passes on what somebody wrote in place of "ok" to those who are alarmed about them: words that are not understood may
/// be a call for help. They get the time to answer once more; an alarm stands.
fn pass_on(hearing: &Hearing<'_>, clock: &Alone, reply: &mut Reply<'_>, records: &mut Vec<Record>) {
    let whom = whom(&hearing.fleet, &hearing.member.id, &reply.voice);
    let line = reply
        .voice
        .say("speak-alone-unsure", &[("names", whom.into())]);
    reply.first.insert(0, line);
    for (to, voice) in watchers(hearing) {
        let who = voice.person(&hearing.member.id).into_owned();
        let quote = voice.quote(hearing.text.trim());
        let args = [("who", Arg::from(who)), ("quote", quote.into())];
        let text = voice.say("speak-alone-words", &args);
        reply
            .others
            .push(Outgoing::to(&to.id, text).of_level(Level::Warning));
    }
    if clock.alarmed.is_none() {
        let asked = Some(hearing.now);
        let clock = Alone {
            asked,
            ..clock.clone()
        };
        put(hearing, &hearing.member.id, Some(clock), records);
    }
}

/// Lets a clock run anew for so many minutes, shorter in deep cold, and says when it asks.
fn again(
    hearing: &Hearing<'_>,
    clock: &Alone,
    minutes: u32,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let mut next = Alone {
        minutes,
        asked: None,
        alarmed: None,
        ..clock.clone()
    };
    let shorter = run(hearing, &mut next, reply);
    // "10 more min" are asked for on top, and bring no question forward; "make it 5" does
    let on_top = hearing
        .desk
        .phrases
        .holds("alone", "more-behind", hearing.text);
    if clock.asked.is_none() && on_top && lone::more_minutes(hearing).is_some() {
        next.due = next.due.max(clock.due);
    }
    // that it is short was said when it was set
    let (key, shorter) = match until(hearing, &next) {
        Some(until) if until >= next.due => ("speak-alone-again-until", None),
        _ if repeats(hearing, &next) => ("speak-alone-again-until", shorter),
        _ => ("speak-alone-again", shorter),
    };
    // word of something else moves the clock on, and is answered for itself first
    let answers =
        clock.asked.is_some() || says_well(hearing) || lone::more_minutes(hearing).is_some();
    if answers {
        let line = reply.voice.say(key, &[("time", next.due.into())]);
        reply
            .first
            .splice(..0, std::iter::once(line).chain(shorter));
    } else {
        reply.say("speak-alone-moved", &[("time", next.due.into())]);
    }
    put(hearing, &hearing.member.id, Some(next), records);
    found(hearing, reply, records);
}

/// Returns the time of day until which a clock was asked for.
fn until(hearing: &Hearing<'_>, clock: &Alone) -> Option<DateTime<Utc>> {
    lone::till_in(hearing, clock.why.text(), clock.since)
}

/// Tells whether a clock was asked for that asks again and again: "check on me every 20 min".
fn repeats(hearing: &Hearing<'_>, clock: &Alone) -> bool {
    let asked = clock.why.text();
    hearing.desk.phrases.holds("alone", "every", asked)
}

/// Tells whether the sender says that they work on: "back under", "still here".
fn goes_on(hearing: &Hearing<'_>) -> bool {
    lone::goes_on(hearing) && !leaves_off(hearing)
}

/// Tells whether a message ends a clock of so many minutes.
fn ends(hearing: &Hearing<'_>) -> bool {
    says_well(hearing) || leaves_off(hearing)
}

/// Tells whether a message ends a watch until a time of day: there "ok" is "understood" before the question, and a sign of
/// life after it.
fn ends_a_watch(hearing: &Hearing<'_>) -> bool {
    let word = hearing.heard.answer.as_ref().and_then(|answer| answer.word);
    leaves_off(hearing)
        || word == Some(ShortAnswer::DidAll)
        || hearing.desk.phrases.holds("alone", "over", hearing.text)
        || hearing.desk.phrases.is("alone", "over-alone", hearing.text)
}

/// Tells whether the sender takes the clock back, or drives off: who drives works alone no longer.
fn leaves_off(hearing: &Hearing<'_>) -> bool {
    let order = hearing.heard.command.as_ref();
    sets_off(hearing) || order.is_some_and(|order| order.name == CommandName::NeverMind)
}

/// Ends the alarm about somebody who did not answer and does now, and tells those who were alarmed.
fn found(hearing: &Hearing<'_>, reply: &mut Reply<'_>, records: &mut Vec<Record>) {
    let at = hearing.now;
    let key = alone_key(&hearing.member.id);
    let stands = hearing.desk.book.alarms().contains_key(&key);
    if !stands {
        return;
    }
    let change = AlarmChange::Over { key };
    records.push(Record::Alarm { at, change });
    for (to, voice) in watchers(hearing) {
        let who = voice.person(&hearing.member.id).into_owned();
        let words = voice.quote(hearing.text);
        let args = [("who", who.into()), ("words", words.into())];
        let text = voice.say("speak-alone-found", &args);
        reply
            .others
            .push(Outgoing::to(&to.id, text).of_level(Level::Warning));
    }
}

/// Tells whether the sender says that they are well.
pub(super) fn says_well(hearing: &Hearing<'_>) -> bool {
    let word = hearing.heard.answer.as_ref().and_then(|answer| answer.word);
    let well = |plan: &Plan| plan.kind == PlanKind::Well;
    hearing.heard.plans.iter().any(well)
        || matches!(
            word,
            Some(ShortAnswer::Ok | ShortAnswer::Yes | ShortAnswer::DidAll)
        )
}

/// Tells whether the sender takes to the road.
fn sets_off(hearing: &Hearing<'_>) -> bool {
    let road = |plan: &Plan| plan.kind == PlanKind::OnTheRoad;
    hearing.heard.plans.iter().any(road)
        || hearing.heard.entries.iter().any(|entry| {
            entry.events.contains(&Event::Left)
                || entry.readings.value(ReadingKey::EtaMin).is_some()
        })
}

/// Offers the clock to somebody on site at night or in deep cold, once a shift.
fn offer(hearing: &Hearing<'_>, cases: &[Case], reply: &mut Reply<'_>, records: &mut Vec<Record>) {
    let at = hearing.now;
    if hearing.late() {
        return;
    }
    // who says that they go under a trailer is told each time, by day too
    let below = hearing.heard.plans.iter().find_map(|plan| {
        let under = plan.kind == PlanKind::GoingUnder;
        settle::known(&hearing.fleet, plan.unit.as_ref().filter(|_| under)?)
    });
    if let Some(unit) = below {
        reply.offers = Some(unit.clone());
        return reply.say("speak-alone-offer", &[("unit", unit.as_str().into())]);
    }
    if hearing.member.role == Role::Dispatcher {
        return;
    }
    let Some(case) = cases.iter().find(|case| case.job().is_some()) else {
        return;
    };
    let offered = hearing.desk.book.ahead().offered(&hearing.member.id);
    if offered.is_some_and(|offered| at - offered < OFFER_EVERY) {
        return;
    }
    let zone = case.zone();
    let hour = at.with_timezone(&zone).hour();
    let by_night = hour >= NIGHT.0 || hour < NIGHT.1;
    if !by_night && frostbite(&case.now, at).is_none() {
        return;
    }
    reply.offers = Some(case.unit.clone());
    reply.say("speak-alone-offer", &[("unit", case.unit.as_str().into())]);
    let change = AheadChange::Offered {
        who: hearing.member.id.clone(),
    };
    records.push(Record::Ahead { at, change });
}

/// Returns the minutes within which bare skin freezes at a trailer, and the wind chill, °F; none where it does not.
fn frostbite(state: &UnitState, at: DateTime<Utc>) -> Option<(u32, f64)> {
    let air = state.value_since(ReadingKey::AirF, at - AIR_LASTS)?;
    let wind = state
        .value_since(ReadingKey::WindMph, at - AIR_LASTS)
        .unwrap_or(WIND_TAKEN_MPH);
    let chill = wind_chill(deg_f(air), mph(wind));
    let minutes = chill_band(chill).frostbite_minutes()?;
    Some((minutes, crate::physics::units::in_deg_f(chill)))
}
