//! `explain`.

use crate::program::storyrod;

#[test]
fn every_rule_explains_itself() {
    let list = storyrod(&[], &["explain"]);
    assert_eq!(list.code, 0);
    let rules: Vec<_> =
        list.out.lines().filter_map(|line| line.strip_prefix("  ")?.split(' ').next()).collect();
    assert!(rules.contains(&"risers-not-even"), "{}", list.out);
    for rule in rules {
        let ran = storyrod(&[], &["explain", rule]);
        assert_eq!(ran.code, 0, "{rule}");
        for heading in ["Why", "Source", "Examples"] {
            assert!(ran.out.lines().any(|line| line == heading), "{rule} has no {heading}");
        }
    }
}
