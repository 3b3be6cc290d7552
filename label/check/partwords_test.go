package check

import (
	"fmt"
	"strings"
	"testing"
)

// Wordings of preparations in collectors' tables and museums' downloads, in
// six languages; from memory, the answers written first. A part is its kind,
// with what is in it in brackets; ? ends what is also told as unknown, and !
// is an error.
var partWordings = []struct{ in, want string }{
	{"spirit 70%", "jar[spirit 70%]"},
	{"fruits in FAA", "jar[fruits in FAA]"},
	{"DNA (silica)", "other[silica] ?"},
	{"2 sheets + cone in box", "sheet sheet box[cone]"},
	{"1 folha, 1 carpoteca", "sheet box"},
	{"Pressed|Wood sample|Photograph", "sheet other other"},
	{"seed bank packet", "packet"},
	{"herbarium specimen", "sheet"},
	{"preserved specimen", "sheet"},
	{"PreservedSpecimen", "sheet"},
	{"1 mounted sheet & 1 packet", "sheet packet"},
	{"dried", "sheet"},
	{"alc.", "jar"},
	{"carpological collection", "box"},
	{"pickled", "jar"},
	{"bulky", "box"},
	{"unmounted", "sheet"},
	{"2", "!"},
	{"1", "sheet"},
	{"2 dup.", "!"},
	{"duplicates", "!"},
	{"sheet", "sheet"},
	{"Sheet", "sheet"},
	{"SHEET", "sheet"},
	{"sheets", "sheet"},
	{"1 sheet", "sheet"},
	{"3 sheets", "sheet sheet sheet"},
	{"sheet (2)", "sheet sheet"},
	{"sheet - 1", "sheet"},
	{"Sheet - 2", "sheet sheet"},
	{"herbarium sheet - 1; fruit - 1", "sheet other ?"},
	{"2 x sheet", "sheet sheet"},
	{"2 - sheets", "sheet sheet"},
	{"sheet 1 of 2", "sheet"},
	{"sheet 3 of 2", "!"},
	{"0 sheets", "!"},
	{"100 sheets", "!"},
	{"sheet: 2", "!"},
	{"2-3 sheets", "!"},
	{"2 or 3 packets", "!"},
	{"2? sheets", "!"},
	{"ca. 4 sheets", "!"},
	{"several sheets", "!"},
	{"several photographs", "other ?"},
	{"two sheets", "sheet sheet"},
	{"duas folhas", "sheet sheet"},
	{"one sheet and one packet", "sheet packet"},
	{"herbarium, 1 sheet", "sheet"},
	{"voucher; sheet 1 of 2", "sheet"},
	{"dried | mounted", "sheet"},
	{"pressed | pressed", "sheet sheet"},
	{"specimen in spirit", "jar[specimen in spirit]"},
	{"photo of sheet", "other[sheet] ?"},
	{"5 seeds", "other ?"},
	{"200 seeds", "other ?"},
	{"sheet | packet: capsules", "sheet packet[capsules]"},
	{"sheet; packet of seeds", "sheet packet[seeds]"},
	{"sheet, packet", "sheet packet"},
	{"sheet and packet", "sheet packet"},
	{"sheet with packet", "sheet packet"},
	{"sheet/packet", "sheet packet"},
	{"sheet + 2 packets", "sheet packet packet"},
	{"packet: seeds, loose flowers", "packet[seeds, loose flowers]"},
	{"packet with seeds", "packet[seeds]"},
	{"packet containing seeds and capsules", "packet[seeds and capsules]"},
	{"packet (moss)", "packet[moss]"},
	{"seeds in packet", "packet[seeds]"},
	{"fragments in envelope", "packet[fragments]"},
	{"envelope", "packet"},
	{"2 envelopes", "packet packet"},
	{"seed packet", "packet"},
	{"large sheet", "sheet"},
	{"oversized sheet", "sheet"},
	{"mounted herbarium sheet", "sheet"},
	{"dried, pressed", "sheet"},
	{"pressed and dried", "sheet"},
	{"Pressed specimen", "sheet"},
	{"dry specimen", "sheet"},
	{"voucher", "sheet"},
	{"herbarium", "sheet"},
	{"plant", "sheet"},
	{"box", "box"},
	{"box: cone", "box[cone]"},
	{"box with cones", "box[cones]"},
	{"cone (box)", "box[cone]"},
	{"carton of fruits", "box[fruits]"},
	{"wet collection", "jar"},
	{"fluid preserved", "jar"},
	{"alcohol", "jar"},
	{"70% ethanol", "jar[70% ethanol]"},
	{"flowers in 70% alcohol", "jar[flowers in 70% alcohol]"},
	{"flowers in jar", "jar[flowers]"},
	{"jar: flowers in ethanol 70 %", "jar[flowers in ethanol 70 %]"},
	{"sheet, spirit", "sheet jar"},
	{"sheet | spirit | photo", "sheet jar other"},
	{"Photograph", "other ?"},
	{"photo", "other ?"},
	{"digital image", "other ?"},
	{"3 photographs", "other ?"},
	{"sheet, 3 photographs", "sheet other"},
	{"sheet, photo", "sheet other"},
	{"sheet, DNA sample in silica gel", "sheet other[DNA sample in silica gel]"},
	{"tissue in silica", "other[tissue in silica] ?"},
	{"slide", "other ?"},
	{"microscope slide; sheet", "other sheet"},
	{"living plant", "other ?"},
	{"sheet | cone", "sheet other ?"},
	{"sheet | leaf rubbing", "sheet other ?"},
	{"skull", "other ?"},
	{"sheeet", "sheet ?"},
	{"packt: seeds", "packet[seeds] ?"},
	{"2 shets", "sheet sheet ?"},
	{"envelop", "packet ?"},
	{"sheet, fragile", "sheet other ?"},
	{"|", "!"},
	{"sheet 1 of 2 | sheet", "!"},

	// written after the rules, to try them
	{"herbarium sheets: 3", "sheet sheet sheet"},
	{"mounted on 2 sheets", "!"},
	{"sheet no. 2", "!"},
	{"sheet no. 1", "sheet"},
	{"1 of 2", "!"},
	{"Spirit coll. 12345", "jar[Spirit coll. 12345]"},
	{"alcohol 70%", "jar[alcohol 70%]"},
	{"sheet (mounted)", "sheet"},
	{"sheet: fertile", "sheet[fertile]"},
	{"seeds (packet)", "packet[seeds]"},
	{"envelope with capsules and seeds", "packet[capsules and seeds]"},
	{"DNA bank sample", "other ?"},
	{"sheet, DNA bank sample", "sheet other"},
	{"2 sheets; 1 spirit jar; 1 box", "sheet sheet jar box"},
	{"2 packets: seeds, capsules", "packet[seeds, capsules] packet[seeds, capsules]"},
	{"unmounted, 3 sheets", "sheet sheet sheet"},
	{"Pressed and mounted", "sheet"},
	{"tube in ethanol", "jar[tube in ethanol]"},
	{"carp. coll.", "box"},
	{"barcode 12345", "other ?"},
	{"whole animal", "other ?"},
	{"-1 sheet", "!"},
	{"sheet | bx: cone", "sheet box[cone]"},

	{"folha", "sheet"},
	{"2 folhas", "sheet sheet"},
	{"1 folha e 1 pacote", "sheet packet"},
	{"folha de herbário", "sheet"},
	{"exsicata", "sheet"},
	{"exsicata + carpoteca", "sheet box"},
	{"exsicata; fruto em caixa", "sheet box[fruto]"},
	{"flores em álcool", "jar[flores em álcool]"},
	{"pacote com sementes", "packet[sementes]"},
	{"amostra de madeira", "other ?"},
	{"prensado", "sheet"},
	{"pliego", "sheet"},
	{"2 pliegos y 1 sobre", "sheet sheet packet"},
	{"pliego de herbario", "sheet"},
	{"sobre con semillas", "packet[semillas]"},
	{"frutos en caja", "box[frutos]"},
	{"ejemplar de herbario", "sheet"},
	{"planche", "sheet"},
	{"2 planches et 1 sachet", "sheet sheet packet"},
	{"part d'herbier", "sheet"},
	{"sachet de graines", "packet[graines]"},
	{"fleurs dans l'alcool", "jar[fleurs dans l'alcool]"},
	{"Bogen", "sheet"},
	{"2 Bögen und 1 Kapsel", "sheet sheet packet"},
	{"Herbarbeleg", "sheet"},
	{"Kapsel mit Samen", "packet[Samen]"},
	{"Alkoholmaterial", "jar"},
	{"foglio", "sheet"},
	{"2 fogli e 1 busta", "sheet sheet packet"},
	{"campione d'erbario", "sheet"},
	{"busta con semi", "packet[semi]"},
}

func TestPartWordings(t *testing.T) {
	bad := 0
	for _, tt := range partWordings {
		parts, doubts, err := ReadPreparations(tt.in)
		var all []string
		for _, p := range parts {
			s := string(p.Kind)
			if p.Contents != "" {
				s += "[" + p.Contents + "]"
			}
			all = append(all, s)
		}
		if len(doubts) > 0 {
			all = append(all, "?")
		}
		if err != nil {
			all = []string{"!"}
		}
		if got := strings.Join(all, " "); got != tt.want {
			bad++
			t.Errorf("%q: %s, want %s (%v %v)", tt.in, got, tt.want, err, fmt.Sprint(doubts))
		}
		// What is written stands on the label or says the kind; none is lost.
		for _, p := range parts {
			if p.Kind == Other && p.Word == "" {
				t.Errorf("%q: a part without its name", tt.in)
			}
		}
	}
	t.Logf("%d of %d", len(partWordings)-bad, len(partWordings))
}
