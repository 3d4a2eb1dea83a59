//! Needs, plans and watches: what a message wants done, or wants to be told of.

use super::attach::{Placed, Value};
use super::concept::{Concept, Mark, Noun, State, Unit};
use super::item::{Form, Item, What};
use super::scope::{Aside, Scope, Sentence};
use super::unit::Group;
use crate::heard::{Need, Plan, PlanKind, UnitName};

/// Finds the plans of a message; `piece` gives the sender's own words for a range of items.
pub(super) fn find<'t>(
    items: &[Item],
    sentences: &[Sentence],
    scope: &[Scope],
    placed: &[Placed],
    groups: &[Group],
    piece: impl Fn(usize, usize) -> &'t str,
) -> Vec<Plan> {
    let mut plans = Vec::new();
    for sentence in sentences {
        let range = sentence.start..sentence.end;
        let units: Vec<UnitName> = range
            .clone()
            .filter_map(|i| match items[i].what {
                What::Units(g) => Some(groups[g].names.clone()),
                _ => None,
            })
            .flatten()
            .collect();
        let whom = |units: &[UnitName]| {
            if units.is_empty() {
                vec![None]
            } else {
                units.iter().cloned().map(Some).collect()
            }
        };
        let text = || piece(sentence.start, sentence.end).to_string();
        let condition = range
            .clone()
            .any(|i| scope[i].aside == Some(Aside::Condition));
        if condition {
            let watch = placed.iter().find_map(|p| match p.value {
                Value::Reading(key, value) if range.contains(&p.at) => Some((key, value)),
                _ => None,
            });
            let part = range
                .clone()
                .filter_map(|i| items[i].number())
                .find_map(|n| match n.form {
                    Form::Part => Some(n.value * 100.0),
                    // "if 10 gets over 80% send the truck"
                    _ if n.unit == Some(Unit::Pct) => Some(n.value),
                    _ => None,
                });
            let full = range.clone().find_map(|i| match items[i].what {
                What::Is(Concept::Level(level)) => Some(level),
                _ => None,
            });
            let below = range.clone().any(|i| {
                items[i].is(Mark::Below)
                    || matches!(
                        items[i].what,
                        What::Is(Concept::State(State::Low | State::Down))
                    )
            });
            // "if 12 hits 80": a level, where nothing else is spoken of
            let spoken_of = range
                .clone()
                .any(|i| items[i].noun().is_some_and(|n| n.reading().is_some()));
            let bare = range
                .clone()
                .filter_map(|i| items[i].number())
                .find(|n| matches!(n.unit, None | Some(Unit::Pct)) && n.form == Form::Whole)
                .filter(|n| n.unit.is_some() || !units.is_empty())
                .map(|n| n.value)
                .filter(|v| !spoken_of && (5.0..=100.0).contains(v));
            let watch = watch.or_else(|| {
                part.or(full)
                    .or(bare)
                    .map(|v| (crate::heard::ReadingKey::WastePct, v))
            });
            let kind = match watch {
                Some((key, value)) => PlanKind::Watch { key, value, below },
                None => PlanKind::Other,
            };
            plans.extend(whom(&units).into_iter().map(|unit| Plan {
                unit,
                kind: kind.clone(),
                text: text(),
            }));
            continue;
        }
        let at = range.clone().find_map(|i| match items[i].what {
            What::Clock(minutes) => Some(format!("{:02}:{:02}", minutes / 60 % 24, minutes % 60)),
            _ => None,
        });
        let booked = range.clone().any(|i| {
            items[i].is(Mark::Booked)
                && !scope[i].doubt
                && matches!(scope[i].aside, None | Some(Aside::Plan))
        });
        if booked {
            plans.extend(whom(&units).into_iter().map(|unit| Plan {
                unit,
                kind: PlanKind::Booked {
                    need: Need::PumpOut,
                    at: at.clone(),
                },
                text: text(),
            }));
            continue;
        }
        let mut needs: Vec<Need> = Vec::new();
        let mut planned = false;
        for i in range.clone() {
            if scope[i].aside != Some(Aside::Plan) && !items[i].is(Mark::Request) {
                if let What::Is(Concept::Need(need)) = items[i].what
                    && scope[i].aside.is_none()
                    && !needs.contains(&need)
                {
                    needs.push(need);
                }
                continue;
            }
            planned = true;
            let need = match items[i].what {
                What::Is(Concept::Need(need)) => Some(need),
                What::Is(Concept::State(State::Pumped | State::Emptied)) => Some(Need::PumpOut),
                What::Is(Concept::State(State::Filled)) => Some(Need::Refill),
                What::Is(Concept::State(State::Drained)) => Some(Need::Drain),
                What::Is(Concept::State(State::Stocked) | Concept::Noun(Noun::Supplies)) => {
                    Some(Need::Restock)
                }
                What::Is(Concept::State(State::Fixed)) => Some(Need::Repair),
                What::Is(Concept::Noun(Noun::Regulator)) => Some(Need::Regulator),
                What::Is(Concept::Noun(Noun::Filter)) => Some(Need::Filter),
                What::Is(Concept::Noun(Noun::Heater | Noun::TankHeater)) => Some(Need::Heater),
                _ => None,
            };
            if let Some(need) = need.filter(|n| !needs.contains(n)) {
                needs.push(need);
            }
        }
        let by = at;
        for need in &needs {
            let kind = PlanKind::Need {
                need: *need,
                by: by.clone(),
            };
            plans.extend(whom(&units).into_iter().map(|unit| Plan {
                unit,
                kind: kind.clone(),
                text: text(),
            }));
        }
        if planned && needs.is_empty() {
            plans.extend(whom(&units).into_iter().map(|unit| Plan {
                unit,
                kind: PlanKind::Other,
                text: text(),
            }));
        }
    }
    plans
}
