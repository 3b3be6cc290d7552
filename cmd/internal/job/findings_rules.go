package job

import (
	"encoding/csv"
	"fmt"
	"maps"
	"slices"
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/table"
)

// A RuleText is a rule as it is told of: of records, of two tables, or of the
// reading of one.
type RuleText struct {
	Name string
	// Severity is the one in force, check.Off included.
	Severity label.Severity
	Doc      string // one sentence: what it finds
	Source   string
	Terms    []string
	// Example are files that raise the rule when trip.csv is checked, and
	// Counterexample ones like them that do not: trip.csv, and what it takes of
	// identifications.csv and house.toml; or the files of an archive, trip/meta.xml
	// and others, or the parts of a workbook, trip.xlsx/xl/workbook.xml and others,
	// to be packed; or identifications.csv alone, to make slips of.
	Example, Counterexample map[string]string
	// Raised and Sound say the same in words: what is different from a sound
	// record.
	Raised, Sound string
}

const (
	exampleTable  = "trip.csv"
	exampleSecond = "identifications.csv"
	exampleHouse  = "house.toml"
	exampleFolder = "trip"
	exampleBook   = "trip.xlsx"
)

// RuleTexts returns every rule: those of reading first, then those of records
// and of identifications, with the severities in force.
func (j *Job) RuleTexts() ([]RuleText, error) {
	rules, err := j.Rules()
	if err != nil {
		return nil, err
	}
	e := check.New(j.checkOptions())
	var all []RuleText
	for _, r := range table.Rules() {
		f, _ := e.Adjust(label.Finding{Rule: r.Name, Severity: r.Severity})
		t := RuleText{Name: r.Name, Severity: f.Severity, Doc: r.Doc, Source: r.Source,
			Example: map[string]string{exampleTable: r.Example}, Counterexample: map[string]string{exampleTable: r.Counterexample},
			Raised: quotedText(r.Example), Sound: quotedText(r.Counterexample)}
		if own, ok := ownExamples[r.Name]; ok {
			own.tell(&t)
		}
		all = append(all, t)
	}
	for _, r := range rules {
		t := RuleText{Name: r.Name, Severity: r.Severity, Doc: r.Doc, Source: r.Source, Terms: r.Terms}
		if own, ok := ownExamples[r.Name]; ok {
			own.tell(&t)
		} else {
			t.Example, t.Raised = map[string]string{exampleTable: csvOf(r.Example)}, rowsInWords(r.Example)
			t.Counterexample, t.Sound = map[string]string{exampleTable: csvOf(r.Counterexample)}, rowsInWords(r.Counterexample)
		}
		if house := exampleHouses[r.Name]; house != "" {
			t.Example[exampleHouse], t.Counterexample[exampleHouse] = house, house
		}
		all = append(all, t)
	}
	return all, nil
}

// csvOf writes rows as a table with a column for each of their terms.
func csvOf(rows []map[string]string) string {
	terms := map[string]bool{"scientificName": true, "habitat": true} // a row without a cell needs columns
	for _, r := range rows {
		for term := range r {
			terms[term] = true
		}
	}
	heading := slices.Sorted(maps.Keys(terms))
	var b strings.Builder
	w := csv.NewWriter(&b)
	w.Write(heading)
	for _, r := range rows {
		cells := make([]string, len(heading))
		for i, term := range heading {
			cells[i] = r[term]
		}
		w.Write(cells)
	}
	w.Flush()
	return b.String()
}

// rowsShown is how many rows of an example are told of in words.
const rowsShown = 4

// rowsInWords says in what rows differ from a sound record, or what they hold
// where they hold little.
func rowsInWords(rows []map[string]string) string {
	var all []string
	for i, r := range rows {
		if i == rowsShown {
			all = append(all, fmt.Sprintf("and so on, %d records", len(rows)))
			break
		}
		all = append(all, rowInWords(r))
	}
	return strings.Join(all, "; ")
}

func rowInWords(r map[string]string) string {
	if len(r) == 0 {
		return "an empty row"
	}
	sound := check.With()
	var said []string
	without := 0
	for _, term := range slices.Sorted(maps.Keys(sound)) {
		if _, ok := r[term]; !ok {
			said = append(said, "no "+term)
			without++
		}
	}
	if without > len(sound)/2 { // not made of a sound one
		sound, said = nil, nil
	}
	for _, term := range slices.Sorted(maps.Keys(r)) {
		if was, ok := sound[term]; !ok || was != r[term] {
			said = append(said, fmt.Sprintf("%s %q", term, r[term]))
		}
	}
	if len(said) == 0 {
		return "a sound record"
	}
	return strings.Join(said, ", ")
}

func quotedText(s string) string {
	if s == "" {
		return "an empty file"
	}
	return fmt.Sprintf("%q", s)
}

// exampleHouses are the house files without which a rule has nothing to say.
var exampleHouses = map[string]string{
	"duplicate-to-us":    "[herbarium]\nname = \"Valdoura Field Station Herbarium\"\ncode = \"VDOURA\"\n",
	"permit-names-place": "[sensitive]\ntaxa = [\"Thymus\"]\n",
}

// An ownExample is one of a rule that looks at more than one table of records.
type ownExample struct {
	record            string // the record that identifications speak of; "" is V-1
	raised, sound     string // rows of identifications
	twice             bool   // the record stands in the table twice
	files, soundFiles map[string]string
	words, soundWords string
}

const (
	recordHeading = "catalogNumber,recordedBy,recordNumber,eventDate,scientificName,country,locality,identifiedBy,dateIdentified\n"
	oneRecord     = "V-1,I. Almeida,214,2026-05-14,Thymus capitellatus Hoffmanns. & Link,Portugal,Valdoura,,\n"
	slipHeading   = "catalogNumber,recordedBy,recordNumber,slip,scientificName,identifiedBy,dateIdentified,identificationRemarks\n"
	soundSlip     = "V-1,,,,Thymus camphoratus Hoffmanns. & Link,T. Brandão,2026-06-02,\n"
)

func (o *ownExample) tell(t *RuleText) {
	if o.files != nil {
		t.Example, t.Counterexample, t.Raised, t.Sound = maps.Clone(o.files), maps.Clone(o.soundFiles), o.words, o.soundWords
		return
	}
	trip := recordHeading + oneRecord
	if o.record != "" {
		trip = recordHeading + o.record
	}
	t.Example = map[string]string{exampleTable: trip, exampleSecond: slipHeading + o.raised}
	t.Counterexample = map[string]string{exampleTable: trip, exampleSecond: slipHeading + o.sound}
	t.Raised, t.Sound = fmt.Sprintf("the identification %q", o.raised), fmt.Sprintf("the identification %q", o.sound)
	if o.raised == "" {
		t.Raised = "no identification of the record"
	}
}

const twoAlike = "V-1,I. Almeida,214,2026-05-14,Thymus capitellatus Hoffmanns. & Link,Portugal,Valdoura,,\nV-2,I. Almeida,214,2026-05-14,Thymus capitellatus Hoffmanns. & Link,Portugal,Valdoura,,\n"

var ownExamples = map[string]*ownExample{
	ruleSlipKind:   {raised: "V-1,,,opinion,Thymus camphoratus Hoffmanns. & Link,T. Brandão,2026-06-02,\n", sound: "V-1,,,revision,Thymus camphoratus Hoffmanns. & Link,T. Brandão,2026-06-02,\n"},
	ruleSlipEmpty:  {raised: "V-1,,,determination,,T. Brandão,2026-06-02,\n", sound: soundSlip},
	ruleSlipDet:    {raised: "V-1,,,,Thymus camphoratus Hoffmanns. & Link,,2026-06-02,\n", sound: soundSlip},
	ruleSlipDate:   {raised: "V-1,,,,Thymus camphoratus Hoffmanns. & Link,T. Brandão,,\n", sound: soundSlip},
	ruleUnjoined:   {raised: soundSlip + "V-7,,,,Thymus camphoratus Hoffmanns. & Link,T. Brandão,2026-06-02,\n", sound: soundSlip},
	ruleTwoRecords: {record: twoAlike, raised: "V-1,,,,Thymus camphoratus Hoffmanns. & Link,T. Brandão,2026-06-02,\nV-2,,,,Thymus camphoratus Hoffmanns. & Link,T. Brandão,2026-06-02,\n,I. Almeida,214,,Thymus mastichina (L.) L.,T. Brandão,2026-06-03,\n", sound: "V-1,,,,Thymus camphoratus Hoffmanns. & Link,T. Brandão,2026-06-02,\nV-2,,,,Thymus camphoratus Hoffmanns. & Link,T. Brandão,2026-06-02,\n"},
	ruleContradict: {raised: soundSlip + "V-1,I. Almeida,215,,Thymus mastichina (L.) L.,T. Brandão,2026-06-03,\n", sound: soundSlip + "V-1,I. Almeida,214,,Thymus mastichina (L.) L.,T. Brandão,2026-06-03,\n"},
	ruleLoosely:    {raised: ",Almeida,214,,Thymus camphoratus Hoffmanns. & Link,T. Brandão,2026-06-02,\n", sound: ",I. Almeida,214,,Thymus camphoratus Hoffmanns. & Link,T. Brandão,2026-06-02,\n"},
	ruleEarly:      {raised: "V-1,,,,Thymus camphoratus Hoffmanns. & Link,T. Brandão,2025-06-02,\n", sound: soundSlip},
	ruleRepeated:   {raised: soundSlip + soundSlip, sound: soundSlip},
	ruleOnLabel: {record: "V-1,I. Almeida,214,2026-05-14,Thymus capitellatus Hoffmanns. & Link,Portugal,Valdoura,I. Almeida,2026-05-20\n",
		raised: "V-1,,,,Thymus capitellatus Hoffmanns. & Link,I. Almeida,2026-05-20,\n" + soundSlip, sound: soundSlip},
	ruleNoSlip: {record: oneRecord + "V-2,I. Almeida,215,2026-05-14,Thymus capitellatus Hoffmanns. & Link,Portugal,Valdoura,,\n",
		raised: soundSlip, sound: soundSlip + "V-2,,,,Thymus camphoratus Hoffmanns. & Link,T. Brandão,2026-06-02,\n"},
	// The slips of a table that is joined to none: cornerslip slip identifications.csv.
	ruleSlipSheet: {
		files:      map[string]string{exampleSecond: slipHeading + ",,,,Thymus camphoratus Hoffmanns. & Link,T. Brandão,2026-06-02,\n"},
		soundFiles: map[string]string{exampleSecond: slipHeading + soundSlip},
		words:      "a slip without catalogNumber, recordedBy and recordNumber", soundWords: fmt.Sprintf("the slip %q", soundSlip),
	},
	"permit-names-place": {
		files:      map[string]string{exampleTable: permitTable("Licence 7, Valdoura")},
		soundFiles: map[string]string{exampleTable: permitTable("Licence 7")},
		words:      `a plant on the house's list, duplicatesTo "PINHEL", permits "Licence 7, Valdoura"`, soundWords: `permits "Licence 7"`,
	},
	ruleArchiveDescription: {
		files:      archiveOf("country,locality\nPortugal,Lindoso\n", "country", "county"),
		soundFiles: archiveOf("country,locality\nPortugal,Lindoso\n", "country", "locality"),
		words:      "a meta.xml that calls the column headed locality county", soundWords: "a meta.xml that calls it locality",
	},
	ruleWorksheet: {
		files:      workbookOf(`<mergeCells count="1"><mergeCell ref="A2:A3"/></mergeCells>`),
		soundFiles: workbookOf(""),
		words:      "a worksheet whose cells A2 and A3 are merged", soundWords: "the same without merged cells",
	},
}

func permitTable(permits string) string {
	return csvOf([]map[string]string{check.With("duplicatesTo", "PINHEL", "permits", permits)})
}

const (
	ruleArchiveDescription = "archive-description"
	ruleWorksheet          = "worksheet"
)

// workbookOf are the parts of a workbook with a small table, and what stands
// behind the cells of its worksheet.
func workbookOf(behind string) map[string]string {
	const main, office = "http://schemas.openxmlformats.org/spreadsheetml/2006/main", "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
	const relations, types = "http://schemas.openxmlformats.org/package/2006/relationships", "http://schemas.openxmlformats.org/package/2006/content-types"
	const kind = "application/vnd.openxmlformats-officedocument.spreadsheetml"
	cell := func(at, text string) string {
		return `<c r="` + at + `" t="inlineStr"><is><t>` + text + `</t></is></c>`
	}
	return map[string]string{
		exampleBook + "/[Content_Types].xml": `<Types xmlns="` + types + `"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>` +
			`<Override PartName="/xl/workbook.xml" ContentType="` + kind + `.sheet.main+xml"/><Override PartName="/xl/worksheets/sheet1.xml" ContentType="` + kind + `.worksheet+xml"/></Types>`,
		exampleBook + "/_rels/.rels":                `<Relationships xmlns="` + relations + `"><Relationship Id="rId1" Type="` + office + `/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
		exampleBook + "/xl/workbook.xml":            `<workbook xmlns="` + main + `" xmlns:r="` + office + `"><sheets><sheet name="Trip" sheetId="1" r:id="rId1"/></sheets></workbook>`,
		exampleBook + "/xl/_rels/workbook.xml.rels": `<Relationships xmlns="` + relations + `"><Relationship Id="rId1" Type="` + office + `/worksheet" Target="worksheets/sheet1.xml"/></Relationships>`,
		exampleBook + "/xl/worksheets/sheet1.xml": `<worksheet xmlns="` + main + `"><sheetData><row r="1">` + cell("A1", "country") + cell("B1", "locality") + `</row><row r="2">` + cell("A2", "Portugal") + cell("B2", "Lindoso") +
			`</row><row r="3">` + cell("A3", "Portugal") + cell("B3", "Parada") + `</row></sheetData>` + behind + `</worksheet>`,
	}
}

// archiveOf is a Darwin Core archive of one table with two columns.
func archiveOf(text, first, second string) map[string]string {
	return map[string]string{
		exampleFolder + "/occurrence.csv": text,
		exampleFolder + "/meta.xml": `<archive xmlns="http://rs.tdwg.org/dwc/text/">
<core encoding="UTF-8" fieldsTerminatedBy="," fieldsEnclosedBy="&quot;" linesTerminatedBy="\n" ignoreHeaderLines="1" rowType="http://rs.tdwg.org/dwc/terms/Occurrence">
<files><location>occurrence.csv</location></files>
<field index="0" term="http://rs.tdwg.org/dwc/terms/` + first + `"/>
<field index="1" term="http://rs.tdwg.org/dwc/terms/` + second + `"/>
</core>
</archive>
`,
	}
}
