package trade

import (
	"strings"
	"sync"
)

// families are good names of families of plants: two that differ by a letter
// (Fagaceae, Fabaceae) are no misspelling.
var families = sync.OnceValue(func() map[string]bool {
	m := map[string]bool{}
	for _, stem := range strings.Fields(vascularStems + furtherStems) {
		m[stem+"aceae"] = true
	}
	for old := range alternative {
		m[old] = true
	}
	return m
})

// vascularStems are the names of families of today without -aceae: of seed plants
// after APG IV and Christenhusz et al. 2011, of ferns and lycophytes after PPG I.
// From memory.
const vascularStems = `
Acanth Achari Acor Actinidi Adox Aextoxic Aizo Akani Alismat Alseuosmi Alstroemeri Altingi Alzate Amaranth Amaryllid Amborell Anacampserot Anacardi Anarthri Ancistroclad Anisophylle Annon Aphanopetal Aphloi Api
Apocyn Apodanth Aponogeton Aquifoli Ar Arali Arec Argophyll Aristolochi Asparag Asphodel Asteli Aster Asteropei Atherospermat Austrobailey Balanop Balanophor Balsamin Barbey Barbeui Basell Bat Begoni Berberid
Berberidopsid Betul Biebersteini Bignoni Bix Blandfordi Bonneti Boragin Bory Brassic Bromeli Brunelli Bruni Burmanni Burser Butom Bux Byblid Cabomb Cact Calceolari Calophyll Calycanth Calycer Campanul Campynemat
Canell Cann Cannab Cappar Caprifoli Cardiopterid Caric Carlemanni Caryocar Caryophyll Casuarin Celastr Centrolepid Centroplac Cephalot Ceratophyll Cercidiphyll Chloranth Chrysobalan Circaeaster Cist Cleom Clethr Clusi
Colchic Columelli Combret Commelin Connar Convolvul Coriari Corn Corsi Corynocarp Cost Crassul Crossosomat Crypteroni Ctenoloph Cucurbit Cunoni Curtisi Cyclanth Cymodoce Cynomori Cyper Cyrill Cytin Daphniphyll
Dasypogon Datisc Degeneri Diapensi Dichapetal Didiere Dilleni Dioncophyll Dioscore Dipentodont Dipterocarp Dirachm Doryanth Droser Drosophyll Eben Ecdeiocole Elaeagn Elaeocarp Elatin Emblingi Eric Eriocaul
Erythroxyl Escalloni Eucommi Euphorbi Euphroni Eupomati Euptele Fab Fag Flagellari Fouquieri Frankeni Garry Geissolomat Gelsemi Gentian Gerani Gerrardin Gesneri Gisek Gomorteg Goodeni Goupi Grossulari Grubbi
Guamatel Gunner Gyrostemon Haemodor Halophyt Haloragid Hamamelid Hanguan Haptanth Heliconi Helwingi Hernandi Himantandr Hu Humiri Hydatell Hydnor Hydrange Hydrocharit Hydrole Hydrostachy Hyperic Hypoxid Icacin
Irid Irvingi Itea Ite Ixioliri Ixonanth Joinville Jugland Junc Juncagin Kew Kirki Koeberlini Krameri Lacistemat Lactorid Lami Lanari Lardizabal Laur Lecythid Lentibulari Lepidobotry Lili Lime
Limnanth Lin Linderni Loas Logani Lophiocarp Lophopyxid Loranth Lowi Lythr Magnoli Malpighi Malv Marant Marcgravi Martyni Maundi Mayac Maz Melanthi Melastomat Meli Melianth Menisperm Menyanth Metteniusi
Microte Mitrastemon Mollugin Monimi Montini Mor Moring Muntingi Mus Myodocarp Myric Myristic Myrothamn Myrt Nartheci Nelumbon Nepenth Neurad Nitrari Nothofag Nyctagin Nymphae Nyss Ochn Olac Ole
Onagr Oncothec Opili Orchid Orobanch Oxalid Paeoni Pand Pandan Papaver Paracryphi Passiflor Paulowni Pedali Penae Pennanti Pentaphragmat Pentaphylac Penthor Per Peridisc Petermanni Petenae
Petrosavi Phellin Philesi Philydr Phrym Phyllanth Phyllonom Physen Phytolacc Picramni Picrodendr Piper Pittospor Plantagin Platan Plocosperm Plumbagin Po Podostem Polemoni Polygal Polygon Pontederi Portulac Posidoni
Potamogeton Primul Prote Putranjiv Quillaj Rafflesi Ranuncul Rapate Resed Restion Rhabdodendr Rhamn Rhipogon Rhizophor Roridul Ros Rousse Rubi Ruppi Rut Sabi Salic Salvador Santal Sapind Sapot Sarcobat Sarcolaen
Sarraceni Saurur Saxifrag Scheuchzeri Schisandr Schlegeli Schoepfi Scrophulari Setchellanth Simaroub Simmondsi Siparun Sladeni Smilac Solan Sphaerosepal Sphenocle Stachyur Staphyle Stegnospermat Stemon Stemonur
Stilb Strasburgeri Strelitzi Stylidi Styrac Surian Symploc Talin Tamaric Tapisci Tecophilae Tetracarpae Tetrachondr Tetramel Tetramerist The Thesm Thismi Thomandersi Thurni Thymelae Ticodendr Tofieldi Torricelli
Tovari Trigoni Triurid Trochodendr Tropaeol Typh Ulm Urtic Vahli Vellozi Verben Viburn Viol Vit Vochysi Winter Xanthorrhoe Xeronemat Xyrid Zingiber Zoster Zygophyll
Araucari Cephalotax Cupress Cycad Ephedr Ginkgo Gnet Pin Podocarp Sciadopity Tax Welwitschi Zami
Lycopodi Isoet Selaginell Equiset Psilot Ophiogloss Maratti Osmund Hymenophyll Matoni Dipterid Gleicheni Lygodi Schizae Anemi Salvini Marsile Thyrsopterid Loxsomat Culcit Plagiogyri Ciboti Metaxy Dicksoni Cyathe
Saccolomat Cystodi Lonchitid Lindsae Pterid Dennstaedti Cystopterid Rhachidosor Diplaziopsid Desmophlebi Hemidicty Aspleni Woodsi Onocle Blechn Athyri Thelypterid Didymochlaen Hypodemati
Dryopterid Nephrolepid Lomariopsid Tectari Oleandr Davalli Polypodi Adiant Aspidi Parkeri
`

// furtherStems are a choice of those of bryophytes, lichens, fungi and algae, and
// some that older books have. From memory.
const furtherStems = `
Acer Agav Antheric Apostasi Viviani Alli Asclepiad Buddlej Bombac Callitrich Chenopodi Convallari Cuscut Dipsac Dracaen Empetr Flacourti Globulari Hippocastan Hippurid Hyacinth Hydrophyll Lemn Lobeli Mimos Caesalpini
Myrsin Najad Papilion Parnassi Pyrol Punic Rusc Sambuc Sterculi Taxodi Tili Trap Trilli Valerian Visc Zannichelli Monotrop Nolan Alo Ehreti Cochlosperm Turner Sonnerati Lee Melanophyll
Sphagn Polytrich Funari Grimmi Dicran Potti Bry Mni Hypn Brachytheci Amblystegi Leucobry Orthotrich Bartrami Fissident Encalypt Necker Thuidi Hylocomi Marchanti Ricci Jungermanni Lejeune Frullani Radul Porell
Metzgeri Pelli Plagiochil Scapani Lophocole Cephalozi Calypogei Aneur Anthocerot Fontinal Plagiotheci Climaci Leucodont Rhabdoweisi Ditrich Hedwigi
Parmeli Clad Cladoni Physci Lecanor Lecide Ramalin Teloschist Peltiger Pertusari Graphid Verrucari Umbilicari Stereocaul Collemat Nephromat Lobari Roccell Arthoni Usne Rhizocarp Acarospor Candelari Porpidi Bacidi Megaspor
Agaric Amanit Bolet Russul Tricholomat Polypor Hygrophor Cortinari Physalacri Psathyrell Strophari Inocyb Entolomat Plute Marasmi Mycen Suill Gomphidi Sclerodermat Geastr Lycoperd Phall Cantharell Clavari
Ganodermat Hymenochaet Stere Cortici Tremell Auriculari Exidi Puccini Melampsor Pucciniastr Phragmidi Ustilagin Tilleti Erysiph Xylari Hypoxyl Diatryp Nectri Hypocre Clavicipit Helvell Morchell Peziz Pyronemat
Sarcoscyph Heloti Sclerotini Rhytismat Mycosphaerell Pleospor Botryosphaeri Ophiostomat Chaetomi Sordari Trichocom Aspergill Fuligin Trichi Physar Stemonitid
Pottiell Splachn Meesi Aulacomni Hypnodendr Racopil Rhizogoni Orthorrhynchi Pterobry Meteori Pilotrich Hookeri Daltoni Leptodont Anomodont Rhytidi Cryphae Myrini Fabroni Stereophyll Sematophyll Entodont Leske
Fumari Trapell Thesi Comandr Cichori Cordi Corid Coryl Epacrid Hemerocallid Limnocharit Myopor Pegan Periploc Philadelph Phormi Podophyll Spargani Strychn Theophrast Ternstroemi Vaccini Nostoc Oscillatori Scytonemat Cystoseir Sphacelari Timmi Tetraphid Buxbaumi Diphysci Andreae Takaki Oedipodi Seligeri Erpodi Calymper Leucophan Bruchi Schistosteg Ptychomitri Archidi Gigaspermat Disceli Catoscopi
Geocalyc Gymnomitri Solenostomat Lepidozi Herbert Trichocole Ptilidi Lepicole Schistochil Antheli Blasi Fossombroni Pallavicini Moercki Monocle Targioni Aytoni Cleve Conocephal Lunulari Corsini Oxymitr Sphaerocarp Dumortier Notothylad Dendrocerot Phymatocerot Myli Adelanth Balantiopsid Goebeliell
Caloplac Pannari Coccocarpi Placynthi Heppi Lichin Fuscide Ophioparm Haematommat Ochrolechi Megalari Catillari Psor Trapeli Icmadophil Baeomycet Thelotremat Gyalect Coenogoni Pilocarp Ectolechi Chrysotrich Monoblasti Pyrenul Trypetheli Arthopyreni Mycocalici Calici Sphaerophor Mycoblast Hymeneli Aspicili Schaereri
Fuc Ulv Cladophor Corallin Sargass Dictyot Laminari Gelidi Gigartin Rhodomel Cerami Bangi Codi Caulerp Char Gracilari Palmari Ectocarp Delesseri
`

// oneSystem reports whether two families are one in some system of today or of old,
// so that a genus may stand under either. Families with two names count for both.
func oneSystem(a, b string) bool {
	a, b = modern(a), modern(b)
	for _, n := range systems()[a] {
		for _, m := range systems()[b] {
			if n == m {
				return true
			}
		}
	}
	return false
}

// systems tells for each family which groups of familyGroups hold it.
var systems = sync.OnceValue(func() map[string][]int {
	m := map[string][]int{}
	for i, line := range strings.Split(strings.TrimSpace(familyGroups), "\n") {
		for _, stem := range strings.Fields(line) {
			m[stem+"aceae"] = append(m[stem+"aceae"], i)
		}
	}
	return m
})

// familyGroups are families that one system or another has joined or parted, a
// group a line, as vascularStems writes them: Engler, Cronquist and APG I to IV, for
// ferns Copeland and PPG I. From memory.
const familyGroups = `
Fab Caesalpini Mimos Papilion
Lili Amaryllid Asparag Asphodel Alli Hyacinth Colchic Melanthi Smilac Alstroemeri Convallari Rusc Trilli Agav Hemerocallid Xanthorrhoe Nartheci Tofieldi Hypoxid Philesi Luzuriag Dracaen Alo Aphyllanth Uvulari Calochort Tecophilae Blandfordi Asteli Phormi Antheric Petrosavi Themid Lomandr Eriosperm Haemodor
Scrophulari Plantagin Orobanch Linderni Phrym Calceolari Paulowni Veronic Maz Stilb Buddlej Myopor Globulari Callitrich Hippurid Antirrhin Selagin Schlegeli Rhinanth Bignoni Gesneri
Lami Verben Vitic Dicrastylid Phrym
Acanth Avicenni Verben
Malv Sterculi Tili Bombac Muntingi Byttneri Durion Cytin Elaeocarp
Amaranth Chenopodi Achatocarp Salsol
Apocyn Asclepiad Periploc Logani Gelsemi Gentian
Caprifoli Dipsac Valerian Adox Sambuc Viburn Linnae Dierville Morin
Boragin Hydrophyll Ehreti Heliotropi Cordi Codon Namac Lenno Hydrole
Primul Myrsin Theophrast Samol
Eric Pyrol Monotrop Empetr Epacrid Vaccini Clethr
Sapind Acer Hippocastan Aescul Meli
Salic Flacourti Achari Scyphostegi Samyd
Euphorbi Phyllanth Picrodendr Putranjiv Per Bux Daphniphyll
Urtic Cecropi Mor Ulm Celtid Cannab
Saxifrag Grossulari Hydrange Parnassi Penthor Escalloni Ite Philadelph Crassul Montini Vahli Brexi Tetracarpae
Celastr Hippocrate Parnassi Brexi Stackhousi Icacin
Cupress Taxodi
Tax Cephalotax
Podocarp Phylloclad
Brassic Cappar Cleom
Berberid Podophyll Nandin Leontic Ranuncul Glaucidi Circaeaster
Papaver Fumari Hypeco Pteridophyll
Nymphae Cabomb Nelumbon Barclay
Typh Spargani
Ar Lemn Acor
Hydrocharit Najad
Potamogeton Zannichelli Zoster Ruppi Cymodoce Posidoni Juncagin Scheuchzeri
Alismat Limnocharit Butom
Zingiber Cost
Mus Strelitzi Heliconi Lowi
Corn Nyss Alangi Mastixi Davidi Garry Aucub Griselini Curtisi Helwingi
Santal Visc Loranth Opili Eremolep Olac Ximeni Schoepfi Misodendr Thesi Comandr Cervantesi
Convolvul Cuscut
Solan Nolan Montini Duckeodendr Goetze
Campanul Lobeli Cyphi Nemacladac Sphenocle
Gerani Hypseocharit Ledocarp Vivian Viviani
Lythr Sonnerati Punic Trap
Malpighi Elatin
Clusi Hyperic Calophyll Bonneti
The Ternstroemi Pentaphylac Sladeni Symploc
Rut Cneor Simaroub Ptaeroxyl Flindersi
Anacardi Pistaci Juliani
Rhamn Frangul
Ros Amygdal Mal Pom Chrysobalan Quillaj
Onagr Trap Haloragid Gunner
Portulac Montia Monti Talin Anacampserot Didiere Cact Basell
Phytolacc Petiveri Rivin Barbeui Gisek Lophiocarp Mollugin Aizo Lime Stegnospermat Microte Agdesti Sarcobat
Caryophyll Illecebr Silen Alsin Paronychi Mollugin
Passiflor Turner Malesherbi
Viol Leoni
Zygophyll Nitrari Pegan Balanit Tribul Tetradiclid
Dioscore Tacc Trichopod
Arali Hydrocotyl Api Myodocarp
Myrt Heteropyxid Psiloxyl
Melastomat Memecyl
Bix Cochlosperm Diegodendr
Fag Nothofag
Betul Coryl Carpin
Illici Schisandr Magnoli Winter
Aristolochi Hydnor Lactorid Asar
Cist Cytin
Polygon Eriogon
Po Bambus
Restion Centrolepid Anarthri
Pontederi Philydr
Burmanni Thismi Corsi
Irid Geosirid
Orchid Apostasi Cypripedi
Pedali Martyni Trapell
Staphyle Tapisci
Haloragid Hippurid
Hamamelid Altingi Rhodolei
Polypodi Dryopterid Davalli Grammitid Aspleni Blechn Thelypterid Athyri Woodsi Aspidi Pterid Adiant Dennstaedti Lindsae Vittari Sinopterid Cryptogramm Oleandr Nephrolepid Lomariopsid Tectari Cystopterid Onocle Hypolepid Platyzomat Elaphogloss Drynari Gymnogramm Hemionitid Negripterid Parkeri Loxogramm Gleicheni Peranem Didymochlaen Hypodemati Lomari
Cyathe Dicksoni Ciboti Thyrsopterid Culcit Lophosori Metaxy Loxsomat Plagiogyri
Lycopodi Huperzi Urostachy Selaginell
Ophiogloss Botrychi Helminthostachy
Schizae Lygodi Anemi
Marsile Pilulari Salvini Azoll
Hymenophyll Trichoman
Parmeli Usne Alectori Hypogymni
Clad Cladoni
Physci Calici
Teloschist Letrouiti Caloplac
Dicran Leucobry Rhabdoweisi Ditrich Dicranell
Bry Mni Mielichhoferi
Amblystegi Brachytheci Hypn Thuidi Calliergon Campyli Leske Hylocomi Rhytidi Plagiotheci Pylaisi
Potti Trichostomat Cinclidot
Jungermanni Gymnomitri Solenostomat Scapani Lophozi Anastrophyll Lophocole Geocalyc Plagiochil
`
