package table

import (
	"regexp"
	"strings"
)

// idleWords say nothing beside a word for a place, a person or a remark.
var idleWords = regexp.MustCompile(`(?i)(^|[\s_./(-])(name|names|nome|nombre|nom|naam|exact|exacta|exacto|exato|exata|genaue|genauer|précise|précis|générales|additional|extra|detailed|precise|specific|full|complete|general|generales|gerais|geral|other|description|descripción|descrição|descr?|details?|text)([\s_./)-]|$)`)

// unworked ends the heading of a column that is as it was found, or of names as
// one author takes them.
var unworked = regexp.MustCompile(`(?i)[ _.-](raw|uncleaned|as[ _.]?found|sensu[ _.-].+)$`)

// idleBeside are the terms whose headings may have them.
var idleBeside = map[string]bool{"recordedBy": true, "identifiedBy": true, "country": true, "stateProvince": true, "county": true, "municipality": true,
	"locality": true, "habitat": true, "occurrenceRemarks": true, "family": true, "island": true, "coCollectors": true}

// fieldWork are words for the work in the field, which say nothing beside a word for
// where or when: "Sampling locality", "Visit date", "Date harvested".
var fieldWork = regexp.MustCompile(`(?i)(^|[\s_./(-])((of|when) )?(collections?|coll|collect(ing|ed)|sampl(e|es|ing|ed)|surveys?|surveyed|visits?|visited|harvest(ed)?|fieldwork|field|study|gathering|gathered|coletas?|colectas?|recolección|amostragem|muestreo|récolte|collecte|raccolta|campionamento)([\s_./)-]|$)`)

// besideFieldWork are the terms whose headings may have them.
var besideFieldWork = map[string]bool{"country": true, "stateProvince": true, "county": true, "municipality": true, "locality": true, "habitat": true, "island": true, "waterBody": true,
	"eventDate": true, "year": true, "month": true, "day": true, "decimalLatitude": true, "decimalLongitude": true, "minimumElevationInMeters": true, "minimumDepthInMeters": true, "verbatimCoordinates": true}

var between = regexp.MustCompile(`\s*[/&+]\s*|\s+(?:and|or|e|y|et|und|o|ou|oder)\s+`)

// counted begins the heading of a column that counts something.
var counted = regexp.MustCompile(`(?i)^(numbers?|no|nr|n|nº|num|número|numero|nombre|count|anzahl)[\s_.]*(of|de|der|d')[\s_]*(the |all )?\pL+s\b`)

// alike are terms of which one heading may name two: the first counts.
var alike = []map[string]bool{
	{"stateProvince": true, "county": true, "municipality": true, "locality": true, "country": true},
	{"habitat": true, "occurrenceRemarks": true, "plantDescription": true, "associatedTaxa": true},
}

// readLoosely finds what a heading stands for whose words are known, but not in
// this order or company.
func (v *words) readLoosely(heading string) reading {
	if counted.MatchString(heading) {
		return reading{} // "Number of sheets" is no number that a sheet bears
	}
	if m := v.loose[looseKey(heading)]; m != nil {
		return reading{meaning: m, unit: m.unit}
	}
	if p, ok := readPiece(heading); ok && p.axis != "" && p.part == "decimal" {
		return reading{meaning: v.meanings[p.axis]}
	}
	if axis := wholeAngle(heading); axis != "" {
		return reading{meaning: v.meanings["verbatim"+axis]}
	}
	if parts := between.Split(heading, -1); len(parts) == 2 {
		a, b := v.lookup(parts[0]), v.lookup(parts[1])
		if a.meaning != nil && b.meaning != nil && len(a.terms) == 1 && len(b.terms) == 1 {
			same := a.terms[0] == b.terms[0]
			for _, set := range alike {
				same = same || set[a.terms[0]] && set[b.terms[0]]
			}
			if same {
				return a
			}
		}
	}
	if r := v.readSeveral(heading); r.meaning != nil {
		return r
	}
	if rest := unworked.ReplaceAllString(heading, ""); rest != heading {
		if r := v.lookup(rest); r.meaning != nil && (idleBeside[r.terms[0]] || r.terms[0] == "scientificName") {
			return r
		}
	}
	if rest := strings.TrimSpace(idleWords.ReplaceAllString(heading, " ")); rest != "" && rest != heading {
		r := v.lookup(rest)
		if r.meaning == nil {
			r = reading{meaning: v.loose[looseKey(rest)]}
		}
		if r.meaning != nil && idleBeside[r.terms[0]] {
			return r
		}
	}
	if rest := strings.TrimSpace(fieldWork.ReplaceAllString(heading, " ")); rest != "" && rest != heading {
		if r := v.lookup(rest); r.meaning != nil && besideFieldWork[r.terms[0]] {
			m := *r.meaning
			m.plain = true // a word for the term, which its cells may belie
			r.meaning = &m
			return r
		}
	}
	return reading{}
}
