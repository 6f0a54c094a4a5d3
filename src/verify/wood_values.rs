//! What a wood member's stuff is worth where it serves: each reference value with its factors, step by step.

use crate::design::NotCovered;
use crate::design::wood::repetitive::{Row, repetitive_member_factor};
use crate::design::wood::service::{DRY, ServiceFactors, incising, wet_service};
use crate::design::wood::size::{self, Graded, SizeFactors};
use crate::design::wood::{Stuff as Kind, adjusted, adjusted::Factors};
use crate::model::Model;
use crate::model::stuff::{NoStuff, Stuff, Wood, WoodKind};
use crate::products::grades::Grade;
use crate::units::Stress;
use crate::verify::check::{NotVerified, Step};
use crate::verify::quantity::Quantity;

/// A wood member's values, ready to be adjusted.
#[derive(Clone, Debug)]
pub struct Adjusting<'a> {
    /// Its stuff.
    pub stuff: &'a Stuff,
    /// Its reference values.
    pub wood: &'a Wood,
    /// What it is made as, as the factors see it.
    pub kind: Kind,
    wet: ServiceFactors,
    incised: ServiceFactors,
    size: SizeFactors,
    /// What nobody stated.
    pub assumed: Vec<Box<str>>,
}

/// An adjusted value with the step that makes it.
#[derive(Clone, Debug, PartialEq)]
pub struct Adjusted {
    /// The value.
    pub value: Stress,
    /// How it is worked out.
    pub step: Step,
}

/// Wood above this moisture in use serves wet: NDS 2018 4.1.4, from memory.
const WETTEST_DRY: f64 = 19.0;

impl<'a> Adjusting<'a> {
    /// The values of a member of this stuff. Treated dimension lumber counts as incised, but for southern pine, which takes
    /// treatment without (common practice); a project whose wood stays wet in use has the wet factors.
    pub fn of(model: &Model, stuff: &'a Stuff, wood: &'a Wood) -> Result<Self, NotVerified> {
        let section = &stuff.section;
        let kind = kind_of(wood.kind);
        let size = match wood.kind {
            WoodKind::Dimension(species, grade) => {
                let graded = match (species.name, grade) {
                    ("SP", _) => Graded::SouthernPine,
                    (_, Grade::Stud) => Graded::Stud,
                    _ => Graded::Visually,
                };
                let (thickness, width) =
                    (section.piece_width.min(section.depth), section.piece_width.max(section.depth));
                size::size_factors(graded, thickness, width)?
            }
            WoodKind::Timber => of_bending(size::timber_size_factor(section.depth)?),
            WoodKind::Composite { depth_exponent } => {
                let factor = size::composite_depth_factor(section.depth, depth_exponent)?;
                // Declared for a depth of 12 in. as a rule; what a shallower one gains is taken of a listed class alone.
                of_bending(if stuff.product.is_some() { factor.min(1.0) } else { factor })
            }
            WoodKind::Glulam { .. } => of_bending(1.0),
        };
        let mut assumed = stuff.assumed.clone();
        let incised = match wood.kind {
            WoodKind::Dimension(species, _) if stuff.is_treated && species.name != "SP" => {
                assumed.push("incised for its treatment".into());
                incising(kind)?
            }
            _ => DRY,
        };
        let service = model.project.as_ref().and_then(|project| project.moisture.get());
        let wet = match service {
            Some(moisture) if moisture.service.0 > WETTEST_DRY => {
                let reference = |value: Option<Stress>, factor: f64| value.unwrap_or_default() * factor;
                wet_service(
                    kind,
                    reference(wood.bending, size.bending),
                    reference(wood.compression, size.compression),
                )?
            }
            Some(_) | None => DRY,
        };
        Ok(Self { stuff, wood, kind, wet, incised, size, assumed })
    }

    /// A reference value, or that its product declares none.
    pub fn reference(&self, value: Option<Stress>, symbol: &'static str) -> Result<Stress, NotVerified> {
        value.ok_or_else(|| match self.stuff.product {
            Some(product) => NotVerified::Stuff(NoStuff::NotDeclared(product, symbol)),
            None => NotVerified::Stuff(NoStuff::NoValues(symbol.into())),
        })
    }

    /// Fb with every factor but C_L and C_V: what lateral stability starts from.
    pub fn bending(
        &self,
        duration: f64,
        row: Row,
        is_laid_flat: bool,
        is_hogging: bool,
    ) -> Result<Adjusted, NotVerified> {
        let reference = if is_hogging { self.wood.bending_reversed } else { self.wood.bending };
        let reference = self.reference(reference, "Fb")?;
        let section = &self.stuff.section;
        let flat_use = match (is_laid_flat, self.kind) {
            (false, _) => 1.0,
            (true, Kind::Dimension) => size::flat_use_factor(section.piece_width, section.depth)?,
            (true, Kind::Timber | Kind::Glulam | Kind::Composite | Kind::IJoist) => {
                return Err(NotVerified::NotCovered(NotCovered::NoRule {
                    what: "bending flat of anything but dimension lumber",
                    clause: "NDS 2018 4.3.7",
                }));
            }
        };
        let repetitive = repetitive_member_factor(self.kind, row);
        let factors = Factors {
            duration,
            wet_service: self.wet.bending,
            incising: self.incised.bending,
            size: self.size.bending,
            flat_use,
            repetitive,
            ..Factors::default()
        };
        let value = adjusted::bending(reference, &factors);
        let step = Step {
            symbol: "Fb*",
            formula: "Fb CD CM Ci CF Cfu Cr",
            values: vec![
                ("Fb", reference.into()),
                ("CD", duration.into()),
                ("CM", self.wet.bending.into()),
                ("Ci", self.incised.bending.into()),
                ("CF", self.size.bending.into()),
                ("Cfu", flat_use.into()),
                ("Cr", repetitive.into()),
            ],
            result: value.into(),
            source: "NDS 2018 table 4.3.1",
        };
        Ok(Adjusted { value, step })
    }

    /// Fv'.
    pub fn shear(&self, duration: f64) -> Result<Adjusted, NotVerified> {
        let reference = self.reference(self.wood.shear, "Fv")?;
        let factors = Factors {
            duration,
            wet_service: self.wet.shear,
            incising: self.incised.shear,
            ..Factors::default()
        };
        let value = adjusted::shear(reference, &factors);
        let step = Step {
            symbol: "Fv'",
            formula: "Fv CD CM Ci",
            values: vec![
                ("Fv", reference.into()),
                ("CD", duration.into()),
                ("CM", self.wet.shear.into()),
                ("Ci", self.incised.shear.into()),
            ],
            result: value.into(),
            source: "NDS 2018 table 4.3.1",
        };
        Ok(Adjusted { value, step })
    }

    /// Fc-perp' but for C_b. It knows no load duration, and incising takes nothing of it.
    pub fn bearing(&self) -> Result<Adjusted, NotVerified> {
        let reference = self.reference(self.wood.bearing, "Fc-perp")?;
        let value = reference * self.wet.bearing;
        let step = Step {
            symbol: "Fc-perp'",
            formula: "Fc-perp CM",
            values: vec![("Fc-perp", reference.into()), ("CM", self.wet.bearing.into())],
            result: value.into(),
            source: "NDS 2018 table 4.3.1",
        };
        Ok(Adjusted { value, step })
    }

    /// Fc with every factor but C_P: what column stability starts from.
    pub fn compression(&self, duration: f64) -> Result<Adjusted, NotVerified> {
        let reference = self.reference(self.wood.compression, "Fc")?;
        let factors = Factors {
            duration,
            wet_service: self.wet.compression,
            incising: self.incised.compression,
            size: self.size.compression,
            ..Factors::default()
        };
        let value = adjusted::compression(reference, &factors);
        let step = Step {
            symbol: "Fc*",
            formula: "Fc CD CM Ci CF",
            values: vec![
                ("Fc", reference.into()),
                ("CD", duration.into()),
                ("CM", self.wet.compression.into()),
                ("Ci", self.incised.compression.into()),
                ("CF", self.size.compression.into()),
            ],
            result: value.into(),
            source: "NDS 2018 table 4.3.1",
        };
        Ok(Adjusted { value, step })
    }

    /// Emin'; about the other axis where that is another.
    pub fn modulus_for_stability(&self, is_flat: bool) -> Result<Adjusted, NotVerified> {
        let flat = self.wood.modulus_for_stability_flat.filter(|_| is_flat);
        let reference = self.reference(flat.or(self.wood.modulus_for_stability), "Emin")?;
        let value = reference * self.share_of_modulus();
        let step = Step {
            symbol: "Emin'",
            formula: "Emin CM Ci",
            values: vec![
                ("Emin", reference.into()),
                ("CM", self.wet.modulus.into()),
                ("Ci", self.incised.modulus.into()),
            ],
            result: value.into(),
            source: "NDS 2018 table 4.3.1",
        };
        Ok(Adjusted { value, step })
    }

    /// What service leaves of E: sags grow by its inverse.
    pub fn share_of_modulus(&self) -> f64 {
        self.wet.modulus * self.incised.modulus
    }

    /// True where wood serves wet.
    pub fn is_wet(&self) -> bool {
        self.wet != DRY
    }
}

const fn of_bending(bending: f64) -> SizeFactors {
    SizeFactors { bending, tension: 1.0, compression: 1.0 }
}

/// What factors call this kind of wood.
pub const fn kind_of(kind: WoodKind) -> Kind {
    match kind {
        WoodKind::Dimension(..) => Kind::Dimension,
        WoodKind::Timber => Kind::Timber,
        WoodKind::Glulam { .. } => Kind::Glulam,
        WoodKind::Composite { .. } => Kind::Composite,
    }
}

/// A step that is read, not worked out.
pub fn read(symbol: &'static str, value: impl Into<Quantity>, source: &'static str) -> Step {
    Step { symbol, formula: "", values: Vec::new(), result: value.into(), source }
}
