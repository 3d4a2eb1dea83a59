//! What goes out at fixed times: the digest, and one list a day of the long stays that nobody looks after.

use chrono::{DateTime, TimeDelta, Utc};

use super::super::digest;
use super::Round;
use super::say::Answer;
use crate::book::AheadChange;
use crate::fleet::{Fleet, Job};
use crate::heard::UnitName;
use crate::situation::Occasion;

/// A job longer than this is a long stay: nobody stays with the unit.
const LONG_STAY: TimeDelta = TimeDelta::hours(48);
/// A long stay that nobody wrote about for this long goes on the list.
const UNSEEN: TimeDelta = TimeDelta::hours(16);
/// The digest is left out when no job is on or begins within this long, and no task is open.
const NEAR: TimeDelta = TimeDelta::hours(24);

/// Tells whether a job is a long stay.
pub(super) fn is_long_stay(job: &Job) -> bool {
    job.to - job.from > LONG_STAY
}

/// Sends the digest to the dispatchers.
pub(super) fn digest(round: &mut Round<'_>) {
    let now = round.now;
    round.record(AheadChange::Digest);
    let near = |job: &Job| job.to >= now && job.from - NEAR <= now;
    let idle =
        !round.fleet.jobs.iter().any(near) && round.desk.book.tasks().open().next().is_none();
    if idle {
        return;
    }
    let view = digest::View::of(round.desk, &round.fleet, now);
    for to in round.dispatchers() {
        if let Some(voice) = round.voice(&to) {
            let text = view.text(round.desk, &voice);
            round.say.add(&to, None, text, Answer::None);
        }
    }
    for (case, mut findings) in view.cases {
        if case.job().is_some() {
            round.turn.forecast.insert(case.unit.clone(), case.outlook);
        }
        round.turn.findings.append(&mut findings);
    }
}

/// Sends the list of long stays that nobody wrote about.
pub(super) fn patrol(round: &mut Round<'_>) {
    let now = round.now;
    round.record(AheadChange::Patrol);
    let unseen = unseen(round, now);
    if unseen.is_empty() {
        return;
    }
    for to in round.dispatchers() {
        let Some(voice) = round.voice(&to) else {
            continue;
        };
        let mut text = voice.say("speak-patrol", &[("count", unseen.len().into())]);
        for (unit, last) in &unseen {
            let case = super::super::situate::Case::standing(
                round.desk,
                &round.fleet,
                unit,
                now,
                Occasion::Tick,
            );
            let site = case.place().unwrap_or_default();
            let waste = case.outlook.waste.as_ref();
            let level = waste.map_or(0.0, |waste| waste.level_pct[1]);
            let full = waste.and_then(|waste| waste.p10.filter(|_| waste.p50.is_some()));
            let mut args = vec![
                ("unit", unit.as_str().into()),
                ("site", site.into()),
                ("age", voice.age(*last).into()),
                (
                    "value",
                    crate::reply::Arg::Number(level, crate::quantity::Measure::Pct),
                ),
            ];
            let key = match full {
                Some(at) => {
                    args.push(("time", at.into()));
                    "speak-patrol-row-full"
                }
                None => "speak-patrol-row",
            };
            text.push('\n');
            text.push_str(&voice.say(key, &args));
        }
        round.say.add(&to, None, text, Answer::None);
    }
}

/// Lists the long stays in service of which nobody spoke lately, each with the last word.
fn unseen(round: &Round<'_>, now: DateTime<Utc>) -> Vec<(UnitName, DateTime<Utc>)> {
    let fleet: &Fleet = &round.fleet;
    let stays = round.desk.book.open_units().filter_map(|(unit, kept)| {
        let word = kept.state().last_word.as_ref()?;
        let job = fleet.job_of(unit, now, None)?;
        let due = is_long_stay(job) && now <= job.to && now - word.at >= UNSEEN;
        due.then(|| (unit.clone(), word.at))
    });
    stays.collect()
}
