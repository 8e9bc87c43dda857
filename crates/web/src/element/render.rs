//! The page takes its place as a view of the framework.

use leptos::tachys::html::attribute::Attribute;
use leptos::tachys::html::attribute::any_attribute::AnyAttribute;
use leptos::tachys::hydration::Cursor;
use leptos::tachys::renderer::types;
use leptos::tachys::view::add_attr::AddAnyAttr;
use leptos::tachys::view::{Mountable, Position, PositionState, Render, RenderHtml};

use send_wrapper::SendWrapper;

use super::El;

/// The element that holds the page.
pub struct Root(SendWrapper<El>);

impl Root {
    /// The view of an element.
    #[must_use]
    pub fn of(element: El) -> Self {
        Self(SendWrapper::new(element))
    }
}

/// The element where it is shown.
pub struct Shown(types::Element);

impl Mountable for Shown {
    fn unmount(&mut self) {
        self.0.unmount();
    }

    fn mount(&mut self, parent: &types::Element, marker: Option<&types::Node>) {
        self.0.mount(parent, marker);
    }

    fn insert_before_this(&self, child: &mut dyn Mountable) -> bool {
        self.0.insert_before_this(child)
    }

    fn elements(&self) -> Vec<types::Element> {
        vec![self.0.clone()]
    }
}

impl Render for Root {
    type State = Shown;

    fn build(self) -> Shown {
        Shown(self.0.take().0)
    }

    fn rebuild(self, state: &mut Shown) {
        let mut new = self.build();
        state.insert_before_this(&mut new);
        state.unmount();
        *state = new;
    }
}

impl AddAnyAttr for Root {
    type Output<A: Attribute> = Self;

    fn add_any_attr<A: Attribute>(self, _: A) -> Self {
        self
    }
}

impl RenderHtml for Root {
    type AsyncOutput = Self;
    type Owned = Self;

    const MIN_LENGTH: usize = 0;

    fn dry_resolve(&mut self) {}

    async fn resolve(self) -> Self {
        self
    }

    /// The page is made in the browser only: where it is made as text it has the text of its element.
    fn to_html_with_buf(
        self,
        buf: &mut String,
        _: &mut Position,
        _: bool,
        _: bool,
        _: Vec<AnyAttribute>,
    ) {
        buf.push_str(&self.0.dom().outer_html());
    }

    fn hydrate<const FROM_SERVER: bool>(self, _: &Cursor, _: &PositionState) -> Shown {
        self.build()
    }

    fn into_owned(self) -> Self {
        self
    }
}
