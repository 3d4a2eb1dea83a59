//! What stays open with the sender after a message, and the question that is asked with the reply.

use chrono::TimeDelta;

use super::super::answer::{self, Reply};
use super::super::repeat;
use super::super::settle::Settled;
use super::Hearing;
use crate::dialogue::{About, Question, Talk};
use crate::finding::{Finding, FindingId};
use crate::heard::{Remark, UnitName};

impl Hearing<'_> {
    /// Returns what is open with the sender after this message, and asks what has to be asked.
    pub(super) fn talk_after(&self, settled: &Settled, reply: &mut Reply<'_>) -> Talk {
        let mut talk = self.talk.clone();
        let at = self.inbound.at;
        let asked = answer::asked(self);
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
        if !reply.findings.is_empty() || !reply.beside.is_empty() {
            talk.advice = reply
                .findings
                .iter()
                .chain(&reply.beside)
                .cloned()
                .collect();
        }
        if let Some(checks) = reply.checks.take() {
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
    pub(in crate::desk) fn likely_units(&self) -> Vec<UnitName> {
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
}
