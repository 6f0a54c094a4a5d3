//! Include lines, found without reading the rest of the text.

use crate::text::LocalSpan;

/// The paths of the include lines of a text and where they stand, without their quotes, counted from its start.
///
/// Lines that begin with `include` but hold no path in quotes are left to the reader of the format to report.
pub(in crate::workspace) fn include_lines(text: &str) -> Vec<(String, LocalSpan)> {
    let mut found = Vec::new();
    let mut start = 0;
    for line in text.split_inclusive(['\n', '\r']) {
        if let Some((path, at)) = path_of(line) {
            let first = start + at;
            let span = (u32::try_from(first), u32::try_from(first + path.len()));
            if let (Ok(first), Ok(end)) = span {
                found.push((path.to_owned(), LocalSpan::new(first, end)));
            }
        }
        start += line.len();
    }
    found
}

/// True when an element of the kind `project` opens in the text.
pub(in crate::workspace) fn opens_project(text: &str) -> bool {
    text.split(['\n', '\r']).filter_map(|line| line.strip_prefix("project")).any(begins_with_blank_or_ends)
}

fn path_of(line: &str) -> Option<(&str, usize)> {
    let rest = line.strip_prefix("include").filter(|rest| begins_with_blank_or_ends(rest))?;
    let rest = rest.trim_start_matches([' ', '\t']);
    let path = rest.strip_prefix('"')?.split('"').next()?;
    let is_closed = rest.get(path.len() + 1..)?.starts_with('"');
    is_closed.then_some((path, line.len() - rest.len() + 1))
}

fn begins_with_blank_or_ends(rest: &str) -> bool {
    matches!(rest.chars().next(), None | Some(' ' | '\t' | '\r' | '\n'))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_path_is_found_at_its_place_whatever_ends_the_line() {
        let text = "include \"a.framing\"\r\n  include \"no\"\rinclude\t\"b c.framing\" -- why\nincluded \"no\"\ninclude \"open\n-- include \"no\"\ninclude \"\"";
        let found = include_lines(text);
        let paths: Vec<_> = found.iter().map(|(path, _)| path.as_str()).collect();
        assert_eq!(paths, ["a.framing", "b c.framing", ""]);
        for (path, span) in &found {
            assert_eq!(&text[span.start as usize..span.end as usize], path);
        }
    }

    #[test]
    fn a_project_opens_in_the_first_column_only() {
        assert!(opens_project("-- note\rproject \"Loon Cove\"\r"));
        assert!(opens_project("project"));
        assert!(!opens_project(" project \"Loon Cove\"\nprojects\n"));
    }
}
