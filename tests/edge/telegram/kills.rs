//! The bot killed at random instants while twenty people go on writing.
//!
//! `HOSEBIB_KILLS=1000` sets how often (10 unless told), `HOSEBIB_KILL_SEED` repeats a run's instants.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::atomic::{AtomicBool, Ordering};
use std::time::{Duration, Instant};

use super::*;

/// Their numbers on the network.
const PEOPLE: std::ops::Range<i64> = 200..220;
/// Nobody writes on and on without an answer.
const UNANSWERED: usize = 3;

/// What was written: the pressure by person and message number.
type Said = BTreeMap<(i64, i64), u32>;

#[test]
fn kills_lose_no_message_and_no_reply() {
    let number = |name: &str| std::env::var(name).ok().and_then(|text| text.parse().ok());
    let kills = number("HOSEBIB_KILLS").unwrap_or(10);
    let seed = number("HOSEBIB_KILL_SEED").unwrap_or_else(|| fastrand::u64(..));
    println!("{kills} kills, HOSEBIB_KILL_SEED={seed}");
    let (api, folders) = (BotApi::start(), Folders::new());
    folders.write("crew.toml", &crew());
    let began = Instant::now();
    let enough = AtomicBool::new(false);
    let (said, at_start) = std::thread::scope(|scope| {
        let writing = scope.spawn(|| write_on(&api, &enough, seed));
        let at_start = kill_again_and_again(&api, &folders, kills, seed);
        enough.store(true, Ordering::SeqCst);
        (writing.join().unwrap(), at_start)
    });
    let bot = Bot::start(&api, &folders);
    api.wait("all confirmed", |state| state.updates.is_empty());
    api.wait("a reply to each", |state| answered(state) >= said.len());
    assert!(bot.stop());
    each_is_recorded_once_and_whole(folders.data.path(), &said);
    each_is_answered_in_order(&api.state(), &said);
    println!(
        "{kills} kills, {at_start} of them at the start: {} messages, {} replies sent again, {:.0} s",
        said.len(),
        api.state().sent.len() - said.len(),
        began.elapsed().as_secs_f64()
    );
}

fn crew() -> String {
    PEOPLE
        .map(|user| format!("[[crew]]\nid = \"p{user}\"\nname = \"P{user}\"\nrole = \"driver\"\nlanguage = \"en\"\nchat_user = {user}\n"))
        .collect()
}

/// Writes for the crew until it is enough.
fn write_on(api: &BotApi, enough: &AtomicBool, seed: u64) -> Said {
    let mut random = fastrand::Rng::with_seed(seed);
    let mut said = Said::new();
    while !enough.load(Ordering::SeqCst) {
        let person = random.i64(PEOPLE);
        let waits = {
            let state = api.state();
            let said = state.said.get(&person).copied().unwrap_or(0);
            said >= state.texts(person).len() + UNANSWERED
        };
        if !waits {
            let psi = random.u32(41..60);
            let number = api.says(person, &text(psi));
            said.insert((person, number), psi);
        }
        std::thread::sleep(Duration::from_millis(random.u64(2..20)));
    }
    said
}

fn text(psi: u32) -> String {
    format!("12 pressure {psi}")
}

/// Starts the bot and kills it, again and again; returns how many kills met it before it fetched anything.
fn kill_again_and_again(api: &BotApi, folders: &Folders, kills: u64, seed: u64) -> usize {
    let mut random = fastrand::Rng::with_seed(!seed);
    let mut at_start = 0;
    for _ in 0..kills {
        let before = api.state().polls;
        let bot = Bot::start(api, folders);
        // some at any instant of the start, most while it works
        if random.u8(..8) == 0 {
            std::thread::sleep(Duration::from_millis(random.u64(..500)));
        } else {
            api.wait("a poll", |state| state.polls > before);
            std::thread::sleep(Duration::from_millis(random.u64(50..400)));
        }
        at_start += usize::from(api.state().polls == before);
        bot.kill();
        // a fault that nothing has met yet is enough
        let mut faults = api.state().faults.values().cloned().collect::<Vec<_>>();
        faults.retain(|faults| !faults.is_empty());
        if faults.is_empty() && random.u8(..4) == 0 {
            api.faults("sendMessage", [Fault::DoneAndTorn]);
        }
    }
    at_start
}

/// Counts the messages that were answered.
fn answered(state: &botapi::State) -> usize {
    let answers = |sent: &botapi::Sent| Some((sent.chat, sent.answers?));
    let pairs: BTreeSet<(i64, i64)> = state.sent.iter().filter_map(answers).collect();
    pairs.len()
}

fn each_is_recorded_once_and_whole(data: &Path, said: &Said) {
    assert_eq!(hosebib::store::verify(data).unwrap().damage, []);
    let mut recorded = BTreeSet::new();
    for line in hosebib::store::read_only(data).unwrap() {
        let line = line.unwrap();
        let Some(key) = line.key else { continue };
        let messages = line.records.iter().filter(|it| it["record"] == "message");
        let texts: Vec<&str> = messages
            .filter_map(|it| it["text"]["personal"].as_str())
            .collect();
        let of: Vec<i64> = key
            .split(':')
            .filter_map(|part| part.parse().ok())
            .collect();
        assert_eq!(texts, [text(said[&(of[0], of[1])])], "{key} is halved");
        assert_eq!(line.outgoing.len(), 1, "{key} is halved");
        assert!(recorded.insert((of[0], of[1])), "{key} is recorded twice");
    }
    let missing: Vec<_> = said.keys().filter(|of| !recorded.contains(of)).collect();
    assert!(missing.is_empty(), "lost: {missing:?}");
}

fn each_is_answered_in_order(state: &botapi::State, said: &Said) {
    for person in PEOPLE {
        // a reply may come again, so it is the first time of each that counts
        let mut firsts = Vec::new();
        for sent in state.sent.iter().filter(|sent| sent.chat == person) {
            let answers = sent.answers.expect("nothing but replies is sent");
            let psi = said[&(person, answers)];
            assert!(sent.text.contains(&format!("{psi} psi")), "{sent:?}");
            if firsts.last() != Some(&answers) && !firsts.contains(&answers) {
                firsts.push(answers);
            }
        }
        let of_theirs = said.keys().filter(|(of, _)| *of == person);
        let written: Vec<i64> = of_theirs.map(|(_, number)| *number).collect();
        assert_eq!(firsts, written, "chat {person} got its replies in order");
    }
}
