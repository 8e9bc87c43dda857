//! Values to JSON text: with two spaces a level, one field or entry a line, or as short as it can be.

use dewrun_quantity::decimal::shortest;

use super::{Content, Node};

/// What can be written as JSON.
pub(crate) trait ToJson {
    /// Writes it.
    fn to_json(&self, out: &mut Writer);

    /// Whether its field is left out.
    fn is_left_out(&self) -> bool {
        false
    }

    /// Whether a list of it is left out where there is none.
    fn left_out_where_none() -> bool
    where
        Self: Sized,
    {
        false
    }
}

/// A name and what stands there.
pub(crate) type Field<'a> = (&'a str, &'a dyn ToJson);

/// Fields that are an object of their own.
pub(crate) struct Part<'a>(pub(crate) &'a [Field<'a>]);

/// The text of a value, with a line's end.
pub(crate) fn written(value: &dyn ToJson) -> String {
    let mut text = laid_out(value, false);
    text.push('\n');
    text
}

/// The text of a value without a space or a line's end between its signs.
pub(crate) fn written_short(value: &dyn ToJson) -> String {
    laid_out(value, true)
}

fn laid_out(value: &dyn ToJson, is_short: bool) -> String {
    let mut out = Writer {
        text: String::new(),
        depth: 0,
        is_short,
    };
    value.to_json(&mut out);
    out.text
}

/// JSON text as it grows.
pub(crate) struct Writer {
    text: String,
    depth: usize,
    /// Nothing stands between the signs.
    is_short: bool,
}

impl Writer {
    /// An object with those of the fields that are not left out.
    pub(crate) fn record(&mut self, fields: &[Field<'_>]) {
        let mut is_empty = true;
        self.open('{');
        for (name, value) in fields.iter().filter(|(_, value)| !value.is_left_out()) {
            self.begin(is_empty);
            is_empty = false;
            self.text(name);
            self.text.push_str(if self.is_short { ":" } else { ": " });
            value.to_json(self);
        }
        self.close('}', is_empty);
    }

    /// A list of its entries.
    fn list<T: ToJson>(&mut self, entries: &[T]) {
        self.open('[');
        for (at, entry) in entries.iter().enumerate() {
            self.begin(at == 0);
            entry.to_json(self);
        }
        self.close(']', entries.is_empty());
    }

    /// A text between quotes.
    pub(crate) fn text(&mut self, text: &str) {
        self.text.push('"');
        for sign in text.chars() {
            let escaped = match sign {
                '"' => "\\\"",
                '\\' => "\\\\",
                '\u{8}' => "\\b",
                '\u{c}' => "\\f",
                '\n' => "\\n",
                '\r' => "\\r",
                '\t' => "\\t",
                '\0'..' ' => {
                    self.text.push_str(&format!("\\u{:04x}", u32::from(sign)));
                    continue;
                }
                _ => {
                    self.text.push(sign);
                    continue;
                }
            };
            self.text.push_str(escaped);
        }
        self.text.push('"');
    }

    /// A number; what is not finite is null, as JSON has no other word for it.
    pub(crate) fn number(&mut self, number: f64) {
        let text = shortest(number);
        self.text
            .push_str(if text.is_empty() { "null" } else { &text });
    }

    /// A whole number.
    pub(crate) fn whole(&mut self, number: u64) {
        self.text.push_str(&number.to_string());
    }

    fn open(&mut self, bracket: char) {
        self.text.push(bracket);
        self.depth += 1;
    }

    fn begin(&mut self, is_first: bool) {
        if !is_first {
            self.text.push(',');
        }
        self.new_line();
    }

    fn close(&mut self, bracket: char, is_empty: bool) {
        self.depth -= 1;
        if !is_empty {
            self.new_line();
        }
        self.text.push(bracket);
    }

    fn new_line(&mut self) {
        if self.is_short {
            return;
        }
        self.text.push('\n');
        for _ in 0..self.depth {
            self.text.push_str("  ");
        }
    }
}

/// As it was read, laid out anew.
impl ToJson for Node<'_> {
    fn to_json(&self, out: &mut Writer) {
        match &self.content {
            Content::Text(text) => out.text(text),
            Content::List(entries) => out.list(entries),
            Content::Object(members) => {
                let fields = members.iter();
                let fields: Vec<Field<'_>> = fields
                    .map(|member| (member.name.as_str(), &member.value as &dyn ToJson))
                    .collect();
                out.record(&fields);
            }
            _ => out.text.push_str(self.text),
        }
    }
}

impl ToJson for bool {
    fn to_json(&self, out: &mut Writer) {
        out.text.push_str(if *self { "true" } else { "false" });
    }

    fn is_left_out(&self) -> bool {
        !*self
    }
}

impl ToJson for f64 {
    fn to_json(&self, out: &mut Writer) {
        out.number(*self);
    }
}

impl ToJson for u64 {
    fn to_json(&self, out: &mut Writer) {
        out.whole(*self);
    }
}

impl ToJson for &str {
    fn to_json(&self, out: &mut Writer) {
        out.text(self);
    }
}

impl ToJson for String {
    fn to_json(&self, out: &mut Writer) {
        out.text(self);
    }
}

impl ToJson for Part<'_> {
    fn to_json(&self, out: &mut Writer) {
        out.record(self.0);
    }
}

impl<T: ToJson> ToJson for Vec<T> {
    fn to_json(&self, out: &mut Writer) {
        out.list(self);
    }

    fn is_left_out(&self) -> bool {
        self.is_empty() && T::left_out_where_none()
    }
}

impl<T: ToJson> ToJson for Option<T> {
    fn to_json(&self, out: &mut Writer) {
        if let Some(value) = self {
            value.to_json(out);
        }
    }

    fn is_left_out(&self) -> bool {
        self.is_none()
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::{any, prop_assert_eq, proptest};
    use serde_json::Value;

    use super::{Part, ToJson, written};

    /// Expected form: RFC 8259, with the library's two spaces a level.
    #[test]
    fn values_are_laid_out_in_lines() {
        let (numbers, nothing, left_out) = (vec![1.0, -0.5e-9], Vec::<f64>::new(), None::<f64>);
        let inner: &[(&str, &dyn ToJson)] = &[("word", &"a\"b"), ("left_out", &left_out)];
        let text = written(&Part(&[
            ("numbers", &numbers),
            ("nothing", &nothing),
            ("part", &Part(inner)),
            ("whole", &7_u64),
        ]));
        let value: Value = serde_json::from_str(&text).expect("it is JSON");
        let expected = "{\n  \"numbers\": [\n    1.0,\n    -5e-10\n  ],\n  \"nothing\": [],\n  \"part\": {\n    \"word\": \"a\\\"b\"\n  },\n  \"whole\": 7\n}\n";
        assert_eq!(text, expected, "field by field");
        assert_eq!(
            value["numbers"][1].as_f64(),
            Some(-5e-10),
            "and is read back"
        );
    }

    proptest! {
        #[test]
        fn any_text_is_escaped_as_by_the_library(text in any::<String>(), controls in "[\\x00-\\x7f]{0,8}") {
            let text = text + &controls;
            let expected = serde_json::to_string(&text).unwrap_or_default();
            prop_assert_eq!(written(&text), format!("{expected}\n"));
        }

        #[test]
        fn any_number_is_written_as_by_the_library(bits in any::<u64>()) {
            let number = f64::from_bits(bits);
            let back: Option<f64> = serde_json::from_str(&written(&number)).ok();
            prop_assert_eq!(back.map(f64::to_bits), number.is_finite().then_some(bits));
        }
    }
}
