package trade

import (
	"strconv"
	"strings"
	"sync"

	"cornerslip/label/date"
)

// formerTable says of which state a country of today was part, up to and with
// which year: an old label that names that state is right. Labels stay in
// use for years after a border has moved, so five are added.
//
// The last line is of ground that two states call theirs, and of Ireland, which
// is to botanists the whole island; it has no end.
//
// Source: general history, from memory. States without a code of today
// (Czechoslovakia, the USSR) are no countries that a text resolves to.
const formerTable = `
AE GB 1971|AL TR 1912|AM RU 1991|AO PT 1975|AZ RU 1991|BA AT 1918|BA RS 1992|BA TR 1908|BD IN 1947|BD PK 1971|BF FR 1960|BG TR 1908|BI DE 1918|BI BE 1962|BI RW 1962|BJ FR 1960|BN GB 1984|BW GB 1966
BY RU 1991|BY PL 1945|BZ GB 1981|CD BE 1960|CF FR 1960|CG FR 1960|CI FR 1960|CM DE 1916|CM FR 1960|CM GB 1961|CV PT 1975|CU ES 1898|CY GB 1960|CY TR 1914|CZ AT 1918|CZ DE 1945|DJ FR 1977|DZ FR 1962|EE RU 1991
EG GB 1922|EG TR 1914|EH ES 1976|ER ET 1993|ER IT 1941|ET IT 1941|FI RU 1917|FJ GB 1970|FM US 1986|FM JP 1945|FM DE 1914|FR DE 1918|GA FR 1960|GE RU 1991|GH GB 1957|GM GB 1965|GN FR 1958|GQ ES 1968|GR TR 1923|GR IT 1947
GW PT 1974|GY GB 1966|HR AT 1918|HR HU 1918|HR RS 1991|HR IT 1947|HU AT 1918|HK GB 1997|ID NL 1949|IE GB 1922|IL GB 1948|IL PS 1948|IL TR 1918|IN GB 1947|IN PT 1961|IN FR 1954|IQ TR 1918|IQ GB 1932|IS DK 1944
IT AT 1918|JM GB 1962|JO TR 1918|JO GB 1946|JO PS 1950|KE GB 1963|KG RU 1991|KH FR 1953|KI GB 1979|KM FR 1975|KP JP 1945|KP KR 1948|KR JP 1945|KW GB 1961|KZ RU 1991|LA FR 1953|LB SY 1943|LB FR 1943|LB TR 1918
LK GB 1948|LS GB 1966|LT RU 1991|LT DE 1945|LT PL 1939|LV RU 1991|LY IT 1947|LY TR 1912|MA FR 1956|MA ES 1969|MD RO 1944|MD RU 1991|ME RS 2006|ME AT 1918|MG FR 1960|MH US 1986|MK RS 1991|MK TR 1912|MK BG 1945|ML FR 1960
MM GB 1948|MM IN 1937|MN CN 1921|MO PT 1999|MR FR 1960|MT GB 1964|MU GB 1968|MW GB 1964|MY GB 1963|MZ PT 1975|NA ZA 1990|NA DE 1919|NE FR 1960|NG GB 1960|NO SE 1905|NR AU 1968|NZ GB 1907|PA CO 1903|PG AU 1975
PG DE 1919|PG GB 1906|PH US 1946|PH ES 1898|PK IN 1947|PK GB 1947|PL DE 1945|PL RU 1918|PL AT 1918|PR ES 1898|PS IL 2100|PS GB 1948|PS JO 1988|PS EG 1967|PS TR 1918|PW US 1994|RO AT 1918|RO HU 1944|RO TR 1878|RS AT 1918
RS HU 1918|RS TR 1912|RU DE 1945|RU FI 1944|RU JP 1945|RU UA 1954|RW DE 1918|RW BE 1962|SA TR 1918|SB GB 1978|SC GB 1976|SD GB 1956|SD EG 1956|SG MY 1965|SG GB 1963|SI AT 1918|SI IT 1947|SI RS 1991|SK HU 1918
SK AT 1918|SK CZ 1992|SL GB 1961|SN FR 1960|SO IT 1960|SO GB 1960|SR NL 1975|SS SD 2011|ST PT 1975|SY TR 1918|SY FR 1946|SZ GB 1968|TD FR 1960|TG DE 1916|TG FR 1960|TJ RU 1991|TL PT 1975|TL ID 2002|TM RU 1991
TN FR 1956|TN TR 1881|TT GB 1962|TW JP 1945|TZ DE 1919|TZ GB 1961|UA RU 1991|UA PL 1945|UA AT 1918|UA RO 1947|UA SK 1945|UA HU 1945|UG GB 1962|US MX 1853|US RU 1867|US ES 1821|UZ RU 1991|VN FR 1954|VU FR 1980
VU GB 1980|WS NZ 1962|WS DE 1914|XK RS 2008|YE GB 1967|YE TR 1918|ZA GB 1910|ZM GB 1964|ZW GB 1980|CZ SK 1992|CN JP 1945|CN PT 1999|CN GB 1997|TR GR 1922|AT DE 1945|BE NL 1830|LU DE 1945|LU NL 1890|DK DE 1920
GB IE 2100|PK IN 2100|IN PK 2100|CN IN 2100|IN CN 2100|IL SY 2100|SY IL 2100|CY TR 2100
`

// years after a border moved in which the old name is still written.
const slow = 5

var formerStates = sync.OnceValue(func() map[string]int {
	m := map[string]int{}
	for line := range strings.Lines(strings.TrimSpace(formerTable)) {
		for _, entry := range strings.Split(strings.TrimSpace(line), "|") {
			year, err := strconv.Atoi(entry[6:])
			if err != nil {
				panic("trade: " + entry) // it is part of the program
			}
			m[entry[:5]] = year
		}
	}
	return m
})

// belonged reports whether a country of today was part of another when a plant
// was collected there, or may have been where that is not known.
func belonged(today, stated string, collected date.Date) bool {
	until, ok := formerStates()[today+" "+stated]
	if !ok {
		return false
	}
	start := collected.Start()
	return start.Year == 0 || start.Year <= until+slow
}
