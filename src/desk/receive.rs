//! One message: heard, settled, checked, answered.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use chrono::{DateTime, TimeDelta, Utc};

use super::answer::Reply;
use super::command;
use super::inbound::{Body, Inbound, Outgoing, Turn};
use super::settle::{self, Answered, LATE, Settled};
use super::situate::Case;
use super::tasks::{Board, kind_of};
use super::{Desk, ahead, alarm, answer, repeat, standing, walk, watch};
use crate::book::{
    Message, MessageKey, Personal, Record, Report, TaskChange, UnitBook, UnitState, Unread,
};
use crate::dialogue::{About, Check, Question, Talk};
use crate::finding::{Finding, FindingId, TaskKind};
use crate::fleet::{CrewMember, Fleet, Role};
use crate::heard::{Ask, Entry, Heard, Plan, PlanKind, ReadingKey, Remark, UnitName};
use crate::situation::Occasion;

/// One message with what is known about its sender.
pub(super) struct Hearing<'a> {
    pub(super) desk: &'a Desk,
    pub(super) inbound: &'a Inbound,
    pub(super) text: &'a str,
    pub(super) member: &'a CrewMember,
    pub(super) fleet: Arc<Fleet>,
    pub(super) heard: Heard,
    pub(super) talk: Talk,
    /// The instant to judge at: the time written, or the time received where the message came late.
    pub(super) now: DateTime<Utc>,
    /// The key under which the book keeps this message.
    pub(super) key: MessageKey,
    /// The message that this one edits, by the book's key.
    edited: Option<MessageKey>,
    /// The sender's earlier message that this one mends.
    instead_of: Option<MessageKey>,
}

/// Works through one message.
pub(super) fn receive(desk: &Desk, inbound: &Inbound) -> Turn {
    let Some(member) = desk.crew_of(&inbound.from) else {
        return super::stranger::refuse(desk, inbound);
    };
    let fleet = desk.fleet_at(inbound.at);
    let empty = String::new();
    let (text, unreadable) = match &inbound.body {
        Body::Text(text) => (text, None),
        Body::Other(kind) => (&empty, Some(kind.as_str())),
    };
    let heard = desk.reader.hear(text, fleet.style.temperature);
    let late = inbound.received - inbound.at > LATE;
    let hearing = Hearing {
        desk,
        inbound,
        text,
        member: &member,
        fleet,
        heard,
        talk: desk.book.talk(&member.id).cloned().unwrap_or_default(),
        now: if late { inbound.received } else { inbound.at },
        key: MessageKey(format!("m{}", desk.book.messages() + 1)),
        edited: inbound.replaces.as_ref().and_then(|network| {
            let mut sent = desk.book.sent(&member.id).iter();
            let edited = sent.find(|sent| sent.network.text() == network.0)?;
            Some(edited.key.clone())
        }),
        instead_of: None,
    };
    hearing.work(unreadable)
}

impl Hearing<'_> {
    fn work(mut self, unreadable: Option<&str>) -> Turn {
        let mut settled = self.settle();
        let took = walk::take(&mut self, &mut settled);
        let stood = walk::stand::take(&mut self, &mut settled, took.is_some());
        settled.words = self.words_about(&settled);
        let mut units = self.units(&settled);
        units.extend(self.talk.checks.iter().map(|check| check.unit.clone()));
        units.extend(self.talk.round.iter().map(|round| round.unit.clone()));
        let board = self.board(&units);
        let mut reply = Reply::new(&self, board);
        if self.late() {
            reply.late = true;
        }
        if let Some(kind) = unreadable {
            reply.unreadable(kind);
        }

        let mut records = Vec::new();
        ahead::weather_told(&self, &mut settled, &mut reply, &mut records);
        if let Some(replaced) = self.replaced() {
            reply.board.revert(replaced);
        }
        let cases = self.cases(&settled);
        for case in &cases {
            reply.board.close_by(&case.unit, &case.report);
            reply.take_case(case);
        }
        walk::keep_off(&self, &cases, &mut reply);
        reply.findings.append(&mut settled.findings);
        reply.findings.sort_by_key(|finding| finding.order());
        let leads: BTreeMap<UnitName, TimeDelta> = cases
            .iter()
            .map(|case| (case.unit.clone(), lead(case)))
            .collect();
        let findings = std::mem::take(&mut reply.findings);
        reply.board.open_for(&findings, |unit| {
            leads.get(unit).copied().unwrap_or_default()
        });
        reply.findings = findings;
        self.plan(&mut reply, &cases, &mut records);
        watch::hits(&self, &cases, &mut reply, &mut records);
        alarm::end_silence(&self, &cases, &settled.words, &mut records);
        alarm::raise(&self, &cases, &mut reply, &mut records);

        if let Some(order) = self.heard.command.clone() {
            command::obey(&self, &order, &mut reply, &mut records);
        }
        if let Some(ask) = self.heard.ask.clone() {
            answer::ask(&self, &settled, &ask, &mut reply, &mut records);
        }
        standing::ordered(&self, &settled, &mut reply, &mut records);
        standing::greet(&self, &cases, &mut reply);
        standing::beside_the_advice(&self, &cases, &mut reply);
        walk::stand::go_on(&self, &cases, stood, &mut reply);
        walk::go_on(&self, &cases, took.as_ref(), &mut reply, &mut records);
        ahead::note(&self, &settled, &cases, &mut reply, &mut records);
        let talk = self.talk_after(&settled, &mut reply);
        self.finish(settled, cases, reply, records, talk)
    }

    /// Returns the voice the sender is answered in.
    pub(super) fn voice(&self) -> crate::reply::Voice<'_> {
        self.desk
            .voice_for(self.member, self.heard.language, &self.fleet, self.now)
    }

    /// Returns the state of a trailer after what this message reports on it, if it reports on it at all.
    pub(super) fn reported(&self, unit: &UnitName, settled: &Settled) -> Option<UnitState> {
        let told = || {
            settled
                .reports
                .iter()
                .filter(move |(other, ..)| other == unit)
        };
        told().next()?;
        let fresh = UnitBook::default();
        let kept = self.desk.book.unit(unit).unwrap_or(&fresh);
        Some(kept.preview(&self.member.id, told().map(|(_, at, entry)| (*at, entry))))
    }

    /// Tells whether the message came in long after it was written.
    pub(super) fn late(&self) -> bool {
        self.inbound.received - self.inbound.at > LATE
    }

    fn settle(&mut self) -> Settled {
        let at = self.inbound.at;
        if self.heard.entries.is_empty() && self.heard.ask.is_none() && self.heard.command.is_none()
        {
            let pressure = |unit: &UnitName| {
                self.desk
                    .book
                    .unit(unit)?
                    .state()
                    .pressures
                    .last()
                    .map(|read| read.psi)
            };
            match settle::answered(
                &self.heard,
                self.text,
                &self.talk,
                &self.fleet,
                at,
                pressure,
            ) {
                Some(Answered::Report(entry, told)) => {
                    self.heard = Heard {
                        entries: vec![entry],
                        ..Heard::default()
                    };
                    self.talk.question = None;
                    let mut settled =
                        settle::settle(&self.heard, &self.fleet, Some(&self.talk), at);
                    settled.reports.iter_mut().for_each(|(_, at, _)| *at = told);
                    return settled;
                }
                Some(Answered::Instead(entry, told)) => {
                    let unit = entry.unit.clone();
                    let last = self.desk.book.sent(&self.member.id).iter().rev();
                    let last = last
                        .clone()
                        .find(|sent| unit.as_ref().is_some_and(|unit| sent.units.contains(unit)));
                    self.instead_of = last.map(|sent| sent.key.clone());
                    self.heard = Heard {
                        entries: vec![self.with_the_rest(entry)],
                        ..Heard::default()
                    };
                    self.talk.question = None;
                    let mut settled =
                        settle::settle(&self.heard, &self.fleet, Some(&self.talk), at);
                    settled.reports.iter_mut().for_each(|(_, at, _)| *at = told);
                    return settled;
                }
                Some(Answered::Reread(text, unit, told)) => {
                    let mut reread = self.desk.reader.hear(&text, self.fleet.style.temperature);
                    if !reread.entries.is_empty() && reread.unclear.is_empty() {
                        for entry in &mut reread.entries {
                            entry.unit = entry.unit.take().or_else(|| unit.clone());
                        }
                        self.heard = reread;
                        self.talk.question = None;
                        let mut settled =
                            settle::settle(&self.heard, &self.fleet, Some(&self.talk), at);
                        settled.reports.iter_mut().for_each(|(_, at, _)| *at = told);
                        return settled;
                    }
                }
                None => {}
            }
        }
        settle::settle(&self.heard, &self.fleet, Some(&self.talk), at)
    }

    /// Returns the trailers that somebody of the crew says a word about without a report: "12 all good", "leaving in 20
    /// with 14". A question is no word from the unit, nor is what the dispatcher writes.
    fn words_about(&self, settled: &Settled) -> Vec<UnitName> {
        if self.heard.ask.is_some()
            || self.heard.command.is_some()
            || self.member.role == Role::Dispatcher
            || !self.heard.unclear.is_empty()
        {
            return Vec::new();
        }
        let reported = |unit: &UnitName| settled.reports.iter().any(|(other, ..)| other == unit);
        // a bare number that opens a message of good news is a trailer where there is one of that name
        let opening = self.text.split_whitespace().next().map(|word| {
            let bare = word
                .trim_start_matches('#')
                .trim_end_matches([':', ',', '.']);
            UnitName::new(bare)
        });
        let opening = opening.filter(|name| self.fleet.trailers.contains_key(name));
        let mut units: Vec<UnitName> = Vec::new();
        for name in self.heard.named.iter().chain(&opening) {
            if let Some(unit) = settle::known(&self.fleet, name)
                && !reported(unit)
                && !units.contains(unit)
            {
                units.push(unit.clone());
            }
        }
        units
    }

    /// Adds to a mended report what else the message it takes the place of said.
    fn with_the_rest(&self, mut entry: Entry) -> Entry {
        let Some((unit, key)) = entry.unit.as_ref().zip(self.instead_of.as_ref()) else {
            return entry;
        };
        let Some(kept) = self.desk.book.unit(unit) else {
            return entry;
        };
        for (_, told) in kept.reports_of(key) {
            let mut rest = told.clone();
            rest.readings.values.remove(&ReadingKey::PressurePsi);
            settle::merge(&mut entry, &rest);
        }
        entry
    }

    /// Returns the message whose reports this one takes the place of: the one it edits, or the one it mends.
    fn replaced(&self) -> Option<&MessageKey> {
        self.edited.as_ref().or(self.instead_of.as_ref())
    }

    /// Returns every trailer this message bears on: reported on, asked about or planned for.
    fn units(&self, settled: &Settled) -> BTreeSet<UnitName> {
        let asked = self
            .heard
            .ask
            .as_ref()
            .and_then(|ask| answer::unit_of(self, ask));
        let planned = self
            .heard
            .plans
            .iter()
            .filter_map(|plan| plan.unit.as_ref());
        let named = planned
            .filter_map(|name| settle::known(&self.fleet, name))
            .cloned();
        settled
            .reports
            .iter()
            .map(|(unit, ..)| unit.clone())
            .chain(asked)
            .chain(named)
            .collect()
    }

    fn board(&self, units: &BTreeSet<UnitName>) -> Board {
        let also = match (&self.heard.ask, &self.heard.command) {
            (Some(Ask::Done { task }), _) => Some(*task),
            (_, Some(order)) => order.task,
            _ => None,
        };
        let mut tasks = self.desk.book.tasks().of(units, also);
        if matches!(self.heard.ask, Some(Ask::Undo)) || self.replaced().is_some() {
            tasks = self.desk.book.tasks().clone();
        }
        Board::new(tasks, self.now, &self.member.id, Some(self.key.clone()))
    }

    /// Opens a case for each trailer that is reported on, in the order told.
    fn cases(&self, settled: &Settled) -> Vec<Case> {
        let mut units: Vec<&UnitName> = Vec::new();
        for (unit, ..) in &settled.reports {
            if !units.contains(&unit) {
                units.push(unit);
            }
        }
        units
            .into_iter()
            .map(|unit| self.case(unit, settled))
            .collect()
    }

    fn case(&self, unit: &UnitName, settled: &Settled) -> Case {
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
        Case::new(
            self.desk,
            &self.fleet,
            unit,
            at,
            (before, now),
            report,
            plans,
            Occasion::Report,
        )
    }

    pub(super) fn plans_for(&self, unit: &UnitName) -> Vec<Plan> {
        let here = |plan: &&Plan| {
            plan.unit
                .as_ref()
                .is_some_and(|name| settle::known(&self.fleet, name) == Some(unit))
        };
        self.heard.plans.iter().filter(here).cloned().collect()
    }

    /// Answers requests: opens or confirms the task each asks for.
    fn plan(&self, reply: &mut Reply<'_>, cases: &[Case], records: &mut Vec<Record>) {
        for plan in &self.heard.plans {
            let named = plan
                .unit
                .clone()
                .or_else(|| self.talk.unit_at(self.inbound.at).cloned());
            let unit = named
                .as_ref()
                .and_then(|name| settle::known(&self.fleet, name))
                .cloned();
            match (&plan.kind, unit) {
                (PlanKind::Need { need, by }, Some(unit)) => {
                    let opened;
                    let case = match cases.iter().find(|case| case.unit == unit) {
                        Some(case) => case,
                        None => {
                            opened = Case::standing(
                                self.desk,
                                &self.fleet,
                                &unit,
                                self.now,
                                Occasion::Report,
                            );
                            &opened
                        }
                    };
                    let kind = kind_of(*need);
                    let zone = case.job().map_or(self.fleet.time_zone, |job| job.time_zone);
                    let wanted = by
                        .as_deref()
                        .and_then(|clock| super::when::next(clock, self.now, zone));
                    let forecast = (kind == TaskKind::PumpOut)
                        .then(|| case.outlook.waste.as_ref()?.p10)
                        .flatten();
                    let (id, new) =
                        reply
                            .board
                            .open(&unit, kind, wanted.or(forecast), lead(case), None);
                    reply.wanted(id, new);
                }
                (PlanKind::Booked { need, at }, Some(unit)) => {
                    let zone = self.fleet.time_zone;
                    let promised = at
                        .as_deref()
                        .and_then(|clock| super::when::next(clock, self.now, zone));
                    let kind = kind_of(*need);
                    let standing;
                    let case = match cases.iter().find(|case| case.unit == unit) {
                        Some(case) => case,
                        None => {
                            standing = self.standing(&unit);
                            &standing
                        }
                    };
                    // when it must be there is the tank's matter, not the hauler's
                    let tank = case
                        .outlook
                        .waste
                        .as_ref()
                        .filter(|_| kind == TaskKind::PumpOut);
                    let needed = tank.and_then(|tank| tank.p10);
                    let open = reply.board.tasks().open_task(&unit, kind).cloned();
                    let (id, due) = match open {
                        Some(task) => (task.id, task.due.or(needed)),
                        None => {
                            let due = needed.or(promised);
                            (reply.board.open(&unit, kind, due, lead(case), None).0, due)
                        }
                    };
                    reply.board.change(TaskChange::Called {
                        id,
                        by: self.member.id.clone(),
                        promised,
                    });
                    if let (Some(promised), Some(due)) = (promised, due)
                        && promised > due
                        && kind == TaskKind::PumpOut
                    {
                        let args = [("due", due.into()), ("promised", promised.into())];
                        reply.say("booked-too-late", &args);
                    }
                }
                (
                    PlanKind::Need { .. } | PlanKind::Watch { .. } | PlanKind::Booked { .. },
                    None,
                ) => {
                    if let Some(name) = named {
                        reply
                            .findings
                            .push(settle::unknown_unit(&self.fleet, &name));
                    } else {
                        reply.which_unit_for_plan(&plan.text);
                    }
                }
                (PlanKind::Watch { key, value, below }, Some(unit)) => {
                    records.push(watch::set(self, &unit, *key, *value, *below));
                    reply.watching(&unit, *key, *value, *below);
                }
                _ => {} // wishes are no work
            }
        }
    }

    /// Opens the case of a trailer as it stands.
    fn standing(&self, unit: &UnitName) -> Case {
        Case::standing(self.desk, &self.fleet, unit, self.now, Occasion::Report)
    }

    /// Returns what is open with the sender after this message, and asks what has to be asked.
    fn talk_after(&self, settled: &Settled, reply: &mut Reply<'_>) -> Talk {
        let mut talk = self.talk.clone();
        let at = self.inbound.at;
        let asked = self
            .heard
            .ask
            .as_ref()
            .and_then(|ask| answer::unit_of(self, ask));
        let last = settled
            .reports
            .last()
            .map(|(unit, ..)| unit.clone())
            .or(asked);
        if let Some(unit) = last {
            talk.unit = Some((unit, at));
        }
        // after a name nobody knows, the unit before it is not meant
        let unknown = |finding: &Finding| finding.id == FindingId::DeskUnknownUnit;
        if settled.reports.is_empty() && settled.findings.iter().chain(&reply.findings).any(unknown)
        {
            talk.unit = None;
        }
        if self.heard.language.is_some() {
            talk.language = self.heard.language;
        }
        repeat::note(&reply.findings, &mut talk, self.now);
        if !reply.findings.is_empty() {
            talk.advice = reply.findings.clone();
        }
        if let Some(checks) = reply.checks.take() {
            // whose step was asked is the trailer talked about
            let asked = |check: &&Check| reply.step.is_some() && !check.waits;
            if let Some(check) = checks.last().filter(asked) {
                talk.unit = Some((check.unit.clone(), at));
            }
            talk.checks = checks;
        }
        if let Some(round) = reply.round.take() {
            talk.round = round;
        }
        let question = match (&settled.homeless, self.heard.unclear.as_slice()) {
            (Some(entry), _) => {
                let likely = self.likely_units();
                let about = About::WhichUnit {
                    entry: entry.clone(),
                    at,
                    likely,
                };
                Some(about)
            }
            (None, [Remark { text, .. }]) if text.chars().any(|c| c.is_ascii_digit()) => {
                let unit = talk.unit.as_ref().map(|(unit, _)| unit.clone());
                Some(About::WhatValue {
                    unit,
                    number: 0.0,
                    text: text.clone(),
                    at,
                })
            }
            _ => reply.question_about(),
        };
        let answered =
            !settled.reports.is_empty() || self.heard.ask.is_some() || self.heard.command.is_some();
        match question {
            Some(about) => {
                talk.question = Some(Question {
                    asked: self.now,
                    about,
                })
            }
            None if answered => talk.question = None,
            None => {}
        }
        reply.ask_back(
            talk.question
                .as_ref()
                .filter(|question| question.asked == self.now),
        );
        talk
    }

    /// Returns the trailers a sender most likely means: those talked of lately, then those at a job now.
    pub(super) fn likely_units(&self) -> Vec<UnitName> {
        let mut likely: Vec<UnitName> = Vec::new();
        for sent in self.desk.book.sent(&self.member.id).iter().rev() {
            likely.extend(
                sent.units
                    .iter()
                    .filter(|unit| !likely.contains(unit))
                    .cloned()
                    .collect::<Vec<_>>(),
            );
        }
        if likely.is_empty() {
            let now = self.now;
            let jobs = self
                .fleet
                .jobs
                .iter()
                .filter(|job| job.from - TimeDelta::hours(24) <= now && now <= job.to);
            likely.extend(jobs.flat_map(|job| job.trailers.iter().cloned()).take(4));
        }
        likely.truncate(4);
        likely
    }

    fn finish(
        &self,
        settled: Settled,
        cases: Vec<Case>,
        reply: Reply<'_>,
        mut records: Vec<Record>,
        talk: Talk,
    ) -> Turn {
        let at = self.inbound.at;
        let finished = reply.finish(self, &settled, &cases);
        let words = settled
            .words
            .into_iter()
            .map(|unit| (unit, at, Entry::default()));
        let reports = settled
            .reports
            .into_iter()
            .chain(words)
            .map(|(unit, at, entry)| {
                let too_old = self
                    .desk
                    .book
                    .unit(&unit)
                    .is_some_and(|kept| kept.too_old(at));
                Report {
                    unit,
                    at,
                    entry,
                    too_old,
                }
            });
        let unread = |remarks: &[Remark]| -> Vec<Unread> {
            let personal = |remark: &Remark| Unread {
                text: Personal::new(&remark.text),
                why: remark.why.clone(),
            };
            remarks.iter().map(personal).collect()
        };
        let message = Message {
            key: self.key.clone(),
            network: Personal::new(&*self.inbound.key.0),
            from: self.member.id.clone(),
            at,
            received: self.inbound.received,
            text: Personal::new(self.text),
            reports: reports.collect(),
            unclear: unread(&self.heard.unclear),
            set_aside: unread(&self.heard.set_aside),
            findings: finished.findings.clone(),
            reply: Personal::new(&finished.text),
            replaces: self.replaced().cloned(),
        };
        let mut turn = Turn::empty(at);
        turn.from = Some(self.member.id.clone());
        turn.tasks = finished.tasks;
        turn.forecast = finished.forecast;
        turn.records.push(Record::Message(Box::new(message)));
        turn.records.append(&mut records);
        turn.records.extend(finished.task_records);
        if self.desk.book.talk(&self.member.id) != Some(&talk) {
            turn.records.push(Record::Talk {
                who: self.member.id.clone(),
                talk: Box::new(talk),
            });
        }
        if !finished.text.is_empty() {
            turn.outgoing.push(Outgoing {
                to: self.member.id.clone(),
                chat: self.inbound.chat,
                level: finished.findings.iter().map(|finding| finding.level).max(),
                text: Personal::new(finished.text),
                answers: Some(self.inbound.key.clone()),
            });
        }
        turn.outgoing.extend(finished.others);
        turn.findings = finished.findings;
        turn.heard = Some(self.heard.clone());
        turn
    }
}

/// Returns the notice the hauler wants at the trailer's site.
pub(super) fn lead(case: &Case) -> TimeDelta {
    let hours = case.site().map_or(2.5, |site| site.pump_truck.lead_h);
    TimeDelta::minutes((hours * 60.0).round() as i64)
}

/// Tells whether a finding speaks of the message rather than of a trailer.
pub(super) fn of_the_message(id: FindingId) -> bool {
    id.topic() == "desk"
}
