//! Somebody works alone: a clock is set, shortened in deep cold, answered by any word; and offered where it would help.

use chrono::{DateTime, TimeDelta, Timelike, Utc};

use super::super::answer::Reply;
use super::super::inbound::Outgoing;
use super::super::receive::Hearing;
use super::super::settle;
use super::super::situate::Case;
use super::super::tick::{alone_key, dispatchers};
use crate::book::{AheadChange, AlarmChange, Alone, Personal, Record, UnitState};
use crate::finding::Level;
use crate::fleet::Role;
use crate::heard::{CommandName, Event, Plan, PlanKind, ReadingKey, ShortAnswer};
use crate::physics::cold::{chill_band, wind_chill};
use crate::physics::units::{deg_f, mph};
use crate::quantity::Measure;
use crate::reply::Arg;

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
        PlanKind::CheckMe { minutes } => Some((plan, minutes)),
        _ => None,
    });
    let running = hearing.desk.book.ahead().alone(&hearing.member.id);
    match (wish, running) {
        (Some((plan, minutes)), _) => {
            let named = plan.unit.as_ref();
            let unit = named
                .or_else(|| hearing.talk.unit_at(hearing.inbound.at))
                .and_then(|name| settle::known(&hearing.fleet, name))
                .cloned();
            let clock = Alone {
                unit,
                why: Personal::new(hearing.text.trim()),
                since: hearing.inbound.at,
                minutes,
                due: hearing.inbound.at,
                asked: None,
                alarmed: None,
            };
            set(hearing, clock, reply, records);
        }
        (None, Some(clock)) => answered(hearing, clock, reply, records),
        (None, None) => offer(hearing, cases, reply, records),
    }
}

/// Sets the clock from the sender's words on, shortened to the time in which skin freezes.
fn set(hearing: &Hearing<'_>, mut clock: Alone, reply: &mut Reply<'_>, records: &mut Vec<Record>) {
    let state = clock
        .unit
        .as_ref()
        .and_then(|unit| Some(hearing.desk.book.unit(unit)?.state().clone()));
    let limit = state
        .as_ref()
        .and_then(|state| frostbite(state, hearing.now));
    let shortened = limit.filter(|(limit, _)| *limit < clock.minutes);
    let mut lines = Vec::new();
    if let Some((limit, chill)) = shortened {
        clock.minutes = limit;
        let value = Arg::Number(chill, Measure::DegF);
        let args = [("value", value), ("count", limit.into())];
        lines.push(reply.voice.say("speak-alone-cold", &args));
    }
    clock.due = hearing.inbound.at + TimeDelta::minutes(i64::from(clock.minutes));
    let answer_by = clock.due + TimeDelta::minutes(3);
    let key = if clock.unit.is_some() {
        "speak-alone-set"
    } else {
        "speak-alone-set-nowhere"
    };
    let unit = clock.unit.as_ref().map_or("", |unit| unit.as_str());
    let args = [
        ("time", clock.due.into()),
        ("last", reply.voice.time(answer_by).into()),
        ("unit", unit.into()),
    ];
    lines.insert(0, reply.voice.say(key, &args));
    // somebody's life hangs on it: it is not to be looked for below the advice
    reply.first.splice(..0, lines);
    let change = AheadChange::Alone {
        who: hearing.member.id.clone(),
        alone: Some(clock),
    };
    records.push(Record::Ahead {
        at: hearing.now,
        change,
    });
}

/// Takes any word as a sign of life. After the question it stops the clock; before, only "ok" does, and any other word
/// starts it anew.
fn answered(
    hearing: &Hearing<'_>,
    clock: &Alone,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let at = hearing.now;
    if hearing.inbound.at < clock.since {
        return; // an older message that came late tells nothing of now
    }
    let who = hearing.member.id.clone();
    // who drives off works alone no longer
    let well = says_well(hearing)
        || sets_off(hearing)
        || hearing
            .heard
            .command
            .as_ref()
            .is_some_and(|order| order.name == CommandName::NeverMind);
    if clock.asked.is_none() && !well {
        let mut next = clock.clone();
        next.due = hearing.inbound.at + TimeDelta::minutes(i64::from(clock.minutes));
        let args = [("time", next.due.into())];
        let line = reply.voice.say("speak-alone-again", &args);
        reply.first.insert(0, line);
        let change = AheadChange::Alone {
            who,
            alone: Some(next),
        };
        records.push(Record::Ahead { at, change });
        return;
    }
    let line = reply.voice.word("speak-alone-over");
    reply.first.insert(0, line);
    let change = AheadChange::Alone { who, alone: None };
    records.push(Record::Ahead { at, change });
    if clock.alarmed.is_none() {
        return;
    }
    let key = alone_key(&hearing.member.id);
    let change = AlarmChange::Over { key };
    records.push(Record::Alarm { at, change });
    for to in dispatchers(&hearing.fleet).filter(|to| *to != hearing.member.id) {
        if let Some(member) = hearing.fleet.crew.get(to) {
            let voice = hearing.desk.voice_for(member, None, &hearing.fleet, at);
            let who = voice.person(&hearing.member.id).into_owned();
            let words = voice.quote(hearing.text);
            let args = [("who", who.into()), ("words", words.into())];
            reply.others.push(
                Outgoing::to(to, voice.say("speak-alone-found", &args)).of_level(Level::Warning),
            );
        }
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
    let zone = case
        .job()
        .map_or(hearing.fleet.time_zone, |job| job.time_zone);
    let hour = at.with_timezone(&zone).hour();
    let by_night = hour >= NIGHT.0 || hour < NIGHT.1;
    if !by_night && frostbite(&case.now, at).is_none() {
        return;
    }
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
