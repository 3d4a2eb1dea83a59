//! The plan for plugging in: the volts to expect at the trailer, and the generator that the fed circuits ask for.

use chrono::TimeDelta;

use super::circuits::split;
use super::cord::{Cord, USUAL_LOAD_A};
use super::generator::{MILD_F, loads};
use super::{RATED_V, circuit_at};
use crate::fleet::Source;
use crate::heard::ReadingKey;
use crate::physics::power::{Derate, cord_end_voltage, generator_rating};
use crate::physics::units::{amps, deg_f, ft, in_volts, in_watts, volts};
use crate::situation::Situation;

/// A reading this far under what the cord leaves is lost elsewhere: a plug, an outlet, the supply (common practice), V.
const UNEXPLAINED_V: f64 = 5.0;

/// What to expect once a trailer is plugged in.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PlugIn {
    /// What the cord leaves at the trailer.
    pub cord: Option<CordEnd>,
    /// The generator that the fed circuits ask for, where the site has no power of its own.
    pub generator: Option<Rating>,
}

/// The volts at the trailer's end of the cord.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CordEnd {
    /// Expected, V.
    pub volts: f64,
    /// With this current, A.
    pub amps: f64,
    /// Through this length, ft.
    pub cord_ft: f64,
    /// Of this conductor, AWG.
    pub cord_awg: u32,
    /// As read within the hour, V.
    pub read: Option<f64>,
}

/// A generator's size.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rating {
    /// Its rating, W.
    pub watts: f64,
    /// Height above the sea, ft.
    pub altitude_ft: f64,
    /// Air, °F.
    pub air_f: f64,
    /// Whether the air was taken, since nobody read it today.
    pub air_taken: bool,
}

impl CordEnd {
    /// Tells whether the reading is further down than the cord explains.
    pub fn is_low(&self) -> bool {
        self.read
            .is_some_and(|read| read < self.volts - UNEXPLAINED_V)
    }
}

/// Plans the plugging in that a message tells of, by its cords or the circuits it names; none where it tells of neither.
///
/// Source: [`cord_end_voltage`] from 120 V; [`generator_rating`].
pub fn plug_in(s: &Situation<'_>) -> Option<PlugIn> {
    let read = &s.report.readings;
    let fed = match (&read.circuits_live, read.value(ReadingKey::Cords)) {
        (Some(live), _) => live.clone(),
        (None, Some(cords)) if cords >= 1.0 => split(s, cords as usize).0,
        _ => return None,
    };
    Some(PlugIn {
        cord: cord_end(s, &fed),
        generator: generator(s, &fed),
    })
}

fn cord_end(s: &Situation<'_>, fed: &[u8]) -> Option<CordEnd> {
    let cord = Cord::of(s)?;
    // the heaviest load that one of them carries for hours
    let heaviest = fed
        .iter()
        .filter_map(|circuit| circuit_at(s, *circuit))
        .flat_map(|circuit| &circuit.loads)
        .map(|load| load.amps)
        .reduce(f64::max)
        .map_or(USUAL_LOAD_A, |load| load.min(USUAL_LOAD_A));
    let left = cord_end_voltage(volts(RATED_V), amps(heaviest), ft(cord.run_ft), cord.awg)?;
    Some(CordEnd {
        volts: in_volts(left),
        amps: heaviest,
        cord_ft: cord.run_ft,
        cord_awg: cord.awg,
        read: s.recent(ReadingKey::Volts, TimeDelta::hours(1)),
    })
}

fn generator(s: &Situation<'_>, fed: &[u8]) -> Option<Rating> {
    let site = s
        .site
        .filter(|site| matches!(site.power.source, Source::Generator | Source::None))?;
    let air = s.air_f();
    let air_f = air.unwrap_or(MILD_F);
    let rating = generator_rating(
        &loads(s, Some(fed)),
        ft(site.altitude_ft),
        deg_f(air_f),
        Derate::default(),
    );
    Some(Rating {
        watts: in_watts(rating),
        altitude_ft: site.altitude_ft,
        air_f,
        air_taken: air.is_none(),
    })
}
