//! Messages that are an order to the bot: their first word says so.

use super::Reading;
use crate::heard::{Ask, Command, CommandName};
use crate::words::concept::{AskWord, Concept, Mark, Unit};
use crate::words::item::{Form, Item, Number, What};

impl<'t> Reading<'t> {
    /// "voltage drop 100ft 10awg 12a": what a sum takes, where its name alone may head a report.
    fn has_numbers_of_a_sum(&self, from: usize) -> bool {
        let mut numbers = self.items[from..].iter().filter_map(Item::number);
        let read = |n: &Number| n.unit.is_some_and(|u| u == Unit::Volt || u.is_pressure());
        let any = self.items[from..]
            .iter()
            .any(|item| item.number().is_some());
        any && !numbers.any(|n| read(&n))
    }

    /// A message whose first word is an order to the bot has nothing else in it.
    pub(super) fn command(&mut self) -> bool {
        let Some(first) = self
            .items
            .iter()
            .position(|i| !i.is(Mark::Call) && !matches!(i.what, What::Sign(_) | What::Break))
        else {
            return false;
        };
        let after = first + 1;
        let task = self
            .items
            .get(after)
            .and_then(Item::number)
            .filter(|n| n.form == Form::Whole)
            .map(|n| n.value as u32);
        let rest_from = self.items[first].end;
        let rest = || {
            let start = self
                .tokens
                .get(rest_from)
                .map_or(self.normal.text.len(), |t| t.start);
            self.normal
                .original(self.original, start, self.normal.text.len())
                .to_string()
        };
        match self.items[first].what {
            What::Is(Concept::Ask(AskWord::Sum)) => {
                let sums = self.items[first].end == first + 1 || self.has_numbers_of_a_sum(after);
                if sums {
                    self.heard.ask = Some(Ask::Sum);
                }
                sums
            }
            What::Is(Concept::Command(name)) => {
                let numbered = matches!(
                    name,
                    CommandName::Take | CommandName::Drop | CommandName::Move
                );
                if numbered && task.is_none() {
                    return false;
                }
                // "take 41" orders, "taking 12 to the shop" tells
                let more = name == CommandName::Take
                    && self.items.iter().skip(after + 1).any(|i| {
                        !i.is(Mark::Call) && !matches!(i.what, What::Sign(_) | What::Break)
                    });
                let alone_only = name == CommandName::Words
                    && self
                        .items
                        .iter()
                        .skip(after)
                        .any(|i| !matches!(i.what, What::Sign(_) | What::Break));
                if (numbered && more) || alone_only {
                    return false;
                }
                let alone = matches!(name, CommandName::GotIt | CommandName::NeverMind);
                if alone
                    && self.items.iter().skip(after).any(|i| {
                        matches!(
                            i.what,
                            What::Number(_)
                                | What::Is(
                                    Concept::Noun(_)
                                        | Concept::State(_)
                                        | Concept::Event(_)
                                        | Concept::Fault(_)
                                        | Concept::Ask(_)
                                )
                        )
                    })
                {
                    return false;
                }
                self.heard.command = Some(Command {
                    name,
                    task: task.filter(|_| numbered),
                    rest: rest(),
                });
                self.heard.ask = Some(Ask::Command { name });
                true
            }
            _ => false,
        }
    }
}
