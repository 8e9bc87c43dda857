//! Elements as text; what people wrote is escaped where it comes in.

use dewrun_drawing::escaped;

/// An element of a class around mark-up.
pub(crate) fn element(name: &str, class: &str, inner: &str) -> String {
    if class.is_empty() {
        return format!("<{name}>{inner}</{name}>");
    }
    format!("<{name} class=\"{class}\">{inner}</{name}>")
}

/// Words that people may have written, set off.
pub(crate) fn strong(words: &str) -> String {
    element("b", "", &escaped(words))
}

/// A cell of a table.
pub(crate) fn cell(class: &str, inner: &str) -> String {
    element("td", class, inner)
}

/// The head of a table: a class and the name of each column.
pub(crate) fn table_head(columns: &[(&str, &str)]) -> String {
    let cells: String = columns
        .iter()
        .map(|(class, name)| {
            let class = if class.is_empty() {
                String::new()
            } else {
                format!(" class=\"{class}\"")
            };
            format!("<th scope=\"col\"{class}>{}</th>", escaped(name))
        })
        .collect();
    element("thead", "", &element("tr", "", &cells))
}

/// A heading with a quiet sentence beside it.
pub(crate) fn heading(words: &str, beside: &str) -> String {
    let beside = if beside.is_empty() {
        String::new()
    } else {
        format!(" {}", element("small", "", &escaped(beside)))
    };
    element(
        "h2",
        "dw-card__name",
        &format!("{}{beside}", escaped(words)),
    )
}

/// A list of things to tick off, of which each is mark-up.
pub(crate) fn to_tick(items: &[String]) -> String {
    let items: String = items.iter().map(|item| element("li", "", item)).collect();
    element("ul", "dw-card__ticks", &items)
}
