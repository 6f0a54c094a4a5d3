//! Structural panels for decks: how thick each really is.
//!
//! Source: span ratings' panel thicknesses of the panel standards (PS 1, PS 2), from memory; the size each is sold as
//! is common practice. A stack states the size sold, unless it states the true one on both sides.

use crate::units::Length;

/// A deck panel.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Panel {
    /// What it is called.
    pub sold_as: Length,
    /// What it measures.
    pub thickness: Length,
}

/// The deck panels, thin to thick.
pub const PANELS: &[Panel] = &[
    panel(Length::sixteenths(0, 8), Length::sixty_fourths(0, 30)),
    panel(Length::sixteenths(0, 10), Length::sixty_fourths(0, 38)),
    panel(Length::sixteenths(0, 12), Length::sixty_fourths(0, 46)),
    panel(Length::sixteenths(0, 14), Length::sixteenths(0, 14)),
    panel(Length::inches(1), Length::inches(1)),
    panel(Length::sixteenths(1, 2), Length::sixteenths(1, 2)),
];

/// The panel sold as this, or measuring this.
pub fn panel_of(thickness: Length) -> Option<&'static Panel> {
    PANELS.iter().find(|panel| panel.sold_as == thickness || panel.thickness == thickness)
}

const fn panel(sold_as: Length, thickness: Length) -> Panel {
    Panel { sold_as, thickness }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Common practice: 23/32 is sold as 3/4.
    #[test]
    fn three_quarters_is_one_thirty_second_short() {
        let panel = panel_of(Length::sixteenths(0, 12)).unwrap();
        assert_eq!(panel.sold_as - panel.thickness, Length::sixty_fourths(0, 2));
        assert_eq!(panel_of(panel.thickness), Some(panel));
        assert_eq!(panel_of(Length::sixteenths(0, 11)), None);
    }
}
