//! One message held against the step of a check that waits for its sender.

use super::super::receive::Hearing;
use super::super::settle::{self, Settled};
use super::answers::{Answers, Own};
use super::beside::{
    keep_what_stands, never_wrong, not_of_others, of_the_outlet, only_the_answer, stays_off,
};
use super::logged::report;
use super::phrase::Phrases;
use super::said::{self, Message, Said};
use super::trips::{
    dizzy_from_a_shock, locked_in_is_out, of_the_pump, plugged_in_alone, same_trip, smelled_alone,
    unplugged_for_the_test,
};
use super::{GUARD_LASTS, Outcome, course_of, danger, outcome, over, phrase, step_of};
use crate::dialogue::{CHECK_LASTS, Check, PAUSE};
use crate::fleet::Role;
use crate::heard::{Ask, Entry, Fault, Language, PlanKind, ReadingKey, UnitName};
use crate::outlook::runs_on_tank;
use crate::rules::{Asks, Sought, Step, Then};

/// Up to this level a tank is as good as empty: a pump draws air from it. Common practice, no source.
pub(super) const EMPTY_PCT: f64 = 5.0;

/// The step that asks whether the fresh tank is empty: a level answers it.
pub(super) const EMPTY_STEP: &str = "step-fresh-empty";
/// The step that asks how full it is.
const LEVEL_STEP: &str = "step-fresh-level";

/// Answers, each with the number of its step.
type Numbered = Vec<(u32, Said)>;

/// What a message says to the step that waits, and to those after it.
#[derive(Default)]
pub(in crate::desk) struct Took {
    pub(super) said: Numbered,
    /// The load that was found at fault.
    pub(super) culprit: Option<String>,
    /// How many resets the message tells of.
    pub(super) resets: u32,
    /// The check of another person that is taken over.
    pub(super) over: Option<over::Over>,
}

impl Took {
    /// Tells whether the message says one thing to the step that waits, and no more.
    pub(super) fn is(&self, said: Said) -> bool {
        matches!(self.said.as_slice(), [(_, only)] if *only == said)
    }
}

/// Holds a message against the sender's open step. What it reports by that, a reading, a fix or a person hurt, joins what
/// the message reports.
pub(in crate::desk) fn take(hearing: &mut Hearing<'_>, settled: &mut Settled) -> Option<Took> {
    same_trip(hearing, settled);
    locked_in_is_out(hearing, settled);
    if let Some(over) = over::from_another(hearing) {
        return Some(Took {
            over: Some(over),
            ..Took::default()
        });
    }
    let check = at_hand(hearing)?;
    let step = step_of(&check)?;
    // "stop check" holds a word that the reader may take for more
    let ordered = hearing.desk.answers.orders(hearing.text, &check).is_some();
    if tells_of_a_danger(settled, &check, step) {
        return None;
    }
    bring_home(hearing, settled, &check, step);
    of_the_pump(hearing, settled, &check);
    not_of_others(hearing, settled, &check);
    never_wrong(hearing, settled, &check);
    of_the_outlet(hearing, settled, &check, step);
    only_the_answer(hearing, settled, &check, step);
    if !ordered && names_another(hearing, settled, &check, step) {
        return None;
    }
    dizzy_from_a_shock(hearing, settled, &check);
    adopt(settled, &check, step);
    let told = told_of(settled, &check).cloned();
    // "12 open" is a report, "both open" an answer
    let of_the_unit = told
        .as_ref()
        .is_some_and(|entry| !entry.is_empty() && said::of_opening(entry));
    if of_the_unit && names_its_unit(hearing) {
        return None;
    }
    let (said, culprit) = answered(hearing, &check, step, told.as_ref())?;
    settled.from_context = None;
    take_out_of_the_reports(hearing, settled, &check, &said, ordered);
    if culprit.is_some() {
        stays_off(settled, &check);
    } else {
        unplugged_for_the_test(hearing, settled, &check);
        plugged_in_alone(hearing, settled, &check);
        keep_what_stands(hearing, settled, &check, &said);
    }
    for (number, said) in &said {
        let place = Check {
            step: *number,
            mending: check.mending && *number == check.step,
            ..check.clone()
        };
        if let Some(step) = step_of(&place) {
            report(settled, &place, step, *said, hearing.inbound.at);
        }
    }
    smelled_alone(hearing, settled, &check);
    Some(Took {
        said,
        culprit,
        resets: hearing.desk.answers.resets_told(hearing.text),
        over: None,
    })
}

/// Tells whether a message reports a danger beside a check that is of none: then it is about that, and answers nothing.
fn tells_of_a_danger(settled: &Settled, check: &Check, step: &Step) -> bool {
    let reports = settled.reports.iter().map(|(.., entry)| entry);
    let danger = |fault: &Fault| Fault::DANGERS.contains(fault);
    let asks_for_one = matches!(step.then, Then::Report(fault) if danger(&fault));
    !asks_for_one
        && !danger(&check.fault)
        && reports
            .chain(&settled.homeless)
            .any(|entry| entry.faults.iter().any(danger))
}

/// Returns the check whose step waits for this message; none where something newer does.
fn at_hand(hearing: &Hearing<'_>) -> Option<Check> {
    let check = hearing.talk.checks.last()?;
    let at = hearing.inbound.at;
    let over = at < check.asked || at - check.asked > CHECK_LASTS;
    // a step of setting up or leaving that was asked later, a newer question of another kind
    let round = hearing.talk.round.as_ref();
    let stands_later = round.is_some_and(|round| round.asked > check.asked);
    let question = hearing.talk.question_at(at);
    let rival = question.is_some_and(|question| question.asked > check.asked);
    let taken = over || stands_later || rival || hearing.inbound.replaces.is_some();
    // what was taken back is looked into no more, even where its check was not ended yet
    let kept = hearing.desk.book.unit(&check.unit);
    let gone = !kept.is_some_and(|kept| kept.state().has(check.fault));
    let between = gone || danger::stands_between(hearing, check);
    (!taken && !between && !asked_after(hearing, check)).then(|| check.clone())
}

/// Reads a message as the answer to the step that waits, and to those after it. With it the load that was found at fault.
fn answered(
    hearing: &Hearing<'_>,
    check: &Check,
    step: &'static Step,
    told: Option<&Entry>,
) -> Option<(Numbered, Option<String>)> {
    let question = questions(hearing, step);
    let topic = || topic(hearing, check);
    let on_site = hearing.member.role != Role::Dispatcher;
    let asked_ago = hearing.inbound.at - check.asked;
    let message = Message {
        heard: &hearing.heard,
        text: hearing.text,
        told,
        question: &question,
        topic: &topic,
        after: course_of(check)
            .get(check.step as usize + 1..)
            .unwrap_or_default(),
        fresh: !check.waits && on_site && asked_ago <= GUARD_LASTS,
    };
    let answers = &hearing.desk.answers;
    if let Some(load) = culprit(answers, &message, check, step) {
        let load = load.to_owned();
        return Some((vec![(check.step, Said::No)], Some(load)));
    }
    if tank_is_no_help(hearing, check, told) {
        return Some((vec![(check.step, Said::Resume)], None));
    }
    if let Some(number) = tank_is_empty(hearing, check, told) {
        return Some((vec![(number, Said::Number(0.0))], None));
    }
    let said = tank_level(check, step, told)
        .or_else(|| answers.read(&message, check, step))
        .and_then(|said| in_time(hearing, check, told, said));
    let mut all: Numbered = said.iter().map(|said| (check.step, *said)).collect();
    let goes_on = match said {
        Some(said) => outcome(check, step, said) == Outcome::RuledOut,
        None => asked_ago <= PAUSE && answers.may_answer_ahead(&message),
    };
    if goes_on || said == Some(Said::Unclear) && asked_ago <= PAUSE {
        let taken = said.filter(|said| *said != Said::Unclear);
        let ahead = read_on(answers, &message, check, taken.map(|_| step));
        if !ahead.is_empty() && said == Some(Said::Unclear) {
            all.clear();
        }
        all.extend(ahead);
    }
    (!all.is_empty()).then_some((all, None))
}

/// Reads a level of the fresh tank as whether it is empty, where that is asked.
fn tank_level(check: &Check, step: &Step, told: Option<&Entry>) -> Option<Said> {
    let level = told?.readings.value(ReadingKey::FreshPct)?;
    let empty = level <= EMPTY_PCT;
    match step.key == EMPTY_STEP {
        // it runs on and the tank was not filled: what was said to do is said again
        true if check.mending => empty.then_some(Said::Resume),
        true => Some(if empty { Said::Yes } else { Said::No }),
        false => None,
    }
}

/// Tells whether the tank of a trailer on site water is told to be empty while there is none: its selector, or the hose.
pub(super) fn tank_is_no_help(hearing: &Hearing<'_>, check: &Check, told: Option<&Entry>) -> bool {
    let level = told.and_then(|entry| entry.readings.value(ReadingKey::FreshPct));
    let empty = level.is_some_and(|level| level <= EMPTY_PCT);
    let dry = matches!(check.fault, Fault::NoWater | Fault::LowFlow);
    empty && dry && !check.mending && !runs_from_its_tank(hearing, check)
}

/// Tells whether the water of a check comes from the trailer's own tank.
fn runs_from_its_tank(hearing: &Hearing<'_>, check: &Check) -> bool {
    let case = hearing.asked_about(&check.unit);
    let site = case.situation().and_then(|situation| situation.site);
    runs_on_tank(&case.now, site)
}

/// Finds the step that asks how full the fresh tank is, at hand or later, where a trailer that runs from it is told to be out
/// of water: whatever is asked, that is what is wrong.
fn tank_is_empty(hearing: &Hearing<'_>, check: &Check, told: Option<&Entry>) -> Option<u32> {
    let level = told?.readings.value(ReadingKey::FreshPct)?;
    let at = course_of(check)
        .iter()
        .position(|it| it.key == LEVEL_STEP)?;
    let at = u32::try_from(at).ok()?;
    let from_it = runs_from_its_tank(hearing, check);
    (level <= EMPTY_PCT && from_it && !check.mending && check.step <= at).then_some(at)
}

/// Tells what an answer counts for by the time since its question: long after it a bare word may mean anything.
fn in_time(hearing: &Hearing<'_>, check: &Check, told: Option<&Entry>, said: Said) -> Option<Said> {
    let late = hearing.inbound.at - check.asked > PAUSE;
    let orders = hearing.desk.answers.orders(hearing.text, check).is_some();
    let reported = told.is_some_and(|entry| !entry.readings.is_empty());
    match said {
        _ if orders => Some(said),
        Said::Mended | Said::Resume | Said::Stop | Said::Back | Said::Tripped => Some(said),
        Said::Number(_) if reported => Some(said),
        // thanks and the like, after a word on something else or a while
        Said::Unclear if late || check.waits => None,
        _ if late => Some(Said::Paused),
        _ => Some(said),
    }
}

/// Takes out of the reports what the message means as an answer alone.
fn take_out_of_the_reports(
    hearing: &mut Hearing<'_>,
    settled: &mut Settled,
    check: &Check,
    all: &[(u32, Said)],
    ordered: bool,
) {
    if ordered {
        // "what?" asks for the step, not how things stand
        hearing.heard.ask = None;
        hearing.heard.command = None;
    }
    if check.fault == Fault::Shock && all.iter().all(|(_, said)| *said == Said::Unclear) {
        // "yeah 10" is no reading: the question comes again
        hearing.heard.unclear.clear();
    }
    let aside = all.iter().all(|(_, said)| {
        matches!(
            said,
            Said::Resume | Said::Unclear | Said::Back | Said::Stop | Said::Tripped
        )
    });
    if aside && !ordered {
        return;
    }
    // "open" and "closed" mean a valve here, unless the step asks for the trailer
    let means_it = all.iter().any(|(number, _)| {
        let step = course_of(check).get(*number as usize);
        step.is_some_and(|step| step.tells.is_some())
    });
    let skip = ordered || all.iter().any(|(_, said)| *said == Said::Skip);
    settled.reports.retain(|(unit, _, entry)| {
        *unit != check.unit || !(skip || !means_it && said::of_opening(entry))
    });
    hearing.heard.unclear.clear();
    hearing.heard.set_aside.clear();
}

/// Gives what names no trailer to the one of the check, where it answers the step in words of its own: the bot's last word
/// may have been of another trailer, the crew's is of this one.
fn bring_home(hearing: &Hearing<'_>, settled: &mut Settled, check: &Check, step: &Step) {
    let elsewhere = settled
        .from_context
        .as_ref()
        .is_some_and(|unit| *unit != check.unit);
    let late = hearing.inbound.at - check.asked > PAUSE;
    if !elsewhere || late || !hearing.heard.named.is_empty() || names_its_unit(hearing) {
        return;
    }
    if says_in_own_words(hearing, check, step) {
        for (unit, _, entry) in &mut settled.reports {
            *unit = check.unit.clone();
            entry.unit = Some(check.unit.clone());
        }
        settled.from_context = Some(check.unit.clone());
    }
}

/// Returns what a message reports on the trailer of the check.
fn told_of<'a>(settled: &'a Settled, check: &Check) -> Option<&'a Entry> {
    let mut reports = settled.reports.iter();
    let (.., entry) = reports.find(|(unit, ..)| *unit == check.unit)?;
    Some(entry)
}

/// Returns the question of a step in every language: its words say nothing against an answer.
fn questions(hearing: &Hearing<'_>, step: &Step) -> String {
    let desk = hearing.desk;
    let ask = |language| {
        let (fleet, now) = (&hearing.fleet, hearing.now);
        let voice = desk
            .replies
            .voice(language, fleet.style, fleet.time_zone, now);
        voice.word(step.key)
    };
    [Language::En, Language::Es].map(ask).join(" ")
}

/// Returns what a check is about, in every language: its fault, and the questions of its steps.
fn topic(hearing: &Hearing<'_>, check: &Check) -> String {
    let mut topic: Vec<String> = course_of(check)
        .iter()
        .map(|step| questions(hearing, step))
        .collect();
    for language in [Language::En, Language::Es] {
        let (fleet, now) = (&hearing.fleet, hearing.now);
        let replies = &hearing.desk.replies;
        let voice = replies.voice(language, fleet.style, fleet.time_zone, now);
        topic.push(voice.fault(check.fault));
    }
    topic.join(" ")
}

/// Tells whether the bot asked this person after their safety since the step was asked: a bare word answers that.
fn asked_after(hearing: &Hearing<'_>, check: &Check) -> bool {
    let clock = hearing.desk.book.ahead().alone(&hearing.member.id);
    clock.is_some_and(|clock| clock.asked.is_some_and(|asked| asked > check.asked))
}

/// Finds the load at fault: the one without which it holds, or with which it trips.
fn culprit<'a>(
    answers: &'a Answers,
    message: &Message<'_>,
    check: &Check,
    step: &Step,
) -> Option<&'a str> {
    // a breaker that holds with less on it was overloaded, and no load is at fault
    if check.fault != Fault::GfciTrip || phrase::is_question(message.text) {
        return None;
    }
    let load = answers.load(message.text)?;
    let held = answers.holds(message.text);
    let without = answers.takes_off(message.text) && held == Some(true);
    // told at an earlier step, too, where the words are those of that one
    let own = answers.own("step-plug-back", &Phrases::of(message.text));
    let plugs_back = step.key == "step-plug-back" || matches!(own, Own::Yes(_));
    let trips = matches!(own, Own::Yes(_)) || answers.names_a_trip(step, message.text);
    let with = plugs_back && held != Some(true) && trips;
    (without || with).then_some(load)
}

/// Tells whether all that a message plans or asks for is what the reader could place nowhere else.
fn only_wishes(hearing: &Hearing<'_>) -> bool {
    let mut plans = hearing.heard.plans.iter();
    plans.all(|plan| matches!(plan.kind, PlanKind::Other | PlanKind::Well))
}

/// Tells whether a message answers the step that waits for its sender by words of the step's own.
pub(in crate::desk) fn answers_in_own_words(hearing: &Hearing<'_>) -> bool {
    let Some(check) = at_hand(hearing) else {
        return false;
    };
    let late = check.waits || hearing.inbound.at - check.asked > PAUSE;
    let step = step_of(&check).filter(|_| !late);
    step.is_some_and(|step| says_in_own_words(hearing, &check, step))
}

/// Tells whether a message answers the step by words of its own, or those of its fault.
fn says_in_own_words(hearing: &Hearing<'_>, check: &Check, step: &Step) -> bool {
    let mended = format!("mended-{}", check.fault);
    let helps = check.mending || step.asks == Asks::IfMended;
    let keys = [
        (!check.mending).then_some(step.key),
        helps.then_some(mended.as_str()),
    ];
    let answers = &hearing.desk.answers;
    keys.into_iter().flatten().any(|key| {
        let mut words = Phrases::of(hearing.text);
        let spans = match answers.own(key, &words) {
            Own::Yes(spans) | Own::No(spans) => spans,
            _ => answers.unknown(key, &words),
        };
        words.cover(&spans);
        // "as soon as i flip it" puts nothing off
        !spans.is_empty() && !answers.has_uncovered(&words, "later")
    })
}

/// Reads what a message says to the steps after the one that waits: "power is off, nobody hurt, unit closed". What it finds
/// there comes first, but past no step that guards somebody and was not answered.
fn read_on(
    answers: &Answers,
    message: &Message<'_>,
    check: &Check,
    answered: Option<&'static Step>,
) -> Numbered {
    let mut read = Vec::new();
    let mut before: Vec<&Step> = answered.into_iter().collect();
    let mut guarded = answered.is_none() && step_of(check).is_some_and(Step::guards);
    let first = check.step + 1;
    for (number, step) in (first..).zip(message.after) {
        let said = match check.ahead.contains(&number) {
            true => None,
            false => answers.reads_on(message, check, &before, step),
        };
        let Some(said) = said else {
            guarded |= step.guards() && !check.ahead.contains(&number);
            continue;
        };
        let place = Check {
            step: number,
            mending: false,
            ..check.clone()
        };
        match outcome(&place, step, said) {
            Outcome::RuledOut => read.push((number, said)),
            Outcome::Found if !guarded || step.guards() => {
                read.push((number, said));
                break;
            }
            _ => {}
        }
        before.push(step);
    }
    read
}

/// Tells whether the message names the trailer it reports on.
pub(super) fn names_its_unit(hearing: &Hearing<'_>) -> bool {
    let mut entries = hearing.heard.entries.iter();
    entries.any(|entry| entry.unit.is_some())
}

/// Tells whether the message speaks of another trailer, or asks or orders something.
fn names_another(hearing: &Hearing<'_>, settled: &Settled, check: &Check, step: &Step) -> bool {
    let elsewhere = settled.reports.iter().any(|(unit, ..)| *unit != check.unit);
    let known = |name: &UnitName| settle::known(&hearing.fleet, name);
    let mut named = hearing.heard.named.iter().filter_map(known);
    let other = named.any(|unit| *unit != check.unit);
    let advice = matches!(&hearing.heard.ask, None | Some(Ask::Status { unit: None }));
    elsewhere
        || other
        || !advice
        || hearing.heard.command.is_some()
        || hearing
            .heard
            .plans
            .iter()
            .any(|plan| plan.kind != PlanKind::Well)
            && hearing.heard.answer.is_none()
            && !hearing.desk.answers.resumes(hearing.text)
            && !hearing.desk.answers.is_plain(hearing.text)
            && !(only_wishes(hearing) && says_in_own_words(hearing, check, step))
}

/// Takes a report without a trailer for the one at hand, where the step asks for what it tells.
fn adopt(settled: &mut Settled, check: &Check, step: &Step) {
    let Asks::For {
        what: Sought::Reading(key),
        ..
    } = step.asks
    else {
        return;
    };
    let fits = settled
        .homeless
        .as_ref()
        .is_some_and(|entry| entry.readings.value(key).is_some());
    if fits && let Some(mut entry) = settled.homeless.take() {
        entry.unit = Some(check.unit.clone());
        settled
            .reports
            .push((check.unit.clone(), check.asked, entry));
    }
}
