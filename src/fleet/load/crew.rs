//! `[[crew]]`.

use std::collections::{BTreeMap, BTreeSet};

use super::{LANGUAGES, given_twice};
use crate::fleet::model::{CrewMember, Role};
use crate::fleet::section::Section;
use crate::fleet::sheet::Sheet;

/// Reads the people; returns their ids, those of faulty tables too.
pub(super) fn read(
    section: &mut Section<'_, '_>,
    crew: &mut BTreeMap<String, CrewMember>,
    sheet: &Sheet<'_>,
) -> BTreeSet<String> {
    let mut lines: BTreeMap<String, usize> = BTreeMap::new();
    let mut users: BTreeMap<i64, usize> = BTreeMap::new();
    for mut section in section.tables("crew", "a crew member").unwrap_or_default() {
        section.needs("id", "a short name that records keep, as in id = \"dana\"");
        let id = section.id("id");
        if let Some(id) = id {
            section.named(format!("crew {id}"));
            let spot = section.spot_of("id");
            match lines.get(id) {
                Some(first) => {
                    let found = given_twice(id, *first);
                    sheet.report(spot, section.place(), "an id of their own", found, None);
                }
                None => {
                    lines.insert(id.into(), sheet.line(spot));
                }
            }
        }
        let name = section.text("name").or(id).unwrap_or_default().to_string();
        let roles = [
            ("driver", Role::Driver),
            ("tech", Role::Tech),
            ("dispatcher", Role::Dispatcher),
        ];
        // the role that may do least
        let role = section.choice("role", &roles).unwrap_or(Role::Driver);
        let language = section.choice("language", &LANGUAGES);
        let chat_user = section.whole("chat_user", 1..=i64::MAX, "");
        if let Some(user) = chat_user {
            let spot = section.spot_of("chat_user");
            match users.get(&user) {
                Some(first) => {
                    let found = given_twice(&user.to_string(), *first);
                    let place = format!("{}, chat_user", section.place());
                    sheet.report(spot, place, "one person for each chat user", found, None);
                }
                None => {
                    users.insert(user, sheet.line(spot));
                }
            }
        }
        section.finish();
        if let Some(id) = id {
            let id = id.to_string();
            crew.insert(
                id.clone(),
                CrewMember {
                    id,
                    name,
                    role,
                    language,
                    chat_user,
                },
            );
        }
    }
    lines.into_keys().collect()
}
