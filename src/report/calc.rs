//! The calculation sheet: every check of a member with its formulas, the numbers in them, the result and the clause.

use std::fmt::Write as _;
use std::io::{self, Write};

use crate::house::House;
use crate::model::element::ElementId;
use crate::report::{CAUTION, Palette, printable};
use crate::verify::check::{Check, Step, Verification};

/// How a calculation sheet is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SheetForm {
    /// For a terminal.
    Text,
    /// Markdown, for a review or a file.
    Markdown,
}

/// Writes the calculation sheet of one member, or of every member of the house.
///
/// # Errors
/// What the stream says.
pub fn write_calc(
    house: &House,
    element: Option<ElementId>,
    form: SheetForm,
    palette: Palette,
    out: &mut impl Write,
) -> io::Result<()> {
    let project = house.model.project.as_ref();
    let title = project.map(|project| project.common.name.to_string()).unwrap_or_default();
    let head = format!("Calculation sheet: {}", printable(&title));
    match form {
        SheetForm::Text => writeln!(out, "{}", palette.strong(&head))?,
        SheetForm::Markdown => writeln!(out, "# {head}")?,
    }
    let mut last = None;
    let wanted = house
        .verifications
        .all()
        .iter()
        .filter(|verification| element.is_none_or(|of| verification.of == of));
    for verification in wanted {
        if last != Some(verification.of) {
            last = Some(verification.of);
            write_member(house, verification.of, form, palette, out)?;
        }
        write_verification(house, verification, form, palette, out)?;
    }
    if last.is_none() {
        writeln!(out, "\nNothing is checked of it here.")?;
    }
    writeln!(out, "\n{CAUTION}")
}

fn write_member(
    house: &House,
    of: ElementId,
    form: SheetForm,
    palette: Palette,
    out: &mut impl Write,
) -> io::Result<()> {
    let Some(common) = house.model.common(of) else { return Ok(()) };
    let title = common.title.as_ref().map(|title| format!(", {}", printable(title))).unwrap_or_default();
    let head = format!("{}{title}", printable(&common.label()));
    match form {
        SheetForm::Text => writeln!(out, "\n{}", palette.strong(&head)),
        SheetForm::Markdown => writeln!(out, "\n## {head}"),
    }
}

fn write_verification(
    house: &House,
    verification: &Verification,
    form: SheetForm,
    palette: Palette,
    out: &mut impl Write,
) -> io::Result<()> {
    let mut head = verification.limit_state.words().to_owned();
    if let Some(part) = &verification.part {
        _ = write!(head, ", {}", printable(part));
    }
    if let Some(against) = verification.against.and_then(|against| house.model.common(against)) {
        _ = write!(head, ", against {}", printable(&against.label()));
    }
    match form {
        SheetForm::Text => writeln!(out, "  {}", palette.strong(&head))?,
        SheetForm::Markdown => writeln!(out, "\n### {head}\n")?,
    }
    match &verification.outcome {
        Ok(check) => write_check(check, form, out),
        Err(why) => write_line(form, &format!("not verified: {}", printable(&why.to_string())), out),
    }
}

fn write_check(check: &Check, form: SheetForm, out: &mut impl Write) -> io::Result<()> {
    let mut governing = check.combination.to_owned();
    if let Some(pattern) = &check.pattern {
        _ = write!(governing, ", {}", printable(pattern));
    }
    if let Some(at) = check.at {
        _ = write!(governing, ", at {at}");
    }
    write_line(form, &format!("governed by {governing}"), out)?;
    for step in &check.steps {
        write_line(form, &formula(step), out)?;
    }
    let ratio = check.ratio();
    let verdict = if ratio <= 1.0 { "<=" } else { ">" };
    let result =
        format!("{} {verdict} {}, ratio {ratio:.2} ({})", check.demand, check.capacity, check.clause);
    write_line(form, &result, out)?;
    for assumed in &check.assumed {
        write_line(form, &format!("assumed: {}", printable(assumed)), out)?;
    }
    Ok(())
}

fn write_line(form: SheetForm, line: &str, out: &mut impl Write) -> io::Result<()> {
    match form {
        SheetForm::Text => writeln!(out, "    {line}"),
        SheetForm::Markdown => writeln!(out, "- {line}"),
    }
}

/// `fb = M / S = 29,100 lb-ft / 21.4 in3 = 1,632 psi (NDS 2018 3.3.2)`.
fn formula(step: &Step) -> String {
    let mut line = step.symbol.to_owned();
    if !step.formula.is_empty() {
        _ = write!(line, " = {} = {}", step.formula, substituted(step));
    }
    _ = write!(line, " = {}", step.result);
    if !step.source.is_empty() {
        _ = write!(line, " ({})", step.source);
    }
    line
}

/// The formula with what stands for each of its symbols, and an `x` where two that stand side by side are multiplied; a
/// symbol is what blanks and brackets part.
fn substituted(step: &Step) -> String {
    let value_of =
        |symbol: &str| step.values.iter().find(|(name, _)| *name == symbol).map(|(_, value)| value);
    let mut line = String::new();
    let mut follows_a_factor = false;
    for word in step.formula.split(' ') {
        // `d^2` and `(le/d)^2` show what stands for `d` and `le/d`.
        let base = word.split('^').next().unwrap_or(word);
        let bare = base.trim_matches(|c: char| matches!(c, '(' | ')' | '[' | ']' | ','));
        let value = value_of(bare);
        let is_number = bare.starts_with(|c: char| c.is_ascii_digit());
        let begins_a_factor = value.is_some() || is_number || word.starts_with(['(', '[']);
        if !line.is_empty() {
            line.push_str(if follows_a_factor && begins_a_factor { " x " } else { " " });
        }
        match value {
            Some(value) => line.push_str(&word.replacen(bare, &value.to_string(), 1)),
            None => line.push_str(word),
        }
        let ends_open = word.ends_with(['(', '[', ',']);
        follows_a_factor = !ends_open && (value.is_some() || is_number || word.ends_with([')', ']']));
    }
    line
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{Moment, SectionModulus, Stress};
    use crate::verify::quantity::Quantity;

    /// By hand: 1,643 lb-ft over 21.39 in3 is 922 psi.
    #[test]
    fn a_formula_shows_its_numbers() {
        let step = Step {
            symbol: "fb",
            formula: "M / S",
            values: vec![
                ("M", Quantity::from(Moment::lb_ft(1_643.0))),
                ("S", Quantity::from(SectionModulus::in3(21.39))),
            ],
            result: Quantity::from(Stress::psi(921.7)),
            source: "NDS 2018 3.3.2",
        };
        let product = Step {
            symbol: "Mu",
            formula: "qu b ( l - x ) / 2",
            values: vec![
                ("qu", Quantity::from(2.0)),
                ("b", Quantity::from(3.0)),
                ("l", Quantity::from(5.0)),
                ("x", Quantity::from(1.0)),
            ],
            result: Quantity::from(12.0),
            source: "",
        };
        assert_eq!(formula(&product), "Mu = qu b ( l - x ) / 2 = 2.00 x 3.00 x ( 5.00 - 1.00 ) / 2 = 12.0");
        let square = Step {
            symbol: "S",
            formula: "b d^2 / 6",
            values: vec![("b", Quantity::from(2.0)), ("d", Quantity::from(3.0))],
            result: Quantity::from(3.0),
            source: "",
        };
        assert_eq!(formula(&square), "S = b d^2 / 6 = 2.00 x 3.00^2 / 6 = 3.00");
        assert_eq!(formula(&step), "fb = M / S = 1,643 lb-ft / 21.4 in3 = 922 psi (NDS 2018 3.3.2)");
    }
}
