//! A batch of messages: worked through one after the other, written as one, or not at all.

use std::collections::HashSet;
use std::panic::{AssertUnwindSafe, catch_unwind};

use tracing::error;

use super::NotDone;
use super::letter::{Letter, Note, Parcel, PressAnswer};
use super::outbox::Edit;
use super::turns::Turns;
use super::work::{Work, value};
use crate::book::{MessageKey, Personal};
use crate::desk::{Body, Inbound, Outgoing, Turn};
use crate::finding::Level;
use crate::fleet::CrewMember;
use crate::store::{Draft, StoreError};

/// What becomes of a batch.
#[derive(Default)]
struct Batch {
    keys: HashSet<MessageKey>,
    drafts: Vec<Draft>,
    dangers: Vec<(MessageKey, Outgoing)>,
    /// Presses that are taken, by the network's name for each, with what to show whoever pressed.
    presses: Vec<PressAnswer>,
    /// Taking in a turn broke off half-way.
    half: bool,
}

impl<T: Turns> Work<T> {
    /// Works through messages and writes them down; none of them counts where that fails.
    pub(super) fn batch(&mut self, inbound: &[Inbound]) -> Result<(), NotDone> {
        if let Err(error) = self.mend() {
            let dangers = self.first_words(inbound);
            self.say_not_logged(inbound, dangers);
            return Err(error);
        }
        let mut batch = Batch::default();
        for message in inbound {
            if let Err(error) = self.take(message, &mut batch) {
                self.fall_back(&error);
                let dangers = self.first_words(inbound);
                self.say_not_logged(inbound, dangers);
                return Err(NotDone::NotLogged(error.to_string()));
            }
        }
        if batch.drafts.is_empty() {
            return Ok(());
        }
        let outcome = self.write(&batch.drafts);
        match outcome {
            Ok(()) => {
                for press in batch.presses {
                    (self.deliver)(Parcel::press(press));
                }
            }
            Err(_) => self.say_not_logged(inbound, batch.dangers),
        }
        self.stale |= batch.half;
        outcome
    }

    /// Works through one message and takes it in, to be written with the rest of its batch.
    fn take(&mut self, inbound: &Inbound, batch: &mut Batch) -> Result<(), StoreError> {
        if batch.keys.contains(&inbound.key) || self.store.seen(&inbound.key.0)? {
            return Ok(());
        }
        batch.keys.insert(inbound.key.clone());
        let turn_number = self.store.head().seq + 1 + batch.drafts.len() as u64;
        let member = self.state.turns.crew_of(&inbound.from);
        let pressed = matches!(inbound.body, Body::Press(_));
        if member.is_none() && !pressed && inbound.chat.is_some_and(|chat| chat < 0) {
            // others talking in a group are none of our business, and are not told so one by one
            return Ok(());
        }
        let mut inbound = inbound.clone();
        if inbound.replaces.is_some() {
            match self.state.outbox.edit(&inbound.key, words(&inbound.body)) {
                Some(Edit::Nothing) => return Ok(()),
                Some(Edit::Replaces(key)) => inbound.replaces = Some(key),
                None => {}
            }
        }
        self.lend();
        let mut half = false;
        let mut draft = match catch_unwind(AssertUnwindSafe(|| {
            let turn = self.state.turns.receive(&inbound);
            half = true;
            self.state.turns.apply(&turn.records);
            half = false;
            turn
        })) {
            Ok(turn) => {
                self.state.outbox.remember(&turn.records);
                batch.dangers.extend(dangers(&inbound.key, &turn));
                batch.presses.extend(answered(&inbound.body, &turn));
                self.draft(Some(&inbound.key), inbound.received, &turn)
            }
            Err(_) => {
                error!("a message could not be worked through and was set aside");
                batch.half |= half;
                self.set_aside(&inbound, member.as_ref())
            }
        };
        if let Some(member) = member.filter(|member| self.state.outbox.is_unreachable(&member.id)) {
            let note = Note::Reachable {
                who: Personal::new(member.id),
            };
            self.state.outbox.note(inbound.received, &note);
            draft.records.push(note.value());
        }
        self.put(turn_number, &draft);
        batch.drafts.push(draft);
        Ok(())
    }

    fn set_aside(&self, inbound: &Inbound, member: Option<&CrewMember>) -> Draft {
        let who = member.map_or("", |member| member.id.as_str());
        let note = Note::SetAside {
            key: Personal::new(&*inbound.key.0),
            from: who.to_owned(),
            text: Personal::new(words(&inbound.body)),
        };
        let answer = member.map(|member| {
            answer_to(
                inbound,
                who,
                &self.phrases.set_aside(self.language_of(member)),
            )
        });
        Draft {
            key: Some(inbound.key.0.clone()),
            at: inbound.received,
            records: vec![note.value()],
            outgoing: answer
                .into_iter()
                .map(|answer| value(&Letter::new(answer)))
                .collect(),
        }
    }

    /// Returns what there is to say about dangers in messages that cannot even be taken in.
    fn first_words(&self, inbound: &[Inbound]) -> Vec<(MessageKey, Outgoing)> {
        let known = |message: &&Inbound| self.state.turns.crew_of(&message.from).is_some();
        inbound
            .iter()
            .filter(known)
            .filter_map(|message| {
                let turn =
                    catch_unwind(AssertUnwindSafe(|| self.state.turns.receive(message))).ok()?;
                Some(dangers(&message.key, &turn).collect::<Vec<_>>())
            })
            .flatten()
            .collect()
    }
}

/// Returns what a turn says about dangers.
fn dangers<'a>(
    key: &'a MessageKey,
    turn: &'a Turn,
) -> impl Iterator<Item = (MessageKey, Outgoing)> + 'a {
    let danger = |out: &&Outgoing| out.level == Some(Level::Danger);
    turn.outgoing
        .iter()
        .filter(danger)
        .map(|out| (key.clone(), out.clone()))
}

/// Returns what to show whoever pressed a button, once that is on disk.
fn answered(body: &Body, turn: &Turn) -> Option<PressAnswer> {
    let Body::Press(press) = body else {
        return None;
    };
    Some(PressAnswer {
        id: press.id.clone(),
        text: turn.toast.clone().unwrap_or_default(),
    })
}

/// Returns the words of a message, or the name of what else it is.
fn words(body: &Body) -> &str {
    match body {
        Body::Other(kind) => kind,
        body => body.words(),
    }
}

fn answer_to(inbound: &Inbound, to: &str, text: &str) -> Outgoing {
    Outgoing::to(to, text).answering(inbound)
}
