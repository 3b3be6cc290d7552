// Package pdf writes pages as a PDF file, made to be printed at its true size
// and to be read for a long time: PDF 1.7 that keeps to PDF/A-2b (ISO 19005-2).
//
// It draws what it is given, where it is given, and measures nothing. Each
// page becomes a content stream as soon as it comes, on several workers, and
// waits in order in a spool (memory at first, then a file), so that memory does
// not grow with the run. The fonts follow at the end, when it is known which
// characters were used. The objects around them (page tree, fonts' widths,
// metadata, catalog) are written here; cutting a font down to the characters
// used is the work of github.com/go-pdf/fpdf. Its document is not used: it is
// kept in memory whole, gives coordinates in hundredths of a point and page
// boxes no more exactly, and its width tables take cubic time for long runs of
// neighbouring characters.
//
// All printed numbers come from whole-number arithmetic and all else from
// sorted lists, so the same pages give the same bytes on every machine and
// with any number of workers.
package pdf

import (
	"bytes"
	"compress/zlib"
	"errors"
	"fmt"
	"io"
	"iter"
	"runtime"
	"slices"
	"time"

	"cornerslip/fonts"
	"cornerslip/layout"
)

// Options says what a file tells about itself and how it is made. The zero
// value is a compressed file without title or date.
type Options struct {
	Title   string // shown in the window's title where there is one
	Subject string
	Lang    string // BCP 47 tag of the text, "pt-PT"; "" leaves it open
	Creator string // the program and its version
	// Date is when the file says it was made, with its zone; the zero time
	// leaves the date out.
	Date time.Time

	// Uncompressed writes all streams as they are, to be read by people and
	// kept by tests.
	Uncompressed bool
	// Workers is how many goroutines draw pages; 0 means one for each
	// processor Go may use. The file is the same with any number.
	Workers int
	// Spool is the folder for the temporary file of a long run; "" means the
	// system's. Nothing is left in it.
	Spool string

	part int // of ISO 19005 that the file claims; 0 means 2. Tests set 1.
}

// Write writes all pages to w as one PDF file, with the faces of set.
//
// Nothing is written to w before the last page has been taken and drawn
// without an error. The error that a sequence gives is returned as it is; an
// error in a page names the label and ends with the page's number. Pages and
// their boxes must not be changed before Write returns.
func Write(w io.Writer, pages iter.Seq2[layout.Page, error], set *fonts.Set, o Options) error {
	f := &file{out: &spool{dir: o.Spool}, plain: o.Uncompressed}
	defer f.out.close()
	d := &document{file: f, o: o, faces: &faces{set: set, open: map[string]*face{}}}
	f.begin()
	d.catalog, d.resources = f.number(), f.number()
	if err := d.takePages(pages); err != nil {
		return err
	}
	if err := d.finish(); err != nil {
		return err
	}
	return f.out.writeTo(w)
}

// A document is a file in the making.
type document struct {
	*file
	o                  Options
	faces              *faces
	painters           []*painter
	catalog, resources int

	// leaves are the lowest nodes of the page tree.
	leaves []node
	pages  int
}

// A node is an inner object of the page tree.
type node struct {
	number int
	kids   []int
	pages  int
}

// fanout is how many kids a node of the page tree has; a flat list of
// thousands of pages is slow to open in some viewers.
const fanout = 50

// A drawn page waits for its turn.
type drawn struct {
	size    layout.Size
	trim    layout.Rect
	content *bytes.Buffer // compressed unless the options say otherwise
}

func (d *document) takePages(pages iter.Seq2[layout.Page, error]) error {
	workers := d.o.Workers
	if workers <= 0 {
		workers = runtime.GOMAXPROCS(0)
	}
	for range workers {
		d.painters = append(d.painters, &painter{faces: d.faces, plain: d.plain})
	}
	err := layout.InOrder(pages, workers, func(worker int, p layout.Page) (drawn, error) {
		p = onDots(p)
		content, err := d.painters[worker].paint(p)
		return drawn{p.Size, p.Trim, content}, err
	}, func(page drawn, err error) error {
		if err != nil {
			return fmt.Errorf("%w (page %d)", err, d.pages+1)
		}
		d.putPage(page)
		return d.err
	})
	if err == nil && d.pages == 0 {
		return errors.New("there is no page to write")
	}
	return err
}

// onDots makes a page that holds bars as high as a whole number of dots of 300
// dpi, by less than 0.09 mm at the foot. Bars stand on the printer's dots
// counted from the top of the paper; rasterisers that count from the foot
// (Ghostscript) find them there only if the height is whole, too. What is left
// after cutting stays what it was.
func onDots(p layout.Page) layout.Page {
	if p.Size.H%layout.Dot300 == 0 || !slices.ContainsFunc(p.Boxes, func(b layout.Placed) bool { return hasBars(b.Box) }) {
		return p
	}
	if p.Trim == (layout.Rect{}) {
		p.Trim = layout.Rect{Size: p.Size}
	}
	p.Size.H += layout.Dot300 - p.Size.H%layout.Dot300
	return p
}

func hasBars(b *layout.Box) bool {
	return b != nil && slices.ContainsFunc(b.Marks, func(m layout.Mark) bool { _, ok := m.(layout.Bars); return ok })
}

// putPage writes a page and its content.
func (d *document) putPage(p drawn) {
	if n := len(d.leaves); n == 0 || d.leaves[n-1].pages == fanout {
		d.leaves = append(d.leaves, node{number: d.number()})
	}
	leaf := &d.leaves[len(d.leaves)-1]
	page, content := d.number(), d.number()
	leaf.kids = append(leaf.kids, page)
	leaf.pages++
	d.pages++

	dict := fmt.Sprintf("<< /Type /Page /Parent %d 0 R /MediaBox [0 0 %s %s]", leaf.number, box(p.size.W), box(p.size.H))
	if p.trim != (layout.Rect{}) {
		dict += fmt.Sprintf(" /TrimBox [%s %s %s %s]", box(p.trim.At.X), box(p.size.H-p.trim.Bottom()), box(p.trim.Right()), box(p.size.H-p.trim.At.Y))
	}
	d.object(page, dict+fmt.Sprintf(" /Resources %d 0 R /Contents %d 0 R >>", d.resources, content))
	filter := " /Filter /FlateDecode"
	if d.plain {
		filter = ""
	}
	d.stream(content, filter, p.content.Bytes())
	buffers.Put(p.content)
}

// box prints a coordinate of a page's boxes: to 1/10,000 pt, so that A4 is
// 595.2756 × 841.8898.
func box(l layout.Length) string { return l.Decimal(layout.Pt, 4) }

// putTree writes the page tree over the leaves and returns its root.
func (d *document) putTree() int {
	level := d.leaves
	for len(level) > 1 {
		var above []node
		for group := range slices.Chunk(level, fanout) {
			up := node{number: d.number()}
			for _, n := range group {
				d.putNode(n, fmt.Sprintf(" /Parent %d 0 R", up.number))
				up.kids = append(up.kids, n.number)
				up.pages += n.pages
			}
			above = append(above, up)
		}
		level = above
	}
	d.putNode(level[0], "")
	return level[0].number
}

func (d *document) putNode(n node, parent string) {
	d.object(n.number, fmt.Sprintf("<< /Type /Pages%s /Count %d /Kids [%s] >>", parent, n.pages, references(n.kids)))
}

func references(numbers []int) string {
	var b []byte
	for i, n := range numbers {
		if i > 0 {
			b = append(b, ' ')
		}
		b = fmt.Appendf(b, "%d 0 R", n)
	}
	return string(b)
}

// finish writes what follows the pages.
func (d *document) finish() error {
	tree := d.putTree()
	list, err := d.putFonts()
	if err != nil {
		return err
	}
	d.object(d.resources, "<< /Font << "+list+">> /ProcSet [/PDF /Text] >>")
	info := d.putInfo()
	d.putCatalog(tree)
	d.end(d.catalog, info)
	return d.err
}

// deflate compresses p at the level of the page streams: a little larger than
// the default and much faster.
func deflate(p []byte) []byte {
	var b bytes.Buffer
	z, err := zlib.NewWriterLevel(&b, level)
	if err != nil {
		panic(err) // the level is a constant
	}
	z.Write(p) // into memory: cannot fail
	z.Close()
	return b.Bytes()
}

const level = 3
