//! An element wherever its name stands: what it is, where it is, what it carries, how full it is.

use crate::house::House;
use crate::ide::figures::Doubts;
use crate::ide::hover::comparison::{assertion_outcome, assertions_of};
use crate::ide::hover::cursor::Cursor;
use crate::ide::hover::markdown::escaped;
use crate::ide::hover::sentence::sentence;
use crate::ide::hover::{Piece, Worth, assumed, checks, levels, loads, member};
use crate::ide::meaning::{Meaning, named_at};
use crate::model::element::{Common, ElementId};
use crate::model::field::Field;
use crate::syntax::vocabulary::ElementKind;

/// So many measurements, notes, comparisons are told.
const MOST_TOLD: usize = 3;

/// The element that the name, keyword or title at the cursor means.
pub fn piece(cursor: &Cursor<'_>) -> Option<Piece> {
    let house = cursor.house();
    let named = named_at(house, cursor.file, cursor.offset)?;
    let Meaning::Element(element) = named.meaning else { return None };
    let (text, has_figures) = card(house, element)?;
    Some(Piece { span: named.span, worth: Worth::Much, text, has_figures })
}

/// All that a person asks of an element at first, and whether loads or ratios are in it.
fn card(house: &House, element: ElementId) -> Option<(String, bool)> {
    let common = house.model.common(element)?;
    let title = common.title.as_ref().filter(|title| **title != common.name);
    let title = title.map(|title| format!(" \"{}\"", escaped(title))).unwrap_or_default();
    let mut parts = vec![format!("**{}**{title}", escaped(&common.label()))];
    parts.extend(sentence(house, element));
    parts.extend(levels::stack(house, element));
    let mut lines = levels::derived(house, element);
    let figures = figures(house, element);
    let has_figures = !figures.is_empty();
    lines.extend(figures);
    lines.extend(promised(house, element));
    lines.extend(assumed::lines(house, element));
    lines.extend(record(common));
    if !lines.is_empty() {
        parts.push(lines.join("\n"));
    }
    Some((parts.join("\n\n"), has_figures))
}

/// Loads and checks, or why they can't be told yet.
fn figures(house: &House, element: ElementId) -> Vec<String> {
    if element.kind == ElementKind::Product {
        return of_product(house, element);
    }
    let mut lines = loads::lines(house, element);
    lines.extend(checks::lines(house, element));
    if lines.is_empty() {
        return lines;
    }
    match Doubts::of(house).about(element) {
        Some(why) => vec![format!("- loads and ratios are not known yet: {why}")],
        None => lines,
    }
}

/// What a product's size is, as the first member that is made of it has it.
fn of_product(house: &House, element: ElementId) -> Vec<String> {
    let users = house.model.commons().flat_map(|common| member::members_of(house, common.id));
    let mut made_of =
        users.filter(|member| house.model.stuff_of(member).is_ok_and(|it| it.product == Some(element)));
    let Some(first) = made_of.next() else { return Vec::new() };
    let words = format!("- as in {}:", escaped(&first.text));
    std::iter::once(words).chain(member::of_member(house, first)).collect()
}

/// How the comparisons of a sheet or an intent stand.
fn promised(house: &House, element: ElementId) -> Vec<String> {
    let all = assertions_of(house, element);
    let outcomes: Vec<String> = all
        .iter()
        .map(|assertion| {
            let line = house.text_at(assertion.span).split_whitespace().collect::<Vec<_>>().join(" ");
            format!("- {}: {}", escaped(&line), assertion_outcome(house, assertion))
        })
        .collect();
    let holding = outcomes.iter().filter(|line| line.contains(": holds")).count();
    if outcomes.is_empty() {
        return outcomes;
    }
    let mut lines = vec![format!("- {holding} of {} comparisons hold", outcomes.len())];
    lines.extend(outcomes.into_iter().filter(|line| !line.contains(": holds")).take(MOST_TOLD));
    lines
}

/// How far it has come, what was measured, what was accepted, where its values are from.
fn record(common: &Common) -> Vec<String> {
    let mut lines = Vec::new();
    if let Field::Stated(status, _) = &common.status {
        let since = status.since.map(|since| format!(" since {since}")).unwrap_or_default();
        lines.push(format!("- {}{since}", status.stage.word()));
    }
    lines.extend(common.shots.iter().take(MOST_TOLD).map(|shot| {
        let on = shot.on.map(|on| format!(" on {on}")).unwrap_or_default();
        format!("- measured: {} {}{on}", shot.fact, shot.value.in_feet())
    }));
    lines.extend(
        common
            .accepts
            .iter()
            .take(MOST_TOLD)
            .map(|accept| format!("- accepted: {}", escaped(&accept.value.note))),
    );
    let waived: Vec<String> =
        common.waivers.iter().map(|waiver| format!("`{}`", escaped(&waiver.rule))).collect();
    if !waived.is_empty() {
        lines.push(format!("- waived: {}", waived.join(", ")));
    }
    if let Some(source) = common.source.value() {
        let on = source.on.map(|on| format!(" on {on}")).unwrap_or_default();
        lines.push(format!("- source: {}{on}", escaped(&source.document)));
    }
    lines
}

#[cfg(test)]
mod tests {
    use crate::ide::hover::tests::{CABIN, HOP_BARN, LOON_COVE, check};

    /// The demo house's own figures: 13,136 lb (D 3,359, L 9,777) on C1, a cap of 0.41" of 1/2" (82 %), cut 96-5/16".
    #[test]
    fn a_column_says_its_chain_its_load_and_its_fullest_check() {
        let expected = [
            "**column C1** \"Column under the girder\"",
            "HSS 4 x 4 x 3/16, 8'-0 5/16\"~ cut, at C/3, stands on F1, carries B1",
            "bottom of B1  99'-2 13/16\"~",
            "head          99'-2 5/16\"~   under cap plate 7\" x 10\" x 1/2\"",
            "cut           8'-0 5/16\"~    or 96-5/16\"~",
            "foot          91'-2\"",
            "F1            91'-0 1/2\"",
            "carries 13,136 lb by D + L (D 3,359, L 9,777)",
            "fullest in **bending of the cap plate**, against beam B1: 0.409\" of 1/2\", **82 %**, by D + L (AISC 360 F11)",
            "then bending of the base plate 64 %, length of the cap 30 %",
            "assumed: plate steel A36",
            "ordered since 2027-04-05",
            "have it checked by a licensed professional",
        ];
        check(LOON_COVE, "column C$01 \"Column under", "C1", &expected);
        check(LOON_COVE, "bears on      C$01 for 10\"", "C1", &expected);
    }

    /// The demo house's own figures: W8x24, top 99'-10 3/4", bottom 99'-2 13/16"~, live sag L/415 of L/360 (87 %), 29.1 of
    /// 57.6 kip-ft (51 %), 13,136 lb on C1.
    #[test]
    fn a_beam_is_told_as_a_framer_tells_it() {
        check(
            LOON_COVE,
            "beam B$01 \"Centre",
            "B1",
            &[
                "W8x24, 35'-6\" long, from A plus 3\" / 3 to E less 3\" / 3, flush in main, held 1/2\" low, bears on the pocket PK1 in W3, C1 and the pocket PK2 in W4",
                "top 99'-10 3/4\", bottom 99'-2 13/16\"~, length 35'-6\", span 17'-9\"",
                "bottom: 100'-0\" subfloor of main − 3/4\" deck − 1/2\" held low",
                "brings to C1: 13,136 lb by D + L (D 3,359, L 9,777)",
                "fullest in **sag under live load**",
                "**87 %**, by D + L (R301.7)",
                "then sag under all load 78 %, bending 51 %",
                "AISC Shapes Database v15.0, read in a copy open to the public",
            ],
        );
        check(HOP_BARN, "column P$01 \"Ridge", "P1", &["carries 14,592 lb by D + S (D 3,840, S 10,752)"]);
    }

    /// The demo house's own figures: bays of 13'-9 1/4", 922 of 1,107 psi (83 %). What is from memory says so.
    #[test]
    fn joists_say_their_span_and_how_sure_their_values_are() {
        check(
            LOON_COVE,
            "joists J$01 \"Main",
            "J1",
            &[
                "2x10 SPF No.2, 16\" on centre, in floor main, spanning 13'-9 1/4\", bear on W1 and W2, hang from B1",
                "top 99'-11 1/4\", bottom 99'-2\"",
                "fullest in **bending**: 922 psi of 1,107 psi, **83 %**, by D + L (NDS 2018 3.3.1)",
                "NDS Supplement (2018) table 4A, from memory",
            ],
        );
    }

    /// The demo house's own figures: 1,912 psf of 2,000 psf, and 1,922 with the 76 lb of the column (9.42 plf on 8.03 ft).
    #[test]
    fn a_footing_says_the_pressure_of_what_is_allowed() {
        check(
            LOON_COVE,
            "footing F$01 \"Pad",
            "F1",
            &[
                "pad, 2'-9\" x 2'-9\" x 14\", at C/3, carries C1",
                "carries 13,212 lb by D + L (D 3,435, L 9,777)",
                "soil pressure**, against column C1: 1,922 psf of 2,000 psf, **96 %**",
            ],
        );
    }

    /// The demo house's own figures: 100'-0 3/4", 100'-0", 99'-11 1/4", 99'-2", 99'-0"; clear 7'-7 1/4".
    #[test]
    fn a_floor_says_its_stack() {
        check(
            LOON_COVE,
            "floor mai$0n \"Main",
            "main",
            &[
                "finish        100'-0 3/4\"  3/4\" fir plank",
                "subfloor      100'-0\"      deck 3/4\"",
                "joist top     99'-11 1/4\"  J1 2x10 SPF No.2",
                "joist bottom  99'-2\"       1-1/2\" furring, 1/2\" board",
                "ceiling       99'-0\"",
                "clear height over basement: 7'-7 1/4\"",
            ],
        );
        check(LOON_COVE, "floor base$0ment", "basement", &["finish    91'-4 3/4\"", "subfloor  91'-4 1/2\""]);
    }

    /// The demo house's own figures: 104" are 14 risers of 7.4286", a run of 130", headroom 80.85".
    #[test]
    fn a_stair_says_its_risers_and_headroom() {
        check(
            LOON_COVE,
            "stair S$01",
            "S1",
            &[
                "from basement to main, climbing east",
                "risers    14 x 7-7/16\"~",
                "rise      8'-8\"          or 104\"",
                "run       10'-10\"        treads of 10\"",
                "headroom  6'-8 7/8\"~     or 80-7/8\"~",
            ],
        );
    }

    #[test]
    fn what_could_not_be_verified_and_what_was_measured_is_told() {
        check(
            LOON_COVE,
            "wall W$02 \"Basement",
            "W2",
            &[
                "concrete, 10\" thick, 36'-0\" long, from A/4 to E/4, stands on F2, carries J1 and MN",
                "**not verified**, earth against the wall: height of the wall is 8'-0\", the limit is 5'-0\"",
                "poured since 2027-04-02",
                "measured: top 99'-0 3/8\" on 2027-04-03",
            ],
        );
    }

    /// IRC R401.4.1 and R402.2, as the list of limits has them: 1500 psf, 2500 psi.
    #[test]
    fn what_holds_without_a_line_stands_at_the_heading() {
        let text = CABIN.replace("  soil          2000 psf source \"invented for this sample\"\n", "");
        let assumed =
            "not stated: `soil` — 1,500 psf, the least bearing the profile presumes, gross (IRC R401.4.1)";
        check(&text, "proj$0ect \"One", "project", &["assumed-value", assumed]);
        check(
            &text.replace("  concrete      3000 psi\n", ""),
            "footing F$01",
            "F1",
            &["`concrete` — 2,500 psi", assumed],
        );
    }

    #[test]
    fn a_sheet_says_how_many_of_its_numbers_hold() {
        check(LOON_COVE, "sheet S-101$0", "S-101", &["4 of 4 comparisons hold"]);
        let text = LOON_COVE.replace("top of F1 = 91'-0 1/2\"", "top of F1 = 91'-1\"");
        let failing = "top of F1 = 91'-1\": does not hold: 91'-0 1/2\" is not = 91'-1\", 1/2\" apart";
        check(&text, "sheet S-101$0", "S-101", &["3 of 4 comparisons hold", failing]);
    }

    /// No number stands where one that it rests on can't be read.
    #[test]
    fn figures_that_rest_on_what_cant_be_read_are_not_known() {
        let text = LOON_COVE.replace("size          W8x24", "size          W8;24");
        let why = "loads and ratios are not known yet: `size` of beam B1 can't be read";
        for piece in ["beam B$01", "column C$01", "footing F$01"] {
            let (_, said) = crate::ide::hover::tests::said(&text, piece).unwrap();
            assert!(said.contains(why) && !said.contains("13,136"), "{said}");
        }
        check(&text, "joists J$02", "J2", &["**61 %**"]);
    }
}
