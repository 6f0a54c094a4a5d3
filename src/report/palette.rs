//! Colour, or none: decided once by whoever opens the stream.

use crate::diagnostic::Severity;

/// How words stand out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Palette {
    /// Colours of a terminal.
    Colour,
    /// No escape codes at all.
    Plain,
}

impl Palette {
    /// A finding's severity word and its marks.
    pub fn severity(self, severity: Severity, text: &str) -> String {
        match severity {
            Severity::Error => self.with("1;31", text),
            Severity::Warning => self.with("1;33", text),
            Severity::Advice => self.with("1;36", text),
        }
    }

    /// A heading.
    pub fn strong(self, text: &str) -> String {
        self.with("1", text)
    }

    /// What a reader may pass over.
    pub fn faint(self, text: &str) -> String {
        self.with("2", text)
    }

    fn with(self, code: &str, text: &str) -> String {
        match self {
            Self::Colour => format!("\u{1b}[{code}m{text}\u{1b}[0m"),
            Self::Plain => text.to_owned(),
        }
    }
}
