package table

import "testing"

// TestDivisions: of two parts of a country one has the other; words for one country
// each, words of English and a region of nature are no two.
func TestDivisions(t *testing.T) {
	for _, c := range []struct{ table, want string }{
		{"Departamento,Provincia,Distrito,Localidad\nCusco,La Convención,Echarati,Timpía\nCusco,Paucartambo,Kosñipata,Tres Cruces\nPuno,Sandia,Limbani,puente\n",
			"stateProvince county county locality"},
		{"Provincia,Departamento,Localidad\nSalta,La Caldera,Abra\nJujuy,Tilcara,Pucará\nJujui,Tilcara,Pucará\n", "stateProvince county locality"},
		{"Distrito,Província,Local\nGurué,Zambézia,rio\nMilange,Zambézia,vila\nLugela,Zambézia,monte\nIle,Zambézia,serra\n", "county stateProvince locality"},
		{"Departamento,Provincia,Distrito,Estado\nPasco,Oxapampa,Villa Rica,Fl.\nPasco,Oxapampa,Pozuzo,\"Fl., Fr.\"\nLoreto,Maynas,Iquitos,Est.\n",
			"stateProvince county county reproductiveCondition"},
		{"Especie,Estado\nErica arborea,en flor\nErica ciliaris,Veg.\nErica cinerea,Fr\n", "scientificName reproductiveCondition"},
		{"Estado,Municipio\nOaxaca,x\nPuebla,y\nVeracruz,z\n", "stateProvince municipality"},
		{"Regione,Prov.,Comune\nVeneto,BL,Cortina\nVeneto,BL,Agordo\nLazio,RM,Roma\n", "stateProvince county municipality"},
		{"Région,Département,Comarca\nBourgogne,Côte-d'Or,x\nBourgogne,Nièvre,y\nAuvergne,Cantal,z\n", "stateProvince county county"},
		{"Region,Province,Barangay\nRegion IV,Palawan,x\nRegion IV,Palawan,y\nRegion V,Albay,z\n", "stateProvince stateProvince ?"},
		{"Provincia,Departamento,Localidad\nSalta,,Abra\n,Boyacá,Duitama\nJujuy,,Pucará\n", "stateProvince stateProvince locality"},
		{"Región,Departamento,Vereda\nAndina,Boyacá,x\nAndina,Huila,y\nCaribe,Magdalena,z\n", "? stateProvince locality"},
		{"Land,Fundort\nBayern,Oytal\nBaden-Württemberg,Feldsee\nBayern,Riedboden\n", "stateProvince locality"},
		{"Land,Fundort\nDeutschland,Oytal\nÖsterreich,Lech\nBayern,Riedboden\n", "country locality"},
		{"Land,Bundesland,Fundort\nBayern,Bayern,Oytal\nBayern,Bayern,Lech\nBayern,Bayern,Riedboden\n", "country stateProvince locality"},
		// Common names beside the scientific ones; names of places and persons are none.
		{"nome,cientifico,familia\nCanafístula,Peltophorum dubium,Fabaceae\nIpê amarelo,Handroanthus chrysotrichus,Bignoniaceae\nCanafístula,Peltophorum dubium,Fabaceae\nPau-d'alho,Gallesia integrifolia,Phytolaccaceae\n", "vernacularName scientificName family"},
		{"nome,espécie\nValdoura,Erica arborea\nValdoura,Erica ciliaris\nLindoso,Erica arborea\nPinhel,Erica cinerea\n", "? scientificName"},
		{"nome,espécie\nIsabel Almeida,Erica arborea\nTomás Brandão,Erica ciliaris\nIda Prates,Erica cinerea\n", "recordedBy scientificName"},
		// A word before a day is the day's heading.
		{"Colhido por,Em,Classificado por\nA. Lobo,21-06-2001,A. Lobo\nA. Lobo,22-06-2001,A. Lobo\nA. Lobo,23-06-2001,\n", "recordedBy eventDate identifiedBy"},
		{"Collector,On,Date\nA. Lobo,rock,2001-06-21\nA. Lobo,soil,2001-06-22\nA. Lobo,bark,2001-06-23\n", "recordedBy ? eventDate"},
		// Heights of plants.
		{"msnm,Altura (m),Especie\n690,6,Bursera morelensis\n690,8,Bursera fagaroides\n", "minimumElevationInMeters ? scientificName"},
		{"DAP (cm),Altura,Especie\n31,6,Bursera morelensis\n20,8,Bursera fagaroides\n", "? ? scientificName"},
		{"Altura (m),Especie\n690,Bursera morelensis\n720,Bursera fagaroides\n", "minimumElevationInMeters scientificName"},
	} {
		termsAre(t, c.table, c.want)
	}
}

// TestAnglesOfASide: the heading that says north says it of angles without a letter.
func TestAnglesOfASide(t *testing.T) {
	_, rows := readAll(t, "Lat (N);Long (O);Especie\n17°48'50;96°56'55;Bursera morelensis\n17°53'10;96°45'40;Bursera fagaroides\n", Options{})
	if n, w := rows[0].Get("latitudeHemisphere").Text, rows[0].Get("longitudeHemisphere").Text; n != "N" || w != "W" {
		t.Errorf("sides %q and %q", n, w)
	}
	_, rows = readAll(t, "Lat (N);Long (O);Especie\n17.8139;96.9486;Bursera morelensis\n17.8861;96.7611;Bursera fagaroides\n", Options{})
	if n, w := rows[0].Get("latitudeHemisphere").Text, rows[0].Get("longitudeHemisphere").Text; n != "" || w != "W" {
		t.Errorf("sides %q and %q", n, w)
	}
}
