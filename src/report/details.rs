//! What stands behind a message, a line each.

use crate::diagnostic::{Diagnostic, Remedy};

/// Why, what mends it, what that touches when it is built or bought already, on what ground.
pub(in crate::report) fn details(finding: &Diagnostic) -> Vec<String> {
    let detail = |word: &'static str| move |text: &String| format!("{word}: {text}");
    let mut lines: Vec<_> = finding.notes.iter().map(detail("note")).collect();
    lines.extend(finding.help.iter().map(detail("cure")));
    if !finding.standing.is_empty() && finding.remedy != Remedy::OnPaper {
        lines.push(format!("state: {}: {}", finding.standing, finding.remedy.sentence()));
    }
    lines.extend(finding.basis.iter().map(detail("basis")));
    lines
}
