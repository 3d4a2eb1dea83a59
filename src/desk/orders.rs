//! Several orders in one message, and orders on a task in words that the reader takes for something else: "drop 4 and 7",
//! "assign 4 juno, 7 tobin", "push 4 to 9pm", "tell juno ..., tell tobin ...".

use super::assign;
use super::others::called;
use super::phrases::{Phrases, is_marked};
use super::receive::Texted;
use super::relay;
use super::settle;
use super::when;
use crate::book::Task;
use crate::heard::{Command, CommandName, UnitName};

/// Reads the orders that a message is, one after the other; none where it is one that is read elsewhere, or no order.
pub(super) fn told(came: &Texted<'_>) -> Vec<Command> {
    let text = came.text.trim();
    if is_marked(text) {
        return Vec::new();
    }
    let words = Words {
        came,
        phrases: came.desk.phrases,
    };
    let relays = words.relays(text);
    if relays.len() > 1 {
        return relays;
    }
    let on_tasks = words.on_tasks(text);
    on_tasks.or_else(|| words.handed(text)).unwrap_or_default()
}

/// Reads "done 4, 7": the tasks that are done, where several are told and nothing else. Before the word, "7 done", they are
/// on the list, and no trailers.
pub(super) fn done(came: &Texted<'_>) -> Option<Vec<u32>> {
    let (phrases, text) = (came.desk.phrases, came.text.trim());
    if let Some(rest) = phrases.after("orders", "done", text) {
        let (ids, rest) = numbers(phrases, rest);
        return (ids.len() > 1 && is_courtesy(phrases, rest)).then_some(ids);
    }
    let words = Words { came, phrases };
    let (ids, rest) = numbers(phrases, text);
    let rest = rest.trim_start_matches([' ', ',', ':']);
    let rest = phrases.after("orders", "is", rest).unwrap_or(rest);
    let rest = phrases.after("orders", "done-plainly", rest)?;
    let all = !ids.is_empty() && ids.iter().all(|id| words.is_a_task_only(*id));
    (all && is_courtesy(phrases, rest)).then_some(ids)
}

/// Tells whether a text opens with an order on tasks that are on the list: "drop 4", "assign 7 juno", "juno takes 4".
pub(super) fn opens_on_tasks(came: &Texted<'_>, text: &str) -> bool {
    let phrases = came.desk.phrases;
    let words = Words { came, phrases };
    let listed = |rest: &str| {
        let (ids, behind) = numbers(phrases, rest);
        let open = !ids.is_empty() && ids.iter().all(|id| words.open(*id).is_some());
        open.then(|| behind.trim_start().to_owned())
    };
    let opened = |topic, list| phrases.after(topic, list, text).and_then(listed);
    let alone = |rest: &str| {
        let end = rest.find([',', ';', '.', '\n']).unwrap_or(rest.len());
        let end = rest[..end].find(" and ").unwrap_or(end);
        is_courtesy(phrases, &rest[..end])
    };
    let takes = || {
        let (name, rest) = text.split_once(' ')?;
        let rest = words.is_known(name).then_some(rest)?;
        phrases.after("orders", "takes", rest).and_then(listed)
    };
    let drops = opened("orders", "drop").is_some_and(|rest| !phrases.holds("truck", "who", &rest));
    let moves = opened("orders", "move").is_some_and(|rest| {
        let end = rest.find([',', ';', '\n']).unwrap_or(rest.len());
        let time = rest[..end].split(" and ").next().unwrap_or_default();
        words.is_time(time)
    });
    let done = phrases
        .after("orders", "done-plainly", text)
        .and_then(listed);
    drops
        || moves
        || done.is_some()
        || opened("orders", "take").is_some_and(|rest| alone(&rest))
        || opened("assign", "opens").is_some()
        || takes().is_some()
}

/// Tells whether a text is an order that moves tasks, with its time: "move 4 to 8pm", or one more of them.
pub(super) fn moves_whole(came: &Texted<'_>, text: &str) -> bool {
    let text = text.trim();
    let moved = came.desk.phrases.after("orders", "move", text);
    moved_on(came, moved.unwrap_or(text)).is_some()
}

/// Reads one more task of an order that moves them: "7 to 9pm".
pub(super) fn moved_on(came: &Texted<'_>, text: &str) -> Option<Command> {
    let phrases = came.desk.phrases;
    let words = Words { came, phrases };
    let (ids, rest) = numbers(phrases, text);
    let [id] = ids.as_slice() else {
        return None;
    };
    let rest = rest.trim();
    let own = rest.split([',', ';', '\n']).next().unwrap_or(rest);
    let own = own.split(" and ").next().unwrap_or(own);
    (words.open(*id).is_some() && words.is_time(own)).then(|| Command {
        name: CommandName::Move,
        task: Some(*id),
        rest: own.to_owned(),
    })
}

struct Words<'a, 'm> {
    came: &'a Texted<'m>,
    phrases: &'static Phrases,
}

impl Words<'_, '_> {
    /// Reads words for several people, each with their own: "tell tobin truck at 8, tell juno truck at 9".
    fn relays(&self, text: &str) -> Vec<Command> {
        let relay = |part: &str| relay::order(self.phrases, self.came.fleet, part);
        let mut starts = vec![0];
        let breaks = text.match_indices([' ', ',', '.', ';', '\n']);
        let behind = breaks.map(|(at, mark)| at + mark.len());
        starts.extend(behind.filter(|at| opens_a_relay(self.phrases, &text[*at..])));
        starts.retain(|at| relay(&text[*at..]).is_some());
        if starts.first() != Some(&0) {
            return Vec::new();
        }
        let ends = starts.iter().skip(1).copied().chain([text.len()]);
        let parts = starts.iter().zip(ends).map(|(from, to)| &text[*from..to]);
        parts
            .filter_map(|part| relay(joined_off(self.phrases, part)))
            .collect()
    }

    /// Reads an order on tasks by their numbers: dropped, taken, moved.
    fn on_tasks(&self, text: &str) -> Option<Vec<Command>> {
        let list = ["drop", "take", "move"].into_iter();
        let mut opened =
            list.filter_map(|list| Some((list, self.phrases.after("orders", list, text)?)));
        let (list, behind) = opened.next()?;
        let (ids, rest) = numbers(self.phrases, behind);
        let rest = rest.trim_start_matches([',', ' ', ':', ';']).trim();
        let meant = match ids.as_slice() {
            [] => false,
            [id] => self.is_one_task(*id, list, text, rest),
            // "pick up 12 and 14" may be of trailers: of tasks, all are on the list
            several => several.iter().all(|id| self.open(*id).is_some()),
        };
        let numbered = self.phrases.holds("assign", "numbered", text);
        let whole = match list {
            "take" => is_courtesy(self.phrases, rest),
            "move" => self.is_time(rest),
            // "cancel 12 and 10's trucks"
            _ => numbered || !self.phrases.holds("truck", "who", rest),
        };
        let name = match list {
            "take" => CommandName::Take,
            "move" => CommandName::Move,
            _ => CommandName::Drop,
        };
        (meant && whole).then(|| {
            let order = |id| Command {
                name,
                task: Some(id),
                rest: rest.to_owned(),
            };
            ids.into_iter().map(order).collect()
        })
    }

    /// Tells whether one number is a task's where the reader takes it for none: it is called so, or no trailer's number.
    fn is_one_task(&self, id: u32, list: &str, text: &str, rest: &str) -> bool {
        if self.came.heard.command.is_some() || self.came.heard.ask.is_some() {
            return false;
        }
        let numbered = self.phrases.holds("assign", "numbered", text);
        let unit = UnitName::new(&id.to_string());
        let trailer = settle::known(self.came.fleet, &unit);
        let truck = trailer.is_some_and(|unit| self.has_a_truck(unit));
        let moves = list == "move" && self.open(id).is_some() && self.is_time(rest) && !truck;
        numbered || moves || trailer.is_none() && self.open(id).is_some()
    }

    /// Tells whether a truck is called for a trailer: then its hour may be what is moved.
    fn has_a_truck(&self, unit: &UnitName) -> bool {
        let mut tasks = self.came.desk.book.tasks().open_on(unit);
        tasks.any(|task| task.called.is_some())
    }

    fn open(&self, id: u32) -> Option<&Task> {
        let task = self.came.desk.book.tasks().task(id);
        task.filter(|task| task.is_open())
    }

    /// Tells whether a number is a task's on the list, and no trailer's.
    fn is_a_task_only(&self, id: u32) -> bool {
        let unit = UnitName::new(&id.to_string());
        self.open(id).is_some() && settle::known(self.came.fleet, &unit).is_none()
    }

    fn is_time(&self, rest: &str) -> bool {
        let zone = self.came.fleet.time_zone;
        let told = |words: &str| when::coming(words, self.came.at, zone).is_some();
        told(rest)
            || self
                .phrases
                .after("orders", "to", rest)
                .is_some_and(|hour| told(&format!("at {hour}")))
    }

    /// Reads tasks that are handed out: "assign 4 and 7 to juno", "4 juno, 7 tobin", "juno takes 4 and 7".
    fn handed(&self, text: &str) -> Option<Vec<Command>> {
        let text = self.phrases.after("assign", "lets", text).unwrap_or(text);
        if let Some((name, rest)) = text.split_once(' ')
            && self.is_known(name)
            && let Some(rest) = self.phrases.after("orders", "takes", rest)
        {
            let (ids, rest) = numbers(self.phrases, rest);
            let all = !ids.is_empty() && ids.iter().all(|id| self.open(*id).is_some());
            let given = (all && is_courtesy(self.phrases, rest)).then_some(ids)?;
            return Some(
                given
                    .into_iter()
                    .map(|id| assign::to(Some(id), name))
                    .collect(),
            );
        }
        // "put abel on 7", "give tobin 7 and 4"
        let named = self.phrases.after("assign", "opens", text);
        let named = named.or_else(|| self.phrases.after("orders", "puts", text));
        if let Some((name, rest)) = named.and_then(|rest| rest.split_once(' '))
            && self.is_known(name)
        {
            let rest = self.phrases.after("orders", "on", rest).unwrap_or(rest);
            let (ids, rest) = numbers(self.phrases, rest);
            let several = ids.len() > 1 && ids.iter().all(|id| self.open(*id).is_some());
            let tasks = several || ids.iter().all(|id| self.is_a_task_only(*id));
            let meant = !ids.is_empty() && tasks && is_courtesy(self.phrases, rest);
            return meant.then(|| {
                ids.into_iter()
                    .map(|id| assign::to(Some(id), name))
                    .collect()
            });
        }
        let mut rest = self.phrases.after("assign", "opens", text)?;
        let mut orders = Vec::new();
        while !is_courtesy(self.phrases, rest) {
            let (ids, behind) = numbers(self.phrases, rest);
            let behind = behind.trim_start();
            let behind = self.phrases.after("assign", "to", behind).unwrap_or(behind);
            let end = behind.find(|c: char| c.is_whitespace() || ",;&".contains(c));
            let (name, more) = behind.split_at(end.unwrap_or(behind.len()));
            if ids.is_empty() || !self.is_known(name) {
                return None;
            }
            orders.extend(ids.into_iter().map(|id| assign::to(Some(id), name)));
            rest = more.trim_start_matches([' ', ',', ';', '&']);
        }
        (orders.len() > 1).then_some(orders)
    }

    fn is_known(&self, name: &str) -> bool {
        called(self.came.fleet.crew.values(), name).is_some()
    }
}

fn opens_a_relay(phrases: &Phrases, text: &str) -> bool {
    phrases.after("tell", "opens", text).is_some()
}

/// Takes what joins a relay to the next one off its end: "truck at 8 and".
fn joined_off<'t>(phrases: &Phrases, part: &'t str) -> &'t str {
    let part = part.trim().trim_end_matches([',', '.', ';']);
    phrases.before("tell", "and", part).unwrap_or(part)
}

/// Tells whether nothing is left of an order but courtesy.
fn is_courtesy(phrases: &Phrases, rest: &str) -> bool {
    let mut words = rest
        .split(|c: char| !c.is_alphanumeric())
        .filter(|word| !word.is_empty());
    words.all(|word| phrases.is("assign", "courtesy", word))
}

/// Takes the numbers of tasks off the front of a text: "4 and 7", "#4, #7", "tasks 4 & 7".
fn numbers<'t>(phrases: &Phrases, text: &'t str) -> (Vec<u32>, &'t str) {
    let mut ids = Vec::new();
    let mut rest = text;
    loop {
        let mut at = rest.trim_start_matches([' ', ',', '&', '+', '#']);
        while let Some(behind) = phrases.after("tasks", "between", at) {
            at = behind.trim_start_matches(['#', ' ']);
        }
        let end = at.find(|c: char| !c.is_ascii_digit()).unwrap_or(at.len());
        let (digits, tail) = at.split_at(end);
        // "9pm" and "7:30" are no tasks
        let whole = tail.is_empty() || tail.starts_with([' ', ',', '&', '+', ';', '.', '!']);
        match digits.parse() {
            Ok(id) if whole => ids.push(id),
            _ => return (ids, rest),
        }
        rest = tail;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_numbers_of_tasks_end_where_words_begin() {
        let phrases = Phrases::built_in();
        for (text, ids, rest) in [
            ("4 and 7", vec![4, 7], ""),
            ("4,7", vec![4, 7], ""),
            ("tasks 4 & 7 to 19:30", vec![4, 7], " to 19:30"),
            ("la 4 y la 7 ya no", vec![4, 7], " ya no"),
            ("4 to 9pm", vec![4], " to 9pm"),
            ("4 9pm", vec![4], " 9pm"),
            ("that", vec![], "that"),
        ] {
            assert_eq!(numbers(phrases, text), (ids, rest), "{text}");
        }
    }
}
