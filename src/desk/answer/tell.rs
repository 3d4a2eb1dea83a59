//! How a unit stands, what was reported on it, what is coming, which tasks are open.

use super::plan_ahead;
use super::reply::Reply;
use crate::book::Task;
use crate::desk::phrases::plain;
use crate::desk::receive::Hearing;
use crate::desk::situate::Case;
use crate::desk::standing;
use crate::desk::{relay, settle};
use crate::dialogue::More;
use crate::finding::Finding;
use crate::fleet::CrewMember;
use crate::heard::{Plan, PlanKind, UnitName};
use crate::reply::{Past, Status};

/// How many reports a history tells.
const HISTORY_LINES: usize = 8;

/// How many lines a phone shows of a reply at once.
const SCREEN: usize = 14;

/// Tells all of a trailer, a screen at a time: what is found, the worst first, then how it stands.
pub(super) fn all_of_it(hearing: &Hearing<'_>, case: &Case, reply: &mut Reply<'_>) {
    let told = hearing.talk.more.as_ref();
    let told = told.filter(|more| more.unit == case.unit);
    let told = told.map_or(0, |more| more.told);
    let mut findings = case.findings();
    findings.sort_by_key(|finding| (finding.order(), finding.id));
    if told == 0 {
        let decided = standing::in_force(hearing, &case.unit, &reply.voice);
        reply.lines.extend(decided);
    }
    let voice = reply.voice;
    let mut lines = 0;
    let mut fits = |finding: &Finding| {
        lines += voice.finding(finding, false).lines().count();
        lines <= SCREEN
    };
    let rest = &findings[told.min(findings.len())..];
    // one is told however long it is
    let shown = rest.iter().take_while(|finding| fits(finding)).count();
    let shown = shown.max(rest.len().min(1));
    let end = told + shown;
    reply.findings.extend_from_slice(&rest[..shown]);
    let untold = findings
        .iter()
        .take(told)
        .chain(&findings[end.min(findings.len())..]);
    reply.beside.extend(untold.cloned());
    if end < findings.len() || lines > SCREEN / 2 && shown > 0 {
        let unit = case.unit.clone();
        reply.say("more-left", &[("unit", unit.as_str().into())]);
        reply.more = Some(More { unit, told: end });
    } else {
        how_it_stands(case, reply);
    }
}

/// Where it is, its last readings, what is wrong and what is coming, its tasks.
pub(super) fn how_it_stands(case: &Case, reply: &mut Reply<'_>) {
    let place = case.place();
    let text = reply.voice.status(&Status {
        unit: &case.unit,
        site: place.as_deref(),
        state: &case.now,
        spec: case.spec(),
        outlook: Some(&case.outlook),
        tasks: reply.board.tasks().open_on(&case.unit).collect(),
    });
    reply.lines.push(text);
}

pub(super) fn history(hearing: &Hearing<'_>, case: &Case, reply: &mut Reply<'_>) {
    let kept = hearing.desk.book.unit(&case.unit).into_iter();
    let mut past: Vec<Past<'_>> = kept
        .flat_map(|kept| kept.reports())
        // a word about a truck reports nothing of the trailer
        .filter(|(.., entry)| !entry.is_empty())
        .map(|(at, from, entry)| Past { at, from, entry })
        .collect();
    past.drain(..past.len().saturating_sub(HISTORY_LINES));
    let text = reply.voice.history(&case.unit, past, case.spec());
    reply.lines.push(text);
}

pub(super) fn forecast(hearing: &Hearing<'_>, case: &Case, reply: &mut Reply<'_>) {
    let unit = case.unit.as_str();
    let over = case.job().is_none_or(|job| job.to <= hearing.now);
    if over && plan_ahead::next_job(hearing, &case.unit, reply) {
        return;
    }
    if case.job().is_none() {
        reply.say("forecast-no-job", &[("unit", unit.into())]);
        return;
    }
    let text = reply.voice.forecast(&case.outlook);
    reply.say("forecast-of", &[("unit", unit.into())]);
    reply.lines.push(text);
    let pump_outs: Vec<Task> = reply
        .board
        .tasks()
        .open_on(&case.unit)
        .filter(|task| task.kind == crate::finding::TaskKind::PumpOut)
        .cloned()
        .collect();
    for task in &pump_outs {
        let line = reply.voice.task(task);
        reply.lines.push(line);
    }
}

/// Whose tasks are asked for.
enum Whose<'a> {
    All,
    Of(&'a CrewMember),
    On(UnitName),
    /// A name that nobody has.
    Unknown(&'a str),
}

/// Lists the open tasks: all of them, the sender's own, those of the person or the trailer that is named.
pub(super) fn tasks(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    let whose = whose(hearing);
    if let Whose::Unknown(name) = whose {
        return relay::unknown(hearing, name, "tasks-who", reply);
    }
    reply.every_task = true;
    let of_them = |task: &&Task| match &whose {
        Whose::Of(member) => task.taken_by.as_ref() == Some(&member.id),
        Whose::On(unit) => task.unit.as_ref() == Some(unit),
        _ => true,
    };
    let open: Vec<&Task> = hearing.desk.book.tasks().open().filter(of_them).collect();
    match whose {
        Whose::Of(member) if open.is_empty() && member.id == hearing.member.id => {
            reply.say("tasks-none-mine", &[]);
        }
        Whose::Of(member) if open.is_empty() => {
            reply.say("tasks-none-of", &[("who", member.name.as_str().into())]);
        }
        Whose::On(unit) if open.is_empty() => {
            reply.say("tasks-none-on", &[("unit", unit.as_str().into())]);
        }
        _ => {
            let text = reply.voice.tasks(open);
            reply.lines.push(text);
        }
    }
}

fn whose<'a>(hearing: &'a Hearing<'_>) -> Whose<'a> {
    let phrases = &hearing.desk.phrases;
    let mine = |plan: &Plan| plan.kind == PlanKind::Mine;
    if hearing.heard.plans.iter().any(mine) || phrases.holds("tasks", "mine", hearing.text) {
        return Whose::Of(hearing.member);
    }
    if let Some(member) = person_named(hearing) {
        return Whose::Of(member);
    }
    let Some(rest) = phrases.following("tasks", "of", hearing.text) else {
        return Whose::All;
    };
    let end = rest.find(|c: char| !(c.is_alphanumeric() || c == '-'));
    let name = &rest[..end.unwrap_or(rest.len())];
    match settle::known(&hearing.fleet, &UnitName::new(name)) {
        Some(unit) => Whose::On(unit.clone()),
        None if name.is_empty() || phrases.is("tasks", "everybody", rest) => Whose::All,
        None => Whose::Unknown(name),
    }
}

/// Finds the person of the crew whom a message names: "tasks for Juno", "tareas de Lupe", "juno's tasks".
pub(in crate::desk) fn person_named<'a>(hearing: &'a Hearing<'_>) -> Option<&'a CrewMember> {
    let text = plain(hearing.text);
    let says = |name: &str| {
        let name = plain(name);
        let words = format!(" {text} ");
        !name.is_empty()
            && (words.contains(&format!(" {name} ")) || words.contains(&format!(" {name}s ")))
    };
    let crew = hearing.fleet.crew.values();
    let mut named = crew.filter(|member| says(&member.id) || says(&member.name));
    named.next()
}
