//! Where the sender goes: the trailer they are on the road with, and the jobs that name them.

use super::reply::Reply;
use crate::desk::receive::Hearing;
use crate::fleet::{Job, Role};
use crate::heard::UnitName;
use crate::reply::Arg;

/// How many jobs are told.
const JOBS: usize = 3;

/// Tells the sender where they are going.
pub(super) fn mine(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    let (fleet, me, now) = (&hearing.fleet, &hearing.member.id, hearing.now);
    let ahead = |job: &&Job| now <= job.to;
    let road = hearing.desk.book.ahead().road(me, now);
    let underway: Option<&Job> = road.and_then(|road| road.unit.as_ref()).and_then(|unit| {
        let of_it = fleet.jobs.iter().filter(|job| job.trailers.contains(unit));
        of_it.filter(ahead).min_by_key(|job| job.from)
    });
    let named = fleet.jobs.iter().filter(|job| job.crew.contains(me));
    let mut jobs: Vec<&Job> = named.filter(ahead).chain(underway).collect();
    jobs.sort_by_key(|job| (job.from, &job.trailers));
    jobs.dedup();
    jobs.truncate(JOBS);
    for job in &jobs {
        let site = fleet
            .site_of(job)
            .map_or(job.id.site.as_str(), |site| &site.name);
        let units: Vec<String> = job.trailers.iter().map(UnitName::to_string).collect();
        let args = [
            ("site", Arg::from(site)),
            ("units", reply.voice.all_of(&units).into()),
            ("time", job.from.into()),
        ];
        let key = match job.from <= now {
            true => "answer-my-job-on",
            false => "answer-my-job",
        };
        let line = reply.voice.say(key, &args);
        reply.first.push(line);
    }
    if jobs.is_empty() {
        let mut crew = fleet.crew.values();
        let ask = crew.find(|member| member.role == Role::Dispatcher && member.id != *me);
        let line = match ask {
            Some(member) => reply
                .voice
                .say("answer-my-job-ask", &[("who", member.name.as_str().into())]),
            None => reply.voice.word("answer-my-job-none"),
        };
        reply.first.push(line);
    }
}
