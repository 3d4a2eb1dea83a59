//! A message that says that a trailer goes, beside what it reports: the towing check starts with it.

use super::super::settle::Settled;
use super::super::settle::known;
use super::Hearing;
use crate::book::Stage;
use crate::dialogue::{About, Way};
use crate::heard::{CommandName, Event, Plan, PlanKind, ReadingKey, UnitName};

impl Hearing<'_> {
    /// Asks whether a trailer goes too, where somebody says that they go and names none. Nothing is logged by it.
    pub(super) fn ask_who_leaves(&mut self, settled: &mut Settled) {
        let phrases = &self.desk.phrases;
        let goes = phrases.is("leave", "either", self.text);
        if !goes || !self.heard.named.is_empty() || self.speaks_of_more() || self.asks.is_some() {
            return;
        }
        let last = self.talk.unit_at(self.inbound.at);
        let unit = last.and_then(|last| known(&self.fleet, last)).cloned();
        let stage = unit.as_ref().and_then(|unit| self.desk.book.unit(unit));
        let stage = stage.map(|kept| kept.state().stage());
        let round = self.talk.round.as_ref();
        let going = round.is_some_and(|round| round.way == Way::Leaving);
        if going || stage == Some(Stage::Hitched) {
            return;
        }
        settled.reports.clear();
        settled.homeless = None;
        settled.from_context = None;
        self.heard.entries.clear();
        self.heard.plans.clear();
        self.heard.set_aside.clear();
        let unit = unit.filter(|_| stage != Some(Stage::Yard));
        self.asks = Some(About::Leaves { unit });
    }

    /// Notes which trailer is about to go, where the message says so and no report of it tells.
    pub(super) fn leaving(&mut self, settled: &mut Settled) {
        let phrases = &self.desk.phrases;
        let by_order = self.heard.command.as_ref().filter(|order| {
            order.name == CommandName::Take && phrases.holds("leave", "home", &order.rest)
        });
        let taken = by_order.and_then(|order| {
            let name = UnitName::new(&order.task?.to_string());
            known(&self.fleet, &name).cloned()
        });
        let says =
            phrases.holds("leave", "says", self.text) || phrases.ends("leave", "ends", self.text);
        let not_yet = phrases.holds("leave", "not", self.text);
        if taken.is_none() && (!says || not_yet || self.speaks_of_more()) {
            return;
        }
        let Some(unit) = taken.or_else(|| self.goes(settled)) else {
            return;
        };
        let told = settled.reports.iter().filter(|(of, ..)| *of == unit);
        let moves = [Event::Hitched, Event::Left, Event::Arrived, Event::Returned];
        let tells = |event: &Event| moves.contains(event);
        if told
            .into_iter()
            .any(|(.., entry)| entry.events.iter().any(tells))
        {
            return;
        }
        // from the yard it goes to a job, and nothing was aboard
        let stage = self.desk.book.unit(&unit).map(|kept| kept.state().stage());
        // where nobody said where it stands, what is told to be aboard says that it was in use
        let levels = [
            ReadingKey::WastePct,
            ReadingKey::WasteGal,
            ReadingKey::FreshPct,
            ReadingKey::FreshGal,
        ];
        let reported = settled.reports.iter().any(|(of, _, entry)| {
            *of == unit
                && levels
                    .iter()
                    .any(|key| entry.readings.value(*key).is_some())
        });
        let on_site = matches!(
            stage,
            Some(Stage::SettingUp | Stage::InService | Stage::Closed)
        );
        let gone = matches!(stage, Some(Stage::Yard | Stage::Hitched));
        if !on_site && (gone || !reported) {
            return;
        }
        self.heard.command = None;
        self.heard.ask = None;
        self.heard.plans.push(Plan {
            unit: Some(unit.clone()),
            kind: PlanKind::Leave,
            text: self.text.trim().to_owned(),
        });
        settled.leaving.push(unit);
    }

    /// Tells whether the message asks, orders, or is about an earlier one: then nothing goes by it.
    fn speaks_of_more(&self) -> bool {
        self.heard.ask.is_some()
            || self.heard.command.is_some()
            || self.mends()
            || self.text.trim_end().ends_with('?')
    }

    /// Returns the one trailer that is meant to go.
    fn goes(&self, settled: &Settled) -> Option<UnitName> {
        match (settled.reports.as_slice(), self.names().as_slice()) {
            ([(unit, ..)], _) => Some(unit.clone()),
            ([], [unit]) => Some(unit.clone()),
            ([], []) => {
                let last = self.talk.unit_at(self.inbound.at)?;
                known(&self.fleet, last).cloned()
            }
            _ => None,
        }
    }
}
