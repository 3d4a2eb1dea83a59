//! Guided walks hold their place: across a restart, beside another person, and whatever is answered.

mod asked;
mod chatter;
mod content;
mod cries;
mod dangers;
mod each_step;
mod ends;
mod going;
mod hazards;
mod help;
mod lone;
mod own_words;
mod plain_dangers;
mod plug_in;
mod rounds;
mod tow;
mod values;

use std::sync::LazyLock;

use chrono::{DateTime, TimeDelta, Utc};
use hosebib::book::{Book, MessageKey};
use hosebib::desk::{Desk, Inbound, Sender, Turn};
use hosebib::fleet;

const DAY: &str = "2027-01-23T16:00:00Z";

struct Crew {
    desk: Desk,
    now: DateTime<Utc>,
    said: i64,
    restarts: bool,
}

impl Crew {
    fn new(restarts: bool) -> Crew {
        static LOADED: LazyLock<Desk> =
            LazyLock::new(|| crate::desks::at_work(fleet::demo::fleet()));
        Crew {
            desk: LOADED.clone(),
            now: DAY.parse().expect("an instant"),
            said: 0,
            restarts,
        }
    }

    fn hears(&mut self, from: &str, text: &str) -> String {
        let turn = self.takes(from, text);
        words_to(&turn, from)
    }

    /// Has the desk take a message, and returns all that it says to anybody.
    fn takes(&mut self, from: &str, text: &str) -> Turn {
        if self.restarts {
            let kept = serde_json::to_string(self.desk.book()).expect("a book is kept as JSON");
            let book: Book = serde_json::from_str(&kept).expect("and read from it");
            self.desk = Desk::new(book);
        }
        self.now += TimeDelta::minutes(2);
        self.said += 1;
        let inbound = Inbound::says(
            MessageKey::new("test", 1, self.said, 0),
            Sender::Crew(from.into()),
            self.now,
            text,
        );
        let turn = self.desk.receive(&inbound);
        // what is applied is what the journal would give back
        for record in &turn.records {
            let line = serde_json::to_string(record).expect("a record is a line");
            let read = serde_json::from_str(&line).expect("that is read again");
            assert_eq!(*record, read);
            self.desk.apply(&[read]);
        }
        turn
    }
}

/// Returns what a turn says to one person.
fn words_to(turn: &Turn, who: &str) -> String {
    let theirs = turn.outgoing.iter().filter(|message| message.to == who);
    theirs
        .map(|message| message.text.text().to_owned())
        .collect()
}

#[test]
fn a_restart_between_any_two_messages_changes_no_word() {
    let talk = [
        ("tobin", "12 arrived"),
        ("tobin", "done"),
        ("tobin", "12 no water"),
        ("juno", "16 gfci tripped"),
        ("tobin", "yes"),
        ("juno", "it holds"),
        ("nadia", "note 12 tap the gauge"),
        ("tobin", "where were we"),
        ("tobin", "static 52"),
        ("juno", "no"),
        ("tobin", "works now"),
        ("tobin", "chocked"),
    ];
    let (mut stays, mut restarts) = (Crew::new(false), Crew::new(true));
    for (from, text) in talk {
        assert_eq!(
            restarts.hears(from, text),
            stays.hears(from, text),
            "{text}"
        );
    }
}

#[test]
fn a_bare_yes_after_a_danger_is_no_step_of_setting_up() {
    for text in ["12 i feel dizzy", "16 i feel dizzy", "16 is on fire"] {
        let mut crew = Crew::new(false);
        crew.hears(
            "juno",
            "16 arrived, leveled, chocked, unhitched, jacks down",
        );
        crew.hears("juno", text);
        let told = crew.hears("juno", "yes");
        assert!(!told.contains("power on"), "{text}: {told}");
    }
}

#[test]
fn two_people_on_the_same_trailer_do_not_answer_for_each_other() {
    let mut crew = Crew::new(false);
    crew.hears("tobin", "12 no lights in room A");
    crew.hears("abel", "12 no hot water");
    assert!(crew.hears("tobin", "yes").contains("no lights, step 2"));
    assert!(crew.hears("abel", "yes").contains("no hot water, step 2"));
}

#[test]
fn what_one_person_mended_is_not_asked_of_the_other() {
    let mut crew = Crew::new(false);
    crew.hears("tobin", "12 no hot water");
    crew.hears("abel", "12 no hot water");
    crew.hears("abel", "works now");
    let told = crew.hears("tobin", "yes");
    assert!(!told.contains("step"), "{told}");
}

#[test]
fn a_check_is_over_after_a_day() {
    let mut crew = Crew::new(false);
    crew.hears("tobin", "12 no hot water");
    crew.now += TimeDelta::hours(25);
    let told = crew.hears("tobin", "yes");
    assert!(!told.contains("step"), "{told}");
}

#[test]
fn a_bare_word_long_after_the_question_is_asked_again_first() {
    let mut crew = Crew::new(false);
    crew.hears("tobin", "12 no hot water");
    crew.now += TimeDelta::hours(3);
    let told = crew.hears("tobin", "no");
    assert!(told.contains("no hot water, step 1"), "{told}");
}

#[test]
fn what_was_repaired_in_the_last_days_is_said_when_a_check_starts_and_no_longer() {
    let mut crew = Crew::new(false);
    crew.hears("tobin", "12 gfci tripped");
    crew.hears("tobin", "works now");
    crew.hears("tobin", "12 fuse replaced");
    crew.now += TimeDelta::days(2);
    let told = crew.hears("juno", "12 gfci tripped");
    assert!(told.contains("GFCI trips mended 2 d ago"), "{told}");
    assert!(told.contains("fuse replaced 2 d ago"), "{told}");
    let told = crew.hears("lupe", "la 12 no tiene luces");
    assert!(told.contains("Hace poco en la 12"), "{told}");
    assert!(!crew.hears("abel", "16 gfci tripped").contains("Lately"));
    crew.now += TimeDelta::days(8);
    assert!(!crew.hears("abel", "12 no hot water").contains("Lately"));
}

#[test]
fn a_repair_task_done_in_the_last_days_is_said_with_what_was_found() {
    let mut crew = Crew::new(false);
    crew.hears("tobin", "12 no hot water");
    for answer in ["yes", "yes", "yes", "yes", "no"] {
        crew.hears("tobin", answer);
    }
    let told = crew.hears("tobin", "0");
    assert!(told.contains("electrician 12 (the element"), "{told}");
    let id = told
        .split("task ")
        .nth(1)
        .and_then(|rest| rest.split(' ').next());
    crew.hears("tobin", &format!("done {}", id.expect("its number")));
    crew.now += TimeDelta::days(1);
    let told = crew.hears("juno", "12 breaker tripped");
    assert!(told.contains("electrician 12 (the element"), "{told}");
}

#[test]
fn no_order_of_answers_panics_or_walks_for_ever() {
    let words = [
        "yes",
        "no",
        "skip",
        "did all that",
        "next",
        "where were we",
        "0",
        "30",
        "118",
        "12.1 v",
        "3/4",
        "works now",
        "no change",
        "never mind",
        "12 arrived",
        "12 hitched",
        "12 left",
        "undo",
        "filter serviced",
        "breaker reset",
        "12 no water",
        "12 breaker tripped",
        "12 leak",
        "12 odor",
        "12 shock",
        "tank empty",
        "fresh drained",
        "done",
        "police ordered us off",
        "override 12 gate closes",
        "note 12 x",
        "12 has 2 cords",
        "hurt",
        "foul",
        "why",
        "status 12",
        "sí",
        "ya quedó",
        "salta",
    ];
    let mut rng = fastrand::Rng::with_seed(20_270_123);
    let mut crew = Crew::new(false);
    for _ in 0..20 {
        crew.now += TimeDelta::hours(rng.i64(0..30));
        for _ in 0..30 {
            let who = ["tobin", "nadia", "lupe"][rng.usize(..3)];
            let told = crew.hears(who, words[rng.usize(..words.len())]);
            assert!(told.len() < 12_000, "{told}");
        }
    }
}

#[test]
fn every_check_comes_to_an_end_whatever_is_answered() {
    use hosebib::heard::Fault;
    for answer in ["yes", "no", "skip"] {
        let mut crew = Crew::new(false);
        for fault in Fault::ALL {
            if hosebib::rules::steps(*fault).is_empty() {
                continue;
            }
            crew.now += TimeDelta::hours(30);
            // the check of a smell can end in gas, and beside that no other starts
            crew.hears("tobin", "12 fire dept cleared it");
            let voice = format!("12 {}", said(*fault));
            let mut told = crew.hears("tobin", &voice);
            assert!(told.contains("step 1"), "{fault} by {voice:?}: {told}");
            let mut turns = 0;
            while told.contains(", step ") && turns < 40 {
                // a step that guards somebody waits for its yes, one that asks for a number can be skipped
                let guarded = told.contains("Yes or no.");
                let number = told.contains("Send the number");
                let say = match (guarded, number) {
                    (true, _) => "yes",
                    (_, true) => "skip",
                    _ => answer,
                };
                told = crew.hears("tobin", say);
                turns += 1;
            }
            assert!(turns < 40, "{fault} with {answer}: {told}");
        }
    }
}

/// A way to say each fault that has steps.
fn said(fault: hosebib::heard::Fault) -> &'static str {
    use hosebib::heard::Fault as F;
    match fault {
        F::LowFlow => "weak water",
        F::NoWater => "no water",
        F::NoLights => "no lights",
        F::NoPower => "no power",
        F::BreakerTrip => "breaker tripped",
        F::GfciTrip => "gfci tripped",
        F::PumpRunning => "pump wont shut off",
        F::PumpDead => "pump dead",
        F::NoHeat => "no heat",
        F::NoCooling => "no cooling",
        F::NoHotWater => "no hot water",
        F::Leak => "leak",
        F::Frozen => "hose frozen",
        F::ToiletClog => "toilet clogged",
        F::ToiletRunning => "toilet runs on",
        F::Odor => "bad smell",
        F::Spill => "sewage spill",
        F::GaugeStuck => "gauge stuck",
        F::NotLevel => "not level",
        F::BatteryLow => "battery low",
        F::LockJam => "lock jammed",
        F::Shock => "got a shock",
        F::FuseBlown => "fuse blew",
        F::PersonTrapped => "someone locked in the stall",
        _ => "",
    }
}

/// Takes every so many of the texts, others at the next step.
fn every<'a>(nth: usize, from: usize, texts: &'a [&'a str]) -> impl Iterator<Item = &'a &'a str> {
    texts.iter().skip(from % nth).step_by(nth)
}

/// Goes to a step of a check by the answers that lead past those before it.
fn at_step(crew: &mut Crew, fault: hosebib::heard::Fault, step: usize) -> bool {
    use hosebib::heard::Fault;
    crew.now += TimeDelta::hours(30);
    let mut told = crew.hears("tobin", &format!("12 {}", said(fault)));
    for before in &hosebib::rules::steps(fault)[..step] {
        let answer = past(before.key);
        told = crew.hears("tobin", answer);
        if fault == Fault::BatteryLow && before.key == "step-battery-volts" {
            told = crew.hears("tobin", "repeat");
        }
    }
    let here = format!("step {}:", step + 1);
    told.contains(&here)
}

/// What a message would change, were it sent now.
struct Would {
    told: String,
    place: Option<Place>,
    /// Whether it logs a fault, or a fault as over.
    faults: bool,
}

/// The place of a person's check: whose steps, which, whether it asks if that helped.
type Place = (hosebib::heard::Fault, u32, bool);

impl Crew {
    fn place(&self, who: &str) -> Option<Place> {
        place_of(self.desk.book().talk(who)?)
    }

    /// Returns the turn that a message would make, and makes none.
    fn turn(&self, from: &str, text: &str) -> Turn {
        let at = self.now + TimeDelta::minutes(2);
        let inbound = Inbound::says(
            MessageKey::new("test", 1, self.said + 1, 0),
            Sender::Crew(from.into()),
            at,
            text,
        );
        self.desk.receive(&inbound)
    }

    fn would(&self, from: &str, text: &str) -> Would {
        use hosebib::book::Record;
        let turn = self.turn(from, text);
        let mut place = self.place(from);
        let mut faults = false;
        for record in &turn.records {
            match record {
                Record::Talk { who, talk } if who == from => place = place_of(talk),
                Record::Message(message) => {
                    let logs = |entry: &hosebib::heard::Entry| {
                        !entry.faults.is_empty() || !entry.cleared.is_empty()
                    };
                    faults = message.reports.iter().any(|report| logs(&report.entry));
                }
                _ => {}
            }
        }
        let told = turn.outgoing.iter().filter(|message| message.to == from);
        Would {
            told: told.map(|message| message.text.text().to_owned()).collect(),
            place,
            faults,
        }
    }
}

fn place_of(talk: &hosebib::dialogue::Talk) -> Option<Place> {
    let check = talk.checks.last()?;
    Some((check.steps_of, check.step, check.mending))
}

/// An answer by which a check goes past a step.
fn past(key: &str) -> &'static str {
    let step = all_steps().find(|step| step.key == key).expect("a step");
    past_step(&step)
}

fn past_step(step: &hosebib::rules::Step) -> &'static str {
    use hosebib::rules::{Asks, Then};
    match (step.asks, step.then) {
        (Asks::For { .. }, _) => "skip",
        (Asks::IfGood, Then::Hold | Then::Report(_)) => "yes",
        (Asks::IfBad, _) if step.guards() => "no",
        _ => "skip",
    }
}

/// Fails with every message that was taken wrongly.
fn none_is(wrong: &[String], tried: usize) {
    let (count, all) = (wrong.len(), wrong.join("\n"));
    assert!(wrong.is_empty(), "{count} of {tried}:\n{all}");
}

fn all_steps() -> impl Iterator<Item = hosebib::rules::Step> {
    let faults = hosebib::heard::Fault::ALL.iter();
    faults
        .flat_map(|fault| hosebib::rules::steps(*fault))
        .copied()
}
