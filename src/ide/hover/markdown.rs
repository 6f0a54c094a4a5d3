//! Markdown that also reads well as plain text.

use crate::report::printable;

/// Words of the author, so that nothing in them is a mark.
pub fn escaped(words: &str) -> String {
    let mut text = String::with_capacity(words.len());
    for character in printable(words).chars() {
        // The mark of a rounded length stands behind inches, where it opens nothing.
        let is_rounded = character == '~' && text.ends_with('"');
        if !is_rounded
            && matches!(character, '\\' | '`' | '*' | '_' | '[' | ']' | '<' | '>' | '|' | '#' | '~')
        {
            text.push('\\');
        }
        text.push(character);
    }
    text
}

/// Rows in columns, as they stand.
pub fn block(rows: &[[String; 3]]) -> String {
    let width = |column: usize| {
        rows.iter().filter_map(|row| row.get(column)).map(|cell| cell.chars().count()).max().unwrap_or(0)
    };
    let (first, second) = (width(0), width(1));
    let lines = rows
        .iter()
        .map(|[what, value, note]| format!("{what:<first$}  {value:<second$}  {note}").trim_end().to_owned());
    fenced("text", &lines.collect::<Vec<_>>().join("\n"))
}

/// Text in a fence, of a language.
pub fn fenced(language: &str, text: &str) -> String {
    // A fence longer than any in the text can't be closed by it.
    let longest = text.split(|c| c != '`').map(str::len).max().unwrap_or(0);
    let fence = "`".repeat(longest.max(2) + 1);
    format!("{fence}{language}\n{}\n{fence}", text.trim_end())
}

/// The text without its marks, for a client that shows them as they stand.
pub fn plain(markdown: &str) -> String {
    let mut text = String::with_capacity(markdown.len());
    let mut fence: Option<&str> = None;
    for line in markdown.lines() {
        let ticks = line.len() - line.trim_start_matches('`').len();
        let (mark, behind) = line.split_at(ticks);
        match fence {
            Some(open) if mark == open && behind.is_empty() => fence = None,
            Some(_) => push_line(&mut text, line),
            None if ticks >= 3 => fence = Some(mark),
            None if line.trim() == "---" => push_line(&mut text, ""),
            None => push_line(&mut text, &without_marks(line)),
        }
    }
    let mut lines: Vec<&str> = text.lines().collect();
    lines.dedup_by(|one, other| one.is_empty() && other.is_empty());
    lines.join("\n")
}

fn push_line(text: &mut String, line: &str) {
    text.push_str(line);
    text.push('\n');
}

fn without_marks(line: &str) -> String {
    let line = line.trim_start_matches('#');
    let mut text = String::with_capacity(line.len());
    let mut characters = line.trim_start().chars().peekable();
    let mut is_code = false;
    while let Some(character) = characters.next() {
        match character {
            '`' => is_code = !is_code,
            '\\' if !is_code => text.extend(characters.next()),
            '*' if !is_code && characters.peek() == Some(&'*') => _ = characters.next(),
            other => text.push(other),
        }
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn plain_text_has_no_marks() {
        let shown = "**beam B1** \"Long\"\n\n- load `2 x 3` of \\*all\\*, 2 * 3\n\n---\n\n```framing\nbeam B1 -- `a`\n```\n## Why\nso";
        assert_eq!(
            plain(shown),
            "beam B1 \"Long\"\n\n- load 2 x 3 of *all*, 2 * 3\n\nbeam B1 -- `a`\nWhy\nso"
        );
    }

    #[test]
    fn words_of_the_author_are_no_marks() {
        let words = "![x](http://a) <b> `c` **d** | ~e~ #f \u{1b}";
        assert_eq!(plain(&escaped(words)), words.replace('\u{1b}', "?"));
        assert_eq!(escaped("a_b"), "a\\_b");
    }

    #[test]
    fn a_fence_is_not_closed_by_its_text() {
        let text = fenced("framing", "a\n```\nb");
        assert_eq!(text, "````framing\na\n```\nb\n````");
        assert_eq!(plain(&text), "a\n```\nb");
    }

    #[test]
    fn columns_line_up() {
        let cell = |text: &str| text.to_owned();
        let rows = [[cell("finish"), cell("100'-0\""), cell("cork")], [cell("top"), cell("9\""), cell("")]];
        assert_eq!(block(&rows), "```text\nfinish  100'-0\"  cork\ntop     9\"\n```");
    }
}
