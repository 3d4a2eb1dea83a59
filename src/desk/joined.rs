//! Several orders in one message, each as if it had come alone: "done 7, drop 4 not needed", "truck for 12 comes at 19:00 and
//! tell tobin to rope off 2 stalls".
//!
//! Orders on tasks and words to pass on go beside anything. Of what is read as a message of its own, trucks, a low, a
//! question, only the first kind is; the rest is quoted as not done, so that nothing is dropped in silence.

use super::orders;
use super::phrases::is_marked;
use super::receive::Texted;
use super::relay;
use super::settle;
use crate::fleet::Role;
use crate::heard::{Ask, Command, CommandName, Heard, UnitName};

/// A message that gives several orders, or orders beside something else.
pub(super) struct Joined {
    /// What is read as the message itself, and whether it opens with no order.
    pub head: String,
    pub plain: bool,
    /// Orders beside it, and tasks that are called done.
    pub orders: Vec<Command>,
    pub done: Vec<u32>,
    /// What cannot be done beside it.
    pub left: Vec<String>,
}

/// What a part of a message opens with.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Kind {
    /// Words to pass on: all that follows in the line is theirs.
    Words,
    /// An order on tasks.
    Task,
    /// One more task of the order before it: "move 4 to 8pm and 7 to 9pm".
    More,
    /// A truck that comes, one that comes no longer, and one at another time.
    Truck,
    Off,
    Moved,
    /// A note on a trailer.
    Note,
    Low,
    Asks,
    /// A report, or anything else.
    Other,
}

/// Parts a message into its orders; none where it is at most one.
pub(super) fn told(came: &Texted<'_>, role: Role, read: impl Fn(&str) -> Heard) -> Option<Joined> {
    let text = came.text.trim();
    if is_marked(text) {
        return None;
    }
    let parts = Parts { came, role, read };
    let mut pieces = parts.of(text).into_iter();
    let (first, head) = pieces.next()?;
    let mut joined = Joined {
        head: head.to_owned(),
        plain: first == Kind::Other,
        orders: Vec::new(),
        done: Vec::new(),
        left: Vec::new(),
    };
    let mut only_words = first == Kind::Words;
    for (kind, piece) in pieces {
        only_words &= kind == Kind::Words;
        match parts.orders(kind, head, piece) {
            _ if kind == first && matches!(kind, Kind::Truck | Kind::Off | Kind::Asks) => {
                joined.head = format!("{}, {piece}", joined.head);
            }
            Some((orders, done)) => {
                joined.orders.extend(orders);
                joined.done.extend(done);
            }
            None => joined.left.push(piece.to_owned()),
        }
    }
    let alone = joined.orders.is_empty() && joined.done.is_empty() && joined.left.is_empty();
    (!alone && !only_words).then_some(joined)
}

struct Parts<'a, 'm, R> {
    came: &'a Texted<'m>,
    role: Role,
    read: R,
}

impl<R: Fn(&str) -> Heard> Parts<'_, '_, R> {
    /// Cuts a text where an order begins; each part with what it opens with.
    fn of<'t>(&self, text: &'t str) -> Vec<(Kind, &'t str)> {
        let first = self.kind(text, true).unwrap_or(Kind::Other);
        let mut starts = vec![(0, first)];
        let breaks = |c: char| ",;.&\n".contains(c);
        let ends = text.match_indices(|c: char| breaks(c) || c == ' ');
        for (at, mark) in ends {
            let behind = &text[at + mark.len()..];
            let line = mark == "\n";
            let mut tail = behind.trim_start_matches(|c: char| breaks(c) || c == ' ');
            let and = self.came.desk.phrases.after("orders", "and", tail);
            // a space alone parts nothing
            if mark == " " && and.is_none() {
                continue;
            }
            tail = and.unwrap_or(tail);
            let from = text.len() - tail.len();
            let last = starts.last().map_or(Kind::Other, |(_, kind)| *kind);
            if starts.last().is_some_and(|(start, _)| *start >= from)
                || last == Kind::Words && !line && !self.passes_on(tail)
            {
                continue;
            }
            let before = starts.last().map_or(0, |(start, _)| *start).min(from);
            let continues = || self.moves_on(&text[before..at], tail).then_some(Kind::More);
            let Some(kind) = self.kind(tail, line).or_else(continues) else {
                continue;
            };
            // beside a report only what is passed on and orders on tasks are orders of their own
            let beside = matches!(kind, Kind::Words | Kind::Task);
            if first == Kind::Other && (!beside || self.calls_done(tail)) {
                continue;
            }
            starts.push((from, kind));
        }
        let ends = starts.iter().skip(1).map(|(at, _)| *at).chain([text.len()]);
        let parts = starts.iter().zip(ends);
        parts
            .map(|((from, kind), to)| (*kind, self.bare(&text[*from..to])))
            .collect()
    }

    /// Takes what joins a part to the next one off its end.
    fn bare<'t>(&self, part: &'t str) -> &'t str {
        let off = |part: &'t str| part.trim_end_matches([',', '.', ';', '&', ' ', '\n']);
        let part = off(part);
        let joins = self.came.desk.phrases.before("orders", "and", part);
        off(joins.unwrap_or(part))
    }

    /// Tells what order a text opens with.
    fn kind(&self, text: &str, line: bool) -> Option<Kind> {
        let phrases = self.came.desk.phrases;
        let opens = |topic, list| phrases.after(topic, list, text);
        if self.passes_on(text) {
            return Some(Kind::Words);
        }
        if orders::opens_on_tasks(self.came, text) {
            return Some(Kind::Task);
        }
        let article = phrases.after("mend", "trailer", text).unwrap_or(text);
        let of_a_truck = |text: &str| phrases.after("truck", "who", text).is_some();
        let own = |rest: &str| {
            let end = rest.find([',', ';', '.', '\n']).unwrap_or(rest.len());
            phrases.holds("truck", "who", &rest[..end]) || self.has_a_truck(rest)
        };
        if opens("orders", "drop").is_some_and(own) {
            return Some(Kind::Off);
        }
        if opens("orders", "move").is_some_and(own) {
            return Some(Kind::Moved);
        }
        if of_a_truck(text) || of_a_truck(article) {
            return Some(Kind::Truck);
        }
        if phrases
            .after("truck", "request", text)
            .is_some_and(of_a_truck)
            || phrases
                .after("truck", "wants", text)
                .is_some_and(of_a_truck)
        {
            return Some(Kind::Truck);
        }
        let trailer = |rest: &str| self.opens_with_a_trailer(rest);
        if opens("note", "plainly").is_some_and(trailer)
            || opens("note", "opens").is_some_and(trailer)
        {
            return Some(Kind::Note);
        }
        if self.role != Role::Dispatcher {
            return None;
        }
        if opens("weather", "low").is_some() {
            return Some(Kind::Low);
        }
        if !line {
            return None;
        }
        let first = text.lines().next().unwrap_or(text);
        let heard = (self.read)(first);
        let orders = heard.command.is_some();
        let asks = heard.ask.is_some() && !orders && heard.entries.is_empty();
        match (orders, asks) {
            (true, _) => Some(Kind::Task),
            (_, true) => Some(Kind::Asks),
            _ => None,
        }
    }

    fn passes_on(&self, text: &str) -> bool {
        relay::order(self.came.desk.phrases, self.came.fleet, text).is_some()
    }

    fn calls_done(&self, text: &str) -> bool {
        self.came
            .desk
            .phrases
            .after("orders", "done", text)
            .is_some()
    }

    fn opens_with_a_trailer(&self, text: &str) -> bool {
        let name = text.split([' ', ':', ',', '.']).next().unwrap_or_default();
        settle::known(self.came.fleet, &UnitName::new(name)).is_some()
    }

    /// Tells whether a truck is called for the trailer that a text opens with: then its hour is moved, "push 12 to 9".
    fn has_a_truck(&self, text: &str) -> bool {
        let name = text.trim_start().split(' ').next().unwrap_or_default();
        let unit = settle::known(self.came.fleet, &UnitName::new(name));
        let tasks = self.came.desk.book.tasks();
        unit.is_some_and(|unit| tasks.open_on(unit).any(|task| task.called.is_some()))
    }

    /// Tells whether a text goes on with an order that moves tasks and has its time: another number and its own.
    fn moves_on(&self, before: &str, text: &str) -> bool {
        orders::moves_whole(self.came, before) && orders::moved_on(self.came, text).is_some()
    }

    /// Reads the orders that a part is, and the tasks that it calls done; none where it is no order that goes beside others.
    fn orders(&self, kind: Kind, head: &str, piece: &str) -> Option<(Vec<Command>, Vec<u32>)> {
        if kind == Kind::More {
            return Some((vec![orders::moved_on(self.came, piece)?], Vec::new()));
        }
        let heard = (self.read)(piece);
        let came = Texted {
            heard: &heard,
            text: piece,
            ..*self.came
        };
        let told = orders::told(&came);
        if !told.is_empty() {
            return Some((told, Vec::new()));
        }
        if let Some(done) = orders::done(&came) {
            return Some((Vec::new(), done));
        }
        if let Some(Ask::Done { task }) = heard.ask {
            return Some((Vec::new(), vec![task]));
        }
        let command = relay::order(came.desk.phrases, came.fleet, piece)
            .or_else(|| super::assign::order(came.desk.phrases, came.fleet, piece))
            .or_else(|| heard.command.clone())?;
        // what no undo takes back, and what asks for more words, is an order for itself
        let goes = matches!(
            command.name,
            CommandName::Take
                | CommandName::Drop
                | CommandName::Move
                | CommandName::Assign
                | CommandName::Tell
                | CommandName::Note
                | CommandName::GotIt
        );
        (goes && !head.is_empty()).then(|| (vec![command], Vec::new()))
    }
}
