//! Wood, by allowable stress design: the clauses of NDS 2018 that a floor needs.
//!
//! A member's check reads: reference value of its grade, times the factors that [`adjusted`] lets act on it, against the
//! stress of [`bending`], [`shear`], [`bearing`], [`mod@column`] or [`combined`]. The standard itself could not be read
//! beyond what secondary copies print: where a clause or a constant is from memory, its function says so.

pub mod adjusted;
pub mod bearing;
pub mod bending;
pub mod bounce;
pub mod column;
pub mod combined;
pub mod deflection;
pub mod i_joist;
pub mod rectangle;
pub mod repetitive;
pub mod service;
pub mod shear;
pub mod size;
pub mod stability;

/// What a wood member is made as, as far as factors differ.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stuff {
    /// Sawn lumber, 2 to 4 in. thick.
    Dimension,
    /// Sawn timber, 5x5 and larger.
    Timber,
    /// Glued-laminated timber.
    Glulam,
    /// Structural composite lumber: veneers or strands.
    Composite,
    /// A prefabricated I-joist.
    IJoist,
}
