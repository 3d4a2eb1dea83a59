//! Limits that a forecast crosses while nobody writes: the waste tank, the fresh tank, the battery.
//!
//! Each turn that works a forecast out notes when it is to be worked out again: when the truck must be called, when the
//! water or the battery will soon be used up, or in a day where nothing is in sight.

use chrono::{DateTime, TimeDelta, Utc};

use super::super::alarm::{freezes, is_without_heat, no_heat_key, no_heat_text};
use super::super::others::last_there;
use super::super::receive::lead;
use super::super::situate::Case;
use super::super::tasks::Board;
use super::Round;
use super::read::ask_at;
use super::say::Answer;
use crate::book::{AheadChange, AlarmChange, HeldOf, Record, Stage};
use crate::finding::{Finding, FindingId, Level, TaskKind, Urgency};
use crate::heard::{Fault, UnitName};
use crate::physics::tank::STOP_PCT;
use crate::situation::Occasion;

/// What is allowed for besides the hauler's lead; the warning that water and battery get.
const SAFETY: TimeDelta = TimeDelta::hours(1);
/// A forecast that stands is worked out again after this long.
const AT_MOST: TimeDelta = TimeDelta::hours(24);
/// A forecast is worked out again after this long at the least.
const AT_LEAST: TimeDelta = TimeDelta::minutes(10);
/// A waste tank that is likely this full, and whose truck is asked for, gets no worse: all that there is to say was said.
const BRIMFUL_PCT: f64 = 99.0;
/// By so long after a tank is likely at its stop level it is likely over it.
const OVER: TimeDelta = TimeDelta::minutes(1);
/// A truck that is there is at the tank for so long at the most.
const AT_THE_TANK: TimeDelta = TimeDelta::minutes(90);
/// A limit that is crossed is looked at again after this long.
const STANDS: TimeDelta = TimeDelta::hours(1);

/// Returns when a trailer's forecast is to be worked out again, after it was worked out at `now`.
pub(in super::super) fn look_again(
    case: &Case,
    board: &Board,
    now: DateTime<Utc>,
) -> Option<DateTime<Utc>> {
    let job = case.job().filter(|job| now < job.to)?;
    if matches!(case.now.stage(), Stage::Hitched | Stage::Yard) {
        return None;
    }
    let open = |kind| {
        let task = board.tasks().open_task(&case.unit, kind);
        task.is_some_and(|task| task.due.is_some())
    };
    let waste = case.outlook.waste.as_ref().and_then(|waste| {
        waste.p50?;
        waste.p10.map(|at| at - lead(case) - SAFETY)
    });
    // when it is likely to be at its limit, stalls have to close, whether the truck was called or not
    let full = case.outlook.waste.as_ref().and_then(|waste| {
        let worsens = waste.likely_pct < BRIMFUL_PCT || !open(TaskKind::PumpOut);
        let full = waste.p50.filter(|at| *at > now || worsens)?;
        // at the very minute it is not yet over it
        Some(if waste.likely_pct < STOP_PCT {
            full.max(now) + OVER
        } else {
            full
        })
    });
    let fresh = case.outlook.fresh.as_ref().and_then(|fresh| {
        fresh.p50?;
        fresh.p10.map(|at| at - SAFETY)
    });
    let battery = case
        .outlook
        .battery
        .as_ref()
        .and_then(|battery| battery.p10);
    // who reported a trailer without heat a moment after the dispatchers were spoken to
    let cold = case
        .now
        .last_word
        .as_ref()
        .filter(|word| is_without_heat(case) && now - word.at < AT_LEAST);
    let sooner = [
        cold.map(|word| word.at + AT_LEAST),
        full,
        waste.filter(|_| !open(TaskKind::PumpOut)),
        fresh.filter(|_| !open(TaskKind::Refill)),
        battery.map(|at| at - SAFETY),
    ];
    let next = sooner
        .into_iter()
        .flatten()
        .map(|at| {
            if at > now {
                at.max(now + AT_LEAST)
            } else {
                now + STANDS // it was said, and stands
            }
        })
        .min()
        .unwrap_or(now + AT_MOST)
        .min(now + AT_MOST);
    (next < job.to).then_some(next)
}

/// Works a trailer's forecast out again, and opens or says what follows.
pub(super) fn look(round: &mut Round<'_>, unit: &UnitName) {
    let now = round.now;
    let case = Case::standing(round.desk, &round.fleet, unit, now, Occasion::Tick);
    let at_work = case.job().is_some() && !matches!(case.now.stage(), Stage::Hitched | Stage::Yard);
    if at_work {
        // what runs over is known to be full: nobody is sent to read it
        let spills = case.now.has(Fault::Spill);
        // nor is anybody told to chase a truck that is there
        let truck = round.board.tasks().open_task(unit, TaskKind::PumpOut);
        let here = truck.and_then(|task| task.here);
        let here = here.is_some_and(|since| now - since <= AT_THE_TANK);
        // nobody is sent back to where it is dangerous
        let danger = case
            .findings()
            .iter()
            .any(|found| found.level == Level::Danger);
        let news = |found: &Finding| {
            let of_the_tank = found.id.topic() == "waste" && found.task.is_none();
            presses(&case, found, now) && !((spills || here || danger) && of_the_tank)
        };
        for finding in case.findings().into_iter().filter(news) {
            let wish = finding.task.as_ref().map(|wish| (wish.kind, wish.due));
            // a tank that will be dry within the hour is work, however full it looks
            let dry = (finding.id == FindingId::WaterFreshEndurance).then(|| {
                (
                    TaskKind::Refill,
                    case.outlook.fresh.as_ref().and_then(|fresh| fresh.p10),
                )
            });
            if let Some((kind, due)) = wish.or(dry) {
                round
                    .board
                    .open(unit, kind, due, lead(&case), Some(finding.id));
            } else {
                say_once(round, &case, &finding);
            }
            round
                .turn
                .forecast
                .insert(unit.clone(), case.outlook.clone());
            round.turn.findings.push(finding);
        }
        tell_of_no_heat(round, &case);
        if let Some(waste) = case.outlook.waste.as_ref() {
            round.board.follow(unit, waste.p10, lead(&case));
        }
    }
    let asked = round.desk.book.ahead().asked_to_read(unit);
    let ask = ask_at(&case, &round.board, asked, now);
    if ask != round.desk.book.ahead().read(unit) {
        let unit = unit.clone();
        round.record(AheadChange::Read { unit, ask });
    }
    let look = look_again(&case, &round.board, now);
    round.record(AheadChange::Look {
        unit: unit.clone(),
        look,
    });
}

/// Tells the dispatchers of a trailer that freezes without heat, where they were not told when it was reported.
fn tell_of_no_heat(round: &mut Round<'_>, case: &Case) {
    let key = no_heat_key(&case.unit);
    let told = round.desk.book.alarms().contains_key(&key);
    let Some(word) = case
        .now
        .last_word
        .as_ref()
        .filter(|_| !told && is_without_heat(case))
    else {
        return;
    };
    let Some(air_f) = case.air_f() else {
        return;
    };
    if !case.findings().iter().any(freezes) {
        return;
    }
    let change = AlarmChange::Raised {
        key,
        id: FindingId::ColdFreezeSoon,
        unit: Some(case.unit.clone()),
        level: Level::Warning,
    };
    let at = round.now;
    round.turn.records.push(Record::Alarm { at, change });
    for to in round.dispatchers() {
        if let Some(voice) = round.voice(&to) {
            let text = no_heat_text(case, air_f, &word.from, &voice);
            let of = Some(HeldOf::Alarm(no_heat_key(&case.unit)));
            let says = (Some(Level::Warning), Answer::GotIt);
            round.say.add_of(&to, says, text, of);
        }
    }
}

/// Tells whether a finding that a forecast brings about is to be acted on by now.
fn presses(case: &Case, finding: &Finding, now: DateTime<Utc>) -> bool {
    let near = |p10: Option<DateTime<Utc>>| p10.is_some_and(|at| at <= now + SAFETY);
    let battery = case
        .outlook
        .battery
        .as_ref()
        .and_then(|battery| battery.p10);
    let fresh = case.outlook.fresh.as_ref().and_then(|fresh| fresh.p10);
    let soon = finding.urgency >= Urgency::Soon;
    match finding.id {
        FindingId::WasteBookPumpOut | FindingId::PowerBatteryLow | FindingId::WasteCloseNow => soon,
        FindingId::WaterFreshEndurance => soon || near(fresh),
        FindingId::PowerOnBattery => near(battery),
        _ => false,
    }
}

/// Says a finding that asks for no task, unless it was said before and is no worse.
fn say_once(round: &mut Round<'_>, case: &Case, finding: &Finding) {
    let grade = match finding.urgency {
        // from "close some stalls" to "close the unit" it got worse
        Urgency::Soon if finding.action == "waste-close-now-likely-unit" => "full",
        Urgency::Plan => "plan",
        Urgency::Soon => "soon",
        Urgency::Now => "now",
    };
    let key = format!("{}:{}:{grade}", finding.id, case.unit);
    if round.desk.book.alarms().contains_key(&key) {
        return;
    }
    let change = AlarmChange::Raised {
        key,
        id: finding.id,
        unit: Some(case.unit.clone()),
        level: finding.level,
    };
    round.turn.records.push(Record::Alarm {
        at: round.now,
        change,
    });
    // whoever is there can read a gauge; the dispatcher hears when it presses, or when nobody is there
    let ever = (round.now, TimeDelta::days(365));
    let there = last_there(round.desk, &round.fleet, &case.unit, ever)
        .filter(|who| round.desk.book.ahead().road(who, round.now).is_none());
    let dispatchers = round.dispatchers();
    let mut told: Vec<(String, Answer)> = Vec::new();
    let reads = finding.id == FindingId::WasteBookPumpOut && finding.urgency < Urgency::Now;
    if !reads || there.is_none() {
        told.extend(dispatchers.iter().map(|to| (to.clone(), Answer::GotIt)));
    }
    if let Some(who) = there.filter(|who| !told.iter().any(|(to, _)| to == who)) {
        let answer = if dispatchers.contains(&who) {
            Answer::GotIt
        } else {
            Answer::InText
        };
        told.push((who, answer));
    }
    for (to, answer) in told {
        if let Some(voice) = round.voice(&to) {
            let text = voice.finding(finding, true);
            let of = Some(HeldOf::Finding(case.unit.clone(), finding.id));
            let says = (Some(finding.level), answer);
            round.say.add_of(&to, says, text, of);
        }
    }
}
