//! A breaker or a GFCI that was left to an electrician: it is not reset any more, and that it holds for once ends nothing.

use super::super::answer::Reply;
use super::super::receive::Hearing;
use super::super::settle;
use super::said::is_trip;
use crate::finding::TaskKind;
use crate::heard::{Ask, Fault, UnitName};

/// Tells whether an electrician is called to a trailer, and so to a trip that stands there already.
pub(super) fn waits_for_one(hearing: &Hearing<'_>, unit: &UnitName) -> bool {
    let tasks = hearing.desk.book.tasks();
    tasks.open_task(unit, TaskKind::Electrician).is_some()
}

/// Answers who writes that it holds now, with no check open: it stays off until it was looked at.
pub(super) fn tell(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    let heard = &hearing.heard;
    let holds = hearing.desk.answers.holds(hearing.text) == Some(true);
    let asks = !matches!(heard.ask, None | Some(Ask::Status { .. }));
    if !holds || asks || heard.command.is_some() {
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
    if stands && waits_for_one(hearing, unit) {
        reply.say("walk-left-off", &[("unit", unit.as_str().into())]);
    }
}
