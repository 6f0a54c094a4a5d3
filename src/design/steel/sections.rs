//! The numbers that the clauses ask of a shape, by family. Walls are design walls (0.93 of the ordered wall of a welded
//! tube or pipe): a clause fed with the ordered wall promises too much.

use crate::units::{Area, Length, SecondMoment, SectionModulus};

/// A W shape.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WideFlange {
    /// Ag.
    pub area: Area,
    /// d, over both flanges.
    pub depth: Length,
    /// bf.
    pub flange_width: Length,
    /// tf.
    pub flange: Length,
    /// tw.
    pub web: Length,
    /// k, from the outer face of a flange to the toe of its fillet, for design.
    pub fillet: Length,
    /// rts.
    pub effective_radius: Length,
    /// ho, between the centres of the flanges.
    pub flange_distance: Length,
    /// J.
    pub torsion: SecondMoment,
    /// x.
    pub major: Axis,
    /// y.
    pub minor: Axis,
}

/// A square or rectangular tube.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tube {
    /// Ag.
    pub area: Area,
    /// H, the longer side, outside.
    pub depth: Length,
    /// B, the shorter side, outside.
    pub width: Length,
    /// t, the wall that counts in design.
    pub wall: Length,
    /// J.
    pub torsion: SecondMoment,
    /// Bending in the plane of the longer side.
    pub major: Axis,
    /// Bending in the plane of the shorter side.
    pub minor: Axis,
}

/// A pipe, or a round tube.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pipe {
    /// Ag.
    pub area: Area,
    /// D, outside.
    pub outside: Length,
    /// t, the wall that counts in design.
    pub wall: Length,
    /// Bending about any axis.
    pub axis: Axis,
}

/// What a shape brings to bending about one axis.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Axis {
    /// I.
    pub second_moment: SecondMoment,
    /// S.
    pub elastic_modulus: SectionModulus,
    /// Z.
    pub plastic_modulus: SectionModulus,
    /// r.
    pub radius: Length,
}

impl WideFlange {
    /// bf / 2tf (AISC 360 B4.1a).
    pub fn flange_slenderness(&self) -> f64 {
        self.flange_width / (self.flange * 2)
    }

    /// h, the clear height of the web between the fillets (AISC 360 B4.1b).
    pub fn clear_web(&self) -> Length {
        self.depth - self.fillet * 2
    }
}

impl Tube {
    /// h, the flat part of the longer side: three walls less than outside, the radius being unknown (AISC 360 B4.1b).
    pub fn flat_depth(&self) -> Length {
        self.depth - self.wall * 3
    }

    /// b, the flat part of the shorter side.
    pub fn flat_width(&self) -> Length {
        self.width - self.wall * 3
    }
}
