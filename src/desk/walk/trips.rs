//! One thing told by the name of another: a trip that names no device, a shocked person who is dizzy, somebody locked in
//! who "has left".

use super::super::receive::Hearing;
use super::super::settle::Settled;
use crate::dialogue::Check;
use crate::heard::{Entry, Event, Fault};

/// Takes a trip that names no device for that of the GFCI, where the GFCI is what trips on the trailer; in the check of a
/// breaker for that of the breaker.
pub(super) fn same_trip(hearing: &Hearing<'_>, settled: &mut Settled) {
    let names = |list| hearing.desk.answers.says("trip", list, hearing.text);
    let (gfci, breaker) = (names("gfci"), names("breaker"));
    for (unit, _, entry) in &mut settled.reports {
        let Some(kept) = hearing.desk.book.unit(unit) else {
            continue;
        };
        let trips = |fault| kept.state().has(fault);
        let (other, mine) = match (trips(Fault::GfciTrip), trips(Fault::BreakerTrip)) {
            (true, false) if !breaker => (Fault::BreakerTrip, Fault::GfciTrip),
            (false, true) if !gfci => (Fault::GfciTrip, Fault::BreakerTrip),
            _ => continue,
        };
        stand_for(entry, other, mine);
    }
}

/// Takes a shocked person who is dizzy for a hurt one, unless the message names gas.
pub(super) fn dizzy_from_a_shock(hearing: &Hearing<'_>, settled: &mut Settled, check: &Check) {
    let gas = || hearing.desk.answers.says("shock", "gas", hearing.text);
    if check.fault != Fault::Shock || gas() {
        return;
    }
    for (unit, _, entry) in &mut settled.reports {
        if *unit == check.unit {
            stand_for(entry, Fault::GasIllness, Fault::PersonHurt);
        }
    }
}

/// Takes "has left" for somebody locked in who is out: "ya salió". Nobody tows a trailer with a person in it.
pub(super) fn locked_in_is_out(hearing: &Hearing<'_>, settled: &mut Settled) {
    for (unit, _, entry) in &mut settled.reports {
        let kept = hearing.desk.book.unit(unit);
        let locked_in = kept.is_some_and(|kept| kept.state().has(Fault::PersonTrapped));
        if locked_in && entry.events.contains(&Event::Left) {
            entry.events.retain(|event| *event != Event::Left);
            entry.cleared.push(Fault::PersonTrapped);
        }
    }
}

/// Puts a fault in the place of another.
fn stand_for(entry: &mut Entry, other: Fault, mine: Fault) {
    if entry.faults.contains(&other) {
        entry
            .faults
            .retain(|fault| *fault != other && *fault != mine);
        entry.faults.push(mine);
    }
}
