//! What one tick has to say, gathered so that each person gets one message, with how to answer it at its end.

use std::collections::BTreeMap;

use chrono::{DateTime, Utc};

use super::super::Desk;
use super::super::choices;
use super::super::inbound::{Outgoing, Turn};
use super::{dispatchers, rest, voice_of};
use crate::book::{AheadChange, Held, Personal, Record};
use crate::finding::Level;
use crate::fleet::Fleet;

/// How something said can be answered.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Answer {
    /// It wants no answer.
    None,
    /// "got it" stops it.
    GotIt,
    /// "take 41" or "got it" stops it.
    Take(u32),
    /// It says itself how to answer.
    InText,
}

/// What there is to say, by person.
#[derive(Debug, Default)]
pub(super) struct Say {
    lines: BTreeMap<String, Vec<(Option<Level>, String, Answer)>>,
    was_due: Option<DateTime<Utc>>,
}

impl Say {
    /// Adds something to say to a person.
    pub(super) fn add(&mut self, to: &str, level: Option<Level>, text: String, answer: Answer) {
        let lines = self.lines.entry(to.to_owned()).or_default();
        if !lines.iter().any(|(_, other, _)| *other == text) {
            lines.push((level, text, answer));
        }
    }

    /// Notes that something should have been said at `at`.
    pub(super) fn was_due(&mut self, at: DateTime<Utc>) {
        self.was_due = Some(self.was_due.map_or(at, |was| was.min(at)));
    }

    /// Holds back what can wait from those in their own quiet hours.
    fn let_rest(&mut self, desk: &Desk, fleet: &Fleet, now: DateTime<Utc>, turn: &mut Turn) {
        for (who, lines) in &mut self.lines {
            if !rest::rests(desk, fleet, who, now) {
                continue;
            }
            let waits = |(level, _, answer): &(Option<Level>, String, Answer)| {
                rest::can_wait(desk, fleet, now, *level, *answer)
            };
            for (level, text, _) in lines.iter().filter(|line| waits(line)) {
                let held = Held {
                    to: who.clone(),
                    at: now,
                    text: Personal::new(text),
                    level: *level,
                };
                let change = AheadChange::Held { held };
                turn.records.push(Record::Ahead { at: now, change });
            }
            lines.retain(|line| !waits(line));
        }
        self.lines.retain(|_, lines| !lines.is_empty());
    }

    /// Puts out one message a person; tells whether a dispatcher was spoken to.
    ///
    /// Who drives gets nothing: it waits until they are there, and a danger goes to the dispatchers as "phone them".
    pub(super) fn send(
        mut self,
        desk: &Desk,
        fleet: &Fleet,
        now: DateTime<Utc>,
        turn: &mut Turn,
    ) -> bool {
        let driving: Vec<String> = self
            .lines
            .keys()
            .filter(|to| desk.book.ahead().road(to, now).is_some())
            .cloned()
            .collect();
        for who in driving {
            let lines = self.lines.remove(&who).unwrap_or_default();
            let level = lines.iter().filter_map(|(level, ..)| *level).max();
            if level == Some(Level::Danger) {
                for to in dispatchers(fleet).filter(|to| *to != who) {
                    if let Some(voice) = voice_of(desk, fleet, to, now) {
                        let name = voice.person(&who).into_owned();
                        let text = voice.say("alarm-driving", &[("who", name.into())]);
                        self.add(to, level, text, Answer::GotIt);
                    }
                }
            }
            let text: Vec<String> = lines.into_iter().map(|(_, text, _)| text).collect();
            let held = Held {
                to: who,
                at: now,
                text: Personal::new(text.join("\n")),
                level,
            };
            let change = AheadChange::Held { held };
            turn.records.push(Record::Ahead { at: now, change });
        }
        self.let_rest(desk, fleet, now, turn);
        let mut spoke = false;
        for (to, mut lines) in self.lines {
            let Some(voice) = voice_of(desk, fleet, &to, now) else {
                continue;
            };
            lines.sort_by_key(|(level, ..)| std::cmp::Reverse(*level));
            let mut text: Vec<String> = Vec::new();
            if let Some(was) = self.was_due {
                let late = voice.age(was);
                text.push(voice.say(
                    "speak-was-due",
                    &[("time", was.into()), ("age", late.into())],
                ));
            }
            text.extend(lines.iter().map(|(_, text, _)| text.clone()));
            let task = lines.iter().find_map(|(_, _, answer)| match answer {
                Answer::Take(id) => Some(*id),
                _ => None,
            });
            let got_it = lines.iter().any(|(.., answer)| *answer == Answer::GotIt);
            match task {
                Some(id) => text.push(voice.say("speak-answer-task", &[("id", id.into())])),
                None if got_it => text.push(voice.word("alarm-answer")),
                None => {}
            }
            spoke |= dispatchers(fleet).any(|other| other == to)
                && lines.iter().any(|(.., answer)| *answer != Answer::None);
            let out = Outgoing::to(&to, text.join("\n"))
                .of_level(lines.iter().filter_map(|(level, ..)| *level).max());
            turn.outgoing.push(match task {
                Some(id) => choices::for_task(out, &voice, id),
                None if got_it => out.offering(vec![choices::got_it(&voice)]),
                None => out,
            });
        }
        spoke
    }
}
