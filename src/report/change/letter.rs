//! The answer to a plan checker: each correction, the lines that were changed for it, the numbers that came of it.

use std::collections::HashSet;
use std::io::{self, Write};

use crate::compare::{Consequence, Outcome, StatedChange};
use crate::report::change::markdown::sentence;
use crate::report::change::{ShownChange, words};
use crate::report::markdown_text::markdown_text as plain;
use crate::report::{CAUTION, counted};

/// Writes an answer to every correction of a list: the items of a Markdown text, each with the lines below it that belong
/// to it. What a correction is about is told by the names of elements, and of rules, that stand in it.
///
/// # Errors
/// What the stream says.
pub fn write_letter(shown: &ShownChange<'_>, corrections: &str, out: &mut impl Write) -> io::Result<()> {
    let change = shown.change;
    let title = if change.title.is_empty() { "the project" } else { &change.title };
    writeln!(out, "# Answer to the corrections, {}\n", plain(title))?;
    let mut told: HashSet<usize> = HashSet::new();
    let items = items(corrections);
    let mut n_open = 0;
    for (at, item) in items.iter().enumerate() {
        writeln!(out, "## {}. {}\n", at + 1, plain(item))?;
        let about = About::of(item);
        let stated: Vec<_> = shown.stated().enumerate().filter(|(_, (it, _))| about.concerns(it)).collect();
        let all = || change.trades.iter().flat_map(|trade| &trade.consequences);
        let consequences: Vec<&Consequence> = all().filter(|it| about.follows(it)).collect();
        if stated.is_empty() && consequences.is_empty() {
            n_open += 1;
            writeln!(out, "Nothing was changed that names it. **To be answered by hand.**\n")?;
            continue;
        }
        for (index, (stated, place)) in &stated {
            told.insert(*index);
            writeln!(out, "{}", changed_line(stated, place))?;
        }
        if stated.is_empty() {
            writeln!(out, "No line of it was changed; it follows from the others:\n")?;
        }
        for consequence in consequences {
            writeln!(out, "  - {}", sentence(consequence))?;
        }
        writeln!(out)?;
    }
    let further: Vec<_> = shown.stated().enumerate().filter(|(at, _)| !told.contains(at)).collect();
    if !further.is_empty() {
        writeln!(out, "## Changed besides\n")?;
        for (_, (stated, place)) in further {
            writeln!(out, "{}", changed_line(stated, place))?;
        }
        writeln!(out)?;
    }
    let new_faults = change.trades.iter().flat_map(|trade| &trade.consequences);
    let n_new = new_faults.filter(|it| matches!(it.outcome, Outcome::Fails(_))).count();
    if n_new > 0 {
        writeln!(
            out,
            "**{} came with these changes: settle that before this is sent.**\n",
            counted(n_new, "new finding")
        )?;
    }
    if n_open > 0 {
        writeln!(out, "{} left to be answered by hand.\n", counted(n_open, "correction"))?;
    }
    writeln!(out, "{CAUTION}")
}

fn changed_line(stated: &StatedChange, place: &str) -> String {
    let place = if place.is_empty() { String::new() } else { format!(" ({})", plain(place)) };
    format!("- **{}** {}{place}", plain(&stated.element), plain(&words::stated(&stated.what)))
}

/// The items of a list, each as one line; without a list every paragraph is one.
fn items(corrections: &str) -> Vec<String> {
    let has_list = corrections.lines().any(|line| item_text(line).is_some());
    let mut items: Vec<String> = Vec::new();
    let mut is_open = false;
    for line in corrections.lines() {
        let text = line.trim();
        match item_text(line) {
            Some(text) => {
                items.push(text.to_owned());
                is_open = true;
            }
            None if text.is_empty() || text.starts_with('#') => is_open = false,
            None if is_open => {
                if let Some(item) = items.last_mut() {
                    item.push(' ');
                    item.push_str(text);
                }
            }
            None if !has_list => {
                items.push(text.to_owned());
                is_open = true;
            }
            None => {}
        }
    }
    items
}

/// What stands behind the mark of a list's item: `1.`, `1)`, `-`, `*`.
fn item_text(line: &str) -> Option<&str> {
    let line = line.trim_start();
    let behind_digits = line.trim_start_matches(|character: char| character.is_ascii_digit());
    let numbered = (behind_digits.len() < line.len())
        .then(|| behind_digits.strip_prefix(". ").or_else(|| behind_digits.strip_prefix(") ")))
        .flatten();
    numbered.or_else(|| line.strip_prefix("- ")).or_else(|| line.strip_prefix("* ")).map(str::trim)
}

/// The words of a correction that can be names.
struct About<'t>(HashSet<&'t str>);

impl<'t> About<'t> {
    fn of(item: &'t str) -> Self {
        let is_of_name =
            |character: char| character.is_alphanumeric() || matches!(character, '_' | '-' | '.');
        let words = item.split(|character| !is_of_name(character)).map(|word| word.trim_end_matches('.'));
        Self(words.filter(|word| !word.is_empty()).collect())
    }

    fn names(&self, label: &str) -> bool {
        label.rsplit(' ').next().is_some_and(|name| self.0.contains(name)) || self.0.contains(label)
    }

    fn concerns(&self, stated: &StatedChange) -> bool {
        self.names(&stated.element)
    }

    fn follows(&self, consequence: &Consequence) -> bool {
        let rule = match &consequence.outcome {
            Outcome::Fails(finding)
            | Outcome::StillFails(_, finding)
            | Outcome::Passes(finding)
            | Outcome::Waived(finding) => finding.rule,
            Outcome::Moved(..) | Outcome::Stale(_) => "",
        };
        self.names(&consequence.element) || self.0.contains(rule)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_list_gives_its_items_and_a_text_its_paragraphs() {
        let list = "# Sheet S-201\nDear all,\n\n1. F1 is too\n   small.\n2) see B1\n\nRegards\n";
        assert_eq!(items(list), ["F1 is too small.", "see B1"]);
        assert_eq!(items("F1 is too\nsmall.\n\nAnd B1."), ["F1 is too small.", "And B1."]);
        assert!(items("").is_empty());
    }

    #[test]
    fn a_name_is_found_in_a_sentence() {
        let about = About::of("Footing F1 (sheet S-201): see soil-pressure; B1.");
        assert!(about.names("footing F1") && about.names("beam B1") && about.names("sheet S-201"));
        assert!(!about.names("footing F11") && !about.0.contains(""));
        assert!(about.0.contains("soil-pressure"));
    }
}
