//! A stand-in for the Bot API on the loopback, with what bites about the real one: unconfirmed updates come again,
//! numbers of updates begin anew anywhere, floods, outages, torn answers, blocked and moved chats, a second poller.

mod http;
mod methods;

use std::collections::{HashMap, HashSet, VecDeque};
use std::net::{SocketAddr, TcpListener};
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, Condvar, Mutex, MutexGuard};
use std::time::{Duration, Instant};

use serde_json::{Value, json};

/// The token that the stand-in takes.
pub(crate) const TOKEN: &str = "123456:AAstand-in_for-tests";

/// What goes wrong with one request.
#[derive(Debug, Clone)]
pub(crate) enum Fault {
    /// An answer with this status and description; nothing is done.
    Status(u16, &'static str),
    /// 429 with so many seconds.
    Flood(u64),
    /// Nothing is done, and the answer breaks off.
    Torn,
    /// It is done, and the answer breaks off: the caller cannot know.
    DoneAndTorn,
    /// Status 200 and an answer that is not JSON.
    Garbage,
    /// The connection is closed without an answer.
    Reset,
    /// It is done after a while.
    Slow(Duration),
}

/// A message that was accepted.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Sent {
    pub(crate) chat: i64,
    /// Its number in the chat.
    pub(crate) number: i64,
    /// The topic it was sent to.
    pub(crate) topic: Option<i64>,
    pub(crate) text: String,
    pub(crate) answers: Option<i64>,
    /// Label and key of each button under it.
    pub(crate) buttons: Vec<(String, String)>,
    /// How often it was edited.
    pub(crate) edits: usize,
}

impl Sent {
    /// Returns the key of the button with a label.
    #[track_caller]
    pub(crate) fn key(&self, label: &str) -> String {
        let found = self.buttons.iter().find(|(other, _)| other == label);
        match found {
            Some((_, key)) => key.clone(),
            None => panic!("no button `{label}` under {self:?}"),
        }
    }
}

/// A stand-in that listens until it is dropped.
pub(crate) struct BotApi {
    address: SocketAddr,
    shared: Arc<Shared>,
}

pub(crate) struct Shared {
    state: Mutex<State>,
    news: Condvar,
    closed: AtomicBool,
}

#[derive(Default)]
pub(crate) struct State {
    pub(crate) updates: VecDeque<(i64, Value)>,
    /// The number of the next update.
    pub(crate) next_update: i64,
    pub(crate) sent: Vec<Sent>,
    /// Presses that the bot answered, by their names, with what it showed.
    pub(crate) toasts: Vec<(String, String)>,
    /// The command menus that were set, by language; the one for all others under no code.
    pub(crate) menus: HashMap<String, Value>,
    /// Files that people sent, by the network's name for each.
    pub(crate) files: HashMap<String, Vec<u8>>,
    pub(crate) messages: HashMap<i64, i64>,
    /// How many messages each person wrote.
    pub(crate) said: HashMap<i64, usize>,
    pub(crate) faults: HashMap<String, VecDeque<Fault>>,
    pub(crate) blocked: HashSet<i64>,
    pub(crate) moved: HashMap<i64, i64>,
    /// Chats that must be left alone until then.
    pub(crate) floods: HashMap<i64, Instant>,
    /// Counts polls, so that an older one learns of a newer.
    pub(crate) polls: u64,
    /// What was asked: method and body.
    pub(crate) asked: Vec<(String, Value)>,
    /// The webhook that is set; none where it is empty.
    pub(crate) webhook: String,
    /// Whether privacy mode is off.
    pub(crate) reads_groups: bool,
    /// How far ahead of this machine's the server's clock is, s, where it tells its time.
    pub(crate) ahead_s: Option<i64>,
    /// Answers a poll at once where nothing waits, as a server without long polling does.
    pub(crate) hurries: bool,
    /// What a well-behaved bot does not do.
    pub(crate) offences: Vec<String>,
}

impl BotApi {
    pub(crate) fn start() -> Self {
        let listener = TcpListener::bind("127.0.0.1:0").expect("a loopback port is free");
        let address = listener
            .local_addr()
            .expect("a bound listener has an address");
        let state = State {
            next_update: 1000,
            ..State::default()
        };
        let shared = Arc::new(Shared {
            state: Mutex::new(state),
            news: Condvar::new(),
            closed: AtomicBool::new(false),
        });
        let serving = shared.clone();
        std::thread::spawn(move || http::serve(&listener, &serving));
        BotApi { address, shared }
    }

    pub(crate) fn url(&self) -> String {
        format!("http://{}", self.address)
    }

    pub(crate) fn state(&self) -> MutexGuard<'_, State> {
        self.shared.lock()
    }

    /// A person writes to the bot in private; returns the message's number.
    pub(crate) fn says(&self, user: i64, text: &str) -> i64 {
        self.says_in(user, user, text)
    }

    /// A person writes in a chat; groups have numbers below 0.
    pub(crate) fn says_in(&self, chat: i64, user: i64, text: &str) -> i64 {
        let mut state = self.state();
        let number = state.next_message(chat);
        *state.said.entry(user).or_insert(0) += 1;
        let message = message(chat, user, number, text);
        state.push(json!({ "message": message }));
        drop(state);
        self.shared.news.notify_all();
        number
    }

    /// A person edits a message; `date` is when, in seconds.
    pub(crate) fn edits(&self, user: i64, number: i64, date: i64, text: &str) {
        let mut edited = message(user, user, number, text);
        edited["edit_date"] = date.into();
        self.pushes(json!({ "edited_message": edited }));
    }

    /// A person presses a button under a message of the bot; returns the press's name.
    pub(crate) fn presses(&self, user: i64, chat: i64, message: i64, key: &str) -> String {
        let mut state = self.state();
        let name = format!("press{}", state.next_update);
        let kind = if chat > 0 { "private" } else { "supergroup" };
        state.push(json!({"callback_query": {
            "id": name,
            "from": {"id": user, "is_bot": false, "first_name": format!("Person {user}")},
            "message": {"message_id": message, "date": 1_800_000_000, "text": "…",
                "chat": {"id": chat, "type": kind, "title": "Crew", "first_name": "P"}},
            "chat_instance": "1",
            "data": key,
        }}));
        drop(state);
        self.shared.news.notify_all();
        name
    }

    /// Waits until the bot has answered a press, and returns what it showed.
    #[track_caller]
    pub(crate) fn toast(&self, press: &str) -> String {
        let of = |state: &State| {
            let mut toasts = state.toasts.iter();
            toasts
                .find(|(name, _)| name == press)
                .map(|(_, text)| text.clone())
        };
        self.wait(&format!("an answer to {press}"), |state| {
            of(state).is_some()
        });
        of(&self.state()).unwrap_or_default()
    }

    /// A person sends something that is no text, in a private chat; returns the message's number.
    pub(crate) fn sends(&self, user: i64, what: Value) -> i64 {
        let mut state = self.state();
        let number = state.next_message(user);
        let mut message = message(user, user, number, "");
        let fields = message.as_object_mut().expect("a message is an object");
        fields.remove("text");
        if let Value::Object(what) = what {
            fields.extend(what);
        }
        state.push(json!({ "message": message }));
        drop(state);
        self.shared.news.notify_all();
        number
    }

    /// Any update at all.
    pub(crate) fn pushes(&self, update: Value) {
        self.state().push(update);
        self.shared.news.notify_all();
    }

    /// The next requests of a method meet these faults, in order.
    pub(crate) fn faults(&self, method: &str, faults: impl IntoIterator<Item = Fault>) {
        self.state()
            .faults
            .entry(method.to_lowercase())
            .or_default()
            .extend(faults);
    }

    /// Polls once for so many seconds, as another program with the same token would.
    pub(crate) fn polls_once(&self, seconds: u64) {
        let body = json!({"timeout": seconds, "allowed_updates": ["message"]});
        methods::call("getupdates", &body, &self.shared);
    }

    /// Waits until `holds`, and fails when it never does.
    #[track_caller]
    pub(crate) fn wait(&self, what: &str, holds: impl Fn(&State) -> bool) {
        let end = Instant::now() + Duration::from_secs(60);
        let mut state = self.state();
        while !holds(&state) {
            if Instant::now() > end {
                panic!(
                    "never came: {what}; sent {:?}; asked last {:?}",
                    state.sent,
                    state.asked.iter().rev().take(5).collect::<Vec<_>>()
                );
            }
            state = self
                .shared
                .news
                .wait_timeout(state, Duration::from_millis(20))
                .unwrap_or_else(std::sync::PoisonError::into_inner)
                .0;
        }
    }

    /// Checks that the bot did nothing which the network forbids.
    #[track_caller]
    pub(crate) fn has_no_complaint(&self) {
        assert_eq!(self.state().offences, [""; 0]);
    }

    /// Waits for so many messages to a chat and returns their texts.
    #[track_caller]
    pub(crate) fn replies(&self, chat: i64, count: usize) -> Vec<String> {
        self.wait(&format!("{count} messages to {chat}"), |state| {
            state.texts(chat).len() >= count
        });
        self.state().texts(chat)
    }
}

impl Drop for BotApi {
    fn drop(&mut self) {
        self.shared.closed.store(true, Ordering::SeqCst);
        self.shared.news.notify_all();
        // wakes the listener
        let _ = std::net::TcpStream::connect(self.address);
    }
}

impl Shared {
    pub(crate) fn lock(&self) -> MutexGuard<'_, State> {
        self.state
            .lock()
            .unwrap_or_else(std::sync::PoisonError::into_inner)
    }
}

impl State {
    /// The texts sent to a chat, in order.
    pub(crate) fn texts(&self, chat: i64) -> Vec<String> {
        self.sent
            .iter()
            .filter(|sent| sent.chat == chat)
            .map(|sent| sent.text.clone())
            .collect()
    }

    /// The last message sent to a chat.
    #[track_caller]
    pub(crate) fn last(&self, chat: i64) -> Sent {
        let mut theirs = self.sent.iter().rev().filter(|sent| sent.chat == chat);
        theirs.next().expect("something was sent").clone()
    }

    fn fault(&mut self, method: &str) -> Option<Fault> {
        self.faults.get_mut(method).and_then(VecDeque::pop_front)
    }

    fn next_message(&mut self, chat: i64) -> i64 {
        let number = self.messages.entry(chat).or_insert(0);
        *number += 1;
        *number
    }

    fn push(&mut self, mut update: Value) {
        update["update_id"] = self.next_update.into();
        self.updates.push_back((self.next_update, update));
        self.next_update += 1;
    }
}

fn message(chat: i64, user: i64, number: i64, text: &str) -> Value {
    let kind = if chat > 0 { "private" } else { "supergroup" };
    let now = std::time::SystemTime::now()
        .duration_since(std::time::UNIX_EPOCH)
        .expect("after 1970")
        .as_secs();
    json!({
        "message_id": number,
        "from": {"id": user, "is_bot": false, "first_name": format!("Person {user}")},
        "chat": {"id": chat, "type": kind, "title": "Crew", "first_name": "P"},
        "date": now,
        "text": text,
    })
}
