//! What a rule says of itself, for a terminal.

use std::io::{self, Write};

use crate::report::Palette;
use crate::rules::Rule;

/// Writes the documentation of one rule.
///
/// # Errors
/// What the stream says.
pub fn write_rule(rule: &Rule, palette: Palette, out: &mut impl Write) -> io::Result<()> {
    let severity = palette.severity(rule.severity, rule.severity.word());
    let danger = if rule.is_danger {
        ", means danger: cannot be switched off, only waived place by place"
    } else {
        ""
    };
    writeln!(out, "{} ({severity}{danger})\n", palette.strong(rule.slug))?;
    let mut is_spec = false;
    let mut was_blank = true;
    for line in rule.documentation.trim().lines() {
        // A documentation comment keeps the blank behind its slashes.
        let line = line.strip_prefix(' ').unwrap_or(line).trim_end();
        if let Some(fence) = line.strip_prefix("```") {
            is_spec = !is_spec;
            match (is_spec, fence.split(',').nth(1)) {
                (true, Some("fires")) => writeln!(out, "  It is found here:\n")?,
                (true, Some("passes")) => writeln!(out, "  It is not found here:\n")?,
                (true, _) => {}
                (false, _) if was_blank => {}
                (false, _) => writeln!(out)?,
            }
            was_blank = !is_spec;
            continue;
        }
        if line.is_empty() && was_blank {
            continue;
        }
        was_blank = line.is_empty();
        match line.strip_prefix("## ") {
            Some(heading) if !is_spec => writeln!(out, "{}", palette.strong(heading))?,
            _ if line.is_empty() => writeln!(out)?,
            _ if is_spec => writeln!(out, "    {line}")?,
            _ => writeln!(out, "  {line}")?,
        }
    }
    Ok(())
}

/// Writes the list of all rules, by group.
///
/// # Errors
/// What the stream says.
pub fn write_index(rules: &[Rule], palette: Palette, out: &mut impl Write) -> io::Result<()> {
    let width = rules.iter().map(|rule| rule.slug.len()).max().unwrap_or(0);
    let mut groups: Vec<&str> = Vec::new();
    for rule in rules {
        if !groups.contains(&rule.group()) {
            groups.push(rule.group());
        }
    }
    for group in groups {
        writeln!(out, "{}", palette.strong(&group.replace('_', " ")))?;
        for rule in rules.iter().filter(|rule| rule.group() == group) {
            let severity = palette.severity(rule.severity, &format!("{:<7}", rule.severity.word()));
            writeln!(out, "  {:<width$}  {severity}  {}", rule.slug, rule.summary())?;
        }
        writeln!(out)?;
    }
    writeln!(out, "{} rules; `storyrod explain RULE` tells one in full", rules.len())
}
