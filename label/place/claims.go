package place

import (
	"fmt"
	"strconv"
	"strings"
)

// claimTable has a line for every piece of land that another state claims, or
// held or claimed so long that its maps and labels have it: the codes of the
// states besides the one whose outline holds it, and its corners in degrees,
// latitude first, of a box (south-west and north-east) or a polygon. Of the sea
// in it nothing is said, except where a tilde stands first: there lie islets
// that no outline holds.
//
// The corners are rough and lie outside rather than inside. Sources: the note
// on disputed boundaries of Natural Earth, and general geography; from memory.
const claimTable = `
IE: 54.0,-8.2 55.4,-5.3: Northern Ireland
IE IS DK FO GB: ~57.4,-13.9 57.8,-13.5: Rockall
MA: 35.85,-5.40 35.93,-5.25: Ceuta
MA: 35.13,-4.45 35.35,-2.40: Melilla, Peñón de Vélez, Alhucemas, Chafarinas
PT ES: 38.45,-7.30 38.86,-6.88: Olivença
PT ES: 41.80,-7.90 41.95,-7.60: Couto Misto
CH AT DE LI: 47.45,9.0 47.82,9.78: Lake Constance
RU: 45.7,31.4 48.2,37.5 : Kherson and Zaporizhzhia
RU: 46.8,36.4 50.15,40.3: Donetsk and Luhansk
TR: 34.95,32.6 35.75,34.65: Northern Cyprus
SY: 35.75,35.70 37.05,36.75: Hatay
SY IL LB: 32.65,35.58 33.50,35.95: Golan and Shebaa
IL PS: 31.30,34.85 32.60,35.60: the West Bank and Jerusalem
IL EG: 31.20,34.18 31.62,34.58: Gaza
EG SA: 27.85,34.40 28.05,34.80: Tiran and Sanafir
IL: 27.65,32.40 31.40,34.95: Sinai
RU: 42.0,43.3 42.75,44.8: South Ossetia
RU: 42.4,39.9 43.65,42.2: Abkhazia
AM: 38.75,45.9 40.45,47.6: Nagorno-Karabakh and the districts about it
AE IR: ~25.75,54.85 26.40,55.60: Abu Musa and the Tunbs
SA OM AE: 23.9,55.4 24.6,56.1: Buraimi
SA: 22.6,51.4 23.3,55.2: the Liwa
KW SA: 28.3,47.2 29.2,48.6: the neutral zone
SA IQ: 28.9,44.2 30.2,46.8: the neutral zone
YE: 16.3,42.0 18.5,45.5: Asir and Najran
IN PK CN: 32.35,75.30 32.60,74.55 32.95,73.95 33.35,73.95 34.40,73.35 35.40,72.45 36.15,72.45 36.85,73.60 37.15,74.60 36.95,75.90 36.35,77.80 35.95,80.45 34.30,80.45 33.30,79.55 32.40,79.40 32.35,78.30 32.95,76.80 32.75,75.95: Kashmir, Aksai Chin, the Shaksgam valley
IN CN: 30.2,78.4 32.5,79.3: the passes between Spiti and Garhwal
IN CN: 26.85,91.5 26.85,92.3 26.90,93.2 27.15,94.0 27.70,94.6 27.65,95.4 27.05,95.2 26.60,95.2 26.60,95.9 27.20,97.45 28.40,97.50 29.55,96.0 29.55,94.4 28.90,93.2 28.05,92.3 27.95,91.5: Arunachal Pradesh
IN NP CN: 29.9,80.4 30.7,81.3: Kalapani and Lipulekh
NP IN: 27.35,83.75 27.52,84.05: Susta
BT CN: 27.1,88.9 27.5,89.3: Doklam
BT CN: 27.9,89.8 28.4,91.2: Kula Kangri
BT CN: 26.9,91.5 27.6,92.15: Sakteng
RU CN: 48.2,134.3 48.5,135.1: Bolshoi Ussuriysky
JP RU: ~43.30,145.40 45.70,149.05: the southern Kurils
JP RU: 45.85,141.6 50.05,144.9: southern Sakhalin
JP RU: 45.7,149.0 51.0,156.7: the northern Kurils
KR JP KP: ~37.15,131.75 37.30,131.95: Dokdo
JP CN TW: ~25.55,123.25 26.05,124.75: Senkaku
CN TW HK: ~20.5,116.5 20.9,117.1: Pratas
CN PH TW: ~14.9,117.5 15.4,118.0: Scarborough Shoal
CN TW VN: ~15.3,110.8 17.4,113.1: the Paracels
CN TW VN PH MY BN: ~6.0,109.4 4.3,112.0 6.8,115.6 8.6,116.6 11.6,118.4 12.2,116.5 12.2,113.5 8.5,109.4: the Spratlys
CN TW: 24.1,117.9 26.5,120.6: Kinmen and Matsu
PH: 4.0,115.2 7.5,119.4: Sabah
KH VN: 9.7,103.75 10.55,104.15: Phú Quốc
ID MY SG: ~1.25,104.35 1.40,104.45: Pedra Branca
EG SD: 21.9,33.1 23.3,37.0: Hala'ib and Bir Tawil
EG SD: 21.95,31.1 22.25,31.6: Wadi Halfa
LY TD: 19.4,15.9 19.9,16.2 23.5,16.2 23.5,15.9 22.0,24.1 19.4,24.1: Aozou
SD SS: 9.2,27.7 10.4,30.2: Abyei
SD SS: 8.5,23.4 10.3,25.3: Kafia Kingi
KE SS ET: 4.45,34.1 5.60,36.1: Ilemi
ER ET: 14.2,36.8 14.95,38.5: Badme
TZ MW: -11.6,33.95 -9.5,34.95: Lake Malawi
NG CM: 4.35,8.4 5.0,9.0: Bakassi
GA GQ: 0.75,9.2 1.2,9.5: Mbañié and Corisco
MG KM FR RE YT: ~-11.75,47.15 -11.35,47.55: Glorioso Islands
MG FR RE YT: ~-17.2,42.55 -16.9,42.9: Juan de Nova
MG FR RE YT: ~-22.5,40.15 -22.2,40.5: Europa
MG FR RE YT: ~-21.65,39.55 -21.3,39.9: Bassas da India
MU MG FR RE: ~-16.05,54.35 -15.75,54.7: Tromelin
NC FR VU: ~-22.55,171.1 -22.2,172.3: Matthew and Hunter
TO FJ: ~-24.1,-179.3 -23.4,-178.7: Minerva Reefs
AS TK US WS: ~-11.2,-171.2 -10.95,-170.95: Swains Island
MH US UM: ~19.1,166.4 19.5,166.8: Wake Island
AU NC: ~-19.6,158.1 -18.9,158.7: Chesterfield
CA GL DK: ~80.75,-66.7 80.9,-66.2: Hans Island
CA US: ~44.45,-67.2 44.65,-66.9: Machias Seal Island
CA US: 54.4,-134.0 54.9,-130.0: Dixon Entrance
HT US UM: ~18.35,-75.1 18.5,-74.9: Navassa
NI: 11.3,-82.3 13.6,-81.0: San Andrés and Providencia
CO NI HN JM US: ~13.6,-82.3 16.2,-78.2: the banks north of them
HN US: ~17.3,-84.1 17.6,-83.8: Swan Islands
VE DM: ~15.55,-63.75 15.8,-63.5: Aves
GT: 15.8,-89.3 17.6,-87.9: southern Belize
NI CR: 10.6,-83.95 11.0,-83.55: Isla Calero
FR MX: ~10.2,-109.4 10.4,-109.0: Clipperton
VE: 8.60,-60.2 8.60,-58.6 7.00,-58.35 6.35,-58.55 5.0,-58.5 4.0,-58.3 2.9,-58.2 1.20,-58.7 1.20,-59.9 4.4,-60.3 5.1,-61.5 6.3,-61.5 8.0,-60.2: Guyana west of the Essequibo
SR GY: 1.7,-58.2 3.9,-55.9: the New River triangle
SR GF FR: 2.0,-54.8 3.7,-53.8: the Lawa and Marouini
EC: -5.2,-78.6 0.0,-70.0: the Oriente
AR CL: -51.0,-74.2 -48.1,-72.3: the southern ice field
AR CL: -55.6,-67.9 -54.95,-66.0: Picton, Nueva, Lennox
UY BR: -31.4,-56.4 -30.1,-55.4: Rincón de Artigas
UY BR AR: -30.4,-57.9 -30.1,-57.5: Isla Brasilera
AR CL GB: -63.6,-63.5 -60.8,-53.4: South Shetland Islands
AR GB: -61.1,-47.2 -60.2,-44.0: South Orkney Islands
AR CL GB: -90,-74 -63.0,-55.5: the Antarctic Peninsula
AR GB: -90,-55.5 -73.5,-25: the Argentine sector
CL GB: -90,-80 -68.0,-74: the Chilean sector
CL: -90,-90 -70.0,-80: the Chilean sector
GB: -90,-25 -73.0,-20: the British sector
NO: -90,-20 -68.2,45: the Norwegian sector
NO: -69.2,-91.5 -68.4,-89.8: Peter I Island
AU: -90,45 -65.0,136: the Australian sector
FR TF: -90,136 -65.5,142: Terre Adélie
AU: -90,142 -65.5,160: the Australian sector
NZ: -90,160 -66.0,180: the Ross Dependency
NZ: -90,-180 -75.0,-150: the Ross Dependency
`

// claimedWhole are territories of ISO 3166-1 that another claims as a whole, or
// under whose name they went until lately.
//
// Sources as above.
var claimedWhole = map[string][]string{
	"YT": {"KM"}, "IO": {"MU"}, "GI": {"ES"}, "MF": {"GP"}, "BL": {"GP"},
}

// addClaims appends the lands of claimTable as regions, and the claims on whole
// territories to the codes of those.
func (b *outlines) addClaims() error {
	for i, r := range b.regions {
		if more := claimedWhole[r.codes[0]]; more != nil {
			b.regions[i].codes = append(r.codes, more...)
		}
	}
	b.own = len(b.regions)
	for line := range strings.Lines(strings.TrimSpace(claimTable)) {
		f := strings.Split(strings.TrimSpace(line), ":")
		if len(f) != 3 {
			return fmt.Errorf("claim %q", line)
		}
		corners := strings.TrimSpace(f[1])
		corners, alone := strings.CutPrefix(corners, "~")
		var ring [][2]int32
		for _, corner := range strings.Fields(corners) {
			lat, lon, _ := strings.Cut(corner, ",")
			y, err1 := strconv.ParseFloat(lat, 64)
			x, err2 := strconv.ParseFloat(lon, 64)
			if err1 != nil || err2 != nil {
				return fmt.Errorf("claim %q: corner %s", line, corner)
			}
			ring = append(ring, [2]int32{int32(x * unit), int32(y * unit)})
		}
		if len(ring) == 2 {
			sw, ne := ring[0], ring[1]
			ring = [][2]int32{sw, {ne[0], sw[1]}, ne, {sw[0], ne[1]}}
		}
		r := region{codes: strings.Fields(f[0]), from: len(b.edges), alone: alone}
		b.edges = appendRing(b.edges, ring, uint16(len(b.regions)))
		r.to = len(b.edges)
		b.regions = append(b.regions, r)
	}
	return nil
}
