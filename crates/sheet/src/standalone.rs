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
