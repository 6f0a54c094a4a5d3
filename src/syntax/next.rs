//! What can stand next: a fact's form, walked with the tokens that stand already.
//!
//! A form becomes a small net of states; the tokens move a set of them forward, all readings side by side. That takes
//! time in proportion to the tokens, whatever the form, and a line that is half typed is no special case.

mod net;
mod values;

use crate::syntax::form::{Form, Kind};
use crate::syntax::lexer::Token;
use crate::syntax::next::net::Net;
use crate::syntax::vocabulary::{ElementKind, FactNameSpec};

/// Something that can stand next.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Next {
    /// What.
    pub what: What,
    /// The value it is part of: its number in [`Walk::slots`].
    pub slot: Option<usize>,
    /// The token with which that value begins; as many as there are when it begins here.
    pub since: usize,
}

/// What can stand somewhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum What {
    /// These words; of words that have begun, the rest.
    Words(&'static str),
    /// A value of this kind, or more of one that has begun.
    Value(&'static Kind),
    /// The name of an element of one of these kinds.
    Name(&'static [ElementKind]),
    /// A fact of some element, in a comparison.
    Fact(&'static FactNameSpec),
    /// A line that cuts this axis, or any.
    GridLine(GridAxis),
    /// The unit that a number of this kind still lacks.
    Unit(&'static Kind),
    /// `=` or one of its like.
    Relation,
    /// A comma.
    Comma,
    /// The slash of a point.
    Slash,
    /// Nothing more.
    End,
}

/// Which grid lines can stand somewhere.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum GridAxis {
    /// Those that run north.
    X,
    /// Those that run east.
    Y,
    /// All.
    Either,
}

/// How far tokens fit some forms, and what can follow.
#[derive(Clone, Debug, PartialEq)]
pub struct Walk {
    /// The values of the forms, from the left.
    pub slots: Vec<(&'static str, &'static Kind)>,
    /// How many tokens fit.
    pub n_read: usize,
    /// What can stand behind the last token; nothing when it did not fit.
    pub next: Vec<Next>,
}

/// Walks some forms, one behind the other, with tokens that mean something.
pub fn next(forms: &[&'static Form], tokens: &[Token<'_>]) -> Walk {
    Net::of(forms).walk(tokens)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::syntax::lexer::Tokens;
    use crate::syntax::vocabulary::{ELEMENTS, ElementKind, spec_of};

    fn form(kind: ElementKind, phrase: &str) -> &'static Form {
        &spec_of(kind).all_facts().find(|fact| fact.phrase == phrase).unwrap().form
    }

    fn walked(kind: ElementKind, phrase: &str, text: &str) -> Walk {
        let tokens: Vec<_> = Tokens::of(text, 0).filter(|token| !token.is_silent()).collect();
        next(&[form(kind, phrase)], &tokens)
    }

    /// What can stand behind `text`, in words.
    fn told(kind: ElementKind, phrase: &str, text: &str) -> Vec<String> {
        let of = |next: &Next| match next.what {
            What::Words(words) => words.to_owned(),
            What::Value(kind) => crate::syntax::vocabulary::kind_name(kind).to_uppercase(),
            What::Name(kinds) => format!("a {}", kinds[0].word()),
            What::Fact(fact) => format!("the {}", fact.words),
            What::GridLine(axis) => format!("{axis:?}"),
            What::Unit(_) => "UNIT".to_owned(),
            What::Relation => "=".to_owned(),
            What::Comma => ",".to_owned(),
            What::Slash => "/".to_owned(),
            What::End => ".".to_owned(),
        };
        walked(kind, phrase, text).next.iter().map(of).collect()
    }

    #[test]
    fn a_form_goes_on_where_its_tokens_end() {
        use ElementKind::{Beam, Column, Footing, Intent, Joists, Wall};
        for (kind, phrase, text, expected) in [
            (Column, "cap", "", &["none", "plate", "seat", "saddle"] as &[&str]),
            (Column, "cap", "plate", &["DIMENSIONS"]),
            (Column, "cap", "plate 7\"", &["x"]),
            (Column, "cap", "plate 7\" x 10\" x 1/2\"", &[",", "."]),
            (Column, "cap", "plate 7x10", &["x"]),
            (Column, "cap", "plate 7x10 x 1/2\",", &["long side along"]),
            (Column, "cap", "plate 7x10 x 1/2\", long side", &["along"]),
            (Column, "at", "", &["X"]),
            (Column, "at", "A", &["/", "plus", "less"]),
            (Column, "at", "A plus", &["LENGTH"]),
            (Column, "at", "A plus 10", &["UNIT"]),
            (Column, "at", "A plus 10\" /", &["Y"]),
            (Column, "at", "A plus 10\" / 3 less", &["LENGTH"]),
            (Column, "at", "A junk", &[]),
            (Joists, "fill", "A to C by", &["Y"]),
            (Joists, "run", "", &["along"]),
            (Joists, "run", "along", &["x", "y"]),
            (Beam, "bears on", "", &["outside", "a wall"]),
            (Beam, "bears on", "PK1", &["for", "."]),
            (Beam, "bears on", "PK1 for 7\"", &["."]),
            (Beam, "set", "flush", &["in"]),
            (Footing, "size", "12\"", &["round x", "x"]),
            (Footing, "size", "12\" x 3'", &[".", "x"]),
            (Footing, "bars", "4 #5", &["each way", "long"]),
            (Footing, "under", "W1,", &["a wall"]),
            (Wall, "studs", "2x6 SPF No.2", &["treated", "at"]),
            (Wall, "top", "99'-0 1/2\"", &["at", ",", "."]),
            (Intent, "keep", "gap between J1", &["and"]),
            (Intent, "keep", "top of W1", &["plus", "less", "="]),
        ] {
            let mut told = told(kind, phrase, text);
            told.sort_unstable();
            let mut expected = expected.to_vec();
            expected.sort_unstable();
            assert_eq!(told, expected, "{phrase} {text}|");
        }
    }

    #[test]
    fn a_value_of_several_tokens_says_where_it_began() {
        let walk = walked(ElementKind::Beam, "from", "A / 3 to C plus");
        let offset = walk.next.first().unwrap();
        assert_eq!((offset.what, offset.since), (What::Value(&Kind::Length), 0));
        let walk = walked(ElementKind::Beam, "load", "435 plf live from A to");
        assert_eq!(
            walk.slots.iter().map(|slot| slot.0).collect::<Vec<_>>()[..4],
            ["value", "case", "from", "to"]
        );
        assert_eq!((walk.next[0].slot, walk.next[0].since), (Some(3), 5));
    }

    /// Every example of the vocabulary is read to its end, and so is each of its beginnings.
    #[test]
    fn every_example_fits_its_form() {
        for spec in ELEMENTS {
            for fact in spec.all_facts() {
                let text = &fact.example[fact.phrase.len()..];
                let tokens: Vec<_> = Tokens::of(text, 0).filter(|token| !token.is_silent()).collect();
                for n in 0..=tokens.len() {
                    let walk = next(&[&fact.form], &tokens[..n]);
                    assert_eq!(walk.n_read, n, "{} {}", spec.keyword, fact.example);
                }
                let ends = next(&[&fact.form], &tokens).next.iter().any(|next| next.what == What::End);
                assert!(ends, "{} {}", spec.keyword, fact.example);
            }
        }
    }

    /// Whatever the parser reads, the walk reads too: no line of the samples stops it.
    #[test]
    fn every_line_of_the_samples_fits() {
        for text in [
            include_str!("../../grammar/samples/hop-barn.framing"),
            include_str!("../../grammar/samples/loon-cove.framing"),
            include_str!("../../grammar/samples/alley-house.framing"),
            include_str!("../../grammar/samples/hill-studio.framing"),
        ] {
            for chunk in &crate::syntax::parse_fresh(text).chunks {
                for fact in chunk.body.facts.iter().filter(|fact| fact.part("fact").is_none()) {
                    let start = (chunk.start + fact.phrase.end) as usize;
                    let end = (chunk.start + fact.span.end) as usize;
                    let tokens: Vec<_> =
                        Tokens::of(&text[start..end], 0).filter(|token| !token.is_silent()).collect();
                    let walk = next(&[&fact.spec.form], &tokens);
                    assert!(walk.next.iter().any(|next| next.what == What::End), "{}", &text[start..end]);
                }
            }
        }
    }

    #[test]
    fn a_long_line_is_walked_in_no_time() {
        let started = std::time::Instant::now();
        for stuff in ["half of ", "1\" plus ", "top of W1 plus ", "A to ", "12 times "] {
            let text = stuff.repeat(60_000 / stuff.len());
            let tokens: Vec<_> = Tokens::of(&text, 0).filter(|token| !token.is_silent()).collect();
            for fact in ELEMENTS.iter().flat_map(|spec| spec.facts) {
                next(&[&fact.form], &tokens);
            }
        }
        assert!(started.elapsed().as_secs() < 20, "{:?}", started.elapsed());
    }
}
