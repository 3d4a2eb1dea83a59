//! Lone workers as others see them: told with a digest and to whoever asks, and answered for by a dispatcher.

use super::answer::{self, Reply};
use super::inbound::Outgoing;
use super::phrases::plain;
use super::receive::Hearing;
use super::settle;
use super::tick::{alone_key, dispatchers, of_alone};
use crate::book::{AheadChange, Alarm, AlarmChange, Alone, Record};
use crate::finding::Level;
use crate::fleet::Role;
use crate::heard::{Ask, PlanKind};
use crate::reply::{Arg, Voice};

/// What a message says of somebody whose clock runs, or of the sender's own work alone.
pub(super) enum Lone {
    /// How they are is asked.
    Asked(String),
    /// They were reached and are well.
    Reached(String),
    /// The sender works alone, and told no time to be asked at.
    NoClock,
}

/// Reads what a message says of lone workers.
pub(super) fn said(hearing: &Hearing<'_>) -> Option<Lone> {
    let (phrases, text, heard) = (&hearing.desk.phrases, hearing.text, &hearing.heard);
    if heard.command.is_some() || hearing.late() || hearing.inbound.replaces.is_some() {
        return None;
    }
    let asks = text.trim_end().ends_with('?')
        || text.contains('¿')
        || answer::is_question(hearing)
        || phrases.after("alone", "asks", text).is_some();
    let clocks = hearing.desk.book.ahead().all_alone();
    let mut others = clocks.filter(|(who, _)| *who != hearing.member.id);
    if let Some((who, _)) = others.find(|(who, _)| names(hearing, who)) {
        if asks || heard.ask.is_some() {
            return Some(Lone::Asked(who.to_owned()));
        }
        let well = phrases.holds("alone", "well", text) && !phrases.holds("alone", "not", text);
        let may = hearing.member.role == Role::Dispatcher;
        return (well && may).then(|| Lone::Reached(who.to_owned()));
    }
    let running = hearing.desk.book.ahead().alone(&hearing.member.id);
    let timed = |kind: &PlanKind| matches!(kind, PlanKind::CheckMe { .. } | PlanKind::GoingUnder);
    let wish = heard.plans.iter().any(|plan| timed(&plan.kind));
    let says = phrases.holds("alone", "says", text);
    let none = running.is_none() && !wish && !asks && heard.ask.is_none();
    (says && none).then_some(Lone::NoClock)
}

/// Tells whether a message names somebody of the crew.
fn names(hearing: &Hearing<'_>, who: &str) -> bool {
    let text = format!(" {} ", plain(hearing.text));
    let called = |name: &str| {
        let name = plain(name);
        !name.is_empty() && text.contains(&format!(" {name} "))
    };
    let member = hearing.fleet.crew.get(who);
    called(who) || member.is_some_and(|member| called(&member.name))
}

/// Answers it; with a digest or the tasks, says first who works alone.
pub(super) fn tell(
    hearing: &Hearing<'_>,
    lone: Option<&Lone>,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    match lone {
        Some(Lone::Asked(who)) => {
            if let Some(clock) = hearing.desk.book.ahead().alone(who) {
                let line = told(who, clock, &reply.voice);
                reply.first.insert(0, line);
            }
        }
        Some(Lone::Reached(who)) => reached(hearing, who, reply, records),
        Some(Lone::NoClock) => {
            let named = hearing.names();
            let unit = named.first().or_else(|| hearing.talk.unit_at(hearing.now));
            let unit = unit.and_then(|name| settle::known(&hearing.fleet, name));
            let line = match unit {
                Some(unit) => {
                    let args = [("unit", Arg::from(unit.as_str()))];
                    reply.voice.say("speak-alone-how", &args)
                }
                None => reply.voice.word("speak-alone-how-nowhere"),
            };
            reply.first.insert(0, line);
        }
        None if matches!(hearing.heard.ask, Some(Ask::Digest | Ask::Tasks)) => {
            let lines = everybody(hearing, reply);
            reply.first.splice(..0, lines);
        }
        None => {}
    }
}

/// Says in short what an alarm is about: the person, where it is one.
pub(super) fn alarm_name(key: &str, alarm: &Alarm, voice: &Voice<'_>) -> String {
    if let Some(who) = of_alone(key) {
        let who = voice.person(who).into_owned();
        return voice.say("got-it-alone", &[("who", who.into())]);
    }
    // what was done has words of its own
    let act = key.split(':').next().unwrap_or_default();
    let act = format!("name-site-{act}");
    let name = match voice.knows(&act) {
        true => voice.word(&act),
        false => voice.name(alarm.id, alarm.level),
    };
    match &alarm.unit {
        Some(unit) => format!("{unit} {name}"),
        None => name,
    }
}

/// Says who works alone, each in a line.
pub(super) fn everybody(hearing: &Hearing<'_>, reply: &Reply<'_>) -> Vec<String> {
    let clocks = hearing.desk.book.ahead().all_alone();
    clocks
        .map(|(who, clock)| told(who, clock, &reply.voice))
        .collect()
}

fn told(who: &str, clock: &Alone, voice: &Voice<'_>) -> String {
    let mut args = vec![
        ("who", Arg::from(voice.person(who).into_owned())),
        ("time", clock.since.into()),
        ("words", voice.quote(clock.why.text()).into()),
    ];
    let key = match clock.alarmed {
        Some(_) => "alone-no-answer",
        None => {
            args.push(("due", clock.due.into()));
            "alone-runs"
        }
    };
    voice.say(key, &args)
}

/// Ends the clock of somebody who was reached, and tells the other dispatchers.
fn reached(hearing: &Hearing<'_>, who: &str, reply: &mut Reply<'_>, records: &mut Vec<Record>) {
    let at = hearing.now;
    let change = AheadChange::Alone {
        who: who.to_owned(),
        alone: None,
    };
    records.push(Record::Ahead { at, change });
    let key = alone_key(who);
    if hearing.desk.book.alarms().contains_key(&key) {
        let change = AlarmChange::Over { key };
        records.push(Record::Alarm { at, change });
    }
    let name = reply.voice.person(who).into_owned();
    let line = reply.voice.say("alone-reached", &[("who", name.into())]);
    reply.first.insert(0, line);
    let me = &hearing.member.id;
    for to in dispatchers(&hearing.fleet).filter(|to| to != me) {
        let Some(member) = hearing.fleet.crew.get(to) else {
            continue;
        };
        let voice = hearing.desk.voice_for(member, None, &hearing.fleet, at);
        let args = [
            ("by", Arg::from(voice.person(me).into_owned())),
            ("who", voice.person(who).into_owned().into()),
        ];
        let text = voice.say("alone-reached-by", &args);
        reply
            .others
            .push(Outgoing::to(to, text).of_level(Level::Warning));
    }
}
