package place

// Lists are written as newVocabulary reads them: term: labels | spellings.
// Spellings beyond those of the source are from memory, and only such as can mean
// nothing else in their column.

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
nativeEndemic | native: endemic, endemic, nativo: endémico, natif : endémique
introduced | nat., alien, exotic, non-native, nonindigenous, no-nativa, exótica, introducida, introducido, introduzida, introduit, eingeführt
introducedAssistedColonisation | introduced: assisted colonisation, introduced: assisted colonization, assisted colonisation, assisted colonization, colonización asistida, colonisation assistée
vagrant | vagrant (casual), casual, transitoria
uncertain | unknown, cryptogenic, incierto, desconocido, incertain
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
agriculture
aquacultureMariculture
publicGardenZooAquaria
pet
farmedAnimals
forestry
fur | fur farms
horticulture
ornamentalNonHorticulture | ornamental purpose other than horticulture
research
liveFoodLiveBait | live food and live bait
otherEscape | other escape from confinement
contaminantNursery | contaminant nursery material
contaminateBait | contaminated bait
foodContaminant
contaminantOnAnimals
parasitesOnAnimals
contaminantOnPlants
parasitesOnPlants
seedContaminant
timberTrade
transportationHabitatMaterial
fishingEquipment | angling/fishing equipment
containerBulk
hitchhikersAirplane | hitchhikers in or on airplane
hitchhikersShip
machineryEquipment
people
packingMaterial
ballastWater | ship/boat ballast water
hullFouling | ship/boat hull fouling
vehicles
otherTransport | other means of transport
waterwaysBasinsSeas | interconnected waterways/basins/seas
tunnelsBridges | tunnels and land bridges
naturalDispersal
releaseInNature
escapeFromConfinement
transportContaminant
transportStowaway
corridor
unaided
intentional
unintentional
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
