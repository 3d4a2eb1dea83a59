//! Spellings that have another meaning beside certain neighbours: `grammar/words/senses.toml`.

use rustc_hash::FxHashMap;
use serde::Deserialize;

use super::vocab::WordsError;

/// Declares the senses as the file names them.
macro_rules! senses {
    ($($variant:ident = $name:literal),+ $(,)?) => {
        /// A use of a spelling that its neighbours decide on. The file says when.
        #[derive(Debug, Clone, Copy, PartialEq, Eq)]
        #[repr(u8)]
        pub(super) enum Sense { $($variant),+ }

        impl Sense {
            const ALL: &'static [(Sense, &'static str)] = &[$((Sense::$variant, $name)),+];
        }
    };
}

senses! {
    Once = "once",
    Tonight = "tonight",
    CleanToo = "clean-too",
    Dumped = "dumped",
    RegulatorOn = "regulator-on",
    RegulatorSet = "regulator-set",
    ByAPlace = "by-a-place",
    Home = "home",
    MoreThan = "more-than",
    Then = "then",
    Asks = "asks",
    Is = "is",
    AirIs = "air-is",
    ItIs = "it-is",
    Weather = "weather",
    Needle = "needle",
    StandsAt = "stands-at",
    Both = "both",
    TheyAll = "they-all",
    GotTo = "got-to",
    Left = "left",
    TheTruck = "the-truck",
    BeforeIt = "before-it",
    BeforeI = "before-i",
    AfterIt = "after-it",
    Current = "current",
    Bound = "bound",
    TurnsALevel = "turns-a-level",
    TakesBack = "takes-back",
    BeforeTakesBack = "before-takes-back",
    Parts = "parts",
    Rises = "rises",
    Me = "me",
    Circuits = "circuits",
    CameTo = "came-to",
    Level = "level",
    TakesAllBack = "takes-all-back",
    Static = "static",
    Flowing = "flowing",
    NoPressure = "no-pressure",
    NoHurry = "no-hurry",
    PlacesInside = "places-inside",
    Am = "am",
    A = "a",
    AtAValue = "at-a-value",
    AtAnHour = "at-an-hour",
    Around = "around",
    NearlyThere = "nearly-there",
    Here = "here",
    OnePerson = "one-person",
    Stall = "stall",
    OnePart = "one-part",
    Ropes = "ropes",
    Place = "place",
    One = "one",
    Between = "between",
    QuarterTo = "quarter-to",
    Outside = "outside",
    Coming = "coming",
    OftenASlip = "often-a-slip",
    CheckMe = "check-me",
    Beneath = "beneath",
    GoingUnder = "going-under",
    BackIn = "back-in",
    OnTheRoad = "on-the-road",
    NotOnTheRoadYet = "not-on-the-road-yet",
    Well = "well",
    Mine = "mine",
    GoesInto = "goes-into",
    OnCondition = "on-condition",
    Minutes = "minutes",
    Legs = "legs",
    LegPlaces = "leg-places",
    TheOther = "the-other",
    Skin = "skin",
    ToGround = "to-ground",
    HotAir = "hot-air",
    WasWrong = "was-wrong",
    TrailerPlug = "trailer-plug",
    Plugged = "plugged",
    Feeds = "feeds",
    WereOff = "were-off",
    WorkingOn = "working-on",
    CordLook = "cord-look",
    WireGauge = "wire-gauge",
    OneThing = "one-thing",
    Into = "into",
    Nor = "nor",
    Comes = "comes",
    PlainNo = "plain-no",
    Whenever = "whenever",
    AfterSeconds = "after-seconds",
    MonthOrVerb = "month-or-verb",
    An = "an",
    IsHere = "is-here",
    SaidComma = "said-comma",
    SaidStop = "said-stop",
    NoStop = "no-stop",
    Refuses = "refuses",
    Subject = "subject",
    NothingAtAll = "nothing-at-all",
    Source = "source",
    Inches = "inches",
    AboutEnding = "about-ending",
    PartEnding = "part-ending",
    OrdinalEnding = "ordinal-ending",
    HourEnding = "hour-ending",
    Shortened = "shortened",
    Road = "road",
    TheLow = "the-low",
    LowIs = "low-is",
    MinusSign = "minus-sign",
    UnderZero = "under-zero",
    TheNight = "the-night",
    Part = "part",
    LevelLamp = "level-lamp",
    DrainTank = "drain-tank",
    Dry = "dry",
    OneOutlet = "one-outlet",
    OrderOpen = "order-open",
    Tomorrow = "tomorrow",
    StreetFirst = "street-first",
    Blowing = "blowing",
    EvenOnes = "even-ones",
    OddOnes = "odd-ones",
    BeforeNoon = "before-noon",
    AfterNoon = "after-noon",
    AsksWas = "asks-was",
    AsksHas = "asks-has",
    AsksHave = "asks-have",
    AsksDid = "asks-did",
    AsksCan = "asks-can",
    Somebody = "somebody",
    AnyOf = "any-of",
    PlainYet = "plain-yet",
    AskedOf = "asked-of",
    ByMorning = "by-morning",
    Foretells = "foretells",
    Forecasters = "forecasters",
    FallsTo = "falls-to",
    FeelsLike = "feels-like",
    Homeward = "homeward",
    HeadingOut = "heading-out",
    Weary = "weary",
    UnderLoad = "under-load",
    Floor = "floor",
    SoIs = "so-is",
    AlsoHolds = "also-holds",
    GiveMe = "give-me",
    Bubbles = "bubbles",
    Since = "since",
    Sick = "sick",
    OfABar = "of-a-bar",
    OfATrailer = "of-a-trailer",
    TellMeWhen = "tell-me-when",
    Letter = "letter",
    InCompany = "in-company",
    NoNumberOfDegrees = "no-number-of-degrees",
    TableFor = "table-for",
    OfAPart = "of-a-part",
    PumpTruck = "pump-truck",
    Used = "used",
    UsedSoMuch = "used-so-much",
    InchesFrom = "inches-from",
    BodyPart = "body-part",
    ByADriver = "by-a-driver",
    BackingUp = "backing-up",
    WayUp = "way-up",
    CannotGetUp = "cannot-get-up",
    OneGuest = "one-guest",
    TheSame = "the-same",
    AndAHalf = "and-a-half",
    Load = "load",
    MayI = "may-i",
    Freezing = "freezing",
    HighOf = "high-of",
    Starts = "starts",
    Sags = "sags",
    IsDown = "is-down",
    NotRead = "not-read",
    OfOthers = "of-others",
    Finished = "finished",
    Cleaning = "cleaning",
    Restocking = "restocking",
    ThereIs = "there-is",
    OneMore = "one-more",
    Moves = "moves",
    PartOfToday = "part-of-today",
    PowerSource = "power-source",
    SomeThing = "some-thing",
    Gate = "gate",
    OwnDevice = "own-device",
    OnTheHitch = "on-the-hitch",
    Flat = "flat",
    BatteryByItsVolts = "battery-by-its-volts",
    Never = "never",
    Saw = "saw",
    SoBad = "so-bad",
    Everything = "everything",
}

/// The file.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    sense: Vec<Entry>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Entry {
    name: String,
    /// Which neighbours decide, for whoever edits the file.
    #[serde(rename = "why")]
    _why: String,
    say: Vec<String>,
}

/// A bit for each sense.
type Bits = [u128; 2];

/// Sets the bit of a sense.
fn set(bits: &mut Bits, sense: Sense) {
    bits[sense as usize / 128] |= 1 << (sense as usize % 128);
}

/// The senses of one spelling.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct SensesOf(Bits);

impl SensesOf {
    /// Joins the senses of two spellings.
    pub(super) fn and(self, other: SensesOf) -> SensesOf {
        SensesOf([self.0[0] | other.0[0], self.0[1] | other.0[1]])
    }

    /// Tells whether the spelling has the sense.
    pub(super) fn has(self, sense: Sense) -> bool {
        self.0[sense as usize / 128] & (1 << (sense as usize % 128)) != 0
    }
}

/// The spellings of each sense.
#[derive(Debug, Clone, Default)]
pub(super) struct Senses {
    /// A bit for each sense of a spelling.
    bits: FxHashMap<Box<str>, Bits>,
    /// A bit for each sense that has a phrase which opens with the word.
    openers: FxHashMap<Box<str>, Bits>,
    lists: Vec<Vec<Box<str>>>,
}

impl Senses {
    /// Reads the file; each sense must stand in it once, and no other.
    pub(super) fn parse(file: &str, text: &str) -> Result<Senses, WordsError> {
        let wrong = |message: String| WordsError::Toml {
            file: file.into(),
            message,
        };
        let parsed: File = toml::from_str(text).map_err(|error| wrong(error.to_string()))?;
        let mut senses = Senses {
            lists: vec![Vec::new(); Sense::ALL.len()],
            ..Senses::default()
        };
        for entry in parsed.sense {
            let (sense, _) = Sense::ALL
                .iter()
                .find(|(_, name)| *name == entry.name)
                .ok_or_else(|| wrong(format!("no sense is named `{}`", entry.name)))?;
            for say in entry.say {
                set(senses.bits.entry(say.as_str().into()).or_default(), *sense);
                let opener = say.split(' ').next().unwrap_or_default();
                set(senses.openers.entry(opener.into()).or_default(), *sense);
                senses.lists[*sense as usize].push(say.into());
            }
        }
        let empty = senses.lists.iter().position(Vec::is_empty);
        match empty.map(|i| Sense::ALL[i].1) {
            Some(name) => Err(wrong(format!("the sense `{name}` is missing"))),
            None => Ok(senses),
        }
    }

    /// Tells whether `spelt` has the sense, however its words are parted.
    pub(super) fn has(&self, spelt: &str, sense: Sense) -> bool {
        self.all_of(spelt).has(sense)
    }

    /// Returns every sense that `spelt` has, however its words are parted.
    pub(super) fn all_of(&self, spelt: &str) -> SensesOf {
        if spelt.contains("  ") {
            let parted: Vec<&str> = spelt.split_whitespace().collect();
            return self.all_of(&parted.join(" "));
        }
        SensesOf(self.bits.get(spelt).copied().unwrap_or_default())
    }

    /// Returns the senses that have a phrase which opens with `word`.
    pub(super) fn opened_by(&self, word: &str) -> SensesOf {
        SensesOf(self.openers.get(word).copied().unwrap_or_default())
    }

    /// Returns the spellings of a sense, in the order of the file.
    pub(super) fn of(&self, sense: Sense) -> &[Box<str>] {
        &self.lists[sense as usize]
    }
}
