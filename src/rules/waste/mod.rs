//! The waste tank: book the truck, close in time, and doubt a gauge that lies.

mod booking;

use chrono::{DateTime, TimeDelta, Utc};

use super::tanks::{Told, reads_waste, waste_told, waste_volume};
use super::{COMMON_PRACTICE, Rule};
use crate::book::{Stage, TankNote};
use crate::finding::{Caution, Facts, Finding, FindingId, Level, Origin, TaskKind, Urgency};
use crate::heard::{Event, Fault, ReadingKey};
use crate::physics::tank::STOP_PCT;
use crate::quantity::{Measure, rounded};
use crate::situation::{Occasion, Situation};

pub(super) const RULES: &[Rule] = &[
    booking::book_pump_out,
    close_now,
    spill,
    dropped_unexplained,
    gauge_doubtful,
];

/// From here the whole unit closes, %: it backs up into the lowest drain.
const WHOLE_UNIT_PCT: f64 = 95.0;
/// A gauge that shows more than this after a pump-out is coated, %.
const AFTER_PUMP_OUT_PCT: f64 = 25.0;

const WASTE: &[ReadingKey] = &[ReadingKey::WastePct, ReadingKey::WasteGal];

/// From 85 % by volume: close stalls and chase the truck; from 95 % the whole unit. Where only the forecast says so: soon.
fn close_now(s: &Situation<'_>) -> Option<Finding> {
    let bears = s.touches(WASTE, &[Event::InService], &[]);
    if !bears || matches!(s.now.stage(), Stage::Hitched | Stage::Yard) {
        return None;
    }
    let told = waste_told(s).filter(|told| told.pct >= STOP_PCT);
    let forecast = s
        .outlook
        .waste
        .as_ref()
        .map(|waste| waste.likely_pct)
        .filter(|pct| *pct >= STOP_PCT && (s.occasion == Occasion::Tick || !lately_read(s)))
        .filter(|_| waste_told(s).is_some() || s.now.in_service().is_some());
    let (level, origin, urgency) = match (told, forecast) {
        (Some(told), _) => (told.pct, Origin::Read, Urgency::Now),
        (None, Some(pct)) => (pct, Origin::Computed, Urgency::Soon),
        (None, None) => return None,
    };
    let says = match (urgency, level >= WHOLE_UNIT_PCT) {
        (Urgency::Now, true) => "waste-close-now-unit",
        (Urgency::Now, false) => "waste-close-now-stalls",
        // by the crowd alone it is read first
        (_, true) if waste_told(s).is_some() => "waste-close-now-likely-unit",
        _ if is_called(s) => "waste-close-now-likely",
        _ => "waste-close-now-likely-uncalled",
    };
    let facts = Facts::new()
        .number("level", level, Measure::Pct, origin)
        .limit("stop_level", STOP_PCT, Measure::Pct)
        .limit("unit_level", WHOLE_UNIT_PCT, Measure::Pct)
        .by("formula-reading-over-limit", COMMON_PRACTICE);
    // the truck's task is the booking's, which holds whenever this does
    Some(
        Finding::new(FindingId::WasteCloseNow, Level::Caution, urgency, facts)
            .says(says)
            .cautions(&[Caution::SewageHygiene]),
    )
}

/// Tells whether a pump truck is called.
fn is_called(s: &Situation<'_>) -> bool {
    let mut tasks = s.tasks.iter();
    tasks.any(|task| task.kind == TaskKind::PumpOut && task.called.is_some())
}

/// Sewage on floor or ground: now, and people first.
fn spill(s: &Situation<'_>) -> Option<Finding> {
    let bears = s.touches(&[], &[], &[Fault::Spill]) && s.now.has(Fault::Spill);
    let facts = Facts::new().by(
        "formula-reported",
        "OSHA decontamination fact sheet; state discharge rules",
    );
    bears.then(|| {
        Finding::new(FindingId::WasteSpill, Level::Warning, Urgency::Now, facts)
            .cautions(&[
                Caution::SewageHygiene,
                Caution::SewageDischarge,
                Caution::Bleach,
            ])
            .task(TaskKind::Other, Some(s.at))
    })
}

/// Two gauge steps down without a pump-out: soon. A valve is open, or a gauge lies.
pub(super) fn dropped_unexplained(s: &Situation<'_>) -> Option<Finding> {
    // empty at leaving is a pump-out that nobody told of: the leaving asks about it
    if !s.touches(WASTE, &[], &[]) || s.now.has(Fault::GaugeStuck) || s.is_going() {
        return None;
    }
    let reads = gauge_reads(s);
    let [.., (before_at, before), (at, last)] = reads.as_slice() else {
        return None;
    };
    let moved = [Event::Arrived, Event::Returned].iter().any(|event| {
        s.now
            .when(*event)
            .is_some_and(|when| when > *before_at && when <= *at)
    });
    let fall = rounded(before - last);
    let limit = 2.0 * s.spec.waste_gauge.step_pct;
    if fall <= 0.0 || fall < limit || moved {
        return None;
    }
    let facts = Facts::new()
        .read("before", *before, Measure::Pct)
        .read("level", *last, Measure::Pct)
        .computed("fall", fall, Measure::Pct)
        .limit("fall_limit", limit, Measure::Pct)
        .time("since", *before_at, Origin::Read)
        .time("until", *at, Origin::Read)
        .by("formula-fall", COMMON_PRACTICE);
    Some(
        Finding::new(
            FindingId::WasteDroppedUnexplained,
            Level::Caution,
            Urgency::Soon,
            facts,
        )
        .cautions(&[Caution::SewageHygiene]),
    )
}

/// Reported unreadable, or unmoved over hours of use though a step was due: soon. Over a quarter right after a pump-out:
/// plan.
fn gauge_doubtful(s: &Situation<'_>) -> Option<Finding> {
    if !s.touches(WASTE, &[Event::WastePumped], &[Fault::GaugeStuck]) {
        return None;
    }
    let finding = |urgency, facts: Facts| {
        let facts = facts.by("formula-gauge", COMMON_PRACTICE);
        Finding::new(FindingId::WasteGaugeDoubtful, Level::Notice, urgency, facts)
    };
    if s.now.has(Fault::GaugeStuck) {
        return Some(finding(Urgency::Soon, Facts::new()).says("waste-gauge-doubtful-reported"));
    }
    let stuck = s.outlook.waste.as_ref().is_some_and(|waste| waste.stuck);
    if stuck && let Some((_, gauge)) = gauge_reads(s).last() {
        let facts = Facts::new().read("level", *gauge, Measure::Pct);
        return Some(finding(Urgency::Soon, facts).says("waste-gauge-doubtful-stuck"));
    }
    let (gauge, pumped_at) = coated(s)?;
    let facts = Facts::new()
        .read("level", gauge, Measure::Pct)
        .limit("after_pump_out", AFTER_PUMP_OUT_PCT, Measure::Pct)
        .time("pumped_at", pumped_at, Origin::Read);
    Some(finding(Urgency::Plan, facts).says("waste-gauge-doubtful-coated"))
}

/// Returns what the gauge shows, %, and when the tank was pumped, where less can have come in since than it shows.
fn coated(s: &Situation<'_>) -> Option<(f64, DateTime<Utc>)> {
    let reads = gauge_reads(s);
    let (at, gauge) = *reads.last()?;
    // a gauge that rises is no coated one
    if reads.first().is_some_and(|(_, first)| *first < gauge) {
        return None;
    }
    let (pumped_at, _) = s.now.last_pumped()?;
    let filled = filled_since(s, pumped_at, at)?;
    let least = waste_volume(s.spec, gauge - s.spec.waste_gauge.step_pct);
    (gauge > AFTER_PUMP_OUT_PCT && least > filled).then_some((gauge, pumped_at))
}

/// How much may have come in between two instants, %: the forecast's rate over the open hours, a half more for the peak.
/// None where hours went by and nobody can tell.
fn filled_since(s: &Situation<'_>, from: DateTime<Utc>, to: DateTime<Utc>) -> Option<f64> {
    match (s.outlook.waste.as_ref(), s.job) {
        (Some(waste), Some(job)) => {
            Some(1.5 * waste.rate_pct_h.max(0.0) * job.open_hours_between(from, to))
        }
        _ => (to - from <= TimeDelta::hours(2)).then_some(0.0),
    }
}

/// The waste readings since the last pump-out as the gauge shows them, %; gallons count as if a gauge had shown them.
fn gauge_reads(s: &Situation<'_>) -> Vec<(DateTime<Utc>, f64)> {
    let mut reads = Vec::new();
    for (at, note) in &s.now.tanks {
        match note {
            TankNote::Pumped(_) => reads.clear(),
            TankNote::Waste(pct) => reads.push((*at, *pct)),
            TankNote::WasteGal(gal) if s.spec.waste_gal > 0.0 => {
                reads.push((*at, 100.0 * gal / s.spec.waste_gal));
            }
            _ => {}
        }
    }
    reads
}

/// Tells whether the gauge was read within the hour, so that the forecast has nothing to add to what is written just now. By
/// the clock it has: the tank filled since.
fn lately_read(s: &Situation<'_>) -> bool {
    waste_told(s).is_some_and(|Told { at, .. }| s.at - at <= TimeDelta::hours(1))
}

/// The level this message reads (a lamp's is the least it can be), unless it is low and fits nothing else that is known;
/// else the forecast's middle; else the last told. Level and times are then of one belief.
fn waste_level(s: &Situation<'_>) -> Option<(f64, Origin)> {
    let told = waste_told(s);
    let outlook = s.outlook.waste.as_ref();
    let forecast = outlook.map(|waste| waste.likely_pct);
    let doubted = outlook.is_some_and(|waste| waste.misread);
    let read_now = s.occasion == Occasion::Report && reads_waste(s);
    match (told, forecast) {
        (Some(told), Some(pct)) if read_now && doubted && told.pct < pct => {
            Some((pct, Origin::Computed))
        }
        (Some(told), _) if read_now => Some((told.pct, Origin::Read)),
        (_, Some(pct)) => Some((pct, Origin::Computed)),
        (Some(told), None) => Some((told.pct, Origin::Read)),
        (None, None) => None,
    }
}
