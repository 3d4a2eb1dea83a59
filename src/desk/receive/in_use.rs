//! A trailer on which a danger is open, and that is told to be used or switched: the danger is said again before what was
//! logged, and the dispatchers hear of it.

use super::super::answer::Reply;
use super::super::inbound::Outgoing;
use super::super::others::other_dispatchers;
use super::super::settle::Settled;
use super::Hearing;
use super::ends::closing_words;
use crate::finding::{FindingId, Level};
use crate::heard::{Entry, Event, Fault, PlanKind, ReadingKey, UnitName};
use crate::reply::Arg;

/// Dangers to whoever uses the trailer, or stands by it.
const OF_A_PLACE: &[Fault] = &[
    Fault::Shock,
    Fault::Fire,
    Fault::BurntSmell,
    Fault::GasSmell,
    Fault::GasIllness,
    Fault::CoAlarm,
    Fault::GeneratorInside,
    Fault::Spill,
];
/// Dangers that keep everybody out: beside them nothing is looked for, reset or packed up.
const KEEPS_OUT: &[Fault] = &[
    Fault::Fire,
    Fault::BurntSmell,
    Fault::GasSmell,
    Fault::GasIllness,
    Fault::CoAlarm,
];
/// What is switched on.
const ON: &[Event] = &[
    Event::PowerOn,
    Event::PowerBack,
    Event::BreakerReset,
    Event::FuseReplaced,
    Event::HeaterOn,
];
/// What is switched off: a spark as well.
const OFF: &[Event] = &[Event::PowerOff, Event::HeaterOff];
/// Fewer volts are none, or those of a battery.
const LIVE_V: f64 = 30.0;
/// What a supply reads, V.
const SUPPLY_V: std::ops::RangeInclusive<u32> = 90..=260;
/// "Turned it back on" is short; a longer message is a story.
const LONGEST: usize = 9;

/// What is done on a trailer beside a danger.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Act {
    Used,
    Switched,
    PackedUp,
}

/// A trailer that is used or switched, and the dangers that stand on it.
pub(super) struct InUse {
    unit: UnitName,
    act: Act,
    open: Vec<Fault>,
    /// It is told of nothing by name: "turned it back on".
    by_words: bool,
}

impl InUse {
    /// Tells whether it was told in words that log nothing: no step is answered by them.
    pub(super) fn is_by_words(&self) -> bool {
        self.by_words
    }

    /// Tells whether the danger on this trailer is said by it.
    pub(super) fn is_on(&self, unit: &UnitName) -> bool {
        self.unit == *unit
    }
}

/// Picks from these the dangers that keep everybody out of a trailer.
pub(in crate::desk) fn keeps_out(stands: impl Fn(Fault) -> bool) -> Vec<Fault> {
    let all = KEEPS_OUT.iter().copied();
    all.filter(|fault| stands(*fault)).collect()
}

impl Hearing<'_> {
    /// Finds the trailer that the message tells to be used or switched while a danger is open on it.
    pub(super) fn used_beside_a_danger(&self, settled: &Settled) -> Option<InUse> {
        let reported = settled.reports.iter().find_map(|(unit, _, entry)| {
            let open = self.stands_beside(unit, entry);
            let act = act_of(entry, &open)?;
            let by_words = false;
            let unit = unit.clone();
            Some(InUse {
                unit,
                act,
                open,
                by_words,
            })
        });
        reported.or_else(|| self.switched_in_words(settled))
    }

    /// Takes a trailer that is about to go, and that everybody is kept out of, off what leaves. Where fire or police order
    /// it away it goes.
    pub(super) fn packed_beside_a_danger(&mut self, settled: &mut Settled) -> Option<InUse> {
        if self.desk.answers.tells_of_an_order(self.text) {
            return None;
        }
        let stands = |unit: &UnitName| keeps_out(|fault| self.has(unit, fault));
        let place = settled
            .leaving
            .iter()
            .position(|unit| !stands(unit).is_empty())?;
        let unit = settled.leaving.remove(place);
        let open = stands(&unit);
        self.heard
            .plans
            .retain(|plan| plan.kind != PlanKind::Leave || plan.unit.as_ref() != Some(&unit));
        Some(InUse {
            unit,
            act: Act::PackedUp,
            open,
            by_words: false,
        })
    }

    /// "Turned it back on": whatever it is, it is switched.
    fn switched_in_words(&self, settled: &Settled) -> Option<InUse> {
        let says = |list| self.desk.phrases.holds("switched", list, self.text);
        let long = self.text.split_whitespace().count() > LONGEST;
        if long || says("not") || self.asks_something() {
            return None;
        }
        let unit = self.unit_meant()?;
        let on = says("says");
        let live = on || says("power") && names_mains(self.text) && self.has(&unit, Fault::Shock);
        if !live {
            return None;
        }
        let entry = settled.reports.iter().find(|(of, ..)| *of == unit);
        let told = entry.map(|(.., entry)| entry.clone()).unwrap_or_default();
        let mut open = self.stands_beside(&unit, &told);
        open.retain(|fault| *fault != Fault::Spill);
        (!open.is_empty()).then_some(InUse {
            unit,
            act: Act::Switched,
            open,
            by_words: true,
        })
    }

    /// Returns the dangers that stood on a trailer before this message, and that it does not end.
    fn stands_beside(&self, unit: &UnitName, entry: &Entry) -> Vec<Fault> {
        let mut open = OF_A_PLACE.to_vec();
        open.retain(|fault| self.has(unit, *fault) && !entry.cleared.contains(fault));
        open
    }
}

/// Tells whether a text has a number that only the mains read: "corriente 118".
fn names_mains(text: &str) -> bool {
    let digits = |word: &str| {
        word.trim_matches(|c: char| !c.is_ascii_digit())
            .parse::<u32>()
    };
    let volts = text.split_whitespace().filter_map(|word| digits(word).ok());
    volts.into_iter().any(|volts| SUPPLY_V.contains(&volts))
}

/// Tells what a report does beside these dangers, if anything.
fn act_of(entry: &Entry, open: &[Fault]) -> Option<Act> {
    let told = |events: &[Event]| events.iter().any(|event| entry.events.contains(event));
    let gas = open.contains(&Fault::GasSmell);
    // heat beside a spill keeps it from freezing
    let dry = open.iter().any(|fault| *fault != Fault::Spill);
    let volts = entry.readings.value(ReadingKey::Volts);
    let live = open.contains(&Fault::Shock) && volts.is_some_and(|volts| volts > LIVE_V);
    if dry && (told(ON) || live) || gas && told(OFF) {
        return Some(Act::Switched);
    }
    let used = told(&[Event::InService]) || !dry && told(&[Event::WaterOn]);
    (used && !open.is_empty()).then_some(Act::Used)
}

/// Says the danger again, before what was logged, and tells the dispatchers.
pub(super) fn tell(hearing: &Hearing<'_>, told: &InUse, reply: &mut Reply<'_>) {
    let InUse {
        unit, act, open, ..
    } = told;
    // the danger's own finding says it, where the report raises it anew
    let said = reply.findings.iter().any(|finding| {
        let mut ids = open.iter().map(|fault| FindingId::of_fault(*fault));
        finding.unit.as_ref() == Some(unit) && ids.any(|id| id == finding.id)
    });
    if !said || *act != Act::Switched {
        let gas = open.contains(&Fault::GasSmell);
        let key = match act {
            Act::Used => "danger-used",
            Act::Switched if gas => "danger-switched-gas",
            Act::Switched => "danger-switched",
            Act::PackedUp if gas => "danger-packed-gas",
            Act::PackedUp => "danger-packed",
        };
        say_first(key, unit, open, reply);
    }
    let me = &hearing.member.id;
    for (to, voice) in other_dispatchers(hearing) {
        let names: Vec<String> = open.iter().map(|f| voice.fault(*f)).collect();
        let args = [
            ("signal", Arg::from(voice.word("signal-danger"))),
            ("unit", unit.as_str().into()),
            ("who", voice.person(me).into_owned().into()),
            ("quote", voice.quote(hearing.text.trim()).into()),
            ("what", voice.all_of(&names).into()),
        ];
        let text = voice.say("danger-used-told", &args);
        reply
            .others
            .push(Outgoing::to(&to.id, text).of_level(Level::Danger));
    }
}

/// Says before all else which dangers stand on a trailer, and what ends them.
pub(in crate::desk) fn say_first(
    key: &str,
    unit: &UnitName,
    open: &[Fault],
    reply: &mut Reply<'_>,
) {
    let names: Vec<String> = open.iter().map(|f| reply.voice.fault(*f)).collect();
    let what = reply.voice.all_of(&names);
    let args = [
        ("signal", Arg::from(reply.voice.word("signal-danger"))),
        ("unit", unit.as_str().into()),
        ("what", what.into()),
    ];
    let line = reply.voice.say(key, &args);
    let mut ends = Fault::DANGERS.to_vec();
    ends.retain(|fault| open.contains(fault));
    let lines = closing_words(&reply.voice, unit, &ends);
    reply.first.splice(..0, std::iter::once(line).chain(lines));
}
