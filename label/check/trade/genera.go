package trade

import (
	"strings"
	"sync"
)

// familyOf returns the family of a genus that all systems agree upon, up to the
// families of familyGroups, "" for one of which that is not known.
func familyOf(genus string) string {
	if family := generaFamilies()[genus]; family != "" {
		return family
	}
	return typeFamily(genus)
}

// typeFamily returns the family that is named after a genus, "" if none is: the
// family has the stem of the genus before -aceae (ICN Art. 18.1).
func typeFamily(genus string) string {
	if namesake[genus] {
		return ""
	}
	for _, ending := range []string{"a", "us", "um", "e", ""} {
		if stem, ok := strings.CutSuffix(genus, ending); ok && vascular()[stem] {
			return stem + "aceae"
		}
	}
	return ""
}

var vascular = sync.OnceValue(func() map[string]bool {
	m := map[string]bool{}
	for _, stem := range strings.Fields(vascularStems) {
		m[stem] = true
	}
	return m
})

// namesake are genera, two of the Fabaceae and one of fungi, with the stem of a
// family that is not named after them.
var namesake = map[string]bool{"Ebenus": true, "Mora": true, "Phellinus": true}

var generaFamilies = sync.OnceValue(func() map[string]string {
	m := map[string]string{}
	for line := range strings.Lines(strings.TrimSpace(generaTable)) {
		f := strings.Fields(line)
		for _, g := range f[1:] {
			m[g] = f[0] + "aceae"
		}
	}
	return m
})

// generaTable are large and common genera under the stem of their family, from
// memory. None is the name of a genus in another family too.
const generaTable = `
Aster Achillea Ageratum Ambrosia Anthemis Arctium Arnica Artemisia Aster Baccharis Bellis Bidens Calendula Carduus Carlina Carthamus Centaurea Chondrilla Cichorium Cirsium Conyza Coreopsis Cousinia Crepis Cynara Dahlia Echinops Erigeron Eupatorium Filago Gazania Gnaphalium Helianthus Helichrysum Hieracium Hypochaeris Inula Lactuca Leontodon Leucanthemum Mikania Onopordum Petasites Picris Pulicaria Santolina Saussurea Scorzonera Senecio Serratula Solidago Sonchus Tanacetum Taraxacum Tragopogon Tussilago Vernonia Xanthium Zinnia
Po Agrostis Aira Alopecurus Andropogon Aristida Arundo Avena Brachypodium Briza Bromus Calamagrostis Chloris Cynodon Cynosurus Dactylis Deschampsia Digitaria Echinochloa Elymus Eragrostis Festuca Glyceria Holcus Hordeum Koeleria Lolium Melica Milium Molinia Nardus Oryza Panicum Paspalum Pennisetum Phalaris Phleum Phragmites Poa Setaria Sorghum Sporobolus Stipa Themeda Triticum Vulpia Zea
Cyper Carex Cyperus Eleocharis Eriophorum Fimbristylis Rhynchospora Schoenus Scirpus Scleria
Junc Juncus Luzula
Fab Acacia Albizia Anthyllis Astragalus Bauhinia Caesalpinia Calliandra Cassia Cicer Colutea Coronilla Crotalaria Cytisus Dalbergia Desmodium Erythrina Genista Glycyrrhiza Hedysarum Indigofera Inga Lathyrus Lotus Lupinus Medicago Melilotus Mimosa Onobrychis Ononis Phaseolus Pisum Prosopis Robinia Senna Sesbania Tephrosia Trifolium Trigonella Ulex Vicia Vigna
Ros Agrimonia Alchemilla Amelanchier Cotoneaster Crataegus Filipendula Fragaria Geum Malus Potentilla Prunus Pyrus Rosa Rubus Sanguisorba Sorbus Spiraea
Brassic Aethionema Alyssum Arabidopsis Arabis Biscutella Brassica Capsella Cardamine Draba Erysimum Iberis Isatis Lepidium Matthiola Raphanus Rorippa Sinapis Sisymbrium Thlaspi
Lami Ajuga Ballota Galeopsis Glechoma Lamium Lavandula Marrubium Melissa Mentha Nepeta Ocimum Origanum Phlomis Prunella Rosmarinus Salvia Satureja Scutellaria Sideritis Stachys Teucrium Thymus
Api Angelica Anthriscus Apium Bupleurum Chaerophyllum Conium Daucus Eryngium Ferula Foeniculum Heracleum Peucedanum Pimpinella Sanicula Seseli Torilis
Caryophyll Arenaria Cerastium Dianthus Gypsophila Minuartia Sagina Saponaria Silene Spergula Spergularia Stellaria
Ranuncul Aconitum Adonis Anemone Aquilegia Caltha Clematis Consolida Delphinium Helleborus Nigella Pulsatilla Ranunculus Thalictrum
Eric Arbutus Calluna Erica Gaultheria Ledum Rhododendron Vaccinium
Boragin Anchusa Borago Cynoglossum Echium Lithospermum Myosotis Onosma Symphytum
Rubi Asperula Cinchona Coffea Galium Gardenia Ixora Palicourea Psychotria Rubia Sherardia
Euphorbi Acalypha Croton Euphorbia Jatropha Mercurialis Ricinus
Orchid Bulbophyllum Dactylorhiza Dendrobium Epidendrum Epipactis Habenaria Ophrys Orchis Platanthera Serapias
Betul Alnus Betula
Fag Castanea Fagus Quercus
Salic Populus Salix
Pin Abies Cedrus Larix Picea Pinus
Cupress Cupressus Juniperus
Solan Capsicum Datura Hyoscyamus Lycium Nicotiana Physalis Solanum
Convolvul Convolvulus Ipomoea
Gentian Gentiana Gentianella Swertia
Primul Androsace Cyclamen Lysimachia Primula
Polygon Fagopyrum Polygonum Rheum Rumex
Malv Abutilon Gossypium Hibiscus Malva Sida
Gerani Erodium Geranium Pelargonium
Plantagin Plantago Veronica Digitalis Linaria Antirrhinum
Scrophulari Verbascum Scrophularia
Orobanch Pedicularis Orobanche Euphrasia Rhinanthus Melampyrum
Campanul Campanula Jasione Lobelia Phyteuma
Myrt Eucalyptus Eugenia Myrcia Myrtus Psidium Syzygium
Melastomat Miconia Tibouchina Melastoma
Mor Ficus Morus
Urtic Urtica Parietaria Pilea
Viol Viola
Cist Cistus Helianthemum Halimium
Hyperic Hypericum
Onagr Epilobium Oenothera Fuchsia
Crassul Crassula Sedum Sempervivum Kalanchoe
Saxifrag Saxifraga
Lili Fritillaria Gagea Lilium Tulipa
Amaryllid Allium Narcissus
Asparag Asparagus Muscari Scilla Ornithogalum
Irid Crocus Gladiolus Iris Romulea
Ar Anthurium Arum Philodendron
Bromeli Tillandsia Vriesea
Piper Piper Peperomia
Laur Laurus Nectandra Ocotea Persea
Annon Annona Guatteria
Papaver Papaver Chelidonium Fumaria
Plumbagin Armeria Limonium
Ole Fraxinus Olea Ligustrum Jasminum
Rut Ruta Citrus Zanthoxylum
Prote Banksia Grevillea Hakea Protea Leucadendron
Cact Opuntia Mammillaria
Vit Vitis Cissus
Aspleni Asplenium
Dryopterid Dryopteris Polystichum
Athyri Athyrium
Cystopterid Cystopteris
Polypodi Polypodium
Pterid Pteris Adiantum
Blechn Blechnum
Equiset Equisetum
Selaginell Selaginella
Lycopodi Lycopodium
Amaranth Amaranthus Atriplex Chenopodium Salsola Suaeda
Caprifoli Lonicera Valeriana Scabiosa Knautia Dipsacus
Potamogeton Potamogeton
Typh Typha
Thymelae Daphne
Rhamn Rhamnus Ziziphus
Lin Linum
Polygal Polygala
Oxalid Oxalis
Begoni Begonia
Dioscore Dioscorea
Bignoni Tabebuia
Apocyn Asclepias Vinca Nerium
Acanth Acanthus Justicia Ruellia
Verben Verbena Lantana
Combret Combretum Terminalia
Anacardi Rhus Pistacia
Meli Melia Guarea Trichilia
Sapind Acer Serjania
Malpighi Byrsonima
Fab Parkinsonia Caragana Gleditsia Laburnum Retama Spartium Ceratonia Psoralea Galega Scorpiurus Hippocrepis Ornithopus Adenocarpus Lespedeza Dalea Baptisia Olneya
Aster Chuquiraga Espeletia Encelia Gaillardia Antennaria Brickellia Chrysothamnus Ericameria Gutierrezia Grindelia Heterotheca Liatris Rudbeckia Silphium Stevia Tagetes Leontopodium Celmisia Dimorphotheca Osteospermum Arctotis Ursinia Loricaria
Cact Carnegiea Stenocereus Pachycereus Echinocereus Ferocactus Cylindropuntia Trichocereus
Asparag Yucca Agave Polygonatum Maianthemum
Arec Washingtonia Phoenix Chamaerops Trachycarpus Cocos Euterpe Jubaea
Zygophyll Larrea Tribulus Fagonia
Brassic Hornungia Cochlearia Diplotaxis Hirschfeldia Malcolmia Teesdalia Noccaea Aubrieta Lunaria Eruca Cakile
Ros Polylepis Purshia Cercocarpus Dryas Acaena Aphanes Aronia Cydonia Holodiscus Pyracantha Sibbaldia
Po Bouteloua Muhlenbergia Ammophila Anthoxanthum Arrhenatherum Trisetum Nassella Cortaderia Chusquea Imperata Hyparrhenia Danthonia Sesleria Puccinellia
Rubi Cruciata Crucianella Spermacoce Cephalanthus
Eric Bejaria Corema Andromeda Kalmia Arctostaphylos Cassiope Phyllodoce Daboecia Cavendishia
Caryophyll Petrorhagia Moehringia Lychnis Agrostemma Holosteum Moenchia
Orchid Goodyera Neottia Cephalanthera Himantoglossum Anacamptis Gymnadenia Pleurothallis Masdevallia Oncidium Maxillaria Stelis Cattleya
Lami Horminum Clinopodium Prasium Cleonia Hyptis Hyssopus Lycopus Monarda Leonurus Micromeria
Api Crithmum Bunium Thapsia Oenanthe Ligusticum Laserpitium Smyrnium Scandix Cicuta Astrantia
Ranuncul Trollius Hepatica Actaea Eranthis Myosurus
Boragin Lithodora Eritrichium Pulmonaria Cerinthe Alkanna Amsinckia Cryptantha Mertensia
Gentian Centaurium Halenia Blackstonia
Primul Soldanella Dodecatheon
Onagr Clarkia Ludwigia Circaea
Crassul Umbilicus Echeveria Aeonium Rhodiola Dudleya
Irid Sisyrinchium Moraea Watsonia Freesia Tigridia
Amaryllid Pancratium Leucojum Galanthus Hippeastrum
Bromeli Puya Pitcairnia Guzmania Aechmea Billbergia
Melastomat Brachyotum Leandra Clidemia
Myrt Metrosideros Leptospermum Melaleuca
Prote Embothrium Lomatia Leucospermum
Cupress Thuja Chamaecyparis Calocedrus Austrocedrus
Pin Pseudotsuga Tsuga
Jugland Juglans Carya
Ole Syringa Phillyrea
Cist Fumana
Papaver Argemone Eschscholzia Glaucium Meconopsis
Solan Cestrum Brugmansia Petunia Atropa
Convolvul Calystegia Evolvulus
Cucurbit Bryonia Cucumis
Malv Lavatera Althaea Sphaeralcea
Rhamn Frangula Ceanothus
Aquifoli Ilex
Anacardi Schinus Cotinus
Sapind Cardiospermum Paullinia Dodonaea
Balsamin Impatiens
Polemoni Phlox Gilia
Loas Mentzelia
Commelin Tradescantia
`
