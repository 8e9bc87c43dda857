//! A document of its own around a sheet: everything it needs stands in it, and nothing runs in it.

use dewrun_drawing::escaped;

use crate::paper::Paper;

/// How sheets look, on paper and on the screen.
const SHEET_CSS: &str = include_str!("sheet.css");
/// How the calculation sheet looks.
const CALCULATION_CSS: &str = include_str!("calculation.css");
/// How the hours of a year look.
const YEAR_CSS: &str = include_str!("../../almanac/src/calendar.css");
/// How standing water looks.
const WATER_CSS: &str = include_str!("../../workshop/src/drawing.css");
/// How drawings look, the page's own style.
const DRAWING_CSS: &str = include_str!("../../../www/styles/drawing.css");

/// The typeface as data, by weight; none where a program goes without.
#[cfg(feature = "typeface")]
fn typeface() -> String {
    use base64::Engine;
    use base64::engine::general_purpose::STANDARD;
    const WEIGHTS: [(u16, &[u8]); 2] = [
        (400, include_bytes!("../../../www/fonts/b612-regular.woff2")),
        (700, include_bytes!("../../../www/fonts/b612-bold.woff2")),
    ];
    let face = |(weight, font): (u16, &[u8])| {
        format!(
            "@font-face {{ font-family: B612; font-weight: {weight}; src: url(data:font/woff2;base64,{}) format(\"woff2\") }}\n",
            STANDARD.encode(font)
        )
    };
    WEIGHTS.into_iter().map(face).collect()
}

#[cfg(not(feature = "typeface"))]
const fn typeface() -> String {
    String::new()
}

/// How lines and tints of a drawing by itself look: those of paper, the text as the page sets it.
const ALONE: &str = ":root,svg{--paper:#fff;--sheet:#fff;--raise:#fff;--ink:#000;--ink-2:#2b2b2b;--ink-3:#4a4a4a;--edge:#6b6b6b;--rule:#b5b5b5;--hatch:#8a8a8a;--water:#03426b;--water-2:#d4e4f0;--frost:#ac4fb2;--mist:#9b4c04;--sweat:#0f846c;--fault:#8e1a12;--fault-2:#fff;--mark:#fff;--mark-2:#fff;--on-mark:#000;--m1:#e3eef6;--m2:#b4d1e7;--m3:#73a9d0;--m4:#2f74ac;--m5:#0a355f;--l-cut:2.4px;--l-seen:1.5px;--l-measure:.9px;--l-carry:.8px;--l-grid:1px;--type:B612,\"DejaVu Sans\",Verdana,sans-serif;background:#fff;font-size:14.11px}";

/// One of the drawings in mark-up, counted from 0, as a document of its own, which needs nothing besides; none where there are no so many.
#[must_use]
pub fn drawing_alone(markup: &str, number: usize) -> Option<String> {
    const OPEN: &str = "<svg ";
    const CLOSE: &str = "</svg>";
    let (drawing, _) = markup.split(OPEN).nth(number + 1)?.split_once(CLOSE)?;
    let (attributes, content) = drawing.split_once('>')?;
    let typeface = typeface();
    Some(format!(
        "{OPEN}{attributes}><style>{typeface}{ALONE}\n{DRAWING_CSS}\n{WATER_CSS}\n{YEAR_CSS}</style>{content}{CLOSE}\n"
    ))
}

/// A document around the sheets of a body.
pub(crate) fn standalone(title: &str, body: &str, paper: Paper) -> String {
    let title = escaped(title);
    let size = match paper {
        Paper::A4 => "A4",
        Paper::Letter => "letter",
    };
    let typeface = typeface();
    format!(
        "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width\">\n<title>{title}</title>\n<style>\n{typeface}@page {{ size: {size}; margin: 0 }}\nhtml {{ font-size: 14.11px }}\nbody {{ margin: 0 }}\n{DRAWING_CSS}\n{WATER_CSS}\n{YEAR_CSS}\n{SHEET_CSS}\n{CALCULATION_CSS}</style>\n</head>\n<body>\n{body}\n</body>\n</html>\n"
    )
}
