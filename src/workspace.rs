//! Files on disk to what an analysis reads: a root file, what it includes, the configuration.
//!
//! A spec is a root file and the files it includes. The *root folder* is the nearest folder upwards that holds
//! `storyrod.toml`, else the root file's own; nothing outside it is read. Open documents stand before files on disk.

mod affected;
mod changes;
mod configuration;
mod file_text;
mod history;
mod include_line;
mod moved_files;
mod open_documents;
mod path;
mod search;
mod spec;
mod today;

pub use changes::Changes;
pub use configuration::{
    CONFIGURATION_NAME, Configuration, ConfigurationFault, ConfiguredPath, Format, configuration_of,
    schema as configuration_schema,
};
pub use file_text::{LARGEST_FILE, TextFault, bytes_of, text_of, text_of_bytes};
pub use history::{History, HistoryFault, Revision};
pub use moved_files::{IncludeEdit, Move, include_edits};
pub use open_documents::OpenDocuments;
pub use path::{common_folder, name_from, name_within, real_path};
pub use search::{Below, are_left_out, below, files_below, specs_affected, specs_below, specs_with};
pub use spec::{Spec, spec_of};
pub use today::{day_of_seconds, day_written, today};
