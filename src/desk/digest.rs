//! Every unit at once, for the dispatcher; and one unit in a line or two.

use std::sync::Arc;

use chrono::{DateTime, TimeDelta, Utc};

use super::Desk;
use super::answer::Reply;
use super::receive::Hearing;
use super::situate::Case;
use crate::finding::Finding;
use crate::fleet::{Fleet, Role};
use crate::reply::{DigestRow, Voice, digest};
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
            if !fresh && fleet.job_of(unit, now, None).is_none() {
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
        digest(voice, &rows)
    }
}

/// Tells how every unit stands.
pub(super) fn tell(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
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

/// Returns the code of a role.
pub(super) fn role_code(role: Role) -> &'static str {
    match role {
        Role::Driver => "driver",
        Role::Tech => "tech",
        Role::Dispatcher => "dispatcher",
    }
}
