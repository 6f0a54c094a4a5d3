//! Live loads by use, and the single loads of stairs, garages and guards.
//!
//! Sources: the residential code, Table R301.5, read in a secondary copy; book rooms from memory of the commercial
//! loading standard.

use crate::profiles::Status::{CommonPractice, Confirmed, FromMemory};
use crate::profiles::{Limit, LimitValue};
use crate::units::{AreaLoad, Force, Length};

const COPY: &str = "read in a secondary copy";

limits! {
    /// Live load of rooms slept in.
    LIVE_SLEEPING: AreaLoad = AreaLoad::psf(30.0), "live-sleeping", "Table R301.5", Confirmed(COPY);
    /// Live load of other rooms.
    LIVE_LIVING: AreaLoad = AreaLoad::psf(40.0), "live-living", "Table R301.5", Confirmed(COPY);
    /// Live load of stairs.
    LIVE_STAIRS: AreaLoad = AreaLoad::psf(40.0), "live-stairs", "Table R301.5", Confirmed(COPY);
    /// Live load of attics lived in or reached by fixed stairs.
    LIVE_ATTIC_ROOM: AreaLoad = AreaLoad::psf(30.0), "live-attic-room", "Table R301.5", Confirmed(COPY);
    /// Live load of attics with limited storage.
    LIVE_ATTIC_STORAGE: AreaLoad = AreaLoad::psf(20.0), "live-attic-storage", "Table R301.5", Confirmed(COPY);
    /// Live load of attics without storage.
    LIVE_ATTIC: AreaLoad = AreaLoad::psf(10.0), "live-attic", "Table R301.5", Confirmed(COPY);
    /// Live load of decks and balconies; some states ask for more.
    LIVE_DECK: AreaLoad = AreaLoad::psf(40.0), "live-deck", "Table R301.5", Confirmed(COPY);
    /// Live load of garages.
    LIVE_GARAGE: AreaLoad = AreaLoad::psf(50.0), "live-garage", "Table R301.5", Confirmed(COPY);
    /// Live load of a room with bookshelves of full height, in a house.
    LIVE_BOOK_ROOM: AreaLoad = AreaLoad::psf(60.0), "live-book-room", "-", CommonPractice;
    /// Live load of book stacks in a public library.
    LIVE_BOOK_STACKS: AreaLoad = AreaLoad::psf(150.0), "live-book-stacks", "ASCE 7 Table 4.3-1", FromMemory;
    /// Live load of roofs.
    LIVE_ROOF: AreaLoad = AreaLoad::psf(20.0), "live-roof", "Table R301.6", FromMemory;
    /// A wind pressure that goes without a word.
    WIND_WITHOUT_A_WORD: AreaLoad = AreaLoad::psf(30.0), "wind-without-a-word", "-", CommonPractice;
    /// Snow drifts from a higher roof onto a lower one no further off.
    DRIFT_REACH: Length = Length::feet(20), "drift-reach", "ASCE 7 section 7.7.2", FromMemory;
    /// A step between roofs no higher gathers no drift worth a word.
    DRIFT_STEP: Length = Length::feet(1), "drift-step", "-", CommonPractice;
    /// A single load on 4 sq in of a tread.
    TREAD_POINT_LOAD: Force = Force::lb(300.0), "tread-point-load", "Table R301.5", Confirmed(COPY);
    /// A single load on 20 sq in of a garage floor.
    GARAGE_POINT_LOAD: Force = Force::lb(2000.0), "garage-point-load", "Table R301.5", Confirmed(COPY);
    /// A single load at any point along a guard or handrail.
    GUARD_LOAD: Force = Force::lb(200.0), "guard-load", "Table R301.5", Confirmed(COPY);
}

/// The live load of a use, by the word a floor or an area says it with; `None` for a word that no table knows.
pub fn live_load_of(use_word: &str) -> Option<Limit<AreaLoad>> {
    match use_word {
        "sleeping" => Some(LIVE_SLEEPING),
        "living" | "kitchen" | "bath" | "hall" | "office" | "workshop" | "storage" => Some(LIVE_LIVING),
        "stairs" | "stair" => Some(LIVE_STAIRS),
        "library" | "book-room" | "book room" => Some(LIVE_BOOK_ROOM),
        "attic" => Some(LIVE_ATTIC),
        "attic storage" => Some(LIVE_ATTIC_STORAGE),
        "attic-room" | "attic room" => Some(LIVE_ATTIC_ROOM),
        "deck" | "balcony" => Some(LIVE_DECK),
        "garage" => Some(LIVE_GARAGE),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// IRC Table R301.5, read in a secondary copy.
    #[test]
    fn loads_agree_with_the_published_cases() {
        assert_eq!(LIVE_SLEEPING.value, AreaLoad::psf(30.0));
        assert_eq!(LIVE_LIVING.value, AreaLoad::psf(40.0));
        assert_eq!(LIVE_ATTIC_STORAGE.value, AreaLoad::psf(20.0));
        assert_eq!(TREAD_POINT_LOAD.value, Force::lb(300.0));
        // A tread 3 ft by 10 in. takes 100 lb in all at 40 psf, as the same copy works out.
        assert!((LIVE_STAIRS.value.to_psf() * 3.0 * 10.0 / 12.0 - 100.0).abs() < 1e-9);
    }

    #[test]
    fn a_use_has_its_load() {
        assert_eq!(live_load_of("sleeping"), Some(LIVE_SLEEPING));
        assert_eq!(live_load_of("book room"), Some(LIVE_BOOK_ROOM));
        assert_eq!(live_load_of("ballroom"), None);
    }
}
