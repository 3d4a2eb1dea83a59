//! A turn's reply put into words: late words first, then advice, what was logged, tasks, and what is asked.

use std::collections::BTreeMap;

use chrono::TimeDelta;

use super::super::phrases::is_marked;
use super::reply::Reply;
use super::{asked, is_question, nearest, topic, unplaced};
use crate::book::{Record, Task, TaskChange, TaskState};
use crate::desk::inbound::Outgoing;
use crate::desk::receive::{Hearing, closing_words, of_the_message};
use crate::desk::repeat::{self, Telling};
use crate::desk::settle::Settled;
use crate::desk::situate::Case;
use crate::desk::tasks::Board;
use crate::desk::truck;
use crate::desk::watch;
use crate::finding::{Finding, FindingId, Level};
use crate::heard::{Event, Fault, Remark, UnitName};
use crate::outlook::Outlook;
use crate::reply::{Answer, Arg, Context, Logged, TaskNote, TaskTurn};

/// How long nobody is told again how to write.
const TAUGHT_LASTS: TimeDelta = TimeDelta::hours(12);
/// How many newer reports are told beside a late one.
const MEANWHILE_LINES: usize = 3;

/// A turn's reply, ready to be written down and sent.
pub(in crate::desk) struct Finished {
    /// Whether it tells how to write.
    pub(in crate::desk) taught: bool,
    pub(in crate::desk) text: String,
    pub(in crate::desk) findings: Vec<Finding>,
    pub(in crate::desk) tasks: Vec<Task>,
    /// The tasks that changed, as they stood before.
    pub(in crate::desk) tasks_before: Vec<Task>,
    pub(in crate::desk) task_records: Vec<Record>,
    pub(in crate::desk) forecast: BTreeMap<UnitName, Outlook>,
    pub(in crate::desk) others: Vec<Outgoing>,
    /// The findings that are told in full.
    pub(in crate::desk) told: Vec<Finding>,
    /// The open tasks that are told.
    pub(in crate::desk) open_tasks: Vec<Task>,
    /// Whether nothing was read of the message, and it was no talk.
    pub(in crate::desk) unread: bool,
    /// Whether it says that something was logged.
    pub(in crate::desk) logged: bool,
    /// The likely answers to the step that is asked, by their codes.
    pub(in crate::desk) step_answers: &'static [&'static str],
}

impl Reply<'_> {
    /// Puts the reply into words.
    pub(in crate::desk) fn finish(
        mut self,
        hearing: &Hearing<'_>,
        settled: &Settled,
        cases: &[Case],
    ) -> Finished {
        self.findings.sort_by_key(Finding::order);
        self.tell_late(hearing, settled);
        self.tell_meanwhile(hearing, settled);
        self.place_card();
        let well = self.in_good_order(hearing, settled, cases);
        let told = self.told(hearing, settled);
        let full = told.iter().filter(|(_, telling)| *telling == Telling::Full);
        let told: Vec<Finding> = full.map(|(finding, _)| (*finding).clone()).collect();
        let task_notes = self.task_notes();
        let (unclear, taught) = unclear(hearing);
        let mut text = self.composed(hearing, settled, cases, &well, &task_notes, &unclear);
        let unread = text.is_empty() && !hearing.text.trim().is_empty();
        if unread {
            text = self.nothing_said(hearing, settled);
        }
        let unread = unread && !unplaced::is_talk_alone(hearing);
        let open = task_notes.into_iter().map(|(task, _)| task);
        let open_tasks = open.filter(|task| task.state == TaskState::Open).collect();
        let tasks = self.tasks_shown(hearing, cases);
        self.findings.append(&mut self.beside);
        self.findings.append(&mut self.listed);
        Finished {
            text,
            taught,
            findings: self.findings,
            tasks,
            tasks_before: self.board.before(),
            task_records: self.board.into_records().collect(),
            forecast: self.forecast,
            others: self.others,
            told,
            open_tasks,
            unread,
            logged: !settled.reports.is_empty(),
            step_answers: self.step_answers,
        }
    }

    /// Says first that a report came late, and when it was written.
    fn tell_late(&mut self, hearing: &Hearing<'_>, settled: &Settled) {
        if !self.late || settled.reports.is_empty() {
            return;
        }
        let sent = hearing.inbound.at;
        let own = settled.reports.iter().any(|(_, at, _)| *at != sent);
        let key = if own {
            "late-message-own"
        } else {
            "late-message"
        };
        let line = self.voice.say(key, &[("time", sent.into())]);
        self.opening.insert(0, line);
    }

    /// Says what was reported on the same trailers since, where the message tells of an earlier time: the advice goes by that.
    fn tell_meanwhile(&mut self, hearing: &Hearing<'_>, settled: &Settled) {
        let mut units: Vec<&UnitName> = Vec::new();
        for (unit, ..) in &settled.reports {
            if !units.contains(&unit) {
                units.push(unit);
            }
        }
        // a mended or edited report says what changed instead
        let rewrites = hearing.mends() || hearing.inbound.replaces.is_some();
        if let Some(line) = hearing.pump_out_taken(settled, &self.voice) {
            self.opening.extend(line);
            return;
        }
        let mut told = false;
        for unit in units.into_iter().filter(|_| !rewrites) {
            let of_it = settled.reports.iter().filter(|(other, ..)| other == unit);
            let Some(last) = of_it.map(|(_, at, _)| *at).max() else {
                continue;
            };
            let Some(kept) = hearing.desk.book.unit(unit) else {
                continue;
            };
            let spec = hearing.fleet.trailers.get(unit);
            let newer: Vec<_> = kept
                .reports()
                .filter(|(at, _, entry)| *at > last && !entry.is_empty())
                .collect();
            for (at, from, entry) in newer.iter().rev().take(MEANWHILE_LINES).rev() {
                let who = self.voice.person(from).into_owned();
                let what = self.voice.readings(entry, spec);
                let line = self.voice.say(
                    "late-since",
                    &[
                        ("unit", unit.as_str().into()),
                        ("time", (*at).into()),
                        ("who", who.into()),
                        ("what", what.into()),
                    ],
                );
                self.opening.push(line);
                told = true;
            }
        }
        if told {
            let line = self.voice.word("late-meanwhile");
            self.opening.push(line);
        }
    }

    /// Puts what whoever arrives must know before the advice, or after it where somebody can be hurt.
    fn place_card(&mut self) {
        let card = std::mem::take(&mut self.card);
        let grave = |finding: &Finding| finding.level >= Level::Warning;
        if self.findings.iter().any(grave) {
            self.lines.splice(..0, card);
        } else {
            self.opening.extend(card);
        }
    }

    /// Puts everything that was gathered into one text.
    fn composed(
        &mut self,
        hearing: &Hearing<'_>,
        settled: &Settled,
        cases: &[Case],
        well: &[&UnitName],
        task_notes: &[(Task, TaskTurn)],
        unclear: &[Remark],
    ) -> String {
        let heard = &hearing.heard;
        let (opening, first, lines) = (
            std::mem::take(&mut self.opening),
            std::mem::take(&mut self.first),
            std::mem::take(&mut self.lines),
        );
        let places: Vec<Option<String>> = cases.iter().map(Case::place).collect();
        let logged = settled.reports.iter().map(|(unit, at, entry)| {
            let place = cases.iter().position(|case| case.unit == *unit);
            Logged {
                unit,
                site: place.and_then(|place| places[place].as_deref()),
                entry,
                spec: place.and_then(|place| cases[place].spec()),
                at: (*at != hearing.inbound.at || self.late).then_some(*at),
                too_old: hearing
                    .desk
                    .book
                    .unit(unit)
                    .is_some_and(|kept| kept.too_old(*at)),
                all_well: well.contains(&unit),
            }
        });
        let tasks = task_notes
            .iter()
            .map(|(task, turn)| TaskNote { task, turn: *turn })
            .collect();
        let told = self.told(hearing, settled);
        let stands = self.still_standing(&told);
        let told = shortened(hearing, settled, &told, self.walked || self.step.is_some());
        let asks = self.several || is_question(hearing);
        let answered = self.asks_which_task || asks && heard.entries.is_empty();
        let site = hearing.site.as_ref();
        let site = site.and_then(|site| Some(hearing.fleet.sites.get(site)?.name.clone()));
        let answer = Answer {
            opening,
            context: settled.from_context.as_ref().map(|unit| match &site {
                Some(site) => Context::AtSite(unit, site),
                None => Context::Last(unit),
            }),
            first,
            findings: told.iter().collect(),
            stands,
            lines,
            logged: logged.collect(),
            tasks,
            // the words of an order are kept as typed
            taken: if heard.command.is_some() {
                &[]
            } else {
                &heard.taken
            },
            set_aside: self.set_aside(hearing, settled),
            answered: &heard.plans,
            // "12 done" is asked back about by its tasks
            unclear: if answered { &[] } else { unclear },
            question: self.question.as_ref(),
            step: self.step.as_deref(),
            zones: cases
                .iter()
                .filter_map(|case| Some((&case.unit, case.job()?.time_zone)))
                .collect(),
            without_hint: self.step.is_some()
                || (self.findings.iter()).all(|finding| of_the_message(finding.id)),
        };
        answer.compose(&self.voice)
    }

    /// Returns what this turn did to tasks, and the tasks that stand for the work its advice asks for.
    fn task_notes(&self) -> Vec<(Task, TaskTurn)> {
        let mut task_notes = notes(&self.board);
        // advice that asks for work says which task stands for it, also when nothing about the task changed
        for finding in &self.findings {
            let Some((unit, wish)) = finding.unit.as_ref().zip(finding.task.as_ref()) else {
                continue;
            };
            if let Some(task) = self.board.tasks().open_task(unit, wish.kind)
                && !task_notes.iter().any(|(other, _)| other.id == task.id)
            {
                task_notes.push((task.clone(), TaskTurn::Stands));
            }
        }
        task_notes
    }

    /// Tells of each finding how it is told.
    fn told(&self, hearing: &Hearing<'_>, settled: &Settled) -> Vec<(&Finding, Telling)> {
        let asks_only = asks_only(hearing, settled);
        // a correction of one number does not say again what it leaves as it was a moment ago
        let as_before = |finding: &Finding| {
            hearing.mends()
                && finding.level < Level::Danger
                && hearing.talk.advice.contains(finding)
        };
        let read = repeat::read_in(&hearing.heard);
        let telling = |finding: &Finding| match asks_only {
            true => Telling::Full,
            false if as_before(finding) => Telling::Silent,
            false => repeat::telling(finding, &self.findings, &read, &hearing.talk, hearing.now),
        };
        let findings = self.findings.iter();
        findings
            .map(|finding| (finding, telling(finding)))
            .collect()
    }

    /// Says by name what stands unchanged, a line a trailer.
    fn still_standing(&self, told: &[(&Finding, Telling)]) -> Vec<String> {
        let mut named: BTreeMap<&UnitName, Vec<String>> = BTreeMap::new();
        for (finding, telling) in told {
            if let (Telling::Named, Some(unit)) = (telling, &finding.unit) {
                let name = self.voice.name(finding.id, finding.level);
                named.entry(unit).or_default().push(name);
            }
        }
        let lines = named.into_iter().map(|(unit, names)| {
            let args = [
                ("unit", Arg::from(unit.as_str())),
                ("names", names.join("; ").into()),
            ];
            self.voice.say("still", &args)
        });
        lines.collect()
    }

    /// Returns what was understood and not logged, where nothing else answers it: a truck that does not come, an order of
    /// fire or police are answered as such.
    fn set_aside<'h>(&self, hearing: &'h Hearing<'_>, settled: &Settled) -> &'h [Remark] {
        let answered = asks_only(hearing, settled)
            || truck::is_told_of(hearing.desk.phrases, hearing.text)
            || watch::missed(hearing).is_some()
            || hearing.desk.answers.tells_of_an_order(hearing.text);
        // of what is only asked nothing was going to be done
        let planned = |remark: &Remark| matches!(remark.why.as_str(), "plan" | "question");
        let asks = settled.reports.is_empty()
            && topic::sounds_like_one(hearing.text)
            && hearing.heard.set_aside.iter().all(planned);
        if answered || asks {
            &[]
        } else {
            &hearing.heard.set_aside
        }
    }

    /// Answers a message on which there is nothing to say.
    fn nothing_said(&self, hearing: &Hearing<'_>, settled: &Settled) -> String {
        let stands = |unit: &UnitName, id| {
            let kept = hearing.desk.book.unit(unit);
            let mut dangers = Fault::DANGERS.iter();
            dangers.any(|fault| {
                let of_it = FindingId::of_fault(*fault) == id;
                of_it && kept.is_some_and(|kept| kept.state().has(*fault))
            })
        };
        if let Some((unit, says)) = repeat::still_open(&hearing.talk, hearing.now, stands) {
            let again = format!("{unit}: {}", self.voice.word(says));
            let ends = closing_words(&self.voice, unit, &hearing.dangers_on(unit));
            return [vec![again], ends].concat().join("\n");
        }
        if let Some(task) = nearest::task_shown(hearing, &self.voice) {
            return task;
        }
        // "what a day, 12 all good" only sounds like a question
        let marked = is_marked(hearing.text) || !hearing.heard.set_aside.is_empty();
        let asks = topic::sounds_like_one(hearing.text);
        if asks && (marked || settled.words.is_empty()) {
            let acts = topic::asks_to_act(hearing.text);
            return self.voice.word(match acts {
                true => "answer-cannot-tell",
                false => "question-unknown",
            });
        }
        let order = || nearest::order(hearing, &self.voice);
        let ordered = settled.words.is_empty().then(order).flatten();
        let unplaced = || unplaced::said(hearing, settled, &self.voice);
        if let Some(said) = ordered.or_else(unplaced) {
            return said;
        }
        if !settled.words.is_empty() {
            let units: Vec<String> = settled.words.iter().map(ToString::to_string).collect();
            let units = self.voice.all_of(&units);
            return self.voice.say("heard-of", &[("units", units.into())]);
        }
        // thanks, names, a ticket's number: what the reader did not ask about is no report
        self.voice.word("nothing-to-log")
    }

    /// Returns the tasks to list with the turn: those of the units concerned, and those it changed.
    fn tasks_shown(&self, hearing: &Hearing<'_>, cases: &[Case]) -> Vec<Task> {
        let units: Vec<UnitName> = cases
            .iter()
            .map(|case| case.unit.clone())
            .chain(asked(hearing))
            .collect();
        let all = hearing.desk.book.tasks();
        let mut shown: Vec<u32> = units
            .iter()
            .flat_map(|unit| self.board.tasks().open_on(unit).map(|task| task.id))
            .collect();
        shown.extend(self.board.touched().map(|task| task.id));
        if self.every_task {
            shown.extend(all.open().map(|task| task.id));
        }
        shown.sort_unstable();
        shown.dedup();
        let on_board = |id: &u32| self.board.tasks().task(*id).or(all.task(*id)).cloned();
        shown.iter().filter_map(on_board).collect()
    }
}

/// Returns the findings that are told. Those said a moment ago come in a line where the message only says that they still
/// stand, or answers a step of their check; in full where it is worse.
fn shortened(
    hearing: &Hearing<'_>,
    settled: &Settled,
    told: &[(&Finding, Telling)],
    walked: bool,
) -> Vec<Finding> {
    let says = |list| hearing.desk.answers.says("any", list, hearing.text);
    let goes = [Event::Left, Event::Hitched];
    let mut reports = settled.reports.iter();
    let goes = reports.any(|(.., entry)| entry.events.iter().any(|event| goes.contains(event)));
    let calm = !goes && !says("worse") && !asks_only(hearing, settled) && !hearing.mends();
    let unchanged = walked || says("stands");
    // the same warning told again a moment later; what will kill is told in full, unless it is said to stand
    let in_short = |finding: &Finding| calm && (unchanged || finding.level < Level::Danger);
    let full = told.iter().filter(|(_, telling)| *telling == Telling::Full);
    full.map(|(finding, _)| {
        let again = in_short(finding).then(|| repeat::again(finding, &hearing.talk, hearing.now));
        again.flatten().unwrap_or_else(|| (*finding).clone())
    })
    .collect()
}

/// Returns what was not understood, and whether that tells how to write: it is said once, then only where to find it.
fn unclear(hearing: &Hearing<'_>) -> (Vec<Remark>, bool) {
    let lately = |at| hearing.now - at <= TAUGHT_LASTS;
    let again = hearing.talk.taught.is_some_and(lately);
    let mut unclear = hearing.heard.unclear.clone();
    let mut taught = false;
    for remark in unclear
        .iter_mut()
        .filter(|remark| remark.why == Remark::NOT_UNDERSTOOD)
    {
        taught |= !again;
        if again {
            remark.why = "not-understood-again".into();
        }
    }
    (unclear, taught)
}

/// Tells whether the message asks and reports nothing.
fn asks_only(hearing: &Hearing<'_>, settled: &Settled) -> bool {
    settled.reports.is_empty() && (hearing.heard.ask.is_some() || is_question(hearing))
}

/// Returns what this turn did to tasks, each once, as it stands now.
fn notes(board: &Board) -> Vec<(Task, TaskTurn)> {
    let mut notes: BTreeMap<u32, TaskTurn> = BTreeMap::new();
    for change in board.changes() {
        let (id, turn) = match change {
            TaskChange::Opened { task } => (task.id, TaskTurn::Opened),
            TaskChange::Redated { id, .. } | TaskChange::Wanted { id, .. } => {
                (*id, TaskTurn::Stands)
            }
            TaskChange::Called { id, .. }
            | TaskChange::Here { id, .. }
            | TaskChange::Uncalled { id, .. } => (*id, TaskTurn::Stands),
            TaskChange::Restored { task } => (task.id, TaskTurn::Stands),
            TaskChange::Taken { id, .. } => (*id, TaskTurn::Taken),
            TaskChange::Done { id, .. } | TaskChange::Dropped { id, .. } => (*id, TaskTurn::Closed),
            TaskChange::Reopened { id } => (*id, TaskTurn::Reopened),
            TaskChange::Escalated { .. } => continue,
        };
        notes
            .entry(id)
            .and_modify(|was| {
                *was = if *was == TaskTurn::Opened && turn == TaskTurn::Stands {
                    *was
                } else {
                    turn
                }
            })
            .or_insert(turn);
    }
    notes
        .into_iter()
        .filter_map(|(id, turn)| Some((board.tasks().task(id)?.clone(), turn)))
        .collect()
}
