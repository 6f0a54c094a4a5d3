//! Strength values by species group and grade: what a grade stamp promises before any adjustment.
//!
//! Sources: the tables of the NDS Supplement (2018) that each file below names. None of them could be read in the
//! supplement's own print: each file says which of its values published span tables pin down, and which are from
//! memory. A grade or group without a row has no value here; nothing is guessed from a neighbour.

pub mod composite;
mod dimension;
pub mod glulam;
mod southern_pine;
mod timber;

use crate::products::species::Species;
use crate::units::{Length, Stress};

/// The grade of a piece of sawn lumber.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Grade {
    /// Select structural.
    SelectStructural,
    /// No.1 & better: a grade of its own, above No.1.
    No1AndBetter,
    /// No.1.
    No1,
    /// No.2.
    No2,
    /// No.3.
    No3,
    /// Stud.
    Stud,
}

impl Grade {
    /// As the format prints it.
    pub const fn words(self) -> &'static str {
        match self {
            Self::SelectStructural => "SS",
            Self::No1AndBetter => "No.1&Btr",
            Self::No1 => "No.1",
            Self::No2 => "No.2",
            Self::No3 => "No.3",
            Self::Stud => "Stud",
        }
    }
}

/// Reference design values: allowable stresses for ten years of load, and the moduli.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Values {
    /// Fb: bending on edge.
    pub bending: Stress,
    /// Ft: tension along the grain.
    pub tension: Stress,
    /// Fv: shear along the grain.
    pub shear: Stress,
    /// Fc-perp: bearing across the grain.
    pub bearing: Stress,
    /// Fc: compression along the grain.
    pub compression: Stress,
    /// E: for deflection.
    pub modulus: Stress,
    /// Emin: for stability.
    pub modulus_for_stability: Stress,
}

const fn values([bending, tension, shear, bearing, compression, e, e_min]: [f64; 7]) -> Values {
    Values {
        bending: Stress::psi(bending),
        tension: Stress::psi(tension),
        shear: Stress::psi(shear),
        bearing: Stress::psi(bearing),
        compression: Stress::psi(compression),
        modulus: Stress::psi(e),
        modulus_for_stability: Stress::psi(e_min),
    }
}

/// The grade to take where a spec names none: No.2, what yards stock (common practice). A check that takes it says so.
pub const fn presumed() -> Grade {
    Grade::No2
}

/// The grade that these words name, in any usual spelling: `No.2`, `No. 2`, `#2`, `2`, `No.2 & Btr`, `Select Structural`.
pub fn grade(words: &str) -> Option<Grade> {
    let bare: String =
        words.chars().filter(|c| !c.is_whitespace() && *c != '.').map(|c| c.to_ascii_lowercase()).collect();
    let bare = ["number", "no", "#"].iter().find_map(|sign| bare.strip_prefix(sign)).unwrap_or(&bare);
    match bare {
        "ss" | "selstr" | "selstruct" | "selectstr" | "selectstructural" => Some(Grade::SelectStructural),
        "1&btr" | "1&better" | "1andbtr" | "1andbetter" => Some(Grade::No1AndBetter),
        "1" => Some(Grade::No1),
        // Sold as one run whose least piece is a No.2; so is the one row of spruce-pine-fir for both grades.
        "2" | "2&btr" | "2&better" | "2andbtr" | "2andbetter" | "1/2" | "1/no2" | "1/#2" | "1-2" => {
            Some(Grade::No2)
        }
        "3" => Some(Grade::No3),
        "stud" => Some(Grade::Stud),
        _ => None,
    }
}

/// The values of a sawn piece by its true size, standing on edge: those of a timber from 5x5 nominal up.
pub fn sawn(species: &Species, grade: Grade, breadth: Length, depth: Length) -> Option<Values> {
    if breadth.min(depth) >= TIMBER_SIDE {
        timber(species, grade, breadth, depth)
    } else {
        dimension(species, grade, breadth.max(depth))
    }
}

/// Where the values of a sawn piece are from, and how sure that is.
pub fn source(species: &Species, is_timber: bool) -> &'static str {
    match (is_timber, species.name) {
        (true, _) => timber::SOURCE,
        (false, "SP") => southern_pine::SOURCE,
        (false, _) => dimension::SOURCE,
    }
}

/// The least true side of what is graded as a timber: a dressed 5 in.
pub const TIMBER_SIDE: Length = Length::sixteenths(4, 8);

/// The values of dimension lumber, 2 to 4 in. thick, by the true measure of its wide face.
pub fn dimension(species: &Species, grade: Grade, width: Length) -> Option<Values> {
    match species.name {
        "SP" => southern_pine::values(grade, width),
        name => dimension::values(name, grade, width),
    }
}

/// The values of a timber, 5x5 and larger, by its true sides: posts are nearly square, beams are not.
pub fn timber(species: &Species, grade: Grade, one_side: Length, other_side: Length) -> Option<Values> {
    timber::values(species.name, grade, one_side, other_side)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::products::species::{SPECIES, species};

    #[test]
    fn finds_a_grade_in_any_spelling() {
        for words in ["No.2", "No. 2", "no 2", "#2", "# 2", "2", "No.2 & Btr", "No.1/No.2"] {
            assert_eq!(grade(words), Some(Grade::No2), "{words}");
        }
        for words in ["SS", "Select Structural", "sel. str.", "select str"] {
            assert_eq!(grade(words), Some(Grade::SelectStructural), "{words}");
        }
        for words in ["No.1&Btr", "No.1 & Better", "#1 and better"] {
            assert_eq!(grade(words), Some(Grade::No1AndBetter), "{words}");
        }
        assert_eq!(grade("STUD"), Some(Grade::Stud));
        // Dense grades are worth more, and have no row here.
        for words in ["No.1 Dense", "Utility", "4", "", "No."] {
            assert_eq!(grade(words), None, "{words}");
        }
        for known in
            [Grade::SelectStructural, Grade::No1AndBetter, Grade::No1, Grade::No2, Grade::No3, Grade::Stud]
        {
            assert_eq!(grade(known.words()), Some(known));
        }
    }

    /// The values that bearing checks take of the species, and those of its grades, are the same numbers.
    #[test]
    fn bearing_agrees_with_the_species() {
        for group in SPECIES {
            let two_by_ten = dimension(group, Grade::No2, Length::sixteenths(9, 4)).unwrap();
            assert_eq!(two_by_ten.bearing, group.bearing, "{}", group.name);
            let six = Length::sixteenths(5, 8);
            if let Some(post) = timber(group, Grade::No2, six, six) {
                assert_eq!(post.bearing, group.timber_bearing, "{}", group.name);
            }
        }
    }

    /// A better grade is never weaker, and the modulus for stability is 0.55 E / 1.66 x 1.03 or so of E
    /// (NDS Supplement, appendix D, from memory: 0.34 to 0.37 of E).
    #[test]
    fn tables_are_in_order() {
        let two_by_six = Length::sixteenths(5, 8);
        for group in SPECIES {
            let grades = [Grade::SelectStructural, Grade::No1AndBetter, Grade::No1, Grade::No2, Grade::No3];
            let rows: Vec<Values> =
                grades.iter().filter_map(|grade| dimension(group, *grade, two_by_six)).collect();
            for pair in rows.windows(2) {
                assert!(pair[0].bending >= pair[1].bending, "{}", group.name);
                assert!(pair[0].compression >= pair[1].compression, "{}", group.name);
                assert!(pair[0].modulus >= pair[1].modulus, "{}", group.name);
            }
            for row in rows {
                let share = row.modulus_for_stability / row.modulus;
                assert!((0.34..0.38).contains(&share), "{}: {share}", group.name);
            }
        }
    }

    /// The section decides which table holds: a 6x6 post leaves the values of dimension lumber.
    #[test]
    fn a_timber_is_no_thick_dimension_lumber() {
        let spf = species("SPF").unwrap();
        let six = Length::sixteenths(5, 8);
        assert_eq!(sawn(spf, Grade::No2, six, six), timber(spf, Grade::No2, six, six));
        let four = Length::sixteenths(3, 8);
        assert_eq!(sawn(spf, Grade::No2, four, six), dimension(spf, Grade::No2, six));
    }
}
