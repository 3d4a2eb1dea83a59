//! What somebody wants to know of a trailer: how full, how long, how much, and when the truck comes.

use super::reply::Reply;
use crate::book::Task;
use crate::desk::receive::Hearing;
use crate::desk::situate::Case;
use crate::finding::{FindingId, TaskKind};
use crate::heard::ReadingKey;
use crate::quantity::Measure;
use crate::reply::Arg;

/// How full a tank is, or how long the battery lasts, with when it was read.
pub(super) fn level(what: &str, case: &Case, reply: &mut Reply<'_>) -> Vec<FindingId> {
    let unit = ("unit", Arg::from(case.unit.as_str()));
    let (keys, covered): (&[ReadingKey], &[FindingId]) = match what {
        "waste" => (
            &[ReadingKey::WastePct, ReadingKey::WasteGal],
            &[FindingId::WasteBookPumpOut, FindingId::WasteCloseNow],
        ),
        "fresh" => (
            &[ReadingKey::FreshPct, ReadingKey::FreshGal],
            &[FindingId::WaterFreshEndurance],
        ),
        _ => (
            &[ReadingKey::BatteryV, ReadingKey::BatteryPct],
            &[FindingId::PowerOnBattery, FindingId::PowerBatteryLow],
        ),
    };
    let read = keys
        .iter()
        .filter_map(|key| Some((*key, case.now.readings.get(key)?)))
        .max_by_key(|(_, latest)| latest.at);
    let waste_now = case
        .outlook
        .waste
        .as_ref()
        .filter(|_| what == "waste")
        .map(|waste| waste.likely_pct);
    let line = match (read, waste_now) {
        (Some((key, latest)), _) if latest.at >= case.at => {
            let read = reply.voice.reading(key, latest.value, case.spec());
            reply
                .voice
                .say("answer-level-now", &[unit, ("read", read.into())])
        }
        (Some((key, latest)), Some(now)) => {
            let read = reply.voice.reading(key, latest.value, case.spec());
            let args = [
                unit,
                ("value", Arg::Number(now, Measure::Pct)),
                ("read", read.into()),
                ("time", latest.at.into()),
            ];
            reply.voice.say("answer-level-since", &args)
        }
        (Some((key, latest)), None) => {
            let read = reply.voice.reading(key, latest.value, case.spec());
            let args = [unit, ("read", read.into()), ("time", latest.at.into())];
            reply.voice.say("answer-level-read", &args)
        }
        (None, Some(now)) => {
            let args = [unit, ("value", Arg::Number(now, Measure::Pct))];
            reply.voice.say("answer-level-guessed", &args)
        }
        (None, None) => reply.voice.say(
            match what {
                "waste" => "answer-level-waste-unknown",
                "fresh" => "answer-level-fresh-unknown",
                _ => "answer-level-battery-unknown",
            },
            &[unit],
        ),
    };
    reply.first.push(line);
    if let Some(coming) = reply.voice.forecast_of(what, &case.outlook) {
        reply.first.push(coming);
    } else if what == "fresh" && case.job().is_some() {
        let line = reply.voice.word("answer-fresh-on-hose");
        reply.first.push(line);
    } else if what == "battery" {
        let line = reply.voice.word("answer-battery-on-power");
        reply.first.push(line);
    }
    covered.to_vec()
}

/// The last reading of a kind, when it was taken, and by whom.
pub(super) fn reading(what: &str, case: &Case, reply: &mut Reply<'_>) -> Vec<FindingId> {
    let keys: &[ReadingKey] = match what {
        "pressure" => &[ReadingKey::PressurePsi, ReadingKey::SupplyPsi],
        "temperature" => &[ReadingKey::AirF, ReadingKey::LowF, ReadingKey::InsideF],
        _ => &[ReadingKey::Volts, ReadingKey::BatteryV],
    };
    let unit = ("unit", Arg::from(case.unit.as_str()));
    let mut told = false;
    for key in keys {
        let Some(latest) = case.now.readings.get(key) else {
            continue;
        };
        told = true;
        let read = reply.voice.reading(*key, latest.value, case.spec());
        let args = [
            unit.clone(),
            ("read", read.into()),
            ("time", latest.at.into()),
        ];
        let line = reply.voice.say("answer-level-read", &args);
        reply.first.push(line);
    }
    if !told {
        let line = reply.voice.say("answer-not-read", &[unit]);
        reply.first.push(line);
    }
    Vec::new()
}

/// When a trailer was last pumped out, by the book, and what is known of its tank since.
pub(super) fn pumped(case: &Case, reply: &mut Reply<'_>) -> Vec<FindingId> {
    let unit = ("unit", Arg::from(case.unit.as_str()));
    let line = match case.now.last_pumped() {
        Some((at, Some(gal))) => {
            let args = [
                unit,
                ("time", at.into()),
                ("value", Arg::Number(gal, Measure::Gal)),
            ];
            reply.voice.say("answer-pumped-so-much", &args)
        }
        Some((at, None)) => reply
            .voice
            .say("answer-pumped", &[unit, ("time", at.into())]),
        None => reply.voice.say("answer-not-pumped", &[unit]),
    };
    reply.first.push(line);
    let mut covered = level("waste", case, reply);
    let open = reply.board.tasks();
    if let Some(task) = open.open_task(&case.unit, TaskKind::PumpOut).cloned() {
        promised(&task, reply);
        covered.push(FindingId::WasteBookPumpOut);
    }
    covered
}

/// When the pump truck comes to a trailer.
pub(super) fn truck(case: &Case, reply: &mut Reply<'_>) -> Vec<FindingId> {
    let task = reply
        .board
        .tasks()
        .open_task(&case.unit, TaskKind::PumpOut)
        .cloned();
    match task {
        Some(task) => promised(&task, reply),
        None => {
            let line = reply
                .voice
                .say("answer-no-truck", &[("unit", case.unit.as_str().into())]);
            reply.first.push(line);
        }
    }
    reply
        .first
        .extend(reply.voice.forecast_of("waste", &case.outlook));
    vec![FindingId::WasteBookPumpOut]
}

/// When the pump trucks come that anybody asked for.
pub(super) fn every_truck(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    let mut tasks: Vec<Task> = hearing
        .desk
        .book
        .tasks()
        .open()
        .filter(|task| task.kind == TaskKind::PumpOut)
        .cloned()
        .collect();
    tasks.sort_by_key(|task| (task.due.is_none(), task.due, task.id));
    if tasks.is_empty() {
        let line = reply.voice.word("answer-no-truck-at-all");
        reply.first.push(line);
    }
    for task in &tasks {
        promised(task, reply);
    }
}

fn promised(task: &Task, reply: &mut Reply<'_>) {
    let unit = task.unit.as_ref().map_or("?", |unit| unit.as_str());
    let mut args = vec![("unit", Arg::from(unit)), ("id", task.id.into())];
    let key = match (task.called, task.promised, task.due) {
        (Some(_), Some(promised), _) => {
            args.push(("time", promised.into()));
            "answer-truck-promised"
        }
        (Some(_), None, _) => "answer-truck-called",
        (None, _, Some(due)) if due < reply.voice.now() => {
            args.push(("due", due.into()));
            args.push(("age", reply.voice.age(due).into()));
            "answer-truck-nobody-late"
        }
        (None, _, Some(due)) => {
            args.push(("due", due.into()));
            "answer-truck-nobody-due"
        }
        (None, _, None) => "answer-truck-nobody",
    };
    let line = reply.voice.say(key, &args);
    reply.first.push(line);
}
