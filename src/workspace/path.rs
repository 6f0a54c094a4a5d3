//! Paths: links resolved, the root folder, the name a person sees.

use std::path::{Component, Path, PathBuf};

use crate::workspace::CONFIGURATION_NAME;

/// The absolute path with every link resolved. Of a file that does not stand on disk yet: its folder's, and its name.
pub fn real_path(path: &Path) -> PathBuf {
    let absolute = std::path::absolute(path).unwrap_or_else(|_| path.to_owned());
    for standing in absolute.ancestors() {
        if let Ok(real) = standing.canonicalize() {
            let rest = absolute.strip_prefix(standing).unwrap_or(Path::new(""));
            return without_dots(&real.join(rest));
        }
    }
    without_dots(&absolute)
}

/// The nearest folder upwards from `file` that holds the configuration.
pub(in crate::workspace) fn configured_folder(file: &Path) -> Option<PathBuf> {
    file.ancestors().skip(1).find(|folder| folder.join(CONFIGURATION_NAME).is_file()).map(Path::to_owned)
}

/// The folder from which everyone who shares the specs names them: that of the repository around `folder`, else of the
/// configuration, else `folder` itself.
pub fn common_folder(folder: &Path) -> PathBuf {
    let of_repository = folder.ancestors().find(|above| above.join(".git").exists()).map(Path::to_owned);
    let common = of_repository.or_else(|| configured_folder(&folder.join(CONFIGURATION_NAME)));
    common.unwrap_or_else(|| folder.to_owned())
}

/// A path as a person reads it: relative to `folder` where it lies below, with `/` between folders.
pub fn name_within(folder: &Path, path: &Path) -> String {
    match path.strip_prefix(folder) {
        Ok(below) => with_slashes(below),
        Err(_) => path.display().to_string(),
    }
}

/// A path as a person in the folder `here` writes it: relative where both lie in one repository, or below one
/// configuration, with `/` between folders. Anything else is named whole.
pub fn name_from(here: &Path, path: &Path) -> String {
    if path.starts_with(here) {
        return name_within(here, path);
    }
    let common = common_folder(here);
    let shared = here.ancestors().enumerate().find(|(_, above)| path.starts_with(above));
    match shared {
        Some((n_up, above)) if above.starts_with(&common) => {
            let name = "../".repeat(n_up) + &name_within(above, path);
            name.trim_end_matches('/').to_owned()
        }
        _ => path.display().to_string(),
    }
}

fn with_slashes(path: &Path) -> String {
    let parts: Vec<_> = path.components().map(|part| part.as_os_str().to_string_lossy()).collect();
    parts.join("/")
}

/// The path with `.` and `..` worked out by name.
pub(in crate::workspace) fn without_dots(path: &Path) -> PathBuf {
    let mut plain = PathBuf::new();
    for part in path.components() {
        match part {
            Component::CurDir => {}
            Component::ParentDir => {
                plain.pop();
            }
            Component::Prefix(_) | Component::RootDir | Component::Normal(_) => plain.push(part),
        }
    }
    plain
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_file_not_on_disk_has_its_folders_real_path() {
        let folder = tempfile::tempdir().unwrap();
        let real = folder.path().canonicalize().unwrap();
        std::fs::create_dir(real.join("a")).unwrap();
        assert_eq!(real_path(&real.join("a/../new/./house.framing")), real.join("new/house.framing"));
    }

    #[test]
    fn a_name_has_slashes_and_begins_below_the_folder() {
        assert_eq!(
            name_within(Path::new("/job"), Path::new("/job/parts/walls.framing")),
            "parts/walls.framing"
        );
        assert_eq!(name_within(Path::new("/job"), Path::new("/else/walls.framing")), "/else/walls.framing");
    }

    #[test]
    fn a_name_goes_up_within_the_repository_and_no_further() {
        let folder = tempfile::tempdir().unwrap();
        let top = folder.path().canonicalize().unwrap().join("job");
        let here = top.join("jobs/cabin");
        std::fs::create_dir_all(&here).unwrap();
        let name = |path: &str| name_from(&here, &top.join(path));
        let whole = |path: &str| top.join(path).display().to_string();
        assert_eq!(name("jobs/barn.framing"), whole("jobs/barn.framing"));
        for mark in [".git", CONFIGURATION_NAME] {
            std::fs::write(top.join(mark), "").unwrap();
            assert_eq!(name("jobs/cabin/a/b.framing"), "a/b.framing");
            assert_eq!(name("jobs/barn.framing"), "../barn.framing");
            assert_eq!(name("barns/hop.framing"), "../../barns/hop.framing");
            assert_eq!(name(""), "../..");
            let outside = folder.path().canonicalize().unwrap().join("else.framing");
            assert_eq!(name_from(&here, &outside), outside.display().to_string());
            std::fs::remove_file(top.join(mark)).unwrap();
        }
    }
}
