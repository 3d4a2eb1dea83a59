//! Cold for the crew: wind chill, which acts on skin and not on tanks, and somebody who suffers from the cold.

use super::{state_air, wind};
use crate::finding::{Caution, Facts, Finding, FindingId, Level, Origin, Urgency};
use crate::heard::{Fault, ReadingKey};
use crate::physics::cold::{ChillBand, chill_band, wind_chill};
use crate::physics::units::{deg_f, in_deg_f, mph};
use crate::quantity::Measure;
use crate::situation::Situation;

/// Plan at a wind chill of 32 °F or less, now at −18 or less; −35 or less stops what is no emergency.
pub(super) fn crew_cold(s: &Situation<'_>) -> Option<Finding> {
    if !s.touches(&[ReadingKey::AirF, ReadingKey::WindMph], &[], &[]) {
        return None;
    }
    let air = s.air_f()?;
    let (wind_mph, origin) = wind(s);
    let chill = wind_chill(deg_f(air), mph(wind_mph));
    let (urgency, level, says, limit) = match chill_band(chill) {
        ChillBand::None => return None,
        ChillBand::Gloves => (Urgency::Plan, Level::Notice, "cold-crew-cold-plan", 32.0),
        ChillBand::Frostbite30 => (Urgency::Now, Level::Caution, "cold-crew-cold-act", -18.0),
        ChillBand::Frostbite10 => (Urgency::Now, Level::Caution, "cold-crew-cold-stop", -35.0),
    };
    let facts = state_air(s, air, Facts::new())
        .number("wind", wind_mph, Measure::Mph, origin)
        .computed("chill", in_deg_f(chill), Measure::DegF)
        .limit("limit", limit, Measure::DegF)
        .by("formula-wind-chill", "US National Weather Service, 2001");
    let says = match (says, origin) {
        ("cold-crew-cold-act", Origin::Assumed) => "cold-crew-cold-act-wind-taken",
        ("cold-crew-cold-stop", Origin::Assumed) => "cold-crew-cold-stop-wind-taken",
        (says, _) => says,
    };
    let found = Finding::new(FindingId::ColdCrewCold, level, urgency, facts).says(says);
    Some(if level == Level::Caution {
        found.cautions(&[Caution::Frostbite])
    } else {
        found
    })
}

/// Somebody shivers, is numb or confused from cold: now, whatever the air was read to be.
pub(super) fn person_cold(s: &Situation<'_>) -> Option<Finding> {
    s.tells(Fault::PersonCold).then(|| {
        let facts = Facts::new().by(
            "formula-reported",
            "NIOSH Publication 2010-115, cold stress (from memory)",
        );
        Finding::new(FindingId::ColdCrewCold, Level::Warning, Urgency::Now, facts)
            .says("cold-crew-cold-person")
            .cautions(&[Caution::EmergencyCall, Caution::Frostbite])
    })
}
