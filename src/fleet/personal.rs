//! Texts and numbers that belong to a person, as records keep them: marked as personal (`{"personal": "..."}`), so that
//! the store can empty them later while its chain of hashes still holds. Both read back from plain values too, as older
//! records have them.

use serde::{Deserialize, Deserializer, Serialize, Serializer};

#[derive(Serialize, Deserialize)]
struct Marked {
    personal: Option<String>,
}

/// A text; empty once it was forgotten.
pub(crate) mod text {
    use super::*;

    #[derive(Deserialize)]
    #[serde(untagged)]
    enum Written {
        Plain(String),
        Marked(Marked),
    }

    pub(crate) fn serialize<S: Serializer>(text: &str, to: S) -> Result<S::Ok, S::Error> {
        let personal = Some(text.to_owned());
        Marked { personal }.serialize(to)
    }

    pub(crate) fn deserialize<'de, D: Deserializer<'de>>(from: D) -> Result<String, D::Error> {
        Ok(match Written::deserialize(from)? {
            Written::Plain(text) => text,
            Written::Marked(marked) => marked.personal.unwrap_or_default(),
        })
    }
}

/// A number that may be missing; none once it was forgotten.
pub(crate) mod number {
    use super::*;

    #[derive(Deserialize)]
    #[serde(untagged)]
    enum Written {
        Plain(i64),
        Marked(Marked),
    }

    pub(crate) fn serialize<S: Serializer>(number: &Option<i64>, to: S) -> Result<S::Ok, S::Error> {
        let marked = number.map(|number| Marked {
            personal: Some(number.to_string()),
        });
        marked.serialize(to)
    }

    pub(crate) fn deserialize<'de, D: Deserializer<'de>>(from: D) -> Result<Option<i64>, D::Error> {
        Ok(match Option::<Written>::deserialize(from)? {
            Some(Written::Plain(number)) => Some(number),
            Some(Written::Marked(marked)) => marked.personal.and_then(|text| text.parse().ok()),
            None => None,
        })
    }
}

#[cfg(test)]
mod tests {
    use crate::fleet::CrewMember;
    use serde_json::{Value, json};

    fn member(value: Value) -> CrewMember {
        serde_json::from_value(value).unwrap()
    }

    #[test]
    fn name_and_number_are_written_as_personal_and_read_back() {
        let dana = json!({"id": "dana", "name": {"personal": "Dana"}, "role": "driver", "language": null, "chat_user": {"personal": "77"}});
        let read = member(dana.clone());
        assert_eq!((read.name.as_str(), read.chat_user), ("Dana", Some(77)));
        assert_eq!(serde_json::to_value(&read).unwrap(), dana);
    }

    #[test]
    fn plain_ones_of_older_records_are_read() {
        let dana = json!({"id": "dana", "name": "Dana", "role": "driver", "language": "en", "chat_user": 77});
        let read = member(dana);
        assert_eq!((read.name.as_str(), read.chat_user), ("Dana", Some(77)));
    }

    #[test]
    fn forgotten_ones_read_as_none() {
        let gone = json!({"id": "dana", "name": {"personal": null}, "role": "driver", "language": null, "chat_user": {"personal": null}});
        let read = member(gone);
        assert_eq!((read.name.as_str(), read.chat_user), ("", None));
    }
}
