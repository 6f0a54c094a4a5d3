//! Files that include themselves in the end.

use crate::house::House;
use crate::inputs::IncludeOutcome;
use crate::rules::files::includes;
use crate::rules::{Findings, rule};

rule! {
    /// A file includes itself, by itself or by way of others.
    ///
    /// ## Why
    /// There is no first file then. Each is read once all the same.
    ///
    /// ## Source
    /// The format's own rule: includes lead from the root file outwards.
    ///
    /// ## Examples
    /// ```framing,fires
    /// include "walls.framing"
    /// -- file walls.framing
    /// include "test.framing"
    /// ```
    /// ```framing,passes
    /// include "walls.framing"
    /// -- file walls.framing
    /// footing F1
    /// ```
    "include-circle", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for (include, span) in includes(house) {
        let IncludeOutcome::Cycle(way) = &include.outcome else { continue };
        findings
            .in_text(span, format!("this include leads in a circle: {}", way.join(" → ")))
            .help("take one include of the circle out");
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::found;

    #[test]
    fn prints_the_way_round() {
        let messages = |text: &str| -> Vec<String> {
            found(&RULE, text).into_iter().map(|diagnostic| diagnostic.message).collect()
        };
        assert_eq!(
            messages(
                "include \"a.framing\"\n-- file a.framing\ninclude \"b.framing\"\n-- file b.framing\ninclude \"a.framing\"\n"
            ),
            ["this include leads in a circle: a.framing → b.framing → a.framing"]
        );
        assert_eq!(
            messages("include \"test.framing\"\n"),
            ["this include leads in a circle: test.framing → test.framing"]
        );
    }
}
