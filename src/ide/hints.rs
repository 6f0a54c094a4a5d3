//! Derived numbers beside the text: what follows from it and stands nowhere in it.

mod element;
mod forces;

use crate::diagnostic::Edit;
use crate::ide::figures::Doubts;
use crate::ide::meaning::element_at;
use crate::model::element::Common;
use crate::snapshot::Snapshot;
use crate::syntax::{Chunk, Fact, Opening};
use crate::text::{FileId, Span};

/// A derived number beside the text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Hint {
    /// The byte that it stands behind: a value's end.
    pub offset: u32,
    /// What it says, in a few words.
    pub label: String,
    /// What kind of number it is.
    pub kind: HintKind,
    /// How it came about; with the caution where it speaks of strength.
    pub tooltip: String,
    /// The edit that writes the number into the text as a claim, where it can be one.
    pub claim: Option<Edit>,
}

/// The kinds of numbers: each can be switched off.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum HintKind {
    /// An elevation that follows from the rest.
    Elevation,
    /// How far a member spans.
    Span,
    /// What something is cut to.
    Cut,
    /// What comes down on a support.
    Reaction,
    /// How full a member is.
    Ratio,
    /// The risers of a stair.
    Riser,
}

impl HintKind {
    /// Every kind.
    pub const ALL: [Self; 6] =
        [Self::Elevation, Self::Span, Self::Cut, Self::Reaction, Self::Ratio, Self::Riser];

    /// The word for it, in settings and in an editor's data.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Elevation => "elevations",
            Self::Span => "spans",
            Self::Cut => "cuts",
            Self::Reaction => "reactions",
            Self::Ratio => "ratios",
            Self::Riser => "risers",
        }
    }
}

/// The hints of these kinds between two bytes of a file, in the order of the text.
pub fn hints(snapshot: &Snapshot, file: FileId, range: (u32, u32), kinds: &[HintKind]) -> Vec<Hint> {
    let house = &snapshot.house;
    let doubts = Doubts::of(house);
    let Some(tree) = house.trees.get(file.0 as usize) else { return Vec::new() };
    let (start, end) = range;
    // The chunk before the first that begins in the range may reach into it.
    let first = tree.chunks.partition_point(|chunk| chunk.start <= start).saturating_sub(1);
    let chunks = tree.chunks.iter().skip(first).take_while(|chunk| chunk.start <= end);
    let mut hints = Vec::new();
    for place in chunks.filter_map(|chunk| Place::of(snapshot, file, chunk)) {
        element::add(&place, kinds, &mut hints);
        forces::add(&place, &doubts, kinds, &mut hints);
    }
    hints.retain(|hint| start <= hint.offset && hint.offset <= end);
    hints.sort_by_key(|hint| (hint.offset, hint.kind));
    hints
}

/// An element whose hints are made.
struct Place<'a> {
    snapshot: &'a Snapshot,
    file: FileId,
    chunk: &'a Chunk,
    common: &'a Common,
    /// Where its heading ends.
    heading_end: u32,
}

impl<'a> Place<'a> {
    fn of(snapshot: &'a Snapshot, file: FileId, chunk: &'a Chunk) -> Option<Self> {
        let Opening::Element(heading) = &chunk.body.opening else { return None };
        let words = [
            heading.title.as_ref().map(|(_, span)| span.end + 1),
            heading.name.as_ref().map(|(_, span)| span.end),
        ];
        let end = words.into_iter().flatten().next().unwrap_or(heading.keyword.end);
        let keyword = heading.keyword.within(file, chunk.start);
        let id = element_at(&snapshot.house, file, keyword.start)?;
        let common = snapshot.house.model.common(id)?;
        Some(Self { snapshot, file, chunk, common, heading_end: chunk.start.saturating_add(end) })
    }

    /// The first fact with one of these phrases, in the order of the phrases.
    fn fact(&self, phrases: &[&str]) -> Option<&'a Fact> {
        phrases.iter().find_map(|phrase| self.facts().find(|fact| fact.spec.phrase == *phrase))
    }

    fn facts(&self) -> impl Iterator<Item = &'a Fact> {
        self.chunk.body.facts.iter()
    }

    fn span(&self, fact: &Fact) -> Span {
        fact.span.within(self.file, self.chunk.start)
    }

    /// The end of the first of these facts that stands, else of the heading.
    fn behind(&self, phrases: &[&str]) -> u32 {
        self.fact(phrases).map_or(self.heading_end, |fact| self.span(fact).end)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::cursor::snapshot_of;

    const LOON_COVE: &str = include_str!("../../grammar/samples/loon-cove.framing");
    const SAMPLES: [&str; 3] = [
        LOON_COVE,
        include_str!("../../grammar/samples/first.framing"),
        include_str!("../../grammar/samples/hill-studio.framing"),
    ];

    /// The text with every hint of these kinds written where it stands.
    fn shown(text: &str, kinds: &[HintKind]) -> String {
        let snapshot = snapshot_of(text);
        let end = u32::try_from(text.len()).unwrap();
        let mut shown = text.to_owned();
        for hint in hints(&snapshot, FileId(0), (0, end), kinds).iter().rev() {
            shown.insert_str(hint.offset as usize, &format!(" ‹{}›", hint.label));
        }
        shown
    }

    fn check(text: &str, kind: HintKind, line: &str) {
        let shown = shown(text, &[kind]);
        assert!(shown.lines().any(|shown| shown.trim().starts_with(line)), "no line `{line}` in\n{shown}");
    }

    /// By hand: 100'-0" less 3/4" deck and 9-1/4" joists is 99'-2"; 91'-0 1/2" less 14" of pad is 89'-10 1/2"; 8'-1" less three
    /// plates of 1-1/2" is 7'-8 1/2" of stud; 19-1/2" is three risers of 6-1/2".
    #[test]
    fn heights_cuts_and_risers_follow() {
        check(
            LOON_COVE,
            HintKind::Elevation,
            r#"floor main "Main floor" ‹joist top 99'-11 1/4"› ‹joist bottom 99'-2"›"#,
        );
        check(LOON_COVE, HintKind::Elevation, r#"footing F1 "Pad under C1" ‹bottom 89'-10 1/2"›"#);
        check(LOON_COVE, HintKind::Cut, r#"studs         2x6 SPF No.2 at 16" ‹studs cut 7'-8 1/2"›"#);
        check(LOON_COVE, HintKind::Riser, r#"risers        3 ‹of 6-1/2"›"#);
    }

    /// The joists of the cabin lie 3-7/8" on sills of 5-1/2" along walls 12'-0" apart from face to face: 144 - 2 x (5-1/2 -
    /// 3-7/8 / 2) = 136-7/8" from centre to centre.
    #[test]
    fn spans_go_from_centre_to_centre_of_bearing() {
        check(SAMPLES[1], HintKind::Span, r#"run           along y ‹spans 11'-4 7/8"›"#);
    }

    /// 13,136 lb on C1 by hand in `tests/takedown.rs`. On the heaviest foot of F2 under the north wall, in plf: wall 150 x
    /// 10/12 x 8 = 1,000 and 100 framed; roof 15 x 16 = 240 and snow 42 x 16 = 672; joists J1 over 13'-9 1/4" / 2 = 6.885 ft: 83
    /// and 275. D + 0.75 L + 0.75 S = 1,423 + 206 + 504 = 2,133.
    #[test]
    fn reactions_stand_behind_the_names_of_supports() {
        check(LOON_COVE, HintKind::Reaction, r#"bears on      C1 for 10" ‹13,136 lb›"#);
        check(LOON_COVE, HintKind::Reaction, "stands on     F2 ‹2,133 plf›");
    }

    /// By hand 922 of 1,107 psi: 83 %.
    #[test]
    fn a_ratio_stands_behind_the_size_with_its_caution() {
        check(LOON_COVE, HintKind::Ratio, r#"size          2x10 SPF No.2 ‹bending 83 %›"#);
        let snapshot = snapshot_of(LOON_COVE);
        let all = hints(&snapshot, FileId(0), (0, u32::MAX), &[HintKind::Ratio, HintKind::Reaction]);
        assert!(all.iter().all(|hint| hint.tooltip.contains("licensed professional")));
    }

    #[test]
    fn what_is_stated_needs_no_hint() {
        let shown = shown(LOON_COVE, &[HintKind::Elevation, HintKind::Cut]);
        let column = shown.split("\ncolumn C1").nth(1).unwrap().split("\n\n").next().unwrap();
        assert!(!column.contains("‹cut"), "it stands there as a claim: {column}");
        assert!(!shown.contains("‹subfloor"), "{shown}");
    }

    #[test]
    fn figures_in_doubt_are_not_shown() {
        let broken = LOON_COVE.replace(
            "live          40 psf\n  dead          12 psf",
            "live          40 what\n  dead          12 psf",
        );
        assert_ne!(broken, LOON_COVE);
        let shown = shown(&broken, &[HintKind::Reaction, HintKind::Ratio]);
        assert!(!shown.contains("C1 for 10\" ‹"), "{shown}");
    }

    #[test]
    fn no_hint_repeats_another_and_all_lie_in_the_range() {
        for text in SAMPLES {
            let snapshot = snapshot_of(text);
            let end = u32::try_from(text.len()).unwrap();
            let all = hints(&snapshot, FileId(0), (0, end), &HintKind::ALL);
            for pair in all.windows(2) {
                assert!((pair[0].offset, &pair[0].label) != (pair[1].offset, &pair[1].label), "{pair:?}");
            }
            let middle = hints(&snapshot, FileId(0), (end / 3, end / 2), &HintKind::ALL);
            let expected: Vec<_> =
                all.into_iter().filter(|hint| (end / 3..=end / 2).contains(&hint.offset)).collect();
            assert_eq!(middle, expected);
        }
    }

    /// Each claim, written, is read and holds.
    #[test]
    fn a_hint_written_down_is_a_claim_that_holds() {
        for text in SAMPLES {
            let snapshot = snapshot_of(text);
            let end = u32::try_from(text.len()).unwrap();
            let count = |snapshot: &Snapshot| snapshot.findings.len();
            for hint in hints(&snapshot, FileId(0), (0, end), &HintKind::ALL) {
                let Some(claim) = hint.claim else { continue };
                let mut changed = text.to_owned();
                changed.replace_range(claim.span.start as usize..claim.span.end as usize, &claim.text);
                let after = snapshot_of(&changed);
                assert_eq!(count(&after), count(&snapshot), "{}: {:?}", claim.text, after.findings);
            }
        }
    }
}
