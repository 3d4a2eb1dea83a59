//! Volts too low, too high, or torn apart by a lost neutral.

use chrono::TimeDelta;

use crate::finding::{Caution, Facts, Finding, FindingId, Level, TaskKind, Urgency};
use crate::heard::ReadingKey;
use crate::physics::power::{OPEN_NEUTRAL_V, VoltageBand, voltage_band};
use crate::physics::units::volts;
use crate::quantity::Measure;
use crate::situation::Situation;

const SOURCE: &str = "ANSI C84.1 (from memory)";
/// Below this an outlet is dead rather than low, V.
const DEAD_V: f64 = 60.0;
/// Two readings of one trailer so close together are of one moment on two cords.
const ONE_LOOK: TimeDelta = TimeDelta::minutes(10);
/// More than this on the 12 V side is an overcharge, V (common practice, no source).
const OVERCHARGE_V: f64 = 15.0;

/// Returns the volts that the message bears on; of two legs told beside each other, the one under `key`.
fn read(s: &Situation<'_>, key: ReadingKey) -> Option<f64> {
    let latest = |key| {
        let read = s.now.readings.get(&key)?;
        (s.at - read.at <= TimeDelta::hours(12)).then_some((read.at, read.value))
    };
    let one = latest(ReadingKey::Volts);
    let leg = latest(key).filter(|(at, _)| one.is_none_or(|(one, _)| one <= *at));
    let told = leg.map(|_| key).unwrap_or(ReadingKey::Volts);
    let (_, volts) = leg.or(one)?;
    s.touches(&[told], &[], &[]).then_some(volts)
}

/// Under 108 V: soon, one air conditioner at a time; under 104 V: now, compressors off.
pub(super) fn low_voltage(s: &Situation<'_>) -> Option<Finding> {
    let reading = read(s, ReadingKey::VoltsLow)?;
    let (urgency, says, limit) = match voltage_band(volts(reading)) {
        VoltageBand::BelowRangeB if reading < DEAD_V => {
            (Urgency::Now, "power-low-voltage-dead", DEAD_V)
        }
        VoltageBand::BelowRangeB => (Urgency::Now, "power-low-voltage-act", 104.0),
        VoltageBand::RangeBLow => (Urgency::Soon, "power-low-voltage-soon", 108.0),
        _ => return None,
    };
    let facts = Facts::new()
        .read("volts", reading, Measure::Volt)
        .limit("limit", limit, Measure::Volt)
        .by("formula-reading-under-limit", SOURCE);
    Some(
        Finding::new(FindingId::PowerLowVoltage, Level::Notice, urgency, facts)
            .says(says)
            .cautions(&[Caution::CompressorLowVolts]),
    )
}

/// Over 126 V: plan; over 127 V: now; over 132 V, or one cord high and another low: danger, an open neutral.
///
/// A 12 V side over 15 V is an overcharge: now.
pub(super) fn high_voltage(s: &Situation<'_>) -> Option<Finding> {
    if let Some(found) = open_neutral(s).or_else(|| over_range(s)) {
        return Some(found);
    }
    let bears = s.touches(&[ReadingKey::BatteryV], &[], &[]);
    let battery = s.recent(ReadingKey::BatteryV, TimeDelta::hours(12))?;
    let facts = Facts::new()
        .read("volts", battery, Measure::Volt)
        .limit("limit", OVERCHARGE_V, Measure::Volt)
        .by("formula-reading-over-limit", "common practice, no source");
    (bears && battery > OVERCHARGE_V).then(|| {
        Finding::new(
            FindingId::PowerHighVoltage,
            Level::Caution,
            Urgency::Now,
            facts,
        )
        .says("power-high-voltage-battery")
        .cautions(&[Caution::BatteryGas])
        .task(TaskKind::Repair, Some(s.at))
    })
}

fn open_neutral(s: &Situation<'_>) -> Option<Finding> {
    let reading = read(s, ReadingKey::VoltsHigh)?;
    let facts = Facts::new().read("volts", reading, Measure::Volt).limit(
        "limit",
        OPEN_NEUTRAL_V,
        Measure::Volt,
    );
    let danger = |facts: Facts, says| {
        let facts = facts.by("formula-open-neutral", "divider: V = 240·Ra/(Ra + Rb)");
        Finding::new(
            FindingId::PowerHighVoltage,
            Level::Danger,
            Urgency::Now,
            facts,
        )
        .says(says)
        .cautions(&[Caution::OpenNeutral, Caution::Electrician])
        .task(TaskKind::Electrician, Some(s.at))
    };
    let split = two_legs(s, reading).filter(|(high, low)| {
        voltage_band(volts(*high)) > VoltageBand::RangeA
            && voltage_band(volts(*low)) < VoltageBand::RangeA
            && *low >= DEAD_V
    });
    if let Some((high, low)) = split {
        let facts = facts
            .read("high", high, Measure::Volt)
            .read("low_leg", low, Measure::Volt);
        return Some(danger(facts, "power-high-voltage-split"));
    }
    (reading > OPEN_NEUTRAL_V).then(|| danger(facts, "power-high-voltage-open-neutral"))
}

/// Returns the volts of two legs, the higher first: told beside each other, or read within minutes.
fn two_legs(s: &Situation<'_>, reading: f64) -> Option<(f64, f64)> {
    if let Some(low) = read(s, ReadingKey::VoltsLow).filter(|low| *low < reading) {
        return Some((reading, low));
    }
    let latest = s.now.readings.get(&ReadingKey::Volts)?;
    let (before, before_at) = latest.before?;
    (latest.at - before_at <= ONE_LOOK).then_some((reading.max(before), reading.min(before)))
}

fn over_range(s: &Situation<'_>) -> Option<Finding> {
    let reading = read(s, ReadingKey::VoltsHigh)?;
    let (urgency, says, limit) = match voltage_band(volts(reading)) {
        VoltageBand::RangeBHigh => (Urgency::Plan, "power-high-voltage-plan", 126.0),
        VoltageBand::AboveRangeB => (Urgency::Now, "power-high-voltage-act", 127.0),
        _ => return None,
    };
    let facts = Facts::new()
        .read("volts", reading, Measure::Volt)
        .limit("limit", limit, Measure::Volt)
        .by("formula-reading-over-limit", SOURCE);
    let found = Finding::new(FindingId::PowerHighVoltage, Level::Notice, urgency, facts).says(says);
    Some(if urgency == Urgency::Now {
        found
            .cautions(&[Caution::Electrician])
            .task(TaskKind::Electrician, Some(s.at))
    } else {
        found
    })
}
