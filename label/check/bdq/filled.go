package bdq

import "cornerslip/label/check"

// filledTests ask whether a cell has a value at all.
func filledTests() []Test {
	return []Test{
		filled("VALIDATION_BASISOFRECORD_NOTEMPTY", "ac2b7648-d5f9-48ca-9b07-8ad5879a2536", "basisOfRecord", "PreservedSpecimen"),
		filled("VALIDATION_LICENSE_NOTEMPTY", "15f78619-811a-4c6f-997a-a4c7888ad849", "license", "https://creativecommons.org/licenses/by/4.0/"),
		filled("VALIDATION_OCCURRENCEID_NOTEMPTY", "c486546c-e6e5-48a7-b286-eba7f5ca56c4", "occurrenceID", "urn:catalog:VDOURA:0001234"),
		{
			Label: "VALIDATION_COUNTRY_NOTEMPTY", GUID: "6ce2b2b4-6afe-4d13-82a0-390d31ade01c", Kind: KindValidation,
			Doc:  "country is filled in, unless countryCode says high seas",
			Acts: []string{"country"}, Consults: []string{"countryCode"},
			Answer: func(c *Cells) Response {
				return complies(!c.Empty("country") || c.Text("countryCode") == "XZ")
			},
			rule: speech{
				message: "no country is given: fill it in",
				example: check.With("country", ""), counterexample: check.With("country", "", "countryCode", "XZ"),
			},
		},
		filled("VALIDATION_COUNTRYCODE_NOTEMPTY", "853b79a2-b314-44a2-ae46-34a1e7ed85e4", "countryCode", "PT"),
		filled("VALIDATION_DECIMALLATITUDE_NOTEMPTY", "7d2485d5-1ba7-4f25-90cb-f4480ff1a275", "decimalLatitude", "38.4712").like("coordinates-half"),
		filled("VALIDATION_DECIMALLONGITUDE_NOTEMPTY", "9beb9442-d942-4f42-8b6a-fcea01ee086a", "decimalLongitude", "-8.8035").like("coordinates-half"),
		filled("VALIDATION_GEODETICDATUM_NOTEMPTY", "239ec40e-a729-4a8e-ba69-e0bf03ac1c44", "geodeticDatum", "WGS84").like("datum-missing"),
		anyFilled(Test{
			Label: "VALIDATION_LOCATION_NOTEMPTY", GUID: "58486cb6-1114-4a8a-ba1e-bd89cfe887e9",
			Doc: "at least one of the terms that can say a place is filled in",
			Acts: []string{"higherGeographyID", "higherGeography", "continent", "country", "countryCode", "stateProvince", "county", "municipality", "waterBody", "island", "islandGroup",
				"locality", "locationID", "verbatimLocality", "decimalLatitude", "decimalLongitude", "verbatimCoordinates", "verbatimLatitude", "verbatimLongitude", "footprintWKT"},
			rule: speech{
				term: "locality", twin: "place-missing", message: "nothing says where it was found: fill in country or locality",
				example:        check.With("country", "", "stateProvince", "", "locality", "", "decimalLatitude", "", "decimalLongitude", ""),
				counterexample: check.With("country", "", "stateProvince", ""),
			},
		}),
		filled("VALIDATION_EVENTDATE_NOTEMPTY", "f51e15a6-a67d-4729-9c28-3766299d2985", "eventDate", "2026-05-14").like("date-missing"),
		anyFilled(Test{
			Label: "VALIDATION_EVENTTEMPORAL_NOTEMPTY", GUID: "41267642-60ff-4116-90eb-499fee2cd83f",
			Doc:  "at least one of the terms that can say the time of collecting is filled in",
			Acts: []string{"eventDate", "year", "month", "day", "startDayOfYear", "endDayOfYear", "verbatimEventDate"},
			rule: speech{
				twin: "date-missing", message: "nothing says when it was collected: fill in eventDate",
				example: check.With("eventDate", ""), counterexample: check.With("eventDate", "", "year", "2026"),
			},
		}),
		filled("VALIDATION_YEAR_NOTEMPTY", "c09ecbf9-34e3-4f3e-b74a-8796af15e59f", "year", "2026"),
		filled("VALIDATION_SCIENTIFICNAME_NOTEMPTY", "7c4b9498-a8d9-4ebb-85f1-9f200c788595", "scientificName", "Thymus capitellatus Hoffmanns. & Link"),
		filled("VALIDATION_SCIENTIFICNAMEAUTHORSHIP_NOTEMPTY", "49f1d386-5bed-43ae-bd43-deabf7df64fc", "scientificNameAuthorship", "Hoffmanns. & Link"),
		filled("VALIDATION_TAXONRANK_NOTEMPTY", "14da5b87-8304-4b2b-911d-117e3c29e890", "taxonRank", "species"),
		anyFilled(Test{
			Label: "VALIDATION_TAXON_NOTEMPTY", GUID: "06851339-843f-4a43-8422-4e61b9a00e75",
			Doc: "at least one of the terms that can say what the plant is is filled in",
			Acts: []string{"taxonID", "scientificNameID", "acceptedNameUsageID", "parentNameUsageID", "originalNameUsageID", "taxonConceptID", "scientificName", "higherClassification",
				"kingdom", "phylum", "class", "order", "superfamily", "family", "subfamily", "tribe", "subtribe", "genus", "genericName", "subgenus", "infragenericEpithet",
				"specificEpithet", "infraspecificEpithet", "vernacularName", "cultivarEpithet"},
			rule: speech{
				term: "scientificName", twin: "name-missing", message: "nothing says what the plant is: fill in scientificName or at least family",
				example: check.With("scientificName", "", "family", ""), counterexample: check.With("scientificName", ""),
			},
		}),
	}
}

// optionalFilled are those of terms that labels do not have.
func optionalFilled() []Test {
	return []Test{
		filled("VALIDATION_DCTYPE_NOTEMPTY", "374b091a-fc90-4791-91e5-c1557c649169", "type", "PhysicalObject"),
		filled("VALIDATION_OCCURRENCESTATUS_NOTEMPTY", "eb4a17f6-6bea-4cdd-93dd-d5a7e9d1eccf", "occurrenceStatus", "present"),
		filled("VALIDATION_KINGDOM_NOTEMPTY", "36ed36c9-b1a7-40b2-b5e2-0d012e772098", "kingdom", "Plantae"),
		filled("VALIDATION_NAMEPUBLISHEDINYEAR_NOTEMPTY", "ff59f77d-71e9-4eb1-aac9-8bd05c50ff70", "namePublishedInYear", "1809"),
		filled("VALIDATION_SCIENTIFICNAMEID_NOTEMPTY", "401bf207-9a55-4dff-88a5-abcd58ad97fa", "scientificNameID", "urn:lsid:ipni.org:names:457166-1"),
		issue("ISSUE_DATAGENERALIZATIONS_NOTEMPTY", "13d5a10e-188e-40fd-a22c-dbaa87b91df2", "dataGeneralizations",
			"data were made coarser here: the label should print the place as it was found", "coordinates rounded to 0.1 degree"),
		issue("ISSUE_ESTABLISHMENTMEANS_NOTEMPTY", "acc8dff2-d8d1-483a-946d-65a02a452700", "establishmentMeans",
			"the plant may not be native here", "introduced"),
	}
}

// filled asks for a value in one term; sound is one.
func filled(label, guid, term, sound string) Test {
	return Test{
		Label: label, GUID: guid, Kind: KindValidation, Doc: term + " is filled in", Acts: []string{term},
		Answer: func(c *Cells) Response { return complies(!c.Empty(term)) },
		rule: speech{
			message: term + " is empty: fill it in",
			example: check.With(term, ""), counterexample: check.With(term, sound),
		},
	}
}

// like names the basic rule that says the same.
func (t Test) like(twin string) Test {
	t.rule.twin = twin
	return t
}

// anyFilled asks for a value in any of the terms it acts upon.
func anyFilled(t Test) Test {
	t.Kind = KindValidation
	t.Answer = func(c *Cells) Response {
		for _, term := range t.Acts {
			if !c.Empty(term) {
				return compliant
			}
		}
		return notCompliant
	}
	return t
}

// issue points at a term that should make people look.
func issue(label, guid, term, message, value string) Test {
	return Test{
		Label: label, GUID: guid, Kind: KindIssue, Doc: term + " is filled in, which is worth a look", Acts: []string{term},
		Answer: func(c *Cells) Response {
			if c.Empty(term) {
				return Response{Status: RunHasResult, Result: NotIssue}
			}
			return Response{Status: RunHasResult, Result: PotentialIssue}
		},
		rule: speech{message: message, example: check.With(term, value), counterexample: check.With()},
	}
}
