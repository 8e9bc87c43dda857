//! Forms of files: each turns lines into raw rows.

pub(crate) mod epw;
pub(crate) mod table;
pub(crate) mod tm2;

use crate::error::WeatherError;
use crate::raw::RawTable;

/// Takes the lines of one form of file.
pub(crate) trait FormReader {
    /// Takes a line without its end.
    fn line(&mut self, line: &[u8], number: u64) -> Result<(), WeatherError>;

    /// Everything that was read.
    fn finish(self: Box<Self>) -> Result<RawTable, WeatherError>;
}
