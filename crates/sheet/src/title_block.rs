//! The title block at the foot of a sheet.

use dewrun_drawing::escaped;

use crate::markup::element;
use crate::told::Told;

/// The product's mark in the head of a sheet.
pub(crate) const MARK: &str = "<svg class=\"dw-card__mark\" viewBox=\"0 0 32 20\" aria-hidden=\"true\"><path d=\"M3 2l13.5 10.5L29 5.5M3 7.500 16.500 18 29 11\" fill=\"none\" stroke=\"#000\" stroke-width=\"2.4\"/></svg>";

/// Which sheet of how many.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Numbered {
    pub(crate) sheet: usize,
    pub(crate) of: usize,
}

/// What the block of a kind of sheet says beside project and run.
#[derive(Debug, Clone, Copy)]
pub(crate) struct TitleBlock<'a> {
    /// What the sheet is called.
    pub(crate) sheet: &'a str,
    /// What stands under that, where the project is no example.
    pub(crate) note: &'a str,
    /// Who signs it.
    pub(crate) by: [&'a str; 2],
    pub(crate) revision: &'a str,
    pub(crate) date: &'a str,
}

impl TitleBlock<'_> {
    /// Project, sheet, who and when, revision.
    pub(crate) fn html(&self, told: &Told<'_>, Numbered { sheet, of }: Numbered) -> String {
        let field = |name: &str, lines: [&str; 2]| {
            let lines = lines.map(|line| element("span", "", &escaped(line)));
            let name = element("small", "", name);
            element("div", "", &format!("{name}{}", lines.concat()))
        };
        let [first, second] = self.by;
        let fields = [
            field("Project", [&told.project.name, &told.names.run]),
            field(
                "Sheet",
                [&format!("{} {sheet} of {of}", self.sheet), self.note],
            ),
            field(first, ["", ""]),
            field(second, ["", ""]),
            field(
                "Revision",
                [
                    &[self.revision, self.date].join(" "),
                    concat!("Dewrun ", env!("CARGO_PKG_VERSION")),
                ],
            ),
        ];
        element("div", "dw-card__title", &fields.concat())
    }
}

/// Whether the project is a worked example, which says so itself.
pub(crate) fn is_example(told: &Told<'_>) -> bool {
    told.project.note.starts_with("Example, not your site")
}
