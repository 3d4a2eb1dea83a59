//! First words for a danger when nobody knows yet which trailer it is about: they never wait for an answer.

use super::COMMON_PRACTICE;
use crate::finding::{Caution, Facts, Finding, FindingId, Level, Urgency};
use crate::heard::Fault;

/// Returns what is said at once to a report of this fault, whichever trailer it is on; none where it can wait for the
/// trailer's name.
pub fn first_words(fault: Fault) -> Option<Finding> {
    let (level, cautions): (Level, &[Caution]) = match fault {
        Fault::Shock => (
            Level::Danger,
            &[
                Caution::KillPowerAtSource,
                Caution::EmergencyCall,
                Caution::Electrician,
            ],
        ),
        Fault::Fire | Fault::BurntSmell => (
            Level::Danger,
            &[Caution::EmergencyCall, Caution::FireElectric],
        ),
        Fault::GasIllness | Fault::CoAlarm => (
            Level::Danger,
            &[Caution::CarbonMonoxide, Caution::TankGas, Caution::NoEntry],
        ),
        Fault::GasSmell => (Level::Danger, &[Caution::FuelGas, Caution::CarbonMonoxide]),
        Fault::GeneratorInside => (
            Level::Danger,
            &[Caution::CarbonMonoxide, Caution::GeneratorHandling],
        ),
        Fault::PersonCold => (
            Level::Warning,
            &[Caution::EmergencyCall, Caution::Frostbite],
        ),
        Fault::PersonHurt => (
            Level::Danger,
            &[Caution::EmergencyCall, Caution::FirstAid, Caution::NoEntry],
        ),
        Fault::PersonTrapped => (Level::Warning, &[Caution::EmergencyCall]),
        Fault::Runaway => (Level::Danger, &[Caution::EmergencyCall, Caution::UnderLoad]),
        Fault::Spill => (
            Level::Warning,
            &[Caution::SewageHygiene, Caution::SewageDischarge],
        ),
        _ => return None,
    };
    let facts = Facts::new().by("formula-reported", COMMON_PRACTICE);
    let finding = Finding::new(FindingId::of_fault(fault), level, Urgency::Now, facts);
    let finding = match fault {
        Fault::GeneratorInside => finding.says("power-generator-inside"),
        Fault::PersonCold => finding.says("cold-crew-cold-person"),
        Fault::GasSmell => finding.says("trouble-odor-gas"),
        Fault::BurntSmell => finding.says("trouble-burnt-smell"),
        Fault::CoAlarm => finding.says("trouble-co-alarm"),
        _ => finding,
    };
    Some(finding.cautions(cautions))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_danger_has_its_first_words() {
        for fault in Fault::DANGERS {
            assert!(first_words(*fault).is_some(), "{fault}");
        }
    }
}
