//! Spans of joists, by the procedure of the tables.

use storyrod::design::prescriptive::joist_spans::{self, Governs, Joist, Span};
use storyrod::design::wood::Stuff;
use storyrod::design::wood::adjusted::{self, Factors};
use storyrod::design::wood::repetitive::{Row, repetitive_member_factor};
use storyrod::design::wood::service::{self, ServiceFactors};
use storyrod::design::wood::size::{Graded, SizeFactors, size_factors};
use storyrod::products::grades::{self, Values};
use storyrod::products::lumber::{self, Dressed};
use storyrod::products::species::species;
use storyrod::units::{AreaLoad, Length, Stress};

use crate::cases::{Case, Comparison};
use crate::wood::inches;

pub fn check(case: &Case) -> Option<Comparison> {
    let span = match case.id.split('-').next()? {
        "irc" | "irc18" if case.id.contains("-joist-") => {
            let graded = graded(case, case.words("species"), case.words("grade"));
            tabulated(case, graded)
        }
        "irc2012" | "old" => tabulated(case, stated(case)),
        "dca6" => return Some(deck(case)),
        _ => return None,
    };
    let comparison = length(span.printed);
    let governs = match span.governs {
        Governs::Deflection => "deflection",
        Governs::Bending => "bending",
    };
    // Older tables were read without what governs.
    Some(if case.expects("governs") { comparison.words("governs", governs) } else { comparison })
}

fn length(printed: Length) -> Comparison {
    let whole = printed.to_inches().round() as i64;
    Comparison::new()
        .number("max_span_in", printed.to_inches())
        .words("max_span", format!("{}-{}", whole / 12, whole % 12))
}

fn tabulated(case: &Case, joist: Joist) -> Span {
    let psf = |key| AreaLoad::psf(case.number(key));
    joist_spans::span(&joist, psf("live_psf"), psf("dead_psf"), case.number("defl_live")).unwrap()
}

/// A joist of values that the case gives, so that old values test the procedure alone.
fn stated(case: &Case) -> Joist {
    let factor = case.number("CF") * case.number("Cr");
    joist(case, Stress::psi(case.number("Fb_psi") * factor), Stress::psi(case.number("E_psi")))
}

/// A joist of the crate's own values and factors.
fn graded(case: &Case, species: &str, grade: &str) -> Joist {
    let (values, size) = values_and_size(case, species, grade);
    let factors = Factors { size: size.bending, repetitive: repetitive(case), ..Factors::default() };
    joist(
        case,
        adjusted::bending(values.bending, &factors),
        adjusted::modulus(values.modulus, &Factors::default()),
    )
}

fn joist(case: &Case, bending: Stress, modulus: Stress) -> Joist {
    let Dressed { thickness, width } = dressed(case.words("size"));
    Joist { bending, modulus, breadth: thickness, depth: width, spacing: inches(case, "spacing_in") }
}

/// The shortest of the species that the row stands for, capped as the table is.
fn deck(case: &Case) -> Comparison {
    let species: &[&str] = match case.words("group") {
        "SP" => &["SP"],
        "DHS" => &["DF-L", "Hem-Fir", "SPF"],
        other => panic!("unknown group `{other}`"),
    };
    let printed = species.iter().map(|species| wet_span(case, species)).min().unwrap();
    length(printed.min(inches(case, "cap_in")))
}

fn wet_span(case: &Case, species: &str) -> Length {
    let (values, size) = values_and_size(case, species, case.words("grade"));
    let wet = service::wet_service(
        Stuff::Dimension,
        values.bending * size.bending,
        values.compression * size.compression,
    )
    .unwrap();
    let incised: ServiceFactors =
        if case.holds("incised") { service::incising(Stuff::Dimension).unwrap() } else { service::DRY };
    let bent = Factors {
        size: size.bending,
        repetitive: repetitive(case),
        wet_service: wet.bending,
        incising: incised.bending,
        ..Factors::default()
    };
    let stiff = Factors { wet_service: wet.modulus, incising: incised.modulus, ..Factors::default() };
    let joist =
        joist(case, adjusted::bending(values.bending, &bent), adjusted::modulus(values.modulus, &stiff));
    joist_spans::span(&joist, AreaLoad::psf(40.0), AreaLoad::psf(10.0), 360.0).unwrap().printed
}

fn values_and_size(case: &Case, stamp: &str, grade: &str) -> (Values, SizeFactors) {
    let group = species(stamp).unwrap();
    let Dressed { thickness, width } = dressed(case.words("size"));
    let values = grades::dimension(group, grades::grade(grade).unwrap(), width).unwrap();
    let graded = if group.name == "SP" { Graded::SouthernPine } else { Graded::Visually };
    (values, size_factors(graded, thickness, width).unwrap())
}

fn repetitive(case: &Case) -> f64 {
    let row = Row { members: 3, spacing: inches(case, "spacing_in"), is_joined: true };
    repetitive_member_factor(Stuff::Dimension, row)
}

/// The true size of `2x10`.
fn dressed(size: &str) -> Dressed {
    let (thickness, width) = size.split_once('x').unwrap();
    lumber::dressed(thickness.parse().unwrap(), width.parse().unwrap()).unwrap()
}
