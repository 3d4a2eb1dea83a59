//! What one tick has to say, gathered so that each person gets one message, with how to answer it at its end.

use std::collections::BTreeMap;

use chrono::{DateTime, Utc};

use super::super::Desk;
use super::super::choices;
use super::super::inbound::{Outgoing, Turn};
use super::{dispatchers, rest, voice_of};
use crate::book::{AheadChange, Held, HeldOf, Personal, Record};
use crate::finding::Level;
use crate::fleet::Fleet;
use crate::reply::Voice;

/// How something said can be answered.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Answer {
    /// It wants no answer.
    None,
    /// "got it" stops it.
    GotIt,
    /// "take 41" or "got it" stops it.
    Take(u32),
    /// "ok", or "help", by somebody who works alone.
    Well,
    /// It says itself how to answer.
    InText,
}

/// Something to say to one person.
#[derive(Debug)]
struct Line {
    level: Option<Level>,
    text: String,
    answer: Answer,
    /// What it tells of, where that can be told anew.
    of: Option<HeldOf>,
    /// When it should have been said, where it is late.
    was_due: Option<DateTime<Utc>>,
}

/// What there is to say, by person.
#[derive(Debug, Default)]
pub(super) struct Say {
    lines: BTreeMap<String, Vec<Line>>,
    was_due: Option<DateTime<Utc>>,
}

impl Say {
    /// Adds something to say to a person.
    pub(super) fn add(&mut self, to: &str, level: Option<Level>, text: String, answer: Answer) {
        self.add_of(to, (level, answer), text, None);
    }

    /// Adds something to say to a person that is told anew, or not at all, where it has to wait.
    pub(super) fn add_of(
        &mut self,
        to: &str,
        (level, answer): (Option<Level>, Answer),
        text: String,
        of: Option<HeldOf>,
    ) {
        let lines = self.lines.entry(to.to_owned()).or_default();
        if !lines.iter().any(|other| other.text == text) {
            lines.push(Line {
                level,
                text,
                answer,
                of,
                was_due: self.was_due,
            });
        }
    }

    /// Notes when what is said next should have been said; none where it is in time.
    pub(super) fn was_due(&mut self, at: Option<DateTime<Utc>>) {
        self.was_due = at;
    }

    /// Holds back what can wait from those in their own quiet hours.
    fn let_rest(&mut self, desk: &Desk, fleet: &Fleet, now: DateTime<Utc>, turn: &mut Turn) {
        for (who, lines) in &mut self.lines {
            if !rest::rests(desk, fleet, who, now) {
                continue;
            }
            let waits = |line: &Line| rest::can_wait(desk, fleet, now, line.level, line.answer);
            for line in lines.iter().filter(|line| waits(line)) {
                let held = Held {
                    to: who.clone(),
                    at: now,
                    text: Personal::new(&line.text),
                    level: line.level,
                    of: line.of.clone(),
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
            let level = lines.iter().filter_map(|line| line.level).max();
            if level == Some(Level::Danger) {
                for to in dispatchers(fleet).filter(|to| *to != who) {
                    if let Some(voice) = voice_of(desk, fleet, to, now) {
                        let name = voice.person(&who).into_owned();
                        let text = voice.say("alarm-driving", &[("who", name.into())]);
                        self.add(to, level, text, Answer::GotIt);
                    }
                }
            }
            turn.records.extend(lines.into_iter().map(|line| {
                let held = Held {
                    to: who.clone(),
                    at: now,
                    text: Personal::new(line.text),
                    level: line.level,
                    of: line.of,
                };
                let change = AheadChange::Held { held };
                Record::Ahead { at: now, change }
            }));
        }
        self.let_rest(desk, fleet, now, turn);
        let mut spoke = false;
        for (to, mut lines) in self.lines {
            let Some(voice) = voice_of(desk, fleet, &to, now) else {
                continue;
            };
            lines.sort_by_key(|line| std::cmp::Reverse(line.level));
            let mut text = told_late(&lines, &voice);
            let task = lines.iter().find_map(|line| match line.answer {
                Answer::Take(id) => Some(id),
                _ => None,
            });
            let got_it = lines.iter().any(|line| line.answer == Answer::GotIt);
            match task {
                Some(id) => text.push(voice.say("speak-answer-task", &[("id", id.into())])),
                None if got_it => text.push(voice.word("alarm-answer")),
                None => {}
            }
            spoke |= dispatchers(fleet).any(|other| other == to)
                && lines.iter().any(|line| line.answer != Answer::None);
            let out = Outgoing::to(&to, text.join("\n"))
                .of_level(lines.iter().filter_map(|line| line.level).max());
            let asks = lines.iter().any(|line| line.answer == Answer::Well);
            turn.outgoing.push(match task {
                _ if asks => out.offering(choices::well(&voice)),
                Some(id) => choices::for_task(out, &voice, id),
                None if got_it => out.offering(vec![choices::got_it(&voice)]),
                None => out,
            });
        }
        spoke
    }
}

/// Returns what the lines say, with how late: once above them where all are late by the same, else before each.
fn told_late(lines: &[Line], voice: &Voice<'_>) -> Vec<String> {
    let late = |was: DateTime<Utc>| {
        let args = [("time", was.into()), ("age", voice.age(was).into())];
        voice.say("speak-was-due", &args)
    };
    let first = lines.first().and_then(|line| line.was_due);
    if lines.iter().all(|line| line.was_due == first) {
        let head = first.map(late);
        let told = lines.iter().map(|line| line.text.clone());
        return head.into_iter().chain(told).collect();
    }
    let told = lines.iter().map(|line| match line.was_due {
        Some(was) => format!("{} {}", late(was), line.text),
        None => line.text.clone(),
    });
    told.collect()
}
