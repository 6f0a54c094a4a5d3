//! What a member is made of, with the values that its design starts from: by grade, by class, by series, or declared.

use std::fmt;

use crate::model::Model;
use crate::model::element::ElementId;
use crate::model::framing::Product;
use crate::model::member::Member;
use crate::products::grades::composite::{self, DEPTH_EXPONENT};
use crate::products::grades::glulam::{self, Layup};
use crate::products::grades::{self, Grade};
use crate::products::i_joist;
use crate::products::i_joist::capacities::capacities;
use crate::products::rolled::Rolled;
use crate::products::section::{Make, Section};
use crate::products::species::{self, Species};
use crate::syntax::value::{Load, Section as Written, Value};
use crate::syntax::vocabulary::ElementKind;
use crate::units::{FlexuralRigidity, Force, Length, Moment, Stress};

/// What a member is made of.
#[derive(Clone, Debug, PartialEq)]
pub struct Stuff {
    /// Its cross-section, standing on edge.
    pub section: Section,
    /// What it can bear before any adjustment.
    pub values: Values,
    /// Pressure-treated.
    pub is_treated: bool,
    /// The product that declares its values, if one does.
    pub product: Option<ElementId>,
    /// What nobody stated: `grade No.2`.
    pub assumed: Vec<Box<str>>,
}

/// Reference values, by what a member is made as.
#[derive(Clone, Debug, PartialEq)]
pub enum Values {
    /// Solid or glued wood: stresses.
    Wood(Wood),
    /// An I-joist: forces.
    IJoist(IJoist),
    /// A listed shape.
    Rolled(&'static Rolled),
    /// A steel shape of a declared product.
    DeclaredSteel(DeclaredSteel),
    /// A pipe filled with concrete.
    FilledPipe(FilledPipe),
}

/// Reference stresses of wood. What a declared product leaves out is `None`; a grade has all but `modulus_flat`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wood {
    /// Which adjustments it takes.
    pub kind: WoodKind,
    /// Fb on edge, the bottom in tension.
    pub bending: Option<Stress>,
    /// Fb on edge, the top in tension: less than `bending` in glulam of an unbalanced layup.
    pub bending_reversed: Option<Stress>,
    /// Ft.
    pub tension: Option<Stress>,
    /// Fv.
    pub shear: Option<Stress>,
    /// Fc-perp.
    pub bearing: Option<Stress>,
    /// Fc.
    pub compression: Option<Stress>,
    /// E.
    pub modulus: Option<Stress>,
    /// Emin.
    pub modulus_for_stability: Option<Stress>,
    /// Emin about the other axis, where it is another: glulam.
    pub modulus_for_stability_flat: Option<Stress>,
}

/// What a wood member is graded as.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum WoodKind {
    /// Lumber 2 to 4 in. thick.
    Dimension(&'static Species, Grade),
    /// A timber, 5x5 and larger.
    Timber,
    /// Glulam; the x of its volume factor's exponent 1/x.
    Glulam {
        /// 10, of southern pine 20.
        volume_exponent: f64,
    },
    /// Composite lumber; the exponent of its depth factor.
    Composite {
        /// m of (12 / d)^m.
        depth_exponent: f64,
    },
}

/// Reference forces of an I-joist. What a declared product leaves out is `None`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct IJoist {
    /// M.
    pub moment: Option<Moment>,
    /// V.
    pub shear: Option<Force>,
    /// Reaction at its end.
    pub end_reaction: Option<Force>,
    /// Reaction where it runs over a support.
    pub inner_reaction: Option<Force>,
    /// EI.
    pub rigidity: Option<FlexuralRigidity>,
    /// K of its sag in shear, w l² / K; declared products give none.
    pub shear_coefficient: Option<Force>,
}

/// A steel shape of a declared product.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DeclaredSteel {
    /// Over both flanges.
    pub depth: Length,
    /// Width of a flange.
    pub width: Length,
    /// Thickness of the web, when its size says so.
    pub web: Option<Length>,
    /// Thickness of a flange, when its size says so.
    pub flange: Option<Length>,
    /// Fy.
    pub yield_stress: Option<Stress>,
    /// E.
    pub modulus: Option<Stress>,
}

/// A pipe filled with concrete.
#[derive(Clone, Debug, PartialEq)]
pub struct FilledPipe {
    /// Its outside diameter.
    pub outside: Length,
    /// Its declared capacities, each up to a length when one is said.
    pub capacities: Vec<(Force, Option<Length>)>,
}

/// Why the values of a member are not known.
#[derive(Clone, Debug, PartialEq)]
pub enum NoStuff {
    /// No table and no product has its size.
    NoSize,
    /// A sawn member that names no species.
    NoSpecies,
    /// A species group that is not listed.
    UnknownSpecies(Box<str>),
    /// Words that name no grade, class, layup or series.
    UnknownGrade(Box<str>),
    /// Composite lumber, glulam or an I-joist that names no class, layup or series.
    NoClass,
    /// A grade or series that no table here has values for, by what it is called.
    NoValues(Box<str>),
    /// A product that declares no such value: its symbol.
    NotDeclared(ElementId, &'static str),
}

impl fmt::Display for NoStuff {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoSize => f.write_str("its size is not known"),
            Self::NoSpecies => f.write_str("its species is not stated"),
            Self::UnknownSpecies(words) => write!(f, "no values are known of the species `{words}`"),
            Self::UnknownGrade(words) => write!(f, "`{words}` is no grade or class known here"),
            Self::NoClass => f.write_str("its class is not stated"),
            Self::NoValues(what) => write!(f, "no values are known of {what}"),
            Self::NotDeclared(_, symbol) => write!(f, "its product declares no {symbol}"),
        }
    }
}

impl Model {
    /// What a member is made of.
    ///
    /// # Errors
    /// What is missing, or known to no table.
    pub fn stuff_of(&self, member: &Member) -> Result<Stuff, NoStuff> {
        let section = member.section.ok_or(NoStuff::NoSize)?;
        let mut assumed = Vec::new();
        let product = self.product_of(member);
        let values = match product {
            Some(product) => declared(product, &section)?,
            None => listed(member, &section, &mut assumed)?,
        };
        let product = product.map(|product| product.common.id);
        Ok(Stuff { section, values, is_treated: member.is_treated, product, assumed })
    }

    /// The declared product that a member names as its size.
    fn product_of(&self, member: &Member) -> Option<&Product> {
        let Written::Product(name) = &member.written else { return None };
        let id = self.named(name).filter(|id| id.kind == ElementKind::Product)?;
        self.products.get(id.index as usize)
    }
}

fn listed(member: &Member, section: &Section, assumed: &mut Vec<Box<str>>) -> Result<Values, NoStuff> {
    let class = || member.grade.as_deref().ok_or(NoStuff::NoClass);
    match section.make {
        Make::Sawn { species, .. } => {
            let species = match (species, &member.species) {
                (Some(species), _) => species,
                (None, Some(words)) => {
                    species::species(words).ok_or_else(|| NoStuff::UnknownSpecies(words.clone()))?
                }
                (None, None) => return Err(NoStuff::NoSpecies),
            };
            sawn(member, section, species, assumed).map(Values::Wood)
        }
        Make::Glulam => {
            let layup = glulam::layup_of(class()?).ok_or_else(|| unknown_grade(member))?;
            Ok(Values::Wood(of_layup(layup)))
        }
        Make::Composite => {
            let class = composite::class_of(class()?).ok_or_else(|| unknown_grade(member))?;
            let kind = WoodKind::Composite { depth_exponent: class.depth_exponent };
            Ok(Values::Wood(of_grade(kind, &class.values)))
        }
        Make::IJoist(Some(joist)) => series(joist).map(Values::IJoist),
        Make::IJoist(None) => Err(NoStuff::NoClass),
        Make::RimBoard => Err(NoStuff::NoValues("rim boards".into())),
        Make::Rolled(shape) => Ok(Values::Rolled(shape)),
        // Such a section comes of a product alone; without one there is nothing that declares it.
        Make::DeclaredSteel => Err(NoStuff::NoSize),
        Make::FilledPipe => {
            Ok(Values::FilledPipe(FilledPipe { outside: section.depth, capacities: Vec::new() }))
        }
    }
}

fn unknown_grade(member: &Member) -> NoStuff {
    NoStuff::UnknownGrade(member.grade.clone().unwrap_or_default())
}

fn sawn(
    member: &Member,
    section: &Section,
    species: &'static Species,
    assumed: &mut Vec<Box<str>>,
) -> Result<Wood, NoStuff> {
    let grade = match &member.grade {
        Some(words) => grades::grade(words).ok_or_else(|| unknown_grade(member))?,
        None => {
            assumed.push(format!("grade {}", grades::presumed().words()).into());
            grades::presumed()
        }
    };
    let values = grades::sawn(species, grade, section.piece_width, section.depth)
        .ok_or_else(|| NoStuff::NoValues(format!("{} {}", species.name, grade.words()).into()))?;
    let is_timber = section.piece_width.min(section.depth) >= grades::TIMBER_SIDE;
    let kind = if is_timber { WoodKind::Timber } else { WoodKind::Dimension(species, grade) };
    Ok(of_grade(kind, &values))
}

fn of_grade(kind: WoodKind, values: &grades::Values) -> Wood {
    Wood {
        kind,
        bending: Some(values.bending),
        bending_reversed: Some(values.bending),
        tension: Some(values.tension),
        shear: Some(values.shear),
        bearing: Some(values.bearing),
        compression: Some(values.compression),
        modulus: Some(values.modulus),
        modulus_for_stability: Some(values.modulus_for_stability),
        modulus_for_stability_flat: None,
    }
}

fn of_layup(layup: &Layup) -> Wood {
    Wood {
        kind: WoodKind::Glulam { volume_exponent: layup.volume_exponent },
        bending: Some(layup.bending),
        bending_reversed: Some(layup.bending_reversed),
        tension: Some(layup.tension),
        shear: Some(layup.shear),
        bearing: Some(layup.bearing),
        compression: Some(layup.compression),
        modulus: Some(layup.modulus),
        modulus_for_stability: Some(layup.modulus_for_stability),
        modulus_for_stability_flat: Some(layup.modulus_for_stability_flat),
    }
}

fn series(joist: i_joist::IJoist) -> Result<IJoist, NoStuff> {
    let capacities = capacities(joist)
        .ok_or_else(|| NoStuff::NoValues(format!("series {} in this depth", joist.series).into()))?;
    Ok(IJoist {
        moment: Some(capacities.moment),
        shear: Some(capacities.shear),
        end_reaction: Some(capacities.end_reaction),
        inner_reaction: Some(capacities.inner_reaction),
        rigidity: Some(capacities.rigidity),
        shear_coefficient: Some(capacities.shear_coefficient),
    })
}

/// The values that a product states, by its kind.
fn declared(product: &Product, section: &Section) -> Result<Values, NoStuff> {
    let value =
        |symbol: &str| product.values.iter().find(|(name, _)| **name == *symbol).map(|(_, it)| &it.value);
    let stress = |symbol: &str| match value(symbol)? {
        Value::Stress(stress) => Some(*stress),
        _ => None,
    };
    let force = |symbol: &str| match value(symbol)? {
        Value::Load(Load::Point(force)) => Some(*force),
        _ => None,
    };
    let number = |symbol: &str| match value(symbol)? {
        Value::Number(number) => Some(*number),
        Value::Count(count) => Some(f64::from(*count)),
        _ => None,
    };
    let wood = |kind: WoodKind| {
        let bending_reversed = match kind {
            // Which face is the weaker one is not declared.
            WoodKind::Glulam { .. } => None,
            WoodKind::Composite { .. } | WoodKind::Timber | WoodKind::Dimension(..) => stress("Fb"),
        };
        Values::Wood(Wood {
            kind,
            bending: stress("Fb"),
            bending_reversed,
            tension: stress("Ft"),
            shear: stress("Fv"),
            bearing: stress("Fc-perp"),
            compression: stress("Fc"),
            modulus: stress("E"),
            modulus_for_stability: stress("Emin"),
            modulus_for_stability_flat: None,
        })
    };
    Ok(match section.make {
        // The smaller exponent is southern pine's and leaves more; what the product is of is not declared.
        Make::Glulam => wood(WoodKind::Glulam { volume_exponent: 10.0 }),
        Make::Composite | Make::RimBoard => wood(WoodKind::Composite { depth_exponent: DEPTH_EXPONENT }),
        Make::Sawn { .. } => wood(WoodKind::Timber),
        Make::IJoist(_) => Values::IJoist(IJoist {
            moment: number("moment").map(Moment::lb_ft),
            shear: force("shear"),
            end_reaction: force("end"),
            inner_reaction: force("interior"),
            rigidity: number("EI").map(FlexuralRigidity::lb_in2),
            shear_coefficient: None,
        }),
        Make::Rolled(shape) => Values::Rolled(shape),
        Make::DeclaredSteel => {
            let (web, flange) = match product.outline.as_deref() {
                Some([_, _, web, flange]) => (Some(*web), Some(*flange)),
                Some([_, _, wall]) => (Some(*wall), Some(*wall)),
                Some(_) | None => (None, None),
            };
            Values::DeclaredSteel(DeclaredSteel {
                depth: section.depth,
                width: section.piece_width,
                web,
                flange,
                yield_stress: stress("Fy"),
                modulus: stress("E"),
            })
        }
        Make::FilledPipe => {
            Values::FilledPipe(FilledPipe { outside: section.depth, capacities: product.capacities.clone() })
        }
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::rule_check::house;

    fn stuff(size: &str) -> Result<Stuff, NoStuff> {
        let text = format!(
            "product LV\n  kind composite lumber 1-3/4 x 14\n  values E 2.0e6 psi, Fb 2600 psi\n  source \"own\" on 2027-01-15\nproduct FP\n  kind filled pipe 3-1/2\"\n  weight 9 plf\n  values capacity 24000 lb at 8'-0\"\n  source \"own\" on 2027-01-15\nbeam B1\n  size {size}\n"
        );
        let model = house(&text).model;
        model.stuff_of(model.beams[0].size.value().expect("a size"))
    }

    fn wood(size: &str) -> Wood {
        let Values::Wood(wood) = stuff(size).unwrap().values else { panic!("not wood") };
        wood
    }

    /// NDS Supplement table 4A and 4D, from memory: as the grades' own tests say.
    #[test]
    fn from_memory_a_grade_brings_its_values() {
        assert_eq!(wood("3-ply 2x10 SPF No.2").bending, Some(Stress::psi(875.0)));
        assert_eq!(wood("6x6 DF-L No.1").compression, Some(Stress::psi(1_000.0)));
        assert_eq!(wood("6x6 DF-L No.1").kind, WoodKind::Timber);
    }

    #[test]
    fn a_grade_that_nobody_named_is_said() {
        assert_eq!(stuff("2x10 SPF").unwrap().assumed, vec![Box::from("grade No.2")]);
        assert!(stuff("2x10 SPF No.2").unwrap().assumed.is_empty());
        assert_eq!(stuff("2x10"), Err(NoStuff::NoSpecies));
    }

    #[test]
    fn a_product_s_own_values_are_taken_and_none_is_made_up() {
        let own = wood("3-ply LV");
        assert_eq!((own.bending, own.modulus), (Some(Stress::psi(2_600.0)), Some(Stress::psi(2e6))));
        assert_eq!((own.shear, own.modulus_for_stability), (None, None));
        let Values::FilledPipe(pipe) = stuff("FP").unwrap().values else { panic!("no pipe") };
        assert_eq!(pipe.capacities, vec![(Force::lb(24_000.0), Some(Length::feet(8)))]);
    }

    #[test]
    fn a_class_is_needed_where_values_hang_on_it() {
        assert_eq!(stuff("2-ply 1-3/4 x 11-7/8 LVL"), Err(NoStuff::NoClass));
        assert!(stuff("2-ply 1-3/4 x 11-7/8 LVL 2.0E-2600Fb").is_ok());
        assert!(stuff("11-7/8 I-joist class 40").is_ok());
        assert!(stuff("W8x24").is_ok());
    }
}
