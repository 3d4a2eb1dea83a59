//! What a message says of circuits without a reading: two loads run together, and one may carry too much; one is dead.

use super::super::answer::Reply;
use super::super::phrases::is_marked;
use super::super::settle::{Settled, known};
use super::Hearing;
use crate::heard::{Event, Fault, LoadPair, Plan, PlanKind, ReadingKey, UnitName};

impl Hearing<'_> {
    /// Notes which loads are said to run together, on the trailer that is named or was last talked about.
    pub(super) fn loads_together(&mut self, settled: &mut Settled) {
        let has = |list: &str| self.desk.phrases.holds("loads", list, self.text);
        if self.heard.ask.is_some()
            || self.heard.command.is_some()
            || is_marked(self.text)
            || has("not")
            || !(has("together") || self.desk.phrases.ends("loads", "both", self.text))
        {
            return;
        }
        let pair = if has("water-heater") && has("converter") {
            LoadPair::HeaterAndConverter
        } else if has("two-air") {
            LoadPair::TwoAir
        } else if has("air") && has("heat") && !has("water-heater") {
            LoadPair::AirAndHeat
        } else {
            return;
        };
        let Some(unit) = self.named_or_last(settled) else {
            return;
        };
        self.heard.plans.push(Plan {
            unit: Some(unit.clone()),
            kind: PlanKind::Together { pair },
            text: self.text.trim().to_owned(),
        });
        settled.also.push(unit);
    }

    /// "unplugged it" beside a hot plug or a damaged cord: that cord alone, or the power? How many are live is asked, since
    /// "power off" drains a trailer that has heat.
    pub(super) fn one_cord_out(&mut self, settled: &mut Settled) -> Option<UnitName> {
        let says = |list: &str| self.desk.phrases.holds("one-cord", list, self.text);
        let asks = self.heard.ask.is_some() || is_marked(self.text);
        if asks || self.heard.command.is_some() || !says("says") || says("not") {
            return None;
        }
        let unit = self.named_or_last(settled)?;
        let kept = self.desk.book.unit(&unit)?;
        let burnt = [Fault::HotPlug, Fault::CordDamaged];
        let cords = self.fleet.trailers.get(&unit)?.circuits.len();
        if cords < 2 || !burnt.iter().any(|fault| kept.state().has(*fault)) {
            return None;
        }
        let counted = settled
            .reports
            .iter()
            .any(|(.., entry)| entry.readings.values.contains_key(&ReadingKey::Cords));
        if counted {
            return None;
        }
        settled.amend_all(|_, entry| entry.events.retain(|event| *event != Event::PowerOff));
        Some(unit)
    }

    /// "Running from the tank": the supply is off, on the trailer that is named or was last talked about.
    pub(super) fn on_its_own_tank(&mut self, settled: &mut Settled) {
        let has = |list: &str| self.desk.phrases.holds("from-tank", list, self.text);
        let asks = self.heard.ask.is_some() || is_marked(self.text);
        let told = has("says") || has("hose");
        if asks || self.heard.command.is_some() || !told || has("not") {
            return;
        }
        let Some(unit) = self.named_or_last(settled) else {
            return;
        };
        let at = self.inbound.at;
        let entry = settled.report_on(&unit, at);
        let told = [Event::WaterOff, Event::WaterOn];
        if !told.iter().any(|event| entry.events.contains(event)) {
            entry.events.push(Event::WaterOff);
        }
        // no supply is what is told, and no fault that is new
        entry.faults.retain(|fault| *fault != Fault::NoWater);
    }

    /// Notes that the amps read on no circuit are those of the cold package's heaters: which circuit those hang on the fleet
    /// knows, and what else hangs there was not read.
    pub(super) fn cold_heater_read(&mut self, settled: &mut Settled) {
        let has = |list: &str| self.desk.phrases.holds("loads", list, self.text);
        let named = has("cold-heater") || has("heat") && !has("water-heater") && !has("not-cold");
        let asks = self.heard.ask.is_some() || is_marked(self.text);
        let [(unit, _, entry)] = settled.reports.as_slice() else {
            return;
        };
        let [amps] = entry.readings.amps.as_slice() else {
            return;
        };
        if asks || self.heard.command.is_some() || !named || amps.circuit.is_some() {
            return;
        }
        self.heard.plans.push(Plan {
            unit: Some(unit.clone()),
            kind: PlanKind::ColdHeater,
            text: self.text.trim().to_owned(),
        });
    }

    /// "12 hose is off and drained": no answer to a check of something that no hose feeds.
    pub(super) fn hose_off_aside(&self) -> bool {
        const OF_WATER: &[Fault] = &[
            Fault::NoWater,
            Fault::LowFlow,
            Fault::Frozen,
            Fault::Leak,
            Fault::Spill,
        ];
        let has = |list: &str| self.desk.phrases.holds("from-tank", list, self.text);
        let check = self.talk.checks.last();
        check.is_some_and(|check| !OF_WATER.contains(&check.fault)) && has("hose") && !has("not")
    }

    /// "12.2 V, resting, no load": whether a battery was read at rest is not asked of who says so.
    pub(super) fn read_at_rest(&self, reply: &mut Reply<'_>) {
        if !self.desk.phrases.holds("battery", "rest", self.text) {
            return;
        }
        for finding in &mut reply.findings {
            finding.action = match finding.action.as_ref() {
                "power-battery-low-soon" => "power-battery-low-soon-rest",
                "power-battery-low-act" => "power-battery-low-act-rest",
                _ => continue,
            }
            .into();
        }
    }

    /// Notes which circuit is named dead: what it feeds has no power, whatever else was reported.
    pub(super) fn dead_circuit(&mut self, settled: &mut Settled) {
        let phrases = &self.desk.phrases;
        let has = |list: &str| phrases.holds("circuit", list, self.text);
        let asks = self.heard.ask.is_some() || is_marked(self.text);
        if asks || self.heard.command.is_some() || has("not") || !has("dead") {
            return;
        }
        let number = phrases.following("circuit", "of", self.text);
        let number = number.and_then(|rest| {
            let word = rest.split(|c: char| !c.is_alphanumeric()).next()?;
            word.parse::<u8>().ok()
        });
        let Some(circuit) = number.filter(|number| (1..=4).contains(number)) else {
            return;
        };
        let Some(unit) = self.named_or_last(settled) else {
            return;
        };
        self.heard.plans.push(Plan {
            unit: Some(unit.clone()),
            kind: PlanKind::DeadCircuit { circuit },
            text: self.text.trim().to_owned(),
        });
        settled.also.push(unit);
    }

    pub(super) fn named_or_last(&self, settled: &Settled) -> Option<UnitName> {
        let named: Vec<&UnitName> = self
            .heard
            .named
            .iter()
            .filter_map(|name| known(&self.fleet, name))
            .collect();
        match (settled.reports.as_slice(), named.as_slice()) {
            ([(unit, ..)], _) => Some(unit.clone()),
            ([], [unit]) => Some((*unit).clone()),
            ([], []) => {
                let last = self.talk.unit_at(self.inbound.at)?;
                known(&self.fleet, last).cloned()
            }
            _ => None,
        }
    }
}
