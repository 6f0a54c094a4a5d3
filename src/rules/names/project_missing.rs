//! Specs without a project.

use crate::diagnostic::Edit;
use crate::house::House;
use crate::house::lines;
use crate::model::problem::ModelProblemKind;
use crate::rules::names::{report, told};
use crate::rules::{Findings, rule};
use crate::text::Span;

rule! {
    /// A spec has no project: the file is read by itself.
    ///
    /// ## Why
    /// Names from the rest of the house are not known, nor the datum, the soil and the limits; the newest profile stands
    /// in for them.
    ///
    /// ## Source
    /// The format's own rule: the root file of a spec is the one with `project`. A part of a house is read with the
    /// file that includes it.
    ///
    /// ## Examples
    /// ```framing,fires
    /// floor main
    ///   subfloor  100'-0"
    /// ```
    /// ```framing,passes
    /// project "Loon Cove"
    ///   profile   irc-2021
    /// floor main
    ///   subfloor  100'-0"
    /// ```
    "project-missing", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    // An empty file says so itself.
    if house.model.commons().next().is_none() {
        return;
    }
    for problem in told(house) {
        let ModelProblemKind::NoProject = problem.kind else { continue };
        let start = Span::new(problem.span.file, 0, 0);
        let end = lines::line_end(house, start);
        let text = format!("project \"House\"{end}{end}");
        report(findings, problem, "no `project` here: this file is read by itself")
            .note(format!("the limits are those of {}", house.limits.profile().name))
            .help("open the file that includes it, or write `project \"…\"` on a line of its own")
            .choice("write `project \"House\"`", Edit { span: start, text });
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::found;

    #[test]
    fn stands_at_the_beginning_of_the_file() {
        let found = found(&RULE, "-- the walls\nwall W1\nwall W2\n");
        assert_eq!(found.len(), 1);
        assert_eq!((found[0].span.start, found[0].span.end), (0, 0));
        assert_eq!(found[0].message, "no `project` here: this file is read by itself");
    }
}
