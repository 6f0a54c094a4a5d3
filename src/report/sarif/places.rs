//! Places as SARIF writes them: addresses, lines, and columns in characters.

use std::path::{Component, Path, PathBuf};

use url::Url;

use crate::report::sarif::shape::{ArtifactLocation, Location, PhysicalLocation, Region, Text};
use crate::report::{Around, Checked};
use crate::text::{ColumnEncoding, Span};

/// The folder that names are relative to, as tools that show a checkout call it.
pub(super) const BASE: &str = "%SRCROOT%";

/// A file by its name within the base, or where it lies outside by its whole path: the same, wherever below the base a
/// run happens.
pub(super) fn name_in_base(around: Around<'_>, name: &str) -> String {
    let mut path = PathBuf::new();
    for part in around.here.join(name).components() {
        match part {
            Component::CurDir => {}
            Component::ParentDir => _ = path.pop(),
            part => path.push(part),
        }
    }
    match path.strip_prefix(around.base) {
        Ok(below) => {
            let parts: Vec<_> = below.components().map(|part| part.as_os_str().to_string_lossy()).collect();
            parts.join("/")
        }
        Err(_) => path.display().to_string(),
    }
}

/// The address of a file: relative to the base where it lies below, else whole.
pub(super) fn address_of(around: Around<'_>, name: &str) -> ArtifactLocation {
    let name = name_in_base(around, name);
    match Url::from_file_path(Path::new(&name)) {
        Ok(whole) => ArtifactLocation { uri: whole.into(), uri_base_id: None },
        Err(()) => ArtifactLocation { uri: relative(&name), uri_base_id: Some(BASE) },
    }
}

/// The address of the base.
pub(super) fn address_of_base(base: &Path) -> Option<ArtifactLocation> {
    let uri = Url::from_directory_path(base).ok()?.into();
    Some(ArtifactLocation { uri, uri_base_id: None })
}

/// A relative name as a reference: what an address can't hold is escaped.
fn relative(name: &str) -> String {
    let Ok(mut url) = Url::parse("file:///") else { return String::new() };
    if let Ok(mut segments) = url.path_segments_mut() {
        segments.clear().extend(name.split('/'));
    }
    let path = url.path().trim_start_matches('/');
    // A colon in the first folder's name would make it a scheme.
    let is_scheme = path.split('/').next().is_some_and(|first| first.contains(':'));
    if is_scheme { format!("./{path}") } else { path.to_owned() }
}

/// A place in one of the files of a spec.
pub(super) fn location_of(
    around: Around<'_>,
    checked: &Checked<'_>,
    span: Span,
    message: Option<&str>,
) -> Location {
    Location {
        id: None,
        physical_location: PhysicalLocation {
            artifact_location: file_of(around, checked, span),
            region: Some(region_of(checked, span)),
        },
        logical_locations: Vec::new(),
        message: message.map(Text::of),
    }
}

/// The file of a place.
pub(super) fn file_of(around: Around<'_>, checked: &Checked<'_>, span: Span) -> ArtifactLocation {
    address_of(around, checked.names.get(span.file.0 as usize).map(String::as_str).unwrap_or_default())
}

/// Where a place begins and the character behind it.
pub(super) fn region_of(checked: &Checked<'_>, span: Span) -> Region {
    let point = |byte: u32| match checked.sources.get(span.file.0 as usize) {
        Some(source) => {
            let place = source.lines.line_column(&source.text, byte, ColumnEncoding::Utf32);
            (place.line + 1, place.column + 1)
        }
        None => (1, 1),
    };
    let ((start_line, start_column), (end_line, end_column)) = (point(span.start), point(span.end));
    Region { start_line, start_column, end_line: Some(end_line), end_column: Some(end_column) }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn around(here: &'static str) -> Around<'static> {
        Around { here: Path::new(here), base: Path::new("/job"), rules_address: None }
    }

    #[test]
    fn a_name_becomes_an_address() {
        for (name, uri) in [
            ("parts/walls.framing", "parts/walls.framing"),
            ("my house/100% é?#.framing", "my%20house/100%25%20%C3%A9%3F%23.framing"),
            ("c:cabin.framing", "./c:cabin.framing"),
            ("a/c:cabin.framing", "a/c:cabin.framing"),
        ] {
            assert_eq!(address_of(around("/job"), name).uri, uri);
            // Resolved against a base it is the name again.
            let whole = Url::parse("file:///job/").unwrap().join(uri).unwrap();
            #[cfg(unix)]
            assert_eq!(whole.to_file_path().unwrap(), Path::new("/job").join(name));
            #[cfg(not(unix))]
            assert!(whole.path().starts_with("/job/"));
        }
    }

    #[cfg(unix)]
    #[test]
    fn a_file_elsewhere_has_its_whole_address() {
        let elsewhere = address_of(around("/job"), "/srv/a b.framing");
        assert_eq!((elsewhere.uri.as_str(), elsewhere.uri_base_id), ("file:///srv/a%20b.framing", None));
        let base = address_of_base(Path::new("/srv/a b")).unwrap();
        assert_eq!(base.uri, "file:///srv/a%20b/");
    }

    #[test]
    fn an_address_does_not_depend_on_the_working_folder() {
        let inside = around("/job/barns/hop");
        for name in ["../../houses/x y.framing", "./../.././houses/x y.framing", "/job/houses/x y.framing"] {
            assert_eq!(address_of(inside, name), address_of(around("/job"), "houses/x y.framing"), "{name}");
        }
        assert_eq!(address_of(inside, "a.framing").uri, "barns/hop/a.framing");
        #[cfg(unix)]
        assert_eq!(address_of(inside, "../../../else.framing").uri, "file:///else.framing");
    }
}
