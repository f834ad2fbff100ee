//! PDF: pictures that print true.
//!
//! Every layer of a picture is written once and shown on as many pages as need it. Layers of one name, in whichever
//! picture, are one layer to the reader. The printer is asked for no scaling and for one side, and there is no date
//! in the file.

mod content;
mod lettering;

use kurbo::{Point, Rect, Size};
use miniz_oxide::deflate::compress_to_vec_zlib;
use pdf_writer::{Content, Filter, Finish, Name, Pdf, Ref, TextStr};

use self::lettering::Lettering;
use super::{Drawing, Layer};
use crate::{
    mistake::Mistake,
    voice::{Sentence, length},
};

/// Points of 1/72 inch in a centimetre.
const POINTS_PER_CM: f64 = 72.0 / 2.54;

/// Readers refuse pages longer than 14400 points (PDF reference 1.7, appendix C), cm.
const LONGEST_PAGE: f64 = 508.0;

/// The usual trade between size and time of packing.
const PACKING: u8 = 6;

impl Drawing {
    /// The picture as one page of its own size, at true scale, with its layers.
    ///
    /// # Errors
    /// When the picture is longer than a PDF page can be, 508 cm, or has no size.
    pub fn to_pdf(&self) -> Result<Vec<u8>, Mistake> {
        sheets_to_pdf(&[PrintedSheet { page: self.clone(), pictures: Vec::new() }])
    }
}

/// A page with pictures standing on it.
#[derive(Clone, Debug, PartialEq)]
pub struct PrintedSheet {
    /// What is drawn and written on the page itself; its bounds are the paper.
    pub page: Drawing,
    /// Pictures at true scale, each with where its upper left corner stands; what lies outside their bounds is cut off.
    pub pictures: Vec<(Drawing, Point)>,
}

/// Pages one after the other, each of its own size. The first gives title and description.
///
/// # Errors
/// When there is no page; when one is longer than a PDF page can be, 508 cm, or has no size.
pub fn sheets_to_pdf(sheets: &[PrintedSheet]) -> Result<Vec<u8>, Mistake> {
    let first = sheets.first().ok_or_else(|| Mistake::new("a PDF without a page cannot be made"))?;
    let mut document = Document::new(&first.page);
    for PrintedSheet { page, pictures } in sheets {
        let size = page.bounds.size();
        let (width, height) = (size.width, size.height);
        if !(width > 0.0 && height > 0.0 && width.max(height) <= LONGEST_PAGE) {
            let title = Sentence::new("a page of {width} by {height} cannot be made");
            let help =
                Sentence::new("a PDF page is at most {longest} long").with("longest", length(LONGEST_PAGE));
            return Err(
                Mistake::new(title.with("width", length(width)).with("height", length(height))).help(help)
            );
        }
        let mut windows = vec![Window { drawing: document.add(page), part: page.bounds, at: Point::ORIGIN }];
        for (picture, at) in pictures {
            windows.push(Window { drawing: document.add(picture), part: picture.bounds, at: *at });
        }
        document.pages.push(Page { size, label: None, windows });
    }
    Ok(document.write())
}

/// What stands on which page.
pub(super) struct Document<'a> {
    /// Gives title and description to the whole.
    head: &'a Drawing,
    drawings: Vec<&'a Drawing>,
    pub(super) pages: Vec<Page>,
}

/// A page: parts of pictures, the first lowest.
pub(super) struct Page {
    /// Size of the paper, cm.
    pub(super) size: Size,
    /// The name that a viewer shows in place of the page number.
    pub(super) label: Option<String>,
    pub(super) windows: Vec<Window>,
}

/// A part of a picture, shown on a page at true scale.
pub(super) struct Window {
    /// The number that [`Document::add`] gave to the picture.
    pub(super) drawing: usize,
    /// The part shown, in the picture's own place; what lies outside is cut off.
    pub(super) part: Rect,
    /// Where the part's upper left corner stands, cm from the page's.
    pub(super) at: Point,
}

impl<'a> Document<'a> {
    /// A document without pages, with the title and description of `head`.
    pub(super) fn new(head: &'a Drawing) -> Self {
        Self { head, drawings: Vec::new(), pages: Vec::new() }
    }

    /// Makes a picture known and gives its number.
    pub(super) fn add(&mut self, drawing: &'a Drawing) -> usize {
        self.drawings.push(drawing);
        self.drawings.len() - 1
    }

    /// The bytes of the file.
    pub(super) fn write(&self) -> Vec<u8> {
        let mut next = Ref::new(1);
        let [catalog, info, tree] = [next.bump(), next.bump(), next.bump()];
        let mut pdf = Pdf::new();
        // First of all, so that the file tells by its first bytes which program made it.
        let mut document_info = pdf.document_info(info);
        document_info.creator(TextStr("breeks")).producer(TextStr("breeks"));
        document_info
            .title(TextStr(self.head.title.as_str()))
            .subject(TextStr(self.head.description.as_str()));
        document_info.finish();
        let lettering = Lettering::of(&self.drawings);
        let font = lettering.write(&mut pdf, &mut next);
        let switches = self.write_switches(&mut pdf, &mut next);
        let shapes: Vec<Vec<Shape>> = self
            .drawings
            .iter()
            .map(|drawing| {
                let shape =
                    |layer| write_shape(&mut pdf, next.bump(), drawing, layer, &lettering, font, &switches);
                drawing.layers.iter().map(shape).collect()
            })
            .collect();
        let pages: Vec<Ref> = self
            .pages
            .iter()
            .map(|page| write_page(&mut pdf, &mut next, tree, page, &shapes, &switches))
            .collect();
        pdf.pages(tree).count(pages.len() as i32).kids(pages.iter().copied());
        self.write_catalog(&mut pdf, &mut next, catalog, tree, &switches);
        pdf.finish()
    }

    /// One switch for each name of a layer, in the order of first showing.
    fn write_switches(&self, pdf: &mut Pdf, next: &mut Ref) -> Vec<Switch<'a>> {
        let mut switches: Vec<Switch> = Vec::new();
        for layer in self.drawings.iter().flat_map(|drawing| &drawing.layers) {
            let name = layer.name.as_str();
            if switches.iter().all(|switch| switch.name != name) {
                let id = next.bump();
                let mut group = pdf.indirect(id).dict();
                group.pair(Name(b"Type"), Name(b"OCG")).pair(Name(b"Name"), TextStr(name));
                switches.push(Switch { name, id });
            }
        }
        switches
    }

    fn write_catalog(&self, pdf: &mut Pdf, next: &mut Ref, id: Ref, tree: Ref, switches: &[Switch]) {
        let labels: Vec<Ref> = self.pages.iter().map(|_| next.bump()).collect();
        let mut catalog = pdf.catalog(id);
        catalog.pages(tree).lang(TextStr("en"));
        let mut wishes = catalog.viewer_preferences();
        wishes.display_doc_title(true);
        wishes.pair(Name(b"PrintScaling"), Name(b"None")).pair(Name(b"Duplex"), Name(b"Simplex"));
        wishes.finish();
        let mut optional = catalog.insert(Name(b"OCProperties")).dict();
        let ids = || switches.iter().map(|switch| switch.id);
        optional.insert(Name(b"OCGs")).array().items(ids());
        let mut shown = optional.insert(Name(b"D")).dict();
        shown.insert(Name(b"Order")).array().items(ids());
        shown.pair(Name(b"BaseState"), Name(b"ON"));
        shown.finish();
        optional.finish();
        let mut named = catalog.page_labels();
        let mut ranges = named.nums();
        for (page, label) in labels.iter().enumerate() {
            ranges.insert(page as i32, *label);
        }
        ranges.finish();
        named.finish();
        catalog.finish();
        for (number, (page, label)) in self.pages.iter().zip(labels).enumerate() {
            let text = page.label.clone().unwrap_or_else(|| (number + 1).to_string());
            pdf.indirect(label).dict().pair(Name(b"P"), TextStr(&text));
        }
    }
}

/// A layer as a viewer lists it.
struct Switch<'a> {
    name: &'a str,
    id: Ref,
}

/// A layer of a picture as pages refer to it.
struct Shape {
    id: Ref,
    /// Its switch, by number.
    switch: usize,
    /// The part of the picture that its marks cover; `None` where it has none.
    covers: Option<Rect>,
}

fn write_shape(
    pdf: &mut Pdf,
    id: Ref,
    drawing: &Drawing,
    layer: &Layer,
    lettering: &Lettering,
    font: Ref,
    switches: &[Switch],
) -> Shape {
    let marks = compress_to_vec_zlib(&content::of(layer, lettering), PACKING);
    let mut form = pdf.form_xobject(id, &marks);
    form.filter(Filter::FlateDecode);
    form.bbox(box_of(drawing.bounds));
    form.resources().fonts().pair(content::FONT, font);
    form.finish();
    let covers = layer.marks.iter().map(super::Mark::bounds).reduce(|all, mark| all.union(mark));
    let switch = switches.iter().position(|switch| switch.name == layer.name.as_str()).unwrap_or(0);
    Shape { id, switch, covers }
}

fn write_page(
    pdf: &mut Pdf,
    next: &mut Ref,
    tree: Ref,
    page: &Page,
    shapes: &[Vec<Shape>],
    switches: &[Switch],
) -> Ref {
    let [id, contents] = [next.bump(), next.bump()];
    let mut drawn = Content::new();
    let mut used: Vec<&Shape> = Vec::new();
    for window in &page.windows {
        drawn.save_state();
        drawn.transform(matrix(page.size, window));
        let part = box_of(window.part);
        drawn.rect(part.x1, part.y1, part.x2 - part.x1, part.y2 - part.y1).clip_nonzero().end_path();
        for shape in &shapes[window.drawing] {
            if shape.covers.is_some_and(|covers| covers.overlaps(window.part)) {
                let switch = switch_name(shape.switch);
                drawn
                    .begin_marked_content_with_properties(Name(b"OC"))
                    .properties_named(Name(switch.as_bytes()));
                drawn.x_object(Name(shape_name(used.len()).as_bytes())).end_marked_content();
                used.push(shape);
            }
        }
        drawn.restore_state();
    }
    let packed = compress_to_vec_zlib(&drawn.finish(), PACKING);
    pdf.stream(contents, &packed).filter(Filter::FlateDecode);
    let size = page.size * POINTS_PER_CM;
    let mut leaf = pdf.page(id);
    leaf.parent(tree).contents(contents);
    leaf.media_box(pdf_writer::Rect::new(0.0, 0.0, rounded(size.width, 1e3), rounded(size.height, 1e3)));
    let mut resources = leaf.resources();
    let mut forms = resources.x_objects();
    for (number, shape) in used.iter().enumerate() {
        forms.pair(Name(shape_name(number).as_bytes()), shape.id);
    }
    forms.finish();
    let mut groups = resources.insert(Name(b"Properties")).dict();
    for (number, switch) in switches.iter().enumerate() {
        if used.iter().any(|shape| shape.switch == number) {
            groups.pair(Name(switch_name(number).as_bytes()), switch.id);
        }
    }
    groups.finish();
    resources.finish();
    leaf.finish();
    id
}

fn switch_name(number: usize) -> String {
    format!("L{number}")
}

fn shape_name(number: usize) -> String {
    format!("S{number}")
}

/// From centimetres of a picture, y down, to points of the page, y up.
fn matrix(page: Size, window: &Window) -> [f32; 6] {
    let scale = POINTS_PER_CM;
    let (x, y) = (window.at.x - window.part.x0, page.height - window.at.y + window.part.y0);
    [scale as f32, 0.0, 0.0, -scale as f32, rounded(x * scale, 1e5), rounded(y * scale, 1e5)]
}

fn box_of(rect: Rect) -> pdf_writer::Rect {
    pdf_writer::Rect::new(cm(rect.x0), cm(rect.y0), cm(rect.x1), cm(rect.y1))
}

/// A coordinate to a ten-thousandth of a centimetre: as fine as `f32` holds at the size of a trouser leg.
fn cm(value: f64) -> f32 {
    rounded(value, 1e4)
}

/// Rounded to a part of one, so that few digits are printed; never a negative zero.
fn rounded(value: f64, parts: f64) -> f32 {
    ((value * parts).round() / parts + 0.0) as f32
}
