//! Footings that press too hard on their soil.

use crate::house::House;
use crate::model::foundation::FootingSize;
use crate::rules::wording::explain;
use crate::rules::{Findings, rule};
use crate::verify::footings::next_size;
use crate::verify::limit_state::LimitState;

rule! {
    /// A footing presses harder on its soil than the soil takes.
    ///
    /// Each pad, each pier and each place along a strip, with what comes down on it by the combinations of allowable stress.
    /// Gross pressure counts the footing's own weight, net pressure leaves it out. A column off the middle presses one
    /// edge more.
    ///
    /// ## Why
    /// The footing settles more than its neighbours and takes beams, floors and stairs down with it.
    ///
    /// ## Source
    /// Residential code R401.4 (from memory); a presumed pressure is that of the limit `presumptive-bearing`, R401.4.1.
    /// Load combinations: ASCE 7-16 2.4.1, read in a secondary copy.
    ///
    /// ## Examples
    /// ```framing,fires
    /// project "Shed"
    ///   profile     irc-2021
    ///   soil        2000 psf source "soils report"
    /// grid
    ///   x           A 0'
    ///   y           1 0'
    /// footing F1
    ///   at          A/1
    ///   size        2'-0" x 2'-0" x 12"
    ///   top         90'-0"
    ///   concrete    2500 psi
    /// column C1
    ///   at          A/1
    ///   size        HSS 4 x 4 x 1/4
    ///   base        plate 8" x 8" x 1/2"
    ///   stands on   F1
    ///   load        9000 lb live
    /// ```
    /// ```framing,passes
    /// project "Shed"
    ///   profile     irc-2021
    ///   soil        2000 psf source "soils report"
    /// grid
    ///   x           A 0'
    ///   y           1 0'
    /// footing F1
    ///   at          A/1
    ///   size        2'-6" x 2'-6" x 12"
    ///   top         90'-0"
    ///   concrete    2500 psi
    /// column C1
    ///   at          A/1
    ///   size        HSS 4 x 4 x 1/4
    ///   base        plate 8" x 8" x 1/2"
    ///   stands on   F1
    ///   load        9000 lb live
    /// ```
    "soil-pressure", Error, danger
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let failing =
        house.verifications.on(LimitState::SoilPressure).filter(|verification| verification.fails());
    for verification in failing {
        let (Ok(check), Some(footing)) = (&verification.outcome, house.model.footing(verification.of)) else {
            continue;
        };
        let finding = findings.about(
            footing.common.id,
            footing.size.span().unwrap_or(footing.common.name_span),
            format!(
                "{} presses {} on soil that takes {}",
                footing.common.label(),
                check.demand,
                check.capacity
            ),
        );
        explain(house, verification, check, " brings it", finding);
        finding.help(match next_size(&house.known(), footing) {
            Some(size) => format!("the next size under which the soil holds is {}", in_words(size)),
            None => "no size near this one holds: bring less load here, or ask an engineer".to_owned(),
        });
        finding.suspects(footing.common.id, "soil");
    }
}

fn in_words(size: FootingSize) -> String {
    match size {
        FootingSize::Pad(one, other, thickness) => format!("{one} x {other} x {thickness}"),
        FootingSize::Strip(width, thickness) => format!("{width} x {thickness}"),
        FootingSize::Round(diameter, thickness) => format!("{diameter} round x {thickness}"),
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::{check_rule, found};

    fn pad(at: &str, side: &str, soil: &str) -> String {
        format!(
            "
project \"Shed\"
  profile   irc-2021
  soil      {soil}
grid
  x         A 0', B 20'
  y         1 0'
footing F1
  at        A/1
{at}  size      {side} x {side} x 12\"
  top       90'-0\"
  concrete  2500 psi
column C1
  at        A/1
  size      HSS 4 x 4 x 1/4
  stands on F1
  load      9000 lb live
column C2
  at        B/1
  size      HSS 4 x 4 x 1/4
  stands on F1
  load      12000 lb live
"
        )
    }

    /// By hand: 9,000 + 600 lb of pad on 4 sq ft is 2,400 psf gross and 2,250 net. 12,000 lb with them on one pad 10 ft away on
    /// each side stand off it by (12,000 x 20 - 0) / 21,000 = 11.43 ft: there is no pressure to tell.
    #[test]
    fn gross_counts_the_footing() {
        let second = "  at        B/1\n";
        for (soil, says) in [
            ("2300 psf source \"report\"", "footing F1 presses 3,150 psf on soil that takes 2,300 psf"),
            ("2300 psf net source \"report\"", "footing F1 presses 3,000 psf on soil that takes 2,300 psf"),
        ] {
            let found = found(&RULE, &pad(second, "2'-0\"", soil));
            let [only] = found.as_slice() else { panic!("{soil}: {found:?}") };
            assert_eq!(only.message, says);
            assert!(only.notes.iter().any(|note| note.contains("place 2 of 2")), "{:?}", only.notes);
        }
        assert!(found(&RULE, &pad("", "2'-0\"", "2300 psf source \"report\"")).is_empty());
    }

    /// By hand: 12,000 + 150 x 2.25^2 lb on 2.25^2 sq ft is 2,520 psf; on 2'-6\" it is 2,070: more than 2,000; 2'-9\" has 1,737.
    #[test]
    fn offers_the_next_size_that_holds() {
        let house = pad("  at        B/1\n", "2'-3\"", "2000 psf source \"report\"");
        let found = found(&RULE, &house);
        let [only] = found.as_slice() else { panic!("{found:?}") };
        assert!(only.message.contains("2,520 psf"), "{}", only.message);
        assert!(only.help.iter().any(|help| help.contains("2'-9\" x 2'-9\" x 1'-0\"")), "{:?}", only.help);
    }

    /// By hand: 12 ft of wall, 8 in. x 5 ft of concrete is 500 plf; with 1,500 plf on it and 150 of strip 2,150 plf on 1 ft.
    /// A point load of 6,000 lb in the middle spreads to 10 ft and adds 600. 15 in. wide it is 2,600 / 1.25 + 150 = 2,230, 18 in.
    /// 1,883.
    #[test]
    fn a_strip_presses_most_where_its_point_load_spreads() {
        let strip = |point: &str| {
            format!(
                "
project \"Shed\"
  profile   irc-2021
  soil      2200 psf source \"report\"
grid
  x         A 0', B 12'
  y         1 0'
wall W1
  kind      concrete
  from      A/1 to B/1
  line      centre
  thick     8\"
  top       95'-0\"
  load      1500 plf live
  stands on F1
{point}footing F1
  under     W1
  size      12\" x 12\"
  top       90'-0\"
  concrete  2500 psi
"
            )
        };
        assert!(found(&RULE, &strip("")).is_empty());
        let house = strip("load LD1\n  on W1\n  at A plus 6'-0\" / 1\n  amount 6000 lb\n  case live\n");
        let found = found(&RULE, &house);
        let [only] = found.as_slice() else { panic!("{found:?}") };
        assert!(only.message.contains("presses 2,750 psf"), "{}", only.message);
        assert!(only.help.iter().any(|help| help.contains("1'-6\" x 1'-0\"")), "{:?}", only.help);
    }

    #[test]
    fn keeps_quiet_where_a_size_is_not_read() {
        check_rule(
            &RULE,
            "
grid
  x         A 0'
  y         1 0'
footing F1
  at        A/1
  size      wide
  top       90'-0\"
column C1
  at        A/1
  stands on F1
  load      90000 lb live
",
        );
    }
}
