//! Circuits and generators: continuous limits, breakers, converters, sizing.

use uom::si::f64::{
    ElectricCurrent, ElectricPotential, Length, Power, ThermodynamicTemperature, Time,
};

use super::super::units::{
    amps, in_amps, in_deg_f, in_ft, in_volts, in_watts, milliamps, seconds, watts, within,
};

/// Share of a breaker that a load of three hours or more may take (NEC 210.20(A): 125 % of continuous load).
pub const CONTINUOUS_SHARE: f64 = 0.8;

/// Returns what a breaker carries for three hours or more: 0.8 of its rating (NEC 210.20(A)).
pub fn max_continuous(breaker: ElectricCurrent) -> ElectricCurrent {
    breaker * CONTINUOUS_SHARE
}

/// Returns the least breaker for mixed loads: 1.25·continuous + noncontinuous (NEC 210.20(A)).
pub fn min_breaker(continuous: ElectricCurrent, noncontinuous: ElectricCurrent) -> ElectricCurrent {
    continuous * 1.25 + noncontinuous
}

/// Returns the time within which a breaker must have tripped; none under 135 % of its rating, where it need not.
///
/// Source: UL 489: at 135 % 1 h to 50 A and 2 h above; at 200 % 2 min to 30 A (seen), 4 min to 50 A, 6 min to 100 A,
/// 8 min to 150 A, 10 min to 225 A, 12 min above (from memory).
pub fn breaker_must_trip(rating: ElectricCurrent, load: ElectricCurrent) -> Option<Time> {
    let (rating, load) = (in_amps(rating), in_amps(load));
    if rating <= 0.0 || load < rating * 1.35 {
        None
    } else if load < rating * 2.0 {
        Some(seconds(if rating <= 50.0 { 3600.0 } else { 7200.0 }))
    } else {
        Some(seconds(match rating {
            r if r <= 30.0 => 120.0,
            r if r <= 50.0 => 240.0,
            r if r <= 100.0 => 360.0,
            r if r <= 150.0 => 480.0,
            r if r <= 225.0 => 600.0,
            _ => 720.0,
        }))
    }
}

/// The classes of ground-fault interrupters.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum Gfci {
    /// For people: trips at 4 to 6 mA.
    #[default]
    A,
    /// For old pool lights.
    B,
    /// Special purpose, to 300 V to ground (classes C, D and E).
    C,
}

impl Gfci {
    /// Returns the leakage at which it must trip: 6 mA for class A (UL 943), 20 mA for B and for C to E (UL 943C), the
    /// latter from memory.
    pub fn must_trip(self) -> ElectricCurrent {
        milliamps(match self {
            Gfci::A => 6.0,
            Gfci::B | Gfci::C => 20.0,
        })
    }
}

/// Returns the 120 V current of a converter: I_dc·V_dc/(efficiency·V_ac) (power balance). Efficiency is held to 0.05..1;
/// zero where there is no supply.
pub fn converter_current(
    dc: ElectricCurrent,
    dc_voltage: ElectricPotential,
    efficiency: f64,
    ac_voltage: ElectricPotential,
) -> ElectricCurrent {
    let supply = in_volts(ac_voltage);
    if supply > 0.0 {
        amps(in_amps(dc) * in_volts(dc_voltage) / (within(efficiency, 0.05, 1.0) * supply))
    } else {
        amps(0.0)
    }
}

/// Returns the current of a resistive load at `actual` volts: amps follow volts (Ohm's law). Zero where `rated` is not
/// positive.
pub fn resistive_current(
    rated_power: Power,
    rated: ElectricPotential,
    actual: ElectricPotential,
) -> ElectricCurrent {
    let rated = in_volts(rated);
    if rated > 0.0 {
        amps(in_watts(rated_power) / rated * in_volts(actual) / rated)
    } else {
        amps(0.0)
    }
}

/// Returns the supply circuits a trailer needs: one for each air conditioner, one for the water heater, one for the cold
/// package, at least one, at most four.
///
/// Common practice, no source. With air conditioners alone the converter's circuit is dead and the battery drains.
pub fn services_needed(air_conditioners: u32, water_heater: bool, cold_package: bool) -> u32 {
    let living = air_conditioners
        .saturating_add(u32::from(water_heater))
        .max(1);
    living.saturating_add(u32::from(cold_package)).min(4)
}

/// One load on a generator.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GeneratorLoad {
    /// Running.
    pub running: Power,
    /// Starting; the running power for a load that starts softly.
    pub starting: Power,
}

/// What thin and hot air take from a generator; the maker's figures win.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Derate {
    /// % for each 1,000 ft.
    pub pct_per_kft: f64,
    /// % for each 10 °F over 85 °F.
    pub pct_per_10f: f64,
}

impl Default for Derate {
    /// 3.5 % for each 1,000 ft and 1 % for each 10 °F over 85 °F (common practice; makers range about these).
    fn default() -> Self {
        Derate {
            pct_per_kft: 3.5,
            pct_per_10f: 1.0,
        }
    }
}

/// Returns the rating a generator needs: the running loads and the largest start increment, over what altitude and heat
/// leave of it.
///
/// Common practice, no source. What is left is held to 10 % at least; heights below the sea count as the sea.
pub fn generator_rating(
    loads: &[GeneratorLoad],
    altitude: Length,
    air: ThermodynamicTemperature,
    derate: Derate,
) -> Power {
    let running: f64 = loads
        .iter()
        .map(|load| in_watts(load.running).max(0.0))
        .sum();
    let start = loads
        .iter()
        .map(|load| in_watts(load.starting) - in_watts(load.running))
        .fold(0.0, f64::max);
    let thin = derate.pct_per_kft / 100.0 * (in_ft(altitude).max(0.0) / 1000.0);
    let hot = derate.pct_per_10f / 100.0 * ((in_deg_f(air) - 85.0).max(0.0) / 10.0);
    let left = (within(1.0 - thin, 0.0, 1.0) * within(1.0 - hot, 0.0, 1.0)).max(0.1);
    watts((running + start) / left)
}

/// Returns what a generator must start for a compressor whose maker gives no figure: 2.4 times its running power (common
/// practice; locked-rotor amps are for the voltage dip, not for this).
pub fn start_watts(running: Power) -> Power {
    running * 2.4
}
