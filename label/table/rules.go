package table

import "cornerslip/label"

// A Rule is something that the reading of a table itself looks for; findings
// carry its name.
type Rule struct {
	Name     string // lower case with hyphens
	Doc      string // one sentence: what it finds
	Source   string // a standard, or "common practice, no source"
	Severity label.Severity
	// Example is a table that raises this rule, Counterexample one like it
	// that raises none; both "" where it takes an archive or a workbook.
	Example, Counterexample string
}

// Rules returns the rules of reading, in the order of a table's parts.
func Rules() []Rule {
	all := []*Rule{ruleEmpty, ruleNoHeading, ruleEncoding, ruleDelimiter,
		ruleHeadingUnknown, ruleHeadingDoubled, ruleHeadingEmpty, ruleHeadingUnit, ruleHeadingReading, ruleHeadingRemark,
		ruleTitle, ruleSecond, ruleCode, ruleAside, ruleRagged, ruleShifted, ruleQuote, ruleUnclosed,
		ruleUndecodable, ruleReplacement, ruleMojibake, ruleControl, rulePrivate, ruleInvisible,
		ruleEntity, ruleAccent, ruleLookalike, ruleLigature, ruleArchive, ruleWorksheet}
	out := make([]Rule, len(all))
	for i, r := range all {
		out[i] = *r
	}
	return out
}

const noSource = "common practice, no source"

// shiftedExample is a table long enough to know what its columns hold.
const shiftedExample = "id,number,scientificName,family,country,locality,minimumElevationInMeters\n" +
	"10,1,Erica arborea L.,Ericaceae,Portugal,Lindoso,720\n11,1,Erica cinerea L.,Ericaceae,Portugal,Parada,700\n" +
	"12,1,Ilex aquifolium L.,Aquifoliaceae,Portugal,Lindoso,720\n13,1,Erica umbellata L.,Ericaceae,Portugal,Parada,710\n14,2,Erica arborea L.,Ericaceae,Portugal,Parada,650\n"

var (
	ruleEmpty = &Rule{"table-empty", "the file holds no table", noSource, label.Error,
		"", "country\nPortugal\n"}
	ruleNoHeading = &Rule{"heading-missing", "the first row is no heading row", "RFC 4180 section 2.3", label.Error,
		"Portugal,41.7157,-8.1502\nPortugal,41.7985,-8.1348\n", "country,decimalLatitude,decimalLongitude\nPortugal,41.7157,-8.1502\n"}
	ruleEncoding = &Rule{"table-encoding", "the encoding was found by a mark or a pattern, or is not the one that was named", "The Unicode Standard, section 23.8", label.Note,
		"\xff\xfec\x00o\x00u\x00n\x00t\x00r\x00y\x00\n\x00", "\ufeffcountry\nPortugal\n"}
	ruleDelimiter = &Rule{"table-delimiter", "two characters could stand between the cells", "RFC 4180 section 2.4", label.Warning,
		"country;locality,family;genus,year\n", "country;locality;family\nPortugal;Lindoso, Parada;Rosaceae\n"}

	ruleHeadingUnknown = &Rule{"heading-unknown", "a heading is no Darwin Core term and none of the words that stand for one", "Darwin Core list of terms", label.Note,
		"country,moon phase\nPortugal,full\n", "country,SCIENTIFIC_NAME\nPortugal,Erica arborea L.\n"}
	ruleHeadingDoubled = &Rule{"heading-doubled", "columns have one heading or mean one term", "Darwin Core text guide (one field a term)", label.Error,
		"country,collector,recordedBy\nPortugal,I. Almeida,R. Costa\n", "country,collector,coll. no.\nPortugal,I. Almeida,214\n"}
	ruleHeadingEmpty = &Rule{"heading-empty", "a column has no heading", "RFC 4180 section 2.3", label.Note,
		",country\n1,Portugal\n", "id,country\n1,Portugal\n"}
	ruleHeadingUnit = &Rule{"heading-unit", "a heading names no unit, or not the one of its term", noSource, label.Note,
		"country,alt.\nPortugal,720\n", "country,alt. (m)\nPortugal,720\n"}
	ruleHeadingReading = &Rule{"heading-reading", "a heading has two meanings or its column is passed over for another", noSource, label.Note,
		"Art;Sammler;Datum\nErica arborea L.;;\n", "Art;Sammler;Sammeldatum\nErica arborea L.;;\n"}
	ruleHeadingRemark = &Rule{"heading-remark", "brackets in a heading say something that is not used", noSource, label.Note,
		"country,lat (of the plot)\nPortugal,41.7157\n", "country,lat,geodeticDatum\nPortugal,41.7157,WGS84\n"}

	ruleTitle = &Rule{"table-title", "rows stand above the headings", noSource, label.Note,
		"Plants of the spring trip\ncountry,locality,habitat\nPortugal,Lindoso,\n", "country,locality,habitat\nPortugal,Lindoso,\n"}
	ruleSecond = &Rule{"heading-rows", "the headings take more than one row", noSource, label.Note,
		"country,altitude,lat\n,m,°\nPortugal,720,41.7157\n", "country,altitude (m),lat\nPortugal,720,41.7157\n"}
	ruleAside = &Rule{"row-aside", "a row is no record but the headings again, a title, a sum or a remark", noSource, label.Note,
		"country,locality\nPortugal,Lindoso\ncountry,locality\nPortugal,Parada\n", "country,locality\nPortugal,Lindoso\nPortugal,Parada\n"}
	ruleCode = &Rule{"table-empty-code", "a code such as NA stands for an empty cell in the whole table", noSource, label.Note,
		"country,locality,habitat\nPortugal,Lindoso,NA\nPortugal,NA,NA\n", "country,locality,habitat\nPortugal,Lindoso,\nPortugal,,\n"}
	ruleShifted = &Rule{"row-shifted", "the cells of a row stand under the headings of other columns", noSource, label.Error,
		shiftedExample + "15,2,Erica arborea L.,Ericaceae,Portugal,Lindoso, by the bridge,720\n", shiftedExample + "15,2,Erica arborea L.,Ericaceae,Portugal,\"Lindoso, by the bridge\",720\n"}
	ruleRagged = &Rule{"row-ragged", "a row has fewer or more cells than the heading row", "RFC 4180 section 2.4", label.Error,
		"country,locality\nPortugal\n", "country,locality\nPortugal,\n"}
	ruleQuote = &Rule{"cell-quote", "a quote stands where the rules of quoting have none", "RFC 4180 section 2.5 to 2.7", label.Warning,
		"country,locality\nPortugal,by \"the\" big tree\n", "country,locality\nPortugal,\"by \"\"the\"\" big tree\"\n"}
	ruleUnclosed = &Rule{"cell-unclosed", "a quote opens a cell and nothing closes it", "RFC 4180 section 2.5", label.Error,
		"country,locality\nPortugal,\"Lindoso\n", "country,locality\nPortugal,\"Lindoso\"\n"}

	ruleUndecodable = &Rule{"text-encoding", "bytes stand for no character, or the table is in an encoding that nobody named", "The Unicode Standard, section 3.9", label.Error,
		"country,locality\nPortugal,Ger\xeas\n", "country,locality\nPortugal,Gerês\n"}
	ruleReplacement = &Rule{"text-replacement", "a character was lost before and U+FFFD, or a ? within a word, stands in its place", "The Unicode Standard, section 23.8", label.Error,
		"country,locality\nPortugal,Ger\ufffds\n", "country,locality\nPortugal,Gerês\n"}
	ruleMojibake = &Rule{"text-mojibake", "text was read in the wrong encoding and saved so", noSource, label.Error,
		"country,locality\nPortugal,GerÃªs\n", "country,locality\nPortugal,IRMÃ’S\n"}
	ruleControl = &Rule{"text-control", "a cell holds a control character", "The Unicode Standard, section 23.1", label.Error,
		"country,locality\nPortugal,Ger\u00eas\u0008\n", "country,locality\nPortugal,\"Gerês\n\tLindoso\"\n"}
	rulePrivate = &Rule{"text-private", "a cell holds a private-use character, which has no shape outside its own font", "The Unicode Standard, section 23.5", label.Error,
		"country,locality\nPortugal,41\uf0b0 N\n", "country,locality\nPortugal,41° N\n"}
	ruleInvisible = &Rule{"text-invisible", "a cell holds a character that nobody sees", "The Unicode Standard, section 23.2", label.Warning,
		"country,locality\nPortugal,Lin\u00addoso\u200b\n", "country,locality\nPortugal,Lindoso\n"}

	ruleWorksheet = &Rule{"worksheet", "a workbook has what a table of text has not: other worksheets, hidden rows, merged cells, formulas without a result", noSource, label.Warning, "", ""}
	ruleEntity    = &Rule{"text-code", "characters stand as the codes of a web page or a program, or tags of a web page beside them", "HTML Living Standard, section 13.1.4; ECMA-376 part 1, section 22.9.2.19", label.Error,
		"country,locality\nPortugal,S&atilde;o Bento\n", "country,locality\nPortugal,São Bento\n"}
	ruleAccent = &Rule{"text-accent", "an accent stands beside its letter or without one", "The Unicode Standard, section 7.9", label.Error,
		"country,locality\nPortugal,Sa˜o Bento\n", "country,locality\nPortugal,Sa\u0303o Bento\n"}
	ruleLookalike = &Rule{"text-lookalike", "a word holds letters of another script that look like its own", "Unicode Technical Standard 39, section 5", label.Warning,
		"country,locality\nPortugal,Lindоso\n", "country,locality\nPortugal,Lindoso\n"}
	ruleLigature = &Rule{"text-ligature", "a cell holds ligatures, or letters of a formula's font, as characters of their own", "Unicode Standard Annex 15, section 1.1", label.Warning,
		"country,habitat\nPortugal,near a waterﬁeld\n", "country,habitat\nPortugal,near a field\n"}

	ruleArchive = &Rule{"archive-description", "a Darwin Core archive and its meta.xml do not fit together", "Darwin Core text guide", label.Warning, "", ""}
)
