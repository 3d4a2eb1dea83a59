//! Every unit at once, for the dispatcher; and one unit in a line or two.

use chrono::TimeDelta;

use super::answer::Reply;
use super::receive::Hearing;
use super::situate::Case;
use crate::finding::Finding;
use crate::fleet::Role;
use crate::reply::{DigestRow, digest};
use crate::situation::Occasion;

/// A unit nobody said a word about for this long, and at no job, is left out.
const STALE: TimeDelta = TimeDelta::days(14);

/// Tells how every unit stands.
pub(super) fn tell(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    let fleet = &hearing.fleet;
    let now = hearing.now;
    let mut cases: Vec<(Case, Vec<Finding>)> = Vec::new();
    for unit in fleet.trailers.keys() {
        let known = hearing.desk.book.unit(unit);
        let fresh = known
            .and_then(|kept| kept.newest())
            .is_some_and(|newest| now - newest <= STALE);
        if !fresh && fleet.job_of(unit, now, None).is_none() {
            continue;
        }
        let case = Case::standing(hearing.desk, fleet, unit, now, Occasion::Tick);
        let mut findings = case.findings();
        findings.sort_by_key(Finding::order);
        cases.push((case, findings));
    }
    let places: Vec<Option<String>> = cases.iter().map(|(case, _)| case.place()).collect();
    let rows: Vec<DigestRow<'_>> = cases
        .iter()
        .zip(&places)
        .map(|((case, findings), place)| {
            let due = hearing
                .desk
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
    let text = digest(&reply.voice, &rows);
    reply.lines.push(text);
    for (case, mut findings) in cases {
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
