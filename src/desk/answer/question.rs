//! A question gets its answer first, in a line or two; what else stands on the trailer follows by name.
//!
//! The findings that hold are all listed with the turn, whether they are told in full or not.

use super::reply::Reply;
use super::topic::Question;
use super::{
    case_of, cords, freezing, is_ok, plan_ahead, pressure, ready, sought, tank_lasts, tell,
    unsafe_now, whole,
};
use crate::desk::receive::Hearing;
use crate::desk::repeat;
use crate::desk::settle::Settled;
use crate::desk::situate::Case;
use crate::desk::standing;
use crate::finding::{Caution, Finding, FindingId, Level, TaskKind, Urgency};
use crate::fleet::Role;
use crate::heard::UnitName;
use crate::reply::Arg;

/// How many more things to do are named after the first.
const THEN: usize = 4;
/// How many findings are named that stand beside an answer.
const BESIDE: usize = 3;

/// Answers a question about something that the word file knows.
pub(super) fn answer(
    hearing: &Hearing<'_>,
    settled: &Settled,
    question: &Question,
    unit: Option<UnitName>,
    reply: &mut Reply<'_>,
) {
    // "how many guests can 12 take": no hour and no count
    let unit = match question.topic.as_str() {
        "guests-taken" => whole::asked_of(hearing),
        _ => unit,
    };
    let case = unit.map(|unit| case_of(hearing, settled, &unit));
    if let Some(case) = &case {
        reply.foresee(case);
    }
    if !question.cautions.is_empty() {
        let key = format!("answer-{}", question.topic);
        let line = reply.voice.word(&key);
        reply.first.push(line);
        warn(&question.cautions, reply);
        if let Some(case) = case.filter(|_| settled.reports.is_empty()) {
            beside(hearing, &case, reply, &[]);
        }
        return;
    }
    let topic = question.topic.as_str();
    if topic.starts_with("card-") {
        let unit = case.as_ref().map(|case| &case.unit);
        return standing::answer_card(hearing, topic, unit, reply);
    }
    let Some(case) = case else {
        match topic {
            "truck" => sought::every_truck(hearing, reply),
            "what-if" => reply.first.push(reply.voice.word("answer-cannot")),
            // without a trailer in mind the usual limits are as good an answer as any
            "is-ok" | "set-regulator" | "regulator" if is_ok::in_general(hearing, topic, reply) => {
            }
            _ if reply.asks.is_none() => reply.asks = Some(hearing.which_unit()),
            _ => {}
        }
        return;
    };
    // a dispatcher who names none means the trucks that come
    let called = |on: &UnitName| {
        let task = hearing.desk.book.tasks().open_task(on, TaskKind::PumpOut);
        task.is_some_and(|task| task.called.is_some())
    };
    let unnamed = topic == "truck" && hearing.names().is_empty() && !called(&case.unit);
    let mut others = hearing.desk.book.tasks().open();
    if unnamed
        && hearing.member.role == Role::Dispatcher
        && others.any(|task| task.kind == TaskKind::PumpOut && task.called.is_some())
    {
        return sought::every_truck(hearing, reply);
    }
    let reckons = ["waste", "fresh", "battery", "pump-out", "truck-latest"].contains(&topic);
    if reckons
        && hearing
            .desk
            .phrases
            .holds("asked-value", "supposes", hearing.text)
    {
        let line = reply.voice.word("answer-without-if");
        reply.first.push(line);
    }
    let covered = match topic {
        "more" => return tell::all_of_it(hearing, &case, reply),
        "next" => return next(hearing, &case, reply),
        "truck" => sought::truck(&case, reply),
        "pumped" => sought::pumped(&case, reply),
        "pump-out" => tank_lasts::lasts(hearing, &case, reply),
        "card" => {
            standing::card_asked(hearing, &case, reply);
            return;
        }
        "truck-latest" => tank_lasts::truck_latest(&case, reply),
        "what-if" => tank_lasts::what_if(hearing, &case, reply),
        "waste" | "fresh" | "battery" => sought::level(topic, &case, reply),
        "pressure" | "temperature" | "volts" => sought::reading(topic, &case, reply),
        "is-ok" => is_ok::is_ok(hearing, &case, reply),
        "regulator" => pressure::regulator(&case, reply),
        "set-regulator" => pressure::set_regulator(&case, reply),
        "heater" => freezing::heater(&case, reply),
        "drain" => freezing::drain(&case, reply),
        "freeze" => freezing::freeze(&case, reply),
        "cords" => cords::cords(&case, reply),
        "tow" => ready::tow(hearing, &case, reply),
        "open" => ready::open(&case, reply),
        "generator-size" => plan_ahead::generator(hearing, &case, reply),
        "guests-taken" => {
            plan_ahead::guests_taken(&case, reply);
            Vec::new()
        }
        "back-in" => unsafe_now::back_in(&case, reply),
        "no-regulator" => unsafe_now::no_regulator(hearing, &case, reply),
        _ => Vec::new(),
    };
    beside(hearing, &case, reply, &covered);
}

/// Says cautions under the answer they belong to, each once.
pub(super) fn warn(cautions: &[Caution], reply: &mut Reply<'_>) {
    for caution in cautions {
        let line = format!("  {}", reply.voice.caution(*caution));
        if !reply.first.contains(&line) {
            reply.first.push(line);
        }
    }
}

/// What now: the worst in full with its cautions, then a short list of what to do, in order.
fn next(hearing: &Hearing<'_>, case: &Case, reply: &mut Reply<'_>) {
    let mut findings = case.findings();
    findings.sort_by_key(|finding| (finding.order(), finding.id));
    let unit = ("unit", Arg::from(case.unit.as_str()));
    let Some(first) = findings.first() else {
        let key = match case.now.last_word {
            Some(_) => "answer-next-none",
            None => "answer-no-word",
        };
        reply.say(key, &[unit]);
        beside(hearing, case, reply, &[]);
        return;
    };
    let grave = first.level == Level::Danger;
    let (full, rest): (Vec<Finding>, Vec<Finding>) =
        findings.clone().into_iter().partition(|finding| {
            if grave {
                finding.level == Level::Danger
            } else {
                finding.id == first.id
            }
        });
    reply.findings.extend(full);
    let steps: Vec<String> = rest
        .iter()
        .filter(|finding| finding.urgency != Urgency::Plan || finding.level > Level::Notice)
        .map(|finding| to_do(finding, reply))
        .take(THEN)
        .collect();
    if !steps.is_empty() {
        reply.say("answer-then", &[]);
        reply.lines.extend(numbered(&steps));
    }
    if !rest.is_empty() {
        reply.say("answer-more", &[unit]);
    }
    reply.beside.extend(rest);
}

/// Says in a few words what a finding asks for; its name where it has no such words.
pub(super) fn to_do(finding: &Finding, reply: &Reply<'_>) -> String {
    let key = format!("do-{}", finding.id.code().replace('.', "-"));
    if reply.voice.knows(&key) {
        reply.voice.word(&key)
    } else {
        reply.voice.name(finding.id, finding.level)
    }
}

/// Numbers steps, each on a line of its own.
pub(super) fn numbered(steps: &[String]) -> impl Iterator<Item = String> {
    steps
        .iter()
        .enumerate()
        .map(|(place, step)| format!("  {}. {step}", place + 1))
}

/// Adds what stands on a trailer beside an answer: what could kill in full, a warning in full unless this person was told
/// lately, the rest by name. What the answer itself covers is not named again.
pub(super) fn beside(
    hearing: &Hearing<'_>,
    case: &Case,
    reply: &mut Reply<'_>,
    covered: &[FindingId],
) {
    let mut rest: Vec<String> = Vec::new();
    for finding in case.findings() {
        let known = |other: &Finding| other.id == finding.id && other.unit == finding.unit;
        if reply.findings.iter().any(known) {
            continue;
        }
        let told = repeat::told_lately(&finding, &hearing.talk, hearing.now);
        if finding.level == Level::Danger || finding.level == Level::Warning && !told {
            reply.findings.push(finding);
            continue;
        }
        let can_wait = finding.urgency == Urgency::Plan && finding.level == Level::Notice;
        if !can_wait && !covered.contains(&finding.id) {
            rest.push(reply.name(&finding));
        }
        reply.beside.push(finding);
    }
    if rest.is_empty() {
        return;
    }
    rest.truncate(BESIDE);
    let args = [
        ("unit", Arg::from(case.unit.as_str())),
        ("names", rest.join("; ").into()),
    ];
    reply.say("answer-beside", &args);
}

/// How a unit is, asked in passing: what this person was told lately goes by name.
pub(super) fn in_passing(hearing: &Hearing<'_>, case: &Case, reply: &mut Reply<'_>) {
    let mut leads = false;
    let mut rest: Vec<String> = Vec::new();
    for finding in case.findings() {
        let known = |other: &Finding| other.id == finding.id && other.unit == finding.unit;
        if reply.findings.iter().any(known) {
            continue;
        }
        if finding.level < Level::Danger
            && repeat::told_lately(&finding, &hearing.talk, hearing.now)
        {
            // the worst comes first, even where it goes by its name
            leads |= reply.findings.is_empty();
            rest.push(reply.name(&finding));
            reply.beside.push(finding);
        } else {
            reply.findings.push(finding);
        }
    }
    leads &= !reply.findings.is_empty();
    tell::how_it_stands(case, reply);
    let args = [
        ("unit", Arg::from(case.unit.as_str())),
        ("names", rest.join("; ").into()),
    ];
    if leads {
        let line = reply.voice.say("still", &args);
        reply.first.push(line);
    } else if !rest.is_empty() {
        reply.say("answer-beside", &args);
    }
}

/// Tells whether a finding stands in the way of opening: somebody could get hurt, or it is to be done now.
pub(super) fn presses(finding: &Finding) -> bool {
    finding.level >= Level::Warning
        || finding.urgency == Urgency::Now && finding.id != FindingId::ColdCrewCold
}
