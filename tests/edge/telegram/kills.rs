//! The bot killed at random instants.

use super::*;

/// So many kills; `HOSEBIB_KILLS` asks for another number.
fn kills() -> usize {
    std::env::var("HOSEBIB_KILLS")
        .ok()
        .and_then(|text| text.parse().ok())
        .unwrap_or(8)
}

#[test]
fn kills_lose_no_message_and_no_reply() {
    let (api, folders) = (BotApi::start(), Folders::new());
    let people: Vec<i64> = (200..220).collect();
    let crew: String = people
        .iter()
        .map(|user| format!("[[crew]]\nid = \"p{user}\"\nname = \"P{user}\"\nrole = \"driver\"\nlanguage = \"en\"\nchat_user = {user}\n"))
        .collect();
    folders.write("crew.toml", &crew);
    let mut random = fastrand::Rng::with_seed(7);
    let mut said = 0;
    for _ in 0..kills() {
        let before = api.state().polls;
        let bot = Bot::start(&api, &folders);
        // one in four is killed at any instant of its start, the others at work
        if random.u8(..4) > 0 {
            api.wait("a poll", |state| state.polls > before);
        }
        let end = std::time::Instant::now() + std::time::Duration::from_millis(random.u64(30..700));
        while std::time::Instant::now() < end {
            let person = people[random.usize(0..people.len())];
            let waits = {
                let state = api.state();
                let said = state.said.get(&person).copied().unwrap_or(0);
                said > state.texts(person).len() + 6
            };
            // nobody writes on and on without an answer, and the limit of one reply a second a chat is waited for
            if !waits {
                api.says(person, "unit 12 arrived");
                said += 1;
            }
            std::thread::sleep(std::time::Duration::from_millis(random.u64(1..15)));
        }
        // a fault that nothing has met yet is enough
        let met = api
            .state()
            .faults
            .values()
            .all(std::collections::VecDeque::is_empty);
        if met && random.bool() {
            api.faults("sendMessage", [Fault::DoneAndTorn]);
        }
        bot.kill();
    }
    let bot = Bot::start(&api, &folders);
    api.wait("all confirmed", |state| state.updates.is_empty());
    let answered = |state: &botapi::State| {
        let pairs: std::collections::BTreeSet<(i64, i64)> = state
            .sent
            .iter()
            .map(|sent| (sent.chat, sent.answers.unwrap_or(0)))
            .collect();
        pairs.len()
    };
    api.wait("a reply to each", |state| answered(state) >= said);
    assert!(bot.stop());
    let mut keys = recorded(folders.data.path());
    keys.sort();
    let all = keys.len();
    keys.dedup();
    assert_eq!(
        (keys.len(), all),
        (said, said),
        "each recorded exactly once"
    );
    let state = api.state();
    for person in people {
        // a reply may come again, so it is the first time of each that counts
        let mut firsts = Vec::new();
        for answers in state
            .sent
            .iter()
            .filter(|sent| sent.chat == person)
            .filter_map(|sent| sent.answers)
        {
            if !firsts.contains(&answers) {
                firsts.push(answers);
            }
        }
        assert!(
            firsts.is_sorted(),
            "chat {person} got its replies in order: {firsts:?}"
        );
    }
    println!(
        "{} kills, {said} messages, {} replies sent again",
        kills(),
        state.sent.len() - said
    );
}
