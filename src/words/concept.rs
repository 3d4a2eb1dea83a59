//! What a word can stand for: the vocabulary of the phrase grammar, named as the word files name it.

use std::fmt;

use crate::heard::{CommandName, Event, Fault, Need, ReadingKey, ShortAnswer};
use crate::quantity;

/// Declares a list of names as the word files spell them.
macro_rules! names {
    ($(#[$meta:meta])* $name:ident { $($(#[$vmeta:meta])* $variant:ident = $code:literal),+ $(,)? }) => {
        $(#[$meta])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq)]
        pub(super) enum $name { $($(#[$vmeta])* $variant),+ }

        impl $name {
            /// Finds the member that a name of the word files stands for.
            pub(super) fn from_code(code: &str) -> Option<Self> {
                match code { $($code => Some($name::$variant),)+ _ => None }
            }

            /// Returns the name as the word files spell it.
            pub(super) const fn code(self) -> &'static str {
                match self { $($name::$variant => $code),+ }
            }
        }
    };
    (listed $(#[$meta:meta])* $name:ident { $($(#[$vmeta:meta])* $variant:ident = $code:literal),+ $(,)? }) => {
        names! { $(#[$meta])* $name { $($(#[$vmeta])* $variant = $code),+ } }

        impl $name {
            /// Every member.
            pub(super) const ALL: &'static [$name] = &[$($name::$variant),+];
        }
    };
}

names! {
    listed
    /// A thing that crews talk about: it has states, and some have numbers.
        Noun {
        Pressure = "pressure",
        Supply = "supply",
        BeforeRegulator = "before-regulator",
        AfterRegulator = "after-regulator",
        Flow = "flow",
        Water = "water",
        HotWater = "hot-water",
        WaterHeater = "water-heater",
        Waste = "waste",
        Fresh = "fresh",
        Tank = "tank",
        Fuel = "fuel",
        Air = "air",
        Inside = "inside",
        Low = "low",
        Humidity = "humidity",
        Wind = "wind",
        /// The wind at its strongest: of two winds told together it counts.
        Gust = "gust",
        Slope = "slope",
        Volts = "volts",
        Power = "power",
        Battery = "battery",
        Amps = "amps",
        Circuit = "circuit",
        Breaker = "breaker",
        Gfci = "gfci",
        Fuse = "fuse",
        Cords = "cords",
        Cord = "cord",
        Plug = "plug",
        Hose = "hose",
        Pipe = "pipe",
        Guests = "guests",
        Eta = "eta",
        Lights = "lights",
        Mains = "mains",
        Pump = "pump",
        Fan = "fan",
        Ac = "ac",
        Heat = "heat",
        Heater = "heater",
        TankHeater = "tank-heater",
        Toilet = "toilet",
        Sink = "sink",
        Gauge = "gauge",
        Lock = "lock",
        Door = "door",
        Sound = "sound",
        Regulator = "regulator",
        Filter = "filter",
        Wheels = "wheels",
        Jacks = "jacks",
        Supplies = "supplies",
        Tire = "tire",
        Generator = "generator",
        Hitch = "hitch",
        /// What keeps the coupler shut.
        HitchPin = "hitch-pin",
        Breakaway = "breakaway",
        Brakes = "brakes",
        Chains = "chains",
        /// The lamps that the road needs.
        TowLights = "tow-lights",
        TongueJack = "tongue-jack",
        /// What keeps water from being sucked back into the main.
        Backflow = "backflow",
        Body = "body",
        Sewage = "sewage",
        Smell = "smell",
        Ground = "ground",
        Taps = "taps",
        Trailer = "trailer",
        Person = "person",
        /// A truck that comes and goes by itself: the pump truck.
        Truck = "truck",
        Other = "other",
    }
}

names! {
    listed
    /// How a thing stands, or what was done to it.
        State {
        On = "on",
        /// As [`State::On`], in a word that is no preposition: prendido.
        TurnedOn = "turned-on",
        Off = "off",
        Open = "open",
        Shut = "shut",
        Dead = "dead",
        Gone = "gone",
        Lost = "lost",
        Back = "back",
        Ok = "ok",
        Fixed = "fixed",
        Low = "low",
        Weak = "weak",
        Cold = "cold",
        Stuck = "stuck",
        Running = "running",
        Clogged = "clogged",
        Leaking = "leaking",
        Frozen = "frozen",
        Thawed = "thawed",
        Tripped = "tripped",
        KeepsTripping = "keeps-tripping",
        PluggedIn = "plugged-in",
        Live = "live",
        OnSite = "on-site",
        Stopped = "stopped",
        /// Done in part only: "pumped half".
        InPart = "in-part",
        /// Said of a pump-out that did not come to be: "left, didnt pump".
        Undone = "undone",
        /// Not level yet: "almost level", "level-ish".
        NearlyLevel = "nearly-level",
        /// On one side only.
        HalfChocked = "half-chocked",
        Blown = "blown",
        Reset = "reset",
        Replaced = "replaced",
        Cleaned = "cleaned",
        Fitted = "fitted",
        Filled = "filled",
        Drained = "drained",
        Emptied = "emptied",
        Pumped = "pumped",
        Down = "down",
        Up = "up",
        Out = "out",
        Damaged = "damaged",
        Melted = "melted",
        Spilled = "spilled",
        Smelly = "smelly",
        Stocked = "stocked",
        Chocked = "chocked",
        Closed = "closed",
        Tilted = "tilted",
        Level = "level",
        Hurt = "hurt",
        /// Without light.
        Dark = "dark",
        /// In a room, or at a door or window.
        Enclosed = "enclosed",
        Trapped = "trapped",
    }
}

names! {
    /// A unit of measure.
        Unit {
        Psi = "psi",
        Bar = "bar",
        Kpa = "kpa",
        KgCm2 = "kg-cm2",
        Lb = "lb",
        /// Kilograms: of pressure beside that word, of weight elsewhere.
        Kilo = "kilo",
        Gal = "gal",
        Litre = "l",
        Pct = "pct",
        DegF = "f",
        DegC = "c",
        Deg = "deg",
        Volt = "v",
        Amp = "a",
        Ft = "ft",
        Metre = "m",
        Gpm = "gpm",
        Lpm = "lpm",
        Mph = "mph",
        Kmh = "kmh",
        Ms = "m-s",
        Knot = "kn",
        Minute = "min",
        Hour = "h",
        /// A measure that we keep no reading of: inches, watts, days, dollars.
        Other = "other",
    }
}

names! {
    /// A word that steers the reading of others.
        Mark {
        /// A denial of what follows: not, never, isn't.
        Not = "not",
        /// A denial of the noun that follows: no, without.
        No = "no",
        /// It has not happened: will, about to, need.
        Plan = "plan",
        /// As [`Mark::Plan`], also of what stands before it: expected.
        Expected = "expected",
        /// As [`Mark::Plan`], said of somebody on the road: on my way.
        Underway = "underway",
        /// Someone should: please, can you.
        Request = "request",
        /// Only if.
        If = "if",
        /// It was so, not now: was.
        Past = "past",
        /// It is so now.
        Now = "now",
        /// An earlier day: yesterday.
        Yesterday = "yesterday",
        /// The night before this day: an earlier day, and its clock times are those of a night.
        LastNight = "last-night",
        /// As [`Mark::Now`], of a time that may be hours ago: this morning.
        Morning = "this-morning",
        /// Before noon, after an hour: in the morning. Elsewhere it is a plan.
        Forenoon = "forenoon",
        /// After noon, after an hour: in the afternoon, at night.
        Afternoon = "afternoon",
        /// So long before now: ago.
        Ago = "ago",
        /// The sender is not sure: maybe, think.
        Doubt = "doubt",
        /// As [`Mark::Doubt`], of the whole sentence: I don't think so.
        DoubtSaid = "doubt-said",
        /// Reports what somebody says: says, told me.
        Says = "says",
        /// A question mark that was dictated.
        DictatedQuery = "question-mark",
        /// Opens a question: what, how.
        Query = "query",
        /// Opens a question when it stands first: is, are, does.
        Aux = "aux",
        /// A plain value: about, like.
        About = "about",
        /// No plain value: over, under, almost.
        Bound = "bound",
        /// Between two.
        Between = "between",
        /// To, as between two numbers.
        To = "to",
        /// Up or down from one number to another.
        From = "from",
        /// Takes back what was said just before.
        Sorry = "sorry",
        /// An instruction to change records.
        Order = "order",
        /// Names a trailer: unit, trailer.
        Unit = "unit",
        /// The, before a number that names a trailer: la 12.
        Article = "article",
        /// A place: on, at, in.
        At = "at",
        /// As [`Mark::At`], of what something is meant for: for.
        For = "for",
        /// In company of: with.
        With = "with",
        /// In a room: inside.
        Inside = "inside",
        Of = "of",
        And = "and",
        Or = "or",
        But = "but",
        /// Every one of several.
        All = "all",
        /// Empty, as the complement of a fraction.
        Empty = "empty",
        /// As [`Mark::Clock`]; alone, an answer.
        Before = "before",
        /// As [`Mark::Clock`]; alone, an answer.
        After = "after",
        Minus = "minus",
        Below = "below",
        /// What follows is somebody else's text.
        Forwarded = "forwarded",
        /// The number after or before this word has a label of its own.
        Label = "label",
        /// The number before this word has a label of its own.
        LabelAfter = "label-after",
        /// The clock follows: at, by, around.
        Clock = "clock",
        /// Carries no meaning of its own.
        Filler = "filler",
        /// As [`Mark::Filler`], opening a clause: so.
        So = "so",
        /// Refers back to what was named: it, them.
        Pronoun = "pronoun",
        /// A person is addressed.
        Call = "call",
        /// Understood, and means nothing to us.
        Idle = "idle",
        /// Not yet.
        Yet = "yet",
        /// As [`Mark::Yet`], at the end of what is not denied: "12 pumped yet" asks.
        AskedYet = "asked-yet",
        Away = "away",
        /// It went on or came back: again, keeps.
        Again = "again",
        /// More than once: what was put right so often did not hold.
        Twice = "twice",
        /// Asks for a person: who, anyone.
        Who = "who",
        Done = "done",
        Full = "full",
        /// Work is ordered: called the hauler.
        Booked = "booked",
    }
}

names! {
    /// What a question is about.
        AskWord {
        Status = "status",
        History = "history",
        Forecast = "forecast",
        Digest = "digest",
        Tasks = "tasks",
        Help = "help",
        /// Help, where it stands nearly alone.
        HelpWord = "help-word",
        Undo = "undo",
        Why = "why",
        Done = "done",
        Task = "task",
        Sum = "sum",
        /// Advice asked for: what now, should I.
        Advice = "advice",
        /// When or how long, of a tank.
        When = "when",
        /// Fill, last, run out: what a forecast question asks of.
        Fill = "fill",
    }
}

/// A part of a spoken number.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Spoken {
    /// One to ninety-nine as one word.
    Number(f64),
    Hundred,
    Thousand,
    Point,
    /// Zero said as a letter.
    Oh,
    /// A part: half, quarter.
    Part(f64),
    /// Parts, which need their number: quarters.
    Parts(f64),
    /// One, where it may be no number at all.
    One,
}

/// What a phrase of the vocabulary stands for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Concept {
    Noun(Noun),
    State(State),
    Event(Event),
    Fault(Fault),
    Clears(Fault),
    Unit(Unit),
    Mark(Mark),
    Ask(AskWord),
    Need(Need),
    Command(CommandName),
    Answer(ShortAnswer),
    Spoken(Spoken),
    Level(f64),
    /// A time of day by name, in minutes: noon.
    Time(u16),
}

impl Unit {
    /// Tells whether it measures a pressure, of water or of a tire; pounds and kilos alone may be a weight.
    pub(super) fn is_pressure(self) -> bool {
        matches!(self, Unit::Psi | Unit::Bar | Unit::Kpa | Unit::KgCm2)
    }

    /// Returns how many psi one of it is, where it is said of a pressure: kilos are those on a square centimetre.
    pub(super) fn psi(self) -> f64 {
        match self {
            Unit::Bar => quantity::PSI_PER_BAR,
            Unit::Kpa => quantity::PSI_PER_KPA,
            Unit::KgCm2 | Unit::Kilo => quantity::PSI_PER_KG_CM2,
            _ => 1.0,
        }
    }
}

impl Concept {
    /// Reads the `is` of a word file, such as `noun water` or `number 12`.
    pub(super) fn parse(is: &str) -> Option<Concept> {
        let (kind, name) = is.split_once(' ').unwrap_or((is, ""));
        let name = name.trim();
        Some(match kind {
            "noun" => Concept::Noun(Noun::from_code(name)?),
            "state" => Concept::State(State::from_code(name)?),
            "event" => Concept::Event(Event::from_code(name)?),
            "fault" => Concept::Fault(Fault::from_code(name)?),
            "clears" => Concept::Clears(Fault::from_code(name)?),
            "measure" => Concept::Unit(Unit::from_code(name)?),
            "word" => Concept::Mark(Mark::from_code(name)?),
            "ask" => Concept::Ask(AskWord::from_code(name)?),
            "need" => Concept::Need(Need::from_code(name)?),
            "command" => Concept::Command(CommandName::from_code(name)?),
            "answer" => Concept::Answer(ShortAnswer::from_code(name)?),
            "number" => Concept::Spoken(match name {
                "one" => Spoken::One,
                "hundred" => Spoken::Hundred,
                "thousand" => Spoken::Thousand,
                "point" => Spoken::Point,
                "oh" => Spoken::Oh,
                _ => Spoken::Number(name.parse().ok()?),
            }),
            "parts" => Concept::Spoken(Spoken::Parts(name.parse().ok()?)),
            "part" => Concept::Spoken(Spoken::Part(name.parse().ok()?)),
            "time" => Concept::Time(name.parse().ok()?),
            "level" => Concept::Level(name.parse().ok()?),
            _ => return None,
        })
    }
}

/// Writes a concept as the word files name it: `noun water`, `number 12`.
impl fmt::Display for Concept {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Concept::Noun(noun) => write!(f, "noun {}", noun.code()),
            Concept::State(state) => write!(f, "state {}", state.code()),
            Concept::Event(event) => write!(f, "event {event}"),
            Concept::Fault(fault) => write!(f, "fault {fault}"),
            Concept::Clears(fault) => write!(f, "clears {fault}"),
            Concept::Unit(unit) => write!(f, "measure {}", unit.code()),
            Concept::Mark(mark) => write!(f, "word {}", mark.code()),
            Concept::Ask(ask) => write!(f, "ask {}", ask.code()),
            Concept::Need(need) => write!(f, "need {need}"),
            Concept::Command(name) => write!(f, "command {name}"),
            Concept::Answer(answer) => write!(f, "answer {answer}"),
            Concept::Spoken(spoken) => match spoken {
                Spoken::Number(n) => write!(f, "number {n}"),
                Spoken::Hundred => f.write_str("number hundred"),
                Spoken::Thousand => f.write_str("number thousand"),
                Spoken::Point => f.write_str("number point"),
                Spoken::Oh => f.write_str("number oh"),
                Spoken::One => f.write_str("number one"),
                Spoken::Part(part) => write!(f, "part {part}"),
                Spoken::Parts(part) => write!(f, "parts {part}"),
            },
            Concept::Level(level) => write!(f, "level {level}"),
            Concept::Time(minutes) => write!(f, "time {minutes}"),
        }
    }
}

impl Noun {
    /// Returns the name by which an answer carries the noun.
    pub(super) fn answer_code(self) -> &'static str {
        match self {
            Noun::Pressure => "pressure",
            Noun::Supply => "supply",
            Noun::Water => "water",
            Noun::Waste => "waste",
            Noun::Fresh => "fresh",
            Noun::Tank => "tank",
            Noun::Battery => "battery",
            Noun::Volts => "volts",
            Noun::Power => "power",
            Noun::Mains => "mains",
            Noun::Lights => "lights",
            Noun::Air => "air",
            Noun::Inside => "inside",
            Noun::Fuel => "fuel",
            Noun::Hose => "hose",
            Noun::Cord | Noun::Cords => "cord",
            _ => "other",
        }
    }

    /// Returns the reading that a bare number after this noun gives.
    pub(super) fn reading(self) -> Option<ReadingKey> {
        Some(match self {
            Noun::Pressure => ReadingKey::PressurePsi,
            Noun::AfterRegulator => ReadingKey::PressurePsi,
            Noun::Supply | Noun::BeforeRegulator => ReadingKey::SupplyPsi,
            Noun::Flow => ReadingKey::FlowGpm,
            Noun::Waste | Noun::Tank => ReadingKey::WastePct,
            Noun::Fresh => ReadingKey::FreshPct,
            Noun::Fuel => ReadingKey::FuelPct,
            Noun::Air => ReadingKey::AirF,
            Noun::Inside => ReadingKey::InsideF,
            Noun::Low => ReadingKey::LowF,
            Noun::Humidity => ReadingKey::HumidityPct,
            Noun::Wind | Noun::Gust => ReadingKey::WindMph,
            Noun::Slope => ReadingKey::SlopePct,
            Noun::Volts => ReadingKey::Volts,
            Noun::Battery => ReadingKey::BatteryV,
            Noun::Cords => ReadingKey::Cords,
            Noun::Cord => ReadingKey::CordFt,
            Noun::Hose => ReadingKey::HoseFt,
            Noun::Guests => ReadingKey::Guests,
            Noun::Eta => ReadingKey::EtaMin,
            _ => return None,
        })
    }

    /// Returns the thing that a measure alone stands for.
    pub(super) fn of(unit: Unit) -> Option<Noun> {
        Some(match unit {
            Unit::Psi | Unit::Bar | Unit::Kpa => Noun::Pressure,
            Unit::Volt => Noun::Volts,
            Unit::Amp => Noun::Amps,
            Unit::Gpm => Noun::Flow,
            Unit::Mph | Unit::Kmh => Noun::Wind,
            _ => return None,
        })
    }

    /// Tells whether the noun is a tank, whose level may be said as a fraction.
    pub(super) fn is_tank(self) -> bool {
        matches!(self, Noun::Waste | Noun::Fresh | Noun::Tank | Noun::Fuel)
    }
}
