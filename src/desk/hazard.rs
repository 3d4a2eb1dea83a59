//! What somebody tells that can hurt people as it stands and is no fault of the trailer: a GFCI bypassed, sewage let out in a
//! ditch, no chocks. What they are and how crews tell them stands in `grammar/hazards.toml`.

mod near;
pub(super) mod stands;

use std::sync::LazyLock;

use chrono::TimeDelta;
use serde::Deserialize;
use serde::de::Error as _;

use near::feet_in;
pub(super) use stands::{Over, findings, is_told_in, over, tell_over, tell_strict};

use super::answer::{self, Reply};
use super::inbound::Outgoing;
use super::others::other_dispatchers;
use super::phrases::{PhraseList, Words, plain};
use super::receive::Hearing;
use super::repeat;
use super::settle::{self, Settled};
use crate::book::Stage;
use crate::dialogue::Way;
use crate::finding::{Caution, Finding, FindingId, Level, Urgency};
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

/// Finds the hazard that a message tells of, and takes out of its reports what was misread by it.
pub(super) fn take(hearing: &Hearing<'_>, settled: &mut Settled) -> Option<Told> {
    let heard = &hearing.heard;
    let only_asked = answer::asks_leave(hearing.text) && answer::is_warned_of(hearing);
    let asks = !matches!(heard.ask, None | Some(Ask::Status { .. }));
    let told_beside = answer::told_beside(hearing.text);
    let rewrites = hearing.mends() || hearing.inbound.replaces.is_some();
    if asks && told_beside.is_none() || heard.command.is_some() || hearing.fact.is_some() {
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
    let folded = plain(hearing.text);
    let words = Words::of(&folded);
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
            None => hazard.is_in(&told_beside, &beside),
        };
        is_told
            && (!asks || hazard.is_a_danger())
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
    if hazard.reports.is_empty() {
        let found = hazard.finding(told.unit.as_ref());
        reply
            .findings
            .retain(|other| !(other.id == found.id && other.unit == found.unit));
        // told a moment ago: they were told, too
        again = repeat::again(&found, &hearing.talk, hearing.now).is_some();
        reply.findings.push(found);
    }
    // what is reported by it may have words of its own
    let own = format!("site-unsafe-{}", hazard.code);
    if reply.voice.knows(&own) {
        let of_it = |finding: &&mut Finding| {
            let mut ids = hazard.reports.iter().map(|f| FindingId::of_fault(*f));
            ids.any(|id| id == finding.id) && finding.unit == told.unit
        };
        for finding in reply.findings.iter_mut().filter(of_it) {
            finding.action = own.clone().into();
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
        self.instead.is_empty() || faults.any(|fault| self.instead.contains(fault))
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
mod tests {
    use super::*;
    use crate::heard::Language;
    use crate::reply::Replies;

    fn told(text: &str) -> Option<&'static str> {
        let folded = plain(text);
        // by its words alone, whatever else was told or reported
        let alone = |hazard: &&Hazard| {
            let beside = hazard.beside.is_empty() && hazard.instead.is_empty();
            hazard.after.is_none() && beside && !hazard.crew
        };
        let mut known = known().iter().filter(alone);
        let found = known.find(|hazard| hazard.is_in(&Words::of(&folded), text));
        found.map(|hazard| hazard.code.as_str())
    }

    #[test]
    fn every_hazard_is_said_in_both_languages() {
        let replies = Replies::new();
        for hazard in known() {
            assert!(
                hazard.all.iter().all(|list| list.iter().next().is_some()),
                "{}",
                hazard.code
            );
            let mut keys = vec![format!("name-site-unsafe-{}", hazard.code)];
            if hazard.reports.is_empty() {
                keys.push(format!("site-unsafe-{}", hazard.code));
                assert!(hazard.level.is_some(), "{}", hazard.code);
            }
            for key in keys {
                for language in [Language::En, Language::Es] {
                    assert!(replies.has(language, &key), "{language}: {key}");
                }
            }
        }
    }

    #[test]
    fn a_list_that_is_named_and_not_there_is_an_error() {
        let file = "[[list]]\nname = \"fire\"\nsay = [\"flames\"]\n[[hazard]]\ncode = \"x\"\nall = [[\"odd\"]]\n";
        assert!(Hazards::parse(&format!("{file}but = [\"@fire\"]\n")).is_ok());
        let wrong = Hazards::parse(&format!("{file}but = [\"@fyre\"]\n"));
        let said = wrong.expect_err("no such list").to_string();
        assert!(said.contains("fyre"), "{said}");
    }

    #[test]
    fn what_is_denied_mended_or_asked_is_no_hazard() {
        for (text, wanted) in [
            ("12 no chocks on the truck", Some("no-chocks")),
            ("used 2 rocks", Some("no-chocks")),
            ("12 only chocked one side", Some("no-chocks")),
            ("la 12 nomás calcé de un lado", Some("no-chocks")),
            ("16 chocked left side", Some("no-chocks")),
            ("12 only chocked the uphill wheels", Some("no-chocks")),
            ("12 calzada solo de un lado", Some("no-chocks")),
            ("12 no ay trancas", Some("no-chocks")),
            ("12 3 of 4 chocks froze", Some("no-chocks")),
            ("12 chocked left and right side", None),
            ("open neutral at 12", Some("open-neutral")),
            ("12 lights dim then bright", Some("open-neutral")),
            ("neutro abierto en la 12", Some("open-neutral")),
            ("truck is in neutral", None),
            ("chocks in the truck", None),
            ("12 dumped it in the ditch", Some("dumped")),
            ("tiramos las negras en la cuneta", Some("dumped")),
            ("12 dumped at the dump station", None),
            ("should we dump in the ditch", None),
            (
                "12 backfed from the stove plug with a male to male cord",
                Some("backfeed"),
            ),
            (
                "12 filling the gen while its running",
                Some("refuel-running"),
            ),
            ("filled the generator, its not running", None),
            ("12 used a cheater plug", Some("bypassed")),
            ("took the cheater off", None),
            ("plugged the 12 into a power strip", Some("power-strip")),
            ("conecté la 12 a una regleta", Some("power-strip")),
            ("took the power strip out on 12", None),
            ("12 breaker is taped on", Some("breaker-held")),
            ("genny 5 ft from the door on 12", Some("generator-near")),
            ("planta a 3 metros de la puerta", Some("generator-near")),
            ("genny 25 ft from the door on 12", None),
            (
                "12 propane heater in the room to thaw pipes",
                Some("fuel-heater"),
            ),
            ("cord is running thru a puddle, ok?", Some("cord-in-water")),
            (
                "some guy put a propane heater in the ladies room of 23",
                Some("fuel-heater"),
            ),
            (
                "pusieron un calentador de propano adentro de la 6",
                Some("fuel-heater"),
            ),
            ("propane heater comes in 10 minutes", None),
            (
                "vendor put his genny right behind 23, 5 ft from the ladies door",
                Some("generator-near"),
            ),
            (
                "vendor put his generator right behind 23",
                Some("generator-behind"),
            ),
            ("genny right behind 23, 30 ft from the door", None),
            (
                "10 generator is running right at the door",
                Some("generator-at-door"),
            ),
            (
                "10 exhaust from a truck idling at the door",
                Some("engine-at-door"),
            ),
            ("el humo del generador se mete a la 6", Some("exhaust-in")),
            ("se me soltó la 6 en la carretera", Some("road-loose")),
            ("la 6 se me zafó", Some("came-off")),
            ("se me soltó la manguera de la 6", None),
            ("12 came off the hitch on the highway", Some("road-loose")),
            ("found a needle on the floor of 10 mens", Some("needle")),
            ("me piqué con una jeringa en la 6", Some("needle-stick")),
            ("12 gauge needle is stuck", None),
            ("se quemó la clavija de la 6", Some("plug-hot")),
            ("me quemé con la clavija de la 6", Some("burnt-by-plug")),
            ("outlet by the sink in 23 is warm", Some("plug-hot")),
            ("12 water is hot at the outlet", None),
            ("12 handrail bites me when its wet", Some("bites")),
            ("12 rolled a foot", Some("rolled")),
            ("rolled up the cord", None),
            ("it moved a bit when i unhitched it", Some("rolled")),
            ("se movió tantito cuando la desenganché", Some("rolled")),
            ("chocks are still in", None),
            ("no, chocks still in", None),
            ("12 lug nut loose on left wheel", Some("wheel-loose")),
            ("wheel wobbles on 12", Some("wheel-loose")),
            ("a la 6 le falta un birlo", Some("wheel-loose")),
            ("un birlo flojo en la 6", Some("wheel-loose")),
            ("lug nuts checked, none loose", None),
            ("4 neutral is loose", Some("open-neutral")),
            ("el neutro está suelto en la 12", Some("open-neutral")),
            ("truck is in neutral, brake is off", None),
            ("lights dim then bright on 4", Some("open-neutral")),
            ("too bright to see the lights", None),
            ("12 on the road, sliding", Some("sliding")),
            ("12 sliding door is stuck", None),
            ("12 slid, no, it is not sliding", None),
            ("truck slid in the ditch with 12", Some("wreck")),
            ("12 hose is in the ditch", None),
            ("tuve un choque con la 12", Some("wreck")),
            ("choque eléctrico en la 12", None),
            ("saw a wreck, traffic is bad", None),
            ("la 12 va coleando", Some("swaying")),
            ("la 12 ya no va coleando", None),
            ("falta el pasador en la 16", Some("hitch-pin")),
            ("falta el pasador de la puerta", None),
            (
                "guy collapsed next to the open manway, rotten egg smell",
                Some("gas-collapse"),
            ),
            ("hose collapsed by the waste tank", None),
            ("put the torch on the hose", Some("thaw-heat")),
            ("wheel chock is loose", None),
            ("fingers are white, not sure if bad", Some("frostbite")),
            (
                "cant feel my fingers, nobody here to ask",
                Some("frostbite"),
            ),
            (
                "numb before, fingers are white now, was in the paint",
                Some("frostbite"),
            ),
            (
                "no siento los dedos, no se si se congelaron",
                Some("frostbite"),
            ),
            ("no frostbite on anybody", None),
            (
                "kid and a dog locked in the stall, not answering",
                Some("trapped"),
            ),
            (
                "child trapped in there, its quiet, nobody has the key",
                Some("trapped"),
            ),
            ("lady locked in, she got out, was not answering", None),
            ("co alarm going off, a guy blacked out", None),
            ("co detector beeping and shes puking", None),
            ("co alarm went off, hes confused", None),
            ("co alarm going off, cant wake him", None),
            ("suena la alarma de co y no despierta", None),
            ("co alarm going off, all outside", Some("co-alarm")),
            ("going into the tank on 12 for a phone", Some("tank-entry")),
            ("voy a meterme al tanque por el celular", Some("tank-entry")),
            ("hose is going into the fresh tank of 12", None),
            ("under 12, its only on the jack", Some("under-jack")),
            (
                "me metí abajo del remolque nomás con el gato",
                Some("under-jack"),
            ),
            ("wood under 12, tongue is on the jack", None),
            ("put foil in the fuse on 12", Some("fuse-wrong")),
            ("le metí un fusible más grande", Some("fuse-wrong")),
            ("12 blew a fuse, can i use a bigger one", None),
            ("gfci on 12 kept popping so i bypassed it", Some("bypassed")),
            ("puentié el gfci de la 6", Some("bypassed")),
            ("thawing the hose w a heat gun", Some("thaw-heat")),
            (
                "estoy descongelando la manguera con soplete",
                Some("thaw-heat"),
            ),
            ("hose on 12 is frozen, no torch here", None),
            (
                "23 water heater spitting at relief valve",
                Some("relief-valve"),
            ),
            (
                "la válvula de alivio de la 6 está escupiendo",
                Some("relief-valve"),
            ),
            (
                "12 space heater in mens, extension cord",
                Some("space-heater"),
            ),
            (
                "pusieron un calentón con extensión en la 6",
                Some("space-heater"),
            ),
            ("12 touching a power line", Some("power-line")),
            ("hit a power line with 12", Some("power-line")),
            ("wire down on 12", Some("power-line")),
            ("la 12 toca un cable de alta", Some("power-line")),
            ("se cayo el cable de luz sobre la 12", Some("power-line")),
            ("12 water line down to a drip", None),
            ("stay away from the power line by 12", None),
            ("12 trailer swaying on the highway", Some("swaying")),
            ("la 6 va coleteando en la carretera", Some("swaying")),
            ("trees swaying by 12, road is clear", None),
            ("se rompió una cadena de la 6", Some("chain-broken")),
            ("12 toilet chain broke", None),
            ("no prenden las luces de freno", Some("tow-lights-out")),
            ("sale mierda por la coladera de la 6", Some("sewage-up")),
            ("12 battery's swollen", Some("battery-gassing")),
            ("brown marks on the 12 plug", Some("plug-hot")),
            ("la 6 da cosquilla en los escalones", Some("bites")),
            ("finger pinched in the hitch of 12", Some("hurt")),
            ("juno twisted her ankle at 12", Some("hurt")),
            ("le cayó la lanza a mi compa en el pie", Some("hurt")),
            ("me duele el pecho", Some("hurt")),
            ("almost broke my wrist on 12", None),
            ("my feet hurt", None),
            ("me caes bien, la 6 lista", None),
            ("guest complains of dizziness in 12", Some("ill")),
        ] {
            assert_eq!(told(text), wanted, "{text}");
        }
    }
}
