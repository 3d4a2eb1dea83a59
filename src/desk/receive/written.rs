//! The turn as it is written down and sent: the message with its reports, what changed, the reply.

use super::super::answer::Reply;
use super::super::choices;
use super::super::inbound::{Outgoing, Turn};
use super::super::settle::Settled;
use super::super::situate::Case;
use super::Hearing;
use crate::book::{Message, Personal, Record, Report, Unread};
use crate::dialogue::Talk;
use crate::heard::{Ask, Entry, Remark};

impl Hearing<'_> {
    pub(super) fn finish(
        &self,
        settled: Settled,
        cases: Vec<Case>,
        reply: Reply<'_>,
        mut records: Vec<Record>,
        mut talk: Talk,
    ) -> Turn {
        let at = self.inbound.at;
        let mut finished = reply.finish(self, &settled, &cases);
        if self.says_the_same(&settled) {
            finished.text.clear();
            finished.others.clear();
        }
        if finished.taught {
            talk.taught = Some(self.now);
        }
        if finished.unread
            && let Some(round) = &mut talk.round
        {
            round.unread = true;
        }
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
            text: Personal::new(self.written),
            reports: reports.collect(),
            unclear: unread(&self.heard.unclear),
            set_aside: unread(&self.heard.set_aside),
            findings: finished.findings.clone(),
            reply: Personal::new(&finished.text),
            replaces: self.replaced().cloned(),
            // what an undo does is not undone, but done again
            tasks_before: match self.heard.ask {
                Some(Ask::Undo) => Vec::new(),
                _ => finished.tasks_before,
            },
        };
        let said = choices::Said {
            findings: &finished.told,
            tasks: &finished.open_tasks,
            logged: finished.logged,
            talk: &talk,
            step: finished.step_answers,
        };
        let choices = choices::of_reply(self, &self.voice(), &said);
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
            turn.outgoing.push(
                Outgoing::to(&self.member.id, finished.text)
                    .answering(self.inbound)
                    .offering(choices)
                    .of_level(finished.findings.iter().map(|finding| finding.level).max()),
            );
        }
        turn.outgoing.extend(finished.others);
        turn.findings = finished.findings;
        turn.heard = Some(self.heard.clone());
        turn
    }
}
