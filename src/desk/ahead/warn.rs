//! Who hears of tonight's cold, and of a low that is changed or taken back: the dispatchers, and the crew of each trailer
//! that it puts at risk. What holds for several trailers is said once.

use std::collections::{BTreeMap, BTreeSet};

use super::super::answer::Reply;
use super::super::inbound::Outgoing;
use super::super::others::other_dispatchers;
use super::super::receive::Hearing;
use super::super::situate::Case;
use super::super::tick::dispatchers;
use super::super::when;
use super::weather::{Looked, look, there};
use crate::book::Weather;
use crate::finding::{Finding, Level};
use crate::fleet::{CrewMember, Role};
use crate::heard::UnitName;
use crate::quantity::Measure;
use crate::reply::{Arg, Voice};
use crate::rules::FREEZE_F;

/// Air that is within so much of what was measured before wakes nobody again, °F.
const AS_BEFORE_F: f64 = 5.0;
/// So many trailers are named in a line.
const NAMED: usize = 30;

/// How what is told stands to what was told before it.
#[derive(Clone, Copy)]
enum Since {
    /// Nothing was.
    New,
    /// It was another low, °F.
    Changed(f64),
    /// It was the same.
    Again,
}

/// Says that air above freezing is no low, and which low holds.
pub(super) fn tell_mild_air(hearing: &Hearing<'_>, weather: &Weather, reply: &mut Reply<'_>) {
    let ahead = hearing.desk.book.ahead();
    let low = ahead.weather_of_kind(false, weather.site.as_deref(), hearing.now);
    match low {
        Some(low) => {
            let args = [
                ("read", degrees(weather.low_f)),
                ("value", degrees(low.low_f)),
            ];
            reply.say("speak-air-low-holds", &args);
        }
        None => reply.say("speak-air-mild", &[("value", degrees(weather.low_f))]),
    }
}

/// Warns the dispatchers and those on site of the trailers that the cold puts at risk, in one message each.
pub(super) fn warn(hearing: &Hearing<'_>, weather: &Weather, reply: &mut Reply<'_>) {
    let ahead = hearing.desk.book.ahead();
    let told = |air| ahead.weather_of_kind(air, weather.site.as_deref(), hearing.now);
    if weather.air
        && let Some(low) = told(false).filter(|low| low.low_f <= weather.low_f)
    {
        let args = [
            ("read", degrees(weather.low_f)),
            ("value", degrees(low.low_f)),
        ];
        return reply.say("speak-air-low-holds", &args);
    }
    let was = replaced(hearing, weather);
    let since = match was.map(|was| was.low_f) {
        None => Since::New,
        Some(was) if was.round() == weather.low_f.round() => Since::Again,
        Some(_) if weather.warned_f.is_some() => Since::Again,
        Some(was) => Since::Changed(was),
    };
    let looked = look(hearing, weather);
    for (case, findings) in &looked.at_risk {
        reply.listed.extend(findings.iter().cloned());
        reply.foresee(case);
    }
    let mut told = match looked.at_risk.is_empty() {
        true => BTreeMap::new(),
        false => at_risk(hearing, &looked),
    };
    if looked.at_risk.is_empty() {
        tell_nobody_at_risk(hearing, weather, since, &looked.safe, reply);
    } else if let Some(places) = told.remove(&hearing.member.id) {
        let lines = warning(hearing, hearing.member, weather, since, &looked, &places);
        reply.lines.push(lines);
    }
    if matches!(since, Since::Again) {
        return;
    }
    // what is less cold than they were told asks nothing more of them
    let eased = matches!(since, Since::Changed(was) if weather.low_f > was);
    for (to, places) in told.iter().filter(|_| !eased) {
        let Some(member) = hearing.fleet.crew.get(to) else {
            continue;
        };
        let text = warning(hearing, member, weather, since, &looked, places);
        let letter = Outgoing::to(to, text).of_level(Level::Notice);
        reply.others.push(letter);
    }
    if let Some(was) = was {
        tell_eased(hearing, weather, was, &told, reply);
    }
}

/// Returns what was told before that this takes the place of: a low of one site takes none of all sites'.
fn replaced<'h>(hearing: &'h Hearing<'_>, weather: &Weather) -> Option<&'h Weather> {
    let told = hearing.desk.book.ahead().all_weather(hearing.now);
    let same = told.filter(|other| weather.replaces(other));
    same.max_by_key(|other| other.at)
}

/// Returns the air that was last warned of, °F, where this is much as that: it wakes nobody again.
pub(super) fn warned_before(hearing: &Hearing<'_>, weather: &Weather) -> Option<f64> {
    let was = replaced(hearing, weather).filter(|_| weather.air)?;
    let warned = was.warned_f.unwrap_or(was.low_f);
    ((warned - weather.low_f).abs() <= AS_BEFORE_F).then_some(warned)
}

/// Returns who is told of which trailers at risk, by their places: whoever is there, and every dispatcher of all.
fn at_risk(hearing: &Hearing<'_>, looked: &Looked) -> BTreeMap<String, Vec<usize>> {
    let mut told: BTreeMap<String, Vec<usize>> = BTreeMap::new();
    for (place, (case, _)) in looked.at_risk.iter().enumerate() {
        for who in there(hearing, case) {
            told.entry(who).or_default().push(place);
        }
    }
    for to in dispatchers(&hearing.fleet) {
        told.insert(to.to_owned(), (0..looked.at_risk.len()).collect());
    }
    told
}

/// Puts the warning into words for one person.
fn warning(
    hearing: &Hearing<'_>,
    member: &CrewMember,
    weather: &Weather,
    since: Since,
    looked: &Looked,
    places: &[usize],
) -> String {
    let voice = hearing
        .desk
        .voice_for(member, None, &hearing.fleet, hearing.now);
    let key = match (weather.air, since) {
        (false, Since::New) => "speak-low",
        (false, Since::Changed(_)) => "speak-low-changed",
        (false, Since::Again) => "speak-low-again",
        (true, Since::Again) => "speak-air-again",
        (true, _) => "speak-air",
    };
    let mut args = vec![
        ("value", degrees(weather.low_f)),
        ("count", places.len().into()),
    ];
    if let (false, Since::Changed(was)) = (weather.air, since) {
        args.push(("was", degrees(was)));
    }
    let head = voice.say(key, &args);
    let mut lines = vec![of_its_site(hearing, weather, head, &voice)];
    lines.extend(rows(
        places.iter().map(|place| &looked.at_risk[*place]),
        &voice,
    ));
    let dispatches = member.role == Role::Dispatcher;
    if dispatches && !looked.safe.is_empty() {
        lines.push(safe_line(&looked.safe, &voice));
    }
    lines.push(voice.word(what_to_do(hearing)));
    let cases = looked.at_risk.iter().map(|(case, _)| case);
    let untold = cases.filter(|case| there(hearing, case).is_empty());
    let untold: Vec<String> = untold.map(|case| case.unit.to_string()).collect();
    if dispatches && !untold.is_empty() {
        let args = [("names", named(&untold, &voice).into())];
        lines.push(voice.say("speak-low-untold", &args));
    }
    lines.join("\n")
}

/// Says what the cold does, a line for the trailers that it does the same to.
fn rows<'a>(
    at_risk: impl Iterator<Item = &'a (Case, Vec<Finding>)>,
    voice: &Voice<'_>,
) -> Vec<String> {
    let mut rows: Vec<(String, Vec<String>)> = Vec::new();
    for (case, findings) in at_risk {
        let names = findings.iter();
        let names: Vec<String> = names
            .map(|finding| voice.name(finding.id, finding.level))
            .collect();
        let what = voice.all_of(&names);
        let unit = case.unit.to_string();
        match rows.iter_mut().find(|(other, _)| *other == what) {
            Some((_, units)) => units.push(unit),
            None => rows.push((what, vec![unit])),
        }
    }
    let row = |(what, units): (String, Vec<String>)| {
        let args = [
            ("units", named(&units, voice).into()),
            ("what", what.into()),
        ];
        voice.say("speak-low-row", &args)
    };
    rows.into_iter().map(row).collect()
}

/// Names trailers; of very many the first, and how many more there are.
fn named(units: &[String], voice: &Voice<'_>) -> String {
    match units.len() {
        0..=NAMED => voice.all_of(units),
        of => format!("{} +{}", units[..NAMED].join(", "), of - NAMED),
    }
}

/// Returns the key of what is to be done: before dark, or at once.
pub(in super::super) fn what_to_do(hearing: &Hearing<'_>) -> &'static str {
    match when::is_light(hearing.now, hearing.fleet.time_zone) {
        true => "speak-low-do",
        false => "speak-low-do-now",
    }
}

/// Puts the site before what is said of it alone.
fn of_its_site(
    hearing: &Hearing<'_>,
    weather: &Weather,
    what: String,
    voice: &Voice<'_>,
) -> String {
    let site = weather.site.as_ref();
    match site.and_then(|site| hearing.fleet.sites.get(site)) {
        Some(site) => {
            let args = [
                ("site", Arg::from(site.name.as_str())),
                ("what", what.into()),
            ];
            voice.say("speak-low-site", &args)
        }
        None => what,
    }
}

fn tell_nobody_at_risk(
    hearing: &Hearing<'_>,
    weather: &Weather,
    since: Since,
    safe: &[String],
    reply: &mut Reply<'_>,
) {
    // no all-clear where a colder low was told of all sites, or of one of these
    let others = hearing.desk.book.ahead().all_weather(hearing.now);
    let bears = |other: &&Weather| {
        let here = other.site.is_none() || weather.site.is_none() || other.site == weather.site;
        here && !weather.replaces(other) && other.low_f <= FREEZE_F
    };
    let colder = others.filter(bears).map(|other| other.low_f);
    let colder = colder.filter(|low| *low < weather.low_f).reduce(f64::min);
    if let Some(other) = colder {
        let args = [("value", degrees(weather.low_f)), ("was", degrees(other))];
        let line = reply.voice.say("speak-low-colder-holds", &args);
        let line = of_its_site(hearing, weather, line, &reply.voice);
        return reply.lines.push(line);
    }
    let key = match (weather.low_f > FREEZE_F, weather.air) {
        (true, _) => "speak-low-mild",
        (false, false) => "speak-low-nobody",
        (false, true) => "speak-air-nobody",
    };
    let mut line = reply.voice.say(key, &[("value", degrees(weather.low_f))]);
    if let (false, Since::Changed(was)) = (weather.air, since) {
        line.push(' ');
        line.push_str(&reply.voice.say("speak-low-was", &[("was", degrees(was))]));
    }
    let line = of_its_site(hearing, weather, line, &reply.voice);
    reply.lines.push(line);
    if weather.low_f <= FREEZE_F && !safe.is_empty() {
        let line = safe_line(safe, &reply.voice);
        reply.lines.push(line);
    }
}

/// Says which trailers should come through the night.
fn safe_line(safe: &[String], voice: &Voice<'_>) -> String {
    voice.say("speak-low-safe", &[("names", named(safe, voice).into())])
}

/// Tells those who were warned by a colder low, and are not by the one that takes its place.
fn tell_eased(
    hearing: &Hearing<'_>,
    weather: &Weather,
    was: &Weather,
    told: &BTreeMap<String, Vec<usize>>,
    reply: &mut Reply<'_>,
) {
    if weather.air || weather.low_f <= was.low_f || was.low_f > FREEZE_F {
        return;
    }
    let stands = still_at_risk(hearing, weather);
    let looked = look(hearing, was);
    for (to, places) in at_risk(hearing, &looked) {
        let mut units = places.iter().map(|place| &looked.at_risk[*place].0.unit);
        let at_risk = units.any(|unit| stands.contains(unit));
        if at_risk || told.contains_key(&to) || to == hearing.member.id {
            continue;
        }
        let Some(member) = hearing.fleet.crew.get(&to) else {
            continue;
        };
        let voice = hearing
            .desk
            .voice_for(member, None, &hearing.fleet, hearing.now);
        let args = [
            ("value", degrees(weather.low_f)),
            ("was", degrees(was.low_f)),
        ];
        let letter = Outgoing::to(&to, voice.say("speak-low-eased", &args));
        reply.others.push(letter.of_level(Level::Notice));
    }
}

/// Lists the trailers that are at risk by what holds once this is told: itself, and all that it does not take the place of.
fn still_at_risk(hearing: &Hearing<'_>, weather: &Weather) -> BTreeSet<UnitName> {
    let others = hearing.desk.book.ahead().all_weather(hearing.now);
    let hold = others.filter(|other| !weather.replaces(other));
    let hold = hold.chain(std::iter::once(weather));
    let freezing = hold.filter(|told| told.low_f <= FREEZE_F);
    freezing
        .flat_map(|told| look(hearing, told).at_risk)
        .map(|(case, _)| case.unit)
        .collect()
}

/// Lists who was warned when this was told: the dispatchers, and the crew of the trailers at risk.
fn warned_by(hearing: &Hearing<'_>, weather: &Weather) -> BTreeSet<String> {
    if weather.low_f > FREEZE_F {
        return BTreeSet::new();
    }
    at_risk(hearing, &look(hearing, weather))
        .into_keys()
        .collect()
}

/// Says that weather is taken back and what holds now, to the sender and to everybody who was warned by it.
pub(in super::super) fn tell_taken_back(
    hearing: &Hearing<'_>,
    weather: &Weather,
    reply: &mut Reply<'_>,
) {
    let ahead = hearing.desk.book.ahead();
    let again = ahead.weather_again(weather, hearing.now);
    let holds = again.or_else(|| ahead.weather_without(weather, hearing.now));
    let holding = |voice: &Voice<'_>| match holds {
        Some(holds) if holds.air => {
            voice.say("weather-holds-air", &[("value", degrees(holds.low_f))])
        }
        Some(holds) => voice.say("weather-holds", &[("value", degrees(holds.low_f))]),
        None => voice.word("weather-holds-none"),
    };
    let (own, theirs) = match weather.air {
        true => ("undone-air", "air-taken-back"),
        false => ("undone-weather", "weather-taken-back"),
    };
    let back = reply.voice.say(own, &[("value", degrees(weather.low_f))]);
    let line = format!("{back} {}", holding(&reply.voice));
    reply.lines.push(line);
    // the same told twice: nothing changes for anybody
    if holds.is_some_and(|holds| holds.low_f.round() == weather.low_f.round()) {
        return;
    }
    let mut warned = warned_by(hearing, weather);
    warned.extend(other_dispatchers(hearing).map(|(to, _)| to.id.clone()));
    warned.remove(&hearing.member.id);
    let mut names = Vec::new();
    for member in warned.iter().filter_map(|to| hearing.fleet.crew.get(to)) {
        let voice = hearing
            .desk
            .voice_for(member, None, &hearing.fleet, hearing.now);
        let who = voice.person(&hearing.member.id).into_owned();
        let args = [("who", who.into()), ("value", degrees(weather.low_f))];
        let text = format!("{} {}", voice.say(theirs, &args), holding(&voice));
        let letter = Outgoing::to(&member.id, text).of_level(Level::Notice);
        reply.others.push(letter);
        names.push(member.name.clone());
    }
    if !names.is_empty() {
        let names = reply.voice.all_of(&names);
        reply.say("undone-weather-told", &[("names", names.into())]);
    }
}

fn degrees(f: f64) -> Arg<'static> {
    Arg::Number(f, Measure::DegF)
}
