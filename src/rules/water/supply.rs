//! What hose and supply can give against what the fixtures ask for.

use super::static_read;
use crate::finding::{Facts, Finding, FindingId, Level, Origin, Urgency};
use crate::fleet::Source;
use crate::heard::{Event, Fault, PlanKind, ReadingKey};
use crate::physics::units::{ft, in_gpm, inch, psi};
use crate::physics::water::{Line, max_flow, trailer_demand};
use crate::quantity::Measure;
use crate::situation::Situation;

/// A toilet's tank needs this while it fills, psi (IRC Table P2903.1).
const NEEDED_PSI: f64 = 20.0;
/// The hose most crews carry, in.
const USUAL_BORE_IN: f64 = 0.75;

/// The supply and the hose that brings it.
pub(super) struct Feed {
    /// Static pressure, psi.
    pub(super) static_psi: f64,
    /// Where that came from.
    pub(super) origin: Origin,
    hose_ft: f64,
    hose_origin: Origin,
    hose_in: f64,
    hose_in_origin: Origin,
    rise_ft: f64,
}

/// Puts together the feed from a static reading, or from the site's stated pressure held down by a fitted regulator, and
/// from the hose as read or stated. None where no pressure is known or no hose.
pub(super) fn feed(s: &Situation<'_>, static_read: Option<f64>) -> Option<Feed> {
    let site = s.site.map(|site| &site.water);
    let (static_psi, origin) = match static_read {
        Some(read) => (read, Origin::Read),
        None => {
            let stated = site?.static_psi?;
            let held = if s.regulated() {
                stated.min(s.spec.pressure_psi.regulator)
            } else {
                stated
            };
            (held, Origin::Spec)
        }
    };
    let (hose_ft, hose_origin) = match s.now.value(ReadingKey::HoseFt) {
        Some(read) => (read, Origin::Read),
        None => (site?.hose_ft, Origin::Spec),
    };
    let told = s.plans.iter().find_map(|plan| match plan.kind {
        PlanKind::HoseBore { bore_in } => Some(bore_in),
        _ => None,
    });
    let (hose_in, hose_in_origin) = match site {
        _ if let Some(told) = told => (told, Origin::Read),
        Some(water) if water.source != Source::None => (water.hose_in, Origin::Spec),
        _ => (USUAL_BORE_IN, Origin::Assumed),
    };
    Some(Feed {
        static_psi,
        origin,
        hose_ft,
        hose_origin,
        hose_in,
        hose_in_origin,
        rise_ft: site.map_or(0.0, |water| water.rise_ft),
    })
}

impl Feed {
    pub(super) fn line(&self) -> Line {
        Line::new(ft(self.hose_ft), inch(self.hose_in), ft(self.rise_ft))
    }

    /// Adds its numbers to the facts.
    pub(super) fn state(&self, facts: Facts) -> Facts {
        facts
            .number("static", self.static_psi, Measure::Psi, self.origin)
            .number("hose", self.hose_ft, Measure::Ft, self.hose_origin)
            .number("bore", self.hose_in, Measure::Inch, self.hose_in_origin)
    }
}

/// The flow that leaves 20 psi at the trailer is less than its fixtures ask for in the peak: soon.
pub(super) fn hose_undersized(s: &Situation<'_>) -> Option<Finding> {
    let bears = s.touches(
        &[ReadingKey::HoseFt, ReadingKey::PressurePsi],
        &[Event::WaterOn],
        &[Fault::LowFlow],
    );
    if !bears || !s.stands() || s.runs_from_tank() {
        return None;
    }
    // a pressure with water running says nothing of what the supply could give
    let plain_read = s
        .now
        .pressures
        .last()
        .filter(|read| super::flowing(read).is_none());
    let feed = feed(s, static_read(s).or(plain_read.map(|read| read.psi)))?;
    if feed.static_psi <= NEEDED_PSI {
        return None; // no hose helps a supply that is itself too weak, and low pressure has been said
    }
    let given = in_gpm(max_flow(
        psi(feed.static_psi),
        &feed.line(),
        psi(NEEDED_PSI),
    ));
    let wanted = in_gpm(trailer_demand(s.spec.stalls(), s.spec.sinks()));
    if given >= wanted {
        return None;
    }
    let facts = feed
        .state(Facts::new())
        .computed("given", given, Measure::Gpm)
        .computed("wanted", wanted, Measure::Gpm)
        .limit("needed", NEEDED_PSI, Measure::Psi)
        .by(
            "formula-hose-flow",
            "EPANET 2.2 (Hazen-Williams); IRC Table P2903.1; Hunter's method, NBS BMS 65",
        );
    Some(Finding::new(
        FindingId::WaterHoseUndersized,
        Level::Notice,
        Urgency::Soon,
        facts,
    ))
}
