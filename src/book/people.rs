//! Who works here: the people of crew.toml, those who joined by an invite, and what was changed by chat since.
//!
//! A load brings the file's people up to date and takes away those who came from a file and are no longer in it. What was
//! said by chat (a role, a language, a phone that was bound or shut out) outlives every load.

use std::collections::{BTreeMap, BTreeSet};

use chrono::{DateTime, NaiveTime, Utc};
use serde::{Deserialize, Serialize};

use crate::fleet::{CrewMember, Role};
use crate::heard::Language;

/// A one-use invite, known by the digest of its code.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Invite {
    /// The crew id it is for.
    pub who: String,
    /// How they are called.
    #[serde(with = "crate::fleet::personal::text")]
    pub name: String,
    /// What they may do once they joined.
    pub role: Role,
    /// The language they are answered in.
    pub language: Language,
    /// SHA-256 of the code, in hex; the code itself is not kept.
    pub digest: String,
    /// Until when it counts.
    pub expires: DateTime<Utc>,
}

/// What became of an invite.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Spent {
    /// Somebody joined by it.
    Used,
    /// A newer one took its place, or the person was shut out.
    Withdrawn,
}

/// A change to who works here, or to how they are served.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", tag = "crew")]
pub enum CrewChange {
    /// Somebody was invited.
    Invited {
        /// The invite.
        invite: Invite,
    },
    /// Somebody joined by an invite.
    Joined {
        /// Who.
        who: String,
        /// The invite's digest.
        digest: String,
        /// The phone they joined with, by its user's number on the chat network.
        #[serde(with = "crate::fleet::personal::number")]
        chat_user: Option<i64>,
    },
    /// Somebody may do other things now.
    Role {
        /// Who.
        who: String,
        /// What they may do.
        role: Role,
    },
    /// Somebody's phone is shut out, at once.
    ShutOut {
        /// Who.
        who: String,
    },
    /// Somebody left by their own word.
    Left {
        /// Who.
        who: String,
    },
    /// Somebody is answered in another language.
    Language {
        /// Who.
        who: String,
        /// The language.
        language: Language,
    },
    /// Somebody set their own quiet hours.
    Quiet {
        /// Who.
        who: String,
        /// Local hours; none ends them.
        hours: Option<(NaiveTime, NaiveTime)>,
    },
}

impl CrewChange {
    /// Returns whose phone is no longer served after this.
    pub fn shuts_out(&self) -> Option<&str> {
        match self {
            CrewChange::ShutOut { who } | CrewChange::Left { who } => Some(who),
            _ => None,
        }
    }
}

/// What was changed by chat about one person.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
struct Changed {
    role: Option<Role>,
    language: Option<Language>,
    #[serde(default, with = "crate::fleet::personal::number")]
    chat_user: Option<i64>,
}

/// An invite and what became of it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
struct Kept {
    invite: Invite,
    spent: Option<Spent>,
}

/// Who works here.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
pub struct People {
    /// As the last load of crew.toml said.
    file: BTreeMap<String, CrewMember>,
    /// Those who joined by an invite and were in no file then.
    joined: BTreeMap<String, CrewMember>,
    changed: BTreeMap<String, Changed>,
    /// Those who are shut out or left, with the name they went by.
    out: BTreeMap<String, CrewMember>,
    quiet: BTreeMap<String, (NaiveTime, NaiveTime)>,
    invites: Vec<Kept>,
}

impl People {
    /// Takes in what a load says.
    pub(super) fn load(&mut self, crew: &BTreeMap<String, CrewMember>) {
        let gone: Vec<String> = self
            .file
            .keys()
            .filter(|id| !crew.contains_key(*id) && !self.joined.contains_key(*id))
            .cloned()
            .collect();
        for id in gone {
            // what was changed about them goes with them; a shut-out stays
            self.changed.remove(&id);
            self.quiet.remove(&id);
        }
        self.file.clone_from(crew);
    }

    /// Takes in one change.
    pub(super) fn apply(&mut self, at: DateTime<Utc>, change: &CrewChange) {
        match change {
            CrewChange::Invited { invite } => {
                self.withdraw(&invite.who);
                // what expired long ago is no more than any other unknown code
                self.invites
                    .retain(|kept| (at - kept.invite.expires).num_days() < 30);
                self.invites.push(Kept {
                    invite: invite.clone(),
                    spent: None,
                });
            }
            CrewChange::Joined {
                digest, chat_user, ..
            } => self.join(digest, *chat_user),
            CrewChange::Role { who, role } => self.change(who).role = Some(*role),
            CrewChange::ShutOut { who } | CrewChange::Left { who } => {
                self.withdraw(who);
                if let Some(member) = self.crew().remove(who) {
                    self.out.insert(who.clone(), member);
                }
                self.change(who).chat_user = None;
            }
            CrewChange::Language { who, language } => {
                self.change(who).language = Some(*language);
            }
            CrewChange::Quiet { who, hours } => {
                match hours {
                    Some(hours) => self.quiet.insert(who.clone(), *hours),
                    None => self.quiet.remove(who),
                };
            }
        }
    }

    /// Returns everybody who is served, as things stand.
    pub fn crew(&self) -> BTreeMap<String, CrewMember> {
        let mut crew = self.joined.clone();
        crew.extend(self.file.clone());
        crew.retain(|id, _| !self.out.contains_key(id));
        let bound: BTreeSet<i64> = crew
            .keys()
            .filter_map(|id| self.changed.get(id)?.chat_user)
            .collect();
        for (id, member) in &mut crew {
            let changed = self.changed.get(id);
            let by_chat = changed.and_then(|changed| changed.chat_user);
            // a phone serves one person: who joined with it, not who the file says had it
            member.chat_user = by_chat.or(member.chat_user.filter(|user| !bound.contains(user)));
            if let Some(changed) = changed {
                member.role = changed.role.unwrap_or(member.role);
                member.language = changed.language.or(member.language);
            }
        }
        crew
    }

    /// Iterates over those who are shut out or left.
    pub fn out(&self) -> impl Iterator<Item = &CrewMember> + Clone {
        self.out.values()
    }

    /// Iterates over the invites that count at `now`.
    pub fn invites(&self, now: DateTime<Utc>) -> impl Iterator<Item = &Invite> {
        let open = move |kept: &&Kept| kept.spent.is_none() && now < kept.invite.expires;
        self.invites.iter().filter(open).map(|kept| &kept.invite)
    }

    /// Returns the invite under a digest, with what became of it.
    pub fn invite(&self, digest: &str) -> Option<(&Invite, Option<Spent>)> {
        let kept = self
            .invites
            .iter()
            .find(|kept| kept.invite.digest == digest)?;
        Some((&kept.invite, kept.spent))
    }

    /// Returns a person's own quiet hours, local.
    pub fn quiet(&self, who: &str) -> Option<(NaiveTime, NaiveTime)> {
        self.quiet.get(who).copied()
    }

    fn join(&mut self, digest: &str, chat_user: Option<i64>) {
        let Some(kept) = self
            .invites
            .iter_mut()
            .find(|kept| kept.invite.digest == digest)
        else {
            return;
        };
        kept.spent = Some(Spent::Used);
        let invite = kept.invite.clone();
        let who = invite.who;
        self.out.remove(&who);
        // a phone serves one person
        for changed in self.changed.values_mut() {
            changed.chat_user = changed.chat_user.filter(|user| Some(*user) != chat_user);
        }
        if !self.file.contains_key(&who) {
            self.joined.insert(
                who.clone(),
                CrewMember {
                    id: who.clone(),
                    name: invite.name,
                    role: invite.role,
                    language: Some(invite.language),
                    chat_user: None,
                },
            );
        }
        let changed = self.change(&who);
        changed.role = Some(invite.role);
        changed.language = Some(invite.language);
        changed.chat_user = chat_user;
    }

    fn withdraw(&mut self, who: &str) {
        let theirs = |kept: &&mut Kept| kept.invite.who == who && kept.spent.is_none();
        for kept in self.invites.iter_mut().filter(theirs) {
            kept.spent = Some(Spent::Withdrawn);
        }
    }

    fn change(&mut self, who: &str) -> &mut Changed {
        self.changed.entry(who.to_owned()).or_default()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn member(id: &str, role: Role, chat_user: Option<i64>) -> (String, CrewMember) {
        let member = CrewMember {
            id: id.into(),
            name: id.to_uppercase(),
            role,
            language: None,
            chat_user,
        };
        (id.into(), member)
    }

    fn at() -> DateTime<Utc> {
        "2027-01-16T12:00:00Z".parse().unwrap()
    }

    fn file() -> BTreeMap<String, CrewMember> {
        BTreeMap::from([
            member("ann", Role::Dispatcher, Some(1)),
            member("dana", Role::Driver, Some(2)),
        ])
    }

    fn people() -> People {
        let mut people = People::default();
        people.load(&file());
        people
    }

    fn invite(who: &str, digest: &str) -> CrewChange {
        CrewChange::Invited {
            invite: Invite {
                who: who.into(),
                name: who.to_uppercase(),
                role: Role::Tech,
                language: Language::Es,
                digest: digest.into(),
                expires: at() + chrono::TimeDelta::hours(72),
            },
        }
    }

    fn joined(digest: &str, user: i64) -> CrewChange {
        CrewChange::Joined {
            who: String::new(),
            digest: digest.into(),
            chat_user: Some(user),
        }
    }

    #[test]
    fn a_load_removes_only_people_of_a_file() {
        let mut people = people();
        people.apply(at(), &invite("sam", "d1"));
        people.apply(at(), &joined("d1", 7));
        people.load(&BTreeMap::from([member("ann", Role::Dispatcher, Some(1))]));
        let crew = people.crew();
        assert_eq!(crew.keys().collect::<Vec<_>>(), ["ann", "sam"]);
        assert_eq!(crew["sam"].chat_user, Some(7));
        assert_eq!(crew["sam"].role, Role::Tech);
    }

    #[test]
    fn a_load_undoes_no_shut_out_role_language_or_phone() {
        let mut people = people();
        let dana = || "dana".to_owned();
        people.apply(at(), &invite("dana", "d1"));
        people.apply(at(), &joined("d1", 9));
        let role = Role::Dispatcher;
        people.apply(at(), &CrewChange::Role { who: dana(), role });
        people.load(&file());
        let crew = people.crew();
        assert_eq!(crew["dana"].role, Role::Dispatcher);
        assert_eq!(crew["dana"].language, Some(Language::Es));
        assert_eq!(crew["dana"].chat_user, Some(9));
        people.apply(at(), &CrewChange::ShutOut { who: dana() });
        people.load(&file());
        assert!(!people.crew().contains_key("dana"));
        assert_eq!(
            people.out().next().map(|out| out.name.as_str()),
            Some("DANA")
        );
    }

    #[test]
    fn a_shut_out_person_comes_back_by_an_invite_and_not_by_the_file() {
        let mut people = people();
        people.apply(at(), &CrewChange::ShutOut { who: "dana".into() });
        people.load(&file());
        assert!(!people.crew().contains_key("dana"));
        people.apply(at(), &invite("dana", "d2"));
        assert!(!people.crew().contains_key("dana"), "not before they join");
        people.apply(at(), &joined("d2", 12));
        assert_eq!(people.crew()["dana"].chat_user, Some(12));
    }

    #[test]
    fn an_invite_counts_once_and_a_newer_one_takes_its_place() {
        let mut people = people();
        people.apply(at(), &invite("sam", "d1"));
        people.apply(at(), &invite("sam", "d2"));
        assert_eq!(people.invite("d1").unwrap().1, Some(Spent::Withdrawn));
        assert_eq!(people.invites(at()).count(), 1);
        people.apply(at(), &joined("d2", 7));
        assert_eq!(people.invite("d2").unwrap().1, Some(Spent::Used));
        assert_eq!(people.invites(at()).count(), 0);
        people.apply(at(), &invite("lee", "d3"));
        assert_eq!(
            people.invites(at() + chrono::TimeDelta::hours(72)).count(),
            0
        );
    }

    #[test]
    fn a_phone_serves_one_person() {
        let mut people = people();
        people.apply(at(), &CrewChange::ShutOut { who: "dana".into() });
        people.apply(at(), &invite("sam", "d1"));
        people.apply(at(), &joined("d1", 2));
        people.apply(at(), &invite("dana", "d2"));
        people.apply(at(), &joined("d2", 3));
        let crew = people.crew();
        assert_eq!(
            (crew["sam"].chat_user, crew["dana"].chat_user),
            (Some(2), Some(3))
        );
    }
}
