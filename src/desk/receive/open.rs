//! What stays open with the sender after a message, and the question that is asked with the reply.

use super::super::ahead;
use super::super::answer::{self, Reply};
use super::super::command;
use super::super::incident;
use super::super::repeat;
use super::super::settle::{Settled, known, merge};
use super::super::withdrawn;
use super::Hearing;
use crate::book::{AheadChange, Record};
use crate::dialogue::{About, Check, Question, Talk};
use crate::finding::{Finding, FindingId};
use crate::fleet::Role;
use crate::heard::{Ask, Entry, Remark, UnitName};

impl Hearing<'_> {
    /// Returns what is open with the sender after this message, and asks what has to be asked.
    pub(super) fn talk_after(
        &self,
        settled: &Settled,
        reply: &mut Reply<'_>,
        records: &[Record],
    ) -> Talk {
        let mut talk = self.talk.clone();
        self.note_subject(settled, reply, &mut talk);
        let read = repeat::read_in(&self.heard);
        repeat::note(&reply.findings, &read, &mut talk, self.now);
        self.note_advice(reply, &mut talk);
        self.note_steps(reply, &mut talk);
        self.note_question(settled, reply, &mut talk);
        let puts = !settled.reports.is_empty()
            || reply.board.touched().next().is_some()
            || records.iter().any(can_be_taken_back);
        talk.undone = reply.undone || talk.undone && !puts;
        reply.ask_back(
            talk.question
                .as_ref()
                .filter(|question| question.asked == self.now),
            self.desk.book.tasks(),
        );
        talk
    }

    /// Notes the trailer that is talked about from now on, and the language.
    fn note_subject(&self, settled: &Settled, reply: &Reply<'_>, talk: &mut Talk) {
        // "who has 16" is no talk of 16: a danger told next would go to the wrong trailer
        let asked = answer::asked(self).filter(|_| !answer::asks_who_or_where(self));
        let last = settled
            .reports
            .last()
            .map(|(unit, ..)| unit.clone())
            .or(asked)
            .or_else(|| self.is_at(settled))
            .or_else(|| reply.confirmed.last().map(|(unit, _)| unit.clone()));
        if !settled.reports.is_empty() {
            talk.guessed = settled.from_context.is_some();
        }
        if let Some(unit) = last {
            talk.unit = Some((unit, self.inbound.at));
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
    }

    /// Notes what was advised, for whoever asks why or for more.
    fn note_advice(&self, reply: &mut Reply<'_>, talk: &mut Talk) {
        if let Some(About::NoDanger { unit, .. }) = &reply.asks {
            // where it stands again it is told in full
            talk.told.retain(|told| told.unit != *unit);
        }
        if !reply.findings.is_empty() || !reply.beside.is_empty() {
            let advice = reply.findings.iter().chain(&reply.beside);
            talk.advice = advice.cloned().collect();
        }
        talk.more = reply.more.take();
        if command::is_for_good(self, reply) {
            talk.fixed = Some(self.now);
        } else if self.heard.ask == Some(Ask::Undo) {
            talk.fixed = None;
        }
    }

    /// Notes the checks and the list that are gone through: their trailer is the one talked about.
    fn note_steps(&self, reply: &mut Reply<'_>, talk: &mut Talk) {
        let at = self.inbound.at;
        if let Some(checks) = reply.checks.take() {
            let asked = |check: &&Check| reply.step.is_some() && !check.waits;
            if let Some(check) = checks.last().filter(asked) {
                talk.unit = Some((check.unit.clone(), at));
            }
            talk.checks = checks;
        }
        if let Some(round) = reply.round.take() {
            if let Some(round) = &round {
                talk.unit = Some((round.unit.clone(), at));
            }
            talk.round = round;
        }
    }

    /// Notes the question that is open from now on: the one that is asked now, or the one before where it still waits.
    fn note_question(&self, settled: &Settled, reply: &mut Reply<'_>, talk: &mut Talk) {
        let question = self
            .question(settled, talk, reply)
            .or_else(|| self.asks_the_fact_again(settled))
            .or_else(|| withdrawn::asks_again(self))
            .or_else(|| self.asks_of_the_taps_again(settled));
        let answered = !settled.reports.is_empty()
            || self.heard.ask.is_some()
            || self.heard.command.is_some()
            || reply.board.touched().next().is_some();
        match question {
            Some(about) => {
                talk.question = Some(Question {
                    asked: self.now,
                    about,
                })
            }
            None if answered => match self.waiting(talk) {
                // a report that waits for its trailer is not lost by talking of another
                Some(entry) => {
                    let what = reply.voice.readings(entry, None);
                    reply.say("ask-still", &[("what", what.into())]);
                }
                None if self.leaves_the_fact_open() => {}
                None => talk.question = None,
            },
            None => {}
        }
        let offered = reply.offers.take().filter(|_| talk.question.is_none());
        if let Some(unit) = offered {
            talk.question = Some(Question {
                asked: self.now,
                about: About::Alone { unit },
            });
        }
    }

    /// "I'm at 16", "16 all good": the trailer that the sender speaks of now, and not of one they will go to.
    fn is_at(&self, settled: &Settled) -> Option<UnitName> {
        let now = self.heard.plans.is_empty() && self.heard.set_aside.is_empty();
        match settled.words.as_slice() {
            [unit] if now => Some(unit.clone()),
            _ => None,
        }
    }

    /// Tells whether an incident's fact stays asked while the dispatcher sees to something else.
    fn leaves_the_fact_open(&self) -> bool {
        let of_an_incident = |about: &&About| {
            let asked = matches!(about, About::IncidentFact { .. } | About::HurtNow { .. });
            let asks = incident::only_asks(self.desk.phrases, &self.heard);
            asked && (asks || !incident::is_one(&self.heard))
        };
        self.open_about().filter(of_an_incident).is_some()
    }

    /// Returns the fact of an incident that waits, to be asked again where the dispatcher only asked something beside it.
    fn asks_the_fact_again(&self, settled: &Settled) -> Option<About> {
        let asked = self.heard.ask.is_some() || answer::is_question(self);
        let only = asked && settled.reports.is_empty() && self.heard.command.is_none();
        let open = only && self.leaves_the_fact_open();
        self.open_about().filter(|_| open).cloned()
    }

    /// Asks again how the taps stood where what is denied of them leaves it open: "they were not open".
    fn asks_of_the_taps_again(&self, settled: &Settled) -> Option<About> {
        let about = self.open_about()?;
        let says = |list| self.desk.phrases.holds("taps", list, self.text);
        let speaks = says("not") && (says("shut") || says("running"));
        let only = settled.reports.is_empty() && self.heard.command.is_none();
        let again = matches!(about, About::TapsShut { .. }) && speaks && only;
        again.then(|| about.clone())
    }

    /// Returns the one question to ask, if any.
    fn question(&self, settled: &Settled, talk: &Talk, reply: &Reply<'_>) -> Option<About> {
        let at = self.inbound.at;
        if let Some(about) = self.asks.as_ref().or(reply.asks.as_ref()) {
            return Some(about.clone());
        }
        let of_the_road = |entry: &&Entry| {
            let own = self.desk.phrases.holds("road", "own", self.text);
            ahead::is_eta_alone(entry) && (own || self.member.role != Role::Dispatcher)
        };
        if let Some(entry) = settled.homeless.as_ref().filter(|told| !of_the_road(told)) {
            let mut entry = entry.clone();
            let mut at = at;
            // what waited before it waits with it
            if let Some(About::WhichUnit {
                entry: waits,
                at: since,
                ..
            }) = self.open_about()
            {
                let mut both = waits.clone();
                merge(&mut both, &entry);
                entry = both;
                at = *since;
            }
            let likely = self.likely_units();
            return Some(About::WhichUnit { entry, at, likely });
        }
        if let Some((text, entry)) = settled.odd_times.first() {
            return Some(About::When {
                entry: entry.clone(),
                text: text.clone(),
            });
        }
        if self.is_bare_done(reply) {
            let (ids, _) = answer::tasks_in_hand(self);
            return (!ids.is_empty())
                .then_some(About::WhichTask { ids })
                .or_else(|| reply.question_about());
        }
        if let Some(about) = self.asks_for_live_cords(talk) {
            return Some(about);
        }
        match self.heard.unclear.as_slice() {
            [Remark { text, why }] if why == "done-what" => {
                let ids = self.tasks_done(settled, talk);
                (!ids.is_empty())
                    .then_some(About::WhichTask { ids })
                    .or_else(|| reply.question_about())
            }
            [Remark { text, .. }]
                if text.chars().any(|c| c.is_ascii_digit())
                    && !(reply.several || answer::is_question(self)) =>
            {
                let unit = talk.unit.as_ref().map(|(unit, _)| unit.clone());
                Some(About::WhatValue {
                    unit,
                    number: 0.0,
                    text: text.clone(),
                    at,
                })
            }
            _ => self.ask_if_pumped(reply).or_else(|| reply.question_about()),
        }
    }

    /// "12 lost 2 cords": how many have power, on the one trailer that is named, or else talked about.
    fn asks_for_live_cords(&self, talk: &Talk) -> Option<About> {
        let mut unclear = self.heard.unclear.iter();
        if !unclear.any(|remark| remark.why == Remark::CORDS_LIVE) {
            return None;
        }
        let talked = || talk.unit.as_ref().map(|(unit, _)| unit.clone());
        let unit = match self.names().as_slice() {
            [unit] => Some(unit.clone()),
            [] => talked(),
            _ => None,
        };
        let at = self.inbound.at;
        unit.map(|unit| About::CordsLive { unit, at })
    }

    /// Takes "done" and no more for the one task in hand.
    pub(super) fn one_task_done(&mut self, settled: &Settled) {
        let bare = self.heard.ask.is_none() && self.desk.phrases.is("tasks", "done", self.text);
        if !bare || !settled.reports.is_empty() {
            return;
        }
        // one that nobody has taken may not be what was meant: it is asked
        let (ids, mine) = answer::tasks_in_hand(self);
        if let ([task], true) = (ids.as_slice(), mine) {
            self.heard.ask = Some(Ask::Done { task: *task });
        }
    }

    /// Tells whether the message is "done" and no more, and nothing that waits has taken it for its answer.
    fn is_bare_done(&self, reply: &Reply<'_>) -> bool {
        self.heard.ask.is_none()
            && reply.step.is_none()
            && !reply.walked
            && self.desk.phrases.is("tasks", "done", self.text)
    }

    /// Returns the open tasks that "12 done" can mean.
    fn tasks_done(&self, settled: &Settled, talk: &Talk) -> Vec<u32> {
        let named = self
            .heard
            .named
            .iter()
            .chain(talk.unit.as_ref().map(|(unit, _)| unit));
        let unit = settled
            .reports
            .first()
            .map(|(unit, ..)| unit)
            .or_else(|| named.into_iter().find_map(|name| known(&self.fleet, name)));
        let tasks = self.desk.book.tasks();
        let ids: Vec<u32> = unit
            .map(|unit| tasks.open_on(unit).map(|task| task.id).collect())
            .unwrap_or_default();
        ids
    }

    fn open_about(&self) -> Option<&About> {
        self.talk
            .question_at(self.inbound.at)
            .map(|question| &question.about)
    }

    /// Returns the report that still waits for its trailer and was not dropped by this message.
    fn waiting<'t>(&self, talk: &'t Talk) -> Option<&'t Entry> {
        let question = talk.question_at(self.inbound.at)?;
        match &question.about {
            About::WhichUnit { entry, .. } if self.heard.command.is_none() => Some(entry),
            _ => None,
        }
    }
}

/// Tells whether a record is of something that its sender put there, which an undo takes back.
fn can_be_taken_back(record: &Record) -> bool {
    match record {
        Record::Watch { .. }
        | Record::Note { .. }
        | Record::NotesCleared { .. }
        | Record::Confirmed { .. }
        | Record::Override { .. } => true,
        Record::Ahead { change, .. } => matches!(change, AheadChange::Weather { .. }),
        _ => false,
    }
}
