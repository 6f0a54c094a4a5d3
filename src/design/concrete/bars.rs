//! Reinforcing bars of the inch sizes.
//!
//! Source: ASTM A615, table 1, read in secondary copies (a trade magazine's table and a precast handbook's page, which
//! agree). Diameters and areas are nominal: the area is not exactly that of the diameter.

use crate::units::{Area, Length};

/// A size of bar.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bar {
    /// What it is called by: `#5` is 5.
    pub number: u32,
    /// Nominal diameter, db.
    pub diameter: Length,
    /// Nominal area, Ab.
    pub area: Area,
}

/// The sizes from #3 to #11, in order.
pub const BARS: [Bar; 9] = [
    bar(3, 0.375, 0.11),
    bar(4, 0.500, 0.20),
    bar(5, 0.625, 0.31),
    bar(6, 0.750, 0.44),
    bar(7, 0.875, 0.60),
    bar(8, 1.000, 0.79),
    bar(9, 1.128, 1.00),
    bar(10, 1.270, 1.27),
    bar(11, 1.410, 1.56),
];

/// The bar of a number; `None` for a size that is not in the table.
pub fn numbered(number: u32) -> Option<Bar> {
    BARS.into_iter().find(|bar| bar.number == number)
}

const fn bar(number: u32, diameter: f64, square_inches: f64) -> Bar {
    Bar { number, diameter: Length::decimal_inches(diameter), area: Area::sq_in(square_inches) }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Up to #8 the number counts eighths of an inch; nominal areas lie within 3 % of those of the nominal circles.
    #[test]
    fn the_table_agrees_with_its_own_geometry() {
        for bar in BARS {
            if bar.number <= 8 {
                assert_eq!(bar.diameter, Length::sixteenths(0, i64::from(bar.number) * 2));
            }
            let circle = std::f64::consts::PI / 4.0 * (bar.diameter * bar.diameter).to_sq_in();
            assert!((bar.area.to_sq_in() / circle - 1.0).abs() < 0.03, "#{}", bar.number);
        }
    }

    #[test]
    fn other_sizes_are_not_there() {
        assert_eq!(numbered(5).map(|bar| bar.diameter), Some(Length::decimal_inches(0.625)));
        assert_eq!(numbered(2), None);
        assert_eq!(numbered(14), None);
    }
}
