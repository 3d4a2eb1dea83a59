//! What is still to be done before a trailer leaves, one step at a time, and whether it is ready to tow.

use super::super::answer::Reply;
use super::super::inbound::Outgoing;
use super::super::others::other_dispatchers;
use super::super::receive::Hearing;
use super::super::situate::Case;
use super::super::standing;
use super::stand::{BY_WORD, guards};
use crate::dialogue::{Round, Way};
use crate::finding::{Finding, FindingId, Level, TaskKind, Urgency};
use crate::heard::{Event, ReadingKey, UnitName};
use crate::reply::Arg;
use crate::rules;

/// What is filled, set or looked at on its stand. Repairs go with the trailer, and so does a regulator that it has.
const OF_THE_STAND: &[TaskKind] = &[
    TaskKind::Refill,
    TaskKind::Regulator,
    TaskKind::Filter,
    TaskKind::Heater,
    TaskKind::CheckIn,
];
/// What no pump gets out, % (common practice, no source).
const EMPTY_PCT: f64 = 5.0;

/// Asks what is still to be done before leaving; at the end says whether it is ready. False at the end. All that is open
/// is told at the start, and where it is `listed`.
pub(super) fn leave(
    hearing: &Hearing<'_>,
    case: &Case,
    round: &mut Round,
    listed: bool,
    reply: &mut Reply<'_>,
) -> bool {
    if case.situation().is_none() {
        return false;
    }
    let confirmed = [&round.confirmed[..], &by_word(reply, &case.unit)[..]].concat();
    let left = open_steps(hearing, case, &confirmed);
    let next = left
        .iter()
        .find(|code| !round.skipped.iter().any(|skipped| skipped == *code));
    if let Some(next) = next {
        let opens = round.step.is_empty() || listed;
        round.step = (*next).to_owned();
        let what = reply.voice.word(&format!("leave-{next}"));
        let answers = reply.voice.word("walk-answer-word");
        let what = format!("{what} {answers}");
        let args = [
            ("unit", Arg::from(case.unit.as_str())),
            ("count", Arg::Count(left.len() as i64)),
            ("what", what.into()),
        ];
        if opens {
            list_open(&left, None, &case.unit, "leave-open", reply);
        }
        reply.step = Some(reply.voice.say("leave-step", &args));
        reply.step_answers = match guards(next) {
            true => &["yes", "no"],
            false => &["yes", "no", "skip"],
        };
        return true;
    }
    let heavy = overweight(hearing, &case.unit);
    if left.is_empty() && heavy.is_none() {
        reply.say("leave-ready", &[("unit", case.unit.as_str().into())]);
        return false;
    }
    list_open(&left, heavy, &case.unit, "leave-not-ready", reply);
    let decided = standing::in_force(hearing, &case.unit, &reply.voice);
    reply.lines.extend(decided);
    false
}

/// Returns the steps of leaving that nobody told to be done, in their order. `confirmed` are those told in words that no
/// report holds.
pub(super) fn open_steps(
    hearing: &Hearing<'_>,
    case: &Case,
    confirmed: &[String],
) -> Vec<&'static str> {
    let Some(situation) = case.situation() else {
        return Vec::new();
    };
    let mut left = rules::leaving(&situation);
    let lights = left.iter().position(|code| *code == "lights-checked");
    left.insert(lights.unwrap_or(left.len()), "chocks");
    left.push("breakaway");
    // by whoever did it, in this message or before
    left.retain(|code| {
        !confirmed.iter().any(|done| done == code)
            && !standing::is_confirmed(hearing, &case.unit, code)
    });
    left
}

/// Says of a trailer that is gone which steps no report holds were never told: chocks, breakaway.
pub(super) fn tell_by_word(hearing: &Hearing<'_>, case: &Case, reply: &mut Reply<'_>) {
    let stood = case.situation().is_some_and(|it| rules::leaves_a_site(&it));
    let mut left = match stood {
        true => open_steps(hearing, case, &by_word(reply, &case.unit)),
        false => return,
    };
    left.retain(|code| BY_WORD.contains(code));
    if !left.is_empty() {
        list_open(&left, None, &case.unit, "leave-by-word", reply);
    }
}

/// Returns the steps that this message tells in words of a trailer.
fn by_word(reply: &Reply<'_>, unit: &UnitName) -> Vec<String> {
    let told = reply.confirmed.iter().filter(|(of, _)| of == unit);
    told.map(|(_, step)| step.clone()).collect()
}

/// Says by name all that is open, with what makes the trailer too heavy.
pub(super) fn list_open(
    left: &[&str],
    heavy: Option<Finding>,
    unit: &UnitName,
    says: &str,
    reply: &mut Reply<'_>,
) {
    let named = |code: &&str| reply.voice.word(&format!("value-{code}"));
    let mut names: Vec<String> = left.iter().map(named).collect();
    names.extend(heavy.map(|finding| reply.voice.name(finding.id, finding.level)));
    let what = reply.voice.all_of(&names);
    reply.say(
        says,
        &[("unit", unit.as_str().into()), ("what", what.into())],
    );
}

/// Ends the tasks that make no sense once a trailer goes, and asks about a pump-out that nobody told of.
/// `held` are trailers that are not let go.
pub(in crate::desk) fn end_tasks(
    hearing: &Hearing<'_>,
    cases: &[Case],
    held: &[UnitName],
    reply: &mut Reply<'_>,
) {
    for case in cases {
        let says = |event| case.report.events.contains(&event);
        let goes = says(Event::Hitched) || says(Event::Left) || case.leaves();
        let left = says(Event::Left) && !held.contains(&case.unit);
        let round = hearing.talk.round.as_ref();
        let round = round.is_some_and(|round| round.unit == case.unit && round.way == Way::Leaving);
        if !left && !goes && !round {
            continue;
        }
        let unit = case.unit.as_str();
        let level = case.report.readings.value(ReadingKey::WastePct);
        let empty = level.is_some_and(|pct| pct <= EMPTY_PCT) && !says(Event::WastePumped);
        if empty && held_waste(case) {
            reply.board.is_pumped(&case.unit);
            reply.say("leave-hauled", &[("unit", unit.into())]);
        }
        let truck = reply.board.tasks().open_task(&case.unit, TaskKind::PumpOut);
        let called = truck.filter(|task| left && task.called.is_some());
        if let Some(id) = called.map(|task| task.id) {
            let id = Arg::Count(i64::from(id));
            reply.say("leave-truck", &[("unit", unit.into()), ("id", id)]);
        }
        match left {
            true => {
                let has_one = case.before.when(Event::RegulatorFitted).is_some();
                let of_the_stand: Vec<TaskKind> = OF_THE_STAND
                    .iter()
                    .copied()
                    .filter(|kind| !(has_one && *kind == TaskKind::Regulator))
                    .collect();
                reply.board.leave(&case.unit, &of_the_stand);
            }
            false if says(Event::FreshDrained) => {
                reply.board.leave(&case.unit, &[TaskKind::Refill]);
            }
            false => {}
        }
    }
}

/// Holds back what a trailer would need if it stayed, where its crew tells how it is packed up: "water off" is a step done,
/// and no tank is to be filled for that. It still holds, and is listed; the road's own advice is said.
pub(in crate::desk) fn not_for_the_road(
    hearing: &Hearing<'_>,
    cases: &[Case],
    reply: &mut Reply<'_>,
) {
    const OF_A_STAY: &[FindingId] = &[
        FindingId::WaterFreshEndurance,
        FindingId::ColdTankHeaterOn,
        FindingId::PowerOnBattery,
    ];
    let round = hearing.talk.round.as_ref();
    let round = round.filter(|round| round.way == Way::Leaving);
    for case in cases {
        let packs = round.is_some_and(|round| round.unit == case.unit);
        let told = &case.report;
        if !packs || !told.readings.is_empty() || !told.faults.is_empty() {
            continue;
        }
        let waits = |finding: &Finding| {
            finding.unit.as_ref() == Some(&case.unit) && OF_A_STAY.contains(&finding.id)
        };
        let findings = std::mem::take(&mut reply.findings);
        let (held, rest): (Vec<_>, Vec<_>) = findings.into_iter().partition(waits);
        reply.findings = rest;
        reply.listed.extend(held);
    }
}

/// Tells the dispatchers that a trailer leaves although something stands that could hurt somebody on the road: waste
/// aboard, too heavy, a brake that is dead. What they decided themselves, or an order, needs no word.
pub(in crate::desk) fn tell_left_anyway(
    hearing: &Hearing<'_>,
    cases: &[Case],
    reply: &mut Reply<'_>,
) {
    for case in cases {
        let left = case.report.events.contains(&Event::Left);
        let decided = standing::is_ordered(hearing, &case.unit)
            || standing::in_force(hearing, &case.unit, &reply.voice).is_some();
        let of_it = |finding: &&Finding| {
            finding.id.topic() == "tow" && finding.unit.as_ref() == Some(&case.unit)
        };
        let open: Vec<&Finding> = reply.findings.iter().filter(of_it).collect();
        let grave = open.iter().any(|finding| finding.level >= Level::Warning);
        if !left || !grave || decided || hearing.inbound.replaces.is_some() {
            continue;
        }
        let me = &hearing.member.id;
        let mut letters = Vec::new();
        for (to, voice) in other_dispatchers(hearing) {
            let names: Vec<String> = open.iter().map(|found| voice.name_of(found)).collect();
            let args = [
                ("signal", voice.word("signal-warning").into()),
                ("unit", Arg::from(case.unit.as_str())),
                ("who", voice.person(me).into_owned().into()),
                ("what", voice.all_of(&names).into()),
            ];
            let text = voice.say("left-anyway", &args);
            letters.push(Outgoing::to(&to.id, text).of_level(Level::Warning));
        }
        reply.others.append(&mut letters);
    }
}

/// Tells whether the last reading before this message said that waste was aboard, with no pump-out since.
fn held_waste(case: &Case) -> bool {
    let last = case.before.waste_reads().last().copied();
    let pumped = case.before.last_pumped().map(|(at, _)| at);
    last.is_some_and(|(at, pct)| pct > EMPTY_PCT && pumped.is_none_or(|pumped| pumped < at))
}

/// Returns the finding that the trailer is too heavy, where it holds.
pub(super) fn overweight(hearing: &Hearing<'_>, unit: &UnitName) -> Option<Finding> {
    let case = hearing.asked_about(unit);
    let grave = |finding: &Finding| {
        finding.id == FindingId::TowOverweight
            && finding.level >= Level::Warning
            && finding.urgency == Urgency::Now
    };
    case.findings().into_iter().find(grave)
}
