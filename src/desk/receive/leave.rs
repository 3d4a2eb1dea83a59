//! A message that says that a trailer goes, beside what it reports: the towing check starts with it, and what it reports is
//! read by that.

use super::super::phrases::{is_marked, plain};
use super::super::settle::Settled;
use super::super::settle::known;
use super::Hearing;
use crate::book::Stage;
use crate::dialogue::{About, CHECK_LASTS, Way};
use crate::heard::{
    Ask, CommandName, Entry, Event, Fault, Plan, PlanKind, ReadingKey, Remark, UnitName,
};

/// What is done to a trailer that goes, and not to one that is set up.
const GOES: &[Event] = &[Event::Hitched, Event::Left, Event::Stowed, Event::JacksUp];
/// A level with the word for the tank, and little else.
const BARE_LEVEL: usize = 5;
/// What stands on the list of leaving and may be done save for something.
const LISTED: &[Event] = &[
    Event::Closed,
    Event::WaterOff,
    Event::HeaterOff,
    Event::PowerOff,
    Event::Stowed,
    Event::JacksUp,
    Event::LightsChecked,
    Event::WastePumped,
    Event::FreshDrained,
];
/// What is done to one that is set up.
const STAYS: &[Event] = &[
    Event::Arrived,
    Event::Unhitched,
    Event::JacksDown,
    Event::PowerOn,
    Event::InService,
    Event::Returned,
];

impl Hearing<'_> {
    /// Reads a report by whether its trailer goes: then the lights that are fine are those that the road needs, and cords
    /// that are in are off their power. What was never said to be bad is not said to be mended.
    pub(super) fn as_it_goes(&mut self, settled: &mut Settled) {
        self.step_by_word(settled);
        self.tank_of_a_new_stand(settled);
        // "sigue enganchada" while it is set up: it was never off the hook
        if self.desk.phrases.holds("leave", "hooked-still", self.text) {
            let stands = |unit: &UnitName| self.stage(unit) == Some(Stage::SettingUp);
            settled.amend_all(|unit, entry| {
                if stands(unit) {
                    entry.events.retain(|event| *event != Event::Hitched);
                }
            });
        }
        let says = |list| self.desk.phrases.holds("leave", list, self.text);
        // "desconecté los cables y los guardé": the cords are put away, and no trailer in a yard
        if self.desk.phrases.holds("leave", "hose-away", self.text) && !says("yard") {
            settled.amend_all(|_, entry| {
                entry.events.retain(|event| *event != Event::Returned);
            });
        } else if says("things") && !says("yard") {
            settled.amend_all(|_, entry| {
                for event in &mut entry.events {
                    if *event == Event::Returned {
                        *event = Event::Stowed;
                    }
                }
            });
        }
        self.all_but(settled);
        // cords or hoses alone are not all that is put away
        let put = |list| self.desk.phrases.holds("leave", list, self.text);
        if put("part-put") && !put("whole-put") {
            let (cords, hoses) = (put("cords-put"), put("hoses-put"));
            settled.amend_all(|_, entry| {
                let before = entry.events.len();
                entry.events.retain(|event| *event != Event::Stowed);
                let put_away = entry.events.len() < before;
                let done = [(cords, Event::PowerOff), (hoses, Event::WaterOff)];
                for (_, event) in done.into_iter().filter(|(told, _)| *told && put_away) {
                    if !entry.events.contains(&event) {
                        entry.events.push(event);
                    }
                }
            });
        }
        let alone = settled.reports.len() == 1;
        for (unit, _, entry) in &mut settled.reports {
            let stood = self.desk.book.unit(unit).map(|kept| kept.state());
            let stands = |fault: &Fault| stood.is_some_and(|state| state.has(*fault));
            entry
                .cleared
                .retain(|fault| !Fault::OF_TOWING.contains(fault) || stands(fault));
            // who tells which of them is out speaks of the road's lights
            let of_the_road = entry.faults.contains(&Fault::TowLightsFault)
                || self.desk.phrases.holds("leave", "lamps", self.text);
            if !of_the_road && !self.is_going(unit, entry) {
                continue;
            }
            let mut checks = self.talk.checks.iter();
            let at_lights =
                checks.any(|check| check.unit == *unit && check.fault == Fault::NoLights);
            if entry.cleared.contains(&Fault::NoLights) && !at_lights {
                entry.cleared.retain(|fault| *fault != Fault::NoLights);
                let dark = [Fault::TowLightsFault, Fault::NoLights];
                if !dark.iter().any(|fault| entry.faults.contains(fault)) {
                    entry.events.push(Event::LightsChecked);
                }
            }
            // "lights good, one marker is out"
            let says = |list| self.desk.phrases.holds("leave", list, self.text);
            let lamp = says("markers") && !says("inside");
            if lamp && let Some(dark) = entry.faults.iter().position(|f| *f == Fault::NoLights) {
                entry.faults[dark] = Fault::TowLightsFault;
                entry.faults.dedup();
            }
            // a lamp that is smashed does not shine
            let smashed = entry.faults.contains(&Fault::Damage)
                && self.desk.phrases.holds("leave", "lamps", self.text);
            if smashed && !entry.faults.contains(&Fault::TowLightsFault) {
                entry.faults.push(Fault::TowLightsFault);
            }
            if entry.faults.contains(&Fault::TowLightsFault) {
                entry.events.retain(|event| *event != Event::LightsChecked);
            }
            // "left blinker" has left nothing
            if self.desk.phrases.holds("leave", "left-lamps", self.text) {
                entry.events.retain(|event| *event != Event::Left);
            }
            // nor have lamps that "were off"
            if self.desk.phrases.holds("leave", "were-off", self.text) {
                entry.events.retain(|event| *event != Event::Left);
            }
            let power = [Event::PowerOff, Event::PowerOn];
            if alone
                && !power.iter().any(|event| entry.events.contains(event))
                && self.desk.phrases.holds("leave", "cords", self.text)
            {
                entry.events.push(Event::PowerOff);
            }
        }
        settled.reports.retain(|(.., entry)| !entry.is_empty());
        if settled.reports.is_empty() {
            settled.from_context = None;
        }
    }

    /// "Tank's half" while a trailer is set up, that nobody has used yet: most likely fresh water, so it is asked which.
    fn tank_of_a_new_stand(&mut self, settled: &mut Settled) {
        let round = self.talk.round.as_ref();
        let unit = round
            .filter(|round| round.way == Way::SetUp)
            .map(|round| round.unit.clone());
        let Some(unit) = unit.filter(|unit| self.stage(unit) == Some(Stage::SettingUp)) else {
            return;
        };
        let has = |list| self.desk.phrases.holds("which-tank", list, self.text);
        let level = ReadingKey::WastePct;
        let told = |entry: &Entry| {
            let one = entry.readings.values.len() == 1 && entry.events.is_empty();
            one && entry.readings.value(level).is_some_and(|pct| pct > 0.0)
        };
        let bare = settled
            .reports
            .iter()
            .any(|(of, _, entry)| *of == unit && told(entry));
        let short = self.text.split_whitespace().count() <= BARE_LEVEL;
        if !bare || !short || !has("tank") || has("names") {
            return;
        }
        settled.amend(&unit, |entry| {
            entry.readings.values.remove(&ReadingKey::WastePct);
        });
        self.heard.answer = None;
        self.heard.unclear.push(Remark {
            text: self.written.trim().to_owned(),
            why: "which-tank".into(),
        });
    }

    /// "Got everything stowed but the ramp", "jacks up but one": what is done save for something is not done. What was told
    /// before it stands.
    fn all_but(&self, settled: &mut Settled) {
        let round = self.talk.round.as_ref();
        let leaving = round.filter(|round| round.way == Way::Leaving);
        let phrases = self.desk.phrases;
        let parted = phrases.parted("leave", "but", self.text);
        let (Some(round), Some((head, rest))) = (leaving, parted) else {
            return;
        };
        let undone =
            phrases.holds("leave", "but-what", rest) && !phrases.holds("leave", "but-well", rest);
        if !undone {
            return;
        }
        let last = head
            .rsplit([',', ';', '.'])
            .find(|part| !part.trim().is_empty());
        let last = last
            .and_then(|part| part.rsplit(" and ").next())
            .unwrap_or(head);
        let scale = self.fleet.style.temperature;
        let told = self.desk.reader.hear(last, scale).entries;
        let of_it = |event: &Event| {
            LISTED.contains(event) && told.iter().any(|entry| entry.events.contains(event))
        };
        settled.amend(&round.unit, |entry| {
            entry.events.retain(|event| !of_it(event));
        });
    }

    /// Reports what a step of leaving is told by in a word or two: "unplugged" is its power, "all packed" what is stowed.
    fn step_by_word(&self, settled: &mut Settled) {
        let Some(round) = self.talk.round.as_ref() else {
            return;
        };
        let fresh = self.inbound.at - round.asked <= CHECK_LASTS;
        let heard = &self.heard;
        let speaks = heard.ask.is_some() || heard.command.is_some() || !heard.entries.is_empty();
        let names_another = heard.named.iter().any(|name| *name != round.unit);
        let phrases = &self.desk.phrases;
        let asks = is_marked(self.text);
        if round.way != Way::Leaving || !fresh || speaks || asks || names_another || self.goes_not()
        {
            return;
        }
        let told = [
            ("cords", Event::PowerOff),
            ("stowed", Event::Stowed),
            ("drained", Event::FreshDrained),
            ("hose-off", Event::WaterOff),
            ("closed", Event::Closed),
            ("heaters-off", Event::HeaterOff),
        ];
        // one heater is told to be off where all of them are asked about
        let asked = |list: &str| list != "heaters-off" || round.step == "heater-off";
        let told = told
            .iter()
            .filter(|(list, _)| asked(list) && phrases.holds("leave", list, self.text));
        let events: Vec<Event> = told.map(|(_, event)| *event).collect();
        if !events.is_empty() {
            let entry = Entry {
                unit: Some(round.unit.clone()),
                events,
                ..Entry::default()
            };
            settled
                .reports
                .push((round.unit.clone(), self.inbound.at, entry));
        }
    }

    /// Tells whether the message says that nothing goes yet: "no issues" does not.
    fn goes_not(&self) -> bool {
        let phrases = &self.desk.phrases;
        let rest = phrases.without("leave", "well", self.text);
        phrases.holds("leave", "not", &rest)
    }

    /// Tells whether a trailer is on the hook, or packed up, by what is known or said of it.
    fn is_going(&self, unit: &UnitName, entry: &Entry) -> bool {
        let says = |events: &[Event]| events.iter().any(|event| entry.events.contains(event));
        let round = self.talk.round.as_ref();
        let leaving = round.is_some_and(|round| round.unit == *unit && round.way == Way::Leaving);
        let hooked = self.stage(unit) == Some(Stage::Hitched);
        !says(STAYS) && (says(GOES) || leaving || hooked)
    }

    fn stage(&self, unit: &UnitName) -> Option<Stage> {
        self.desk.book.unit(unit).map(|kept| kept.state().stage())
    }

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
        // whoever works alone beside a trailer and goes leaves it there
        if self.ends_alone() && self.desk.phrases.holds("leave", "either", self.text) {
            return;
        }
        if self.drives_loaded(settled) || self.rolls(settled) || self.goes_with_its_report(settled)
        {
            return;
        }
        let phrases = &self.desk.phrases;
        let by_order = self.heard.command.as_ref().filter(|order| {
            order.name == CommandName::Take && phrases.holds("leave", "home", &order.rest)
        });
        let taken = by_order.and_then(|order| {
            let name = UnitName::new(&order.task?.to_string());
            known(&self.fleet, &name).cloned()
        });
        // "ready to go" is said of one that is set up, too
        let round = self.talk.round.as_ref();
        let packing = round.is_some_and(|round| round.way == Way::Leaving);
        let ready = phrases.holds("leave", "soon", self.text);
        let says = phrases.holds("leave", "says", self.text)
            || phrases.ends("leave", "ends", self.text)
            || ready && packing;
        let not_yet = self.goes_not();
        let packs = self.packs_up();
        let more = !packs && (!says || not_yet || self.speaks_of_more());
        if taken.is_none() && more {
            self.is_to_be_towed(settled);
            return;
        }
        let Some(unit) = taken.or_else(|| self.goes(settled)) else {
            return;
        };
        if !self.may_go(&unit, settled, packs, ready) {
            return;
        }
        self.heard.command = None;
        self.heard.ask = None;
        // it is answered by its list
        self.heard.set_aside.retain(|remark| remark.why != "plan");
        if packs {
            self.heard.unclear.clear();
        }
        self.plan_to_leave(unit.clone());
        settled.leaving.push(unit);
    }

    /// Tells whether a trailer that is said to go can be meant: it stands at a site, and the message reports no move of it.
    /// `packs` tells that it is packed up, `ready` that it is called ready.
    fn may_go(&self, unit: &UnitName, settled: &Settled, packs: bool, ready: bool) -> bool {
        let mut told = settled.reports.iter().filter(|(of, ..)| of == unit);
        let moves = [Event::Hitched, Event::Left, Event::Arrived, Event::Returned];
        let tells = |event: &Event| moves.contains(event);
        if told.any(|(.., entry)| entry.events.iter().any(tells)) {
            return false;
        }
        // from the yard it goes to a job, and nothing was aboard
        let stage = self.stage(unit);
        // where nobody said where it stands, what is told to be aboard says that it was in use
        let levels = [
            ReadingKey::WastePct,
            ReadingKey::WasteGal,
            ReadingKey::FreshPct,
            ReadingKey::FreshGal,
        ];
        let reported = settled.reports.iter().any(|(of, _, entry)| {
            of == unit
                && levels
                    .iter()
                    .any(|key| entry.readings.value(*key).is_some())
        });
        let on_site = stage.is_some_and(Stage::is_on_site);
        let gone = match packs || ready {
            // "leaving check 12", "ready to roll" of one on the hook goes on with its list
            true => stage == Some(Stage::Yard),
            false => matches!(stage, Some(Stage::Yard | Stage::Hitched)),
        };
        let hooked = ready && stage == Some(Stage::Hitched);
        let round = self.talk.round.as_ref();
        let packed = round.is_some_and(|round| round.unit == *unit && round.way == Way::Leaving);
        on_site || hooked || !gone && (reported || packs || packed || self.must_not_roll(unit))
    }

    /// Tells whether a trailer that somebody goes with has what the road forbids, or is named as going where nobody said
    /// where it stands.
    fn must_not_roll(&self, unit: &UnitName) -> bool {
        let unfit = Fault::OF_TOWING.iter().any(|fault| self.has(unit, *fault));
        let with = self.desk.phrases.holds("leave", "with", self.text);
        unfit || with && self.names().contains(unit)
    }

    /// Holds what is told to be aboard of the trailer that is packed up against the limits of towing.
    fn is_to_be_towed(&mut self, settled: &Settled) {
        let round = self.talk.round.as_ref();
        let packed = round.filter(|round| round.way == Way::Leaving);
        let Some(unit) = packed.map(|round| round.unit.clone()) else {
            return;
        };
        let mut told = settled.reports.iter().filter(|(of, ..)| *of == unit);
        let levels = [ReadingKey::WastePct, ReadingKey::WasteGal];
        let aboard = |entry: &Entry| {
            let told = |key: &ReadingKey| entry.readings.value(*key);
            levels.iter().filter_map(told).any(|level| level > 0.0)
        };
        if told.any(|(.., entry)| aboard(entry)) && self.heard.ask.is_none() {
            self.plan_to_leave(unit);
        }
    }

    fn plan_to_leave(&mut self, unit: UnitName) {
        self.heard.plans.push(Plan {
            unit: Some(unit),
            kind: PlanKind::Leave,
            text: self.text.trim().to_owned(),
        });
    }

    /// "On the road with 6, waste 3/4": it has left, and its waste is held against the limits of towing.
    fn drives_loaded(&mut self, settled: &mut Settled) -> bool {
        let phrases = &self.desk.phrases;
        let drives = phrases.holds("leave", "drives", self.text)
            && !phrases.holds("leave", "stands", self.text)
            && !self.goes_not();
        let asks = self.heard.ask.is_some() || self.heard.command.is_some();
        let [(unit, _, entry)] = settled.reports.as_slice() else {
            return false;
        };
        let keys = [ReadingKey::WastePct, ReadingKey::WasteGal];
        let told = |key: &ReadingKey| entry.readings.value(*key);
        let aboard = keys.iter().filter_map(told).any(|level| level > 0.0);
        let moves = [Event::Left, Event::Arrived, Event::Returned];
        let moved = moves.iter().any(|event| entry.events.contains(event));
        let unit = unit.clone();
        let named = self.names().contains(&unit);
        let home = self.stage(&unit) == Some(Stage::Yard);
        if !drives || asks || !aboard || moved || !named || home {
            return false;
        }
        let entry = settled.report_on(&unit, self.inbound.at);
        entry.events.push(Event::Left);
        self.heard.set_aside.retain(|remark| remark.why != "plan");
        self.heard.plans.retain(|plan| plan.kind != PlanKind::Other);
        true
    }

    /// "16 rolling": one that is on the hook has left with that, as far as the book goes.
    fn rolls(&mut self, settled: &mut Settled) -> bool {
        let phrases = &self.desk.phrases;
        let round = self.talk.round.as_ref();
        let packed = round.is_some_and(|round| round.way == Way::Leaving);
        let on_way = packed && phrases.ends("leave", "on-way", &plain(self.text));
        let says = (on_way || phrases.holds("leave", "rolls", self.text))
            && !phrases.holds("leave", "soon", self.text)
            && !self.goes_not();
        if !says || self.speaks_of_more() {
            return false;
        }
        let Some(unit) = self.goes(settled) else {
            return false;
        };
        let since = self.desk.book.unit(&unit).map(|kept| {
            let state = kept.state();
            let left = state.when(Event::Left);
            (state.stage(), left > state.when(Event::Hitched))
        });
        let on_the_road = phrases.holds("leave", "road", self.text);
        // a trailer that is named is told to have gone, wherever it stood
        let named = self.names().contains(&unit);
        let gone = on_the_road && named && !phrases.holds("leave", "stands", self.text);
        // said once more while its list is gone through: it rolls now
        let round = self.talk.round.as_ref();
        let listed = round.is_some_and(|round| round.unit == unit && round.way == Way::Leaving);
        match since {
            Some((Stage::Hitched, left)) if !left || listed => {}
            // nobody said that it is on the hook, or its departure was not let pass
            Some(_) if listed => {}
            Some((stage, _))
                if gone && (stage.is_on_site() || self.stands_by_its_reports(&unit, stage)) => {}
            _ => return false,
        }
        let entry = settled.report_on(&unit, self.inbound.at);
        if !entry.events.contains(&Event::Left) {
            entry.events.push(Event::Left);
        }
        self.heard.set_aside.retain(|remark| remark.why != "plan");
        if !on_the_road {
            self.plan_to_leave(unit);
        }
        true
    }

    /// Tells whether a trailer of which nobody said where it stands was read lately at the site of its plan.
    fn stands_by_its_reports(&self, unit: &UnitName, stage: Stage) -> bool {
        let lately = |at| self.inbound.at - at <= CHECK_LASTS * 2;
        let kept = self.desk.book.unit(unit);
        let read = kept.is_some_and(|kept| {
            let mut told = kept.reports();
            told.any(|(at, _, entry)| lately(at) && !entry.readings.is_empty())
        });
        stage == Stage::Unknown && read && self.fleet.job_of(unit, self.now, None).is_some()
    }

    /// Marks a report of having left as one of leaving now: "12 leaving" is texted beside the trailer.
    fn goes_with_its_report(&mut self, settled: &Settled) -> bool {
        let phrases = &self.desk.phrases;
        let goes = phrases.holds("leave", "going", self.text)
            && !phrases.holds("leave", "road", self.text);
        let left = |entry: &Entry| entry.events.contains(&Event::Left);
        let units: Vec<UnitName> = settled
            .reports
            .iter()
            .filter(|(.., entry)| goes && left(entry))
            .map(|(unit, ..)| unit.clone())
            .collect();
        let any = !units.is_empty();
        for unit in units {
            self.plan_to_leave(unit);
        }
        any
    }

    /// Tells whether the message says that a trailer is packed up now, or asks for the leaving check.
    pub(in crate::desk) fn packs_up(&self) -> bool {
        let phrases = &self.desk.phrases;
        let not_yet = self.goes_not();
        if not_yet || self.heard.command.is_some() || self.mends() {
            return false;
        }
        let of_a_task = |id: u32| self.desk.book.tasks().task(id).is_some();
        if let Some(Ask::Done { task }) = self.heard.ask
            && of_a_task(task)
        {
            return false;
        }
        let named = || {
            let opens = phrases.after("leave", "over", self.text.trim_start());
            let rest = opens.or_else(|| phrases.following("leave", "over", self.text))?;
            let mut words = rest.split(|c: char| !(c.is_alphanumeric() || c == '-'));
            let name = words.find(|word| !phrases.is("mend", "trailer", word))?;
            known(&self.fleet, &UnitName::new(name))
        };
        phrases.holds("leave", "check", self.text) || named().is_some()
    }

    /// Tells whether the message asks, orders, or is about an earlier one: then nothing goes by it.
    fn speaks_of_more(&self) -> bool {
        self.heard.ask.is_some()
            || self.heard.command.is_some()
            || self.mends()
            || is_marked(self.text)
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
