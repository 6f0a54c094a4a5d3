//! Glued-laminated timber by layup: stressed in bending about the axis along the laminations.
//!
//! Source: NDS Supplement (2018), table 5A, from memory; one published load table comes out with the 24F-V4's values.

use crate::units::Stress;

/// Where the values are from, and how sure that is.
pub const SOURCE: &str = "NDS Supplement (2018) table 5A, from memory";

/// A layup of laminations, named by its bending stress and recipe.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Layup {
    /// As it is stamped: `24F-V4`.
    pub name: &'static str,
    /// Species of the outer and the inner laminations.
    pub species: &'static str,
    /// Fbx+: bending with the face marked as the bottom in tension.
    pub bending: Stress,
    /// Fbx-: bending with the top face in tension, as over an inner support. An unbalanced layup is weaker there.
    pub bending_reversed: Stress,
    /// Fc-perp on the top and bottom faces.
    pub bearing: Stress,
    /// Fvx. Notched members and impact take less of it.
    pub shear: Stress,
    /// Ex.
    pub modulus: Stress,
    /// Ex min.
    pub modulus_for_stability: Stress,
    /// Fby: bending about the other axis.
    pub bending_flat: Stress,
    /// Ey min, for buckling about the other axis.
    pub modulus_for_stability_flat: Stress,
    /// Ft.
    pub tension: Stress,
    /// Fc.
    pub compression: Stress,
    /// The exponent x of its volume factor is 1/x: 10, of southern pine 20.
    pub volume_exponent: f64,
}

/// The layups with values here. Southern pine's are left out: the values at hand are of low confidence.
pub const LAYUPS: &[Layup] = &[layup("24F-V4", 1_850.0), layup("24F-V8", 2_400.0)];

const fn layup(name: &'static str, bending_reversed: f64) -> Layup {
    Layup {
        name,
        species: "DF/DF",
        bending: Stress::psi(2_400.0),
        bending_reversed: Stress::psi(bending_reversed),
        bearing: Stress::psi(650.0),
        shear: Stress::psi(265.0),
        modulus: Stress::psi(1_800_000.0),
        modulus_for_stability: Stress::psi(950_000.0),
        bending_flat: Stress::psi(1_450.0),
        modulus_for_stability_flat: Stress::psi(850_000.0),
        tension: Stress::psi(1_100.0),
        compression: Stress::psi(1_650.0),
        volume_exponent: 10.0,
    }
}

/// The layup that these words name: `24F-V4`, `24F V4`, `24F-V4 DF/DF`.
pub fn layup_of(words: &str) -> Option<&'static Layup> {
    let bare = bare(words);
    let bare = bare.strip_suffix("DFDF").or_else(|| bare.strip_suffix("DF")).unwrap_or(&bare);
    LAYUPS.iter().find(|layup| self::bare(layup.name) == bare)
}

fn bare(words: &str) -> String {
    words.chars().filter(char::is_ascii_alphanumeric).map(|c| c.to_ascii_uppercase()).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn finds_a_layup_in_any_spelling() {
        for words in ["24F-V4", "24f-v4", "24F V4", "24F-V4/DF", "24F-V4 DF/DF"] {
            assert_eq!(layup_of(words).map(|layup| layup.name), Some("24F-V4"), "{words}");
        }
        assert_eq!(layup_of("24F-V3 SP"), None);
        assert_eq!(layup_of("24F"), None);
    }

    /// NDS Supplement table 5A, from memory: the unbalanced layup has 1850 psi on its top face, the balanced one 2400.
    #[test]
    fn an_unbalanced_layup_is_weaker_over_a_support() {
        let reversed = |words| layup_of(words).unwrap().bending_reversed;
        assert_eq!(reversed("24F-V4"), Stress::psi(1_850.0));
        assert_eq!(reversed("24F-V8"), Stress::psi(2_400.0));
    }
}
