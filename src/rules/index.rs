//! The index of the rules, rendered from their documentation.

use std::fmt::Write as _;

use crate::rules::{RULES, Rule};

const OPENING: &str = "\
# Rules

Each rule is named by the fault it finds. `storyrod explain RULE` prints the whole of its documentation, with examples.
A rule marked *danger* can't be switched off or lowered by a project, only waived on one element with a reason.
What is wrong with the text itself can't be waived at all.
Meeting all of them is no design: the building official and a licensed professional have the last word.
";

/// The index: group, name, severity, what it finds, why, and on what it rests.
pub fn index() -> String {
    let mut out = OPENING.to_owned();
    let mut groups: Vec<&str> = Vec::new();
    for rule in RULES {
        if !groups.contains(&rule.group()) {
            groups.push(rule.group());
        }
    }
    for group in groups {
        let _ = writeln!(out, "\n## {}\n", title(group));
        out.push_str("| rule | severity | finds | why | rests on |\n| --- | --- | --- | --- | --- |\n");
        for rule in RULES.iter().filter(|rule| rule.group() == group) {
            out.push_str(&row(rule));
        }
    }
    out
}

fn row(rule: &Rule) -> String {
    let danger = if rule.is_danger { ", *danger*" } else { "" };
    let cell = |text: &str| text.replace('|', "\\|");
    format!(
        "| `{}` | {}{danger} | {} | {} | {} |\n",
        rule.slug,
        rule.severity.word(),
        cell(rule.summary()),
        cell(&rule.section("Why")),
        cell(&rule.section("Source"))
    )
}

/// `load_path` as a heading.
fn title(group: &str) -> String {
    let words = group.replace('_', " ");
    let mut letters = words.chars();
    letters.next().map(|first| first.to_uppercase().chain(letters).collect()).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::index;

    /// `UPDATE=1 cargo test` writes the file anew; its change is reviewed like any other.
    #[test]
    fn the_index_is_up_to_date() {
        let path = concat!(env!("CARGO_MANIFEST_DIR"), "/grammar/rules.md");
        if std::env::var_os("UPDATE").is_some() {
            std::fs::write(path, index()).unwrap();
        }
        let is_current = std::fs::read_to_string(path).unwrap_or_default() == index();
        assert!(is_current, "grammar/rules.md is behind; `UPDATE=1 cargo test` writes it anew");
    }
}
