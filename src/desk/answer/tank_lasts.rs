//! Whether a tank lasts, whether a truck is needed, and until when it may be called.

use super::reply::Reply;
use crate::desk::phrases::plain;
use crate::desk::receive::Hearing;
use crate::desk::situate::Case;
use crate::desk::when;
use crate::finding::{FindingId, TaskKind};
use crate::reply::Arg;
use chrono::{DateTime, Utc};

/// Does the tank last, or is a truck needed?
pub(super) fn pump_out(case: &Case, reply: &mut Reply<'_>) -> Vec<FindingId> {
    let unit = ("unit", Arg::from(case.unit.as_str()));
    let key = match &case.outlook.waste {
        None => "answer-pump-out-unread",
        Some(waste) if waste.likely_pct >= waste.limit_pct => "answer-pump-out-now",
        Some(waste) if waste.p50.is_some() && !waste.could_stay_below => "answer-pump-out-yes",
        Some(waste) if waste.p10.is_some() => "answer-pump-out-perhaps",
        Some(_) => "answer-pump-out-no",
    };
    let line = reply.voice.say(key, &[unit]);
    reply.first.push(line);
    how_it_fills(case, reply)
}

/// Does the tank last, till the hour that is asked about where there is one?
pub(super) fn lasts(hearing: &Hearing<'_>, case: &Case, reply: &mut Reply<'_>) -> Vec<FindingId> {
    let zone = case.zone();
    let rest = hearing
        .desk
        .phrases
        .following("asked-value", "until", hearing.text);
    let named = |rest: &str| {
        let opens = |list| hearing.desk.phrases.opens("clock", list, &plain(rest));
        if opens("midnight") {
            return when::next("00:00", case.at, zone);
        }
        if opens("noon") {
            return when::next("12:00", case.at, zone);
        }
        when::coming(&format!("at {rest}"), case.at, zone)
    };
    let asked = rest.and_then(named);
    let (Some(at), Some(waste)) = (asked, &case.outlook.waste) else {
        return pump_out(case, reply);
    };
    let by = |reached: Option<DateTime<Utc>>| reached.is_some_and(|reached| reached <= at);
    let key = match waste.likely_pct >= waste.limit_pct {
        true => "answer-pump-out-now",
        false if by(waste.p50) => "answer-lasts-no",
        false if by(waste.p10) => "answer-lasts-perhaps",
        false => "answer-lasts-yes",
    };
    let args = [("unit", Arg::from(case.unit.as_str())), ("time", at.into())];
    let line = reply.voice.say(key, &args);
    reply.first.push(line);
    how_it_fills(case, reply)
}

fn how_it_fills(case: &Case, reply: &mut Reply<'_>) -> Vec<FindingId> {
    reply
        .first
        .extend(reply.voice.forecast_of("waste", &case.outlook));
    let task = reply
        .board
        .tasks()
        .open_task(&case.unit, TaskKind::PumpOut)
        .cloned();
    if let Some(task) = task {
        reply.first.push(reply.voice.task(&task));
    }
    vec![FindingId::WasteBookPumpOut]
}

/// Until when may the truck be called?
pub(super) fn truck_latest(case: &Case, reply: &mut Reply<'_>) -> Vec<FindingId> {
    let task = reply.board.tasks().open_task(&case.unit, TaskKind::PumpOut);
    let unit = ("unit", Arg::from(case.unit.as_str()));
    let line = match task.map(|task| (task.call_by, task.called)) {
        Some((_, Some(_))) | None => None,
        Some((Some(call_by), None)) if call_by > case.at => {
            let args = [unit, ("time", call_by.into())];
            Some(reply.voice.say("answer-truck-call-by", &args))
        }
        Some(_) => Some(reply.voice.say("answer-truck-call-now", &[unit])),
    };
    reply.first.extend(line);
    pump_out(case, reply)
}

/// What would be if something were so is not worked out, but what is known bears on it: how the tank fills, who is called.
pub(super) fn what_if(hearing: &Hearing<'_>, case: &Case, reply: &mut Reply<'_>) -> Vec<FindingId> {
    let line = reply.voice.word("answer-cannot");
    reply.first.push(line);
    let of_the_truck = hearing
        .desk
        .phrases
        .holds("asked-value", "truck", hearing.text);
    if of_the_truck {
        return pump_out(case, reply);
    }
    Vec::new()
}
