//! Who of the crew is called so, the other dispatchers, and who watches over somebody who works alone.

use chrono::{DateTime, TimeDelta, Utc};

use super::Desk;
use super::phrases::plain;
use super::receive::Hearing;
use crate::book::Word;
use crate::fleet::{CrewMember, Fleet, Role};
use crate::heard::UnitName;
use crate::reply::Voice;

/// Finds the person of these who is called so, by id or name, however it is written.
pub(super) fn called<'c>(
    people: impl IntoIterator<Item = &'c CrewMember>,
    name: &str,
) -> Option<&'c CrewMember> {
    let name = plain(name);
    let is = |member: &&CrewMember| plain(&member.id) == name || plain(&member.name) == name;
    people.into_iter().find(is).filter(|_| !name.is_empty())
}

/// Iterates over the dispatchers but the sender, each with the voice they are spoken to in.
pub(super) fn other_dispatchers<'h>(
    hearing: &'h Hearing<'_>,
) -> impl Iterator<Item = (&'h CrewMember, Voice<'h>)> {
    let me = hearing.member.id.as_str();
    dispatchers_but(hearing.desk, &hearing.fleet, hearing.now, move |id| {
        id == me
    })
}

/// Iterates over the dispatchers but those left out, each with the voice they are spoken to in.
pub(super) fn dispatchers_but<'h>(
    desk: &'h Desk,
    fleet: &'h Fleet,
    now: DateTime<Utc>,
    left_out: impl Fn(&str) -> bool + 'h,
) -> impl Iterator<Item = (&'h CrewMember, Voice<'h>)> {
    let crew = fleet.crew.values();
    crew.filter(move |member| member.role == Role::Dispatcher && !left_out(&member.id))
        .map(move |member| (member, desk.voice_for(member, None, fleet, now)))
}

/// Returns who of the crew wrote of a trailer last within so long. A dispatcher who writes of one is not there, and takes it
/// from nobody who is.
pub(super) fn last_there(
    desk: &Desk,
    fleet: &Fleet,
    unit: &UnitName,
    (now, within): (DateTime<Utc>, TimeDelta),
) -> Option<String> {
    let lately = |at: &DateTime<Utc>| *at <= now && now - *at <= within;
    let is_there = |who: &str| {
        let member = fleet.crew.get(who);
        member.is_none_or(|member| member.role != Role::Dispatcher)
    };
    let word = desk.book.unit(unit)?.state().last_word.as_ref()?;
    if is_there(&word.from) {
        return lately(&word.at).then(|| word.from.clone());
    }
    let today = |at: &DateTime<Utc>| lately(at) && now - *at <= TimeDelta::hours(24);
    let crew = fleet.crew.keys().filter(|who| is_there(who));
    let wrote = crew.filter_map(|who| {
        let mut sent = desk.book.sent(who).iter().rev();
        let last = sent.find(|sent| sent.units.contains(unit) && today(&sent.at))?;
        Some((last.at, who))
    });
    let last = wrote.max().map(|(_, who)| who.clone());
    // nobody else ever wrote of it: they know most of it
    last.or_else(|| lately(&word.at).then(|| word.from.clone()))
}

/// Returns the last word about a trailer of whoever is there: a dispatcher's only where nobody else wrote of it lately.
pub(super) fn last_word_there(
    desk: &Desk,
    fleet: &Fleet,
    unit: &UnitName,
    now: DateTime<Utc>,
) -> Option<Word> {
    let word = desk.book.unit(unit)?.state().last_word.clone()?;
    let there = last_there(desk, fleet, unit, (now, TimeDelta::hours(24)));
    let Some(from) = there.filter(|from| *from != word.from) else {
        return Some(word);
    };
    let mut sent = desk.book.sent(&from).iter().rev();
    let of_it = sent.find(|sent| sent.units.contains(unit));
    Some(of_it.map_or(word, |sent| Word { at: sent.at, from }))
}

/// Lists who is alarmed where somebody who works alone does not answer: the other dispatchers, else the techs, else
/// everybody else of the crew.
pub(super) fn watchers_of<'f>(fleet: &'f Fleet, who: &str) -> Vec<&'f CrewMember> {
    let of = |wanted: &dyn Fn(Role) -> bool| -> Vec<&'f CrewMember> {
        let others = fleet.crew.values().filter(|member| member.id != who);
        others.filter(|member| wanted(member.role)).collect()
    };
    let ranks: [&dyn Fn(Role) -> bool; 3] = [
        &|role| role == Role::Dispatcher,
        &|role| role == Role::Tech,
        &|_| true,
    ];
    let mut ranks = ranks.into_iter().map(of);
    ranks
        .find(|members| !members.is_empty())
        .unwrap_or_default()
}

/// Iterates over those who are alarmed about the sender, each with the voice they are spoken to in.
pub(super) fn watchers<'h>(
    hearing: &'h Hearing<'_>,
) -> impl Iterator<Item = (&'h CrewMember, Voice<'h>)> {
    let (desk, fleet, now) = (hearing.desk, &hearing.fleet, hearing.now);
    let watchers = watchers_of(fleet, &hearing.member.id).into_iter();
    watchers.map(move |to| (to, desk.voice_for(to, None, fleet, now)))
}

/// Lists, by id, the techs who are told where nobody answers for somebody who works alone.
pub(super) fn next_to_help(fleet: &Fleet, who: &str) -> Vec<String> {
    let others = fleet.crew.values().filter(|member| member.id != who);
    let techs = others.filter(|member| member.role == Role::Tech);
    techs.map(|member| member.id.clone()).collect()
}

/// Says whom the bot alarms where somebody who works alone does not answer.
pub(super) fn whom(fleet: &Fleet, who: &str, voice: &Voice<'_>) -> String {
    let watchers = watchers_of(fleet, who);
    match watchers.first() {
        None => voice.word("alone-whom-nobody"),
        Some(first) if first.role == Role::Dispatcher => voice.word("alone-whom-dispatcher"),
        Some(_) => {
            let names: Vec<String> = watchers.iter().map(|member| member.name.clone()).collect();
            voice.say("alone-whom", &[("names", voice.all_of(&names).into())])
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fleet::demo;

    #[test]
    fn somebody_watches_over_everybody_as_long_as_there_is_anybody() {
        let mut fleet = demo::fleet();
        let watchers = |fleet: &Fleet, who: &str| -> Vec<String> {
            let watchers = watchers_of(fleet, who).into_iter();
            watchers.map(|member| member.id.clone()).collect()
        };
        assert_eq!(watchers(&fleet, "tobin"), ["nadia"]);
        assert_eq!(watchers(&fleet, "nadia"), ["abel", "ines"]);
        fleet.crew.retain(|_, member| member.role != Role::Tech);
        assert_eq!(watchers(&fleet, "nadia"), ["juno", "lupe", "tobin"]);
        fleet.crew.retain(|id, _| id == "nadia");
        assert!(watchers(&fleet, "nadia").is_empty());
    }
}
