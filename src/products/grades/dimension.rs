//! Dimension lumber, 2 to 4 in. thick, 2 in. and wider, all groups but southern pine.
//!
//! Source: NDS Supplement (2018), table 4A, from memory; the select structural row of Douglas fir-larch, and bending,
//! tension and shear of its No.1, read in secondary copies. Bending and modulus of all spruce-pine-fir grades but Stud,
//! of hem-fir No.2 and of Douglas fir-larch No.1 are the only ones with which the published span tables come out.

use crate::products::grades::Grade::{self, No1, No1AndBetter, No2, No3, SelectStructural, Stud};
use crate::products::grades::{self, Values};
use crate::units::Length;

/// Where the values are from, and how sure that is.
pub(in crate::products::grades) const SOURCE: &str =
    "NDS Supplement (2018) table 4A, from memory, some of it borne out by published span tables";

/// The values of a grade, by the true measure of the wide face.
pub(in crate::products::grades) fn values(species: &str, grade: Grade, width: Length) -> Option<Values> {
    // Stud wider than 6 in. nominal counts as No.3 (notes of table 4A, from memory).
    let grade = if grade == Stud && width > Length::inches(6) { No3 } else { grade };
    ROWS.iter().find(|row| row.0 == species && row.1 == grade).map(|row| row.2)
}

const fn row(species: &'static str, grade: Grade, stresses: [f64; 7]) -> (&'static str, Grade, Values) {
    (species, grade, grades::values(stresses))
}

/// Fb, Ft, Fv, Fc-perp, Fc, E, Emin, in psi.
const ROWS: &[(&str, Grade, Values)] = &[
    row("DF-L", SelectStructural, [1_500.0, 1_000.0, 180.0, 625.0, 1_700.0, 1_900_000.0, 690_000.0]),
    row("DF-L", No1AndBetter, [1_200.0, 800.0, 180.0, 625.0, 1_550.0, 1_800_000.0, 660_000.0]),
    row("DF-L", No1, [1_000.0, 675.0, 180.0, 625.0, 1_500.0, 1_700_000.0, 620_000.0]),
    row("DF-L", No2, [900.0, 575.0, 180.0, 625.0, 1_350.0, 1_600_000.0, 580_000.0]),
    row("DF-L", No3, [525.0, 325.0, 180.0, 625.0, 775.0, 1_400_000.0, 510_000.0]),
    row("DF-L", Stud, [700.0, 450.0, 180.0, 625.0, 850.0, 1_400_000.0, 510_000.0]),
    row("HF", SelectStructural, [1_400.0, 925.0, 150.0, 405.0, 1_500.0, 1_600_000.0, 580_000.0]),
    row("HF", No1AndBetter, [1_100.0, 725.0, 150.0, 405.0, 1_350.0, 1_500_000.0, 550_000.0]),
    row("HF", No1, [975.0, 625.0, 150.0, 405.0, 1_350.0, 1_500_000.0, 550_000.0]),
    row("HF", No2, [850.0, 525.0, 150.0, 405.0, 1_300.0, 1_300_000.0, 470_000.0]),
    row("HF", No3, [500.0, 300.0, 150.0, 405.0, 725.0, 1_200_000.0, 440_000.0]),
    row("HF", Stud, [675.0, 400.0, 150.0, 405.0, 800.0, 1_200_000.0, 440_000.0]),
    row("SPF", SelectStructural, [1_250.0, 700.0, 135.0, 425.0, 1_400.0, 1_500_000.0, 550_000.0]),
    row("SPF", No1, [875.0, 450.0, 135.0, 425.0, 1_150.0, 1_400_000.0, 510_000.0]),
    row("SPF", No2, [875.0, 450.0, 135.0, 425.0, 1_150.0, 1_400_000.0, 510_000.0]),
    row("SPF", No3, [500.0, 250.0, 135.0, 425.0, 650.0, 1_200_000.0, 440_000.0]),
    row("SPF", Stud, [675.0, 350.0, 135.0, 425.0, 725.0, 1_200_000.0, 440_000.0]),
    row("SPF-S", SelectStructural, [1_300.0, 575.0, 135.0, 335.0, 1_200.0, 1_300_000.0, 470_000.0]),
    row("SPF-S", No1, [875.0, 400.0, 135.0, 335.0, 1_050.0, 1_200_000.0, 440_000.0]),
    row("SPF-S", No2, [775.0, 350.0, 135.0, 335.0, 1_000.0, 1_100_000.0, 400_000.0]),
    row("SPF-S", No3, [450.0, 200.0, 135.0, 335.0, 575.0, 1_000_000.0, 370_000.0]),
];

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Stress;

    /// Worked problem of a textbook on wood design, read in a secondary copy: No.1 Douglas fir-larch has Fb 1000, Ft 675,
    /// Fv 180 and Emin 620,000 psi.
    #[test]
    fn published_values_of_douglas_fir_no_1() {
        let no_1 = values("DF-L", No1, Length::sixteenths(7, 4)).unwrap();
        assert_eq!((no_1.bending, no_1.tension), (Stress::psi(1_000.0), Stress::psi(675.0)));
        assert_eq!((no_1.shear, no_1.modulus_for_stability), (Stress::psi(180.0), Stress::psi(620_000.0)));
    }

    #[test]
    fn a_wide_stud_is_a_no_3() {
        let eight = Length::sixteenths(7, 4);
        assert_eq!(values("HF", Stud, eight), values("HF", No3, eight));
        assert_ne!(values("HF", Stud, Length::sixteenths(5, 8)), values("HF", No3, eight));
        assert_eq!(values("SPF", No1AndBetter, eight), None);
    }
}
