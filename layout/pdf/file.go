package pdf

import (
	"bufio"
	"bytes"
	"crypto/sha256"
	"fmt"
	"hash"
	"io"
	"os"
)

// A file writes numbered objects and remembers where each one stands. After
// the first error it writes nothing more; err keeps it.
type file struct {
	out     *spool
	plain   bool    // leave streams uncompressed
	offsets []int64 // by number; 0 is the head of the free list
	size    int64
	sum     hash.Hash
	err     error
}

// begin writes the header; the four bytes above 127 tell transfer programs
// that the file is binary (ISO 32000-1, 7.5.2).
func (f *file) begin() {
	f.sum = sha256.New()
	f.offsets = []int64{0}
	f.put([]byte("%PDF-1.7\n%\xe2\xe3\xcf\xd3\n"))
}

// number returns a new object's number.
func (f *file) number() int {
	f.offsets = append(f.offsets, 0)
	return len(f.offsets) - 1
}

func (f *file) put(p []byte) {
	if f.err != nil {
		return
	}
	n, err := f.out.Write(p)
	f.sum.Write(p)
	f.size += int64(n)
	f.err = err
}

func (f *file) object(number int, body string) {
	f.offsets[number] = f.size
	f.put(fmt.Appendf(nil, "%d 0 obj\n%s\nendobj\n", number, body))
}

// stream writes data, already filtered, as an object; dict holds the entries
// of its dictionary besides Length, each after a space.
func (f *file) stream(number int, dict string, data []byte) {
	f.offsets[number] = f.size
	f.put(fmt.Appendf(nil, "%d 0 obj\n<< /Length %d%s >>\nstream\n", number, len(data), dict))
	f.put(data)
	f.put([]byte("\nendstream\nendobj\n"))
}

// deflated writes data as a new compressed stream, or as it is in a plain
// file, and returns its number.
func (f *file) deflated(dict string, data []byte) int {
	n := f.number()
	if f.plain {
		f.stream(n, dict, data)
	} else {
		f.stream(n, " /Filter /FlateDecode"+dict, deflate(data))
	}
	return n
}

// end writes the cross-reference table and the trailer. The file's identifier
// is a digest of all before it, so equal files have equal ones.
func (f *file) end(root, info int) {
	id := f.sum.Sum(nil)[:16]
	start := f.size
	b := fmt.Appendf(nil, "xref\n0 %d\n0000000000 65535 f \n", len(f.offsets))
	for _, o := range f.offsets[1:] {
		b = fmt.Appendf(b, "%010d 00000 n \n", o)
		if len(b) > 1<<16 {
			f.put(b)
			b = b[:0]
		}
	}
	b = fmt.Appendf(b, "trailer\n<< /Size %d /Root %d 0 R /Info %d 0 R /ID [<%X> <%X>] >>\nstartxref\n%d\n%%%%EOF\n",
		len(f.offsets), root, info, id, id, start)
	f.put(b)
	if f.err == nil && f.size > 9_999_999_999 {
		f.err = fmt.Errorf("the file would have %d bytes; a PDF can have 9,999,999,999: print the run in parts", f.size)
	}
}

// A spool holds what was written to it: in memory while it is little, then in
// a temporary file.
type spool struct {
	dir string
	mem bytes.Buffer
	f   *os.File
	w   *bufio.Writer
}

// spoolMemory is how much a spool holds before it opens a file. One label, or
// one sheet of paper, never needs the disk.
const spoolMemory = 1 << 20

func (s *spool) Write(p []byte) (int, error) {
	if s.f == nil && s.mem.Len()+len(p) <= spoolMemory {
		return s.mem.Write(p)
	}
	if s.f == nil {
		f, err := os.CreateTemp(s.dir, "cornerslip-*.spool")
		if err != nil {
			return 0, fmt.Errorf("a long run needs a temporary file: %w", err)
		}
		s.f, s.w = f, bufio.NewWriterSize(f, 1<<16)
		if _, err := s.mem.WriteTo(s.w); err != nil {
			return 0, err
		}
		s.mem = bytes.Buffer{}
	}
	return s.w.Write(p)
}

func (s *spool) writeTo(w io.Writer) error {
	if s.f == nil {
		_, err := s.mem.WriteTo(w)
		return err
	}
	if err := s.w.Flush(); err != nil {
		return err
	}
	if _, err := s.f.Seek(0, io.SeekStart); err != nil {
		return err
	}
	_, err := io.Copy(w, s.f)
	return err
}

// close removes the temporary file. What was in it is no longer needed, so
// its errors matter to nobody.
func (s *spool) close() {
	if s.f != nil {
		s.f.Close()
		os.Remove(s.f.Name())
	}
}
