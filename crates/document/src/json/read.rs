//! JSON text to a tree of values (RFC 8259), with the place of the first sign that does not belong.

use super::node::Member;
use super::{Content, Fault, Node};

/// The deepest nest that is read; a project has a dozen levels.
const DEPTH: usize = 127;

/// What is wrong with an object that is never closed.
const WITHIN_OBJECT: &str = "the text ends within an object";

/// The value that a text holds.
pub(crate) fn tree(text: &str) -> Result<Node<'_>, Fault> {
    let mut reader = Reader {
        text,
        at: 0,
        depth: 0,
    };
    let node = reader.value()?;
    match reader.next_sign() {
        None => Ok(node),
        Some(_) => Err(reader.on_next("trailing characters")),
    }
}

struct Reader<'a> {
    text: &'a str,
    /// Bytes that are read.
    at: usize,
    depth: usize,
}

impl<'a> Reader<'a> {
    fn value(&mut self) -> Result<Node<'a>, Fault> {
        let sign = self.next_sign();
        let start = self.at;
        let content = match sign {
            None => return Err(self.on_next("the text ends within a value")),
            Some(b'n') => self.word("null", Content::Null)?,
            Some(b't') => self.word("true", Content::Boolean)?,
            Some(b'f') => self.word("false", Content::Boolean)?,
            Some(b'-' | b'0'..=b'9') => self.number()?,
            Some(b'"') => Content::Text(self.string()?),
            Some(b'[') => self.nested(Self::list)?,
            Some(b'{') => self.nested(Self::object)?,
            Some(_) => return Err(self.on_next("expected value")),
        };
        let text = self.since(start);
        Ok(Node {
            start,
            text,
            content,
        })
    }

    fn nested(
        &mut self,
        read: fn(&mut Self) -> Result<Content<'a>, Fault>,
    ) -> Result<Content<'a>, Fault> {
        if self.depth == DEPTH {
            return Err(self.on_next("recursion limit exceeded"));
        }
        self.depth += 1;
        self.at += 1;
        let content = read(self)?;
        self.depth -= 1;
        Ok(content)
    }

    fn list(&mut self) -> Result<Content<'a>, Fault> {
        let ended = "the text ends within a list";
        let entries = self.parted(b']', [ended, "expected `,` or `]`"], Self::value)?;
        Ok(Content::List(entries))
    }

    fn object(&mut self) -> Result<Content<'a>, Fault> {
        let members = self.parted(b'}', [WITHIN_OBJECT, "expected `,` or `}`"], Self::member)?;
        Ok(Content::Object(members))
    }

    /// What stands between commas up to a closing sign; of the faults the first is that the text ends, the second that another sign stands there.
    fn parted<T>(
        &mut self,
        closing: u8,
        [ended, unexpected]: [&'static str; 2],
        one: fn(&mut Self) -> Result<T, Fault>,
    ) -> Result<Vec<T>, Fault> {
        let mut all = Vec::new();
        loop {
            match (self.next_sign(), all.is_empty()) {
                (None, _) => return Err(self.on_next(ended)),
                (Some(sign), _) if sign == closing => break,
                (Some(_), true) => {}
                (Some(b','), _) => {
                    self.at += 1;
                    if self.next_sign() == Some(closing) {
                        return Err(self.on_next("trailing comma"));
                    }
                }
                _ => return Err(self.on_next(unexpected)),
            }
            all.push(one(self)?);
        }
        self.at += 1;
        Ok(all)
    }

    fn member(&mut self) -> Result<Member<'a>, Fault> {
        let name = match self.next_sign() {
            Some(b'"') => self.string()?,
            Some(_) => return Err(self.on_next("key must be a string")),
            None => return Err(self.on_next(WITHIN_OBJECT)),
        };
        let colon = match self.next_sign() {
            Some(b':') => self.at,
            Some(_) => return Err(self.on_next("expected `:`")),
            None => return Err(self.on_next(WITHIN_OBJECT)),
        };
        self.at += 1;
        let value = self.value()?;
        Ok(Member { name, colon, value })
    }

    fn word(&mut self, word: &str, content: Content<'a>) -> Result<Content<'a>, Fault> {
        for expected in word.bytes() {
            let Some(found) = self.peek() else {
                return Err(self.here("the text ends within a value"));
            };
            self.at += 1;
            if found != expected {
                return Err(self.here("expected ident"));
            }
        }
        Ok(content)
    }

    /// Passes a number: no zeros before others, digits on both sides of a point and after an exponent.
    fn number(&mut self) -> Result<Content<'a>, Fault> {
        if self.peek() == Some(b'-') {
            self.at += 1;
        }
        if self.peek() == Some(b'0') {
            self.at += 1;
            if matches!(self.peek(), Some(b'0'..=b'9')) {
                return Err(self.on_next("invalid number"));
            }
        } else {
            self.digits()?;
        }
        if self.peek() == Some(b'.') {
            self.at += 1;
            self.digits()?;
        }
        if matches!(self.peek(), Some(b'e' | b'E')) {
            self.at += 1;
            if matches!(self.peek(), Some(b'+' | b'-')) {
                self.at += 1;
            }
            self.digits()?;
        }
        Ok(Content::Number)
    }

    /// Passes one digit or more.
    fn digits(&mut self) -> Result<(), Fault> {
        let start = self.at;
        while matches!(self.peek(), Some(b'0'..=b'9')) {
            self.at += 1;
        }
        if start < self.at {
            return Ok(());
        }
        Err(self.on_next("invalid number"))
    }

    fn string(&mut self) -> Result<String, Fault> {
        self.at += 1;
        let mut string = String::new();
        let mut start = self.at;
        loop {
            let Some(sign) = self.peek() else {
                return Err(self.here("the text ends within a string"));
            };
            if !matches!(sign, b'"' | b'\\' | 0..0x20) {
                self.at += 1;
                continue;
            }
            string.push_str(self.since(start));
            self.at += 1;
            match sign {
                b'"' => return Ok(string),
                b'\\' => string.push(self.escape()?),
                _ => {
                    return Err(self
                        .here("control character (\\u0000-\\u001F) found while parsing a string"));
                }
            }
            start = self.at;
        }
    }

    /// The sign that an escape stands for; its backslash is read.
    fn escape(&mut self) -> Result<char, Fault> {
        let sign = self.next_of_string()?;
        Ok(match sign {
            b'"' | b'\\' | b'/' => char::from(sign),
            b'b' => '\u{8}',
            b'f' => '\u{c}',
            b'n' => '\n',
            b'r' => '\r',
            b't' => '\t',
            b'u' => return self.code_point(),
            _ => return Err(self.here("invalid escape")),
        })
    }

    /// The sign of one `\u` escape, or of two that name it in halves.
    fn code_point(&mut self) -> Result<char, Fault> {
        let mut code = self.four_digits()?;
        if (0xd800..0xdc00).contains(&code) {
            for expected in [b'\\', b'u'] {
                if self.next_of_string()? != expected {
                    return Err(self.here("unexpected end of hex escape"));
                }
            }
            let low = self.four_digits()?;
            if (0xdc00..0xe000).contains(&low) {
                code = 0x1_0000 + ((code - 0xd800) << 10) + (low - 0xdc00);
            }
        }
        // Half a sign is none.
        char::from_u32(code).ok_or_else(|| self.here("lone leading surrogate in hex escape"))
    }

    fn four_digits(&mut self) -> Result<u32, Fault> {
        let Some(digits) = self.text.as_bytes().get(self.at..self.at + 4) else {
            self.at = self.text.len();
            return Err(self.here("the text ends within a string"));
        };
        self.at += 4;
        let mut code = 0;
        for digit in digits {
            let Some(digit) = char::from(*digit).to_digit(16) else {
                return Err(self.here("invalid escape"));
            };
            code = code * 16 + digit;
        }
        Ok(code)
    }

    fn next_of_string(&mut self) -> Result<u8, Fault> {
        let Some(sign) = self.peek() else {
            return Err(self.here("the text ends within a string"));
        };
        self.at += 1;
        Ok(sign)
    }

    /// The next sign that is no space.
    fn next_sign(&mut self) -> Option<u8> {
        while matches!(self.peek(), Some(b' ' | b'\n' | b'\t' | b'\r')) {
            self.at += 1;
        }
        self.peek()
    }

    fn peek(&self) -> Option<u8> {
        self.text.as_bytes().get(self.at).copied()
    }

    fn since(&self, start: usize) -> &'a str {
        self.text.get(start..self.at).unwrap_or("")
    }

    /// A fault at the sign read last.
    fn here(&self, message: &str) -> Fault {
        Fault::syntax(message, self.at)
    }

    /// A fault at the sign that comes next.
    fn on_next(&self, message: &str) -> Fault {
        Fault::syntax(message, self.text.len().min(self.at + 1))
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::{any, prop_assert, prop_assert_eq, proptest};
    use proptest::sample::{Index, select};
    use serde_json::Value;

    use super::tree;
    use crate::json::{Content, Node};

    /// Every kind of value, escape and number, spread over lines.
    const ALL: &str = concat!(
        "{\"a\": [1, -2.50, 3e+4,\r\n 0.5E-1, []],\t\"\\u00e9\\ud83d\\ude00\": null,\n",
        "\"\\\"\\\\\\/\\b\\f\\n\\r\\t\": {\"\": true, \"\u{e9}\u{e9}\": false},\n\"last\": -0}\n"
    );

    /// Whether a tree holds what the library reads; numbers as written, for they are read elsewhere.
    fn is_same(node: &Node<'_>, value: &Value) -> bool {
        match (&node.content, value) {
            (Content::Null, Value::Null) => true,
            (Content::Boolean, Value::Bool(value)) => node.text == value.to_string(),
            (Content::Number, Value::Number(value)) => node.text.parse().ok() == value.as_f64(),
            (Content::Text(text), Value::String(value)) => text == value,
            (Content::List(entries), Value::Array(values)) => {
                let mut pairs = entries.iter().zip(values);
                entries.len() == values.len() && pairs.all(|(entry, value)| is_same(entry, value))
            }
            (Content::Object(members), Value::Object(values)) => {
                members.len() == values.len()
                    && members.iter().all(|member| {
                        let value = values.get(&member.name);
                        value.is_some_and(|value| is_same(&member.value, value))
                    })
            }
            _ => false,
        }
    }

    /// The library's own reading is the reference.
    #[test]
    fn every_kind_of_value_is_read() {
        let node = tree(ALL).map_err(|fault| fault.told(ALL).sentence());
        let value = serde_json::from_str(ALL).expect("it is JSON");
        assert!(
            node.is_ok_and(|node| is_same(&node, &value)),
            "as the library reads it"
        );
    }

    #[track_caller]
    fn check(text: &str, sentence: &str, place: (usize, usize)) {
        let Err(fault) = tree(text) else {
            panic!("`{text}` is no JSON");
        };
        let error = fault.told(text);
        assert_eq!(
            error.sentence(),
            format!("not JSON: {sentence}"),
            "{text:?}"
        );
        assert_eq!(error.line_column(), Some(place), "{text:?}");
    }

    #[test]
    fn what_is_wrong_is_said_with_its_place() {
        check("", "the text ends within a value", (1, 0));
        check("[\n1,\n", "the text ends within a value", (3, 0));
        check("[1", "the text ends within a list", (1, 2));
        check("{\"a\": 1", "the text ends within an object", (1, 7));
        check("\"a", "the text ends within a string", (1, 2));
        check("[1,]", "trailing comma", (1, 4));
        check("{\"a\": 1,}", "trailing comma", (1, 9));
        check("{a: 1}", "key must be a string", (1, 2));
        check("{\"a\" 1}", "expected `:`", (1, 6));
        check("{\"a\": 1\n\"b\": 2}", "expected `,` or `}`", (2, 1));
        check("[1\n 2]", "expected `,` or `]`", (2, 2));
        check("1 2", "trailing characters", (1, 3));
        check("01", "invalid number", (1, 2));
        check("nil", "expected ident", (1, 2));
        check("\"\\q\"", "invalid escape", (1, 3));
        check(
            "\"\\udc00\"",
            "lone leading surrogate in hex escape",
            (1, 7),
        );
        check("\"\\ud800x\"", "unexpected end of hex escape", (1, 8));
        check(&"[".repeat(200), "recursion limit exceeded", (1, 128));
    }

    proptest! {
        #[test]
        fn a_sign_more_or_less_is_judged_as_by_the_library(
            at in any::<Index>(),
            kept in any::<bool>(),
            sign in select("\"{}[],:\\ \u{1}\u{e9}udDn0129.-+eE".chars().collect::<Vec<_>>()),
        ) {
            let mut signs: Vec<char> = ALL.chars().collect();
            let at = at.index(signs.len());
            let mut put = vec![sign];
            if kept {
                put.push(signs[at]);
            }
            signs.splice(at..=at, put);
            let text: String = signs.into_iter().collect();
            match (tree(&text), serde_json::from_str::<Value>(&text)) {
                (Ok(node), Ok(value)) => prop_assert!(is_same(&node, &value), "{}", text),
                (Err(fault), Err(error)) => {
                    let place = Some((error.line(), error.column()));
                    prop_assert_eq!(fault.told(&text).line_column(), place, "{}: {}", text, error);
                }
                (ours, theirs) => prop_assert!(false, "{text}: {} but {theirs:?}", ours.is_ok()),
            }
        }
    }
}
