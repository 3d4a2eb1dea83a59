//! The question of the step that waits: past what is known already, and what reminds of it.

use super::super::answer::Reply;
use super::round::{Round, advance};
use super::{FRESH, LATELY, Outcome, RESETS, step_of};
use crate::dialogue::{Check, STEP_LASTS};
use crate::heard::{Ask, PlanKind};
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
        let guards = step.guards() && !check.mending && now - check.asked <= STEP_LASTS;
        if silent && (guards || !check.waits) {
            if !guards {
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
    fn pass_known(&self, check: &mut Check, reply: &mut Reply<'_>) -> bool {
        let state = self.state(&check.unit);
        let now = self.hearing.now;
        let from = if runs_on_tank(&state, self.site(&check.unit)) {
            WaterFrom::Tank
        } else {
            WaterFrom::Site
        };
        loop {
            if check.mending {
                return true;
            }
            let Some(step) = step_of(check) else {
                reply.say("walk-no-more", &[]);
                let fault = format!("fault-{}", check.fault);
                self.call(check, last_resort(check.fault), &fault, reply);
                return false;
            };
            if step.water_from.is_some_and(|wanted| wanted != from) {
                advance(check);
                continue;
            }
            if matches!(step.then, Then::Report(fault) if state.has(fault)) {
                advance(check);
                continue;
            }
            if step.resets && self.resets(check) >= RESETS {
                self.no_third(check, reply);
                return false;
            }
            let lately = step.by.and_then(|event| Some((event, state.when(event)?)));
            if let Some((event, at)) = lately.filter(|(_, at)| now - *at <= LATELY) {
                let what = reply.voice.event(event);
                let age = reply.voice.age(at);
                reply.say("walk-lately", &[("what", what.into()), ("age", age.into())]);
                advance(check);
                continue;
            }
            let Asks::For {
                what: Sought::Reading(key),
                least,
                most,
            } = step.asks
            else {
                return true;
            };
            let Some(value) = state.value_since(key, now - FRESH) else {
                return true;
            };
            let outcome = if (least..=most).contains(&value) {
                Outcome::RuledOut
            } else {
                Outcome::Found
            };
            if !self.settle(check, step, outcome, reply) {
                return false;
            }
        }
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
    let name = voice.fault(check.steps_of);
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
