//! Limits of levels: ceiling heights, how closely numbers must agree, and what drying does to them.
//!
//! Sources: the residential code, section R305, for heights; the rest is common practice.

use crate::profiles::Status::{CommonPractice, FromMemory, LowGradeCopy};
use crate::profiles::{Factor, Lengths, Limit, LimitValue, Percent};
use crate::units::Length;

const LOW: &str = "read in a copy of low grade";

limits! {
    /// Clear height of rooms lived in and of halls.
    CEILING_HEIGHT: Length = Length::inches(84), "ceiling-height", "R305.1", LowGradeCopy(LOW);
    /// Clear height of bath, toilet and laundry rooms.
    CEILING_HEIGHT_BATH: Length = Length::inches(80), "ceiling-height-bath", "R305.1", LowGradeCopy(LOW);
    /// Clear height of a basement that is not lived in.
    CEILING_HEIGHT_BASEMENT: Length = Length::inches(80), "ceiling-height-basement", "R305.1.1", FromMemory;
    /// Clear height under beams and ducts in a basement.
    BEAM_CLEARANCE: Length = Length::inches(76), "beam-clearance", "R305.1", LowGradeCopy(LOW);
    /// A stated number and the derived one agree when they differ by less.
    CLOSURE_TOLERANCE: Length = Length::sixteenths(0, 1), "closure-tolerance", "-", CommonPractice;
    /// A measured number and the drawn one agree when they differ by no more.
    FIELD_TOLERANCE: Length = Length::sixteenths(0, 4), "field-tolerance", "-", CommonPractice;
    /// A stated cut of a wood post agrees when it differs by no more.
    POST_CUT_TOLERANCE: Length = Length::sixteenths(0, 2), "post-cut-tolerance", "-", CommonPractice;
    /// Two surfaces meant to be flush differ by no more.
    FLUSH_TOLERANCE: Length = Length::sixteenths(0, 2), "flush-tolerance", "-", CommonPractice;
    /// No elevation in concrete or wood is stated finer.
    FINEST_FRACTION: Length = Length::sixteenths(0, 1), "finest-fraction", "-", CommonPractice;
    /// Heights of the forms on hand.
    FORM_HEIGHTS: Lengths = FORMS, "form-heights", "-", CommonPractice;
    /// A wall this near a form's height, but not at it, was likely meant for the form.
    FORM_NEARNESS: Length = Length::inches(1), "form-nearness", "-", CommonPractice;
    /// How far a poured wall top may be off.
    WALL_TOP_TOLERANCE: Length = Length::sixteenths(0, 4), "wall-top-tolerance", "-", CommonPractice;
    /// How far a pad's top may be off.
    PAD_TOP_TOLERANCE: Length = Length::sixteenths(0, 8), "pad-top-tolerance", "-", CommonPractice;
    /// How far a sill with its gasket may be off.
    SILL_TOLERANCE: Length = Length::sixteenths(0, 1), "sill-tolerance", "-", CommonPractice;
    /// How far a ledger may be off its line.
    LEDGER_TOLERANCE: Length = Length::sixteenths(0, 1), "ledger-tolerance", "-", CommonPractice;
    /// How far the depth of a sawn joist may be off.
    SAWN_DEPTH_TOLERANCE: Length = Length::sixteenths(0, 1), "sawn-depth-tolerance", "-", CommonPractice;
    /// How far the depth of an engineered joist may be off.
    ENGINEERED_DEPTH_TOLERANCE: Length = Length::sixty_fourths(0, 2), "engineered-depth-tolerance", "-", CommonPractice;
    /// How far the depth of a rolled beam may be off.
    ROLLED_DEPTH_TOLERANCE: Length = Length::sixteenths(0, 2), "rolled-depth-tolerance", "-", CommonPractice;
    /// How far a deck's thickness may be off.
    DECK_TOLERANCE: Length = Length::sixty_fourths(0, 2), "deck-tolerance", "-", CommonPractice;
    /// How far a finish's build-up may be off.
    FINISH_TOLERANCE: Length = Length::sixteenths(0, 2), "finish-tolerance", "-", CommonPractice;
    /// How far the cut of a steel column may be off.
    COLUMN_CUT_TOLERANCE: Length = Length::sixteenths(0, 1), "column-cut-tolerance", "-", CommonPractice;
    /// Shrinkage across the grain, a share of the depth for each percent of moisture lost.
    SHRINKAGE: Factor = Factor(0.0025), "shrinkage", "-", CommonPractice;
    /// Moisture of sawn wood when it is set.
    MOISTURE_AT_INSTALL: Percent = Percent(19.0), "moisture-at-install", "-", CommonPractice;
    /// Moisture of wood in a heated house.
    MOISTURE_IN_SERVICE: Percent = Percent(9.0), "moisture-in-service", "-", CommonPractice;
    /// Two floors that meet dry apart by no more without a word.
    DRYING_APART: Length = Length::sixteenths(0, 2), "drying-apart", "-", CommonPractice;
    /// Two floors that meet at steps dry apart by no more.
    DRYING_APART_AT_STEPS: Length = Length::sixteenths(0, 6), "drying-apart-at-steps", "-", CommonPractice;
    /// The gap above flush steel is rounded up to a multiple of this.
    FLUSH_GAP_STEP: Length = Length::sixteenths(0, 2), "flush-gap-step", "-", CommonPractice;
}

const FORMS: Lengths =
    &[Length::feet(4), Length::feet(5), Length::feet(8), Length::feet(9), Length::feet(10)];

#[cfg(test)]
mod tests {
    use super::*;

    /// IRC R305.1, read in a copy of low grade: 84 in. passes, 83 fails.
    #[test]
    fn ceilings_agree_with_the_published_case() {
        assert!(Length::inches(84) >= CEILING_HEIGHT.value);
        assert!(Length::inches(83) < CEILING_HEIGHT.value);
    }
}
