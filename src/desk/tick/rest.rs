//! People's own quiet hours: what can wait is held back from them and sent when they end.

use chrono::{DateTime, Utc};

use super::Round;
use super::say::Answer;
use super::{dispatchers, quiet};
use crate::book::{AheadChange, Book, Held};
use crate::desk::situate::Case;
use crate::desk::{Desk, held};
use crate::finding::Level;
use crate::fleet::Fleet;
use crate::heard::UnitName;
use crate::situation::Occasion;

/// Tells whether a person is in their own quiet hours.
pub(super) fn rests(desk: &Desk, fleet: &Fleet, who: &str, now: DateTime<Utc>) -> bool {
    let hours = desk.book.people().quiet(who);
    hours.is_some_and(|hours| quiet::end_of(hours, fleet.time_zone, now).is_some())
}

/// Tells whether something can wait for a person to wake: no danger, and nothing that nobody else would answer.
pub(super) fn can_wait(
    desk: &Desk,
    fleet: &Fleet,
    now: DateTime<Utc>,
    level: Option<Level>,
    answer: Answer,
) -> bool {
    let somebody_else = || {
        dispatchers(fleet)
            .any(|to| !rests(desk, fleet, to, now) && desk.book.ahead().road(to, now).is_none())
    };
    level < Some(Level::Danger) && (answer == Answer::None || somebody_else())
}

/// Iterates over those for whom something waits, each with when they wake.
pub(super) fn due<'a>(
    book: &'a Book,
    fleet: &'a Fleet,
) -> impl Iterator<Item = (DateTime<Utc>, String)> + 'a {
    let ahead = book.ahead();
    // what waits for somebody on the road goes out when they are there
    let driving = |who: &str| ahead.roads().any(|(other, _)| other == who);
    ahead
        .waited_for()
        .filter(move |who| !driving(who))
        .filter_map(move |who| {
            let since = ahead.held(who).first()?.at;
            let hours = book.people().quiet(who);
            let wakes = hours.and_then(|hours| quiet::end_of(hours, fleet.time_zone, since));
            Some((wakes.unwrap_or(since), who.to_owned()))
        })
}

/// Sends what waited for somebody.
pub(super) fn over(round: &mut Round<'_>, who: &str) {
    let held = round.desk.book.ahead().held(who).to_vec();
    round.record(AheadChange::Released { to: who.to_owned() });
    let_go(round, &held, Answer::None);
}

/// Says what waited for somebody, as it stands now.
pub(super) fn let_go(round: &mut Round<'_>, waited: &[Held], answer: Answer) {
    let Some(who) = waited.first().map(|held| held.to.clone()) else {
        return;
    };
    let now = round.now;
    let Some(voice) = round.voice(&who) else {
        return;
    };
    let tasks = round.desk.book.tasks();
    let task = |id| round.board.tasks().task(id).or(tasks.task(id)).cloned();
    let case =
        |unit: &UnitName| Case::standing(round.desk, &round.fleet, unit, now, Occasion::Tick);
    let known = held::Known {
        desk: round.desk,
        now,
        task: &task,
        case: &case,
        ended: &|_| false,
    };
    for told in held::let_go(waited, &known, &voice) {
        round.say.add(&who, told.level, told.text, answer);
    }
}
