//! The buttons under a message, in rows that a glove can hit.

use teloxide::types::{InlineKeyboardButton, InlineKeyboardMarkup};

use super::queue::Piece;

/// How many letters fit beside each other on a phone, two blanks around each label counted (common practice, no source).
const ROW: usize = 26;
/// How many buttons stand beside each other at most.
const MOST_BESIDE: usize = 3;

/// Returns the buttons under a piece; none where it has none, or their keys were forgotten.
pub(super) fn under(piece: &Piece) -> Option<InlineKeyboardMarkup> {
    let buttons: Vec<InlineKeyboardButton> = piece
        .buttons
        .iter()
        .filter_map(|button| {
            let key = button.key.personal.clone()?;
            Some(InlineKeyboardButton::callback(button.label.clone(), key))
        })
        .collect();
    let wide = |row: &[InlineKeyboardButton]| -> usize {
        row.iter()
            .map(|button| button.text.chars().count() + 2)
            .sum()
    };
    // all in one row, or as many beside each other as fit in every row
    let most = match buttons.len() {
        0..=MOST_BESIDE => buttons.len(),
        _ => 2,
    };
    let beside = (1..=most)
        .rev()
        .find(|beside| buttons.chunks(*beside).all(|row| wide(row) <= ROW))
        .unwrap_or(1);
    let rows = buttons.chunks(beside).map(<[_]>::to_vec);
    (!buttons.is_empty()).then(|| InlineKeyboardMarkup::new(rows))
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
        assert_eq!(rows(&["Done 1", "Why?", "Not right"]), [3]);
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
