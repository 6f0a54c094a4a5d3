//! Southern pine dimension lumber, 2 to 4 in. thick: its values go by width, and no size factor comes on top.
//!
//! Source: NDS Supplement (2018), table 4B with the values of 2013, from memory. Bending of No.2 in 2x6 to 2x12, and its
//! modulus, are the only ones with which the published spans of deck joists come out.

use crate::products::grades::Grade::{self, No1, No2, No3, SelectStructural, Stud};
use crate::products::grades::{self, Values};
use crate::units::Length;

/// Where the values are from, and how sure that is.
pub(in crate::products::grades) const SOURCE: &str =
    "NDS Supplement (2018) table 4B, from memory, some of it borne out by published spans of decks";

/// The values of a grade, by the true measure of the wide face. Wider than 12 in. nominal the row of 12 in. holds, with
/// a size factor of the design layer.
pub(in crate::products::grades) fn values(grade: Grade, width: Length) -> Option<Values> {
    // Stud wider than 6 in. nominal counts as No.3 (notes of the table, from memory).
    let grade = if grade == Stud && width > Length::inches(6) { No3 } else { grade };
    let rows = || ROWS.iter().filter(|row| row.1 == grade);
    rows().find(|row| width <= Length::inches(row.0)).or_else(|| rows().next_back()).map(|row| row.2)
}

const fn row(widest: i64, grade: Grade, stresses: [f64; 7]) -> (i64, Grade, Values) {
    (widest, grade, grades::values(stresses))
}

/// The widest nominal measure that a row holds for, in inches; then Fb, Ft, Fv, Fc-perp, Fc, E, Emin, in psi.
const ROWS: &[(i64, Grade, Values)] = &[
    row(4, SelectStructural, [2_350.0, 1_650.0, 175.0, 565.0, 1_900.0, 1_800_000.0, 660_000.0]),
    row(4, No1, [1_500.0, 1_000.0, 175.0, 565.0, 1_650.0, 1_600_000.0, 580_000.0]),
    row(4, No2, [1_100.0, 675.0, 175.0, 565.0, 1_450.0, 1_400_000.0, 510_000.0]),
    row(4, No3, [650.0, 400.0, 175.0, 565.0, 850.0, 1_300_000.0, 470_000.0]),
    row(4, Stud, [650.0, 400.0, 175.0, 565.0, 850.0, 1_300_000.0, 470_000.0]),
    row(6, SelectStructural, [2_100.0, 1_450.0, 175.0, 565.0, 1_800.0, 1_800_000.0, 660_000.0]),
    row(6, No1, [1_350.0, 875.0, 175.0, 565.0, 1_550.0, 1_600_000.0, 580_000.0]),
    row(6, No2, [1_000.0, 600.0, 175.0, 565.0, 1_400.0, 1_400_000.0, 510_000.0]),
    row(6, No3, [575.0, 350.0, 175.0, 565.0, 800.0, 1_300_000.0, 470_000.0]),
    row(6, Stud, [575.0, 350.0, 175.0, 565.0, 800.0, 1_300_000.0, 470_000.0]),
    row(8, SelectStructural, [1_950.0, 1_350.0, 175.0, 565.0, 1_700.0, 1_800_000.0, 660_000.0]),
    row(8, No1, [1_250.0, 800.0, 175.0, 565.0, 1_500.0, 1_600_000.0, 580_000.0]),
    row(8, No2, [925.0, 550.0, 175.0, 565.0, 1_350.0, 1_400_000.0, 510_000.0]),
    row(8, No3, [525.0, 325.0, 175.0, 565.0, 775.0, 1_300_000.0, 470_000.0]),
    row(10, SelectStructural, [1_700.0, 1_150.0, 175.0, 565.0, 1_650.0, 1_800_000.0, 660_000.0]),
    row(10, No1, [1_050.0, 700.0, 175.0, 565.0, 1_450.0, 1_600_000.0, 580_000.0]),
    row(10, No2, [800.0, 475.0, 175.0, 565.0, 1_300.0, 1_400_000.0, 510_000.0]),
    row(10, No3, [475.0, 275.0, 175.0, 565.0, 750.0, 1_300_000.0, 470_000.0]),
    row(12, SelectStructural, [1_600.0, 1_100.0, 175.0, 565.0, 1_650.0, 1_800_000.0, 660_000.0]),
    row(12, No1, [1_000.0, 650.0, 175.0, 565.0, 1_400.0, 1_600_000.0, 580_000.0]),
    row(12, No2, [750.0, 450.0, 175.0, 565.0, 1_250.0, 1_400_000.0, 510_000.0]),
    row(12, No3, [450.0, 250.0, 175.0, 565.0, 725.0, 1_300_000.0, 470_000.0]),
];

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Stress;

    /// The values of 2013 for No.2, from memory, borne out by published deck spans: 1000, 925, 800, 750 psi.
    #[test]
    fn bending_falls_with_the_width() {
        let bending = |sixteenths: (i64, i64)| {
            values(No2, Length::sixteenths(sixteenths.0, sixteenths.1)).unwrap().bending.to_psi()
        };
        for (width, psi) in
            [((5, 8), 1_000.0), ((7, 4), 925.0), ((9, 4), 800.0), ((11, 4), 750.0), ((13, 4), 750.0)]
        {
            assert!((bending(width) - psi).abs() < 1e-9);
        }
    }

    #[test]
    fn a_stud_has_a_row_up_to_six_inches() {
        assert_eq!(values(Stud, Length::sixteenths(3, 8)).unwrap().bending, Stress::psi(650.0));
        assert_eq!(values(Stud, Length::sixteenths(9, 4)), values(No3, Length::sixteenths(9, 4)));
    }
}
