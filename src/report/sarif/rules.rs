//! The rules as SARIF describes them, from their documentation.

use url::Url;

use crate::report::sarif::shape::{Configuration, RuleDescriptor, Tags, Text};
use crate::report::{Palette, write_rule};
use crate::rules::{RULES, Rule};

/// Every rule, in the order of the list.
pub(super) fn descriptors(rules_address: Option<&str>) -> Vec<RuleDescriptor> {
    RULES.iter().map(|rule| descriptor(rule, rules_address)).collect()
}

fn descriptor(rule: &Rule, rules_address: Option<&str>) -> RuleDescriptor {
    let danger = rule.is_danger.then_some("danger");
    RuleDescriptor {
        id: rule.slug,
        short_description: Text::of(rule.summary()),
        full_description: Text::of(&format!("{} {}", rule.summary(), rule.section("Why"))),
        help: Text { markdown: Some(markdown_of(rule)), ..Text::of(&text_of(rule)) },
        help_uri: rules_address
            .and_then(|address| Url::parse(&format!("{address}{}", rule.slug)).ok())
            .map(Into::into),
        default_configuration: Configuration { level: rule.severity.into() },
        properties: Tags { tags: [rule.group()].into_iter().chain(danger).collect() },
    }
}

/// What `storyrod explain` prints.
fn text_of(rule: &Rule) -> String {
    let mut text = Vec::new();
    // A list of bytes takes everything.
    _ = write_rule(rule, Palette::Plain, &mut text);
    String::from_utf8_lossy(&text).trim_end().to_owned()
}

/// The documentation as it was written, its fences named by the language alone.
fn markdown_of(rule: &Rule) -> String {
    let lines = rule.documentation.lines().map(|line| match line.strip_prefix(' ').unwrap_or(line) {
        "```framing,fires" => "It is found here:\n\n```framing",
        "```framing,passes" => "It is not found here:\n\n```framing",
        line => line,
    });
    let text = lines.collect::<Vec<_>>().join("\n");
    text.trim().replace('{', "{{").replace('}', "}}")
}
