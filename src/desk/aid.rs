//! Somebody who calls for help and does not say what for: "need help on 12". The dispatchers hear of it at once, and what
//! is wrong is asked.

use super::answer::Reply;
use super::choices;
use super::inbound::Outgoing;
use super::others::{other_dispatchers, watchers};
use super::phrases::Phrases;
use super::receive::Hearing;
use super::settle;
use super::tick::{alone_key, place_told};
use crate::book::{AheadChange, AlarmChange, Alone, Record};
use crate::finding::{FindingId, Level};
use crate::heard::{Ask, Entry, Fault, UnitName};
use crate::reply::{Arg, Voice};

/// A longer message says what is wrong, or asks for something else.
const LONGEST: usize = 9;

/// A call for help.
pub(super) struct Call {
    /// The trailer it is for, where that is known.
    unit: Option<UnitName>,
}

/// Finds a call for help in a message that reports nothing: what is reported is answered by itself. Of somebody whose clock
/// as a lone worker runs, less is a call: "help", "i fell", or "no" to the question whether all is well.
pub(super) fn said(hearing: &Hearing<'_>) -> Option<Call> {
    let phrases = hearing.desk.phrases;
    let says = |list| phrases.holds("aid", list, hearing.text);
    let heard = &hearing.heard;
    let reports = |but: fn(&Entry) -> bool| heard.entries.iter().any(|entry| !but(entry));
    if hearing.inbound.replaces.is_some() {
        return None;
    }
    let clock = hearing.desk.book.ahead().alone(&hearing.member.id);
    let calls_alone = clock.is_some_and(|clock| {
        let denies = clock.asked.is_some() && denies_well(phrases, hearing.text);
        // "no help here, im stuck" calls all the same
        let calls = || {
            let rest = phrases.without("aid", "calm", hearing.text);
            phrases.holds("aid", "alone", &rest)
        };
        !reports(tells_at_most_of_one_trapped) && (denies || calls())
    });
    let long = hearing.text.split_whitespace().count() > LONGEST;
    let calls = !long
        && heard.command.is_none()
        && !reports(Entry::is_empty)
        && (says("says") && !says("not") || cries_from(hearing));
    // where they told of somebody hurt it is no menu that they want
    let calls_hurt = heard.ask == Some(Ask::Help)
        && phrases.is("aid", "cry", hearing.text)
        && hearing.desk.book.alarms().iter().any(|(key, alarm)| {
            let mine = key.ends_with(&format!(":{}", hearing.member.id));
            let on = alarm.unit.as_ref();
            let there = on.is_some() && on == hearing.talk.unit_at(hearing.inbound.at);
            alarm.level == Level::Danger && (mine || there)
        });
    if !calls && !calls_alone && !calls_hurt {
        return None;
    }
    let named = hearing.names().into_iter().next();
    let last = || {
        let last = hearing.talk.unit_at(hearing.inbound.at)?;
        settle::known(&hearing.fleet, last).cloned()
    };
    Some(Call {
        unit: named.or_else(last),
    })
}

/// "12 help": the cry and the trailer it comes from, and no other word.
fn cries_from(hearing: &Hearing<'_>) -> bool {
    let is_name = |word: &&str| {
        let bare = word.trim_end_matches(['.', ',', '!', ':']);
        settle::known(&hearing.fleet, &UnitName::new(bare)).is_some()
    };
    let words = hearing.text.split_whitespace();
    let (named, rest): (Vec<&str>, Vec<&str>) = words.partition(is_name);
    !named.is_empty() && hearing.desk.phrases.is("aid", "cry", &rest.join(" "))
}

/// Tells whether a report is empty, or of somebody locked in and nothing else: who works alone is the one, and what helps
/// others outside does not help them.
fn tells_at_most_of_one_trapped(entry: &Entry) -> bool {
    let mut rest = entry.clone();
    rest.faults.retain(|fault| *fault != Fault::PersonTrapped);
    rest.is_empty()
}

/// Tells whether an answer to the question whether all is well says that it is not: "no", "no im stuck".
fn denies_well(phrases: &Phrases, text: &str) -> bool {
    phrases.after("aid", "no", text).is_some() && !no_but_well(phrases, text)
}

/// Tells whether an answer opens with "no" and says that all is well: "nope all good", "no problem".
pub(super) fn no_but_well(phrases: &Phrases, text: &str) -> bool {
    let rest = phrases.after("aid", "no", text);
    rest.is_some_and(|rest| phrases.is("aid", "well", rest) || phrases.is("alone", "fine", rest))
}

/// Tells the dispatchers, and asks what is wrong. Of somebody whose clock as a lone worker runs it is an alarm.
pub(super) fn tell(
    hearing: &Hearing<'_>,
    call: &Call,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let me = &hearing.member.id;
    if let Some(clock) = hearing.desk.book.ahead().alone(me) {
        return alarm(hearing, call, clock, reply, records);
    }
    let mut told = false;
    for (to, voice) in other_dispatchers(hearing) {
        let mut args = vec![
            ("who", Arg::from(voice.person(me).into_owned())),
            ("quote", voice.quote(hearing.text.trim()).into()),
        ];
        let key = match &call.unit {
            Some(unit) => {
                args.push(("unit", unit.as_str().into()));
                "aid-asks-on"
            }
            None => "aid-asks",
        };
        let mut text = voice.say(key, &args);
        text.push_str(&written_late(hearing, &voice));
        reply
            .others
            .push(Outgoing::to(&to.id, text).of_level(Level::Warning));
        told = true;
    }
    let key = match told {
        true => "aid-told",
        false => "aid-nobody",
    };
    let line = reply.voice.word(key);
    reply.first.push(line);
    let line = reply.voice.word("aid-what");
    reply.first.push(line);
}

/// Says when a call for help was written that came in late; nothing of one that came in at once.
fn written_late(hearing: &Hearing<'_>, voice: &Voice<'_>) -> String {
    if !hearing.late() {
        return String::new();
    }
    let args = [("time", hearing.inbound.at.into())];
    format!(" {}", voice.say("aid-written", &args))
}

/// Raises the alarm about somebody who works alone and calls for help, to all who watch over them.
fn alarm(
    hearing: &Hearing<'_>,
    call: &Call,
    clock: &Alone,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let me = &hearing.member.id;
    let unit = clock.unit.as_ref().or(call.unit.as_ref());
    // there is no more to ask them, nor to wait for
    let now = Some(hearing.now);
    let alone = Alone {
        asked: clock.asked.or(now),
        alarmed: clock.alarmed.or(now),
        ..clock.clone()
    };
    let change = AheadChange::Alone {
        who: me.clone(),
        alone: Some(alone),
    };
    records.push(Record::Ahead {
        at: hearing.now,
        change,
    });
    let change = AlarmChange::Raised {
        key: alone_key(me),
        id: FindingId::CrewLateCheckIn,
        unit: unit.cloned(),
        level: Level::Danger,
    };
    records.push(Record::Alarm {
        at: hearing.now,
        change,
    });
    let place = place_told(hearing.desk, &hearing.fleet, unit, hearing.now);
    let mut names: Vec<String> = Vec::new();
    for (to, voice) in watchers(hearing) {
        names.push(to.name.clone());
        let place = match place.is_empty() {
            true => voice.word("speak-alone-nowhere"),
            false => place.join(", "),
        };
        let args = [
            ("signal", Arg::from(voice.word("signal-danger"))),
            ("who", voice.person(me).into_owned().into()),
            ("quote", voice.quote(hearing.text.trim()).into()),
            ("site", place.into()),
        ];
        let mut text = voice.say("aid-alone-told", &args);
        text.push_str(&written_late(hearing, &voice));
        let text = format!("{text}\n{}", voice.word("alarm-answer"));
        let letter = Outgoing::to(&to.id, text).of_level(Level::Danger);
        reply
            .others
            .push(letter.offering(vec![choices::got_it(&voice)]));
    }
    let line = match names.is_empty() {
        true => reply.voice.word("aid-nobody"),
        false => {
            let names = reply.voice.all_of(&names);
            reply.voice.say("aid-alone", &[("names", names.into())])
        }
    };
    reply.first.push(line);
    let line = reply.voice.word("aid-what");
    reply.first.push(line);
}
