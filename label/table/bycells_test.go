package table

import (
	"cornerslip/label"
	"strings"
	"testing"
)

// TestByCells: what a plain word at the head of a column means is held to the
// column's cells.
func TestByCells(t *testing.T) {
	for _, c := range []struct{ table, want string }{
		// A question is answered by yes and no, and names no type.
		{"scientificName,Type specimen?,country\nErica arborea,N,PT\nErica ciliaris,N,PT\nErica lusitanica,Y,PT\n", "scientificName ? country"},
		{"scientificName,Type specimen?,country\nErica arborea,holotype,PT\nErica ciliaris,isotype,PT\nErica lusitanica,,PT\n", "scientificName typeStatus country"},
		{"scientificName,Type specimen?,typeStatus\nErica arborea,N,\nErica ciliaris,N,\nErica lusitanica,N,isotype of Erica lusitanica Rudolphi\n", "scientificName ? typeStatus"},
		// Signs on a plant are no days of a month.
		{"country,Tags\nPT,few\nPT,some\nPT,abundant\n", "country ?"},
		{"country,Tag\nPT,3\nPT,14\nPT,30\n", "country day"},
		// How many duplicates there are, and who has them.
		{"country,Duplicados\nPT,3\nPT,1\nPT,12\nPT,2\n", "country ?"},
		{"country,Duplicados\nPT,LISU\nPT,COI|PO\nPT,2\nPT,PO\n", "country duplicatesTo"},
		// Several things under one heading: places, and what may stand with them.
		{"species,\"Town, County, State\"\nCarex acuta,\"Lindoso, Ponte da Barca, Minho\"\n", "scientificName locality"},
		{"species,Locality and habitat\nCarex acuta,\"Lindoso, oak wood\"\n", "scientificName locality"},
		{"species,\"Locality, date\"\nCarex acuta,\"Lindoso, 14.v.2026\"\n", "scientificName locality"},
		{"species,\"Collector, number, herbarium\"\nCarex acuta,Almeida 214 (VDOURA)\n", "scientificName collectorAndNumber"},
		{"species,\"Collector, no.\",country\nCarex acuta,Almeida 214,PT\nCarex acuta,Almeida & R. Prates 215,PT\nCarex acuta,I. Almeida 2025-7,PT\n", "scientificName collectorAndNumber country"},
		{"species,Specimen number,country\nCarex acuta,Almeida 214,PT\nCarex acuta,Almeida 215,PT\nCarex acuta,Prates 7,PT\n", "scientificName collectorAndNumber country"},
		{"species,Specimen number,country\nCarex acuta,VDOURA 2140,PT\nCarex acuta,VDOURA 2150,PT\nCarex acuta,VDOURA 2170,PT\n", "scientificName catalogNumber country"},
		{"species,Coll. no.,collector\nCarex acuta,Almeida 214,I. Almeida\nCarex acuta,Almeida 215,I. Almeida\nCarex acuta,Prates 7,R. Prates\n", "scientificName recordNumber recordedBy"},
		{"species,\"Locality, collector\"\nCarex acuta,\"Lindoso, Almeida\"\n", "scientificName locality"},
		{"species,Loc. (voucher)\nCarex acuta,\"Lindoso (Almeida 214, VDOURA)\"\n", "scientificName locality"},
		{"species,Collector(s) & no.,Site(s)\nCarex acuta,Almeida 214,Lindoso\n", "scientificName collectorAndNumber locality"},
		{"species,Voucher¹,Herbarium²,Date*\nCarex acuta,Almeida 214,VDOURA,2026-05-14\n", "scientificName collectorAndNumber institutionCode eventDate"},
		{"species,Provenance; voucher\nCarex acuta,\"Portugal: Lindoso; Almeida 214 (VDOURA)\"\n", "scientificName locality"},
		{"species,Collector (collection #)\nCarex acuta,Almeida (#214)\n", "scientificName collectorAndNumber"},
		{"species,Det. by/date\nCarex acuta,R. Prates 1999\n", "scientificName identifiedBy"},
		{"species,Det./date\nCarex acuta,R. Prates 1999\nCarex nigra,R. Prates 1999\nCarex flacca,I. Almeida 2001\n", "scientificName identifiedBy"},
		{"species,Det./date\nCarex acuta,1999\nCarex nigra,1999\nCarex flacca,2001\n", "scientificName dateIdentified"},
		{"species,provenance\nCarex acuta,\"Portugal, Lindoso\"\nCarex nigra,\"Portugal, Parada\"\nCarex flacca,\"Spain, Entrimo\"\n", "scientificName locality"},
		{"species,provenance\nCarex acuta,W\nCarex nigra,W\nCarex flacca,Z\n", "scientificName provenance"},
		{"genus,species,infra,ctry\nCarex,acuta,,PT\n", "genus specificEpithet infraspecificEpithet country"},
		{"species,\"Locality, family\"\nCarex acuta,\"Lindoso, Cyperaceae\"\n", "scientificName ?"},
		// Collectors with their numbers, under a word for one of them.
		{"species,collector,voucher,country\nCarex acuta,Almeida 2012-034,VDOURA,PT\nCarex acuta,Almeida 2012-035,VDOURA,PT\nCarex acuta,I. Prates 7,COI,PT\n", "scientificName collectorAndNumber institutionCode country"},
		{"species,collector,country\nCarex acuta,I. Almeida,PT\nCarex acuta,I. Almeida 35,PT\nCarex acuta,I. Prates,PT\n", "scientificName recordedBy country"},
		// Numbers of sheets under a word for vouchers.
		{"species,Herbarium voucher,country\nCarex acuta,VDOURA 00123,PT\nCarex acuta,VDOURA 00124,PT\nCarex acuta,VDOURA 00125,PT\n", "scientificName catalogNumber country"},
		{"species,Voucher,country\nCarex acuta,IMA 123,PT\nCarex acuta,IMA 124,PT\nCarex acuta,IMA 125,PT\n", "scientificName collectorAndNumber country"},
		// Sentences are no dates.
		{"species,Collection data\nCarex acuta,\"Portugal, Lindoso, 320 m, 12 May 2014\"\nCarex acuta,\"Portugal, Parada, 350 m, 13 May 2014\"\nCarex acuta,\"Spain, Entrimo, 540 m, 15 May 2014\"\n", "scientificName ?"},
		{"species,Det. on sheet,w/,site.notes\nCarex acuta,T. Costa,R. Prates,bog\nCarex acuta,T. Costa,,bog\nCarex acuta,R. Prates,,wet meadow\n", "scientificName identifiedBy coCollectors habitat"},
		{"species,Det. number\nCarex acuta,T. Costa\nCarex acuta,T. Costa\nCarex acuta,R. Prates\n", "scientificName ?"},
		{"species,Locality and collector\nCarex acuta,\"Lindoso, Almeida\"\nCarex acuta,\"Parada, Almeida\"\nCarex acuta,\"Lobios, Prates\"\n", "scientificName locality"},
		{"FID,Scientific,country\n1,Carex,PT\n2,Carex,PT\n3,Carex,PT\n", "? scientificName country"},
		// How many plants there are is no number of theirs.
		{"species,N,country\nCarex acuta,1,PT\nCarex acuta,3,PT\nCarex acuta,3,PT\nCarex acuta,1,PT\n", "scientificName ? country"},
		{"species,N,country\nCarex acuta,1,PT\nCarex acuta,2,PT\nCarex acuta,3,PT\nCarex acuta,4,PT\n", "scientificName recordNumber country"},
		{"species,N,Voucher,country\nCarex acuta,12,Almeida 214,PT\nCarex acuta,10,Almeida 215,PT\nCarex acuta,11,Prates 7,PT\nCarex acuta,9,Prates 8,PT\n", "scientificName ? collectorAndNumber country"},
		{"Collector (year),Location (coordinates)\nAlmeida (2014),\"Lindoso (41.87 N, 8.20 W)\"\n", "collectorAndNumber locality"},
		{"species,St,Co\nCarex acuta,CA,Inyo\nCarex acuta,CA,Inyo\nCarex acuta,NV,Nye\n", "scientificName stateProvince county"},
		{"species,St\nCarex acuta,A1\nCarex acuta,A2\nCarex acuta,B1\n", "scientificName ?"},
		{"Isolate,Fungal species,country\nA1,Phoma herbarum,PT\nA2,Phoma herbarum,PT\nA3,Phoma herbarum,PT\n", "otherCatalogNumbers scientificName country"},
		// A word for what the cells are, among others.
		{"species,CollectorString\nCarex acuta,Inês M. Almeida\nCarex acuta,Inês M. Almeida\nCarex acuta,Rui Prates\n", "scientificName recordedBy"},
		{"species,Collector group\nCarex acuta,students\nCarex acuta,staff\nCarex acuta,staff\n", "scientificName ?"},
		{"species,Collector_num_text\nCarex acuta,I. Almeida\nCarex acuta,R. Prates\nCarex acuta,R. Prates\n", "scientificName ?"},
		{"species,voucher_location\nCarex acuta,VDOURA\nCarex acuta,VDOURA\nCarex acuta,COI\n", "scientificName institutionCode"},
		{"species,voucher_location\nCarex acuta,Porto\nCarex acuta,Porto\nCarex acuta,Coimbra\n", "scientificName ?"},
		{"species,Accession_Num_Voucher\nCarex acuta,VDOURA.1132433\nCarex acuta,VDOURA.1132434\nCarex acuta,VDOURA.1132435\n", "scientificName catalogNumber"},
		{"species,Voucher sequence accession num\nCarex acuta,MN760977\nCarex acuta,MN760978\nCarex acuta,MN760979\n", "scientificName ?"},
		{"species,latitute,longitude\nCarex acuta,\"41° 42' 56\"\"N\",\"8° 9' W\"\nCarex acuta,\"41° 43' N\",\"8° 10' W\"\nCarex acuta,\"41° 44'N\",\"8° 11' W\"\n", "scientificName decimalLatitude decimalLongitude"},
		{"species,region\nCarex acuta,Temperate\nCarex acuta,Mediterranean\nCarex acuta,Temperate\n", "scientificName ?"},
		// Figures below the first cells make these headings, though only one is known.
		{"name;ex1F;ex1B;ex2F;mbaum\nAmanita vaginata;1;0;0;B\nRussula queletii;1;0;1;F\nMycena pura;0;1;0;B\n", "scientificName ? ? ? ?"},
		// What ten letters keep of "Collectors number".
		{"recordedBy,Collectors\nI. Almeida,214\nI. Almeida,215\nT. Brandão,s.n.\nI. Almeida,216\nI. Almeida,217\nI. Almeida,218\n", "recordedBy recordNumber"},
		{"recordedBy,Collectors\nI. Almeida,214\nI. Almeida,J. Prates\nI. Almeida,T. Brandão\n", "recordedBy recordedBy"},
		{"recordedBy,Collectors,recordNumber\nI. Almeida,214,1\nI. Almeida,215,2\nI. Almeida,216,3\n", "recordedBy recordedBy recordNumber"},
		// The record's own name, and the one that is accepted.
		{"species,accepted_name\nCirsium canum-acaule,\nViola elatior,Viola elatior Fr.\nAcer campestre,\n", "scientificName acceptedNameUsage"},
		// Collectors with their numbers.
		{"Collection,country\nAlmeida 214,PT\nAlmeida & Prates 215 (VDOURA),PT\nBrandão 7,PT\n", "collectorAndNumber country"},
		{"Collection,country\nAlgae,PT\nVascular plants,PT\nAlgae,PT\n", "? country"},
		{"Collection,recordedBy\nAlmeida 214,I. Almeida\nAlmeida 215,I. Almeida\nBrandão 7,T. Brandão\n", "collectorAndNumber recordedBy"},
		{"Collection,recordedBy,recordNumber\nAlmeida 214,I. Almeida,214\nAlmeida 215,I. Almeida,215\nBrandão 7,T. Brandão,7\n", "? recordedBy recordNumber"},
		{"Collection,Specimen_voucher,recordedBy\nAlmeida 214,VDOURA:5521,I. Almeida\nAlmeida 215,VDOURA:5522,I. Almeida\nBrandão 7,VDOURA:5523,T. Brandão\n", "collectorAndNumber catalogNumber recordedBy"},
		{"Collection,Specimen_voucher,Barcode,recordedBy\nAlmeida 214,VDOURA:5521,V1,I. Almeida\nAlmeida 215,VDOURA:5522,V2,I. Almeida\nBrandão 7,VDOURA:5523,V3,T. Brandão\n", "collectorAndNumber otherCatalogNumbers catalogNumber recordedBy"},
		{"Collection,Specimen_voucher,recordedBy\nAlmeida 214,Almeida 214,I. Almeida\nAlmeida 215,Almeida 215,I. Almeida\nBrandão 7,Brandão 7,T. Brandão\n", "? collectorAndNumber recordedBy"},
		// Which specimens are types, and which are none.
		{"species,Type\nErica arborea,no\nErica ciliaris,HOLOTYPE\nErica cinerea,no\n", "scientificName typeStatus"},
		{"species,Type\nErica arborea,no\nErica ciliaris,yes\nErica cinerea,no\n", "scientificName type"},
		// Names under a heading that has a word for them.
		{"Accepted Name in Tree,Label,country\nErica_arborea,Erica_arborea_214,PT\nErica_ciliaris,Erica_ciliaris_215,PT\nErica_cinerea,Erica_cinerea_7,PT\n", "scientificName ? country"},
		{"Species_final,genus,species\nErica.arborea,Erica,arborea\nErica.ciliaris,Erica,ciliaris\nErica.cinerea,Erica,cinerea\n", "? genus specificEpithet"},
		{"Old name,country\nErica arborea,PT\nErica ciliaris,PT\nErica cinerea,PT\n", "? country"},
		{"Host species name,country\nErica arborea,PT\nErica ciliaris,PT\nErica cinerea,PT\n", "? country"},
		// A datum and a side are latitude and longitude, if the cells are degrees.
		{"x,y,ns,ew,country\n57.41,20.50,S,E,MU\n57.38,20.21,S,E,MU\n57.39,20.24,S,E,MU\n", "decimalLongitude decimalLatitude latitudeHemisphere longitudeHemisphere country"},
		{"x,y,ns,country\n57.41,20.50,S,MU\n57.38,20.21,S,MU\n57.39,20.24,S,MU\n", "decimalLongitude decimalLatitude latitudeHemisphere country"},
		{"x,y,ns,ew,country\n574100,2050000,S,E,MU\n573800,2021000,S,E,MU\n573900,2024000,S,E,MU\n", "easting northing latitudeHemisphere ? country"},
		{"name,spp,country\n\"Almeida, I\",Erica arborea L.,PT\n\"Almeida, I; Costa, R\",Erica ciliaris L.,PT\n\"Costa, R\",Erica cinerea L.,PT\n", "recordedBy scientificName country"},
		{"name,spp,country\nErica arborea,Erica arborea L.,PT\nErica ciliaris,Erica ciliaris L.,PT\nErica cinerea,Erica cinerea L.,PT\n", "? scientificName country"},
		{"WGS N,WGS W,country\n40.1,-7.5,PT\n40.2,-7.6,PT\n40.3,-7.7,PT\n", "decimalLatitude decimalLongitude country geodeticDatum"},
		{"NAD83 Lat,NAD83 Long,country\n40.1,-7.5,US\n40.2,-7.6,US\n40.3,-7.7,US\n", "decimalLatitude decimalLongitude country geodeticDatum"},
		// Metres under words for degrees.
		{"Lat,Long,Projection\n4601103,545194,UTM 29T\n4601113,545294,UTM 29T\n4601123,545394,UTM 29T\n", "northing easting utmZone"},
		{"Lat_m,Long_m,Projection,country\n545194,4601103,UTM 29T,PT\n545294,4601113,UTM 29T,PT\n545394,4601123,UTM 29T,PT\n", "easting northing utmZone country"},
		{"Lat (UTM),Long (UTM),zone\n4601103,545194,29T\n4601113,545294,29T\n4601123,545394,29T\n", "northing easting utmZone"},
		{"UTM_lat,UTM_long,Projection,country\n4601103,545194,none,PT\n4601113,545294,none,PT\n4601123,545394,none,PT\n", "northing easting ? country"},
		{"Lat,Long,Projection\n4601103,545194,UTM 29T\n41.5,-8.1,UTM 29T\n4601123,545394,UTM 29T\n", "decimalLatitude decimalLongitude ?"},
		{"WGS84 N,WGS84 E,zone\n4401234,561234,29T\n4401235,561235,29T\n4401236,561236,29T\n", "northing easting utmZone geodeticDatum"},
		// The box that a place lies in is none of its eastings and northings.
		{"lat,lon,north,south,east,west\n40.1,-7.5,40.5,39.9,-7.1,-7.9\n40.2,-7.6,40.6,40.0,-7.2,-8.0\n40.3,-7.7,40.7,40.1,-7.3,-8.1\n", "decimalLatitude decimalLongitude ? ? ? ?"},
		// The number of a plant in a garden is not how many there are.
		{"Taxon,Plant number\nTilia cordata,214-79*1\nTilia cordata,214-79*3\nTilia tomentosa,1122-23*1\n", "scientificName ?"},
		{"Taxon,Plant number\nTilia cordata,3\nTilia cordata,12\nTilia tomentosa,1\n", "scientificName individualCount"},
		// Places on a plate are none on the earth.
		{"position,State/Province,country\nP0A01,Guarda,PT\nP0B01,Guarda,PT\nP1C12,Viseu,PT\n", "? stateProvince country"},
		{"position,State/Province,country\n\"40.5, -7.3\",Guarda,PT\n\"40.6, -7.2\",Guarda,PT\nnone,Viseu,PT\n", "verbatimCoordinates stateProvince country"},
		// Herbaria that have vouchers, and the number of one's sheets.
		{"Taxon,Collector no.,Vouchers,VDOURA_Herbarium_Accession_Number\nErica arborea,IMA 214,VDOURA,17541\nErica ciliaris,IMA 215,\"VDOURA, PINHEL(2)\",17542\nErica cinerea,IMA 216,PINHEL,17543\n", "scientificName recordNumber ? catalogNumber"},
		{"Taxon,DNA accession number\nErica arborea,2014-029\nErica ciliaris,2014-030\nErica cinerea,2014-031\n", "scientificName ?"},
		// What is collected stands at the head of its names, if one thing is.
		{"Specimen,Determinant\nErica arborea L.,I. Almeida\nUlex minor Roth,I. Almeida\nErica ciliaris L.,R. Costa\nTojo,R. Costa\nErica lusitanica Rudolphi,\n", "scientificName identifiedBy"},
		{"country,Year\nPT,2021-05-03\nPT,14 May 2021\nPT,2021\n", "country eventDate"},
		{"country,Year\nPT,2021\nPT,2020\nPT,14 May 2021\n", "country year"},
		{"country,Year,Month\nPT,2021-05-03,5\nPT,2021-05-04,5\n", "country year month"},
		{"Specimen,Country\nVDOURA-1,PT\nVDOURA-2,PT\nVDOURA-3,PT\n", "? country"},
		{"Lichen,Coll. country\nLobaria pulmonaria,PT\nUsnea florida,PT\nPeltigera canina,PT\n", "scientificName country"},
		{"Tree,Lichen\nQuercus robur,Lobaria pulmonaria\nQuercus robur,Usnea florida\nAcer campestre,Peltigera canina\n", "? ?"},
		{"Taxonomic identification,Collection lat,Coll. long\nErica arborea,40.1,-7.2\nErica ciliaris,40.2,-7.3\nErica cinerea,40.3,-7.4\n", "scientificName decimalLatitude decimalLongitude"},
		{"Taxon,Grid\nErica arborea,29T PE 4312\nErica ciliaris,29T PE 4412\nErica cinerea,29TPE4413\n", "scientificName verbatimCoordinates"},
		{"Taxon,Grid\nErica arborea,A1\nErica ciliaris,A2\nErica cinerea,B12\n", "scientificName ?"},
		// IDs of vouchers that are what a label has.
		{"Taxon,Voucher ID\nErica arborea,VDOURA0012345\nErica ciliaris,VDOURA0012346\nErica cinerea,VDOURA0012347\n", "scientificName catalogNumber"},
		{"Taxon,Voucher ID\nErica arborea,Almeida 214\nErica ciliaris,Almeida & Prates 215\nErica cinerea,Brandão 7\n", "scientificName collectorAndNumber"},
		{"Taxon,Voucher ID\nErica arborea,C236F314-6399\nErica ciliaris,24349EB4-8995\nErica cinerea,6AD66410-0827\n", "scientificName ?"},
		// Plants that are no project.
		{"Plant,country\nErica arborea,PT\nErica ciliaris,PT\nErica cinerea L.,PT\n", "scientificName country"},
		{"Plant,country\n1,PT\n2,PT\n3,PT\n", "? country"},
		{"Plants of,country\nthe Serra da Estrela,PT\nthe Serra da Estrela,PT\nthe Serra da Estrela,PT\n", "project country"},
		// Origins are places, if the cells are.
		{"Taxon,Origin\nErica arborea,\"Portugal, Valdoura\"\nErica ciliaris,\"Portugal, Lindoso\"\nErica cinerea,\"Spain: Galicia, Vigo\"\n", "scientificName locality"},
		{"Taxon,Origin\nErica arborea,wild\nErica ciliaris,cultivated\nErica cinerea,wild\n", "scientificName ?"},
		{"Taxon,Origin\nErica arborea,Native\nErica ciliaris,Native\nErica cinerea,Introduced\n", "scientificName ?"},
		// An ID that is an identification.
		{"Taxon ID,country\nErica arborea,PT\nErica ciliaris,PT\nErica cinerea L.,PT\n", "scientificName country"},
		{"Taxon ID,country\n3021,PT\n3022,PT\n3023,PT\n", "taxonID country"},
		// Who determined, or whether anybody has.
		{"species,Identified,country\nErica arborea,J. Prates,PT\nErica ciliaris,,PT\nErica cinerea,T. Brandão,PT\nErica erigena,J. Prates,PT\n", "scientificName identifiedBy country"},
		{"species,Identified,country\nErica arborea,yes,PT\nErica ciliaris,no,PT\nErica cinerea,yes,PT\n", "scientificName ? country"},
		{"verbatim_scientific_name,recordedBy,country\nErica arborea L.,J. Prates,PT\nErica ciliaris L.,J. Prates,PT\n", "scientificName recordedBy country"},
		{"verbatimScientificName,genus,country\nErica arborea L.,Erica,PT\nErica ciliaris L.,Erica,PT\n", "verbatimScientificName genus country"},
		{"species,identifier,country\nErica arborea,J. Prates,PT\nErica ciliaris,,PT\nErica cinerea,T. Brandão,PT\n", "scientificName identifiedBy country"},
		{"species,identifier,country\nErica arborea,VDOURA:5521,PT\nErica ciliaris,VDOURA:5522,PT\nErica cinerea,urn:vdoura:x,PT\n", "scientificName ? country"},
		{"species,identifier,identifiedBy,country\nErica arborea,62665234,,PT\nErica ciliaris,62665233,,PT\nErica cinerea,61106492,T. Brandão,PT\n", "scientificName identifier identifiedBy country"},
		{"species,Determined,country\nErica arborea,2019-05-03,PT\nErica ciliaris,2019-05-03,PT\nErica cinerea,2019,PT\n", "scientificName ? country"},
		// A whole name under a heading for the epithet alone, where nothing has the genus.
		{"Species epithet,site\nErica arborea,Vale\nErica cinerea,Covão\nErica ciliaris,Serra\n", "scientificName locality"},
		{"genus,Species epithet,site\nErica,arborea,Vale\nErica,cinerea,Covão\nErica,ciliaris,Serra\n", "genus specificEpithet locality"},
		{"species,site\narborea,Vale\ncinerea,Covão\nciliaris,Serra\n", "specificEpithet locality"},
		{"species,site\narborea,Vale\nErica cinerea,Covão\nErica ciliaris,Serra\n", "scientificName locality"},
		{"scientificName,site\narborea,Vale\ncinerea,Covão\nciliaris,Serra\n", "scientificName locality"},
		// Native or not is no hemisphere.
		{"country,N_S,lat,lon\nPT,M,40.1,-7.5\nPT,M,40.2,-7.6\nPT,I,40.3,-7.7\n", "country ? decimalLatitude decimalLongitude"},
		{"country,lat,N_S,lon\nPT,40.1,N,-7.5\nPT,40.2,,-7.6\nPT,40.3,n.,-7.7\n", "country decimalLatitude latitudeHemisphere decimalLongitude"},
		{"country,lat,N_S,lon\nPT,40.1,nord,-7.5\nPT,40.2,North,-7.6\nPT,40.3,?,-7.7\n", "country decimalLatitude latitudeHemisphere decimalLongitude"},
		// Where a sheet is kept, beside where its plant grew.
		{"country,Locality,Location\nPT,Vale,VDOURA - Herbarium\nPT,Covão,VDOURA - Herbarium\nPT,Serra,VDOURA - Herbarium\nPT,Serra,\n", "country locality ?"},
		{"country,Location,Locality\nPT,Cabinet 4,Vale\nPT,Cabinet 5,Covão\nPT,Cabinet 5,Serra\n", "country ? locality"},
		{"country,Locality,Location\nPT,Vale,east of the herbarium\nPT,Covão,by the spring\nPT,Serra,\n", "country locality locality"},
		{"country,Location\nPT,Herbarium grounds\nPT,Herbarium grounds\n", "country locality"},
		// Vouchers that are figures alone.
		{"collector,Voucher number,species\nI. Almeida,214,Erica arborea\nI. Almeida,215a,Erica cinerea\n", "recordedBy recordNumber scientificName"},
		{"Voucher number,species\n214,Erica arborea\n215,Erica cinerea\n", "? scientificName"},
		{"collector,coll. no.,Voucher number\nI. Almeida,214,10023\nI. Almeida,215,10024\n", "recordedBy recordNumber ?"},
		{"collector,coll. no.,Voucher\nI. Almeida,214,VDOURA 10023\nI. Almeida,215,VDOURA 10024\n", "recordedBy recordNumber collectorAndNumber"},
		{"Voucher number,species\nAlmeida 214,Erica arborea\n215,Erica cinerea\n", "collectorAndNumber scientificName"},
		// Collected when, or by whom.
		{"species,Collected\nErica arborea,30. Aug 15\nErica cinerea,1. Sep 15\nErica ciliaris,2 Sep 2015\n", "scientificName eventDate"},
		{"species,Collected\nErica arborea,2015\nErica cinerea,2016\nErica ciliaris,\nErica lusitanica,1998\n", "scientificName eventDate"},
		{"species,Collected\nErica arborea,I. Almeida\nErica cinerea,\"Prates, J.\"\nErica ciliaris,I. M. Brandão\n", "scientificName recordedBy"},
		{"species,Collected\nErica arborea,yes\nErica cinerea,no\nErica ciliaris,yes\n", "scientificName ?"},
		{"species,date,Collected\nErica arborea,2015-08-30,2015-08-30\nErica cinerea,2015-08-30,2015-08-30\nErica ciliaris,2015-08-30,2015-08-30\n", "scientificName eventDate ?"},
		// Persons under a word that authors of names have too.
		{"Auteur,Genre,Espèce,Auteur\nAlmeida,Erica,arborea,L.\nBrandão,Erica,ciliaris,Loefl. ex L.\nAlmeida,Calluna,vulgaris,(L.) Hull\n", "recordedBy genus specificEpithet scientificNameAuthorship"},
		{"Auteur,Genre,Espèce,Auteur\nL.,Erica,arborea,\nL.,Erica,ciliaris,\n,Calluna,vulgaris,(L.) Hull\n", "scientificNameAuthorship genus specificEpithet scientificNameAuthorship"},
		{"species,author\nErica arborea,ericafan\nErica ciliaris,moorland7\nErica cinerea,ericafan\n", "scientificName recordedBy"},
		{"species,author\nErica arborea,L.\nErica ciliaris,Loefl. ex L.\nErica cinerea,L.\n", "scientificName scientificNameAuthorship"},
		{"species,author,recordedBy\nErica arborea,ericafan,I. Almeida\nErica ciliaris,moorland7,I. Almeida\nErica cinerea,ericafan,I. Almeida\n", "scientificName scientificNameAuthorship recordedBy"},
		// What is sorted by kingdoms is no name, where another column has one.
		{"sps,taxon\nErica arborea,Plantae\nErica ciliaris,Plantae\nErica cinerea,Plantae\n", "scientificName ?"},
		{"taxon,country\nFungi,PT\nFungi,PT\nPlantae,PT\n", "scientificName country"},
		// Words for collecting over dates.
		{"species,recolection\nErica arborea,25/08/2021\nErica ciliaris,26/08/2021\nErica cinerea,2021-08-27\n", "scientificName eventDate"},
		{"species,Colheita,data\nErica arborea,25/08/2021,2021\nErica ciliaris,26/08/2021,2021\nErica cinerea,27/08/2021,2021\n", "scientificName ? eventDate"},
		{"species,Colheita\nErica arborea,manual\nErica ciliaris,manual\nErica cinerea,25/08/2021\n", "scientificName ?"},
		// The day a trip began, where no other column has a day.
		{"species,Start_Date\nErica arborea,2021-08-25\nErica ciliaris,2021-08-25\nErica cinerea,2021-08-26\n", "scientificName eventDate"},
		{"species,Start_Date,year\nErica arborea,2021-08-25,2021\nErica ciliaris,2021-08-25,2021\nErica cinerea,2021-08-26,2021\n", "scientificName ? year"},
		{"species,Start_Date\nErica arborea,spring\nErica ciliaris,spring\nErica cinerea,summer\n", "scientificName ?"},
		// Whether there is a voucher is none.
		{"species,Voucher_Specimen,recordedBy\nErica arborea,TRUE,I. Almeida\nErica ciliaris,FALSE,\nErica cinerea,TRUE,I. Almeida\n", "scientificName ? recordedBy"},
		{"species,Specimen number,recordedBy\nErica arborea,yes,I. Almeida\nErica ciliaris,no,\nErica cinerea,yes,I. Almeida\n", "scientificName ? recordedBy"},
		{"Specimen,species\nAlmeida_and_Prates_214,Erica arborea\nTeles_et_al_79_135,Erica ciliaris\nBrandao_SN,Erica cinerea\n", "collectorAndNumber scientificName"},
		{"Specimen,species\nPlot_1,Erica arborea\nPlot_2,Erica ciliaris\nPlot_3,Erica cinerea\n", "? scientificName"},
		// Slips of the keyboard over cells that bear the term out.
		{"species,decmalLat,decimalLong\nErica arborea,40.1,-7.5\nErica ciliaris,40.2,-7.6\nErica cinerea,40.3,-7.7\n", "scientificName decimalLatitude decimalLongitude"},
		{"species,decmalLat\nErica arborea,40.1\nErica ciliaris,40.2\nErica cinerea,40.3\n", "scientificName ?"},
		{"species,decmalLat,decimalLong,decimalLatitude\nErica arborea,1,-7.5,40.1\nErica ciliaris,2,-7.6,40.2\nErica cinerea,3,-7.7,40.3\n", "scientificName ? decimalLongitude decimalLatitude"},
		{"species,recodedBy\nErica arborea,I. Almeida\nErica ciliaris,T. Brandão\nErica cinerea,I. Almeida\n", "scientificName recordedBy"},
		{"species,recodedBy\nErica arborea,camera 1\nErica ciliaris,camera 2\nErica cinerea,camera 1\n", "scientificName ?"},
		// Populations are named after their places, or have codes.
		{"species,Population Name\nErica arborea,\"Valdoura, Minho\"\nErica ciliaris,Serra do Covão\nErica cinerea,Behchokǫ̀\n", "scientificName locality"},
		{"species,Population,locality\nErica arborea,Valdoura,dunes\nErica ciliaris,Covão,dunes\nErica cinerea,Serra,dunes\n", "scientificName ? locality"},
		{"species,Population\nErica arborea,VAL1\nErica ciliaris,COV\nErica cinerea,P3\n", "scientificName ?"},
		// Days of the year, or of an experiment, are none of a month.
		{"species,Sample_day\nErica arborea,144\nErica ciliaris,148\nErica cinerea,163\n", "scientificName ?"},
		{"species,Sampled year,Sampled month,Sampled day\nErica arborea,2020,5,14\nErica ciliaris,2020,5,18\n", "scientificName year month day"},
		// "Name" of waypoints.
		{"lat,lon,Name\n40.1,-7.5,001\n40.2,-7.6,02VAL\n40.3,-7.7,COVAO1\n40.3,-7.7,DUNES\n", "decimalLatitude decimalLongitude ?"},
		{"lat,lon,Name\n40.1,-7.5,Erica arborea\n40.2,-7.6,Erica_ciliaris\n40.3,-7.7,ERICA CINEREA\n40.3,-7.7,erica sp.\n", "decimalLatitude decimalLongitude scientificName"},
		// Regions that are the sides of a study.
		{"Site_Name,Region\nRock Creek,North\nDeep Creek,Center\nCarlon,South\n", "locality ?"},
		{"Site_Name,State,Region\nRock Creek,SON,NORTH\nDeep Creek,JAL,CENTRAL\nCarlon,OAX,SOUTH\n", "locality stateProvince ?"},
		{"Site_Name,Region,country\nRock Creek,North,Cameroon\nDeep Creek,Center,Cameroon\nCarlon,South,Cameroon\n", "locality stateProvince country"},
		{"Site_Name,Region\nRock Creek,Minho\nDeep Creek,Algarve\nCarlon,Norte\n", "locality stateProvince"},
		// A code that begins with the collector's initials is the collector's number.
		{"colector,Código,especie\nI. Almeida,IA-214,Erica arborea\n\"Brandão, T.\",TB-7,Erica cinerea\nÁlvaro Prates; I. Almeida,AP 3b,Erica ciliaris\n", "recordedBy recordNumber scientificName"},
		{"colector,Código,especie\nI. Almeida,VER89,Erica arborea\nI. Almeida,VER90,Erica cinerea\nI. Almeida,VER91,Erica ciliaris\n", "recordedBy ? scientificName"},
		{"colector,Código,número,especie\nI. Almeida,IA-214,214,Erica arborea\nI. Almeida,IA-215,215,Erica cinerea\nI. Almeida,IA-216,216,Erica ciliaris\n", "recordedBy ? recordNumber scientificName"},
		{"Código,especie\nIA-214,Erica arborea\nIA-215,Erica cinerea\nIA-216,Erica ciliaris\n", "? scientificName"},
		// Regions of nature are no states.
		{"país,Región,Departamento\nColombia,Andes,Boyacá\nColombia,Andina,Huila\nColombia,Caribe,Magdalena\n", "country ? stateProvince"},
		{"País,Região,Estado\nBrasil,Nordeste,BA\nBrasil,Sudeste,SP\nBrasil,Centro-Oeste,GO\n", "country ? stateProvince"},
		{"país,Región\nColombia,Andes\nColombia,Andes\nColombia,Orinoquía\n", "country ?"},
		{"Country,Region,Province\nChile,Los Lagos,Chiloé\nChile,Araucanía,Cautín\nChile,Los Lagos,Palena\n", "country stateProvince stateProvince"},
		{"Country,Region\nPeru,Amazonas\nPeru,Amazonas\nPeru,Cusco\n", "country stateProvince"},
		{"Country,Region\nGhana,Eastern\nGhana,Central\nGhana,Northern\n", "country stateProvince"},
		// The number of the event stands for the collector's.
		{"recordedBy,fieldNumber\nI. Almeida,1365a\nI. Almeida,1347\nI. Almeida,6359\n", "recordedBy recordNumber"},
		{"recordedBy,fieldNumber,recordNumber\nI. Almeida,1365a,7\n", "recordedBy fieldNumber recordNumber"},
		{"scientificName,genus,recordedBy\nalba,Quercus,I. Almeida\nrobur,Quercus,I. Almeida\nsylvatica,Fagus,I. Almeida\n", "specificEpithet genus recordedBy"},
		{"name_matched,recordedBy\nUlex minor,I. Almeida\nUlex parviflorus,I. Almeida\n", "scientificName recordedBy"},
		{"scrubbed_species_binomial,recordedBy\nUlex minor,I. Almeida\nUlex parviflorus,I. Almeida\n", "scientificName recordedBy"},
		{"name_matched,species,recordedBy\nUlex minor,Ulex minor Roth,I. Almeida\nUlex,Ulex sp.,I. Almeida\n", "? scientificName recordedBy"},
		{"Collector,Plot,Species\nI. Almeida,K12,Ulex minor\nI. Almeida,K12,Ulex parviflorus\nI. Almeida,K13,Ulex minor\n", "recordedBy fieldNumber scientificName"},
		{"Collector,Field Number\nI. Almeida,1365a\nI. Almeida,1347\n", "recordedBy recordNumber"},
		{"recordedBy,fieldNumber\nI. Almeida,transect 4 plot 7\nI. Almeida,transect 4 plot 8\n", "recordedBy fieldNumber"},
	} {
		tab, err := Open(Bytes("t.csv", []byte(c.table)), Options{})
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, col := range tab.Columns() {
			term := col.Term
			if !col.Known {
				term = "?"
			}
			got = append(got, term)
		}
		if s := strings.Join(got, " "); s != c.want {
			t.Errorf("%q is read as %s, not %s", c.table, s, c.want)
		}
	}
}

// TestSharedParts: "verbatim" before and "id" behind make no two headings near.
func TestSharedParts(t *testing.T) {
	for heading, want := range map[string]string{
		"verbatim_class": "", "verbatim_genus": "", "verbatim_family": "", "verbatim_year": "", "datasource_id": "",
		"verbatimLocalty": "verbatimLocality", "verbatim_elevaton": "verbatimElevation", "verbatmLocality": "verbatimLocality", "occurenceID": "occurrenceID",
	} {
		if got, _ := vocabulary().nearest(heading); got != want {
			t.Errorf("%s is near to %q, not %q", heading, got, want)
		}
	}
}

// A word in common makes no two headings near.
func TestWordInCommon(t *testing.T) {
	v := vocabulary()
	for heading, want := range map[string]string{
		"Collection_Time_Zone": "", "country-georef": "", "event zone": "", "community": "", "sample": "", "Collected?": "",
		"BRU_Family": "family", "xyz_taxon_rank": "taxonRank", "collectionCoed": "collectionCode", "eventDt": "eventDate", "event_Daet": "eventDate", "recorded Bi": "recordedBy",
	} {
		if got, _ := v.nearest(heading); got != want {
			t.Errorf("%s: %q, not %q", heading, got, want)
		}
	}
}

// TestIdentifiersDiffer: two identifiers of one specimen are no fault.
func TestIdentifiersDiffer(t *testing.T) {
	_, rows := readAll(t, "OccurrenceID,GUID,country\n129,b1f0-22,PT\n130,,PT\n", Options{})
	for _, f := range rows[0].Findings {
		if f.Severity > 1 {
			t.Errorf("%v", f)
		}
	}
}

// TestUnlikelySlips: a heading is no slip for a term that its cells cannot be.
func TestUnlikelySlips(t *testing.T) {
	for _, c := range []struct{ table, want string }{
		{"country,Etiqueta\nPT,sim\nPT,não\nPT,sim\n", ""},
		{"country,Etiqueta\nPT,VC-3\nPT,VC-4\nPT,VC-5\n", ""},
		{"country,Etiqueta\nPT,2\nPT,3\nPT,1\n", "copies"},
		// Initials of those who counted are no countries.
		{"counter,locality\nmb,Guarda\nan,Guarda\nmb,Viseu\n", ""},
		{"countre,locality\nPortugal,Guarda\nEspanha,Vigo\nPortugal,Viseu\n", "country"},
		{"country,Exposition\nPT,NE\nPT,SW\nPT,N\n", ""},
		{"country,Exposition\nPT,in collection\nPT,on loan\nPT,in collection\n", "disposition"},
		{"country,locallity\nPT,12\nPT,13\nPT,14\n", ""},
		{"country,locallity\nPT,Valdoura\nPT,Covão\nPT,Serra\n", "locality"},
	} {
		tab, err := Open(Bytes("t.csv", []byte(c.table)), Options{})
		if err != nil {
			t.Fatal(err)
		}
		got := ""
		for _, f := range tab.Findings() {
			if f.Rule == ruleHeadingUnknown.Name {
				got = f.Suggest
				if got == "" && f.Severity != label.Note {
					t.Errorf("%q: %v", c.table, f)
				}
			}
		}
		if got != c.want {
			t.Errorf("%q: suggests %q, not %q", c.table, got, c.want)
		}
	}
}

// TestCodesOfSites: a column of places that has codes alone is told once, and read.
func TestCodesOfSites(t *testing.T) {
	for _, c := range []struct {
		table string
		want  bool
	}{
		{"lat,lon,site\n40.1,-7.5,A1\n40.2,-7.6,A2\n40.3,-7.7,P-03\n", true},
		{"lat,lon,site\n40.1,-7.5,site 1\n40.2,-7.6,site 2\n40.3,-7.7,site 3\n", true},
		{"lat,lon,site\n40.1,-7.5,A1\n40.1,-7.5,A1\n40.1,-7.5,A1\n", false},
		{"lat,lon,site\n40.1,-7.5,A1\n40.2,-7.6,Valdoura\n40.3,-7.7,P-03\n", false},
		{"country,site\nPT,A1\nPT,A2\nPT,P-03\n", false}, // each is told
		{"lat,lon,site\n40.1,-7.5,Km 41\n40.2,-7.6,Km 42\n40.3,-7.7,Km 43\n", false},
	} {
		tab, err := Open(Bytes("t.csv", []byte(c.table)), Options{})
		if err != nil {
			t.Fatal(err)
		}
		got := false
		for _, f := range tab.Findings() {
			got = got || strings.Contains(f.Message, "its cells are codes")
		}
		if got != c.want || tab.Index("locality") < 0 {
			t.Errorf("%q: %v", c.table, tab.Findings())
		}
	}
}
