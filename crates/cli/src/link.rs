//! `dewrun link`: a project as an address that carries it.

use std::io::{self, Write};

use dewrun_document::share_link;

use crate::args::Link;
use crate::exit::Ending;
use crate::project::{self, complain_of, name_of};

pub(crate) fn link(args: &Link, out: &mut impl Write) -> io::Result<Ending> {
    let made = project::load(&args.project).and_then(|project| share_link(&project));
    match made {
        Ok(link) => {
            // What stands behind the sign in the address of a page that is open is not part of where it is.
            let page = args.page.as_deref().and_then(|page| page.split('#').next());
            writeln!(out, "{}{link}", page.unwrap_or_default())?;
            Ok(Ending::Dry)
        }
        Err(error) => {
            complain_of(&name_of(&args.project), &error);
            Ok(Ending::Failed)
        }
    }
}
