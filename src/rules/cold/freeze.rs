//! Hose, pump and tanks freezing.

use super::{CHILL_F, Cold, FREEZE_F, bears, wind};
use crate::book::{PowerState, WaterState};
use crate::finding::{Caution, Facts, Finding, FindingId, Level, Origin, TaskKind, Urgency};
use crate::heard::Event;
use crate::physics::cold::{PIPE_ALERT_F, Pipe, Tank, standing_hose};
use crate::physics::units::{deg_f, gal, hours, in_hours, in_minutes, inch, mph, watts};
use crate::quantity::Measure;
use crate::situation::{Occasion, Situation};

/// From here down wind, or a hose that stands, makes it urgent, °F (computed: a bare hose is at 32 °F in about 20 min).
const HOSE_F: f64 = 28.0;
/// Wind from which a hose loses heat fast, mph.
const WINDY_MPH: f64 = 5.0;
/// Water from a house main, °F (common practice, no source).
const WATER_F: f64 = 50.0;
/// The hose most crews carry, in.
const USUAL_BORE_IN: f64 = 0.75;

/// Of the air read today, or of a low that is foretold: plan to 40 °F, soon to 32, now at 28 with wind or a standing hose, at 20 in any case, and at 32 without power.
pub(super) fn freeze_soon(s: &Situation<'_>) -> Option<Finding> {
    if s.winterized() {
        return None;
    }
    if let Some(found) = after_an_outage(s) {
        return Some(found);
    }
    if !bears(s) {
        return None;
    }
    let cold = Cold::of(s)?;
    if cold.air_f > CHILL_F {
        return None;
    }
    // packed up, shut and empty: nothing is left in it that the crew has not seen to
    let shut = !matches!(s.now.water(), WaterState::On(_));
    if s.is_going() && shut && s.is_drained() {
        return None;
    }
    let (wind_mph, wind_origin) = wind(s);
    let dead = s.without_power() && cold.air_f <= FREEZE_F;
    let hose_stands = matches!(s.now.water(), WaterState::On(_)) && s.now.in_service().is_none();
    let urgent = cold.air_f <= PIPE_ALERT_F
        || (cold.air_f <= HOSE_F && (wind_mph >= WINDY_MPH || hose_stands))
        || dead;
    let urgency = match cold.air_f {
        _ if urgent => Urgency::Now,
        f if f <= FREEZE_F => Urgency::Soon,
        _ => Urgency::Plan,
    };
    let facts = cold
        .state(s, Facts::new())
        .number("wind", wind_mph, Measure::Mph, wind_origin)
        .limit("freezing", FREEZE_F, Measure::DegF);
    let (facts, timed) = hose_times(s, cold, wind_mph, facts);
    let facts = if dead {
        tank_times(s, cold, wind_mph, facts)
    } else {
        facts
    };
    let facts = facts.by(
        "formula-freeze",
        "ASHRAE Fundamentals ch. 23; Churchill & Bernstein 1977; Building Research Council, University of Illinois (20 °F)",
    );
    let taken = wind_origin == Origin::Assumed;
    let heated = s.spec.cold.package && s.now.heater_on() && !super::package::heater_dead(s);
    let held = cold.held.is_some();
    let unread = cold.tonight && s.air_f().is_none();
    let says = match (urgency, cold.tonight, dead, timed) {
        (_, false, true, _) if held => "cold-freeze-soon-no-power-held",
        (_, false, ..) if held => "cold-freeze-soon-held",
        (_, true, true, _) if unread => "cold-freeze-soon-no-power-low",
        (_, true, _, _) if urgency == Urgency::Plan => "cold-freeze-soon-tonight-plan",
        (_, true, _, _) => "cold-freeze-soon-tonight",
        (Urgency::Plan, ..) => "cold-freeze-soon-plan",
        (_, _, true, true) => "cold-freeze-soon-no-power",
        (_, _, true, false) => "cold-freeze-soon-no-power-still",
        (Urgency::Now, _, _, true) if taken && heated => "cold-freeze-soon-now-heater-wind-taken",
        (Urgency::Now, _, _, true) if heated => "cold-freeze-soon-now-heater",
        (Urgency::Now, _, _, true) if taken => "cold-freeze-soon-now-wind-taken",
        (Urgency::Now, _, _, true) => "cold-freeze-soon-now",
        _ if s.spec.cold.package => "cold-freeze-soon-soon",
        _ => "cold-freeze-soon-soon-plain",
    };
    let mut found = Finding::new(FindingId::ColdFreezeSoon, Level::Notice, urgency, facts)
        .says(says)
        .cautions(&[Caution::HeatTape, Caution::NoFlame]);
    if dead {
        found = found
            .cautions(&[Caution::HeaterDry, Caution::BatteryFreeze])
            .task(TaskKind::Drain, Some(s.at));
    }
    Some(found)
}

/// Power that is back after so long in frost that water stood and froze: it is looked for before anything runs.
fn after_an_outage(s: &Situation<'_>) -> Option<Finding> {
    let back = s.says(Event::PowerBack) || s.says(Event::PowerOn);
    let PowerState::Lost(since) = s.before.power() else {
        return None;
    };
    if s.occasion != Occasion::Report || !back || s.is_drained() {
        return None;
    }
    let cold = Cold::of(s).filter(|cold| cold.air_f <= FREEZE_F)?;
    let (wind_mph, wind_origin) = wind(s);
    let facts = cold
        .state(s, Facts::new())
        .number("wind", wind_mph, Measure::Mph, wind_origin);
    let (facts, _) = hose_times(s, cold, wind_mph, facts);
    let off_min = (s.at - since).as_seconds_f64() / 60.0;
    let bore = s.site.map_or(USUAL_BORE_IN, |site| site.water.hose_in);
    let hose = Pipe::hose(inch(bore), inch(0.0));
    let standing = standing_hose(&hose, deg_f(WATER_F), deg_f(cold.air_f), mph(wind_mph));
    let blocked = standing.is_some_and(|standing| off_min >= in_minutes(standing.blocked));
    let facts = facts.computed("off", off_min / 60.0, Measure::Hour).by(
        "formula-freeze",
        "ASHRAE Fundamentals ch. 23; Churchill & Bernstein 1977",
    );
    let says = match cold.tonight {
        true => "cold-freeze-soon-after-low",
        false => "cold-freeze-soon-after",
    };
    blocked.then(|| {
        Finding::new(
            FindingId::ColdFreezeSoon,
            Level::Notice,
            Urgency::Now,
            facts,
        )
        .says(says)
        .cautions(&[Caution::NoFlame, Caution::HeaterDry, Caution::IceSplit])
    })
}

/// Adds when water standing in the hose is at 32 °F, and when it may block.
fn hose_times(s: &Situation<'_>, cold: Cold, wind_mph: f64, facts: Facts) -> (Facts, bool) {
    let bore = s.site.map_or(USUAL_BORE_IN, |site| site.water.hose_in);
    let hose = Pipe::hose(inch(bore), inch(0.0));
    match standing_hose(&hose, deg_f(WATER_F), deg_f(cold.air_f), mph(wind_mph)) {
        Some(standing) => (
            facts
                .assumed("water", WATER_F, Measure::DegF)
                .spec("bore", bore, Measure::Inch)
                .computed("hose_min", in_minutes(standing.to_32f), Measure::Minute)
                .computed("block_min", in_minutes(standing.blocked), Measure::Minute),
            true,
        ),
        None => (facts, false),
    }
}

/// Adds when the fresh tank, its heater dead, is at 32 °F.
fn tank_times(s: &Situation<'_>, cold: Cold, wind_mph: f64, facts: Facts) -> Facts {
    let level = super::super::tanks::fresh_told(s).map(|told| told.pct);
    let level_pct = level.filter(|pct| *pct > 0.0).unwrap_or(100.0);
    let tank = Tank::outdoors(
        gal(s.spec.fresh_gal),
        level_pct,
        inch(s.spec.cold.insulation_in),
        mph(wind_mph),
        watts(0.0),
    );
    // exactly at freezing it never gets there; a day is as good as never to a crew
    let time = tank
        .time_to_32f(deg_f(WATER_F), deg_f(cold.air_f))
        .unwrap_or(hours(72.0));
    facts.computed("tank_hours", in_hours(time), Measure::Hour)
}
