//! What a line says, apart from how it is spelled: `14 in` and `1'-2"` say the same, and so do a line and the same line
//! after a rename.

use std::collections::HashMap;

use crate::compare::canonical::Teller;
use crate::syntax::Fact;
use crate::syntax::vocabulary::ElementKind;

/// The names of the old spec that the new one has otherwise.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Renames {
    /// Elements.
    pub elements: HashMap<Box<str>, Box<str>>,
    /// Grid lines.
    pub grid_lines: HashMap<Box<str>, Box<str>>,
}

impl Renames {
    /// The name that an element of the old spec has now.
    pub fn element<'n>(&'n self, name: &'n str) -> &'n str {
        self.elements.get(name).map_or(name, |name| name)
    }

    /// A text of the old spec, or about it, with the names that its elements have now.
    pub fn text(&self, text: &str) -> String {
        let is_of_name =
            |character: char| character.is_alphanumeric() || matches!(character, '_' | '-' | '.');
        let mut renamed = String::new();
        for word in text.split_inclusive(|character| !is_of_name(character)) {
            let name = word.trim_end_matches(|character| !is_of_name(character));
            renamed.push_str(self.element(name));
            renamed.push_str(word.get(name.len()..).unwrap_or(""));
        }
        renamed
    }

    /// The name that a grid line of the old spec has now.
    pub fn grid_line<'n>(&'n self, name: &'n str) -> &'n str {
        self.grid_lines.get(name).map_or(name, |name| name)
    }
}

/// Which of two specs a line is in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// The old one: its names are read as those of the new.
    Old,
    /// The new one.
    New,
}

/// The meaning of a fact in an element of this kind: equal texts for equal meanings. Words in quotes may speak of a
/// thing by its old name still, or by its new one: they mean the same.
pub fn meaning(kind: ElementKind, fact: &Fact, side: Side, renames: &Renames) -> String {
    let none = Renames::default();
    let teller = Teller {
        names: if side == Side::Old { renames } else { &none },
        in_texts: renames,
        names_are_lines: kind == ElementKind::Grid,
    };
    let parts =
        fact.parts.iter().map(|part| format!("\u{1f}{}\u{1f}{}", part.label, teller.value(&part.value)));
    fact.spec.phrase.to_owned() + &parts.collect::<String>()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::syntax::{Opening, parse_fresh};

    /// The meaning of the only line of an element.
    fn meant(heading: &str, line: &str, side: Side, renames: &Renames) -> String {
        let tree = parse_fresh(&format!("{heading}\n  {line}\n"));
        let body = &tree.chunks[0].body;
        let Opening::Element(opening) = &body.opening else { panic!("{heading}") };
        meaning(opening.kind, &body.facts[0], side, renames)
    }

    #[test]
    fn spelling_does_not_count_and_sense_does() {
        let none = Renames::default();
        for (heading, one, other, same) in [
            ("wall W1", "thick 14 in", "thick 1'-2\"", true),
            ("wall W1", "thick 14\"", "thick 14-1/16\"", false),
            ("beam B1", "from A plus 12\" / 1 to C/1", "from  A plus 1' / 1 to C / 1", true),
            ("beam B1", "size W8x24", "size W8×24", true),
            ("beam B1", "size (2) 2x10 SPF #2", "size 2 of 2x10 SPF No.2", true),
            ("beam B1", "size 2 of 2x10 SPF No.2", "size 2 of 2x10 SPF No.1", false),
            ("floor main", "live 1.915 kPa", "live 1.915 kPa -- forty", true),
            ("floor main", "live 40 psf", "live 40 plf", false),
            ("intent \"I\"", "keep top of W1 >= 9' plus 0'", "keep top of W1 >= 108\" plus 0\"", true),
            ("intent \"I\"", "keep top of W1 >= 9'", "keep top of W1 > 9'", false),
        ] {
            assert_eq!(
                meant(heading, one, Side::Old, &none) == meant(heading, other, Side::New, &none),
                same,
                "{one} | {other}"
            );
        }
    }

    #[test]
    fn a_renamed_thing_means_the_same() {
        let renames = Renames {
            elements: HashMap::from([("W1".into(), "W9".into())]),
            grid_lines: HashMap::from([("A".into(), "P".into())]),
        };
        let none = Renames::default();
        for (heading, old, new) in [
            ("joists J1", "bears on W1 for 3\"", "bears on W9 for 3\""),
            ("sheet S-1", "shows top of W1 less top of A = 3\"", "shows top of W9 less top of A = 3\""),
            ("beam B1", "from A/1 to C/1", "from P/1 to C/1"),
            ("grid", "x A 0', B 12'", "x P 0', B 12'"),
            ("beam B1", "load 60 plf dead \"stair on W1\"", "load 60 plf dead \"stair on W9\""),
        ] {
            assert_eq!(
                meant(heading, old, Side::Old, &renames),
                meant(heading, new, Side::New, &renames),
                "{old}"
            );
            assert_ne!(meant(heading, old, Side::Old, &none), meant(heading, new, Side::New, &none), "{old}");
        }
    }
}
