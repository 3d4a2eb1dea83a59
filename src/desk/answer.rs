//! What a turn has to say, gathered as it goes, and the answers to what people ask.

use std::collections::BTreeMap;

use chrono::TimeDelta;

use super::inbound::Outgoing;
use super::receive::{Hearing, of_the_message};
use super::settle::{self, Settled};
use super::situate::Case;
use super::tasks::Board;
use super::{digest, repeat, standing};
use crate::book::{MessageKey, Record, Task, TaskChange, TaskState};
use crate::dialogue::{About, Check, Question, Round};
use crate::finding::{Finding, FindingId};
use crate::heard::{Ask, Entry, PlanKind, ReadingKey, UnitName};
use crate::outlook::Outlook;
use crate::reply::{Answer, Arg, Context, Logged, Past, Status, TaskNote, TaskTurn, Voice};
use crate::situation::Occasion;

/// How far back a person can take a message back.
const UNDO_REACH: TimeDelta = TimeDelta::hours(24);
/// How many reports a history tells.
const HISTORY_LINES: usize = 8;

/// What a turn has to say to the sender, gathered as it goes.
pub(super) struct Reply<'a> {
    pub(super) voice: Voice<'a>,
    pub(super) board: Board,
    pub(super) findings: Vec<Finding>,
    pub(super) lines: Vec<String>,
    pub(super) opening: Vec<String>,
    pub(super) others: Vec<Outgoing>,
    pub(super) late: bool,
    /// Findings that hold and are listed, but told in other words: those of a digest.
    pub(super) listed: Vec<Finding>,
    /// What the sender's guided checks come to, where they were gone through.
    pub(super) checks: Option<Vec<Check>>,
    /// The step of a guided check that is asked, in words.
    pub(super) step: Option<String>,
    /// What whoever arrives must know, said before the advice unless that is of a danger.
    pub(super) card: Vec<String>,
    /// What the sender's setting up or leaving comes to, where this turn changed it.
    pub(super) round: Option<Option<Round>>,
    /// Whether the message carried a guided check on.
    pub(super) walked: bool,
    forecast: BTreeMap<UnitName, Outlook>,
    question: Option<About>,
    every_task: bool,
}

/// A turn's reply, ready to be written down and sent.
pub(super) struct Finished {
    pub(super) text: String,
    pub(super) findings: Vec<Finding>,
    pub(super) tasks: Vec<Task>,
    pub(super) task_records: Vec<Record>,
    pub(super) forecast: BTreeMap<UnitName, Outlook>,
    pub(super) others: Vec<Outgoing>,
}

impl<'a> Reply<'a> {
    pub(super) fn new(hearing: &'a Hearing<'_>, board: Board) -> Self {
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
    pub(super) fn say(&mut self, key: &str, args: &[(&str, Arg<'_>)]) {
        self.lines.push(self.voice.say(key, args));
    }

    /// Takes in what the rules say of a trailer, and what is coming for it.
    pub(super) fn take_case(&mut self, case: &Case) {
        self.findings.extend(case.findings());
        self.foresee(case);
    }

    pub(super) fn foresee(&mut self, case: &Case) {
        if case.job().is_some() {
            self.forecast
                .insert(case.unit.clone(), case.outlook.clone());
        }
    }

    pub(super) fn unreadable(&mut self, kind: &str) {
        self.say("unreadable", &[("kind", kind.into())]);
    }

    pub(super) fn wanted(&mut self, id: u32, new: bool) {
        if !new && let Some(task) = self.board.tasks().task(id) {
            let line = self.voice.task(task);
            self.lines.push(line);
        }
    }

    pub(super) fn which_unit_for_plan(&mut self, text: &str) {
        let quoted = self.voice.quote(text);
        self.say("plan-which-unit", &[("quote", quoted.into())]);
    }

    pub(super) fn watching(&mut self, unit: &UnitName, key: ReadingKey, value: f64, below: bool) {
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
    pub(super) fn question_about(&self) -> Option<About> {
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
    pub(super) fn ask_back(&mut self, question: Option<&Question>) {
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
    pub(super) fn finish(
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

/// Returns the known trailer that a question is about: the one named, or the sender's last.
pub(super) fn unit_of(hearing: &Hearing<'_>, ask: &Ask) -> Option<UnitName> {
    let named = match ask {
        Ask::Status { unit }
        | Ask::History { unit }
        | Ask::Forecast { unit }
        | Ask::Why { unit } => unit.as_ref(),
        _ => return None,
    };
    let name = match named {
        Some(name) => Some(name),
        None if hearing.heard.named.len() == 1 => hearing.heard.named.first(),
        None => hearing.talk.unit_at(hearing.inbound.at),
    };
    settle::known(&hearing.fleet, name?).cloned()
}

/// Answers what the sender asks.
pub(super) fn ask(
    hearing: &Hearing<'_>,
    settled: &Settled,
    ask: &Ask,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    match ask {
        Ask::Status { unit } => about_unit(hearing, settled, unit.as_ref(), ask, reply, status),
        Ask::History { unit } => about_unit(hearing, settled, unit.as_ref(), ask, reply, history),
        Ask::Forecast { unit } => about_unit(hearing, settled, unit.as_ref(), ask, reply, forecast),
        Ask::Digest => digest::tell(hearing, reply),
        Ask::Tasks => tasks(hearing, reply),
        Ask::Help => {
            let key = format!("help-{}", digest::role_code(hearing.member.role));
            reply.lines.push(reply.voice.word(&key));
        }
        Ask::Undo => undo(hearing, reply, records),
        Ask::Why { .. } => why(hearing, ask, reply),
        Ask::Done { task } => done(hearing, *task, reply),
        Ask::Sum => super::sum::answer(hearing, reply),
        Ask::Command { .. } => {} // obeyed as an order
    }
}

fn about_unit(
    hearing: &Hearing<'_>,
    settled: &Settled,
    named: Option<&UnitName>,
    ask: &Ask,
    reply: &mut Reply<'_>,
    tell: impl Fn(&Hearing<'_>, &Case, &mut Reply<'_>),
) {
    match (unit_of(hearing, ask), named) {
        (Some(unit), _) => {
            let mut case = Case::standing(
                hearing.desk,
                &hearing.fleet,
                &unit,
                hearing.now,
                Occasion::Asked,
            );
            // a report in the same message already counts
            if let Some(now) = hearing.reported(&unit, settled) {
                case = Case::new(
                    hearing.desk,
                    &hearing.fleet,
                    &unit,
                    hearing.now,
                    (case.before, now),
                    case.report,
                    case.plans,
                    Occasion::Asked,
                );
            }
            reply.foresee(&case);
            tell(hearing, &case, reply);
        }
        (None, Some(name)) => reply
            .findings
            .push(settle::unknown_unit(&hearing.fleet, name)),
        (None, None) => reply.say("ask-which-unit", &[]),
    }
}

fn status(hearing: &Hearing<'_>, case: &Case, reply: &mut Reply<'_>) {
    let decided = standing::in_force(hearing, &case.unit, &reply.voice);
    reply.lines.extend(decided);
    for finding in case.findings() {
        if !reply
            .findings
            .iter()
            .any(|other| other.id == finding.id && other.unit == finding.unit)
        {
            reply.findings.push(finding);
        }
    }
    let place = case.place();
    let text = reply.voice.status(&Status {
        unit: &case.unit,
        site: place.as_deref(),
        state: &case.now,
        spec: case.spec(),
        outlook: Some(&case.outlook),
        tasks: reply.board.tasks().open_on(&case.unit).collect(),
    });
    reply.lines.push(text);
}

fn history(hearing: &Hearing<'_>, case: &Case, reply: &mut Reply<'_>) {
    let kept = hearing.desk.book.unit(&case.unit).into_iter();
    let mut past: Vec<Past<'_>> = kept
        .flat_map(|kept| kept.reports())
        .map(|(at, from, entry)| Past { at, from, entry })
        .collect();
    past.drain(..past.len().saturating_sub(HISTORY_LINES));
    let text = reply.voice.history(&case.unit, past, case.spec());
    reply.lines.push(text);
}

fn forecast(_hearing: &Hearing<'_>, case: &Case, reply: &mut Reply<'_>) {
    let unit = case.unit.as_str();
    if case.job().is_none() {
        reply.say("forecast-no-job", &[("unit", unit.into())]);
        return;
    }
    let text = reply.voice.forecast(&case.outlook);
    reply.say("forecast-of", &[("unit", unit.into())]);
    reply.lines.push(text);
    let pump_outs: Vec<Task> = reply
        .board
        .tasks()
        .open_on(&case.unit)
        .filter(|task| task.kind == crate::finding::TaskKind::PumpOut)
        .cloned()
        .collect();
    for task in &pump_outs {
        let line = reply.voice.task(task);
        reply.lines.push(line);
    }
}

fn tasks(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    reply.every_task = true;
    let mine = hearing
        .heard
        .plans
        .iter()
        .any(|plan| plan.kind == PlanKind::Mine);
    let me = Some(&hearing.member.id);
    let open: Vec<&Task> = hearing
        .desk
        .book
        .tasks()
        .open()
        .filter(|task| !mine || task.taken_by.as_ref() == me)
        .collect();
    let text = reply.voice.tasks(open);
    reply.lines.push(text);
}

fn why(hearing: &Hearing<'_>, ask: &Ask, reply: &mut Reply<'_>) {
    let about = match ask {
        Ask::Why { unit: Some(name) } => settle::known(&hearing.fleet, name),
        _ => None,
    };
    // "why pressure" picks the advice by its topic's words; a bare "why" means the worst of the last reply
    let words = hearing.text.to_lowercase();
    let advice: Vec<&Finding> = hearing
        .talk
        .advice
        .iter()
        .filter(|finding| about.is_none() || finding.unit.as_ref() == about)
        .collect();
    let named = |finding: &&&Finding| {
        let name = reply.voice.name(finding.id).to_lowercase();
        let code = finding.id.code().split(['.', '-']);
        code.chain(name.split_whitespace())
            .any(|word| word.len() > 3 && words.contains(word))
    };
    let picked = advice.iter().find(named);
    match picked.or(advice.first()) {
        Some(finding) => {
            let text = reply.voice.why(finding);
            reply.lines.push(text);
            if let Some(unit) = finding
                .unit
                .as_ref()
                .filter(|_| finding.id.topic() == "tow")
            {
                standing::overrides(hearing, unit, reply);
            }
            if picked.is_none() && advice.len() > 1 {
                let names: Vec<String> = advice[1..]
                    .iter()
                    .map(|finding| reply.voice.name(finding.id))
                    .collect();
                let names = reply.voice.one_of(&names);
                reply.say("why-more", &[("names", names.into())]);
            }
        }
        None => reply.say("why-nothing", &[]),
    }
}

fn done(hearing: &Hearing<'_>, id: u32, reply: &mut Reply<'_>) {
    match reply.board.tasks().task(id).map(|task| task.state.clone()) {
        None => reply.say("task-unknown", &[("id", Arg::Count(i64::from(id)))]),
        Some(TaskState::Open) => {
            let change = TaskChange::Done {
                id,
                by: hearing.member.id.clone(),
                cause: Some(hearing.key.clone()),
            };
            reply.board.change(change);
        }
        Some(_) => reply.say("task-already-closed", &[("id", Arg::Count(i64::from(id)))]),
    }
}

fn undo(hearing: &Hearing<'_>, reply: &mut Reply<'_>, records: &mut Vec<Record>) {
    let sent = hearing
        .desk
        .book
        .sent(&hearing.member.id)
        .iter()
        .rev()
        .find(|sent| sent.at <= hearing.now && !sent.units.is_empty());
    match sent.filter(|sent| hearing.now - sent.at <= UNDO_REACH) {
        None => reply.say("undo-nothing", &[]),
        Some(sent) => {
            take_back(hearing, &sent.key, reply, records);
            let units: Vec<String> = sent.units.iter().map(|unit| unit.to_string()).collect();
            let units = reply.voice.all_of(&units);
            reply.say(
                "undone",
                &[("time", sent.at.into()), ("units", units.into())],
            );
        }
    }
}

fn take_back(
    hearing: &Hearing<'_>,
    key: &MessageKey,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    records.push(Record::Undone {
        at: hearing.now,
        by: hearing.member.id.clone(),
        key: key.clone(),
    });
    reply.board.revert(key);
}
