//! A reader of PDF files that knows no more than the cross-reference table, dictionaries as text, and unpacking.

use std::collections::BTreeMap;

pub(crate) struct PdfFile(BTreeMap<usize, Object>);

/// A dictionary as text and its stream, if it has one.
struct Object {
    text: String,
    stream: Option<Vec<u8>>,
}

impl PdfFile {
    pub(crate) fn read(file: &[u8]) -> Self {
        let start = find(file, b"startxref", file.len() - 40).expect("startxref");
        let table = numbers(&text(&file[start..]))[0] as usize;
        let table = text(&file[table..start]);
        let mut offsets = BTreeMap::new();
        for (number, line) in
            table.lines().skip(2).enumerate().skip(1).take_while(|(_, line)| line.contains(" n"))
        {
            offsets.insert(number, numbers(line)[0] as usize);
        }
        Self(offsets.into_iter().map(|(number, offset)| (number, Object::at(file, offset))).collect())
    }

    /// The dictionaries of this type, as text.
    pub(crate) fn of_type(&self, name: &str) -> Vec<&str> {
        let wanted = format!("/Type /{name}\n");
        self.0.values().map(|object| object.text.as_str()).filter(|text| text.contains(&wanted)).collect()
    }

    /// The text of the object that a `5 0 R` refers to.
    pub(crate) fn text(&self, reference: &str) -> &str {
        &self.0[&(numbers(reference)[0] as usize)].text
    }

    /// The unpacked stream of the object that a `5 0 R` refers to, as text.
    pub(crate) fn stream(&self, reference: &str) -> String {
        let packed = self.0[&(numbers(reference)[0] as usize)].stream.as_ref().expect("a stream");
        text(&miniz_oxide::inflate::decompress_to_vec_zlib(packed).expect("a packed stream"))
    }

    /// The stream of an object that is not packed, as text.
    pub(crate) fn plain_stream(&self, reference: &str) -> String {
        text(self.0[&(numbers(reference)[0] as usize)].stream.as_ref().expect("a stream"))
    }
}

impl Object {
    fn at(file: &[u8], offset: usize) -> Self {
        let end = find(file, b"\nendobj", offset).expect("endobj");
        let Some(stream) = find(&file[..end], b"\nstream\n", offset) else {
            return Self { text: text(&file[offset..end]), stream: None };
        };
        let dictionary = text(&file[offset..stream]);
        let length = numbers(value(&dictionary, "Length"))[0] as usize;
        let data = stream + b"\nstream\n".len();
        Self { text: dictionary, stream: Some(file[data..data + length].to_vec()) }
    }
}

/// What stands behind a key, to the end of its line.
pub(crate) fn value<'a>(dictionary: &'a str, key: &str) -> &'a str {
    let (_, rest) =
        dictionary.split_once(&format!("/{key} ")).unwrap_or_else(|| panic!("/{key} in {dictionary}"));
    rest.lines().next().expect("a line")
}

/// All numbers of a text.
pub(crate) fn numbers(text: &str) -> Vec<f64> {
    let inside = |letter: char| letter.is_ascii_digit() || letter == '-' || letter == '.';
    text.split(|letter| !inside(letter)).filter_map(|word| word.parse().ok()).collect()
}

fn find(bytes: &[u8], needle: &[u8], from: usize) -> Option<usize> {
    bytes[from..].windows(needle.len()).position(|window| window == needle).map(|at| from + at)
}

fn text(bytes: &[u8]) -> String {
    String::from_utf8_lossy(bytes).into_owned()
}
