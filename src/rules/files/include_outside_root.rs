//! Includes that lead out of the spec's folder.

use crate::house::House;
use crate::inputs::IncludeOutcome;
use crate::rules::files::includes;
use crate::rules::wording::quoted;
use crate::rules::{Findings, rule};

rule! {
    /// An include leads out of the spec's root folder.
    ///
    /// The root is the nearest folder upwards with a `storyrod.toml`, else the folder of the root file.
    ///
    /// ## Why
    /// A spec is whole in its folder: it can be copied, sent and compared. Nothing outside is read.
    ///
    /// ## Source
    /// The format's own rule; a link out of the folder counts as outside too.
    ///
    /// ## Examples
    /// ```framing,fires
    /// include "../other/walls.framing"
    /// ```
    /// ```framing,passes
    /// include "other/walls.framing"
    /// -- file other/walls.framing
    /// footing F1
    /// ```
    "include-outside-root", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for (include, span) in includes(house) {
        let IncludeOutcome::Outside = include.outcome else { continue };
        findings
            .in_text(
                span,
                format!("{} leads out of the spec's folder and is not read", quoted(&include.path)),
            )
            .help("move the file into the folder, or put `storyrod.toml` into a folder above both");
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn out_and_back_in_is_inside() {
        check_rule(
            &RULE,
            "
include \"/etc/walls.framing\"
--       ^^^^^^^^^^^^^^^^^^ `/etc/walls.framing` leads out of the spec's folder and is not read
include \"parts/../walls.framing\"
-- file walls.framing
footing F1
",
        );
    }
}
