//! The question of the step that waits: past what is known already, and what reminds of it.

use super::super::answer::Reply;
use super::round::{Round, advance};
use super::{FRESH, JUST_BEFORE, JUST_NOW, LATELY, Outcome, RESETS, step_of};
use crate::dialogue::{Check, Course, PAUSE};
use crate::heard::{Ask, PlanKind, ReadingKey, Taps};
use crate::outlook::runs_on_tank;
use crate::reply::Arg;
use crate::rules::{Asks, Sought, Step, Then, WaterFrom, last_resort};

impl Round<'_> {
    /// Asks the step at hand, past those that need no asking; ends the check where none is left.
    pub(super) fn ask(&mut self, reply: &mut Reply<'_>, before: Option<&Check>, shortly: bool) {
        while let Some(mut check) = self.checks.pop() {
            let other = before
                .is_some_and(|before| before.unit != check.unit || before.fault != check.fault);
            if other {
                let name = reply.voice.fault(check.fault);
                reply.say(
                    "walk-back",
                    &[("unit", check.unit.as_str().into()), ("name", name.into())],
                );
            }
            if self.pass_known(&mut check, reply) {
                self.tell_ruled_out(reply);
                check.asked = self.hearing.now;
                check.waits = false;
                if let Some(step) = step_of(&check) {
                    reply.step = Some(question(&check, step, reply, shortly));
                    reply.step_answers = answers(&check, step);
                }
                self.checks.push(check);
                return;
            }
        }
    }

    /// Reminds of the check at hand, once, after a message on something else. A step that guards somebody is asked again
    /// after every message that says nothing.
    pub(super) fn remind(&mut self, reply: &mut Reply<'_>) {
        let asks = matches!(self.hearing.heard.ask, None | Some(Ask::Status { .. }));
        let silent = self.cases.is_empty()
            && self.hearing.heard.ask.is_none()
            && self.hearing.heard.command.is_none()
            && reply.findings.is_empty()
            && reply.first.is_empty()
            && self.hearing.heard.unclear.is_empty()
            && self
                .hearing
                .heard
                .plans
                .iter()
                .all(|plan| plan.kind == PlanKind::Well);
        let now = self.hearing.now;
        let Some(check) = self.checks.last_mut() else {
            return;
        };
        let Some(step) = step_of(check) else { return };
        let late = now - check.asked > PAUSE;
        let guards = step.guards() && !check.mending && !late;
        if silent && !late && (guards || !check.waits) {
            if !guards || super::tells_more(self.hearing, reply) {
                reply.say("walk-unread", &[]);
            }
            // asked again, it is the last thing said
            check.waits = !guards;
            check.asked = now;
            reply.step = Some(question(check, step, reply, true));
            return;
        }
        let of_this = self.cases.iter().all(|case| case.unit == check.unit);
        if asks && guards && of_this {
            check.asked = now;
            reply.step = Some(question(check, step, reply, true));
            return;
        }
        if asks && !check.waits {
            check.waits = true;
            let name = reply.voice.fault(check.fault);
            let args = [
                ("unit", Arg::from(check.unit.as_str())),
                ("name", name.into()),
                ("count", Arg::Count(i64::from(check.step) + 1)),
            ];
            let line = reply.voice.say("walk-waits", &args);
            reply.step = Some(line);
        }
    }

    /// Goes past the steps that are answered already; false where that ends the check.
    fn pass_known(&mut self, check: &mut Check, reply: &mut Reply<'_>) -> bool {
        while !check.mending {
            let Some(step) = step_of(check) else {
                self.tell_ruled_out(reply);
                reply.say("walk-no-more", &[]);
                let fault = format!("fault-{}", check.fault);
                self.call(check, last_resort(check.fault), &fault, reply);
                return false;
            };
            if self.has_no_use(check, step) || self.was_done(check, step, reply) {
                advance(check);
                continue;
            }
            if step.resets && self.resets(check) >= RESETS {
                self.no_third(check, reply);
                return false;
            }
            let Some(outcome) = self.was_read(check, step, reply) else {
                return true;
            };
            if !self.settle(check, step, outcome, reply) {
                return false;
            }
        }
        true
    }

    /// Tells whether a step asks for what was answered ahead, for water that does not come from there, or for what is
    /// reported already.
    fn has_no_use(&self, check: &Check, step: &Step) -> bool {
        let state = self.state(&check.unit);
        let from = match runs_on_tank(&state, self.site(&check.unit)) {
            true => WaterFrom::Tank,
            false => WaterFrom::Site,
        };
        check.ahead.contains(&check.step)
            || step.water_from.is_some_and(|wanted| wanted != from)
            || matches!(step.then, Then::Report(fault) if state.has(fault))
    }

    /// Tells whether what a step says to do was done lately, and says so.
    fn was_done(&mut self, check: &Check, step: &Step, reply: &mut Reply<'_>) -> bool {
        let state = self.state(&check.unit);
        let done = step.by.and_then(|event| Some((event, state.when(event)?)));
        let Some((event, at)) = done.filter(|(_, at)| self.hearing.now - *at <= LATELY) else {
            return false;
        };
        self.tell_ruled_out(reply);
        let what = reply.voice.event(event);
        let age = reply.voice.age(at);
        reply.say("walk-lately", &[("what", what.into()), ("age", age.into())]);
        true
    }

    /// Finds the reading that answers a step already: one of this trouble, taken a short while ago, and said with its age.
    fn was_read(&mut self, check: &Check, step: &Step, reply: &mut Reply<'_>) -> Option<Outcome> {
        let Asks::For {
            what: Sought::Reading(key),
            least,
            most,
        } = step.asks
        else {
            return None;
        };
        let state = self.state(&check.unit);
        let now = self.hearing.now;
        // what was read before the trouble began says nothing of it
        let began = state.faults.get(&check.fault);
        let since = began.map_or(now - FRESH, |began| (now - FRESH).max(*began - JUST_BEFORE));
        let value = state.value_since(key, since)?;
        let last = state.pressures.last();
        if key == ReadingKey::PressurePsi
            && last.is_some_and(|read| read.taps == Some(Taps::Running))
        {
            return None;
        }
        let at = state.readings.get(&key)?.at;
        if now - at > JUST_NOW {
            self.tell_ruled_out(reply);
            let what = reply.voice.reading(key, value, None);
            let age = reply.voice.age(at);
            reply.say(
                "walk-read-then",
                &[("what", what.into()), ("age", age.into())],
            );
        }
        Some(match (least..=most).contains(&value) {
            true => Outcome::RuledOut,
            false => Outcome::Found,
        })
    }
}

/// Returns the likely answers to a step, by their codes.
fn answers(check: &Check, step: &Step) -> &'static [&'static str] {
    match step.asks {
        _ if check.mending => &["yes", "no", "skip"],
        Asks::For { .. } => &["skip"],
        _ if step.guards() => &["yes", "no"],
        _ => &["yes", "no", "skip"],
    }
}

/// Puts the question of a step into words, with the answers it takes; shortly, only what it asks.
fn question(check: &Check, step: &Step, reply: &Reply<'_>, shortly: bool) -> String {
    let voice = &reply.voice;
    let (what, answers) = if check.mending {
        let did = voice.word(&format!("did-{}", step.cause));
        let works = voice.word(&format!("mended-{}", check.fault));
        let args = [("what", did.into()), ("words", works.into())];
        (voice.say("walk-mended-now", &args), "walk-answer-word")
    } else {
        let answers = match step.asks {
            Asks::For { .. } => "walk-answer-number",
            _ if step.guards() => "walk-answer-safe",
            _ => "walk-answer-word",
        };
        let what = voice.word(step.key);
        let what = if shortly { last_question(&what) } else { what };
        (what, answers)
    };
    let what = format!("{what} {}", voice.word(answers));
    let name = match check.course {
        Some(Course::Flicker) => voice.word("course-flicker"),
        None => voice.fault(check.steps_of),
    };
    voice.say(
        "walk-step",
        &[
            ("unit", check.unit.as_str().into()),
            ("name", name.into()),
            ("count", Arg::Count(i64::from(check.step) + 1)),
            ("what", what.into()),
        ],
    )
}

/// Returns the last sentence of a text that asks; the whole where none does.
fn last_question(text: &str) -> String {
    let Some(end) = text.rfind('?') else {
        return text.to_owned();
    };
    let start = text[..end].rfind(['.', '?']).map_or(0, |at| at + 1);
    text[start..=end].trim().to_owned()
}
