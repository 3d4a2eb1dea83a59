//! A pump-out of a part: fewer gallons came out than the tank held, or that is said. A tank that is called empty and is not
//! fills unseen, so nothing is logged of it, its task stays, and what is left is asked.

use chrono::{DateTime, Utc};

use super::super::answer::Reply;
use super::super::phrases::Phrases;
use super::super::settle::Settled;
use super::super::when;
use super::Hearing;
use crate::book::{TankNote, TaskChange};
use crate::finding::{Finding, FindingId, TaskKind};
use crate::fleet::Trailer;
use crate::heard::{Entry, Event, Fault, ReadingKey, UnitName};
use crate::outlook::waste_volume;
use crate::quantity::Measure;

/// What is left by the last reading and is more than this share of the tank is no doubt of the gauge (common practice, no
/// source).
const MORE_THAN_DOUBT: f64 = 0.2;
/// A longer message tells more than what a truck took, unless it tells the level that is left.
const LONGEST: usize = 9;
const LONGEST_WITH_LEVEL: usize = 20;

/// A pump-out that did not empty the tank.
pub(super) struct Part {
    unit: UnitName,
    /// What the tank held as last read, with the time, and what came out of it, gallons; none where a part is told in words.
    told: Option<(f64, DateTime<Utc>, f64)>,
    /// Whether the level that is left is told.
    left: bool,
}

impl Hearing<'_> {
    /// Takes a pump-out that did not empty the tank out of the report.
    pub(super) fn pumped_in_part(&mut self, settled: &mut Settled) -> Option<Part> {
        let part = self
            .told_in_part(settled)
            .or_else(|| self.too_few(settled))?;
        settled.amend(&part.unit, |entry| {
            // it is the truck that left
            let told = [Event::WastePumped, Event::Left];
            entry.events.retain(|event| !told.contains(event));
            entry.readings.values.remove(&ReadingKey::PumpedGal);
        });
        if part.told.is_none() {
            // the one number was of the part, and is not asked about
            self.heard.unclear.clear();
        }
        Some(part)
    }

    /// Reads "they only pumped 200 of 12", "12 partial pump 150 gal".
    fn told_in_part(&self, settled: &mut Settled) -> Option<Part> {
        let says = |list| self.desk.phrases.holds("pumped", list, self.text);
        let other = self.heard.ask.is_some() || self.heard.command.is_some() || self.mends();
        let read = settled.reports.iter().any(|(.., entry)| reads_level(entry));
        let tells_of_pumping = says("part")
            || self
                .heard
                .entries
                .iter()
                .any(|entry| entry.events.contains(&Event::WastePumped));
        // a level of the fresh tank is none of this
        let fresh = |entry: &Entry| entry.readings.value(ReadingKey::FreshPct).is_some();
        let left = left_in(self.desk.phrases, self.text, says("part"))
            .filter(|_| tells_of_pumping && !settled.reports.iter().any(|(.., e)| fresh(e)));
        let count = self.text.split_whitespace().count();
        let most = match read || left.is_some() {
            true => LONGEST_WITH_LEVEL,
            false => LONGEST,
        };
        if other || count > most || !(says("part") || left.is_some()) {
            return None;
        }
        let unit = self.named_or_last(settled)?;
        if let Some(pct) = left.filter(|_| !read) {
            let at = self.inbound.at;
            let known = settled.reports.iter().any(|(of, ..)| *of == unit);
            if !known {
                settled.reports.push((unit.clone(), at, Entry::default()));
            }
            settled.homeless = None;
            settled.amend(&unit, |entry| entry.readings.set(ReadingKey::WastePct, pct));
        }
        let left = read || left.is_some();
        let told = None;
        Some(Part { unit, told, left })
    }

    /// Finds the report of a pump-out by which much more would be left than a gauge can be off.
    fn too_few(&self, settled: &Settled) -> Option<Part> {
        settled.reports.iter().find_map(|(unit, at, entry)| {
            let gal = entry.readings.value(ReadingKey::PumpedGal)?;
            let spec = self.fleet.trailers.get(unit)?;
            let (held, since) = self.held(spec).filter(|(_, since)| since <= at)?;
            let part = held - gal > MORE_THAN_DOUBT * spec.waste_gal && !reads_level(entry);
            part.then(|| Part {
                unit: unit.clone(),
                told: Some((held, since, gal)),
                left: false,
            })
        })
    }

    /// Returns what a tank held as it was last read, gallons: it holds no less since. None where it was pumped since, or the
    /// gauge sticks.
    fn held(&self, spec: &Trailer) -> Option<(f64, DateTime<Utc>)> {
        let state = self.desk.book.unit(&spec.id)?.state();
        let known = |(at, note): &(DateTime<Utc>, TankNote)| match note {
            TankNote::Waste(pct) => Some(Some((
                waste_volume(spec, *pct) / 100.0 * spec.waste_gal,
                *at,
            ))),
            TankNote::WasteGal(gal) => Some(Some((*gal, *at))),
            TankNote::Pumped(_) => Some(None),
            _ => None,
        };
        let last = state.tanks.iter().rev().find_map(known)?;
        last.filter(|_| !state.has(Fault::GaugeStuck))
    }
}

/// Reads what is left of a tank by the words of a truck that did not empty it, %: "pumped down to 1/4", "quedó 1/8", "3/8
/// left".
fn left_in(phrases: &Phrases, text: &str, part: bool) -> Option<f64> {
    let behind = phrases.following("pumped", "left-at", text);
    let stands = || {
        phrases
            .following("pumped", "stands-at", text)
            .filter(|_| part)
    };
    let level = |rest| level_in(phrases, rest);
    let behind = behind.and_then(level).or_else(|| stands().and_then(level));
    let words: Vec<&str> = text.split_whitespace().collect();
    let before = || {
        let mut pairs = words.windows(2);
        let left = |word: &str| phrases.is("pumped", "left", word);
        pairs.find_map(|pair| level_in(phrases, pair[0]).filter(|_| left(pair[1])))
    };
    behind.or_else(before)
}

/// Reads the level that a text opens with, behind words that say nothing: "about a quarter", "un cuarto".
pub(in crate::desk) fn level_in(phrases: &Phrases, rest: &str) -> Option<f64> {
    let words = rest.split_whitespace();
    let words = words.map(|word| word.trim_matches([',', '.', '!', ';', '~']));
    let mut words = words.skip_while(|word| phrases.is("pumped", "about", word));
    let word = words.next()?;
    let two = words.next().map(|next| format!("{word} {next}"));
    let named = |list| {
        let both = two.as_deref().filter(|two| phrases.is("pumped", list, two));
        both.is_some() || phrases.is("pumped", list, word)
    };
    let shares = [
        ("three-quarters", 0.75),
        ("half", 0.5),
        ("third", 1.0 / 3.0),
        ("quarter", 0.25),
        ("eighth", 0.125),
    ];
    let share = match (word.split_once('/'), word.strip_suffix('%')) {
        (Some((part, of)), _) => part.parse::<f64>().ok()? / of.parse::<f64>().ok()?,
        (_, Some(pct)) => pct.parse::<f64>().ok()? / 100.0,
        _ => shares.iter().find(|(list, _)| named(list))?.1,
    };
    (share > 0.0 && share < 1.0).then_some(100.0 * share)
}

/// Drops what the rules make of the fall of a gauge that a part which was pumped explains; the truck has to come again.
pub(super) fn explains(hearing: &Hearing<'_>, part: &Part, reply: &mut Reply<'_>) {
    let fell = |finding: &Finding| {
        let of_it = finding.id == FindingId::WasteDroppedUnexplained
            || finding.action == "waste-book-pump-out-fell";
        of_it && finding.unit.as_ref() == Some(&part.unit)
    };
    reply.findings.retain(|finding| !fell(finding));
    let tasks = reply.board.tasks();
    let task = tasks.open_task(&part.unit, TaskKind::PumpOut);
    let was_here = task.filter(|task| task.here.is_some()).map(|task| task.id);
    if let Some(id) = was_here {
        let by = hearing.member.id.clone();
        reply.board.change(TaskChange::Uncalled { id, by });
    }
    // "took 300, the rest at 22:00"
    let zone = hearing.fleet.zone_at(Some(&part.unit), hearing.now);
    let rest = hearing
        .desk
        .phrases
        .following("pumped", "rest-at", hearing.text);
    let comes = rest.and_then(|rest| when::coming(rest, hearing.now, zone));
    let tasks = reply.board.tasks();
    let open = tasks
        .open_task(&part.unit, TaskKind::PumpOut)
        .map(|task| task.id);
    if let (Some(id), Some(comes)) = (open, comes) {
        let by = hearing.member.id.clone();
        let promised = Some(comes);
        reply.board.change(TaskChange::Called { id, by, promised });
    }
}

fn reads_level(entry: &Entry) -> bool {
    let levels = [ReadingKey::WastePct, ReadingKey::WasteGal];
    levels
        .iter()
        .any(|key| entry.readings.value(*key).is_some())
}

/// Says that the tank is not taken for empty, and asks what is left.
pub(super) fn tell(part: &Part, reply: &mut Reply<'_>) {
    let unit = part.unit.as_str();
    if part.left {
        return reply.say("pumped-in-part-left", &[("unit", unit.into())]);
    }
    let Some((held, at, gal)) = part.told else {
        return reply.say("pumped-in-part", &[("unit", unit.into())]);
    };
    let amount = |gal| reply.voice.number(gal, Measure::Gal);
    let args = [
        ("unit", unit.into()),
        ("was", amount(held).into()),
        ("time", at.into()),
        ("value", amount(gal).into()),
    ];
    reply.say("pumped-too-few", &args);
}
