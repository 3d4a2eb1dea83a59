//! What a message carries: words, a place, a picture, or something the bot cannot read.

use serde_json::Value;

use crate::desk::{Body, Photo, Place};

/// Returns what a message carries; `words` are its text or caption, `edited` tells whether it comes as an edit.
pub(super) fn of(message: &Value, words: Option<String>, edited: bool) -> Body {
    if let Some(place) = place(message, edited) {
        return Body::Place(place);
    }
    if let Some(photo) = photo(message, words.clone()) {
        return Body::Photo(photo);
    }
    match words {
        Some(words) => Body::Text(words),
        None => Body::Other(kind_of(message).unwrap_or("other").to_owned()),
    }
}

/// A shared location; what comes as an edit is a phone on its way (Bot API, Location).
fn place(message: &Value, edited: bool) -> Option<Place> {
    let location = message.get("location")?;
    let degrees = |field: &str, most: f64| {
        let degrees = location.get(field)?.as_f64()?;
        (degrees.abs() <= most).then_some(degrees)
    };
    Some(Place {
        latitude: degrees("latitude", 90.0)?,
        longitude: degrees("longitude", 180.0)?,
        moves: edited,
    })
}

/// A photo in its largest size, or a picture that was sent as a file (Bot API, PhotoSize and Document).
fn photo(message: &Value, caption: Option<String>) -> Option<Photo> {
    let sizes = message.get("photo").and_then(Value::as_array);
    let largest = sizes.and_then(|sizes| {
        let pixels = |size: &&Value| {
            let (width, height) = (size["width"].as_u64()?, size["height"].as_u64()?);
            Some(width.saturating_mul(height))
        };
        sizes.iter().max_by_key(pixels)
    });
    let picture = message.get("document").filter(|document| {
        let kind = document["mime_type"].as_str();
        kind.is_some_and(|kind| kind.starts_with("image/"))
    });
    let file = largest.or(picture)?;
    let text = |value: &Value| value.as_str().map(str::to_owned);
    Some(Photo {
        file: text(&file["file_id"])?,
        bytes: file["file_size"].as_u64(),
        caption,
        album: text(&message["media_group_id"]),
    })
}

/// Returns what a message without words carries, by the field that carries it; none for something unheard of.
pub(super) fn kind_of(message: &Value) -> Option<&'static str> {
    // the network fills in `document` beside `animation`, and `location` beside `venue`
    const KINDS: &[&str] = &[
        "animation",
        "audio",
        "contact",
        "document",
        "dice",
        "photo",
        "poll",
        "sticker",
        "story",
        "venue",
        "location",
        "video",
        "video_note",
        "voice",
    ];
    KINDS
        .iter()
        .find(|kind| message.get(kind).is_some())
        .copied()
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[test]
    fn a_place_is_read_and_a_moving_one_is_told_from_it() {
        let message =
            json!({"location": {"latitude": 40.1, "longitude": -106.9, "live_period": 900}});
        let place = |edited| match of(&message, None, edited) {
            Body::Place(place) => place,
            other => panic!("{other:?}"),
        };
        assert_eq!((place(false).latitude, place(false).moves), (40.1, false));
        assert!(place(true).moves);
        let nowhere = json!({"location": {"latitude": 140.1, "longitude": -106.9}});
        assert_eq!(of(&nowhere, None, false), Body::Other("location".into()));
    }

    #[test]
    fn the_largest_size_of_a_photo_is_taken() {
        let size = |id: &str, width: u32| json!({"file_id": id, "file_unique_id": id, "width": width, "height": 10, "file_size": width * 3});
        let message = json!({"photo": [size("s", 90), size("l", 1280), size("m", 320)], "media_group_id": "g"});
        let Body::Photo(photo) = of(&message, Some("12 gauge".into()), false) else {
            panic!("a photo");
        };
        assert_eq!((photo.file.as_str(), photo.bytes), ("l", Some(3840)));
        assert_eq!(photo.caption.as_deref(), Some("12 gauge"));
        assert_eq!(photo.album.as_deref(), Some("g"));
    }

    #[test]
    fn a_picture_sent_as_a_file_is_a_photo_and_another_file_is_none() {
        let file = |kind: &str| json!({"document": {"file_id": "f", "file_unique_id": "f", "mime_type": kind}});
        assert!(matches!(
            of(&file("image/png"), None, false),
            Body::Photo(_)
        ));
        let pdf = of(&file("application/pdf"), None, false);
        assert_eq!(pdf, Body::Other("document".into()));
    }
}
