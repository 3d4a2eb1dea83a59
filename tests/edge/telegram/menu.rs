//! The menu of commands.

use super::*;

#[test]
fn the_menu_is_set_in_both_languages_and_only_where_it_differs() {
    let (api, folders) = (BotApi::start(), Folders::new());
    let bot = Bot::start(&api, &folders);
    api.wait("two menus", |state| state.menus.len() == 2);
    let first = |language: &str| {
        let menus = api.state().menus.clone();
        menus[language][0]["command"].as_str().unwrap().to_owned()
    };
    assert_eq!((first(""), first("es")), ("status".into(), "estado".into()));
    // a command as the menu sends it, in a group of two bots
    api.says(77, "/got_it@hosebib_bot");
    api.replies(77, 1);
    assert!(bot.stop());
    let bot = Bot::start(&api, &folders);
    api.wait("both asked for again", |state| {
        let asked = state.asked.iter();
        asked
            .filter(|(method, _)| method == "getmycommands")
            .count()
            == 4
    });
    api.says(77, "/ayuda");
    api.replies(77, 2);
    assert!(bot.stop());
    let state = api.state();
    let set = state
        .asked
        .iter()
        .filter(|(method, _)| method == "setmycommands");
    assert_eq!(set.count(), 2, "nothing had changed");
    drop(state);
    api.has_no_complaint();
}
