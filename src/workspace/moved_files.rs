//! What becomes of include lines when files move.

use std::path::{Component, Path, PathBuf};

use crate::text::LocalSpan;
use crate::workspace::include_line::include_lines;
use crate::workspace::path::without_dots;

/// A file or a folder that gets another path.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Move {
    /// The path it has.
    pub from: PathBuf,
    /// The path it gets.
    pub to: PathBuf,
}

/// An include line that would no longer lead where it leads.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct IncludeEdit {
    /// Its path without the quotes, counted from the start of the text.
    pub span: LocalSpan,
    /// The path to write there.
    pub path: String,
}

/// The include lines of a file to change so that after the moves each leads to what it leads to now, whether the file
/// itself moves, what it includes, or both. All paths are absolute, with links resolved.
///
/// A line that leads nowhere as it is written (an empty path, a `\` in it) stays, and so does one that no path can lead.
pub fn include_edits(file: &Path, text: &str, moves: &[Move]) -> Vec<IncludeEdit> {
    let moved = after(file, moves);
    let (Some(folder), Some(moved_folder)) = (file.parent(), moved.parent()) else { return Vec::new() };
    let edit = |(written, span): (String, LocalSpan)| {
        if written.trim().is_empty() || written.contains('\\') {
            return None;
        }
        let target = after(&without_dots(&folder.join(&written)), moves);
        let leads_there = without_dots(&moved_folder.join(&written)) == target;
        let path = way(moved_folder, &target).filter(|path| !path.contains(['"', '\\', '\n', '\r']))?;
        (!leads_there).then_some(IncludeEdit { span, path })
    };
    include_lines(text).into_iter().filter_map(edit).collect()
}

/// The path that a file has after the moves: of several that concern it, the one nearest to it counts.
fn after(path: &Path, moves: &[Move]) -> PathBuf {
    let concern = moves.iter().filter_map(|one| Some((one, path.strip_prefix(&one.from).ok()?)));
    let nearest = concern.max_by_key(|(one, _)| one.from.components().count());
    match nearest {
        // Joining nothing would leave a slash behind.
        Some((one, rest)) if rest == Path::new("") => one.to.clone(),
        Some((one, rest)) => one.to.join(rest),
        None => path.to_owned(),
    }
}

/// The way from a folder to a file, with `/` between folders. `None` where there is none: onto another drive.
fn way(folder: &Path, file: &Path) -> Option<String> {
    let (mut from, mut to) = (folder.components().peekable(), file.components().peekable());
    while from.peek().is_some() && from.peek() == to.peek() {
        from.next();
        to.next();
    }
    let up = from.map(|_| Some("..".to_owned()));
    let down = to.map(|part| match part {
        Component::Normal(name) => name.to_str().map(str::to_owned),
        Component::Prefix(_) | Component::RootDir | Component::CurDir | Component::ParentDir => None,
    });
    let parts: Option<Vec<String>> = up.chain(down).collect();
    Some(parts?.join("/"))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The text of a file after some moves.
    fn after_moves(file: &str, text: &str, moves: &[(&str, &str)]) -> String {
        let moves: Vec<_> = moves
            .iter()
            .map(|(from, to)| Move { from: PathBuf::from(from), to: PathBuf::from(to) })
            .collect();
        let mut after = text.to_owned();
        for edit in include_edits(Path::new(file), text, &moves).iter().rev() {
            after.replace_range(edit.span.start as usize..edit.span.end as usize, &edit.path);
        }
        after
    }

    fn check(file: &str, written: &str, moves: &[(&str, &str)], expected: &str) {
        let line = |path: &str| format!("\u{feff}-- ä\r\ninclude  \"{path}\" -- why\r\nproject\r\n");
        assert_eq!(after_moves(file, &line(written), moves), line(expected));
    }

    #[test]
    fn the_including_file_follows_what_it_includes() {
        check("/j/h.framing", "w.framing", &[("/j/w.framing", "/j/walls.framing")], "walls.framing");
        check("/j/h.framing", "w.framing", &[("/j/w.framing", "/j/p/w.framing")], "p/w.framing");
        check("/j/h.framing", "./p/../w.framing", &[("/j/w.framing", "/w.framing")], "../w.framing");
        check("/j/h.framing", "p/w.framing", &[("/j/p", "/j/parts")], "parts/w.framing");
        check("/j/h.framing", "p/w.framing", &[("/j/q", "/j/parts"), ("/j/p/wx", "/j/x")], "p/w.framing");
    }

    #[test]
    fn a_moved_file_still_finds_what_it_includes() {
        check("/j/a/w.framing", "p.framing", &[("/j/a/w.framing", "/j/b/w.framing")], "../a/p.framing");
        check("/j/a/w.framing", "../p.framing", &[("/j/a/w.framing", "/j/w.framing")], "p.framing");
        check("/j/a/w.framing", "p.framing", &[("/j/a/w.framing", "/j/a/walls.framing")], "p.framing");
    }

    #[test]
    fn what_moves_together_stays_as_it_is() {
        check("/j/a/w.framing", "b/p.framing", &[("/j/a", "/j/c/d")], "b/p.framing");
        check("/j/a/w.framing", "../p.framing", &[("/j/a", "/j/c/d")], "../../p.framing");
        let apart = [("/j/a", "/j/c"), ("/j/a/p.framing", "/j/p.framing")];
        check("/j/a/w.framing", "p.framing", &apart, "../p.framing");
        let swapped = [("/j/a.framing", "/j/b.framing"), ("/j/b.framing", "/j/a.framing")];
        check("/j/h.framing", "a.framing", &swapped, "b.framing");
    }

    #[test]
    fn a_path_that_cannot_be_written_stays() {
        check("/j/h.framing", "w.framing", &[("/j/w.framing", "/j/w\".framing")], "w.framing");
        check("/j/a/h.framing", "", &[("/j/a", "/j/b")], "");
        check("/j/a/h.framing", "p\\w.framing", &[("/j/a/h.framing", "/j/h.framing")], "p\\w.framing");
    }
}
