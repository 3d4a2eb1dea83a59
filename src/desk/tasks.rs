//! Tasks that a turn opens, re-dates and closes, tried on a board before they become records.

use std::collections::{BTreeMap, BTreeSet};

use chrono::{DateTime, TimeDelta, Utc};

use crate::book::{MessageKey, Personal, Record, Task, TaskChange, TaskState, Tasks, UnitState};
use crate::finding::{Finding, FindingId, TaskKind};
use crate::heard::{Entry, Event, Fault, Need, ReadingKey, UnitName};
use crate::reply::{HAS_LEFT, NO_NEED, TAKEN_BACK};

/// A due time that moves by less than this is left where it is: nobody wants to be told of every minute.
pub(super) const WORTH_MOVING: TimeDelta = TimeDelta::minutes(10);
/// What is allowed for besides the hauler's lead.
const SAFETY: TimeDelta = TimeDelta::hours(1);
/// Without power for so long in the frost hoses and valves may be blocked (computed: a hose blocks in some 15 min, valves soon
/// after).
const LONG_IN_FROST: TimeDelta = TimeDelta::minutes(30);

/// The tasks of the units at hand, with the changes this turn makes to them.
pub(super) struct Board {
    tasks: Tasks,
    at: DateTime<Utc>,
    by: String,
    cause: Option<MessageKey>,
    changes: Vec<TaskChange>,
    touched: BTreeSet<u32>,
    before: BTreeMap<u32, Task>,
}

impl Board {
    pub(super) fn new(
        tasks: Tasks,
        at: DateTime<Utc>,
        by: &str,
        cause: Option<MessageKey>,
    ) -> Self {
        Board {
            tasks,
            at,
            by: by.to_owned(),
            cause,
            changes: Vec::new(),
            touched: BTreeSet::new(),
            before: BTreeMap::new(),
        }
    }

    /// Puts a task on the board, where it is not there yet.
    pub(super) fn adopt(&mut self, task: &Task) {
        if self.tasks.task(task.id).is_none() {
            let change = TaskChange::Restored { task: task.clone() };
            self.tasks.apply(self.at, &change);
        }
    }

    /// Makes a change.
    pub(super) fn change(&mut self, change: TaskChange) {
        let id = change.id();
        if !matches!(change, TaskChange::Opened { .. })
            && let Some(task) = self.tasks.task(id)
            && !self.touched.contains(&id)
        {
            self.before.insert(id, task.clone());
        }
        self.touched.insert(id);
        self.tasks.apply(self.at, &change);
        self.changes.push(change);
    }

    /// Opens a task, or moves the one that is open already; returns its number and whether it is new.
    pub(super) fn open(
        &mut self,
        unit: &UnitName,
        kind: TaskKind,
        due: Option<DateTime<Utc>>,
        lead: TimeDelta,
        finding: Option<FindingId>,
    ) -> (u32, bool) {
        self.open_naming(unit, kind, (due, lead), finding, None)
    }

    /// Keeps to the time by which somebody wants a task done.
    pub(super) fn keep_to(&mut self, id: u32, wanted: Option<DateTime<Utc>>) {
        if self
            .tasks
            .task(id)
            .is_some_and(|task| task.wanted != wanted)
        {
            self.change(TaskChange::Wanted { id, by: wanted });
        }
    }

    /// Opens the work that a guided check came to, which says what was found.
    pub(super) fn open_found(
        &mut self,
        unit: &UnitName,
        kind: TaskKind,
        finding: FindingId,
        found: String,
    ) {
        let soon = (None, TimeDelta::zero());
        self.open_naming(unit, kind, soon, Some(finding), Some(found));
    }

    /// Opens a task in the sender's own words, for whoever is to do it; of these there may be several.
    pub(super) fn open_errand(
        &mut self,
        (unit, kind): (Option<UnitName>, TaskKind),
        words: Personal,
        due: Option<DateTime<Utc>>,
        who: Option<String>,
    ) -> Task {
        let given = who.as_ref().filter(|who| **who != self.by);
        let task = Task {
            due,
            wanted: due,
            given_by: given.map(|_| self.by.clone()),
            taken_by: who,
            words: Some(words),
            ..self.new_task(unit, kind)
        };
        self.change(TaskChange::Opened { task: task.clone() });
        task
    }

    /// Returns an open task that has the next number, and nothing told of it.
    fn new_task(&self, unit: Option<UnitName>, kind: TaskKind) -> Task {
        Task {
            id: self.tasks.next(),
            unit,
            kind,
            due: None,
            call_by: None,
            opened: self.at,
            by: self.by.clone(),
            finding: None,
            cause: self.cause.clone(),
            taken_by: None,
            given_by: None,
            called: None,
            promised: None,
            here: None,
            called_by: None,
            state: TaskState::Open,
            closed_cause: None,
            escalated: None,
            told_due: None,
            moved: None,
            wanted: None,
            found: None,
            words: None,
            closed: None,
        }
    }

    fn open_naming(
        &mut self,
        unit: &UnitName,
        kind: TaskKind,
        (due, lead): (Option<DateTime<Utc>>, TimeDelta),
        finding: Option<FindingId>,
        found: Option<String>,
    ) -> (u32, bool) {
        let wanted = self.tasks.open_task(unit, kind);
        let wanted = wanted.and_then(|task| task.wanted.filter(|_| finding.is_some()));
        let due = earlier(due, wanted).map(|due| due.max(self.at));
        let open = self.tasks.open_task(unit, kind);
        let call_by = due
            .filter(|_| kind == TaskKind::PumpOut)
            .map(|due| self.call_by(open, due, lead));
        if let Some(task) = open {
            let id = task.id;
            if due.is_some() && self.is_moved(task, due) {
                self.change(TaskChange::Redated { id, due, call_by });
            }
            return (id, false);
        }
        let id = self.tasks.next();
        let by = finding.map_or_else(|| self.by.clone(), |finding| finding.code().to_owned());
        let task = Task {
            due,
            call_by,
            by,
            finding,
            found,
            ..self.new_task(Some(unit.clone()), kind)
        };
        self.change(TaskChange::Opened { task });
        (id, true)
    }

    /// Tells whether another time is worth moving a task to. What was to be done by now and was not is late, and stays so: a
    /// truck, where the tank may be full within the hour all the same.
    fn is_moved(&self, task: &Task, due: Option<DateTime<Utc>>) -> bool {
        let soonest = match task.kind {
            TaskKind::PumpOut => self.at + SAFETY,
            _ => self.at,
        };
        match (task.due, due) {
            (Some(was), Some(due)) if was < self.at && due <= soonest => false,
            (Some(was), Some(due)) => (due - was).abs() >= WORTH_MOVING,
            (was, due) => was.is_some() != due.is_some(),
        }
    }

    /// Returns by when the truck must be called that is due then. Where nobody called in time, that time is kept: it is late
    /// by that.
    fn call_by(&self, open: Option<&Task>, due: DateTime<Utc>, lead: TimeDelta) -> DateTime<Utc> {
        let call_by = due - lead - SAFETY;
        let missed = open.and_then(|task| task.call_by.filter(|_| task.called.is_none()));
        match missed.filter(|was| *was < self.at && call_by <= self.at) {
            Some(was) => was,
            None => call_by.max(self.at),
        }
    }

    /// Closes the open tasks that what was reported does; `now` is how the trailer stands after it.
    ///
    /// A truck that was told of since the tank was pumped, at `done`, is still to come.
    pub(super) fn close_by(
        &mut self,
        unit: &UnitName,
        (done, entry): (DateTime<Utc>, &Entry),
        now: &UnitState,
    ) {
        for kind in TaskKind::ALL {
            let Some(task) = self.tasks.open_task(unit, *kind) else {
                continue;
            };
            let told_since = *kind == TaskKind::PumpOut
                && task.called.is_some_and(|called| called > done)
                && task.promised.is_some_and(|at| at > self.at);
            // a pump-out told late does not empty what has filled since
            let filled = *kind == TaskKind::PumpOut && now.filled_since(done);
            // power that is back after a while of frost thaws no pipe: that is looked at first
            let frozen = *kind == TaskKind::Drain
                && comes_on(entry)
                && !drains(entry)
                && done - task.opened >= LONG_IN_FROST;
            if does(entry, now, *kind, task.finding) && !told_since && !filled && !frozen {
                let (id, by, cause) = (task.id, self.by.clone(), self.cause.clone());
                // with the power back there is no need to drain: nobody did
                self.change(match *kind == TaskKind::Drain && !drains(entry) {
                    true => TaskChange::Dropped {
                        id,
                        by,
                        reason: NO_NEED.into(),
                        cause,
                    },
                    false => TaskChange::Done { id, by, cause },
                });
            }
        }
    }

    /// Drops tasks of a trailer that make no sense any more once it goes.
    pub(super) fn leave(&mut self, unit: &UnitName, kinds: &[TaskKind]) {
        for kind in kinds {
            let Some(task) = self.tasks.open_task(unit, *kind) else {
                continue;
            };
            self.change(TaskChange::Dropped {
                id: task.id,
                by: self.by.clone(),
                reason: HAS_LEFT.into(),
                cause: self.cause.clone(),
            });
        }
    }

    /// Closes the pump-out of a trailer whose waste tank is said to be empty as it leaves.
    pub(super) fn is_pumped(&mut self, unit: &UnitName) {
        if let Some(task) = self.tasks.open_task(unit, TaskKind::PumpOut) {
            self.change(TaskChange::Done {
                id: task.id,
                by: self.by.clone(),
                cause: self.cause.clone(),
            });
        }
    }

    /// Opens again what messages closed that are taken back or mended.
    pub(super) fn reopen(&mut self, keys: &[MessageKey]) {
        let by_them = |task: &&Task| {
            let taken_back =
                matches!(&task.state, TaskState::Dropped(reason) if reason == TAKEN_BACK);
            let cause = task.closed_cause.as_ref();
            !task.is_open() && !taken_back && cause.is_some_and(|key| keys.contains(key))
        };
        let closed: Vec<u32> = self
            .tasks
            .all()
            .filter(by_them)
            .map(|task| task.id)
            .collect();
        for id in closed {
            self.change(TaskChange::Reopened { id });
        }
    }

    /// Drops what messages opened that are taken back or mended, but for what is asked for all the same.
    pub(super) fn take_back(&mut self, keys: &[MessageKey], stands: impl Fn(&Task) -> bool) {
        let by_them = |task: &&Task| {
            task.cause.as_ref().is_some_and(|key| keys.contains(key)) && !stands(task)
        };
        let opened: Vec<u32> = self
            .tasks
            .open()
            .filter(by_them)
            .map(|task| task.id)
            .collect();
        for id in opened {
            self.change(TaskChange::Dropped {
                id,
                by: self.by.clone(),
                reason: TAKEN_BACK.into(),
                cause: self.cause.clone(),
            });
        }
    }

    /// Puts tasks back as they stood before a message that is taken back, as far as nobody has touched them since.
    pub(super) fn restore(&mut self, before: &[Task], worked: (DateTime<Utc>, DateTime<Utc>)) {
        let by_it =
            |at: Option<DateTime<Utc>>| at.is_some_and(|at| worked.0 <= at && at <= worked.1);
        for old in before {
            let Some(task) = self.tasks.task(old.id).filter(|task| task.is_open()) else {
                continue;
            };
            let mut restored = task.clone();
            let mine = [&task.taken_by, &task.given_by].map(Option::as_deref);
            if mine.contains(&Some(&*self.by)) {
                restored.taken_by.clone_from(&old.taken_by);
                restored.given_by.clone_from(&old.given_by);
            }
            if by_it(task.moved) {
                restored.due = old.due;
                restored.call_by = old.call_by;
                restored.moved = old.moved;
            }
            if by_it(task.called) || task.called.is_none() {
                restored.called = old.called;
                restored.promised = old.promised;
                restored.called_by.clone_from(&old.called_by);
            }
            if restored != *task {
                self.change(TaskChange::Restored { task: restored });
            }
        }
    }

    /// Returns the tasks that this turn changed, as they stood before it.
    pub(super) fn before(&self) -> Vec<Task> {
        self.before.values().cloned().collect()
    }

    /// Opens what findings ask for.
    pub(super) fn open_for(&mut self, findings: &[Finding], lead: impl Fn(&UnitName) -> TimeDelta) {
        for finding in findings {
            if let (Some(unit), Some(wish)) = (&finding.unit, &finding.task) {
                self.open(unit, wish.kind, wish.due, lead(unit), Some(finding.id));
            }
        }
    }

    /// Moves the pump-out that a forecast asked for along with the forecast, where nothing asks for it any more as it was: a
    /// lower reading makes it later, or leaves it without a time.
    pub(super) fn follow(&mut self, unit: &UnitName, due: Option<DateTime<Utc>>, lead: TimeDelta) {
        let asked = self.tasks.open_task(unit, TaskKind::PumpOut);
        let asked = asked.filter(|task| task.finding == Some(FindingId::WasteBookPumpOut));
        let Some(task) = asked else {
            return;
        };
        let due = earlier(due, task.wanted).map(|due| due.max(self.at));
        if self.is_moved(task, due) {
            let (id, call_by) = (task.id, due.map(|due| self.call_by(asked, due, lead)));
            self.change(TaskChange::Redated { id, due, call_by });
        }
    }

    /// Returns the board's tasks.
    pub(super) fn tasks(&self) -> &Tasks {
        &self.tasks
    }

    /// Returns the tasks this turn opened, changed or closed, by number.
    pub(super) fn touched(&self) -> impl Iterator<Item = &Task> {
        self.touched.iter().filter_map(|id| self.tasks.task(*id))
    }

    /// Returns the changes, in order.
    pub(super) fn changes(&self) -> &[TaskChange] {
        &self.changes
    }

    /// Returns the changes as records.
    pub(super) fn into_records(self) -> impl Iterator<Item = Record> {
        let at = self.at;
        self.changes
            .into_iter()
            .map(move |change| Record::Task { at, change })
    }
}

/// Returns the earlier of two times, where there are both.
pub(super) fn earlier(
    one: Option<DateTime<Utc>>,
    other: Option<DateTime<Utc>>,
) -> Option<DateTime<Utc>> {
    [one, other].into_iter().flatten().min()
}

/// Returns the kind of task that a need asks for.
pub(super) fn kind_of(need: Need) -> TaskKind {
    match need {
        Need::PumpOut => TaskKind::PumpOut,
        Need::Refill => TaskKind::Refill,
        Need::Drain => TaskKind::Drain,
        Need::Regulator => TaskKind::Regulator,
        Need::Filter => TaskKind::Filter,
        Need::Heater => TaskKind::Heater,
        Need::Repair => TaskKind::Repair,
        Need::Restock | Need::Other => TaskKind::Other,
    }
}

/// Tells whether a report says that the power is on.
pub(super) fn comes_on(entry: &Entry) -> bool {
    let says = |event| entry.events.contains(&event);
    says(Event::PowerBack) || says(Event::PowerOn)
}

/// Tells whether a report says that nothing is left that can freeze.
fn drains(entry: &Entry) -> bool {
    let says = |event| entry.events.contains(&event);
    says(Event::FreshDrained) || says(Event::Winterized)
}

/// Tells whether a report comes of a look at the trailer: something was read or done there. How many guests came, that it is
/// closed or that the power went can be told from anywhere.
fn is_a_look(entry: &Entry) -> bool {
    let told = [
        ReadingKey::Guests,
        ReadingKey::EtaMin,
        ReadingKey::LowF,
        ReadingKey::PumpedGal,
        ReadingKey::Volts,
    ];
    let read = |key: &ReadingKey| !told.contains(key);
    let from_afar = [
        Event::Closed,
        Event::PowerLost,
        Event::PowerOff,
        Event::PowerBack,
    ];
    let seen = |event: &Event| !from_afar.contains(event);
    entry.readings.values.keys().any(read)
        || !entry.readings.amps.is_empty()
        || entry.events.iter().any(seen)
        || !entry.cleared.is_empty()
}

/// Tells whether a report does a task of this kind.
fn does(entry: &Entry, now: &UnitState, kind: TaskKind, finding: Option<FindingId>) -> bool {
    let says = |event| entry.events.contains(&event);
    let of_it = |fault: &Fault| finding == Some(FindingId::of_fault(*fault));
    // several faults may share a finding: the work is done with the last of them
    let fixed = |fault: &Fault| of_it(fault) && !now.faults.keys().any(of_it);
    match kind {
        TaskKind::PumpOut => says(Event::WastePumped),
        TaskKind::Refill => says(Event::FreshFilled),
        // draining was asked for because the power was gone: once it is back there is no need
        TaskKind::Drain => {
            drains(entry) || comes_on(entry) && finding == Some(FindingId::ColdFreezeSoon)
        }
        TaskKind::Regulator => says(Event::RegulatorFitted),
        TaskKind::Filter => says(Event::FilterServiced),
        TaskKind::Heater => says(Event::HeaterOn),
        TaskKind::CheckIn => is_a_look(entry),
        TaskKind::Repair | TaskKind::Electrician | TaskKind::Plumber | TaskKind::Other => {
            entry.cleared.iter().any(fixed)
        }
    }
}
