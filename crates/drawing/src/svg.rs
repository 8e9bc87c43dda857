//! A scene as SVG text: classes instead of styles, a title and a description for those who can't see it.

use crate::path::push_number;
use crate::pattern::Hatch;
use crate::scene::{Item, Scene};
use crate::text::{Anchor, Text};

/// How the element of a path ends, behind its data.
const END: &str = "\"/>";

/// The scene as one `svg` element.
///
/// Lengths are CSS pixels; the element asks for its own size and shrinks with the room it is given.
#[must_use]
pub fn svg(scene: &Scene) -> String {
    let mut out = String::with_capacity(64 * scene.items.len() + 1024);
    let prefix = scene.prefix;
    out.push_str("<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"dw-drawing\" role=\"img\"");
    out.push_str(&format!(
        " aria-labelledby=\"{prefix}-title\" aria-describedby=\"{prefix}-description\""
    ));
    number(&mut out, "width", scene.width);
    number(&mut out, "height", scene.height);
    out.push_str(" viewBox=\"0 0 ");
    push_number(&mut out, scene.width);
    out.push(' ');
    push_number(&mut out, scene.height);
    out.push_str("\">");
    named(&mut out, "title", prefix, &scene.title);
    named(&mut out, "desc", prefix, &scene.description);
    patterns(&mut out, scene);
    elements(&mut out, scene);
    out.push_str("</svg>");
    out
}

/// The scene as an `svg` element that lies over another and says nothing of its own.
pub(crate) fn overlay(scene: &Scene) -> String {
    let mut out =
        "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"dw-drawing\" aria-hidden=\"true\""
            .to_owned();
    number(&mut out, "width", scene.width);
    number(&mut out, "height", scene.height);
    out.push('>');
    elements(&mut out, scene);
    out.push_str("</svg>");
    out
}

/// A text with the characters that mark-up uses written as references.
#[must_use]
pub fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            _ => out.push(c),
        }
    }
    out
}

fn named(out: &mut String, element: &str, prefix: &str, text: &str) {
    let id = if element == "desc" {
        "description"
    } else {
        element
    };
    out.push_str(&format!("<{element} id=\"{prefix}-{id}\">"));
    out.push_str(&escaped(text));
    out.push_str(&format!("</{element}>"));
}

fn patterns(out: &mut String, scene: &Scene) {
    let is_used = |hatch: &Hatch| {
        let mut items = scene.items.iter();
        items.any(|item| matches!(item, Item::Hatched { hatch: used, .. } if used == hatch))
    };
    let used: Vec<Hatch> = Hatch::ALL.into_iter().filter(is_used).collect();
    if used.is_empty() {
        return;
    }
    out.push_str("<defs>");
    for hatch in used {
        out.push_str(&hatch.element(scene.prefix));
    }
    out.push_str("</defs>");
}

/// All that is drawn; lines of one kind that follow each other are one element, which a browser reads and paints sooner.
fn elements(out: &mut String, scene: &Scene) {
    let mut before = None;
    for item in &scene.items {
        let line = item.line();
        match line {
            Some((class, path)) if before == Some(class) => {
                out.truncate(out.len() - END.len());
                out.push_str(path);
                out.push_str(END);
            }
            _ => element(out, scene.prefix, item),
        }
        before = line.map(|(class, _)| class);
    }
}

fn element(out: &mut String, prefix: &str, item: &Item) {
    match item {
        Item::Path { class, path } => {
            out.push_str(&format!(
                "<path class=\"{class}\" d=\"{}{END}",
                path.as_str()
            ));
        }
        Item::Hatched { hatch, path } => {
            let name = hatch.name();
            out.push_str(&format!(
                "<path class=\"dw-a-{name}\" fill=\"url(#{prefix}-{name})\" d=\"{}\"/>",
                path.as_str()
            ));
        }
        Item::Circle {
            class,
            centre,
            radius,
        } => {
            out.push_str(&format!("<circle class=\"{class}\""));
            number(out, "cx", centre.x);
            number(out, "cy", centre.y);
            number(out, "r", *radius);
            out.push_str("/>");
        }
        Item::Text(text) => line(out, text),
    }
}

fn line(out: &mut String, text: &Text) {
    out.push_str(&format!("<text class=\"{}\"", text.classes()));
    number(out, "x", text.at.x);
    number(out, "y", text.at.y);
    match text.anchor {
        Anchor::Start => {}
        Anchor::Middle => out.push_str(" text-anchor=\"middle\""),
        Anchor::End => out.push_str(" text-anchor=\"end\""),
    }
    if text.upright {
        out.push_str(" transform=\"rotate(-90 ");
        push_number(out, text.at.x);
        out.push(' ');
        push_number(out, text.at.y);
        out.push_str(")\"");
    }
    out.push('>');
    out.push_str(&escaped(&text.words));
    out.push_str("</text>");
}

fn number(out: &mut String, name: &str, value: f64) {
    out.push(' ');
    out.push_str(name);
    out.push_str("=\"");
    push_number(out, value);
    out.push('"');
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::Point;

    #[test]
    fn names_that_hold_mark_up_stay_text() {
        let mut scene = Scene {
            prefix: "t",
            width: 10.0,
            height: 10.0,
            title: "A & B".into(),
            description: String::new(),
            items: Vec::new(),
        };
        scene.text(Text::new(Point::default(), "<script>\"&"));
        let text = svg(&scene);
        assert!(
            text.contains("&lt;script&gt;&quot;&amp;"),
            "escaped in the label: {text}"
        );
        assert!(text.contains("A &amp; B"), "escaped in the title: {text}");
        assert!(
            !text.contains("<script"),
            "no element comes of a name: {text}"
        );
    }

    #[test]
    fn nothing_is_styled_in_the_text() {
        let mut scene = Scene {
            prefix: "t",
            width: 10.0,
            height: 10.0,
            title: String::new(),
            description: String::new(),
            items: Vec::new(),
        };
        scene.hatched(Hatch::Water, crate::Path::area([Point::default()]));
        assert!(
            !svg(&scene).contains("style"),
            "the content policy refuses styles"
        );
    }
}
