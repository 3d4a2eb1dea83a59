//! How a danger ends: by the word of who may clear it. A sign of it that is gone ends none, nor do people who are well;
//! what ends it is said each time.

use super::super::answer::Reply;
use super::super::inbound::Outgoing;
use super::super::on_road;
use super::super::others::other_dispatchers;
use super::super::settle::Settled;
use super::Hearing;
use crate::finding::{Level, TaskKind};
use crate::heard::{Entry, Event, Fault, Remark, UnitName};
use crate::reply::{Arg, Voice};

/// What the fire service clears, or the gas utility.
const OF_A_PLACE: &[Fault] = &[
    Fault::Fire,
    Fault::BurntSmell,
    Fault::GasIllness,
    Fault::CoAlarm,
    Fault::GasSmell,
    Fault::GeneratorInside,
];
/// What is over with the person.
const OF_A_PERSON: &[Fault] = &[Fault::PersonHurt, Fault::PersonCold, Fault::PersonTrapped];
/// Signs that come and go, by the words of their end.
const SIGNS: &[(&str, &[Fault])] = &[
    ("fire", &[Fault::Fire, Fault::BurntSmell]),
    ("alarm", &[Fault::CoAlarm, Fault::GasIllness]),
    ("ill", &[Fault::GasIllness, Fault::CoAlarm]),
];
/// "Everyones ok" is short; a longer message says more.
const LONGEST: usize = 8;

/// What a message says of the end of a danger.
pub(super) enum Ending {
    /// A sign of it is gone, and it stands.
    Stays(UnitName, Vec<Fault>),
    /// People are well: who was hurt, and what stands all the same.
    Well(UnitName, Vec<Fault>, Vec<Fault>),
    /// A burner or engine is out of the trailer, and its exhaust may not be.
    Out(UnitName),
    /// Somebody hurt is called looked after where nobody is known to be hurt.
    None(UnitName),
    /// An electrician was there, and what they found is not said.
    Came(UnitName, Option<u32>),
}

impl Ending {
    /// Returns the trailer on which the danger stands all the same.
    pub(super) fn unit_of_what_stands(&self) -> Option<&UnitName> {
        match self {
            Ending::Stays(unit, _) | Ending::Out(unit) | Ending::Came(unit, _) => Some(unit),
            Ending::Well(unit, _, rest) => (!rest.is_empty()).then_some(unit),
            Ending::None(_) => None,
        }
    }
}

impl Hearing<'_> {
    /// Reads what is said of the end of a danger, and takes out of the reports what it does not mean.
    pub(super) fn ending(&mut self, settled: &mut Settled) -> Option<Ending> {
        let says = |of, list| self.desk.answers.says(of, list, self.text);
        let rewrites = self.inbound.replaces.is_some() || self.mends();
        if self.heard.command.is_some() || rewrites || self.asks_something() {
            return None;
        }
        let unit = self.unit_meant()?;
        let open = self.dangers_on(&unit);
        if says("gas", "who") && says("gas", "clears") && !says("gas", "not") {
            self.clear(settled, &unit, &open, OF_A_PLACE);
            return None;
        }
        if self.is_tested() {
            if open.contains(&Fault::BurntSmell) {
                self.heard.plans.clear();
                self.heard.set_aside.clear();
            }
            self.clear(settled, &unit, &open, &[Fault::BurntSmell]);
            return None;
        }
        if says("tingle", "who") && says("tingle", "came") && !says("tingle", "not") {
            return self.electrician_came(settled, unit, &open);
        }
        // our own words for the end of it open none anew where it is over already
        if says("ends", "hurt-over") && !open.contains(&Fault::PersonHurt) {
            let hurt = |entry: &mut Entry| entry.faults.retain(|f| *f != Fault::PersonHurt);
            settled.amend(&unit, hurt);
            settled.homeless.iter_mut().for_each(hurt);
            settled.homeless = settled.homeless.take().filter(|entry| !entry.is_empty());
            return settled.reports.is_empty().then_some(Ending::None(unit));
        }
        if says("ends", "not") {
            return None;
        }
        self.source_out(settled, &unit, &open)
            .or_else(|| self.sign_gone(settled, &unit, &open))
            .or_else(|| self.all_well(settled, &unit, &open))
    }

    /// Ends a shock that an electrician has tested, and a trailer that rolled once it is chocked.
    pub(super) fn ends_in_words(&mut self, settled: &mut Settled) {
        let Some(unit) = self.unit_meant() else {
            return;
        };
        let over = if self.is_tested() && self.has(&unit, Fault::Shock) {
            // what he found is mended with it
            self.found_is_not_over(settled, &unit);
            self.drop_words_of_the_electrician();
            Fault::Shock
        } else if self.has(&unit, Fault::Runaway) && is_chocked(settled, &unit) {
            // on the road whoever came to help says when it is over
            if on_road::is_told(self, Some(&unit)) {
                return;
            }
            Fault::Runaway
        } else {
            return;
        };
        let cleared = settled.reports.iter().any(|(of, _, entry)| {
            *of == unit && (entry.cleared.contains(&over) || entry.faults.contains(&over))
        });
        if cleared {
            return;
        }
        let entry = settled.report_on(&unit, self.inbound.at);
        entry.cleared.push(over);
    }

    /// Tells whether an electrician is said to have tested it and found it safe.
    pub(super) fn is_tested(&self) -> bool {
        let says = |list| self.desk.answers.says("tingle", list, self.text);
        says("who") && says("clears") && !says("not")
    }

    /// Returns the dangers that stand on a trailer.
    pub(in crate::desk) fn dangers_on(&self, unit: &UnitName) -> Vec<Fault> {
        let kept = self.desk.book.unit(unit);
        let mut open = Fault::DANGERS.to_vec();
        open.retain(|fault| kept.is_some_and(|kept| kept.state().has(*fault)));
        open
    }

    /// Ends those dangers of `which` that are open.
    fn clear(&self, settled: &mut Settled, unit: &UnitName, open: &[Fault], which: &[Fault]) {
        let over: Vec<Fault> = open.iter().copied().filter(|f| which.contains(f)).collect();
        if over.is_empty() {
            return;
        }
        settled.homeless = None;
        let entry = settled.report_on(unit, self.inbound.at);
        entry.faults.retain(|fault| !over.contains(fault));
        let known = entry.cleared.clone();
        let news = over.into_iter().filter(|fault| !known.contains(fault));
        entry.cleared.extend(news);
    }

    /// "Electrician was here" does not say what they found.
    fn electrician_came(
        &mut self,
        settled: &mut Settled,
        unit: UnitName,
        open: &[Fault],
    ) -> Option<Ending> {
        let tasks = self.desk.book.tasks();
        let task = tasks.open_task(&unit, TaskKind::Electrician);
        let task = task.map(|task| task.id);
        let shock = open.contains(&Fault::Shock);
        if !shock && task.is_none() {
            return None;
        }
        self.drop_words_of_the_electrician();
        self.found_is_not_over(settled, &unit);
        Some(Ending::Came(unit, task.filter(|_| !shock)))
    }

    /// Takes out what the reader made of the electrician's own words, and leaves what else was said.
    pub(super) fn drop_words_of_the_electrician(&mut self) {
        let says = |list, text: &str| self.desk.answers.says("tingle", list, text);
        let theirs = |text: &str| says("who", text) || says("came", text) || says("clears", text);
        let plans = std::mem::take(&mut self.heard.plans);
        let set_aside = std::mem::take(&mut self.heard.set_aside);
        let unclear = std::mem::take(&mut self.heard.unclear);
        let plans = plans
            .into_iter()
            .filter(|plan| !theirs(&plan.text))
            .collect();
        let others = |remarks: Vec<Remark>| -> Vec<Remark> {
            (remarks.into_iter())
                .filter(|remark| !theirs(&remark.text))
                .collect()
        };
        let (set_aside, unclear) = (others(set_aside), others(unclear));
        self.heard.plans = plans;
        self.heard.set_aside = set_aside;
        self.heard.unclear = unclear;
    }

    /// "Loose neutral, all fixed": what an electrician found and mended is no fault now, and ends no danger untested. What
    /// is no work of theirs is told of all the same.
    pub(super) fn found_is_not_over(&self, settled: &mut Settled, unit: &UnitName) {
        let mended = |entry: &mut Entry| {
            entry
                .faults
                .retain(|fault| !Fault::OF_POWER.contains(fault));
            entry.cleared.clear();
        };
        settled.amend(unit, mended);
        if let Some(entry) = &mut settled.homeless {
            mended(entry);
        }
        settled.homeless = settled.homeless.take().filter(|entry| !entry.is_empty());
    }

    /// A burner that was carried out leaves its exhaust behind: it is over once that is aired, too.
    fn source_out(&self, settled: &mut Settled, unit: &UnitName, open: &[Fault]) -> Option<Ending> {
        let says = |of, list| self.desk.answers.says(of, list, self.text);
        let out = says("people", "source-out") || told_over(settled, unit, Fault::GeneratorInside);
        let aired = says("ends", "aired");
        if !open.contains(&Fault::GeneratorInside) || !(out || aired) {
            return None;
        }
        let inside = |fault: &Fault| *fault == Fault::GeneratorInside;
        settled.amend(unit, |entry| {
            entry.faults.retain(|fault| !inside(fault));
            entry.cleared.retain(|fault| !inside(fault));
        });
        if aired {
            self.clear(settled, unit, open, &[Fault::GeneratorInside]);
            return None;
        }
        Some(Ending::Out(unit.clone()))
    }

    /// A fire that is out, an alarm that is silent, somebody who feels better: the danger stands until it is cleared.
    fn sign_gone(&self, settled: &mut Settled, unit: &UnitName, open: &[Fault]) -> Option<Ending> {
        let says = |of, list| self.desk.answers.says(of, list, self.text);
        let gone = |(list, faults): &&(&str, &'static [Fault])| {
            let by_word = self.desk.answers.says("ends", list, self.text);
            let told = faults.iter().any(|fault| told_over(settled, unit, *fault));
            (by_word || told) && faults.iter().any(|fault| open.contains(fault))
        };
        let burnt = open.contains(&Fault::BurntSmell) && says("gas", "gone");
        let faults = match SIGNS.iter().find(gone) {
            Some((_, faults)) => faults,
            None if burnt => SIGNS[0].1,
            None => return None,
        };
        // the battery of an alarm is none of the trailer's
        let battery = faults.contains(&Fault::CoAlarm);
        let of_it = |fault: &Fault| {
            faults.contains(fault)
                || burnt && *fault == Fault::Odor
                || battery && *fault == Fault::BatteryLow
        };
        settled.amend(unit, |entry| {
            entry.faults.retain(|fault| !of_it(fault));
            entry.cleared.retain(|fault| !of_it(fault));
        });
        settled.homeless = None;
        let stays = open.iter().copied().filter(|fault| faults.contains(fault));
        Some(Ending::Stays(unit.clone(), stays.collect()))
    }

    /// "Everyones ok": who was hurt is looked after; what could hurt them stands.
    fn all_well(&self, settled: &mut Settled, unit: &UnitName, open: &[Fault]) -> Option<Ending> {
        let says = |list| self.desk.answers.says("ends", list, self.text);
        let long = self.text.split_whitespace().count() > LONGEST;
        let checked = self.talk.checks.iter().any(|check| check.unit == *unit);
        let reports = settled
            .reports
            .iter()
            .any(|(.., entry)| !entry.faults.is_empty());
        if open.is_empty() || long || checked || reports || !says("well") {
            return None;
        }
        let of_a_person = |fault: &Fault| OF_A_PERSON.contains(fault);
        let (hurt, rest): (Vec<Fault>, Vec<Fault>) = open.iter().partition(|f| of_a_person(f));
        self.clear(settled, unit, &hurt, OF_A_PERSON);
        Some(Ending::Well(unit.clone(), hurt, rest))
    }
}

/// Tells whether a message reports that a trailer is chocked.
fn is_chocked(settled: &Settled, unit: &UnitName) -> bool {
    let mut reports = settled.reports.iter();
    reports.any(|(of, _, entry)| of == unit && entry.events.contains(&Event::Chocked))
}

/// Tells whether a message reports that a fault on a trailer is over.
fn told_over(settled: &Settled, unit: &UnitName, fault: Fault) -> bool {
    let mut reports = settled.reports.iter();
    reports.any(|(of, _, entry)| of == unit && entry.cleared.contains(&fault))
}

/// Says what ends these dangers, each once: who decides, and the words that end it.
pub(in crate::desk) fn closing_words(
    voice: &Voice<'_>,
    unit: &UnitName,
    faults: &[Fault],
) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for fault in faults {
        let args = [("unit", Arg::from(unit.as_str()))];
        let line = voice.say(&format!("closes-{fault}"), &args);
        if !lines.contains(&line) {
            lines.push(line);
        }
    }
    lines
}

/// Answers what was said of the end of a danger.
pub(super) fn tell(hearing: &Hearing<'_>, ending: &Ending, reply: &mut Reply<'_>) {
    match ending {
        Ending::Stays(unit, faults) => say_stands("danger-sign-gone", unit, faults, reply),
        Ending::Out(unit) => {
            reply.say("burner-out", &[("unit", unit.as_str().into())]);
            let lines = closing_words(&reply.voice, unit, &[Fault::GeneratorInside]);
            reply.lines.extend(lines);
        }
        Ending::None(unit) => reply.say("help-over-none", &[("unit", unit.as_str().into())]),
        Ending::Came(unit, None) => {
            reply.say("electrician-came", &[("unit", unit.as_str().into())])
        }
        Ending::Came(unit, Some(task)) => {
            let id = Arg::Count(i64::from(*task));
            let args = [("unit", unit.as_str().into()), ("id", id)];
            reply.say("electrician-came-task", &args);
        }
        Ending::Well(unit, hurt, rest) => {
            if !hurt.is_empty() {
                reply.say("help-over", &[("unit", unit.as_str().into())]);
                tell_looked_after(hearing, unit, "help-over-told", reply);
            }
            if !rest.is_empty() {
                say_stands("danger-all-well", unit, rest, reply);
            }
        }
    }
}

fn say_stands(says: &str, unit: &UnitName, faults: &[Fault], reply: &mut Reply<'_>) {
    let names: Vec<String> = faults.iter().map(|f| reply.voice.fault(*f)).collect();
    let what = reply.voice.all_of(&names);
    reply.say(
        says,
        &[("unit", unit.as_str().into()), ("what", what.into())],
    );
    let lines = closing_words(&reply.voice, unit, faults);
    reply.lines.extend(lines);
}

/// Tells the other dispatchers what is said of who was hurt: that they are looked after, or only how they are.
pub(super) fn tell_looked_after(
    hearing: &Hearing<'_>,
    unit: &UnitName,
    key: &str,
    reply: &mut Reply<'_>,
) {
    let me = &hearing.member.id;
    for (to, voice) in other_dispatchers(hearing) {
        let args = [
            ("unit", Arg::from(unit.as_str())),
            ("who", voice.person(me).into_owned().into()),
            ("quote", voice.quote(hearing.text.trim()).into()),
        ];
        let text = voice.say(key, &args);
        reply
            .others
            .push(Outgoing::to(&to.id, text).of_level(Level::Notice));
    }
}
