//! The guided checks as data: for each fault its steps in order, what each answer means, and what follows.
//!
//! A step's key names its question in the reply files. Its cause is there twice: `cause-…` names what a good answer rules
//! out, `settles-…` says what a bad one has found and what to do. The desk walks the steps one at a time.

mod inside;
mod outside;
mod power;
mod water;

use crate::dialogue::Course;
use crate::finding::TaskKind;
use crate::heard::{Event, Fault, ReadingKey};

/// One step of a guided check.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Step {
    /// The key of its question, such as `step-supply-open`.
    pub key: &'static str,
    /// What it looks for, such as `closed-supply`: the texts `cause-closed-supply` and `settles-closed-supply`.
    pub cause: &'static str,
    /// What it asks.
    pub asks: Asks,
    /// What follows when the cause is found.
    pub then: Then,
    /// The event by which the step was done already.
    pub by: Option<Event>,
    /// What a good answer reports as done.
    pub tells: Option<Event>,
    /// Whether doing it resets a breaker or a GFCI once.
    pub resets: bool,
    /// Where the water must come from for the step to make sense.
    pub water_from: Option<WaterFrom>,
    /// Whether it guards somebody by what it asks, whatever follows.
    pub asks_for_danger: bool,
}

/// Where a trailer's water comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WaterFrom {
    /// Its own tank.
    Tank,
    /// The site.
    Site,
}

/// What a step asks for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Asks {
    /// Whether something is in order: yes rules the cause out.
    IfGood,
    /// Whether something is wrong: no rules the cause out.
    IfBad,
    /// To do something, and whether it helped: yes mends the fault, no rules the cause out.
    IfMended,
    /// A number: from `least` to `most` rules the cause out.
    For {
        /// What is read.
        what: Sought,
        /// The least good value.
        least: f64,
        /// The most.
        most: f64,
    },
}

/// The number that a step asks for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sought {
    /// A reading, logged as such.
    Reading(ReadingKey),
    /// A current, A.
    Amps,
    /// A number of this check alone.
    Plain,
}

/// What follows when a step has found the cause.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Then {
    /// The text says what to do; then it is asked whether that helped.
    Mend,
    /// It is not safe to go on before this is done: the text says so, and the same is asked again.
    Hold,
    /// The check stops, and this is whose work it is.
    Call(TaskKind),
    /// The check goes on with the steps of another fault.
    Turn(Fault),
    /// It is a report of another fault, whose first words come first.
    Report(Fault),
    /// The check is over: nothing on the trailer is wrong.
    Over,
}

/// Returns the steps for a fault, in order; empty where the first words say it all.
pub fn steps(fault: Fault) -> &'static [Step] {
    match fault {
        Fault::Shock => power::SHOCK,
        Fault::NoWater => water::NO_WATER,
        Fault::LowFlow => water::LOW_FLOW,
        Fault::PumpRunning => water::PUMP_RUNNING,
        Fault::PumpDead => water::PUMP_DEAD,
        Fault::NoHotWater => water::NO_HOT_WATER,
        Fault::Leak => water::LEAK,
        Fault::Frozen => water::FROZEN,
        Fault::NoLights => power::NO_LIGHTS,
        Fault::FuseBlown => power::FUSE_BLOWN,
        Fault::NoPower => power::NO_POWER,
        Fault::BatteryLow => power::BATTERY_LOW,
        Fault::GfciTrip => power::GFCI_TRIP,
        Fault::BreakerTrip => power::BREAKER_TRIP,
        Fault::NoHeat => inside::NO_HEAT,
        Fault::NoCooling => inside::NO_COOLING,
        Fault::Odor => inside::ODOR,
        Fault::ToiletClog => inside::TOILET_CLOG,
        Fault::ToiletRunning => inside::TOILET_RUNNING,
        Fault::LockJam => inside::LOCK_JAM,
        Fault::PersonTrapped => inside::PERSON_TRAPPED,
        Fault::Spill => outside::SPILL,
        Fault::GaugeStuck => outside::GAUGE_STUCK,
        Fault::NotLevel => outside::NOT_LEVEL,
        _ => &[],
    }
}

/// Returns the steps of a course of its own, in order.
pub fn course_steps(course: Course) -> &'static [Step] {
    match course {
        Course::Flicker => power::FLICKER,
    }
}

/// Returns whose work it is when every step was gone through and the fault still stands.
pub fn last_resort(fault: Fault) -> TaskKind {
    match fault {
        Fault::Shock
        | Fault::NoPower
        | Fault::GfciTrip
        | Fault::BreakerTrip
        | Fault::FuseBlown
        | Fault::NoHeat => TaskKind::Electrician,
        Fault::NoWater
        | Fault::LowFlow
        | Fault::PumpRunning
        | Fault::NoHotWater
        | Fault::Leak
        | Fault::Frozen
        | Fault::ToiletClog
        | Fault::ToiletRunning => TaskKind::Plumber,
        _ => TaskKind::Repair,
    }
}

const fn step(key: &'static str, cause: &'static str, asks: Asks, then: Then) -> Step {
    Step {
        key,
        cause,
        asks,
        then,
        by: None,
        tells: None,
        resets: false,
        water_from: None,
        asks_for_danger: false,
    }
}

/// Yes is good.
const fn good(key: &'static str, cause: &'static str, then: Then) -> Step {
    step(key, cause, Asks::IfGood, then)
}

/// Yes is bad.
const fn bad(key: &'static str, cause: &'static str, then: Then) -> Step {
    step(key, cause, Asks::IfBad, then)
}

/// Yes mends it.
const fn mends(key: &'static str, cause: &'static str) -> Step {
    step(key, cause, Asks::IfMended, Then::Mend)
}

/// A number is asked for.
const fn reads(
    key: &'static str,
    cause: &'static str,
    what: Sought,
    least: f64,
    most: f64,
    then: Then,
) -> Step {
    step(key, cause, Asks::For { what, least, most }, then)
}

impl Step {
    /// Tells whether the step guards somebody: it waits until it is said in words that it is safe.
    pub const fn guards(&self) -> bool {
        self.asks_for_danger || matches!(self.then, Then::Hold | Then::Report(_))
    }

    const fn by(mut self, event: Event) -> Step {
        self.by = Some(event);
        self
    }

    const fn tells(mut self, event: Event) -> Step {
        self.tells = Some(event);
        self
    }

    const fn on_tank(mut self) -> Step {
        self.water_from = Some(WaterFrom::Tank);
        self
    }

    const fn on_site_water(mut self) -> Step {
        self.water_from = Some(WaterFrom::Site);
        self
    }

    const fn asks_for_danger(mut self) -> Step {
        self.asks_for_danger = true;
        self
    }

    const fn resets(mut self) -> Step {
        self.resets = true;
        self
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_check_asks_the_same_twice() {
        for fault in Fault::ALL {
            let steps = steps(*fault);
            for (i, step) in steps.iter().enumerate() {
                assert!(
                    steps[..i].iter().all(|other| other.key != step.key),
                    "{fault}: {}",
                    step.key
                );
            }
        }
    }

    #[test]
    fn a_check_turns_only_to_one_that_has_steps() {
        for fault in Fault::ALL {
            for step in steps(*fault) {
                if let Then::Turn(other) = step.then {
                    assert!(!steps(other).is_empty() && other != *fault, "{fault}");
                }
            }
        }
    }

    #[test]
    fn no_check_resets_more_than_twice() {
        for fault in Fault::ALL {
            let resets = steps(*fault).iter().filter(|step| step.resets).count();
            assert!(resets <= 2, "{fault}: {resets}");
        }
    }
}
