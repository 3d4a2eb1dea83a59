//! Photos on disk: files in a folder of the data directory, kept as long as the fleet says by the time they were written.

use std::fs;
use std::io::{self, ErrorKind};
use std::path::Path;

use chrono::{DateTime, Utc};

use crate::book::Hold;

/// The folder in the data directory that photos are kept in.
pub const PHOTOS: &str = "photos";

/// Deletes the photos from before an instant, but for those of an incident's time; returns how many went. Which trailer a
/// file shows is not asked: rather a photo too many is held than one too few.
pub(super) fn delete_old(data: &Path, before: DateTime<Utc>, holds: &[Hold]) -> io::Result<usize> {
    let files = match fs::read_dir(data.join(PHOTOS)) {
        Err(error) if error.kind() == ErrorKind::NotFound => return Ok(0),
        files => files?,
    };
    let mut gone = 0;
    for file in files {
        let file = file?;
        let found = file.metadata()?;
        let written: DateTime<Utc> = found.modified()?.into();
        let held = holds.iter().any(|hold| hold.holds(written));
        if found.is_file() && written < before && !held {
            fs::remove_file(file.path())?;
            gone += 1;
        }
    }
    Ok(gone)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::heard::UnitName;

    #[test]
    fn old_photos_go_but_for_those_of_an_incidents_time() {
        let dir = tempfile::tempdir().unwrap();
        let day =
            |day: u32| -> DateTime<Utc> { format!("2027-01-{day:02}T12:00:00Z").parse().unwrap() };
        assert_eq!(
            delete_old(dir.path(), day(20), &[]).unwrap(),
            0,
            "there are none yet"
        );
        let folder = dir.path().join(PHOTOS);
        fs::create_dir(&folder).unwrap();
        for n in [3, 10, 25] {
            let file = fs::File::create(folder.join(format!("{n}.jpg"))).unwrap();
            file.set_modified(day(n).into()).unwrap();
        }
        let hold = Hold {
            number: 1,
            unit: UnitName::new("12"),
            from: day(9),
            to: day(12),
        };
        assert_eq!(delete_old(dir.path(), day(20), &[hold]).unwrap(), 1);
        let left = |n: u32| folder.join(format!("{n}.jpg")).exists();
        assert_eq!([left(3), left(10), left(25)], [false, true, true]);
        assert_eq!(delete_old(dir.path(), day(20), &[]).unwrap(), 1);
    }
}
