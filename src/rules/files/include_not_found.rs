//! Includes of files that are not there.

use crate::house::House;
use crate::inputs::IncludeOutcome;
use crate::rules::files::includes;
use crate::rules::wording::quoted;
use crate::rules::{Findings, rule};

rule! {
    /// An included file is not there.
    ///
    /// ## Why
    /// A part of the house is missing, and every name in it with it.
    ///
    /// ## Source
    /// The format's own rule: a path counts from the folder of the file it stands in.
    ///
    /// ## Examples
    /// ```framing,fires
    /// include "foundation.framing"
    /// ```
    /// ```framing,passes
    /// include "foundation.framing"
    /// -- file foundation.framing
    /// footing F1
    /// ```
    "include-not-found", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for (include, span) in includes(house) {
        let IncludeOutcome::Missing = include.outcome else { continue };
        findings
            .in_text(span, format!("there is no file {}", quoted(&include.path)))
            .note("a path counts from the folder of the file it stands in");
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn counts_from_its_own_folder() {
        check_rule(
            &RULE,
            "
include \"parts/walls.framing\"
include \"pads.framing\"
--       ^^^^^^^^^^^^ there is no file `pads.framing`
-- file parts/walls.framing
include \"pads.framing\"
-- file parts/pads.framing
footing F1
",
        );
    }
}
