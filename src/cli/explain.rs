//! `storyrod explain`: what a rule looks for and why.

use std::io::Write;

use clap::Args;

use crate::cli::{Outcome, complain};
use crate::report::{self, Palette};
use crate::rules::{RULES, rule_named};
use crate::text::nearest;

#[derive(Debug, Args)]
pub(in crate::cli) struct ExplainArguments {
    /// The rule's name, as a finding prints it; without it, all rules are listed
    rule: Option<String>,
}

pub(in crate::cli) fn run(
    arguments: &ExplainArguments,
    palette: Palette,
    out: &mut impl Write,
) -> anyhow::Result<Outcome> {
    let Some(name) = &arguments.rule else {
        report::write_index(RULES, palette, out)?;
        return Ok(Outcome::Clean);
    };
    match rule_named(name) {
        Some(rule) => {
            report::write_rule(rule, palette, out)?;
            Ok(Outcome::Clean)
        }
        None => {
            let nearest = nearest(name, RULES.iter().map(|rule| rule.slug));
            let meant = nearest.map(|slug| format!("; did you mean `{slug}`?")).unwrap_or_default();
            complain(&format!("there is no rule `{name}`{meant}"));
            Ok(Outcome::Unusable)
        }
    }
}
