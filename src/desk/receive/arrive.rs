//! Who says at which site they stand with a trailer: by plan it has arrived; where the plan has it elsewhere they are asked,
//! and help is sent to the place they named.

use chrono::TimeDelta;

use super::super::answer::Reply;
use super::super::inbound::Outgoing;
use super::super::others::other_dispatchers;
use super::super::phrases::{is_marked, plain};
use super::super::settle::Settled;
use super::super::sites;
use super::super::situate::Case;
use super::Hearing;
use crate::book::{AheadChange, Record};
use crate::dialogue::{About, CONTEXT_LASTS};
use crate::finding::Level;
use crate::fleet::Role;
use crate::heard::{Entry, Event, UnitName};
use crate::reply::Arg;
use crate::situation::Occasion;

/// A trailer may be at its next job so long before the doors, though the plan has it at another still.
const EARLY: TimeDelta = TimeDelta::days(2);

/// A trailer that is said to stand at a site.
pub(super) struct Stands {
    unit: UnitName,
    /// The site's id.
    site: String,
    /// The site that the plan has it at, where that is another.
    instead_of: Option<String>,
    /// Whether the plan has it nowhere.
    unplanned: bool,
}

impl Hearing<'_> {
    /// Reads that a trailer stands at a site that the message names. By plan that is an arrival; else it is asked.
    pub(super) fn stands_at(&mut self, settled: &mut Settled) -> Option<Stands> {
        let heard = &self.heard;
        if heard.ask.is_some()
            || heard.command.is_some()
            || self.asks.is_some()
            || self.mends()
            || self.inbound.replaces.is_some()
            || self.late()
            || is_marked(self.text)
        {
            return None;
        }
        let arrived = |entry: &Entry| entry.events.contains(&Event::Arrived);
        let reported = settled.reports.iter().any(|(.., entry)| arrived(entry));
        let says = self.desk.phrases.holds("arrive", "says", self.text);
        let not = self.desk.phrases.holds("arrive", "not", self.text);
        if not {
            return None;
        }
        let site = self.site_named()?;
        let unit = match self.names().as_slice() {
            [unit] if !self.is_only_for(unit) => unit.clone(),
            _ => return None,
        };
        let only = self.says_no_more_than(&unit, &site);
        if !(reported || says || only) {
            return None;
        }
        if only {
            self.heard.unclear.clear();
        }
        let case = Case::standing(self.desk, &self.fleet, &unit, self.now, Occasion::Asked);
        let planned = case.job().map(|job| job.id.site.clone());
        let unplanned = planned.as_ref().is_none_or(|planned| *planned != site);
        // who brings it to its next job early is where the plan has it soon
        let next = self.fleet.next_job_of(&unit, self.now);
        let next = next.is_some_and(|next| next.id.site == site && next.from - self.now <= EARLY);
        let instead_of = planned.filter(|planned| *planned != site && !next);
        let of_it = |(of, ..): &&mut (UnitName, _, Entry)| *of == unit;
        if instead_of.is_some() {
            if case.site().is_some_and(|stands| stands.id == site) {
                // told before, and the plan has not caught up
                return None;
            }
            for (.., entry) in settled.reports.iter_mut().filter(of_it) {
                entry.events.retain(|event| *event != Event::Arrived);
            }
            settled.reports.retain(|(.., entry)| !entry.is_empty());
            self.asks = Some(About::Arrived {
                site: site.clone(),
                units: vec![unit.clone()],
            });
            self.heard.plans.clear();
            self.heard.set_aside.clear();
        } else if !reported && !is_there(&case) {
            let entry = settled.report_on(&unit, self.inbound.at);
            entry.events.insert(0, Event::Arrived);
        }
        self.stands = Some((unit.clone(), site.clone()));
        Some(Stands {
            unit,
            site,
            instead_of,
            unplanned,
        })
    }

    /// "at quince terrace with 8", "16 at tollgate chapel": who is there says no more. A dispatcher may be planning.
    fn says_no_more_than(&self, unit: &UnitName, site: &str) -> bool {
        let open = self.talk.question_at(self.inbound.at).is_some();
        if self.member.role == Role::Dispatcher || open || !self.heard.entries.is_empty() {
            return false;
        }
        let named = self.fleet.sites.get(site);
        let named = named.map(|site| plain(&format!("{} {}", site.name, site.id)));
        let named = named.unwrap_or_default();
        plain(self.text).split(' ').all(|word| {
            UnitName::new(word) == *unit
                || named.split(' ').any(|of_it| of_it == word)
                || self.desk.phrases.is("arrive", "only", word)
        })
    }

    /// "im at the chapel picking up a hose for 6": what is done for a trailer does not bring it there.
    fn is_only_for(&self, unit: &UnitName) -> bool {
        let rest = self.desk.phrases.following("arrive", "for", self.text);
        let first = rest.and_then(|rest| rest.split_whitespace().next());
        first.is_some_and(|word| UnitName::new(&plain(word)) == *unit)
    }

    /// Finds the one site that the message names right after a word of place.
    fn site_named(&self) -> Option<String> {
        let text = plain(self.text);
        let words: Vec<&str> = text.split(' ').collect();
        let phrases = self.desk.phrases;
        let number = |word: &str| word.starts_with(|c: char| c.is_ascii_digit());
        // most messages have no such word, or a number after it: the sites' names need no look then
        let places: Vec<String> = (1..words.len())
            .filter(|at| phrases.is("arrive", "before", words[at - 1]) && !number(words[*at]))
            .map(|at| format!("{} ", words[at..].join(" ")))
            .collect();
        if places.is_empty() {
            return None;
        }
        let after = |spelling: &str| {
            let spelling = format!("{spelling} ");
            places.iter().any(|rest| rest.starts_with(&spelling))
        };
        let mut sites = sites::named(&self.fleet, after);
        match (sites.next(), sites.next()) {
            (Some((site, _)), None) => Some(site.id.clone()),
            _ => None,
        }
    }

    /// Returns the trailer that somebody says does not stand where they were asked whether it does.
    pub(super) fn denies_its_place(&self) -> Option<UnitName> {
        let question = self.talk.question_at(self.inbound.at)?;
        let About::Arrived { units, site } = &question.about else {
            return None;
        };
        let [unit] = units.as_slice() else {
            return None;
        };
        let told = self.desk.book.ahead().stands_at(unit);
        let same = told.is_some_and(|(told, _)| told == site);
        (same && self.desk.phrases.is("choice", "no", self.text)).then(|| unit.clone())
    }
}

/// Says and keeps where a trailer is said to stand, against the plan.
pub(super) fn keep(
    hearing: &Hearing<'_>,
    stands: Option<&Stands>,
    denied: Option<UnitName>,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let mut put = |unit: UnitName, site: Option<String>| {
        records.push(Record::Ahead {
            at: hearing.now,
            change: AheadChange::StandsAt { unit, site },
        });
    };
    if let Some(unit) = denied {
        put(unit, None);
    }
    let Some(stands) = stands else { return };
    let kept = hearing.desk.book.ahead().stands_at(&stands.unit);
    let planned = |site: &str| hearing.fleet.sites.get(site);
    if let Some(planned) = stands.instead_of.as_deref().and_then(planned) {
        let there = hearing.fleet.sites.get(&stands.site);
        let there = there.map_or(stands.site.as_str(), |site| site.name.as_str());
        let args = [
            ("unit", Arg::from(stands.unit.as_str())),
            ("site", there.into()),
            ("from", planned.name.as_str().into()),
        ];
        reply.say("place-not-by-plan", &args);
        for (other, voice) in other_dispatchers(hearing) {
            let who = voice.person(&hearing.member.id).into_owned();
            let args = [args.as_slice(), &[("who", who.into())]].concat();
            let text = voice.say("place-not-by-plan-told", &args);
            let letter = Outgoing::to(&other.id, text).of_level(Level::Notice);
            reply.others.push(letter);
        }
        put(stands.unit.clone(), Some(stands.site.clone()));
    } else if stands.unplanned {
        put(stands.unit.clone(), Some(stands.site.clone()));
    } else if kept.is_some_and(|(site, _)| site != stands.site) {
        put(stands.unit.clone(), None);
    }
}

/// A trailer that goes so long before its job ends goes early.
const TOO_EARLY: TimeDelta = TimeDelta::minutes(30);

/// Tells the dispatchers of a trailer that goes while the job it stands at runs on.
pub(super) fn tell_left_early(hearing: &Hearing<'_>, settled: &Settled, reply: &mut Reply<'_>) {
    let leaves = |entry: &Entry| entry.events.contains(&Event::Left);
    let left = settled.reports.iter().filter(|(.., entry)| leaves(entry));
    for (unit, at, _) in left {
        let kept = hearing.desk.book.unit(unit);
        if kept.is_some_and(|kept| kept.state().when(Event::Left).is_some()) {
            continue;
        }
        let Some(job) = hearing.fleet.job_of(unit, *at, None) else {
            continue;
        };
        let runs = job.from <= *at && *at + TOO_EARLY < job.to;
        let Some(site) = hearing
            .fleet
            .site_of(job)
            .filter(|_| runs && !hearing.late())
        else {
            continue;
        };
        for (other, voice) in other_dispatchers(hearing) {
            let args = [
                (
                    "who",
                    Arg::from(voice.person(&hearing.member.id).into_owned()),
                ),
                ("unit", unit.as_str().into()),
                ("site", site.name.as_str().into()),
                ("time", job.to.into()),
            ];
            let text = voice.say("left-early-told", &args);
            let letter = Outgoing::to(&other.id, text).of_level(Level::Warning);
            reply.others.push(letter);
        }
    }
}

/// Tells whether a trailer stands at its site already, by what was reported.
fn is_there(case: &Case) -> bool {
    let lately = case.now.when(Event::Arrived);
    let lately = lately.is_some_and(|at| case.at - at <= CONTEXT_LASTS);
    let stage = case.now.stage();
    lately || stage.is_on_site()
}
