//! What lies under the journal: the few file operations that must not fail unnoticed, behind a trait, so that tests can
//! make them fail.

use std::fs::{File, OpenOptions};
use std::io::{self, Write};
use std::path::Path;
use std::sync::{Arc, Mutex, PoisonError};

/// Opens segments for appending.
pub trait Disk: Send {
    /// Opens a file for appending, making it where it is missing.
    ///
    /// # Errors
    ///
    /// The system's.
    fn open(&self, path: &Path) -> io::Result<Box<dyn Appending>>;

    /// Brings a directory's own entries to the disk: a file made or renamed in it is there after a power cut.
    ///
    /// # Errors
    ///
    /// The system's.
    fn sync_directory(&self, path: &Path) -> io::Result<()>;
}

/// A file that only grows, save for taking back what failed.
pub trait Appending: Send {
    /// Writes all bytes at the end.
    ///
    /// # Errors
    ///
    /// The system's; part of the bytes may have been written then.
    fn append(&mut self, bytes: &[u8]) -> io::Result<()>;

    /// Brings what was written to the disk (fdatasync).
    ///
    /// # Errors
    ///
    /// The system's; nothing since the last sync can be relied on then.
    fn sync(&mut self) -> io::Result<()>;

    /// Cuts the file to a length, in bytes.
    ///
    /// # Errors
    ///
    /// The system's.
    fn cut(&mut self, length: u64) -> io::Result<()>;

    /// Returns the file's length in bytes.
    ///
    /// # Errors
    ///
    /// The system's.
    fn length(&self) -> io::Result<u64>;
}

/// The file system.
#[derive(Debug, Clone, Copy, Default)]
pub struct Files;

impl Disk for Files {
    fn open(&self, path: &Path) -> io::Result<Box<dyn Appending>> {
        let file = OpenOptions::new().append(true).create(true).open(path)?;
        Ok(Box::new(file))
    }

    fn sync_directory(&self, path: &Path) -> io::Result<()> {
        File::open(path)?.sync_all()
    }
}

impl Appending for File {
    fn append(&mut self, bytes: &[u8]) -> io::Result<()> {
        self.write_all(bytes)
    }

    fn sync(&mut self) -> io::Result<()> {
        self.sync_data()
    }

    fn cut(&mut self, length: u64) -> io::Result<()> {
        self.set_len(length)
    }

    fn length(&self) -> io::Result<u64> {
        Ok(self.metadata()?.len())
    }
}

/// The file system with faults that a test switches on and off, also while the journal is open.
#[derive(Debug, Clone, Default)]
pub struct FaultyFiles(Arc<Mutex<Faults>>);

/// What fails at present.
#[derive(Debug, Clone, Default)]
pub struct Faults {
    /// How many more bytes fit; a write that crosses it is cut short and fails as on a full disk.
    pub room: Option<u64>,
    /// Syncs fail.
    pub syncs: bool,
    /// Cuts fail.
    pub cuts: bool,
    /// Opening fails.
    pub opens: bool,
}

impl FaultyFiles {
    /// Replaces what fails.
    pub fn fail(&self, faults: Faults) {
        *self.faults() = faults;
    }

    fn faults(&self) -> std::sync::MutexGuard<'_, Faults> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

impl Disk for FaultyFiles {
    fn open(&self, path: &Path) -> io::Result<Box<dyn Appending>> {
        if self.faults().opens {
            return Err(io::ErrorKind::StorageFull.into());
        }
        Ok(Box::new(FaultyFile {
            under: Files.open(path)?,
            faults: self.clone(),
        }))
    }

    fn sync_directory(&self, path: &Path) -> io::Result<()> {
        if self.faults().syncs {
            return Err(io::Error::other("injected sync failure"));
        }
        Files.sync_directory(path)
    }
}

struct FaultyFile {
    under: Box<dyn Appending>,
    faults: FaultyFiles,
}

impl Appending for FaultyFile {
    fn append(&mut self, bytes: &[u8]) -> io::Result<()> {
        let mut faults = self.faults.faults();
        let Some(room) = &mut faults.room else {
            return self.under.append(bytes);
        };
        let fits = usize::try_from(*room)
            .unwrap_or(usize::MAX)
            .min(bytes.len());
        *room -= fits as u64;
        self.under.append(&bytes[..fits])?;
        if fits < bytes.len() {
            return Err(io::ErrorKind::StorageFull.into());
        }
        Ok(())
    }

    fn sync(&mut self) -> io::Result<()> {
        if self.faults.faults().syncs {
            return Err(io::Error::other("injected sync failure"));
        }
        self.under.sync()
    }

    fn cut(&mut self, length: u64) -> io::Result<()> {
        if self.faults.faults().cuts {
            return Err(io::Error::other("injected cut failure"));
        }
        self.under.cut(length)
    }

    fn length(&self) -> io::Result<u64> {
        self.under.length()
    }
}
