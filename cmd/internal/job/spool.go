package job

import (
	"bufio"
	"fmt"
	"io"
	"os"

	"cornerslip/layout"
)

// chunks keeps pieces of bytes in a temporary file, to be had again in any
// order: eight bytes of memory for each.
type chunks struct {
	file *os.File
	w    *bufio.Writer
	ends []int64
}

func newChunks() (*chunks, error) {
	f, err := os.CreateTemp("", "labels-*.spool")
	if err != nil {
		return nil, fmt.Errorf("no temporary file for the labels: %w", err)
	}
	// Where the system allows it the file loses its name at once, so that not
	// even a run that is killed leaves it behind.
	os.Remove(f.Name())
	return &chunks{file: f, w: bufio.NewWriterSize(f, 1<<16)}, nil
}

func (c *chunks) close() {
	c.file.Close()
	os.Remove(c.file.Name())
}

// start returns where chunk i begins.
func (c *chunks) start(i int) int64 {
	if i == 0 {
		return 0
	}
	return c.ends[i-1]
}

// keep appends a chunk.
func (c *chunks) keep(b []byte) error {
	if _, err := c.w.Write(b); err != nil {
		return fmt.Errorf("the temporary file for the labels cannot be written: %w", err)
	}
	c.ends = append(c.ends, c.start(len(c.ends))+int64(len(b)))
	return nil
}

// done is to be called between the last keep and the first get.
func (c *chunks) done() error {
	if err := c.w.Flush(); err != nil {
		return fmt.Errorf("the temporary file for the labels cannot be written: %w", err)
	}
	return nil
}

// get returns chunk i. It may be called from many goroutines.
func (c *chunks) get(i int) ([]byte, error) {
	from := c.start(i)
	buf := make([]byte, c.ends[i]-from)
	if _, err := c.file.ReadAt(buf, from); err != nil && err != io.EOF {
		return nil, fmt.Errorf("the temporary file for the labels cannot be read: %w", err)
	}
	return buf, nil
}

// spool keeps the set boxes of a run in a temporary file, so that pages can
// ask for them in any order and a long run needs no more memory than a short
// one: eight bytes and a size for each label.
type spool struct {
	*chunks
	sizes []layout.Size
}

func newSpool() (*spool, error) {
	c, err := newChunks()
	return &spool{chunks: c}, err
}

// add appends a box in its encoded form.
func (s *spool) add(size layout.Size, encoded []byte) error {
	s.sizes = append(s.sizes, size)
	return s.keep(encoded)
}

// box returns box i.
func (s *spool) box(i int) (*layout.Box, error) {
	b, err := s.get(i)
	if err != nil {
		return nil, err
	}
	return layout.Decode(b)
}
