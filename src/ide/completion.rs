//! What can be typed at the cursor.
//!
//! The question is asked of the text of now, which may be a keystroke ahead of the analysis and half broken, and of the
//! last finished house, which lends names, places and numbers. Each file below answers from one source.

mod documentation;
mod elements;
mod facts;
mod files;
mod free_names;
mod grid;
mod names;
mod numbers;
mod passing;
mod plan;
mod sizes;
mod slugs;
mod snippets;
mod support_fit;
mod values;

use std::ops::Range;

use crate::house::House;
use crate::ide::cursor::Cursor;
use crate::model::element::ElementId;
use crate::snapshot::Snapshot;
use crate::syntax::vocabulary::ElementKind;

pub use documentation::documentation;

/// More than this nobody reads; the rest comes when more is typed.
const MOST: usize = 200;

/// What can be typed somewhere.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Completions {
    /// The best first.
    pub items: Vec<Completion>,
    /// There was more than fits: ask again as more is typed.
    pub is_incomplete: bool,
}

/// Something that can be typed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Completion {
    /// What it is called in the list.
    pub label: String,
    /// What it is.
    pub kind: CompletionKind,
    /// What else there is to say of it in the list.
    pub detail: Option<String>,
    /// The bytes of the text that it takes the place of.
    pub replace: Range<u32>,
    /// The cursor: a client that inserts rather than replaces leaves what stands behind it.
    pub cursor: u32,
    /// What is written.
    pub text: String,
    /// The same with places to fill in, for a client that can.
    pub snippet: Option<String>,
    /// What the typed letters are compared with; the label without it.
    pub filter: Option<String>,
    /// By which [`documentation`] finds out more.
    pub subject: Option<String>,
}

/// What can be typed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CompletionKind {
    /// A whole element.
    Element,
    /// A fact of an element.
    Fact,
    /// A name that an element has.
    Name(ElementKind),
    /// A name that nothing has yet.
    FreeName,
    /// A grid line or a place in plan.
    Place,
    /// A word.
    Word,
    /// A unit.
    Unit,
    /// A size or what it is made of.
    Size,
    /// A value that follows from the rest.
    Number,
    /// The name of a rule, a limit or a profile.
    Slug,
    /// A file.
    File,
}

/// What can be typed at byte `offset` of a text. `last` is the last finished analysis, which may be of an older text;
/// `paths`
/// tells the files that the text could include, as it would write them; it is asked in an include alone.
pub fn completion(
    text: &str,
    offset: u32,
    last: Option<&Snapshot>,
    paths: &dyn Fn() -> Vec<String>,
) -> Completions {
    let Some(cursor) = Cursor::at(text, offset) else { return Completions::default() };
    let place = Place::new(text, cursor, last);
    let mut items = Vec::new();
    if place.cursor.is_quoted {
        files::in_quotes(&place, paths, &mut items);
    } else if place.cursor.is_in_first_column() {
        elements::in_first_column(&place, &mut items);
        files::after_include(&place, paths, &mut items);
    } else {
        values::in_fact(&place, &mut items);
        facts::at_line_start(&place, &mut items);
    }
    cut(&place, items)
}

/// Each thing once, and no more than can be read.
fn cut(place: &Place<'_>, mut items: Vec<Completion>) -> Completions {
    let mut seen = std::collections::HashSet::new();
    items.retain(|item| seen.insert((item.label.clone(), item.replace.start)));
    let is_incomplete = items.len() > MOST;
    if is_incomplete {
        let typed = place.cursor.typed().to_lowercase();
        items.retain(|item| item.filter.as_ref().unwrap_or(&item.label).to_lowercase().contains(&typed));
        items.truncate(MOST);
    }
    Completions { items, is_incomplete }
}

/// The cursor with what is known around it.
struct Place<'t> {
    text: &'t str,
    cursor: Cursor<'t>,
    last: Option<&'t Snapshot>,
    /// The element around the cursor in the last house.
    element: Option<ElementId>,
    line_end: &'static str,
}

impl<'t> Place<'t> {
    fn new(text: &'t str, cursor: Cursor<'t>, last: Option<&'t Snapshot>) -> Self {
        let kind = cursor.element().map(|spec| spec.kind);
        let named = cursor.element_name().zip(last).and_then(|(name, last)| last.house.model.named(name));
        let element = named.filter(|id| Some(id.kind) == kind);
        let first_end = text.find(['\r', '\n']).and_then(|at| text.get(at..));
        let line_end = if first_end.is_some_and(|end| end.starts_with("\r\n")) { "\r\n" } else { "\n" };
        Self { text, cursor, last, element, line_end }
    }

    fn house(&self) -> Option<&'t House> {
        self.last.map(|last| &last.house)
    }

    /// Something that takes the place of the word under the cursor.
    fn item(&self, label: impl Into<String>, kind: CompletionKind) -> Completion {
        let label = label.into();
        Completion {
            text: label.clone(),
            label,
            kind,
            detail: None,
            replace: self.absolute(self.cursor.typed_from)..self.absolute(self.cursor.typed_to),
            cursor: self.absolute(self.cursor.at),
            snippet: None,
            filter: None,
            subject: None,
        }
    }

    /// Something that takes the place of all from a byte of the line to the end of the word under the cursor.
    fn item_from(&self, from: usize, label: impl Into<String>, kind: CompletionKind) -> Completion {
        let item = self.item(label, kind);
        let from = self.absolute(from.min(self.cursor.typed_from));
        Completion { replace: from..item.replace.end, ..item }
    }

    fn absolute(&self, in_line: usize) -> u32 {
        u32::try_from(self.cursor.line_start + in_line).unwrap_or(u32::MAX)
    }
}

impl Completion {
    fn detail(self, detail: impl Into<String>) -> Self {
        Self { detail: Some(detail.into()), ..self }
    }

    fn about(self, subject: impl Into<String>) -> Self {
        Self { subject: Some(subject.into()), ..self }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::snapshot::{Caches, analyse};
    use crate::testing::rule_check::{TODAY, inputs};

    const HOP_BARN: &str = include_str!("../../grammar/samples/hop-barn.framing");
    const LOON_COVE: &str = include_str!("../../grammar/samples/loon-cove.framing");

    fn snapshot(text: &str) -> Snapshot {
        analyse(&inputs(text), &mut Caches::default(), TODAY, &|| false).unwrap()
    }

    /// What is offered at `$0`, with the house of the same text.
    fn offered(fixture: &str) -> Vec<Completion> {
        let at = fixture.find("$0").unwrap();
        let text = fixture.replace("$0", "");
        let paths = || ["foundation.framing", "upper/roof.framing"].map(str::to_owned).to_vec();
        completion(&text, u32::try_from(at).unwrap(), Some(&snapshot(&text)), &paths).items
    }

    /// What is offered where a piece of a sample stands instead of another.
    fn offered_in(sample: &str, piece: &str, instead: &str) -> Vec<Completion> {
        assert_eq!(sample.matches(piece).count(), 1, "{piece}");
        offered(&sample.replace(piece, instead))
    }

    fn labels(items: &[Completion]) -> Vec<&str> {
        items.iter().map(|item| item.label.as_str()).collect()
    }

    fn details(items: &[Completion]) -> Vec<(&str, &str)> {
        items.iter().map(|item| (item.label.as_str(), item.detail.as_deref().unwrap_or(""))).collect()
    }

    fn named<'a>(items: &'a [Completion], label: &str) -> &'a Completion {
        items
            .iter()
            .find(|item| item.label == label)
            .unwrap_or_else(|| panic!("no {label} in {:?}", labels(items)))
    }

    #[test]
    fn an_element_comes_with_the_facts_it_must_have_and_a_free_name() {
        let items = offered("beam B1\n  size W8x24\nbeam B2\n  size W8x24\n\n$0\n");
        let beam = named(&items, "beam");
        assert_eq!(beam.text, "beam");
        let snippet = "beam ${1:B3}\n  size          ${2:member size}\n  from          ${3:x/y to x/y}\n  set           flush in ${4:floor}$0";
        assert_eq!(beam.snippet.as_deref(), Some(snippet));
        assert!(labels(&items).contains(&"project") && labels(&items).contains(&"include"));
        assert!(!labels(&offered("project \"A\"\n\n$0")).contains(&"project"));
        let items = offered("beam B1\n\nbe$0am B2\n  size W8x24\n");
        assert_eq!((named(&items, "beam").snippet.as_deref(), &items[0].replace), (None, &(9..13)));
        let items = offered("hold p$0\n");
        assert_eq!(named(&items, "hold point").replace, 0..6);
    }

    #[test]
    fn behind_its_word_an_element_gets_the_next_name() {
        assert_eq!(labels(&offered("beam B1\n\nbeam B7\n\nbeam $0\n")), ["B8"]);
        assert_eq!(labels(&offered("girder $0\n")), ["B1"]);
        assert_eq!(labels(&offered("column C1\n\nwall C2\n\npost C$0")), ["C3"]);
        assert_eq!(labels(&offered("hold point $0")), ["HP1"]);
        assert_eq!(labels(&offered("beam B1 $0")), ["B2"; 0]);
    }

    #[test]
    fn facts_that_must_stand_come_first_and_those_that_stand_do_not_come_again() {
        let items =
            offered("column C1\n  at            A/1\n  stands on     F1\n  $0\n  shim          1/8\"\n");
        let labels = labels(&items);
        assert_eq!(labels[..4], ["size", "base", "cap", "squash"]);
        assert!(!labels.contains(&"at") && !labels.contains(&"shim"));
        assert!(
            labels.contains(&"cut should be") && labels.ends_with(&["shot", "accept", "waive", "source"])
        );
        assert_eq!(named(&items, "size").text, "size          ");
        assert_eq!(
            named(&items, "base").snippet.as_deref(),
            Some("base          plate ${1:width x length x thickness}")
        );
        let load = named(&items, "load").snippet.as_deref();
        assert_eq!(load, Some("load          ${1:load} ${2|dead,live,sleeping,snow,roof-live,wind,soil|}"));
    }

    #[test]
    fn a_phrase_of_several_words_is_completed_whole() {
        let items = offered("beam B1\n  bears o$0\n");
        assert_eq!(labels(&items), ["bears on"]);
        assert_eq!(items[0].replace, 10..17);
        let items = offered("beam B1\n  be$0ars on W1\n");
        assert_eq!(
            (named(&items, "bears on").text.as_str(), named(&items, "bears on").snippet.as_deref()),
            ("bears on", None)
        );
    }

    /// By hand: the seat of PK1 is at 99'-0 1/2" and its plate and grout are 2-5/16" high: 99'-2 13/16". The beam's top is
    /// 1-1/4" below 100'-0" and its depth 7.93" (published), so its bottom lies 7/1000" above that.
    #[test]
    fn the_support_that_fits_is_offered_first() {
        let items = offered_in(LOON_COVE, "  bears on      PK1 for 7\"", "  bears on      $0");
        assert_eq!(details(&items)[0], ("PK1", "pocket, seat 99'-2 13/16\", 0\" off"));
        assert!(labels(&items).contains(&"outside") && !labels(&items).contains(&"B1"));
        let items = offered_in(HOP_BARN, "  bears on      C1", "  bears on      $0");
        let at = |name| items.iter().position(|item| item.label == name).unwrap();
        assert_eq!(items[0].label, "C1");
        assert!(at("C1") < at("F1") && at("F1") < at("PK1"), "those that are named already come last");
    }

    /// Figures of the samples themselves: the pad's top 91'-0 1/2"; the post stands on the middle of the beam.
    #[test]
    fn an_upright_stands_on_what_is_right_below() {
        let items = offered_in(LOON_COVE, "  stands on     F1", "  stands on     $0");
        assert_eq!(details(&items)[0], ("F1", "footing, top 91'-0 1/2\""));
        assert!(!labels(&items).contains(&"B1"), "it lies on the column");
        assert_eq!(offered_in(HOP_BARN, "  stands on     T1", "  stands on     $0")[0].label, "T1");
    }

    #[test]
    fn a_joint_is_over_a_support_that_the_member_names() {
        let items = offered_in(LOON_COVE, "  joint         over C1", "  joint         over $0");
        assert_eq!(items[0].label, "C1");
    }

    /// By hand, as the sample's comment says: 100'-0" less deck 3/4", joist 9-1/4" and sill 1-1/2" is 99'-0 1/2".
    #[test]
    fn a_height_that_follows_is_offered_with_its_sum() {
        let start = "wall W1 \"Basement wall, south\"";
        let element = &LOON_COVE[LOON_COVE.find(start).unwrap()..];
        let element = &element[..element.find("\n\n").unwrap()];
        let typed = element.replace("  top           99'-0 1/2\"", "  top           $0");
        let items = offered(&LOON_COVE.replace(element, &typed));
        assert_eq!(items[0].label, "99'-0 1/2\"");
        assert!(
            items[0].detail.as_ref().unwrap().starts_with("follows from the rest: 100'-0\""),
            "{:?}",
            items[0]
        );
    }

    /// 96-5/16" is what the sample's own claim says, worked out there by hand.
    #[test]
    fn a_claim_gets_the_value_that_the_fact_has_now() {
        let items = offered_in(
            LOON_COVE,
            "  cut           should be 96-5/16\" within 1/16\"",
            "  cut           should be $0",
        );
        assert_eq!(items[0].label, "96-5/16\"");
        let items = offered_in(LOON_COVE, "  cut           should be 96-5/16\" within 1/16\"", "  cut $0");
        assert!(labels(&items).contains(&"should be"));
        let items = offered_in(
            LOON_COVE,
            "  shows         top of W5 = 97'-5 1/8\"",
            "  shows         top of W5 = $0",
        );
        assert_eq!(items[0].label, "97'-5 1/8\"");
    }

    #[test]
    fn a_place_says_what_stands_there() {
        let items = offered_in(
            LOON_COVE,
            "column C1 \"Column under the girder\"\n  at            C/3",
            "column C1 \"Column under the girder\"\n  at            $0",
        );
        assert_eq!(details(&items)[0], ("A/3", "pocket PK1"));
        assert_eq!(named(&items, "C/3").detail.as_deref(), Some("footing F1"));
        assert_eq!(named(&items, "B/2").detail.as_deref(), Some("nothing stands there"));
        let items = offered_in(
            LOON_COVE,
            "column C1 \"Column under the girder\"\n  at            C/3",
            "column C1 \"Column under the girder\"\n  at            C/$0",
        );
        assert_eq!(named(&items, "3").detail.as_deref(), Some("at 26'-0\", centre of B1: footing F1"));
        assert_eq!(labels(&items), ["1", "2", "3", "4"]);
        assert_eq!(
            labels(&offered("grid\n  x A 0', B 10'\n  y 1 0'\ncolumn C1\n  at A $0")),
            ["plus", "less"]
        );
    }

    #[test]
    fn words_sides_and_units() {
        assert_eq!(labels(&offered("column C1\n  cap $0")), ["none", "plate", "seat", "saddle"]);
        assert_eq!(
            labels(&offered("floor F\n  live 40 p$0")),
            ["psf", "plf", "lb", "kip", "pcf", "kPa", "kN/m"]
        );
        assert_eq!(labels(&offered("wall W1\n  thick 8$0")), ["8\"", "8'", "8 in", "8 ft", "8 mm", "8 m"]);
        assert_eq!(
            labels(&offered("door D1\n  hinge $0")),
            ["north", "south", "east", "west", "left", "right"]
        );
        assert_eq!(labels(&offered("beam B1\n  set flush $0")), ["in"]);
        assert_eq!(labels(&offered("column C1\n  cap plate 7x10 x 1/2\" $0")), [", long side along"]);
        assert_eq!(offered("footing F1\n  bars 4 #$0")[0].label, "#3");
        assert_eq!(labels(&offered("project \"A\"\n  profile $0")), ["irc-2021", "irc-2018"]);
        assert_eq!(named(&offered("project \"A\"\n  limit riser-h$0"), "riser-height").replace.end, 27);
        assert_eq!(
            labels(&offered("intent \"I\"\n  keep top of W1 $0")),
            ["=", "<=", ">=", "<", ">", "plus", "less"]
        );
    }

    #[test]
    fn a_rule_that_fires_here_is_the_first_to_be_waived() {
        let text =
            "grid\n  x A 0', B 12'\n  y 1 0', 2 10'\nbeam B1\n  size W8x18\n  from A/1 to B/1\n  waive $0\n";
        let items = offered(text);
        assert_eq!(details(&items)[0].1, "here: beam B1 lies on nothing");
        assert_eq!(items[0].label, "beam-end-unsupported");
        assert!(!labels(&items).contains(&"unknown-element"));
    }

    #[test]
    fn a_rule_that_fires_in_the_house_is_the_first_to_be_weighed() {
        let text = "project\n  severity $0\ngrid\n  x A 0', B 12'\n  y 1 0', 2 10'\nbeam B1\n  size W8x18\n  from A/1 to B/1\n";
        let items = offered(text);
        assert_eq!(items[0].label, "load-reaches-nothing");
        assert!(details(&items)[0].1.starts_with("error by itself, found 1×: "), "{:?}", details(&items)[0]);
        // What must stay an error is not offered, what may become one is.
        assert!(!labels(&items).contains(&"circular-support") && !labels(&items).contains(&"unknown-name"));
        assert!(labels(&items).contains(&"odd-dimension"));
        let items = offered("project\n  severity bearing-short $0\n");
        assert_eq!(labels(&items), ["error", "warning", "advice", "off"]);
        assert_eq!(labels(&offered("project\n  severity bearing-short off $0\n")), ["because"]);
    }

    #[test]
    fn sizes_by_what_is_typed() {
        let items = offered("beam B1\n  size W8x2$0\n");
        assert_eq!(labels(&items)[..2], ["W8x21", "W8x24"]);
        assert_eq!(items[0].replace, 15..19);
        let items = offered("column C1\n  size HSS 4 x 4 x $0\n");
        assert_eq!(items[0].replace, 17..29);
        assert!(labels(&items).contains(&"HSS 4 x 4 x 3/16") && !labels(&items).contains(&"HSS 3 x 3 x 1/4"));
        assert_eq!(labels(&offered("beam B1\n  size W8x24 $0\n")), [""; 0]);
        let items = offered("joists J1\n  size 3-ply 2x1$0\n");
        assert_eq!((items[0].label.as_str(), items[0].replace.start), ("2x10 SPF No.2", 23));
        let items = offered("joists J1\n  size 2x10 $0\n");
        assert!(labels(&items).contains(&"SPF") && !labels(&items).contains(&"glulam"));
    }

    /// By hand, as the size search's own test says: W8x18 sags too much, W8x21 does not.
    #[test]
    fn a_size_that_passes_is_offered_where_the_one_that_stands_fails() {
        let items = offered(&LOON_COVE.replace("  size          W8x24", "  size          W8x15$0"));
        assert!(!labels(&items).contains(&"W8x21"), "not what is typed");
        let text = LOON_COVE.replace("  size          W8x24", "  size          W8x15");
        let last = snapshot(&text);
        let now = text.replace("W8x15", "");
        let at = now.find("  size          \n  from          A plus 3\"").unwrap() + "  size          ".len();
        let items = completion(&now, u32::try_from(at).unwrap(), Some(&last), &Vec::new).items;
        assert_eq!(items[0].label, "W8x21");
        assert!(items[0].detail.as_ref().unwrap().contains("passes the checks that ran"));
        assert!(documentation("passing", Some(&last)).unwrap().contains("licensed professional"));
    }

    #[test]
    fn includes_are_completed_between_their_quotes_and_no_other_text() {
        let items = offered("include \"fo$0\"\n");
        assert_eq!(
            (labels(&items), items[0].text.as_str()),
            (vec!["foundation.framing", "upper/roof.framing"], "foundation.framing")
        );
        assert_eq!(items[0].replace, 9..11);
        assert_eq!(offered("include \"$0\n")[0].text, "foundation.framing\"");
        assert_eq!(offered("include $0\n")[0].label, "\"foundation.framing\"");
        for text in [
            "beam B1 \"Gir$0der\"\n",
            "-- be$0\n",
            "beam B1\n  size W8x24 -- $0\n",
            "wall W1\n  load 5 plf live \"a $0\n",
        ] {
            assert_eq!(labels(&offered(text)), [""; 0], "{text}");
        }
    }

    #[test]
    fn behind_a_whole_line_only_what_can_stand_there_is_offered() {
        assert_eq!(labels(&offered("beam B1\n  bears on W1 $0\n")), ["for"]);
        assert_eq!(labels(&offered("beam B1\n  span by grid $0\n")), [""; 0]);
        assert_eq!(labels(&offered("wall W1\n  thick 8\" $0\n")), [""; 0]);
    }

    #[test]
    fn what_an_element_is_comes_with_the_caution_beside_its_load() {
        let last = snapshot(LOON_COVE);
        let told = documentation("element C1", Some(&last)).unwrap();
        assert!(
            told.contains("**column C1**: Column under the girder") && told.contains("cut: 8'-0 5/16\""),
            "{told}"
        );
        assert!(told.contains("licensed professional"));
        assert!(documentation("fact beam: bears on", None).unwrap().contains("length of real contact"));
        assert_eq!(documentation("rubbish", None), None);
    }
}
