//! The trailers a message bears on, each with its state before and after, and the tasks that could change.

use std::collections::{BTreeMap, BTreeSet};

use chrono::TimeDelta;

use super::super::answer::{self, Reply};
use super::super::settle::{self, Settled};
use super::super::situate::Case;
use super::super::tasks::{Board, comes_on, kind_of};
use super::super::walk;
use super::{Hearing, lead};
use crate::book::{MessageKey, Sent, Task, UnitBook};
use crate::dialogue::{CHECK_LASTS, Way};
use crate::finding::{Caution, Finding, FindingId, TaskKind};
use crate::heard::{Ask, Entry, Event, Plan, PlanKind, ReadingKey, UnitName};
use crate::reply::Arg;
use crate::situation::Occasion;

impl Hearing<'_> {
    /// Returns every trailer this message bears on: reported on, asked about or planned for.
    pub(super) fn units(&self, settled: &Settled) -> BTreeSet<UnitName> {
        let asked = answer::asked(self);
        let planned = self
            .heard
            .plans
            .iter()
            .filter_map(|plan| plan.unit.as_ref());
        // a wish that names no trailer is for the one talked about
        let meant = self.heard.plans.iter().any(|plan| plan.unit.is_none());
        let last = self.talk.unit_at(self.inbound.at).filter(|_| meant);
        let named = planned
            .chain(last)
            .filter_map(|name| settle::known(&self.fleet, name))
            .cloned();
        settled
            .reports
            .iter()
            .map(|(unit, ..)| unit.clone())
            .chain(settled.leaving.iter().chain(&settled.also).cloned())
            .chain(asked)
            .chain(named)
            .collect()
    }

    pub(super) fn board(&self, units: &BTreeSet<UnitName>) -> Board {
        let also = match (&self.heard.ask, &self.heard.command) {
            (Some(Ask::Done { task }), _) => Some(*task),
            (_, Some(order)) => order.task,
            _ => None,
        };
        let mut tasks = self.desk.book.tasks().of(units, also);
        if matches!(self.heard.ask, Some(Ask::Undo))
            || self.replaced().is_some()
            || !self.also_done.is_empty()
            || !self.also_ordered.is_empty()
        {
            tasks = self.desk.book.tasks().clone();
        }
        Board::new(tasks, self.now, &self.member.id, Some(self.key.clone()))
    }

    /// Asks the rules about every trailer that is reported on, and opens, moves and closes the tasks that follow.
    pub(super) fn check(&self, settled: &mut Settled, reply: &mut Reply<'_>) -> Vec<Case> {
        let replaced = self.replaced_keys();
        reply.board.reopen(&replaced);
        let cases = self.cases(settled);
        for case in &cases {
            let told = settled
                .reports
                .iter()
                .filter(|(unit, ..)| *unit == case.unit);
            let done = told.map(|(_, at, _)| *at).max().unwrap_or(self.inbound.at);
            let report = (done, &case.report);
            reply.board.close_by(&case.unit, report, &case.now);
            reply.take_case(case);
            tell_of_frost(case, reply);
        }
        self.read_at_rest(reply);
        let held = walk::held(self, settled, &cases);
        walk::end_tasks(self, &cases, &held, reply);
        walk::keep_off(self, &cases, reply);
        walk::hold_back(self, &cases, reply);
        let in_use = self.used_beside_a_danger(settled);
        let said = |unit: &UnitName| in_use.as_ref().is_some_and(|told| told.is_on(unit));
        walk::hold_faults(&cases, said, reply);
        walk::not_for_the_road(self, &cases, reply);
        reply.findings.append(&mut settled.findings);
        reply.findings.sort_by_key(|finding| finding.order());
        // a task that the mended report asks for as well keeps its number
        let findings = &reply.findings;
        reply.board.take_back(&replaced, |task| {
            let wishes = findings
                .iter()
                .filter_map(|finding| Some((finding.unit.as_ref()?, finding.task.as_ref()?)));
            let asked = wishes
                .into_iter()
                .any(|(unit, wish)| Some(unit) == task.unit.as_ref() && wish.kind == task.kind);
            asked || self.still_wants(task, &cases)
        });
        let leads: BTreeMap<&UnitName, TimeDelta> =
            cases.iter().map(|case| (&case.unit, lead(case))).collect();
        reply.board.open_for(&reply.findings, |unit| {
            leads.get(unit).copied().unwrap_or_default()
        });
        for case in &cases {
            let told = |key| case.report.readings.value(key).is_some();
            let Some(waste) = case.outlook.waste.as_ref() else {
                continue;
            };
            // what is shut fills no more
            let shut = case.report.events.contains(&Event::Closed);
            if told(ReadingKey::WastePct) || told(ReadingKey::WasteGal) || shut {
                reply.board.follow(&case.unit, waste.p10, lead(case));
            }
        }
        walk::hold(&held, settled, reply);
        cases
    }

    /// Tells whether a task that a person asked for stands after their message was mended or edited.
    fn still_wants(&self, task: &Task, cases: &[Case]) -> bool {
        if self.mends() {
            // a correction of a number takes no wish back
            return task.finding.is_none()
                && cases
                    .iter()
                    .any(|case| Some(&case.unit) == task.unit.as_ref());
        }
        self.heard.plans.iter().any(|plan| match plan.kind {
            PlanKind::Need { need, .. } | PlanKind::Booked { need, .. } => {
                let unit = plan
                    .unit
                    .as_ref()
                    .and_then(|name| settle::known(&self.fleet, name));
                kind_of(need) == task.kind
                    && unit.is_none_or(|unit| Some(unit) == task.unit.as_ref())
            }
            _ => false,
        })
    }

    /// Returns the book's keys of all that this message takes the place of.
    pub(in crate::desk) fn replaced_keys(&self) -> Vec<MessageKey> {
        let sent = self.desk.book.sent(&self.member.id);
        let replaced = self.replaced();
        let found = replaced.and_then(|key| sent.iter().find(|sent| sent.key == *key));
        found.into_iter().flat_map(Sent::keys).cloned().collect()
    }

    /// Opens a case for each trailer that is reported on, in the order told.
    fn cases(&self, settled: &Settled) -> Vec<Case> {
        let mut units: Vec<&UnitName> = Vec::new();
        let reported = settled.reports.iter().map(|(unit, ..)| unit);
        for unit in reported.chain(&settled.leaving).chain(&settled.also) {
            if !units.contains(&unit) {
                units.push(unit);
            }
        }
        units
            .into_iter()
            .map(|unit| self.case(unit, settled))
            .collect()
    }

    pub(super) fn case(&self, unit: &UnitName, settled: &Settled) -> Case {
        let told = || {
            settled
                .reports
                .iter()
                .filter(move |(other, ..)| other == unit)
                .map(|(_, at, entry)| (*at, entry))
        };
        let first = told().map(|(at, _)| at).min().unwrap_or(self.inbound.at);
        let fresh = UnitBook::default();
        let edited;
        let kept = match (self.desk.book.unit(unit), self.replaced()) {
            (None, _) => &fresh,
            (Some(kept), None) => kept,
            (Some(kept), Some(replaced)) => {
                edited = kept.without(replaced);
                &edited
            }
        };
        let before = kept.state_before(first);
        let now = kept.preview(&self.member.id, told());
        let mut report = Entry::default();
        for (_, entry) in told() {
            settle::merge(&mut report, entry);
        }
        let plans = self.plans_for(unit);
        // what was said later than this message already stands: judge at the latest word
        let at = kept
            .newest()
            .map_or(self.now, |newest| newest.max(self.now));
        let case = Case::new(
            self.desk,
            &self.fleet,
            unit,
            at,
            (before, now),
            report,
            plans,
            Occasion::Report,
        );
        match &self.stands {
            Some((of, site)) if of == unit => case.standing_at(site),
            _ => case,
        }
    }

    pub(in crate::desk) fn plans_for(&self, unit: &UnitName) -> Vec<Plan> {
        let here = |plan: &&Plan| {
            plan.unit
                .as_ref()
                .is_some_and(|name| settle::known(&self.fleet, name) == Some(unit))
        };
        let told = self.heard.plans.iter().filter(here).cloned();
        told.chain(self.being_packed(unit)).collect()
    }

    /// Returns the plan that a trailer goes, while the sender goes through its leaving check.
    fn being_packed(&self, unit: &UnitName) -> Option<Plan> {
        let round = self.talk.round.as_ref()?;
        let open = round.unit == *unit
            && round.way == Way::Leaving
            && self.inbound.at - round.asked <= CHECK_LASTS;
        open.then(|| Plan {
            unit: Some(unit.clone()),
            kind: PlanKind::Going,
            text: String::new(),
        })
    }

    /// Opens the case of a trailer as it stands without what was sent under `keys`.
    pub(in crate::desk) fn without<'k>(
        &self,
        unit: &UnitName,
        keys: impl Iterator<Item = &'k MessageKey>,
    ) -> Option<Case> {
        let mut kept = self.desk.book.unit(unit)?.clone();
        keys.for_each(|key| kept.take_back(key));
        let state = kept.state().clone();
        Some(Case::new(
            self.desk,
            &self.fleet,
            unit,
            self.now,
            (state.clone(), state),
            Entry::default(),
            Vec::new(),
            Occasion::Asked,
        ))
    }

    /// Opens the case of a trailer as it stands.
    pub(super) fn standing(&self, unit: &UnitName) -> Case {
        Case::standing(self.desk, &self.fleet, unit, self.now, Occasion::Report)
    }

    /// Opens the case of a trailer that is asked about, as it stands.
    pub(in crate::desk) fn asked_about(&self, unit: &UnitName) -> Case {
        Case::standing(self.desk, &self.fleet, unit, self.now, Occasion::Asked)
    }

    /// Opens a trailer's case as if the sender had just reported a reading.
    pub(in crate::desk) fn as_if_reported(&self, case: &Case, key: ReadingKey, value: f64) -> Case {
        let mut entry = Entry::default();
        entry.readings.set(key, value);
        self.as_if_told(case, entry)
    }

    /// Opens a trailer's case as if the sender had just told all this of it.
    pub(in crate::desk) fn as_if_told(&self, case: &Case, entry: Entry) -> Case {
        let entry = Entry {
            unit: Some(case.unit.clone()),
            ..entry
        };
        let fresh = UnitBook::default();
        let kept = self.desk.book.unit(&case.unit).unwrap_or(&fresh);
        let now = kept.preview(&self.member.id, std::iter::once((self.now, &entry)));
        Case::new(
            self.desk,
            &self.fleet,
            &case.unit,
            self.now,
            (case.now.clone(), now),
            entry,
            Vec::new(),
            Occasion::Report,
        )
    }
}

/// Says of power that is back after a while of frost that pipes may have frozen, and what is looked at first. Its task to
/// drain stays until that is done.
fn tell_of_frost(case: &Case, reply: &mut Reply<'_>) {
    let tasks = reply.board.tasks();
    let task = tasks.open_task(&case.unit, TaskKind::Drain);
    let task = task.filter(|task| task.finding == Some(FindingId::ColdFreezeSoon));
    let Some((id, opened)) = task.map(|task| (task.id, task.opened)) else {
        return;
    };
    if !comes_on(&case.report) {
        return;
    }
    let of_it = |finding: &Finding| {
        finding.id == FindingId::ColdFreezeSoon && finding.unit.as_ref() == Some(&case.unit)
    };
    if reply.findings.iter().any(of_it) {
        // the rule says what is looked at first
        let id = Arg::Count(i64::from(id));
        return reply.say("back-after-frost-task", &[("id", id)]);
    }
    let age = reply.voice.age(opened);
    let args = [
        ("unit", Arg::from(case.unit.as_str())),
        ("age", age.into()),
        ("id", Arg::Count(i64::from(id))),
    ];
    reply.say("back-after-frost", &args);
    for caution in [Caution::NoFlame, Caution::HeaterDry] {
        reply
            .lines
            .push(format!("  {}", reply.voice.caution(caution)));
    }
}
