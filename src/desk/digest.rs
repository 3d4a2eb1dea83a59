//! Every unit at once, for the dispatcher; and one unit in a line or two.

use std::sync::Arc;

use chrono::{DateTime, Datelike, Days, NaiveDate, TimeDelta, TimeZone, Utc};

use super::Desk;
use super::answer::Reply;
use super::receive::Hearing;
use super::situate::Case;
use crate::book::{TankNote, Task, UnitState};
use crate::finding::{Finding, FindingId, TaskKind};
use crate::fleet::{Fleet, Job, Role};
use crate::heard::PlanKind;
use crate::outlook::{Outlook, Prospect};
use crate::reply::{DayJob, DigestRow, DigestTail, Voice, digest, digest_tail, look_ahead};
use crate::situation::Occasion;

/// A unit nobody said a word about for this long, and at no job, is left out.
const STALE: TimeDelta = TimeDelta::days(14);

/// How every unit stands, worked out once for all who are told.
pub(super) struct View {
    pub(super) cases: Vec<(Case, Vec<Finding>)>,
}

impl View {
    /// Looks at every unit that is at a job or was spoken of lately.
    pub(super) fn of(desk: &Desk, fleet: &Arc<Fleet>, now: DateTime<Utc>) -> View {
        let mut cases = Vec::new();
        for unit in fleet.trailers.keys() {
            let known = desk.book.unit(unit);
            let fresh = known
                .and_then(|kept| kept.newest())
                .is_some_and(|newest| now - newest <= STALE);
            let at_job = fleet.job_of(unit, now, None);
            if !fresh && at_job.is_none_or(|job| job.to < now) {
                continue;
            }
            let case = Case::standing(desk, fleet, unit, now, Occasion::Tick);
            let mut findings = case.findings();
            findings.sort_by_key(Finding::order);
            cases.push((case, findings));
        }
        View { cases }
    }

    /// Puts it into words.
    pub(super) fn text(&self, desk: &Desk, voice: &Voice<'_>) -> String {
        let places: Vec<Option<String>> = self.cases.iter().map(|(case, _)| case.place()).collect();
        let rows: Vec<DigestRow<'_>> = self
            .cases
            .iter()
            .zip(&places)
            .map(|((case, findings), place)| {
                let due = desk
                    .book
                    .tasks()
                    .open_on(&case.unit)
                    .filter_map(|task| Some((task.kind, task.due?)));
                DigestRow {
                    unit: &case.unit,
                    site: place.as_deref(),
                    stage: case.now.stage(),
                    worst: findings
                        .first()
                        .map(|finding| (finding.id, finding.level, finding.urgency)),
                    more: findings.len().saturating_sub(1),
                    due: due.min_by_key(|(_, due)| *due),
                    last_word: case.now.last_word.as_ref().map(|word| word.at),
                }
            })
            .collect();
        let mut text = digest(voice, &rows);
        let tail = digest_tail(voice, &self.tail(desk, voice));
        if !tail.is_empty() {
            text.push('\n');
            text.push_str(&tail);
        }
        text
    }

    /// Gathers what comes first, what is late and who is silent.
    fn tail(&self, desk: &Desk, voice: &Voice<'_>) -> DigestTail<'_> {
        let now = voice.now();
        let mut fills: Vec<_> = self
            .cases
            .iter()
            .filter_map(|(case, _)| {
                let at = case.outlook.waste.as_ref()?.p50?;
                (at > now).then_some((&case.unit, at))
            })
            .collect();
        fills.sort_by_key(|(_, at)| *at);
        let is_late = |task: &&Task| {
            let due = task.promised.max(task.due);
            task.kind != TaskKind::CheckIn && due.is_some_and(|due| due < now)
        };
        let mut late: Vec<&Task> = desk.book.tasks().open().filter(is_late).collect();
        late.sort_by_key(|task| task.due);
        let silent = self.cases.iter().filter_map(|(case, findings)| {
            let silent = findings
                .iter()
                .any(|finding| finding.id == FindingId::CrewLateCheckIn);
            let last = case.now.last_word.as_ref()?.at;
            silent.then_some((&case.unit, last))
        });
        DigestTail {
            fills,
            late: late.into_iter().map(|task| voice.task_head(task)).collect(),
            silent: silent.collect(),
        }
    }
}

/// Tells how every unit stands, or what the day that was asked for brings.
pub(super) fn tell(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    let day = hearing.heard.plans.iter().find_map(|plan| match plan.kind {
        PlanKind::Day { day } => Some(day),
        _ => None,
    });
    if let Some(day) = day.and_then(|day| next_day(hearing, day)) {
        let text = day_ahead(hearing, day);
        reply.lines.push(text);
        return;
    }
    let view = View::of(hearing.desk, &hearing.fleet, hearing.now);
    let text = view.text(hearing.desk, &reply.voice);
    reply.lines.push(text);
    for (case, mut findings) in view.cases {
        reply.foresee(&case);
        if hearing.heard.entries.is_empty() {
            reply.listed.append(&mut findings);
        }
    }
}

/// Returns the next local day of a name: 0 Monday to 6 Sunday (today where it is that day), 7 tomorrow.
fn next_day(hearing: &Hearing<'_>, day: u8) -> Option<NaiveDate> {
    let today = hearing.now.with_timezone(&hearing.fleet.time_zone);
    let weekday = today.weekday().num_days_from_monday() as u8;
    let ahead = if day == 7 { 1 } else { (day + 7 - weekday) % 7 };
    today.date_naive().checked_add_days(Days::new(ahead.into()))
}

/// Says which jobs a day brings: trailers, doors, guests, and what fills when by the guests alone.
fn day_ahead(hearing: &Hearing<'_>, day: NaiveDate) -> String {
    let fleet = &hearing.fleet;
    let zone = fleet.time_zone;
    let noon = day
        .and_hms_opt(12, 0, 0)
        .and_then(|noon| zone.from_local_datetime(&noon).earliest())
        .map_or(hearing.now, |noon| noon.to_utc());
    let on = |job: &&Job| {
        let date = |at: DateTime<Utc>| at.with_timezone(&job.time_zone).date_naive();
        date(job.from) <= day && day <= date(job.to)
    };
    let mut jobs: Vec<DayJob<'_>> = Vec::new();
    for job in fleet.jobs.iter().filter(on) {
        let site = fleet.site_of(job);
        let window = job
            .windows(job.from)
            .find(|(from, _)| from.with_timezone(&job.time_zone).date_naive() == day)
            .unwrap_or((job.from, job.to));
        let units = job.trailers.iter().map(|unit| {
            let spec = fleet.trailers.get(unit);
            let fills = spec.and_then(|spec| {
                // it comes empty from the yard
                let mut state = UnitState::default();
                state.tanks.push((window.0, TankNote::Pumped(None)));
                let prospect = Prospect {
                    fleet,
                    spec,
                    job: Some(job),
                    site,
                    state: &state,
                    guests: &[],
                    lessons: hearing.desk.book.lessons().of(unit),
                    at: window.0,
                };
                Outlook::of(&prospect).waste?.p50
            });
            (unit, fills.filter(|at| *at <= window.1))
        });
        jobs.push(DayJob {
            site: site.map_or(job.id.site.as_str(), |site| site.name.as_str()),
            from: window.0,
            to: window.1,
            guests: job.guests,
            units: units.collect(),
        });
    }
    jobs.sort_by_key(|job| job.from);
    // times of that day need no weekday
    let voice = hearing
        .desk
        .voice_for(hearing.member, hearing.heard.language, fleet, noon);
    look_ahead(&voice, noon, &jobs)
}

/// Returns the code of a role.
pub(super) fn role_code(role: Role) -> &'static str {
    match role {
        Role::Driver => "driver",
        Role::Tech => "tech",
        Role::Dispatcher => "dispatcher",
    }
}
