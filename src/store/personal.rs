//! Personal texts inside records: salted on the way in, replaced by their digests under the hash, and emptied later.
//!
//! A record marks a personal text as `{"personal": "text"}`. On disk it is `{"digest", "personal", "salt"}`, and a line's
//! hash covers the digest alone; so the text and its salt can be taken away and the chain still verifies. Without the
//! salt, short texts (a phone number, a name) could be guessed from their digests.

use serde_json::{Map, Value};

use super::hash::{Hash, bytes_of_hex, hex_of_bytes};

/// How deep a record may nest; reading JSON stops at 128.
const DEEPEST: usize = 100;

const TEXT: &str = "personal";
const SALT: &str = "salt";
const DIGEST: &str = "digest";

/// Gives salts, 16 bytes each; two must never be the same, and nobody must be able to guess one.
pub trait Salt: Send {
    /// Returns the next salt.
    fn salt(&mut self) -> [u8; 16];
}

impl<F: FnMut() -> [u8; 16] + Send> Salt for F {
    fn salt(&mut self) -> [u8; 16] {
        self()
    }
}

/// Turns every `{"personal": text}` into its salted form.
///
/// # Errors
///
/// Says what cannot be written so that it reads back the same: too deep a nesting, or an object that already has the
/// three keys of the salted form.
pub(super) fn salted(value: &Value, salt: &mut dyn Salt) -> Result<Value, String> {
    salted_at(value, salt, 0)
}

fn salted_at(value: &Value, salt: &mut dyn Salt, depth: usize) -> Result<Value, String> {
    if depth > DEEPEST {
        return Err(format!("it nests deeper than {DEEPEST} levels"));
    }
    Ok(match value {
        Value::Array(items) => Value::Array(
            items
                .iter()
                .map(|item| salted_at(item, salt, depth + 1))
                .collect::<Result<_, _>>()?,
        ),
        Value::Object(map) => match plain_text(map) {
            Some(Value::String(text)) => {
                let salt = salt.salt();
                let digest = Hash::of(&[&salt, text.as_bytes()]).to_string();
                form(
                    digest.into(),
                    text.as_str().into(),
                    hex_of_bytes(&salt).into(),
                )
            }
            Some(_) => form(Value::Null, Value::Null, Value::Null),
            None if is_salted(map) => {
                return Err(format!(
                    "an object holds just the keys `{DIGEST}`, `{TEXT}` and `{SALT}`, which are kept for personal texts"
                ));
            }
            None => Value::Object(
                map.iter()
                    .map(|(key, item)| Ok((key.clone(), salted_at(item, salt, depth + 1)?)))
                    .collect::<Result<_, String>>()?,
            ),
        },
        other => other.clone(),
    })
}

/// Replaces every salted form by its digest alone: what a line's hash covers.
pub(super) fn reduced(value: &Value) -> Value {
    mapped(value, &|map| {
        let mut only = Map::new();
        only.insert(DIGEST.into(), map[DIGEST].clone());
        Value::Object(only)
    })
}

/// Turns every salted form back into `{"personal": text}`, or `{"personal": null}` where it was emptied.
pub(super) fn plain(value: &Value) -> Value {
    mapped(value, &|map| {
        let mut only = Map::new();
        only.insert(TEXT.into(), map[TEXT].clone());
        Value::Object(only)
    })
}

/// Checks every text that is still there against its digest.
///
/// # Errors
///
/// Says what does not fit.
pub(super) fn check(value: &Value) -> Result<(), String> {
    match value {
        Value::Array(items) => items.iter().try_for_each(check),
        Value::Object(map) if is_salted(map) => check_form(map),
        Value::Object(map) => map.values().try_for_each(check),
        _ => Ok(()),
    }
}

/// Empties in `stored` what `wanted` shows as `{"personal": null}`; returns how many texts went.
///
/// # Errors
///
/// Says so when `wanted` differs from `stored` in anything else.
pub(super) fn emptied(stored: &mut Value, wanted: &Value) -> Result<usize, String> {
    match (stored, wanted) {
        (Value::Array(stored), Value::Array(wanted)) if stored.len() == wanted.len() => {
            let mut count = 0;
            for (stored, wanted) in stored.iter_mut().zip(wanted) {
                count += emptied(stored, wanted)?;
            }
            Ok(count)
        }
        (Value::Object(stored), Value::Object(wanted)) if is_salted(stored) => {
            match plain_text(wanted) {
                Some(text) if *text == stored[TEXT] => Ok(0),
                Some(Value::Null) => {
                    stored.insert(TEXT.into(), Value::Null);
                    stored.insert(SALT.into(), Value::Null);
                    Ok(1)
                }
                _ => Err("a personal text would be changed, not emptied".into()),
            }
        }
        (Value::Object(stored), Value::Object(wanted)) if stored.len() == wanted.len() => {
            let mut count = 0;
            for (key, stored) in stored.iter_mut() {
                let wanted = wanted
                    .get(key)
                    .ok_or_else(|| format!("field `{key}` would go"))?;
                count += emptied(stored, wanted)?;
            }
            Ok(count)
        }
        (stored, wanted) if stored == wanted => Ok(0),
        _ => Err("something that is not a personal text would be changed".into()),
    }
}

/// Returns the text (or null) of a one-key `{"personal": ...}`.
fn plain_text(map: &Map<String, Value>) -> Option<&Value> {
    match map.get(TEXT) {
        Some(text @ (Value::String(_) | Value::Null)) if map.len() == 1 => Some(text),
        _ => None,
    }
}

fn is_salted(map: &Map<String, Value>) -> bool {
    map.len() == 3
        && [TEXT, SALT, DIGEST]
            .iter()
            .all(|key| map.contains_key(*key))
}

fn form(digest: Value, text: Value, salt: Value) -> Value {
    let mut map = Map::new();
    map.insert(DIGEST.into(), digest);
    map.insert(TEXT.into(), text);
    map.insert(SALT.into(), salt);
    Value::Object(map)
}

fn check_form(map: &Map<String, Value>) -> Result<(), String> {
    match (&map[DIGEST], &map[TEXT], &map[SALT]) {
        (Value::String(digest), Value::String(text), Value::String(salt)) => {
            let salt = bytes_of_hex(salt)
                .filter(|salt| salt.len() == 16)
                .ok_or("a salt is not 32 hex digits")?;
            if Hash::of(&[&salt, text.as_bytes()]).to_string() == *digest {
                Ok(())
            } else {
                Err("a personal text does not fit its digest".into())
            }
        }
        (Value::String(_) | Value::Null, Value::Null, Value::Null) => Ok(()),
        _ => Err("a personal text lacks its digest or salt".into()),
    }
}

fn mapped(value: &Value, change: &impl Fn(&Map<String, Value>) -> Value) -> Value {
    match value {
        Value::Array(items) => items.iter().map(|item| mapped(item, change)).collect(),
        Value::Object(map) if is_salted(map) => change(map),
        Value::Object(map) => Value::Object(
            map.iter()
                .map(|(key, item)| (key.clone(), mapped(item, change)))
                .collect(),
        ),
        other => other.clone(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    fn counting() -> impl Salt {
        let mut next = 0u128;
        move || {
            next += 1;
            next.to_be_bytes()
        }
    }

    #[test]
    fn a_text_comes_back_and_its_hash_covers_the_digest_only() {
        let record = json!({"from": {"personal": "dana"}, "psi": 95, "also": [{"personal": ""}]});
        let stored = salted(&record, &mut counting()).unwrap();
        assert_eq!(plain(&stored), record);
        assert_eq!(check(&stored), Ok(()));
        let text = reduced(&stored).to_string();
        assert!(!text.contains("dana") && !text.contains("salt"), "{text}");
    }

    #[test]
    fn equal_texts_get_unequal_digests() {
        let record = json!([{"personal": "dana"}, {"personal": "dana"}]);
        let stored = salted(&record, &mut counting()).unwrap();
        assert_ne!(stored[0]["digest"], stored[1]["digest"]);
    }

    #[test]
    fn emptying_keeps_the_reduced_form() {
        let record =
            json!({"from": {"personal": "dana"}, "text": {"personal": "unit 12"}, "psi": 95});
        let mut stored = salted(&record, &mut counting()).unwrap();
        let before = reduced(&stored);
        let mut wanted = plain(&stored);
        wanted["from"]["personal"] = Value::Null;
        assert_eq!(emptied(&mut stored, &wanted), Ok(1));
        assert_eq!(reduced(&stored), before);
        assert_eq!(check(&stored), Ok(()));
        assert_eq!(plain(&stored)["from"], json!({"personal": null}));
        assert_eq!(plain(&stored)["text"], json!({"personal": "unit 12"}));
        assert!(!stored.to_string().contains("dana"));
    }

    #[test]
    fn emptying_refuses_any_other_change() {
        let record = json!({"text": {"personal": "unit 12"}, "psi": 95});
        let stored = salted(&record, &mut counting()).unwrap();
        for wanted in [
            json!({"text": {"personal": "unit 14"}, "psi": 95}),
            json!({"text": {"personal": null}, "psi": 60}),
            json!({"text": {"personal": null}}),
            json!({"text": null, "psi": 95}),
        ] {
            assert!(emptied(&mut stored.clone(), &wanted).is_err(), "{wanted}");
        }
    }

    #[test]
    fn a_map_with_a_person_called_personal_is_no_personal_text() {
        let record = json!({"crew": {"personal": {"role": "driver"}, "dana": {"role": "tech"}}});
        assert_eq!(salted(&record, &mut counting()), Ok(record));
    }

    #[test]
    fn what_would_read_back_differently_is_refused() {
        let forged = json!({"digest": "d", "personal": "p", "salt": "s"});
        assert!(salted(&forged, &mut counting()).is_err());
        let deep = (0..120).fold(json!(1), |inner, _| json!([inner]));
        assert!(salted(&deep, &mut counting()).is_err());
    }
}
