//! Whole numbers of any length.

/// A whole number of any length, in words of 32 bits, the lowest first; the highest is never zero.
#[derive(Default)]
pub(super) struct Whole(Vec<u32>);

impl Whole {
    pub(super) fn of(number: u64) -> Self {
        let mut whole = Self(vec![low_word(number), low_word(number >> 32)]);
        whole.trim();
        whole
    }

    pub(super) fn is_zero(&self) -> bool {
        self.0.is_empty()
    }

    pub(super) fn multiply_add(&mut self, factor: u32, summand: u32) {
        let mut carry = u64::from(summand);
        for word in &mut self.0 {
            let sum = u64::from(*word) * u64::from(factor) + carry;
            *word = low_word(sum);
            carry = sum >> 32;
        }
        if carry != 0 {
            self.0.push(low_word(carry));
        }
    }

    /// Multiplies by a power of a small number.
    pub(super) fn multiply_power(&mut self, factor: u32, power: u64) {
        for _ in 0..power {
            self.multiply_add(factor, 0);
        }
    }

    /// Divides and gives the remainder.
    pub(super) fn divide(&mut self, divisor: u32) -> u32 {
        let mut rest = 0_u64;
        for word in self.0.iter_mut().rev() {
            let part = (rest << 32) | u64::from(*word);
            *word = low_word(part / u64::from(divisor));
            rest = part % u64::from(divisor);
        }
        self.trim();
        low_word(rest)
    }

    /// Multiplies by 2^32 so many times.
    pub(super) fn shift_words(&mut self, words: usize) {
        self.0.splice(0..0, core::iter::repeat_n(0, words));
    }

    /// How many bits it has.
    pub(super) fn bits(&self) -> i64 {
        let words = i64::try_from(self.0.len()).unwrap_or(0);
        let unused = self.0.last().map_or(32, |word| word.leading_zeros());
        words * 32 - i64::from(unused)
    }

    pub(super) fn bit(&self, place: i64) -> bool {
        let Ok(place) = usize::try_from(place) else {
            return false;
        };
        let word = self.0.get(place / 32).copied().unwrap_or(0);
        (word >> (place % 32)) & 1 == 1
    }

    /// All bits from a place on; as far as 64 of them go, zeros below the lowest.
    pub(super) fn bits_from(&self, place: i64) -> u64 {
        let mut bits = 0;
        for above in (0..64).rev() {
            bits = (bits << 1) | u64::from(self.bit(place + above));
        }
        bits
    }

    pub(super) fn any_below(&self, place: i64) -> bool {
        (0..place).any(|place| self.bit(place))
    }

    fn trim(&mut self) {
        while self.0.last() == Some(&0) {
            self.0.pop();
        }
    }
}

/// The lower half of a double word.
pub(super) fn low_word(number: u64) -> u32 {
    let [a, b, c, d, ..] = number.to_le_bytes();
    u32::from_le_bytes([a, b, c, d])
}
