//! Limits of stairs, landings, handrails, guards and thresholds.
//!
//! Sources: the residential code, sections R311 and R312; each row says in what copy it was read, if in any.

use crate::profiles::Status::{CommonPractice, Confirmed, FromMemory, LowGradeCopy};
use crate::profiles::{Count, Limit, LimitValue, OneIn};
use crate::units::Length;

const COPY: &str = "2018 text, read in a secondary copy";

limits! {
    /// A riser is no taller.
    RISER_HEIGHT: Length = Length::sixteenths(7, 12), "riser-height", "R311.7.5.1", Confirmed(COPY);
    /// The tallest riser of a flight less the shortest.
    RISER_DIFFERENCE: Length = Length::sixteenths(0, 6), "riser-difference", "R311.7.5.1", Confirmed(COPY);
    /// No sphere of this size passes an open riser high above the floor.
    OPEN_RISER: Length = Length::inches(4), "open-riser", "R311.7.5.1", Confirmed(COPY);
    /// A tread is no shorter, nosing to nosing.
    TREAD_DEPTH: Length = Length::inches(10), "tread-depth", "R311.7.5.2", Confirmed(COPY);
    /// The longest tread of a flight less the shortest.
    TREAD_DIFFERENCE: Length = Length::sixteenths(0, 6), "tread-difference", "R311.7.5.2", Confirmed(COPY);
    /// A tread shorter than this has a nosing.
    NOSING_TREAD: Length = Length::inches(11), "nosing-tread", "R311.7.5.3", Confirmed(COPY);
    /// A nosing projects no less.
    NOSING_LEAST: Length = Length::sixteenths(0, 12), "nosing-least", "R311.7.5.3", Confirmed(COPY);
    /// A nosing projects no more.
    NOSING_MOST: Length = Length::sixteenths(1, 4), "nosing-most", "R311.7.5.3", Confirmed(COPY);
    /// Clear height above the line of the nosings.
    STAIR_HEADROOM: Length = Length::inches(80), "stair-headroom", "R311.7.2", Confirmed(COPY);
    /// How far the edge of the floor opening may reach over the flight below.
    HEADROOM_INTRUSION: Length = Length::sixteenths(4, 12), "headroom-intrusion", "R311.7.2", FromMemory;
    /// Clear width above the handrails.
    STAIR_WIDTH: Length = Length::inches(36), "stair-width", "R311.7.1", Confirmed(COPY);
    /// Clear width at and below one handrail.
    STAIR_WIDTH_ONE_RAIL: Length = Length::sixteenths(31, 8), "stair-width-one-rail", "R311.7.1", Confirmed(COPY);
    /// Clear width at and below two handrails.
    STAIR_WIDTH_TWO_RAILS: Length = Length::inches(27), "stair-width-two-rails", "R311.7.1", Confirmed(COPY);
    /// A flight climbs no more without a landing.
    FLIGHT_HEIGHT: Length = Length::inches(151), "flight-height", "R311.7.3", LowGradeCopy("inferred from a secondary copy");
    /// A landing is no shorter in the direction of travel.
    LANDING_DEPTH: Length = Length::inches(36), "landing-depth", "R311.7.6", FromMemory;
    /// A flight with this many risers has a handrail.
    HANDRAIL_RISERS: Count = Count(4), "handrail-risers", "R311.7.8", FromMemory;
    /// A handrail is no lower above the nosings.
    HANDRAIL_LOWEST: Length = Length::inches(34), "handrail-lowest", "R311.7.8.1", FromMemory;
    /// A handrail is no higher above the nosings.
    HANDRAIL_HIGHEST: Length = Length::inches(38), "handrail-highest", "R311.7.8.1", FromMemory;
    /// An open edge with a greater drop has a guard.
    GUARD_DROP: Length = Length::inches(30), "guard-drop", "R312.1.1", FromMemory;
    /// The drop is measured within this distance of the edge.
    GUARD_REACH: Length = Length::inches(36), "guard-reach", "R312.1.1", FromMemory;
    /// A guard is no lower.
    GUARD_HEIGHT: Length = Length::inches(36), "guard-height", "R312.1.2", FromMemory;
    /// No sphere of this size passes a guard.
    GUARD_OPENING: Length = Length::inches(4), "guard-opening", "R312.1.3", FromMemory;
    /// The landing outside an entry door lies no lower, where the door does not swing over it.
    THRESHOLD_DROP: Length = Length::sixteenths(7, 12), "threshold-drop", "R311.3.1", Confirmed("read in a secondary copy");
    /// The landing at the entry door that must serve as the way out lies no lower otherwise.
    THRESHOLD_DROP_EGRESS: Length = Length::sixteenths(1, 8), "threshold-drop-egress", "R311.3.1", Confirmed("read in a secondary copy");
    /// An outer door's landing is no shorter in the direction of travel.
    DOOR_LANDING_DEPTH: Length = Length::inches(36), "door-landing-depth", "R311.3", LowGradeCopy("read in a copy of low grade");
    /// An outer door's landing falls no more.
    DOOR_LANDING_SLOPE: OneIn = OneIn(48), "door-landing-slope", "R311.3", LowGradeCopy("read in a copy of low grade");
    /// An outer door over no more risers needs no landing, if it does not swing over them.
    DOOR_RISERS_WITHOUT_LANDING: Count = Count(2), "door-risers-without-landing", "R311.3.2", LowGradeCopy("read in part in a secondary copy");
    /// A stair stands this near the edges of its opening.
    OPENING_SLACK: Length = Length::inches(1), "opening-slack", "-", CommonPractice;
    /// A way without a step has no edge higher.
    STEP_FREE_EDGE: Length = Length::sixteenths(0, 8), "step-free-edge", "ICC A117.1 303", FromMemory;
    /// Two risers and a tread add up to no less for a comfortable step.
    STAIR_COMFORT_LEAST: Length = Length::inches(24), "stair-comfort-least", "-", CommonPractice;
    /// Two risers and a tread add up to no more for a comfortable step.
    STAIR_COMFORT_MOST: Length = Length::inches(25), "stair-comfort-most", "-", CommonPractice;
}

#[cfg(test)]
mod tests {
    use super::*;

    /// IRC 2018 R311.7.5.1, read in a secondary copy: 7-3/4 in. passes; risers of 7.0, 7.2, 7.4 and 7.6 in. fail, for the
    /// spread of the flight counts and not the step from one to the next.
    #[test]
    fn risers_agree_with_the_published_cases() {
        assert_eq!(RISER_HEIGHT.value, Length::decimal_inches(7.75));
        assert!(Length::decimal_inches(7.6) - Length::decimal_inches(7.0) > RISER_DIFFERENCE.value);
        assert!(Length::decimal_inches(7.2) - Length::decimal_inches(7.0) <= RISER_DIFFERENCE.value);
    }

    /// IRC 2018 R311.7.5.2 and R311.7.5.3, read in a secondary copy: a tread of 10 in. passes, one of 9-7/8 fails; below
    /// 11 in. a nosing of 3/4 passes and one of 1/2 fails.
    #[test]
    fn treads_agree_with_the_published_cases() {
        assert!(Length::inches(10) >= TREAD_DEPTH.value);
        assert!(Length::decimal_inches(9.875) < TREAD_DEPTH.value);
        assert!(Length::inches(10) < NOSING_TREAD.value);
        assert!(Length::decimal_inches(0.75) >= NOSING_LEAST.value);
        assert!(Length::decimal_inches(0.5) < NOSING_LEAST.value);
    }

    /// IRC R311.3.1, read in a secondary copy: 7-3/4 in. below the threshold passes where the door does not swing over.
    #[test]
    fn threshold_agrees_with_the_published_case() {
        assert_eq!(THRESHOLD_DROP.value, Length::decimal_inches(7.75));
    }
}
