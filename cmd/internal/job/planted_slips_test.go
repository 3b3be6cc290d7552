package job

import (
	"slices"
	"strconv"
	"strings"
)

// slipFaults are slips of the keys and of spreadsheets that the rest of the record or of
// the table tells.
var slipFaults = []plantedFault{
	{"elevation-disagrees", "other metres", func(p *planting) bool {
		return p.otherHeight(func(m int) int { return m + 700 })
	}},
	{"elevation-disagrees", "converted as if they were feet", func(p *planting) bool {
		return p.otherHeight(func(m int) int { return m * 3048 / 10000 })
	}},
	{"number-slip", "another figure", func(p *planting) bool {
		return p.between() && p.change("catalogNumber", func(s string) string { return strings.Replace(s, "-00040", "-00049", 1) })
	}},
	{"number-slip", "a letter or another sign", func(p *planting) bool {
		return p.between() && p.change("catalogNumber", func(s string) string {
			return strings.Replace(s, "VDOURA-0", p.pick("VDOURA-O", "VDOURA 0", "VDOURA0", "VDOURA--0"), 1)
		})
	}},
	{"state-spelling", "two letters exchanged", func(p *planting) bool {
		slip := map[string]string{"Guarda": "Gaurda", "Bragança": "Brgaança", "Castelo Branco": "Castelo Brnaco", "Braga": "Barga", "Évora": "Évoar"}[p.get("stateProvince")]
		return slip != "" && p.get("decimalLatitude") != "" && p.set("stateProvince", slip)
	}},
	to("text-formula", "cells that are joined", "habitat", "=B2&C3", `=B2&", "&C2`, "=$B$2"),
	to("text-formula", "a function", "locality", "=CONCATENATE(A2;B2)", "=VLOOKUP(A2,Sheet2!A:B,2)", "=Sheet2!B4"),
	to("person-form", "a figure behind the name", "identifiedBy", "I. Almeida1", "R. Costa2"),
	to("person-form", "figures alone", "identifiedBy", "2019", "1204"),
	to("person-form", "nobody behind and", "recordedBy", "I. Almeida e", "R. Costa y"),
	by("family-spelling", "small letters", func(_ *planting, s string) string { return strings.ToLower(s) }, "family"),
	to("text-ditto", "a sign between lines", "habitat", `-"-`, "-||-", "-//-"),
	to("placeholder", "a cell that is too narrow", "habitat", "########", "##########"),
	by("epithet-english", "a speller's", func(_ *planting, s string) string {
		return strings.NewReplacer(" suffruticosa", " suffruticate", " spartea", " rigid", " maritimum", " maritime", " gigantea", " elegant", " villosa", " villose", " acutus", " acute", " villosa", " hirsute", " natrix", " acuminate", " ciliolata", " ciliolate", " aestivus", " autumnal").Replace(s)
	}, "scientificName"),
	by("epithet-accents", "an accent", func(_ *planting, s string) string {
		return strings.NewReplacer(" lingua", " língua", " maxima", " máxima", " marinum", " marínum", " italicum", " itálicum", " hispanica", " hispánica", " ladanifer", " ladánifer", " arenaria", " arenária", " pinaster", " pináster").Replace(s)
	}, "scientificName"),
	by("name-form", "a stop left out", func(_ *planting, s string) string {
		if !strings.HasSuffix(s, " L.") {
			return s
		}
		return strings.TrimSuffix(s, ".")
	}, "scientificName"),
	by("author-form", "a stop left out or small letters", func(p *planting, s string) string {
		if s != "L." && s != "Brot." && s != "Willd." {
			return s
		}
		if s == "L." && p.IntN(2) == 0 {
			return "L"
		}
		return strings.ToLower(s)
	}, "scientificNameAuthorship"),
	{"genus-spelling|name-spelling", "a letter of a common genus", func(p *planting) bool {
		as := map[string]string{"Euphorbia": "Euphorbbia", "Plantago": "Plantgao", "Helichrysum": "Helicrysum", "Calendula": "Calandula", "Santolina": "Santollina", "Polypodium": "Polipodium", "Asplenium": "Aspelnium", "Scrophularia": "Scrofularia", "Narcissus": "Narcisus", "Eryngium": "Eringium", "Biscutella": "Biscuttella"}
		genus, _, _ := strings.Cut(p.get("scientificName"), " ")
		return as[genus] != "" && p.get("family") != "" && !p.has("genus") && p.change("scientificName", func(s string) string { return strings.Replace(s, genus, as[genus], 1) })
	}},
	{"elevation-place", "feet, a zero or figures exchanged", func(p *planting) bool {
		m, err := strconv.Atoi(p.get("minimumElevationInMeters"))
		same := p.row > 0 && p.has("decimalLatitude")
		for _, term := range []string{"recordedBy", "eventDate", "locality", "decimalLatitude", "decimalLongitude", "minimumElevationInMeters"} {
			same = same && p.get(term) == p.at(p.row-1, term)
		}
		if err != nil || !same || m < 100 || m > 600 || p.has("verbatimElevation") {
			return false
		}
		p.rows = append(p.rows, p.row-1, p.row+1)
		to := strconv.Itoa(m * 10000 / 3048)
		if m < 200 {
			to = strconv.Itoa(m * 10)
		}
		p.quietly("maximumElevationInMeters", to)
		return p.set("minimumElevationInMeters", to)
	}},
	{"row-twice", "the row above, pasted again", func(p *planting) bool {
		if p.row == 0 || p.has("catalogNumber") {
			return false
		}
		p.trip.rows[p.row] = slices.Clone(p.trip.rows[p.row-1])
		return p.set("recordNumber", p.get("recordNumber")+" ") && p.set("recordNumber", strings.TrimSpace(p.get("recordNumber")))
	}},
	{"uncertainty-small", "figures cut to tenths", func(p *planting) bool {
		lat, err := strconv.ParseFloat(p.get("decimalLatitude"), 64)
		lon, err2 := strconv.ParseFloat(p.get("decimalLongitude"), 64)
		if err != nil || err2 != nil || p.get("coordinateUncertaintyInMeters") == "" {
			return false
		}
		p.terms = append(p.terms, "coordinateUncertaintyInMeters")
		return p.quietly("decimalLatitude", strconv.FormatFloat(lat, 'f', 1, 64)) && p.quietly("decimalLongitude", strconv.FormatFloat(lon, 'f', 1, 64))
	}},
	{"grid-figures", "a figure left out of the grid", func(p *planting) bool {
		return p.get("decimalLatitude") != "" && p.set("verbatimCoordinates", p.pick("29S 51300 4258000", "29S 51300 425800"))
	}},
}

// between reports whether the row has one above and one below.
func (p *planting) between() bool { return p.row > 0 && p.row < len(p.trip.rows)-1 }

// otherHeight changes what the columns of metres say beside a height as written.
func (p *planting) otherHeight(of func(m int) int) bool {
	m, err := strconv.Atoi(p.get("minimumElevationInMeters"))
	if err != nil || m < 200 || p.get("verbatimElevation") == "" {
		return false
	}
	p.quietly("maximumElevationInMeters", strconv.Itoa(of(m)))
	return p.set("minimumElevationInMeters", strconv.Itoa(of(m)))
}
