//! Cords: what they lose, and what they may carry.

use chrono::TimeDelta;

use super::RATED_V;
use super::current::drawn;
use crate::finding::{Caution, Facts, Finding, FindingId, Level, Origin, TaskKind, Urgency};
use crate::fleet::Source;
use crate::heard::{Event, ReadingKey};
use crate::physics::power::{cord_ampacity, cord_drop, cord_drop_pct, cord_end_voltage};
use crate::physics::units::{amps, ft, in_amps, in_volts, volts};
use crate::quantity::{Measure, rounded};
use crate::situation::Situation;

/// A cord may lose this much before it is worth a note, % (NEC 210.19(A), advice).
pub const CORD_NOTE_PCT: f64 = 3.0;
/// From more than this it is too thin or too long, % (the same note).
pub const CORD_WARN_PCT: f64 = 5.0;
/// What a 20 A circuit carries for hours, taken where nobody read the current, A.
pub(super) const USUAL_LOAD_A: f64 = 16.0;
/// The cord most crews carry, AWG.
const USUAL_AWG: u32 = 10;
/// Below this an outlet is dead rather than loaded, V.
const DEAD_V: f64 = 60.0;

/// Volts that fell more than 5 % under load: soon. Else what the cord must lose at 16 A or the current read: over 3 %
/// plan, over 5 % soon.
pub(super) fn drop_too_large(s: &Situation<'_>) -> Option<Finding> {
    measured(s).or_else(|| reckoned(s))
}

fn measured(s: &Situation<'_>) -> Option<Finding> {
    if !s.touches(&[ReadingKey::Volts], &[], &[]) {
        return None;
    }
    let latest = s.now.readings.get(&ReadingKey::Volts)?;
    let (before, before_at) = latest.before?;
    let near =
        latest.at - before_at <= TimeDelta::hours(2) && s.at - latest.at <= TimeDelta::hours(2);
    if !near || before <= 0.0 || latest.value < DEAD_V {
        return None;
    }
    let fall = rounded(100.0 * (before - latest.value) / before);
    if fall <= CORD_WARN_PCT {
        return None;
    }
    let facts = Facts::new()
        .read("before", before, Measure::Volt)
        .read("volts", latest.value, Measure::Volt)
        .computed("fall", fall, Measure::Pct)
        .limit("fall_limit", CORD_WARN_PCT, Measure::Pct)
        .by("formula-volts-fall", "NEC 210.19(A) informational note");
    Some(
        Finding::new(
            FindingId::PowerCordDrop,
            Level::Caution,
            Urgency::Soon,
            facts,
        )
        .says("power-cord-drop-measured")
        .cautions(&[Caution::HotPlug]),
    )
}

fn reckoned(s: &Situation<'_>) -> Option<Finding> {
    let bears = s.touches(
        &[ReadingKey::CordFt, ReadingKey::CordAwg, ReadingKey::Cords],
        &[Event::PowerOn],
        &[],
    ) || s.touches_amps();
    if !bears || !s.stands() {
        return None;
    }
    let cord = Cord::of(s)?;
    let (load, load_origin) = match drawn(s).iter().map(|drawn| drawn.amps).reduce(f64::max) {
        Some(read) => (read, Origin::Read),
        None => (USUAL_LOAD_A, Origin::Assumed),
    };
    let pct = cord_drop_pct(amps(load), ft(cord.run_ft), cord.awg, volts(RATED_V))?;
    let pct = rounded(pct);
    let (urgency, says) = match pct {
        p if p > CORD_WARN_PCT => (Urgency::Soon, "power-cord-drop-soon"),
        p if p > CORD_NOTE_PCT => (Urgency::Plan, "power-cord-drop-plan"),
        _ => return None,
    };
    let lost = in_volts(cord_drop(amps(load), ft(cord.run_ft), cord.awg)?);
    let left = in_volts(cord_end_voltage(
        volts(RATED_V),
        amps(load),
        ft(cord.run_ft),
        cord.awg,
    )?);
    let facts = cord
        .state(Facts::new())
        .number("amps", load, Measure::Amp, load_origin)
        .computed("lost", lost, Measure::Volt)
        .computed("drop", pct, Measure::Pct)
        .computed("volts_expected", left, Measure::Volt)
        .limit("drop_limit", CORD_NOTE_PCT, Measure::Pct)
        .by(
            "formula-cord-drop",
            "NEC Chapter 9 Table 8; NEC 210.19(A) informational note",
        );
    Some(Finding::new(FindingId::PowerCordDrop, Level::Notice, urgency, facts).says(says))
}

/// More current than the cord's gauge may carry: now.
pub(super) fn cord_overloaded(s: &Situation<'_>) -> Option<Finding> {
    let cord = Cord::of(s)?;
    let allowed = in_amps(cord_ampacity(cord.awg, 2)?);
    let read = drawn(s).iter().map(|drawn| drawn.amps).reduce(f64::max)?;
    if !s.touches_amps() || read <= allowed {
        return None;
    }
    let facts = cord
        .state(Facts::new())
        .read("amps", read, Measure::Amp)
        .limit("cord_amps", allowed, Measure::Amp)
        .by("formula-reading-over-limit", "NEC Table 400.5(A)(1)");
    Some(
        Finding::new(
            FindingId::PowerCordOverloaded,
            Level::Warning,
            Urgency::Now,
            facts,
        )
        .cautions(&[Caution::HotPlug, Caution::LocalCode])
        .task(TaskKind::Repair, Some(s.at)),
    )
}

/// The cord from the site's outlet to the trailer.
pub(super) struct Cord {
    pub(super) run_ft: f64,
    run_origin: Origin,
    pub(super) awg: u32,
    awg_origin: Origin,
}

impl Cord {
    /// The run and the gauge as told, or as the site's card has them. None where neither is known, or the site has no power.
    pub(super) fn of(s: &Situation<'_>) -> Option<Cord> {
        let site = s
            .site
            .map(|site| &site.power)
            .filter(|power| power.source != Source::None);
        let (run_ft, run_origin) = match (s.now.value(ReadingKey::CordFt), site) {
            (Some(read), _) => (read, Origin::Read),
            (None, Some(site)) => (site.cord_ft, Origin::Spec),
            (None, None) => return None,
        };
        let (awg, awg_origin) = match (s.now.value(ReadingKey::CordAwg), site) {
            (Some(read), _) => (read as u32, Origin::Read),
            (None, Some(site)) => (site.cord_awg, Origin::Spec),
            (None, None) => (USUAL_AWG, Origin::Assumed),
        };
        Some(Cord {
            run_ft,
            run_origin,
            awg,
            awg_origin,
        })
    }

    fn state(&self, facts: Facts) -> Facts {
        facts
            .number("cord", self.run_ft, Measure::Ft, self.run_origin)
            .number("gauge", f64::from(self.awg), Measure::Awg, self.awg_origin)
    }
}
