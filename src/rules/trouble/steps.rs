//! The guided checks as data: for each fault its steps in order, and what each settles.
//!
//! A step's key names its question in the reply files; what it settles is a key there too. The dialogue walks them one at
//! a time; [`Step::stop`] ends the walk for safety.

use crate::heard::Fault;

/// One step of a guided check.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Step {
    /// The key of its question, such as `step-supply-open`.
    pub key: &'static str,
    /// What an answer rules out or finds, as a key such as `settles-closed-supply`.
    pub settles: &'static str,
    /// Whether the walk stops here unless the answer is good: a licensed trade goes on.
    pub stop: bool,
}

const fn step(key: &'static str, settles: &'static str) -> Step {
    Step {
        key,
        settles,
        stop: false,
    }
}

const fn stop(key: &'static str, settles: &'static str) -> Step {
    Step {
        key,
        settles,
        stop: true,
    }
}

/// Returns the steps for a fault, in order; empty where the first words say it all.
pub fn steps(fault: Fault) -> &'static [Step] {
    match fault {
        Fault::Shock => {
            const {
                &[
                    stop("step-power-off-source", "settles-live-metal"),
                    stop("step-person-hurt", "settles-emergency"),
                    step("step-unit-closed", "settles-people-away"),
                    stop("step-electrician-tests", "settles-lost-ground"),
                ]
            }
        }
        Fault::NoWater => {
            const {
                &[
                    step("step-supply-open", "settles-closed-supply"),
                    step("step-static-pressure", "settles-dead-supply"),
                    step("step-water-selector", "settles-wrong-mode"),
                    step("step-fresh-level", "settles-empty-tank"),
                    step("step-lights-work", "settles-12v-dead"),
                    step("step-pump-fuse", "settles-pump-fuse"),
                    step("step-pump-runs-no-flow", "settles-air-lock"),
                    stop("step-inlet-filter", "settles-blocked-inlet"),
                ]
            }
        }
        Fault::LowFlow => {
            const {
                &[
                    step("step-running-or-shut", "settles-reading-kind"),
                    step("step-inlet-filter", "settles-blocked-inlet"),
                    step("step-hose-kink", "settles-kink"),
                    step("step-hose-size", "settles-thin-hose"),
                    step("step-regulator-setting", "settles-regulator"),
                    step("step-one-fixture", "settles-aerator"),
                    step("step-second-pump", "settles-second-pump"),
                ]
            }
        }
        Fault::NoLights => {
            const {
                &[
                    step("step-other-room", "settles-converter-sound"),
                    step("step-motion-switch", "settles-switch"),
                    step("step-room-fuse", "settles-room-fuse"),
                    stop("step-fuse-again", "settles-short"),
                    step("step-connector", "settles-connector"),
                ]
            }
        }
        Fault::NoPower => {
            const {
                &[
                    step("step-site-breaker", "settles-site-breaker"),
                    step("step-cord-seated", "settles-loose-cord"),
                    step("step-site-gfci", "settles-site-gfci"),
                    step("step-others-dark", "settles-site-outage"),
                    stop("step-volts", "settles-electrician"),
                ]
            }
        }
        Fault::BatteryLow => {
            const {
                &[
                    step("step-battery-switch", "settles-battery-switch"),
                    step("step-battery-volts", "settles-flat-battery"),
                    step("step-main-fuse", "settles-main-fuse"),
                    step("step-converter-circuit", "settles-converter-unfed"),
                    step("step-converter-hum", "settles-converter-dead"),
                    stop("step-terminals", "settles-terminals"),
                ]
            }
        }
        Fault::GfciTrip => {
            const {
                &[
                    step("step-unplug-all", "settles-supply-fault"),
                    step("step-wet-plug", "settles-wet-plug"),
                    step("step-plug-back", "settles-faulty-circuit"),
                    step("step-two-cords-one-gfci", "settles-two-cords"),
                    stop("step-second-trip", "settles-electrician"),
                ]
            }
        }
        Fault::BreakerTrip => {
            const {
                &[
                    stop("step-trips-at-once", "settles-short"),
                    step("step-add-amps", "settles-overload"),
                    step("step-on-start", "settles-low-volts"),
                    step("step-after-hours", "settles-continuous"),
                    stop("step-second-trip", "settles-electrician"),
                ]
            }
        }
        Fault::NoHotWater => {
            const {
                &[
                    step("step-how-long", "settles-not-yet-hot"),
                    step("step-converter-circuit", "settles-circuit-dead"),
                    step("step-heater-switch", "settles-switch"),
                    step("step-heater-full", "settles-dry-heater"),
                    step("step-high-limit", "settles-high-limit"),
                    step("step-heater-amps", "settles-element"),
                    stop("step-bypass-valves", "settles-bypass"),
                ]
            }
        }
        Fault::NoHeat => {
            const {
                &[
                    step("step-circuit-live", "settles-circuit-dead"),
                    step("step-selector", "settles-selector"),
                    step("step-thermostat", "settles-thermostat"),
                    step("step-heat-filter", "settles-overheat-trip"),
                    step("step-volts", "settles-low-volts"),
                    stop("step-power-no-amps", "settles-electrician"),
                ]
            }
        }
        Fault::NoCooling => {
            const {
                &[
                    step("step-fan-runs", "settles-circuit-dead"),
                    step("step-compressor-hums", "settles-low-volts"),
                    step("step-cooling-filter", "settles-iced-coil"),
                    stop("step-air-difference", "settles-refrigerant"),
                ]
            }
        }
        Fault::PumpRunning => {
            const {
                &[
                    step("step-fresh-empty", "settles-dry-run"),
                    step("step-running-fixture", "settles-running-fixture"),
                    step("step-leak-under", "settles-leak"),
                    step("step-pump-cycles", "settles-small-leak"),
                    step("step-tank-rising", "settles-check-valve"),
                    step("step-suction-air", "settles-suction"),
                ]
            }
        }
        Fault::Odor => {
            const {
                &[
                    step("step-trap", "settles-dry-trap"),
                    step("step-vent-fan", "settles-vent"),
                    step("step-waste-level", "settles-full-tank"),
                    step("step-flapper", "settles-flapper"),
                    step("step-valve-cap", "settles-cap"),
                    step("step-deodorizer", "settles-dose"),
                ]
            }
        }
        Fault::ToiletClog => {
            const {
                &[
                    step("step-one-or-all", "settles-main-line"),
                    step("step-waste-level", "settles-full-tank"),
                    step("step-plunger", "settles-one-toilet"),
                    stop("step-pyramid", "settles-pyramid"),
                ]
            }
        }
        Fault::Frozen => {
            const {
                &[
                    step("step-what-froze", "settles-frozen-part"),
                    step("step-power-off-wet", "settles-wet-power"),
                    step("step-open-tap", "settles-relief"),
                    step("step-warm-air", "settles-thawed"),
                    stop("step-splits", "settles-split"),
                ]
            }
        }
        Fault::Leak => {
            const {
                &[
                    stop("step-clean-or-foul", "settles-sewage"),
                    step("step-near-power", "settles-wet-power"),
                    step("step-shut-supply", "settles-pressure-side"),
                    step("step-washer", "settles-washer"),
                    step("step-static-pressure", "settles-over-pressure"),
                    stop("step-frozen-last-night", "settles-split"),
                ]
            }
        }
        Fault::ToiletRunning => {
            const {
                &[
                    step("step-flush-twice", "settles-debris"),
                    step("step-clean-seal", "settles-seal"),
                    step("step-close-stop", "settles-valve"),
                ]
            }
        }
        Fault::LockJam | Fault::PersonTrapped => {
            const {
                &[
                    stop("step-speak", "settles-emergency"),
                    step("step-coin-slot", "settles-lock"),
                    step("step-hinge-pins", "settles-door"),
                ]
            }
        }
        _ => &[],
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
}
