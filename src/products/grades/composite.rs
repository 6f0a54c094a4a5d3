//! Structural composite lumber by its class.
//!
//! Source: values usual in evaluation reports of laminated veneer lumber, from memory. A maker's own report, declared by a
//! `product`, goes before these. Strand lumber and billets of parallel strands have no row.

use crate::products::grades::{self, Values};

/// Where the values are from, and how sure that is.
pub const SOURCE: &str = "values usual in evaluation reports of laminated veneer lumber, from memory";

/// A class of composite lumber, standing on edge.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Class {
    /// As it is stamped: `2.0E-2600Fb`.
    pub name: &'static str,
    /// Its reference values; bearing is on the edges of its veneers.
    pub values: Values,
    /// m of its depth factor, (12 / d)^m.
    pub depth_exponent: f64,
}

/// m of the depth factor where a product declares none: typical of laminated veneer lumber, from memory.
pub const DEPTH_EXPONENT: f64 = 0.136;

/// Shear modulus of composite lumber: this share of E, usual in evaluation reports, from memory.
pub const SHEAR_MODULUS_SHARE: f64 = 1.0 / 16.0;

/// The classes with values here.
pub const CLASSES: &[Class] = &[Class {
    name: "2.0E-2600Fb",
    values: grades::values([2_600.0, 1_555.0, 285.0, 750.0, 2_510.0, 2_000_000.0, 1_016_000.0]),
    depth_exponent: DEPTH_EXPONENT,
}];

/// The class that these words name: `2.0E-2600Fb`, `2.0E 2600`, `2.0E`, `LVL 2.0E`.
pub fn class_of(words: &str) -> Option<&'static Class> {
    let bare = words.to_ascii_lowercase().replace("lvl", " ");
    let bare: String = bare.chars().filter(|c| c.is_ascii_alphanumeric() || *c == '.').collect();
    CLASSES.iter().find(|class| {
        let name = class.name.to_ascii_lowercase().replace('-', "");
        let short = name.split('e').next().map(|modulus| format!("{modulus}e"));
        bare == name || format!("{bare}fb") == name || Some(&bare) == short.as_ref()
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn finds_a_class_in_any_spelling() {
        for words in ["2.0E-2600Fb", "2.0E-2600", "2.0e", "LVL 2.0E", "2.0E 2600Fb LVL"] {
            assert_eq!(class_of(words).map(|class| class.name), Some("2.0E-2600Fb"), "{words}");
        }
        for words in ["1.9E", "2.0E-2900Fb", "LSL 1.3E", "", "LVL"] {
            assert_eq!(class_of(words), None, "{words}");
        }
    }
}
