package name

import (
	"strings"

	"cornerslip/label"
)

// Mentions sets running text (habitat, associated taxa, host) with the names in
// it in italics. Known are names that the record's own columns and table hold,
// with or without authors; a genus alone counts. Beside those, only what has
// the clear form of a name is one: "Cistus spp.", "Salix ×rubens", "Quercus
// ilex subsp. ballota", "Erica australis L.", "Poaceae"; and where
// Options.TaxonField says that the field is made of taxa, a capital word with a
// Latin epithet. Ordinary words are never taken for names: in doubt they stay
// upright. Joining the runs' text gives the text back unchanged.
func Mentions(text string, known []string, o Options) []label.Run {
	if text == "" {
		return nil
	}
	s := searcher{parser: parser{text: text, opt: o, toks: lex(text)}}
	for _, k := range known {
		s.learn(k)
	}
	out := make([]label.Run, 0, 8)
	w := setter{p: &s.parser, out: &out}
	at := 0
	for i := 0; i < len(s.toks); {
		end := s.mention(i)
		if end == i {
			i++
			continue
		}
		last := &s.toks[end-1]
		stop := last.end
		if !last.italic || last.cut > 0 {
			stop -= last.cut
		}
		w.plain(span{at, s.toks[i].start})
		w.span, w.next = span{}, 0
		w.advance(i)
		w.names(i, end, stop)
		at, i = stop, end
	}
	w.plain(span{at, len(text)})
	return out
}

// plain writes ordinary text: a line may break in it as in any other.
func (w *setter) plain(s span) {
	if s.start < s.end {
		*w.out = append(*w.out, label.Run{Text: s.of(w.p.text)})
	}
}

// names writes the tokens from i up to but not including end as a name that
// ends at the byte stop.
func (w *setter) names(i, end, stop int) {
	n := len(*w.out)
	start := w.p.toks[i].start
	for i++; i < end; i++ {
		if t := &w.p.toks[i]; !t.glued && !w.p.tied(i-1) {
			w.piece(start, t.start)
			start = t.start
		}
	}
	w.piece(start, stop)
	if n < len(*w.out) {
		(*w.out)[len(*w.out)-1].Glue = false
	}
}

// A searcher looks for names in running text.
type searcher struct {
	parser
	genera   []string    // that are known
	binomial [][2]string // genus and epithet that are known
	last     string      // the genus mentioned last
}

// learn notes the genera and binomials of a known name.
func (s *searcher) learn(name string) {
	var p parser
	p.read(name, Parts{}, Options{})
	genus := ""
	for i := range p.toks {
		t := &p.toks[i]
		if !t.italic {
			continue
		}
		w := p.text[t.start : t.end-t.cut]
		switch {
		case t.taken == levelGenus:
			if !t.dot && t.letters > 1 {
				genus = w
				s.genera = append(s.genera, w)
			}
		case t.taken == levelSpecies && genus != "":
			s.binomial = append(s.binomial, [2]string{genus, w})
		}
	}
}

func (s *searcher) knowsGenus(w string) bool {
	for _, g := range s.genera {
		if g == w {
			return true
		}
	}
	return false
}

// knows reports whether genus and epithet are a known binomial; the genus may
// be abbreviated.
func (s *searcher) knows(genus, epithet string) bool {
	short, dot := strings.CutSuffix(genus, ".")
	for _, b := range s.binomial {
		if b[1] == epithet && (b[0] == genus || dot && strings.HasPrefix(b[0], short)) {
			return true
		}
	}
	return false
}

// mention returns the end of the name that begins at token i, i if none does,
// and sets its words in italics.
func (s *searcher) mention(i int) int {
	t := &s.toks[i]
	if t.class != word || !t.upper || t.kind != plainWord || t.code || t.inner || t.caps {
		return i
	}
	if t.dot {
		return s.abbreviated(i)
	}
	if !s.isTitle(i, 2) {
		return i
	}
	w := s.textOf(i)
	if strings.HasSuffix(w, "aceae") && len(w) > 6 || familyEnding(w) {
		if s.opt.UprightFamilies {
			return i
		}
		s.italicise(i, false)
		return i + 1
	}
	known := s.knowsGenus(w)
	if !known && (foreign(w) || commonNoun(w) || !s.latin(i)) {
		return i
	}
	n := i + 1
	if n >= len(s.toks) || s.toks[n].class == mark {
		return s.alone(i, known)
	}
	u := &s.toks[n]
	switch {
	case u.class == crossSign && n+1 < len(s.toks) && s.isEpithet(n+1) && s.latin(n+1) && (known || s.toks[n+1].letters > 3):
		return s.rest(i, n+1)
	case u.class == word && u.kind == open && (strings.HasPrefix(s.bare(n), "sp") || u.dot && s.bare(n) == "indet"):
		s.begun(i)
		return i + 1
	case u.class == word && u.kind == rankGenus && u.dot && s.isTitle(n+1, 3):
		s.begun(i)
		s.italicise(n+1, false)
		return n + 2
	case u.class == word && u.kind == qualifier && u.dot && (known || s.opt.TaxonField) && s.isEpithet(n+1) && s.latin(n+1):
		return s.rest(i, n+1)
	case s.isEpithet(n) && s.epithetOf(i, n, known):
		return s.rest(i, n)
	}
	return s.alone(i, known)
}

// epithetOf reports whether the small word at n is the epithet of the genus at
// i in running text.
func (s *searcher) epithetOf(i, n int, known bool) bool {
	e := s.bare(n)
	switch {
	case s.knows(s.textOf(i), e):
		return true
	case known && !romance(e) && s.authorsAt(n+1), s.latin(n) && !romance(e) && s.bracketedAuthors(n+1):
		return true
	case (known || strongLatin(e)) && !romance(e) && s.crossedAt(n+1):
		return true
	case s.opt.TaxonField && !romance(e) && s.authorsAt(n+1):
		return true
	case !s.latin(n) || romance(e) || s.toks[n].letters < 4 && !known:
		return false
	case s.opt.TaxonField:
		return true
	case known && strongLatin(e):
		return true
	}
	j := n + 1
	if j >= len(s.toks) {
		return false
	}
	u := &s.toks[j]
	if u.class == word && u.kind == rankInfra && u.dot && s.isEpithet(j+1) && s.latin(j+1) {
		return true
	}
	return (known || strongLatin(e)) && s.authorsAt(j)
}

// authorsAt reports whether an author stands at j that nothing else can be:
// "(L.) Mill.", "Mill.", "L." that no small word follows.
func (s *searcher) authorsAt(j int) bool {
	if j >= len(s.toks) {
		return false
	}
	u := &s.toks[j]
	if u.class == openSign {
		return s.bracketedAuthors(j)
	}
	if u.class != word || !u.upper || !u.dot || u.kind != plainWord {
		return false
	}
	if u.letters > 2 {
		return j+1 >= len(s.toks) || !(s.toks[j+1].class == number)
	}
	return s.textOf(j) == "L." && (j+1 >= len(s.toks) || s.toks[j+1].class == comma || s.toks[j+1].class == closeSign ||
		s.toks[j+1].class == word && (s.toks[j+1].kind == and || s.toks[j+1].kind == rankInfra || s.toks[j+1].kind == ordinary))
}

// bracketedAuthors reports whether "(L.) Mill." stands at j.
func (s *searcher) bracketedAuthors(j int) bool {
	if j >= len(s.toks) {
		return false
	}
	u := &s.toks[j]
	if u.class != openSign || u.pair <= j+1 || u.pair+1 >= len(s.toks) {
		return false
	}
	var buf [40]byte
	switch s.lower(j+1, &buf) { // people's titles, places and parts of a country
	case "eng", "engª", "dr", "dra", "sr", "sra", "srta", "prof", "mr", "mrs", "ms", "sta", "sto", "st", "ste", "mt", "mte", "inst", "univ", "dist", "distr", "conc", "freg", "mun", "prov", "dep", "dept", "co", "reg", "arr", "cant", "no", "nr", "fig":
		return false
	}
	a, b := &s.toks[u.pair-1], &s.toks[u.pair+1]
	return a.class == word && a.dot && s.toks[j+1].class == word && s.toks[j+1].upper && b.class == word && b.upper
}

// crossedAt reports whether a sign of hybridity stands at j and another parent
// behind it: "× Q. pyrenaica", "× pyrenaica".
func (s *searcher) crossedAt(j int) bool {
	if j+1 >= len(s.toks) || s.toks[j].class != crossSign {
		return false
	}
	n := j + 1
	if t := &s.toks[n]; t.class == word && t.upper && t.kind == plainWord {
		n++
	}
	return s.isEpithet(n) && s.latin(n)
}

// abbreviated takes "Q. suber" where the genus is known or was mentioned.
func (s *searcher) abbreviated(i int) int {
	t := &s.toks[i]
	n := i + 1
	if t.letters > 3 || n >= len(s.toks) {
		return i
	}
	if s.toks[n].class == crossSign {
		n++
	}
	if !s.isEpithet(n) {
		return i
	}
	e, short := s.bare(n), s.bare(i)
	if s.knows(s.textOf(i), e) {
		return s.rest(i, n)
	}
	if !s.latin(n) || s.toks[n].letters < 4 || romance(e) {
		return i
	}
	// A list goes on: "Erica australis, E. umbellata".
	listed := i > 0 && (s.toks[i-1].class == comma || s.toks[i-1].class == crossSign || s.toks[i-1].class == slash || s.toks[i-1].class == word && s.toks[i-1].kind == and)
	if s.last != "" && strings.HasPrefix(s.last, short) && (listed || strongLatin(e)) {
		return s.rest(i, n)
	}
	if s.opt.TaxonField || strongLatin(e) {
		for _, g := range s.genera {
			if strings.HasPrefix(g, short) {
				return s.rest(i, n)
			}
		}
	}
	return i
}

// alone takes a known genus that stands by itself, unless it may be a person or
// a place: "Rosa Almeida", "Santa Rosa".
func (s *searcher) alone(i int, known bool) int {
	if !known || !s.opt.TaxonField && givenName(s.textOf(i)) {
		return i
	}
	if i > 0 && s.toks[i-1].class == word && s.toks[i-1].upper && !s.toks[i-1].italic && s.toks[i-1].kind == plainWord && !s.latinOrdinary(i-1) {
		return i
	}
	if n := i + 1; n < len(s.toks) && s.toks[n].class == word && s.toks[n].upper && !s.toks[n].dot && s.toks[n].kind == plainWord {
		return i
	}
	s.begun(i)
	return i + 1
}

// latinOrdinary reports whether the capital word at i only begins a sentence:
// "Open Quercus forest".
func (s *searcher) latinOrdinary(i int) bool {
	return i == 0 || s.toks[i-1].class == mark || s.toks[i-1].class == word && s.toks[i-1].dot
}

func (s *searcher) begun(i int) {
	s.italicise(i, s.toks[i].dot)
	if !s.toks[i].dot {
		s.last = s.textOf(i)
	}
}

// rest sets genus i and epithet n in italics, and every rank with its epithet
// that follows them or their authors; it returns the end of the name.
func (s *searcher) rest(i, n int) int {
	s.begun(i)
	s.italicise(n, false)
	end := n + 1
	if s.toks[n].dot {
		return end
	}
	for j := end; j < len(s.toks) && j < end+9; j++ {
		t := &s.toks[j]
		switch {
		case t.class == word && (t.kind == rankInfra && (t.dot || s.plainRank(j)) || t.kind == filius && t.dot):
			k := j + 1
			if k < len(s.toks) && s.toks[k].class == crossSign {
				k++
			}
			if s.isEpithet(k) && s.latin(k) && (t.kind == rankInfra || strongLatin(s.bare(k))) {
				s.italicise(k, false)
				t.kind = rankInfra
				end = k + 1
				j = k
			}
		case t.class == word && t.upper && t.kind == plainWord, t.class == openSign && t.pair > 0 && t.pair < j+5, t.class == closeSign,
			t.class == word && (t.kind == filius || t.kind == and) && j > n+1, t.class == word && s.textOf(j) == "ex":
		default:
			return end
		}
	}
	return end
}

// plainRank reports whether the word is a rank that no language uses otherwise.
func (s *searcher) plainRank(i int) bool {
	switch s.bare(i) {
	case "subsp", "ssp", "nothosubsp", "subvar":
		return true
	}
	return false
}

// strongLatin reports whether a small word ends as epithets do and words of
// English and the Romance languages do not. Those write an accent where -ea and
// -ica have none in Latin.
func strongLatin(w string) bool {
	if !ascii(w) || len(w) < 5 {
		return false
	}
	for _, e := range [...]string{"us", "um", "is", "ii", "ae", "ens", "ans", "oides", "folia", "flora", "ensis", "ense", "ea", "ica", "ata", "ifera", "ifer", "phylla", "carpa", "iana", "ella", "cola", "stachys", "anthos", "issima"} {
		if strings.HasSuffix(w, e) {
			return !strings.HasSuffix(w, "ous") && !romance(w)
		}
	}
	return false
}

// romance knows words of English and the Romance languages that stand after a
// plant's name and look like Latin.
func romance(w string) bool {
	switch w {
	case "branca", "branco", "brava", "bravo", "preta", "preto", "amarela", "amarelo", "vermelha", "vermelho", "mansa", "manso", "roxa", "roxo", "seca", "seco", "alta", "alto", "baixa", "baixo",
		"blanca", "blanco", "negra", "negro", "roja", "rojo", "amarilla", "amarillo", "bianca", "bianco", "rossa", "rosso", "nera", "nero", "gialla", "blanche", "noire", "rouge", "jaune",
		"densa", "denso", "aberta", "aberto", "abierta", "abierto", "aperta", "jovem", "joven", "velha", "velho", "vieja", "viejo", "adulta", "adulto", "dominante", "dominantes", "dispersa", "disperso", "dispersas", "isolada", "isolado", "plantada", "plantado", "cultivada", "cultivado", "queimada", "queimado", "mista", "misto", "mixta", "mixto", "pura", "puro", "florida", "arbustiva", "rasteira", "rasteiro", "comum", "comuns", "mais", "menos", "depois", "demais", "bonus", "campus", "this", "various", "medium", "album", "serpentinum", "basis", "plantatus", "status", "versus", "circus", "mucus", "fungus", "focus", "stratum", "maximum", "minimum", "forum", "alluvium", "detritus", "humus", "gravis", "gris", "pais", "sinuosa", "rochosa", "pedregosa", "arenosa", "rocosa", "arenoso", "dominant", "type", "ademais", "além", "area", "aldea", "orilla", "flora", "silvestre", "silvestres", "costeira", "ribeirinha", "húmida", "úmida", "umida", "sombria", "grande", "grandes", "pequena", "pequeno", "pequeña", "pequeño", "florestal", "forestal", "juntamente", "principalmente", "sobretudo", "espalhada", "espalhados":
		return true
	}
	return false
}

// commonNoun knows capital words that begin sentences and places and look like
// a genus.
func commonNoun(w string) bool {
	switch w {
	case "Mata", "Mato", "Matos", "Matagal", "Encosta", "Serra", "Sierra", "Ribeira", "Ribera", "Rivera", "Prado", "Prados", "Bosque", "Bosques", "Monte", "Montes", "Campo", "Campos", "Areia", "Areias", "Arena", "Arenas", "Rocha", "Rochas", "Roca", "Rocas", "Solo", "Solos", "Suelo", "Terra", "Terras", "Terreno", "Terrenos", "Tierra", "Floresta", "Vale", "Valle", "Urze", "Urzes", "Esteva", "Estevas", "Giesta", "Giestas", "Tojo", "Tojos", "Carqueja", "Pinheiro", "Pinheiros", "Pino", "Pinos", "Carvalho", "Carvalhos", "Azinheira", "Encina", "Encinas", "Jara", "Jaras", "Sobreiro", "Sobreiros", "Castanheiro", "Eucalipto", "Oliveira", "Olivo", "Silva", "Silvas", "Feto", "Fetos", "Erva", "Ervas", "Hierba", "Planta", "Plantas", "Margem", "Margens", "Orla", "Costa", "Praia", "Playa", "Duna", "Dunas", "Lagoa", "Laguna", "Lago", "Rio", "Fonte", "Fuente", "Quinta", "Aldeia", "Aldea", "Vila", "Villa", "Casa", "Casas", "Ponte", "Puente", "Estrada", "Carretera", "Caminho", "Camino", "Vertente", "Vertiente", "Ladera", "Cumeada", "Cima", "Zona", "Zonas", "Area", "Areas", "Flora", "Lava", "Tundra", "Savanna", "Savana", "Steppa", "Macchia", "Garrigue", "Maquis", "Pineta", "Foresta", "Bosco", "Pista", "Parede", "Pared", "Muro", "Muros", "Grieta", "Fenda", "Fendas", "Savannah", "Parque", "Reserva", "Granite", "Serpentine", "Basis", "Marine", "Alpine", "Oasis", "Pine", "Dune", "Dunes", "Sandstone", "Limestone", "Dolomite", "Schist", "Base", "Site", "Nature", "Large", "Near", "Open", "Some", "Sobre", "Entre", "Junto", "Perto", "Cerca", "Planalto", "Meseta", "Pradera", "Pastagem", "Pasto", "Turfeira", "Turbera", "Charneca", "Landa", "Lande", "Prairie", "Roche", "Rive", "Rivage", "Source", "Collina", "Riva", "Ripa", "Fontana", "Strada", "Santa", "Santo", "Nossa", "Senhora", "Common", "Other", "Also", "Cover", "Tree", "Acacias", "Various", "Calcareous", "Siliceous", "Deciduous", "Numerous":
		return true
	}
	return false
}

// givenName knows genera that people and places are called too.
func givenName(w string) bool {
	switch w {
	case "Rosa", "Iris", "Viola", "Veronica", "Erica", "Daphne", "Hortensia", "Melissa", "Linnaea", "Aster", "Narcissus", "Hyacinthus", "Angelica", "Camellia", "Magnolia", "Acacia", "Silene", "Amaryllis", "Dahlia", "Jacaranda", "Laurus", "Valeriana", "Victoria", "Alma", "Flora", "Mercurialis", "Adonis", "Artemisia", "Calypso", "Hebe", "Arabis", "Cassia", "Celosia", "Senna", "Lavandula", "Oliva", "Olea", "Palma", "Cuba", "Costus", "Nerine", "Salvia", "Sabina", "Serena", "Sylvia", "Tilia", "Yucca", "Zinnia", "Linaria", "Nigella", "Petunia", "Primula", "Sierra", "Serra", "Cornus", "Malva", "Ruta", "Luzula", "Bella":
		return true
	}
	return false
}
