//! The day on which an analysis happens.

use crate::syntax::value::Date;

/// Today by the clock of this machine, in UTC: a waiver runs out on the same day for everyone who shares a spec.
pub fn today() -> Date {
    let today = jiff::Timestamp::now().to_zoned(jiff::tz::TimeZone::UTC).date();
    Date { year: today.year(), month: today.month().unsigned_abs(), day: today.day().unsigned_abs() }
}
