//! Troubles: one finding for each fault that has no finding of its own, with its first steps and its cautions.

pub(super) mod steps;

use super::COMMON_PRACTICE;
use crate::finding::{Caution, Facts, Finding, FindingId, Level, Origin, TaskKind, Urgency};
use crate::heard::Fault;
use crate::rules::FREEZE_F;
use crate::situation::{Occasion, Situation};

/// Returns a finding for each fault that the message reports; asked, for each that stands.
pub(super) fn check(s: &Situation<'_>) -> Vec<Finding> {
    let faults: Vec<Fault> = match s.occasion {
        Occasion::Report => s.report.faults.clone(),
        Occasion::Asked | Occasion::Tick => s.now.faults.keys().copied().collect(),
    };
    faults
        .into_iter()
        .filter(|fault| s.now.has(*fault))
        .filter_map(|fault| Some(said_of(s, fault, &row(fault)?)))
        .collect()
}

fn waits_for_an_electrician(s: &Situation<'_>) -> bool {
    let mut tasks = s.tasks.iter();
    tasks.any(|task| task.kind == TaskKind::Electrician)
}

fn said_of(s: &Situation<'_>, fault: Fault, row: &Row) -> Finding {
    let mut facts = Facts::new();
    let mut says = None;
    let mut urgency = row.urgency;
    if row.emergency
        && let Some(address) = s.emergency_address()
    {
        facts = facts.text("address", address, Origin::Spec);
        says = at_address(fault);
    }
    match fault {
        Fault::GasSmell if says.is_none() => says = Some("trouble-odor-gas"),
        Fault::BurntSmell if says.is_none() => says = Some("trouble-burnt-smell"),
        Fault::CoAlarm if says.is_none() => says = Some("trouble-co-alarm"),
        Fault::Odor if s.now.has(Fault::GasIllness) || s.now.has(Fault::GasSmell) => {
            says = Some("trouble-odor-left-alone");
        }
        // who is called looks at it first: no word of a reset any more
        Fault::BreakerTrip if s.before.has(fault) && waits_for_an_electrician(s) => {
            says = Some("trouble-breaker-trip-leave-off");
        }
        // without heat, freezing is the matter; the freeze clock speaks for itself
        Fault::NoHeat if s.air_f().is_some_and(|air| air <= FREEZE_F) => {
            urgency = Urgency::Now;
            says = Some("trouble-no-heat-freezing");
        }
        Fault::NoWater if s.air_f().is_some_and(|air| air <= FREEZE_F) => {
            says = Some("trouble-no-water-freezing");
        }
        Fault::NoWater if s.runs_from_tank() => says = Some("trouble-no-water-tank"),
        _ => {}
    }
    let facts = facts.by("formula-reported", row.source);
    // beside a foul smell it may well be the waste tank's own gas
    let cautions: &[Caution] = match fault {
        Fault::GasSmell if s.before.has(Fault::Odor) => &[
            Caution::FuelGas,
            Caution::CarbonMonoxide,
            Caution::TankGas,
            Caution::NoEntry,
        ],
        _ => row.cautions,
    };
    let found =
        Finding::new(FindingId::of_fault(fault), row.level, urgency, facts).cautions(cautions);
    let found = match says {
        Some(says) => found.says(says),
        None => found,
    };
    match row.task {
        Some(kind) => found.task(kind, (urgency == Urgency::Now).then_some(s.at)),
        None => found,
    }
}

fn at_address(fault: Fault) -> Option<&'static str> {
    match fault {
        Fault::Fire => Some("trouble-fire-at"),
        Fault::GasIllness => Some("trouble-gas-illness-at"),
        Fault::GasSmell => Some("trouble-odor-gas-at"),
        Fault::BurntSmell => Some("trouble-burnt-smell-at"),
        Fault::CoAlarm => Some("trouble-co-alarm-at"),
        Fault::PersonTrapped => Some("trouble-person-trapped-at"),
        Fault::Runaway => Some("trouble-runaway-at"),
        _ => None,
    }
}

/// What stands beside a fault.
struct Row {
    level: Level,
    urgency: Urgency,
    cautions: &'static [Caution],
    task: Option<TaskKind>,
    /// Whether the emergency line is called.
    emergency: bool,
    source: &'static str,
}

impl Row {
    const fn new(level: Level, urgency: Urgency, cautions: &'static [Caution]) -> Row {
        Row {
            level,
            urgency,
            cautions,
            task: None,
            emergency: false,
            source: COMMON_PRACTICE,
        }
    }

    const fn task(mut self, kind: TaskKind) -> Row {
        self.task = Some(kind);
        self
    }

    const fn emergency(mut self) -> Row {
        self.emergency = true;
        self
    }

    const fn from(mut self, source: &'static str) -> Row {
        self.source = source;
        self
    }
}

/// Returns what stands beside a fault; none for a fault that another rule speaks for.
fn row(fault: Fault) -> Option<Row> {
    use Caution as C;
    use Level::{Danger, Notice, Warning};
    use Urgency::{Now, Plan, Soon};
    let row = Row::new;
    Some(match fault {
        Fault::Shock
        | Fault::Spill
        | Fault::NotLevel
        | Fault::BatteryLow
        | Fault::GaugeStuck
        | Fault::PersonHurt
        | Fault::PersonCold
        | Fault::GeneratorInside
        | Fault::NoBackflow
        | Fault::BreakawayFault
        | Fault::BrakeFault
        | Fault::CouplerFault
        | Fault::ChainFault
        | Fault::TowLightsFault
        | Fault::JackFault => return None,
        Fault::Fire | Fault::BurntSmell => {
            row(Danger, Now, &[C::EmergencyCall, C::FireElectric]).emergency()
        }
        Fault::GasIllness | Fault::CoAlarm => {
            row(Danger, Now, &[C::CarbonMonoxide, C::TankGas, C::NoEntry])
                .emergency()
                .from("CPSC portable generator alert; NIOSH (hydrogen sulphide); 29 CFR 1910.146")
        }
        Fault::GasSmell => row(Danger, Now, &[C::FuelGas, C::CarbonMonoxide]).emergency(),
        Fault::PersonTrapped => row(Warning, Now, &[C::EmergencyCall]).emergency(),
        Fault::Runaway => row(Danger, Now, &[C::EmergencyCall, C::UnderLoad])
            .emergency()
            .task(TaskKind::Repair),
        Fault::HotPlug => row(Warning, Now, &[C::HotPlug, C::Electrician])
            .task(TaskKind::Electrician)
            .from("UL 489; common practice"),
        Fault::CordDamaged => {
            row(Warning, Now, &[C::KillPowerAtSource, C::CordNoTape]).task(TaskKind::Repair)
        }
        Fault::LowFlow => row(Notice, Soon, &[C::KeepRegulator, C::BleedFirst]),
        Fault::NoWater => row(Notice, Soon, &[C::BleedFirst, C::Plumber]),
        Fault::NoLights => row(Notice, Soon, &[C::SameFuse, C::Electrician]),
        Fault::FuseBlown => row(Notice, Soon, &[C::SameFuse, C::Electrician]),
        Fault::NoPower => row(Notice, Soon, &[C::NoBypass, C::Electrician]),
        Fault::BreakerTrip => row(
            Level::Caution,
            Soon,
            &[C::HotPlug, C::TwoResets, C::Electrician],
        )
        .from("UL 489; NEC 210.20(A)"),
        Fault::GfciTrip => row(
            Level::Caution,
            Soon,
            &[C::NoBypass, C::TwoResets, C::Electrician],
        )
        .from("UL 943; NEC 590.6(A); OSHA 1926.404(b)(1)"),
        Fault::PumpRunning => row(Notice, Now, &[C::PumpDry, C::LeakNearPower]),
        Fault::PumpDead => row(Notice, Soon, &[C::SameFuse, C::PumpDry]),
        Fault::NoHeat => row(Notice, Soon, &[C::NoFuelHeater, C::Electrician]),
        Fault::NoCooling => row(Notice, Soon, &[C::CompressorLowVolts, C::RoofFall]),
        Fault::NoHotWater => row(Notice, Soon, &[C::HeaterDry, C::Scald]),
        Fault::Leak => row(
            Level::Caution,
            Soon,
            &[C::LeakNearPower, C::Slip, C::Plumber],
        ),
        Fault::Frozen => row(Level::Caution, Now, &[C::NoFlame, C::IcePlug, C::IceSplit])
            .from("common practice; plain freezing of water"),
        Fault::ToiletClog => row(
            Notice,
            Soon,
            &[C::DrainCleaner, C::SewageHygiene, C::Plumber],
        ),
        Fault::SinkClog => row(Notice, Plan, &[C::DrainCleaner]),
        Fault::ToiletRunning => row(Notice, Now, &[]),
        Fault::Odor => row(Notice, Soon, &[C::TankGas]).from("NIOSH (hydrogen sulphide)"),
        Fault::FanDead => row(Notice, Plan, &[C::SameFuse]).task(TaskKind::Repair),
        Fault::LockJam => row(Notice, Soon, &[]),
        Fault::NoSound => row(Notice, Plan, &[]),
        Fault::OutOfSupplies => row(Notice, Soon, &[]).task(TaskKind::Other),
        Fault::Damage => row(Level::Caution, Soon, &[C::LeakNearPower]).task(TaskKind::Repair),
        Fault::Tire => row(Level::Caution, Now, &[C::RollAway]).task(TaskKind::Repair),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_fault_is_spoken_for() {
        for fault in Fault::ALL {
            let own = FindingId::of_fault(*fault).topic() == "trouble";
            assert_eq!(row(*fault).is_some(), own, "{fault}");
        }
    }
}
