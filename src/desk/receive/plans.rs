//! Work that a message asks for or says is ordered, and alarms it asks for.

use std::borrow::Cow;

use chrono::{DateTime, TimeDelta, Utc};

use super::super::answer::{self, Reply};
use super::super::inbound::Outgoing;
use super::super::others::other_dispatchers;
use super::super::situate::Case;
use super::super::tasks::{WORTH_MOVING, earlier, kind_of};
use super::super::{settle, truck, watch, when};
use super::Hearing;
use crate::book::{Record, TaskChange};
use crate::dialogue::About;
use crate::finding::{Level, TaskKind};
use crate::fleet::{PumpTruck, Role};
use crate::heard::{Plan, PlanKind, ReadingKey, UnitName};
use crate::reply::Arg;

/// A truck that is promised later than this, with no day told, was most likely told of the past.
const FAR: TimeDelta = TimeDelta::hours(18);
/// The hours of a day on which a trailer is at no job, as clock times (common practice, no source).
const OPENS: &str = "08:00";
const CLOSES: &str = "17:00";

impl Hearing<'_> {
    /// Answers requests: opens or confirms the task each asks for.
    pub(super) fn plan(&self, reply: &mut Reply<'_>, cases: &[Case], records: &mut Vec<Record>) {
        for plan in &self.heard.plans {
            let named = plan
                .unit
                .clone()
                .or_else(|| watch::unit_of(self, plan))
                .or_else(|| self.talk.unit_at(self.inbound.at).cloned());
            let unit = named
                .as_ref()
                .and_then(|name| settle::known(&self.fleet, name))
                .cloned();
            match (&plan.kind, unit) {
                // "do I need a regulator" orders none
                (PlanKind::Need { .. }, _) if answer::asks_whether(self) => {}
                (PlanKind::Need { need, by }, Some(unit)) => {
                    if truck::is_second(self, &unit, kind_of(*need), reply) {
                        continue;
                    }
                    let case = self.case_for(cases, &unit);
                    let wanted = self.wanted_by(by.as_deref(), plan, &case);
                    self.need(&case, kind_of(*need), wanted, reply);
                    self.tell_of_the_wish(&unit, reply);
                }
                // "called the truck for 12, no answer": it is still to be called
                (PlanKind::Booked { need, .. }, Some(unit)) if self.nobody_answered() => {
                    let case = self.case_for(cases, &unit);
                    self.need(&case, kind_of(*need), None, reply);
                }
                (PlanKind::Booked { need, .. }, Some(unit))
                    if truck::is_second(self, &unit, kind_of(*need), reply)
                        || truck::is_overtaken(self, &unit, kind_of(*need), reply) => {}
                (PlanKind::Booked { need, at }, Some(unit)) => {
                    let case = self.case_for(cases, &unit);
                    let promised = self.told_for(at.as_deref(), plan, &case);
                    let far =
                        |at: &DateTime<Utc>| *at - self.now > FAR && !when::names_a_day(&plan.text);
                    let past = promised.is_some_and(|at| far(&at));
                    let promised = promised.filter(|at| !far(at));
                    let kind = kind_of(*need);
                    let open = reply.board.tasks().open_task(&unit, kind);
                    let stands = open.is_some_and(|task| task.promised.is_some());
                    // a time that is past takes no promise away
                    // and one that is told again without a time stays as it was
                    let was = open.and_then(|task| task.promised);
                    let promised = promised.or(was.filter(|_| !past));
                    if !(past && stands) {
                        truck::tell_replaced(self, &unit, was, promised, reply);
                        self.booked(&case, kind, promised, reply);
                    }
                    let untold = promised.is_none() && !stands && kind == TaskKind::PumpOut;
                    if past || untold {
                        reply.asks = Some(About::TruckWhen { unit });
                    }
                }
                (
                    PlanKind::Need { .. } | PlanKind::Watch { .. } | PlanKind::Booked { .. },
                    None,
                ) => {
                    if let Some(name) = named {
                        reply
                            .findings
                            .push(settle::unknown_unit(&self.fleet, &name));
                    } else {
                        reply.asks = Some(About::WhichUnitOf {
                            text: plan.text.clone(),
                            likely: self.likely_units(),
                        });
                    }
                }
                (PlanKind::Watch { key, value, below }, Some(unit)) => {
                    let wanted = watch::Wanted {
                        unit: &unit,
                        key: *key,
                        value: *value,
                        below: *below,
                    };
                    watch::set(self, wanted, reply, records);
                }
                _ => {} // wishes are no work
            }
        }
    }

    /// Tells the dispatchers what one of the crew asks for, in their own words.
    fn tell_of_the_wish(&self, unit: &UnitName, reply: &mut Reply<'_>) {
        if self.member.role == Role::Dispatcher || self.inbound.replaces.is_some() {
            return;
        }
        for (to, voice) in other_dispatchers(self) {
            let args = [
                ("unit", Arg::from(unit.as_str())),
                ("who", voice.person(&self.member.id).into_owned().into()),
                ("quote", voice.quote(self.text.trim()).into()),
            ];
            let text = voice.say("need-told", &args);
            if !reply
                .others
                .iter()
                .any(|out| out.to == to.id && out.text.text() == text)
            {
                let letter = Outgoing::to(&to.id, text).of_level(Level::Notice);
                reply.others.push(letter);
            }
        }
    }

    /// Returns the trailer's case as this turn has it, or as it stands.
    fn case_for<'c>(&self, cases: &'c [Case], unit: &UnitName) -> Cow<'c, Case> {
        match cases.iter().find(|case| case.unit == *unit) {
            Some(case) => Cow::Borrowed(case),
            None => Cow::Owned(self.standing(unit)),
        }
    }

    /// Returns the instant that a clock time in a wish names, at the trailer's site.
    fn told_for(&self, clock: Option<&str>, plan: &Plan, case: &Case) -> Option<DateTime<Utc>> {
        let zone = case.zone();
        when::told(clock?, &plan.text, self.now, zone)
    }

    /// Tells whether nobody was reached by the call that a message tells of.
    fn nobody_answered(&self) -> bool {
        self.desk.phrases.holds("truck", "unanswered", self.text)
    }

    /// Returns the instant by which work is wanted: at the hour told, else on the day told, as far as the site's hours go.
    fn wanted_by(&self, clock: Option<&str>, plan: &Plan, case: &Case) -> Option<DateTime<Utc>> {
        if let Some(at) = self.told_for(clock, plan, case) {
            return Some(at);
        }
        let zone = case.zone();
        let says = |list| self.desk.phrases.holds("need-by", list, &plan.text);
        let named = when::day_ahead(&plan.text, self.now, zone);
        if named.is_some()
            && let Some(at) = when::coming(&plan.text, self.now, zone)
        {
            return Some(at);
        }
        let today = || self.now.with_timezone(&zone).date_naive();
        let day = named.or_else(|| says("today").then(today))?;
        let midnight = when::on(day, "00:00", zone)?;
        let local_day = |at: &DateTime<Utc>| at.with_timezone(&zone).date_naive();
        let mut windows = case.job().into_iter().flat_map(|job| job.windows(midnight));
        let hours = windows.find(|(from, _)| local_day(from) >= day);
        let hours = hours.filter(|(from, _)| local_day(from) == day);
        let (opens, closes) = match hours {
            Some(hours) => hours,
            None => (when::on(day, OPENS, zone)?, when::on(day, CLOSES, zone)?),
        };
        Some(match () {
            () if says("before") => opens,
            () if says("morning") => when::on(day, "12:00", zone)?.min(closes),
            () => closes,
        })
    }

    /// Opens the task that is asked for, or says which stands for it.
    fn need(
        &self,
        case: &Case,
        kind: TaskKind,
        wanted: Option<DateTime<Utc>>,
        reply: &mut Reply<'_>,
    ) {
        let tank = case.outlook.waste.as_ref();
        let forecast = tank.filter(|_| kind == TaskKind::PumpOut);
        let forecast = forecast.and_then(|tank| tank.p10);
        // by the crowd alone a tank is full at any time: the wish says when
        let told =
            case.now.value(ReadingKey::WastePct).is_some() || case.now.last_pumped().is_some();
        let due = match wanted {
            Some(_) => earlier(wanted, forecast.filter(|_| told)),
            None => forecast,
        };
        let opened = reply.board.open(&case.unit, kind, due, lead(case), None);
        if wanted.is_some() {
            reply.board.keep_to(opened.0, wanted);
        }
        self.tell_too_late_a_wish(wanted, opened.0, reply);
        reply.wanted(opened.0, opened.1);
        if kind == TaskKind::PumpOut && truck::wants_a_call(self) {
            reply.say(
                "truck-call-yourself",
                &[("unit", case.unit.as_str().into())],
            );
        }
    }

    /// Says that the tank may be full before the hour that somebody wishes: the task keeps the earlier one.
    fn tell_too_late_a_wish(&self, wanted: Option<DateTime<Utc>>, id: u32, reply: &mut Reply<'_>) {
        let task = reply.board.tasks().task(id);
        let due = task.filter(|task| task.kind == TaskKind::PumpOut);
        let due = due.and_then(|task| task.due);
        let Some((wanted, due)) = wanted.zip(due) else {
            return;
        };
        if wanted - due < WORTH_MOVING {
            return;
        }
        let args = [("time", wanted.into()), ("due", due.into())];
        let key = match due <= self.now {
            true => "wanted-too-late-now",
            false => "wanted-too-late",
        };
        reply.say(key, &args);
    }

    /// Notes that somebody was called, and when they come.
    fn booked(
        &self,
        case: &Case,
        kind: TaskKind,
        promised: Option<DateTime<Utc>>,
        reply: &mut Reply<'_>,
    ) {
        // when it must be there is the tank's matter, not the hauler's
        let tank = case.outlook.waste.as_ref();
        let needed = tank.filter(|_| kind == TaskKind::PumpOut);
        let needed = needed.and_then(|tank| tank.p10);
        let open = reply.board.tasks().open_task(&case.unit, kind).cloned();
        let (id, due) = match open {
            Some(task) => (task.id, task.due.or(needed)),
            None => {
                let due = needed.or(promised);
                let opened = reply.board.open(&case.unit, kind, due, lead(case), None);
                (opened.0, due)
            }
        };
        reply.board.change(TaskChange::Called {
            id,
            by: self.member.id.clone(),
            promised,
        });
        if kind == TaskKind::PumpOut {
            truck::too_late(due, tank.map(|tank| tank.p10), promised, reply);
        }
    }
}

/// Returns the notice the hauler wants at the trailer's site.
pub(in crate::desk) fn lead(case: &Case) -> TimeDelta {
    let truck = case.site().map(|site| &site.pump_truck);
    truck.map_or_else(|| PumpTruck::default().notice(), PumpTruck::notice)
}
