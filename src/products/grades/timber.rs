//! Timbers, 5x5 and larger: nearly square pieces are graded as posts, the others as beams.
//!
//! Source: NDS Supplement (2018), table 4D, from memory.

use crate::products::grades::Grade::{self, No1, No2, SelectStructural};
use crate::products::grades::timber::Class::{Beams, Either, Posts};
use crate::products::grades::{self, Values};
use crate::units::Length;

/// Where the values are from, and how sure that is.
pub(in crate::products::grades) const SOURCE: &str = "NDS Supplement (2018) table 4D, from memory";

/// Which of the two rules of grading a row belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Class {
    /// Posts and timbers: no more than 2 in. wider than thick, by nominal sides.
    Posts,
    /// Beams and stringers: wider than that.
    Beams,
    /// Southern pine has one row for both.
    Either,
}

/// The values of a grade, by both true sides.
pub(in crate::products::grades) fn values(
    species: &str,
    grade: Grade,
    one_side: Length,
    other_side: Length,
) -> Option<Values> {
    // True sides stand for nominal ones: dressing takes no less off the wide side than off the narrow one.
    let class = if (one_side - other_side).abs() > WIDER { Beams } else { Posts };
    ROWS.iter()
        .find(|row| row.0 == species && row.2 == grade && (row.1 == class || row.1 == Either))
        .map(|row| row.3)
}

/// A post is no more than this wider than thick.
const WIDER: Length = Length::inches(2);

const fn row(
    species: &'static str,
    class: Class,
    grade: Grade,
    stresses: [f64; 7],
) -> (&'static str, Class, Grade, Values) {
    (species, class, grade, grades::values(stresses))
}

/// Fb, Ft, Fv, Fc-perp, Fc, E, Emin, in psi.
const ROWS: &[(&str, Class, Grade, Values)] = &[
    row("DF-L", Posts, SelectStructural, [1_500.0, 1_000.0, 170.0, 625.0, 1_150.0, 1_600_000.0, 580_000.0]),
    row("DF-L", Posts, No1, [1_200.0, 825.0, 170.0, 625.0, 1_000.0, 1_600_000.0, 580_000.0]),
    row("DF-L", Posts, No2, [750.0, 475.0, 170.0, 625.0, 700.0, 1_300_000.0, 470_000.0]),
    row("DF-L", Beams, SelectStructural, [1_600.0, 950.0, 170.0, 625.0, 1_100.0, 1_600_000.0, 580_000.0]),
    row("DF-L", Beams, No1, [1_350.0, 675.0, 170.0, 625.0, 925.0, 1_600_000.0, 580_000.0]),
    row("DF-L", Beams, No2, [875.0, 425.0, 170.0, 625.0, 600.0, 1_300_000.0, 470_000.0]),
    row("HF", Posts, SelectStructural, [1_200.0, 800.0, 140.0, 405.0, 975.0, 1_300_000.0, 470_000.0]),
    row("HF", Posts, No1, [975.0, 650.0, 140.0, 405.0, 850.0, 1_300_000.0, 470_000.0]),
    row("HF", Posts, No2, [575.0, 375.0, 140.0, 405.0, 575.0, 1_100_000.0, 400_000.0]),
    row("SPF", Posts, SelectStructural, [1_050.0, 700.0, 125.0, 425.0, 800.0, 1_300_000.0, 470_000.0]),
    row("SPF", Posts, No1, [850.0, 550.0, 125.0, 425.0, 700.0, 1_300_000.0, 470_000.0]),
    row("SPF", Posts, No2, [500.0, 325.0, 125.0, 425.0, 500.0, 1_000_000.0, 370_000.0]),
    row("SP", Either, SelectStructural, [1_500.0, 1_000.0, 165.0, 375.0, 950.0, 1_500_000.0, 550_000.0]),
    row("SP", Either, No1, [1_350.0, 900.0, 165.0, 375.0, 825.0, 1_500_000.0, 550_000.0]),
    row("SP", Either, No2, [850.0, 550.0, 165.0, 375.0, 525.0, 1_200_000.0, 440_000.0]),
];

#[cfg(test)]
mod tests {
    use super::*;

    fn bending(one_side: i64, other_side: i64) -> f64 {
        let side = |nominal| Length::inches(nominal) - Length::sixteenths(0, 8);
        values("DF-L", No1, side(one_side), side(other_side)).unwrap().bending.to_psi()
    }

    /// A 6x8 is a post, a 6x10 a beam, whichever side is named first: 1200 and 1350 psi from memory of table 4D.
    #[test]
    fn the_sides_tell_posts_from_beams() {
        assert!((bending(6, 8) - 1_200.0).abs() < 1e-9);
        assert!((bending(6, 10) - 1_350.0).abs() < 1e-9);
        assert!((bending(10, 6) - 1_350.0).abs() < 1e-9);
    }

    #[test]
    fn what_has_no_row_has_no_value() {
        let six = Length::sixteenths(5, 8);
        assert_eq!(values("DF-L", Grade::No3, six, six), None);
        assert_eq!(values("SPF-S", No2, six, six), None);
        assert!(values("SP", No2, six, Length::sixteenths(11, 8)).is_some());
    }
}
