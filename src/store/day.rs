//! Which evening it is.

use chrono::{Local, NaiveDate, NaiveDateTime, TimeDelta};

/// How long after midnight a day begins: an evening does not end at midnight, and few last until 5 in the morning (common
/// practice).
const AFTER_MIDNIGHT: TimeDelta = TimeDelta::hours(5);

/// The day on which this evening began.
pub(super) fn tonight() -> NaiveDate {
    evening_of(Local::now().naive_local())
}

/// The day that a moment by the clock on the wall belongs to.
fn evening_of(moment: NaiveDateTime) -> NaiveDate {
    let begun = moment.checked_sub_signed(AFTER_MIDNIGHT);
    begun.unwrap_or(moment).date()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_evening_does_not_end_at_midnight() {
        let day = |day| NaiveDate::from_ymd_opt(2026, 1, day).unwrap();
        let evening = |on, hour, minute| {
            let moment = day(on).and_hms_opt(hour, minute, 0);
            evening_of(moment.unwrap())
        };
        assert_eq!(evening(1, 23, 59), day(1));
        assert_eq!(evening(2, 0, 0), day(1));
        assert_eq!(evening(2, 4, 59), day(1));
        assert_eq!(evening(2, 5, 0), day(2));
        assert_eq!(evening(2, 12, 0), day(2));
        let new_year = day(1).and_hms_opt(1, 0, 0).unwrap();
        assert_eq!(evening_of(new_year).to_string(), "2025-12-31");
    }
}
