//! SARIF against the schema of its standard, and against what the standard says in words.
//!
//! `tests/data/sarif-2.1.0.schema.license.txt` says where the schema comes from.

use std::collections::{BTreeMap, HashSet};

use serde_json::{Value, json};
use storyrod::diagnostic::Severity;
use storyrod::report::{Part, Shard, Unusable};
use storyrod::rules::RULES;

use crate::checked::{EVERY_LOG, EVERY_MISTAKE, House, TODAY, by_house, results_of, sarif_of, sarif_of_part};
use crate::mistakes::text_of;

/// What is wrong with a log by the published schema.
fn faults_of(log: &Value) -> Vec<String> {
    let schema: Value = serde_json::from_str(include_str!("../data/sarif-2.1.0.schema.json")).unwrap();
    let schema = jsonschema::options().should_validate_formats(true).build(&schema).unwrap();
    schema.iter_errors(log).map(|error| format!("{}: {error}", error.instance_path)).collect()
}

fn unusable() -> [Unusable; 3] {
    let of =
        |file: &str, place| Unusable { file: file.to_owned(), place, message: "not {0} usable".to_owned() };
    [of("none é.framing", None), of("sub/storyrod.toml", Some((2, 3))), of(Unusable::STANDARD_INPUT, None)]
}

/// Names and reasons that mean something in an address, in JSON or in a message of the standard.
fn odd_houses() -> Vec<House> {
    let text = "project \"½ {0} 𝄞 [a](b)\"\n  frost  12-6\nbeem B1\nbeam B2 \"𝄞 é\" 12-6\nwall W1 \"𝄞\"\n  thick  8\n";
    ["parts/my house 100% é.framing", "c:cabin.framing", "/srv/a b.framing", "stdin"]
        .map(|name| House::of(name, text))
        .into()
}

#[test]
fn every_log_is_valid_by_the_published_schema() {
    assert_eq!(faults_of(&EVERY_LOG), Vec::<String>::new());
    let mut houses = odd_houses();
    houses.push(waived_cabin());
    assert_eq!(faults_of(&sarif_of(&houses, &unusable(), None)), Vec::<String>::new());
    let shard = Shard { number: 2, count: 3, today: TODAY, fail_on: Severity::Error, asked: 7 };
    let part = Part { changed_since: Some("origin/main"), shard: Some(shard) };
    assert_eq!(faults_of(&sarif_of_part(&houses, &unusable(), None, part)), Vec::<String>::new());
    let empty = sarif_of(&[], &[], None);
    assert_eq!(faults_of(&empty), Vec::<String>::new());
    // The schema refuses something.
    let mut wrong = empty;
    wrong["runs"][0]["columnKind"] = json!("characters");
    assert_eq!(faults_of(&wrong).len(), 1);
}

#[test]
fn each_rule_stands_where_results_say() {
    let log = &*EVERY_LOG;
    let rules = log["runs"][0]["tool"]["driver"]["rules"].as_array().unwrap();
    assert_eq!(rules.len(), RULES.len());
    for result in results_of(log) {
        let index = usize::try_from(result["ruleIndex"].as_u64().unwrap()).unwrap();
        assert_eq!(rules[index]["id"], result["ruleId"]);
    }
    for rule in rules {
        let id = rule["id"].as_str().unwrap();
        assert_eq!(rule["helpUri"], format!("https://example.org/rules#{id}"));
        assert!(rule["help"]["markdown"].as_str().unwrap().contains("## Why\n"), "{id}");
        assert!(rule["fullDescription"]["text"].as_str().unwrap().len() > 20, "{id}");
    }
    let levels: HashSet<_> =
        rules.iter().map(|rule| rule["defaultConfiguration"]["level"].as_str().unwrap()).collect();
    assert_eq!(levels, HashSet::from(["error", "warning", "note"]));
    let without = sarif_of(&[], &[], None);
    assert!(without["runs"][0]["tool"]["driver"]["rules"][0].get("helpUri").is_none());
}

/// The text of a region by what the standard says of it: lines and columns from 1, in characters, the end left out.
fn text_of_region(text: &str, region: &Value) -> String {
    let at = |member: &str| usize::try_from(region[member].as_u64().unwrap()).unwrap();
    let lines: Vec<&str> = text.split_inclusive('\n').chain([""]).collect();
    let (first, last) = (at("startLine") - 1, at("endLine") - 1);
    let taken: String = lines[first..=last].concat();
    let before_last: usize = lines[first..last].iter().map(|line| line.chars().count()).sum();
    let (from, to) = (at("startColumn") - 1, before_last + at("endColumn") - 1);
    taken.chars().skip(from).take(to - from).collect()
}

/// Every place of every finding, held against the bytes of the finding: a plain count of characters, no index of lines.
#[test]
fn regions_cut_out_what_the_finding_marks() {
    let odd = odd_houses();
    let of_odd = sarif_of(&odd, &[], None);
    let mut n_behind_wide = 0;
    for (house, results) in by_house(&EVERY_LOG, &EVERY_MISTAKE).into_iter().chain(by_house(&of_odd, &odd)) {
        for (finding, result) in house.findings().zip(results) {
            assert_eq!(result["ruleId"], finding.rule);
            let region = &result["locations"][0]["physicalLocation"]["region"];
            let (start, end) = (finding.span.start as usize, finding.span.end as usize);
            assert_eq!(text_of_region(house.text(), region), house.text()[start..end], "{region}");
            let line_start = house.text()[..start].rfind('\n').map_or(0, |at| at + 1);
            n_behind_wide += usize::from(!house.text()[line_start..start].is_ascii());
        }
    }
    assert!(n_behind_wide > 0, "no finding stands behind a character of several bytes");
}

/// Whoever applies a fix by the standard gets the text that its edits mean.
#[test]
fn fixes_replace_what_the_edits_say() {
    let mut n_fixes = 0;
    for (house, results) in by_house(&EVERY_LOG, &EVERY_MISTAKE) {
        for (finding, result) in house.findings().zip(results) {
            let Some(fix) = &finding.fix else {
                assert!(result.get("fixes").is_none());
                continue;
            };
            n_fixes += 1;
            let written = &result["fixes"][0];
            let replacements = written["artifactChanges"][0]["replacements"].as_array().unwrap();
            assert_eq!(replacements.len(), fix.edits.len());
            for (replacement, edit) in replacements.iter().zip(&fix.edits) {
                let gone = text_of_region(house.text(), &replacement["deletedRegion"]);
                assert_eq!(gone, house.text()[edit.span.start as usize..edit.span.end as usize]);
                assert_eq!(replacement["insertedContent"]["text"], *edit.text);
            }
        }
    }
    assert!(n_fixes > 20, "{n_fixes}");
}

#[test]
fn what_follows_from_a_finding_names_it() {
    let mut n_following = 0;
    for (house, results) in by_house(&EVERY_LOG, &EVERY_MISTAKE) {
        let mut results = results.into_iter();
        for root in &house.snapshot.findings {
            let of_root = results.next().unwrap();
            for _ in root.with_consequences().iter().skip(1) {
                let named = &results.next().unwrap()["relatedLocations"][0];
                assert_eq!(named["physicalLocation"], of_root["locations"][0]["physicalLocation"]);
                assert!(named["message"]["text"].as_str().unwrap().starts_with("follows from: "), "{named}");
                n_following += 1;
            }
        }
    }
    assert!(n_following > 20, "{n_following}");
}

fn waived_cabin() -> House {
    let cabin = text_of("grammar/samples/first.framing").replace("2x10 SPF", "2x12 SPF");
    let joists = "joists J1 \"Floor joists\"\n";
    assert!(cabin.contains(joists));
    let waiver = format!("{joists}  waive  stack-does-not-close because \"the {{pour}} waits\"\n");
    House::of("cabin.framing", &cabin.replace(joists, &waiver))
}

#[test]
fn what_a_waiver_silences_is_a_suppressed_result_with_its_reason() {
    let house = waived_cabin();
    assert!(house.snapshot.findings.is_empty());
    let text = house.text().to_owned();
    let log = sarif_of(&[house], &[], None);
    let [result] = results_of(&log) else { panic!("{log:#}") };
    assert_eq!((&result["ruleId"], &result["level"]), (&json!("stack-does-not-close"), &json!("error")));
    let [suppression] = &result["suppressions"].as_array().unwrap()[..] else { panic!("{result:#}") };
    assert_eq!(suppression["kind"], "inSource");
    assert_eq!(suppression["justification"], "the {pour} waits");
    let line = text_of_region(&text, &suppression["location"]["physicalLocation"]["region"]);
    assert!(line.starts_with("waive  stack-does-not-close"), "{line}");
}

/// By the standard, results of one run either all say what suppresses them or none does.
#[test]
fn every_result_says_whether_it_is_suppressed() {
    let log = sarif_of(&odd_houses(), &[], None);
    assert!(results_of(&log).iter().all(|result| result["suppressions"] == json!([])));
}

#[test]
fn addresses_are_relative_to_a_base_that_is_named() {
    let log = sarif_of(&odd_houses(), &unusable(), None);
    let run = &log["runs"][0];
    assert_eq!(run["originalUriBaseIds"], json!({"%SRCROOT%": {"uri": "file:///job/"}}));
    let files: BTreeMap<_, _> = run["artifacts"]
        .as_array()
        .unwrap()
        .iter()
        .map(|artifact| {
            (artifact["location"]["uri"].as_str().unwrap(), artifact["location"].get("uriBaseId"))
        })
        .collect();
    let base = json!("%SRCROOT%");
    assert_eq!(
        files,
        BTreeMap::from([
            ("./c:cabin.framing", Some(&base)),
            ("file:///srv/a%20b.framing", None),
            ("parts/my%20house%20100%25%20%C3%A9.framing", Some(&base)),
            ("stdin", Some(&base)),
        ])
    );
}

#[test]
fn what_could_not_be_used_is_told_and_so_is_what_is_not_checked() {
    let log = sarif_of(&[waived_cabin()], &unusable(), None);
    let invocation = &log["runs"][0]["invocations"][0];
    assert_eq!(invocation["executionSuccessful"], false);
    let told = invocation["toolExecutionNotifications"].as_array().unwrap();
    let levels: Vec<_> = told.iter().map(|one| one["level"].as_str().unwrap()).collect();
    assert_eq!(levels, ["error", "error", "error", "note", "note"]);
    // Braces stand for gaps in messages of the standard, unless they are doubled.
    assert_eq!(told[0]["message"]["text"], "none é.framing: not {{0}} usable");
    assert_eq!(
        told[1]["locations"][0]["physicalLocation"]["region"],
        json!({"startLine": 2, "startColumn": 3})
    );
    assert!(told[2].get("locations").is_none());
    assert!(told[4]["message"]["text"].as_str().unwrap().contains("licensed professional"));
    assert_eq!(sarif_of(&[], &[], None)["runs"][0]["invocations"][0]["executionSuccessful"], true);
}
