//! A member's size with its true dimensions.

use crate::products::section::{Make, Section};
use crate::syntax::value::Section as Written;
use crate::text::Span;
use crate::units::Length;

/// A member's size and stuff.
#[derive(Clone, Debug, PartialEq)]
pub struct Member {
    /// As written: `3-ply 2x10 SPF No.2`.
    pub text: Box<str>,
    /// Where.
    pub span: Span,
    /// How many plies or pieces.
    pub plies: u32,
    /// The section as written.
    pub written: Written,
    /// Its true dimensions; `None` when no table or product has the size (reported once, there).
    pub section: Option<Section>,
    /// The wood's species or group.
    pub species: Option<Box<str>>,
    /// The grade, class or series.
    pub grade: Option<Box<str>>,
    /// Pressure-treated.
    pub is_treated: bool,
}

impl Member {
    /// The depth: the larger side as it stands in a floor, the true one of a rolled shape.
    pub fn depth(&self) -> Option<Length> {
        self.section.as_ref().map(|section| section.depth)
    }

    /// The depth it is named by: 10" of a 2x10; the true one of what is named by its true size.
    pub fn nominal_depth(&self) -> Option<Length> {
        match self.written {
            Written::Nominal(one, other) => Some(Length::inches(i64::from(one.max(other)))),
            _ => self.depth(),
        }
    }

    /// The smaller side of one ply, or the flange: as thick as it lies flat.
    pub fn thickness(&self) -> Option<Length> {
        self.section.as_ref().map(|section| section.piece_width)
    }

    /// The width of all plies side by side.
    pub fn width(&self) -> Option<Length> {
        self.section.as_ref().map(Section::width)
    }

    /// True for rolled shapes, tubes and pipes; `None` when the size isn't known.
    pub fn is_steel(&self) -> Option<bool> {
        let section = self.section.as_ref()?;
        Some(match section.make {
            Make::Rolled(_) | Make::DeclaredSteel | Make::FilledPipe => true,
            Make::Sawn { .. } | Make::Glulam | Make::Composite | Make::IJoist(_) | Make::RimBoard => false,
        })
    }
}
