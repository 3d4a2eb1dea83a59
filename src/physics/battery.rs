//! The 12 V battery: hours left at a load, charge from a rest voltage, and the load that uses make.

use uom::si::f64::{
    ElectricCurrent, ElectricPotential, ThermodynamicTemperature, Time, Volume, VolumeRate,
};

use super::units::{
    amps, gal, gpm, hours, in_amps, in_deg_f, in_gal, in_gpm, in_hours, in_volts, interpolate,
    within,
};

/// A battery as Peukert has it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bank {
    /// Capacity at the rated hours, Ah.
    pub amp_hours: f64,
    /// The hours that capacity is rated for.
    pub rated: Time,
    /// Peukert's exponent: 1.1 AGM to 1.3 tired flooded (from memory).
    pub k: f64,
    /// Share that may be taken.
    pub depth: f64,
}

impl Default for Bank {
    /// 90 Ah at 20 h, flooded deep-cycle: k = 1.2, half of it usable (common practice; with [`Living`] it gives the
    /// trade's "a few users, about a day; 200 constant users, 1 to 1.5 h").
    fn default() -> Self {
        Bank {
            amp_hours: 90.0,
            rated: hours(20.0),
            k: 1.2,
            depth: 0.5,
        }
    }
}

impl Bank {
    /// Makes a bank of `amp_hours` at 20 h from a kind: `agm` has k = 1.1, anything else is taken as flooded.
    pub fn of_kind(amp_hours: f64, kind: &str) -> Self {
        let k = if kind.eq_ignore_ascii_case("agm") {
            1.1
        } else {
            1.2
        };
        Bank {
            amp_hours,
            k,
            ..Bank::default()
        }
    }
}

/// What draws on the battery while people use a trailer.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Living {
    /// Controls and gauges, always on.
    pub standby: ElectricCurrent,
    /// Rooms.
    pub rooms: f64,
    /// Lights and fan of one room.
    pub room: ElectricCurrent,
    /// How long they stay on after a use.
    pub hold: Time,
    /// One pump running.
    pub pump: ElectricCurrent,
    /// What one pump gives.
    pub pump_flow: VolumeRate,
    /// Water for one use.
    pub per_use: Volume,
    /// Pumps; none on site pressure.
    pub pumps: f64,
}

impl Default for Living {
    /// Two rooms, 0.8 A standby, 6.5 A a room for 5 min, two 9 A pumps of 3 gpm, 1 gal a use (a model fitted to the
    /// trade's rule of thumb).
    fn default() -> Self {
        Living {
            standby: amps(0.8),
            rooms: 2.0,
            room: amps(6.5),
            hold: hours(0.083_333),
            pump: amps(9.0),
            pump_flow: gpm(3.0),
            per_use: gal(1.0),
            pumps: 2.0,
        }
    }
}

/// Returns the hours to flat at a steady load: t = H·(C/(I·H))^k (Peukert 1897). None where no current flows.
///
/// The exponent is held to 1..2, the capacity to at least 0.
pub fn peukert_time(bank: &Bank, load: ElectricCurrent) -> Option<Time> {
    let (current, rated) = (in_amps(load), in_hours(bank.rated).max(0.1));
    (current > 0.0).then(|| {
        let ratio = bank.amp_hours.max(0.0) / (current * rated);
        hours((rated * ratio.powf(within(bank.k, 1.0, 2.0))).min(1e6))
    })
}

/// Returns the mean load at `uses_per_h`: standby, rooms lit while someone is in or the hold lasts, and pumps.
///
/// I = I_sb + I_room·R·(1 − exp(−(u/R)·t_hold)) + I_pump·min(pumps, u·g/(60·q)): uses arrive at random, so a room is dark
/// only when none came within the hold (Poisson). A model, no published source.
pub fn load_at_uses(living: &Living, uses_per_h: f64) -> ElectricCurrent {
    let (u, rooms) = (uses_per_h.max(0.0), living.rooms.max(0.0));
    let lit = if rooms > 0.0 {
        rooms * (1.0 - (-(u / rooms) * in_hours(living.hold).max(0.0)).exp())
    } else {
        0.0
    };
    let pump_flow = in_gpm(living.pump_flow).max(1e-6);
    let pumping =
        (u * in_gal(living.per_use).max(0.0) / (60.0 * pump_flow)).min(living.pumps.max(0.0));
    amps(in_amps(living.standby) + in_amps(living.room) * lit + in_amps(living.pump) * pumping)
}

/// Returns the hours to the usable depth from full at `uses_per_h`: [`peukert_time`] at [`load_at_uses`], times the depth.
pub fn hours_at_uses(bank: &Bank, living: &Living, uses_per_h: f64) -> Option<Time> {
    Some(peukert_time(bank, load_at_uses(living, uses_per_h))? * within(bank.depth, 0.0, 1.0))
}

/// Returns the hours until the charge comes down from `soc_pct` to the usable depth at a steady load: the same share of
/// [`peukert_time`]. Zero at or below that depth; none where no current flows.
pub fn hours_left(bank: &Bank, soc_pct: f64, load: ElectricCurrent) -> Option<Time> {
    let stop = 1.0 - within(bank.depth, 0.0, 1.0);
    let share = (within(soc_pct, 0.0, 100.0) / 100.0 - stop).max(0.0);
    Some(peukert_time(bank, load)? * share)
}

/// Returns how much more capacity the cold asks for, as a factor; 1 at 77 °F and above.
///
/// Source: IEEE 485 Table 1 (from memory): 1.11 at 60, 1.30 at 40, 1.52 at 25 °F; below 25 °F its end is held, so the
/// true need is more.
pub fn cold_factor(air: ThermodynamicTemperature) -> f64 {
    const TABLE: [(f64, f64); 4] = [(25.0, 1.52), (40.0, 1.30), (60.0, 1.11), (77.0, 1.0)];
    interpolate(&TABLE, in_deg_f(air))
}

/// Returns the charge in % from the voltage of a battery at rest for an hour, no load and no charger.
///
/// Linear between 11.89 V 0 %, 12.06 25, 12.24 50, 12.45 75 and 12.65 100 (widely printed table for flooded cells, from
/// memory). Under load it reads low, on charge high.
pub fn soc_from_rest(rest: ElectricPotential) -> f64 {
    const TABLE: [(f64, f64); 5] = [
        (11.89, 0.0),
        (12.06, 25.0),
        (12.24, 50.0),
        (12.45, 75.0),
        (12.65, 100.0),
    ];
    interpolate(&TABLE, in_volts(rest))
}

/// Returns how long `fresh` lasts at `uses_per_h` and `per_use`; none where nothing is used.
pub fn fresh_time(fresh: Volume, uses_per_h: f64, per_use: Volume) -> Option<Time> {
    let rate = uses_per_h * in_gal(per_use);
    (rate > 0.0).then(|| hours(in_gal(fresh).max(0.0) / rate))
}
