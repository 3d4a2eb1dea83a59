//! One message: heard, settled, checked, answered. A file a step, in the order of [`Hearing::work`].

mod asked;
mod bare;
mod cases;
mod changes;
mod gas;
mod leave;
mod loads;
mod meant;
mod mend;
mod open;
mod plans;
mod written;

use std::sync::Arc;

use chrono::{DateTime, Utc};

pub(super) use self::bare::LATE;
pub(super) use self::plans::lead;
use super::answer::Reply;
use super::inbound::{Body, Inbound, Turn};
use super::phrases::plain;
use super::settle::{self, Settled};
use super::when;
use super::{
    Desk, ahead, alarm, answer, assign, choices, command, crew, door, incident, lone, photo, place,
    relay, standing, truck, walk, watch,
};
use crate::book::{Bears, MessageKey, Record, UnitBook, UnitState};
use crate::dialogue::{About, Hauled, Talk};
use crate::finding::FindingId;
use crate::fleet::{CrewMember, Fleet};
use crate::heard::{Ask, Command, CommandName, Entry, Heard, Plan, PlanKind, UnitName};

/// One message with what is known about its sender.
pub(super) struct Hearing<'a> {
    pub(super) desk: &'a Desk,
    pub(super) inbound: &'a Inbound,
    /// What the message says; with what it completes, where it is a bare answer.
    pub(super) text: &'a str,
    pub(super) written: &'a str,
    pub(super) member: &'a CrewMember,
    pub(super) fleet: Arc<Fleet>,
    pub(super) heard: Heard,
    pub(super) talk: Talk,
    /// The instant to judge at: the time written, or the time received where the message came late.
    pub(super) now: DateTime<Utc>,
    /// The key under which the book keeps this message.
    pub(super) key: MessageKey,
    /// The message that this one edits, by the book's key.
    edited: Option<MessageKey>,
    /// The sender's earlier message that this one mends.
    instead_of: Option<MessageKey>,
    /// The question that this message raises before anything else does.
    asks: Option<About>,
    /// Further tasks that an answer calls done.
    pub(super) also_done: Vec<u32>,
    /// The older message that is to be taken back.
    pub(super) takes_back: Option<MessageKey>,
    /// The trailer that the sender's last pictures are said to show.
    pub(super) photo_of: Option<UnitName>,
    /// Whether it takes back the sender's correction, so that what that mended stands again.
    uncorrects: bool,
    /// What it says of an incident whose facts are being asked.
    pub(super) fact: Option<incident::Said>,
}

/// Works through one message.
pub(super) fn receive(desk: &Desk, inbound: &Inbound) -> Turn {
    let Some(member) = desk.crew_of(&inbound.from) else {
        return door::knock(desk, inbound);
    };
    if place::is_in_passing(desk, inbound, &member) {
        return Turn::empty(inbound.at);
    }
    let Body::Press(press) = &inbound.body else {
        return hear(desk, inbound, &member, None);
    };
    match choices::pressed(desk, inbound, &member, press) {
        Ok(word) => {
            // a press is as good as the words it stands for
            let said = Inbound {
                body: Body::Text(word.says),
                ..inbound.clone()
            };
            let takes_back = match word.bears {
                Bears::Message(key) => Some(key),
                _ => None,
            };
            let mut turn = hear(desk, &said, &member, takes_back);
            turn.records.insert(0, word.record);
            turn
        }
        Err(refused) => *refused,
    }
}

/// Hears one of the crew; `takes_back` is the message that a press wants taken back.
fn hear(
    desk: &Desk,
    inbound: &Inbound,
    member: &CrewMember,
    takes_back: Option<MessageKey>,
) -> Turn {
    let scanned = match door::opened(desk, inbound, member) {
        Some(door::Opened::Turn(turn)) => return *turn,
        Some(door::Opened::Asks(words)) => Some(words),
        None => None,
    };
    let fleet = desk.fleet_at(inbound.at);
    let (written, unreadable) = match &inbound.body {
        Body::Other(kind) => ("", Some(kind.as_str())),
        body => (body.words(), None),
    };
    let mut talk = desk.book.talk(&member.id).cloned().unwrap_or_default();
    let mut heard = desk.reader.hear(written, fleet.style.temperature);
    let ordered = ordered_by_task(desk, written, &heard, &fleet);
    if let Some(order) = ordered.or_else(|| noted(desk, written, &fleet)) {
        heard = order;
    }
    // a bare answer may complete a message that waits for its trailer: then it is read as that message
    let asked = talk.question_at(inbound.at).map(|question| &question.about);
    let completed = || {
        asked.and_then(|about| bare::completed(desk, &fleet, &heard, written, (about, inbound.at)))
    };
    let spelled = || {
        let said = (member.id.as_str(), written);
        let at = inbound.at;
        let of_a_truck = || truck::spelled_out(desk, &fleet, &talk, &heard, said, at);
        let of_a_tank = || asked::level(desk, &fleet, &talk, &heard, said, at);
        let of_a_low = ahead::low_spelled_out(desk, member, written, at);
        inbound
            .replaces
            .is_none()
            .then(|| of_a_low.or_else(of_a_truck).or_else(of_a_tank))?
    };
    let whole = scanned.or_else(completed).or_else(spelled);
    if let Some(whole) = &whole {
        heard = desk.reader.hear(whole, fleet.style.temperature);
        talk.question = None;
    }
    // "water 52" while a trailer is being set up
    let texted = walk::Texted {
        desk,
        fleet: &fleet,
        talk: &talk,
        heard: &heard,
        text: written,
        at: inbound.at,
    };
    let fresh = whole.is_none() && inbound.replaces.is_none();
    let worked = truck::work_told(desk, &fleet, &talk, &heard, written, inbound.at);
    let worked = worked.filter(|_| fresh);
    let mut asks = None;
    let spelled = match worked {
        Some(truck::Work::Pumped(report)) => Some(report),
        Some(truck::Work::OneOf(about)) => {
            asks = Some(*about);
            heard = Heard {
                language: heard.language,
                ..Heard::default()
            };
            None
        }
        None => fresh.then(|| walk::written_out(&texted)).flatten(),
    };
    if let Some(spelled) = &spelled {
        let language = heard.language;
        heard = desk.reader.hear(spelled, fleet.style.temperature);
        heard.language = language.or(heard.language);
    }
    let whole = whole.or(spelled);
    let order = crew::order(desk.phrases, written);
    let order = order.or_else(|| incident::order(desk.phrases, written));
    let order = order.or_else(|| assign::order(desk.phrases, &fleet, written));
    if let Some(order) = order.or_else(|| relay::order(desk.phrases, &fleet, written)) {
        heard = Heard {
            ask: Some(Ask::Command { name: order.name }),
            command: Some(order),
            language: heard.language,
            ..Heard::default()
        };
    }
    let also_done = further_done(written, &mut heard);
    let fact = incident::said(desk, &fleet, inbound, member, &talk, &heard, written);
    if let Some(said) = &fact {
        heard = Heard {
            language: heard.language,
            entries: said.danger().into_iter().collect(),
            ..Heard::default()
        };
        talk.question = None;
    }
    let of_an_incident = fact.is_some() || incident::is_one(&heard);
    let late = inbound.received - inbound.at > LATE;
    let hearing = Hearing {
        desk,
        inbound,
        // an incident's words are kept as they are: nothing else is read out of them
        text: match of_an_incident {
            true => "",
            false => whole.as_deref().unwrap_or(written),
        },
        written,
        member,
        fleet,
        heard,
        talk,
        now: if late { inbound.received } else { inbound.at },
        key: MessageKey(format!("m{}", desk.book.messages() + 1)),
        edited: inbound.replaces.as_ref().and_then(|network| {
            let mut sent = desk.book.sent(&member.id).iter();
            Some(sent.find(|sent| sent.is_of(network))?.key.clone())
        }),
        instead_of: None,
        asks,
        also_done,
        takes_back,
        photo_of: None,
        uncorrects: false,
        fact,
    };
    hearing.work(unreadable)
}

/// Reads "take task 1" as "take 1", where the message is no order as it stands.
fn ordered_by_task(desk: &Desk, text: &str, heard: &Heard, fleet: &Fleet) -> Option<Heard> {
    if heard.command.is_some() || heard.ask.is_some() || !heard.entries.is_empty() {
        return None;
    }
    let (verb, rest) = text.trim().split_once(' ')?;
    let rest = desk.phrases.after("tasks", "word", rest.trim_start())?;
    let bare = format!("{verb} {}", rest.trim_start_matches('#'));
    let heard = desk.reader.hear(&bare, fleet.style.temperature);
    let done = matches!(heard.ask, Some(Ask::Done { .. }));
    let of_a_task = heard
        .command
        .as_ref()
        .is_some_and(|order| order.task.is_some());
    (done || of_a_task).then_some(heard)
}

/// Reads the further tasks of "done 4 and 6", which then says nothing else.
fn further_done(text: &str, heard: &mut Heard) -> Vec<u32> {
    const BETWEEN: &[&str] = &[
        "and", "y", "e", "n", "task", "tasks", "tarea", "tareas", "la", "las",
    ];
    let Some(Ask::Done { task }) = heard.ask else {
        return Vec::new();
    };
    let folded = plain(text);
    let first = task.to_string();
    let mut words = folded.split(' ').skip_while(|word| *word != first);
    words.next();
    let rest: Vec<&str> = words.filter(|word| !BETWEEN.contains(word)).collect();
    let ids: Option<Vec<u32>> = rest.iter().map(|word| word.parse().ok()).collect();
    let mut ids = ids.unwrap_or_default();
    ids.retain(|id| *id != task);
    if !ids.is_empty() {
        *heard = Heard {
            ask: heard.ask.take(),
            language: heard.language,
            ..Heard::default()
        };
    }
    ids
}

/// Reads "nota 12 la chapa se atora" as the order it is: elsewhere the number behind that word is a slip's.
fn noted(desk: &Desk, text: &str, fleet: &Fleet) -> Option<Heard> {
    let rest = desk.phrases.after("note", "opens", text.trim_start())?;
    let name = rest.split([' ', ':', ',']).next()?;
    settle::known(fleet, &UnitName::new(name))?;
    let order = Command {
        name: CommandName::Note,
        task: None,
        rest: rest.to_owned(),
    };
    let heard = desk.reader.hear(rest, fleet.style.temperature);
    Some(Heard {
        ask: Some(Ask::Command {
            name: CommandName::Note,
        }),
        command: Some(order),
        language: heard.language,
        ..Heard::default()
    })
}

impl Hearing<'_> {
    fn work(mut self, unreadable: Option<&str>) -> Turn {
        // what it means: a bare answer, a report, a step of a guided check
        let reminds = self.heard.entries.is_empty() && watch::reminds(&self);
        if reminds {
            self.heard.plans.clear();
            self.heard.set_aside.clear();
            self.heard.unclear.clear();
        }
        let coming = (!reminds).then(|| truck::coming(&self)).flatten();
        if let Some(coming) = &coming {
            truck::put(&mut self.heard, coming);
        }
        let other_watch = watch::other_half(&self);
        if let Some(Ok(plan)) = &other_watch {
            self.heard.plans.push(plan.clone());
        }
        let on_any = watch::on_any(&self);
        if on_any.is_some() {
            let watches = |plan: &Plan| matches!(plan.kind, PlanKind::Watch { .. });
            self.heard.plans.retain(|plan| !watches(plan));
            self.heard.set_aside.clear();
            self.heard.unclear.clear();
        }
        let refused = assign::refused(&self);
        if refused.is_some() {
            self.heard = Heard {
                language: self.heard.language,
                ..Heard::default()
            };
        }
        let lone = lone::said(&self);
        let of_a_clock = lone.as_ref().is_some_and(lone::Lone::is_all);
        if lone.is_some() && self.heard.entries.iter().all(Entry::is_empty) {
            if of_a_clock {
                self.heard.ask = None;
            }
            self.heard.plans.clear();
            self.heard.set_aside.clear();
            self.heard.unclear.clear();
        }
        let mut settled = self.settle();
        self.ask_who_leaves(&mut settled);
        self.as_it_goes(&mut settled);
        let icy = walk::icy::take(&self, &mut settled);
        let gas = self.gas_stays(&mut settled);
        let truck_here = truck::has_come(&self, &mut settled);
        let truck_gone = truck::gone(&self, &mut settled);
        if truck_here.is_some() || truck_gone.is_some() {
            self.heard.plans.clear();
            self.heard.set_aside.clear();
        }
        let of_its_own = self.instead_of.is_none()
            && self.asks.is_none()
            && self.fact.is_none()
            && !self.is_about_another_thing();
        let took = of_its_own
            .then(|| walk::take(&mut self, &mut settled))
            .flatten();
        let stood = of_its_own
            .then(|| walk::stand::take(&mut self, &mut settled, took.is_some()))
            .flatten();
        if of_its_own && took.is_none() && stood.is_none() {
            self.one_task_done(&settled);
        }
        if of_its_own {
            self.leaving(&mut settled);
            self.loads_together(&mut settled);
        }
        settled.words = self.words_about(&settled);
        let mut units = self.units(&settled);
        units.extend(self.talk.checks.iter().map(|check| check.unit.clone()));
        units.extend(self.talk.round.iter().map(|round| round.unit.clone()));
        let board = self.board(&units);
        let mut reply = Reply::new(&self, board);
        if self.late() {
            reply.late = true;
        }
        if let Some(kind) = unreadable {
            reply.unreadable(kind);
        }
        if icy {
            walk::icy::tell(&self, &mut reply);
        }
        if let Some(unit) = &gas {
            reply.say("gas-stays", &[("unit", unit.as_str().into())]);
        }
        place::tell(&self, &mut reply);
        if self.replaced().is_some() {
            self.tell_changes(&settled, &mut reply);
        }
        if self.uncorrects {
            let line = reply.voice.word("undone-correction");
            reply.opening.insert(0, line);
            reply.undone = true;
        }

        // what follows from it: findings and the tasks they ask for
        let mut records = Vec::new();
        ahead::weather_told(&self, &mut settled, &mut reply, &mut records);
        let cases = self.check(&mut settled, &mut reply);

        // what it asks for: work, alarms, orders, questions
        self.plan(&mut reply, &cases, &mut records);
        match (&truck_here, &truck_gone, &coming) {
            (Some(unit), ..) => reply.asks = Some(how_much(unit, Hauled::Here)),
            (_, Some(unit), _) => reply.asks = Some(how_much(unit, Hauled::Gone)),
            (.., Some(truck::Coming::Muddled)) => reply.say("truck-how", &[]),
            _ => truck::told(&self, &mut reply, &mut records),
        }
        if self.heard.command.is_none() {
            watch::list(&self, &mut reply);
            if let Some(Err(words)) = &other_watch {
                let quote = reply.voice.quote(words);
                reply.say("watch-left", &[("quote", quote.into())]);
            }
            if let Some((units, kind)) = &on_any {
                watch::set_on_any(&self, units, kind, &mut reply, &mut records);
            } else if !watch::drop(&self, &mut reply, &mut records)
                && let Some(missed) = watch::missed(&self)
            {
                watch::say_missed(&self, &missed, &mut reply);
            }
        }
        watch::hits(&self, &cases, &mut reply, &mut records);
        alarm::end_silence(&self, &cases, &settled.words, &mut records);
        alarm::raise(&self, &cases, &mut reply, &mut records);
        let lessons = cases.iter().filter_map(|case| case.lesson(&self.key));
        records.extend(lessons.map(|lesson| Record::Lesson { lesson }));
        if let Some(order) = self.heard.command.clone() {
            command::obey(&self, &order, &mut reply, &mut records);
        }
        if let Some(id) = refused {
            assign::hand_back(&self, id, &mut reply);
        }
        incident::take(&self, &mut reply, &mut records);
        // how one person is is answered by their clock
        let of_one =
            of_a_clock || matches!(lone, Some(lone::Lone::Asked(_))) && self.heard.ask.is_none();
        if !of_one {
            self.answer(took.is_some(), &settled, &mut reply, &mut records);
        }
        lone::tell(&self, lone.as_ref(), &mut reply, &mut records);

        // what goes with it: orders of fire or police, the site's card, the next step, what the bot will speak of
        standing::decide_in_words(&self, &mut reply, &mut records);
        standing::confirm(&self, stood.is_some(), &mut reply);
        standing::ordered(&self, &settled, &mut reply, &mut records);
        standing::greet(&self, &cases, &mut reply);
        standing::beside_the_advice(&self, &cases, &mut reply);
        walk::stand::go_on(&self, &cases, stood, &mut reply);
        walk::go_on(&self, &cases, took.as_ref(), &mut reply, &mut records);
        standing::keep_confirmed(&self, &reply, &mut records);
        ahead::note(&self, &settled, &cases, &mut reply, &mut records);

        // what stays open, and the whole turn as it is written down
        photo::take(&self, &settled, &mut reply, &mut records);
        let mut talk = self.talk_after(&settled, &mut reply);
        place::note(&self, &mut talk);
        photo::note(&self, &mut talk);
        self.finish(settled, cases, reply, records, talk)
    }

    /// Answers what the message asks; `took` tells whether it answered a step of a guided check.
    fn answer(
        &self,
        took: bool,
        settled: &Settled,
        reply: &mut Reply<'_>,
        records: &mut Vec<Record>,
    ) {
        let several = match took {
            true => Vec::new(),
            false => answer::parts(self),
        };
        if !several.is_empty() {
            return answer::several(self, &several, settled, reply, records);
        }
        let answered = !took && answer::question(self, settled, reply);
        if let Some(ask) = self.heard.ask.clone().filter(|_| !answered) {
            answer::ask(self, settled, &ask, reply, records);
        }
    }

    /// Returns this message as if it asked one thing only, in these words.
    pub(super) fn asking<'b>(&'b self, text: &'b str, heard: Heard) -> Hearing<'b> {
        Hearing {
            desk: self.desk,
            inbound: self.inbound,
            text,
            written: text,
            member: self.member,
            fleet: Arc::clone(&self.fleet),
            heard,
            talk: self.talk.clone(),
            now: self.now,
            key: self.key.clone(),
            edited: None,
            instead_of: None,
            asks: None,
            also_done: Vec::new(),
            takes_back: None,
            photo_of: None,
            uncorrects: false,
            fact: None,
        }
    }

    /// Returns the voice the sender is answered in.
    pub(super) fn voice(&self) -> crate::reply::Voice<'_> {
        self.desk
            .voice_for(self.member, self.heard.language, &self.fleet, self.now)
    }

    /// Returns the state of a trailer after what this message reports on it, if it reports on it at all.
    pub(super) fn reported(&self, unit: &UnitName, settled: &Settled) -> Option<UnitState> {
        let told = || {
            settled
                .reports
                .iter()
                .filter(move |(other, ..)| other == unit)
        };
        told().next()?;
        let fresh = UnitBook::default();
        let kept = self.desk.book.unit(unit).unwrap_or(&fresh);
        Some(kept.preview(&self.member.id, told().map(|(_, at, entry)| (*at, entry))))
    }

    /// Returns the known trailers that the message names anywhere, in order.
    pub(super) fn names(&self) -> Vec<UnitName> {
        let mut named: Vec<UnitName> = Vec::new();
        let words = self
            .text
            .split(|c: char| !(c.is_alphanumeric() || c == '-'));
        let typed: Vec<UnitName> = words.map(UnitName::new).collect();
        // a word that is a trailer's name, unless it is the hour of a clock time
        let clock = when::clock_words(self.text);
        for name in self.heard.named.iter().chain(&typed) {
            if let Some(unit) = settle::known(&self.fleet, name)
                && !named.contains(unit)
                && !clock.contains(&name.as_str().to_lowercase())
            {
                named.push(unit.clone());
            }
        }
        named
    }

    /// Tells whether the message is plainly no answer to a step: an order of fire or police, a truck, work or an alarm
    /// that is asked for.
    fn is_about_another_thing(&self) -> bool {
        let asks_for = |plan: &Plan| {
            matches!(
                plan.kind,
                PlanKind::Need { .. }
                    | PlanKind::Booked { .. }
                    | PlanKind::Watch { .. }
                    | PlanKind::CheckMe { .. }
            )
        };
        self.heard.plans.iter().any(asks_for)
            || self.desk.answers.tells_of_an_order(self.text)
            || truck::is_told_of(self.desk.phrases, self.text)
            || self.desk.phrases.holds("override", "says", self.text)
    }

    /// Tells whether the message only mends an earlier one.
    pub(super) fn mends(&self) -> bool {
        self.instead_of.is_some()
    }

    /// Tells whether the message came in long after it was written.
    pub(super) fn late(&self) -> bool {
        self.inbound.received - self.inbound.at > LATE
    }
}

fn how_much(unit: &UnitName, after: Hauled) -> About {
    let unit = unit.clone();
    About::HowMuch { unit, after }
}

/// Tells whether a finding speaks of the message rather than of a trailer.
pub(super) fn of_the_message(id: FindingId) -> bool {
    id.topic() == "desk"
}
