//! One reply: worst first, advice before bookkeeping, at most one question.

use std::collections::{BTreeMap, HashMap, HashSet};

use chrono::{DateTime, Utc};
use chrono_tz::Tz;

use super::tasks::{TaskNote, TaskTurn};
use super::voice::{Arg, Voice};
use crate::dialogue::About;
use crate::finding::{Caution, Finding, FindingId, Level, Urgency};
use crate::fleet::Trailer;
use crate::heard::{Entry, Plan, PlanKind, ReadingKey, Remark, Taken, UnitName};

/// How many parts that were not understood are quoted; the rest are counted.
const QUOTED_PARTS: usize = 4;

/// What the desk wants said in one reply. Empty parts are left out.
#[derive(Debug, Clone, Default)]
pub struct Answer<'a> {
    /// Lines that come before everything, already in words: first words for a danger, "no signal" notes.
    pub opening: Vec<String>,
    /// How the unit was found where the message named none.
    pub context: Option<Context<'a>>,
    /// The answer to a question, already in words: it comes before all but what could kill.
    pub first: Vec<String>,
    /// What the rules say, in any order; they are told worst first.
    pub findings: Vec<&'a Finding>,
    /// Lines already in words on advice that stands unchanged.
    pub stands: Vec<String>,
    /// Lines already in words that answer what was asked: a status, a forecast, "done".
    pub lines: Vec<String>,
    /// What was logged, a trailer each.
    pub logged: Vec<Logged<'a>>,
    /// Tasks this turn touched. One that a finding asks for is told at the end of that finding, not again.
    pub tasks: Vec<TaskNote<'a>>,
    /// Spellings that were mended.
    pub taken: &'a [Taken],
    /// What was understood and not logged; only what has a text is said.
    pub set_aside: &'a [Remark],
    /// Requests and alarms that the reply answers otherwise, with a task or a line: they are not said to be set aside.
    pub answered: &'a [Plan],
    /// What was not understood.
    pub unclear: &'a [Remark],
    /// The one question.
    pub question: Option<&'a About>,
    /// The step of a guided check that waits, already in words; it gives way to the question.
    pub step: Option<&'a str>,
    /// Zones of trailers whose local times differ from the voice's.
    pub zones: BTreeMap<&'a UnitName, Tz>,
    /// True to leave out the closing line that says what to send next.
    pub without_hint: bool,
}

/// How a unit was found that the message did not name.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Context<'a> {
    /// It is the one this person last talked about.
    Last(&'a UnitName),
    /// It is the answer to what the bot asked.
    Answered(&'a UnitName),
    /// It is the only one at this person's job.
    Only(&'a UnitName),
    /// It stands at the site that the message names, by that site's name.
    AtSite(&'a UnitName, &'a str),
}

/// What was logged for one trailer.
#[derive(Debug, Clone, Copy)]
pub struct Logged<'a> {
    /// The trailer.
    pub unit: &'a UnitName,
    /// The site it stands at, by name.
    pub site: Option<&'a str>,
    /// What was reported.
    pub entry: &'a Entry,
    /// The trailer's spec, for gallons.
    pub spec: Option<&'a Trailer>,
    /// The earlier time it is logged for, where it is not now.
    pub at: Option<DateTime<Utc>>,
    /// True when it is too old to change what is known.
    pub too_old: bool,
    /// True when its readings were checked and every one is within its limits.
    pub all_well: bool,
}

/// What is logged of a trailer, as far as it can be told of several at once: its site, the time, the words.
type Same<'a> = (Option<&'a str>, Option<DateTime<Utc>>, String);

/// From so many trailers of which the same is told on, one line tells it of them all.
const MANY: usize = 3;

/// Names trailers, a run of numbers by its first and last: `1-20`, `31`.
fn runs(units: &[&UnitName]) -> Vec<String> {
    let number = |unit: &UnitName| unit.as_str().parse::<u32>().ok();
    let mut named: Vec<(String, String, Option<u32>, usize)> = Vec::new();
    for unit in units {
        let name = unit.to_string();
        let next = number(unit);
        match named.last_mut() {
            Some((_, last, Some(before), count)) if next == Some(*before + 1) => {
                (*last, *before, *count) = (name, *before + 1, *count + 1);
            }
            _ => named.push((name.clone(), name, next, 1)),
        }
    }
    let told = |(first, last, _, count): (String, String, Option<u32>, usize)| match count {
        1 => vec![first],
        2 => vec![first, last],
        _ => vec![format!("{first}-{last}")],
    };
    named.into_iter().flat_map(told).collect()
}

impl Answer<'_> {
    /// Tells whether there is nothing to say.
    pub fn is_empty(&self) -> bool {
        self.opening.is_empty()
            && self.first.is_empty()
            && self.findings.is_empty()
            && self.stands.is_empty()
            && self.lines.is_empty()
            && self.logged.is_empty()
            && self.tasks.is_empty()
            && self.set_aside.is_empty()
            && self.unclear.is_empty()
            && self.question.is_none()
            && self.step.is_none()
    }

    /// Puts the reply into words.
    pub fn compose(&self, voice: &Voice<'_>) -> String {
        let mut out = String::with_capacity(1024);
        for opening in &self.opening {
            line(&mut out).push_str(opening);
        }
        let told = self.write_findings(&mut out, voice);
        self.write_all_well(&mut out, voice);
        for text in self.stands.iter().chain(&self.lines) {
            line(&mut out).push_str(text);
        }
        self.write_log(&mut out, voice);
        for note in &self.tasks {
            if !told.contains(&note.task.id) {
                let text = self
                    .voice_for(voice, note.task.unit.as_ref())
                    .task_note(*note);
                line(&mut out).push_str(&text);
            }
        }
        self.write_remarks(&mut out, voice);
        if let Some(question) = self
            .question
            .filter(|question| !self.is_asked_by_a_remark(question))
        {
            line(&mut out).push_str(&voice.question(question));
        }
        if !self.without_hint {
            self.write_hint(&mut out, voice, &told);
        }
        if let Some(step) = self.step.filter(|_| self.question.is_none()) {
            line(&mut out).push_str(step);
        }
        out
    }

    /// Writes the findings, worst first, each caution once; returns the tasks they told.
    fn write_findings(&self, out: &mut String, voice: &Voice<'_>) -> Vec<u32> {
        let mut findings = self.findings.clone();
        findings.sort_by_key(|finding| finding.order());
        let several = self.speaks_of_several();
        let mut told = Vec::new();
        let mut warned: Vec<Caution> = Vec::new();
        let mut first = self.first.iter();
        let mut doubted = !self.doubts_the_danger();
        for finding in findings {
            if finding.level < Level::Danger {
                first.by_ref().for_each(|text| write_once(out, text));
            }
            let voice = self.voice_for(voice, finding.unit.as_ref());
            let note = self.task_of(finding);
            let called = note.and_then(|note| voice.as_called(finding, note.task));
            voice.write_finding(line(out), called.as_ref().unwrap_or(finding), several);
            if let Some(note) = note {
                voice.write_task_tail(out, note.task);
                told.push(note.task.id);
            }
            if let Some(context) = self
                .context
                .filter(|_| !doubted && finding.level == Level::Danger)
                && finding.unit.as_ref() == Some(context.unit())
            {
                doubted = true;
                context.write_doubt(line(out), &voice);
            }
            // a reply on two trailers says the same caution once: it is the same hazard to the same reader
            let said = |caution: &Caution| {
                let caution = format!("\n  {}", voice.caution(*caution));
                warned_in(out, &caution)
            };
            let fresh = finding
                .cautions
                .iter()
                .filter(|caution| !warned.contains(caution) && !said(caution));
            let fresh: Vec<Caution> = fresh.copied().collect();
            voice.write_cautions(out, &fresh);
            warned.extend(fresh);
        }
        first.for_each(|text| write_once(out, text));
        told
    }

    /// Tells whether a danger is told of a trailer that nobody named: the doubt is said at once, and not at the end.
    fn doubts_the_danger(&self) -> bool {
        let Some(Context::Last(unit) | Context::AtSite(unit, _)) = self.context else {
            return false;
        };
        let mut findings = self.findings.iter();
        findings
            .any(|finding| finding.level == Level::Danger && finding.unit.as_ref() == Some(unit))
    }

    /// Finds the open task that a finding asks for.
    fn task_of(&self, finding: &Finding) -> Option<&TaskNote<'_>> {
        let wish = finding.task.as_ref()?;
        self.tasks.iter().find(|note| {
            note.turn != TaskTurn::Closed
                && note.turn != TaskTurn::Taken
                && note.task.kind == wish.kind
                && note.task.unit == finding.unit
        })
    }

    fn write_all_well(&self, out: &mut String, voice: &Voice<'_>) {
        // while a part is not understood nobody can say that all is well
        if !self.unclear.is_empty() {
            return;
        }
        let mut told: Vec<&UnitName> = Vec::new();
        let well = self.logged.iter();
        for logged in well.filter(|logged| logged.all_well && logged.was_checked()) {
            if !told.contains(&logged.unit) {
                told.push(logged.unit);
            }
        }
        let rows: Vec<String> = match told.len() {
            ..MANY => told.iter().map(|unit| unit.to_string()).collect(),
            _ => vec![voice.all_of(&runs(&told))],
        };
        for unit in rows {
            voice.write(line(out), "all-well", &[("unit", unit.into())]);
        }
    }

    fn write_log(&self, out: &mut String, voice: &Voice<'_>) {
        let mut alike = self.logged_alike(voice);
        let mut written: HashSet<usize> = HashSet::new();
        for (place, logged) in self.logged.iter().enumerate() {
            let voice = self.voice_for(voice, Some(logged.unit));
            let what = voice.readings(logged.entry, logged.spec);
            if written.contains(&place) {
                continue;
            }
            let many = alike.remove(&(logged.site, logged.at, what.clone()));
            let mut args = vec![
                ("unit", Arg::from(logged.unit.as_str())),
                ("what", what.into()),
            ];
            let mut key = String::from("logged");
            if let Some(many) = many {
                key = String::from("logged-many");
                let units: Vec<&UnitName> = many.iter().map(|at| self.logged[*at].unit).collect();
                args.push(("units", voice.all_of(&runs(&units)).into()));
                written.extend(many);
            }
            if let Some(site) = logged.site {
                key.push_str("-site");
                args.push(("site", site.into()));
            }
            if let Some(at) = logged.at {
                key.push_str("-at");
                args.push(("time", at.into()));
            }
            voice.write(line(out), &key, &args);
            let doubted = self.doubts_the_danger();
            if let Some(context) = self
                .context
                .filter(|context| context.unit() == logged.unit && !doubted)
            {
                out.push(' ');
                context.write(out, &voice);
            }
            if logged.too_old {
                out.push(' ');
                voice.write(out, "logged-too-old", &[]);
            }
        }
        // an answer to a question about the unit last talked about says so too
        if self.logged.is_empty()
            && !self.doubts_the_danger()
            && let Some(context) = self.context
        {
            context.write(line(out), voice);
        }
    }

    /// Gathers the trailers of which the same is logged, for the same time and site; none with a word of its own beside it.
    fn logged_alike(&self, voice: &Voice<'_>) -> HashMap<Same<'_>, Vec<usize>> {
        let mut alike: HashMap<Same<'_>, Vec<usize>> = HashMap::new();
        for (place, logged) in self.logged.iter().enumerate() {
            let guessed = self
                .context
                .is_some_and(|context| context.unit() == logged.unit);
            if !guessed && !logged.too_old {
                let voice = self.voice_for(voice, Some(logged.unit));
                let what = voice.readings(logged.entry, logged.spec);
                let same = (logged.site, logged.at, what);
                alike.entry(same).or_default().push(place);
            }
        }
        alike.retain(|_, places| places.len() >= MANY);
        alike
    }

    fn write_remarks(&self, out: &mut String, voice: &Voice<'_>) {
        if !self.taken.is_empty() {
            line(out).push_str(&voice.taken(self.taken));
        }
        let unsaid = self
            .set_aside
            .iter()
            .filter(|aside| !self.is_said_otherwise(aside));
        let asides = unsaid.filter_map(|aside| voice.aside(aside));
        for aside in asides.take(QUOTED_PARTS) {
            line(out).push_str(&aside);
        }
        for remark in self.unclear.iter().take(QUOTED_PARTS) {
            line(out).push_str(&voice.unclear(remark));
        }
        if self.unclear.len() > QUOTED_PARTS {
            let count = self.unclear.len() - QUOTED_PARTS;
            voice.write(line(out), "unclear-more", &[("count", count.into())]);
        }
    }

    /// Tells whether what was set aside is asked back about, or answered with a task or a watch.
    fn is_said_otherwise(&self, aside: &Remark) -> bool {
        let within = |whole: &str| whole.contains(&aside.text) || aside.text.contains(whole);
        let acted_on = |plan: &&Plan| !matches!(plan.kind, PlanKind::Other);
        self.unclear.iter().any(|remark| within(&remark.text))
            || self
                .answered
                .iter()
                .filter(acted_on)
                .any(|plan| within(&plan.text))
    }

    fn write_hint(&self, out: &mut String, voice: &Voice<'_>, told: &[u32]) {
        let Some(worst) = self.findings.iter().min_by_key(|finding| finding.order()) else {
            return;
        };
        // what can wait explains itself
        if worst.level == Level::Notice && worst.urgency == Urgency::Plan && told.is_empty() {
            return;
        }
        let mut hints = vec![voice.word("hint-why")];
        if let Some(task) = told.first() {
            hints.push(voice.say("hint-done", &[("id", Arg::Count((*task).into()))]));
        }
        let of_pressure = [
            FindingId::WaterOverPressure,
            FindingId::WaterUnderPressure,
            FindingId::WaterPressureFalling,
        ];
        if of_pressure.contains(&worst.id) {
            hints.push(voice.word("hint-pressure"));
        }
        voice.write(line(out), "hint", &[("hints", voice.one_of(&hints).into())]);
    }

    /// Tells whether the remark on an unclear part has asked the same already.
    fn is_asked_by_a_remark(&self, question: &About) -> bool {
        let asks = |remark: &Remark| match question {
            About::WhatValue { text, .. } => remark.text == *text,
            About::CordsLive { .. } => remark.why == Remark::CORDS_LIVE,
            _ => false,
        };
        self.unclear.iter().take(QUOTED_PARTS).any(asks)
    }

    fn speaks_of_several(&self) -> bool {
        let mut units = self
            .findings
            .iter()
            .filter_map(|finding| finding.unit.as_ref());
        let logged = self.logged.iter().map(|logged| logged.unit);
        let Some(first) = units.next() else {
            return false;
        };
        units.chain(logged).any(|unit| unit != first)
    }

    fn voice_for<'v>(&self, voice: &Voice<'v>, unit: Option<&UnitName>) -> Voice<'v> {
        match unit.and_then(|unit| self.zones.get(unit)) {
            Some(zone) => voice.in_zone(*zone),
            None => *voice,
        }
    }
}

/// Writes a line; a caution that this reply gives already is not said to the same reader twice.
fn write_once(out: &mut String, text: &str) {
    if text.starts_with("  ") && warned_in(out, &format!("\n{text}")) {
        return;
    }
    line(out).push_str(text);
}

/// Tells whether a line stands whole in what was written.
fn warned_in(out: &str, text: &str) -> bool {
    out.match_indices(text).any(|(at, _)| {
        let rest = &out[at + text.len()..];
        rest.is_empty() || rest.starts_with('\n')
    })
}

impl Logged<'_> {
    /// Tells whether it holds a reading that has limits.
    fn was_checked(&self) -> bool {
        let unlimited = [
            ReadingKey::EtaMin,
            ReadingKey::PumpedGal,
            ReadingKey::Guests,
            ReadingKey::HoseFt,
            ReadingKey::CordFt,
            ReadingKey::CordAwg,
            ReadingKey::HumidityPct,
        ];
        let readings = &self.entry.readings;
        let checked = readings.values.keys().any(|key| !unlimited.contains(key));
        (checked || !readings.amps.is_empty()) && self.entry.faults.is_empty()
    }
}

impl<'a> Context<'a> {
    /// Returns the unit.
    pub fn unit(&self) -> &'a UnitName {
        match self {
            Context::Last(unit) | Context::Answered(unit) | Context::Only(unit) => unit,
            Context::AtSite(unit, _) => unit,
        }
    }

    /// Writes where the unit was taken from.
    fn write(self, out: &mut String, voice: &Voice<'_>) {
        let mut args = vec![("unit", self.unit().as_str().into())];
        if let Context::AtSite(_, site) = self {
            args.push(("site", voice.plain(site).into_owned().into()));
        }
        voice.write(out, self.key(), &args);
    }

    /// Writes beside a danger that its unit may be another.
    fn write_doubt(self, out: &mut String, voice: &Voice<'_>) {
        let mut args = vec![("unit", self.unit().as_str().into())];
        let mut key = "danger-guessed";
        if let Context::AtSite(_, site) = self {
            args.push(("site", voice.plain(site).into_owned().into()));
            key = "danger-guessed-site";
        }
        voice.write(out, key, &args);
    }

    fn key(self) -> &'static str {
        match self {
            Context::Last(_) => "context-last",
            Context::Answered(_) => "context-answered",
            Context::Only(_) => "context-only",
            Context::AtSite(..) => "context-site",
        }
    }
}

/// Starts a new line, unless nothing was written yet.
fn line(out: &mut String) -> &mut String {
    if !out.is_empty() {
        out.push('\n');
    }
    out
}
