//! The text of one file, or in plain words why there is none.

use std::fmt;
use std::fs::{self, File};
use std::io::{self, ErrorKind, Read};
use std::path::Path;
use std::sync::Arc;

use crate::text::{ColumnEncoding, LineIndex};
use crate::workspace::OpenDocuments;

/// The most bytes a file may have.
pub const LARGEST_FILE: u64 = 64 << 20;

/// Why a file gives no text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum TextFault {
    /// Nothing stands at the path.
    Missing,
    /// A link stands at the path, and nothing where it leads.
    LinkToNothing,
    /// A folder stands there.
    Folder,
    /// A pipe, a device: no file that could be read twice.
    NoFile,
    /// The system does not let us read it.
    NoPermission,
    /// It has more bytes than [`LARGEST_FILE`].
    TooLarge,
    /// It has no bytes, or nothing but blanks.
    Empty,
    /// It is not UTF-8.
    NotUtf8 {
        /// The first byte that fits no character, counted from 0.
        byte: usize,
        /// Its line, from 1.
        line: u32,
        /// Its column in characters, from 1.
        column: u32,
    },
    /// Anything else, in the system's words.
    System(String),
}

impl fmt::Display for TextFault {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Missing => write!(out, "there is no such file"),
            Self::LinkToNothing => write!(out, "it is a link, and there is no file where it leads"),
            Self::Folder => write!(out, "this is a folder; a file is wanted"),
            Self::NoFile => write!(out, "this is a pipe or a device; a file is wanted"),
            Self::NoPermission => write!(out, "the system does not let this user read it"),
            Self::TooLarge => {
                write!(out, "it is larger than {} MiB, the most a file may have", LARGEST_FILE >> 20)
            }
            Self::Empty => write!(out, "the file is empty"),
            Self::NotUtf8 { byte, line, column } => {
                write!(out, "not UTF-8 text: byte {byte} (line {line}, column {column}) fits no character")
            }
            Self::System(cause) => write!(out, "it can't be read: {cause}"),
        }
    }
}

/// The text at `path`: of the open document if there is one, else of the file. A byte-order mark is left out.
pub(in crate::workspace) fn text_at(path: &Path, open: &OpenDocuments) -> Result<Arc<str>, TextFault> {
    match open.text(path) {
        Some(text) => Ok(text),
        None => text_on_disk(path),
    }
}

/// The text of a file on disk.
///
/// # Errors
/// Why there is none.
pub fn text_of(path: &Path) -> Result<Arc<str>, TextFault> {
    text_at(path, &OpenDocuments::default())
}

/// The bytes of a text as text, without a byte-order mark.
///
/// # Errors
/// [`TextFault::NotUtf8`] with the place.
pub fn text_of_bytes(bytes: Vec<u8>) -> Result<Arc<str>, TextFault> {
    match String::from_utf8(bytes) {
        Ok(text) => Ok(text.strip_prefix('\u{feff}').unwrap_or(&text).into()),
        Err(error) => {
            let byte = error.utf8_error().valid_up_to();
            let before =
                String::from_utf8_lossy(error.as_bytes().get(..byte).unwrap_or_default()).into_owned();
            let place = LineIndex::new(&before).line_column(
                &before,
                u32::try_from(byte).unwrap_or(u32::MAX),
                ColumnEncoding::Utf32,
            );
            Err(TextFault::NotUtf8 { byte, line: place.line + 1, column: place.column + 1 })
        }
    }
}

/// All bytes of a stream, up to the most a file may have.
///
/// # Errors
/// [`TextFault::TooLarge`], or what the system says.
pub fn bytes_of(stream: impl Read) -> Result<Vec<u8>, TextFault> {
    let mut bytes = Vec::new();
    stream.take(LARGEST_FILE + 1).read_to_end(&mut bytes).map_err(|error| fault_of(&error))?;
    if bytes.len() as u64 > LARGEST_FILE { Err(TextFault::TooLarge) } else { Ok(bytes) }
}

fn text_on_disk(path: &Path) -> Result<Arc<str>, TextFault> {
    let metadata = fs::metadata(path).map_err(|error| match fault_of(&error) {
        TextFault::Missing if path.is_symlink() => TextFault::LinkToNothing,
        fault => fault,
    })?;
    if metadata.is_dir() {
        return Err(TextFault::Folder);
    }
    // To open a pipe could wait for ever.
    if !metadata.is_file() {
        return Err(TextFault::NoFile);
    }
    let file = File::open(path).map_err(|error| fault_of(&error))?;
    let text = text_of_bytes(bytes_of(file)?)?;
    if text.trim().is_empty() { Err(TextFault::Empty) } else { Ok(text) }
}

/// What the system says, in plain words.
pub(in crate::workspace) fn fault_of(error: &io::Error) -> TextFault {
    match error.kind() {
        ErrorKind::NotFound | ErrorKind::NotADirectory => TextFault::Missing,
        ErrorKind::PermissionDenied => TextFault::NoPermission,
        ErrorKind::IsADirectory => TextFault::Folder,
        _ => TextFault::System(error.to_string()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn on_disk(bytes: &[u8]) -> Result<Arc<str>, TextFault> {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("house.framing");
        std::fs::write(&path, bytes).unwrap();
        text_on_disk(&path)
    }

    #[test]
    fn a_byte_order_mark_is_left_out() {
        assert_eq!(on_disk(b"\xef\xbb\xbfgrid\n").as_deref(), Ok("grid\n"));
    }

    #[test]
    fn a_byte_that_fits_no_character_is_named_by_its_place() {
        // Line 2 is `-- é` in UTF-8 (5 bytes, 4 characters), then a Latin-1 `é` alone.
        let fault = on_disk(b"grid\n-- \xc3\xa9\xe9\n").unwrap_err();
        assert_eq!(fault, TextFault::NotUtf8 { byte: 10, line: 2, column: 5 });
        assert_eq!(fault.to_string(), "not UTF-8 text: byte 10 (line 2, column 5) fits no character");
    }

    #[test]
    fn a_folder_and_a_missing_file_are_told_apart() {
        let folder = tempfile::tempdir().unwrap();
        assert_eq!(text_on_disk(folder.path()), Err(TextFault::Folder));
        assert_eq!(text_on_disk(&folder.path().join("none.framing")), Err(TextFault::Missing));
        #[cfg(unix)]
        {
            assert_eq!(text_on_disk(Path::new("/dev/null")), Err(TextFault::NoFile));
            let link = folder.path().join("link.framing");
            std::os::unix::fs::symlink("none.framing", &link).unwrap();
            assert_eq!(text_on_disk(&link), Err(TextFault::LinkToNothing));
        }
        std::fs::write(folder.path().join("a"), "").unwrap();
        assert_eq!(text_on_disk(&folder.path().join("a/none.framing")), Err(TextFault::Missing));
    }

    #[test]
    fn a_stream_stops_at_the_largest_file() {
        assert_eq!(bytes_of(std::io::repeat(b' ')).unwrap_err(), TextFault::TooLarge);
        assert_eq!(
            bytes_of(std::io::repeat(b' ').take(LARGEST_FILE)).map(|bytes| bytes.len() as u64),
            Ok(LARGEST_FILE)
        );
    }
}
