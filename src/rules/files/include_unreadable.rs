//! Includes of files that give no text.

use crate::house::House;
use crate::inputs::IncludeOutcome;
use crate::rules::files::includes;
use crate::rules::wording::quoted;
use crate::rules::{Findings, rule};

rule! {
    /// An included file is there but can't be read.
    ///
    /// ## Why
    /// A part of the house is missing, and every name in it with it.
    ///
    /// ## Source
    /// The format's own rule: a file is text in UTF-8; folders in a path are parted by `/`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// include "parts\walls.framing"
    /// ```
    /// ```framing,passes
    /// include "parts/walls.framing"
    /// -- file parts/walls.framing
    /// footing F1
    /// ```
    "include-unreadable", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for (include, span) in includes(house) {
        let IncludeOutcome::Unreadable(why) = &include.outcome else { continue };
        findings.in_text(span, format!("{} can't be read: {why}", quoted(&include.path)));
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn says_why() {
        check_rule(
            &RULE,
            "
include \"parts\\walls.framing\"
--       ^^^^^^^^^^^^^^^^^^^ `parts\\walls.framing` can't be read: folders are parted by `/`: write `parts/walls.framing`
include \"parts\"
--       ^^^^^ `parts` can't be read: this is a folder; a file is wanted
-- file parts/walls.framing
footing F1
",
        );
    }
}
