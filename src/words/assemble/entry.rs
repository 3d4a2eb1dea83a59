//! The facts of one trailer, folded to its entry: cures, corrections, contradictions, times.

use super::{Assembled, Fact, Note, Says, When};
use crate::heard::{Amps, Entry, Event, Fault, ReadingKey, UnitName};
use crate::words::attach::Value;
use crate::words::pair::Outcome;

/// Folds what is said of one trailer, in the order it is said, to its entry; a second value of a reading that has a time
/// of its own makes an entry of its own.
pub(super) fn one_unit(
    unit: Option<UnitName>,
    facts: &[&Fact],
    fixes: &[usize],
    out: &mut Assembled,
) {
    let mut folding = Folding {
        entry: Entry {
            unit: unit.clone(),
            ..Entry::default()
        },
        fixes,
        again: Vec::new(),
        values: Vec::new(),
        amps: Vec::new(),
        unclear: &mut out.unclear,
    };
    for fact in facts {
        match fact.says {
            Says::That(Outcome::Event(event)) => folding.event(event, fact),
            Says::That(Outcome::Fault(fault)) => folding.fault(fault, fact),
            Says::That(Outcome::Clears(fault)) => folding.clear(fault),
            Says::Value(Value::Reading(key, value)) => folding.reading(key, value, fact),
            Says::Value(Value::Taps(taps)) => folding.entry.readings.taps = Some(taps),
            Says::Value(Value::Live(bits)) => folding.live(bits),
            Says::Value(Value::Amps(circuit, value)) => folding.amps(circuit, value, fact.at),
            _ => {}
        }
    }
    let (first, mut later) = folding.take_values();
    folding.take_amps();
    let mut entry = folding.entry;
    taps_with_a_pressure(&mut entry);
    entry.when = told_for(facts, first);
    number_for_low(&mut entry);
    if !entry.is_empty() {
        out.entries.push(entry);
    }
    later.sort_by(|a, b| a.when.cmp(&b.when));
    out.entries.extend(later);
}

/// One trailer's entry on the way.
struct Folding<'a> {
    entry: Entry,
    /// The items at which a correction stands.
    fixes: &'a [usize],
    /// Faults said to come again.
    again: Vec<Fault>,
    values: Vec<Told<'a>>,
    amps: Vec<ToldAmps>,
    unclear: &'a mut Vec<Note>,
}

/// A value told of one reading.
struct Told<'a> {
    key: ReadingKey,
    value: f64,
    fact: &'a Fact,
    /// False once another value contradicts it.
    kept: bool,
}

/// A current told of one circuit, or of none named.
struct ToldAmps {
    circuit: Option<u8>,
    amps: f64,
    at: usize,
    /// False once another value contradicts it.
    kept: bool,
}

impl<'a> Folding<'a> {
    /// A cure after its fault ends it, and one that did not hold is followed by the fault again. A fault that keeps coming
    /// is ended by a cure that is said to hold.
    fn event(&mut self, event: Event, fact: &Fact) {
        // "gfci tripped, reset it": the reset is of what was just named
        let of_gfci = (event == Event::BreakerReset).then_some(&Fault::GfciTrip);
        for fault in event.cures().iter().chain(of_gfci) {
            let lasts = self.again.contains(fault) && !fact.held;
            if self.entry.faults.contains(fault) && !lasts {
                self.clear(*fault);
            }
        }
        // "22 back in the yard, parked": one coming
        let home = event == Event::Arrived && self.entry.events.contains(&Event::Returned);
        if !home && !self.entry.events.contains(&event) {
            self.entry.events.push(event);
        }
    }

    fn fault(&mut self, fault: Fault, fact: &Fact) {
        self.entry.cleared.retain(|c| *c != fault);
        if fact.again {
            self.again.push(fault);
        }
        if !self.entry.faults.contains(&fault) {
            self.entry.faults.push(fault);
        }
    }

    fn clear(&mut self, fault: Fault) {
        self.entry.faults.retain(|f| *f != fault);
        if !self.entry.cleared.contains(&fault) {
            self.entry.cleared.push(fault);
        }
    }

    /// Two different values of one reading are both dropped, unless a correction stands between or each has its time.
    fn reading(&mut self, key: ReadingKey, value: f64, fact: &'a Fact) {
        let fixes = self.fixes;
        let one_time = |a: &Fact| a.when == fact.when || a.when.is_none() || fact.when.is_none();
        let old = self
            .values
            .iter_mut()
            .find(|told| told.key == key && one_time(told.fact));
        let told = Told {
            key,
            value,
            fact,
            kept: true,
        };
        match old {
            None => self.values.push(told),
            Some(old) if same(old.value, value) => {}
            Some(old) if corrected(fixes, old.fact.at, fact.at) => *old = told,
            Some(old) => {
                old.kept = false;
                self.unclear.push((fact.at, "two-values"));
            }
        }
    }

    /// The same of the currents of one circuit.
    fn amps(&mut self, circuit: Option<u8>, amps: f64, at: usize) {
        let fixes = self.fixes;
        let told = ToldAmps {
            circuit,
            amps,
            at,
            kept: true,
        };
        match self.amps.iter_mut().find(|told| told.circuit == circuit) {
            None => self.amps.push(told),
            Some(old) if same(old.amps, amps) => {}
            Some(old) if corrected(fixes, old.at, at) => *old = told,
            Some(old) => {
                old.kept = false;
                self.unclear.push((at, "two-values"));
            }
        }
    }

    /// Circuits with power, a bit each.
    fn live(&mut self, bits: u8) {
        let live = self.entry.readings.circuits_live.get_or_insert_default();
        live.extend((1..=4).filter(|n| bits & (1 << n) != 0));
        live.sort_unstable();
        live.dedup();
    }

    /// Sets the values that stand; returns the time of the first, and the entries of those told for another time.
    fn take_values(&mut self) -> (Option<When>, Vec<Entry>) {
        let mut first: Option<When> = None;
        let mut later: Vec<(Option<When>, Entry)> = Vec::new();
        let told: Vec<Told> = self.values.drain(..).filter(|told| told.kept).collect();
        let is_again = |n: usize| told[..n].iter().any(|before| before.key == told[n].key);
        // "16:10 waste 5/8, 16:40 waste 3/4, 47 psi": the pressure is of the later time
        let times: Vec<When> = (0..told.len())
            .filter(|n| is_again(*n))
            .filter_map(|n| told[n].fact.when)
            .collect();
        for (n, told) in told.iter().enumerate() {
            let when = told.fact.when;
            if !is_again(n) && !when.is_some_and(|when| times.contains(&when)) {
                self.entry.readings.set(told.key, told.value);
                first = first.or(when);
                continue;
            }
            let same = |(of, entry): &&mut (Option<When>, Entry)| {
                *of == when && entry.readings.value(told.key).is_none()
            };
            match later.iter_mut().find(same) {
                Some((_, entry)) => entry.readings.set(told.key, told.value),
                None => {
                    let mut entry = Entry {
                        unit: self.entry.unit.clone(),
                        when: when.map(When::said),
                        ..Entry::default()
                    };
                    entry.readings.set(told.key, told.value);
                    later.push((when, entry));
                }
            }
        }
        (first, later.into_iter().map(|(_, entry)| entry).collect())
    }

    fn take_amps(&mut self) {
        let told = self.amps.drain(..).filter(|told| told.kept);
        self.entry.readings.amps.extend(told.map(|told| Amps {
            circuit: told.circuit,
            amps: crate::quantity::rounded(told.amps),
        }));
    }
}

/// Tells whether a correction stands between two items.
fn corrected(fixes: &[usize], a: usize, b: usize) -> bool {
    fixes.iter().any(|fix| (a..=b).contains(fix))
}

/// How a pressure was read says nothing where none is logged.
fn taps_with_a_pressure(entry: &mut Entry) {
    let pressure = [ReadingKey::PressurePsi, ReadingKey::SupplyPsi];
    if pressure
        .iter()
        .all(|key| entry.readings.value(*key).is_none())
    {
        entry.readings.taps = None;
    }
}

/// Returns the time an entry is told for. What was done this morning, beside a value of now, is told for now.
fn told_for(facts: &[&Fact], first: Option<When>) -> Option<String> {
    let of_now = facts
        .iter()
        .any(|f| f.when.is_none() && matches!(f.says, Says::Value(_)));
    first
        .or_else(|| facts.iter().find_map(|f| f.when))
        .filter(|when| !(of_now && when.minutes.is_none()))
        .map(When::said)
}

/// Below this a pressure itself tells that little water comes, psi: the least that the trailers' own files ask for.
const WEAK_PSI: f64 = 40.0;
/// The same of a flow, gpm (common practice, no source).
const WEAK_GPM: f64 = 1.0;
/// Below these a battery's own number tells that it is low: half of a lead battery's charge (common practice, no source).
const LOW_BATTERY_V: f64 = 12.2;
const LOW_BATTERY_PCT: f64 = 50.0;

/// "battery low, 11.4 volts", "water is pitiful, 18 psi": where the number is told, it is the reading and no fault beside
/// it. Little water at a good pressure, or dim lights on a full battery, are still faults.
fn number_for_low(entry: &mut Entry) {
    let value = |key| entry.readings.value(key);
    let battery = value(ReadingKey::BatteryV).is_some_and(|v| v < LOW_BATTERY_V)
        || value(ReadingKey::BatteryPct).is_some_and(|pct| pct < LOW_BATTERY_PCT);
    let water = value(ReadingKey::FlowGpm).is_some_and(|gpm| gpm < WEAK_GPM)
        || value(ReadingKey::PressurePsi).is_some_and(|psi| psi < WEAK_PSI);
    entry.faults.retain(|fault| match fault {
        Fault::BatteryLow => !battery,
        Fault::LowFlow => !water,
        _ => true,
    });
}

pub(super) fn same(a: f64, b: f64) -> bool {
    (a - b).abs() <= 0.001 * a.abs().max(1.0)
}
