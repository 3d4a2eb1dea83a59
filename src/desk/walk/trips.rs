//! One thing told by the name of another: a trip that names no device, a shocked person who is dizzy, somebody locked in
//! who "has left".

use super::super::receive::Hearing;
use super::super::settle::Settled;
use super::said::is_trip;
use super::take::EMPTY_PCT;
use crate::dialogue::Check;
use crate::heard::{Entry, Event, Fault, ReadingKey};

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

/// Takes what was unplugged to find a trip for the test that it is, and not for the trailer's power or its heaters.
pub(super) fn unplugged_for_the_test(hearing: &Hearing<'_>, settled: &mut Settled, check: &Check) {
    let answers = &hearing.desk.answers;
    let tests = is_trip(check.fault) && answers.says("trip", "unplugged", hearing.text);
    if !tests || answers.says("trip", "power", hearing.text) {
        return;
    }
    let off = [Event::PowerOff, Event::HeaterOff];
    settled.amend(&check.unit, |entry| {
        entry.events.retain(|event| !off.contains(event));
    });
}

/// Takes plugs that are said to be in for that, where power is what is missing: it is not back by it.
pub(super) fn plugged_in_alone(hearing: &Hearing<'_>, settled: &mut Settled, check: &Check) {
    let answers = &hearing.desk.answers;
    let of_power = check.fault == Fault::NoPower || is_trip(check.fault);
    let plugs = of_power && answers.says("trip", "plugged-in", hearing.text);
    if !plugs || answers.says("trip", "power", hearing.text) {
        return;
    }
    settled.amend(&check.unit, |entry| {
        entry.events.retain(|event| *event != Event::PowerOn);
    });
}

/// Takes a yes to a smell, strong, gone or felt in the head, for gas in the air, unless somebody is said to be ill of it.
pub(super) fn smelled_alone(hearing: &Hearing<'_>, settled: &mut Settled, check: &Check) {
    let says = |list| hearing.desk.answers.says("strong", list, hearing.text);
    if check.fault != Fault::Odor || says("ill") && !says("nobody") {
        return;
    }
    for (unit, _, entry) in &mut settled.reports {
        if *unit == check.unit {
            stand_for(entry, Fault::GasIllness, Fault::GasSmell);
        }
    }
}

/// Takes what is told of "the tank" of a pump that runs on for the fresh one, which was asked for, and air in the pump for
/// that tank's being empty.
pub(super) fn of_the_pump(hearing: &Hearing<'_>, settled: &mut Settled, check: &Check) {
    let says = |list| hearing.desk.answers.says("pump", list, hearing.text);
    let asked = check.fault == Fault::PumpRunning && check.step == 0 && !check.mending;
    // "tank's full" of a water heater: that of the heater
    if check.fault == Fault::NoHotWater && hearing.heard.named.is_empty() && !says("waste") {
        settled.amend(&check.unit, |entry| {
            entry.readings.values.remove(&ReadingKey::WastePct);
        });
        return;
    }
    let dry = matches!(
        check.fault,
        Fault::NoWater | Fault::LowFlow | Fault::PumpDead
    );
    if !(asked || dry) || !hearing.heard.named.is_empty() {
        return;
    }
    let mut told = settled.reports.iter_mut();
    let Some((.., entry)) = told.find(|(unit, ..)| *unit == check.unit) else {
        return;
    };
    if says("air") {
        entry.faults.retain(|fault| *fault != Fault::NoWater);
    }
    let readings = &mut entry.readings;
    let waste = readings.value(ReadingKey::WastePct);
    let meant = |level: &f64| !says("waste") && (asked || *level <= EMPTY_PCT);
    if let Some(level) = waste.filter(meant)
        && readings.value(ReadingKey::FreshPct).is_none()
    {
        readings.values.remove(&ReadingKey::WastePct);
        readings.set(ReadingKey::FreshPct, level);
    }
    settled.reports.retain(|(.., entry)| !entry.is_empty());
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
