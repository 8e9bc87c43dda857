//! The ways to the world outside the page's own state: address, window, sizes on the screen.

pub(crate) mod after_paint;
pub(crate) mod causes;
pub(crate) mod clock;
pub(crate) mod element_width;
pub(crate) mod escape;
pub(crate) mod file_text;
pub(crate) mod hash;
pub(crate) mod kept;
pub(crate) mod link;
pub(crate) mod orientation;
pub(crate) mod pressed;
pub(crate) mod printing;
pub(crate) mod save;
pub(crate) mod scrolled;
pub(crate) mod section_in_view;
pub(crate) mod sheets;
pub(crate) mod top;
pub(crate) mod window_width;
pub(crate) mod work;
pub(crate) mod workshop;
pub(crate) mod year;
