//! JUnit's XML. `tests/clients/test_reports.py` holds it against a published schema; here it is counted.

use quick_xml::Reader;
use quick_xml::events::{BytesStart, Event};
use storyrod::diagnostic::Severity;
use storyrod::report::{Part, Unusable, write_junit};

use crate::checked::{EVERY_MISTAKE, House};

fn junit_of(houses: &[House], unusable: &[Unusable], fail_on: Severity) -> String {
    let all: Vec<_> = houses.iter().map(House::checked).collect();
    let mut out = Vec::new();
    write_junit(&all, unusable, fail_on, Part::default(), &mut out).unwrap();
    String::from_utf8(out).unwrap()
}

/// Each element as it opens, with its attributes.
fn elements(xml: &str) -> Vec<(String, Vec<(String, String)>)> {
    let mut reader = Reader::from_str(xml);
    let mut found = Vec::new();
    let opened = |start: &BytesStart<'_>| {
        let attributes = start.attributes().map(|attribute| {
            let attribute = attribute.unwrap();
            let name = attribute.key.as_ref().to_owned();
            let value = attribute.normalized_value(quick_xml::XmlVersion::default()).unwrap().into_owned();
            (name, value)
        });
        (start.name().as_ref().to_owned(), attributes.collect())
    };
    loop {
        match reader.read_event().unwrap() {
            Event::Start(start) | Event::Empty(start) => found.push(opened(&start)),
            Event::Eof => return found,
            _ => {}
        }
    }
}

fn number(attributes: &[(String, String)], name: &str) -> usize {
    attributes.iter().find(|(known, _)| known == name).unwrap().1.parse().unwrap()
}

#[test]
fn every_finding_at_the_fail_level_is_a_failed_test() {
    for fail_on in [Severity::Error, Severity::Warning, Severity::Advice] {
        let elements = elements(&junit_of(&EVERY_MISTAKE, &[], fail_on));
        let all = || EVERY_MISTAKE.iter().flat_map(House::findings);
        let grave = all().filter(|finding| finding.severity >= fail_on).count();
        let passed = EVERY_MISTAKE
            .iter()
            .filter(|house| house.findings().all(|finding| finding.severity < fail_on))
            .count();
        let (root, counts) = &elements[0];
        assert_eq!(root, "testsuites");
        assert_eq!((number(counts, "tests"), number(counts, "failures")), (grave + passed, grave));
        let n = |name: &str| elements.iter().filter(|(element, _)| element == name).count();
        assert_eq!(
            (n("testsuite"), n("testcase"), n("failure")),
            (EVERY_MISTAKE.len(), grave + passed, grave)
        );
    }
}

/// Systems that show tests know one by its class and name.
#[test]
fn no_two_tests_of_a_suite_have_one_name() {
    let mut names = std::collections::HashSet::new();
    for (element, attributes) in elements(&junit_of(&EVERY_MISTAKE, &[], Severity::Advice)) {
        match element.as_str() {
            "testsuite" => names.clear(),
            "testcase" => assert!(names.insert(attributes.clone()), "{attributes:?}"),
            _ => {}
        }
    }
}

#[test]
fn what_xml_forbids_does_not_get_through() {
    let forbidden: String = (0..0x20)
        .chain([0xfffe, 0xffff])
        .filter_map(char::from_u32)
        .filter(|character| !matches!(character, '\t' | '\n' | '\r'))
        .collect();
    let name = format!("<a & \"b\">{forbidden}.framing");
    let unusable = Unusable { file: name.clone(), place: None, message: "]]> 'x'".to_owned() };
    let houses = [House::of(&name, &format!("beem \"{forbidden}\nfooting F1\n  topp  1'\n"))];
    let xml = junit_of(&houses, &[unusable], Severity::Advice);
    assert!(!xml.contains(|character| forbidden.contains(character)));
    let elements = elements(&xml);
    let (_, case) = elements.iter().find(|(element, _)| element == "testcase").unwrap();
    assert!(case[1].1.starts_with("<a & \"b\">"), "{case:?}");
    let (_, error) = elements.iter().find(|(element, _)| element == "error").unwrap();
    assert_eq!(error[1].1, "]]> 'x'");
}
