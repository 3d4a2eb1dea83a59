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
use crate::heard::Language;
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
            Ok(mut turn) => {
                let silent = turn.records.is_empty() && turn.outgoing.is_empty();
                if silent && matches!(inbound.body, Body::Place(_)) {
                    // a phone on its way tells where it is every few seconds: nothing of that is kept
                    return Ok(());
                }
                if inbound.replaces.is_some() {
                    self.answer_in_place(&inbound, member.as_ref(), &mut turn);
                }
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

    /// Lets the answer to an edit take the place of the answer before it, so that the chat tells the truth. Advice that
    /// must be noticed comes anew, since an edit makes no sound; then the answer before it points there.
    fn answer_in_place(&self, inbound: &Inbound, member: Option<&CrewMember>, turn: &mut Turn) {
        let Some(before) = self.state.outbox.answer_to(&inbound.key) else {
            return;
        };
        let here = inbound.chat.map(|chat| self.state.outbox.current(chat)) == Some(before.chat);
        let answers = |out: &&mut Outgoing| out.answers.as_ref() == Some(&inbound.key);
        let Some(answer) = turn.outgoing.iter_mut().find(answers).filter(|_| here) else {
            return;
        };
        if answer.level < Some(Level::Warning) {
            answer.edits = Some(before.message);
            return;
        }
        let language = member.map_or(Language::En, |member| self.language_of(member));
        let pointer = self.pointer(&answer.to, language, before.chat, before.message);
        turn.outgoing.push(pointer);
    }

    /// Makes what takes the place of an answer that is true no longer: a word that the answer is below.
    fn pointer(&self, to: &str, language: Language, chat: i64, message: i64) -> Outgoing {
        let mut pointer = Outgoing::to(to, self.phrases.answered_below(language));
        pointer.chat = Some(chat);
        pointer.edits = Some(message);
        pointer
    }

    /// Lets answers point on that reached their chat although an edit was answered meanwhile.
    pub(super) fn point_on(&mut self) {
        let fleet = self.state.turns.fleet().cloned();
        let pointers: Vec<Outgoing> = self
            .state
            .outbox
            .stale()
            .into_iter()
            .filter_map(|(letter, message)| {
                let member = fleet.as_ref()?.crew.get(&letter.to)?;
                let chat = self.state.outbox.current(letter.chat()?);
                Some(self.pointer(&letter.to, self.language_of(member), chat, message))
            })
            .collect();
        if !pointers.is_empty() {
            self.write_notes(Vec::new(), pointers);
        }
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
