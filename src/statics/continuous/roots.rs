//! Roots of the polynomials along a piece, in closed form or by Newton's steps kept inside a bracket.

/// The roots of `a + b x + c x²`, smaller first where there are two; `NaN` for those that do not exist.
pub(super) fn quadratic_roots(a: f64, b: f64, c: f64) -> [f64; 2] {
    let discriminant = b * b - 4.0 * a * c;
    // Both by sums of like signs, so that no digits cancel.
    let sum = -0.5 * (b + discriminant.sqrt().copysign(b));
    let (one, other) = (a / sum, sum / c);
    if one <= other { [one, other] } else { [other, one] }
}

/// Where `value` passes through zero between two places, each given with the value there; `None` when it has one sign
/// between them. `value` gives the value and its derivative, and goes one way between the two places.
pub(super) fn root_between(
    (from, at_low): (f64, f64),
    (to, at_high): (f64, f64),
    value: impl Fn(f64) -> (f64, f64),
) -> Option<f64> {
    let passes = at_low < 0.0 && at_high > 0.0 || at_low > 0.0 && at_high < 0.0;
    if !passes {
        return None;
    }
    let (mut low, mut high) = (from, to);
    let close = (to - from) * CLOSE;
    let mut x = low - at_low * (high - low) / (at_high - at_low);
    for _ in 0..MOST_STEPS {
        let (here, slope) = value(x);
        if (here < 0.0) == (at_low < 0.0) {
            low = x;
        } else {
            high = x;
        }
        let newton = x - here / slope;
        let next = if low <= newton && newton <= high { newton } else { low.midpoint(high) };
        if (next - x).abs() <= close {
            return Some(next);
        }
        x = next;
    }
    Some(x)
}

/// The last step, as a share of the bracket; Newton's steps square the error, so that the root is closer by far.
const CLOSE: f64 = 1e-7;

/// Enough for halving alone to get there.
const MOST_STEPS: usize = 60;

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: (x - 2)(x - 5) = 10 - 7x + x²; 6 - 3x has the root 2; 1 + x² has none.
    #[test]
    fn quadratics() {
        let [one, other] = quadratic_roots(10.0, -7.0, 1.0);
        assert!((one - 2.0).abs() < 1e-12 && (other - 5.0).abs() < 1e-12);
        assert!(quadratic_roots(6.0, -3.0, 0.0).iter().any(|root| (root - 2.0).abs() < 1e-12));
        assert!(quadratic_roots(1.0, 0.0, 1.0).iter().all(|root| root.is_nan()));
        // Small roots keep their digits: x² - 1e8 x + 1 has one at 1e-8.
        assert!((quadratic_roots(1.0, -1e8, 1.0)[0] / 1e-8 - 1.0).abs() < 1e-12);
    }

    /// By hand: x³ = 2 at 2^(1/3); the flat start of x³ - 1e-9 would throw a bare Newton step out of the bracket.
    #[test]
    fn brackets() {
        let root = root_between((0.0, -2.0), (2.0, 6.0), |x| (x.powi(3) - 2.0, 3.0 * x * x)).unwrap();
        assert!((root - 2.0_f64.cbrt()).abs() < 1e-9);
        let root = root_between((-1.0, -1.0), (2.0, 8.0), |x| (x.powi(3) - 1e-9, 3.0 * x * x)).unwrap();
        assert!((root - 1e-3).abs() < 1e-8);
        assert_eq!(root_between((1.0, 1.0), (2.0, 2.0), |x| (x, 1.0)), None);
    }
}
