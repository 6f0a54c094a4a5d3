//! More about something that can be typed, once a person looks at it.

use crate::facts::answers::answer;
use crate::ide::cursor::fact_named;
use crate::profiles::Limits;
use crate::report::CAUTION;
use crate::rules::rule_named;
use crate::snapshot::Snapshot;
use crate::syntax::vocabulary::{ElementSpec, element_opened_by};

/// What there is to say of a completion's subject, in Markdown.
pub fn documentation(subject: &str, last: Option<&Snapshot>) -> Option<String> {
    let (kind, rest) = subject.split_once(' ').unwrap_or((subject, ""));
    match kind {
        "element" => of_element_named(rest, last).or_else(|| element_opened_by(rest).map(of_kind)),
        "fact" => of_fact(rest),
        "name" => fact_named(rest).map(|name| name.meaning.to_owned()),
        "rule" => {
            let documentation = rule_named(rest)?.documentation;
            Some(documentation.split("## Examples").next().unwrap_or_default().trim().to_owned())
        }
        "limit" => of_limit(rest, last),
        "passing" => {
            Some(format!("It passes the checks that ran, which are not all there are.\n\n{CAUTION}"))
        }
        _ => None,
    }
}

fn of_kind(spec: &ElementSpec) -> String {
    format!("{}\n\n{}", spec.summary, example(spec.example))
}

fn of_fact(rest: &str) -> Option<String> {
    let (keyword, phrase) = rest.split_once(": ")?;
    let fact = element_opened_by(keyword)?.all_facts().find(|fact| fact.phrase == phrase)?;
    let default = (!fact.default.is_empty()).then(|| format!("without it: {}", fact.default));
    let parts = [Some(fact.meaning.to_owned()), default, Some(example(fact.example))];
    Some(parts.into_iter().flatten().collect::<Vec<_>>().join("\n\n"))
}

fn of_limit(name: &str, last: Option<&Snapshot>) -> Option<String> {
    let newest = Limits::newest();
    let profile = last.map_or(newest.profile(), |last| last.house.limits.profile());
    let limit = profile.limit(name).ok()?;
    let section = if limit.section == "-" { String::new() } else { format!(", {}", limit.section) };
    Some(format!("{}\n\n{}: {}{section} ({})", limit.meaning, profile.title, limit.value, limit.status))
}

/// An element of the house: its title, and its numbers as far as they are known.
fn of_element_named(name: &str, last: Option<&Snapshot>) -> Option<String> {
    let house = &last?.house;
    let id = house.model.named(name)?;
    let common = house.model.common(id)?;
    let title = common.title.as_ref().map(|title| format!(": {title}"));
    let mut parts = vec![format!("**{}**{}", common.label(), title.unwrap_or_default())];
    let told = |words: &[&str]| {
        let known = words.iter().filter_map(|words| {
            let answer = answer(house, words, &[id]).ok()?;
            Some(format!("- {words}: {}", answer.value))
        });
        known.collect::<Vec<_>>()
    };
    let sizes = told(&["size", "thick", "top", "bottom", "seat", "subfloor", "finish", "span", "cut"]);
    parts.extend((!sizes.is_empty()).then(|| sizes.join("\n")));
    let loads = told(&["load", "pressure"]);
    if !loads.is_empty() {
        parts.push(loads.join("\n"));
        parts.push(CAUTION.to_owned());
    }
    Some(parts.join("\n\n"))
}

fn example(lines: &str) -> String {
    format!("```framing\n{}\n```", lines.trim_end())
}
