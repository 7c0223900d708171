//! The app's own fonts, so that every machine draws the same.

use std::sync::Arc;

use slint::fontique_011::fontique::{Blob, GenericFamily};
use slint::fontique_011::shared_collection;

/// The bold font.
pub(super) const BOLD: &[u8] = include_bytes!("../../ui/theme/fonts/FourcourseSans-Bold.ttf");

const FILES: [&[u8]; 3] = [
    include_bytes!("../../ui/theme/fonts/FourcourseSans-Regular.ttf"),
    include_bytes!("../../ui/theme/fonts/FourcourseSans-SemiBold.ttf"),
    BOLD,
];

/// The signs of the page on the porch, asked for by its own name.
const MUSIC: &[u8] = include_bytes!("../../ui/theme/fonts/FourcourseMusic.otf");

/// Registers the fonts; to be called after the platform is chosen and before the first component is made.
pub(super) fn register() {
    let mut collection = shared_collection();
    let mut families = Vec::new();
    for file in FILES {
        let fonts = collection.register_fonts(Blob::new(Arc::new(file)), None);
        families.extend(fonts.into_iter().map(|(family, _)| family));
    }
    collection.register_fonts(Blob::new(Arc::new(MUSIC)), None);
    families.dedup();
    for generic in [
        GenericFamily::SansSerif,
        GenericFamily::SystemUi,
        GenericFamily::UiSansSerif,
        GenericFamily::Monospace,
    ] {
        collection.set_generic_families(generic, families.iter().copied());
    }
}
