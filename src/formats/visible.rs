//! Characters that a terminal or a page can show as they are.

/// Whether a character is shown: neither a control character (which may drive a terminal) nor a mark that turns the
/// direction of writing (Unicode's property `Bidi_Control`, UAX #9: such a mark can make a text read as another one).
///
/// ```
/// use fourcourse::formats::is_visible;
/// assert!("Café ♭".chars().all(is_visible));
/// assert!(!['\u{1b}', '\0', '\u{9b}', '\u{202e}'].into_iter().any(is_visible));
/// ```
pub fn is_visible(c: char) -> bool {
    let turns = matches!(
        c,
        '\u{61c}' | '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}'
    );
    !c.is_control() && !turns
}
