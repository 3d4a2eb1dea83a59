//! What is said while a danger to people is open: a shock that is not felt now still stands, people who are out are no
//! trailer that leaves, and help that was called is heard.

use super::super::answer::{self, Reply};
use super::super::inbound::Outgoing;
use super::super::others::other_dispatchers;
use super::super::phrases::is_marked;
use super::super::repeat;
use super::super::settle::{self, Settled};
use super::Hearing;
use super::ends::{closing_words, tell_looked_after};
use crate::finding::{FindingId, Level};
use crate::fleet::Role;
use crate::heard::{Entry, Event, Fault, UnitName};
use crate::reply::Arg;

/// A longer message is a report or a story.
const LONGEST: usize = 12;
/// Fewer words tell of nothing new.
const TELLING: usize = 4;
/// "Ambulance is here now with her": no second casualty.
const SHORT: usize = 8;

/// What a message says of the danger that is open.
pub(super) enum Safety {
    /// A shock is not felt now.
    ShockStays(UnitName),
    /// Everybody is out.
    Out(UnitName),
    /// Help was called, or is there, for somebody who is hurt.
    Called(UnitName),
    /// The emergency line does not answer.
    Unanswered(UnitName),
    /// It is said to be on two, after it was moved from one to the other.
    Both(UnitName),
    /// Help was called, or is there, and nobody is hurt.
    Coming(UnitName),
    /// The hurt person is looked after.
    Over(UnitName),
    /// The hurt person is told to be awake, or well: nobody is said to look after them, and it stands.
    Better(UnitName),
    /// One of several who were hurt is looked after, and it is not said that all are.
    WhoElse(UnitName),
    /// It is called nothing, or to wait.
    Shrugged(UnitName),
    /// Who was made ill is looked after, and the danger stands.
    Stands(UnitName),
}

impl Hearing<'_> {
    /// Reads what is said of a danger that is open, and takes out of the reports what it does not mean.
    pub(super) fn safety(&mut self, settled: &mut Settled) -> Option<Safety> {
        if self.heard.command.is_some() || self.inbound.replaces.is_some() || self.asks_something()
        {
            return None;
        }
        self.helpers_leave(settled);
        self.ends_in_words(settled);
        let shock = self.shock_stays(settled);
        let out = self.people_out(settled);
        let helped = self.helped(settled);
        if settled.reports.is_empty() && (out.is_some() || helped.is_some()) {
            settled.from_context = None;
        }
        let said = shock.or(helped).or(out);
        said.or_else(|| self.shrugged(settled))
            .or_else(|| self.on_both(settled))
    }

    /// "No wait both": it is logged on one alone, and the other was taken back.
    fn on_both(&self, settled: &Settled) -> Option<Safety> {
        let says = self.desk.phrases.holds("both", "says", self.text);
        let long = self.text.split_whitespace().count() > SHORT;
        let else_told = !settled.reports.is_empty() || settled.homeless.is_some();
        if !says || long || else_told || !self.names().is_empty() {
            return None;
        }
        let last = self.desk.book.sent(&self.member.id).last()?;
        let moved = !last.corrects.is_empty();
        let unit = self.unit_meant()?;
        (moved && !self.dangers_on(&unit).is_empty()).then_some(Safety::Both(unit))
    }

    /// "Prob nothing", "the tech can look tomorrow": not while it can kill somebody.
    fn shrugged(&self, settled: &Settled) -> Option<Safety> {
        let says = |list| self.desk.answers.says("people", list, self.text);
        let long = self.text.split_whitespace().count() > LONGEST;
        if long || !says("shrug") || !settled.reports.is_empty() {
            return None;
        }
        let unit = self.unit_meant()?;
        let open = Fault::DANGERS.iter().any(|fault| self.has(&unit, *fault));
        open.then_some(Safety::Shrugged(unit))
    }

    /// "Ambulance left": no trailer goes by that.
    fn helpers_leave(&self, settled: &mut Settled) {
        let says = |list| self.desk.answers.says(list, "left", self.text);
        if !says("help") || self.desk.answers.says("people", "tows", self.text) {
            return;
        }
        for (.., entry) in &mut settled.reports {
            entry.events.retain(|event| *event != Event::Left);
            if self.says_no_more_than_help() {
                entry.faults.retain(|fault| *fault != Fault::PersonHurt);
            }
        }
        settled.reports.retain(|(.., entry)| !entry.is_empty());
        if settled.reports.is_empty() {
            settled.from_context = None;
        }
    }

    /// Tells whether a message is so short that beside its word of help nobody else is told to be hurt.
    fn says_no_more_than_help(&self) -> bool {
        self.text.split_whitespace().count() <= SHORT
    }

    /// "Can I leave it on", "is it ok to turn the fan on": beside a danger the answer is no. Returns its trailer and what is
    /// open there.
    pub(super) fn asks_leave_beside_it(&self) -> Option<(UnitName, Vec<Fault>)> {
        let says = |list| self.desk.answers.says("people", list, self.text);
        // "hes ok now" is told of a person, and asks nothing
        let answers = &self.desk.answers;
        let lists = [("help", "over"), ("help", "better"), ("ends", "well")];
        let well = lists
            .iter()
            .any(|(of, list)| answers.says(of, list, self.text));
        let of_a_person = well && !answer::sounds_like_a_question(self.text);
        let wants = says("goon") || says("may") && says("again") || says("overyet") && !of_a_person;
        if !wants || says("tows") || self.heard.command.is_some() {
            return None;
        }
        let unit = self.unit_meant()?;
        let open = self.dangers_on(&unit);
        (!open.is_empty()).then_some((unit, open))
    }

    pub(in crate::desk) fn asks_something(&self) -> bool {
        self.heard.ask.is_some() || is_marked(self.text)
    }

    /// Keeps a shock that is merely not felt now: only who tested it can end it.
    fn shock_stays(&self, settled: &mut Settled) -> Option<Safety> {
        let says = |list| self.desk.answers.says("tingle", list, self.text);
        let tested = says("who") && says("clears");
        let stands = |unit: &UnitName| self.has(unit, Fault::Shock);
        let mut stays = None;
        settled.amend_all(|unit, entry| {
            if stands(unit) && !tested && says("gone") {
                entry.cleared.retain(|fault| *fault != Fault::Shock);
                entry.faults.retain(|fault| *fault != Fault::Shock);
                stays = Some(unit.clone());
            }
        });
        let last = || self.unit_meant().filter(|unit| stands(unit));
        let told = stays.or_else(|| last().filter(|_| says("gone") && !tested))?;
        Some(Safety::ShockStays(told))
    }

    /// "We all left the trailer": nothing goes on the road by that, least of all beside a danger.
    fn people_out(&mut self, settled: &mut Settled) -> Option<Safety> {
        let says = |list| self.desk.answers.says("people", list, self.text);
        if !says("out") || says("tows") {
            return None;
        }
        let reported = settled.reports.first().map(|(unit, ..)| unit.clone());
        let unit = reported.or_else(|| self.unit_meant())?;
        let told = |fault: &Fault| {
            let mut reports = settled.reports.iter();
            reports.any(|(.., entry)| entry.faults.contains(fault))
        };
        let stands = |fault: &Fault| self.has(&unit, *fault);
        let mut dangers = Fault::DANGERS.iter();
        let open = dangers.any(|fault| stands(fault) || told(fault));
        // "everyone left" may be the guests of a trailer that goes; "left the trailer" is of people always
        if !open && !says("rig") {
            return None;
        }
        settled.amend_all(|_, entry| entry.events.retain(|event| *event != Event::Left));
        if settled.reports.is_empty() {
            settled.from_context = None;
        }
        if !open {
            return None;
        }
        self.without_emergency_number();
        // a check that is open asks on by itself
        let checked = self.talk.checks.iter().any(|check| check.unit == unit);
        (!checked && settled.reports.is_empty()).then_some(Safety::Out(unit))
    }

    /// Help that was called for somebody who is hurt, is there, or is needed no more.
    fn helped(&mut self, settled: &mut Settled) -> Option<Safety> {
        let says = |list| self.desk.answers.says("help", list, self.text);
        let unit = self.in_danger()?;
        if says("unanswered") && !self.dangers_on(&unit).is_empty() {
            self.without_emergency_number();
            settled.reports.clear();
            settled.homeless = None;
            settled.findings.clear();
            return Some(Safety::Unanswered(unit));
        }
        let hurt = [Fault::PersonHurt, Fault::PersonCold];
        let hurt: Vec<Fault> = hurt.into_iter().filter(|f| self.has(&unit, *f)).collect();
        // who was made ill may be gone, the gas is not
        let ill = self.has(&unit, Fault::GasIllness);
        let danger = Fault::DANGERS.iter().any(|fault| self.has(&unit, *fault));
        let called = says("called") || says("here");
        let ended = (says("over") || says("left")) && !says("not");
        let better = !ended && says("better") && !says("not");
        let over = ended || better;
        let long = self.text.split_whitespace().count() > LONGEST;
        let cared = over && (ill || !hurt.is_empty());
        if long || !danger || !called && !cared {
            return None;
        }
        let arrives = says("here");
        let mut ours = settled.reports.iter_mut();
        for (.., entry) in ours.by_ref().filter(|(of, ..)| *of == unit) {
            entry
                .events
                .retain(|event| !(arrives && *event == Event::Arrived));
            // who is looked after, or helped, is not hurt anew
            if over || self.says_no_more_than_help() {
                let news = |fault: &Fault| *fault != Fault::PersonHurt && !hurt.contains(fault);
                entry.faults.retain(news);
            }
        }
        settled.reports.retain(|(.., entry)| !entry.is_empty());
        if let Some(entry) = settled.homeless.take() {
            // "ambulance on the way", without a trailer: of the one where the danger is
            let anew = entry.faults.iter().any(|f| *f != Fault::PersonHurt);
            if anew || !entry.events.is_empty() || !self.says_no_more_than_help() {
                settled.homeless = Some(entry);
            } else {
                settled.findings.clear();
            }
        }
        self.without_emergency_number();
        if over && !says("all") && self.times_hurt(&unit) > 1 {
            settled.amend(&unit, |entry| {
                entry.cleared.retain(|fault| !hurt.contains(fault));
            });
            return Some(Safety::WhoElse(unit));
        }
        if better && !says("all") && !hurt.is_empty() {
            settled.amend(&unit, |entry| {
                entry.cleared.retain(|fault| !hurt.contains(fault));
            });
            if settled.reports.is_empty() {
                self.heard.unclear.clear();
            }
            return Some(Safety::Better(unit));
        }
        if over && !hurt.is_empty() {
            let entry = settled.report_on(&unit, self.inbound.at);
            entry.cleared.retain(|fault| !hurt.contains(fault));
            entry.cleared.extend(hurt);
            return Some(Safety::Over(unit));
        }
        if !settled.reports.is_empty() {
            return None;
        }
        // who was ill is looked after, and what made them ill is still there
        if over && ill {
            return Some(Safety::Stands(unit));
        }
        Some(match hurt.is_empty() && (over || !ill) {
            true => Safety::Coming(unit),
            false => Safety::Called(unit),
        })
    }

    /// Counts the reports of somebody hurt since it was over on a trailer the last time: each may be of another person.
    fn times_hurt(&self, unit: &UnitName) -> usize {
        let kept = self.desk.book.unit(unit);
        let reports = kept.into_iter().flat_map(|kept| kept.reports());
        let hurt = &Fault::PersonHurt;
        reports.fold(0, |times, (.., entry)| {
            let before = if entry.cleared.contains(hurt) {
                0
            } else {
                times
            };
            before + usize::from(entry.faults.contains(hurt))
        })
    }

    /// The emergency number is no reading.
    fn without_emergency_number(&mut self) {
        let number = |text: &str| text.contains("911") || text.contains("9-1-1");
        self.heard.unclear.retain(|remark| !number(&remark.text));
    }

    pub(super) fn has(&self, unit: &UnitName, fault: Fault) -> bool {
        let kept = self.desk.book.unit(unit);
        kept.is_some_and(|kept| kept.state().has(fault))
    }

    /// Returns the trailer meant, where a danger is open on it or the message names it, else the only one that has one open:
    /// a dispatcher who called help has talked of none.
    fn in_danger(&self) -> Option<UnitName> {
        let meant = self.unit_meant();
        let named = !self.heard.named.is_empty();
        let fits = |unit: &UnitName| named || !self.dangers_on(unit).is_empty();
        if let Some(unit) = meant.filter(fits) {
            return Some(unit);
        }
        let faulty = self.desk.book.faulty_units().map(|(unit, _)| unit);
        let mut open = faulty.filter(|unit| !self.dangers_on(unit).is_empty());
        let only = open.next()?;
        open.next().is_none().then(|| only.clone())
    }

    /// Returns the trailer that the message names, else the one last talked about.
    pub(in crate::desk) fn unit_meant(&self) -> Option<UnitName> {
        let named = self.heard.named.iter();
        let mut named = named.filter_map(|name| settle::known(&self.fleet, name));
        let last = || settle::known(&self.fleet, self.talk.unit_at(self.inbound.at)?);
        named.next().or_else(last).cloned()
    }
}

/// Says what still holds where a burner or engine inside is told to be out and aired.
pub(super) fn tell_aired(settled: &Settled, reply: &mut Reply<'_>) {
    let out = |entry: &Entry| entry.cleared.contains(&Fault::GeneratorInside);
    if let Some((unit, ..)) = settled.reports.iter().find(|(.., entry)| out(entry)) {
        reply.say("burner-aired", &[("unit", unit.as_str().into())]);
    }
}

/// Passes on a message of which nothing was read while a danger is open: it may be a second one.
pub(super) fn tell_unread(hearing: &Hearing<'_>, settled: &Settled, reply: &mut Reply<'_>) {
    let answered = !reply.findings.is_empty()
        || !reply.first.is_empty()
        || !reply.lines.is_empty()
        || !reply.opening.is_empty()
        || reply.walked
        || reply.asks.is_some();
    let heard = &hearing.heard;
    let read = !settled.reports.is_empty()
        || settled.homeless.is_some()
        || heard.ask.is_some()
        || heard.command.is_some()
        || heard.answer.is_some()
        || !heard.unclear.is_empty()
        // of the danger itself nothing new is told by it
        || hearing.desk.answers.says("people", "told", hearing.text);
    let short = hearing.text.split_whitespace().count() < TELLING;
    // a dispatcher is not beside it: what they write of other things is no second danger
    let away = hearing.member.role == Role::Dispatcher;
    if answered || read || short || away || hearing.inbound.replaces.is_some() {
        return;
    }
    let stands = |unit: &UnitName, id| {
        let mut dangers = Fault::DANGERS.iter();
        dangers.any(|fault| FindingId::of_fault(*fault) == id && hearing.has(unit, *fault))
    };
    let open = repeat::still_open(&hearing.talk, hearing.now, stands);
    let Some((unit, says)) = open else { return };
    // work on another trailer goes on
    let names = hearing.names();
    if !names.is_empty() && !names.contains(unit) {
        return;
    }
    let reminder = format!("{unit}: {}", reply.voice.word(says));
    reply.lines.push(reminder);
    if hearing
        .desk
        .phrases
        .holds("withdraw", "confirms", hearing.text)
    {
        reply.say("danger-confirmed", &[]);
        return tell_dispatchers(hearing, unit, "danger-confirmed-told", reply);
    }
    let quote = reply.voice.quote(hearing.text.trim());
    reply.say("danger-unread", &[("quote", quote.into())]);
    tell_dispatchers(hearing, unit, "danger-unread-told", reply);
}

/// Tells the dispatchers what was said of the danger on a trailer.
fn tell_dispatchers(hearing: &Hearing<'_>, unit: &UnitName, key: &str, reply: &mut Reply<'_>) {
    let me = &hearing.member.id;
    for (to, voice) in other_dispatchers(hearing) {
        let args = [
            ("signal", Arg::from(voice.word("signal-danger"))),
            ("unit", unit.as_str().into()),
            ("who", voice.person(me).into_owned().into()),
            ("quote", voice.quote(hearing.text.trim()).into()),
        ];
        let text = voice.say(key, &args);
        reply
            .others
            .push(Outgoing::to(&to.id, text).of_level(Level::Warning));
    }
}

/// Answers what was said of the danger.
pub(super) fn tell(hearing: &Hearing<'_>, safety: &Safety, reply: &mut Reply<'_>) {
    // the first words come again in a line where they were said a short while ago
    let told = repeat::still_open(&hearing.talk, hearing.now, |_, _| true).is_some();
    if matches!(safety, Safety::Out(_)) && told {
        return;
    }
    if let Safety::Both(unit) = safety {
        let open = hearing.dangers_on(unit);
        let names: Vec<String> = open.iter().map(|f| reply.voice.fault(*f)).collect();
        let args = [
            ("quote", Arg::from(reply.voice.quote(hearing.text.trim()))),
            ("what", reply.voice.all_of(&names).into()),
            ("unit", unit.as_str().into()),
        ];
        reply.say("both-not-taken", &args);
        return tell_dispatchers(hearing, unit, "danger-unread-told", reply);
    }
    let (key, unit) = match safety {
        Safety::ShockStays(unit) => ("shock-stays", unit),
        Safety::Out(unit) => ("people-out", unit),
        Safety::Called(unit) => ("help-called", unit),
        Safety::Unanswered(unit) => ("help-unanswered", unit),
        Safety::Both(unit) => ("both-not-taken", unit),
        Safety::Coming(unit) => ("help-coming", unit),
        Safety::Over(unit) => ("help-over", unit),
        Safety::Better(unit) => ("help-better", unit),
        Safety::WhoElse(unit) => ("help-over-who", unit),
        Safety::Shrugged(unit) => ("danger-no-shrug", unit),
        Safety::Stands(unit) => ("help-over-stands", unit),
    };
    reply.say(key, &[("unit", unit.as_str().into())]);
    if matches!(safety, Safety::Coming(_) | Safety::Stands(_)) {
        let lines = closing_words(&reply.voice, unit, &hearing.dangers_on(unit));
        reply.lines.extend(lines);
    }
    match safety {
        Safety::Over(_) => tell_looked_after(hearing, unit, "help-over-told", reply),
        Safety::Better(_) => tell_looked_after(hearing, unit, "help-better-told", reply),
        Safety::Unanswered(_) => tell_dispatchers(hearing, unit, "help-unanswered-told", reply),
        _ => {}
    }
}
