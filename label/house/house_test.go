package house

import (
	"errors"
	"maps"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

var ignore = cmp.Options{cmpopts.IgnoreUnexported(House{}), cmpopts.EquateEmpty()}

func TestTemplateIsDefault(t *testing.T) {
	h, err := Load("house.toml", Template())
	if err != nil {
		t.Fatal(err)
	}
	want := Default()
	if d := cmp.Diff(&want, h, ignore); d != "" {
		t.Error(d)
	}
	// Every key is in the template, and is explained: a comment stands above
	// it or above its neighbours.
	got := slices.Sorted(maps.Keys(h.lines))
	keys := slices.DeleteFunc(Keys(), func(k string) bool { return k == "words.own" || k == "check.severity" })
	if d := cmp.Diff(keys, got); d != "" {
		t.Errorf("keys of the template (-want +got):\n%s", d)
	}
}

// The keys that the template shows behind a # must be right too.
func TestTemplateExamples(t *testing.T) {
	var b strings.Builder
	n := 0
	for line := range strings.Lines(string(Template())) {
		if s, ok := strings.CutPrefix(line, "# "); ok && strings.Contains(s, ` = "`) {
			line = s
			n++
		}
		b.WriteString(line)
	}
	h, err := Load("house.toml", []byte(b.String()))
	if err != nil {
		t.Fatal(err)
	}
	if n != 4 || len(h.Words.Own) != 3 || len(h.Check.Severity) != 1 {
		t.Errorf("%d examples, words %v, severities %v", n, h.Words.Own, h.Check.Severity)
	}
}

func TestEmptyFileIsDefault(t *testing.T) {
	for _, src := range []string{"", "\n", "# nothing\r\n", "\ufeff"} {
		h, err := Load("house.toml", []byte(src))
		if err != nil {
			t.Fatalf("%q: %v", src, err)
		}
		want := Default()
		if d := cmp.Diff(&want, h, ignore); d != "" {
			t.Error(d)
		}
	}
}

func TestLoad(t *testing.T) {
	src := "\ufeff[herbarium]\r\nname = \"Herbário da Estação\"\r\ncode = \"VDOURA\"\r\n[label]\r\nheights_mm = [74]\r\nbody = [\"name\", \"family\"," +
		"\"status\",\r\n \"det\", \"place\", \"coords\", \"plant\", \"notes\", \"collector\"]\r\nfoot = [\"team\", \"number\", \"symbol\"]\r\nleave_out = [\"type\", \"continent\"]\r\n" +
		"[type]\r\nregular = \"faces/a.ttf\"\r\nfallback = [\"b.ttf\", \"/c.ttf\"]\r\n[words]\r\nlanguages = [\"pt\", \"en\"]\r\nown = { det = \"Det\", with = \"\" }\r\n" +
		"[check.severity]\r\ndatum-missing = \"off\"\r\n"
	h, err := Load(filepath.FromSlash("my/house.toml"), []byte(src))
	if err != nil {
		t.Fatal(err)
	}
	want := Default()
	want.Herbarium.Name, want.Herbarium.Code = "Herbário da Estação", "VDOURA"
	want.Label.HeightsMM = []float64{74}
	want.Label.Body = []string{"name", "family", "status", "det", "place", "coords", "plant", "notes", "collector"}
	want.Label.Foot = []string{"team", "number", "symbol"}
	want.Label.LeaveOut = []string{"type", "continent"}
	want.Type.Regular, want.Type.Fallback = filepath.FromSlash("my/faces/a.ttf"), []string{filepath.FromSlash("my/b.ttf"), "/c.ttf"}
	want.Words = Words{Languages: []string{"pt", "en"}, Own: map[string]string{"det": "Det", "with": ""}}
	want.Check.Severity = map[string]string{"datum-missing": "off"}
	if d := cmp.Diff(&want, h, ignore); d != "" {
		t.Error(d)
	}
	for key, at := range map[string]string{
		"check.severity.datum-missing": "my/house.toml:17", "words.own.det": "my/house.toml:15", "words.own": "my/house.toml:15",
		"label.foot": "my/house.toml:8", "paper.size": "my/house.toml",
	} {
		if got := filepath.ToSlash(h.Place(key)); got != at {
			t.Errorf("Place(%s) = %s, want %s", key, got, at)
		}
	}
}

func TestFaults(t *testing.T) {
	for _, tt := range []struct{ name, src, want string }{
		{"key misspelt", "[label]\nheigths_mm = [74]", `h:2:1: label.heigths_mm: there is no such key (did you mean label.heights_mm?)`},
		{"key of another table", "[label]\nbacklog = true", `h:2:1: label.backlog: there is no such key (did you mean check.backlog?)`},
		{"table misspelt", "[herbaruim]\nname = 'x'", `h:1:2: herbaruim: there is no such key (did you mean [herbarium]?)`},
		{"key before any table", "backlog = true", `h:1:1: backlog: there is no such key (did you mean check.backlog?)`},
		{"nothing near", "[label]\nxyzzyplugh = 1", `h:2:1: label.xyzzyplugh: there is no such key`},
		{"two unknown", "[label]\nmargin = 5\n[papper]\nsize = 'A4'",
			"h:2:1: label.margin: there is no such key (did you mean label.margin_mm?)\nh:3:2: papper: there is no such key (did you mean [paper]?)"},
		{"unknown and bad", "[label]\nstyle = 'run'\nmargin = 5",
			"h:2: label.style: \"run\" is not one of \"running\" or \"captions\"\nh:3:1: label.margin: there is no such key (did you mean label.margin_mm?)"},
		{"bad word", "[paper]\nsize = \"a5\"", `h:2: paper.size: "a5" is not one of "A4", "A3" or "Letter" (did you mean "A4"?)`},
		{"word in other case", "[paper]\nsize = \"letter\"", `h:2: paper.size: "letter" is not one of "A4", "A3" or "Letter" (did you mean "Letter"?)`},
		{"too small", "[type]\nsize_pt = 6", `h:2: type.size_pt: 6 is not from 8 to 14 pt`},
		{"nan", "[label]\nwidth_mm = nan", `h:2: label.width_mm: NaN is not from 60 to 210 mm`},
		{"infinite", "[label]\nwidth_mm = inf", `h:2: label.width_mm: +Inf is not from 60 to 210 mm`},
		{"one of a list", "[label]\nheights_mm = [74, 9]", `h:2: label.heights_mm: 9 is not from 25 to 297 mm`},
		{"all faults", "[label]\nwidth_mm = 10\nmargin_mm = 90\n", "h:2: label.width_mm: 10 is not from 60 to 210 mm\nh:3: label.margin_mm: 90 is not from 2 to 20 mm"},
		{"wrong type", "[label]\nwidth_mm = \"105\"", `h:2:12: label.width_mm: write a number, in mm`},
		{"wrong type of list", "[herbarium]\naddress = \"Valdoura\"", `h:2:11: herbarium.address: write a list of texts, ["one", "two"]`},
		{"wrong bool", "[paper]\nticks = 1", `h:2:9: paper.ticks: write true or false`},
		{"order", "[label]\nheights_mm = [99, 74]", `h:2: label.heights_mm: write the heights from small to large`},
		{"no height", "[packet]\nheights_mm = []", `h:2: packet.heights_mm: name at least one height`},
		{"run on, unknown", "[label]\nrun_on = [\"cords\"]", `h:2: label.run_on: "cords" is no block of a label (did you mean "coords"?)`},
		{"run on in the foot", "[label]\nrun_on = [\"team\"]", `h:2: label.run_on: the block "team" does not stand in the body: only there paragraphs go on`},
		{"slip heights", "[slip]\nheights_mm = [49, 25]", `h:2: slip.heights_mm: write the heights from small to large`},
		{"stage", "[press]\nstages = [\"freezr\"]", `h:2: press.stages: "freezr" is not one of "press", "dryer" or "freezer" (did you mean "freezer"?)`},
		{"stage twice", "[press]\nstages = [\"dryer\", \"dryer\"]", `h:2: press.stages: a stage stands twice: name each once`},
		{"sorted people", "[label]\nsorted = [\"recordedBy\"]",
			`h:2: label.sorted: "recordedBy" is not one of "associatedTaxa", "vernacularName", "uses", "permits", "restrictions" or "duplicatesTo"`},
		{"one side", "[mount]\nsize_mm = [297]", `h:2: mount.size_mm: write width and height, [297, 420]`},
		{"one side of a spot", "[mount.stamp]\non = true\nsize_mm = [30]", `h:3: mount.stamp.size_mm: write width and height, [60, 25]`},
		{"corner", "[mount.packet]\ncorner = \"top left\"", `h:2: mount.packet.corner: "top left" is not one of "upper left", "upper right", "lower left" or "lower right"`},
		{"spot misspelt", "[mount.barcod]\non = true", `h:1:2: mount.barcod: there is no such key (did you mean mount.barcode.on?)`},
		{"scale of before", "[printer]\nscale_percent = 101", `h:2:1: printer.scale_percent: there is no such key (did you mean printer.scale_x_percent?)`},
		{"backwards", "[stickers]\ncolumns = 3\nrows = 8\nsize_mm = [60, 25]\npitch_mm = [-63, 34]", `h:5: stickers.pitch_mm: a pitch of -63 × 34 mm goes backwards: write distances from 0 up`},
		{"half a sheet", "[stickers]\ncolumns = 3\nsize_mm = [60, 25]", `h:2: stickers.columns: a sheet of stickers needs columns, rows and size_mm; rows is missing`},
		{"smallest above", "[type]\nsmallest_pt = 10", `h:2: type.smallest_pt: the smallest size, 10 pt, is above size_pt, 9 pt`},
		{"no room", "[label]\nheights_mm = [25]\nglue_mm = 20", `h:3: label.glue_mm: margins and glue edge leave nothing of a label 25 mm high`},
		{"language", "[words]\nlanguages = [\"it\"]", `h:2: words.languages: "it" is not one of "en", "pt", "es", "fr", "de", "la" or "zh-Hant" (did you mean "pt"?)`},
		{"same language", "[words]\nlanguages = [\"pt\", \"pt\"]", `h:2: words.languages: both languages are the same`},
		{"own word", "[words.own]\ndett = \"Det.\"", `h:2: words.own.dett: the program prints no such word (did you mean "det"?)`},
		{"severity", "[check.severity]\ndatum-missing = \"warn\"", `h:2: check.severity.datum-missing: "warn" is not one of "error", "warning", "note" or "off"`},
		{"block twice", "[label]\nfoot = [\"collector\", \"team\", \"number\", \"symbol\", \"name\"]", `h:2: label.foot: the block "name" stands in label.body and in label.foot: keep it in one`},
		{"block lost", "[label]\nfoot = [\"collector\", \"number\", \"symbol\"]", `h:2: label.foot: the block "team" stands nowhere: put it in head, body or foot, or in leave_out`},
		{"block unknown", "[label]\nfoot = [\"collectr\", \"collector\", \"team\", \"number\", \"symbol\"]", `h:2: label.foot: "collectr" is no block of a label (did you mean "collector"?)`},
		{"pattern without zeros", "[numbers]\npattern = \"VDOURA\"", `h:2: numbers.pattern: write the figures as a row of zeros, as in "VDOURA-0000000"`},
		{"pattern of two rows", "[numbers]\npattern = \"A00-000\"", `h:2: numbers.pattern: there are two rows of zeros: the figures of a number stand together`},
		{"pattern beyond bars", "[numbers]\npattern = \"É000\"", `h:2: numbers.pattern: bars cannot hold 'É': use letters A to Z, figures and plain signs`},
		{"control", "[herbarium]\nname = \"a\\u0007b\"", `h:2: herbarium.name: holds the control character U+0007: take it out`},
		{"key twice", "[label]\nwidth_mm = 105\nwidth_mm = 106", "h:3:1: width_mm: key width_mm is already defined"},
		{"syntax", "[label]\nwidth_mm = \n", "h:2:"},
		{"not a house file", "eventDate,locality\n1,2", "h:1:"},
		{"not text", "\xff\xfe\x00", "h:"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			h, err := Load("h", []byte(tt.src))
			if err == nil {
				t.Fatalf("no fault found: %+v", h)
			}
			if got := err.Error(); got != tt.want && !(strings.HasSuffix(tt.want, ":") && strings.HasPrefix(got, tt.want)) {
				t.Errorf("got  %s\nwant %s", got, tt.want)
			}
			var e *Error
			if !errors.As(err, &e) || e.File != "h" {
				t.Errorf("no *Error with its file: %#v", err)
			}
		})
	}
}

// Every key that can be set is set in turn to a value of the wrong type, and
// to the value it has: the first is refused at its line, the second accepted.
func TestEveryKey(t *testing.T) {
	def := Default()
	for key, f := range fields {
		table, leaf := key[:strings.LastIndex(key, ".")], key[strings.LastIndex(key, ".")+1:]
		_, err := Load("h", []byte("\n["+table+"]\n"+leaf+" = 1979-05-27\n"))
		if err == nil || !strings.HasPrefix(err.Error(), "h:3") || !strings.Contains(err.Error(), key+": write ") {
			t.Errorf("%s of a wrong type: %v", key, err)
		}
		if v := reflect.ValueOf(def).FieldByIndex(f.index); f.kind == reflect.Float64 && !f.list && v.Float() != 0 {
			if why, _ := f.fault(v.Float()); why != "" {
				t.Errorf("%s: the default %v", key, why)
			}
		}
	}
}

func FuzzLoad(f *testing.F) {
	f.Add(Template())
	f.Add([]byte("[label]\nwidth_mm = 105 # x\nown = {a = {b = 1}}\n[[check]]\n"))
	f.Add([]byte("label.width_mm = 9\n[check]\nseverity.a-b = 'off'\n\"x y\".'z' = '''\n\n'''"))
	f.Fuzz(func(t *testing.T, src []byte) {
		h, err := Load("h", src)
		if (h == nil) == (err == nil) {
			t.Fatalf("house %v with error %v", h, err)
		}
		if err != nil {
			return
		}
		for key, line := range h.lines {
			if line < 1 || line > 1+strings.Count(string(src), "\n") {
				t.Fatalf("%s on line %d", key, line)
			}
		}
		for _, f := range fields {
			for _, v := range f.values(h) {
				if why, _ := f.fault(v); why != "" && h.lines[f.key] > 0 {
					t.Fatalf("%s: %s", f.key, why)
				}
			}
		}
	})
}

// The house files that people copy load, and say something.
func TestExamples(t *testing.T) {
	files, err := filepath.Glob("../../examples/*.toml")
	if err != nil || len(files) == 0 {
		t.Fatalf("no house files: %v", err)
	}
	for _, name := range files {
		src, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		h, err := Load(name, src)
		if err != nil {
			t.Error(err)
			continue
		}
		if h.Herbarium.Code == "" || len(h.lines) < 5 {
			t.Errorf("%s says nothing", name)
		}
	}
}
