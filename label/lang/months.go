// Package lang holds the words that the program itself writes on labels, and
// the words it must know to read them, by language.
package lang

import (
	"fmt"
	"slices"
	"strings"
	"time"
	"unicode"

	"golang.org/x/text/language"
	"golang.org/x/text/unicode/norm"
)

// A Tag names a language as BCP 47 does.
type Tag string

// The languages that labels are written in.
const (
	English    Tag = "en"
	Portuguese Tag = "pt"
	Spanish    Tag = "es"
	French     Tag = "fr"
	German     Tag = "de"
	Latin      Tag = "la"
	Chinese    Tag = "zh-Hant" // in traditional characters
)

// Languages that are read on labels but not written.
const (
	Italian Tag = "it"
	Dutch   Tag = "nl"
	Swedish Tag = "sv"
	Danish  Tag = "da"
	Polish  Tag = "pl"
	Czech   Tag = "cs"
	Russian Tag = "ru"
	Turkish Tag = "tr"
	Finnish Tag = "fi"
)

// Tags returns the languages that labels can be written in.
func Tags() []Tag {
	return []Tag{English, Portuguese, Spanish, French, German, Latin, Chinese}
}

// Parse reads a language tag. Regions are dropped ("pt-BR" is Portuguese);
// for Chinese the tag must mean traditional characters ("zh-Hant", "zh-TW").
func Parse(s string) (Tag, error) {
	t, err := language.Parse(strings.TrimSpace(s))
	if err == nil {
		base, _ := t.Base()
		script, _ := t.Script()
		for _, k := range Tags() {
			if string(k) == base.String() || string(k) == base.String()+"-"+script.String() {
				return k, nil
			}
		}
	}
	known := make([]string, 0, len(Tags()))
	for _, k := range Tags() {
		known = append(known, string(k))
	}
	return "", fmt.Errorf("unknown language %q: use one of %s", s, strings.Join(known, ", "))
}

// Month returns the name of month m (1 to 12) as it stands beside a day:
// "março", "März", in Latin the genitive "Martii". An unknown tag gives
// English, a month out of range "".
func Month(t Tag, m int) string { return monthOf(written, t, m) }

// MonthAlone returns the name of month m as it stands without a day: as
// [Month], but in Latin the ablative, "Martio" for "in March".
func MonthAlone(t Tag, m int) string {
	if t == Latin {
		return monthOf(written, "la-alone", m)
	}
	return Month(t, m)
}

// MonthShort returns the abbreviated name of month m, with its full stop in
// the languages that write one: "Mar", "mar.", "März".
func MonthShort(t Tag, m int) string { return monthOf(short, t, m) }

func monthOf(lists map[Tag]string, t Tag, m int) string {
	list, ok := lists[t]
	if !ok {
		list = lists[English]
	}
	if m < 1 || m > 12 {
		return ""
	}
	return strings.Fields(list)[m-1]
}

var romans = [...]string{"i", "ii", "iii", "iv", "v", "vi", "vii", "viii", "ix", "x", "xi", "xii"}

// RomanMonth returns month m in small Roman figures, "iii"; a month out of
// range gives "".
func RomanMonth(m int) string {
	if m < 1 || m > 12 {
		return ""
	}
	return romans[m-1]
}

// ParseRomanMonth reads a Roman figure from i to xii in either case.
func ParseRomanMonth(s string) (int, bool) {
	s = strings.ToLower(s)
	if s == "iiii" { // as clocks have it
		s = "iv"
	}
	i := slices.Index(romans[:], s)
	return i + 1, i >= 0
}

// Fold returns a word as the word lists keep it: lower case, without accents
// and outer full stops. Letters that have no accent to lose keep themselves,
// but for ø, ł, ı and ß.
func Fold(word string) string {
	var b strings.Builder
	for _, r := range norm.NFKD.String(word) {
		r = unicode.ToLower(r)
		switch {
		case unicode.Is(unicode.Mn, r):
		case r == 'ø':
			b.WriteRune('o')
		case r == 'ł':
			b.WriteRune('l')
		case r == 'ı':
			b.WriteRune('i')
		case r == 'ß':
			b.WriteString("ss")
		default:
			b.WriteRune(r)
		}
	}
	return strings.Trim(b.String(), ".")
}

// FindMonth returns the months that a word can mean in any language read
// here: a full name, a usual abbreviation, or three letters or more from the
// beginning of a name. Case, accents and full stops do not matter. No month
// gives none; more than one means the word alone does not decide ("jui").
func FindMonth(word string) []int {
	w := Fold(word)
	if m, ok := monthWords[w]; ok {
		return []int{m}
	}
	if len([]rune(w)) < 3 {
		return nil
	}
	var found []int
	for _, name := range monthNames {
		if strings.HasPrefix(name, w) {
			found = append(found, monthWords[name])
		}
	}
	slices.Sort(found)
	return slices.Compact(found)
}

// GuessMonth returns the month whose full name differs from the word by one
// letter too many, missing, wrong or out of order ("Febuary"), or 0 if there
// is none or more than one. It is a guess: propose it, never apply it.
func GuessMonth(word string) int {
	w := []rune(Fold(word))
	if len(w) < 4 {
		return 0
	}
	guess := 0
	for _, name := range monthNames {
		n := []rune(name)
		if len(n) < 4 || !oneSlip(w, n) {
			continue
		}
		if m := monthWords[name]; guess == 0 {
			guess = m
		} else if guess != m {
			return 0
		}
	}
	return guess
}

// oneSlip reports whether a and b differ by one letter.
func oneSlip(a, b []rune) bool {
	if len(a) > len(b) {
		a, b = b, a
	}
	i := 0
	for i < len(a) && a[i] == b[i] {
		i++
	}
	switch len(b) - len(a) {
	case 0:
		if i == len(a) || slices.Equal(a[i+1:], b[i+1:]) {
			return true
		}
		return i+1 < len(a) && a[i] == b[i+1] && a[i+1] == b[i] && slices.Equal(a[i+2:], b[i+2:])
	case 1:
		return slices.Equal(a[i:], b[i+1:])
	}
	return false
}

// FindWeekday returns the day of the week that a word names.
func FindWeekday(word string) (time.Weekday, bool) {
	d, ok := weekdayWords[Fold(word)]
	return time.Weekday(d), ok
}

// FindSeason reports whether a word names a season: 1 spring, 2 summer,
// 3 autumn, 4 winter.
func FindSeason(word string) (int, bool) {
	s, ok := seasonWords[Fold(word)]
	return s, ok
}

// What the program writes. Portuguese, Spanish, French and German after
// Unicode CLDR (gregorian calendar, format wide and abbreviated); Latin after
// the usage of botanical labels and diagnoses (common practice, no source).
var written = map[Tag]string{
	English:    "January February March April May June July August September October November December",
	Portuguese: "janeiro fevereiro março abril maio junho julho agosto setembro outubro novembro dezembro",
	Spanish:    "enero febrero marzo abril mayo junio julio agosto septiembre octubre noviembre diciembre",
	French:     "janvier février mars avril mai juin juillet août septembre octobre novembre décembre",
	German:     "Januar Februar März April Mai Juni Juli August September Oktober November Dezember",
	Latin:      "Januarii Februarii Martii Aprilis Maii Junii Julii Augusti Septembris Octobris Novembris Decembris",
	"la-alone": "Januario Februario Martio Aprili Maio Junio Julio Augusto Septembri Octobri Novembri Decembri",
	Chinese:    "1月 2月 3月 4月 5月 6月 7月 8月 9月 10月 11月 12月",
}

var short = map[Tag]string{
	English:    "Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec",
	Portuguese: "jan. fev. mar. abr. mai. jun. jul. ago. set. out. nov. dez.",
	Spanish:    "ene. feb. mar. abr. may. jun. jul. ago. sept. oct. nov. dic.",
	French:     "janv. févr. mars avr. mai juin juil. août sept. oct. nov. déc.",
	German:     "Jan. Feb. März Apr. Mai Juni Juli Aug. Sept. Okt. Nov. Dez.",
	Latin:      "Jan. Febr. Mart. Apr. Maii Jun. Jul. Aug. Sept. Oct. Nov. Dec.",
	Chinese:    "1月 2月 3月 4月 5月 6月 7月 8月 9月 10月 11月 12月",
}

// What is read beside what is written: names by month, all forms that stand
// in dates (nominative and genitive). Croatian is left out on purpose: its
// listopad is October, in Polish and Czech November.
var readMonths = [12]string{
	"januarius ianuarius ianuarii januaris ianuario gennaio januari styczen stycznia leden ledna январь января ocak tammikuu tammikuuta gener januar ianuarie január enero jänner januarium ιανουάριος ιανουαρίου січень січня 一月",
	"februarius febbraio februari luty lutego unor unora февраль февраля şubat helmikuu helmikuuta febrer februarie február feber hornung fevereiro februarium φεβρουάριος φεβρουαρίου лютий лютого 二月",
	"martius maart maret mart mars märz maerz marzec marca březen března март марта maaliskuu maaliskuuta marc martie március martium μάρτιος μαρτίου березень березня 三月",
	"aprilius aprile april avril kwiecien kwietnia duben dubna апрель апреля nisan huhtikuu huhtikuuta aprilie április aprilem απρίλιος απριλίου квітень квітня 四月",
	"maius majus maji majo mai mei maj maja maggio květen května май мая mayis toukokuu toukokuuta maig május mayo maium μάιος μαΐου травень травня 五月",
	"junius brachmonat iunius iunii iunio giugno juni czerwiec czerwca červen června июнь июня haziran kesäkuu kesäkuuta juny iunie június junium ιούνιος ιουνίου червень червня 六月",
	"iulius heumonat julai julius iulii iulio luglio juli lipiec lipca červenec července июль июля temmuz heinäkuu heinäkuuta juliol iulie július julium ιούλιος ιουλίου липень липня 七月",
	"augustus agustus ogos augusti agosto augustus sierpien sierpnia srpen srpna август августа ağustos elokuu elokuuta agost augusztus aout augustum αύγουστος αυγούστου серпень серпня 八月",
	"septembri settembre september wrzesien września září сентябрь сентября eylül syyskuu syyskuuta setembre septembrie szeptember setiembre 7ber 7bre 7bris viibris septembrem σεπτέμβριος σεπτεμβρίου вересень вересня 九月",
	"octobri ottobre oktober pazdziernik października říjen října октябрь октября ekim lokakuu lokakuuta octubre octombrie október 8ber 8bre 8bris viiibris octobrem οκτώβριος οκτωβρίου жовтень жовтня 十月",
	"novembri november listopad listopada listopadu ноябрь ноября kasim marraskuu marraskuuta novembre noiembrie 9ber 9bre 9bris novembrem νοέμβριος νοεμβρίου листопад листопада 十一月",
	"decembri dicembre disember december grudzien grudnia prosinec prosince декабрь декабря aralik joulukuu joulukuuta desembre decembrie desember xber xbre xbris 10ber 10bre decembrem δεκέμβριος δεκεμβρίου грудень грудня 十二月",
}

// Abbreviations that are no beginning of a name, or that several names begin
// with though usage means one month.
var readShort = [12]string{
	"jan jany jnr ja",
	"feb fev febr feby fb",
	"mar mrt mrz maerz mch",
	"apr abr avr apl",
	"may mai maj",
	"jun",
	"jul jly jl jy",
	"aug ago ag agt agu ags augst",
	"sep sept set sbr septbr",
	"oct okt out ott octbr octob",
	"nov novbr novr",
	"dec dez dic des decbr decr",
}

var monthWords, monthNames = readTables()

func readTables() (map[string]int, []string) {
	words := map[string]int{}
	for _, list := range written {
		for m, name := range strings.Fields(list) {
			words[Fold(name)] = m + 1
		}
	}
	for m, list := range readMonths {
		for _, name := range strings.Fields(list) {
			words[Fold(name)] = m + 1
		}
	}
	names := make([]string, 0, len(words))
	for name := range words {
		names = append(names, name)
	}
	slices.Sort(names)
	for _, list := range short {
		for m, name := range strings.Fields(list) {
			words[Fold(name)] = m + 1
		}
	}
	for m, list := range readShort {
		for _, name := range strings.Fields(list) {
			words[Fold(name)] = m + 1
		}
	}
	return words, names
}

// Weekdays from Sunday, by language: full names and abbreviations of three
// letters or more. Spanish and Italian "mar" is left to the month.
var weekdayWords = numbered([]string{
	"sunday sun domingo dom dimanche dim sonntag sonnt domenica zondag söndag søndag niedziela neděle воскресенье pazar sunnuntai",
	"monday mon segunda segunda-feira lunes lun lundi montag mont lunedi lunedì maandag måndag mandag poniedziałek pondělí понедельник pazartesi maanantai",
	"tuesday tue tues terça terça-feira martes mardi dienstag martedì dinsdag tisdag tirsdag wtorek úterý вторник salı tiistai",
	"wednesday wed weds quarta quarta-feira miércoles mié mercredi mer mittwoch mercoledì woensdag onsdag środa středa среда çarşamba keskiviikko",
	"thursday thu thur thurs quinta quinta-feira jueves jue jeudi jeu donnerstag giovedì gio donderdag torsdag czwartek čtvrtek четверг perşembe torstai",
	"friday fri sexta sexta-feira viernes vie vendredi ven freitag venerdì vrijdag fredag piątek pátek пятница cuma perjantai",
	"saturday sat sábado sáb samedi sam samstag sonnabend sabato zaterdag lördag lørdag sobota суббота cumartesi lauantai",
}, 0)

// Seasons from spring.
var seasonWords = numbered([]string{
	"spring primavera printemps frühling frühjahr vere ver lente voorjaar vår våren forår foråret wiosna jaro весна весной навесні tavasz tavasza tavaszán ilkbahar kevät 春",
	"summer verão estío verano été sommer aestate aestas estate zomer sommar sommaren sommeren lato léto лето летом літо nyár nyara nyarán yaz kesä 夏",
	"autumn fall outono otoño automne herbst autumno autumnus autunno herfst najaar höst hösten høst efterår efteråret jesień podzim осень осенью осінь ősz ősze őszén sonbahar syksy 秋",
	"winter inverno invierno hiver hieme hiems vinter vintern vinteren zima зима зимой tél tele telén kış talvi 冬",
}, 1)

func numbered(lists []string, from int) map[string]int {
	words := map[string]int{}
	for i, list := range lists {
		for _, w := range strings.Fields(list) {
			words[Fold(w)] = i + from
		}
	}
	return words
}
