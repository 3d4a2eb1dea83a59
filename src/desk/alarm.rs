//! Tells every dispatcher when a message reports a danger, and keeps the alarm open until somebody takes note of it.

use chrono::TimeDelta;

use super::Desk;
use super::answer::Reply;
use super::choices;
use super::inbound::Outgoing;
use super::on_road;
use super::others::other_dispatchers;
use super::receive::{Hearing, Texted};
use super::situate::Case;
use super::tick::{may_speak, of_task, silence_key};
use crate::book::{Alarm, AlarmChange, PowerState, Record, TaskChange};
use crate::finding::{Finding, FindingId, Level, TaskKind, Urgency};
use crate::fleet::{CrewMember, Role};
use crate::heard::{Command, CommandName, Event, Fault, ReadingKey, UnitName};
use crate::quantity::Measure;
use crate::reply::{Arg, Voice};

/// An alarm that was said within this long is not raised anew.
const ANEW: TimeDelta = TimeDelta::minutes(30);

/// Ends the alarms about a full tank that a pump-out emptied: "got it" takes note of none of them any more.
pub(super) fn end_of_the_tank(hearing: &Hearing<'_>, cases: &[Case], records: &mut Vec<Record>) {
    let pumped = |case: &&Case| case.report.events.contains(&Event::WastePumped);
    for case in cases.iter().filter(pumped) {
        let alarms = hearing.desk.book.alarms().iter();
        let of_it = |alarm: &Alarm| {
            alarm.unit.as_ref() == Some(&case.unit)
                && alarm.id.topic() == "waste"
                && alarm.level < Level::Danger
                && alarm.id != FindingId::WasteSpill
        };
        let over = alarms.filter(|(key, alarm)| of_it(alarm) && of_task(key).is_none());
        records.extend(over.map(|(key, _)| Record::Alarm {
            at: hearing.now,
            change: AlarmChange::Over { key: key.clone() },
        }));
    }
}

/// Ends the alarms that a word about a unit answers: it was silent, and now it is not.
pub(super) fn end_silence(
    hearing: &Hearing<'_>,
    cases: &[Case],
    words: &[UnitName],
    records: &mut Vec<Record>,
) {
    // a dispatcher who orders it shut is not there
    let there = |case: &&Case| !case.report.afar;
    let heard = cases.iter().filter(there).map(|case| &case.unit);
    for unit in heard.chain(words) {
        let key = silence_key(unit);
        if hearing.desk.book.alarms().contains_key(&key) {
            records.push(Record::Alarm {
                at: hearing.now,
                change: AlarmChange::Over { key },
            });
        }
    }
}

/// Raises an alarm for each danger among the findings. One that stands already is not raised again. `guessed` is the trailer
/// that the message did not name.
pub(super) fn raise(
    hearing: &Hearing<'_>,
    cases: &[Case],
    guessed: Option<&UnitName>,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let dangers: Vec<Finding> = reply
        .findings
        .iter()
        .filter(|finding| finding.level == Level::Danger && finding.urgency == Urgency::Now)
        .cloned()
        .collect();
    for finding in dangers {
        // of what was done each way is an alarm of its own
        let what = match finding.action.strip_prefix("site-") {
            Some(act) if act.starts_with("unsafe-") => act.to_owned(),
            _ => finding.id.to_string(),
        };
        let key = match &finding.unit {
            Some(unit) => format!("{what}:{unit}"),
            None => format!("{what}:{}", hearing.member.id),
        };
        let stands = was_raised_lately(hearing, &key);
        let another = stands && another_is_hurt(hearing, &finding);
        if stands && !another {
            continue;
        }
        records.push(raised(hearing, key, &finding));
        let place = finding
            .unit
            .as_ref()
            .and_then(|unit| cases.iter().find(|case| case.unit == *unit))
            .and_then(Case::place)
            .or_else(|| {
                let job = hearing
                    .fleet
                    .job_of(finding.unit.as_ref()?, hearing.now, None)?;
                Some(hearing.fleet.site_of(job)?.name.clone())
            })
            // on the road it is not where the plan has it
            .filter(|_| !on_road::is_there(hearing, &finding));
        for (other, voice) in other_dispatchers(hearing) {
            let mut args = vec![
                ("signal", voice.word("signal-danger").into()),
                ("who", hearing.member.name.as_str().into()),
                ("what", voice.name_of(&finding).into()),
            ];
            let mut key = "alarm-person";
            if let Some(unit) = &finding.unit {
                args.push(("unit", unit.as_str().into()));
                key = "alarm-danger-no-site";
            }
            if let Some(place) = &place {
                args.push(("site", place.as_str().into()));
                key = "alarm-danger";
            }
            if another {
                key = "alarm-danger-another";
            }
            let mut text = voice.say(key, &args);
            let site = hearing.site.as_ref().filter(|_| finding.unit.is_none());
            if let Some(site) = site.and_then(|site| hearing.fleet.sites.get(site)) {
                text.push(' ');
                text.push_str(&voice.say("alarm-site", &[("site", site.name.as_str().into())]));
            }
            let site = hearing.elsewhere.as_ref();
            if let Some(site) = site.and_then(|site| hearing.fleet.sites.get(site)) {
                let args = [("site", site.name.as_str().into())];
                text.push(' ');
                text.push_str(&voice.say("alarm-site-differs", &args));
            }
            if on_road::is_unknown(hearing, &finding) {
                text.push(' ');
                text.push_str(&voice.word("alarm-where"));
            }
            if finding.unit.is_some() && finding.unit.as_ref() == guessed {
                text.push(' ');
                text.push_str(&voice.word("alarm-guessed"));
            }
            reply
                .others
                .push(letter(&other.id, text, Level::Danger, &voice));
        }
    }
}

/// Tells the dispatchers at once of sewage that comes out, or is about to: the whole unit has to close.
pub(super) fn tell_of_sewage(
    hearing: &Hearing<'_>,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let overflows = |finding: &&Finding| match finding.id {
        FindingId::WasteSpill => true,
        FindingId::WasteCloseNow => finding.action == "waste-close-now-unit",
        _ => false,
    };
    let found: Vec<Finding> = reply.findings.iter().filter(overflows).cloned().collect();
    for finding in found {
        let Some(unit) = &finding.unit else { continue };
        let key = format!("{}:{unit}", finding.id);
        if was_raised_lately(hearing, &key) {
            continue;
        }
        records.push(raised(hearing, key, &finding));
        for (other, voice) in other_dispatchers(hearing) {
            let args = [("who", hearing.member.name.as_str().into())];
            let head = voice.say("alarm-told-by", &args);
            let told = voice.finding(&finding, true);
            let text = format!("{head}\n{told}");
            reply
                .others
                .push(letter(&other.id, text, finding.level, &voice));
        }
    }
}

/// Reads "copy", "on it", "i called 911" of a dispatcher to whom a danger was just alarmed as the "got it" that it is: what
/// was asked of them since is answered first.
pub(super) fn noted(desk: &Desk, member: &CrewMember, message: &Texted<'_>) -> Option<Command> {
    let standing = desk.book.alarms().values();
    let danger = |alarm: &&Alarm| alarm.acknowledged.is_none() && alarm.level == Level::Danger;
    let said = standing.filter(danger).map(|alarm| alarm.said).max()?;
    let talk = message.talk;
    let question = talk.question_at(message.at).map(|question| question.asked);
    let steps = talk.checks.iter().map(|check| check.asked);
    let rounds = talk.round.iter().map(|round| round.asked);
    let asked = steps.chain(rounds).chain(question).max();
    let answers_that = asked.is_some_and(|asked| asked >= said);
    let late = message.at - said > ANEW;
    if member.role != Role::Dispatcher || answers_that || late {
        return None;
    }
    let copies = |text: &str| {
        let lists = [("tell", "copies"), ("alarm", "noted")];
        let is = |(of, list): &(&str, &str)| desk.phrases.is(of, list, text);
        lists.iter().any(is)
    };
    // "10-4 calling him" is both
    let rest = desk.phrases.after("tell", "copies", message.text);
    let both = || rest.is_some_and(copies);
    (copies(message.text) || both()).then(|| Command {
        name: CommandName::GotIt,
        task: None,
        rest: String::new(),
    })
}

/// Tells the dispatchers of a trailer that freezes with water aboard and no heat, once until it is warm again. Where they
/// were spoken to just now, its task does it when it is late.
pub(super) fn tell_of_no_heat(
    hearing: &Hearing<'_>,
    cases: &[Case],
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let found = reply.findings.iter().filter(|finding| freezes(finding));
    let found: Vec<Finding> = found.cloned().collect();
    for finding in found {
        let case = cases
            .iter()
            .find(|case| finding.unit.as_ref() == Some(&case.unit));
        let Some(case) = case.filter(|case| is_without_heat(case)) else {
            continue;
        };
        let key = no_heat_key(&case.unit);
        let harm = hearing.now + FREEZES_WITHIN;
        // without power a hose may block within minutes
        let may = is_dead(case) || may_speak(hearing.desk, &hearing.fleet, hearing.now, Some(harm));
        let Some(air) = case.air_f().filter(|_| may) else {
            continue;
        };
        if hearing.desk.book.alarms().contains_key(&key) {
            continue;
        }
        records.push(raised(hearing, key, &finding));
        // this is the alarm of its task too
        let tasks = reply.board.tasks().open_on(&case.unit);
        let tasks = tasks.filter(|task| OF_NO_HEAT.contains(&task.kind));
        let ids: Vec<u32> = tasks.map(|task| task.id).collect();
        for id in ids {
            reply.board.change(TaskChange::Escalated { id });
        }
        for (other, voice) in other_dispatchers(hearing) {
            let text = no_heat_text(case, air, &hearing.member.id, &voice);
            reply
                .others
                .push(letter(&other.id, text, Level::Warning, &voice));
        }
    }
}

/// Tells the dispatchers of a tank that was read full by somebody else, once until it was pumped: the clock would say it only
/// where it is foreseen.
pub(super) fn tell_of_full(
    hearing: &Hearing<'_>,
    cases: &[Case],
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let full = |finding: &&Finding| {
        finding.id == FindingId::WasteCloseNow && finding.urgency >= Urgency::Soon
    };
    let found: Vec<Finding> = reply.findings.iter().filter(full).cloned().collect();
    for finding in found {
        let Some(unit) = finding.unit.clone() else {
            continue;
        };
        let read = |case: &&Case| {
            let readings = &case.report.readings;
            let level = [ReadingKey::WastePct, ReadingKey::WasteGal];
            case.unit == unit && level.iter().any(|key| readings.value(*key).is_some())
        };
        let key = full_key(&finding);
        let told = hearing.desk.book.alarms().contains_key(&key);
        let truck = reply.board.tasks().open_task(&unit, TaskKind::PumpOut);
        let here = truck.is_some_and(|task| task.here.is_some());
        if told || here || !cases.iter().any(|case| read(&case)) {
            continue;
        }
        // who is told to call the truck, or is told all that was written, knows of it
        let task = truck.cloned();
        let calls = |voice: &Voice<'_>, to: &str| {
            let head = task.as_ref().map(|task| voice.task_head(task));
            let action = voice.action(&finding);
            let mut others = reply.others.iter().filter(|out| out.to == to);
            others.any(|out| {
                let text = out.text.text();
                text.contains(&action) || head.as_ref().is_some_and(|head| text.contains(head))
            })
        };
        let told: Vec<_> = other_dispatchers(hearing)
            .filter(|(other, voice)| !calls(voice, &other.id))
            .collect();
        if told.is_empty() {
            continue;
        }
        records.push(raised(hearing, key, &finding));
        for (other, voice) in told {
            let who = voice.person(&hearing.member.id).into_owned();
            let mut text = voice.say("alarm-read-by", &[("who", who.into())]);
            text.push('\n');
            text.push_str(&voice.finding(&finding, true));
            if let Some(task) = &task {
                text.push('\n');
                text.push_str(&voice.task(task));
            }
            let level = finding.level;
            reply.others.push(letter(&other.id, text, level, &voice));
        }
    }
}

/// Names the alarm of a tank that is full, or may be: what the clock says of it has the same.
pub(super) fn full_key(finding: &Finding) -> String {
    let unit = finding.unit.as_ref().map_or("", UnitName::as_str);
    format!("{}:{unit}:read", finding.id)
}

/// The tasks that a trailer without heat in frost asks for.
const OF_NO_HEAT: &[TaskKind] = &[TaskKind::Heater, TaskKind::Drain];

/// Says that a trailer freezes without heat, and who said so.
pub(super) fn no_heat_text(case: &Case, air_f: f64, who: &str, voice: &Voice<'_>) -> String {
    let mut args = vec![
        ("unit", Arg::from(case.unit.as_str())),
        ("value", Arg::Number(air_f, Measure::DegF)),
        ("who", voice.person(who).into_owned().into()),
    ];
    let dead = is_dead(case);
    let mut key = match dead {
        true => "alarm-no-power-frost",
        false => "alarm-no-heat",
    };
    if let Some(place) = case.place() {
        args.push(("site", place.into()));
        key = match dead {
            true => "alarm-no-power-frost-site",
            false => "alarm-no-heat-site",
        };
    }
    voice.say(key, &args)
}

/// Water standing in hose and lines may block within this long in hard frost (common practice, no source).
const FREEZES_WITHIN: TimeDelta = TimeDelta::hours(1);

/// Names the alarm of a trailer that freezes without heat.
pub(super) fn no_heat_key(unit: &UnitName) -> String {
    format!("{OF_NO_HEAT_KEY}{unit}")
}

/// What the key of such an alarm begins with.
const OF_NO_HEAT_KEY: &str = "no-heat:";

/// Tells whether an alarm is of a trailer that freezes without heat.
pub(super) fn is_of_no_heat(key: &str) -> bool {
    key.starts_with(OF_NO_HEAT_KEY)
}

/// Tells whether a finding is that water aboard freezes about now.
pub(super) fn freezes(finding: &Finding) -> bool {
    finding.id == FindingId::ColdFreezeSoon && finding.urgency == Urgency::Now
}

/// Tells whether a trailer was reported to have no heat: its heater off, its rooms cold, or no power.
pub(super) fn is_without_heat(case: &Case) -> bool {
    case.now.heater_off() || case.now.has(Fault::NoHeat) || is_dead(case)
}

/// Tells whether the trailer's power was lost, by whatever word: an electric heater is off with it.
fn is_dead(case: &Case) -> bool {
    matches!(case.now.power(), PowerState::Lost(_))
}

/// Tells whether an alarm was said so lately that it is not raised anew.
fn was_raised_lately(hearing: &Hearing<'_>, key: &str) -> bool {
    let alarm = hearing.desk.book.alarms().get(key);
    alarm.is_some_and(|alarm| hearing.now - alarm.said < ANEW)
}

/// Raises the alarm about a finding.
fn raised(hearing: &Hearing<'_>, key: String, finding: &Finding) -> Record {
    let change = AlarmChange::Raised {
        key,
        id: finding.id,
        unit: finding.unit.clone(),
        level: finding.level,
    };
    let at = hearing.now;
    Record::Alarm { at, change }
}

/// Writes an alarm to somebody, with how it is stopped.
fn letter(to: &str, text: String, level: Level, voice: &Voice<'_>) -> Outgoing {
    let text = format!("{text}\n{}", voice.word("alarm-answer"));
    Outgoing::to(to, text)
        .of_level(level)
        .offering(vec![choices::got_it(voice)])
}

/// "A lady slipped, too": tells whether somebody is told to be hurt, by a word for a person that names them anew, where
/// somebody was hurt before.
fn another_is_hurt(hearing: &Hearing<'_>, finding: &Finding) -> bool {
    let says = |list| hearing.desk.phrases.holds("hurt", list, hearing.text);
    finding.id == FindingId::of_fault(Fault::PersonHurt) && says("somebody") && !says("known")
}
