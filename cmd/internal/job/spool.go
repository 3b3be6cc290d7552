package job

import (
	"bufio"
	"fmt"
	"io"
	"os"

	"cornerslip/layout"
)

// spool keeps the set boxes of a run in a temporary file, so that pages can
// ask for them in any order and a long run needs no more memory than a short
// one: eight bytes and a size for each label.
type spool struct {
	file  *os.File
	w     *bufio.Writer
	ends  []int64
	sizes []layout.Size
	end   int64
}

func newSpool() (*spool, error) {
	f, err := os.CreateTemp("", "labels-*.spool")
	if err != nil {
		return nil, fmt.Errorf("no temporary file for the labels: %w", err)
	}
	// Where the system allows it the file loses its name at once, so that not
	// even a run that is killed leaves it behind.
	os.Remove(f.Name())
	return &spool{file: f, w: bufio.NewWriterSize(f, 1<<16)}, nil
}

func (s *spool) close() {
	s.file.Close()
	os.Remove(s.file.Name())
}

// add appends a box in its encoded form.
func (s *spool) add(size layout.Size, encoded []byte) error {
	if _, err := s.w.Write(encoded); err != nil {
		return fmt.Errorf("the temporary file for the labels cannot be written: %w", err)
	}
	s.end += int64(len(encoded))
	s.ends = append(s.ends, s.end)
	s.sizes = append(s.sizes, size)
	return nil
}

// done is to be called between the last add and the first box.
func (s *spool) done() error {
	if err := s.w.Flush(); err != nil {
		return fmt.Errorf("the temporary file for the labels cannot be written: %w", err)
	}
	return nil
}

// box returns box i.
func (s *spool) box(i int) (*layout.Box, error) {
	from := int64(0)
	if i > 0 {
		from = s.ends[i-1]
	}
	buf := make([]byte, s.ends[i]-from)
	if _, err := s.file.ReadAt(buf, from); err != nil && err != io.EOF {
		return nil, fmt.Errorf("the temporary file for the labels cannot be read: %w", err)
	}
	return layout.Decode(buf)
}
