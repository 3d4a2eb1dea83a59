//! What the service itself says: that something is not logged, whom to phone.

use crate::heard::Language;

/// Says that a message is not logged yet; `again` when it has to be sent again.
pub(crate) fn not_logged(language: Language, again: bool) -> &'static str {
    match (language, again) {
        (Language::En, false) => {
            "NOT LOGGED yet: the bot's disk has a fault. It will be logged when the disk is mended. No need to send it again."
        }
        (Language::Es, false) => {
            "SIN REGISTRAR todavía: el disco del bot falla. Se registrará cuando se arregle. No hace falta enviarlo otra vez."
        }
        (Language::En, true) => {
            "NOT LOGGED: the disk has a fault. Mend it and send your message again."
        }
        (Language::Es, true) => {
            "SIN REGISTRAR: el disco falla. Arréglelo y envíe su mensaje otra vez."
        }
    }
}

/// Puts before words on a danger that could not be logged.
pub(crate) fn not_logged_danger(language: Language, text: &str) -> String {
    match language {
        Language::En => format!("{text}\n(Not logged: the bot's disk has a fault.)"),
        Language::Es => format!("{text}\n(Sin registrar: el disco del bot falla.)"),
    }
}

/// Says that a message was set aside because working through it failed.
pub(crate) fn set_aside(language: Language) -> &'static str {
    match language {
        Language::En => {
            "This message tripped the bot. Its words are kept, nothing of it was logged. Say it in other words, or phone the dispatcher."
        }
        Language::Es => {
            "Este mensaje hizo fallar al bot. El texto se guarda, pero no se registró nada. Dígalo de otra manera o llame al despacho."
        }
    }
}

/// Tells a dispatcher that somebody cannot be reached on the chat.
pub(crate) fn unreachable(language: Language, who: &str) -> String {
    match language {
        Language::En => format!("{who} cannot be reached on the chat. Phone them."),
        Language::Es => format!("No se puede contactar a {who} por el chat. Llame por teléfono."),
    }
}

/// Tells a dispatcher about a danger that did not reach somebody.
pub(crate) fn undelivered(language: Language, who: &str, text: &str) -> String {
    match language {
        Language::En => format!("Did not reach {who} on the chat. Phone them:\n{text}"),
        Language::Es => format!("No le llegó a {who} por el chat. Llame por teléfono:\n{text}"),
    }
}
