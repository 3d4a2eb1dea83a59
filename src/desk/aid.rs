//! Somebody who calls for help and does not say what for: "need help on 12". The dispatchers hear of it at once, and what
//! is wrong is asked.

use super::answer::Reply;
use super::inbound::Outgoing;
use super::others::other_dispatchers;
use super::receive::Hearing;
use super::settle;
use crate::finding::Level;
use crate::heard::{Entry, UnitName};
use crate::reply::Arg;

/// A longer message says what is wrong, or asks for something else.
const LONGEST: usize = 9;

/// A call for help.
pub(super) struct Call {
    /// The trailer it is for, where that is known.
    unit: Option<UnitName>,
}

/// Finds a call for help in a message that reports nothing: what is reported is answered by itself.
pub(super) fn said(hearing: &Hearing<'_>) -> Option<Call> {
    let says = |list| hearing.desk.phrases.holds("aid", list, hearing.text);
    let heard = &hearing.heard;
    let reports = heard.entries.iter().any(|entry| !Entry::is_empty(entry));
    let long = hearing.text.split_whitespace().count() > LONGEST;
    let beside = heard.command.is_some() || hearing.late() || hearing.inbound.replaces.is_some();
    if reports || long || beside || !says("says") || says("not") {
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

/// Tells the dispatchers, and asks what is wrong.
pub(super) fn tell(hearing: &Hearing<'_>, call: &Call, reply: &mut Reply<'_>) {
    let me = &hearing.member.id;
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
        let text = voice.say(key, &args);
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
