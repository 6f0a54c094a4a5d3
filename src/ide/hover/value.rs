//! A value in the units that people ask for: feet and inches, millimetres, pounds and newtons.

use crate::ide::hover::cursor::Cursor;
use crate::ide::hover::{Piece, Worth};
use crate::products::lumber::dressed;
use crate::syntax::value::{Load, Section, Value};
use crate::units::{Area, Length, Stress};

/// The value at the cursor in other units.
pub fn piece(cursor: &Cursor<'_>) -> Option<Piece> {
    let part = cursor.part?;
    let text = in_units(&part.value)?;
    Some(Piece { span: cursor.span(part.span), worth: Worth::Much, text, has_figures: false })
}

/// A value in other units; `None` for what has none.
pub fn in_units(value: &Value) -> Option<String> {
    match value {
        Value::Length(length) => Some(of_length(*length)),
        Value::Dimensions(lengths) => {
            let each: Vec<String> =
                lengths.iter().map(|length| format!("- {}", of_length(*length))).collect();
            Some(each.join("\n"))
        }
        Value::Load(load) => Some(of_load(*load)),
        Value::Stress(stress) => Some(of_stress(*stress)),
        Value::Area(area) => Some(of_area(*area)),
        Value::Member(member) => nominal(&member.section),
        Value::Mark
        | Value::Date(_)
        | Value::Text(_)
        | Value::Count(_)
        | Value::Number(_)
        | Value::Percent(_)
        | Value::Name(_)
        | Value::Word(_)
        | Value::GridRef(_)
        | Value::Point(_)
        | Value::Rect(_)
        | Value::Line(_)
        | Value::Side(_)
        | Value::Bar(_)
        | Value::FactName(_)
        | Value::Comparison(_) => None,
    }
}

/// `9-1/4" = 0'-9 1/4" = 235.0 mm~`.
pub fn of_length(length: Length) -> String {
    format!("{} = {} = {}", length.in_inches(), length.in_feet(), in_millimetres(length))
}

/// Whole millimetres, or tenths with `~` when that rounds.
fn in_millimetres(length: Length) -> String {
    let tenth = Length::from_units(Length::UNITS_PER_MM / 10);
    let rounded = length.rounded_to(tenth);
    let mark = if rounded == length { "" } else { "~" };
    let tenths = rounded.to_units() / tenth.to_units();
    let sign = if tenths < 0 { "-" } else { "" };
    let (whole, rest) = (tenths.abs() / 10, tenths.abs() % 10);
    if rest == 0 && mark.is_empty() {
        format!("{sign}{whole} mm")
    } else {
        format!("{sign}{whole}.{rest} mm{mark}")
    }
}

fn of_load(load: Load) -> String {
    match load {
        Load::Area(load) => format!("{} psf = {:.2} kPa", number(load.to_psf()), load.to_kpa()),
        Load::Line(load) => format!("{} plf = {:.2} kN/m", number(load.to_plf()), load.to_kn_per_m()),
        Load::Point(force) => {
            format!("{} lb = {} kip = {:.2} kN", number(force.to_lb()), number(force.to_kip()), force.to_kn())
        }
        Load::Volume(density) => {
            format!("{} pcf = {:.0} kg/m³", number(density.to_pcf()), density.to_kg_per_m3())
        }
    }
}

fn of_stress(stress: Stress) -> String {
    format!("{} psi = {} ksi = {:.2} MPa", number(stress.to_psi()), number(stress.to_ksi()), stress.to_mpa())
}

fn of_area(area: Area) -> String {
    format!("{} sq ft = {:.2} m²", number(area.to_sq_ft()), area.to_sq_m())
}

/// At the most three decimals, none of them an idle nought.
fn number(value: f64) -> String {
    let text = format!("{value:.3}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

/// The true dimensions of a nominal size.
fn nominal(section: &Section) -> Option<String> {
    let Section::Nominal(thickness, width) = section else { return None };
    let true_size = dressed(*thickness, *width)?;
    let (thin, wide) = (true_size.thickness, true_size.width);
    Some(format!(
        "a {thickness}x{width} is {} x {} ({} x {})",
        thin.in_inches(),
        wide.in_inches(),
        in_millimetres(thin),
        in_millimetres(wide)
    ))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{AreaLoad, Force, LineLoad};

    /// By hand: an inch is 25.4 mm exactly, a foot 304.8.
    #[test]
    fn lengths_in_inches_feet_and_millimetres() {
        for (length, expected) in [
            (Length::sixteenths(9, 4), "9-1/4\" = 0'-9 1/4\" = 235.0 mm~"),
            (Length::inches(150), "150\" = 12'-6\" = 3810 mm"),
            (Length::inches(9), "9\" = 0'-9\" = 228.6 mm"),
            (Length::hundredths(793), "7-15/16\"~ = 0'-7 15/16\"~ = 201.4 mm~"),
            (-Length::inches(5), "-5\" = -0'-5\" = -127 mm"),
        ] {
            assert_eq!(of_length(length), expected);
        }
    }

    /// By hand: 1 kPa is 20.885 psf, 1 kN 224.81 lb, 1 kN/m 68.522 plf, 1 MPa 145.04 psi, 1 m² 10.764 sq ft.
    #[test]
    fn loads_and_stresses_in_both_systems() {
        assert_eq!(of_load(Load::Area(AreaLoad::psf(40.0))), "40 psf = 1.92 kPa");
        assert_eq!(of_load(Load::Line(LineLoad::plf(350.0))), "350 plf = 5.11 kN/m");
        assert_eq!(of_load(Load::Point(Force::lb(1_100.0))), "1100 lb = 1.1 kip = 4.89 kN");
        assert_eq!(of_stress(Stress::psi(875.0)), "875 psi = 0.875 ksi = 6.03 MPa");
        assert_eq!(of_area(Area::sq_ft(256.0)), "256 sq ft = 23.78 m²");
    }

    /// PS 20, read in a secondary copy: a 2x10 is dressed to 1-1/2 x 9-1/4.
    #[test]
    fn a_nominal_size_has_a_true_one() {
        let text = nominal(&Section::Nominal(2, 10)).unwrap();
        assert_eq!(text, "a 2x10 is 1-1/2\" x 9-1/4\" (38.1 mm x 235.0 mm~)");
        assert_eq!(nominal(&Section::Depth(Length::inches(14))), None);
    }
}
