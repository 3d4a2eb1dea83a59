//! What one message means, before anyone knows who sent it or which trailers exist.
//!
//! [`Heard`] is the reader's whole answer. It is total: a text that means nothing to us is a `Heard` with
//! nothing in it, and a part that could mean two things stands in `unclear`, never in a value.

use std::collections::BTreeMap;
use std::fmt;

use serde::{Deserialize, Serialize};

/// Declares a closed list of codes with the spelling each has in messages, records and JSON.
macro_rules! codes {
    ($(#[$meta:meta])* $name:ident { $($(#[$vmeta:meta])* $variant:ident = $code:literal),+ $(,)? }) => {
        $(#[$meta])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
        pub enum $name {
            $(
                $(#[$vmeta])*
                #[serde(rename = $code)]
                $variant,
            )+
        }

        impl $name {
            /// Every code, in the order in which they are declared.
            pub const ALL: &'static [$name] = &[$($name::$variant),+];

            /// Returns the code as it is written in records and JSON.
            pub const fn code(self) -> &'static str {
                match self { $($name::$variant => $code),+ }
            }

            /// Finds the member a code names.
            pub fn from_code(code: &str) -> Option<Self> {
                match code { $($code => Some($name::$variant),)+ _ => None }
            }
        }

        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str(self.code())
            }
        }
    };
}
pub(crate) use codes;

codes! {
    /// A thing the sender states as done.
    #[allow(missing_docs)]
    Event {
        Arrived = "arrived",
        Leveled = "leveled",
        JacksDown = "jacks-down",
        Chocked = "chocked",
        PowerOn = "power-on",
        PowerLost = "power-lost",
        PowerBack = "power-back",
        WaterOn = "water-on",
        WaterOff = "water-off",
        InService = "in-service",
        Closed = "closed",
        WastePumped = "waste-pumped",
        FreshFilled = "fresh-filled",
        FreshDrained = "fresh-drained",
        FilterServiced = "filter-serviced",
        FuseReplaced = "fuse-replaced",
        BreakerReset = "breaker-reset",
        RegulatorFitted = "regulator-fitted",
        HeaterOn = "heater-on",
        Restocked = "restocked",
        Cleaned = "cleaned",
        Winterized = "winterized",
        Hitched = "hitched",
        Left = "left",
        Returned = "returned",
        PowerOff = "power-off",
        HeaterOff = "heater-off",
        Unhitched = "unhitched",
        JacksUp = "jacks-up",
        Stowed = "stowed",
        LightsChecked = "lights-checked",
    }
}

impl ReadingKey {
    /// Returns what a reading can be, in its measure, whatever trailer it is of: what is outside is asked about.
    pub fn plausible(self) -> std::ops::RangeInclusive<f64> {
        let most = match self {
            ReadingKey::AirF | ReadingKey::InsideF | ReadingKey::LowF => return -60.0..=130.0,
            ReadingKey::PressurePsi | ReadingKey::SupplyPsi => 250.0,
            ReadingKey::FlowGpm | ReadingKey::SlopePct => 20.0,
            ReadingKey::WasteGal
            | ReadingKey::FreshGal
            | ReadingKey::FuelGal
            | ReadingKey::PumpedGal => 20_000.0,
            ReadingKey::HoseFt | ReadingKey::CordFt => 5000.0,
            ReadingKey::Volts | ReadingKey::VoltsHigh | ReadingKey::VoltsLow => 300.0,
            ReadingKey::BatteryV => 16.0,
            ReadingKey::WindMph => 120.0,
            ReadingKey::EtaMin => 720.0,
            ReadingKey::Guests => 200_000.0,
            ReadingKey::Cords => MOST_CORDS,
            _ => 100.0,
        };
        0.0..=most
    }
}

impl Event {
    /// Returns the faults that it ends without further words.
    pub fn cures(self) -> &'static [Fault] {
        match self {
            Event::PowerBack | Event::PowerOn => &[Fault::NoPower],
            Event::WaterOn => &[Fault::NoWater],
            Event::Leveled => &[Fault::NotLevel],
            Event::BreakerReset => &[Fault::BreakerTrip],
            Event::FuseReplaced => &[Fault::FuseBlown],
            Event::Restocked => &[Fault::OutOfSupplies],
            Event::LightsChecked => &[Fault::TowLightsFault],
            _ => &[],
        }
    }
}

codes! {
    /// A thing that is wrong now.
    #[allow(missing_docs)]
    Fault {
        LowFlow = "low-flow",
        NoWater = "no-water",
        NoLights = "no-lights",
        NoPower = "no-power",
        BreakerTrip = "breaker-trip",
        GfciTrip = "gfci-trip",
        PumpRunning = "pump-running",
        PumpDead = "pump-dead",
        NoHeat = "no-heat",
        NoCooling = "no-cooling",
        NoHotWater = "no-hot-water",
        Leak = "leak",
        Frozen = "frozen",
        ToiletClog = "toilet-clog",
        ToiletRunning = "toilet-running",
        Odor = "odor",
        Spill = "spill",
        GaugeStuck = "gauge-stuck",
        NotLevel = "not-level",
        Damage = "damage",
        FanDead = "fan-dead",
        BatteryLow = "battery-low",
        LockJam = "lock-jam",
        NoSound = "no-sound",
        Shock = "shock",
        FuseBlown = "fuse-blown",
        SinkClog = "sink-clog",
        OutOfSupplies = "out-of-supplies",
        GasIllness = "gas-illness",
        HotPlug = "hot-plug",
        CordDamaged = "cord-damaged",
        Tire = "tire",
        Fire = "fire",
        PersonTrapped = "person-trapped",
        PersonHurt = "person-hurt",
        PersonCold = "person-cold",
        GeneratorInside = "generator-inside",
        NoBackflow = "no-backflow",
        GasSmell = "gas-smell",
        /// The breakaway does not work, or its battery is flat.
        BreakawayFault = "breakaway-fault",
        /// The trailer's brakes do not work, or drag.
        BrakeFault = "brake-fault",
        /// The coupler does not latch, or its pin is missing.
        CouplerFault = "coupler-fault",
        /// The safety chains are missing, or not as they should be.
        ChainFault = "chain-fault",
        /// A lamp that the road needs is out.
        TowLightsFault = "tow-lights-fault",
        /// A jack does not move.
        JackFault = "jack-fault",
        Runaway = "runaway",
        /// Something smells burnt, and nobody sees a fire.
        BurntSmell = "burnt-smell",
        /// A CO alarm sounds, or exhaust is smelled, and nobody is said to be ill.
        CoAlarm = "co-alarm",
    }
}

impl Fault {
    /// What holds a trailer back from the road until it is said to be mended, in the order it is asked after.
    pub const OF_TOWING: &'static [Fault] = &[
        Fault::CouplerFault,
        Fault::ChainFault,
        Fault::BrakeFault,
        Fault::BreakawayFault,
        Fault::TowLightsFault,
        Fault::JackFault,
        Fault::Tire,
    ];

    /// What an electrician comes for, and finds and mends.
    pub const OF_POWER: &'static [Fault] = &[
        Fault::Shock,
        Fault::NoPower,
        Fault::NoLights,
        Fault::BreakerTrip,
        Fault::GfciTrip,
        Fault::FuseBlown,
        Fault::HotPlug,
        Fault::CordDamaged,
        Fault::BurntSmell,
        Fault::Damage,
    ];

    /// What can kill somebody, or has hurt somebody, before it harms the trailer.
    pub const DANGERS: &'static [Fault] = &[
        Fault::Shock,
        Fault::Fire,
        Fault::GasIllness,
        Fault::GasSmell,
        Fault::GeneratorInside,
        Fault::PersonHurt,
        Fault::PersonTrapped,
        Fault::PersonCold,
        Fault::Runaway,
        Fault::BurntSmell,
        Fault::CoAlarm,
    ];

    /// Tells whether it is a danger that threatens whoever comes near, long after it was first told.
    pub fn stays_in_its_place(self) -> bool {
        matches!(
            self,
            Fault::Shock | Fault::Fire | Fault::GasIllness | Fault::GasSmell | Fault::CoAlarm
        )
    }

    /// Tells whether it names a person who is hurt, ill or shut in, rather than something that is broken.
    pub fn harms_a_person(self) -> bool {
        matches!(
            self,
            Fault::PersonHurt | Fault::PersonTrapped | Fault::GasIllness | Fault::Shock
        )
    }
}

/// A trailer takes at most so many cords: one a circuit (common practice, no source).
pub const MOST_CORDS: f64 = 4.0;

/// A number alone that may be the volts of a site's mains (common practice, no source).
pub const MAINS_V: std::ops::RangeInclusive<f64> = 105.0..=130.0;

codes! {
    /// A number a message can report; the code names its unit of measure.
    #[allow(missing_docs)]
    ReadingKey {
        PressurePsi = "pressure_psi",
        SupplyPsi = "supply_psi",
        FlowGpm = "flow_gpm",
        HoseFt = "hose_ft",
        WastePct = "waste_pct",
        WasteGal = "waste_gal",
        FreshPct = "fresh_pct",
        FreshGal = "fresh_gal",
        PumpedGal = "pumped_gal",
        AirF = "air_f",
        InsideF = "inside_f",
        LowF = "low_f",
        HumidityPct = "humidity_pct",
        WindMph = "wind_mph",
        SlopePct = "slope_pct",
        Volts = "volts",
        /// The higher of two cords or legs told beside each other.
        VoltsHigh = "volts_high",
        /// The lower of the two.
        VoltsLow = "volts_low",
        BatteryV = "battery_v",
        BatteryPct = "battery_pct",
        Cords = "cords",
        CordFt = "cord_ft",
        /// How thick the cord's wire is, American wire gauge: the thinner the wire, the larger the number.
        CordAwg = "cord_awg",
        FuelGal = "fuel_gal",
        FuelPct = "fuel_pct",
        Guests = "guests",
        EtaMin = "eta_min",
        StallsOut = "stalls_out",
    }
}

codes! {
    /// How the taps stood when a pressure was read.
    Taps {
        /// Nothing flowing: the pressure is static.
        Shut = "shut",
        /// Water flowing: the pressure is residual.
        Running = "running",
    }
}

/// The current on one circuit.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Amps {
    /// The circuit, counted from 1, where the sender named it.
    pub circuit: Option<u8>,
    /// Amperes.
    pub amps: f64,
}

impl Amps {
    /// What one circuit can draw, A: what is outside is asked about.
    pub const PLAUSIBLE: std::ops::RangeInclusive<f64> = 0.0..=60.0;
}

/// The numbers one entry reports, in the units their keys name.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
pub struct Readings {
    /// Plain numbers, by key.
    #[serde(flatten)]
    pub values: BTreeMap<ReadingKey, f64>,
    /// Currents, by circuit.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub amps: Vec<Amps>,
    /// How the taps stood.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub taps: Option<Taps>,
    /// Which circuits have power, where they were named.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub circuits_live: Option<Vec<u8>>,
}

impl Readings {
    /// Returns the number reported under `key`.
    pub fn value(&self, key: ReadingKey) -> Option<f64> {
        self.values.get(&key).copied()
    }

    /// Records `value`, rounded to 0.001, the precision that records keep.
    pub fn set(&mut self, key: ReadingKey, value: f64) {
        self.values.insert(key, crate::quantity::rounded(value));
    }

    /// Tells whether nothing was reported.
    pub fn is_empty(&self) -> bool {
        self.values.is_empty()
            && self.amps.is_empty()
            && self.taps.is_none()
            && self.circuits_live.is_none()
    }
}

/// A trailer's name as it was typed, upper-cased, without "unit" and its like.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct UnitName(pub String);

impl UnitName {
    /// Makes a name of what was typed.
    pub fn new(typed: &str) -> Self {
        UnitName(typed.trim().to_uppercase())
    }

    /// Returns the name as text.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl fmt::Display for UnitName {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

/// What a message reports on one trailer.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
pub struct Entry {
    /// The trailer, where the message names one.
    pub unit: Option<UnitName>,
    /// The time the sender gives for it, as printed by C1: `05:50`, `yesterday 21:00`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub when: Option<String>,
    /// Things done, in the order said.
    pub events: Vec<Event>,
    /// Numbers read.
    pub readings: Readings,
    /// Things wrong now, in the order said.
    pub faults: Vec<Fault>,
    /// Faults that the sender says are over.
    #[serde(default)]
    pub cleared: Vec<Fault>,
    /// What can hurt somebody and is no fault of the trailer, by the codes of `grammar/hazards.toml`: `needle`.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub hazards: Vec<String>,
    /// Those of them that the sender says are over.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub hazards_over: Vec<String>,
    /// Whether a dispatcher says it from afar: it is no word of anybody who is at the trailer.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub afar: bool,
}

impl Entry {
    /// Tells whether it says no more than whether the trailer is open, which a dispatcher decides from anywhere.
    pub fn is_an_opening(&self) -> bool {
        let opening = |event: &Event| matches!(event, Event::Closed | Event::InService);
        let only = Entry {
            unit: None,
            when: None,
            events: Vec::new(),
            afar: false,
            ..self.clone()
        };
        !self.events.is_empty() && self.events.iter().all(opening) && only.is_empty()
    }

    /// Tells whether the entry reports nothing.
    pub fn is_empty(&self) -> bool {
        self.events.is_empty()
            && self.readings.is_empty()
            && self.faults.is_empty()
            && self.cleared.is_empty()
            && self.hazards.is_empty()
            && self.hazards_over.is_empty()
    }
}

/// What the sender wants back.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(tag = "about", rename_all = "kebab-case")]
#[allow(missing_docs)] // each is a word that a question is asked by
pub enum Ask {
    Status { unit: Option<UnitName> },
    History { unit: Option<UnitName> },
    Forecast { unit: Option<UnitName> },
    Digest,
    Tasks,
    Help,
    Undo,
    Why { unit: Option<UnitName> },
    Done { task: u32 },
    Sum,
    Command { name: CommandName },
}

codes! {
    /// A message whose first word is an order to the bot itself.
    #[allow(missing_docs)]
    CommandName {
        Take = "take",
        Drop = "drop",
        Move = "move",
        GotIt = "got-it",
        Override = "override",
        Teach = "teach",
        Words = "words",
        ForgetWord = "forget-word",
        Invite = "invite",
        Role = "role",
        ShutOut = "shut-out",
        Log = "log",
        NeverMind = "never-mind",
        Note = "note",
        Tell = "tell",
        Assign = "assign",
        Errand = "errand",
        Incident = "incident",
        Relearn = "relearn",
        Crew = "crew",
        Leave = "leave",
        Language = "language",
        Quiet = "quiet",
    }
}

/// An order to the bot: its name and the words after it, untouched.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Command {
    /// Which order.
    pub name: CommandName,
    /// The task number given right after the word, where there is one.
    pub task: Option<u32>,
    /// The rest of the message as typed.
    pub rest: String,
}

codes! {
    /// Work that a message asks for or plans, set aside as a report but answered with a task.
    #[allow(missing_docs)]
    Need {
        PumpOut = "pump-out",
        Refill = "refill",
        Drain = "drain",
        Regulator = "regulator",
        Filter = "filter",
        Heater = "heater",
        Repair = "repair",
        Restock = "restock",
        Other = "other",
    }
}

/// Something wanted, planned or made conditional: understood, and deliberately not logged.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Plan {
    /// The trailer, where the message names one.
    pub unit: Option<UnitName>,
    /// What it is about.
    pub kind: PlanKind,
    /// The words it was read from.
    pub text: String,
}

/// The kinds of [`Plan`].
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum PlanKind {
    /// Work that someone asks for: "need a pump-out on 12 before noon".
    Need {
        /// The work.
        need: Need,
        /// A clock time it is wanted by, `HH:MM`.
        by: Option<String>,
    },
    /// An alarm on a reading: "if 12 hits 3/4 call me".
    Watch {
        /// The reading to watch.
        key: ReadingKey,
        /// The value that sets the alarm off.
        value: f64,
        /// True when falling to the value counts, rather than rising to it.
        below: bool,
    },
    /// Work that someone says is ordered: "called the hauler for 23, he comes 16:30".
    Booked {
        /// The work.
        need: Need,
        /// The clock time it is promised for, `HH:MM`.
        at: Option<String>,
    },
    /// Somebody works alone and wants to be asked after: "going under 21, check me in 15".
    CheckMe {
        /// After so many minutes.
        minutes: u32,
    },
    /// Somebody works under a trailer now and names no time to be asked after: "going under 16".
    GoingUnder,
    /// The sender is about to take the trailer away: "taking 12 home".
    Leave,
    /// The trailer is being got ready to go: its leaving check is open.
    Going,
    /// Two loads run together: "AC and heater both on".
    Together {
        /// Which.
        pair: LoadPair,
    },
    /// A circuit is named dead: what it feeds has no power. No reading of it is told.
    DeadCircuit {
        /// Which, counted from 1.
        circuit: u8,
    },
    /// The hose that was laid has this bore, in: "ran the 1 inch hose".
    HoseBore {
        /// The bore, in.
        bore_in: f64,
    },
    /// The amps that are read on no circuit are those of the cold package's heaters: "tank heater 0 amps".
    ColdHeater,
    /// The sender is on the road: "rolling", "on my way".
    OnTheRoad,
    /// The sender is well, and says no more: "ok", "all good", "I'm out".
    Well,
    /// Weather pasted from an aviation report: it belongs to no trailer.
    Weather,
    /// The day a digest is wanted for: 0 Monday to 6 Sunday, 7 tomorrow.
    Day {
        /// Which.
        day: u8,
    },
    /// Only what is the sender's own.
    Mine,
    /// Anything else that was set aside because it has not happened.
    Other,
}

codes! {
    /// Two loads that are said to run together.
    LoadPair {
        /// Air conditioner and heat of a room.
        AirAndHeat = "air-and-heat",
        /// Two air conditioners.
        TwoAir = "two-air",
        /// Water heater and converter.
        HeaterAndConverter = "heater-and-converter",
    }
}

codes! {
    /// A short answer that makes sense only beside what the bot asked.
    #[allow(missing_docs)]
    ShortAnswer {
        Yes = "yes",
        No = "no",
        Skip = "skip",
        Before = "before",
        After = "after",
        DidAll = "did-all",
        Ok = "ok",
    }
}

/// A bare reply: what it could be, for the desk to hold against the open question.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
pub struct Answer {
    /// A word of assent, refusal or choice.
    pub word: Option<ShortAnswer>,
    /// A bare number.
    pub number: Option<f64>,
    /// A name that could be a trailer's.
    pub unit: Option<UnitName>,
    /// A bare unit of measure, as the word file names it: `psi`, `bar`, `gal`.
    pub measure: Option<String>,
    /// A bare noun that names a reading's place: `waste`, `fresh`, `battery`.
    pub noun: Option<String>,
}

/// A piece of the text with the reason it was not taken.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Remark {
    /// The piece, in the sender's own letters.
    pub text: String,
    /// A stable code of the reason, such as `two-values` or `plan`.
    pub why: String,
}

impl Remark {
    /// The reason of a message of which nothing was understood.
    pub const NOT_UNDERSTOOD: &str = "not-understood";
    /// The reason of cords that were said to be dead or unplugged, with no word of how many have power.
    pub const CORDS_LIVE: &str = "cords-live";
    /// The reason of a value that a word nobody knows may change.
    pub const STRANGE_WORD: &str = "strange-word";
}

/// One spelling that was taken for another.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Taken {
    /// What was typed.
    pub typed: String,
    /// What it was taken for.
    pub read: String,
}

codes! {
    /// A language the reader met and the replies are written in.
    Language {
        /// English.
        En = "en",
        /// Spanish.
        Es = "es",
    }
}

/// Everything one message says.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
pub struct Heard {
    /// Reports, one a trailer, in the order first named.
    pub entries: Vec<Entry>,
    /// What the sender wants back, if anything.
    pub ask: Option<Ask>,
    /// Requests, plans and conditions.
    #[serde(default)]
    pub plans: Vec<Plan>,
    /// An order to the bot.
    #[serde(default)]
    pub command: Option<Command>,
    /// What the message could be as an answer to an open question.
    #[serde(default)]
    pub answer: Option<Answer>,
    /// What the bot must ask back about.
    pub unclear: Vec<Remark>,
    /// What was understood and deliberately not logged.
    pub set_aside: Vec<Remark>,
    /// Spellings that were mended.
    #[serde(default)]
    pub taken: Vec<Taken>,
    /// The trailers named anywhere in the message, in order, whether reported on or not.
    #[serde(default)]
    pub named: Vec<UnitName>,
    /// The language most of the message is in, where its words tell.
    #[serde(default)]
    pub language: Option<Language>,
}
