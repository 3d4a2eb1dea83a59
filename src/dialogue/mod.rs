//! What is open between the bot and a person: the unit they are talking about, a question that waits for its answer,
//! the advice they last got, the alarms they asked for.
//!
//! Pure state. It changes only through records ([`crate::book`] keeps it), so it survives a restart and replays.

mod fact;

use chrono::{DateTime, TimeDelta, Utc};
use serde::{Deserialize, Serialize};

pub use fact::Fact;

use crate::finding::{Finding, FindingId, Urgency};
use crate::heard::{Entry, Event, Fault, Language, ReadingKey, UnitName};

/// How long a unit named once is taken to be meant again.
pub const CONTEXT_LASTS: TimeDelta = TimeDelta::minutes(90);
/// How long a question waits for a bare answer.
pub const QUESTION_LASTS: TimeDelta = TimeDelta::minutes(30);
/// How long a step of a guided check waits for a bare answer; later ones are asked again first.
pub const STEP_LASTS: TimeDelta = TimeDelta::hours(2);
/// A bare answer so long after its question may be meant for something else: the question comes again before it counts.
pub const PAUSE: TimeDelta = TimeDelta::minutes(45);
/// How long the place in a guided check is kept.
pub const CHECK_LASTS: TimeDelta = TimeDelta::hours(24);

/// What is open with one person.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
pub struct Talk {
    /// The unit last talked about, and when.
    pub unit: Option<(UnitName, DateTime<Utc>)>,
    /// The question the bot asked last, while it is unanswered.
    pub question: Option<Question>,
    /// The findings last told, for "why".
    pub advice: Vec<Finding>,
    /// The advice that was told lately.
    #[serde(default)]
    pub told: Vec<Told>,
    /// The language this person last wrote in.
    pub language: Option<Language>,
    /// The guided checks that are open, the one at hand last.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub checks: Vec<Check>,
    /// The trailer that is being set up or got ready to leave.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub round: Option<Round>,
    /// True where the last report that was logged or taken back was taken back: one more undo asks first.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub undone: bool,
    /// The album of the person's last picture.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub album: Option<String>,
    /// Where the person was last asked whether they have arrived.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub placed: Option<Placed>,
    /// How far "more" has told of a trailer.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub more: Option<More>,
    /// When the person was last told how to write.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub taught: Option<DateTime<Utc>>,
    /// Words that somebody had passed on to this person, as long as no answer to them went back.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub passed: Option<Passed>,
    /// When the person last gave an order that no undo takes back.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub fixed: Option<DateTime<Utc>>,
    /// True where the trailer of the last report was taken from the talk: its bare name next says which was meant.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub guessed: bool,
}

/// Words passed on to somebody.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Passed {
    /// Who had them passed on.
    pub by: String,
    /// When.
    pub at: DateTime<Utc>,
    /// The words.
    #[serde(with = "crate::fleet::personal::text")]
    pub words: String,
}

impl Talk {
    /// Returns the unit this person means when they name none, at the time of writing.
    pub fn unit_at(&self, at: DateTime<Utc>) -> Option<&UnitName> {
        let (unit, since) = self.unit.as_ref()?;
        (at >= *since - CONTEXT_LASTS && at - *since <= CONTEXT_LASTS).then_some(unit)
    }

    /// Returns the question that still waits at `at`.
    pub fn question_at(&self, at: DateTime<Utc>) -> Option<&Question> {
        self.question
            .as_ref()
            .filter(|question| at - question.asked <= QUESTION_LASTS)
    }
}

/// How far a trailer's state was told, a screen at a time.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct More {
    /// The trailer.
    pub unit: UnitName,
    /// How many things were told.
    pub told: usize,
}

/// A site near which somebody was asked whether they have arrived.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Placed {
    /// The site's id.
    pub site: String,
    /// When.
    pub at: DateTime<Utc>,
}

/// Advice that was told to a person.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Told {
    /// What was found.
    pub id: FindingId,
    /// On which trailer.
    pub unit: Option<UnitName>,
    /// How urgent it was.
    pub urgency: Urgency,
    /// Its text and the numbers that were read for it, to tell whether it says the same again.
    #[serde(default)]
    pub says: String,
    /// When it was told.
    pub at: DateTime<Utc>,
}

/// Something the bot asked one person.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Question {
    /// When it was asked.
    pub asked: DateTime<Utc>,
    /// What the answer decides.
    pub about: About,
}

/// What a question is about, with what was said so far.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", tag = "about")]
pub enum About {
    /// Which trailer a report is for.
    WhichUnit {
        /// The report that waits, its unit missing.
        entry: Entry,
        /// When it was written.
        at: DateTime<Utc>,
        /// The likely answers.
        likely: Vec<UnitName>,
    },
    /// What a value was: a unit of measure or a place is missing.
    WhatValue {
        /// The trailer.
        unit: Option<UnitName>,
        /// The bare number.
        number: f64,
        /// The words that held it.
        #[serde(with = "crate::fleet::personal::text")]
        text: String,
        /// When it was written.
        at: DateTime<Utc>,
    },
    /// How many cords have power, where some were said to be dead or unplugged.
    CordsLive {
        /// The trailer.
        unit: UnitName,
        /// When they were told of.
        at: DateTime<Utc>,
    },
    /// Whether a pressure was read with the taps shut or running.
    TapsShut {
        /// The trailer.
        unit: UnitName,
    },
    /// Whether a pressure was read before or after the regulator.
    BeforeRegulator {
        /// The trailer.
        unit: UnitName,
    },
    /// When something was so: the time that was told is to come, or none that can be placed.
    When {
        /// The report that waits.
        entry: Entry,
        /// The time as it was told.
        text: String,
    },
    /// Which trailer a message is about that reports nothing: a wish, a truck that is late.
    WhichUnitOf {
        /// The message.
        #[serde(with = "crate::fleet::personal::text")]
        text: String,
        /// The likely answers.
        likely: Vec<UnitName>,
    },
    /// What a correction mends.
    WhichMend {
        /// The book's key of the message that is mended.
        key: String,
        /// What it could mean.
        ways: Vec<Mend>,
    },
    /// Which task is done.
    WhichTask {
        /// The open ones, by number.
        ids: Vec<u32>,
    },
    /// A fact of an incident.
    IncidentFact {
        /// The incident's number.
        number: u32,
        /// Which fact.
        fact: Fact,
    },
    /// Which trailer the last pictures show.
    PhotoOf {
        /// The likely answers.
        likely: Vec<UnitName>,
    },
    /// Which trailers have arrived at a site near which their driver is.
    Arrived {
        /// The site's id.
        site: String,
        /// Those that are due there.
        units: Vec<UnitName>,
    },
    /// Whether a trailer leaves with somebody who says that they go.
    Leaves {
        /// The trailer last talked about.
        unit: Option<UnitName>,
    },
    /// Whether somebody is in danger, where the words may say so.
    Worry {
        /// Whether a person may be hurt, else something may hurt one.
        person: bool,
    },
    /// Whether somebody is hurt, before the facts of an incident are asked.
    HurtNow {
        /// The incident's number.
        number: u32,
        /// Its trailer.
        unit: UnitName,
    },
    /// Why a dispatcher decides against the advice.
    OverrideWhy {
        /// The trailer.
        unit: UnitName,
        /// What the decision is about, in the words of the order.
        #[serde(with = "crate::fleet::personal::text")]
        text: String,
    },
    /// In how many minutes to ask somebody who may work alone on this trailer: the clock was offered.
    Alone {
        /// The trailer.
        unit: UnitName,
    },
    /// Whether a danger that was taken back really was none.
    NoDanger {
        /// The trailer, where it was told.
        unit: Option<UnitName>,
        /// The dangers, which stand again after a no.
        faults: Vec<Fault>,
    },
    /// Whether an older message is to be taken back too.
    UndoOlder {
        /// Its key in the book.
        key: String,
    },
    /// Whether what the sender put there before is to be taken back too.
    UndoNext,
    /// Why an incident is released.
    ReleaseWhy {
        /// The incident's number.
        number: u32,
    },
    /// Whether an incident is released for the reason that was told.
    ReleaseSure {
        /// The incident's number.
        number: u32,
        /// The reason.
        #[serde(with = "crate::fleet::personal::text")]
        text: String,
    },
    /// When a truck comes that was called.
    TruckWhen {
        /// The trailer it is for.
        unit: UnitName,
    },
    /// Whether a waste tank was pumped between two readings, the later of which is lower.
    WasPumped {
        /// The trailer.
        unit: UnitName,
        /// When it was read before.
        since: DateTime<Utc>,
        /// When the lower level was read.
        until: DateTime<Utc>,
    },
    /// How much a truck took out of a waste tank.
    HowMuch {
        /// The trailer.
        unit: UnitName,
        /// What was told of the truck.
        after: Hauled,
    },
}

/// What was told of a pump truck whose gallons are asked.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Hauled {
    /// It is there.
    Here,
    /// It has gone.
    Gone,
    /// Its task is done.
    Done,
    /// Its task is done, and the number that was told may be a trailer's.
    Number,
}

impl About {
    /// Tells whether a no to it leaves everything as it is: no report waits for the answer.
    pub fn leaves_things_as_they_are(&self) -> bool {
        matches!(
            self,
            About::WhichMend { .. }
                | About::WhichTask { .. }
                | About::UndoOlder { .. }
                | About::UndoNext
                | About::ReleaseWhy { .. }
                | About::ReleaseSure { .. }
                | About::IncidentFact { .. }
                | About::Arrived { .. }
                | About::Leaves { .. }
                | About::Worry { .. }
                | About::HurtNow { .. }
                | About::OverrideWhy { .. }
                | About::PhotoOf { .. }
                | About::TruckWhen { .. }
                | About::CordsLive { .. }
                | About::HowMuch { .. }
                | About::WasPumped { .. }
        )
    }
}

/// One way in which a correction can be meant.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", tag = "mends")]
pub enum Mend {
    /// The report was on another trailer.
    Unit {
        /// The one it was logged for.
        from: UnitName,
        /// The one it is for.
        to: UnitName,
    },
    /// Nothing was meant of this trailer.
    Off {
        /// The trailer.
        unit: UnitName,
    },
    /// A reading was another number.
    Value {
        /// The trailer.
        unit: UnitName,
        /// The reading.
        key: ReadingKey,
        /// What it was logged as.
        was: f64,
        /// What it is.
        value: f64,
    },
    /// The current on a circuit was another number.
    Amps {
        /// The trailer.
        unit: UnitName,
        /// The circuit, where it was named.
        circuit: Option<u8>,
        /// Amperes.
        amps: f64,
    },
    /// The current was read on another circuit.
    Circuit {
        /// The trailer.
        unit: UnitName,
        /// The circuit it was logged for.
        from: u8,
        /// The one it was read on.
        to: u8,
    },
    /// A thing that was called done is not.
    Event {
        /// The trailer.
        unit: UnitName,
        /// The thing.
        event: Event,
    },
    /// A fault that was told is none.
    Fault {
        /// The trailer.
        unit: UnitName,
        /// The fault.
        fault: Fault,
    },
    /// A number belongs to another reading.
    Label {
        /// The trailer.
        unit: UnitName,
        /// What it was logged as.
        from: ReadingKey,
        /// What it is.
        to: ReadingKey,
        /// The number.
        value: f64,
    },
}

impl Mend {
    /// Returns the trailer whose report is mended.
    pub fn unit(&self) -> &UnitName {
        match self {
            Mend::Unit { from, .. } => from,
            Mend::Off { unit }
            | Mend::Value { unit, .. }
            | Mend::Amps { unit, .. }
            | Mend::Circuit { unit, .. }
            | Mend::Event { unit, .. }
            | Mend::Fault { unit, .. }
            | Mend::Label { unit, .. } => unit,
        }
    }
}

/// The place in setting a trailer up, or in getting it ready to leave.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Round {
    /// The trailer.
    pub unit: UnitName,
    /// Which of the two.
    pub way: Way,
    /// The step that waits, by its code.
    pub step: String,
    /// When it was asked last.
    pub asked: DateTime<Utc>,
    /// Steps that were skipped.
    #[serde(default)]
    pub skipped: Vec<String>,
    /// Steps that no report tells of and that the person has answered with yes.
    #[serde(default)]
    pub confirmed: Vec<String>,
    /// Something was told since that nothing was read of: "that's done" may be said of that.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub unread: bool,
}

/// Coming or going.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Way {
    /// Setting up.
    #[serde(alias = "set-up")]
    SetUp,
    /// Leaving.
    #[serde(alias = "leaving")]
    Leaving,
}

/// The place in a guided check: which fault of which trailer, and the step that waits for an answer.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Check {
    /// The trailer.
    pub unit: UnitName,
    /// The fault that is to be mended.
    pub fault: Fault,
    /// The fault whose steps are gone through: the same, or the one a step turned to.
    pub steps_of: Fault,
    /// The course of its own that it takes by what was told of the fault, in place of those steps.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub course: Option<Course>,
    /// The step that waits, counted from 0.
    pub step: u32,
    /// Later steps whose cause was ruled out before they were asked.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub ahead: Vec<u32>,
    /// How often in a row a step that guards somebody was to be skipped.
    #[serde(default, skip_serializing_if = "is_zero")]
    pub passed: u32,
    /// True where the step has found the cause, and it is asked whether that mended it.
    #[serde(default)]
    pub mending: bool,
    /// How many resets the check asked for so far.
    #[serde(default)]
    pub resets: u32,
    /// When it was asked last.
    pub asked: DateTime<Utc>,
    /// True once something else was said since it was asked.
    #[serde(default)]
    pub waits: bool,
}

fn is_zero(count: &u32) -> bool {
    *count == 0
}

/// A course that the check of a fault takes where more was told of it than its name.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Course {
    /// Lights that flicker rather than stay dark.
    Flicker,
}

/// An alarm that a person asked for: "if 12 hits 3/4 call me".
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Watch {
    /// Who wants to know.
    pub who: String,
    /// The trailer.
    pub unit: UnitName,
    /// The reading.
    pub key: ReadingKey,
    /// The value that sets it off.
    pub value: f64,
    /// True when falling to the value counts.
    pub below: bool,
    /// When it was asked for.
    pub since: DateTime<Utc>,
}
