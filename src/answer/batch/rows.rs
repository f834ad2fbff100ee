//! Cuts what comes in into rows, holding at most one row and one reading of the input at a time.

use std::io::{self, Read};

/// A longer row is refused and passed over without being held, bytes. All keys of a measurement file with generous
/// values come to less than a tenth of it.
pub const LONGEST_ROW: usize = 64 * 1024;
/// A row with more fields is refused as too long.
const MOST_FIELDS: usize = 1024;
/// One reading of the input, bytes.
const READING: usize = 64 * 1024;
/// Rows that travel together: enough to make the passing from hand to hand cheap, few enough to share the work evenly.
const CHUNK: usize = 64;

/// One row as it came in.
#[derive(Debug, Default, PartialEq)]
pub(super) struct Row {
    /// The line of the input on which it starts, from 1.
    pub(super) line: u64,
    /// The line of JSON; or the fields of a CSV record without what parts them.
    pub(super) text: Vec<u8>,
    /// Where each field of a CSV record ends in `text`; empty for JSON.
    pub(super) ends: Vec<usize>,
    /// It was longer than [`LONGEST_ROW`], and `text` is not all of it.
    pub(super) too_long: bool,
}

/// Rows that travel together.
pub(super) struct Chunk {
    pub(super) rows: Vec<Row>,
    /// How much of the input has been read with them, bytes.
    pub(super) bytes: u64,
}

/// How the input is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Form {
    /// One JSON object a line.
    Json,
    /// Fields parted by commas, the first row the header.
    Csv,
}

/// The rows of an input.
pub(super) struct Rows<R> {
    input: R,
    buffer: Vec<u8>,
    /// What of the buffer is still to be cut.
    left: std::ops::Range<usize>,
    bytes: u64,
    cutter: Cutter,
}

impl<R: Read> Rows<R> {
    /// The rows of this input, and how it is written: its first byte decides, blanks and a byte order mark apart.
    pub(super) fn open(input: R) -> io::Result<(Self, Form)> {
        const BYTE_ORDER_MARK: &[u8] = b"\xef\xbb\xbf";
        let cutter = Cutter::Lines(Lines { line: 1, ..Lines::default() });
        let mut rows = Self { input, buffer: vec![0; READING], left: 0..0, bytes: 0, cutter };
        let mut head = Vec::new();
        while head.len() < BYTE_ORDER_MARK.len() && rows.fill()? {
            head.extend_from_slice(&rows.buffer[rows.left.clone()]);
        }
        // the first readings may have been shorter than the mark
        let start = if head.starts_with(BYTE_ORDER_MARK) { BYTE_ORDER_MARK.len() } else { 0 };
        rows.left = start..head.len();
        rows.buffer = head;
        if rows.buffer.starts_with(b"\xff\xfe") || rows.buffer.starts_with(b"\xfe\xff") {
            return Err(io::Error::new(io::ErrorKind::InvalidData, "it is UTF-16 text, expected UTF-8"));
        }
        let mut line = 1;
        let first = loop {
            match rows.buffer[rows.left.clone()].first().copied() {
                Some(blank) if blank.is_ascii_whitespace() => {
                    line += u64::from(blank == b'\n');
                    rows.left.start += 1;
                }
                Some(first) => break Some(first),
                None if rows.fill()? => {}
                None => break None,
            }
        };
        let form = if first.is_none_or(|first| first == b'{') { Form::Json } else { Form::Csv };
        rows.cutter = match form {
            Form::Json => Cutter::Lines(Lines { line, ..Lines::default() }),
            Form::Csv => Cutter::Records(Box::new(Records::new(line))),
        };
        Ok((rows, form))
    }

    /// The next row; `None` at the end.
    pub(super) fn next(&mut self) -> io::Result<Option<Row>> {
        loop {
            if let Some(row) = self.next_at_hand() {
                return Ok(Some(row));
            }
            if !self.fill()? {
                return Ok(self.cutter.end());
            }
        }
    }

    /// The next rows, as many as are there without waiting for more; `None` at the end.
    pub(super) fn next_chunk(&mut self) -> io::Result<Option<Chunk>> {
        let Some(first) = self.next()? else { return Ok(None) };
        let mut rows = vec![first];
        while rows.len() < CHUNK
            && let Some(row) = self.next_at_hand()
        {
            rows.push(row);
        }
        Ok(Some(Chunk { rows, bytes: self.bytes - self.left.len() as u64 }))
    }

    /// The next row of what has been read already.
    fn next_at_hand(&mut self) -> Option<Row> {
        while !self.left.is_empty() {
            let (taken, row) = self.cutter.take(&self.buffer[self.left.clone()]);
            self.left.start += taken;
            if row.is_some() {
                return row;
            }
        }
        None
    }

    /// Reads on; false at the end of the input.
    fn fill(&mut self) -> io::Result<bool> {
        self.buffer.resize(READING, 0);
        let read = loop {
            match self.input.read(&mut self.buffer) {
                Err(error) if error.kind() == io::ErrorKind::Interrupted => {}
                read => break read?,
            }
        };
        self.left = 0..read;
        self.bytes += read as u64;
        Ok(read > 0)
    }
}

/// Finds the end of a row.
enum Cutter {
    Lines(Lines),
    Records(Box<Records>),
}

impl Cutter {
    /// How many bytes of `input` belong to the row begun, and the row if it ends there.
    fn take(&mut self, input: &[u8]) -> (usize, Option<Row>) {
        match self {
            Self::Lines(lines) => lines.take(input),
            Self::Records(records) => records.take(input),
        }
    }

    /// The last row, if the input ended without ending it.
    fn end(&mut self) -> Option<Row> {
        match self {
            Self::Lines(lines) => lines.finished(),
            Self::Records(records) => records.end(),
        }
    }
}

/// Lines, without those that are blank.
#[derive(Default)]
struct Lines {
    line: u64,
    text: Vec<u8>,
    too_long: bool,
}

impl Lines {
    fn take(&mut self, input: &[u8]) -> (usize, Option<Row>) {
        let end = input.iter().position(|byte| *byte == b'\n');
        let part = &input[..end.unwrap_or(input.len())];
        if self.text.len() + part.len() > LONGEST_ROW {
            self.too_long = true;
            self.text = Vec::new();
        } else if !self.too_long {
            self.text.extend_from_slice(part);
        }
        match end {
            None => (input.len(), None),
            Some(end) => {
                let row = self.finished();
                self.line += 1;
                (end + 1, row)
            }
        }
    }

    fn finished(&mut self) -> Option<Row> {
        let text = std::mem::take(&mut self.text);
        let too_long = std::mem::take(&mut self.too_long);
        let row = Row { line: self.line, text, ends: Vec::new(), too_long };
        (too_long || !row.text.trim_ascii().is_empty()).then_some(row)
    }
}

/// Records of CSV: a field between quotation marks may hold commas and line ends.
struct Records {
    reader: csv_core::Reader,
    /// The line reached.
    line: u64,
    /// The line on which the record starts; 0 between two records.
    first_line: u64,
    text: Vec<u8>,
    text_end: usize,
    ends: Vec<usize>,
    ends_end: usize,
    too_long: bool,
}

impl Records {
    fn new(line: u64) -> Self {
        Self {
            reader: csv_core::Reader::new(),
            line,
            first_line: 0,
            text: vec![0; LONGEST_ROW],
            text_end: 0,
            ends: vec![0; MOST_FIELDS],
            ends_end: 0,
            too_long: false,
        }
    }

    fn take(&mut self, input: &[u8]) -> (usize, Option<Row>) {
        if self.first_line == 0 {
            let empty = input.iter().take_while(|byte| matches!(byte, b'\n' | b'\r')).count();
            if empty > 0 {
                self.count_lines(&input[..empty]);
                return (empty, None);
            }
            self.first_line = self.line;
        }
        if self.too_long {
            // the next line end ends it, even between quotation marks: one that is never closed costs one row, not all
            let end = input.iter().position(|byte| matches!(byte, b'\n' | b'\r'));
            return match end {
                None => (input.len(), None),
                Some(end) => (end, self.finished()),
            };
        }
        let (taken, ended) = self.read(input);
        self.count_lines(&input[..taken]);
        (taken, if ended { self.finished() } else { None })
    }

    fn end(&mut self) -> Option<Row> {
        if self.first_line == 0 {
            return None;
        }
        // an empty input tells the reader that no more will come
        if !self.too_long {
            self.read(&[]);
        }
        self.finished()
    }

    /// Reads on in the record; how many bytes it took, and whether they end it.
    fn read(&mut self, input: &[u8]) -> (usize, bool) {
        use csv_core::ReadRecordResult::{End, InputEmpty, OutputEndsFull, OutputFull, Record};
        let (result, taken, text, ends) =
            self.reader.read_record(input, &mut self.text[self.text_end..], &mut self.ends[self.ends_end..]);
        self.text_end += text;
        self.ends_end += ends;
        self.too_long = matches!(result, OutputFull | OutputEndsFull);
        match result {
            Record => (taken, true),
            // a reading that takes nothing would be asked again and again
            InputEmpty | End => (input.len(), false),
            OutputFull | OutputEndsFull => (taken, false),
        }
    }

    fn finished(&mut self) -> Option<Row> {
        let row = Row {
            line: self.first_line,
            text: self.text[..self.text_end].to_vec(),
            ends: self.ends[..self.ends_end].to_vec(),
            too_long: self.too_long,
        };
        if row.too_long {
            self.reader.reset();
        }
        (self.first_line, self.text_end, self.ends_end, self.too_long) = (0, 0, 0, false);
        let is_blank = row.ends.len() <= 1 && row.text.trim_ascii().is_empty();
        (row.too_long || !is_blank).then_some(row)
    }

    fn count_lines(&mut self, input: &[u8]) {
        self.line += input.iter().filter(|byte| **byte == b'\n').count() as u64;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Hands out its bytes in pieces of one length.
    struct Handful<'a>(&'a [u8], usize);

    impl Read for Handful<'_> {
        fn read(&mut self, buffer: &mut [u8]) -> io::Result<usize> {
            let now = self.1.min(self.0.len()).min(buffer.len());
            buffer[..now].copy_from_slice(&self.0[..now]);
            self.0 = &self.0[now..];
            Ok(now)
        }
    }

    /// Every row as its line, its fields between bars, and `…` where it was too long.
    fn cut(input: &[u8], piece: usize) -> Vec<String> {
        let (mut rows, _) = Rows::open(Handful(input, piece)).unwrap();
        let mut shown = Vec::new();
        while let Some(row) = rows.next().unwrap() {
            let mut from = 0;
            let ends = if row.ends.is_empty() { vec![row.text.len()] } else { row.ends.clone() };
            let fields: Vec<&str> = ends
                .iter()
                .map(|end| std::str::from_utf8(&row.text[std::mem::replace(&mut from, *end)..*end]).unwrap())
                .collect();
            let end = if row.too_long { "…" } else { "" };
            let fields = fields.join("|");
            shown.push(format!("{}:{}{end}", row.line, if row.too_long { "" } else { fields.as_str() }));
        }
        shown
    }

    fn cut_alike_in_any_pieces(input: &[u8]) -> Vec<String> {
        let whole = cut(input, READING);
        for piece in [1, 2, 3, 7, 1000] {
            assert_eq!(cut(input, piece), whole, "in pieces of {piece}");
        }
        whole
    }

    #[test]
    fn blank_lines_and_mark_left_out_of_json() {
        let rows = cut_alike_in_any_pieces(b"\xef\xbb\xbf\r\n{1}\r\n\n   \n{2}\n\n{3}");
        assert_eq!(rows, ["2:{1}\r", "5:{2}", "7:{3}"]);
    }

    #[test]
    fn csv_with_quoted_line_ends_and_empty_lines() {
        let rows = cut_alike_in_any_pieces(
            b"\xef\xbb\xbfid,name\r\n\r\n1,\"a, \"\"b\"\"\r\nc\"\r\n  \r\n\n2,\n3,\xc3\xa9",
        );
        assert_eq!(rows, ["1:id|name", "3:1|a, \"b\"\r\nc", "7:2|", "8:3|é"]);
    }

    #[test]
    fn too_long_line_passed_over() {
        let mut json = b"{1}\n".to_vec();
        json.extend(std::iter::repeat_n(b'x', LONGEST_ROW + 1));
        json.extend(b"\n{2}\n");
        assert_eq!(cut(&json, 1000), ["1:{1}", "2:…", "3:{2}"]);
        json[0] = b'[';
        assert_eq!(cut(&json, 1000), ["1:[1}", "2:…", "3:{2}"]);
    }

    #[test]
    fn longest_row_whole() {
        let mut json = b"{".to_vec();
        json.resize(LONGEST_ROW, b'x');
        json.extend(b"\n{2}\n");
        assert_eq!(cut(&json, 1000).len(), 2);
        assert!(!cut(&json, 1000)[0].ends_with('…'));
    }

    #[test]
    fn quotation_mark_never_closed_ends_within_the_longest_row() {
        let mut csv = b"id,name\n1,\"never closed\n".to_vec();
        csv.extend(b"2,b\n".repeat(LONGEST_ROW / 2));
        let rows = cut(&csv, 1000);
        assert_eq!(rows[1], "2:…");
        assert!(rows.len() > LONGEST_ROW / 5, "{}", rows.len());
    }

    #[test]
    fn rows_at_hand_in_one_chunk() {
        let (mut rows, form) = Rows::open(Handful(b"{1}\n{2}\n{3", 9)).unwrap();
        assert_eq!(form, Form::Json);
        let first = rows.next_chunk().unwrap().unwrap();
        assert_eq!((first.rows.len(), first.bytes), (2, 9));
        assert_eq!(rows.next_chunk().unwrap().unwrap().rows.len(), 1);
        assert!(rows.next_chunk().unwrap().is_none());
    }
}
