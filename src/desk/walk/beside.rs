//! What a message at a step reports beside its answer, and what it means as the answer alone.

use super::super::receive::Hearing;
use super::super::settle::Settled;
use super::phrase::Phrases;
use super::said::Said;
use super::take::{EMPTY_STEP, names_its_unit};
use crate::dialogue::Check;
use crate::heard::{Event, Fault, ReadingKey};
use crate::rules::{Asks, Sought, Step};

/// Takes faults and readings out of the reports that are told by the very words of the answer: "no power in that room" where
/// it is asked whether the circuit is live, "no meter". A danger is never taken out, nor what is told beside the answer.
pub(super) fn only_the_answer(
    hearing: &Hearing<'_>,
    settled: &mut Settled,
    check: &Check,
    step: &Step,
) {
    let answers = &hearing.desk.answers;
    let beyond = answers.beyond(check, step, hearing.text);
    let Some(beyond) = beyond.filter(|_| hearing.heard.named.is_empty()) else {
        return;
    };
    let heard = hearing
        .desk
        .reader
        .hear(&beyond, hearing.fleet.style.temperature);
    let told_beside = |fault: &Fault| heard.entries.iter().any(|e| e.faults.contains(fault));
    let read_beside = |key| {
        heard
            .entries
            .iter()
            .any(|e| e.readings.value(key).is_some())
    };
    let level = step.key == EMPTY_STEP;
    let reads = (level || matches!(step.asks, Asks::For { .. })) && !check.mending;
    settled.amend(&check.unit, |entry| {
        entry.faults.retain(|fault| {
            // what is told again still stands, but "bone dry" where a level is asked for is that level
            let stands = !reads && *fault == check.fault;
            stands || Fault::DANGERS.contains(fault) || told_beside(fault)
        });
        // "only the 12 volt stuff" reads no battery
        entry
            .readings
            .values
            .retain(|key, _| reads || read_beside(*key));
    });
}

/// Takes volts at an outlet for those of the mains: none there is no flat battery.
pub(super) fn of_the_outlet(
    hearing: &Hearing<'_>,
    settled: &mut Settled,
    check: &Check,
    step: &Step,
) {
    let mains = matches!(
        step.asks,
        Asks::For {
            what: Sought::Reading(ReadingKey::Volts),
            ..
        }
    );
    let battery = hearing
        .desk
        .answers
        .says("step-battery-switch", "beside", hearing.text);
    if !mains || check.mending || battery || names_its_unit(hearing) {
        return;
    }
    settled.amend(&check.unit, |entry| {
        if let Some(volts) = entry.readings.values.remove(&ReadingKey::BatteryV) {
            entry.readings.set(ReadingKey::Volts, volts);
        }
    });
}

/// Takes out of the reports that the fault is over, where others are said to work: "the other lights work".
pub(super) fn not_of_others(hearing: &Hearing<'_>, settled: &mut Settled, check: &Check) {
    let words = Phrases::of(hearing.text);
    if !hearing.desk.answers.any(&words, "others") {
        return;
    }
    settled.amend(&check.unit, |entry| {
        entry.cleared.retain(|fault| *fault != check.fault);
    });
}

/// Takes out of the reports that something is over which was never wrong: "sensor looks ok" answers a step.
pub(super) fn never_wrong(hearing: &Hearing<'_>, settled: &mut Settled, check: &Check) {
    if names_its_unit(hearing) {
        return;
    }
    let kept = hearing.desk.book.unit(&check.unit);
    let stood = |fault: &Fault| kept.is_some_and(|kept| kept.state().has(*fault));
    settled.amend(&check.unit, |entry| entry.cleared.retain(stood));
}

/// Takes fixes out of the reports that the answer does not tell of: "the other lights work", "the ac is fine" of an AC that
/// was never bad.
pub(super) fn keep_what_stands(
    hearing: &Hearing<'_>,
    settled: &mut Settled,
    check: &Check,
    all: &[(u32, Said)],
) {
    let mended = all.iter().any(|(_, said)| *said == Said::Mended);
    let kept = hearing.desk.book.unit(&check.unit);
    let stood = |fault: &Fault| kept.is_some_and(|kept| kept.state().has(*fault));
    settled.amend(&check.unit, |entry| {
        let told = |fault: &Fault| stood(fault) && (mended || *fault != check.fault);
        entry.cleared.retain(told);
    });
}

/// Keeps a load that was taken off for the test from being reported as switched off: it stays off.
pub(super) fn stays_off(settled: &mut Settled, check: &Check) {
    settled.amend(&check.unit, |entry| {
        entry.events.retain(|event| *event != Event::HeaterOff);
    });
}
