//! What a message is taken to say, before any of it is worked through: as the reader hears it, then as what is open with
//! its sender makes of it.

use chrono::{DateTime, Utc};

use super::super::inbound::Inbound;
use super::super::joined::Joined;
use super::super::others::called;
use super::super::phrases::{is_marked, plain};
use super::super::{
    Desk, ahead, alarm, answer, assign, crew, days, errand, hazard, incident, joined, orders,
    relay, settle, sites, standing, truck, walk,
};
use super::hear::{add_dangers, dangers_in};
use super::{also, asked, bare, pumped_after};
use crate::dialogue::{About, Hauled, Talk};
use crate::fleet::{CrewMember, Fleet, Role};
use crate::heard::{Ask, Command, CommandName, Entry, Event, Fault, Heard, UnitName};

/// A message of one of the crew, as it came.
pub(super) struct Came<'a> {
    pub(super) desk: &'a Desk,
    pub(super) inbound: &'a Inbound,
    pub(super) member: &'a CrewMember,
    pub(super) fleet: &'a Fleet,
    pub(super) text: &'a str,
}

/// A message as far as it is read, with what is open with its sender.
#[derive(Clone, Copy)]
pub(in crate::desk) struct Texted<'a> {
    pub(in crate::desk) desk: &'a Desk,
    pub(in crate::desk) fleet: &'a Fleet,
    pub(in crate::desk) talk: &'a Talk,
    pub(in crate::desk) heard: &'a Heard,
    /// Who wrote it.
    pub(in crate::desk) who: &'a str,
    pub(in crate::desk) text: &'a str,
    /// When it was written.
    pub(in crate::desk) at: DateTime<Utc>,
}

/// What it is taken to say.
pub(super) struct Meaning {
    pub(super) heard: Heard,
    /// The words that were read in its place, where it only completes what was said or asked before.
    pub(super) whole: Option<String>,
    /// What is open with the sender, without the question that it answered.
    pub(super) talk: Talk,
    /// The question that it raises before anything else does.
    pub(super) asks: Option<About>,
    /// Further tasks that it calls done.
    pub(super) also_done: Vec<u32>,
    /// Further orders that it gives, and words of it that are none which can be obeyed beside them.
    pub(super) also_ordered: Vec<Command>,
    pub(super) left: Vec<String>,
    /// What it says of an incident whose facts are being asked.
    pub(super) fact: Option<incident::Said>,
    /// The site, by id, by whose name it tells which trailer it means.
    pub(super) site: Option<String>,
    /// The site, by id, that a danger is told of beside a trailer which stands at another.
    pub(super) elsewhere: Option<String>,
}

impl Meaning {
    /// Reads a message; `scanned` are the words that a scanned sticker completed.
    pub(super) fn of(came: &Came<'_>, scanned: Option<String>) -> Meaning {
        match came.joined().filter(|_| scanned.is_none()) {
            Some(joined) => Meaning::of_several(came, joined),
            None => Meaning::of_one(came, scanned),
        }
    }

    /// Reads a message that gives several orders: its head as a message, and the orders beside it.
    fn of_several(came: &Came<'_>, joined: Joined) -> Meaning {
        let head = Came {
            text: &joined.head,
            ..*came
        };
        let mut meaning = Meaning::of_one(&head, None);
        meaning.also_ordered.extend(joined.orders);
        let mut done = joined.done.into_iter();
        if meaning.heard.ask.is_none() {
            meaning.heard.ask = done.next().map(|task| Ask::Done { task });
        }
        match meaning.heard.ask {
            Some(Ask::Done { .. }) => meaning.also_done.extend(done),
            _ => meaning.left.extend(done.map(|id| id.to_string())),
        }
        // "juno takes 12 to the yard and tell abel to wait": the first half says nothing that is known
        let heard = &meaning.heard;
        let silent = heard.ask.is_none()
            && heard.command.is_none()
            && heard.plans.is_empty()
            && heard.answer.is_none()
            && !heard.named.is_empty();
        let unread = heard.unclear.is_empty() && heard.set_aside.is_empty();
        if joined.plain && silent && unread && heard.entries.iter().all(Entry::is_empty) {
            meaning.left.insert(0, joined.head.clone());
        }
        meaning.left.extend(joined.left);
        meaning.whole.get_or_insert(joined.head);
        meaning
    }

    fn of_one(came: &Came<'_>, scanned: Option<String>) -> Meaning {
        let told = came.perceived().or_else(|| {
            let (phrases, fleet) = (came.desk.phrases, came.fleet);
            errand::as_need(phrases, fleet, came.member, came.text)
        });
        let mut heard = came.hear(told.as_deref().unwrap_or(came.text));
        // "nadia 12 waste 7/8": whoever is spoken to, it is a report
        if told.is_none() && !heard.unclear.is_empty() && came.speaks_to_the_dispatcher() {
            let said = came.hear(relay::words_of(came.desk.phrases, came.fleet, came.text));
            if said.unclear.is_empty() && said.entries.iter().any(|entry| !entry.is_empty()) {
                heard = said;
            }
        }
        // "i mean waste" answers the question which was meant
        let talk = came.desk.book.talk(&came.member.id);
        let asked = talk.is_some_and(|talk| talk.question_at(came.inbound.at).is_some());
        if asked
            && heard.answer.is_none()
            && heard.entries.is_empty()
            && let Some(rest) = came.desk.phrases.after("mend", "opens", came.text.trim())
        {
            heard.answer = came.hear(rest).answer;
        }
        let order = ordered_by_task(came, &heard).or_else(|| noted(came));
        let mut meaning = Meaning {
            heard: order.unwrap_or(heard),
            whole: told,
            talk: talk.cloned().unwrap_or_default(),
            asks: None,
            also_done: Vec::new(),
            also_ordered: Vec::new(),
            left: Vec::new(),
            fact: None,
            site: None,
            elsewhere: None,
        };
        if meaning.whole.is_none() {
            meaning.complete(came, scanned);
        }
        // "cuáles están cerradas" reports none closed
        if answer::asks_which(came.desk.phrases, came.text) {
            meaning.heard = nothing_in(&meaning.heard);
        }
        if asks_after_all(came, &meaning.heard) || asks_after_a_day(came, &meaning) {
            meaning.heard = Heard {
                ask: Some(Ask::Digest),
                ..nothing_in(&meaning.heard)
            };
        }
        meaning.spell_out(came);
        meaning.take_as_order(came);
        meaning.also_done = meaning.further_done(came);
        meaning.take_as_fact(came);
        meaning.keep_dangers(came);
        meaning.go_back_to(came);
        let text = meaning.whole.as_deref().unwrap_or(came.text);
        let danger = dangers_in(&meaning.heard) || hazard::is_told_in(text);
        if danger {
            meaning.take_unit_mended(came);
        }
        meaning.take_unit_at_site(came, danger);
        meaning
    }

    /// "Ok back to 10 light": the check on that trailer goes on, and nothing is told to be back.
    fn go_back_to(&mut self, came: &Came<'_>) {
        let phrases = came.desk.phrases;
        let Some(rest) = phrases.after("resume", "opens", came.text.trim()) else {
            return;
        };
        let rest = phrases.after("resume", "article", rest).unwrap_or(rest);
        let first = rest.split_whitespace().next().unwrap_or_default();
        let name = UnitName::new(first.trim_end_matches([',', '.', ':', '!', 's']));
        let Some(unit) = settle::known(came.fleet, &name) else {
            return;
        };
        let checks = &mut self.talk.checks;
        let Some(at) = checks.iter().rposition(|check| check.unit == *unit) else {
            return;
        };
        if dangers_in(&self.heard) {
            return;
        }
        let check = checks.remove(at);
        checks.push(check);
        self.talk.unit = Some((unit.clone(), came.inbound.at));
        self.talk.question = None;
        self.heard = nothing_in(&self.heard);
        self.whole = phrases.each("resume", "asks").next().map(str::to_owned);
    }

    /// Keeps the dangers that are told inside an order ("tell nadia i smell gas at 12"): it is obeyed, and they are heard.
    fn keep_dangers(&mut self, came: &Came<'_>) {
        let Some(order) = &self.heard.command else {
            return;
        };
        // who is hurt in an incident is asked by itself
        let of_people = match order.name {
            CommandName::Tell | CommandName::Note | CommandName::Errand => true,
            CommandName::Incident => false,
            _ => return,
        };
        let told = came.hear(relay::words_of(came.desk.phrases, came.fleet, &order.rest));
        // what one of the crew has passed on of a trailer that they name is their report all the same
        let asks = came.desk.phrases.after("tell", "asking", came.text.trim());
        let reports = order.name == CommandName::Tell
            && came.member.role != Role::Dispatcher
            && told.ask.is_none()
            && asks.is_none();
        let help = came.desk.answers.says("help", "called", &order.rest)
            || came.desk.answers.says("help", "here", &order.rest);
        // a dispatcher's word that help comes tells of nobody else who is hurt
        let of_help = help && came.member.role == Role::Dispatcher;
        if reports {
            let named = |entry: &&Entry| {
                let name = entry.unit.as_ref();
                name.is_some_and(|name| settle::known(came.fleet, name).is_some())
            };
            let entries = told.entries.iter().filter(named).cloned();
            self.heard.entries.extend(entries);
            self.heard.unclear.extend(told.unclear);
        }
        add_dangers(&mut self.heard, told.entries, |fault| {
            Fault::DANGERS.contains(fault)
                && (of_people || fault.stays_in_its_place())
                && !(of_help && fault.harms_a_person())
        });
    }

    /// Tells whether it opens an incident or tells one of its facts.
    pub(super) fn is_of_an_incident(&self) -> bool {
        self.fact.is_some() || incident::is_one(&self.heard)
    }

    fn texted<'a>(&'a self, came: &Came<'a>) -> Texted<'a> {
        Texted {
            desk: came.desk,
            fleet: came.fleet,
            talk: &self.talk,
            heard: &self.heard,
            who: &came.member.id,
            text: came.text,
            at: came.inbound.at,
        }
    }

    /// Reads a bare answer as the message that waits for it, its trailer or its value, and a bare time or level as told of
    /// the truck, the low or the reading that was spoken of last.
    fn complete(&mut self, came: &Came<'_>, scanned: Option<String>) {
        let asked = self.talk.question_at(came.inbound.at);
        if let Some(About::HowMuch { unit, .. }) = asked.map(|asked| &asked.about)
            && truck::may_be_a_trailer(came.fleet, came.text)
        {
            self.asks = Some(About::HowMuch {
                unit: unit.clone(),
                after: Hauled::Number,
            });
            self.heard = nothing_in(&self.heard);
            return;
        }
        let completed = || {
            let about = (&asked?.about, came.inbound.at);
            // an order is no reason for the one before it
            let reason = matches!(
                about.0,
                About::OverrideWhy { .. } | About::ReleaseWhy { .. } | About::ReleaseSure { .. }
            );
            if reason && came.order().is_some() {
                return None;
            }
            bare::completed(came.desk, came.fleet, &self.heard, came.text, about)
        };
        let spelled = || {
            let message = self.texted(came);
            if came.inbound.replaces.is_some() {
                return None;
            }
            ahead::low_spelled_out(came.desk, came.member, came.text, came.inbound.at)
                .or_else(|| truck::spelled_out(&message))
                .or_else(|| pumped_after::spelled_out(&message))
                .or_else(|| asked::level(&message))
        };
        if let Some(whole) = scanned.or_else(completed).or_else(spelled) {
            let language = self.heard.language.or(self.talk.language);
            self.heard = came.hear(&whole);
            self.heard.language = language.or(self.heard.language);
            self.talk.question = None;
            self.whole = Some(whole);
        } else if came.inbound.replaces.is_none()
            && let Some(entries) = also::told(&self.texted(came))
                .or_else(|| also::of_both(&self.texted(came), |text| came.hear(text)))
        {
            self.heard = Heard {
                named: entries
                    .iter()
                    .filter_map(|entry| entry.unit.clone())
                    .collect(),
                entries,
                ..nothing_in(&self.heard)
            };
        } else if came.inbound.replaces.is_none() {
            let more = also::same_as(&self.texted(came));
            let named = more.iter().filter_map(|entry| entry.unit.clone());
            self.heard.named.extend(named);
            self.heard.entries.extend(more);
        }
    }

    /// Spells out what a word or two stand for: "truck left, 380 gal", "water 52" while a trailer is being set up.
    fn spell_out(&mut self, came: &Came<'_>) {
        if self.whole.is_some() || came.inbound.replaces.is_some() {
            return;
        }
        let message = self.texted(came);
        let spelled = match truck::work_told(&message) {
            Some(truck::Work::Pumped(report)) => Some(report),
            Some(truck::Work::OneOf(about)) => {
                self.asks = Some(*about);
                self.heard = nothing_in(&self.heard);
                None
            }
            None => truck::loads_told(&message).or_else(|| walk::written_out(&message)),
        };
        if let Some(spelled) = spelled {
            let language = self.heard.language;
            let was = std::mem::take(&mut self.heard);
            self.heard = came.hear(&spelled);
            self.heard.language = language.or(self.heard.language);
            self.keep_beside(was);
            self.whole = Some(spelled);
        }
    }

    /// Keeps what was told beside words that were spelled out: "9 closed, truck took 240 gal".
    fn keep_beside(&mut self, was: Heard) {
        const BESIDE: &[Event] = &[
            Event::Closed,
            Event::InService,
            Event::WaterOff,
            Event::PowerOff,
            Event::FreshFilled,
            Event::FreshDrained,
            Event::Restocked,
            Event::Cleaned,
        ];
        let [entry] = self.heard.entries.as_mut_slice() else {
            return;
        };
        let same = |other: &&Entry| other.unit.is_none() || other.unit == entry.unit;
        let told: Vec<Event> = was
            .entries
            .iter()
            .filter(same)
            .flat_map(|other| other.events.iter().copied())
            .filter(|event| BESIDE.contains(event) && !entry.events.contains(event))
            .collect();
        entry.events.extend(told);
    }

    /// Takes orders about the crew, incidents, tasks and word to others, which say nothing else.
    fn take_as_order(&mut self, came: &Came<'_>) {
        // "move 16 to ice harp green" moves no task
        let moved = self.heard.command.as_ref();
        let moved = moved.filter(|order| order.name == CommandName::Move);
        if moved.is_some_and(|order| sites::named_in(came.fleet, &order.rest).is_some()) {
            self.heard = nothing_in(&self.heard);
        }
        if self.whole.is_none() && came.inbound.replaces.is_none() {
            let mut orders = orders::told(&self.texted(came)).into_iter();
            if let Some(first) = orders.next() {
                self.heard = ordering(first, &self.heard);
                self.also_ordered = orders.collect();
                return;
            }
        }
        if let Some(order) = self.ordered_everywhere(came) {
            self.heard = ordering(order, &self.heard);
            return;
        }
        let whole = self.whole.as_deref();
        let order = whole
            .and_then(|whole| incident::order(came.desk.phrases, whole))
            .or_else(|| alarm::noted(came.desk, came.member, &self.texted(came)))
            .or_else(|| came.order())
            .or_else(|| assign::take_it(&self.texted(came)))
            .or_else(|| assign::sends(&self.texted(came)))
            .or_else(|| relay::sent_somewhere(&self.texted(came), came.fleet, came.member.role))
            .or_else(|| match self.whole {
                None => relay::for_the_dispatcher(&self.texted(came), came.fleet, came.member.role),
                Some(_) => None,
            });
        if let Some(order) = order {
            self.heard = ordering(order, &self.heard);
        }
    }

    /// Reads "heaters on everywhere" of a dispatcher as words for all the crew: it is reported of no trailer.
    fn ordered_everywhere(&self, came: &Came<'_>) -> Option<Command> {
        let phrases = came.desk.phrases;
        let heard = &self.heard;
        let plain = heard.command.is_none() && heard.ask.is_none() && !is_marked(came.text);
        let unnamed = heard.named.is_empty() && self.whole.is_none();
        let dispatcher = came.member.role == Role::Dispatcher;
        let low = phrases.after("weather", "low", came.text).is_some();
        let all = phrases.each("tell", "all").next()?;
        let says = phrases.holds("whole-fleet", "everywhere", came.text);
        (dispatcher && plain && unnamed && says && !low && !dangers_in(heard)).then(|| Command {
            name: CommandName::Tell,
            task: None,
            rest: format!("{all} {}", came.text.trim()),
        })
    }

    /// Reads the further tasks of "done 4 and 6", which then says nothing else.
    fn further_done(&mut self, came: &Came<'_>) -> Vec<u32> {
        let phrases = came.desk.phrases;
        let told = orders::done(&self.texted(came));
        let heard = &mut self.heard;
        if let Some([first, further @ ..]) = told.as_deref() {
            *heard = Heard {
                ask: Some(Ask::Done { task: *first }),
                ..nothing_in(heard)
            };
            return further.to_vec();
        }
        let Some(Ask::Done { task }) = heard.ask else {
            return Vec::new();
        };
        let folded = plain(came.text);
        let first = task.to_string();
        let mut words = folded.split(' ').skip_while(|word| *word != first);
        words.next();
        let rest: Vec<&str> = words
            .filter(|word| !phrases.is("tasks", "between", word))
            .collect();
        let ids: Option<Vec<u32>> = rest.iter().map(|word| word.parse().ok()).collect();
        let mut ids = ids.unwrap_or_default();
        ids.retain(|id| *id != task);
        if !ids.is_empty() {
            *heard = Heard {
                ask: heard.ask.take(),
                ..nothing_in(heard)
            };
        }
        ids
    }

    /// Takes the answer to a fact of an incident: only a danger in it is read as anything else.
    fn take_as_fact(&mut self, came: &Came<'_>) {
        self.fact = incident::said(
            came.desk,
            came.fleet,
            came.inbound,
            came.member,
            &self.talk,
            &self.heard,
            came.text,
        );
        if let Some(said) = &self.fact {
            self.heard = Heard {
                entries: said.danger().into_iter().collect(),
                ..nothing_in(&self.heard)
            };
            self.talk.question = None;
        }
    }
}

impl Came<'_> {
    /// Reads the orders of a message that gives several; none while a fact of an incident is asked, whose words are kept.
    fn joined(&self) -> Option<Joined> {
        let nothing = Heard::default();
        let talk = self
            .desk
            .book
            .talk(&self.member.id)
            .cloned()
            .unwrap_or_default();
        let asked = talk.question_at(self.inbound.at).map(|open| &open.about);
        if matches!(asked, Some(About::IncidentFact { .. }))
            || self.inbound.replaces.is_some()
            || self.errand().is_some()
        {
            return None;
        }
        let came = Texted {
            desk: self.desk,
            fleet: self.fleet,
            talk: &talk,
            heard: &nothing,
            who: &self.member.id,
            text: self.text,
            at: self.inbound.at,
        };
        joined::told(&came, self.member.role, |part| self.hear(part))
    }

    /// Reads an order about the crew, incidents, tasks or word to others that the reader takes for something else.
    fn order(&self) -> Option<Command> {
        let (phrases, fleet, text) = (self.desk.phrases, self.fleet, self.text);
        crew::order(phrases, text)
            .or_else(|| incident::order(phrases, text))
            .or_else(|| standing::order(phrases, fleet, text))
            .or_else(|| self.errand())
            .or_else(|| assign::order(phrases, fleet, text))
            .or_else(|| relay::order(phrases, fleet, text))
    }

    /// Reads a task in the sender's own words.
    fn errand(&self) -> Option<Command> {
        let (phrases, fleet) = (self.desk.phrases, self.fleet);
        errand::order(phrases, fleet, self.member, self.text, self.inbound.at)
    }

    /// Tells whether one of the crew opens with the name of a dispatcher.
    fn speaks_to_the_dispatcher(&self) -> bool {
        let first = self.text.trim().split([' ', ',', ':']).next();
        let named = first.and_then(|name| called(self.fleet.crew.values(), name));
        let to_one = named.is_some_and(|member| member.role == Role::Dispatcher);
        to_one && self.member.role != Role::Dispatcher
    }
}

/// Returns a reading in the same language that says nothing.
pub(super) fn nothing_in(heard: &Heard) -> Heard {
    Heard {
        language: heard.language,
        ..Heard::default()
    }
}

/// Returns a reading in the same language that is an order and nothing else.
fn ordering(order: Command, heard: &Heard) -> Heard {
    Heard {
        ask: Some(Ask::Command { name: order.name }),
        command: Some(order),
        ..nothing_in(heard)
    }
}

/// Tells whether a dispatcher asks how things stand, or what comes first, and names no trailer: then it is of all of them.
fn asks_after_all(came: &Came<'_>, heard: &Heard) -> bool {
    let phrases = came.desk.phrases;
    let folded = plain(came.text);
    let last = folded.split(' ').next_back().unwrap_or_default();
    let only_asked = phrases.is("whole-fleet", "only-asked", last);
    came.member.role == Role::Dispatcher
        && heard.command.is_none()
        && heard.named.is_empty()
        && heard.entries.iter().all(Entry::is_empty)
        && (!only_asked || is_marked(came.text))
        && (phrases.is("whole-fleet", "asks", came.text)
            || phrases.is("whole-fleet", "status", came.text))
}

/// Tells whether a message asks what a day brings that it names by its date, or names a day and nothing else.
fn asks_after_a_day(came: &Came<'_>, meaning: &Meaning) -> bool {
    let (heard, text) = (&meaning.heard, came.text);
    if meaning.whole.is_some()
        || came.inbound.replaces.is_some()
        || heard.command.is_some()
        || !heard.entries.iter().all(Entry::is_empty)
    {
        return false;
    }
    let asks = heard.ask.is_some() || is_marked(text);
    let talk = &meaning.talk;
    let open = talk.question_at(came.inbound.at).is_some()
        || !talk.checks.is_empty()
        || talk.round.is_some();
    let phrases = came.desk.phrases;
    let at = came.inbound.at;
    if days::of_a_unit(phrases, came.fleet, text, at).is_some() {
        return true;
    }
    let day = || days::asked(phrases, text, at, came.fleet.time_zone);
    let jobs = phrases.is("day-ahead", "jobs", text);
    (asks || jobs || !open) && day().is_some()
}

/// Reads "take task 1" as "take 1", where the message is no order as it stands.
fn ordered_by_task(came: &Came<'_>, heard: &Heard) -> Option<Heard> {
    if heard.command.is_some() || heard.ask.is_some() || !heard.entries.is_empty() {
        return None;
    }
    let (verb, rest) = came.text.trim().split_once(' ')?;
    let rest = came
        .desk
        .phrases
        .after("tasks", "word", rest.trim_start())?;
    let rest = rest.trim_start_matches('#');
    let unit = UnitName::new(rest.split_whitespace().next().unwrap_or_default());
    // "quita la 7": of a trailer of that number it is no task
    let plainly = came.desk.phrases.holds("assign", "numbered", came.text);
    if !plainly && settle::known(came.fleet, &unit).is_some() {
        return None;
    }
    let heard = came.hear(&format!("{verb} {rest}"));
    let done = matches!(heard.ask, Some(Ask::Done { .. }));
    let order = heard.command.as_ref();
    let of_a_task = order.is_some_and(|order| order.task.is_some());
    (done || of_a_task).then_some(heard)
}

/// Reads "nota 12 la chapa se atora" as the order it is: elsewhere the number behind that word is a slip's.
fn noted(came: &Came<'_>) -> Option<Heard> {
    let text = came.text.trim_start();
    let rest = came.desk.phrases.after("note", "opens", text)?;
    let name = rest.split([' ', ':', ',']).next()?;
    settle::known(came.fleet, &UnitName::new(name))?;
    let order = Command {
        name: CommandName::Note,
        task: None,
        rest: rest.to_owned(),
    };
    Some(ordering(order, &came.hear(rest)))
}
