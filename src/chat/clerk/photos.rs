//! Pictures: fetched through the transport after their message is on disk, checked, and kept as files under `photos` in
//! the data directory. A file is named after the digest of what is in it, never after anybody's words.

use std::collections::BTreeMap;
use std::fs::{self, File};
use std::io::{self, Write};
use std::path::{Path, PathBuf};

use chrono::{DateTime, TimeDelta, Utc};
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};
use tracing::{error, info, warn};

use super::forget::Forget;
use super::letter::{Note, Parcel};
use super::turns::Turns;
use super::work::Work;
use crate::book::{Hold, Record};
use crate::desk::Outgoing;
use crate::heard::UnitName;

/// The folder of the pictures in the data directory.
pub const PHOTOS: &str = "photos";
/// The largest picture that is kept, bytes.
pub const MOST_BYTES: usize = 10 * 1024 * 1024;
/// How far back somebody's word on which trailer their pictures show reaches.
const SHOWN_LATELY: TimeDelta = TimeDelta::minutes(30);

/// Why a picture is not kept.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum PhotoLost {
    /// It is larger than [`MOST_BYTES`].
    TooLarge,
    /// What is in it is no picture of a known kind.
    NoPicture,
    /// The network does not give it out.
    Gone,
}

impl PhotoLost {
    /// Returns the key of the text that says so.
    pub(super) fn text(self) -> &'static str {
        match self {
            PhotoLost::TooLarge => "photo-lost-too-large",
            PhotoLost::NoPicture => "photo-lost-no-picture",
            PhotoLost::Gone => "photo-lost-gone",
        }
    }
}

/// One picture.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(super) struct Kept {
    by: String,
    at: DateTime<Utc>,
    unit: Option<UnitName>,
    /// What the network calls it, while it is not fetched yet.
    wanted: Option<String>,
    /// Its file, once it is kept.
    file: Option<String>,
}

/// The pictures, by the key of their message in the book.
#[derive(Debug, Clone, Default, Serialize, Deserialize)]
pub(super) struct Photos(BTreeMap<String, Kept>);

impl Photos {
    pub(super) fn take_in(&mut self, record: &Record) {
        match record {
            Record::Photo {
                at,
                by,
                key,
                unit,
                file,
            } => {
                let kept = Kept {
                    by: by.clone(),
                    at: *at,
                    unit: unit.clone(),
                    wanted: file.personal.clone(),
                    file: None,
                };
                self.0.insert(key.0.clone(), kept);
            }
            Record::PhotoOf { at, by, unit } => {
                let lately = |kept: &&mut Kept| {
                    kept.by == *by && kept.unit.is_none() && *at - kept.at <= SHOWN_LATELY
                };
                for kept in self.0.values_mut().filter(lately) {
                    kept.unit = Some(unit.clone());
                }
            }
            _ => {}
        }
    }

    /// Notes that a picture is kept in a file.
    pub(super) fn kept(&mut self, key: &str, file: &str) {
        if let Some(kept) = self.0.get_mut(key) {
            kept.wanted = None;
            kept.file = Some(file.to_owned());
        }
    }

    /// Notes that a picture is kept no more, or never was.
    pub(super) fn gone(&mut self, key: &str) {
        self.0.remove(key);
    }

    /// Iterates over what is to be fetched: key, and the network's name for the file.
    fn wanted(&self) -> impl Iterator<Item = (&String, &String)> {
        self.0
            .iter()
            .filter_map(|(key, kept)| Some((key, kept.wanted.as_ref()?)))
    }

    /// Returns the keys of the pictures that `what` names and no incident holds.
    fn of(&self, what: &Forget, holds: &[Hold]) -> Vec<String> {
        let named = |kept: &Kept| match what {
            Forget::Person(who) => kept.by == *who,
            Forget::Before(before) => kept.at < *before,
        };
        // a picture of nobody knows which trailer is held like one of the incident's
        let held = |kept: &Kept| {
            let of = |hold: &Hold| kept.unit.as_ref().is_none_or(|unit| *unit == hold.unit);
            holds.iter().any(|hold| of(hold) && hold.holds(kept.at))
        };
        let gone = self.0.iter().filter(|(_, kept)| named(kept) && !held(kept));
        gone.map(|(key, _)| key.clone()).collect()
    }

    fn file(&self, key: &str) -> Option<&String> {
        self.0.get(key)?.file.as_ref()
    }

    /// Tells whether a picture that does not go is kept in a file: the same picture twice is one file.
    fn stays(&self, file: &str, going: &[String]) -> bool {
        let same = |kept: &Kept| kept.file.as_deref() == Some(file);
        let mut all = self.0.iter();
        all.any(|(key, kept)| same(kept) && !going.contains(key))
    }
}

impl<T: Turns> Work<T> {
    /// Asks the transport for pictures that are not fetched yet, each once.
    pub(super) fn fetch_photos(&mut self) {
        let wanted: Vec<(String, String)> = self
            .state
            .outbox
            .photos
            .wanted()
            .filter(|(key, _)| !self.fetching.contains(*key))
            .map(|(key, file)| (key.clone(), file.clone()))
            .collect();
        for (key, file) in wanted {
            self.fetching.insert(key.clone());
            (self.deliver)(Parcel::fetch(key, file));
        }
    }

    /// Keeps a picture that the transport has fetched, or tells its sender why not.
    pub(super) fn photo(&mut self, key: &str, fetched: Result<Vec<u8>, PhotoLost>) {
        self.fetching.remove(key);
        let checked = fetched.and_then(|bytes| match kind(&bytes) {
            _ if bytes.len() > MOST_BYTES => Err(PhotoLost::TooLarge),
            Some(kind) => Ok((bytes, kind)),
            None => Err(PhotoLost::NoPicture),
        });
        match checked {
            Ok((bytes, kind)) => match keep(&self.dir.join(PHOTOS), &bytes, kind) {
                Ok(file) => {
                    let note = Note::PhotoKept {
                        key: key.to_owned(),
                        file,
                    };
                    self.write_notes(vec![note], Vec::new());
                }
                // it is asked for again at the next start
                Err(problem) => error!("a photo cannot be kept: {problem}"),
            },
            Err(why) => self.lose(key, why),
        }
    }

    fn lose(&mut self, key: &str, why: PhotoLost) {
        warn!("a photo is not kept: {why:?}");
        let by = self
            .state
            .outbox
            .photos
            .0
            .get(key)
            .map(|kept| kept.by.clone());
        let member = by.and_then(|by| self.state.turns.fleet()?.crew.get(&by).cloned());
        let said = member.map(|member| {
            let text = self
                .phrases
                .photo_lost(self.language_of(&member), why.text());
            Outgoing::to(&member.id, text)
        });
        let note = Note::PhotoGone {
            key: key.to_owned(),
        };
        self.write_notes(vec![note], said.into_iter().collect());
    }

    /// Takes out the pictures that `what` names, but for those that incidents hold; returns how many went.
    pub(super) fn forget_photos(&mut self, what: &Forget) -> usize {
        let holds = self.state.turns.holds();
        let photos = &self.state.outbox.photos;
        let mut notes = Vec::new();
        let going = photos.of(what, &holds);
        for key in &going {
            let file = photos.file(key).filter(|file| !photos.stays(file, &going));
            let removed = file.map_or(Ok(()), |file| {
                fs::remove_file(self.dir.join(PHOTOS).join(file))
            });
            match removed {
                Err(problem) if problem.kind() != io::ErrorKind::NotFound => {
                    error!("a photo cannot be taken out: {problem}");
                }
                _ => notes.push(Note::PhotoGone { key: key.clone() }),
            }
        }
        let count = notes.len();
        if count > 0 {
            info!("{count} photos were taken out");
            self.write_notes(notes, Vec::new());
        }
        count
    }

    /// Takes out the pictures that are older than the fleet keeps.
    pub(super) fn retain_photos(&mut self) {
        let days = self
            .state
            .turns
            .fleet()
            .and_then(|fleet| fleet.keep_photos_days);
        if let Some(days) = days {
            let before = (self.clock)() - TimeDelta::days(days.into());
            self.forget_photos(&Forget::Before(before));
        }
    }
}

/// Writes a picture down under the digest of what is in it; returns the file's name.
fn keep(folder: &Path, bytes: &[u8], kind: &str) -> io::Result<String> {
    let digest: String = Sha256::digest(bytes)
        .iter()
        .map(|byte| format!("{byte:02x}"))
        .collect();
    let name = format!("{digest}.{kind}");
    fs::create_dir_all(folder)?;
    let whole: PathBuf = folder.join(&name);
    let half = folder.join(format!("{digest}.part"));
    let mut file = File::create(&half)?;
    file.write_all(bytes)?;
    file.sync_all()?;
    fs::rename(&half, &whole)?;
    File::open(folder)?.sync_all()?;
    Ok(name)
}

/// Returns what kind of picture bytes are, by what they begin with (JPEG: ITU-T T.81 B.1.1.3; PNG: ISO/IEC 15948 5.2;
/// WebP: RFC 9649; HEIC: ISO/IEC 23008-12 with the brands of ISO/IEC 14496-12); none for anything else.
fn kind(bytes: &[u8]) -> Option<&'static str> {
    let at = |from: usize, magic: &[u8]| bytes.get(from..from + magic.len()) == Some(magic);
    if at(0, b"\xff\xd8\xff") {
        Some("jpg")
    } else if at(0, b"\x89PNG\r\n\x1a\n") {
        Some("png")
    } else if at(0, b"RIFF") && at(8, b"WEBP") {
        Some("webp")
    } else if at(4, b"ftyp")
        && [b"heic", b"heix", b"mif1"]
            .iter()
            .any(|brand| at(8, *brand))
    {
        Some("heic")
    } else {
        None
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_picture_is_known_by_what_it_begins_with() {
        assert_eq!(kind(b"\xff\xd8\xff\xe0\x00\x10JFIF"), Some("jpg"));
        assert_eq!(kind(b"\x89PNG\r\n\x1a\n...."), Some("png"));
        assert_eq!(kind(b"RIFF\x10\x00\x00\x00WEBPVP8 "), Some("webp"));
        assert_eq!(kind(b"\x00\x00\x00\x18ftypheic"), Some("heic"));
        for other in [
            &b""[..],
            b"\xff\xd8",
            b"GIF89a",
            b"<svg/>",
            b"%PDF-1.7",
            b"RIFF....AVI ",
        ] {
            assert_eq!(kind(other), None, "{other:?}");
        }
    }

    #[test]
    fn a_file_bears_its_digest_and_is_whole() {
        let folder = tempfile::TempDir::new().unwrap();
        let bytes = b"\xff\xd8\xff, a picture";
        let name = keep(&folder.path().join(PHOTOS), bytes, "jpg").unwrap();
        // sha256sum of the same bytes has 64 hex digits
        assert_eq!(name.len(), 64 + ".jpg".len());
        let read = fs::read(folder.path().join(PHOTOS).join(&name)).unwrap();
        assert_eq!(read, bytes);
        let files = fs::read_dir(folder.path().join(PHOTOS)).unwrap().count();
        assert_eq!(files, 1, "nothing half is left");
    }
}
