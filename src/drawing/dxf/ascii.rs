//! Words in the seven bits that the readers of DXF agree on.

/// Letters and the plain ones that stand for them.
const PLAIN: &[(&str, &str)] = &[
    ("ÀÁÂÃÅĀĂĄ", "A"),
    ("àáâãåāăą", "a"),
    ("ÇĆĈĊČ", "C"),
    ("çćĉċč", "c"),
    ("ÐĎĐ", "D"),
    ("ðďđ", "d"),
    ("ÈÉÊËĒĔĖĘĚ", "E"),
    ("èéêëēĕėęě", "e"),
    ("ĜĞĠĢ", "G"),
    ("ĝğġģ", "g"),
    ("ĤĦ", "H"),
    ("ĥħ", "h"),
    ("ÌÍÎÏĨĪĬĮİ", "I"),
    ("ìíîïĩīĭįı", "i"),
    ("Ĳ", "IJ"),
    ("ĳ", "ij"),
    ("Ĵ", "J"),
    ("ĵ", "j"),
    ("Ķ", "K"),
    ("ķĸ", "k"),
    ("ĹĻĽĿŁ", "L"),
    ("ĺļľŀł", "l"),
    ("ÑŃŅŇŊ", "N"),
    ("ñńņňŉŋ", "n"),
    ("ÒÓÔÕØŌŎŐ", "O"),
    ("òóôõøōŏő", "o"),
    ("ŔŖŘ", "R"),
    ("ŕŗř", "r"),
    ("ŚŜŞŠ", "S"),
    ("śŝşšſ", "s"),
    ("ŢŤŦ", "T"),
    ("ţťŧ", "t"),
    ("ÙÚÛŨŪŬŮŰŲ", "U"),
    ("ùúûũūŭůűų", "u"),
    ("Ŵ", "W"),
    ("ŵ", "w"),
    ("ÝŶŸ", "Y"),
    ("ýÿŷ", "y"),
    ("ŹŻŽ", "Z"),
    ("źżž", "z"),
    ("ÄÆ", "AE"),
    ("äæ", "ae"),
    ("ÖŒ", "OE"),
    ("öœ", "oe"),
    ("Ü", "UE"),
    ("ü", "ue"),
    ("ß", "ss"),
    ("Þ", "TH"),
    ("þ", "th"),
    ("¼", " 1/4"),
    ("½", " 1/2"),
    ("¾", " 3/4"),
    ("⅛", " 1/8"),
    ("⅜", " 3/8"),
    ("⅝", " 5/8"),
    ("⅞", " 7/8"),
    ("×", "x"),
    ("°", " deg"),
    ("‐‑‒–—―−", "-"),
    ("‘’‚′", "'"),
    ("“”„″", "\""),
    ("…", "..."),
];

/// What a reader of DXF takes for an order within a text: two per cent signs before a letter, a caret, a backslash. Three
/// per cent signs are one that is drawn, a caret before a blank is a caret; a backslash has no such way.
const ORDERS: [(&str, &str); 3] = [("%%", "%%%%%%"), ("^", "^ "), ("\\", "/")];

/// A longer text is no note any more; release 12 reads 255.
const LONGEST: usize = 250;

/// A block's name in release 12 has at most 31 signs.
const LONGEST_NAME: usize = 31;

/// One line of seven-bit letters; what has no plain letter becomes a question mark.
pub(super) fn plain(text: &str) -> String {
    let mut plain = String::new();
    for letter in text.chars() {
        match PLAIN.iter().find(|(letters, _)| letters.contains(letter)) {
            _ if letter == ' ' || letter.is_ascii_graphic() => plain.push(letter),
            Some((_, stands)) => plain.push_str(stands),
            None if letter.is_whitespace() => plain.push(' '),
            None => plain.push('?'),
        }
    }
    plain.truncate(LONGEST);
    plain.trim().to_owned()
}

/// The same for a text that is drawn: nothing in it is an order to its reader.
pub(super) fn drawn(text: &str) -> String {
    let mut drawn = String::new();
    let plain = plain(text);
    let mut rest = plain.as_str();
    while let Some(letter) = rest.chars().next() {
        let order = ORDERS.iter().find(|(order, _)| rest.starts_with(order));
        // an odd one behind two is one of the run
        let odd = letter == '%' && drawn.ends_with("%%%");
        let (taken, written) = match order {
            Some((order, written)) => (order.len(), *written),
            None if odd => (1, "%%%"),
            None => (letter.len_utf8(), &rest[..letter.len_utf8()]),
        };
        if drawn.len() + written.len() > LONGEST {
            break;
        }
        drawn.push_str(written);
        rest = &rest[taken..];
    }
    drawn
}

/// A name that release 12 takes for a block: capitals, digits, `_`; a number where nothing is left of the words.
pub(super) fn block_name(words: &str, number: usize) -> String {
    let words = plain(words);
    let kept = words.split(|letter: char| !letter.is_ascii_alphanumeric()).filter(|word| !word.is_empty());
    let mut name = kept.collect::<Vec<_>>().join("_").to_ascii_uppercase();
    name.truncate(LONGEST_NAME);
    if name.is_empty() { format!("PIECE_{number}") } else { name }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn plain_letters_for_any_text() {
        let cases = [
            ("front 31½", "front 31 1/2"),
            ("Größe – “lang”", "Groesse - \"lang\""),
            ("a\r\nb\u{202e}", "a  b?"),
            ("前", "?"),
        ];
        for (text, wanted) in cases {
            assert_eq!(plain(text), wanted);
        }
        assert_eq!(plain(&"x".repeat(10_000)).len(), LONGEST);
    }

    #[test]
    fn nothing_drawn_is_an_order_to_the_reader() {
        let cases = [
            ("100 %", "100 %"),
            ("a%%d", "a%%%%%%d"),
            ("%%%u", "%%%%%%%%%u"),
            ("5 % % c", "5 % % c"),
            ("up^J", "up^ J"),
            (r"\U+00B0 a\b", "/U+00B0 a/b"),
        ];
        for (text, wanted) in cases {
            assert_eq!(drawn(text), wanted);
        }
        assert!(drawn(&"%".repeat(400)).len() <= LONGEST);
    }

    #[test]
    fn every_accented_letter_of_the_font_with_a_plain_one() {
        for letter in ('À'..='ſ').filter(|letter| letter.is_alphabetic()) {
            assert_ne!(plain(&letter.to_string()), "?", "{letter}");
        }
    }

    #[test]
    fn block_names_that_readers_take() {
        assert_eq!(block_name("front, left – cox", 0), "FRONT_LEFT_COX");
        assert_eq!(block_name("前", 4), "PIECE_4");
        assert_eq!(block_name(&"back ".repeat(20), 0).len(), LONGEST_NAME);
    }
}
