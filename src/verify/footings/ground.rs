//! What a footing is allowed to press on its soil, and what it is made of.

use crate::design::NotCovered;
use crate::design::concrete::ConcreteCode;
use crate::design::soil::pressure::Basis;
use crate::model::element::ElementId;
use crate::model::field::Field;
use crate::model::foundation::Footing;
use crate::model::site::Soil;
use crate::profiles::Count;
use crate::profiles::foundations::{CONCRETE_CODE, PRESUMPTIVE_BEARING};
use crate::units::{AreaLoad, Stress};
use crate::verify::Known;
use crate::verify::check::NotVerified;

/// The soil under a footing.
#[derive(Clone, Debug)]
pub struct Ground {
    /// The pressure allowed.
    pub allowable: AreaLoad,
    /// How that is meant.
    pub basis: Basis,
    /// What nobody tested.
    pub assumed: Vec<Box<str>>,
}

/// The soil under a footing: its own, the project's, else what the profile presumes.
pub fn under(known: &Known<'_>, footing: &Footing) -> Result<Ground, NotVerified> {
    let project = known.model.project.as_ref();
    let field = match (&footing.soil, project) {
        (Field::Missing, Some(project)) => &project.soil,
        (field, _) => field,
    };
    match field {
        Field::Stated(soil, _) => Ok(ground(soil, soil.is_assumed)),
        Field::Assumed(soil, _) => Ok(ground(soil, true)),
        Field::Missing => {
            let presumed = known.limits.of(&PRESUMPTIVE_BEARING).value;
            let soil = Soil { pressure: presumed, is_net: false, is_assumed: true, source: None };
            Ok(ground(&soil, true))
        }
        Field::Broken(_) => Err(NotVerified::Missing(footing.common.id, "soil")),
    }
}

fn ground(soil: &Soil, is_assumed: bool) -> Ground {
    let basis = if soil.is_net { Basis::Net } else { Basis::Gross };
    let assumed = format!("soil {:.0} psf {}", soil.pressure.to_psf(), words(basis));
    let assumed = if is_assumed { vec![assumed.into()] } else { Vec::new() };
    Ground { allowable: soil.pressure, basis, assumed }
}

/// How an allowable pressure is meant, as a spec says it.
pub const fn words(basis: Basis) -> &'static str {
    match basis {
        Basis::Gross => "gross",
        Basis::Net => "net",
    }
}

/// Concrete and the code that it is judged by.
#[derive(Clone, Debug)]
pub struct Concrete {
    /// The edition.
    pub code: ConcreteCode,
    /// f'c.
    pub strength: Stress,
    /// What nobody stated.
    pub assumed: Vec<Box<str>>,
}

/// The concrete of an element.
pub fn concrete(known: &Known<'_>, of: ElementId, strength: &Field<Stress>) -> Result<Concrete, NotVerified> {
    let Count(year) = known.limits.of(&CONCRETE_CODE).value;
    let code = ConcreteCode::of_year(year).ok_or(NotCovered::NoRule {
        what: "an edition of ACI 318 other than 2014 and 2019",
        clause: "limit concrete-code",
    })?;
    let value = strength.get().ok_or(NotVerified::Missing(of, "concrete"))?;
    let assumed = match strength {
        Field::Assumed(..) => vec![format!("concrete {:.0} psi", value.to_psi()).into()],
        Field::Stated(..) | Field::Missing | Field::Broken(_) => Vec::new(),
    };
    Ok(Concrete { code, strength: value, assumed })
}
