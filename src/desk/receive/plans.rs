//! Work that a message asks for or says is ordered, and alarms it asks for.

use chrono::TimeDelta;

use super::super::answer::{self, Reply};
use super::super::situate::Case;
use super::super::tasks::kind_of;
use super::super::{settle, truck, watch, when};
use super::Hearing;
use crate::book::{Record, TaskChange};
use crate::dialogue::About;
use crate::finding::TaskKind;
use crate::heard::PlanKind;

impl Hearing<'_> {
    /// Answers requests: opens or confirms the task each asks for.
    pub(super) fn plan(&self, reply: &mut Reply<'_>, cases: &[Case], records: &mut Vec<Record>) {
        for plan in &self.heard.plans {
            let named = plan
                .unit
                .clone()
                .or_else(|| self.talk.unit_at(self.inbound.at).cloned());
            let unit = named
                .as_ref()
                .and_then(|name| settle::known(&self.fleet, name))
                .cloned();
            match (&plan.kind, unit) {
                // "do I need a regulator" orders none
                (PlanKind::Need { .. }, _) if answer::asks_whether(self) => {}
                (PlanKind::Need { need, by }, Some(unit)) => {
                    let opened;
                    let case = match cases.iter().find(|case| case.unit == unit) {
                        Some(case) => case,
                        None => {
                            opened = self.standing(&unit);
                            &opened
                        }
                    };
                    let kind = kind_of(*need);
                    let zone = case.job().map_or(self.fleet.time_zone, |job| job.time_zone);
                    let wanted = by
                        .as_deref()
                        .and_then(|clock| when::told(clock, &plan.text, self.now, zone));
                    let forecast = (kind == TaskKind::PumpOut)
                        .then(|| case.outlook.waste.as_ref()?.p10)
                        .flatten();
                    let (id, new) =
                        reply
                            .board
                            .open(&unit, kind, wanted.or(forecast), lead(case), None);
                    reply.wanted(id, new);
                }
                (PlanKind::Booked { need, at }, Some(unit)) => {
                    let zone = self.fleet.time_zone;
                    let promised = at
                        .as_deref()
                        .and_then(|clock| when::told(clock, &plan.text, self.now, zone));
                    let kind = kind_of(*need);
                    let standing;
                    let case = match cases.iter().find(|case| case.unit == unit) {
                        Some(case) => case,
                        None => {
                            standing = self.standing(&unit);
                            &standing
                        }
                    };
                    // when it must be there is the tank's matter, not the hauler's
                    let tank = case
                        .outlook
                        .waste
                        .as_ref()
                        .filter(|_| kind == TaskKind::PumpOut);
                    let needed = tank.and_then(|tank| tank.p10);
                    let open = reply.board.tasks().open_task(&unit, kind).cloned();
                    let (id, due) = match open {
                        Some(task) => (task.id, task.due.or(needed)),
                        None => {
                            let due = needed.or(promised);
                            (reply.board.open(&unit, kind, due, lead(case), None).0, due)
                        }
                    };
                    reply.board.change(TaskChange::Called {
                        id,
                        by: self.member.id.clone(),
                        promised,
                    });
                    if kind == TaskKind::PumpOut {
                        truck::too_late(due, promised, reply);
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
}

/// Returns the notice the hauler wants at the trailer's site.
pub(in crate::desk) fn lead(case: &Case) -> TimeDelta {
    let hours = case.site().map_or(2.5, |site| site.pump_truck.lead_h);
    TimeDelta::minutes((hours * 60.0).round() as i64)
}
