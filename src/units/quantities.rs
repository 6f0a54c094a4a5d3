//! Quantities that are a floating-point number of one stated unit, and the products and quotients that mean something.

use std::iter::Sum;
use std::ops::{Add, AddAssign, Div, Mul, Neg, Sub};

use crate::units::Length;

/// Defines a quantity that is a floating-point number of one stated unit.
macro_rules! quantity {
    ($(#[$doc:meta])* $name:ident { $($unit:ident / $to:ident = $factor:expr),+ $(,)? }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
        pub struct $name(f64);

        impl $name {
            /// None of it.
            pub const ZERO: Self = Self(0.0);

            $(
                #[doc = concat!("From a number of ", stringify!($unit), ".")]
                pub const fn $unit(value: f64) -> Self {
                    Self(value * $factor)
                }

                #[doc = concat!("As a number of ", stringify!($unit), ".")]
                pub const fn $to(self) -> f64 {
                    self.0 / $factor
                }
            )+

            /// It without its sign.
            pub const fn abs(self) -> Self {
                Self(self.0.abs())
            }

            /// The larger of two.
            pub const fn max(self, other: Self) -> Self {
                Self(self.0.max(other.0))
            }

            /// The smaller of two.
            pub const fn min(self, other: Self) -> Self {
                Self(self.0.min(other.0))
            }

            /// True of a number: neither infinite nor the result of an impossible sum.
            pub const fn is_finite(self) -> bool {
                self.0.is_finite()
            }
        }

        impl Add for $name {
            type Output = Self;
            fn add(self, rhs: Self) -> Self {
                Self(self.0 + rhs.0)
            }
        }

        impl AddAssign for $name {
            fn add_assign(&mut self, rhs: Self) {
                self.0 += rhs.0;
            }
        }

        impl Sub for $name {
            type Output = Self;
            fn sub(self, rhs: Self) -> Self {
                Self(self.0 - rhs.0)
            }
        }

        impl Neg for $name {
            type Output = Self;
            fn neg(self) -> Self {
                Self(-self.0)
            }
        }

        impl Mul<f64> for $name {
            type Output = Self;
            fn mul(self, rhs: f64) -> Self {
                Self(self.0 * rhs)
            }
        }

        impl Div<f64> for $name {
            type Output = Self;
            fn div(self, rhs: f64) -> Self {
                Self(self.0 / rhs)
            }
        }

        /// How many times one goes into the other.
        impl Div for $name {
            type Output = f64;
            fn div(self, rhs: Self) -> f64 {
                self.0 / rhs.0
            }
        }

        impl Sum for $name {
            fn sum<I: Iterator<Item = Self>>(iter: I) -> Self {
                iter.fold(Self::ZERO, Add::add)
            }
        }
    };
}

quantity! {
    /// A force, gravity load down positive. Stored in pounds.
    Force { lb / to_lb = 1.0, kip / to_kip = 1_000.0, kn / to_kn = 224.808_943 }
}
quantity! {
    /// A load on a length, down positive. Stored in pounds per foot.
    LineLoad { plf / to_plf = 1.0, klf / to_klf = 1_000.0, kn_per_m / to_kn_per_m = 68.521_766 }
}
quantity! {
    /// A load on an area, or a soil pressure, down positive. Stored in pounds per square foot.
    AreaLoad { psf / to_psf = 1.0, ksf / to_ksf = 1_000.0, kpa / to_kpa = 20.885_434 }
}
quantity! {
    /// A moment, sagging positive; a couple, clockwise positive. Stored in pound-inches.
    Moment { lb_in / to_lb_in = 1.0, lb_ft / to_lb_ft = 12.0, kip_ft / to_kip_ft = 12_000.0, kip_in / to_kip_in = 1_000.0 }
}
quantity! {
    /// A stress or a modulus. Stored in pounds per square inch.
    Stress { psi / to_psi = 1.0, ksi / to_ksi = 1_000.0, mpa / to_mpa = 145.037_738 }
}
quantity! {
    /// A weight of a volume. Stored in pounds per cubic foot.
    Density { pcf / to_pcf = 1.0, kg_per_m3 / to_kg_per_m3 = 0.062_427_961 }
}
quantity! {
    /// An area. Stored in square feet.
    Area { sq_ft / to_sq_ft = 1.0, sq_in / to_sq_in = 1.0 / 144.0, sq_m / to_sq_m = 10.763_910_4 }
}
quantity! {
    /// A second moment of area, or a torsional constant. Stored in inches to the fourth.
    SecondMoment { in4 / to_in4 = 1.0 }
}
quantity! {
    /// An elastic or plastic section modulus. Stored in cubic inches.
    SectionModulus { in3 / to_in3 = 1.0 }
}
quantity! {
    /// A modulus of elasticity times a second moment of area. Stored in pounds times square inches.
    FlexuralRigidity { lb_in2 / to_lb_in2 = 1.0 }
}
quantity! {
    /// The force that presses a support down by a length. Stored in pounds per inch.
    SpringRate { lb_per_in / to_lb_per_in = 1.0 }
}

/// Defines `left * right = product` both ways round, by one formula in stored units.
macro_rules! product {
    ($left:ident * $right:ident = $product:ident, $factor:expr) => {
        impl Mul<$right> for $left {
            type Output = $product;
            fn mul(self, rhs: $right) -> $product {
                $product(self.0 * rhs.0 * $factor)
            }
        }
        impl Mul<$left> for $right {
            type Output = $product;
            fn mul(self, rhs: $left) -> $product {
                rhs * self
            }
        }
    };
}

/// Defines the quotients that undo a product.
macro_rules! quotients {
    ($product:ident / $left:ident = $right:ident, $factor:expr) => {
        impl Div<$right> for $product {
            type Output = $left;
            fn div(self, rhs: $right) -> $left {
                $left(self.0 / (rhs.0 * $factor))
            }
        }
        impl Div<$left> for $product {
            type Output = $right;
            fn div(self, rhs: $left) -> $right {
                $right(self.0 / (rhs.0 * $factor))
            }
        }
    };
}

product!(Stress * Area = Force, 144.0);
quotients!(Force / Stress = Area, 144.0);
product!(Stress * SectionModulus = Moment, 1.0);
quotients!(Moment / Stress = SectionModulus, 1.0);
product!(Stress * SecondMoment = FlexuralRigidity, 1.0);
product!(Density * Area = LineLoad, 1.0);
// A force on an area is a stress; a pressure on soil is asked for with `AreaLoad::from`.
product!(AreaLoad * Area = Force, 1.0);

impl From<Stress> for AreaLoad {
    fn from(stress: Stress) -> Self {
        Self::psf(stress.to_psi() * 144.0)
    }
}

/// Defines `quantity * Length` both ways round. `factor` turns inches into the stored unit.
macro_rules! by_length {
    ($quantity:ident * Length = $product:ident, $factor:expr) => {
        impl Mul<Length> for $quantity {
            type Output = $product;
            fn mul(self, rhs: Length) -> $product {
                $product(self.0 * rhs.to_inches() * $factor)
            }
        }
        impl Mul<$quantity> for Length {
            type Output = $product;
            fn mul(self, rhs: $quantity) -> $product {
                rhs * self
            }
        }
    };
}

/// Defines the quotient of a product by a length.
macro_rules! over_length {
    ($product:ident / Length = $quantity:ident, $factor:expr) => {
        impl Div<Length> for $product {
            type Output = $quantity;
            fn div(self, rhs: Length) -> $quantity {
                $quantity(self.0 / (rhs.to_inches() * $factor))
            }
        }
    };
}

by_length!(AreaLoad * Length = LineLoad, 1.0 / 12.0);
over_length!(LineLoad / Length = AreaLoad, 1.0 / 12.0);
by_length!(LineLoad * Length = Force, 1.0 / 12.0);
over_length!(Force / Length = LineLoad, 1.0 / 12.0);
by_length!(Force * Length = Moment, 1.0);
over_length!(Moment / Length = Force, 1.0);
by_length!(Density * Length = AreaLoad, 1.0 / 12.0);
by_length!(SpringRate * Length = Force, 1.0);

impl Mul for Length {
    type Output = Area;
    fn mul(self, rhs: Self) -> Area {
        Area::sq_in(self.to_inches() * rhs.to_inches())
    }
}

/// How many times one length goes into the other.
impl Div for Length {
    type Output = f64;
    fn div(self, rhs: Self) -> f64 {
        self.to_inches() / rhs.to_inches()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn close(one: f64, other: f64) -> bool {
        (one - other).abs() <= 1e-9 * other.abs()
    }

    /// By hand: 40 psf on 16 in. is 53.333 plf; over 12 ft 640 lb; at 6 ft 3,840 lb-ft.
    #[test]
    fn an_area_load_becomes_a_moment() {
        let line = AreaLoad::psf(40.0) * Length::inches(16);
        assert!(close(line.to_plf(), 53.333_333_333_333));
        let force = line * Length::feet(12);
        assert!(close(force.to_lb(), 640.0));
        assert!(close((force * Length::feet(6)).to_lb_ft(), 3_840.0));
        assert!(close((force / Length::feet(12)).to_plf(), line.to_plf()));
    }

    /// By hand: 1,500 lb on 1-1/2 by 2 in. is 500 psi; 2,000 psf on 4 sq ft is 8,000 lb.
    #[test]
    fn stress_and_pressure_keep_their_areas_apart() {
        let contact = Length::inches(2) * Length::sixteenths(1, 8);
        assert!(close((Force::lb(1_500.0) / contact).to_psi(), 500.0));
        assert!(close((AreaLoad::psf(2_000.0) * Area::sq_ft(4.0)).to_lb(), 8_000.0));
    }

    /// By hand: 1,000 psi on 10 in3 is 10,000 lb-in; 150 pcf on 2 sq ft is 300 plf.
    #[test]
    fn moduli_and_densities_multiply() {
        let moment = Stress::psi(1_000.0) * SectionModulus::in3(10.0);
        assert!(close(moment.to_lb_in(), 10_000.0));
        assert!(close((Density::pcf(150.0) * Area::sq_ft(2.0)).to_plf(), 300.0));
        assert!(close(Moment::kip_ft(1.0).to_lb_in(), 12_000.0));
    }
}
