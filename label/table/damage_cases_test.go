package table

import (
	"strings"
	"testing"

	"cornerslip/label"

	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/japanese"
)

// found is what is said of a cell: rules with what they suggest.
func found(t *testing.T, cell string) string {
	t.Helper()
	_, rows := readAll(t, "country,locality\nPortugal,\""+strings.ReplaceAll(cell, `"`, `""`)+"\"\n", Options{})
	var all []string
	for _, f := range rows[0].Findings {
		all = append(all, f.Rule+" "+f.Suggest)
	}
	return strings.Join(all, "; ")
}

// misreadAs is text written in UTF-8 and read in another encoding.
func misreadAs(t *testing.T, e encoding.Encoding, text string) string {
	t.Helper()
	s, err := e.NewDecoder().String(text)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// TestMojibakeFound misreads invented cells in every way that programs do, once
// and twice, and wants them back.
func TestMojibakeFound(t *testing.T) {
	cells := []string{
		"São João da Pesqueira", "Évora, herdade das Ânforas", "Peñas Águilas, 41°12′N", "forêt de chênes, près de l’étang",
		"Höhe über Gießen, Föhrenwald", "Łąka pod Świętą Górą", "Příbor, u lesní školky", "Győr, erdőszél", "Muğla, Köyceğiz gölü",
		"Øvre Årdal, bjørkeskog", "Þingvellir, við vatnið", "Москва, Измайлово", "Θεσσαλία, Όλυμπος", "日本、富士山の林道", "四川省峨眉山",
	}
	for _, e := range []encoding.Encoding{charmap.Windows1252, charmap.ISO8859_1, charmap.Macintosh, charmap.CodePage850, charmap.CodePage437,
		charmap.Windows1250, charmap.Windows1251, charmap.Windows1254, charmap.CodePage866} {
		for _, cell := range cells {
			once := misreadAs(t, e, cell)
			if strings.Contains(once, "\ufffd") || e == charmap.CodePage866 && strings.ContainsAny(cell, "日四") {
				continue // not a whole misreading
			}
			if got := found(t, once); got != "text-mojibake "+cell {
				t.Errorf("%q as %v: %q: %s", cell, e, once, got)
			}
			twice := misreadAs(t, e, once)
			if strings.Contains(twice, "\ufffd") || strings.ContainsAny(cell, "日四ОМΘ") || e == charmap.CodePage866 || strings.Contains(cell, "Þ") && e == charmap.Windows1250 {
				continue
			}
			if got := found(t, twice); got != "text-mojibake "+cell {
				t.Errorf("%q as %v twice: %q: %s", cell, e, twice, got)
			}
		}
	}
	for _, cell := range []string{"Gerês, ladeira", "Łódź"} {
		if once := misreadAs(t, japanese.ShiftJIS, cell); !strings.Contains(once, "\ufffd") {
			if got := found(t, once); got != "text-mojibake "+cell {
				t.Errorf("%q: %q: %s", cell, once, got)
			}
		}
	}
}

// Words of many languages, and signs of the trade, are no damage.
var saneCells = []string{
	// French and Portuguese capitals
	"IRMÃ’S", "CHÂTEAU D’OÙ, «ÉTÉ»", "SÃO JOÃO DO CAMPO – RIBEIRÃO", "À L’ÎLE, ÇA ET LÀ", "MAÇÃ, CORAÇÃO, NAÇÕES", "Ã", "VILÃ 3", "IRMÃ DE", "À beira, à esquerda",
	// Portuguese
	"vegetação, plantações, irmã, avó, avô, à noite, pôr-do-sol", "Não há; só em São Brás", "lã; maçã? não", "manhã, amanhã e irmã",
	// Vietnamese
	"Đà Nẵng, Bà Nà, rừng nguyên sinh", "Thừa Thiên Huế, Bạch Mã", "Lâm Đồng, Đà Lạt, thác Đatanla", "Ã đào, ỗ, ẫ", "Hoàng Liên Sơn, Sa Pa, độ cao 1500 m",
	// Icelandic, Faroese
	"Þórsmörk, Öræfi, Ísafjörður, Seyðisfjörður", "við ána, það er ný á", "Æðey, Hróðnýjarstaðir", "Tórshavn, Eysturoy, Sørvágur", "Ás, Ðð, Ýmir",
	// Turkish
	"Kızılırmak, Iğdır, İstanbul, Şırnak, Çağlayan", "ağaçlık, ılıman, sığ göl", "Ağrı Dağı’nın batısı", "Gümüşhane – Şiran arası", "ÇIĞ, IŞIK, İNÖNÜ",
	// Czech, Slovak, Polish, Hungarian, Romanian, Baltic
	"Žďár nad Sázavou, Říčany, Třeboň, Český Krumlov", "Ľubica, Štúr, kŕdeľ, vŕba, dĺžka", "Święcica, źródło, łąka, jaźń", "őszirózsa, űrhajó, Tőserdő", "Şureanu, Ţebea, pârâu, văi, în", "Žemaitija, ąžuolynas, Čepkeliai, ūksmė", "Ķemeri, Ģipka, ļoti, Ņīca",
	// Hawaiian, Polynesian
	"Oʻahu, Koʻolau, Waiʻanae, Hawaiʻi", "Kīlauea, Mānoa, Lānaʻi, Hāna", "Māngere, Whangārei, Tāne Mahuta", "Tahiti, Faʻaʻā, Papenoʻo", "Rapa Nui, Rano Kau, ʻŌrongo",
	// Greek, Cyrillic, Hebrew, Arabic, Han, Thai, Georgian
	"Θεσσαλία, Όλυμπος, ρέμα", "Ταΰγετος, προϋπόθεση, ΐ", "Россия, хребет Хамар-Дабан", "Ёлкино, Съезжее, рёбра, «Волга»", "С… и Р… Рё Сё", "Київ, Їжакевич, ґрунт, є", "България, ъгъл, щъркел", "ירושלים, הר הכרמל", "جبل الشيخ، لبنان", "می\u200cخواهم", "臺北, 陽明山", "四川省木里县", "富士山、ヤマザクラ", "대한민국 지리산", "เชียงใหม่ ดอยสุเทพ", "მცხეთა, მთა",
	"ﾔﾏｻﾞｸﾗ, ﾐｽﾞﾅﾗ", "学名：Ｐｒｕｎｕｓ",
	// IPA and letters of African languages
	"[ˈkwɛrkʊs]", "ŋɡɔŋɔ, ɛkɔ, Ɔkɔmfɔ", "Bɔkɔɔ, Ɖuwɔ, Ŋgaoundéré", "!Xóõ, ǂKhomani, ǀXam", "Ọ̀ṣun, Ilé-Ifẹ̀, Ẹ̀kìtì",
	// signs
	"Salix × rubens, S. ×sepulcralis", "♂ 3, ♀ 2, ☿", "41°12′30″N, 8°09′W", "½ km, ¼, ¾, 2½ ha", "±50 m, ≈3, ≤5, ≥7, −8", "10 µm, 12 μm, Δh, λmax, β-form, α-diversity, Ωm, σx, χ²",
	"100\u00a0m, «\u00a0là\u00a0»", "3–4 mm – 5 — 6…", "“so” ‘so’ „so“ »so«", "§ 5, © 2026, ® ™ € £ ¥ ¢", "Nº 3, 5ª, n°7, 1.º", "¿Qué? ¡Sí!", "m², m³, x¹", "l·l, col·lecció, paral·lel", "† 1930, ‡, •, ·, ¶", "¬p, √2, ∞, ∑, ≠", "→ N, ↑ 20 m, ↔", "☆ ★ ✓", "🌿 🌲",
	// NFD is no fault
	"Sa\u0303o Joa\u0303o, Ge\u0302res", "Z\u030cd\u030ca\u0301r", "A\u030angstro\u0308m",
	// ASCII that looks like codes and is none
	"R&D; A & B; Q&A", "Almeida & Simões; Brandão & al.", "what? where? who?", "Rosa sp.? (canina?)", "?", "alt. 300?", "Salix alba ?x fragilis", "det.? Almeida", "50%, 100% de 3", "a_b_c, max_x, _x_", `C:\trips\2026`, "http://example.org/?id=3&n=%C3%A9", "www.example.org/a?b", "x?", "J. Almeida?; M. Sá?", "cf.? alba", "Quercus sp. ? robur", "alba?Salix",
	// accents by themselves
	"O´Brien, d´Andorra, l`eau", "8´30´´", "`Golden Queen´", "~ 300 m, ^", "¨3", "pH ˜ 6",
	"Cyrillic Д and Latin D", "H₂O, CO₂, 10⁻³", "Erica ‘Kramer’s Rote’", "Ångström, Å, Øre", "Straße, Fuß, GROẞ", "fi fl ffi",
}

func TestSaneCells(t *testing.T) {
	for _, cell := range saneCells {
		if got := found(t, cell); got != "" {
			t.Errorf("%q: %s", cell, got)
		}
	}
}

// TestDamageFound lists each kind of damage in cells that must be found.
func TestDamageFound(t *testing.T) {
	for _, c := range []struct{ cell, want string }{
		// Misread, and the second half of a letter lost.
		{"Ramal do Banho, sede do MunicÃ_pio", "text-mojibake "},
		{"sÃ_tio do Coronel", "text-mojibake "},
		{"EspÃrito Santo", "text-mojibake Espírito Santo"},
		{"38.5371∞ N, 8.8035∞ W", "text-mojibake 38.5371° N, 8.8035° W"}, // 0xB0 as Mac Roman has it
		{"slope 22¡, facing W", "text-mojibake slope 22°, facing W"},
		{"38∫ 32' N", "text-mojibake 38° 32' N"},
		{"from 3 to ∞, ∫dx, 3 ¡Sí!", ""},
		{"Thuja plicata,ï¿½Pseudotsuga menziesii", "text-replacement "},
		{"anthers 1.5€“2.5 mm", "text-mojibake anthers 1.5–2.5 mm"},
		{"by O€™Donnell, 5 €, 7€", "text-mojibake by O’Donnell, 5 €, 7€"},
		{"prÃ_ximo ao prÃ©dio", "text-mojibake "},
		{"≈ûifne", "text-mojibake Şifne"}, {"Ceylanpƒ±nar", "text-mojibake Ceylanpınar"}, {"Di≈üli", "text-mojibake Dişli"},
		{"≈ 300 m, ≈20 trees, ƒ 8, ƒ(x)", ""},
		{"ramal Ã  direita para PovoaÃ§Ã£o", "text-mojibake ramal à direita para Povoação"},
		{"atÃ© lÃ  em cima", "text-mojibake até là em cima"},
		{"1200Â m, encosta", "text-mojibake 1200 m, encosta"},
		{"Â½ km, sÃ?o", "text-mojibake "},
		// One page read as another: DOS by Windows, Windows by a Mac and by DOS, Polish and Russian Windows by Western.
		{"µrvore, botÆo", "text-mojibake Árvore, botão"}, {"vegeta‡Æo", "text-mojibake vegetação"}, {"Mu¤oz", "text-mojibake Muñoz"}, {"M\u0081ller", "text-mojibake "},
		{"EspaÒa", "text-mojibake España"}, {"vegetaÁ„o", "text-mojibake vegetação"}, {"S‹o Paulo", "text-mojibake São Paulo"}, {"MΘxico", "text-mojibake México"},
		{"l'‚tude de la v‚g‚tation", "text-mojibake l'étude de la végétation"}, {"les hˆtraies fran‡aises", "text-mojibake les hêtraies françaises"}, {"chˆnes", "text-mojibake "}, {"sŠches", "text-mojibake "},
		{"Gonz·lez", "text-mojibake "}, {"Bia³owie¿a", "text-mojibake Białowieża"}, {"Ðîññèÿ", "text-mojibake Россия"},
		{"FazendaÁgua, rioÁgua", ""}, {"10 µm, µmol, 5 µL", ""}, {"M´lang", ""}, {"Castilla–La Mancha", ""}, {"Minneapolis–Saint Paul", ""}, {"oak–beech wood", ""}, {"Рената–Тихичко, РЕНЕТА–ТИХИЧКО", ""}, {"Москва—Владимир", ""}, {"leitung”Haus", ""}, {"K”ln", "text-mojibake Köln"}, {"Yur”yivka", ""}, {"Espa–a, monta–a", "text-mojibake España, montaña"}, {"pe–as", "text-mojibake peñas"}, {"Le—n", "text-mojibake León"}, {"C—rdoba", ""}, {"resbalamiento–un", ""}, {"ribeira—te", ""}, {"ponte do rio—de cima", ""}, {"entre d’água—olivais", ""}, {"ПОЗАДИ–СПЕКТОФОТО–ИЗЛЪЖЕ", ""}, {"li–orangesmag", ""}, {"Kam´yanets", ""}, {"Vale d´Água", ""}, {"km²Área", ""}, {"Æbelø, Øster Æblehave", ""}, {"G‘arbiy, Taεrabt", ""}, {"Rio3ªMargem, ©Almeida", ""},
		// ? and U+FFFD in the place of a letter.
		{"Fazenda Pau d#?#Óleo", "text-replacement "}, {"S?o Paulo", "text-replacement "}, {"Mu?oz", "text-replacement "}, {"Concei??o", "text-replacement "}, {"S??o Jo??o", "text-replacement "}, {"S?O PAULO", "text-replacement "},
		{"Bragan?a, junto ? ponte", "text-replacement "}, {"Ger\ufffds", "text-replacement "}, {"Vila Ch\ufffd", "text-replacement "}, {"\ufffdvora", "text-replacement "}, {"P\ufffd\ufffdvoa", "text-replacement "}, {"Fran\ufffdois", "text-replacement "},
		// Controls.
		{"Ger\u00eas\u0000", "text-control Gerês"}, {"a\u0008b", "text-control ab"}, {"l\u0092étang", "text-control l’étang"}, {"a\u0085b", "text-control a…b"}, {"a\u2028b", "text-control a b"}, {"a\u007fb", "text-control ab"}, {"tab\u000bul", "text-control tabul"},
		// Private use.
		{"41\uf0b0 N", "text-private "}, {"\ue000", "text-private "}, {"a\uf8ffb", "text-private "}, {"x\U000F0001", "text-private "}, {"\uf061\uf062", "text-private "},
		// Unseen.
		{"Lin\u00addoso", "text-invisible Lindoso"}, {"\u200bLindoso", "text-invisible Lindoso"}, {"Lindoso\ufeff", "text-invisible Lindoso"}, {"a\u2060b", "text-invisible ab"}, {"a\u200eb", "text-invisible ab"}, {"\u202aa\u202c", "text-invisible a"}, {"Lind\u200doso", "text-invisible Lindoso"}, {"Lind\u200coso", "text-invisible Lindoso"},
		// Codes.
		{"G&ecirc;r&ecirc;s", "text-code Gêrês"}, {"Almeida &amp; Sim&otilde;es", "text-code Almeida & Simões"}, {"caf&#233;", "text-code café"}, {"caf&#xE9;", "text-code café"}, {"41&deg;12&prime;", "text-code 41°12′"}, {"a&nbsp;b", "text-code a\u00a0b"}, {"x &lt; 5", "text-code x < 5"}, {"l&rsquo;eau", "text-code l’eau"}, {"&quot;so&quot;", "text-code \"so\""},
		{"<i>Erica</i> L.", "text-code Erica L."}, {"<p>with <em>Cistus</em><br/>common</p>", "text-code with Cistus common"}, {`see <a href="http://x.pt">here</a>`, "text-code see here"}, {"x<sup>2</sup> &amp; y", "text-code x2 & y"},
		{"Charneca <ll>nome:</ll> Urze", "text-code Charneca nome: Urze"}, {"Charneca </ll> Urze <ll>", ""},
		{"stem <3 m and >2 m", ""}, {"<b", ""}, {"a <undescribed> form", ""},
		{`caf\u00e9`, "text-code café"}, {`caf\xe9`, "text-code café"}, {"line_x000D_", "text-code line"}, {"a_x00E9_b", "text-code aéb"}, {"S%C3%A3o Jo%C3%A3o", "text-code São João"}, {`S\u00e3o Br\u00e1s`, "text-code São Brás"},
		// Accents beside their letters.
		{"Sa˜o Joa˜o", "text-accent São João"}, {"S˜ao Jo˜ao", "text-accent São João"}, {"Gonc¸alves", "text-accent Gonçalves"}, {"M¨uller", "text-accent Müller"}, {"Mu¨ller", "text-accent Müller"}, {"Gereˆs", "text-accent Gerês"}, {"Vila Cha˜", "text-accent Vila Chã"}, {" \u0301a", "text-accent "}, {"esta\u0324\u0323o", "text-accent "}, {"Co\u033Blho", "text-accent "}, {"Riz\u0324a", ""}, {"\u0303o", "text-accent "},
		// Look-alikes.
		{"Quеrcus robur", "text-lookalike Quercus robur"}, {"Сarex flacca", "text-lookalike Carex flacca"}, {"Lindоsо", "text-lookalike Lindoso"}, {"Мontesinho", "text-lookalike Montesinho"}, {"Οphrys lutea", "text-lookalike Ophrys lutea"}, {"Моcква, Измайлово", "text-lookalike Москва, Измайлово"}, {"Αthos", "text-lookalike Athos"}, {"tο the river", "text-lookalike to the river"},
		// Ligatures and letters of formulas.
		{"ﬁeld", "text-ligature field"}, {"ﬂoodplain", "text-ligature floodplain"}, {"oﬃcinalis", "text-ligature officinalis"}, {"diﬀusa", "text-ligature diffusa"}, {"𝘘𝘶𝘦𝘳𝘤𝘶𝘴", "text-ligature Quercus"}, {"ﬅ", "text-ligature st"},
	} {
		got := found(t, c.cell)
		if got != c.want && !(c.cell == "atÃ© lÃ  em cima" && got == "text-mojibake até là em cima") {
			t.Errorf("%q: %q, want %q", c.cell, got, c.want)
		}
	}
}

// Where the whole table was misread its cells have one fault together; a few
// cells have one each.
func TestWholeTableMisread(t *testing.T) {
	cause := func(rows string) (n, with int) {
		_, all := readAll(t, "país,localidade,observações\n"+rows, Options{})
		for _, r := range all {
			for _, f := range r.Findings {
				n++
				if f.Cause != "" {
					with++
				}
			}
		}
		return n, with
	}
	if n, with := cause(strings.Repeat("Portugal,GerÃªs,flÃ´r\n", 4)); n != 8 || with != 8 {
		t.Errorf("%d findings, %d with a cause", n, with)
	}
	if n, with := cause(strings.Repeat("Portugal,GerÃªs,flÃ´r\n", 4) + strings.Repeat("Portugal,Gerês,São Bento\n", 3)); n != 8 || with != 0 {
		t.Errorf("%d findings, %d with a cause", n, with)
	}
	// Headings that were misread are known by what they were, and have no
	// second finding.
	tab, _ := readAll(t, misreadAs(t, charmap.Windows1252, "país;localidade;hábitat;Höhe (m);espécie\n"), Options{})
	if got := said(tab.Findings()); strings.Join(got, ",") != "text-mojibake error,text-mojibake error,text-mojibake error,text-mojibake error" || tab.Index("country") != 0 || tab.Index("habitat") != 2 || tab.Index("minimumElevationInMeters") != 3 {
		t.Errorf("%v", tab.Findings())
	}
}

// A heading of which letters were lost is known if only one word fits, and has
// no second finding.
func TestLostHeading(t *testing.T) {
	for _, c := range []struct {
		heading string
		column  int
	}{
		{"pa\ufffds", 1}, {"Pa?s", 1}, {"pa\ufffd\ufffds", 1}, {"munic\ufffdpio", 1}, {"esp?cie", 1}, {"observa\ufffd\ufffdes", 1}, {"L\ufffdnge", 1},
	} {
		tab, _ := readAll(t, "recordedBy,"+c.heading+",locality\n", Options{})
		f := tab.Findings()
		if !tab.Columns()[c.column].Known || len(f) == 0 || f[0].Rule != "text-replacement" {
			t.Errorf("%q: %+v %v", c.heading, tab.Columns()[c.column], f)
		}
		for _, f := range f[1:] {
			if f.Rule == "heading-unknown" || f.Severity > label.Note {
				t.Errorf("%q: %v", c.heading, f)
			}
		}
	}
	for _, h := range []string{"\ufffd\ufffd\ufffd", "x\ufffdy", "what?not"} {
		if got := lostHeading(h); got != "" {
			t.Errorf("%q is taken for %q", h, got)
		}
	}
}
