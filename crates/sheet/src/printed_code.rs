//! A project as a printed code: what a phone reads off the paper opens the project.

use core::fmt::Write;

use dewrun_document::{DocumentError, Project, share_link};
use fast_qr::{ECL, QRBuilder, QRCode};

use crate::left_out::{LeftOut, ORDER};

/// Side of the code on paper without the quiet zone around it, mm.
pub const CODE_MM: f64 = 40.0;
/// The smallest module: four dots of a printer of 300 dots an inch.
///
/// # Source
/// Denso Wave, QR Code.com, "Point for setting the module size": four or more dots to a module, 0.33 mm at 300 dpi. That phones read such a module from the hand's distance is common practice, no source.
pub const SMALLEST_MODULE_MM: f64 = 0.33;
/// Modules of the quiet zone on each side, ISO/IEC 18004:2015, 6.3.8.
pub const QUIET_MODULES: usize = 4;

/// A project as a printed code.
#[derive(Debug, Clone, PartialEq)]
pub struct PrintedCode {
    /// What the code says.
    pub text: String,
    /// What of the project it does not carry, in the order in which it was left out.
    pub left_out: Vec<LeftOut>,
    /// Modules from edge to edge, without the quiet zone.
    pub modules: usize,
    /// The dark modules as the path of an SVG whose unit is a module, the quiet zone around them.
    pub path: String,
}

impl PrintedCode {
    /// Side of a module on paper, mm.
    #[must_use]
    pub fn module_mm(&self) -> f64 {
        let count = u32::try_from(self.modules).unwrap_or(u32::MAX);
        CODE_MM / f64::from(count)
    }
}

/// The code that carries a run of a project; none where even the barest does not fit.
///
/// What makes it too dense is left out step by step, and no more than has to be; of two levels of correction that fit the stronger one is taken.
///
/// # Errors
/// [`DocumentError`] where the project leaves one of its limits.
pub fn printed_code(
    project: &Project,
    run_index: usize,
    page: Option<&str>,
) -> Result<Option<PrintedCode>, DocumentError> {
    // What stands behind the sign in the address of a page that is open is not part of where it is.
    let page = page.and_then(|page| page.split('#').next());
    let found = |project: &Project, left_out: &[LeftOut]| {
        let text = format!("{}{}", page.unwrap_or_default(), share_link(project)?);
        Ok(drawn(&text).map(|code| PrintedCode {
            modules: code.size,
            path: path(&code),
            text,
            left_out: left_out.to_vec(),
        }))
    };
    let without = |steps: &[LeftOut]| {
        let taken_out = |rest, step: &LeftOut| step.taken_out(rest, run_index);
        steps.iter().try_fold(project.clone(), taken_out)
    };
    let mut code = found(project, &[])?;
    let (mut rest, mut left_out) = (project.clone(), Vec::new());
    for step in ORDER {
        if code.is_some() {
            break;
        }
        let without = step.taken_out(rest.clone(), run_index)?;
        if without != rest {
            left_out.push(step);
            rest = without;
            code = found(&rest, &left_out)?;
        }
    }
    // What one step has left out in vain, as a later one made the room, is put back, the dearest first.
    for step in left_out.clone().into_iter().rev().skip(1) {
        let others: Vec<LeftOut> = left_out
            .iter()
            .copied()
            .filter(|one| *one != step)
            .collect();
        if let Some(fuller) = found(&without(&others)?, &others)? {
            (code, left_out) = (Some(fuller), others);
        }
    }
    Ok(code)
}

/// The code of a text, if its modules are no smaller than the smallest.
fn drawn(text: &str) -> Option<QRCode> {
    [ECL::M, ECL::L].into_iter().find_map(|level| {
        let code = QRBuilder::new(text).ecl(level).build().ok()?;
        let count = u32::try_from(code.size).ok()?;
        (SMALLEST_MODULE_MM * f64::from(count) <= CODE_MM).then_some(code)
    })
}

/// Every run of dark modules of a row as one rectangle.
fn path(code: &QRCode) -> String {
    let mut path = String::new();
    for (y, row) in (0..code.size).map(|y| (y, &code[y])) {
        let mut x = 0;
        while x < code.size {
            let dark = row.iter().skip(x).take(code.size - x);
            let run = dark.take_while(|module| module.value()).count();
            if 0 < run {
                let (left, top) = (x + QUIET_MODULES, y + QUIET_MODULES);
                let _ = write!(path, "M{left} {top}h{run}v1h-{run}z");
            }
            x += run.max(1);
        }
    }
    path
}
