//! Strings of dimensions: what their parts add up to, and which number is probably wrong when that is not the whole.

use crate::units::Length;

/// A string whose parts do not add up to its whole.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Misfit {
    /// What the parts add up to.
    pub sum: Length,
    /// The whole as stated.
    pub whole: Length,
    /// The number that one change would put right, when only one would.
    pub suspect: Option<Suspect>,
}

/// A number of a string that is probably wrong.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Suspect {
    /// This part should be that.
    Part(Length, Length),
    /// The whole should be the sum.
    Whole,
}

/// Adds a string up. `known` are lengths that stand elsewhere: between neighbouring grid lines, and from the first to
/// the last. A part is suspect when put right it equals another part, or a known length that it is not.
pub fn misfit(parts: &[Length], whole: Length, tolerance: Length, known: &[Length]) -> Option<Misfit> {
    let sum: Length = parts.iter().copied().sum();
    let missing = whole - sum;
    if missing.abs() < tolerance {
        return None;
    }
    let mut suspects: Vec<Suspect> = Vec::new();
    for (at, part) in parts.iter().enumerate() {
        let right = *part + missing;
        let is_another = parts.iter().enumerate().any(|(other, length)| other != at && *length == right);
        let is_known = known.contains(&right) && !known.contains(part);
        let suspect = Suspect::Part(*part, right);
        if right.is_positive() && (is_another || is_known) && !suspects.contains(&suspect) {
            suspects.push(suspect);
        }
    }
    if known.contains(&sum) && !known.contains(&whole) {
        suspects.push(Suspect::Whole);
    }
    let suspect = if suspects.len() == 1 { suspects.pop() } else { None };
    Some(Misfit { sum, whole, suspect })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn feet(feet: &[i64]) -> Vec<Length> {
        feet.iter().map(|feet| Length::feet(*feet)).collect()
    }

    #[test]
    fn a_string_that_adds_up_is_no_misfit() {
        let sixteenth = Length::sixteenths(0, 1);
        assert_eq!(misfit(&feet(&[14, 9, 9]), Length::feet(32), sixteenth, &[]), None);
    }

    /// 14 + 9 + 8 + 9 = 40 of 41: were the 8 a 9 like its neighbours, it would add up.
    #[test]
    fn the_odd_one_out_is_suspect() {
        let sixteenth = Length::sixteenths(0, 1);
        let found = misfit(&feet(&[14, 9, 8, 9]), Length::feet(41), sixteenth, &[]).unwrap();
        assert_eq!(found.suspect, Some(Suspect::Part(Length::feet(8), Length::feet(9))));
    }

    /// 10 + 12 = 22, and the grid is 22 ft wide: the 23 is wrong.
    #[test]
    fn the_whole_can_be_suspect() {
        let sixteenth = Length::sixteenths(0, 1);
        let found = misfit(&feet(&[10, 12]), Length::feet(23), sixteenth, &feet(&[10, 12, 22])).unwrap();
        assert_eq!(found.suspect, Some(Suspect::Whole));
    }
}
