//! Why a list of the library cannot be read.

use dewrun_quantity::format::entered;
use thiserror::Error;

/// Why a list of the library cannot be read; the line counts from 1, the head included.
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum LibraryError {
    /// The file has no first line: write the head with the names of the columns.
    #[error("{file} is empty, must begin with the names of its columns")]
    NoHead {
        /// The file.
        file: &'static str,
    },
    /// A quote stands inside a cell, or is not closed on its line: quote whole cells only.
    #[error("{file}, line {line}: a quote must open and close one whole cell")]
    Quote {
        /// The file.
        file: &'static str,
        /// The line.
        line: usize,
    },
    /// A line has more or fewer cells than the head: write one for each column.
    #[error("{file}, line {line}: {found} cells, must be {columns} as in the head")]
    CellCount {
        /// The file.
        file: &'static str,
        /// The line.
        line: usize,
        /// How many cells it has.
        found: usize,
        /// How many columns the head names.
        columns: usize,
    },
    /// The head does not name a column that the list needs: add it.
    #[error("{file} has no column `{column}`")]
    NoColumn {
        /// The file.
        file: &'static str,
        /// The column.
        column: String,
    },
    /// A cell that must hold something is empty: fill it.
    #[error("{file}, line {line}: `{column}` is empty")]
    Empty {
        /// The file.
        file: &'static str,
        /// The line.
        line: usize,
        /// The column.
        column: String,
    },
    /// A cell is not a number: write one with a decimal point.
    #[error("{file}, line {line}: `{column}` is `{found}`, must be a number such as 0.19")]
    NotANumber {
        /// The file.
        file: &'static str,
        /// The line.
        line: usize,
        /// The column.
        column: String,
        /// What stands there.
        found: &'static str,
    },
    /// Low, usual and high do not rise: put them in order.
    #[error("{file}, line {line}: `{quantity}` goes from {} by {} to {}, must not fall", entered(*.low), entered(*.usual), entered(*.high))]
    Order {
        /// The file.
        file: &'static str,
        /// The line.
        line: usize,
        /// The quantity.
        quantity: &'static str,
        /// Its lowest value.
        low: f64,
        /// Its usual value.
        usual: f64,
        /// Its highest value.
        high: f64,
    },
    /// A word is not one that the column knows: write one that is.
    #[error("{file}, line {line}: `{column}` is `{found}`, must be {known}")]
    Unknown {
        /// The file.
        file: &'static str,
        /// The line.
        line: usize,
        /// The column.
        column: String,
        /// What stands there.
        found: &'static str,
        /// What would be right.
        known: String,
    },
}
