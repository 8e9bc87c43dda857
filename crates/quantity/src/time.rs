//! A span of time.

use crate::macros::quantity;

quantity! {
    /// A span of time, kept in seconds.
    ///
    /// ```
    /// use dewrun_quantity::Time;
    /// assert_eq!(Time::days(90.0).to_hours(), 2160.0);
    /// ```
    Time {
        seconds / to_seconds: 1.0,
        minutes / to_minutes: 60.0,
        hours / to_hours: 3600.0,
        days / to_days: 86_400.0,
    }
}
