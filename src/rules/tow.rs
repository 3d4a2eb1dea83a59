//! Towing: nothing moves with liquid aboard, over its weight, or half packed.

use chrono::{DateTime, TimeDelta, Utc};

use super::tanks::{Told, fresh_told, waste_told};
use super::{COMMON_PRACTICE, Rule};
use crate::book::{PowerState, Stage, WaterState};
use crate::finding::{Caution, Facts, Finding, FindingId, Level, Origin, TaskKind, Urgency};
use crate::heard::{Event, Fault, Plan, PlanKind, ReadingKey};
use crate::physics::tow::over_gvwr;
use crate::physics::units::{gal, in_lb, lb};
use crate::quantity::Measure;
use crate::situation::Situation;

pub(super) const RULES: &[Rule] = &[waste_aboard, fresh_aboard, not_ready, overweight];

/// More than this counts as aboard, %.
const ABOARD_PCT: f64 = 5.0;
/// A tank told of this shortly before the last guest still counts as told after.
const CLOSING: TimeDelta = TimeDelta::hours(1);

/// Word beginnings by which a plan is one to tow, in the crews' languages.
const TOW_WORDS: &[&str] = &["tow", "hitch", "enganch", "remolc"];

/// Tells whether the message plans, or asks, to tow the trailer: "about to hitch up".
fn plans_to_tow(s: &Situation<'_>) -> bool {
    let names_towing = |text: &str| {
        text.to_lowercase()
            .split(|c: char| !c.is_alphanumeric())
            .any(|word| {
                TOW_WORDS.iter().any(|stem| word.starts_with(stem)) && !word.starts_with("towel")
            })
    };
    let other = |plan: &&Plan| plan.kind == PlanKind::Other;
    let mut towing = s.plans.iter().filter(other);
    s.plans.iter().any(|plan| plan.kind == PlanKind::Leave)
        || towing.any(|plan| names_towing(&plan.text))
}

/// Tells whether the trailer is on the hook, or went, or is to be, and the message bears on its towing.
fn bears(s: &Situation<'_>) -> bool {
    let moving = s.now.stage() == Stage::Hitched;
    plans_to_tow(s)
        || moving
            && s.touches(
                &[
                    ReadingKey::WastePct,
                    ReadingKey::WasteGal,
                    ReadingKey::PumpedGal,
                    ReadingKey::FreshPct,
                    ReadingKey::FreshGal,
                ],
                &[
                    Event::Hitched,
                    Event::Left,
                    Event::WastePumped,
                    Event::FreshDrained,
                    Event::FreshFilled,
                ],
                &[],
            )
}

/// More than 5 % of waste, or nobody said since the last guest: now.
fn waste_aboard(s: &Situation<'_>) -> Option<Finding> {
    if !bears(s) {
        return None;
    }
    let told = waste_told(s);
    // waste only rises while guests use it: what was aboard then is aboard still
    let aboard = told.filter(|told| told.pct > ABOARD_PCT);
    if aboard.is_none() && known(s, told) {
        return None;
    }
    Some(liquid(s, aboard, &WASTE))
}

/// More than 5 % of fresh water: now; nobody said since the last guest: soon.
fn fresh_aboard(s: &Situation<'_>) -> Option<Finding> {
    if !bears(s) {
        return None;
    }
    let told = fresh_told(s);
    let aboard = told.filter(|told| told.pct > ABOARD_PCT && known(s, Some(*told)));
    if aboard.is_none() && known(s, told) {
        return None;
    }
    Some(liquid(s, aboard, &FRESH))
}

/// What the two tanks have of their own.
struct Tank {
    id: FindingId,
    level: Level,
    /// What it is when nobody said.
    unknown: Urgency,
    says: &'static str,
    says_unknown: &'static str,
    task: TaskKind,
}

const WASTE: Tank = Tank {
    id: FindingId::TowWasteAboard,
    level: Level::Warning,
    unknown: Urgency::Now,
    says: "tow-waste-aboard",
    says_unknown: "tow-waste-aboard-unknown",
    task: TaskKind::PumpOut,
};

const FRESH: Tank = Tank {
    id: FindingId::TowFreshAboard,
    level: Level::Caution,
    unknown: Urgency::Soon,
    says: "tow-fresh-aboard",
    says_unknown: "tow-fresh-aboard-unknown",
    task: TaskKind::Drain,
};

fn liquid(s: &Situation<'_>, aboard: Option<Told>, tank: &Tank) -> Finding {
    let (facts, urgency, says) = match aboard {
        Some(told) => (
            Facts::new().read("level", told.pct, Measure::Pct),
            Urgency::Now,
            tank.says,
        ),
        // nobody has used it as far as anyone knows: in the yard, before its job
        None if last_guest(s).is_none() => (Facts::new(), Urgency::Soon, tank.says_unknown),
        None => (Facts::new(), tank.unknown, tank.says_unknown),
    };
    let facts = facts
        .limit("limit", ABOARD_PCT, Measure::Pct)
        .by("formula-tow-empty", COMMON_PRACTICE);
    let found = Finding::new(tank.id, tank.level, urgency, facts)
        .says(says)
        .cautions(&[Caution::TowEmpty]);
    if aboard.is_some() {
        found.task(tank.task, Some(s.at))
    } else {
        found
    }
}

/// Tells whether a tank was told of since the last guest could use it.
fn known(s: &Situation<'_>, told: Option<Told>) -> bool {
    match (told, last_guest(s)) {
        (Some(told), Some(ended)) => told.at >= ended - CLOSING,
        (Some(_), None) => true,
        (None, _) => false,
    }
}

/// When guests could last use it: its closing, else the end of the job's hours, else now. None where it was never open.
fn last_guest(s: &Situation<'_>) -> Option<DateTime<Utc>> {
    let opened = s.now.when(Event::InService);
    let closed = s.now.when(Event::Closed);
    let job_open = s.job.filter(|job| job.from <= s.at);
    match (opened, closed) {
        (Some(opened), Some(closed)) if closed >= opened => Some(closed),
        (None, Some(closed)) => Some(closed),
        (Some(_), _) => Some(job_open.map_or(s.at, |job| job.to.min(s.at))),
        (None, None) => job_open.map(|job| job.to.min(s.at)),
    }
}

/// What the message has to touch for the leaving list to be held against it.
const ON_THE_LIST: &[Event] = &[
    Event::Hitched,
    Event::Left,
    Event::WaterOff,
    Event::PowerOff,
    Event::HeaterOff,
    Event::Stowed,
    Event::JacksUp,
    Event::LightsChecked,
];
/// So long after a trailer was said to leave its crew may still stand beside it (common practice, no source).
const ABOUT_TO_ROLL: TimeDelta = TimeDelta::minutes(10);

/// Brakes, breakaway, coupler, chains, lamps or jack are bad: now, whatever else is done. Else something on the leaving list
/// was never reported: soon on the hook, now once it leaves.
fn not_ready(s: &Situation<'_>) -> Option<Finding> {
    gear(s).or_else(|| undone(s))
}

/// Returns the faults that stand and hold the trailer back from the road.
fn faults_of_towing(s: &Situation<'_>) -> impl Iterator<Item = Fault> {
    let standing = |fault: &Fault| s.now.has(*fault);
    Fault::OF_TOWING.iter().copied().filter(standing)
}

/// Something that the trailer is towed, held or seen by is bad.
fn gear(s: &Situation<'_>) -> Option<Finding> {
    // a tire has a finding of its own
    let bad: Vec<Fault> = faults_of_towing(s)
        .filter(|fault| FindingId::of_fault(*fault) == FindingId::TowNotReady)
        .collect();
    let on_the_hook = s.now.stage() == Stage::Hitched;
    let bears = s.touches(&[], &[], Fault::OF_TOWING)
        || bears(s)
        || on_the_hook && s.touches(&[], ON_THE_LIST, &[]);
    if bad.is_empty() || !bears {
        return None;
    }
    let codes: Vec<&str> = bad.iter().map(|fault| fault.code()).collect();
    let facts = Facts::new()
        .text("gear", codes.join(", "), Origin::Computed)
        .by("formula-tow-gear", "49 CFR 393.9, 393.43, 393.48, 393.70");
    // what stands still is not held up by its jack
    let level = match bad.as_slice() {
        [Fault::JackFault] => Level::Caution,
        _ => Level::Warning,
    };
    let due = on_the_hook.then_some(s.at);
    let finding = Finding::new(FindingId::TowNotReady, level, Urgency::Now, facts)
        .says("tow-not-ready-gear")
        .cautions(&[Caution::Breakaway, Caution::RoadLaw]);
    Some(finding.task(TaskKind::Repair, due))
}

fn undone(s: &Situation<'_>) -> Option<Finding> {
    let left = s.now.when(Event::Left) > s.now.when(Event::Hitched)
        || (s.says(Event::Left) && s.now.stage() == Stage::Hitched);
    let bears = s.now.stage() == Stage::Hitched && s.touches(&[], ON_THE_LIST, &[]);
    if !bears || !leaves_a_site(s) {
        return None;
    }
    let missing = missing(s, left);
    if missing.is_empty() {
        return None;
    }
    let facts = Facts::new()
        .text("missing", missing.join(", "), Origin::Computed)
        .by(
            "formula-leaving",
            "common practice; 49 CFR 393.43 (breakaway)",
        );
    let (urgency, says) = match (left, still_stands(s)) {
        (true, true) => (Urgency::Now, "tow-not-ready-roll"),
        (true, false) if missing.contains(&"jacks-up") => (Urgency::Now, "tow-not-ready-left"),
        (true, false) => (Urgency::Now, "tow-not-ready-rolling"),
        (false, _) => (Urgency::Soon, "tow-not-ready"),
    };
    Some(
        Finding::new(FindingId::TowNotReady, Level::Caution, urgency, facts)
            .says(says)
            .cautions(&[Caution::Breakaway]),
    )
}

/// Tells whether the trailer, said to leave, most likely stands yet: "leaving now" is texted before the truck moves.
fn still_stands(s: &Situation<'_>) -> bool {
    let rolls = |plan: &Plan| plan.kind == PlanKind::OnTheRoad;
    if s.plans.iter().any(rolls) || s.touches(&[ReadingKey::EtaMin], &[], &[]) {
        return false;
    }
    if s.says(Event::Left) {
        return s.plans.iter().any(|plan| plan.kind == PlanKind::Leave);
    }
    let said = s.now.when(Event::Left);
    said.is_some_and(|said| s.at - said <= ABOUT_TO_ROLL)
}

/// Tells whether the trailer stood open or connected on a site, rather than in the yard before its job.
pub fn leaves_a_site(s: &Situation<'_>) -> bool {
    const STOOD: &[Event] = &[
        Event::Arrived,
        Event::PowerOn,
        Event::WaterOn,
        Event::InService,
        Event::Closed,
    ];
    let stood = STOOD
        .iter()
        .any(|event| s.now.later(*event, Event::Returned));
    stood || s.job.is_some_and(|job| job.from <= s.at)
}

/// Returns what is still to be done before the trailer may leave, by code, in the order of leaving (common practice, no
/// source): from closing it, past empty tanks and what is to be mended, to its lamps.
pub fn leaving(s: &Situation<'_>) -> Vec<&'static str> {
    let empty =
        |told: Option<Told>| known(s, told) && told.is_some_and(|told| told.pct <= ABOARD_PCT);
    let mut left = missing(s, true);
    let lights = left.iter().position(|code| *code == "lights-checked");
    let at_lights = lights.unwrap_or(left.len());
    left.splice(at_lights..at_lights, faults_of_towing(s).map(Fault::code));
    let at = left.iter().take_while(|code| **code == "closed").count();
    if !empty(fresh_told(s)) {
        left.insert(at, "fresh");
    }
    if !empty(waste_told(s)) {
        left.insert(at, "waste");
    }
    left
}

/// What of the leaving list nobody reported, in its order; what comes after hitching only once it has left.
fn missing(s: &Situation<'_>, left: bool) -> Vec<&'static str> {
    let told = |event, undone: &[Event]| s.now.holds(event, undone);
    let water_there = match s.now.water() {
        WaterState::On(_) => true,
        WaterState::Off(_) => false,
        WaterState::Unknown => s
            .site
            .is_none_or(|site| site.water.source != crate::fleet::Source::None),
    };
    let power_there = match s.now.power() {
        PowerState::On(_) => true,
        PowerState::Off(_) | PowerState::Lost(_) => false,
        PowerState::Unknown => s
            .site
            .is_none_or(|site| site.power.source != crate::fleet::Source::None),
    };
    let list = [
        ("closed", !told(Event::Closed, &[Event::InService])),
        ("water-off", water_there),
        ("heater-off", s.now.heater_on()),
        ("power-off", power_there),
        ("stowed", !told(Event::Stowed, &[])),
        (
            "jacks-up",
            left && !told(Event::JacksUp, &[Event::JacksDown]),
        ),
        ("lights-checked", left && !told(Event::LightsChecked, &[])),
    ];
    list.iter()
        .filter(|(_, missing)| *missing)
        .map(|(code, _)| *code)
        .collect()
}

/// Heavier than its rating with what is aboard: now.
fn overweight(s: &Situation<'_>) -> Option<Finding> {
    if !bears(s) {
        return None;
    }
    let weight = s.spec.weight_lb?;
    let forecast = s.outlook.waste.as_ref().map(|waste| waste.likely_pct);
    let waste_pct = waste_told(s)
        .filter(|told| known(s, Some(*told)))
        .map(|told| told.pct)
        .or(forecast)
        .or(waste_told(s).map(|told| told.pct));
    let fresh_pct = fresh_told(s).map(|told| told.pct);
    let liquid = waste_pct.unwrap_or(0.0) / 100.0 * s.spec.waste_gal
        + fresh_pct.unwrap_or(0.0) / 100.0 * s.spec.fresh_gal;
    let over = in_lb(over_gvwr(lb(weight.empty), gal(liquid), lb(weight.gvwr)));
    let facts = Facts::new()
        .spec("empty", weight.empty, Measure::Lb)
        .computed("liquid", liquid, Measure::Gal)
        .limit("gvwr", weight.gvwr, Measure::Lb)
        .computed("gross", weight.gvwr + over, Measure::Lb)
        .computed("over", over, Measure::Lb)
        .by(
            "formula-gross-weight",
            "certification label (GVWR); 8.34 lb a gallon",
        );
    (over > 0.0).then(|| {
        Finding::new(
            FindingId::TowOverweight,
            Level::Warning,
            Urgency::Now,
            facts,
        )
        .cautions(&[Caution::TowEmpty])
    })
}
