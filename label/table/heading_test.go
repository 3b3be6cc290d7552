package table

import (
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"cornerslip/cmd/outside"
	"cornerslip/label"
)

func TestHeadings(t *testing.T) {
	// Heading rows and the terms they stand for, "?" where none.
	for _, c := range []struct{ in, want string }{
		// Darwin Core terms however spelt.
		{"scientificName,SCIENTIFIC_NAME_AUTHORSHIP,Catalog Number,dwc:eventDate,dwc_family,dwc.genus",
			"scientificName scientificNameAuthorship catalogNumber eventDate family genus"},
		{"http://rs.tdwg.org/dwc/terms/locality,http://purl.org/dc/terms/license,dcterms:modified,dwciri:recordedBy",
			"locality license modified recordedBy"},
		{"Order,class,group,type", "order class group type"},
		// Darwin Core before 2009.
		{"Collector,CollectorNumber,EarliestDateCollected,MinimumElevation,Latitude,Longitude,HorizontalDatum,PreparationType",
			"recordedBy recordNumber eventDate minimumElevationInMeters decimalLatitude decimalLongitude geodeticDatum preparations"},
		{"YEAR_COLLECTED,MONTH_COLLECTED,DAY_COLLECTED,GUID,Notes", "year month day occurrenceID occurrenceRemarks"},
		// Words of field tables.
		{"collector,coll. no.,date,lat,long,alt,det.,det. date,locality,habitat,notes",
			"recordedBy recordNumber eventDate decimalLatitude decimalLongitude minimumElevationInMeters identifiedBy dateIdentified locality habitat occurrenceRemarks"},
		{"Coll. #,Species,Fam.,with,dups,permit no.,No. of labels", "recordNumber scientificName family coCollectors duplicatesTo permits copies"},
		{"Coletor,Nº de coletor,Data,Família,Espécie,País,Distrito,Concelho,Localidade,Observações,Nome vulgar,Licença de colheita",
			"recordedBy recordNumber eventDate family scientificName country stateProvince county locality occurrenceRemarks vernacularName permits"},
		{"Recolector,Número de recolección,Fecha,Familia,Especie,Provincia,Municipio,Altitud,Hábitat,Observaciones,Nombre común",
			"recordedBy recordNumber eventDate family scientificName stateProvince municipality minimumElevationInMeters habitat occurrenceRemarks vernacularName"},
		{"Récolteur,N° de récolte,Date de récolte,Famille,Espèce,Pays,Département,Commune,Lieu-dit,Milieu,Dét.,Remarques",
			"recordedBy recordNumber eventDate family scientificName country stateProvince municipality locality habitat identifiedBy occurrenceRemarks"},
		{"Sammler,Sammelnummer,Datum,Familie,Art,Land,Bundesland,Gemeinde,Fundort,Standort,Höhe ü. M.,bestimmt von,Bemerkungen",
			"recordedBy recordNumber eventDate family scientificName country stateProvince municipality locality habitat minimumElevationInMeters identifiedBy occurrenceRemarks"},
		{"desc_localidad,especie", "locality scientificName"},
		{"Sampling locality,Visit date,Collection country,Field habitat", "locality eventDate country habitat"},
		{"Date harvested,Study site,Sampled county,Altitude m.a.s.l.,Collection name,Survey", "eventDate locality county minimumElevationInMeters ? ?"},
		{"codigo_colecta,Nombre_cientifico,Colectores", "recordNumber scientificName recordedBy"},
		{"código de coleta,espécie,coletores", "recordNumber scientificName recordedBy"},
		{"Tags,Days,Months,Years", "? ? ? ?"}, // none of a gathering's
		{"Tag,Monat,Jahr", "day month year"},
		// Words with two meanings.
		{"genus,species", "genus specificEpithet"},
		{"species,genus", "specificEpithet genus"},
		{"species,country", "scientificName country"},
		{"scientificName,species", "scientificName specificEpithet"},
		{"lat,long,datum", "decimalLatitude decimalLongitude geodeticDatum"},
		{"採集者,採集號,採集日期,學名,國家,採集地,海拔,經度,緯度,鑑定者,館號",
			"recordedBy recordNumber eventDate scientificName country locality minimumElevationInMeters decimalLongitude decimalLatitude identifiedBy catalogNumber"},
		{"collector,depth,locality", "recordedBy verbatimDepth locality"},
		{"采集人,采集号,采集日期,学名,国家,采集地", "recordedBy recordNumber eventDate scientificName country locality"},
		{"Sammler,Sammeldatum,Datum", "recordedBy eventDate geodeticDatum"},
		// Names of other vocabularies give way to Darwin Core's.
		{"eventDate,date,verbatimElevation,elevation,minimumElevationInMeters,description,plantDescription",
			"eventDate date verbatimElevation elevation minimumElevationInMeters description plantDescription"},
		{"lat_degrees,n_or_s, lon_degrees,w_or_e,lat_deg_min_sec,long_deg_min_sec", "decimalLatitude latitudeHemisphere decimalLongitude longitudeHemisphere verbatimLatitude verbatimLongitude"},
		{"lat_deg_min,long_deg_min", "verbatimLatitude verbatimLongitude"}, {"latitude_ddmmss,longitude_ddmmss", "verbatimLatitude verbatimLongitude"},
		{"latitud grados minutos y segundos,longitud grados minutos y segundos", "verbatimLatitude verbatimLongitude"}, {"Lat deg dec min,Long deg dec min", "verbatimLatitude verbatimLongitude"},
		{"lat_deg,lat_min,long_deg,long_min", "latitudeDegrees latitudeMinutes longitudeDegrees longitudeMinutes"},
		{"taxonomic_order,family", "order family"},
		// What most headings begin with, unless it says whose they are.
		{"In_recordedBy,In_country,In_locality,In_eventDate,In_scientificName,In_quality", "recordedBy country locality eventDate scientificName ?"},
		{"country,In_recordedBy,In_country,In_locality,In_eventDate,In_scientificName", "country recordedBy country locality eventDate scientificName"},
		{"host_family,host_genus,host_species,host_author,host_rank", "? ? associatedTaxa ? ?"},
		{"In_recordedBy,In_country,locality,eventDate,scientificName,family,genus", "? ? locality eventDate scientificName family genus"},
		// How many sheets there are is no number that one bears.
		{"specimen ID,number_of_sheets,No. of duplicates,sheet number", "catalogNumber ? ? otherCatalogNumbers"},
		// As found, as one author takes them, in one country.
		{"species_raw,determiner_raw,country_raw", "scientificName identifiedBy country"},
		{"genus,species_sensu_Almeida,USA County,US State", "genus specificEpithet county stateProvince"},
		// Metres on a grid that the headings name, in pairs alone.
		{"XLambert72,YLambert72", "easting northing"},
		{"RD_X,RD_Y,locality", "easting northing locality"},
		{"Easting (OSGB36),Northing (OSGB36)", "easting northing"},
		{"x_coord_L93,y_coord_L93", "easting northing"},
		{"E_UTM_ED50,N_UTM_ED50,zone", "easting northing utmZone geodeticDatum"},
		{"X (ED50),Y (ED50)", "easting northing geodeticDatum"},
		{"lat,long,X (ED50),Y (ED50)", "decimalLatitude decimalLongitude easting northing"},
		{"RD_X,locality", "? locality"},
		{"X,Y,XLambert72,YLambert72", "easting northing ? ?"},
		// Copies that were worked on, where no other column has the term.
		{"lat_georef,lon_georef,elevation_in_meters", "decimalLatitude decimalLongitude minimumElevationInMeters"},
		{"lat,long,lat_georef,lon_georef", "decimalLatitude decimalLongitude ? ?"},
		{"lat_georef,country", "? country"},
		{"x1_family,x1_genus,x1_sp1,country", "family genus specificEpithet country"},
		{"DutchName,sps_comm,English name", "vernacularName vernacularName vernacularName"},
		// Rain in a year among what else the weather is, and a map.
		{"country,MAT,MAP", "country ? ?"},
		{"country,MAP,AHM,SHM,MWMT,MCMT", "country ? ? ? ? ?"},
		{"country,Map", "country mapSheet"},
		// Units.
		{"alt. (m),max. alt. (m)", "minimumElevationInMeters maximumElevationInMeters"},
		{"elevation (ft)", "elevationFrom"},
		{"Altitude in feet", "elevationFrom"},
		{"lat (WGS84)", "decimalLatitude geodeticDatum"},
		// Ours.
		{"copies,duplicatesTo,project,permits,restrictions,plantDescription,uses,gardenAccession,wildOrigin,coCollectors",
			"copies duplicatesTo project permits restrictions plantDescription uses gardenAccession wildOrigin coCollectors"},
		{"Elev min (ft),Elev max (ft),depth_fathoms", "elevationFrom elevationTo depthFrom"},
		{"Elevation,Elev unit,Depth (m)", "elevationFrom elevationUnit minimumDepthInMeters"},
		{"Min elev,Max elev,Units,minimumElevationInMeters", "elevationFrom elevationTo elevationUnit minimumElevationInMeters"},
		{"Alt (m),Alt (ft)", "minimumElevationInMeters elevationFrom"},
		{"Altitude,min,max,habitat,min", "verbatimElevation minimumElevationInMeters maximumElevationInMeters habitat ?"},
		// Several columns of one term.
		{"Collector 1,Collector 2,Collector 3", "recordedBy coCollectors coCollectors"},
		{"1st collector,2nd collector", "recordedBy coCollectors"},
		{"Notes,Remarks,Comments", "occurrenceRemarks occurrenceRemarks occurrenceRemarks"},
		{"No.,Coll. no.", "? recordNumber"},
		{"Lat,Long,decimalLatitude,decimalLongitude", "verbatimLatitude verbatimLongitude decimalLatitude decimalLongitude"},
		{"Det.1,Det.2", "identifiedBy ?"},
		// Words in another order or company, and in other languages.
		{"Nº de coleta,Data coleta,Date of gathering", "recordNumber eventDate eventDate"},
		{"N.º de coleta,N.º catálogo,N.º de herbário,n.º col.", "recordNumber catalogNumber otherCatalogNumbers recordNumber"},
		{"Occurrence/recordedBy,Location/country,Detailed locality,Notes/Comments", "recordedBy country locality occurrenceRemarks"},
		{"sběratel,datum sběru,čeleď,okres,nadmořská výška", "recordedBy eventDate family county minimumElevationInMeters"},
		{"Коллектор,Дата сбора,Семейство,Вид,Область,Район", "recordedBy eventDate family scientificName stateProvince county"},
		{"Zbieracz,Data zbioru,Rodzina,Gatunek,Kraj,Województwo", "recordedBy eventDate family scientificName country stateProvince"},
		{"Raccoglitore,Famiglia,Genere,Specie,Regione,Comune,Quota (m)", "recordedBy family genus specificEpithet stateProvince municipality minimumElevationInMeters"},
		{"採集者,採集番号,採集年月日,都道府県,標高(m),備考", "recordedBy recordNumber eventDate stateProvince minimumElevationInMeters occurrenceRemarks"},
		{"latitude_dd,DDLong,Long W", "decimalLatitude decimalLongitude verbatimLongitude"},
		{"habitat,substrate", "habitat habitat"},
		{"Date obs.,sps,sps author", "eventDate scientificName ?"},
		{"Date,Result,Date", "eventDate ? date"},
		{"Species,Date,Primer,Date,Result,Primer,Date,Date", "scientificName eventDate ? date ? ? ? ?"},
		{"Species,eventDate,Primer,Date,Primer,Date", "scientificName eventDate ? date ? ?"},
		{"Nom Dpt,Nom du département,Dpt", "stateProvince stateProvince ?"},
		{"country,species description,label,sheet", "country ? ? ?"},
		{"country,yearIdentified,monthIdentified,dayIdentified", "country dateIdentified dateIdentified dateIdentified"},
		{"RBgeno,plot_x,lat,long,aKt-5657,aKt-6385,aKt-5747,aKt-5641", "? ? decimalLatitude decimalLongitude ? ? ? ?"}, // markers of genes are no data
		{"Species,Voucher,MO,NY,US,UC,SP,GOET", "scientificName collectorAndNumber ? ? ? ? ? ?"},
		// Nothing.
		{"country,moon phase,", "country ? ?"},
	} {
		tb, err := Open(Bytes("t.csv", []byte(c.in+"\n")), Options{Comma: ','})
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, col := range tb.Columns() {
			if col.Known {
				got = append(got, col.Term)
			} else {
				got = append(got, "?")
			}
		}
		if s := strings.Join(got, " "); s != c.want {
			t.Errorf("%s\ngot  %s\nwant %s", c.in, s, c.want)
		}
	}
}

func TestHeadingFindings(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{"country,family", ""},
		{"country,decimalLatitde", `1:9 warning heading-unknown "decimalLatitude"`},
		{"country,habitatt,country", `1:9 warning heading-unknown "habitat"; 1:18 note heading-doubled ""`},
		{"country,moon phase", `1:9 note heading-unknown ""`},
		{"country,locality_id,habitat_id", `1:9 note heading-unknown "locationID"; 1:21 note heading-unknown ""`},
		{"country,status,label,kind,slope", `1:9 note heading-unknown ""; 1:16 note heading-unknown ""; 1:22 note heading-unknown ""; 1:27 note heading-unknown ""`},
		{"country,collection nunber,minimumElevationMeters", `1:9 warning heading-unknown "recordNumber"; 1:27 warning heading-unknown "minimumElevationInMeters"`},
		{"country,Famlia,Habitta", `1:9 warning heading-unknown "family"; 1:16 warning heading-unknown "habitat"`},
		{"country,x1,x1", `1:9 note heading-unknown ""`},
		{"country,lat,long,POINT_X,POINT_Y", `1:18 note heading-unknown ""; 1:26 note heading-unknown ""`},
		{"country,Amount,Mouint", `1:9 note heading-unknown ""; 1:16 warning heading-unknown "mount"`},
		{"country,SampledBy,Reserve,reserva,eventAltitude", `1:27 note heading-doubled ""; 1:35 note heading-unit ""`},
		{"country,Place (GUID),Taxonomic name (full),Recorder (UUID)", `1:9 note heading-unknown ""; 1:22 note heading-remark ""; 1:44 note heading-unknown "recordedByID"`},
		{"country,SampleN", `1:9 note heading-unknown ""`},
		{"country,locality_id,habitat code", `1:9 note heading-unknown "locationID"; 1:21 note heading-unknown ""`},
		{"country,collector,recordedBy", `1:19 note heading-doubled ""`},
		{"country,recordedBy,collector", `1:20 note heading-doubled ""`},
		{"country,Locality,Fundort", `1:18 note heading-doubled ""`},
		{",country", `1:1 note heading-empty ""`},
		{"country,,family,,", `1:9 note heading-empty ""`},
		{"country,alt", `1:9 note heading-unit ""`},
		{"country,alt (m)", ""},
		{"country,alt (ft)", ""},
		{"country,uncertainty (ft)", `1:9 error heading-unit ""`},
		{"country,date (dd/mm/yyyy)", `1:9 note heading-remark ""`},
		{"country,date (as on the label)", `1:9 note heading-remark ""`},
		{"Land,Datum", `1:6 note heading-reading ""`},
		{"country,EarliestDateCollected,LatestDateCollected", `1:31 note heading-reading ""`},
		{"country,modifiedBy,localiyt", `1:9 note heading-unknown ""; 1:20 warning heading-unknown "locality"`},
		{"country,eventDate,date", `1:19 note heading-reading ""`},
		{"Portugal,1998-06-12,41.5", `1:0 error heading-missing ""`},
		{"Portugal,Braga", `1:0 error heading-missing ""`},
		{"VDOURA-0004188,I. Almeida,187,Country", `1:0 error heading-missing ""`},
		{",,", `1:0 error heading-missing ""`},
		// Three words that are known are no record without a figure alone or a day.
		{"genus,herbarium,accession,loci_min4_all,loci_min4,loci_min10no", `1:27 note heading-unknown ""; 1:41 note heading-unknown ""; 1:51 note heading-unknown ""`},
		{"genus,country,locality,Erica,41.52,VDOURA 4188", `1:0 error heading-missing ""`},
		{"", `1:0 error table-empty ""`},
		{"\n\n", `1:0 error table-empty ""`},
	} {
		tb, err := Open(Bytes("t.csv", []byte(c.in+"\n")), Options{})
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, f := range tb.Findings() {
			if f.Row != 0 || f.File != "t.csv" {
				t.Errorf("%s: origin %+v", c.in, f.Origin)
			}
			got = append(got, fmt.Sprintf("%d:%d %s %s %q", f.Line, f.Column, f.Severity, f.Rule, f.Suggest))
		}
		if s := strings.Join(got, "; "); s != c.want {
			t.Errorf("%s\ngot  %s\nwant %s", c.in, s, c.want)
		}
	}
}

func TestVerbatim(t *testing.T) {
	_, rows := readAll(t, "lat,long,alt\n41.7157,-8.1502,720\n\"41°42'56\"\"N\",8°09'01\"W,720-730 m\n,,\n", Options{})
	for i, want := range []string{
		`decimalLatitude="41.7157" verbatimLatitude="" decimalLongitude="-8.1502" minimumElevationInMeters="720" verbatimElevation=""`,
		`decimalLatitude="" verbatimLatitude="41°42'56\"N" decimalLongitude="" minimumElevationInMeters="" verbatimElevation="720-730 m"`,
		`decimalLatitude="" verbatimLatitude="" decimalLongitude="" minimumElevationInMeters="" verbatimElevation=""`,
	} {
		var got []string
		for _, term := range []string{"decimalLatitude", "verbatimLatitude", "decimalLongitude", "minimumElevationInMeters", "verbatimElevation"} {
			got = append(got, fmt.Sprintf("%s=%q", term, rows[i].Get(term).Text))
		}
		if s := strings.Join(got, " "); s != want {
			t.Errorf("got  %s\nwant %s", s, want)
		}
	}
	if got := rows[1].Term(0) + " " + rows[0].Term(0) + " " + rows[1].Origin("verbatimLongitude").String(); got != "verbatimLatitude decimalLatitude t.csv:3:15" {
		t.Error(got)
	}
}

// TestVocabulary holds our own two tables to what the code relies on: no word
// has two meanings that resolve does not know of.
func TestVocabulary(t *testing.T) {
	var terms []termEntry
	var plain []wordsEntry
	if err := decodeEmbedded("terms.csv", termsCSV, &terms); err != nil {
		t.Fatal(err)
	}
	if err := decodeEmbedded("headings.csv", headingsCSV, &plain); err != nil {
		t.Fatal(err)
	}
	now := map[string]bool{"latestDateCollected": true, "species": true}
	names := map[string]string{}
	for _, e := range terms { // parts that one heading names
		now[e.Term] = now[e.Term] || e.Vocabulary == "part"
	}
	for _, e := range terms {
		if !slices.Contains([]string{"dwc", "dcterms", "cornerslip", "part", "archive", "obsolete", "dc", "gbif"}, e.Vocabulary) {
			t.Errorf("%s is of no vocabulary: %q", e.Term, e.Vocabulary)
		}
		if e.Vocabulary != "obsolete" {
			key := headingKey(e.Term)
			if names[key] != "" {
				t.Errorf("%s stands twice", e.Term)
			}
			names[key] = e.Term
			now[e.Term] = true
		}
	}
	for _, e := range terms {
		for n := range strings.SplitSeq(e.Now, "|") {
			if e.Now != "" && !now[n] {
				t.Errorf("%s is now %q, which is no term", e.Term, n)
			}
		}
	}
	if own := OwnTerms(); len(own) != 13 || slices.ContainsFunc(own, func(o OwnTerm) bool { return o.Meaning == "" }) {
		t.Errorf("our own terms: %+v", own)
	}
	if w := Words(); len(w) != len(plain) || w[0].Words[0] != "collector" {
		t.Errorf("%d rows of words", len(w))
	}
	meant := map[string]string{}
	for _, e := range plain {
		for n := range strings.SplitSeq(e.Term, "|") {
			if !now[n] {
				t.Errorf("%q is no term", n)
			}
		}
		for w := range strings.SplitSeq(e.Words, " | ") {
			key := headingKey(w)
			if key == "" || strings.TrimSpace(w) != w {
				t.Errorf("%s: bad word %q", e.Term, w)
			}
			if was := meant[key]; was != "" && was != e.Term+e.Unit {
				t.Errorf("%q means %s and %s", w, was, e.Term+e.Unit)
			}
			meant[key] = e.Term + e.Unit
		}
	}
	if len(meant) < 700 {
		t.Errorf("only %d words", len(meant))
	}
}

// TestBDQTerms holds the list of terms to those that the tests of the TDWG
// Biodiversity Data Quality standard act upon.
func TestBDQTerms(t *testing.T) {
	b, err := os.ReadFile(outside.Shared(t, "checks/bdq-tests.csv"))
	if err != nil {
		t.Fatal(err)
	}
	_, rows := readAll(t, string(b), Options{})
	n := 0
	for _, r := range rows {
		for _, column := range []int{5, 6} {
			for term := range strings.SplitSeq(r.Cells[column].Text, ",") {
				name, ok := strings.CutPrefix(term, "dwc:")
				if !ok {
					continue
				}
				n++
				if m := vocabulary().meanings[headingKey(name)]; m == nil || m.terms[0] != name {
					t.Errorf("%s is not in the list", term)
				}
			}
		}
	}
	if n < 100 {
		t.Errorf("only %d terms seen", n)
	}
}

// TestManyColumns reads tables with as many columns as downloads of
// occurrences have.
func TestManyColumns(t *testing.T) {
	var head, row []string
	for _, e := range func() (all []termEntry) { decodeEmbedded("terms.csv", termsCSV, &all); return }() {
		if e.Vocabulary != "obsolete" && e.Vocabulary != "archive" && len(head) < 217 {
			head, row = append(head, e.Term), append(row, "v"+e.Term)
		}
	}
	_, rows := readAll(t, strings.Join(head, "\t")+"\n"+strings.Join(row, "\t")+"\n", Options{})
	if tb := rows[0].Table(); len(tb.Columns()) != 217 || len(tb.Findings()) > 0 || len(rows[0].Findings) > 0 || tb.Comma() != '\t' {
		t.Errorf("%d columns, findings %v %v", len(tb.Columns()), tb.Findings(), rows[0].Findings)
	}
	for _, term := range head {
		if got := rows[0].Get(term).Text; got != "v"+term {
			t.Errorf("%s: %q", term, got)
		}
	}
}

// TestEveryTerm: all terms of all vocabularies side by side, as the largest
// downloads have them, are no error, and each is its own column.
func TestEveryTerm(t *testing.T) {
	var all []termEntry
	if err := decodeEmbedded("terms.csv", termsCSV, &all); err != nil {
		t.Fatal(err)
	}
	var head []string
	for _, e := range all {
		if e.Vocabulary != "obsolete" && !strings.HasSuffix(e.Term, "Unit") { // beside a unit's column, heights are read otherwise
			head = append(head, e.Term)
		}
	}
	tb, rows := readAll(t, strings.Join(head, ",")+"\nv"+strings.Join(head, ",v")+"\n", Options{})
	for i, term := range head {
		if c := tb.Columns()[i]; c.Term != term || rows[0].Get(term).Text != "v"+term {
			t.Errorf("%s is read as %s", term, c.Term)
		}
	}
	for _, f := range tb.Findings() {
		if f.Severity != label.Note || f.Rule != ruleHeadingReading.Name {
			t.Error(f)
		}
	}
}

func TestDelimiter(t *testing.T) {
	for _, c := range []struct {
		in   string
		want rune
		say  string
	}{
		{"country,locality\n", ',', ""},
		{"country;locality\n", ';', ""},
		{"country\tlocality\n", '\t', ""},
		{"country|locality\n", '|', ""},
		{"country\n", ',', ""},
		{"\"country, as written\";\"locality, habitat\";family\n", ';', "heading-unknown note,heading-reading note"},
		{"\"a;b;c;d\",country\n", ',', "heading-unknown note"},
		{"Altitude (m), min\tcountry\tlocality\n", '\t', ""},
		{"country;locality,family;genus,year\n", ',', "table-delimiter warning,heading-unknown note,heading-unknown note"},
		{"sep=|\ncountry|locality\n", '|', ""},
		{"SEP=\t\r\ncountry\tlocality\n", '\t', ""},
		{"sep=,country\n", ',', "heading-unknown note"},
	} {
		tb, err := Open(Bytes("t.csv", []byte(c.in)), Options{})
		if err != nil {
			t.Fatal(err)
		}
		if got := strings.Join(said(tb.Findings()), ","); tb.Comma() != c.want || got != c.say {
			t.Errorf("%q: %q, findings %q; want %q, %q", c.in, tb.Comma(), got, c.want, c.say)
		}
	}
}

func TestToldDelimiter(t *testing.T) {
	tb, rows := readAll(t, "sep=;\ncountry,locality\nPortugal,x;y\n", Options{Comma: ','})
	if len(tb.Findings()) > 0 || rows[0].Get("locality").Text != "x;y" || rows[0].Line != 3 {
		t.Errorf("%v %+v", tb.Findings(), rows[0])
	}
}

// TestRules holds every rule to its own examples.
func TestRules(t *testing.T) {
	alone := map[string]bool{ruleDelimiter.Name: true} // what is cut wrongly has no known headings
	for _, r := range Rules() {
		if r.Doc == "" || r.Source == "" || r.Severity == 0 {
			t.Errorf("%s lacks a sentence, a source or a severity", r.Name)
		}
		if r == *ruleArchive || r == *ruleWorksheet {
			continue
		}
		raised := func(text string) (names []string) {
			tb, rows := readAll(t, text, Options{})
			all := slices.Clone(tb.Findings())
			for _, row := range rows {
				all = append(all, row.Findings...)
			}
			for _, f := range all {
				names = append(names, f.Rule)
			}
			slices.Sort(names)
			return slices.Compact(names)
		}
		if got := raised(r.Example); !slices.Equal(got, []string{r.Name}) && !(alone[r.Name] && slices.Contains(got, r.Name)) {
			t.Errorf("%s: the example raises %v", r.Name, got)
		}
		if got := raised(r.Counterexample); len(got) > 0 {
			t.Errorf("%s: the counterexample raises %v", r.Name, got)
		}
	}
	if Rules()[0].Severity != label.Error {
		t.Error("an empty file is an error")
	}
}

// TestSplitCoordinates: coordinates in several columns, by the words of several
// languages.
func TestSplitCoordinates(t *testing.T) {
	dms := "latitudeDegrees latitudeMinutes latitudeSeconds latitudeHemisphere longitudeDegrees longitudeMinutes longitudeSeconds longitudeHemisphere"
	for _, c := range []struct{ in, want string }{
		{"Lat deg,Lat min,Lat sec,N/S,Long deg,Long min,Long sec,E/W", dms},
		{"lat_d,lat_m,lat_s,lat_ns,lon_d,lon_m,lon_s,lon_ew", dms},
		{"Latitude,Min,Sec,N/S,Longitude,Min,Sec,E/W", dms},
		{"LatDeg,LatMin,LatDir,LongDeg,LongMin,LongDir", "latitudeDegrees latitudeMinutes latitudeHemisphere longitudeDegrees longitudeMinutes longitudeHemisphere"},
		{"Lat °,Lat ',\"Lat \"\"\",Long (°),Long (')", "latitudeDegrees latitudeMinutes latitudeSeconds longitudeDegrees longitudeMinutes"},
		{"graus lat,minutos lat,graus long,minutos long", "latitudeDegrees latitudeMinutes longitudeDegrees longitudeMinutes"},
		{"Geogr. Breite Grad,Geogr. Breite Min.,Geogr. Länge Grad,Geogr. Länge Min.", "latitudeDegrees latitudeMinutes longitudeDegrees longitudeMinutes"},
		{"deg,min,sec,deg,min,sec", "latitudeDegrees latitudeMinutes latitudeSeconds longitudeDegrees longitudeMinutes longitudeSeconds"},
		{"lat_degrees,n_or_s,lon_degrees,w_or_e", "decimalLatitude latitudeHemisphere decimalLongitude longitudeHemisphere"},
		{"code,LatGD,LonGD", "? decimalLatitude decimalLongitude"},
		{"lat,N/S,long,E/W", "decimalLatitude latitudeHemisphere decimalLongitude longitudeHemisphere"},
		{"lat_deg,long_deg", "decimalLatitude decimalLongitude"},
		{"country,lat,lat_min,lat_max", "country decimalLatitude ? ?"},
		{"year,month,day,country", "year month day country"},
		{"UTM zone,Easting,Northing", "utmZone easting northing"},
		{"country,Huso,Este,Norte", "country utmZone easting northing"},
		{"country,Zone,habitat", "country ? habitat"},
		{"country,X,Y", "country easting northing"},
		{"country,X", "country ?"},
		{"country,POINT_X,POINT_Y", "country easting northing"},
		{"country,decimalLatitude,decimalLongitude,POINT_X,POINT_Y", "country decimalLatitude decimalLongitude ? ?"},
		{"UTM zone,lat,long,POINT_X,POINT_Y", "utmZone decimalLatitude decimalLongitude easting northing"},
		{"country,Township,habitat", "country municipality habitat"},
		{"country,Township,Range,Sec.,1/4", "country township range section quarterSection"},
		{"country,T,R,S", "country township range section"},
		{"country,Range", "country ?"},
		{"country,TRS,Quad", "country townshipRangeSection mapSheet"},
		{"country,10-km square", "country gridSquare"},
	} {
		tb, err := Open(Bytes("t.csv", []byte(c.in+"\n")), Options{Comma: ','})
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, col := range tb.Columns() {
			if col.Known {
				got = append(got, col.Term)
			} else {
				got = append(got, "?")
			}
		}
		if s := strings.Join(got, " "); s != c.want {
			t.Errorf("%s\ngot  %s\nwant %s", c.in, s, c.want)
		}
	}
}

// TestGroups: several columns of one term are read together, or must agree.
func TestGroups(t *testing.T) {
	tb, rows := readAll(t, "collector 1,collector 2,collector 3,notes,remarks,taxon,plant name\n"+
		"I. Almeida,R. Costa,M. Teles,pink,common,Erica arborea L.,\n"+
		"I. Almeida,,M. Teles,,common,Erica arborea L.,Erica arborea L.\n"+
		"I. Almeida,,,NA,,Erica arborea L.,Erica cinerea L.\n", Options{})
	if got := len(tb.Findings()); got != 3 {
		t.Errorf("%d findings of the headings: %v", got, tb.Findings())
	}
	for i, want := range []string{
		"R. Costa | M. Teles/pink; common/Erica arborea L./-1",
		"M. Teles/common/Erica arborea L./2",
		"/NA/Erica arborea L./1",
	} {
		r := rows[i]
		if got := fmt.Sprintf("%s/%s/%s/%d", r.Get("coCollectors").Text, r.Text("occurrenceRemarks"), r.Get("scientificName").Text, r.Column("coCollectors")); got != want {
			t.Errorf("row %d: %s, want %s", i+1, got, want)
		}
	}
	if got := said(rows[2].Findings); len(rows[0].Findings)+len(rows[1].Findings) != 0 || !slices.Equal(got, []string{"heading-doubled error"}) {
		t.Errorf("rows that differ: %v", got)
	}
	if o := rows[1].Origin("coCollectors"); o.Column != 13 {
		t.Errorf("origin %v", o)
	}
	if !rows[0].Follows(2) || rows[0].Follows(1) {
		t.Error("which columns follow")
	}
}

// TestSourcesTogether: a point may have two sources, which are no contradiction.
func TestSourcesTogether(t *testing.T) {
	_, rows := readAll(t, "country,coordinatesSource,Georeference_source\nPT,receiver,map 1:25000\nPT,,map 1:25000\n", Options{})
	if c := rows[0].Get("georeferenceSources"); c.Text != "receiver | map 1:25000" || len(rows[0].Findings) != 0 {
		t.Errorf("%q, %v", c.Text, rows[0].Findings)
	}
}

// TestHeadingsOf: a finding names a column as its reader knows it.
func TestHeadingsOf(t *testing.T) {
	tb, _ := readAll(t, "Coll. No.,country,dwc:locality,Lat deg,Lat min,N/S\n1,Portugal,Lindoso,41,52,N\n", Options{})
	heads := tb.HeadingsOf()
	for _, c := range []struct {
		term, heading string
		inner         bool
	}{
		{"recordNumber", "Coll. No.", false}, {"country", "", false}, {"locality", "", false},
		{"latitudeMinutes", "Lat min", true}, {"habitat", "", false}, {"", "", false},
	} {
		var h label.Heading
		if p := heads[c.term]; p != nil {
			h = *p
		}
		if h.Text != c.heading || h.Inner != c.inner {
			t.Errorf("%s: %+v", c.term, h)
		}
	}
	f := label.Finding{Origin: label.Origin{File: "t.csv", Line: 2, Term: "latitudeMinutes"}, Value: "72", Message: "too many", Head: &label.Heading{Text: "Lat min", Inner: true}}
	if got := f.String(); got != `t.csv:2: Lat min "72": too many` {
		t.Error(got)
	}
}
