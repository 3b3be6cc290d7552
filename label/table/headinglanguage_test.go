package table

import (
	"strings"
	"testing"
)

// TestHeadingLanguages reads the headings of collectors in further languages,
// and words that mean one thing in one of them and another in the next.
func TestHeadingLanguages(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{"Samlingsnr.,Familie,Art,Fylke,Kommune,Lokalitet,Økologi,Høyde over havet,Dato,Samler,Bestemt av,Merknad",
			"recordNumber family scientificName stateProvince municipality locality habitat minimumElevationInMeters eventDate recordedBy identifiedBy occurrenceRemarks"},
		{"Løbenr.,Dato,Slægt,Art,Kommune,Findested,Voksested,Vært,Breddegrad,Længdegrad,Indsamler,Bestemt af,Bemærkninger",
			"recordNumber eventDate genus specificEpithet municipality locality habitat associatedTaxa decimalLatitude decimalLongitude recordedBy identifiedBy occurrenceRemarks"},
		{"Insamlingsnr,Datum,Släkte,Art,Län,Socken,Fyndplats,Växtplats,Noggrannhet,m ö.h.,Insamlare,Anm.",
			"recordNumber eventDate genus specificEpithet stateProvince municipality locality habitat coordinateUncertaintyInMeters minimumElevationInMeters recordedBy occurrenceRemarks"},
		{"Verzamelnummer,Datum,Wetenschappelijke naam,Provincie,Gemeente,Vindplaats,Biotoop,Rivier,Verzamelaar,Opmerking",
			"recordNumber eventDate scientificName stateProvince municipality locality habitat waterBody recordedBy occurrenceRemarks"},
		{"Kraj,Województwo,Gmina,Stanowisko,Podłoże,Szerokość geogr.,Długość geogr.,Wys. n.p.m.,Data,Zebrał(a),Nr zielnikowy",
			"country stateProvince municipality locality habitat decimalLatitude decimalLongitude minimumElevationInMeters eventDate recordedBy catalogNumber"},
		{"Č. položky,Čeleď,Druh,Kraj,Okres,Obec,Lokalita,Stanoviště,Souřadnice,Nadm. výška,Datum,Sběratel,Určil(a)",
			"catalogNumber family scientificName stateProvince county municipality locality habitat verbatimCoordinates minimumElevationInMeters eventDate recordedBy identifiedBy"},
		{"Nr. inv.,Specia,Familia,Țara,Județul,Localitatea,Altitudine,Data colectării,Legit,Determinavit",
			"catalogNumber scientificName family country stateProvince locality minimumElevationInMeters eventDate recordedBy identifiedBy"},
		{"Núm. herbari,Tàxon,Comarca,Municipi,Localitat,Altitud (m s.m.),Data,Recol·lector,Observacions",
			"catalogNumber scientificName county municipality locality minimumElevationInMeters eventDate recordedBy occurrenceRemarks"},
		{"Inv. broj,Vrsta,Porodica,Država,Županija,Nalazište,Nadmorska visina,Geogr. širina,Geogr. dužina,Datum,Sakupio,Odredio,Stanište",
			"catalogNumber scientificName family country stateProvince locality minimumElevationInMeters decimalLatitude decimalLongitude eventDate recordedBy identifiedBy habitat"},
		{"Liik,Sugukond,Riik,Maakond,Leiukoht,Laius,Pikkus,Kuupäev,Koguja,Määraja,Märkused",
			"scientificName family country stateProvince locality decimalLatitude decimalLongitude eventDate recordedBy identifiedBy occurrenceRemarks"},
		{"Инв. №,Вид,Област,Находище,Надм. височина,Географска ширина,Географска дължина,Дата,Събрал,Определил",
			"catalogNumber scientificName stateProvince locality minimumElevationInMeters decimalLatitude decimalLongitude eventDate recordedBy identifiedBy"},
		{"Čeľaď,Rod,Druh,Kraj,Okres,Nálezisko,Stanovište,Nadmorská výška,Dátum,Zberateľ,Určil",
			"family genus specificEpithet stateProvince county locality habitat minimumElevationInMeters eventDate recordedBy identifiedBy"},
		{"Gyűjtési szám,Család,Fajnév,Megye,Település,Lelőhely,Élőhely,Szélesség,Hosszúság,Tengerszint feletti magasság,Dátum,Gyűjtő,Határozta,Megjegyzés",
			"recordNumber family scientificName stateProvince municipality locality habitat decimalLatitude decimalLongitude minimumElevationInMeters eventDate recordedBy identifiedBy occurrenceRemarks"},
		{"Toplama No,Familya,Cins,Tür,İl,İlçe,Mevkii,Yetişme ortamı,Enlem,Boylam,Rakım,Tarih,Toplayan,Teşhis eden,Açıklama",
			"recordNumber family genus specificEpithet stateProvince county locality habitat decimalLatitude decimalLongitude minimumElevationInMeters eventDate recordedBy identifiedBy occurrenceRemarks"},
		{"№ образца,Семейство,Вид,Авторы вида,Регион,Район,Место находки,Экотоп,Широта,Долгота,Высота над ур. м.,Дата находки,Собрал(а),Определил,Гербарий",
			"recordNumber family scientificName scientificNameAuthorship stateProvince county locality habitat decimalLatitude decimalLongitude minimumElevationInMeters eventDate recordedBy identifiedBy institutionCode"},
		{"Родина,Назва виду,Область,Район,Місце збору,Оселище,Координати,Дата збору,Зібрав,Визначив,Примітки",
			"family scientificName stateProvince county locality habitat verbatimCoordinates eventDate recordedBy identifiedBy occurrenceRemarks"},
		{"Keruunumero,Heimo,Laji,Maakunta,Kunta,Löytöpaikka,Kasvupaikka,Leveysaste,Pituusaste,Päivämäärä,Kerääjä,Määrittäjä,Huomautuksia",
			"recordNumber family scientificName stateProvince municipality locality habitat decimalLatitude decimalLongitude eventDate recordedBy identifiedBy occurrenceRemarks"},
		{"N. campione,Data raccolta,Famiglia,Specie,Regione,Comune,Frazione,Vegetazione,Ospite,Precisione,Rilevatore",
			"recordNumber eventDate family scientificName stateProvince municipality locality habitat associatedTaxa coordinateUncertaintyInMeters recordedBy"},
		{"Departamento,Municipio,Vereda,Predio,Colector,Fecha,Científico", "stateProvince municipality locality locality recordedBy eventDate scientificName"},
		{"Собрал;Место сбора;Высота над ур. м., м;Формация", "recordedBy locality minimumElevationInMeters ?"},
		{"Flia.,Especie,Pcia.,Dpto.,Sector,Suelo,Hospedante,Alt. msm,Nro. de colector,Leg.,Duplic.,N. vulgar",
			"family scientificName stateProvince stateProvince locality habitat associatedTaxa minimumElevationInMeters recordNumber recordedBy duplicatesTo vernacularName"},
		{"N.º,Colector,N.º do colector,Província,Posto administrativo,Localid.,Solo,Fen.,Observação",
			"? recordedBy recordNumber stateProvince county locality habitat reproductiveCondition occurrenceRemarks"},
		{"No. koleksi,Kolektor,Tanggal,Provinsi,Kabupaten,Kecamatan,Desa,Lokasi,Ketinggian (mdpl),Lintang,Bujur,Suku,Marga,Jenis,Nama lokal,Kegunaan,Catatan,Diidentifikasi oleh",
			"recordNumber recordedBy eventDate stateProvince county municipality municipality locality minimumElevationInMeters decimalLatitude decimalLongitude family genus specificEpithet vernacularName uses occurrenceRemarks identifiedBy"},
		{"Heimo,Suku,Laji,Kunta", "family genus specificEpithet municipality"},
		{"Land,Reg.-Bez.,Lkr.,Ortsteil,Gestein,Phorophyt", "country county county locality habitat associatedTaxa"},
		{"Edo.,Mpio.,Tipo veg.,Nom. común,Col. principal,Colectores adicionales", "stateProvince municipality habitat vernacularName recordedBy coCollectors"},
		{"Dép.,Localisation,Plante hôte,Observateur,N° échantillon,Rq", "stateProvince locality associatedTaxa recordedBy recordNumber occurrenceRemarks"},
		{"Sippe,Sammelort,Pol. Bezirk,Wuchsort,Trägerpflanze,Fundtag,Beobachter", "scientificName locality county habitat associatedTaxa eventDate recordedBy"},
		{"Wet. naam,Dorp,Vindplaats,Verz.,Verzameld op,Opm.", "scientificName municipality locality recordedBy eventDate occurrenceRemarks"},
		{"Lokalnamn,Provins,Observatörer,Best. av,Publik kommentar", "locality stateProvince recordedBy identifiedBy occurrenceRemarks"},
		{"Собр.,Опр.,Прим.,№ герб. листа,Видовой эпитет,Род", "recordedBy identifiedBy occurrenceRemarks catalogNumber specificEpithet genus"},
		{"Gyűjtötte,Lelőhely,Gazdafaj,EOV Y,EOV X,Megj.", "recordedBy locality associatedTaxa easting northing occurrenceRemarks"},
		// The ends of a range, and names in two columns.
		{"Wysokość od,Wysokość do,Imię,Nazwisko,Rok oznaczenia,Gatunek", "minimumElevationInMeters maximumElevationInMeters recordedBy recordedBy dateIdentified scientificName"},
		{"Nadm. výška od,Nadm. výška do,Hloubka do,Příjmení,Jméno,Druh", "minimumElevationInMeters maximumElevationInMeters maximumDepthInMeters recordedBy recordedBy scientificName"},
		{"Высота от;Высота до;Широта, град.;Широта, мин.;Фамилия;Имя", "minimumElevationInMeters maximumElevationInMeters latitudeDegrees latitudeMinutes recordedBy recordedBy"},
		{"Höjd från,Höjd till,Förnamn,Efternamn", "minimumElevationInMeters maximumElevationInMeters recordedBy recordedBy"},
		{"Altitud desde,Altitud hasta,Nombre colector,Apellido colector,Especie", "minimumElevationInMeters maximumElevationInMeters recordedBy recordedBy scientificName"},
		{"Nome raccoglitore,Specie", "recordedBy scientificName"},
		{"Nome raccoglitore,Cognome raccoglitore,Raccoglitori,Specie", "recordedBy ? recordedBy scientificName"},
		{"Formación vegetal,Estado fenológico,Colector", "habitat reproductiveCondition recordedBy"},
		// "Datum" is no date among English headings.
		{"Datum,Locality,Collector", "geodeticDatum locality recordedBy"},
	} {
		tb, _ := readAll(t, c.in+"\n", Options{})
		var got []string
		for _, col := range tb.Columns() {
			term := col.Term
			if !col.Known {
				term = "?"
			}
			got = append(got, term)
		}
		if g := strings.Join(got, " "); g != c.want {
			t.Errorf("%s:\n%s\n%s", c.in, g, c.want)
		}
	}
}

// TestDaysFirst reads full stops between the figures of a date by the language of
// the headings, unless a date of the column speaks against it.
func TestDaysFirst(t *testing.T) {
	for _, c := range []struct {
		in   string
		want bool
		note bool
	}{
		{"Sběratel;Lokalita;Datum\nNovotná;Lindoso;3.4.2019\n", true, true},
		{"Sběratel;Lokalita;Datum\nNovotná;Lindoso;3. 4. 2019\n", true, true},
		{"Sběratel;Lokalita;Datum\nNovotná;Lindoso;13.4.2019\n", true, false},
		{"Sběratel;Lokalita;Datum\nNovotná;Lindoso;3.4.2019\nNovotná;Lindoso;4.23.2019\n", false, false},
		{"Sběratel;Lokalita;Datum\nNovotná;Lindoso;3/4/2019\n", false, false},
		{"Sběratel;Lokalita;Datum\nNovotná;Lindoso;2019.4.3.\n", false, false},
		{"Coletor;Localidade;Data\nPrado;Lindoso;3/4/2019\nPrado;Lindoso;23/4/2019\n", true, true},
		{"Coletor;Localidade;Data\nPrado;Lindoso;3-4-2019\nPrado;Lindoso;23-4-2019\n", true, true},
		{"Coletor;Localidade;Data\nPrado;Lindoso;3/4/2019\nPrado;Lindoso;4/23/2019\n", false, false},
		{"Collector;Locality;Date\nLee;Lindoso;3/4/2019\nLee;Lindoso;23/4/2019\n", false, false},
		{"Samler;Lokalitet;Dato\nLie;Lindoso;3/4 2019\n", true, true},
		{"Collector;Locality;Date\nLee;Lindoso;3.4.2019\n", false, false},
		{"recordedBy;locality;eventDate;Bemerkungen\nLee;Lindoso;3.4.2019;\n", false, false},
	} {
		tb, _ := readAll(t, c.in, Options{})
		i := tb.Index("eventDate")
		if got := i >= 0 && tb.Columns()[i].DayFirst; got != c.want {
			t.Errorf("%s: day first %v", c.in, got)
		}
		note := false
		for _, f := range tb.Findings() {
			note = note || strings.Contains(f.Message, "day first")
		}
		if note != c.note {
			t.Errorf("%s: said %v", c.in, note)
		}
	}
}

// TestSidesOfAngles takes the side of the world that a heading names for angles
// too, and reads a word for coordinates with a side.
func TestSidesOfAngles(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{"Latitud S;Longitud W;Localidad\n12°05'20\";72°49'35\";Timpía\n", "verbatimLatitude=12°05'20\" verbatimLongitude=72°49'35\" latitudeHemisphere=S longitudeHemisphere=W"},
		{"Latitud S;Longitud W;Localidad\n12°05'20\" S;72°49'35\" W;Timpía\n", "verbatimLatitude=12°05'20\" S verbatimLongitude=72°49'35\" W"},
		{"Coordenadas N;Coordenadas W;Localidad\n5°38'12\"N;73°31'05\"W;Virolín\n5°38'13\"N;73°31'06\"W;Virolín\n5°38'14\"N;73°31'07\"W;Virolín\n", "verbatimLatitude=5°38'12\"N verbatimLongitude=73°31'05\"W"},
		{"Coordenadas N;Coordenadas W;Localidad\n5.6371;73.5181;Virolín\n5.6372;73.5182;Virolín\n5.6373;73.5183;Virolín\n", "decimalLatitude=5.6371 decimalLongitude=73.5181 longitudeHemisphere=W"},
		{"Coord. N;Coord. O;Localidad\n5,6371;73,5181;Virolín\n5,6372;73,5182;Virolín\n5,6373;73,5183;Virolín\n", "decimalLatitude=5,6371 decimalLongitude=73,5181 latitudeHemisphere=N longitudeHemisphere=W"},
		{"Koord. N;Koord. O;Fundort;Gemeinde;Sammler\n46,657;7,913;Grat;Davos;K. Obwexer\n46,658;7,914;Grat;Davos;K. Obwexer\n46,659;7,915;Grat;Davos;K. Obwexer\n", "decimalLatitude=46,657 decimalLongitude=7,913"},
		{"Koordinaten;;Höhe;Fundort;Sammler\nN;E;m ü. M.;;\n47,1080;11,6440;2300;Zillertal;Brandt\n47,1081;11,6441;2300;Zillertal;Brandt\n", "decimalLatitude=47,1080 decimalLongitude=11,6440"},
		{"Współrzędne;;Wysokość;;Stanowisko;Zebrał\nszerokość;długość;od;do;;\n49,2400;20,0100;1500;1550;Tatry;Nowak\n49,2401;20,0101;1500;;Tatry;Nowak\n", "decimalLatitude=49,2400 decimalLongitude=20,0100"},
		{"Coordenadas;Localidad\n5.6371, -73.5181;Virolín\n", "verbatimCoordinates=5.6371, -73.5181"},
	} {
		tb, rows := readAll(t, c.in, Options{})
		var got []string
		for _, term := range []string{"decimalLatitude", "decimalLongitude", "verbatimLatitude", "verbatimLongitude", "verbatimCoordinates", "latitudeHemisphere", "longitudeHemisphere"} {
			if s := rows[0].Text(term); tb.Has(term) && s != "" {
				got = append(got, term+"="+s)
			}
		}
		if g := strings.Join(got, " "); g != c.want {
			t.Errorf("%s:\n%s\n%s", c.in, g, c.want)
		}
	}
}

// TestSlipOverNames reads a heading that is a slip away from a word for names, and
// then looks at its cells.
func TestSlipOverNames(t *testing.T) {
	tb, _ := readAll(t, "Colectores;Local;Táxone\nSerra;Lindoso;Poa annua L.\nSerra;Lindoso;Poa trivialis L.\nSerra;Lindoso;Poa bulbosa L.\n", Options{})
	if i := tb.Index("scientificName"); i != 2 {
		t.Errorf("the name is in column %d", i)
	}
}
