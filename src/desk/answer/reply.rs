//! What a turn has to say to the sender, gathered as it goes and put into words at its end.

use std::collections::BTreeMap;

use super::unit_of;
use crate::book::{Record, Task, TaskChange};
use crate::desk::inbound::Outgoing;
use crate::desk::receive::{Hearing, of_the_message};
use crate::desk::repeat;
use crate::desk::settle::Settled;
use crate::desk::situate::Case;
use crate::desk::tasks::Board;
use crate::dialogue::{About, Check, Question, Round};
use crate::finding::{Finding, FindingId};
use crate::heard::{Entry, ReadingKey, UnitName};
use crate::outlook::Outlook;
use crate::reply::{Answer, Arg, Context, Logged, TaskNote, TaskTurn, Voice};

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
    /// What the sender's guided checks come to, where they were gone through.
    pub(in crate::desk) checks: Option<Vec<Check>>,
    /// The step of a guided check that is asked, in words.
    pub(in crate::desk) step: Option<String>,
    /// What whoever arrives must know, said before the advice unless that is of a danger.
    pub(in crate::desk) card: Vec<String>,
    /// What the sender's setting up or leaving comes to, where this turn changed it.
    pub(in crate::desk) round: Option<Option<Round>>,
    /// Whether the message carried a guided check on.
    pub(in crate::desk) walked: bool,
    forecast: BTreeMap<UnitName, Outlook>,
    question: Option<About>,
    pub(super) every_task: bool,
}

/// A turn's reply, ready to be written down and sent.
pub(in crate::desk) struct Finished {
    pub(in crate::desk) text: String,
    pub(in crate::desk) findings: Vec<Finding>,
    pub(in crate::desk) tasks: Vec<Task>,
    pub(in crate::desk) task_records: Vec<Record>,
    pub(in crate::desk) forecast: BTreeMap<UnitName, Outlook>,
    pub(in crate::desk) others: Vec<Outgoing>,
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
            checks: None,
            step: None,
            card: Vec::new(),
            round: None,
            walked: false,
            forecast: BTreeMap::new(),
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

    pub(in crate::desk) fn wanted(&mut self, id: u32, new: bool) {
        if !new && let Some(task) = self.board.tasks().task(id) {
            let line = self.voice.task(task);
            self.lines.push(line);
        }
    }

    pub(in crate::desk) fn which_unit_for_plan(&mut self, text: &str) {
        let quoted = self.voice.quote(text);
        self.say("plan-which-unit", &[("quote", quoted.into())]);
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
    pub(in crate::desk) fn ask_back(&mut self, question: Option<&Question>) {
        let in_a_finding = |about: &About| {
            matches!(
                about,
                About::TapsShut { .. } | About::BeforeRegulator { .. }
            )
        };
        let about = question.map(|question| question.about.clone());
        self.question = about.filter(|about| !in_a_finding(about));
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
        for text in &settled.odd_times {
            let quoted = self.voice.quote(text);
            self.lines
                .push(self.voice.say("odd-time", &[("quote", quoted.into())]));
        }
        if self.late && !settled.reports.is_empty() {
            let sent = self
                .voice
                .say("late-message", &[("time", hearing.inbound.at.into())]);
            self.opening.insert(0, sent);
        }
        let grave = |finding: &Finding| finding.level >= crate::finding::Level::Warning;
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
            logged.push(Logged {
                unit,
                site: place.and_then(|place| places[place].as_deref()),
                entry,
                spec: case.and_then(Case::spec),
                at: (*at != hearing.inbound.at || self.late).then_some(*at),
                too_old: hearing
                    .desk
                    .book
                    .unit(unit)
                    .is_some_and(|kept| kept.too_old(*at)),
                all_well: self.findings.iter().filter(about).count() == 0
                    && was_checked(entry)
                    && !self.walked,
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
        let is_question = hearing.heard.ask.is_some();
        let told = self
            .findings
            .iter()
            .filter(|finding| {
                is_question || repeat::is_news(finding, &self.findings, &hearing.talk, hearing.now)
            })
            .collect();
        let answer = Answer {
            opening: std::mem::take(&mut self.opening),
            context,
            findings: told,
            lines: std::mem::take(&mut self.lines),
            logged,
            tasks,
            taken: &heard.taken,
            set_aside: &heard.set_aside,
            answered: &heard.plans,
            unclear: &heard.unclear,
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
                // thanks, names, chatter: no lecture
                true if !hearing.text.chars().any(|c| c.is_ascii_digit()) => {
                    self.voice.word("nothing-to-log")
                }
                true => self.voice.word("nothing-logged"),
            };
        }
        let units: Vec<UnitName> = cases
            .iter()
            .map(|case| case.unit.clone())
            .chain(asked(hearing))
            .collect();
        let touched: Vec<u32> = self.board.touched().map(|task| task.id).collect();
        let all = hearing.desk.book.tasks();
        let every: Vec<u32> = if self.every_task {
            all.open().map(|task| task.id).collect()
        } else {
            Vec::new()
        };
        let mut shown: Vec<u32> = units
            .iter()
            .flat_map(|unit| self.board.tasks().open_on(unit).map(|task| task.id))
            .collect();
        shown.extend(touched);
        shown.extend::<Vec<u32>>(every);
        shown.sort_unstable();
        shown.dedup();
        let all = hearing.desk.book.tasks();
        let tasks = shown
            .iter()
            .filter_map(|id| self.board.tasks().task(*id).or(all.task(*id)).cloned())
            .collect();
        Finished {
            text,
            findings: {
                self.findings.append(&mut self.listed);
                self.findings
            },
            tasks,
            task_records: self.board.into_records().collect(),
            forecast: self.forecast,
            others: self.others,
        }
    }
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
            TaskChange::Called { id, .. } => (*id, TaskTurn::Stands),
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

fn asked(hearing: &Hearing<'_>) -> Option<UnitName> {
    hearing
        .heard
        .ask
        .as_ref()
        .and_then(|ask| unit_of(hearing, ask))
}
