//! What somebody tells that can hurt people as it stands and is no fault of the trailer: a GFCI bypassed, sewage let out in a
//! ditch, no chocks. What they are and how crews tell them stands in `grammar/hazards.toml`.

mod near;
pub(super) mod stands;

use std::sync::LazyLock;

use chrono::TimeDelta;
use serde::Deserialize;
use serde::de::Error as _;

use near::feet_in;
pub(super) use stands::{
    Over, findings, is_a_danger, is_said_by, is_told_in, over, tell_over, tell_strict,
};

use super::answer::{self, Reply};
use super::inbound::Outgoing;
use super::others::other_dispatchers;
use super::phrases::{PhraseList, Words, is_marked, plain};
use super::receive::Hearing;
use super::repeat;
use super::settle::{self, Settled};
use crate::book::Stage;
use crate::dialogue::Way;
use crate::finding::{Caution, Finding, FindingId, Level, Urgency};
use crate::fleet::Role;
use crate::heard::{Ask, Entry, Event, Fault, UnitName};
use crate::reply::Arg;
use crate::rules;

const HAZARDS: &str = include_str!("../../grammar/hazards.toml");
/// What was told so long ago is still what "it" means.
const LATELY: TimeDelta = TimeDelta::hours(1);

/// The hazards that are known, as the word file states them.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Hazards {
    list: Vec<List>,
    hazard: Vec<Hazard>,
}

/// Phrases that several hazards have.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct List {
    name: String,
    say: Vec<String>,
}

impl Hazards {
    /// Reads the file, and puts each list in the place of its name. Fails where a list is named that is not there.
    fn parse(text: &str) -> Result<Hazards, toml::de::Error> {
        let mut read: Hazards = toml::from_str(text)?;
        let lists = std::mem::take(&mut read.list);
        let written_out = |phrase: String| match phrase.strip_prefix('@') {
            None => Ok(vec![phrase]),
            Some(name) => {
                let named = lists.iter().find(|list| list.name == name);
                let missing = || toml::de::Error::custom(format!("no list is named {name:?}"));
                named.map(|list| list.say.clone()).ok_or_else(missing)
            }
        };
        for hazard in &mut read.hazard {
            let further = [&mut hazard.but, &mut hazard.over];
            for phrases in hazard.all.iter_mut().chain(further) {
                let short: Vec<String> = std::mem::take(phrases).into();
                let long: Result<Vec<_>, _> = short.into_iter().map(written_out).collect();
                *phrases = long?.concat().into();
            }
        }
        Ok(read)
    }
}

/// One thing that can hurt somebody.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Hazard {
    code: String,
    #[serde(default)]
    finding: Option<FindingId>,
    #[serde(default)]
    level: Option<Level>,
    #[serde(default)]
    cautions: Vec<Caution>,
    /// It is none of a trailer on the hook.
    #[serde(default)]
    loose: bool,
    /// It is one only of somebody of the crew, by name.
    #[serde(default)]
    crew: bool,
    /// It is where the truck is, and not at the site of the plan.
    #[serde(default)]
    road: bool,
    /// A message of more words says more than its phrase.
    #[serde(default)]
    longest: Option<usize>,
    /// It is left to the clock of whoever works alone, which raises an alarm of its own.
    #[serde(default, rename = "unless-alone")]
    unless_alone: bool,
    /// It is none while a danger is open on the trailer.
    #[serde(default, rename = "unless-open")]
    unless_open: bool,
    /// It is one only while one of these is open on the trailer.
    #[serde(default, rename = "while")]
    beside: Vec<Fault>,
    /// It is one only at less than this distance.
    #[serde(default)]
    under_ft: Option<f64>,
    /// It is one only for who was told of this hazard within the hour.
    #[serde(default)]
    after: Option<String>,
    /// It is none of a trailer on which one of these is open.
    #[serde(default)]
    unless: Vec<Fault>,
    /// What is reported by it is a matter of now.
    #[serde(default)]
    now: bool,
    #[serde(default)]
    reports: Vec<Fault>,
    #[serde(default)]
    drops: Vec<Event>,
    #[serde(default)]
    misread: Vec<Fault>,
    /// It is one only where the message reports one of these, for which it stands.
    #[serde(default)]
    instead: Vec<Fault>,
    all: Vec<PhraseList>,
    #[serde(default)]
    but: PhraseList,
    /// What it is called where it is told to be over.
    #[serde(default)]
    about: PhraseList,
    /// What beside that says that it is over, where it is more than that it was mended.
    #[serde(default)]
    over: PhraseList,
    /// The finding that says the same by what was read: where that stands in the reply, it is not told a second time.
    #[serde(default, rename = "said-by")]
    said_by: Option<FindingId>,
    /// A question in which it stands tells of it as well.
    #[serde(default)]
    asked: bool,
    /// Nothing but `over` ends it: who mends it is not the crew.
    #[serde(default)]
    strict: bool,
    /// What ends it once it is done.
    #[serde(default)]
    ends: Vec<Event>,
    /// It goes with the trailer to where that stands next.
    #[serde(default)]
    stays: bool,
}

/// A hazard and the trailer it is told of, where that is known.
pub(super) struct Told {
    hazard: &'static Hazard,
    unit: Option<UnitName>,
}

impl Told {
    /// Tells whether it is that somebody is hurt: a step that asks for that is answered by it.
    pub(super) fn is_of_a_person(&self) -> bool {
        let reports = &self.hazard.reports;
        !reports.is_empty() && reports.iter().all(|fault| fault.harms_a_person())
    }

    /// Tells whether nothing is to be filled: a fill that is told beside it was no wish.
    pub(super) fn forbids_filling(&self) -> bool {
        self.hazard.drops.contains(&Event::FreshFilled)
    }

    /// Tells whether no heater is to be asked for beside it.
    pub(super) fn forbids_heating(&self) -> bool {
        self.hazard.drops.contains(&Event::HeaterOn)
    }
}

fn known() -> &'static [Hazard] {
    static KNOWN: LazyLock<Hazards> =
        LazyLock::new(|| Hazards::parse(HAZARDS).expect("the built-in hazards are read by a test"));
    &KNOWN.hazard
}

/// Tells whether words tell of a hazard that is a danger to people.
pub(super) fn is_danger_in(text: &str) -> bool {
    let folded = plain(text);
    let words = Words::of(&folded);
    let mut dangers = known().iter().filter(|hazard| hazard.is_a_danger());
    dangers.any(|hazard| hazard.is_in(&words, text))
}

/// Tells whether words tell of somebody who is hurt or under a trailer: whoever then does not answer the phone is no riddle.
pub(super) fn is_of_a_body(text: &str) -> bool {
    let folded = plain(text);
    let words = Words::of(&folded);
    let of_a_body = |hazard: &&Hazard| {
        let hurt = hazard.reports == [Fault::PersonHurt] && hazard.code == "hurt";
        hurt || hazard.code == "person-under"
    };
    let mut those = known().iter().filter(of_a_body);
    those.any(|hazard| hazard.is_in(&words, text))
}

/// "Is 12 overflowing": asks how a trailer stands. Whoever is there and asks so of it by its number sees nothing of it; a
/// dispatcher is not there.
fn only_asks_of_it(hearing: &Hearing<'_>) -> bool {
    let (phrases, text) = (hearing.desk.phrases, hearing.text.trim());
    let rest = phrases.after("questions", "of-a-unit", text);
    let rest = rest.map(|rest| phrases.after("questions", "article", rest).unwrap_or(rest));
    let named = rest.and_then(|rest| rest.split([' ', '?', ',']).next());
    let named =
        named.is_some_and(|name| settle::known(&hearing.fleet, &UnitName::new(name)).is_some());
    let afar = hearing.member.role == Role::Dispatcher;
    named || afar && (is_marked(text) || answer::sounds_like_a_question(text))
}

/// Finds the hazard that a message tells of, and takes out of its reports what was misread by it.
pub(super) fn take(hearing: &Hearing<'_>, settled: &mut Settled) -> Option<Told> {
    let heard = &hearing.heard;
    let only_asked = answer::asks_leave(hearing.text) && answer::is_warned_of(hearing);
    let asks = !matches!(heard.ask, None | Some(Ask::Status { .. }));
    let told_beside = answer::told_beside(hearing.text);
    let rewrites = hearing.mends() || hearing.inbound.replaces.is_some();
    if heard.command.is_some() || hearing.fact.is_some() {
        return None;
    }
    let folded = plain(hearing.text);
    let words = Words::of(&folded);
    let even_asked = || {
        let mut those = known().iter().filter(|hazard| hazard.asked);
        those.any(|hazard| hazard.is_in(&words, hearing.text))
    };
    if asks && told_beside.is_none() && !even_asked() {
        return None;
    }
    if told_beside.is_none() && only_asks_of_it(hearing) {
        return None;
    }
    let moved = match hearing.inbound.replaces.is_none() {
        true => stands::moved(hearing, settled),
        false => None,
    };
    if let Some((hazard, unit)) = moved {
        let unit = Some(unit);
        report(hearing, settled, hazard, unit.clone());
        return Some(Told { hazard, unit });
    }
    if rewrites {
        return None;
    }
    // what is only asked about is not done, and what is told beside it is
    let beside = match only_asked || asks {
        true => told_beside.unwrap_or_default(),
        false => hearing.text.to_owned(),
    };
    let folded_beside = plain(&beside);
    let told_beside = Words::of(&folded_beside);
    let said = unit_told(hearing, settled);
    let unit = said.clone().or_else(|| unit_before(hearing));
    let told = known().iter().find(|hazard| {
        // what is asked further about a needle is of what was done
        let is_told = match hazard.after {
            Some(_) => hazard.is_in(&words, hearing.text),
            None if hazard.asked => hazard.is_in(&words, hearing.text),
            None => hazard.is_in(&told_beside, &beside),
        };
        is_told
            && (!asks || hazard.asked || hazard.is_a_danger())
            && hazard.bears(hearing, &unit)
            && !stands::is_told_over(hearing, &words, hazard, unit.as_ref())
            && hazard.stands_for(settled, unit.as_ref())
    })?;
    let mut homeless = settled.homeless.take();
    let stood_for = |fault: &Fault| told.instead.contains(fault);
    if let Some(entry) = &homeless {
        let were = entry.faults.iter().filter(|fault| stood_for(fault));
        let were: Vec<FindingId> = were.map(|fault| FindingId::of_fault(*fault)).collect();
        settled.findings.retain(|found| !were.contains(&found.id));
    }
    // what another trailer reports beside it is its own
    let reports = settled.reports.iter_mut();
    let own = reports.filter(|(of, ..)| unit.as_ref() == Some(of));
    for entry in own.map(|(.., entry)| entry).chain(&mut homeless) {
        entry
            .faults
            .retain(|fault| !told.misread.contains(fault) && !stood_for(fault));
        entry.events.retain(|event| !told.drops.contains(event));
    }
    settled.reports.retain(|(.., entry)| !entry.is_empty());
    settled.homeless = homeless.filter(|entry| !entry.is_empty());
    if told.road {
        // "tire blew at 60" names no trailer
        settled
            .findings
            .retain(|found| found.id != FindingId::DeskUnknownUnit);
    }
    report(hearing, settled, told, unit.clone());
    if said.is_none() && !settled.reports.is_empty() {
        // whoever hears of it is to know that its place is taken from before
        settled.from_context.clone_from(&unit);
    }
    Some(Told { hazard: told, unit })
}

/// Adds the faults by which a hazard is told to what the message reports; the hazard itself where it is no fault.
fn report(hearing: &Hearing<'_>, settled: &mut Settled, told: &Hazard, unit: Option<UnitName>) {
    let faults = || told.reports.iter().copied();
    // what is asked about it further on is no news
    let news = told.reports.is_empty() && told.after.is_none();
    let code = news.then(|| told.code.clone());
    if told.reports.is_empty() && code.is_none() {
        return;
    }
    let Some(unit) = unit else {
        let entry = settled.homeless.get_or_insert_with(Entry::default);
        let known = entry.faults.clone();
        let news: Vec<Fault> = faults().filter(|f| !known.contains(f)).collect();
        entry.faults.extend(&news);
        entry.hazards.extend(code);
        let first = news.into_iter().filter_map(rules::first_words);
        settled.findings.extend(first);
        return;
    };
    let entry = settled.report_on(&unit, hearing.inbound.at);
    let known = entry.faults.clone();
    entry.faults.extend(faults().filter(|f| !known.contains(f)));
    entry.hazards.extend(code);
}

/// Says what to do about it, and tells the dispatchers.
pub(super) fn tell(hearing: &Hearing<'_>, told: &Told, reply: &mut Reply<'_>) {
    let hazard = told.hazard;
    let site = told.unit.as_ref().and_then(|unit| {
        let job = hearing.fleet.job_of(unit, hearing.now, None)?;
        Some(hearing.fleet.site_of(job)?.name.clone())
    });
    let mut again = false;
    let of_it = |finding: &&Finding| finding.unit == told.unit;
    let beside: Vec<Finding> = reply.findings.iter().filter(of_it).cloned().collect();
    if hazard.is_said(&beside) {
        return;
    }
    if hazard.reports.is_empty() {
        let found = hazard.finding(told.unit.as_ref());
        reply
            .findings
            .retain(|other| !(other.id == found.id && other.unit == found.unit));
        // told a moment ago: they were told, too
        again = repeat::again(&found, &hearing.talk, hearing.now).is_some();
        reply.findings.push(found);
    }
    // on the road nobody waits for the trailer's name to hear what to do
    let unplaced = told.unit.is_none() && hazard.road && !hazard.reports.is_empty();
    if unplaced && !reply.findings.iter().any(|found| found.unit.is_none()) {
        reply.findings.push(hazard.finding(None));
    }
    // what is reported by it may have words of its own
    let own = format!("site-unsafe-{}", hazard.code);
    if reply.voice.knows(&own) {
        let of_it = |finding: &&mut Finding| {
            let mut ids = hazard.reports.iter().map(|f| FindingId::of_fault(*f));
            ids.any(|id| id == finding.id) && finding.unit == told.unit
        };
        for finding in reply.findings.iter_mut().filter(of_it) {
            let there = format!("{own}-at");
            let placed = finding.action.ends_with("-at") && reply.voice.knows(&there);
            finding.action = if placed { there } else { own.clone() }.into();
            if hazard.now {
                finding.urgency = Urgency::Now;
            }
            let more = hazard.cautions.iter().copied();
            let missing: Vec<Caution> = more.filter(|c| !finding.cautions.contains(c)).collect();
            finding.cautions.extend(missing);
            finding.level = finding.level.max(hazard.level.unwrap_or(finding.level));
        }
    }
    // an alarm of its own goes out with a danger, and with a spill that has no words but those
    let worded = reply.voice.knows(&own);
    let alarmed = reply.findings.iter().any(|finding| {
        let spill = finding.id == FindingId::WasteSpill && !worded;
        (finding.level == Level::Danger || spill) && finding.unit == told.unit
    });
    let me = &hearing.member.id;
    for (to, voice) in other_dispatchers(hearing).filter(|_| !alarmed && !again) {
        let mut args = vec![
            ("signal", voice.word("signal-warning").into()),
            ("who", voice.person(me).into_owned().into()),
            (
                "what",
                voice
                    .word(&format!("name-site-unsafe-{}", hazard.code))
                    .into(),
            ),
        ];
        let mut key = "hazard-person";
        if let Some(unit) = &told.unit {
            args.push(("unit", Arg::from(unit.as_str())));
            key = "hazard-no-site";
        }
        if let (Some(_), Some(site)) = (&told.unit, &site) {
            args.push(("site", voice.plain(site).into_owned().into()));
            key = "hazard-told";
        }
        reply
            .others
            .push(Outgoing::to(&to.id, voice.say(key, &args)).of_level(Level::Warning));
    }
}

/// Tells whether what is said of a hazard is of one on the road.
pub(super) fn is_of_the_road(says: &str) -> bool {
    let code = says.strip_prefix("site-unsafe-");
    code.is_some_and(|code| known().iter().any(|one| one.road && one.code == code))
}

/// Returns the trailer that a hazard is told of: the one named or reported on.
fn unit_told(hearing: &Hearing<'_>, settled: &Settled) -> Option<UnitName> {
    let named = hearing.heard.named.iter();
    let named = named
        .filter_map(|name| settle::known(&hearing.fleet, name))
        .next();
    let reported = settled.reports.first().map(|(unit, ..)| unit);
    named.or(reported).cloned()
}

/// Returns the trailer that was last talked about.
fn unit_before(hearing: &Hearing<'_>) -> Option<UnitName> {
    settle::known(&hearing.fleet, hearing.talk.unit_at(hearing.inbound.at)?).cloned()
}

/// Tells whether the sender was told of a hazard within the hour.
pub(super) fn told_lately(hearing: &Hearing<'_>, code: &str, unit: Option<&UnitName>) -> bool {
    let says = format!("site-unsafe-{code}");
    hearing.talk.told.iter().any(|told| {
        let of_it = told.says.split(' ').next().unwrap_or_default();
        // what was told further of it counts as well: `needle`, `needle-how`
        let rest = of_it.strip_prefix(says.as_str());
        rest.is_some_and(|rest| rest.is_empty() || rest.starts_with('-'))
            && told.unit.as_ref() == unit
            && hearing.now - told.at <= LATELY
    })
}

impl Hazard {
    fn is_a_danger(&self) -> bool {
        let mut faults = self.reports.iter();
        self.level == Some(Level::Danger) || faults.any(|fault| Fault::DANGERS.contains(fault))
    }

    fn is_in(&self, words: &Words<'_>, text: &str) -> bool {
        let near = |limit: f64| feet_in(text).is_some_and(|feet| feet < limit);
        let short = |most: usize| text.split_whitespace().count() <= most;
        self.all.iter().all(|phrases| words.hold_any(phrases))
            && !words.hold_any(&self.but)
            && self.under_ft.is_none_or(near)
            && self.longest.is_none_or(short)
    }

    /// Tells whether the message reports of this trailer what it stands for, where it stands for something.
    fn stands_for(&self, settled: &Settled, unit: Option<&UnitName>) -> bool {
        let own = settled.reports.iter().filter(|(of, ..)| unit == Some(of));
        let reports = own.map(|(.., entry)| entry);
        let mut faults = reports
            .chain(&settled.homeless)
            .flat_map(|entry| &entry.faults);
        let is_it = |fault: &Fault| self.instead.contains(fault);
        // a smell of gas is told in full already: the bad smell beside it is the same
        let gas = self.reports == [Fault::GasSmell];
        let told = |fault: &Fault| gas && *fault == Fault::GasSmell;
        self.instead.is_empty() || faults.clone().any(is_it) && !faults.any(told)
    }

    /// Tells whether it is a hazard as the trailer stands.
    fn bears(&self, hearing: &Hearing<'_>, unit: &Option<UnitName>) -> bool {
        let kept = unit.as_ref().and_then(|unit| hearing.desk.book.unit(unit));
        let state = kept.map(|kept| kept.state());
        // a trailer whose chocks are asked to come out before it leaves is on the hook, or about to be
        let asked_out = hearing.talk.round.as_ref().is_some_and(|round| {
            round.way == Way::Leaving
                && round.step == "chocks"
                && unit.as_ref().is_none_or(|unit| *unit == round.unit)
        });
        let hooked = asked_out || state.is_some_and(|state| state.stage() == Stage::Hitched);
        let open = |fault: &Fault| state.is_some_and(|state| state.has(*fault));
        let follows = |code: &String| told_lately(hearing, code, unit.as_ref());
        let named = || answer::person_named(hearing).is_some();
        let ahead = hearing.desk.book.ahead();
        let alone = || ahead.alone(&hearing.member.id).is_some();
        let not_here = self.loose && hooked
            || self.crew && !named()
            || self.unless_alone && alone()
            || self.unless_open && Fault::DANGERS.iter().any(open)
            || self.unless.iter().any(open);
        !not_here
            && (self.beside.is_empty() || self.beside.iter().any(open))
            && self.after.as_ref().is_none_or(follows)
    }
}

#[cfg(test)]
mod tests;
