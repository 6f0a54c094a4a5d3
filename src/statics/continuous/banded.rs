//! A narrow band of linear equations, factored once and solved for many right sides.

use std::cell::Cell;

/// How far from the diagonal a coefficient may lie.
pub(super) const REACH: usize = 3;

/// The coefficients of one equation: the diagonal in the middle.
pub(super) type Equation = [f64; 2 * REACH + 1];

/// Equations in triangular form. Rows are exchanged for the largest pivot, since some have none on the diagonal.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Factored {
    steps: Vec<Step>,
}

/// What was done to eliminate one unknown.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Step {
    /// How many rows below the pivot was found.
    exchanged: usize,
    /// How many times the pivot row was taken from each of the next rows.
    multiples: [f64; REACH],
    /// One over the pivot.
    inverse: f64,
    /// The pivot row, right of the pivot.
    row: [f64; 2 * REACH],
}

/// The equations in triangular form; `None` when they have no single answer.
pub(super) fn factored(equations: &[Equation]) -> Option<Factored> {
    let mut coming = equations.iter().copied();
    // The rows that still hold the unknown of the step, each from that unknown on.
    let mut rows = [(); REACH + 1].map(|()| coming.next().unwrap_or_default());
    for (row, missing) in rows.iter_mut().zip((0..=REACH).rev()) {
        for _ in 0..missing {
            *row = shifted(*row);
        }
    }
    let mut steps = Vec::with_capacity(equations.len());
    for _ in equations {
        let exchanged = largest_lead(&rows);
        rows.swap(0, exchanged);
        let [pivot_row, mut second, mut third, mut fourth] = rows;
        let [pivot, row @ ..] = pivot_row;
        let inverse = 1.0 / pivot;
        if !inverse.is_finite() {
            return None;
        }
        let mut multiples = [0.0; REACH];
        for (multiple, below) in multiples.iter_mut().zip([&mut second, &mut third, &mut fourth]) {
            let [lead, ..] = *below;
            *multiple = lead * inverse;
            for (value, above) in below.iter_mut().zip(pivot_row) {
                *value -= *multiple * above;
            }
            *below = shifted(*below);
        }
        steps.push(Step { exchanged, multiples, inverse, row });
        rows = [second, third, fourth, coming.next().unwrap_or_default()];
    }
    Some(Factored { steps })
}

fn shifted([_, a, b, c, d, e, f]: Equation) -> Equation {
    [a, b, c, d, e, f, 0.0]
}

fn largest_lead(rows: &[Equation; REACH + 1]) -> usize {
    let mut largest = (0, 0.0);
    for (index, [lead, ..]) in rows.iter().enumerate() {
        if lead.abs() > largest.1 {
            largest = (index, lead.abs());
        }
    }
    largest.0
}

impl Factored {
    /// Turns right sides into the unknowns.
    pub(super) fn solve(&self, values: &mut [f64]) {
        // Cells, so that a row can be read a few places ahead of where another is written.
        let cells = Cell::from_mut(values).as_slice_of_cells();
        let mut coming = cells.iter().map(Cell::get);
        let mut window = [(); REACH + 1].map(|()| coming.next().unwrap_or_default());
        for (step, cell) in self.steps.iter().zip(cells) {
            window.swap(0, step.exchanged);
            let [pivot, second, third, fourth] = window;
            let [a, b, c] = step.multiples;
            cell.set(pivot);
            window = [
                second - a * pivot,
                third - b * pivot,
                fourth - c * pivot,
                coming.next().unwrap_or_default(),
            ];
        }
        let mut known = [0.0; 2 * REACH];
        for (step, cell) in self.steps.iter().zip(cells).rev() {
            let of_known: f64 =
                step.row.iter().zip(known).map(|(coefficient, value)| coefficient * value).sum();
            let value = (cell.get() - of_known) * step.inverse;
            cell.set(value);
            let [a, b, c, d, e, _] = known;
            known = [value, a, b, c, d, e];
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: x + 2y = 5, 3x + 4y = 11 has x = 1, y = 2; y = 2 alone with x below it needs an exchange.
    #[test]
    fn solves_with_and_without_an_exchange() {
        let equations = [[0.0, 0.0, 0.0, 1.0, 2.0, 0.0, 0.0], [0.0, 0.0, 3.0, 4.0, 0.0, 0.0, 0.0]];
        let mut values = [5.0, 11.0];
        factored(&equations).unwrap().solve(&mut values);
        assert!((values[0] - 1.0).abs() < 1e-12 && (values[1] - 2.0).abs() < 1e-12, "{values:?}");

        let equations = [[0.0, 0.0, 0.0, 0.0, 2.0, 0.0, 0.0], [0.0, 0.0, 3.0, 0.0, 0.0, 0.0, 0.0]];
        let mut values = [4.0, 3.0];
        factored(&equations).unwrap().solve(&mut values);
        assert!((values[0] - 1.0).abs() < 1e-12 && (values[1] - 2.0).abs() < 1e-12, "{values:?}");
    }

    #[test]
    fn refuses_equations_without_an_answer() {
        let equations = [[0.0, 0.0, 0.0, 1.0, 1.0, 0.0, 0.0], [0.0, 0.0, 1.0, 1.0, 0.0, 0.0, 0.0]];
        assert_eq!(factored(&equations), None);
    }

    /// The answer is put in, the right side is worked out from it, and the answer must come out.
    #[test]
    fn solves_a_long_band() {
        let n = 40_i32;
        let coefficient = |row: i32, column: i32| {
            let distance = column - row;
            if distance.abs() > 3 || !(0..n).contains(&column) {
                0.0
            } else {
                f64::from((row * 7 + column * 13) % 11 - 5) + if distance == 2 { 20.0 } else { 0.1 }
            }
        };
        let equations: Vec<Equation> = (0..n)
            .map(|row| std::array::from_fn(|index| coefficient(row, row - 3 + i32::try_from(index).unwrap())))
            .collect();
        let answer: Vec<f64> = (0..n).map(|row| f64::from(row % 5) - 1.5).collect();
        let mut values: Vec<f64> = (0..n)
            .map(|row| answer.iter().zip(0..n).map(|(x, column)| coefficient(row, column) * x).sum())
            .collect();
        factored(&equations).unwrap().solve(&mut values);
        for (value, x) in values.iter().zip(answer) {
            assert!((value - x).abs() < 1e-8, "{value} {x}");
        }
    }
}
