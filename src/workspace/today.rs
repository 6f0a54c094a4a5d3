//! The day on which an analysis happens.

use jiff::Timestamp;
use jiff::tz::TimeZone;

use crate::syntax::value::Date;

/// Today by the clock of this machine, in UTC: a waiver runs out on the same day for everyone who shares a spec.
pub fn today() -> Date {
    in_utc(Timestamp::now())
}

/// The day in UTC that lies so many seconds behind the start of 1970, written in digits; `None` when this is no such
/// number, or none that a calendar reaches.
pub fn day_of_seconds(written: &str) -> Option<Date> {
    Timestamp::from_second(written.parse().ok()?).ok().map(in_utc)
}

/// The day that is written as `2027-06-01`; `None` when it is written otherwise, or the calendar has no such day.
pub fn day_written(written: &str) -> Option<Date> {
    let date = jiff::civil::Date::strptime("%Y-%m-%d", written).ok().map(as_ours)?;
    // The only writing of a day that the format has.
    (date.to_string() == written).then_some(date)
}

fn in_utc(at: Timestamp) -> Date {
    as_ours(at.to_zoned(TimeZone::UTC).date())
}

fn as_ours(date: jiff::civil::Date) -> Date {
    Date { year: date.year(), month: date.month().unsigned_abs(), day: date.day().unsigned_abs() }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 30 years with 7 leap days, and 59 days of 2000: 11,016 days of 86,400 s are over when its leap day begins.
    #[test]
    fn seconds_are_counted_from_1970_in_utc() {
        let day = |written: &str| day_of_seconds(written).map(|day| day.to_string());
        assert_eq!(day("0").as_deref(), Some("1970-01-01"));
        assert_eq!(day("951782400").as_deref(), Some("2000-02-29"));
        assert_eq!(day("951782399").as_deref(), Some("2000-02-28"));
        for written in ["", " 1", "1.5", "0x10", "today", "99999999999999", "99999999999999999999"] {
            assert_eq!(day(written), None, "{written:?}");
        }
    }

    #[test]
    fn a_day_is_written_in_one_way() {
        assert_eq!(day_written("2028-02-29"), Some(Date { year: 2028, month: 2, day: 29 }));
        for written in
            ["", "2027-02-29", "2027-6-1", "27-06-01", "2027-06-01 ", "2027-06-01T00:00", "06/01/2027"]
        {
            assert_eq!(day_written(written), None, "{written:?}");
        }
    }
}
