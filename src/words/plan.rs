//! Needs, plans and watches: what a message wants done, or wants to be told of.

use super::attach::{Placed, Value};
use super::concept::{Concept, Mark, Noun, State, Unit};
use super::item::{Form, Item, What};
use super::scope::{Aside, Scope, Sentence};
use super::unit::Group;
use crate::heard::{Need, Plan, PlanKind, ReadingKey, UnitName};

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
        let one = One {
            items: &items[sentence.start..sentence.end],
            scope: &scope[sentence.start..sentence.end],
            placed,
            start: sentence.start,
        };
        let units: Vec<UnitName> = one.units(groups);
        let whom: Vec<Option<UnitName>> = match units.is_empty() {
            true => vec![None],
            false => units.iter().cloned().map(Some).collect(),
        };
        for kind in one.kinds(!units.is_empty()) {
            plans.extend(whom.iter().cloned().map(|unit| Plan {
                unit,
                kind: kind.clone(),
                text: piece(sentence.start, sentence.end).to_string(),
            }));
        }
    }
    plans
}

/// One sentence.
struct One<'a> {
    items: &'a [Item],
    scope: &'a [Scope],
    /// The values of the whole message.
    placed: &'a [Placed],
    /// Where it starts in the message.
    start: usize,
}

impl One<'_> {
    /// Returns what it wants; `named` tells whether it names a trailer.
    fn kinds(&self, named: bool) -> Vec<PlanKind> {
        if self
            .scope
            .iter()
            .any(|scope| scope.aside == Some(Aside::Condition))
        {
            return vec![self.watch(named)];
        }
        if self.is_booked() {
            return vec![PlanKind::Booked {
                need: Need::PumpOut,
                at: self.clock(),
            }];
        }
        let (needs, planned) = self.needs(named);
        if needs.is_empty() {
            return match planned {
                true => vec![PlanKind::Other],
                false => Vec::new(),
            };
        }
        let need = |need| PlanKind::Need {
            need,
            by: self.clock(),
        };
        needs.into_iter().map(need).collect()
    }

    fn units(&self, groups: &[Group]) -> Vec<UnitName> {
        let names = self.items.iter().filter_map(|item| match item.what {
            What::Units(group) => Some(groups[group].names.clone()),
            _ => None,
        });
        names.flatten().collect()
    }

    /// Returns what a condition waits for: a reading, else a level of the waste tank.
    fn watch(&self, named: bool) -> PlanKind {
        let range = self.start..self.start + self.items.len();
        let reading = self.placed.iter().find_map(|placed| match placed.value {
            Value::Reading(key, value) if range.contains(&placed.at) => Some((key, value)),
            _ => None,
        });
        // "if 23 fresh is under 1/4": the tank that is named, else waste; a battery has no such level
        let spoken = || self.items.iter().filter_map(|item| item.noun()?.reading());
        let tank = spoken()
            .find(|key| [ReadingKey::FreshPct, ReadingKey::FuelPct].contains(key))
            .or_else(|| {
                let battery = spoken().any(|key| key == ReadingKey::BatteryV);
                (!battery).then_some(ReadingKey::WastePct)
            });
        let level = || Some((tank?, self.level(named)?));
        match reading.or_else(level) {
            Some((key, value)) => PlanKind::Watch {
                key,
                value,
                below: self.items.iter().any(is_below),
            },
            None => PlanKind::Other,
        }
    }

    /// Returns a level that is told without its tank, %.
    fn level(&self, named: bool) -> Option<f64> {
        let mut numbers = self.items.iter().filter_map(Item::number);
        let part = numbers.clone().find_map(|n| match n.form {
            Form::Part => Some(n.value * 100.0),
            // "if 10 gets over 80% send the truck"
            _ if n.unit == Some(Unit::Pct) => Some(n.value),
            _ => None,
        });
        let word = || {
            self.items.iter().find_map(|item| match item.what {
                What::Is(Concept::Level(level)) => Some(level),
                _ => None,
            })
        };
        // "if 12 hits 80": a level, where nothing else is spoken of
        let mut bare = || {
            let of_a_reading = |item: &Item| item.noun().is_some_and(|n| n.reading().is_some());
            if !named || self.items.iter().any(of_a_reading) {
                return None;
            }
            let whole = numbers.find(|n| n.unit.is_none() && n.form == Form::Whole)?;
            (5.0..=100.0).contains(&whole.value).then_some(whole.value)
        };
        part.or_else(word).or_else(&mut bare)
    }

    fn is_booked(&self) -> bool {
        let mut each = self.items.iter().zip(self.scope);
        each.any(|(item, scope)| {
            item.is(Mark::Booked) && !scope.doubt && matches!(scope.aside, None | Some(Aside::Plan))
        })
    }

    fn clock(&self) -> Option<String> {
        self.items.iter().find_map(|item| match item.what {
            What::Clock(minutes) => Some(format!("{:02}:{:02}", minutes / 60 % 24, minutes % 60)),
            _ => None,
        })
    }

    /// Returns the work it asks for, each once, and whether it plans anything at all.
    fn needs(&self, named: bool) -> (Vec<Need>, bool) {
        let mut needs: Vec<Need> = Vec::new();
        let mut planned = false;
        for (item, scope) in self.items.iter().zip(self.scope) {
            let plans = scope.aside == Some(Aside::Plan) || item.is(Mark::Request);
            planned |= plans && (named || !only_goes(item));
            let need = match (plans, item.what) {
                (true, what) => wanted(what),
                (false, What::Is(Concept::Need(need))) => scope.aside.is_none().then_some(need),
                _ => None,
            };
            needs.extend(need.filter(|need| !needs.contains(need)));
        }
        (needs, planned)
    }
}

/// "voy saliendo": who goes plans no work by it.
fn only_goes(item: &Item) -> bool {
    item.is(Mark::Underway)
        || item.is_filler()
        || item.is(Mark::At)
        || matches!(item.what, What::Sign(_) | What::Break)
}

fn is_below(item: &Item) -> bool {
    let low = Concept::State(State::Low);
    let down = Concept::State(State::Down);
    item.is(Mark::Below) || [What::Is(low), What::Is(down)].contains(&item.what)
}

/// Returns the work that is wanted where a word stands in a plan.
fn wanted(what: What) -> Option<Need> {
    let What::Is(concept) = what else { return None };
    Some(match concept {
        Concept::Need(need) => need,
        Concept::State(State::Pumped | State::Emptied) => Need::PumpOut,
        Concept::State(State::Filled) => Need::Refill,
        Concept::State(State::Drained) => Need::Drain,
        Concept::State(State::Stocked) | Concept::Noun(Noun::Supplies) => Need::Restock,
        Concept::State(State::Fixed) => Need::Repair,
        Concept::Noun(Noun::Regulator) => Need::Regulator,
        Concept::Noun(Noun::Filter) => Need::Filter,
        Concept::Noun(Noun::Heater | Noun::TankHeater) => Need::Heater,
        _ => return None,
    })
}
