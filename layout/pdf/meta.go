package pdf

import (
	_ "embed"
	"fmt"
	"html"
	"strings"
	"time"
	"unicode/utf16"
)

// srgb is the colour space that the file's greys are meant in: IEC 61966-2-1
// as an ICC profile of version 2.1. The bytes are made by the test of this
// package from the standard's numbers and are free of anybody's rights.
//
//go:embed srgb.icc
var srgb []byte

const producer = "cornerslip"

// putInfo writes the document information dictionary. What it says must stand
// in the metadata too, in the same words (ISO 19005-2, 6.6.2.3.3).
func (d *document) putInfo() int {
	var b strings.Builder
	b.WriteString("<< /Producer " + textString(producer))
	for _, e := range []struct{ key, value string }{
		{"Title", d.o.Title}, {"Subject", d.o.Subject}, {"Creator", d.o.Creator},
	} {
		if e.value != "" {
			b.WriteString(" /" + e.key + " " + textString(e.value))
		}
	}
	if t := d.o.Date; !t.IsZero() {
		fmt.Fprintf(&b, " /CreationDate (%s) /ModDate (%[1]s)", pdfDate(t))
	}
	b.WriteString(" >>")
	n := d.number()
	d.object(n, b.String())
	return n
}

// pdfDate prints a time as ISO 32000-1, 7.9.4 has it.
func pdfDate(t time.Time) string {
	zone := t.Format("-07:00")
	return "D:" + t.Format("20060102150405") + zone[:3] + "'" + zone[4:] + "'"
}

// textString returns a string that people read (ISO 32000-1, 7.9.2.2).
func textString(s string) string {
	ascii := !strings.ContainsFunc(s, func(r rune) bool { return r < ' ' || r > '~' })
	if ascii {
		return "(" + strings.NewReplacer(`\`, `\\`, "(", `\(`, ")", `\)`).Replace(s) + ")"
	}
	b := []byte("<FEFF")
	for _, u := range utf16.Encode([]rune(s)) {
		b = fmt.Appendf(b, "%04X", u)
	}
	return string(append(b, '>'))
}

// metadata returns the XMP packet (ISO 16684-1).
func (d *document) metadata() []byte {
	part := d.o.part
	if part == 0 {
		part = 2
	}
	var b strings.Builder
	b.WriteString("<?xpacket begin=\"\ufeff\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n" +
		"<x:xmpmeta xmlns:x=\"adobe:ns:meta/\"><rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\">\n")
	about := func(prefix, space string, elements ...string) {
		all := strings.Join(elements, "")
		if all != "" {
			fmt.Fprintf(&b, "<rdf:Description rdf:about=\"\" xmlns:%s=\"%s\">%s</rdf:Description>\n", prefix, space, all)
		}
	}
	element := func(name, value, before, after string) string {
		if value == "" {
			return ""
		}
		return "<" + name + ">" + before + html.EscapeString(value) + after + "</" + name + ">"
	}
	const alt, endAlt = `<rdf:Alt><rdf:li xml:lang="x-default">`, `</rdf:li></rdf:Alt>`
	date := ""
	if !d.o.Date.IsZero() {
		date = d.o.Date.Format("2006-01-02T15:04:05-07:00")
	}
	about("pdfaid", "http://www.aiim.org/pdfa/ns/id/",
		element("pdfaid:part", fmt.Sprint(part), "", ""), element("pdfaid:conformance", "B", "", ""))
	about("dc", "http://purl.org/dc/elements/1.1/",
		element("dc:format", "application/pdf", "", ""),
		element("dc:title", d.o.Title, alt, endAlt), element("dc:description", d.o.Subject, alt, endAlt))
	about("xmp", "http://ns.adobe.com/xap/1.0/",
		element("xmp:CreatorTool", d.o.Creator, "", ""), element("xmp:CreateDate", date, "", ""), element("xmp:ModifyDate", date, "", ""))
	about("pdf", "http://ns.adobe.com/pdf/1.3/", element("pdf:Producer", producer, "", ""))
	b.WriteString("</rdf:RDF></x:xmpmeta>\n<?xpacket end=\"w\"?>")
	return []byte(b.String())
}

// putCatalog writes the document's root. Printers are asked for the true size
// and for the paper of the page's size: at 97 % no bar stays on the printer's
// dots. They are asked not to print on the back, where labels would be lost.
func (d *document) putCatalog(tree int) {
	meta := d.number()
	d.stream(meta, " /Type /Metadata /Subtype /XML", d.metadata()) // never compressed: other programs look for it
	profile := d.deflated(" /N 3", srgb)
	b := fmt.Sprintf("<< /Type /Catalog /Pages %d 0 R /Metadata %d 0 R", tree, meta)
	b += fmt.Sprintf(" /OutputIntents [<< /Type /OutputIntent /S /GTS_PDFA1 /OutputConditionIdentifier (sRGB IEC61966-2.1)"+
		" /Info (sRGB IEC61966-2.1) /DestOutputProfile %d 0 R >>]", profile)
	b += " /ViewerPreferences << /PrintScaling /None /Duplex /Simplex /PickTrayByPDFSize true"
	if d.o.Title != "" {
		b += " /DisplayDocTitle true"
	}
	b += " >>"
	if d.o.Lang != "" {
		b += " /Lang " + textString(d.o.Lang)
	}
	d.object(d.catalog, b+" >>")
}
