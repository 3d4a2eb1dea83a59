//! Advice that clashes: one finding orders a tap, a breaker or a circuit this way, another that way.
//!
//! The graver finding keeps its order. The other one's text is changed for one that fits, in the right sequence; its level,
//! urgency, facts and cautions stay.

use std::borrow::Cow;

use crate::finding::Finding;

/// What an action text orders, as far as another one could order the opposite.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Order {
    /// Shut the tap, or keep it shut.
    TapShut,
    /// Keep the water in the hose moving.
    WaterMoving,
    /// All power off, and leave it off.
    PowerOff,
    /// Switch on, feed or plug in a circuit.
    PowerOn,
    /// Switch a heater on.
    HeatOn,
    /// Leave a plug, a cord or a circuit alone.
    LeaveOff,
    /// Reset a breaker or GFCI.
    Reset,
    /// Shed load: few loads at these volts.
    ShedLoad,
    /// Run on the tank and its pump.
    PumpOn,
    /// Switch the pump off.
    PumpOff,
    /// Open the supply.
    TapOpen,
}

/// What texts order, by the beginning of their key; the longest that fits counts.
const ORDERS: &[(&str, &[Order])] = &[
    ("water-over-pressure-act", &[Order::TapShut]),
    ("water-over-pressure-hooked", &[Order::TapShut]),
    ("water-over-pressure-regulated", &[Order::TapShut]),
    ("water-over-pressure-site", &[Order::TapShut]),
    ("water-over-pressure-stop", &[Order::TapShut]),
    ("trouble-leak", &[Order::TapShut, Order::PumpOff]),
    ("trouble-frozen", &[Order::TapShut]),
    ("trouble-no-water-freezing", &[Order::TapShut]),
    ("cold-winterize", &[Order::TapShut]),
    ("cold-no-cold-package-now", &[Order::TapShut]),
    ("cold-freeze-soon-soon", &[Order::WaterMoving]),
    ("cold-freeze-soon-now", &[Order::WaterMoving]),
    ("cold-freeze-soon-held", &[Order::WaterMoving]),
    ("power-shock", &[Order::PowerOff]),
    ("power-high-voltage-open-neutral", &[Order::PowerOff]),
    ("power-high-voltage-split", &[Order::PowerOff]),
    ("site-unsafe-open-neutral", &[Order::PowerOff]),
    ("trouble-fire", &[Order::PowerOff]),
    ("trouble-hot-plug", &[Order::LeaveOff]),
    ("trouble-cord-damaged", &[Order::LeaveOff]),
    ("power-low-voltage-act", &[Order::ShedLoad]),
    ("cold-tank-heater-on-dead", &[]),
    ("cold-tank-heater-on", &[Order::PowerOn, Order::HeatOn]),
    ("power-too-few-circuits", &[Order::PowerOn]),
    ("power-on-battery-circuit", &[Order::PowerOn]),
    ("power-on-battery-ask", &[Order::PowerOn]),
    ("site-set-up-next-power", &[Order::PowerOn]),
    ("site-set-up-next-heater", &[Order::PowerOn, Order::HeatOn]),
    ("trouble-breaker-trip", &[Order::Reset]),
    ("trouble-gfci-trip", &[Order::Reset]),
    ("trouble-no-power", &[Order::Reset]),
    ("water-under-pressure-act", &[Order::PumpOn]),
    (
        "water-under-pressure-supply",
        &[Order::TapOpen, Order::PumpOn],
    ),
    ("water-under-pressure-hose", &[Order::PumpOn]),
    ("water-hose-undersized", &[Order::PumpOn]),
    ("trouble-pump-running", &[Order::PumpOff]),
    ("water-fresh-endurance-act", &[Order::PumpOff]),
];

/// The texts that take the place of one whose order yields: the beginning of its key (the longest that fits counts), what it
/// yields to, the new key.
const INSTEAD: &[(&str, Order, &str)] = &[
    (
        "cold-freeze-soon-soon",
        Order::TapShut,
        "cold-freeze-soon-tap-shut",
    ),
    (
        "cold-freeze-soon-held",
        Order::TapShut,
        "cold-freeze-soon-tap-shut",
    ),
    (
        "cold-freeze-soon-now",
        Order::TapShut,
        "cold-freeze-soon-now-tap-shut",
    ),
    (
        "cold-freeze-soon-now-wind-taken",
        Order::TapShut,
        "cold-freeze-soon-now-tap-shut-wind-taken",
    ),
    (
        "cold-freeze-soon-now-heater",
        Order::TapShut,
        "cold-freeze-soon-now-tap-shut-heater",
    ),
    (
        "cold-freeze-soon-now-heater-wind-taken",
        Order::TapShut,
        "cold-freeze-soon-now-tap-shut-heater-wind-taken",
    ),
    (
        "cold-tank-heater-on",
        Order::PowerOff,
        "cold-tank-heater-on-power-off",
    ),
    (
        "cold-tank-heater-on",
        Order::ShedLoad,
        "cold-tank-heater-on-low-volts",
    ),
    (
        "power-too-few-circuits",
        Order::PowerOff,
        "power-too-few-circuits-power-off",
    ),
    (
        "power-on-battery",
        Order::PowerOff,
        "power-on-battery-power-off",
    ),
    (
        "site-set-up-next-heater",
        Order::ShedLoad,
        "site-set-up-next-heater-later",
    ),
    (
        "site-set-up-next-power",
        Order::PowerOff,
        "site-set-up-next-power-off",
    ),
    (
        "site-set-up-next-heater",
        Order::PowerOff,
        "site-set-up-next-power-off",
    ),
    (
        "trouble-breaker-trip",
        Order::PowerOff,
        "trouble-breaker-trip-leave-off",
    ),
    (
        "trouble-breaker-trip",
        Order::LeaveOff,
        "trouble-breaker-trip-leave-off",
    ),
    (
        "trouble-gfci-trip",
        Order::PowerOff,
        "trouble-gfci-trip-leave-off",
    ),
    (
        "trouble-gfci-trip",
        Order::LeaveOff,
        "trouble-gfci-trip-leave-off",
    ),
    (
        "trouble-no-power",
        Order::PowerOff,
        "trouble-no-power-leave-off",
    ),
    (
        "trouble-no-power",
        Order::LeaveOff,
        "trouble-no-power-leave-off",
    ),
    (
        "water-under-pressure-supply",
        Order::TapShut,
        "water-under-pressure-later",
    ),
    (
        "water-under-pressure-act",
        Order::PumpOff,
        "water-under-pressure-later",
    ),
    (
        "water-under-pressure-supply",
        Order::PumpOff,
        "water-under-pressure-later",
    ),
    (
        "water-under-pressure-hose",
        Order::PumpOff,
        "water-under-pressure-later",
    ),
    (
        "water-hose-undersized",
        Order::PumpOff,
        "water-hose-undersized-no-pump",
    ),
];

/// Changes the texts of findings on one trailer so that none orders the opposite of a graver one.
pub(super) fn settle(found: &mut [Finding]) {
    for winner in 0..found.len() {
        for other in 0..found.len() {
            let wins = place(&found[winner]) < place(&found[other]);
            if winner != other
                && wins
                && let Some(text) = instead(&found[other], &found[winner].action)
            {
                found[other].action = Cow::Borrowed(text);
            }
        }
    }
}

/// Changes the texts of findings that would switch on, feed or reset what a shock told before has cut off.
pub(super) fn keep_power_off(found: &mut [Finding]) {
    for finding in found {
        if let Some(text) = instead(finding, "power-shock") {
            finding.action = Cow::Borrowed(text);
        }
    }
}

/// Which of two wins: what cuts power or water off goes before what keeps things running; else the graver one.
fn place(finding: &Finding) -> (bool, bool, impl Ord + use<>) {
    let orders = orders(&finding.action);
    let cuts = orders.iter().any(|order| {
        matches!(
            order,
            Order::PowerOff | Order::TapShut | Order::LeaveOff | Order::ShedLoad | Order::PumpOff
        )
    });
    (!orders.contains(&Order::PowerOff), !cuts, finding.order())
}

/// Returns the text that takes the place of one that clashes with a winner's; none where they get along.
fn instead(finding: &Finding, winner: &str) -> Option<&'static str> {
    let clash = orders(&finding.action)
        .iter()
        .flat_map(|mine| orders(winner).iter().map(move |theirs| (*mine, *theirs)))
        .find(|(mine, theirs)| yields(*mine, *theirs))?;
    let fits =
        |(start, to, _): &&(&str, Order, &str)| finding.action.starts_with(start) && *to == clash.1;
    let (_, _, text) = INSTEAD
        .iter()
        .filter(fits)
        .max_by_key(|(start, ..)| start.len())?;
    Some(text)
}

/// Tells whether one order gives way to another.
fn yields(mine: Order, theirs: Order) -> bool {
    use Order::{
        HeatOn, LeaveOff, PowerOff, PowerOn, PumpOff, PumpOn, Reset, ShedLoad, TapOpen, TapShut,
        WaterMoving,
    };
    matches!(
        (mine, theirs),
        (WaterMoving | TapOpen, TapShut)
            | (PowerOn | Reset, PowerOff)
            | (Reset, LeaveOff)
            | (PumpOn, PumpOff)
            | (HeatOn, ShedLoad)
    )
}

fn orders(action: &str) -> &'static [Order] {
    ORDERS
        .iter()
        .filter(|(start, _)| action.starts_with(start))
        .filter(|_| !INSTEAD.iter().any(|(_, _, text)| *text == action))
        .max_by_key(|(start, _)| start.len())
        .map_or(&[], |(_, orders)| orders)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::finding::{Facts, FindingId, Level, Urgency};

    const ENGLISH: &str = include_str!("../../grammar/replies/en.ftl");

    /// Every action text, by key.
    fn actions() -> Vec<(&'static str, &'static str)> {
        ENGLISH
            .lines()
            .filter_map(|line| line.split_once(" = "))
            .filter(|(key, _)| ids().any(|id| key.starts_with(&id)))
            .collect()
    }

    fn ids() -> impl Iterator<Item = String> {
        FindingId::ALL.iter().map(|id| id.code().replace('.', "-"))
    }

    fn finding(action: &'static str, level: Level) -> Finding {
        let id = FindingId::ALL
            .iter()
            .find(|id| action.starts_with(&id.code().replace('.', "-")))
            .expect("an action is named after its finding");
        Finding::new(*id, level, Urgency::Now, Facts::new()).says(action)
    }

    fn clash(a: &Finding, b: &Finding) -> bool {
        let pairs = orders(&a.action)
            .iter()
            .flat_map(|mine| orders(&b.action).iter().map(move |theirs| (*mine, *theirs)));
        pairs.clone().any(|(mine, theirs)| yields(mine, theirs))
            || pairs.clone().any(|(mine, theirs)| yields(theirs, mine))
    }

    #[test]
    fn no_pair_of_texts_orders_opposite_things() {
        let mut clashes = 0;
        for (first, _) in actions() {
            for (second, _) in actions() {
                for (one, two) in [
                    (Level::Notice, Level::Notice),
                    (Level::Warning, Level::Notice),
                    (Level::Notice, Level::Danger),
                ] {
                    let mut pair = [finding(first, one), finding(second, two)];
                    if pair[0].id == pair[1].id {
                        continue;
                    }
                    clashes += usize::from(clash(&pair[0], &pair[1]));
                    settle(&mut pair);
                    assert!(!clash(&pair[0], &pair[1]), "{first} and {second}: {pair:?}");
                }
            }
        }
        assert!(
            clashes > 50,
            "the table of orders finds clashes to settle: {clashes}"
        );
    }

    #[test]
    fn a_text_that_orders_is_in_the_table() {
        let words: &[(&str, Order)] = &[
            ("eep it moving", Order::WaterMoving),
            ("eep water moving", Order::WaterMoving),
            ("ll breakers off", Order::PowerOff),
            ("Kill the power", Order::PowerOff),
            ("Shut the tap", Order::TapShut),
            ("Shut the supply", Order::TapShut),
            ("Turn on circuit", Order::PowerOn),
            ("Feed circuit", Order::PowerOn),
            ("Move a cord", Order::PowerOn),
            ("Reset it once", Order::Reset),
            ("then reset", Order::Reset),
            ("Reset a tripped", Order::Reset),
        ];
        for (key, text) in actions() {
            let replaced = INSTEAD.iter().any(|(_, _, new)| *new == key);
            for (word, order) in words {
                if text.contains(word) && !replaced {
                    assert!(
                        orders(key).contains(order),
                        "`{key}` says `{word}`: {order:?}"
                    );
                }
            }
        }
    }

    #[test]
    fn every_text_that_takes_anothers_place_is_there() {
        for (_, _, text) in INSTEAD {
            assert!(actions().iter().any(|(key, _)| key == text), "{text}");
        }
    }

    #[test]
    fn a_shut_tap_wins_over_moving_water() {
        let mut pair = [
            finding("cold-freeze-soon-now", Level::Notice),
            finding("water-over-pressure-act", Level::Warning),
        ];
        settle(&mut pair);
        assert_eq!(pair[0].action, "cold-freeze-soon-now-tap-shut");
        assert_eq!(pair[1].action, "water-over-pressure-act");
    }

    #[test]
    fn the_minutes_to_freezing_are_told_with_a_shut_tap_too() {
        let text = |key: &str| actions().into_iter().find(|(other, _)| *other == key);
        for (old, _) in actions() {
            if !old.starts_with("cold-freeze-soon-now") || old.contains("tap-shut") {
                continue;
            }
            let mut pair = [
                finding(old, Level::Notice),
                finding("water-over-pressure-act", Level::Warning),
            ];
            settle(&mut pair);
            let (_, before) = text(old).expect("a text");
            let (_, after) = text(&pair[0].action).expect("a text");
            for said in ["$hose_min", "$block_min", "$wind", "amps"] {
                assert_eq!(before.contains(said), after.contains(said), "{old}: {said}");
            }
        }
    }

    #[test]
    fn nothing_is_switched_on_or_reset_after_a_shock() {
        let mut all = [
            finding("trouble-breaker-trip", Level::Caution),
            finding("cold-tank-heater-on", Level::Notice),
            finding("power-shock", Level::Danger),
        ];
        settle(&mut all);
        assert_eq!(all[0].action, "trouble-breaker-trip-leave-off");
        assert_eq!(all[1].action, "cold-tank-heater-on-power-off");
    }
}
