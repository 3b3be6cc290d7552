package bdq

import (
	"regexp"
	"slices"
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/place"
)

// listTests hold a cell against a list of words, and propose the word that was
// meant.
func listTests() []Test {
	return []Test{
		inList("VALIDATION_BASISOFRECORD_STANDARD", "42408a00-bf71-4892-a399-4325e2bc1fb8", "basisOfRecord", "the name of a class of Darwin Core, such as PreservedSpecimen",
			place.BasisOfRecord, "Specimen", "PreservedSpecimen"),
		toList("AMENDMENT_BASISOFRECORD_STANDARDIZED", "07c28ace-561a-476e-a9b9-3d5ad6e35933", "basisOfRecord", place.BasisOfRecord, "preserved specimen", "PreservedSpecimen"),
		{
			Label: "VALIDATION_LICENSE_STANDARD", GUID: "3136236e-04b6-49ea-8b34-a65f25e3aba1", Kind: KindValidation,
			Doc: "license is the address of a Creative Commons 4.0 licence or CC0", Acts: []string{"license"},
			Answer: func(c *Cells) Response {
				if c.Empty("license") {
					return internalNotMet
				}
				return complies(place.IsLicence(c.Text("license")))
			},
			rule: speech{
				message: "not the address of a Creative Commons 4.0 licence or CC0",
				example: check.With("license", "CC BY 4.0"), counterexample: check.With("license", "https://creativecommons.org/licenses/by/4.0/"),
			},
		},
		// The standard has no prerequisite here: an empty cell is not amended.
		amend(Test{
			Label: "AMENDMENT_LICENSE_STANDARDIZED", GUID: "dcbe5bd2-42a0-4aab-bb4d-8f148c6490f8",
			Doc: "a licence named in words is replaced by its address", Acts: []string{"license"},
			rule: speech{example: check.With("license", "CC BY 4.0"), counterexample: check.With("license", "all rights reserved")},
		}, false, func(s string) (string, bool) {
			if place.IsLicence(s) {
				return "", false
			}
			return place.Licence(strings.TrimFunc(s, invisible))
		}),
		{
			Label: "VALIDATION_COUNTRYCODE_STANDARD", GUID: "0493bcfb-652e-4d17-815b-b0cce0742fbe", Kind: KindValidation,
			Doc: "countryCode is an alpha-2 code of ISO 3166-1, XZ for the high seas or ZZ for unknown", Acts: []string{"countryCode"},
			Answer: func(c *Cells) Response {
				if c.Empty("countryCode") {
					return internalNotMet
				}
				return complies(place.IsCountryCode(c.Text("countryCode")))
			},
			rule: speech{
				severity: label.Warning, message: "not a country code of ISO 3166-1: write its two capital letters, such as PT",
				// What can be set right has a note of its own, below. XK is what most
				// write for Kosovo, from the codes that ISO leaves to its users.
				quiet: func(c *Cells, _ *check.Context) bool {
					_, ok := countryCode(c.Text("countryCode"))
					return ok || c.trimmed("countryCode") == "XK"
				},
				example: check.With("countryCode", "ZX"), counterexample: check.With("countryCode", "PT"),
			},
		},
		amend(Test{
			Label: "AMENDMENT_COUNTRYCODE_STANDARDIZED", GUID: "fec5ffe6-3958-4312-82d9-ebcca0efb350",
			Doc: "a country's name or other code in countryCode is replaced by its alpha-2 code", Acts: []string{"countryCode"},
			rule: speech{severity: label.Note, message: "the alpha-2 code of ISO 3166-1 is meant", example: check.With("countryCode", "PRT"), counterexample: check.With("countryCode", "PT")},
		}, true, countryCode),
		datumStandard(), datumStandardized(),
		inList("VALIDATION_ESTABLISHMENTMEANS_STANDARD", "4eb48fdf-7299-4d63-9d08-246902e2857f", "establishmentMeans", "a term of the TDWG list, such as native or introduced",
			place.EstablishmentMeans, "cultivated", "introduced"),
		toList("AMENDMENT_ESTABLISHMENTMEANS_STANDARDIZED", "15d15927-7a22-43f8-88d6-298f5eb45c4c", "establishmentMeans", place.EstablishmentMeans, "vag.", "native"),
		typeStatusStandard(), typeStatusStandardized(),
		inList("VALIDATION_TAXONRANK_STANDARD", "7bdb13a4-8a51-4ee5-be7f-20693fdb183e", "taxonRank", "a rank in full, such as subspecies", place.TaxonRank, "subsp.", "subspecies"),
		toList("AMENDMENT_TAXONRANK_STANDARDIZED", "e39098df-ef46-464c-9aef-bcdeee2a88cb", "taxonRank", place.TaxonRank, "sp.", "species"),
	}
}

func optionalLists() []Test {
	return []Test{
		inList("VALIDATION_DCTYPE_STANDARD", "cdaabb0d-a863-49d0-bc0f-738d771acba5", "type", "a term of the DCMI types, such as PhysicalObject", place.DCMIType, "sheet", "PhysicalObject"),
		toList("AMENDMENT_DCTYPE_STANDARDIZED", "bd385eeb-44a2-464b-a503-7abe407ef904", "type", place.DCMIType, "physical object", "PhysicalObject"),
		inList("VALIDATION_DEGREEOFESTABLISHMENT_STANDARD", "060e7734-607d-4737-8b2c-bfa17788bf1a", "degreeOfEstablishment", "a term of the TDWG list, such as cultivated",
			place.DegreeOfEstablishment, "grown in garden", "cultivated"),
		toList("AMENDMENT_DEGREEOFESTABLISHMENT_STANDARDIZED", "74ef1034-e289-4596-b5b0-cde73796697d", "degreeOfEstablishment", place.DegreeOfEstablishment, "cult.", "cultivated"),
		inList("VALIDATION_OCCURRENCESTATUS_STANDARD", "7af25f1e-a4e2-4ff4-b161-d1f25a5c3e47", "occurrenceStatus", "present or absent", place.OccurrenceStatus, "yes", "present"),
		toList("AMENDMENT_OCCURRENCESTATUS_STANDARDIZED", "f8f3a093-042c-47a3-971a-a482aaaf3b75", "occurrenceStatus", place.OccurrenceStatus, "Present", "present"),
		{
			Label: "AMENDMENT_OCCURRENCESTATUS_ASSUMEDDEFAULT", GUID: "96667a0a-ae59-446a-bbb0-b7f2b0ca6cf5", Kind: KindAmendment,
			Doc: "an empty occurrenceStatus is taken for present where no quantity is given", Acts: []string{"occurrenceStatus"}, Consults: []string{"individualCount", "organismQuantity"},
			Answer: func(c *Cells) Response {
				switch {
				case !c.Empty("occurrenceStatus"):
					return internalNotMet
				case c.Empty("individualCount") && c.Empty("organismQuantity"):
					return changed(FilledIn, "occurrenceStatus", "present")
				}
				return notAmended
			},
			rule: speech{message: "a plant collected was present", example: check.With(), counterexample: check.With("occurrenceStatus", "present")},
		},
		inList("VALIDATION_PATHWAY_STANDARD", "5424e933-bee7-4125-839e-d8743ea69f93", "pathway", "a term of the TDWG list, such as horticulture", place.Pathway, "escapee", "horticulture"),
		toList("AMENDMENT_PATHWAY_STANDARDIZED", "f9205977-f145-44f5-8cb9-e3e2e35ce908", "pathway", place.Pathway, "ballast water", "ballastWater"),
		inList("VALIDATION_SEX_STANDARD", "88d8598b-3318-483d-9475-a5acf9887404", "sex", "Male, Female or Hermaphrodite", place.Sex, "f", "Female"),
		toList("AMENDMENT_SEX_STANDARDIZED", "33c45ae1-e2db-462a-a59e-7169bb01c5d6", "sex", place.Sex, "f", "Female"),
		{
			Label: "VALIDATION_COUNTRYCOUNTRYCODE_CONSISTENT", GUID: "b23110e7-1be7-444a-a677-cdee0cf4330c", Kind: KindValidation,
			Doc: "country and countryCode name the same country", Acts: []string{"country", "countryCode"},
			Answer: func(c *Cells) Response {
				if c.Empty("country") || c.Empty("countryCode") {
					return internalNotMet
				}
				text := c.Text("country")
				found, ok := place.Country(text)
				part := slices.ContainsFunc(partsOfNations, func(name string) bool { return strings.EqualFold(name, text) })
				return complies(ok && !part && found.Code == c.Text("countryCode") && strings.TrimFunc(text, invisible) == text)
			},
			rule: speech{
				term: "countryCode", message: "not the code of the country that is named",
				example: check.With("countryCode", "ES"), counterexample: check.With("countryCode", "PT"),
			},
		},
	}
}

// partsOfNations are names by which a country's code is found though they are
// not at the level of nations, as the standard wants them here.
var partsOfNations = []string{"England", "Scotland", "Wales", "Northern Ireland", "Inglaterra", "Escócia", "Escocia", "Angleterre", "Hawaii", "Alaska", "Azores", "Açores", "Madeira",
	"Canary Islands", "Islas Canarias", "Zanzibar", "Svalbard", "Jan Mayen", "Spitsbergen"}

// inList asks whether a cell is exactly a word of a list.
func inList(name, guid, term, what string, list func() *place.Vocabulary, wrong, right string) Test {
	return Test{
		Label: name, GUID: guid, Kind: KindValidation, Doc: term + " is " + what, Acts: []string{term},
		Answer: func(c *Cells) Response {
			text := c.Text(term)
			if blank(text) {
				return internalNotMet
			}
			return complies(list().Has(text))
		},
		rule: speech{
			message: "not " + what, example: check.With(term, wrong), counterexample: check.With(term, right),
			suggest: func(c *Cells) string { s, _ := list().Match(c.Text(term)); return s },
		},
	}
}

// toList proposes the word of a list that a cell can only mean.
func toList(name, guid, term string, list func() *place.Vocabulary, variant, right string) Test {
	return amend(Test{
		Label: name, GUID: guid, Doc: "a variant of a term in " + term + " is replaced by the term", Acts: []string{term},
		rule: speech{example: check.With(term, variant), counterexample: check.With(term, right)},
	}, true, func(s string) (string, bool) {
		if list().Has(s) {
			return "", false
		}
		return list().Match(s)
	})
}

// amend makes an amendment of one term: better returns another value for a
// text, or false. Where the standard wants a value, an empty cell does not
// meet the prerequisites.
func amend(t Test, wantsValue bool, better func(text string) (string, bool)) Test {
	t.Kind = KindAmendment
	term := t.Acts[0]
	t.Answer = func(c *Cells) Response {
		text := c.Text(term)
		if blank(text) {
			if wantsValue {
				return internalNotMet
			}
			return notAmended
		}
		if s, ok := better(text); ok && s != text {
			return changed(Amended, term, s)
		}
		return notAmended
	}
	if t.rule.message == "" {
		t.rule.message = "the standard's own word is meant"
	}
	return t
}

// countryCode returns the alpha-2 code that a text other than it can only
// mean.
func countryCode(text string) (string, bool) {
	s := strings.TrimFunc(text, invisible)
	if up := strings.ToUpper(s); up == place.HighSeas || up == place.UnknownCountry {
		return up, up != text
	}
	if strings.EqualFold(s, "high seas") {
		return place.HighSeas, true
	}
	c, ok := place.Country(s)
	return c.Code, ok && c.Code != text
}

func typeStatusStandard() Test {
	return Test{
		Label: "VALIDATION_TYPESTATUS_STANDARD", GUID: "4833a522-12eb-4fe0-b4cf-7f7a337a6048", Kind: KindValidation,
		Doc: `the first word of each part of typeStatus, parted by "|", is a kind of type`, Acts: []string{"typeStatus"},
		Answer: func(c *Cells) Response {
			text := c.Text("typeStatus")
			if blank(text) {
				return internalNotMet
			}
			if strings.TrimFunc(text, invisible) != text {
				return notCompliant
			}
			for part := range strings.SplitSeq(text, "|") {
				word, _ := firstWord(part)
				if !place.TypeStatus().Has(word) {
					return notCompliant
				}
			}
			return compliant
		},
		rule: speech{
			severity: label.Warning, message: `not a kind of type: begin each part with one, such as "holotype of" and the name`,
			quiet: func(c *Cells, ctx *check.Context) bool {
				_, understood := typeStatus(hedge.ReplaceAllString(strings.TrimSpace(c.Text("typeStatus")), ""))
				return understood || slices.ContainsFunc(ctx.Placeholders, func(f check.Field) bool { return f.Origin.Term == "typeStatus" })
			},
			example: check.With("typeStatus", "cleptotype"), counterexample: check.With("typeStatus", "Isotype of Thymus capitellatus | Paratype of Thymus capitellatus"),
		},
	}
}

func typeStatusStandardized() Test {
	return amend(Test{
		Label: "AMENDMENT_TYPESTATUS_STANDARDIZED", GUID: "b3471c65-b53e-453b-8282-abfa27bf1805",
		Doc: `an abbreviated kind of type at the head of a part of typeStatus is written in full`, Acts: []string{"typeStatus"},
		rule: speech{severity: label.Note, message: "the kind of type in full is meant", example: check.With("typeStatus", "Holo."), counterexample: check.With("typeStatus", "Holotype")},
	}, true, func(text string) (string, bool) {
		s, understood := typeStatus(text)
		return s, understood && s != text
	})
}

// typeStatus writes the first word of each part in full. All parts must be
// understood, or nothing is changed. A sign behind the word stays: "!" says that
// the type was seen, and a comma parts two kinds.
func typeStatus(text string) (string, bool) {
	trimmed := strings.TrimFunc(text, invisible)
	parts := strings.Split(trimmed, "|")
	for i, part := range parts {
		word, at := firstWord(part)
		if m := parted.FindStringSubmatch(part[at:]); m != nil && place.TypeStatus().Has(m[1]+"type") {
			term, _ := place.TypeStatus().Match(m[1] + "type")
			parts[i] = part[:at] + term + part[at+len(m[0]):]
			continue
		}
		word = strings.TrimRight(word, "!,;:")
		if place.TypeStatus().Has(word) {
			continue
		}
		term, ok := place.TypeStatus().Match(word)
		if !ok {
			return "", false
		}
		parts[i] = part[:at] + term + part[at+len(word):]
	}
	return strings.Join(parts, "|"), true
}

// parted is a kind of type written as two words: "iso-type".
var parted = regexp.MustCompile(`^(\pL{3,})[\s-](?i:type|typus)\b`)

// hedge is what curators say of a type that they are not certain of: it is no
// fault, and no list of the standard has it.
var hedge = regexp.MustCompile(`(?i)^(?:possibl[ey]|probabl[ey]|presumed|likely|posible|possível|vermutlich|presunt[oa])\s+(?:an?\s+)?|\s*(?:\?|\(\?\)|\[\?\])$`)

// firstWord returns the first word of a text and where it begins.
func firstWord(s string) (word string, at int) {
	rest := strings.TrimLeftFunc(s, invisible)
	at = len(s) - len(rest)
	if i := strings.IndexFunc(rest, invisible); i >= 0 {
		rest = rest[:i]
	}
	return rest, at
}

func datumStandard() Test {
	return Test{
		Label: "VALIDATION_GEODETICDATUM_STANDARD", GUID: "7e0c0418-fe16-4a39-98bd-80e19d95b9d1", Kind: KindValidation,
		Doc: `geodeticDatum is an EPSG code of a datum, an ellipsoid or a two-dimensional geographic system ("EPSG:4326"), or "not recorded"`, Acts: []string{"geodeticDatum"},
		Answer: func(c *Cells) Response {
			if c.Empty("geodeticDatum") {
				return internalNotMet
			}
			text := c.Text("geodeticDatum")
			n, ok := place.ParseEPSG(text)
			return complies(text == "not recorded" || ok && place.EPSG(n) != place.NoDatum)
		},
		rule: speech{
			message: "not an EPSG code of a datum or geographic system, such as EPSG:4326",
			example: check.With("geodeticDatum", "UTM"), counterexample: check.With("geodeticDatum", "EPSG:4326"),
			suggest: func(c *Cells) string { s, _ := c.datum(c.trimmed("geodeticDatum")); return s },
		},
	}
}

func datumStandardized() Test {
	t := amend(Test{
		Label: "AMENDMENT_GEODETICDATUM_STANDARDIZED", GUID: "0345b325-836d-4235-96d0-3b5caf150fc0",
		Doc: "a datum's name in geodeticDatum is replaced by its EPSG code", Acts: []string{"geodeticDatum"},
		rule: speech{message: "the EPSG code is what the standard wants", example: check.With("geodeticDatum", "ED50"), counterexample: check.With("geodeticDatum", "EPSG:4326")},
	}, true, place.Datum)
	t.Answer = func(c *Cells) Response {
		text := c.Text("geodeticDatum")
		if blank(text) {
			return internalNotMet
		}
		if s, ok := c.datum(strings.TrimFunc(text, invisible)); ok && s != text {
			return changed(Amended, "geodeticDatum", s)
		}
		return notAmended
	}
	return t
}
