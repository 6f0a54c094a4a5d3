//! Numbers with fractions: `9-1/2`, `9½`, `3/4`, `9.5`.

use crate::syntax::lexer::numbers::{self, Figures, Rest};
use crate::units::Length;

/// A number with maybe a fraction behind it, or a fraction alone.
#[derive(Clone, Copy)]
pub(super) struct Mixed {
    pub whole: Option<Figures>,
    pub fraction: Option<Figures>,
}

impl Mixed {
    /// Its exact units when it counts inches; the count rounded down when it is not whole.
    pub fn units(self) -> Result<i128, i128> {
        let of = |figures: Option<Figures>| {
            figures.map_or((0, true), |figures| figures.of(Length::UNITS_PER_INCH))
        };
        let ((whole, whole_is_exact), (part, part_is_exact)) = (of(self.whole), of(self.fraction));
        if whole_is_exact && part_is_exact { Ok(whole + part) } else { Err(whole + part) }
    }
}

/// Steps over `9`, `9.5`, `3/4`, `½`, `9-1/2`, `9 1/2` or `9½`.
pub(super) fn mixed(rest: &mut Rest<'_>) -> Option<Mixed> {
    if let Some(fraction) = fraction(rest) {
        return Some(Mixed { whole: None, fraction: Some(fraction) });
    }
    let whole = plain_number(rest)?;
    let mut behind = *rest;
    let is_joined = behind.take_one_of(&["-", " "]);
    let joins =
        whole.is_whole() && (is_joined || behind.next().is_some_and(|next| numbers::vulgar(next).is_some()));
    let fraction = joins.then(|| fraction(&mut behind)).flatten();
    if fraction.is_some() {
        *rest = behind;
    }
    Some(Mixed { whole: Some(whole), fraction })
}

/// Steps over `3/4` or `¾`.
fn fraction(rest: &mut Rest<'_>) -> Option<Figures> {
    let mut behind = *rest;
    let figures = match behind.next().and_then(numbers::vulgar) {
        Some(figures) => {
            behind.skip();
            figures
        }
        None => {
            let above = behind.take_digits()?;
            let below = behind.take("/").then(|| behind.take_digits()).flatten()?;
            Figures::fraction(above, below).ok()?
        }
    };
    *rest = behind;
    Some(figures)
}

/// Steps over digits with at most one point between them.
pub(super) fn plain_number(rest: &mut Rest<'_>) -> Option<Figures> {
    let mut behind = *rest;
    let start = behind.0;
    behind.take_digits()?;
    let mut point = behind;
    if point.take(".") && point.take_digits().is_some() {
        behind = point;
    }
    let figures = Figures::decimal(start.get(..start.len() - behind.0.len())?).ok()?;
    *rest = behind;
    Some(figures)
}
