package place

// Lists are written as newVocabulary reads them: term: labels | spellings.
// Spellings beyond those of the source are from memory, and only such as can mean
// nothing else in their column. Commas within a spelling are left out, for they
// part the spellings and say nothing. The three lists of TDWG stand in the order
// of the numbers in the terms' addresses.

const (
	basisSource = "Darwin Core list of terms (classes), 2023-09-18; GBIF basis of record vocabulary, 2024-02-19"
	basisList   = `
PreservedSpecimen | Espécime Preservado, Espécimen preservado, Spécimen en collection, preserved, herbarium specimen, herbarium sheet, exsiccata, 保存標本
FossilSpecimen | fossil, Espécime Fóssil, Espécimen fósil, Spécimen fossile, 化石標本
LivingSpecimen | living, Espécime Vivo, Espécimen vivo, Spécimen vivant, 活體標本
MaterialEntity
MaterialSample | Échantillon matériel, sample
MaterialCitation | Référence à un matériel, literature
HumanObservation | Observação por Humano, Observación humana, Observation humaine, 人為觀測
MachineObservation | Observação por Máquina, Observación con máquina, Observation faite par une machine, 機器觀測
Occurrence | Ocorrência
Organism
Event
Location
Taxon
Identification
GeologicalContext
MeasurementOrFact
ResourceRelationship
ChronometricAge
`

	typeSource = "GBIF nomenclatural type status vocabulary, 2021-01-18; its labels in the GBIF registry begin with a capital"
	typeList   = `
Allolectotype
Alloneotype
Allotype
Cotype
Epitype | epitypus
ExEpitype
ExHolotype
ExIsotype
ExLectotype
ExNeotype
ExParatype
ExSyntype
ExType
Hapantotype
Holotype | holotypus, holótipo, holotipo
Iconotype
Isolectotype | isolectotypus, isolectótipo, isolectotipo
Isoneotype | isoneotypus
Isoparatype | isoparatypus
Isosyntype | isosyntypus
Isoepitype | isoepitypus
Isotype | isotypus, isótipo, isotipo
Lectotype | lectotypus, lectótipo, lectotipo
Neotype | neotypus, neótipo, neotipo
NotAType
OriginalMaterial
Paralectotype | lectoparatype
Paraneotype | neoparatype
Paratype | paratypus, parátipo, paratipo
PlastoHolotype
PlastoIsotype
PlastoLectotype
PlastoNeotype
PlastoParatype
PlastoSyntype
Plastotype
SecondaryType
SupplementaryType
Syntype | syntypus, síntipo, sintipo
Topotype | topotypus
Type | typus
TypeSpecies
TypeGenus
`

	rankSource = "GBIF taxonomic rank vocabulary, 2015-04-24, with its preferred labels in other languages; nothotaxa after the botanical Code, art. H.3"
	rankList   = `
domain: dominio, domínio
superkingdom
kingdom: reino | regnum, Reich
subkingdom: subreino | subregnum
superphylum: superfilo, Überabteilung
phylum: filo, Stamm | division, divisio, división, Abteilung
subphylum: subfilo, Unterstamm | subdivision, subdivisio, subdivisión, Unterabteilung
superclass: superclase, superclasse
class: clase, Klasse, classe | classis
subclass: subclase, subclasse | subclassis, Unterklasse
supercohort: supercohorte, supercohors
cohort: cohorte, cohors, Kohorte
subcohort: subcohorte
superorder: superorden, Überordnung, superordem
order: orden, Ordnung, ordo, ordem | ord.
suborder: suborden, Unterordnung, subordem | subordo, subord.
infraorder: infraorden, infraordem
superfamily: superfamilia, Überfamilie, superfamília
family: familia, Familie, família | fam., famille
subfamily: subfamilia, Unterfamilie, subfamília | subfam., sous-famille
tribe: tribu, tribus, Tribus, tribo | trib.
subtribe: subtribu, Untertribus, subtribo | subtribus, subtrib.
supragenericname
genus: género, Gattung, gênero | gen., genre
subgenus: subgénero, Untergattung, subgênero | subgen., subg., sous-genre
section: sección, Sektion, secção | sectio, sect.
subsection: subsección, Untersektion, subsecção | subsectio, subsect.
series: serie, Serie, série | ser.
subseries: subserie, Unterserie, subsérie | subser.
speciesAggregate: grupo de especies, grupo de espécies | aggregate, species group, species complex, agg.
infragenericname
species: especie, Art, espécie | sp., spec., espèce
subspecificAggregate: grupo de subespecies, grupo de subespécies
infraspecificname
subspecies: subespecie, Unterart, subespécie | subsp., ssp., sous-espèce
infrasubspecificname | morph, morpha
variety: variedad, Varietät, variedade | varietas, var., variété
subvariety: subvariedad, Untervarietät, subvariedade | subvarietas, subvar.
form: forma, Form | f., fo., fma., forme
subform: subforma, Unterform | subf., subfo.
pathovar | pv.
biovar | bv.
chemovar
morphovar | morph, morpha
phagovar
serovar
chemoform
formaspecialis | forma specialis, f. sp., f.sp.
cultivarGroup: grupo de cultivares | grex, cultivar group
cultivar | cv.
strain: cepa
informal
unranked
nothogenus | nothogen.
nothospecies | nothosp.
nothosubspecies | nothosubsp., nothossp.
nothovariety | nothovar., nothovarietas
nothoform | nothof., nothoforma
`

	establishmentSource = "TDWG establishment means controlled vocabulary, 2025-06-12, with the alternative labels of the GBIF copy of 2025-07-10"
	establishmentList   = `
native | nat., native (indigenous), indigenous, nativo (autóctono), natif (indigène), autóctona, nativa, autóctone, indigène, einheimisch, 原生
nativeReintroduced | native: reintroduced, reintroduced, nativo: reintroducido, natif : réintroduit, reintroducida
introduced | nat., introduced (alien exotic non-native nonindigenous), alien, exotic, non-native, nonindigenous, no-nativa, exótica, introducida, introducido, introduzida, introduit, eingeführt
introducedAssistedColonisation | introduced: assisted colonisation, introduced: assisted colonization, assisted colonisation, assisted colonization, colonización asistida, colonisation assistée
vagrant | vagrant (casual), casual, transitoria
uncertain | uncertain (unknown cryptogenic), unknown, cryptogenic, incierto, desconocido, incertain
nativeEndemic | native: endemic, endemic, nativo: endémico, natif : endémique
`

	degreeSource = "TDWG degree of establishment controlled vocabulary, 2020-10-13, with the labels of the GBIF copy of 2025-07-10"
	degreeList   = `
native | native (category A), einheimisch, category A
captive | captive (category B1), gefangen, en cautividad, captif, category B1
cultivated | cultivated (category B2), gezüchtet, cultivado, cultivé, category B2
released | released (category B3), ausgesetzt, liberado, relâché, category B3
failing | failing (category C0), erfolglos, category C0
casual | casual (category C1), unbeständig, ocasional, category C1
reproducing | reproducing (category C2), fortpflanzend, category C2
established | established (category C3), etabliert, establecida, implanté, category C3
colonising | colonising (category D1), colonizing, kolonisierend, category D1
invasive | invasive (category D2), invasiv, invasivo, category D2
widespreadInvasive | widespread invasive (category E), verbreitet invasiv, category E
`

	pathwaySource = "TDWG pathway controlled vocabulary, 2020-10-13, as in the GBIF copy of 2025-07-10"
	pathwayList   = `
biologicalControl
erosionControl
fisheryInTheWild
hunting
landscapeImprovement
conservationOrWildlifeManagement
releasedForUse
otherIntentionalRelease
agriculture | agriculture (including biofuel feedstocks)
aquacultureMariculture
publicGardenZooAquaria | botanic garden/zoo/aquaria (excluding domestic aquaria), botanic garden/zoo/aquaria
pet | pet/aquarium/terrarium species (including live food for such species), pet/aquarium/terrarium species
farmedAnimals | farmed animals (including animals left under limited control)
forestry | forestry (including reforestation)
fur | fur farms
horticulture
ornamentalNonHorticulture | ornamental purpose other than horticulture
research | research and ex-situ breeding (in facilities), research and ex-situ breeding
liveFoodLiveBait | live food and live bait
otherEscape | other escape from confinement
contaminantNursery | contaminant nursery material
contaminateBait | contaminated bait
foodContaminant | food contaminant (including of live food)
contaminantOnAnimals | contaminant on animals (except parasites organisms transported by host/vector)
parasitesOnAnimals | parasites on animals (including organisms transported by host and vector)
contaminantOnPlants | contaminant on plants (except parasites species transported by host/vector)
parasitesOnPlants | parasites on plants (including species transported by host and vector)
seedContaminant
timberTrade
transportationHabitatMaterial | transportation of habitat material (soil vegetation wood etc), transportation of habitat material
fishingEquipment | angling/fishing equipment
containerBulk
hitchhikersAirplane | hitchhikers in or on airplane
hitchhikersShip | hitchhikers on ship/boat (excluding ballast water and hull fouling), hitchhikers on ship/boat
machineryEquipment
people | people and their luggage/equipment (in particular tourism), people and their luggage/equipment
packingMaterial | organic packing material in particular wood packaging, organic packing material
ballastWater | ship/boat ballast water
hullFouling | ship/boat hull fouling
vehicles | vehicles (car train etc.)
otherTransport | other means of transport
waterwaysBasinsSeas | interconnected waterways/basins/seas
tunnelsBridges | tunnels and land bridges
naturalDispersal | natural dispersal across borders of invasive alien organisms
releaseInNature
escapeFromConfinement
transportContaminant
transportStowaway
corridor
unaided
intentional
unintentional
corridorAndDispersal
`

	occurrenceSource = "Darwin Core list of terms (occurrenceStatus); GBIF occurrence status vocabulary, 2020-07-15"
	occurrenceList   = `
present | 1, presence, yes, presente, présent
absent | 0, absence, no, ausente
`

	sexSource = "GBIF sex vocabulary, with its labels as the GBIF registry writes them"
	sexList   = `
Male | m, m., ♂, male (♂), macho, mâle, männlich, masculino
Female | f, f., ♀, female (♀), hembra, fêmea, femelle, weiblich, femenino, feminino
Hermaphrodite | hermaphroditic, ⚥, Zwitter, hermafrodita
Undetermined | unbestimmt, indeterminado, undet.
Indeterminate
`

	dcmiSource = "DCMI type vocabulary, 2010-10-11"
	dcmiList   = `
Collection
Dataset
Event
Image
InteractiveResource
MovingImage
PhysicalObject
Service
Software
Sound
StillImage
Text
`
)
