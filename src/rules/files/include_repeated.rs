//! Files that are included twice.

use crate::house::House;
use crate::inputs::IncludeOutcome;
use crate::rules::files::includes;
use crate::rules::wording::quoted;
use crate::rules::{Findings, rule};

rule! {
    /// A file is included a second time.
    ///
    /// ## Why
    /// It is read once, so the second line does nothing; perhaps another file was meant.
    ///
    /// ## Source
    /// The format's own rule: each file of a spec is read once.
    ///
    /// ## Examples
    /// ```framing,fires
    /// include "walls.framing"
    /// include "walls.framing"
    /// -- file walls.framing
    /// footing F1
    /// ```
    /// ```framing,passes
    /// include "walls.framing"
    /// -- file walls.framing
    /// footing F1
    /// ```
    "include-repeated", Advice
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for (include, span) in includes(house) {
        let IncludeOutcome::Again(known) = include.outcome else { continue };
        let finding = findings
            .in_text(span, format!("{} is read already; this line does nothing", quoted(&include.path)));
        finding.take_out(house, span);
        let first = includes(house).find(|(first, _)| first.outcome == IncludeOutcome::Read(known));
        if let Some((_, first)) = first {
            finding.related(first, "included here first");
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn two_ways_to_one_file() {
        check_rule(
            &RULE,
            "
include \"a.framing\"
include \"parts/../a.framing\"
--       ^^^^^^^^^^^^^^^^^^ `parts/../a.framing` is read already; this line does nothing
-- | included here first
-- file a.framing
footing F1
",
        );
    }
}
