//! The menu of commands that the network shows beside the writing line, in each language that crews write.

use serde_json::Value;
use teloxide::payloads::{
    GetMyCommands, GetMyCommandsSetters, SetMyCommands, SetMyCommandsSetters,
};
use teloxide::types::BotCommand;
use tracing::{debug, info, warn};

use super::Api;
use crate::chat::phrases::Phrases;
use crate::heard::Language;

/// What the menu offers, in its order, by the codes of its texts.
const COMMANDS: &[&str] = &[
    "status", "tasks", "why", "undo", "got-it", "forecast", "digest", "help",
];

/// The menus: the one for everybody, and those for readers of another language.
const MENUS: &[(Option<&str>, Language)] = &[(None, Language::En), (Some("es"), Language::Es)];

/// Sets each menu that is not yet as it should be. Without it the bot works as well, so what fails is only noted.
pub(super) async fn set(api: Api) {
    for (code, language) in MENUS {
        let wanted = commands(*language);
        let ask = GetMyCommands::new();
        let ask = match code {
            Some(code) => ask.language_code(*code),
            None => ask,
        };
        let now = api.call(&ask).await;
        if now.as_ref().is_ok_and(|now| is_as(now, &wanted)) {
            debug!("the {language} menu is set already");
            continue;
        }
        let request = SetMyCommands::new(wanted);
        let request = match code {
            Some(code) => request.language_code(*code),
            None => request,
        };
        match api.call(&request).await {
            Ok(_) => info!("the {language} menu of commands is set"),
            Err(refusal) => warn!("the {language} menu of commands is not set: {refusal}"),
        }
    }
}

fn commands(language: Language) -> Vec<BotCommand> {
    let phrases = Phrases::default();
    let of = |code: &&str| {
        let (command, about) = phrases.menu(language, code);
        BotCommand::new(command, about)
    };
    COMMANDS.iter().map(of).collect()
}

/// Tells whether a menu is as the network says it is.
fn is_as(now: &Value, wanted: &[BotCommand]) -> bool {
    let now = now.as_array().map_or(&[][..], Vec::as_slice);
    now.len() == wanted.len()
        && now.iter().zip(wanted).all(|(now, wanted)| {
            now["command"] == *wanted.command && now["description"] == *wanted.description
        })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Style;
    use crate::words::Reader;

    #[test]
    fn every_command_is_one_that_the_network_takes_and_the_reader_knows() {
        let reader = Reader::new();
        for (_, language) in MENUS {
            for command in commands(*language) {
                let name = command.command;
                // Bot API, BotCommand
                let plain = |byte: u8| byte.is_ascii_lowercase() || byte == b'_';
                assert!(name.len() <= 32 && name.bytes().all(plain), "{name}");
                assert!((3..=256).contains(&command.description.chars().count()));
                let words = super::super::parse::addressed(&format!("/{name}"), None);
                let heard = reader.hear(&words, Style::default().temperature);
                assert!(heard.ask.is_some() || heard.command.is_some(), "{words}");
            }
        }
    }

    #[test]
    fn a_menu_is_set_only_where_it_differs() {
        let wanted = commands(Language::Es);
        let now = serde_json::to_value(&wanted).expect("plain data");
        assert!(is_as(&now, &wanted));
        assert!(!is_as(&serde_json::json!([]), &wanted));
        assert!(!is_as(&now, &commands(Language::En)));
    }
}
