//! What `storyrod.toml` says of a run, where no argument says it.

use std::path::{Path, PathBuf};

use crate::cli::complain;
use crate::cli::input::ALL_LEFT_OUT;
use crate::report::Unusable;
use crate::workspace::{self, Configuration, ConfigurationFault, configuration_of, name_from, real_path};

/// The configuration of a run: the nearest upwards of the working folder.
pub(in crate::cli) fn configuration_here() -> Configuration {
    configuration_of(Path::new("."))
}

/// What a run looks at: what its arguments name, else what the configuration does, else the working folder. A path of
/// the configuration where nothing stands becomes a fault of it. Where nothing is named and every spec is left out there
/// is nothing to look at, which is said and is no mistake.
pub(in crate::cli) fn paths_of(arguments: &[PathBuf], configuration: &mut Configuration) -> Vec<PathBuf> {
    if !arguments.is_empty() {
        return arguments.to_owned();
    }
    if configuration.paths.is_empty() {
        let folder = PathBuf::from(".");
        if workspace::are_left_out(&folder) {
            complain(&format!("nothing to check: {ALL_LEFT_OUT}"));
            return Vec::new();
        }
        return vec![folder];
    }
    let here = real_path(Path::new("."));
    let (standing, missing): (Vec<_>, Vec<_>) =
        configuration.paths.iter().partition(|configured| configured.path.exists());
    configuration.faults.extend(missing.into_iter().map(|configured| configured.missing.clone()));
    let as_from_here = |path: &Path| match name_from(&here, &real_path(path)) {
        name if name.is_empty() => PathBuf::from("."),
        name => PathBuf::from(name),
    };
    standing.into_iter().map(|configured| as_from_here(&configured.path)).collect()
}

/// A fault as what could not be used, named as from the working folder.
pub(in crate::cli) fn unusable(fault: &ConfigurationFault) -> Unusable {
    let here = real_path(Path::new("."));
    Unusable { file: name_from(&here, &fault.path), place: fault.place, message: fault.message.clone() }
}
