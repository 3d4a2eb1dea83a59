//! The buttons under a message, in rows that a glove can hit.

use teloxide::types::{InlineKeyboardButton, InlineKeyboardMarkup};

use super::queue::Piece;

/// How many letters fit beside each other on a phone, blanks around each label counted as two.
const ROW: usize = 26;

/// Returns the buttons under a piece; none where it has none, or their keys were forgotten.
pub(super) fn under(piece: &Piece) -> Option<InlineKeyboardMarkup> {
    let mut rows: Vec<Vec<InlineKeyboardButton>> = Vec::new();
    let mut room = 0;
    for button in &piece.buttons {
        let Some(key) = button.key.personal.clone() else {
            continue;
        };
        let wide = button.label.chars().count() + 2;
        if rows.is_empty() || wide > room {
            rows.push(Vec::new());
            room = ROW;
        }
        room = room.saturating_sub(wide);
        if let Some(row) = rows.last_mut() {
            row.push(InlineKeyboardButton::callback(button.label.clone(), key));
        }
    }
    (!rows.is_empty()).then(|| InlineKeyboardMarkup::new(rows))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::book::Personal;
    use crate::chat::clerk::Button;

    fn rows(labels: &[&str]) -> Vec<usize> {
        let button = |label: &&str| Button {
            label: (*label).into(),
            key: Personal::new("k"),
        };
        let piece = Piece {
            buttons: labels.iter().map(button).collect(),
            ..Piece::default()
        };
        under(&piece).map_or(Vec::new(), |markup| {
            markup.inline_keyboard.iter().map(Vec::len).collect()
        })
    }

    #[test]
    fn short_labels_share_a_row_and_long_ones_stand_alone() {
        assert_eq!(rows(&["Yes", "No", "Skip"]), [3]);
        assert_eq!(rows(&["Done 41", "Done 42", "Why?", "Not right"]), [2, 2]);
        assert_eq!(rows(&["regulator on trailer 12", "heater on 14"]), [1, 1]);
        assert!(rows(&[]).is_empty());
    }

    #[test]
    fn a_forgotten_key_is_no_button() {
        let piece = Piece {
            buttons: vec![Button {
                label: "Yes".into(),
                key: Personal::default(),
            }],
            ..Piece::default()
        };
        assert_eq!(under(&piece), None);
    }
}
