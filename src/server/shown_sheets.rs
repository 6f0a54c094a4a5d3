//! Sheets as files in a folder of their own, so that any editor can open one. The folder goes with the session.

use std::io;
use std::sync::OnceLock;

use tower_lsp::lsp_types::Url;

use crate::report::Sheet;

/// The folder, once something was put there.
#[derive(Debug, Default)]
pub struct ShownSheets {
    folder: OnceLock<tempfile::TempDir>,
}

impl ShownSheets {
    /// Writes a sheet where the client can open it; an older text of the same sheet is replaced.
    ///
    /// # Errors
    /// What the disk says.
    pub fn put(&self, sheet: &Sheet, text: &str) -> io::Result<Url> {
        let folder = match self.folder.get() {
            Some(folder) => folder,
            None => {
                let new = tempfile::Builder::new().prefix("storyrod-").tempdir()?;
                self.folder.get_or_init(|| new)
            }
        };
        let is_plain = |sign: char| sign.is_alphanumeric() || matches!(sign, '-' | '_' | '.');
        let plain = |sign: char| if is_plain(sign) { sign } else { '-' };
        let name: String = sheet.title().chars().map(plain).collect();
        let path = folder.path().join(format!("{name}.txt"));
        std::fs::write(&path, text)?;
        Url::from_file_path(&path).map_err(|()| io::Error::other("its path is no address"))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_sheet_is_one_file_whatever_its_element_is_called() {
        let shown = ShownSheets::default();
        let sheet = Sheet::Takedown(Some("../C 1".to_owned()));
        let first = shown.put(&sheet, "old").unwrap();
        let path = shown.put(&sheet, "new").unwrap().to_file_path().unwrap();
        assert_eq!(first.to_file_path().unwrap(), path);
        assert_eq!(std::fs::read_to_string(&path).unwrap(), "new");
        assert_eq!(path.file_name().unwrap(), "takedown-of-..-C-1.txt");
        drop(shown);
        assert!(!path.exists());
    }
}
