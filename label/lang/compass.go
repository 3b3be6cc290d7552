package lang

import "strings"

// A Compass is a cardinal point.
type Compass byte

// The cardinal points, by their international letters.
const (
	North Compass = 'N'
	East  Compass = 'E'
	South Compass = 'S'
	West  Compass = 'W'
)

const points = "NESW"

// Letter returns the letter that the language writes for the point: West is
// "O" in Portuguese, Spanish and French, and "O" is East in German. Latin and
// unknown tags take the international letters; Chinese has its own characters.
func Letter(t Tag, p Compass) string { return compassOf(letters, t, p) }

// CompassWord returns the point as a word: "north", "Norden".
func CompassWord(t Tag, p Compass) string { return compassOf(compassNames, t, p) }

// Hemisphere returns the point as a coordinate's own word in Chinese ("北緯",
// north latitude), which stands before the figures; in other languages "".
func Hemisphere(t Tag, p Compass) string {
	if t != Chinese {
		return ""
	}
	return compassOf(hemispheres, t, p)
}

func compassOf(lists map[Tag]string, t Tag, p Compass) string {
	i := strings.IndexByte(points, byte(p))
	if i < 0 {
		return ""
	}
	list, ok := lists[t]
	if !ok {
		list = lists[English]
	}
	return strings.Fields(list)[i]
}

// Latitude and Longitude return the abbreviated words before the figures:
// "lat.", "long.".
func Latitude(t Tag) string  { return axis(t, 0) }
func Longitude(t Tag) string { return axis(t, 1) }

func axis(t Tag, i int) string {
	list, ok := axes[t]
	if !ok {
		list = axes[English]
	}
	return strings.Split(list, "|")[i]
}

// FindCompass returns the points that a word or letter can mean, upper or
// lower case, with or without full stop: FindCompass("Oeste", "") is West.
// Where languages contradict each other ("O" is Oeste or Ost) all meanings
// come back unless the tag decides. A word that is no point gives none.
func FindCompass(word string, t Tag) []Compass {
	w := Fold(word)
	if p, ok := pointWords[w]; ok {
		return []Compass{p}
	}
	if own, ok := ownLetters[t]; ok {
		if i := strings.Index(" "+own+" ", " "+w+"="); i >= 0 {
			return []Compass{Compass(own[i+len(w)+1])}
		}
	}
	switch w {
	case "n":
		return []Compass{North}
	case "s":
		return []Compass{South}
	case "e", "l": // east, este, est; leste
		return []Compass{East}
	case "w":
		return []Compass{West}
	case "o": // oeste, ouest, ovest; Ost, oost, øst
		return []Compass{East, West}
	case "v": // väst, vest; východ
		return []Compass{East, West}
	}
	return nil
}

// FindAxis reports what a word before or after the figures says of them:
// 'N' for latitude, 'E' for longitude, 0 for neither.
func FindAxis(word string) byte { return axisWords[Fold(word)] }

// In the order north, east, south, west.
var letters = map[Tag]string{
	English:    "N E S W",
	Portuguese: "N E S O",
	Spanish:    "N E S O",
	French:     "N E S O",
	German:     "N O S W",
	Chinese:    "北 東 南 西",
}

var compassNames = map[Tag]string{
	English:    "north east south west",
	Portuguese: "norte este sul oeste",
	Spanish:    "norte este sur oeste",
	French:     "nord est sud ouest",
	German:     "Norden Osten Süden Westen",
	Latin:      "septentrio oriens meridies occidens",
	Chinese:    "北 東 南 西",
}

var hemispheres = map[Tag]string{Chinese: "北緯 東經 南緯 西經", English: "N E S W"}

var axes = map[Tag]string{
	English:    "lat.|long.",
	Portuguese: "lat.|long.",
	Spanish:    "lat.|long.",
	French:     "lat.|long.",
	German:     "Breite|Länge",
	Latin:      "lat.|long.",
	Chinese:    "緯度|經度",
}

// What single letters mean once the language is known, where they mean
// something else than the international letters do.
var ownLetters = map[Tag]string{
	Portuguese: "o=W l=E",
	Spanish:    "o=W",
	French:     "o=W",
	Italian:    "o=W",
	German:     "o=E",
	Dutch:      "o=E z=S",
	Swedish:    "o=E v=W",
	Danish:     "o=E v=W",
	Czech:      "s=N j=S v=E z=W",
	Polish:     "w=E z=W",
	Turkish:    "k=N g=S d=E b=W",
	Finnish:    "p=N e=S i=E l=W",
}

var pointWords = compassWords(map[Compass]string{
	North: "north northern norte nord noord norr nordlig nördlich nördl nördlicher borealis septentrio septentrionalis boreal norden north.lat 北 北緯 北纬 nb сш с.ш северной сев пнш пн kuzey",
	South: "south southern sul sur sud süd zuid syd söder südlich südl südlicher australis meridies meridionalis süden zb юш ю.ш южной юж пдш пд güney 南 南緯 南纬",
	East:  "east eastern este leste est ost oost öst øst ouster östlich östl östlicher orientalis oriens osten ol вд в.д восточной вост схд сх doğu 東 东 東經 东经",
	West:  "west western oeste ouest ovest väst vest westlich westl westlicher occidentalis occidens westen wl зд з.д западной зап зхд зх batı 西 西經 西经",
})

func compassWords(lists map[Compass]string) map[string]Compass {
	words := map[string]Compass{}
	for p, list := range lists {
		for _, w := range strings.Fields(list) {
			words[Fold(w)] = p
		}
	}
	return words
}

var axisWords = func() map[string]byte {
	words := map[string]byte{}
	for _, w := range strings.Fields("lat latitude latitud latitudine latitudo breite br breedte bredd bredde y 緯度 纬度 широта широты decimallatitude") {
		words[Fold(w)] = 'N'
	}
	for _, w := range strings.Fields("long lon lng longitude longitud longitudine longitudo länge lge lg laenge lengte längd længde 經度 经度 долгота долготы decimallongitude") {
		words[Fold(w)] = 'E'
	}
	return words
}()
