//! Who drives is not asked: from "rolling", "on my way", left or an eta on, a person gets nothing until they are there.

use chrono::TimeDelta;

use super::super::answer::Reply;
use super::super::held;
use super::super::inbound::Outgoing;
use super::super::phrases::{Phrases, plain};
use super::super::receive::Hearing;
use super::super::settle::{self, Settled};
use super::super::situate::Case;
use super::super::tick::{dispatchers, road_key};
use super::super::when;
use crate::book::{AheadChange, AlarmChange, Held, HeldOf, Record, Road};

use crate::finding::Level;
use crate::fleet::{Fleet, Role};
use crate::heard::{Entry, Event, Plan, PlanKind, ReadingKey, UnitName};

/// How long after the time somebody gave they may take.
const SLACK: TimeDelta = TimeDelta::minutes(30);
/// How long a drive is taken to last where nobody gave a time.
const USUAL: TimeDelta = TimeDelta::hours(2);

/// Notes who took to the road or is there, and holds back what is meant for those on it.
pub(super) fn note(
    hearing: &Hearing<'_>,
    settled: &Settled,
    cases: &[Case],
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let at = hearing.now;
    let me = &hearing.member.id;
    let known = hearing.desk.book.ahead();
    let mut change = |change| records.push(Record::Ahead { at, change });
    if let Some(road) = taken_to(hearing, settled) {
        if let Some((eta, _)) = road
            .eta
            .zip(settled.homeless.as_ref().filter(|told| is_eta_alone(told)))
        {
            let args = [("time", eta.into()), ("last", road.until.into())];
            reply.say("road-noted", &args);
        }
        change(AheadChange::Road {
            who: me.clone(),
            road: Some(road),
        });
    } else if known.road(me, at).is_some() && has_arrived(hearing, settled) {
        change(AheadChange::Road {
            who: me.clone(),
            road: None,
        });
        let held = known.held(me);
        if !held.is_empty() {
            change(AheadChange::Released { to: me.clone() });
        }
        let told = waited(hearing, cases, held, reply, records);
        reply.others.extend(told.into_iter().map(|told| {
            Outgoing::to(me, told.text)
                .in_chat_of(hearing.inbound)
                .of_level(told.level)
        }));
    }
    if hearing.desk.book.alarms().contains_key(&road_key(me)) {
        let change = AlarmChange::Over { key: road_key(me) };
        records.push(Record::Alarm { at, change });
    }
    hold(hearing, reply, records);
}

/// Puts what waited for the sender into words, as it stands after this message.
fn waited(
    hearing: &Hearing<'_>,
    cases: &[Case],
    waited: &[Held],
    reply: &Reply<'_>,
    records: &[Record],
) -> Vec<held::Told> {
    let tasks = hearing.desk.book.tasks();
    let task = |id| reply.board.tasks().task(id).or(tasks.task(id)).cloned();
    let case = |unit: &UnitName| {
        let told = cases.iter().find(|case| case.unit == *unit);
        told.cloned().unwrap_or_else(|| hearing.asked_about(unit))
    };
    let ended = |key: &str| {
        records.iter().any(|record| {
            let Record::Alarm { change, .. } = record else {
                return false;
            };
            matches!(change, AlarmChange::Over { key: over } if over == key)
        })
    };
    let known = held::Known {
        desk: hearing.desk,
        now: hearing.now,
        task: &task,
        case: &case,
        ended: &ended,
    };
    // what the reply tells itself is not told twice
    let told = |held: &Held| {
        let Some(HeldOf::Finding(unit, id)) = &held.of else {
            return false;
        };
        let mut findings = reply.findings.iter();
        findings.any(|finding| finding.id == *id && finding.unit.as_ref() == Some(unit))
    };
    let waited: Vec<Held> = waited.iter().filter(|held| !told(held)).cloned().collect();
    held::let_go(&waited, &known, &reply.voice)
}

/// Returns how the sender travels, where this message says that they set off.
fn taken_to(hearing: &Hearing<'_>, settled: &Settled) -> Option<Road> {
    // a dispatcher tells how others travel, unless they say that it is they
    let own = || hearing.desk.phrases.holds("road", "own", hearing.text);
    if hearing.member.role == Role::Dispatcher && !own() {
        return None;
    }
    let since = hearing.inbound.at;
    let entries = || {
        let told = settled
            .reports
            .iter()
            .map(|(unit, _, entry)| (Some(unit), entry));
        told.chain(settled.homeless.iter().map(|entry| (None, entry)))
    };
    let arrived = entries().any(|(_, entry)| entry.events.contains(&Event::Arrived));
    if arrived {
        return None;
    }
    let eta = entries().find_map(|(unit, entry)| {
        let minutes = entry.readings.value(ReadingKey::EtaMin)?;
        Some((unit, since + TimeDelta::minutes(minutes.round() as i64)))
    });
    let left = || entries().find(|(_, entry)| entry.events.contains(&Event::Left));
    let says = hearing
        .heard
        .plans
        .iter()
        .find(|plan| plan.kind == PlanKind::OnTheRoad);
    let unit = eta
        .and_then(|(unit, _)| unit)
        .or_else(|| left().and_then(|(unit, _)| unit))
        .or_else(|| settle::known(&hearing.fleet, says?.unit.as_ref()?))
        .cloned();
    match eta {
        Some((_, eta)) => Some(Road {
            unit,
            since,
            eta: Some(eta),
            until: eta + SLACK,
        }),
        None if left().is_some() || says.is_some() => Some(Road {
            unit,
            since,
            eta: None,
            until: since + USUAL,
        }),
        None => None,
    }
}

/// Puts "ahorita llego con la 9, unos 20 minutos" and "almost there with 12, 20 min or so" as the time of an arrival that they
/// tell: nobody is there yet.
pub(in crate::desk) fn reworded(phrases: &Phrases, fleet: &Fleet, text: &str) -> Option<String> {
    const LONGEST: usize = 5;
    let folded = plain(text);
    let words: Vec<&str> = folded.split(' ').filter(|word| !word.is_empty()).collect();
    let list = |list: &str, at: usize| {
        let most = LONGEST.min(words.len().saturating_sub(at));
        let is = |count: &usize| phrases.is("road", list, &words[at..at + count].join(" "));
        (1..=most).rev().find(is)
    };
    let (at, english) = match (list("comes-en", 0), list("comes-es", 0)) {
        (Some(count), _) => (count, true),
        (None, Some(count)) => (count, false),
        _ => return None,
    };
    let with = at + list("with", at).unwrap_or(0);
    let name = words.get(with).map(|word| UnitName::new(word));
    let unit = name
        .filter(|_| with > at)
        .and_then(|name| settle::known(fleet, &name));
    let at = if unit.is_some() { with + 1 } else { at };
    let at = at + list("about", at).unwrap_or(0);
    let told = when::counted(&words, at)?;
    let minutes = told.number.checked_mul(told.minutes_each()?)?;
    let end = told.behind + list("or-so", told.behind).unwrap_or(0);
    // "with 12" may stand behind the time
    let last = end + list("with", end).unwrap_or(0);
    let behind = words.get(last).map(|word| UnitName::new(word));
    let behind = behind.filter(|_| unit.is_none() && last > end);
    let behind = behind.and_then(|name| settle::known(fleet, &name));
    let end = if behind.is_some() { last + 1 } else { end };
    if end < words.len() || !(1..=MOST_MINUTES).contains(&minutes) {
        return None;
    }
    Some(match (unit.or(behind), english) {
        (Some(unit), true) => format!("on my way to {unit}, be there in {minutes} min"),
        (Some(unit), false) => format!("voy en camino a la {unit}, llego en {minutes} min"),
        (None, true) => format!("be there in {minutes} min"),
        (None, false) => format!("llego en {minutes} min"),
    })
}

/// No drive is told that takes longer, min.
const MOST_MINUTES: u32 = 12 * 60;

/// Tells whether a report tells nothing but when its sender is there: it needs no trailer.
pub(in crate::desk) fn is_eta_alone(entry: &Entry) -> bool {
    let eta = |key: &ReadingKey| *key == ReadingKey::EtaMin;
    let readings = &entry.readings;
    readings.value(ReadingKey::EtaMin).is_some()
        && readings.values.keys().all(eta)
        && entry.events.is_empty()
        && entry.faults.is_empty()
        && entry.cleared.is_empty()
}

/// Tells whether a message can only come from somebody who is there.
fn has_arrived(hearing: &Hearing<'_>, settled: &Settled) -> bool {
    let on_site = |entry: &Entry| {
        let on_the_road =
            |event: &Event| matches!(event, Event::Left | Event::Hitched | Event::LightsChecked);
        let read = entry
            .readings
            .values
            .keys()
            .any(|key| *key != ReadingKey::EtaMin);
        read || !entry.faults.is_empty() || entry.events.iter().any(|event| !on_the_road(event))
    };
    let told = settled
        .reports
        .iter()
        .filter(|(_, at, _)| *at == hearing.inbound.at);
    let works_alone = |plan: &Plan| matches!(plan.kind, PlanKind::CheckMe { .. });
    hearing.heard.plans.iter().any(works_alone)
        || told
            .map(|(.., entry)| entry)
            .chain(&settled.homeless)
            .any(on_site)
}

/// Holds back what is meant for people on the road; a danger goes to the dispatchers as "phone them".
fn hold(hearing: &Hearing<'_>, reply: &mut Reply<'_>, records: &mut Vec<Record>) {
    let at = hearing.now;
    let known = hearing.desk.book.ahead();
    let me = &hearing.member.id;
    let (waits, goes): (Vec<Outgoing>, Vec<Outgoing>) = std::mem::take(&mut reply.others)
        .into_iter()
        .partition(|message| message.to != *me && known.road(&message.to, at).is_some());
    reply.others = goes;
    for message in waits {
        if message.level == Some(Level::Danger) {
            for to in dispatchers(&hearing.fleet).filter(|to| *to != message.to) {
                let Some(member) = hearing.fleet.crew.get(to) else {
                    continue;
                };
                let voice = hearing.desk.voice_for(member, None, &hearing.fleet, at);
                let who = voice.person(&message.to).into_owned();
                reply.others.push(
                    Outgoing::to(to, voice.say("alarm-driving", &[("who", who.into())]))
                        .of_level(message.level),
                );
            }
        }
        let who = reply.voice.person(&message.to).into_owned();
        if hearing.heard.command.is_some() {
            reply.say("speak-held", &[("who", who.into())]);
        }
        let held = Held {
            to: message.to,
            at,
            text: message.text,
            level: message.level,
            of: None,
        };
        let change = AheadChange::Held { held };
        records.push(Record::Ahead { at, change });
    }
}
