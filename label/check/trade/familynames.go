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
Petiveri Francoa Nam Codon Heliotropi Hoplestigmat Wellstedi Coldeni Stixid Tiganophyt Peltanther Wighti Rehmanni Pteleocarp Erythropal Strombosi Coul Aptandr Octoknem Ximeni Amphorogyn Cervantesi Misodendr Macarthuri Agdestid Rivin Didymel Nanode Ixerb Ledocarp Melianth Greyi Bersam Huperzi Azoll Botrychi
Coleospori Cronarti Chaconi Raveneli Uropyxid Phakopsor Mikronegeri Sphaerophragmi Entylomat Glomospori Urocystid Anthracoide Microbotry Doassansi Exobasidi Microstromat Melanotaeni Georgefischeri Brachybasidi Sebacin Tulasnell Ceratobasidi Dacrymycet Sirobasidi
Hydnangi Hymenogastr Pleurot Omphalot Lyophyll Bolbiti Fistulin Schizophyll Crepidot Cyphell Nidulari Tulostomat Battarre Macrocystidi Tubari Pseudoclitocyb Biannulari Callistospori Tapinell Paxill Gyropor Rhizopogon Diplocystidi Serpul Coniophor Hygrophoropsid Bondarzewi Herici Auriscalpi Albatrell Echinodonti Lachnocladi Peniophor Meruli Phanerochaet Meripil Fomitopsid Irpic Steccherin Laetipor Podoscyph Cerren Gloeophyll Thelephor Banker Hydn Clavulin Gomph Ramari Lentari Clavariadelph Hysterangi Atheli Amylocortici Typhul Pterul Stephanospor Gallace Protophall Clathr Porothele
Leoti Caloscyph Sarcosomat Chorioactid Tarzett Otide Discin Tuber Glazi Ascobol Ascodesmid Hyaloscyph Lachn Dermate Ploettner Vibrisse Rutstroemi Cudoni Geogloss Phacidi Tympanid Godroni Cenangi Hemiphacidi Mollisi Drepanopeziz Chlorocibori Pezizell Taphrin Protomycet
Diaporth Gnomoni Vals Cryphonectri Melanconid Melanconi Cytospor Glomerell Plectosphaerell Bionectri Cordycipit Ophiocordycipit Tubeufi Venturi Didymell Didymosphaeri Phaeosphaeri Lophiostomat Montagnul Cucurbitari Leptosphaeri Dothide Dothior Teratosphaeri Cladospori Capnodi Elsino Microthyri Micropeltid Hysteri Mytilinidi Patellari Trichosphaeri Chaetosphaeri Lasiosphaeri Nitschki Coronophor Magnaporth Pyriculari Phyllachor Microasc Ceratocystid Halosphaeri Apiospor Amphisphaeri Sporocad Graphostromat Chaetothyri Herpotrichiell
Mucor Rhizopod Cunninghamell Pilobol Glomer Acaulospor Gigaspor Endogon Entomophthor Batrachochytri Chytridi Synchytri Physoderm Peronospor Albugin Pythi Saprolegni Plasmodiophor Physar Didymi Reticulari Tubifer Arcyri Ceratiomyx Echinosteli Lice Dictydi Cribrari
Gomphill Porin Strigul Stictid Phlyctid Lecanographa Roccellograph Opegraph Sporastati Ropalospor Scoliciospor Malmide Ramboldi Byssolomat Tephromelat Protoparmeli Arctomi Massalongi Koerberi Peltul Sarramean Thrombi Xylograph Brigantiae Letrouiti Squamarin Biatorell Coniocyb Leprocaul Elixi Gypsoplac Alectori Hypogymni Anzi Adelococc Dacampi Strangospor Thelenell Protothelenell Naetrocymb Celotheli Varicellari Stict Biator Carbonicol Harpidi Aphanopsid Cystocole Asterothyri
Anastrophyll Lophozi Arnelli Haplomitri Treubi Cephaloziell Chonecole Jamesoniell Endogemmat Hygrobiell Jackiell Southby Harpanth Pseudolepicole Mastigophor Saccogyn Jubul Cleve Wiesnerell Exormothec Marchanti Neohodgsoni Makino Phyllothalli Hymenophyt Leiosporocerot Lepidolaen Vetaformat
Pylaisi Pylaisiadelph Calliergon Scorpidi Lembophyll Thamnobry Antitrichi Pterigynandr Rigodi Theli Heterocladi Habrodont Echinodi Trachypod Prionodont Regmatodont Myuri Pseudoleskell Pseudoleske Helodi Dicranell Oncophor Aongstroemi Rhachitheci Ephemer Cinclidot Splachnobry Flexitrich Scouleri Saelani Mielichhoferi Leptostomat Phyllogoni Hypopterygi Cyrtopod Trachylomat Ambuchanani Flatbergi Drummondi Wardi Jocheni Symphyodont Neorutenbergi Ptychomni Garovagli Campyli Stereodont Cratoneur Callicladi Chrysoblastell Distichi Pleuridi Amphidi
Acrochaeti Polyphys Dasyclad Udote Halimed Bryopsid Derbesi Valoni Siphonoclad Boodle Anadyomen Phyllophor Hemidisc Chordari Scytosiphon Alari Lessoni Desmaresti Dasy Wrangeli Callithamni Spyridi Champi Lomentari Rhodymeni Fauche Plocami Bonnemaisoni Halymeni Grateloupi Kallymeni Sebdeni Solieri Cystocloni Hypne Furcellari Polyid Nemastomat Schizymeni Galaxaur Liagor Scinai Batrachosperm Lemane Hildenbrandi Hapalidi Lithothamni Mesophyll Sporolith Peyssonneli Pterocladi Gelidiell Erythrotrichi Stylonemat Porphyridi Himanthali Durvillae Cutleri Ralfsi Stypocaul Cladosteph Chord Ulotrich Monostromat Kornmanni Prasiol Zygnemat Desmidi Mesotaeni Closteri Oedogoni Coleochaet Chaetophor Trentepohli Volvoc Hydrodicty Scenedesm Chlorell Vaucheri Tribonemat Botrydi Navicul Fragilari Bacillari Cymbell Gomphonemat Surirell Melosir Thalassiosir Coscinodisc Chaetocerot Eunoti Achnanth Coccone Pinnulari Stauroneid Rivulari Stigonemat Chroococc Microcyst Phormidi Hapalosiphon Tolypotrich Goniodomat Gymnodini Peridini Cerati Pyrocyst
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
Melampsor Cronarti Coleospori Pucciniastr Mikronegeri Chaconi
Puccini Phragmidi Raveneli Uropyxid Phakopsor Chaconi Sphaerophragmi
Ustilagin Tilleti Anthracoide Urocystid Glomospori Microbotry Entylomat Melanotaeni Doassansi
Agaric Psathyrell Coprin Lycoperd Tulostomat Battarre Nidulari Lepiot
Tricholomat Marasmi Mycen Omphalot Physalacri Hydnangi Lyophyll Pseudoclitocyb Biannulari Callistospori Hygrophor Pleurot Porothele Macrocystidi
Strophari Hymenogastr Cortinari Crepidot Bolbiti Inocyb Tubari
Bolet Suill Gyropor Paxill Gomphidi Tapinell Rhizopogon Diplocystidi Sclerodermat
Polypor Fomitopsid Ganodermat Meruli Meripil Hymenochaet Phanerochaet Steccherin Irpic Cerren Laetipor Podoscyph Gloeophyll Bondarzewi Fistulin Schizophyll Albatrell
Cortici Stere Peniophor Hymenochaet Meruli Phanerochaet Coniophor Atheli Thelephor
Clavari Clavulin Typhul Ramari Gomph Clavariadelph Lentari Pterul
Thelephor Banker Hydn Herici Auriscalpi
Phall Clathr
Auriculari Exidi Tremell
Helvell Morchell Discin Peziz Pyronemat Otide Sarcoscyph Sarcosomat Tarzett Caloscyph Ascobol
Heloti Hyaloscyph Lachn Dermate Sclerotini Leoti Rutstroemi Mollisi Ploettner Drepanopeziz Vibrisse Tympanid Cenangi Phacidi Pezizell
Xylari Hypoxyl Graphostromat Diatryp
Nectri Hypocre Bionectri Clavicipit Cordycipit Ophiocordycipit
Mycosphaerell Teratosphaeri Cladospori
Pleospor Didymell Phaeosphaeri Leptosphaeri Cucurbitari Lophiostomat Montagnul Didymosphaeri
Diaporth Gnomoni Vals Melanconid Cryphonectri Cytospor
Lecide Porpidi Bacidi Catillari Rhizocarp Psor Biatorell Lecanor Ramalin Trapeli Mycoblast Hymeneli Stereocaul Fuscide Scoliciospor Pilocarp Tephromelat Ophioparm Malmide Ramboldi Biator
Lecanor Haematommat Aspicili Hymeneli Megaspor Candelari Acarospor Ochrolechi Pertusari Tephromelat Varicellari
Collemat Pannari Placynthi Arctomi Massalongi Koerberi Coccocarpi
Lobari Stict Peltiger Nephromat
Thelotremat Graphid Gomphill Asterothyri
Calici Mycocalici Sphaerophor Coniocyb
Roccell Opegraph Arthoni Roccellograph Lecanographa Chrysotrich
Stereocaul Squamarin Leprocaul
Parmeli Anzi Protoparmeli
Cystoseir Sargass Fuc
Cerami Callithamni Wrangeli Spyridi Delesseri Dasy
Corallin Hapalidi Lithothamni Mesophyll Sporolith
Champi Lomentari Rhodymeni
Solieri Cystocloni Hypne
Gelidi Gelidiell Pterocladi
Liagor Galaxaur Scinai
Laminari Alari Lessoni Chord
Chordari Scytosiphon Ectocarp Ralfsi
Ulv Monostromat Ulotrich Kornmanni
Udote Halimed Codi Caulerp Bryopsid
Halymeni Grateloupi Kallymeni
Anomodont Thuidi Leske Theli
Necker Thamnobry Lembophyll Leucodont Leptodont Anomodont
Funari Ephemer Gigaspermat
Seligeri Grimmi Ptychomitri
Hypn Plagiotheci Sematophyll Pylaisiadelph Entodont Stereodont Pylaisi Myuri Callicladi Pterigynandr
Amblystegi Cratoneur Scorpidi Calliergon Helodi
Leske Pseudoleske Pseudoleskell Thuidi Pterigynandr Heterocladi
Dicran Aongstroemi Oncophor Amphidi
Ditrich Distichi Pleuridi Flexitrich Saelani
Cephalozi Cephaloziell Odontoschismat
Lejeune Jubul Frullani
Jungermanni Jamesoniell Adelanth Arnelli Southby Endogemmat Myli Antheli Cephalozi
Geocalyc Harpanth Lophocole Saccogyn
Marchanti Conocephal Lunulari Aytoni Cleve Targioni Dumortier Wiesnerell
Ricci Oxymitr
Pelli Fossombroni Pallavicini Moercki
Potti Ephemer Cinclidot Splachnobry
`
