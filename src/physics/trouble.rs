//! Small sums of fault finding: body current, leaks, reheating; and the first step for each fault.

use uom::si::f64::{
    ElectricCurrent, ElectricPotential, ElectricalResistance, Power, ThermodynamicTemperature,
    Time, Volume, VolumeRate,
};

use crate::heard::Fault;

use super::units::{
    BTU_H_PER_W, LB_PER_GAL, amps, gpm, hours, in_deg_f, in_gal, in_gpm, in_milliamps, in_ohms,
    in_seconds, in_volts, in_watts,
};

/// Skin resistance when wet, ohm (OSHA 3075).
pub const WET_SKIN_OHM: f64 = 1_000.0;
/// Skin resistance when dry, ohm (OSHA 3075).
pub const DRY_SKIN_OHM: f64 = 100_000.0;

/// Returns the current through a body: V/R (Ohm's law); the resistance is held to at least 1 ohm.
pub fn body_current(
    voltage: ElectricPotential,
    resistance: ElectricalResistance,
) -> ElectricCurrent {
    amps(in_volts(voltage).abs() / in_ohms(resistance).max(1.0))
}

/// What a current does to a person.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum ShockEffect {
    /// Under 1 mA.
    None,
    /// 1 to under 5 mA.
    FaintTingle,
    /// 5 to under 6 mA.
    SlightShock,
    /// 6 to under 50 mA: muscles lock.
    CannotLetGo,
    /// 50 mA and over.
    MayKill,
}

impl ShockEffect {
    /// Returns its code.
    pub fn code(self) -> &'static str {
        match self {
            ShockEffect::None => "none",
            ShockEffect::FaintTingle => "faint-tingle",
            ShockEffect::SlightShock => "slight-shock",
            ShockEffect::CannotLetGo => "cannot-let-go",
            ShockEffect::MayKill => "may-kill",
        }
    }
}

/// Returns what a current through the body does.
///
/// Source: OSHA 3075, table of effects (one second, hand to foot); between its rows the lower effect holds.
pub fn shock_effect(current: ElectricCurrent) -> ShockEffect {
    match in_milliamps(current).abs() {
        ma if ma >= 50.0 => ShockEffect::MayKill,
        ma if ma >= 6.0 => ShockEffect::CannotLetGo,
        ma if ma >= 5.0 => ShockEffect::SlightShock,
        ma if ma >= 1.0 => ShockEffect::FaintTingle,
        _ => ShockEffect::None,
    }
}

/// Returns the time to reheat a water heater: 8.34·gal·ΔT/(3.412·W), no loss (heat balance); zero where it is hot
/// already, none with no power.
pub fn reheat_time(
    volume: Volume,
    from: ThermodynamicTemperature,
    to: ThermodynamicTemperature,
    heater: Power,
) -> Option<Time> {
    let power = in_watts(heater);
    let rise = (in_deg_f(to) - in_deg_f(from)).max(0.0);
    (power > 0.0)
        .then(|| hours(LB_PER_GAL * in_gal(volume).max(0.0) * rise / (BTU_H_PER_W * power)))
}

/// Returns the leak that a cycling pump makes up with all fixtures shut: q·on/(on + off) (duty cycle); zero when it never
/// ran.
pub fn leak_from_cycle(on: Time, off: Time, pump: VolumeRate) -> VolumeRate {
    let (on, off) = (in_seconds(on).max(0.0), in_seconds(off).max(0.0));
    if on + off > 0.0 {
        gpm(in_gpm(pump) * on / (on + off))
    } else {
        gpm(0.0)
    }
}

/// Returns the code of the first thing to do for a fault; a person's safety goes before the equipment.
///
/// Source: common practice; shock: OSHA 3075 and 29 CFR 1910.333 (de-energise).
pub fn first_step(fault: Fault) -> &'static str {
    match fault {
        Fault::Shock => "power-off-now",
        Fault::Fire | Fault::BurntSmell => "everybody-out",
        Fault::GasIllness | Fault::CoAlarm | Fault::GeneratorInside | Fault::GasSmell => {
            "people-out-upwind"
        }
        Fault::PersonCold => "warm-up-now",
        Fault::NoBackflow => "breaker-on-the-hose",
        Fault::PersonHurt | Fault::PersonTrapped => "emergency-call",
        Fault::HotPlug | Fault::CordDamaged => "power-off-at-source",
        Fault::Spill => "close-unit",
        Fault::Leak => "clean-or-foul",
        Fault::NoWater => "open-supply",
        Fault::LowFlow => "static-or-flowing",
        Fault::NoLights => "other-room",
        Fault::FuseBlown => "same-rating-once",
        Fault::NoPower => "site-breaker",
        Fault::BatteryLow => "converter-live",
        Fault::BreakerTrip => "at-once-or-later",
        Fault::GfciTrip => "unplug-all",
        Fault::PumpRunning => "fresh-tank-empty",
        Fault::PumpDead => "lights-work",
        Fault::NoHeat => "circuit-live",
        Fault::NoCooling => "fan-runs",
        Fault::NoHotWater => "how-long-powered",
        Fault::Frozen => "which-part",
        Fault::ToiletClog | Fault::SinkClog => "one-or-all",
        Fault::ToiletRunning => "flush-twice",
        Fault::Odor => "fill-traps",
        Fault::GaugeStuck => "look-inside",
        Fault::NotLevel => "level-first",
        Fault::Tire
        | Fault::BreakawayFault
        | Fault::BrakeFault
        | Fault::CouplerFault
        | Fault::ChainFault
        | Fault::TowLightsFault
        | Fault::JackFault => "do-not-tow",
        Fault::Runaway => "out-of-its-path",
        Fault::FanDead => "lights-work",
        Fault::LockJam => "speak-to-them",
        Fault::Damage => "make-safe",
        Fault::NoSound => "power-to-it",
        Fault::OutOfSupplies => "restock",
    }
}
