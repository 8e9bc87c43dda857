//! The three ways in: what somebody has who comes to the empty page.

/// A way in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Way {
    /// A duct on a drawing.
    Drawing,
    /// A tube that is being fitted.
    Fitting,
    /// A trouble that comes back.
    Trouble,
}

impl Way {
    /// All of them, in the order in which they are offered.
    pub const ALL: [Self; 3] = [Self::Drawing, Self::Fitting, Self::Trouble];

    /// What somebody has who takes each, after "I have".
    pub const WORDS: [&'static str; 3] = [
        "a duct on a drawing",
        "a tube I am fitting",
        "a trouble that comes back",
    ];

    /// What stands after the `#` of the address for each; the empty page begins with the first.
    pub(crate) const ADDRESSES: [&'static str; 3] = ["", "#fitting", "#trouble"];

    /// Its position among them.
    #[must_use]
    pub const fn place(self) -> usize {
        self as usize
    }
}
