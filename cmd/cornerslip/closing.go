package main

import (
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strings"

	"cornerslip/cmd/internal/job"
	"cornerslip/label"
	"cornerslip/layout"
)

func nothingFor(kind label.Kind) string {
	switch kind {
	case label.Packet:
		return "no record has a packet under preparations; nothing was written"
	case label.Barcode:
		return "no record has a catalogue number of the house's own; nothing was written"
	case label.Slip:
		return "no identification makes a slip; nothing was written"
	}
	return "the table has no record to print; nothing was written"
}

// pieceOf is what one of the things printed is called.
func pieceOf(kind label.Kind) string {
	switch kind {
	case label.Slip:
		return "slip"
	case label.Tag:
		return "tag"
	}
	return "label"
}

// report says what was printed, and which labels are not like the others; a
// piece is a label, a slip or a tag.
func (a *app) report(out, piece string, rep job.Report, mount bool) {
	where := plural(rep.Papers, "sheet") + " of " + rep.PaperSize.String()
	if mount {
		where = plural(rep.Papers, "mount") + " of " + rep.PaperSize.String()
		if rep.Shared > 0 {
			where += fmt.Sprintf(", %d of them shared", rep.Shared)
		}
	}
	what := plural(rep.Labels, piece)
	if rep.Records > 0 { // bare numbers have none
		what += " of " + plural(rep.Records, "record")
	}
	a.say("wrote %s: %s on %s", out, what, where)
	if rep.Without > 0 {
		a.say("%s without such a %s", plural(rep.Without, "record"), piece)
	}
	if len(rep.Sizes) > 1 {
		sizes := make([]layout.Size, 0, len(rep.Sizes))
		for size := range rep.Sizes {
			sizes = append(sizes, size)
		}
		slices.SortFunc(sizes, func(x, y layout.Size) int { return int(x.H-y.H) + int(x.W-y.W)/1000 })
		parts := make([]string, len(sizes))
		for i, size := range sizes {
			parts[i] = fmt.Sprintf("%d of %s", rep.Sizes[size], size)
		}
		a.say("sizes: %s", strings.Join(parts, ", "))
	}
	for _, l := range rep.Smaller {
		a.say("smaller type, %s pt: %s", l.Report.Text.Decimal(layout.Pt, 2), l.Ref)
	}
	if n := len(rep.Withheld); n > 0 {
		var keys []string
		for _, l := range rep.Withheld {
			if !slices.Contains(keys, l.Ref.Key) {
				keys = append(keys, l.Ref.Key)
			}
		}
		a.say("exact place withheld on %s for other herbaria: %s", plural(n, "label"), strings.Join(keys, ", "))
	}
	goesOn := map[string]int{}
	for _, l := range rep.Continued {
		goesOn[l.Ref.Key]++
	}
	for _, l := range rep.Continued {
		if n := goesOn[l.Ref.Key]; n > 1 {
			a.say("goes on over %s: %s, each of %d", plural(l.Ref.Of, piece), l.Ref.Key, n)
		} else if n == 1 {
			a.say("goes on over %s: %s", plural(l.Ref.Of, piece), l.Ref.Key)
		}
		delete(goesOn, l.Ref.Key)
	}
	if rep.Picture != "" {
		a.stickers(rep.Picture)
	}
	if rep.Face != (layout.Size{}) {
		a.say("closed packets are %s × %s mm", rep.Face.W.Decimal(layout.MM, 0), rep.Face.H.Decimal(layout.MM, 0))
	}
	a.scans(rep.Scans)
	a.advice(rep.Warnings)
}

// scans says how well the barcodes should scan.
func (a *app) scans(all []job.Scans) {
	names := map[string]string{"code128": "Code 128", "code39": "Code 39", "datamatrix": "Data Matrix", "qr": "QR Code"}
	for _, s := range all {
		standard := "ISO/IEC 15416"
		if s.Symbology == "datamatrix" || s.Symbology == "qr" {
			standard = "ISO/IEC 15415"
		}
		a.say("%s of %s, narrowest module %s mm (%d dots at %d dpi): grade %c as the printer paints them, by %s (contrast %.2f, modulation %.2f, decodability %.2f)",
			plural(s.Count, "symbol"), names[s.Symbology], s.Module.Decimal(layout.MM, 3), s.Dots, s.DPI, s.Worst.Letter, standard, s.Worst.Contrast, s.Worst.Modulation, s.Worst.Decodability)
		if s.Worst.Letter > 'B' {
			a.say("warning: they may scan badly; print them wider (module_dots under [bars] in the house file)")
		}
	}
	if len(all) > 0 {
		a.say("what the ink does on your paper, the calibration page shows: cornerslip calibrate")
	}
}

// stickers shows which stickers of the first sheet are used.
func (a *app) stickers(picture string) {
	a.say("stickers of the first sheet (■ printed on, □ still free, × used up):")
	fmt.Fprint(a.stderr, picture)
}

// advice says how the pages are to be printed.
func (a *app) advice(warnings []string) {
	for _, w := range warnings {
		a.say("warning: %s", w)
	}
	a.say("print at 100 %%, not \"fit to page\", on one side")
}

// leftOut says which labels do not go on mounts, and how they are printed.
func (a *app) leftOut(path string, rep job.Report) {
	words := map[job.Sort]string{job.Copies: "further copies", job.Boxes: "boxes and jars", job.Gifts: "other herbaria"}
	var parts, which []string
	total := 0
	for _, s := range []job.Sort{job.Copies, job.Boxes, job.Gifts} {
		if n := rep.LeftOut[s]; n > 0 {
			parts = append(parts, fmt.Sprintf("%d for %s", n, words[s]))
			which = append(which, string(s))
			total += n
		}
	}
	if total == 0 {
		return
	}
	a.say("not on mounts: %s (%s); print them on paper with", plural(total, "label"), strings.Join(parts, ", "))
	command := "cornerslip sheet " + quote(path)
	if a.house != "" {
		command += " --house " + quote(a.house)
	}
	for _, o := range a.only {
		command += " --only " + quote(o)
	}
	a.say("  %s --which %s", command, strings.Join(which, ","))
}

// quote puts a word that a shell would part into quotes.
func quote(s string) string {
	if strings.ContainsAny(s, " \t'$&()") {
		return `"` + s + `"`
	}
	return s
}

// cuts writes the cutting list.
func (a *app) cuts(j *job.Job, to string, rep *job.Report) error {
	switch {
	case to == "":
		return nil
	case rep.CutList() == "":
		a.say("nothing is cut here, so there is no cutting list")
		return nil
	case to == "-":
		fmt.Fprint(a.stderr, rep.CutList())
		return nil
	}
	write := func(w io.Writer) error { _, err := io.WriteString(w, rep.CutList()); return err }
	if strings.EqualFold(filepath.Ext(to), ".pdf") {
		write = func(w io.Writer) error { return j.WriteCuts(w, rep) }
	}
	if err := a.write(to, write); err != nil {
		return err
	}
	a.say("wrote the cutting list %s", to)
	return nil
}
