package check

// findingCases are sets of cells changed in the sound row, and what is said of
// it: severity, rule and the finding without its place.
var findingCases = []struct {
	set  []string
	want []string
}{
	{nil, nil},
	{[]string{"recordedBy", "", "recordNumber", ""}, []string{
		`error collector-missing: recordedBy (empty): no collector is given: fill in who collected it, or write "s.coll." if it is not known`,
		`warning number-missing: recordNumber (empty): no collector's number is given: the label prints s.n.`,
	}},
	{[]string{"country", "", "stateProvince", "", "locality", ""}, []string{
		`error place-missing: locality (empty): no place is given: fill in country or locality, or write "s.loc." if it is not known`,
	}},
	{[]string{"country", "", "stateProvince", "", "locality", "", "continent", "Europe"}, []string{
		`error place-missing: locality (empty): no place is given: fill in country or locality, or write "s.loc." if it is not known`,
	}},
	{[]string{"locality", "s.l.", "country", "", "stateProvince", ""}, nil},
	{[]string{"eventDate", ""}, []string{
		`warning date-missing: eventDate (empty): no date is given: the label prints s.d.`,
	}},
	{[]string{"eventDate", "2026-02-30"}, []string{
		`error date-unreadable: eventDate "2026-02-30": day 30 does not exist: February 2026 has 28 days`,
	}},
	{[]string{"eventDate", "31 April 2026"}, []string{
		`error date-unreadable: eventDate "31 April 2026": day 31 does not exist: April 2026 has 30 days`,
	}},
	{[]string{"eventDate", "yesterday"}, []string{
		`error date-unreadable: eventDate "yesterday": is not part of a date`,
	}},
	{[]string{"eventDate", "3/4/2026"}, []string{
		`error date-ambiguous: eventDate "3/4/2026": can be 3 April or 4 March 2026: say --dates "day first" or --dates "month first" if the whole table is written so, or write the month as a word (did you mean "2026-04-03 or 2026-03-04"?)`,
	}},
	{[]string{"eventDate", "14.5.26"}, []string{
		`error date-ambiguous: eventDate "14.5.26": the year has two figures: write the year with four figures, or say --dates "1900s", if the whole table is of that century (did you mean "1926-05-14 or 1826-05-14 or 2026-05-14 or 1914-05-26 or 1814-05-26 or 2014-05-26"?)`,
	}},
	{[]string{"eventDate", "14 May"}, []string{
		`warning date-incomplete: eventDate "14 May": has no year and is printed as written: add the year if it is known`,
	}},
	{[]string{"eventDate", "2026-07-01"}, []string{
		`warning date-future: eventDate "2026-07-01": in the future: today is 2026-06-30`,
	}},
	{[]string{"eventDate", "2026-06"}, nil},
	{[]string{"eventDate", "2027"}, []string{
		`warning date-future: eventDate "2027": in the future: today is 2026-06-30`,
	}},
	{[]string{"eventDate", "", "year", "2026", "month", "13"}, []string{
		`error date-unreadable: month "13": month 13 does not exist: months run from 1 to 12`,
	}},
	{[]string{"eventDate", "", "year", "2026", "month", "2", "day", "30"}, []string{
		`error date-unreadable: day "30": day 30 does not exist: February 2026 has 28 days`,
	}},
	{[]string{"eventDate", "", "year", "2026", "day", "5"}, []string{
		`error date-unreadable: day "5": a day needs its month: fill in month`,
	}},
	{[]string{"eventDate", "", "year", "26"}, []string{
		`error date-ambiguous: year "26": write the year with four figures`,
	}},
	{[]string{"eventDate", "", "year", "two"}, []string{
		`error date-unreadable: year "two": not a year in figures`,
	}},
	{[]string{"eventDate", "", "year", "2026", "month", "0"}, []string{
		`note date-zeros: month "0": 0 stands for a month that is not known: the date is read without it`,
	}},
	{[]string{"eventDate", "", "year", "1899", "month", "7", "day", "0"}, []string{
		`note date-zeros: day "0": 0 stands for a day that is not known: the date is read without it`,
	}},
	{[]string{"eventDate", "", "year", "1899", "month", "0", "day", "7"}, []string{
		`error date-unreadable: day "7": a day needs its month: fill in month`,
		`note date-zeros: month "0": 0 stands for a month that is not known: the date is read without it`,
	}},
	{[]string{"eventDate", "", "month", "5", "day", "3"}, []string{
		`warning date-incomplete: month "5": the year is missing: fill in year`,
	}},
	{[]string{"eventDate", "", "year", "2026", "month", "May", "day", "31"}, nil},
	{[]string{"eventDate", "", "year", "2024.0", "month", "5.0", "day", "31.0"}, nil},
	{[]string{"eventDate", "", "year", "14 May 2024"}, nil},
	{[]string{"eventDate", "", "year", "2024.5"}, []string{
		`error date-unreadable: year "2024.5": not a year in figures`,
	}},
	{[]string{"eventDate", "", "year", "2024.0", "month", "5.0", "day", "32.0"}, []string{
		`error date-unreadable: day "32.0": day 32 does not exist: May 2024 has 31 days`,
	}},
	{[]string{"eventDate", "", "year", "2026", "month", "Mayo", "day", "32"}, []string{
		`error date-unreadable: month "Mayo": day 32 does not exist: May 2026 has 31 days`,
	}},
	{[]string{"eventDate", "", "verbatimEventDate", "Whitsun 1912"}, []string{
		`warning date-verbatim: verbatimEventDate "Whitsun 1912": no one reading, so it is printed as written: fill in eventDate if you know the day (did you mean "1912"?)`,
	}},
	{[]string{"eventDate", "", "verbatimEventDate", "3/4/1912"}, []string{
		`warning date-verbatim: verbatimEventDate "3/4/1912": no one reading, so it is printed as written: fill in eventDate if you know the day (did you mean "1912-04-03 or 1912-03-04"?)`,
	}},
	{[]string{"eventDate", "", "verbatimEventDate", "14 May 1912"}, nil},
	{[]string{"dateIdentified", "13/13/2026"}, []string{
		`error date-unreadable: dateIdentified "13/13/2026": is not a date: write it as 20 March 1922 or 1922-03-20`,
	}},
	{[]string{"dateIdentified", "4/5/2026"}, []string{
		`error date-ambiguous: dateIdentified "4/5/2026": can be 4 May or 5 April 2026: say --dates "day first" or --dates "month first" if the whole table is written so, or write the month as a word (did you mean "2026-05-04 or 2026-04-05"?)`,
	}},
	{[]string{"dateIdentified", "2028"}, []string{
		`warning date-future: dateIdentified "2028": in the future: today is 2026-06-30`,
	}},
	{[]string{"dateIdentified", "June"}, []string{
		`warning date-incomplete: dateIdentified "June": has no year and is printed as written: add the year if it is known`,
	}},
	{[]string{"decimalLatitude", "95.2"}, []string{
		`error coordinates-range: decimalLatitude "95.2": latitude is beyond 90°`,
	}},
	{[]string{"decimalLongitude", "-180.01"}, []string{
		`error coordinates-range: decimalLongitude "-180.01": longitude is beyond 180°`,
	}},
	{[]string{"decimalLatitude", "-95", "decimalLongitude", "200"}, []string{
		`error coordinates-range: decimalLatitude "-95": latitude is beyond 90°`,
		`error coordinates-range: decimalLongitude "200": longitude is beyond 180°`,
	}},
	{[]string{"decimalLatitude", ""}, []string{
		`error coordinates-half: decimalLatitude (empty): the latitude is missing: fill it in, or clear the longitude`,
	}},
	{[]string{"decimalLongitude", ""}, []string{
		`error coordinates-half: decimalLongitude (empty): the longitude is missing: fill it in, or clear the latitude`,
	}},
	{[]string{"decimalLatitude", "north"}, []string{
		`error coordinates-unreadable: decimalLatitude "north": not a plain number of degrees: write it as 41.2345, south and west with a minus sign`,
	}},
	{[]string{"decimalLatitude", "38,4712"}, nil},
	{[]string{"decimalLatitude", "38,4712", "decimalLongitude", "-8,8035"}, nil},
	{[]string{"decimalLatitude", "38.47.12"}, []string{
		`error coordinates-unreadable: decimalLatitude "38.47.12": not a plain number of degrees: write it as 41.2345, south and west with a minus sign`,
	}},
	{[]string{"decimalLatitude", "38°28.3'N", "decimalLongitude", "8°48.2'W"}, nil},
	{[]string{"decimalLatitude", "38°28.3'N"}, nil},
	{[]string{"decimalLatitude", "38°28.3'"}, nil},
	{[]string{"decimalLatitude", "", "decimalLongitude", "", "verbatimCoordinates", "38°28'N 8°48'W"}, nil},
	{[]string{"decimalLatitude", "", "decimalLongitude", "", "verbatimCoordinates", "38°28' 8°48'"}, []string{
		`warning coordinates-verbatim: verbatimCoordinates "38°28' 8°48'": the hemispheres are not written: add N or S, E or W; printed as written`,
	}},
	{[]string{"decimalLatitude", "", "decimalLongitude", "", "verbatimCoordinates", "T35N, R3E, S22"}, nil}, // right as it is
	{[]string{"decimalLatitude", "", "decimalLongitude", "", "verbatimCoordinates", "98°28'N 8°48'W"}, []string{
		`error coordinates-unreadable: verbatimCoordinates "98°28'N 8°48'W": latitude 98.4667° is beyond 90°`,
	}},
	{[]string{"decimalLatitude", "", "decimalLongitude", "", "verbatimLatitude", "38°28'N"}, []string{
		`error coordinates-half: verbatimLongitude (empty): the longitude is missing: fill it in, or clear the latitude`,
	}},
	{[]string{"decimalLatitude", "", "decimalLongitude", "", "verbatimLatitude", "38°28'N", "verbatimLongitude", "8°48'W"}, nil},
	{[]string{"decimalLatitude", "", "decimalLongitude", "", "verbatimCoordinates", "29S 517123 4258890"}, nil},                // the country tells
	{[]string{"country", "", "decimalLatitude", "", "decimalLongitude", "", "verbatimCoordinates", "29S 517123 4258890"}, nil}, // the other lies in the sea
	{[]string{"country", "", "decimalLatitude", "", "decimalLongitude", "", "verbatimCoordinates", "18S 500000 4258890"}, []string{ // Maryland, or Chile
		`warning coordinates-verbatim: verbatimCoordinates "18S 500000 4258890": S can be the band from 32° N to 40° N or the southern hemisphere: write north or south; printed as written`,
	}},
	{[]string{"decimalLatitude", "", "verbatimLatitude", "38°28'N"}, nil},
	{[]string{"verbatimCoordinates", "38°38'16\"N 8°48'13\"W"}, []string{
		`warning coordinates-disagree: verbatimCoordinates "38°38'16\"N 8°48'13\"W": lies 19 km from the decimal coordinates 38.4712, -8.8035: correct the wrong one`,
	}},
	{[]string{"verbatimCoordinates", "38°28'16\"N 8°48'13\"E"}, []string{
		`warning coordinates-disagree: verbatimCoordinates "38°28'16\"N 8°48'13\"E": lies 1530 km from the decimal coordinates 38.4712, -8.8035: correct the wrong one`,
	}},
	{[]string{"verbatimCoordinates", "38°28'16\"N 8°48'13\"W"}, nil},
	{[]string{"verbatimLatitude", "38°58'N", "verbatimLongitude", "8°48'W"}, []string{
		`warning coordinates-disagree: verbatimLatitude "38°58'N": lies 55 km from the decimal coordinates 38.4712, -8.8035: correct the wrong one`,
	}},
	{[]string{"geodeticDatum", ""}, []string{
		`warning datum-missing: geodeticDatum (empty): no datum is given for the coordinates: write what the receiver was set to, as in "WGS84", or "not recorded"`,
	}},
	{[]string{"geodeticDatum", "not recorded"}, nil},
	{[]string{"coordinateUncertaintyInMeters", "0"}, []string{
		`error uncertainty: coordinateUncertaintyInMeters "0": 0 says that the place is known without any error: write how many metres it may be off, or leave it empty`,
	}},
	{[]string{"coordinateUncertaintyInMeters", "-30"}, []string{
		`error uncertainty: coordinateUncertaintyInMeters "-30": negative: write how many metres the place may be off`,
	}},
	{[]string{"coordinateUncertaintyInMeters", "30 m"}, []string{
		`note uncertainty-form: coordinateUncertaintyInMeters "30 m": read as metres: other programs ask for figures alone (did you mean "30"?)`,
	}},
	{[]string{"coordinateUncertaintyInMeters", "±30"}, []string{
		`note uncertainty-form: coordinateUncertaintyInMeters "±30": read as metres: other programs ask for figures alone (did you mean "30"?)`,
	}},
	{[]string{"coordinateUncertaintyInMeters", "1,5 km"}, []string{
		`note uncertainty-form: coordinateUncertaintyInMeters "1,5 km": read as metres: other programs ask for figures alone (did you mean "1500"?)`,
	}},
	{[]string{"coordinateUncertaintyInMeters", "9,1"}, []string{
		`note uncertainty-form: coordinateUncertaintyInMeters "9,1": read as metres: other programs ask for figures alone (did you mean "9.1"?)`,
	}},
	{[]string{"coordinateUncertaintyInMeters", "-9,1"}, []string{
		`error uncertainty: coordinateUncertaintyInMeters "-9,1": negative: write how many metres the place may be off`,
	}},
	{[]string{"minimumElevationInMeters", "1694,5"}, []string{
		`note elevation-comma: minimumElevationInMeters "1694,5": a decimal comma, read as a point: other programs may not read it (did you mean "1694.5"?)`,
	}},
	{[]string{"coordinateUncertaintyInMeters", "1,500"}, []string{
		`error uncertainty: coordinateUncertaintyInMeters "1,500": not a number of metres: write it in figures alone`,
	}},
	{[]string{"coordinateUncertaintyInMeters", "small"}, []string{
		`error uncertainty: coordinateUncertaintyInMeters "small": not a number of metres: write it in figures alone`,
	}},
	{[]string{"coordinateUncertaintyInMeters", "20037510"}, []string{
		`error uncertainty: coordinateUncertaintyInMeters "20037510": more than 20037509 m, half the way round the earth`,
	}},
	{[]string{"coordinateUncertaintyInMeters", "NaN"}, []string{
		`warning placeholder: coordinateUncertaintyInMeters "NaN": taken as empty: clear the cell, or write what is known`,
	}},
	{[]string{"coordinateUncertaintyInMeters", "1e400"}, []string{
		`error uncertainty: coordinateUncertaintyInMeters "1e400": not a number of metres: write it in figures alone`,
	}},
	{[]string{"minimumElevationInMeters", "9500", "verbatimElevation", "9500 ft"}, []string{
		`error elevation-range: minimumElevationInMeters "9500": no land lies there: heights run from -430 to 8850 m; verbatimElevation has the figures in feet (did you mean "2896"?)`,
	}},
	{[]string{"minimumElevationInMeters", "4000 ft"}, []string{
		`error elevation-unreadable: minimumElevationInMeters "4000 ft": in feet, in a column of metres: convert it, or move it to verbatimElevation (did you mean "1219"?)`,
	}},
	{[]string{"minimumElevationInMeters", "high"}, []string{
		`error elevation-unreadable: minimumElevationInMeters "high": not a number of metres: write it in figures alone`,
	}},
	{[]string{"minimumElevationInMeters", "c. 1200"}, []string{
		`warning elevation-form: minimumElevationInMeters "c. 1200": not in figures alone: write the number here, and other words in verbatimElevation`,
	}},
	{[]string{"minimumElevationInMeters", "1200-1300"}, []string{
		`warning elevation-form: minimumElevationInMeters "1200-1300": a range in one column: write the lower height in minimumElevationInMeters and the upper in maximumElevationInMeters`,
	}},
	{[]string{"minimumElevationInMeters", "1200-1300", "maximumElevationInMeters", "1400"}, []string{
		`error elevation-ranges: minimumElevationInMeters "1200-1300": a range beside another height: keep one number in each of the two columns`,
	}},
	{[]string{"minimumElevationInMeters", "1300", "maximumElevationInMeters", "1200"}, []string{
		`error elevation-order: minimumElevationInMeters "1300": above the maximum, 1200: exchange the two or correct one`,
	}},
	{[]string{"minimumElevationInMeters", "9000"}, []string{
		`error elevation-range: minimumElevationInMeters "9000": no land lies there: heights run from -430 to 8850 m`,
	}},
	{[]string{"minimumElevationInMeters", "-500", "maximumElevationInMeters", "-450"}, []string{
		`error elevation-range: maximumElevationInMeters "-450": no land lies there: heights run from -430 to 8850 m`,
		`error elevation-range: minimumElevationInMeters "-500": no land lies there: heights run from -430 to 8850 m`,
	}},
	{[]string{"minimumElevationInMeters", "", "verbatimElevation", "4000"}, []string{
		`warning elevation-verbatim: verbatimElevation "4000": has no unit: add m or ft; printed as written`,
	}},
	{[]string{"minimumElevationInMeters", "", "verbatimElevation", "4000 ft"}, nil},
	{[]string{"minimumElevationInMeters", "", "verbatimElevation", "near the top"}, []string{
		`warning elevation-verbatim: verbatimElevation "near the top": there is no height in "near the top": write it as 1240 m; printed as written`,
	}},
	{[]string{"minimumElevationInMeters", "1,200"}, []string{
		`warning elevation-form: minimumElevationInMeters "1,200": a comma parts the thousands, which others may take for a decimal comma: write the figures alone (did you mean "1200"?)`,
	}},
	{[]string{"minimumElevationInMeters", "1.200"}, []string{
		`error elevation-thousands: minimumElevationInMeters "1.200": can be thousands or a decimal point: write it without the point (did you mean "1200 or 1.2"?)`,
	}},
	{[]string{"preparations", "sheet | pakcet: capsules"}, []string{
		`warning preparations-unknown: preparations "sheet | pakcet: capsules": "pakcet: capsules" is taken for a misspelt "packet" (did you mean "sheet | packet: capsules"?)`,
	}},
	{[]string{"preparations", "sheet | leaf rubbing"}, []string{
		`note preparations-other: preparations "sheet | leaf rubbing": "leaf rubbing" is no part that gets a label of its own: it is named on the label as it is written; parts with labels are sheet, packet, box and jar`,
	}},
	{[]string{"preparations", "yes"}, []string{
		`warning preparations-unknown: preparations "yes": is no part that gets a label of its own: it is named on the label as it is written; parts with labels are sheet, packet, box and jar`,
	}},
	{[]string{"preparations", "Fragmento vegetal"}, []string{
		`note preparations-other: preparations "Fragmento vegetal": is no part that gets a label of its own: it is named on the label as it is written; parts with labels are sheet, packet, box and jar`,
	}},
	{[]string{"preparations", "3 rubbings"}, []string{
		`warning preparations-unknown: preparations "3 rubbings": is no part that gets a label of its own: it is named on the label as it is written; parts with labels are sheet, packet, box and jar`,
	}},
	{[]string{"preparations", "sheet | skull | rubbing"}, []string{
		`note preparations-other: preparations "sheet | skull | rubbing": "skull" and "rubbing" are no parts that get labels of their own: they are named on the label as they are written; parts with labels are sheet, packet, box and jar`,
	}},
	{[]string{"preparations", "Photograph"}, []string{
		`warning preparations-unknown: preparations "Photograph": names no sheet, packet, box or jar: one sheet label is printed, which names this; write "sheet" beside it if there is one`,
	}},
	{[]string{"preparations", "2 dup."}, []string{
		`error preparations: preparations "2 dup.": counts duplicates, which are no parts of this specimen: name the herbaria in duplicatesTo, and here the sheets`,
	}},
	{[]string{"preparations", "2-3 sheets"}, []string{
		`error preparations: preparations "2-3 sheets": does not say how many there are: write one number`,
	}},
	{[]string{"preparations", "packet: 2"}, []string{
		`error preparations: preparations "packet: 2": has a number for its contents: put the count first and say what is inside (did you mean "2 packets"?)`,
	}},
	{[]string{"preparations", "300 sheets"}, []string{
		`error preparations: preparations "300 sheets": has a count that is not from 1 to 99`,
	}},
	{[]string{"copies", "two"}, []string{
		`error copies: copies "two": not a number: write how many labels to print, 1 to 99`,
	}},
	{[]string{"copies", "0"}, []string{
		`error copies: copies "0": not a whole number from 1 to 99`,
	}},
	{[]string{"copies", "2.0"}, []string{
		`error copies: copies "2.0": not a whole number from 1 to 99 (did you mean "2"?)`,
	}},
	{[]string{"copies", "100"}, []string{
		`error copies: copies "100": not a whole number from 1 to 99`,
	}},
	{[]string{"copies", "+2"}, []string{
		`error copies: copies "+2": not a whole number from 1 to 99`,
	}},
	{[]string{"copies", "1.5"}, []string{
		`error copies: copies "1.5": not a whole number from 1 to 99`,
	}},
	{[]string{"duplicatesTo", "PINHEL | Soutelo"}, []string{
		`error duplicates: duplicatesTo "PINHEL | Soutelo": "Soutelo" is no herbarium code: write 1 to 8 letters A to Z, with | between codes (did you mean "PINHEL | SOUTELO"?)`,
	}},
	{[]string{"duplicatesTo", "PINHEL | TOOLONGCODE"}, []string{
		`error duplicates: duplicatesTo "PINHEL | TOOLONGCODE": "TOOLONGCODE" is no herbarium code: write 1 to 8 letters A to Z, with | between codes`,
	}},
	{[]string{"duplicatesTo", "Coimbra University"}, []string{
		`error duplicates: duplicatesTo "Coimbra University": "Coimbra" and "University" are no herbarium codes: write 1 to 8 letters A to Z, with | between codes`,
	}},
	{[]string{"duplicatesTo", "|;"}, []string{
		`error duplicates: duplicatesTo "|;": no herbarium code is given: write codes with | between them, or leave the cell empty`,
	}},
	{[]string{"duplicatesTo", "K2"}, []string{
		`error duplicates: duplicatesTo "K2": "K2" is no herbarium code: write 1 to 8 letters A to Z, with | between codes`,
	}},
	{[]string{"duplicatesTo", "PINHEL, VDOURA, PINHEL"}, []string{
		`warning duplicate-twice: duplicatesTo "PINHEL, VDOURA, PINHEL": PINHEL stands 2 times and gets 2 labels: leave it once if it is to get one`,
		`warning duplicate-to-us: duplicatesTo "PINHEL, VDOURA, PINHEL": VDOURA is this house: its label here would bear no number; count own labels in copies`,
	}},
	{[]string{"catalogNumber", "VDOURA–0001234"}, []string{
		`warning catalogue-number-letters: catalogNumber "VDOURA–0001234": bars cannot hold '–' (U+2013): the number is printed in figures only (did you mean "VDOURA-0001234"?)`,
	}},
	{[]string{"catalogNumber", "VDOURA-№1234"}, []string{
		`warning catalogue-number-letters: catalogNumber "VDOURA-№1234": bars cannot hold '№' (U+2116): the number is printed in figures only`,
	}},
	{[]string{"habitat", "NA"}, []string{
		`warning placeholder: habitat "NA": taken as empty: clear the cell, or write what is known`,
	}},
	{[]string{"habitat", "#NAME?"}, []string{
		`warning placeholder: habitat "#NAME?": what a spreadsheet writes for a formula that failed or a value too wide: type the value again as text`,
	}},
	{[]string{"recordNumber", "-"}, []string{
		`warning placeholder: recordNumber "-": taken as empty: clear the cell, or write what is known`,
	}},
	{[]string{"eventDate", "?"}, []string{
		`warning placeholder: eventDate "?": taken as empty: clear the cell, or write what is known`,
	}},
	{[]string{"scientificName", "Thymus capitellatus", "genus", "Thymus", "specificEpithet", "capitelatus"}, []string{
		`warning name-columns: specificEpithet "capitelatus": the scientific name has capitellatus there; say which is right`,
	}},
	{[]string{"identificationQualifier", "cf."}, nil},
	{[]string{"identificationQualifier", "?"}, nil},
	{[]string{"identificationQualifier", "cf. villosus"}, []string{
		`warning qualifier-unplaced: identificationQualifier "cf. villosus": the scientific name has no such word; printed in brackets after it`,
	}},
	{[]string{"identificationQualifier", "cf. capitelatus"}, []string{
		`warning qualifier-unplaced: identificationQualifier "cf. capitelatus": the scientific name has no such word; printed in brackets after it (did you mean "cf. capitellatus"?)`,
	}},
	{[]string{"genus", "Tymus"}, []string{
		`warning name-columns: genus "Tymus": the scientific name begins with Thymus; say which is right`,
	}},
	// The genus in which a synonym's plant is placed today.
	{[]string{"genus", "Xanthoria", "genericName", "Thymus"}, nil},
	{[]string{"genus", "Xanthoria", "acceptedNameUsage", "Xanthoria parietina (L.) Th.Fr."}, nil},
	{[]string{"genus", "Xanthoria", "class", "Magnoliopsida", "order", "Lamiales"}, nil},
	{[]string{"genus", "Xanthoria", "class", "Magnoliopsida", "order", "Lamiales", "specificEpithet", "Xanthoria parietina"}, nil},
	{[]string{"genus", "Tymus", "class", "Magnoliopsida", "order", "Lamiales"}, []string{
		`warning name-columns: genus "Tymus": the scientific name begins with Thymus; say which is right`,
	}},
	{[]string{"genus", "Xanthoria", "class", "Magnoliopsida", "order", "Lamiales", "specificEpithet", "capitellatus"}, []string{
		`warning name-columns: genus "Xanthoria": the scientific name begins with Thymus; say which is right`,
	}},
	{[]string{"genus", "Xanthoria", "order", "Lamiales"}, []string{
		`warning name-columns: genus "Xanthoria": the scientific name begins with Thymus; say which is right`,
	}},
	{[]string{"genus", "Tymus", "acceptedNameUsage", "Thymus capitellatus Hoffmanns. & Link"}, []string{
		`warning name-columns: genus "Tymus": the scientific name begins with Thymus; say which is right`,
	}},
	{[]string{"minimumElevationInMeters", "152.400"}, nil},
	{[]string{"minimumElevationInMeters", "152.375"}, nil},
	{[]string{"minimumElevationInMeters", "950.000"}, nil},
	{[]string{"minimumElevationInMeters", "-3.5"}, nil},
	{[]string{"minimumElevationInMeters", "1200 m"}, nil},
	{[]string{"minimumElevationInMeters", "1200.5", "maximumElevationInMeters", "1250"}, nil},
	{[]string{"minimumElevationInMeters", "", "maximumElevationInMeters", "1250"}, nil},
	{[]string{"minimumElevationInMeters", "1200 ± 20 m"}, []string{
		`warning elevation-form: minimumElevationInMeters "1200 ± 20 m": not in figures alone: write the number here, and other words in verbatimElevation`,
	}},
	{[]string{"minimumElevationInMeters", "4000 ft", "maximumElevationInMeters", "1500"}, []string{
		`error elevation-unreadable: minimumElevationInMeters "4000 ft": in feet, in a column of metres: convert it, or move it to verbatimElevation (did you mean "1219"?)`,
	}},
	{[]string{"decimalLatitude", "8°48'W", "decimalLongitude", "38°28'N"}, []string{
		`error coordinates-unreadable: decimalLatitude "8°48'W": latitude and longitude stand in each other's place: swap the two`,
	}},
	{[]string{"decimalLatitude", "38°28'N", "decimalLongitude", "8°75'W"}, []string{
		`error coordinates-unreadable: decimalLongitude "8°75'W": 75 minutes do not exist: they run from 0 to 59`,
	}},
	{[]string{"decimalLatitude", "+38.4712"}, nil},
	{[]string{"decimalLatitude", ".5"}, nil},
	{[]string{"decimalLatitude", "38."}, nil},
	{[]string{"decimalLatitude", "41.2", "decimalLongitude", "-8.6", "verbatimCoordinates", "29T 532123 4567890"}, nil},
	{[]string{"geodeticDatum", "NA"}, []string{
		`warning placeholder: geodeticDatum "NA": taken as empty: clear the cell, or write what is known`,
	}},
}
