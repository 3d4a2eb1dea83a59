//! What the rules say: findings, how urgent and how dangerous they are, and the facts they rest on.
//!
//! Rules make findings, records keep them, replies print them. A finding carries its own numbers, formula and
//! source, so that "why" needs no second calculation.

use std::borrow::Cow;
use std::cmp::Reverse;
use std::fmt;

use chrono::{DateTime, Utc};
use serde::{Deserialize, Serialize};

use crate::heard::{Fault, UnitName, codes};
use crate::quantity::{Measure, Style};

/// How badly someone can be hurt: the signal words of ANSI Z535.6, with their meaning.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Level {
    /// Nobody gets hurt: equipment, queue, plan.
    Notice,
    /// Could cause minor injury.
    Caution,
    /// Could kill or maim.
    Warning,
    /// Will kill or maim if not avoided.
    Danger,
}

/// How soon to act.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Urgency {
    /// Note it and plan for it.
    Plan,
    /// Do it before it turns into more.
    Soon,
    /// Act, or stop.
    Now,
}

codes! {
    /// Every finding there is: `topic.what`. This is the one registry; rules, records, tests and texts derive from it.
    #[allow(missing_docs)]
    FindingId {
        WaterOverPressure = "water.over-pressure",
        WaterUnderPressure = "water.under-pressure",
        WaterPressureFalling = "water.pressure-falling",
        WaterHoseUndersized = "water.hose-undersized",
        WaterFreshEndurance = "water.fresh-endurance",
        #[serde(alias = "trouble.no-backflow")]
        WaterBackflow = "water.backflow",
        WasteBookPumpOut = "waste.book-pump-out",
        WasteCloseNow = "waste.close-now",
        WasteSpill = "waste.spill",
        WasteDroppedUnexplained = "waste.dropped-unexplained",
        WasteGaugeDoubtful = "waste.gauge-doubtful",
        ColdFreezeSoon = "cold.freeze-soon",
        ColdTankHeaterOn = "cold.tank-heater-on",
        ColdNoColdPackage = "cold.no-cold-package",
        ColdWinterize = "cold.winterize",
        #[serde(alias = "trouble.person-cold")]
        ColdCrewCold = "cold.crew-cold",
        HeatCrewHeat = "heat.crew-heat",
        PowerShock = "power.shock",
        PowerLowVoltage = "power.low-voltage",
        PowerHighVoltage = "power.high-voltage",
        PowerOverCurrent = "power.over-current",
        PowerCordDrop = "power.cord-drop",
        PowerCordOverloaded = "power.cord-overloaded",
        PowerTooFewCircuits = "power.too-few-circuits",
        PowerSharedCircuit = "power.shared-circuit",
        PowerOnBattery = "power.on-battery",
        PowerBatteryLow = "power.battery-low",
        #[serde(alias = "trouble.generator-inside")]
        PowerGenerator = "power.generator",
        CrowdUnderServed = "crowd.under-served",
        SiteNotLevel = "site.not-level",
        SiteNotChocked = "site.not-chocked",
        SiteSetUpNext = "site.set-up-next",
        SiteWind = "site.wind",
        SiteIcy = "site.icy",
        SiteUnsafe = "site.unsafe",
        TowWasteAboard = "tow.waste-aboard",
        TowFreshAboard = "tow.fresh-aboard",
        TowNotReady = "tow.not-ready",
        TowOverweight = "tow.overweight",
        TroubleLowFlow = "trouble.low-flow",
        TroubleNoWater = "trouble.no-water",
        TroubleNoLights = "trouble.no-lights",
        TroubleNoPower = "trouble.no-power",
        TroubleBreakerTrip = "trouble.breaker-trip",
        TroubleGfciTrip = "trouble.gfci-trip",
        TroublePumpRunning = "trouble.pump-running",
        TroublePumpDead = "trouble.pump-dead",
        TroubleNoHeat = "trouble.no-heat",
        TroubleNoCooling = "trouble.no-cooling",
        TroubleNoHotWater = "trouble.no-hot-water",
        TroubleLeak = "trouble.leak",
        TroubleFrozen = "trouble.frozen",
        TroubleToiletClog = "trouble.toilet-clog",
        TroubleToiletRunning = "trouble.toilet-running",
        TroubleOdor = "trouble.odor",
        TroubleDamage = "trouble.damage",
        TroubleFanDead = "trouble.fan-dead",
        TroubleLockJam = "trouble.lock-jam",
        TroubleNoSound = "trouble.no-sound",
        TroubleFuseBlown = "trouble.fuse-blown",
        TroubleSinkClog = "trouble.sink-clog",
        TroubleOutOfSupplies = "trouble.out-of-supplies",
        TroubleGasIllness = "trouble.gas-illness",
        TroubleHotPlug = "trouble.hot-plug",
        TroubleCordDamaged = "trouble.cord-damaged",
        TroubleTire = "trouble.tire",
        TroubleFire = "trouble.fire",
        TroublePersonTrapped = "trouble.person-trapped",
        TroubleRunaway = "trouble.runaway",
        CrewLateCheckIn = "crew.late-check-in",
        CrewPersonHurt = "crew.person-hurt",
        DeskUnknownUnit = "desk.unknown-unit",
        DeskImplausible = "desk.implausible",
        DeskNotAllowed = "desk.not-allowed",
    }
}

impl FindingId {
    /// Returns the topic, the part before the dot.
    pub fn topic(self) -> &'static str {
        self.code().split('.').next().unwrap_or_default()
    }

    /// Returns the finding that a reported fault raises.
    pub fn of_fault(fault: Fault) -> FindingId {
        match fault {
            Fault::Shock => FindingId::PowerShock,
            Fault::Spill => FindingId::WasteSpill,
            Fault::NotLevel => FindingId::SiteNotLevel,
            Fault::BatteryLow => FindingId::PowerBatteryLow,
            Fault::GaugeStuck => FindingId::WasteGaugeDoubtful,
            Fault::PersonHurt => FindingId::CrewPersonHurt,
            Fault::PersonCold => FindingId::ColdCrewCold,
            Fault::GeneratorInside => FindingId::PowerGenerator,
            Fault::NoBackflow => FindingId::WaterBackflow,
            Fault::GasSmell => FindingId::TroubleOdor,
            // what is done about them is the same
            Fault::BurntSmell => FindingId::TroubleFire,
            Fault::CoAlarm => FindingId::TroubleGasIllness,
            Fault::BreakawayFault
            | Fault::BrakeFault
            | Fault::CouplerFault
            | Fault::ChainFault
            | Fault::TowLightsFault
            | Fault::JackFault => FindingId::TowNotReady,
            other => FindingId::from_code(&format!("trouble.{}", other.code()))
                .expect("each other fault has a trouble id"),
        }
    }
}

/// Where a number came from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Origin {
    /// Somebody read it on site.
    Read,
    /// It stands in a weather report.
    Report,
    /// It stands in the fleet's files.
    Spec,
    /// It was taken for want of a better one, and is said to be.
    Assumed,
    /// It was computed from the others.
    Computed,
    /// It is the limit the result is held against.
    Limit,
}

/// What a fact holds.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum FactValue {
    /// A number in a unit of measure.
    Number(f64, Measure),
    /// An instant, shown as a local time.
    Time(DateTime<Utc>),
    /// A word or a name.
    Text(String),
}

/// One number or name that a finding rests on.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Fact {
    /// Its name, by which texts refer to it: `pressure`, `limit`.
    pub name: Cow<'static, str>,
    /// What it is.
    pub value: FactValue,
    /// Where it came from.
    pub origin: Origin,
}

/// What a finding rests on.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
pub struct Facts {
    /// The numbers and names, in the order to tell them.
    pub items: Vec<Fact>,
    /// The text that states the formula in words, as a key of the reply files: `formula-tank-rate`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub formula: Option<Cow<'static, str>>,
    /// The published source, or "common practice, no source".
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub source: Option<Cow<'static, str>>,
}

impl Facts {
    /// Starts with nothing.
    pub fn new() -> Self {
        Facts::default()
    }

    /// Adds a number that was read on site.
    pub fn read(self, name: &'static str, value: f64, measure: Measure) -> Self {
        self.number(name, value, measure, Origin::Read)
    }

    /// Adds a number from the fleet's files.
    pub fn spec(self, name: &'static str, value: f64, measure: Measure) -> Self {
        self.number(name, value, measure, Origin::Spec)
    }

    /// Adds a number that was taken for want of a better one.
    pub fn assumed(self, name: &'static str, value: f64, measure: Measure) -> Self {
        self.number(name, value, measure, Origin::Assumed)
    }

    /// Adds a computed number.
    pub fn computed(self, name: &'static str, value: f64, measure: Measure) -> Self {
        self.number(name, value, measure, Origin::Computed)
    }

    /// Adds the limit that the result is held against.
    pub fn limit(self, name: &'static str, value: f64, measure: Measure) -> Self {
        self.number(name, value, measure, Origin::Limit)
    }

    /// Adds a number with its origin.
    pub fn number(
        mut self,
        name: &'static str,
        value: f64,
        measure: Measure,
        origin: Origin,
    ) -> Self {
        let value = FactValue::Number(crate::quantity::rounded(value), measure);
        self.items.push(Fact {
            name: Cow::Borrowed(name),
            value,
            origin,
        });
        self
    }

    /// Adds an instant.
    pub fn time(mut self, name: &'static str, at: DateTime<Utc>, origin: Origin) -> Self {
        self.items.push(Fact {
            name: Cow::Borrowed(name),
            value: FactValue::Time(at),
            origin,
        });
        self
    }

    /// Adds a word or a name.
    pub fn text(mut self, name: &'static str, text: impl Into<String>, origin: Origin) -> Self {
        self.items.push(Fact {
            name: Cow::Borrowed(name),
            value: FactValue::Text(text.into()),
            origin,
        });
        self
    }

    /// States the formula, by the key of its text, and the source of it or of the limit.
    pub fn by(mut self, formula: &'static str, source: &'static str) -> Self {
        self.formula = Some(Cow::Borrowed(formula));
        self.source = Some(Cow::Borrowed(source));
        self
    }

    /// Finds a fact by name.
    pub fn find(&self, name: &str) -> Option<&Fact> {
        self.items.iter().find(|fact| fact.name == name)
    }

    /// Returns the JSON object that `replay` prints: each fact by name, with `formula`, `source` and what was `assumed`.
    pub fn to_json(&self) -> serde_json::Value {
        let mut object = serde_json::Map::new();
        let mut assumed = Vec::new();
        for fact in &self.items {
            let value = match &fact.value {
                FactValue::Number(number, _) => serde_json::json!(number),
                FactValue::Time(at) => serde_json::json!(at.to_rfc3339()),
                FactValue::Text(text) => serde_json::json!(text),
            };
            object.insert(fact.name.to_string(), value);
            if fact.origin == Origin::Assumed {
                assumed.push(fact.name.to_string());
            }
        }
        if let Some(formula) = &self.formula {
            object.insert("formula".into(), serde_json::json!(formula));
        }
        if let Some(source) = &self.source {
            object.insert("source".into(), serde_json::json!(source));
        }
        if !assumed.is_empty() {
            object.insert("assumed".into(), serde_json::json!(assumed));
        }
        serde_json::Value::Object(object)
    }
}

impl FactValue {
    /// Prints a number or text in `style`; an instant needs a time zone and is printed by the reply.
    pub fn show(&self, style: &Style) -> Option<String> {
        match self {
            FactValue::Number(value, measure) => Some(style.show(*value, *measure)),
            FactValue::Text(text) => Some(text.clone()),
            FactValue::Time(_) => None,
        }
    }
}

codes! {
    /// The usual caution that travels with a finding. One text each, in `grammar/replies`, never cut.
    #[allow(missing_docs)]
    Caution {
        BurstHose = "burst-hose",
        BleedFirst = "bleed-first",
        KeepRegulator = "keep-regulator",
        Backflow = "backflow",
        HydrantPermission = "hydrant-permission",
        NotDrinking = "not-drinking",
        KillPowerAtSource = "kill-power-at-source",
        Electrician = "electrician",
        Plumber = "plumber",
        OpenNeutral = "open-neutral",
        HotPlug = "hot-plug",
        NoBypass = "no-bypass",
        SameFuse = "same-fuse",
        CompressorLowVolts = "compressor-low-volts",
        CarbonMonoxide = "carbon-monoxide",
        GeneratorHandling = "generator-handling",
        BatteryGas = "battery-gas",
        BatteryFreeze = "battery-freeze",
        NoFlame = "no-flame",
        HeatTape = "heat-tape",
        HeaterDry = "heater-dry",
        Antifreeze = "antifreeze",
        IceSplit = "ice-split",
        IcePlug = "ice-plug",
        Frostbite = "frostbite",
        HeatStroke = "heat-stroke",
        SewageHygiene = "sewage-hygiene",
        SewageDischarge = "sewage-discharge",
        TankGas = "tank-gas",
        NoEntry = "no-entry",
        TowEmpty = "tow-empty",
        RollAway = "roll-away",
        UnderLoad = "under-load",
        FirstAid = "first-aid",
        Stabilizers = "stabilizers",
        Scald = "scald",
        Slip = "slip",
        NoFuelHeater = "no-fuel-heater",
        RoofFall = "roof-fall",
        PumpDry = "pump-dry",
        Overhead = "overhead",
        EmergencyCall = "emergency-call",
        LocalCode = "local-code",
        NightPressure = "night-pressure",
        PressureCode = "pressure-code",
        AirGap = "air-gap",
        Bleach = "bleach",
        FireElectric = "fire-electric",
        FuelGas = "fuel-gas",
        CordNoTape = "cord-no-tape",
        TwoResets = "two-resets",
        LeakNearPower = "leak-near-power",
        DrainCleaner = "drain-cleaner",
        Breakaway = "breakaway",
        RoadLaw = "road-law",
    }
}

codes! {
    /// What a task is about.
    #[allow(missing_docs)]
    TaskKind {
        PumpOut = "pump-out",
        Refill = "refill",
        Drain = "drain",
        Regulator = "regulator",
        Filter = "filter",
        Heater = "heater",
        Repair = "repair",
        Electrician = "electrician",
        Plumber = "plumber",
        CheckIn = "check-in",
        Other = "other",
    }
}

/// The work a finding asks for.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct TaskWish {
    /// What has to be done.
    pub kind: TaskKind,
    /// When it must be done by (for a pump-out, when the truck must be on site); none where it cannot be told.
    pub due: Option<DateTime<Utc>>,
}

/// What goes first among findings as grave and as urgent as each other: somebody who is hit already, then what is about to
/// hit somebody (common practice, no source).
const PEOPLE_FIRST: &[FindingId] = &[
    FindingId::PowerShock,
    FindingId::CrewPersonHurt,
    FindingId::TroubleGasIllness,
    FindingId::TroubleFire,
    FindingId::PowerGenerator,
    FindingId::PowerHighVoltage,
    FindingId::TroublePersonTrapped,
    FindingId::ColdCrewCold,
    FindingId::TroubleOdor,
    FindingId::WasteSpill,
];

/// One thing a rule has to say about a unit.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Finding {
    /// The trailer it is about; none for a finding about the message or a person.
    pub unit: Option<UnitName>,
    /// What was found.
    pub id: FindingId,
    /// How badly someone can be hurt.
    pub level: Level,
    /// How soon to act.
    pub urgency: Urgency,
    /// What it rests on.
    pub facts: Facts,
    /// The key of the action text in the reply files, such as `water-over-pressure-stop`; its arguments are the facts.
    pub action: Cow<'static, str>,
    /// The cautions that travel with it, in order.
    #[serde(default)]
    pub cautions: Vec<Caution>,
    /// The work it asks for.
    #[serde(default)]
    pub task: Option<TaskWish>,
}

impl Finding {
    /// Makes a finding whose action text is keyed by its own id (`water.over-pressure` by `water-over-pressure`).
    pub fn new(id: FindingId, level: Level, urgency: Urgency, facts: Facts) -> Self {
        let action = Cow::Owned(id.code().replace('.', "-"));
        Finding {
            unit: None,
            id,
            level,
            urgency,
            facts,
            action,
            cautions: Vec::new(),
            task: None,
        }
    }

    /// Takes another text for the action.
    pub fn says(mut self, key: &'static str) -> Self {
        self.action = Cow::Borrowed(key);
        self
    }

    /// Adds cautions.
    pub fn cautions(mut self, cautions: &[Caution]) -> Self {
        for caution in cautions {
            if !self.cautions.contains(caution) {
                self.cautions.push(*caution);
            }
        }
        self
    }

    /// Asks for a task.
    pub fn task(mut self, kind: TaskKind, due: Option<DateTime<Utc>>) -> Self {
        self.task = Some(TaskWish { kind, due });
        self
    }

    /// Returns the key by which findings are ordered for telling: by level, then urgency, worst first; then people before
    /// equipment; then as found.
    pub fn order(&self) -> (Reverse<Level>, Reverse<Urgency>, usize) {
        let people = PEOPLE_FIRST.iter().position(|id| *id == self.id);
        let rank = people.unwrap_or(PEOPLE_FIRST.len());
        (Reverse(self.level), Reverse(self.urgency), rank)
    }
}

impl fmt::Display for Finding {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match &self.unit {
            Some(unit) => write!(f, "{} on {unit}", self.id),
            None => write!(f, "{}", self.id),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_fault_has_a_finding() {
        for fault in Fault::ALL {
            FindingId::of_fault(*fault);
        }
    }

    #[test]
    fn an_older_record_finds_its_finding_under_the_old_id() {
        for (old, id) in [
            ("trouble.no-backflow", FindingId::WaterBackflow),
            ("trouble.person-cold", FindingId::ColdCrewCold),
            ("trouble.generator-inside", FindingId::PowerGenerator),
        ] {
            let read: FindingId = serde_json::from_value(old.into()).expect("an id");
            assert_eq!(read, id);
        }
    }

    #[test]
    fn danger_comes_before_urgency() {
        let shock = Finding::new(
            FindingId::PowerShock,
            Level::Danger,
            Urgency::Soon,
            Facts::new(),
        );
        let full = Finding::new(
            FindingId::WasteCloseNow,
            Level::Notice,
            Urgency::Now,
            Facts::new(),
        );
        assert!(shock.order() < full.order());
    }
}
