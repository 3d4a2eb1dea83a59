//! What a turn has to say to the sender, gathered as it goes; put into words by `finish`.

use std::collections::BTreeMap;

use crate::book::{Task, Tasks};
use crate::desk::inbound::Outgoing;
use crate::desk::receive::Hearing;
use crate::desk::settle;
use crate::desk::situate::Case;
use crate::desk::tasks::Board;
use crate::dialogue::{About, Check, More, Question, Round};
use crate::finding::{Finding, FindingId, TaskKind};
use crate::heard::{ReadingKey, UnitName};
use crate::outlook::Outlook;
use crate::reply::{Arg, Voice};

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
    pub(super) forecast: BTreeMap<UnitName, Outlook>,
    /// The question that an order or a wish raises.
    pub(in crate::desk) asks: Option<About>,
    /// The trailer on which a lone worker's clock was offered: bare minutes take it.
    pub(in crate::desk) offers: Option<UnitName>,
    /// Whether a report was taken back.
    pub(in crate::desk) undone: bool,
    pub(super) asks_which_task: bool,
    /// Steps of leaving that were done by word.
    pub(in crate::desk) confirmed: Vec<(UnitName, String)>,
    /// Trailers that are called gone and are not let go.
    pub(in crate::desk) held: Vec<UnitName>,
    pub(super) question: Option<About>,
    pub(super) every_task: bool,
    /// Whether the message asks several things, each answered on its own.
    pub(in crate::desk) several: bool,
    /// How far "more" has told, where there is still more.
    pub(in crate::desk) more: Option<More>,
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
            offers: None,
            undone: false,
            asks_which_task: false,
            confirmed: Vec::new(),
            held: Vec::new(),
            question: None,
            every_task: false,
            several: false,
            more: None,
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
        // "close 12" may be of the trailer
        if hearing
            .desk
            .phrases
            .after("tell", "order-close", hearing.text)
            .is_some()
        {
            return self.say("task-or-trailer", &[("unit", unit.as_str().into())]);
        }
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

    /// Returns the few words for a finding, as its task stands.
    pub(in crate::desk) fn name(&self, finding: &Finding) -> String {
        let unit = finding.unit.as_ref();
        let task = unit.and_then(|unit| self.board.tasks().open_task(unit, TaskKind::PumpOut));
        self.voice.name_beside(finding.id, finding.level, task)
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
        let is_low = |finding: &Finding| finding.id == FindingId::WaterUnderPressure;
        let low = self.findings.iter().any(is_low);
        let in_a_finding = |about: &About| match about {
            About::TapsShut { .. } => low,
            About::BeforeRegulator { .. }
            | About::WhichTask { .. }
            | About::UndoOlder { .. }
            | About::UndoNext
            | About::Alone { .. }
            | About::ReleaseWhy { .. } => true,
            _ => false,
        };
        let about = question.map(|question| question.about.clone());
        self.question = about.filter(|about| !in_a_finding(about));
    }
}
