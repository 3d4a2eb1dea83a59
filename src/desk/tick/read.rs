//! A reading that is asked for when it is worth most: some time before the pump truck must be called, where the forecast
//! is wide and nobody has read the tank just then. The answer moves the call.
//!
//! Whoever is there is asked, once between two pump-outs: no dispatcher, nobody who drives or sleeps. How much it brings:
//! `cargo bench --bench calibrate`.

use chrono::{DateTime, TimeDelta, Utc};

use super::super::others::last_there;
use super::super::receive::lead;
use super::super::situate::Case;
use super::super::tasks::Board;
use super::say::Answer;
use super::{Round, quiet, rest};
use crate::book::{AheadChange, Stage};
use crate::finding::TaskKind;
use crate::fleet::Role;
use crate::heard::{Event, ReadingKey, UnitName};
use crate::situation::Occasion;

/// So long before the call it is asked, so that there is time to walk over and answer.
const AHEAD: TimeDelta = TimeDelta::minutes(45);
/// A reading younger than this is as good as a new one.
const FRESH: TimeDelta = TimeDelta::minutes(30);
/// A band whose lower half is narrower than this would hardly move the call.
const WIDE: TimeDelta = TimeDelta::minutes(30);
/// What is allowed for besides the hauler's lead.
const SAFETY: TimeDelta = TimeDelta::hours(1);
/// Whoever wrote last is taken to be there for this long.
const THERE: TimeDelta = TimeDelta::hours(6);

/// Returns when somebody is to be asked for a reading of a trailer's waste tank; `asked` is when they last were.
pub(in super::super) fn ask_at(
    case: &Case,
    board: &Board,
    asked: Option<DateTime<Utc>>,
    now: DateTime<Utc>,
) -> Option<DateTime<Utc>> {
    let job = case.job().filter(|job| now < job.to)?;
    if case.now.stage() != Stage::InService {
        return None;
    }
    let task = board.tasks().open_task(&case.unit, TaskKind::PumpOut);
    if task.is_some_and(|task| task.called.is_some() || task.taken_by.is_some()) {
        return None;
    }
    let course = case.now.when(Event::WastePumped);
    let course = course.map_or(job.from, |pumped| pumped.max(job.from));
    if asked.is_some_and(|asked| asked >= course) {
        return None;
    }
    let waste = case.outlook.waste.as_ref()?;
    let (p10, p50) = (waste.p10?, waste.p50?);
    let call = p10 - lead(case) - SAFETY;
    // where nobody has read it at all, that is said when it presses
    let read = [ReadingKey::WastePct, ReadingKey::WasteGal]
        .iter()
        .filter_map(|key| Some(case.now.readings.get(key)?.at))
        .max()?;
    let at = (call - AHEAD).max(now).max(read + FRESH);
    let mut windows = job.windows(job.from);
    let open = windows.any(|(from, to)| from <= at && at < to);
    (p50 - p10 >= WIDE && at < call && open).then_some(at)
}

/// Asks whoever is at a trailer to look at its tank, where that is still worth it.
pub(super) fn ask(round: &mut Round<'_>, unit: &UnitName) {
    let now = round.now;
    let case = Case::standing(round.desk, &round.fleet, unit, now, Occasion::Tick);
    let asked = round.desk.book.ahead().asked_to_read(unit);
    let due = ask_at(&case, &round.board, asked, now);
    if let Some(at) = due.filter(|at| *at > now) {
        let unit = unit.clone();
        return round.record(AheadChange::Read {
            unit,
            ask: Some(at),
        });
    }
    if due.is_some()
        && quiet::ends(&round.fleet, now).is_none()
        && let Some(who) = there(round, &case)
        && let Some(voice) = round.voice(&who)
    {
        let text = voice.say("speak-read-tank", &[("unit", unit.as_str().into())]);
        round.say.add(&who, None, text, Answer::InText);
        return round.record(AheadChange::AskedToRead { unit: unit.clone() });
    }
    round.record(AheadChange::Read {
        unit: unit.clone(),
        ask: None,
    });
}

/// Returns who is most likely at a trailer and may be asked: who wrote of it last, else who is on its job.
fn there(round: &Round<'_>, case: &Case) -> Option<String> {
    let last = last_there(round.desk, &round.fleet, &case.unit, (round.now, THERE));
    let crew = case.job().into_iter().flat_map(|job| &job.crew);
    let mut people = last.iter().chain(crew);
    let ahead = round.desk.book.ahead();
    let may_be_asked = |who: &&String| {
        let member = round.fleet.crew.get(*who);
        member.is_some_and(|member| member.role != Role::Dispatcher)
            && ahead.road(who, round.now).is_none()
            && !rest::rests(round.desk, &round.fleet, who, round.now)
    };
    people.find(may_be_asked).cloned()
}
