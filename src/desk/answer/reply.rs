//! What a turn has to say to the sender, gathered as it goes and put into words at its end.

use std::collections::BTreeMap;

use chrono::{DateTime, Utc};

use super::asked;
use crate::book::{Record, Task, TaskChange, TaskState, Tasks};
use crate::desk::inbound::Outgoing;
use crate::desk::receive::{Hearing, of_the_message};
use crate::desk::repeat::{self, Telling};
use crate::desk::settle::{self, Settled};
use crate::desk::situate::Case;
use crate::desk::tasks::Board;
use crate::desk::truck;
use crate::dialogue::{About, Check, Question, Round};
use crate::finding::{Finding, FindingId, Level};
use crate::heard::{Entry, ReadingKey, Remark, UnitName};
use crate::outlook::Outlook;
use crate::reply::{Answer, Arg, Context, Logged, TaskNote, TaskTurn, Voice};

/// How long nobody is told again how to write.
const TAUGHT_LASTS: chrono::TimeDelta = chrono::TimeDelta::hours(12);
/// How many newer reports are told beside a late one.
const MEANWHILE_LINES: usize = 3;

/// What a turn has to say to the sender, gathered as it goes.
pub(in crate::desk) struct Reply<'a> {
    pub(in crate::desk) voice: Voice<'a>,
    pub(in crate::desk) board: Board,
    pub(in crate::desk) findings: Vec<Finding>,
    pub(in crate::desk) lines: Vec<String>,
    pub(in crate::desk) opening: Vec<String>,
    pub(in crate::desk) others: Vec<Outgoing>,
    pub(in crate::desk) late: bool,
    /// Findings that hold and are listed, but told in other words: those of a digest.
    pub(in crate::desk) listed: Vec<Finding>,
    /// Findings that hold beside the answer to a question: listed, told by name, and open to "why".
    pub(in crate::desk) beside: Vec<Finding>,
    /// The answer to a question, in words: said before all but what could kill.
    pub(in crate::desk) first: Vec<String>,
    /// What the sender's guided checks come to, where they were gone through.
    pub(in crate::desk) checks: Option<Vec<Check>>,
    /// The step of a guided check that is asked, in words.
    pub(in crate::desk) step: Option<String>,
    /// The likely answers to the step that is asked, of a check, of setting up or leaving, by their codes.
    pub(in crate::desk) step_answers: &'static [&'static str],
    /// What whoever arrives must know, said before the advice unless that is of a danger.
    pub(in crate::desk) card: Vec<String>,
    /// What the sender's setting up or leaving comes to, where this turn changed it.
    pub(in crate::desk) round: Option<Option<Round>>,
    /// Whether the message carried a guided check on.
    pub(in crate::desk) walked: bool,
    forecast: BTreeMap<UnitName, Outlook>,
    /// The question that an order or a wish raises.
    pub(in crate::desk) asks: Option<About>,
    /// Whether a report was taken back.
    pub(in crate::desk) undone: bool,
    asks_which_task: bool,
    /// Steps of leaving that were done by word.
    pub(in crate::desk) confirmed: Vec<(UnitName, String)>,
    question: Option<About>,
    pub(super) every_task: bool,
}

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
    /// Whether it says that something was logged.
    pub(in crate::desk) logged: bool,
    /// The likely answers to the step that is asked, by their codes.
    pub(in crate::desk) step_answers: &'static [&'static str],
}

impl<'a> Reply<'a> {
    pub(in crate::desk) fn new(hearing: &'a Hearing<'_>, board: Board) -> Self {
        Reply {
            voice: hearing.voice(),
            board,
            findings: Vec::new(),
            lines: Vec::new(),
            opening: Vec::new(),
            others: Vec::new(),
            late: false,
            listed: Vec::new(),
            beside: Vec::new(),
            first: Vec::new(),
            checks: None,
            step: None,
            step_answers: &[],
            card: Vec::new(),
            round: None,
            walked: false,
            forecast: BTreeMap::new(),
            asks: None,
            undone: false,
            asks_which_task: false,
            confirmed: Vec::new(),
            question: None,
            every_task: false,
        }
    }

    /// Adds a line by the key of its text.
    pub(in crate::desk) fn say(&mut self, key: &str, args: &[(&str, Arg<'_>)]) {
        self.lines.push(self.voice.say(key, args));
    }

    /// Takes in what the rules say of a trailer, and what is coming for it.
    pub(in crate::desk) fn take_case(&mut self, case: &Case) {
        self.findings.extend(case.findings());
        self.foresee(case);
    }

    pub(in crate::desk) fn foresee(&mut self, case: &Case) {
        if case.job().is_some() {
            self.forecast
                .insert(case.unit.clone(), case.outlook.clone());
        }
    }

    pub(in crate::desk) fn unreadable(&mut self, kind: &str) {
        self.say("unreadable", &[("kind", kind.into())]);
    }

    /// Says that no task has a number; where it is a trailer's, which tasks are open on that.
    pub(in crate::desk) fn unknown_task(&mut self, hearing: &Hearing<'_>, id: u32) {
        self.say("task-unknown", &[("id", Arg::Count(i64::from(id)))]);
        let name = UnitName::new(&id.to_string());
        let Some(unit) = settle::known(&hearing.fleet, &name) else {
            return;
        };
        let open = hearing.desk.book.tasks().open_on(unit);
        let heads: Vec<String> = open.map(|task| self.voice.task_head(task)).collect();
        if !heads.is_empty() {
            let tasks = self.voice.all_of(&heads);
            let args = [("unit", unit.as_str().into()), ("tasks", tasks.into())];
            self.say("tasks-on-unit", &args);
        }
    }

    /// Makes sure that a task is on the board, so that it can be changed.
    pub(in crate::desk) fn adopt(&mut self, task: &Task) {
        self.board.adopt(task);
    }

    pub(in crate::desk) fn wanted(&mut self, id: u32, new: bool) {
        // one that this turn changed is told with the other tasks
        let told = self.board.touched().any(|task| task.id == id);
        if !new
            && !told
            && let Some(task) = self.board.tasks().task(id)
        {
            let line = self.voice.task(task);
            self.lines.push(line);
        }
    }

    pub(in crate::desk) fn watching(
        &mut self,
        unit: &UnitName,
        key: ReadingKey,
        value: f64,
        below: bool,
    ) {
        let what = self.voice.reading(key, value, None);
        let text = if below {
            "watch-set-below"
        } else {
            "watch-set"
        };
        self.say(
            text,
            &[("unit", unit.as_str().into()), ("what", what.into())],
        );
    }

    /// Returns the question that a finding leaves open.
    pub(in crate::desk) fn question_about(&self) -> Option<About> {
        let asks = |id, action: &str| {
            let finding = self
                .findings
                .iter()
                .find(|finding| finding.id == id && finding.action == action)?;
            finding.unit.clone()
        };
        // the finding's own text asks; this only keeps the question open for a bare answer
        if let Some(unit) = asks(FindingId::WaterOverPressure, "water-over-pressure-act") {
            return Some(About::BeforeRegulator { unit });
        }
        let unit = asks(FindingId::WaterUnderPressure, "water-under-pressure-ask")?;
        Some(About::TapsShut { unit })
    }

    /// Takes the question that is asked with this reply.
    pub(in crate::desk) fn ask_back(&mut self, question: Option<&Question>, tasks: &Tasks) {
        if let Some(About::WhichTask { ids }) = question.map(|question| &question.about) {
            self.asks_which_task = true;
            let heads = ids.iter().filter_map(|id| tasks.task(*id));
            let heads: Vec<String> = heads.map(|task| self.voice.task_head(task)).collect();
            let key = if heads.len() == 1 {
                "ask-task-done"
            } else {
                "ask-which-task"
            };
            let tasks = self.voice.one_of(&heads);
            self.say(key, &[("tasks", tasks.into())]);
        }
        let in_a_finding = |about: &About| {
            matches!(
                about,
                About::TapsShut { .. }
                    | About::BeforeRegulator { .. }
                    | About::WhichTask { .. }
                    | About::UndoOlder { .. }
            )
        };
        let about = question.map(|question| question.about.clone());
        self.question = about.filter(|about| !in_a_finding(about));
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

    /// Puts the reply into words.
    pub(in crate::desk) fn finish(
        mut self,
        hearing: &Hearing<'_>,
        settled: &Settled,
        cases: &[Case],
    ) -> Finished {
        self.findings.sort_by_key(Finding::order);
        let heard = &hearing.heard;
        if self.late && !settled.reports.is_empty() {
            let own = settled
                .reports
                .iter()
                .any(|(_, at, _)| *at != hearing.inbound.at);
            let key = if own {
                "late-message-own"
            } else {
                "late-message"
            };
            let sent = self.voice.say(key, &[("time", hearing.inbound.at.into())]);
            self.opening.insert(0, sent);
        }
        self.tell_meanwhile(hearing, settled);
        let grave = |finding: &Finding| finding.level >= Level::Warning;
        let card = std::mem::take(&mut self.card);
        if self.findings.iter().any(grave) {
            self.lines.splice(..0, card);
        } else {
            self.opening.extend(card);
        }
        let context = settled.from_context.as_ref().map(Context::Last);
        let places: Vec<Option<String>> = cases.iter().map(Case::place).collect();
        let mut logged = Vec::new();
        for (unit, at, entry) in &settled.reports {
            let place = cases.iter().position(|case| case.unit == *unit);
            let case = place.map(|place| &cases[place]);
            let about = |finding: &&Finding| finding.unit.as_ref() == Some(unit);
            // what was so before newer reports says nothing of now
            let kept = hearing.desk.book.unit(unit);
            let overtaken = kept
                .and_then(|kept| kept.newest())
                .is_some_and(|newest| newest > *at);
            logged.push(Logged {
                unit,
                site: place.and_then(|place| places[place].as_deref()),
                entry,
                spec: case.and_then(Case::spec),
                at: (*at != hearing.inbound.at || self.late).then_some(*at),
                too_old: kept.is_some_and(|kept| kept.too_old(*at)),
                all_well: self.findings.iter().filter(about).count() == 0
                    && was_checked(entry)
                    && !self.walked
                    && !overtaken
                    && !self
                        .board
                        .tasks()
                        .open_on(unit)
                        .any(|task| presses(task, hearing.now)),
            });
        }
        let mut task_notes: Vec<(Task, TaskTurn)> = notes(&self.board);
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
        let tasks = task_notes
            .iter()
            .map(|(task, turn)| TaskNote { task, turn: *turn })
            .collect();
        let answered = super::is_question(hearing) && heard.entries.is_empty();
        let asks_only = settled.reports.is_empty()
            && (hearing.heard.ask.is_some() || super::is_question(hearing));
        // a correction of one number does not say again what it leaves as it was a moment ago
        let as_before = |finding: &Finding| {
            hearing.mends()
                && finding.level < Level::Danger
                && hearing.talk.advice.contains(finding)
        };
        let read = repeat::read_in(heard);
        let telling = |finding: &Finding| match asks_only {
            true => Telling::Full,
            false if as_before(finding) => Telling::Silent,
            false => repeat::telling(finding, &self.findings, &read, &hearing.talk, hearing.now),
        };
        let of = |wanted: Telling| {
            self.findings
                .iter()
                .filter(move |finding| telling(finding) == wanted)
        };
        let told: Vec<&Finding> = of(Telling::Full).collect();
        let told_in_full = told.iter().map(|finding| (*finding).clone()).collect();
        let open_tasks = task_notes
            .iter()
            .filter(|(task, _)| task.state == TaskState::Open)
            .map(|(task, _)| task.clone())
            .collect();
        let says_logged = !logged.is_empty();
        let mut named: BTreeMap<&UnitName, Vec<String>> = BTreeMap::new();
        for finding in of(Telling::Named) {
            if let Some(unit) = &finding.unit {
                named
                    .entry(unit)
                    .or_default()
                    .push(self.voice.name(finding.id, finding.level));
            }
        }
        let stands: Vec<String> = named
            .into_iter()
            .map(|(unit, names)| {
                let args = [
                    ("unit", Arg::from(unit.as_str())),
                    ("names", names.join("; ").into()),
                ];
                self.voice.say("still", &args)
            })
            .collect();
        // how to write is said once, then only where to find it
        let lately = |at| hearing.now - at <= TAUGHT_LASTS;
        let again = hearing.talk.taught.is_some_and(lately);
        let mut unclear = heard.unclear.clone();
        let mut taught = false;
        for remark in unclear
            .iter_mut()
            .filter(|r| r.why == Remark::NOT_UNDERSTOOD)
        {
            taught |= !again;
            if again {
                remark.why = "not-understood-again".into();
            }
        }
        let answer = Answer {
            opening: std::mem::take(&mut self.opening),
            context,
            first: std::mem::take(&mut self.first),
            findings: told,
            stands,
            lines: std::mem::take(&mut self.lines),
            logged,
            tasks,
            // the words of an order are kept as typed
            taken: if heard.command.is_some() {
                &[]
            } else {
                &heard.taken
            },
            // a truck that does not come, an order of fire or police: answered as such
            set_aside: if asks_only
                || truck::is_told_of(&hearing.desk.phrases, hearing.text)
                || hearing.desk.answers.tells_of_an_order(hearing.text)
            {
                &[]
            } else {
                &heard.set_aside
            },
            answered: &heard.plans,
            // "12 done" is asked back about by its tasks
            unclear: if answered || self.asks_which_task {
                &[]
            } else {
                &unclear
            },
            question: self.question.as_ref(),
            step: self.step.as_deref(),
            zones: cases
                .iter()
                .filter_map(|case| Some((&case.unit, case.job()?.time_zone)))
                .collect(),
            without_hint: self
                .findings
                .iter()
                .all(|finding| of_the_message(finding.id))
                || self.step.is_some(),
        };
        let mut text = answer.compose(&self.voice);
        if text.is_empty() && !hearing.text.trim().is_empty() {
            text = match settled.words.is_empty() {
                false => {
                    let units: Vec<String> =
                        settled.words.iter().map(ToString::to_string).collect();
                    let units = self.voice.all_of(&units);
                    self.voice.say("heard-of", &[("units", units.into())])
                }
                true if super::topic::sounds_like_one(hearing.text) => {
                    self.voice.word("question-unknown")
                }
                // thanks, names, a ticket's number: what the reader did not ask about is no report
                true => self.voice.word("nothing-to-log"),
            };
        }
        let units: Vec<UnitName> = cases
            .iter()
            .map(|case| case.unit.clone())
            .chain(asked(hearing))
            .collect();
        let touched: Vec<u32> = self.board.touched().map(|task| task.id).collect();
        let all = hearing.desk.book.tasks();
        let mut shown: Vec<u32> = units
            .iter()
            .flat_map(|unit| self.board.tasks().open_on(unit).map(|task| task.id))
            .collect();
        shown.extend(touched);
        if self.every_task {
            shown.extend(all.open().map(|task| task.id));
        }
        shown.sort_unstable();
        shown.dedup();
        let tasks = shown
            .iter()
            .filter_map(|id| self.board.tasks().task(*id).or(all.task(*id)).cloned())
            .collect();
        Finished {
            text,
            taught,
            findings: {
                self.findings.append(&mut self.beside);
                self.findings.append(&mut self.listed);
                self.findings
            },
            tasks,
            tasks_before: self.board.before(),
            task_records: self.board.into_records().collect(),
            forecast: self.forecast,
            others: self.others,
            told: told_in_full,
            open_tasks,
            logged: says_logged,
            step_answers: self.step_answers,
        }
    }
}

/// Tells whether a task is late, or its call is: then not all is well.
fn presses(task: &Task, now: DateTime<Utc>) -> bool {
    let uncalled = task.called.is_none() && task.taken_by.is_none();
    task.due.is_some_and(|due| due < now)
        || uncalled && task.call_by.is_some_and(|call_by| call_by <= now)
}

/// Tells whether a report holds a number that the rules hold against a limit.
fn was_checked(entry: &Entry) -> bool {
    let beside = |key: &ReadingKey| {
        matches!(
            key,
            ReadingKey::EtaMin
                | ReadingKey::Guests
                | ReadingKey::PumpedGal
                | ReadingKey::HoseFt
                | ReadingKey::CordFt
                | ReadingKey::FlowGpm
                | ReadingKey::FuelGal
                | ReadingKey::FuelPct
                | ReadingKey::StallsOut
        )
    };
    !entry.readings.amps.is_empty() || entry.readings.values.keys().any(|key| !beside(key))
}

/// Returns what this turn did to tasks, each once, as it stands now.
fn notes(board: &Board) -> Vec<(Task, TaskTurn)> {
    let mut notes: BTreeMap<u32, TaskTurn> = BTreeMap::new();
    for change in board.changes() {
        let (id, turn) = match change {
            TaskChange::Opened { task } => (task.id, TaskTurn::Opened),
            TaskChange::Redated { id, .. } => (*id, TaskTurn::Stands),
            TaskChange::Called { id, .. } | TaskChange::Uncalled { id, .. } => {
                (*id, TaskTurn::Stands)
            }
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
