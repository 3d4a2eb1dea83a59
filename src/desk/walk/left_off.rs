//! A breaker or a GFCI that was left to an electrician: it is not reset any more, and that it holds for once ends nothing.

use super::super::answer::Reply;
use super::super::receive::Hearing;
use super::super::settle;
use super::said::is_trip;
use crate::finding::{Caution, TaskKind};
use crate::heard::{Ask, Fault, UnitName};

/// Tells whether an electrician is called to a trailer, and so to a trip that stands there already.
pub(super) fn waits_for_one(hearing: &Hearing<'_>, unit: &UnitName) -> bool {
    let tasks = hearing.desk.book.tasks();
    tasks.open_task(unit, TaskKind::Electrician).is_some()
}

/// Answers who writes that it holds now, or was reset once more, with no check open: it stays off until it was looked at.
pub(super) fn tell(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    let heard = &hearing.heard;
    let answers = &hearing.desk.answers;
    let holds = answers.holds(hearing.text) == Some(true);
    let reset = answers.resets_told(hearing.text) > 0;
    let asks = !matches!(heard.ask, None | Some(Ask::Status { .. }));
    if !(holds || reset) || asks || heard.command.is_some() {
        return;
    }
    let named = heard.named.first();
    let meant = named.or_else(|| hearing.talk.unit_at(hearing.inbound.at));
    let Some(unit) = meant.and_then(|name| settle::known(&hearing.fleet, name)) else {
        return;
    };
    let kept = hearing.desk.book.unit(unit);
    let mut trips = Fault::ALL.iter().filter(|fault| is_trip(**fault));
    let stands = kept.is_some_and(|kept| trips.any(|fault| kept.state().has(*fault)));
    // that it trips again was answered
    if !stands || !waits_for_one(hearing, unit) || !reply.findings.is_empty() {
        return;
    }
    if holds {
        return reply.say("walk-left-off", &[("unit", unit.as_str().into())]);
    }
    reply.say("walk-reset-again", &[("unit", unit.as_str().into())]);
    for caution in [Caution::TwoResets, Caution::Electrician] {
        reply
            .lines
            .push(format!("  {}", reply.voice.caution(caution)));
    }
}
