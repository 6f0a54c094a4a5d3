//! Steels that house framing is made of, and the one that is meant when nobody says.

use crate::units::Stress;

/// E of every structural steel: AISC 360, list of symbols.
pub const ELASTIC_MODULUS: Stress = Stress::ksi(29_000.0);

/// A steel by its ASTM standard and grade.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Grade {
    /// As a drawing writes it: `A500 Gr C`.
    pub name: &'static str,
    /// Fy.
    pub yield_strength: Stress,
    /// Fu.
    pub ultimate_strength: Stress,
}

/// What a piece of steel is, as far as the choice of its grade goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Family {
    /// W shapes.
    WideFlange,
    /// Square and rectangular tubes.
    Tube,
    /// Round tubes made to the tube standard.
    RoundTube,
    /// Pipes made to the pipe standard.
    Pipe,
    /// Base plates, cap plates, saddles, stiffeners.
    Plate,
}

/// The grade that holds for a family when none is stated.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Usual {
    /// The grade.
    pub grade: Grade,
    /// The assumption in words, for the sheet.
    pub assumption: &'static str,
}

const fn grade(name: &'static str, yield_strength: f64, ultimate_strength: f64) -> Grade {
    Grade {
        name,
        yield_strength: Stress::ksi(yield_strength),
        ultimate_strength: Stress::ksi(ultimate_strength),
    }
}

/// W shapes. Fy as in the AISC design examples v16.0 (F.1), read in a secondary copy; Fu from memory.
pub const A992: Grade = grade("A992", 50.0, 65.0);
/// Square and rectangular tubes. Fy as in the AISC design examples v16.0 (E.9), secondary copy; Fu from memory.
pub const A500_C: Grade = grade("A500 Gr C", 50.0, 62.0);
/// Square and rectangular tubes of the lower grade. From memory.
pub const A500_B: Grade = grade("A500 Gr B", 46.0, 58.0);
/// Round tubes. From memory, of editions of the tube standard before 2021; the AISC design examples v16.0 (G.5) count 50.
pub const A500_C_ROUND: Grade = grade("A500 Gr C round", 46.0, 62.0);
/// Round tubes of the lower grade. From memory.
pub const A500_B_ROUND: Grade = grade("A500 Gr B round", 42.0, 58.0);
/// Pipes. Fy as in the AISC design examples v16.0 (E.11), secondary copy; Fu from memory.
pub const A53_B: Grade = grade("A53 Gr B", 35.0, 60.0);
/// Plates. Fy and Fu from memory.
pub const A36: Grade = grade("A36", 36.0, 58.0);

/// The grade that such a piece has when nobody states one, on the safe side of what is sold.
///
/// Source: common practice.
/// Range:  every family.
/// Result: the grade, and the assumption in words.
pub const fn usual(family: Family) -> Usual {
    match family {
        Family::WideFlange => Usual { grade: A992, assumption: "W shapes of A992 steel, Fy 50 ksi" },
        Family::Tube => Usual { grade: A500_C, assumption: "tubes of A500 Gr C steel, Fy 50 ksi" },
        Family::RoundTube => {
            Usual { grade: A500_C_ROUND, assumption: "round tubes of A500 Gr C steel, Fy 46 ksi" }
        }
        Family::Pipe => Usual { grade: A53_B, assumption: "pipe of A53 Gr B steel, Fy 35 ksi" },
        Family::Plate => Usual { grade: A36, assumption: "plates of A36 steel, Fy 36 ksi" },
    }
}

/// The grade of a family that these words name; blanks, case and `Gr` don't count: `a500 gr b`, `A500B`.
pub fn named(family: Family, words: &str) -> Option<Grade> {
    let listed: &[Grade] = match family {
        Family::WideFlange => &[A992],
        Family::Tube => &[A500_C, A500_B],
        Family::RoundTube => &[A500_C_ROUND, A500_B_ROUND],
        Family::Pipe => &[A53_B],
        Family::Plate => &[A36],
    };
    listed.iter().find(|grade| bare(grade.name).trim_end_matches("ROUND") == bare(words)).copied()
}

/// The letters and digits of a grade's name.
fn bare(name: &str) -> String {
    name.to_ascii_uppercase().replace("GR", "").chars().filter(char::is_ascii_alphanumeric).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Grades that the AISC design examples v16.0 take for these shapes (F.1, E.9, E.11), read in a secondary copy.
    #[test]
    fn the_usual_grade_is_that_of_the_published_examples() {
        for (family, ksi) in [(Family::WideFlange, 50.0), (Family::Tube, 50.0), (Family::Pipe, 35.0)] {
            let found = usual(family).grade.yield_strength.to_ksi();
            assert!((found - ksi).abs() < 1e-9, "{family:?}: {found}");
        }
    }

    #[test]
    fn an_assumption_names_its_grade_and_its_yield_strength() {
        for family in [Family::WideFlange, Family::Tube, Family::RoundTube, Family::Pipe, Family::Plate] {
            let Usual { grade, assumption } = usual(family);
            let name = grade.name.trim_end_matches(" round");
            assert!(assumption.contains(name), "{assumption}");
            assert!(
                assumption.ends_with(&format!("Fy {} ksi", grade.yield_strength.to_ksi())),
                "{assumption}"
            );
        }
    }

    #[test]
    fn a_grade_is_known_by_its_words() {
        assert_eq!(named(Family::WideFlange, "a992"), Some(A992));
        assert_eq!(named(Family::Tube, "A500 Gr B"), Some(A500_B));
        assert_eq!(named(Family::RoundTube, "A500C"), Some(A500_C_ROUND));
        assert_eq!(named(Family::WideFlange, "A500 Gr B"), None);
        assert_eq!(named(Family::Tube, ""), None);
    }
}
