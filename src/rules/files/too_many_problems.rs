//! What is not told one by one.

use std::collections::BTreeMap;

use crate::house::House;
use crate::rules::{Findings, MOST_TOLD, names, rule};
use crate::text::{FileId, Span};

rule! {
    /// A file holds more problems than anybody reads.
    ///
    /// The first hundred of the text, and the first hundred of its names and values, are told one by one.
    ///
    /// ## Why
    /// Most of them have one cause: another kind of file, or two files run together. The first ones show it.
    ///
    /// ## Source
    /// The format's own rule.
    ///
    /// ## Examples
    /// More than a hundred problems are too long to be shown here.
    "too-many-problems", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for file in house.files() {
        let mut further = house.text_problems_of(file).skip(MOST_TOLD);
        if let Some(next) = further.next() {
            report(findings, next.span, 1 + further.count(), "problems of the text");
        }
    }
    let mut by_file: BTreeMap<FileId, Vec<Span>> = BTreeMap::new();
    for problem in names::distinct(house) {
        by_file.entry(problem.span.file).or_default().push(problem.span);
    }
    for spans in by_file.values() {
        if let Some(next) = spans.get(MOST_TOLD) {
            report(findings, *next, spans.len() - MOST_TOLD, "problems with names and values");
        }
    }
}

fn report(findings: &mut Findings<'_>, next: Span, count: usize, what: &str) {
    findings.in_text(next, format!("{count} more {what} from here on; the first {MOST_TOLD} are told"));
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::rules::spelling;
    use crate::testing::rule_check::found;

    #[test]
    fn the_first_hundred_are_told() {
        let of = |count: usize| format!("beam B1\n{}", "  size ;\n".repeat(count));
        assert_eq!(found(&RULE, &of(100)), []);
        let more = found(&RULE, &of(103));
        assert_eq!(more[0].message, "3 more problems of the text from here on; the first 100 are told");
        assert_eq!(found(&spelling::stray_character::RULE, &of(103)).len(), 100);
    }

    #[test]
    fn names_are_counted_by_themselves() {
        let names: String = (0..102).map(|at| format!("beam B{at}\n")).collect();
        let more = found(&RULE, &names);
        // A beam that lacks three facts is one finding; the missing project is another.
        assert_eq!(
            more[0].message,
            "3 more problems with names and values from here on; the first 100 are told"
        );
    }
}
