//! What goes out at fixed times: the digest, and one list a day of the long stays that nobody looks after.

use std::collections::BTreeMap;
use std::sync::Arc;

use chrono::{DateTime, TimeDelta, Utc};

use super::super::Desk;
use super::super::digest;
use super::super::inbound::Outgoing;
use super::Round;
use super::say::Answer;
use crate::book::{AheadChange, Listing, Stage, Stand};
use crate::fleet::{Fleet, Job};
use crate::heard::UnitName;
use crate::reply::Voice;

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

/// Sends the digest to the dispatchers, once all it tells of was looked at: a slice at a time.
pub(super) fn digest(round: &mut Round<'_>) {
    let now = round.now;
    let tasks = round.desk.book.tasks();
    let idle =
        round.fleet.jobs_between(now, now + NEAR).next().is_none() && tasks.open().next().is_none();
    if idle {
        round.record(AheadChange::Digest);
        return;
    }
    let desk = round.desk;
    let fleet = Arc::clone(&round.fleet);
    let last = desk.book.ahead().gathered(Listing::Digest, now).last();
    let units = digest::told_of(desk, &fleet, now, last.map(|stand| &stand.unit));
    let Some(gathered) = gather(round, Listing::Digest, units) else {
        return;
    };
    round.record(AheadChange::Digest);
    let digest = digest::whole(desk, gathered.stands(), now);
    for to in round.dispatchers() {
        if let Some(voice) = round.voice(&to) {
            let text = digest.text(&voice);
            round.say.add(&to, None, text, Answer::None);
        }
    }
}

/// Sends a digest to those who asked for one, once all it tells of was looked at: a slice at a time.
pub(super) fn asked(round: &mut Round<'_>) {
    let now = round.now;
    let desk = round.desk;
    let fleet = Arc::clone(&round.fleet);
    let last = desk.book.ahead().gathered(Listing::Asked, now).last();
    let units = digest::told_of(desk, &fleet, now, last.map(|stand| &stand.unit));
    let Some(gathered) = gather(round, Listing::Asked, units) else {
        return;
    };
    round.record(AheadChange::Told);
    let digest = digest::whole(desk, gathered.stands(), now);
    for (who, _) in desk.book.ahead().asked() {
        // an answer does not wait for anybody's quiet hours
        if let Some(voice) = round.voice(who) {
            round
                .turn
                .outgoing
                .push(Outgoing::to(who, digest.text(&voice)));
        }
    }
}

/// How all trailers of a list stand.
struct Gathered<'a> {
    before: &'a [Stand],
    last: Vec<Stand>,
}

impl Gathered<'_> {
    /// Iterates over them, in the order of the list.
    fn stands(&self) -> impl Iterator<Item = &Stand> {
        self.before.iter().chain(&self.last)
    }
}

/// Looks at the trailers of a list while this slice lasts; returns all of them, with those of the slices before, once
/// there are no more. A list too long to be written in what is left of a slice gets the next one to itself.
fn gather<'a, 'u>(
    round: &mut Round<'a>,
    list: Listing,
    units: impl Iterator<Item = &'u UnitName>,
) -> Option<Gathered<'a>> {
    let now = round.now;
    let mut stands = Vec::new();
    let mut rest = units.peekable();
    while let Some(unit) = rest.next_if(|_| round.slice.lasts()) {
        let (case, mut findings, stand) = digest::look(round.desk, &round.fleet, unit, now);
        round.slice.looked(case.job().is_some());
        stands.push(stand);
        if case.job().is_some() {
            round.turn.forecast.insert(case.unit.clone(), case.outlook);
        }
        if list != Listing::Patrol {
            round.turn.findings.append(&mut findings);
        }
    }
    let before = round.desk.book.ahead().gathered(list, now);
    let lines = before.len() + stands.len();
    let full = !stands.is_empty() && !round.slice.holds(lines);
    if rest.peek().is_some() || full {
        round.turn.unfinished = true;
        round.record(AheadChange::Gathered { list, stands });
        return None;
    }
    round.slice.wrote(lines);
    Some(Gathered {
        before,
        last: stands,
    })
}

/// Sends the list of long stays that nobody wrote about.
pub(super) fn patrol(round: &mut Round<'_>) {
    let now = round.now;
    let gathered = round.desk.book.ahead().gathered(Listing::Patrol, now);
    let last = gathered.last().map(|stand| &stand.unit);
    let unseen = unseen(round.desk, &round.fleet, now, false);
    let units: Vec<&UnitName> = unseen
        .keys()
        .filter(|unit| last.is_none_or(|last| *unit > last))
        .collect();
    let Some(gathered) = gather(round, Listing::Patrol, units.into_iter()) else {
        return;
    };
    round.record(AheadChange::Patrol);
    let stands: Vec<&Stand> = gathered.stands().collect();
    if stands.is_empty() {
        return;
    }
    for to in round.dispatchers() {
        let Some(voice) = round.voice(&to) else {
            continue;
        };
        let text = patrol_text(&voice, &stands, &unseen);
        round.say.add(&to, None, text, Answer::None);
    }
}

/// Looks at the long stays that nobody wrote about, and lists them for whoever asks, as far as one turn goes.
pub(in super::super) fn patrol_now(
    desk: &Desk,
    fleet: &Arc<Fleet>,
    now: DateTime<Utc>,
    voice: &Voice<'_>,
) -> Option<String> {
    const IN_ONE_TURN: usize = 30;
    let unseen = unseen(desk, fleet, now, true);
    let units = unseen.keys().take(IN_ONE_TURN);
    let stands: Vec<Stand> = units
        .map(|unit| digest::look(desk, fleet, unit, now).2)
        .collect();
    if stands.is_empty() {
        return None;
    }
    let listed: Vec<&Stand> = stands.iter().collect();
    let mut text = patrol_text(voice, &listed, &unseen);
    let rest = unseen.len() - stands.len();
    if rest > 0 {
        text.push('\n');
        text.push_str(&voice.say("answer-patrol-rest", &[("count", rest.into())]));
    }
    Some(text)
}

/// Says the list, a line a trailer.
fn patrol_text(
    voice: &Voice<'_>,
    stands: &[&Stand],
    unseen: &BTreeMap<UnitName, DateTime<Utc>>,
) -> String {
    let mut text = voice.say("speak-patrol", &[("count", stands.len().into())]);
    for stand in stands {
        let Some(last) = unseen.get(&stand.unit) else {
            continue; // somebody wrote of it meanwhile
        };
        let waste = stand.waste;
        let level = waste.map_or(0.0, |waste| waste.level_pct);
        let full = waste.and_then(|waste| waste.p10.filter(|_| waste.p50.is_some()));
        let mut args = vec![
            ("unit", stand.unit.as_str().into()),
            ("site", stand.site.clone().unwrap_or_default().into()),
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
    text
}

/// Lists the long stays of which nobody spoke lately, each with the last word, else since when the job is on.
/// Of one that nobody ever wrote of the digest tells by itself: it is listed where `all` are asked for.
fn unseen(
    desk: &Desk,
    fleet: &Fleet,
    now: DateTime<Utc>,
    all: bool,
) -> BTreeMap<UnitName, DateTime<Utc>> {
    let long = fleet.jobs.iter().filter(|job| is_long_stay(job));
    let on = long.filter(|job| job.from <= now && now <= job.to);
    let units = on.flat_map(|job| job.trailers.iter().map(move |unit| (job, unit)));
    let stays = units.filter_map(|(job, unit)| {
        let state = desk.book.unit(unit).map(|kept| kept.state());
        let word = state.and_then(|state| Some(state.last_word.as_ref()?.at));
        // of one that nobody called open it is not known either
        let stage = state.map_or(Stage::Unknown, |state| state.stage());
        let stands = matches!(stage, Stage::InService | Stage::Unknown | Stage::SettingUp);
        let here = fleet.job_of(unit, now, None).map(|here| &here.id) == Some(&job.id);
        let last = word.or_else(|| all.then_some(job.from))?;
        (stands && here && now - last >= UNSEEN).then(|| (unit.clone(), last))
    });
    stays.collect()
}
