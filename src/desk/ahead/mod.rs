//! What a message changes in what the bot will speak of by itself: when to look at a trailer again, who is on the road,
//! who works alone, what the weather will be, which alarms are over, what waits for somebody who drives.

mod alone;
mod low;
mod road;
mod truck;
mod warn;
mod weather;

use super::alarm::{is_without_heat, no_heat_key, tell_of_full};
use super::answer::{self, Reply};
use super::inbound::Outgoing;
use super::others::other_dispatchers;
use super::receive::Hearing;
use super::settle::{self, Settled};
use super::situate::Case;
use super::tick::{ask_at, look_again, silence_key, task_key};
use super::when;
use crate::book::{AheadChange, AlarmChange, Record, Task};

use crate::finding::{FindingId, TaskKind};
use crate::fleet::Role;
use crate::heard::{Fault, Plan, PlanKind, ReadingKey};

pub(super) use self::alone::set_for;
pub(super) use self::low::spelled_out as low_spelled_out;
pub(super) use self::warn::{tell_taken_back as weather_taken_back, what_to_do};
pub(super) use self::weather::{told as weather_told, units_out};
pub(super) use road::{is_eta_alone, reworded};

/// Notes all that follows from a message whose findings, orders and questions are worked through.
pub(super) fn note(
    hearing: &Hearing<'_>,
    settled: &Settled,
    cases: &[Case],
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    looks(hearing, cases, reply, records);
    alone::note(hearing, cases, reply, records);
    truck::call_now(hearing, reply, records);
    over(hearing, cases, reply, records);
    heard_of(hearing, cases, reply, records);
    tell_of_full(hearing, cases, reply, records);
    road::note(hearing, settled, cases, reply, records);
}

/// Notes when to work the trailers' forecasts out again.
fn looks(hearing: &Hearing<'_>, cases: &[Case], reply: &Reply<'_>, records: &mut Vec<Record>) {
    let at = hearing.now;
    let known = hearing.desk.book.ahead();
    for case in cases {
        let look = look_again(case, &reply.board, at);
        if look != known.look(&case.unit) {
            let unit = case.unit.clone();
            let change = AheadChange::Look { unit, look };
            records.push(Record::Ahead { at, change });
        }
        let asked = known.asked_to_read(&case.unit);
        let ask = ask_at(case, &reply.board, asked, at);
        if ask != known.read(&case.unit) {
            let unit = case.unit.clone();
            let change = AheadChange::Read { unit, ask };
            records.push(Record::Ahead { at, change });
        }
        // a head count bears on every trailer of the job
        let counted = case.report.readings.value(ReadingKey::Guests).is_some();
        let others = case.job().into_iter().flat_map(|job| &job.trailers);
        for other in others.filter(|other| counted && **other != case.unit) {
            if known.look(other).is_some_and(|look| look > at) {
                let unit = other.clone();
                let change = AheadChange::Look {
                    unit,
                    look: Some(at),
                };
                records.push(Record::Ahead { at, change });
            }
        }
    }
}

/// Ends the alarms that this turn answers: tasks taken, called for or closed; faults that are mended.
fn over(hearing: &Hearing<'_>, cases: &[Case], reply: &mut Reply<'_>, records: &mut Vec<Record>) {
    let alarms = hearing.desk.book.alarms();
    let at = hearing.now;
    let taken: Vec<Task> = reply
        .board
        .touched()
        .filter(|task| task.is_open() && task.taken_by.as_ref() == Some(&hearing.member.id))
        .filter(|task| alarms.contains_key(&task_key(task.id)))
        .cloned()
        .collect();
    for task in &taken {
        say_who_has_it(hearing, task, reply);
    }
    let mut end = |key: String| {
        if alarms.contains_key(&key) {
            let change = AlarmChange::Over { key };
            records.push(Record::Alarm { at, change });
        }
    };
    for task in reply.board.touched() {
        if !task.is_open() || task.taken_by.is_some() || task.called.is_some() {
            end(task_key(task.id));
        }
    }
    for case in cases {
        if !is_without_heat(case) {
            end(no_heat_key(&case.unit));
        }
        let mended = |fault: &&Fault| case.before.has(**fault) && !case.now.has(**fault);
        for fault in Fault::ALL.iter().filter(mended) {
            end(format!("{}:{}", FindingId::of_fault(*fault), case.unit));
        }
    }
}

/// Tells the other dispatchers, who got the same alarm, that somebody has the task.
fn say_who_has_it(hearing: &Hearing<'_>, task: &Task, reply: &mut Reply<'_>) {
    for (to, voice) in other_dispatchers(hearing) {
        let who = voice.person(&hearing.member.id).into_owned();
        let what = voice.task_head(task);
        let args = [("who", who.into()), ("what", what.into())];
        // who has a pump-out has not yet called for the truck
        let key = match task.kind == TaskKind::PumpOut && task.called.is_none() {
            true => "speak-taken-uncalled",
            false => "speak-taken-by",
        };
        reply
            .others
            .push(Outgoing::to(&to.id, voice.say(key, &args)));
    }
}

/// Takes a word without a reading about a silent unit ("12 all good") as note taken: somebody is there.
fn heard_of(
    hearing: &Hearing<'_>,
    cases: &[Case],
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    // who orders a truck to it, or says that none came, may be anywhere
    let of_a_truck = hearing.desk.phrases.holds("truck", "who", hearing.text);
    let other = hearing.heard.ask.is_some() || hearing.heard.command.is_some() || of_a_truck;
    // nor is who asks, plans or orders something there; a dispatcher writes from afar
    let asks = answer::is_question(hearing) || answer::sounds_like_a_question(hearing.text);
    let well = |plan: &Plan| matches!(plan.kind, PlanKind::Well);
    let plans = !hearing.heard.plans.iter().all(well) || !hearing.heard.set_aside.is_empty();
    let afar = hearing.member.role == Role::Dispatcher;
    if other || asks || plans || afar || !cases.is_empty() {
        return;
    }
    // words that nothing was read of say what nobody understood, and not that all is well there
    if !answer::is_talk_alone(hearing) {
        return;
    }
    // "at 10" is an hour
    let clock = when::clock_words(hearing.text);
    let named = hearing.heard.named.iter();
    let named = named.filter(|name| !clock.contains(&name.as_str().to_lowercase()));
    for unit in named.filter_map(|name| settle::known(&hearing.fleet, name)) {
        let key = silence_key(unit);
        let open = hearing.desk.book.alarms().get(&key);
        if open.is_some_and(|alarm| alarm.acknowledged.is_none()) {
            reply.say("speak-heard-of", &[("unit", unit.as_str().into())]);
            let by = hearing.member.id.clone();
            let change = AlarmChange::Acknowledged { key, by };
            records.push(Record::Alarm {
                at: hearing.now,
                change,
            });
        }
    }
}
