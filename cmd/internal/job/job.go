// Package job composes the whole way from a table to a printed page, once for
// the command line and the web page. It alone reads the values of a house
// file and turns them into each package's own options.
package job

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"runtime"
	"time"

	"cornerslip/fonts"
	"cornerslip/label/house"
	"cornerslip/label/lang"
	"cornerslip/layout/face"
	"cornerslip/layout/typeset"
)

// Version is the program's; it stands in the files it writes.
const Version = "0.1"

// Options say what a job works with.
type Options struct {
	// House is the path of a house file; "" takes the defaults.
	House string
	// HouseText is the text of a house file that is kept elsewhere; nil reads
	// the file House. Files that it names are looked for beside House.
	HouseText []byte
	// Date is the day of the run: 'in the future' is held against it, and the
	// PDF's dates are it.
	Date time.Time
	// Languages replace those of the house file; nil keeps them.
	Languages []string
	// Backlog relaxes what a record must have, as the house file can.
	Backlog bool
	// Dates says how dates in figures are read, in the words of the house file
	// with a comma between: "day first, 1900s". "" leaves it to the house file.
	Dates string
}

// A Job is a house's settings made ready: one serves any number of tables.
type Job struct {
	House     *house.House
	houseText string // of the house file; "" if there is none
	o         Options
	fonts     *fonts.Set
	faces     *face.Setter
	setter    *typeset.Setter
	langs     []lang.Tag
	// Workers is how many labels are set at the same time. The pages do not
	// depend on it.
	Workers int
}

// Open reads the house file. A fault in it is returned as it is.
func Open(o Options) (*Job, error) {
	h := house.Default()
	j := &Job{House: &h, o: o, Workers: runtime.GOMAXPROCS(0)}
	if o.House != "" || o.HouseText != nil {
		src, err := o.HouseText, error(nil)
		if src == nil {
			src, err = os.ReadFile(o.House)
		}
		if errors.Is(err, fs.ErrNotExist) {
			return nil, fmt.Errorf("%s: there is no such house file; check the name and the folder, or make one with: cornerslip house -o house.toml", o.House)
		}
		if err != nil {
			return nil, fmt.Errorf("the house file cannot be read: %w", err)
		}
		if j.House, err = house.Load(o.House, src); err != nil {
			return nil, err
		}
		j.houseText = string(src)
	}
	if err := readDates(&j.House.Dates, o.Dates); err != nil {
		return nil, err
	}
	tags := j.House.Words.Languages
	if len(o.Languages) > 0 {
		tags = o.Languages
	}
	for _, t := range tags {
		tag, err := lang.Parse(t)
		if err != nil {
			return nil, err
		}
		j.langs = append(j.langs, tag)
	}
	var err error
	if j.fonts, err = j.fontSet(); err != nil {
		return nil, err
	}
	j.faces = face.New(j.fonts)
	j.setter = typeset.New(j.faces)
	for _, t := range j.langs {
		if err := j.writes(t); err != nil {
			return nil, err
		}
	}
	return j, nil
}

// writes reports whether the faces have the letters of a language: said once,
// not for every word of every label.
func (j *Job) writes(t lang.Tag) error {
	for _, c := range j.faces.Coverage(lang.Words(t).Continued, 0) {
		if c.Face == nil {
			return fmt.Errorf("the language %s needs a face that has %s: name a TrueType file that has it under [type] fallback in the house file", t, c.Cluster)
		}
	}
	return nil
}

// Fonts returns the faces that the job sets with.
func (j *Job) Fonts() *fonts.Set { return j.fonts }

// Date returns the day of the run.
func (j *Job) Date() time.Time { return j.o.Date }
