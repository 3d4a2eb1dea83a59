//! What somebody wants to know of the whole company: who has a trailer, where a person is, what is late, silent or full first.

use chrono::{DateTime, TimeDelta, Utc};

use super::reply::Reply;
use super::{cold, duty, people, plan_ahead};
use crate::book::Task;
use crate::desk::digest::{self, Fill};
use crate::desk::lone;
use crate::desk::others::last_word_there;
use crate::desk::receive::Hearing;
use crate::desk::settle::known;
use crate::desk::tick;
use crate::finding::TaskKind;
use crate::fleet::CrewMember;
use crate::heard::UnitName;
use crate::reply::Arg;
use crate::rules;

/// How long a person's last word tells where they are.
const FRESH: TimeDelta = TimeDelta::hours(24);
/// How many trailers are looked at to tell which fills first: one forecast each, within one turn.
const FORECAST: usize = 40;
/// How many rows a list has at most.
const ROWS: usize = 12;

/// Answers a question about the whole company; false where this is none of them.
pub(super) fn answer(hearing: &Hearing<'_>, topic: &str, reply: &mut Reply<'_>) -> bool {
    match topic {
        "who-has" if let Some(task) = people::task_named(hearing) => {
            let line = reply.voice.task(task);
            reply.first.push(line);
        }
        "who-has" if people::asks_for_it(hearing) => people::taken(hearing, reply),
        "who-has" => match asked_of(hearing) {
            Some(unit) => who_has(hearing, &unit, reply),
            None => reply.asks = Some(hearing.which_unit()),
        },
        "next-job" => match asked_of(hearing) {
            Some(unit) if plan_ahead::next_job(hearing, &unit, reply) => {}
            Some(unit) => {
                let args = [("unit", Arg::from(unit.as_str()))];
                let line = reply.voice.say("answer-next-job-none", &args);
                reply.first.push(line);
            }
            None => reply.asks = Some(hearing.which_unit()),
        },
        "guests" => match asked_of(hearing) {
            Some(unit) => guests(hearing, &unit, reply),
            None => reply.asks = Some(hearing.which_unit()),
        },
        "day-ahead" => plan_ahead::day(hearing, reply),
        "who-is-free" => plan_ahead::free(hearing, reply),
        "who-is-where" => everybody(hearing, reply),
        "freeze-tonight" => cold::tonight(hearing, reply),
        "no-package" => cold::packages(hearing, reply),
        "my-job" => duty::mine(hearing, reply),
        "greeting" | "what-are-you" | "stop-texting" => {
            let line = reply.voice.word(&format!("answer-{topic}"));
            reply.first.push(line);
        }
        "late" => late(hearing, reply),
        "trucks" => trucks(hearing, reply),
        "who-is-alone" => {
            let mut lines = lone::everybody(hearing, reply);
            if lines.is_empty() {
                lines.push(reply.voice.word("alone-nobody"));
            }
            reply.first.append(&mut lines);
        }
        "patrol" => {
            let (desk, now) = (hearing.desk, hearing.now);
            let list = tick::patrol_now(desk, &hearing.fleet, now, &reply.voice);
            let list = list.unwrap_or_else(|| reply.voice.word("answer-patrol-none"));
            reply.first.push(list);
        }
        "silent" => silent(hearing, reply),
        "fills-first" => fills_first(hearing, reply),
        "send-someone" => {
            let line = reply.voice.word("answer-send-someone");
            reply.first.push(line);
        }
        "urgent" | "all-well" => urgent(hearing, reply),
        _ => return people::answer(hearing, topic, reply),
    }
    true
}

/// What is worst in the company, in the rows of a digest.
fn urgent(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    const WORST: usize = 4;
    let (desk, now) = (hearing.desk, hearing.now);
    let units = digest::told_of(desk, &hearing.fleet, now, None).take(FORECAST);
    let mut stands: Vec<_> = units
        .map(|unit| digest::look(desk, &hearing.fleet, unit, now).2)
        .filter(|stand| stand.worst.is_some())
        .collect();
    stands.sort_by_key(|stand| {
        std::cmp::Reverse(stand.worst.map(|(_, level, urgency)| (level, urgency)))
    });
    let rest = stands.split_off(stands.len().min(WORST));
    if stands.is_empty() {
        let line = reply.voice.word("answer-all-well");
        return reply.first.push(line);
    }
    let text = digest::text(desk, &stands, &reply.voice);
    reply.first.push(text);
    if !rest.is_empty() {
        // whoever asks for the worst is told what is left out of it
        let names: Vec<String> = rest.iter().map(|stand| stand.unit.to_string()).collect();
        let args = [("units", Arg::from(reply.voice.all_of(&names)))];
        let line = reply.voice.say("answer-urgent-rest", &args);
        reply.first.push(line);
    }
}

/// The one trailer that a question names, else the one talked about.
pub(super) fn asked_of(hearing: &Hearing<'_>) -> Option<UnitName> {
    let mut named = hearing.names();
    if named.is_empty() {
        // "how many at 12": here it is no hour
        let words = hearing
            .text
            .split(|c: char| !(c.is_alphanumeric() || c == '-'));
        let units = words.filter_map(|word| known(&hearing.fleet, &UnitName::new(word)));
        named.extend(units.cloned());
    }
    match named.as_slice() {
        [unit] => Some(unit.clone()),
        [] => hearing.talk.unit_at(hearing.inbound.at).cloned(),
        _ => None,
    }
}

/// Who wrote of a trailer last, who is on the way to it, whose job it is, and who has which of its tasks.
fn who_has(hearing: &Hearing<'_>, unit: &UnitName, reply: &mut Reply<'_>) {
    let (desk, fleet, now) = (hearing.desk, &hearing.fleet, hearing.now);
    let voice = reply.voice;
    let named = ("unit", Arg::from(unit.as_str()));
    let word = last_word_there(desk, fleet, unit, now);
    reply.first.push(match word {
        Some(word) => {
            let args = [
                named.clone(),
                ("who", voice.person(&word.from).into_owned().into()),
                ("age", voice.age(word.at).into()),
            ];
            voice.say("answer-who-last", &args)
        }
        None => voice.say("answer-who-none", std::slice::from_ref(&named)),
    });
    let roads = desk.book.ahead().roads();
    for (person, _) in
        roads.filter(|(_, road)| road.unit.as_ref() == Some(unit) && road.until >= now)
    {
        let args = [
            named.clone(),
            ("who", voice.person(person).into_owned().into()),
        ];
        reply.first.push(voice.say("answer-who-road", &args));
    }
    let job = fleet.job_of(unit, now, None).filter(|job| now < job.to);
    if job.is_none() {
        plan_ahead::next_job(hearing, unit, reply);
    }
    let crew: Vec<String> = job
        .iter()
        .flat_map(|job| &job.crew)
        .map(|person| voice.person(person).into_owned())
        .collect();
    if !crew.is_empty() {
        let args = [("names", voice.all_of(&crew).into())];
        reply.first.push(voice.say("answer-who-crew", &args));
    }
    let tasks = desk.book.tasks().open_on(unit);
    reply.first.extend(tasks.map(|task| voice.task(task)));
}

/// How many people a trailer's site has, as last counted, or as booked.
fn guests(hearing: &Hearing<'_>, unit: &UnitName, reply: &mut Reply<'_>) {
    let case = hearing.asked_about(unit);
    let mut args = vec![("unit", Arg::from(unit.as_str()))];
    let told = case
        .situation()
        .and_then(|situation| situation.guests.last().copied());
    let key = match (told, case.job()) {
        (Some((at, guests)), _) => {
            args.push(("count", Arg::Count(guests.round() as i64)));
            args.push(("time", at.into()));
            "answer-guests-told"
        }
        (None, Some(job)) => {
            args.push(("count", Arg::Count(job.guests.round() as i64)));
            "answer-guests-booked"
        }
        (None, None) => "answer-guests-none",
    };
    let line = reply.voice.say(key, &args);
    reply.first.push(line);
}

/// Where everybody is who wrote within the day, and who did not.
pub(super) fn everybody(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    let mut quiet = Vec::new();
    let mut rows = Vec::new();
    for member in hearing.fleet.crew.values() {
        match whereabouts(hearing, member, reply) {
            Some(line) => rows.push(line),
            None => quiet.push(member.name.clone()),
        }
    }
    rows.truncate(ROWS);
    reply.first.extend(rows);
    quiet.truncate(ROWS);
    if !quiet.is_empty() {
        let args = [("names", reply.voice.all_of(&quiet).into())];
        let line = reply.voice.say("answer-where-quiet", &args);
        reply.first.push(line);
    }
}

/// Says where a person is by their own words: on the road, alone at work, or where they wrote from last.
pub(super) fn whereabouts(
    hearing: &Hearing<'_>,
    member: &CrewMember,
    reply: &Reply<'_>,
) -> Option<String> {
    let (book, now, voice) = (&hearing.desk.book, hearing.now, &reply.voice);
    let mut args = vec![who(member)];
    if let Some(road) = book.ahead().road(&member.id, now) {
        let mut key = "answer-where-road".to_owned();
        if let Some(unit) = &road.unit {
            args.push(("unit", unit.as_str().into()));
            key.push_str("-unit");
        }
        if let Some(eta) = road.eta {
            args.push(("time", eta.into()));
            key.push_str("-eta");
        }
        return Some(voice.say(&key, &args));
    }
    let sent = book.sent(&member.id).iter().rev();
    let (unit, at) = sent
        .filter(|sent| sent.at <= now && now - sent.at <= FRESH)
        .find_map(|sent| Some((sent.units.first()?.clone(), sent.at)))?;
    args.push(("unit", unit.as_str().into()));
    args.push(("age", voice.age(at).into()));
    let site = hearing
        .fleet
        .job_of(&unit, at, None)
        .and_then(|job| hearing.fleet.site_of(job));
    let key = match site {
        Some(site) => {
            args.push(("site", site.name.clone().into()));
            "answer-where-last"
        }
        None => "answer-where-last-no-site",
    };
    Some(voice.say(key, &args))
}

fn who(member: &CrewMember) -> (&'static str, Arg<'_>) {
    ("who", Arg::from(member.name.as_str()))
}

/// The tasks whose time is past.
fn late(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    let late = digest::late(hearing.desk, hearing.now);
    let text = match late.is_empty() {
        true => reply.voice.word("answer-late-none"),
        false => reply.voice.tasks(late),
    };
    reply.first.push(text);
}

/// The pump trucks that are wanted or called, the soonest first.
fn trucks(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    let open = hearing.desk.book.tasks().open();
    let pumps: Vec<&Task> = open.filter(|task| task.kind == TaskKind::PumpOut).collect();
    let text = match pumps.is_empty() {
        true => reply.voice.word("answer-trucks-none"),
        false => reply.voice.tasks(pumps),
    };
    reply.first.push(text);
}

/// The units in service of which nobody has said a word for too long.
fn silent(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    let silent = |(unit, kept): (&UnitName, &crate::book::UnitBook)| {
        let state = kept.state();
        let job = hearing.fleet.job_of(unit, hearing.now, None)?;
        let rules::Silence {
            since,
            late,
            deep_cold,
        } = rules::silence(job, state)?;
        // as the digest has it: shut doors are silent in deep cold alone
        let watched = deep_cold || job.is_open(hearing.now);
        (watched && late <= hearing.now).then(|| (since, unit.clone()))
    };
    let mut silent: Vec<(DateTime<Utc>, UnitName)> =
        hearing.desk.book.units().filter_map(silent).collect();
    silent.sort();
    silent.truncate(ROWS);
    let units = hearing.fleet.trailers.keys();
    let mut unheard: Vec<(DateTime<Utc>, &UnitName)> = units
        .filter_map(|unit| {
            digest::unheard(hearing.desk, &hearing.fleet, unit, hearing.now).map(|at| (at, unit))
        })
        .filter(|(_, unit)| !silent.iter().any(|(_, other)| other == *unit))
        .collect();
    // the doors that opened last are today's
    unheard.sort_by(|a, b| b.cmp(a));
    unheard.truncate(ROWS);
    for (opened, unit) in &unheard {
        let args = [
            ("unit", Arg::from(unit.as_str())),
            ("time", (*opened).into()),
        ];
        let line = reply.voice.say("answer-silent-all-along", &args);
        reply.first.push(line);
    }
    if silent.is_empty() && unheard.is_empty() {
        let line = reply.voice.word("answer-silent-none");
        reply.first.push(line);
    }
    for (since, unit) in &silent {
        let args = [
            ("unit", Arg::from(unit.as_str())),
            ("age", reply.voice.age(*since).into()),
        ];
        let line = reply.voice.say("answer-silent", &args);
        reply.first.push(line);
    }
}

/// Which waste tanks fill first, and the pump-outs that are asked for.
fn fills_first(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    let (desk, now) = (hearing.desk, hearing.now);
    let units: Vec<&UnitName> = digest::told_of(desk, &hearing.fleet, now, None).collect();
    let mut stands = Vec::new();
    for unit in units.into_iter().take(FORECAST) {
        let (case, _, stand) = digest::look(desk, &hearing.fleet, unit, now);
        if stand.waste.is_some_and(|waste| waste.p10.is_some()) {
            reply.foresee(&case);
        }
        stands.push(stand);
    }
    let tasks = desk.book.tasks();
    let mut told: Vec<u32> = Vec::new();
    for fill in digest::fills(desk, &stands, now).iter().take(ROWS) {
        let mut line = fill_line(fill, now, reply);
        if let Some(task) = tasks.open_task(&fill.stand.unit, TaskKind::PumpOut) {
            line.push(' ');
            line.push_str(&reply.voice.task(task));
            told.push(task.id);
        }
        reply.first.push(line);
    }
    let mut others: Vec<&Task> = tasks
        .open()
        .filter(|task| task.kind == TaskKind::PumpOut && !told.contains(&task.id))
        .collect();
    others.sort_by_key(|task| (task.due.is_none(), task.due, task.id));
    others.truncate(ROWS);
    for task in others {
        let line = reply.voice.task(task);
        reply.first.push(line);
    }
    if reply.first.is_empty() {
        let line = reply.voice.word("answer-fills-none");
        reply.first.push(line);
    }
}

/// Says when a waste tank is at its stop level, and how sure that is.
fn fill_line(fill: &Fill<'_>, now: DateTime<Utc>, reply: &Reply<'_>) -> String {
    let mut args = vec![
        ("unit", Arg::from(fill.stand.unit.as_str())),
        ("limit", Arg::Count(digest::FULL_PCT.round() as i64)),
    ];
    let early = fill.stand.waste.and_then(|waste| waste.p10);
    let key = match (fill.likely, early) {
        _ if fill.at <= now => "answer-fills-now",
        (true, Some(early)) => {
            args.push(("time", fill.at.into()));
            args.push(("due", early.into()));
            "answer-fills"
        }
        _ => {
            args.push(("time", fill.at.into()));
            "answer-fills-perhaps"
        }
    };
    reply.voice.say(key, &args)
}

/// Returns the tasks that "done" and no more can mean: those the sender has taken, else those of the trailer talked of; and
/// whether they are the sender's.
pub(in crate::desk) fn tasks_in_hand(hearing: &Hearing<'_>) -> (Vec<u32>, bool) {
    let tasks = hearing.desk.book.tasks();
    let me = &hearing.member.id;
    let mine = tasks
        .open()
        .filter(|task| task.taken_by.as_ref() == Some(me));
    let mut ids: Vec<u32> = mine.map(|task| task.id).collect();
    let are_mine = !ids.is_empty();
    if ids.is_empty()
        && let Some(unit) = hearing.talk.unit_at(hearing.inbound.at)
    {
        ids.extend(tasks.open_on(unit).map(|task| task.id));
    }
    (ids, are_mine)
}
