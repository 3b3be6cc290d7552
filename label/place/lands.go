package place

import (
	_ "embed"
	"slices"
	"strings"
	"sync"
	"unicode"
)

// landTable has a line for every name that is none of one country of ISO
// 3166-1 alone: states that are no more, lands that lie in several, and names
// that mean a country to one writer and a wider land to another, which count
// for the wider. Before the colon stand the countries of today that the name
// can mean, behind it the spellings, parted by bars.
//
// Sources: ISO 3166-3 (names of countries that are no more); the World
// Geographical Scheme for Recording Plant Distributions, TDWG, edition 2
// (which botanical areas cross borders); general history. All from memory, and
// generous: a country too many costs less than a sound record called wrong.
const landTable = `
SI HR BA RS XK ME MK IT: Yugoslavia|YU|YUG|Jugoslavia|Jugoslawien|Yougoslavie|Iugoslávia|Jugoslávia|Jugoslavija|Югославия|SFRJ|SFR Yugoslavia|FR Yugoslavia|Kingdom of Serbs, Croats and Slovenes
RS ME XK: Serbia and Montenegro|SCG|CS|Serbia & Montenegro|Serbien und Montenegro|Serbie-et-Monténégro|Srbija i Crna Gora
XK RS: Kosovo|Kosovo and Metohija|Kosova|Republic of Kosovo
CZ SK UA: Czechoslovakia|CSK|CS|Czecho-Slovakia|Tschechoslowakei|ČSSR|ČSR|ČSFR|Tchécoslovaquie|Checoslovaquia|Checoslováquia|Cecoslovacchia|Československo|Tsjechoslowakije
RU UA BY MD EE LV LT GE AM AZ KZ UZ TM KG TJ: USSR|SU|SUN|Soviet Union|Union of Soviet Socialist Republics|UdSSR|Sowjetunion|URSS|Union soviétique|Unión Soviética|União Soviética|СССР|SSSR|Sovjetunionen|CCCP|Former USSR|ex-URSS|CIS
RU UA BY MD EE LV LT GE AM AZ KZ UZ TM KG TJ FI PL: Russian Empire|Imperial Russia|Imperium Rossicum|Rossia|Ruthenia|Sarmatia
DE: East Germany|DD|West Germany|DDR|GDR|BRD|FRG|German Democratic Republic|Deutsche Demokratische Republik|RDA|RFA|Germany (West)|Germany (East)|East German Democratic Republic
DE PL RU FR LT DK CZ BE: German Empire|Deutsches Reich|German Reich|Germania
DE PL RU LT: Prussia|Preussen|Preußen|Prusse|Prusia|Prússia|Borussia
PL RU LT: East Prussia|Ostpreußen|Ostpreussen|West Prussia|Westpreußen|Memelland
PL DE: Pomerania|Pommern|Poméranie|Brandenburg|Mark Brandenburg|Neumark|Posen
PL CZ DE: Silesia|Schlesien|Slezsko|Śląsk|Silésie|Lusatia|Lausitz|Sudetes|Sudeten|Sudetenland
CZ DE AT PL: Bohemia|Böhmen|Bohême|Čechy|Moravia|Mähren|Morava
AT HU CZ SK SI HR BA PL UA RO RS IT ME MD: Austria-Hungary|Austro-Hungary|Österreich-Ungarn|Austro-Hungarian Empire|Autriche-Hongrie|Austrian Empire|Austro-Hungarian Monarchy|Imperium Austriacum
ES PL UA: Galicia|Galizien|Galicja|Galicie|Galiza|Галичина|Halychyna
AT IT CH: Tyrol|Tirol|Tirolo|Tyrolia|South Tyrol|Südtirol|Rhaetia|Rätien
FR IT CH: Savoy|Savoie|Savoia|Savoyen|Saboya|Kingdom of Sardinia|Sardinia-Piedmont|Piedmont|Piemont|Piémont|Valais|Wallis (Alps)
FR IT CH LI AT DE SI MC: Alps|Alpen|Alpes|Alpi|Alpes Maritimes|Maritime Alps
FR CH DE: Jura|Lorraine|Lothringen|Alsace|Elsass|Elsaß|Alsace-Lorraine|Elsass-Lothringen
BE FR LU DE: Ardennes|Ardennen|Eifel
LU BE: Luxembourg|Luxemburg|Luxemburgo|Luxembourg (Grand Duchy)
BE FR NL: Flanders|Flandern|Flandre|Flandres|Vlaanderen
BE NL LU: Low Countries|Benelux|Brabant|Limburg|Belgian Netherlands|Belgium and Luxembourg
NL BE LU: Belgium and the Netherlands|Seventeen Provinces
NL ID: Batavia
NL DE: Friesland|Frisia|East Frisia
DE DK: Schleswig|Slesvig|Holstein|Schleswig-Holstein|Jutland|Jylland
NO SE FI RU: Lapland|Lappland|Lapponia|Laponie|Laponia|Lappi|Sápmi|Finmark|Finnmark and Lapland
NO SE FI DK RU IS: Scandinavia|Skandinavien|Scandinavie|Fennoscandia|Fennoskandien|Nordic countries
FI RU: Karelia|Karelien|Carelia|Karjala|Grand Duchy of Finland
LV EE LT RU: Livonia|Livland|Livonie|Curland|Courland|Kurland|Baltic States|Baltic provinces|Baltikum|Baltic
UA PL BY MD: Volhynia|Volhynien|Podolia|Podolien|Little Russia|Polesia
UA SK HU: Ruthenia (Carpathian)|Carpathian Ruthenia|Subcarpathian Ruthenia|Karpatenukraine
SK PL UA RO CZ HU RS: Carpathians|Karpaten|Carpathian Mts|Tatra|High Tatra|Tatry|Tatra Mts
RO UA: Bukovina|Bukowina|Bucovina
MD RO UA: Moldavia|Moldau|Moldova|Bessarabia|Bessarabien|Moldavie|Moldávia|Bessarabie|Moldavian SSR|Moldovia
MD UA: Transnistria|Pridnestrovie|Transdniestria
RO RS HU: Banat|Banatus|Bánát
RO HU: Transylvania|Transsilvania|Siebenbürgen|Transylvanie|Erdély|Ardeal
RO BG: Dobruja|Dobrudscha|Dobrogea|Wallachia|Valachia|Dacia
HU AT HR SI RS SK: Pannonia|Pannonien
HU SK RO RS HR UA SI AT: Kingdom of Hungary|Hungaria|Ungarn (Königreich)|Greater Hungary
SI HR IT: Istria|Istrien|Istra|Küstenland|Litorale|Carniola|Krain|Crain|Illyria|Trieste|Venezia Giulia|Julian Alps|Julische Alpen
AT SI IT HU: Carinthia|Kärnten|Styria|Steiermark|Stiria|Karawanken
HR BA ME: Dalmatia|Dalmatien|Dalmatie|Dalmazia|Croatia and Slavonia|Herzegovina|Hercegovina
MK GR BG AL RS XK: Macedonia|Mazedonien|Makedonien|Macédoine|Makedonija|Македонија|Македония|Makedonia|Macedónia|Macedônia|Μακεδονία
GR AL MK: Epirus|Epire|Epir|Albania and Epirus
GR BG TR: Thrace|Thracia|Thrakien|Tracia|Trácia|Trakya
BG GR TR MK AL RS: Rumelia|Roumelia|Rumelien|Roumélie|European Turkey|Turkey-in-Europe|Balkans|Balkan Peninsula|Balkan|Balcanes
GR TR: Aegean Islands|Aegean|Ägäis|Crete|Kreta|Candia|Dodecanese|Greek Islands
TR GR SY AM GE IQ BG CY LB IL PS JO EG MK AL RS BA ME: Ottoman Empire|Turkish Empire|Empire ottoman|Osmanisches Reich|Imperio Otomano
TR AM GR SY IQ: Asia Minor|Anatolia|Anatolien|Kleinasien|Asie Mineure|Anatolie|Turkey-in-Asia|Asia Menor|Cilicia|Anadolu|Orient
AM TR IR AZ GE: Armenia|Armenien|Arménie|Arménia|Turkish Armenia|Armenian Highland|Hayastan|Армения
TR IQ IR SY AM: Kurdistan|Curdistan|Kurdistán
GE AM AZ RU TR: Caucasus|Kaukasus|Caucase|Cáucaso|Transcaucasia|Transkaukasien|Кавказ|Ciscaucasia|Iberia (Caucasus)
AZ IR: Azerbaijan|Aserbaidschan|Azerbaïdjan|Azerbaiyán|Azerbaijão|Talysh|Talisch
AZ AM: Nagorno-Karabakh|Nagorno Karabakh|Artsakh|Karabakh|Nagorny Karabakh|Karabagh
GE RU: Abkhazia|Abchasien|Abkhazie|Abjasia|South Ossetia|Ossetia|Südossetien|Abkhaz ASSR|Ossétie du Sud
CY TR: Northern Cyprus|North Cyprus|TRNC|KKTC|Turkish Republic of Northern Cyprus|Nordzypern
UA RU: Crimea|Krim|Crimée|Crimeia|Krym|Крым|Крим|Taurida|Tauria|Novorossiya|New Russia|Donbas|Donetsk|Luhansk
KZ UZ TM KG TJ CN AF RU: Turkestan|Turkistan|Turkestán|Turquestão|Turkestania|Russian Turkestan|Central Asia|Middle Asia|Zentralasien|Mittelasien|Asie centrale|Средняя Азия|Soviet Central Asia|Tian Shan|Tien Shan|Pamir|Pamirs|Songaria|Dzungaria|Dsungarei|Soongaria
UZ TM TJ: Bukhara|Buchara|Bokhara|Khiva|Chiwa|Transcaspia|Transkaspien|Turcomania
CN KG KZ: Chinese Turkestan|Eastern Turkestan|East Turkestan|Sinkiang|Kashgaria
IR TM AF: Khorasan|Khorassan|Chorassan
IR AZ AF TM: Persian Empire|Media (Persia)
PK IR AF: Baluchistan|Beluchistan|Balochistan|Belutschistan|Makran|Seistan|Sistan
IN PK: Punjab|Panjab|Pendjab|Sind|Sindh|Rajputana|Jammu and Kashmir (undivided)
IN PK CN: Kashmir|Cashmere|Kaschmir|Cachemire|Cachemira|Caxemira|Jammu and Kashmir|Jammu & Kashmir|Azad Kashmir|Karakoram|Karakorum|Ladakh|Baltistan|Gilgit|Gilgit-Baltistan|Northern Areas
IN BD: Bengal|Bengalen|Bengale|Bengala|Assam|Sylhet|Khasia|Khasi Hills|East Bengal and Assam
BD PK: East Pakistan|West Pakistan|Pakistan (East)
IN PK BD MM LK NP BT: British India|Britisch-Indien|Inde britannique|Indian Empire|British Raj|Hindustan|Hindostan|Indian Subcontinent|South Asia|Undivided India
IN PK BD MM LK MY SG ID TH KH VN LA PH BN TL: East Indies|East India|Ostindien|Indes orientales|India orientalis|India Orientalis|Indes|Indian Archipelago|Indiae Orientales|Indien (Ost)|Indias Orientales|Índias Orientais
IN NP BT CN PK MM AF: Himalaya|Himalayas|Himalayan Region|Western Himalaya|Eastern Himalaya|Emodus|Sikkim Himalaya
CN IN NP BT: Tibet|Thibet|Xizang|Tibete|Western Tibet|西藏|Tibetan Plateau
IN NP CN BT: Sikkim|Sikkim and Tibet
IN CN: Arunachal Pradesh|North-East Frontier Agency|NEFA|South Tibet|Zangnan|Aksai Chin
IN: Portuguese India|Índia Portuguesa|French India|Inde française|Goa, Daman and Diu|Estado da Índia|India (Portuguese)
MN CN RU: Mongolia|Mongolei|Mongolie|Mongólia|Mongolia Chinensis|Inner Mongolia|Outer Mongolia|Mongolian People's Republic|Монголия|蒙古
CN RU KP: Manchuria|Mandschurei|Mandchourie|Manchukuo|Manschurei|满洲|満洲|Amur Region|Amurland|Ussuri|Dauria|Dahuria|Davuria|Transbaikalia
RU KZ CN MN: Altai|Altay|Siberia|Sibirien|Sibérie|Sibéria|Сибирь|Far East|Sibiria|Altai Mts
RU MN: Tuva|Tannu-Tuva|Tannu Tuva
RU JP: Kuril Islands|Kurile Islands|Kurilen|Kuriles|Kuril Is|Sakhalin|Saghalien|Karafuto|Chishima|Northern Territories (Japan)|Kurils|Îles Kouriles
KR KP: Korea|Corea|Corée|Coreia|Chosen|Chōsen|Joseon|한국|朝鮮|朝鲜|Корея|Corea (peninsula)
JP KR KP TW RU: Japanese Empire|Empire of Japan
JP: Ryukyu Islands|Ryukyus|Loo Choo|Liukiu|Nansei-shoto|Bonin Islands|Ogasawara Islands
CN TW HK MO: China|Kina|Cina|Chine|中國|中华|Chinese Empire|Greater China|République populaire de Chine|PRC|P.R.C.|P.R. China|Kitai|Китай|Sina|Catai
TW CN: Taiwan, China|Taiwan, Province of China|Chinese Taipei|China (Taiwan)|Taiwan (China)|臺灣|台湾|中華民國|R.O.C.|ROC|Republic of China (Taiwan)
CN HK: British Hong Kong|Hong Kong and Kowloon|Canton
VN LA KH TH MM MY: Indochina|Indo-China|Indochine|Indochina francesa|French Indochina|Indochine française|Indochina (French)|Hinterindien|Further India|Union Indochinoise|Annam|Cochinchina|Cochinchine|Cochin China|Tonkin|Tonquin|Kotschinchina|Kochinchina
VN: North Vietnam|South Vietnam|Vietnam (South)|Democratic Republic of Vietnam|Republic of Vietnam|Annam and Tonkin
TH LA KH MY: Siam
MY SG TH: Malaya|Malay Peninsula|British Malaya|Federation of Malaya|Malacca|Malakka|Straits Settlements|Federated Malay States|FMS|F.M.S.|Peninsular Malaysia|Malaiische Halbinsel|Penang|Johore|Malay States
MY SG ID BN PH PG TL: Malesia|Malaysian Archipelago|Malay Archipelago|Malaiischer Archipel|Malayan Archipelago|Insulinde|Nusantara|Archipel malais
ID MY BN: Borneo|Bornéo|Bornéu|Kalimantan|Borneo (British)|British Borneo|Northwest Borneo|婆羅洲
MY BN: North Borneo|British North Borneo|Sabah|Sarawak|Labuan
ID: Java|Sumatra|Celebes|Sulawesi|Moluccas|Molukken|Maluku|Bali|Lombok|Flores (Indonesia)|Sumba|Jawa|Amboina|Ambon|Ceram|Ternate|Batavia (Java)
ID PG TL MY BN SG: Dutch East Indies|Netherlands Indies|Netherlands East Indies|Nederlands-Indië|Niederländisch-Indien|Nederlands Oost-Indië|Indes néerlandaises|N.E.I.|NEI|Oost-Indië
ID TL MY BN: Sunda Islands|Lesser Sunda Islands|Lesser Sunda Is|Greater Sunda Islands|Kleine Sunda-Inseln|Nusa Tenggara
TL ID: Timor|West Timor
TL: Portuguese Timor|TP|TMP|Timor Português|East Timor|Timor Oriental|Timor Lorosae|Osttimor
PG ID: New Guinea|Neuguinea|Nouvelle-Guinée|Nieuw-Guinea|Nueva Guinea|Nova Guiné|Nova Guinea|Papua|Papuasia|Papuasien|Irian|Irian Jaya|West Irian|West Papua|Dutch New Guinea|Netherlands New Guinea|Territory of New Guinea|Papua and New Guinea|Papua & New Guinea|Kaiser-Wilhelmsland|German New Guinea|Deutsch-Neuguinea|British New Guinea|Territory of Papua|Nederlands Nieuw-Guinea|Papouasie
SB PG: Solomon Islands|Solomons|Solomon Is|British Solomon Islands|British Solomon Islands Protectorate|BSIP|Salomonen|Islas Salomón|Îles Salomon|Ilhas Salomão|Bougainville|Salomon-Inseln|North Solomons
PG: Bismarck Archipelago|New Britain|New Ireland|Neu-Pommern|Neu-Mecklenburg|Manus|Admiralty Islands
AU: New Holland|Nova Hollandia|Neuholland|Neu-Holland|Nouvelle-Hollande|Commonwealth of Australia|Tasmania|Van Diemen's Land|Queensland|New South Wales|N.S.W.|NSW|South Australia|Western Australia|Northern Territory|Lord Howe Island|Coral Sea Islands|Macquarie Island|Ashmore and Cartier Islands
AU PG: Torres Strait|Torres Strait Islands
NZ: Kermadec Islands|Chatham Islands|Subantarctic Islands of New Zealand|Auckland Islands|Campbell Island|New Zealand (South Island)
WS AS: Samoa|Samoa Islands|Samoan Islands|Navigators Islands|Samoa-Inseln|Îles Samoa
WS: Western Samoa|W. Samoa|Deutsch-Samoa|German Samoa
FM PW MH MP GU KI NR UM: Micronesia|Mikronesien|Micronésie|Micronésia|Trust Territory of the Pacific Islands|Pacific Islands Trust Territory|Pacific Islands (Trust Territory)|TTPI|South Sea Mandate|Nan'yo|Caroline Islands|Carolines|Karolinen|Carolinas|West Caroline Islands
MP GU: Mariana Islands|Marianas|Marianen|Marianne Islands|Ladrones|Ladrone Islands|Marianes
KI TV: Gilbert and Ellice Islands|Gilbert & Ellice Islands|Gilbert Islands|Gilbertinseln|Ellice Islands|Kingsmill Islands
KI PF CK UM: Line Islands|Phoenix Islands|Fanning Island|Christmas Island (Line Islands)|Central Polynesian Sporades
CX KI: Christmas Island|Isla de Navidad|Île Christmas|Weihnachtsinsel|Ilha do Natal|Kiritimati
PF CK NU TO WS AS TK TV WF PN KI NZ US CL UM: Polynesia|Polynesien|Polynésie|Polinesia|Polinésia|South Sea Islands|South Pacific Islands|Insulae Maris Pacifici
FR PF: Clipperton|Clipperton Island|Île de la Passion
PF: Society Islands|Tahiti|Marquesas|Marquesas Islands|Tuamotu|Tuamotus|Tubuai|Austral Islands|Gambier Islands|Îles Marquises|Otaheite|Tuamotu Archipelago|Rapa
FJ SB VU NC PG ID: Melanesia|Melanesien|Mélanésie
NC: Loyalty Islands|Iles Loyauté|New Caledonia and Dependencies|Isle of Pines
VU SB: New Hebrides|Nouvelles-Hébrides|Neue Hebriden|Santa Cruz Islands|Banks Islands|Nuevas Hébridas
TO: Friendly Islands
NU CK: Savage Island
US GS: Sandwich Islands|Îles Sandwich|Sandwich-Inseln|Insulae Sandwicenses
US: Hawaiian Islands|Hawaii Islands|Hawaiian Is|Hawai'i|Hawaiʻi|Territory of Hawaii|Alaska Territory|Aleutian Islands|Aleutians|United States (USA)|U.S.A|North America (USA)
US UM: Midway|Midway Islands|Northwestern Hawaiian Islands
UM US MH: Wake Island|Johnston Atoll|Palmyra|Palmyra Atoll|Howland Island|Baker Island|Jarvis Island
US RU CA: Russian America|Bering Sea Islands|Beringia
US CA: Oregon Territory|Oregon Country|British North America|New France|Nouvelle-France|North America|Nordamerika|Norteamérica|Amérique du Nord|America Septentrionalis|America Borealis|Great Lakes
US MX CA: Texas|Tejas|California|Californie|Kalifornien|New Mexico|Neu-Mexiko|Alta California|Baja California|Sonora|Chihuahua|Sonoran Desert
MX US GT BZ SV HN NI CR: New Spain|Nueva España|Nova Hispania|Neuspanien|Nouvelle-Espagne|Vice-Royalty of New Spain
MX GT BZ: Yucatan|Yucatán|Yucatan Peninsula|Chiapas|Petén|Peten|Soconusco
GT BZ HN SV NI CR PA MX: Central America|América Central|Centroamérica|Mittelamerika|Zentralamerika|Amérique centrale|Mesoamerica|Mesoamérica|America Centralis|Federal Republic of Central America
HN NI: Mosquitia|Mosquito Coast|La Mosquitia
PA CO: Darien|Darién|Isthmus of Panama|Canal Zone|Panama Canal Zone|Zona del Canal|C.Z.|Chocó|Choco
PA: Panama Canal|Panamá (Zona del Canal)
CO PA VE EC: New Granada|Nueva Granada|Neu-Granada|Nouvelle-Grenade|Gran Colombia|Great Colombia|Columbia|Neugranada|New Grenada
PE BO EC CL: Peru (Viceroyalty)|Peruvia|Upper Peru|Alto Perú|Altiplano|Alto Peru
CO EC PE BO VE CL AR: Andes|Anden|Los Andes|Cordillera
AR CL: Patagonia|Patagonien|Patagonie|Patagônia|Patagónia|Tierra del Fuego|Fuegia|Feuerland|Terre de Feu|Terra do Fogo|Terra Magellanica|Magellanica|Strait of Magellan|Magallanes|Fretum Magellanicum
AR PY BO: Chaco|Gran Chaco|El Chaco|Grand Chaco
AR UY PY BO BR: La Plata|Rio de la Plata|Río de la Plata|Argentine Confederation|United Provinces of the Rio de la Plata|Bonaria
UY BR: Banda Oriental|Cisplatina
BR PE CO VE EC BO GY SR GF: Amazonia|Amazônia|Amazonas|Amazon|Amazonie|Amazonien|Amazon Basin|South America|Südamerika|América del Sur|Sudamérica|Amérique du Sud|America Meridionalis
GY SR GF VE BR: Guiana|Guianas|Guayana|Guayanas|The Guianas|Guianas (The)|Guianan Region|Guiana Shield|Guyana Region|Guyane|Guyanes|Guayana Highland|Guyanas
GF FR: Guyane française|Guyane (France)|French Guyana|Cayenne
SR GF: Dutch Guiana|Surinam (Dutch Guiana)|Dutch Guyana|Nederlands Guyana
GY VE: Guayana Esequiba|Essequibo|Demerara|Guyana (British)|British Guyana
VG VI PR: Virgin Islands|Virgin Is|Îles Vierges|Jungferninseln|Islas Vírgenes|Ilhas Virgens
VI: Danish West Indies|Dansk Vestindien|Dänisch-Westindien|St. Croix|Saint Croix|St. Thomas|US Virgin Is|U.S.V.I.|USVI
MF SX FR NL GP: Saint Martin|St. Martin|Saint-Martin|San Martín|São Martinho|Sint Maarten|St. Maarten|Sint-Maarten|Saint Martin (French part)
HT DO: Hispaniola|Española|Santo Domingo|Saint-Domingue|St. Domingo|San Domingo|St-Domingue|Saint Domingue|Haiti (island)|Quisqueya|Domingo|Sto. Domingo|Insula Hispaniola
AW BQ CW SX: Netherlands Antilles|AN|Nederlandse Antillen|Antillas Holandesas|Antillas Neerlandesas|Niederländische Antillen|Dutch Antilles|Antilles néerlandaises|Dutch West Indies|Antilhas Holandesas|Ned. Antillen|ANT|Curaçao and Dependencies|ABC Islands
GP MQ MF BL FR: French West Indies|Antilles françaises|French Antilles|Antillas francesas
CU JM HT DO PR BS TC KY VI VG AI MF SX BL BQ KN AG MS GP DM MQ LC VC GD BB TT AW CW FR NL US VE BM: West Indies|Antilles|Antillas|Antilhas|Antillen|Westindien|Indes occidentales|Caribbean|Caribbean Islands|Karibik|Caribe|Caraïbes|Greater Antilles|Lesser Antilles|Antilles (Lesser)|Antilles (Greater)|British West Indies|B.W.I.|BWI|India Occidentalis|Indias Occidentales|West Indies (British)|Leeward Islands|Windward Islands|Petites Antilles|Kleine Antillen|Große Antillen|West Indies Federation|Antillae|Indiae Occidentales|Antillas Mayores|Antillas Menores
VC GD: Grenadines|The Grenadines
KN AI VG: St. Kitts-Nevis-Anguilla|Saint Kitts-Nevis-Anguilla|St. Christopher-Nevis-Anguilla|St. Christopher
BS TC KY JM: Lucayan Archipelago|Bahama Islands|Bahamas Islands|Bahama Is
GB IE IM GG JE: British Isles|Britain|Great Britain|Great Britain and Ireland|Britannia|UK and Ireland|Îles Britanniques|Britische Inseln|Islas Británicas|Ilhas Britânicas|United Kingdom of Great Britain and Ireland|Grande-Bretagne|Großbritannien|Gran Bretaña|Grã-Bretanha|Gran Bretagna
GG JE GB FR US: Channel Islands|Channel Is|Îles Anglo-Normandes|Kanalinseln|Anglo-Norman Islands|Islas del Canal|Iles Normandes
ES PT GI AD: Iberia|Iberian Peninsula|Península Ibérica|Hispania|Iberische Halbinsel|Péninsule Ibérique|España y Portugal|Spain and Portugal|Peninsula Iberica
PT ES: Lusitania|Lusitanie|Lusitanien|Extremadura|Estremadura|Couto Misto
ES FR AD: Pyrenees|Pyrénées|Pirineos|Pyrenäen|Pirinéus|Catalonia|Cataluña|Catalunya|Catalogne|Katalonien|Navarre|Navarra|Basque Country|País Vasco|Euskadi|Cerdagne|Roussillon|Pirineus
PT ES CV: Macaronesia|Macaronésia|Makaronesien|Atlantic Islands|Insulae Atlanticae
ES: Canaries|Canary Is|Canarias|Kanaren|Kanarische Inseln|Canárias|Îles Canaries|Insulae Canariae|Islas Canarias (España)|Balearic Islands|Baleares|Balearen|Mallorca|Tenerife|Gran Canaria
PT: Açores (Portugal)|Azoren|Azores Islands|Ilhas dos Açores|Madeira Islands|Madère|Arquipélago da Madeira|Selvagens|Portugal continental
IT SM VA: Italia|Italien|Italie|Italy
IT FR: Sardinia|Corsica|Korsika|Corse|Liguria|Nice|Nizza
IT MT: Sicily|Sicilia|Sizilien|Two Sicilies|Kingdom of Naples
FR IT MC: Provence|Riviera|County of Nice
GR CY: Cyprus and Crete
SJ NO: Spitzbergen|Spitsbergen|Svalbard|Bear Island|Bjørnøya|Svalbard (Norway)
GL CA DK: Hans Island
DK GL FO IS: Danish Kingdom|Kingdom of Denmark
CA PM: Newfoundland|Terre-Neuve|Neufundland
CA: Lower Canada|Upper Canada|Rupert's Land|Labrador|British Columbia|Nova Scotia|Hudson Bay
PS IL JO: Palestine|Palästina|Palestina|Palestine (Mandate)|Holy Land|Terra Sancta|Mandatory Palestine|فلسطين|Israel and Palestine|Israel/Palestine|Palaestina
PS IL: West Bank|Gaza|Gaza Strip|Westjordanland|Cisjordanie|Palestinian Territory|Palestinian Territories|Occupied Palestinian Territory|OPT|Palestinian Authority|Judea|Samaria|Judaea|Cisjordania
SY IL: Golan|Golan Heights|Golanhöhen
SY LB IL PS JO TR: Syria (Greater)|Greater Syria|Syria and Lebanon|Lebanon-Syria|Levant|Syria (Ottoman)|Coelesyria|Bilad al-Sham|Levante|Syria Palaestina
EG SY: United Arab Republic|UAR|U.A.R.|R.A.U.
IQ SY TR IR KW: Mesopotamia|Mesopotamien|Mésopotamie|Babylonia
SA YE OM AE QA KW BH JO IQ: Arabia|Arabien|Arabie|Arabian Peninsula|Arabia Felix|Arabia Petraea|Arabia Deserta|Arabian Gulf States|Gulf States|Péninsule arabique
AE OM QA BH: Trucial States|Trucial Oman|Trucial Coast|Pirate Coast
YE: South Yemen|North Yemen|Aden|Aden Protectorate|Southern Yemen|People's Democratic Republic of Yemen|PDRY|Hadramaut|Hadhramaut|Yemen (South)|Yemen (North)|Socotra|Sokotra|Aden Colony|Democratic Yemen|Yemen, Democratic
SA KW IQ: Neutral Zone|Saudi-Iraqi Neutral Zone|Kuwaiti-Saudi Neutral Zone
EG IL: Sinai|Sinai Peninsula|Sinai-Halbinsel
EG SD: Nubia|Nubien|Nubie|Hala'ib|Halaib Triangle|Bir Tawil|Egypt and Sudan
SD SS ML BF NE TD: Soudan|Sudan (region)|Western Sudan
SD SS: Sudan|Sudán|Sudão|Anglo-Egyptian Sudan|Sudan (Anglo-Egyptian)|Egyptian Sudan|Soudan anglo-égyptien
ML BF NE SN GN: French Sudan|Soudan français|Upper Senegal and Niger|Haut-Sénégal-Niger
ET ER DJ SO: Abyssinia|Abessinien|Abyssinie|Abisinia|Abissínia|Abissinia|Italian East Africa|Africa Orientale Italiana|A.O.I.
ET: Galla|Kaffa|Shoa
SO DJ ET KE: Somaliland|Somalie|Somali Land|British Somaliland|Italian Somaliland|French Somaliland|Somalia Italiana|Côte française des Somalis|Somali Republic|Ogaden|Galla and Somali|Benadir|Jubaland|Puntland|Horn of Africa
DJ: French Territory of the Afars and Issas|Territoire français des Afars et des Issas|Afars and Issas
KE UG TZ RW BI: East Africa|Ostafrika|Afrique orientale|British East Africa|B.E.A.|East Africa Protectorate|Britisch-Ostafrika|Afrique de l'Est|Oost-Afrika|África Oriental|Kenya Colony|East African Protectorate
TZ RW BI MZ KE: Tanganyika|Tanganyika Terr|Tanganyika Territory|Tanganjika|Tanganyka|German East Africa|Deutsch-Ostafrika|D.O.A.|Deutsch Ostafrika|Zanzibar|Sansibar|Zanzibar and Pemba|Pemba
RW BI: Ruanda-Urundi|Ruanda|Urundi|Rwanda-Burundi
CD CG: Congo|Kongo|Congo (country)|Republic of Congo|Congo Republic|Congo River|Conghi
CD RW BI: Belgian Congo|Congo Belge|Belgisch-Kongo|Congo Belga|Belgisch-Congo|Belgian Congo and Ruanda-Urundi|Congo Free State|État indépendant du Congo
CD: Congo (Léopoldville)|ZR|ZAR|Congo-Léopoldville|Congo (Leopoldville)|Congo-Kinshasa|Katanga|Kivu
CG GA CF TD: French Congo|Congo français|Französisch-Kongo|Congo Français
AO CD CG: Portuguese Congo|Congo Português|Cabinda|Loango|Lower Congo|Bas-Congo
GA CG CF TD CM: French Equatorial Africa|Afrique équatoriale française|A.E.F.|AEF|Afrique Equatoriale Française
SN MR ML GN CI BF NE BJ TG: French West Africa|Afrique Occidentale Française|A.O.F.|AOF|Afrique occidentale
CF TD CG: Ubangi-Shari|Oubangui-Chari|Ubangi|Oubangui
CF: Central African Empire|Centrafrique|Centrafricaine|République Centrafricaine
SN GM: Senegambia|Sénégambie|Senegambien
GN GW GQ: Guinea|Guiné|Guinée|Guinee|Guineá
GN GW GQ SL LR CI GH NG CM TG BJ SN GM: Guinea Coast|Upper Guinea|West Africa|Westafrika|Afrique de l'Ouest
GW: Portuguese Guinea|Guiné Portuguesa|Guinée portugaise|Guinea Portuguesa
GN: French Guinea|Guinée française
GQ GA CM: Spanish Guinea|Guinea Española|Guinea Continental Española|Río Muni|Rio Muni|Fernando Poo|Fernando Po|Fernando Póo|Bioko|Annobón|Annobon|Guinea Ecuatorial (Río Muni)|Bight of Biafra
GH TG: Gold Coast|Goldküste|Côte-de-l'Or|Côte de l'Or|Togoland|British Togoland|German Togo|Costa de Oro|Ashanti
BJ TG NG: Dahomey|Dahomé|Slave Coast
CM NG GA CG CF TD: Kamerun|Cameroons|British Cameroons|Cameroon (British)|Southern Cameroons|Neukamerun
EH MA: Western Sahara|W. Sahara|Sahara Occidental|Sáhara Occidental|Spanish Sahara|Sahara Español|Río de Oro|Rio de Oro|Sahara espagnol|Sahrawi Arab Democratic Republic|SADR|Westsahara|Spanish West Africa|África Occidental Española|Saguia el Hamra|Ifni|Sidi Ifni
MA ES: Spanish Morocco|Marruecos Español|Rif|Maroc espagnol|Protectorado Español en Marruecos|Ceuta|Melilla|Plazas de soberanía|Islas Chafarinas|Tangier|Tanger
MA DZ TN LY EG MR: North Africa|Nordafrika|Afrique du Nord|Barbary|Barbaria|Berberei|Maghreb|Mauretania|Magreb|África del Norte|Norte de África|Atlas|Numidia
DZ LY TN MA EH MR ML NE TD EG SD: Sahara|Sahel
LY: Tripolitania|Cyrenaica|Kyrenaika|Fezzan|Tripoli|Libya (Cyrenaica)
BW ZA NA: Bechuanaland|Betschuanaland|Kalahari|British Bechuanaland|Bechuanaland Protectorate
NA: South-West Africa|S.W. Africa|S.W.A.|SWA|German South West Africa|Deutsch-Südwestafrika|D.S.W.A.|Südwestafrika|Namaqualand|Damaraland|Sud-Ouest africain
ZA NA LS SZ BW ZW MZ: Southern Africa|South Africa (region)|Africa Australis|Südliches Afrika|Cape Colony|Cape of Good Hope|Cap de Bonne-Espérance|Kapland|Kapkolonie|Cape|C.B.S.|Caput Bonae Spei|Promontorium Bonae Spei|Kap|Transvaal|Natal|Orange Free State|Zululand|Cafraria|Caffraria|Kaffraria|Kaffirland|Union of South Africa
ZW ZM MW: Rhodesia|Rhodesien|Rhodésie|Rodesia|Rodésia|Federation of Rhodesia and Nyasaland|Central African Federation|Rhodesia and Nyasaland|British Central Africa|B.C.A.|Zambesia|Zambezia|Sambesi
ZW: Zimbabwe Rhodesia|Zimbabwe-Rhodesia|Mashonaland|Matabeleland|S. Rhodesia
ZM: N. Rhodesia|Barotseland
MW MZ TZ: Nyasaland|Nyassaland|Nyassa|Nyasaland Protectorate|Njassaland|Niassa
MZ: Portuguese East Africa|P.E.A.|África Oriental Portuguesa|Moçambique (Portugal)|Mossambik|Lourenço Marques|Zambézia
AO GW CV ST: Portuguese West Africa|África Ocidental Portuguesa|Portuguese W. Africa
MU RE: Mascarenes|Mascarene Islands|Mascareignes|Maskarenen|Mascarenhas|Mauritius and Réunion|Isle de France|Île de France|Isle of France|Bourbon|Île Bourbon|Isle Bourbon|Ile Bourbon|Rodrigues|Rodriguez
IO MU SC: Chagos|Chagos Archipelago|Chagos Islands|BIOT|Diego Garcia|Archipel des Chagos
SC IO MU: Aldabra|Amirantes|Farquhar Islands|Seychelles and Amirantes|Seychellen
KM YT: Comoros|Comores|Comoro Islands|Komoren|Comoras|Comoro Archipelago|Comores (archipel)|Comoro Is|Insulae Comorenses
TF RE YT MG MU KM: Îles Éparses|Iles Eparses|Scattered Islands|Mozambique Channel Islands|Europa Island|Juan de Nova|Glorioso Islands|Glorieuses|Tromelin|Bassas da India
TF HM ZA AU GS BV FK NZ AQ: Subantarctic Islands|Sub-Antarctic Islands|Kerguelen|Kerguelen Islands|Îles Kerguelen|Crozet|Crozet Islands|TAAF|Terres australes et antarctiques françaises|French Southern and Antarctic Lands|Prince Edward Islands|Marion Island|Southern Ocean Islands|Amsterdam Island|St. Paul Island
AQ GS TF HM BV FK AR CL GB NO AU: Antarctica|Antarctic|Antarktis|Antarctique|Antártida|Antártica|Antarktika|Антарктида|南极洲|南極|British Antarctic Territory|Territorio Antártico|Antártida Argentina|Territorio Chileno Antártico|Adélie Land|Terre Adélie|Graham Land|Palmer Land|Ross Dependency|Queen Maud Land|Dronning Maud Land|Australian Antarctic Territory|Antarctic Peninsula|South Shetland Islands|South Orkney Islands|Antarctica (Argentina)|Magallanes y Antártica Chilena
GS FK AQ: Falkland Islands Dependencies|South Georgia Island|South Georgia|Islas Georgias del Sur|Falkland Is Dependencies|Südgeorgien|Dependencias de las Islas Malvinas
FK: Falklands|Falkland Is|Islas Malvinas|Malvinas|Malouines|Îles Malouines|Falkland Islands (Malvinas)|Ilhas Malvinas
SH: Saint Helena, Ascension and Tristan da Cunha|Ascension|Tristan da Cunha Islands|Gough Island|St. Helena Island|Inaccessible Island|Nightingale Island
VN CN TW PH MY BN: Paracel Islands|Spratly Islands|South China Sea Islands|Xisha|Nansha|Hoàng Sa|Trường Sa|Spratlys|Paracels|西沙群岛|南沙群岛
JP CN TW: Senkaku|Senkaku Islands|Diaoyu Islands|Diaoyutai
KR JP KP: Dokdo|Takeshima|Liancourt Rocks
CN MN RU KZ KG TJ UZ TM AF: Inner Asia|High Asia|Hochasien|Tartary|Tartaria|Tatarei
WF CH: Wallis
GD ES NI: Granada
GP MX: Guadalupe
MS ES: Montserrat|Monserrate
TT BO BR UY CU: Trinidad
AG GT ES: Antigua
SV BR: Salvador
SH EC: Santa Elena
CW AW BQ SX: Curaçao|Curacao|Colonia Curaçao
TC BS: Turks Islands|Turks & Caicos|Caicos Islands
AD ES FR: Andorra (Pyrenees)
CO NI HN: San Andrés y Providencia|Providencia|San Andres|Old Providence
EC: Galápagos|Galapagos|Galapagos Islands|Islas Galápagos|Archipiélago de Colón
CL: Juan Fernández|Juan Fernandez|Easter Island|Isla de Pascua|Rapa Nui|Masatierra|Masafuera|Osterinsel|Île de Pâques
BR: Fernando de Noronha|Trindade|Estados Unidos do Brasil|United States of Brazil|Brasilia (Brazil)
CR: Cocos Island|Isla del Coco
CC CR: Cocos Islands|Cocos Is|Kokosinseln
`

// landWords are what short forms within a name stand for, tried where it is
// not known as it is written.
var landWords = map[string][]string{
	"is": {"islands", "island"}, "isl": {"island", "islands"}, "isls": {"islands"}, "i": {"island"}, "ids": {"islands"}, "n": {"north", "northern", "new"}, "s": {"south", "southern"}, "e": {"east"}, "w": {"west", "western"},
	"rep": {"republic", "república", "république"}, "st": {"saint", "sankt"}, "ste": {"sainte"}, "sta": {"santa"}, "brit": {"british"}, "fr": {"french"}, "dom": {"dominican", "dominicana"}, "dem": {"democratic"}, "c": {"costa"}, "p": {"puerto"},
	"terr": {"territory"}, "prov": {"province"}, "arch": {"archipelago"}, "equat": {"equatorial"}, "guat": {"guatemala"}, "mex": {"mexico"}, "venez": {"venezuela"}, "bras": {"brasil"}, "arg": {"argentina"}, "argent": {"argentina"}, "col": {"colombia"},
	"ecuad": {"ecuador"}, "parag": {"paraguay"}, "urug": {"uruguay"}, "austral": {"australia"}, "madag": {"madagascar"}, "mozamb": {"mozambique"}, "moçamb": {"moçambique"}, "port": {"portugal"}, "esp": {"españa"}, "ital": {"italia"}, "switz": {"switzerland"},
	"phil": {"philippine", "philippines"}, "afr": {"africa"}, "z": {"zealand"}, "tanz": {"tanzania"}, "zimb": {"zimbabwe"}, "hond": {"honduras"}, "nicar": {"nicaragua"}, "salv": {"salvador"}, "indon": {"indonesia"}, "pap": {"papua"}, "cal": {"caledonia"},
}

var lands = sync.OnceValue(func() map[string][]string {
	m := map[string][]string{}
	for line := range strings.Lines(strings.TrimSpace(landTable)) {
		codes, names, ok := strings.Cut(strings.TrimSpace(line), ": ")
		if !ok {
			panic("place: " + line) // it is part of the program
		}
		list := strings.Fields(codes)
		for _, name := range strings.Split(names, "|") {
			k := squeeze(name)
			for _, c := range list {
				if !slices.Contains(m[k], c) {
					m[k] = append(slices.Clip(m[k]), c)
				}
			}
		}
	}
	return m
})

// countryNames has names of countries in further languages, a code and a name a
// line.
//
// Source: Unicode CLDR 32 (Unicode licence), as golang.org/x/text 0.44 has it;
// a test writes the file.
//
//go:embed country_names.txt
var countryNames string

var namesOfCLDR = sync.OnceValue(func() map[string]string {
	m := map[string]string{}
	for line := range strings.Lines(countryNames) {
		code, name, _ := strings.Cut(strings.TrimSuffix(line, "\n"), " ")
		m[squeeze(name)] = code
	}
	return m
})

// CountriesNamed returns the countries of today, by their alpha-2 codes (and
// XK), in which a plant may have been collected whose record names the country
// so. It reads more than Country: states that are no more ("Yugoslavia"), lands
// that lie in several ("Borneo"), short forms ("Solomon Is."), and texts of
// several parts ("Portugal, Madeira"; "Bolivia/Brazil"). A word that is a state
// and also a wider land is read widely: "Macedonia" is MK, GR and others, the
// likeliest first. It returns none for what it does not know. The slice must
// not be changed.
func CountriesNamed(text string) []string {
	text = strings.TrimSpace(text)
	if codes := oneLand(text); codes != nil {
		return codes
	}
	if len(text) > 100 {
		return nil
	}
	if strings.ContainsAny(text, "?") {
		return nil // a guess is nothing to hold a place against
	}
	return landsOf(text)
}

// oneLand reads a text as one name.
func oneLand(text string) []string {
	if c, ok := countryByCode(text); ok {
		return []string{c.Code}
	}
	if codes := lands()[squeeze(text)]; codes != nil {
		return codes
	}
	if c, ok := Country(text); ok {
		return []string{c.Code}
	}
	if code := namesOfCLDR()[squeeze(text)]; code != "" {
		return []string{code}
	}
	return nil
}

// countryByCode finds a country by what can be its code alone.
func countryByCode(s string) (ISOCountry, bool) {
	if len(s) != 2 && (len(s) != 3 || s != strings.ToUpper(s) && s != strings.ToLower(s)) {
		return ISOCountry{}, false
	}
	t := countries()
	i, ok := t.codes[strings.ToUpper(s)]
	if !ok {
		return ISOCountry{}, false
	}
	return t.all[i], true
}

// landsOf reads a name in short forms, one turned about ("Congo, Belgian") or
// several.
func landsOf(text string) []string {
	for nth := range 3 {
		if codes := oneLand(lengthened(text, nth)); codes != nil {
			return codes
		}
	}
	parts := strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(",;:/()[]|+–—", r) })
	if len(parts) == 1 {
		parts = splitWith(text, ". ", " - ", " & ", " and ", " or ", " y ", " et ", " und ", " e ", " ou ", " oder ")
		if len(parts) == 1 {
			return nil
		}
	}
	for i := range parts {
		parts[i] = strings.TrimSpace(parts[i])
	}
	if len(parts) == 2 {
		if codes := oneLand(parts[1] + " " + parts[0]); codes != nil {
			return codes
		}
	}
	// Of a country and its part the country is known; of two countries both
	// must be.
	var all []string
	for _, p := range parts {
		if len(p) == 2 && p != "US" && p != "UK" || len(p) == 3 && p != strings.ToUpper(p) {
			continue // "CA" and "GA" are states too, and "St." begins a name
		}
		codes := oneLand(p)
		if codes == nil {
			codes = oneLand(lengthened(p, 0))
		}
		if codes == nil && joins(text) {
			return nil
		}
		for _, c := range codes {
			if !slices.Contains(all, c) {
				all = append(all, c)
			}
		}
	}
	return all
}

// joins reports whether the parts of a text stand beside each other, and none
// in the other.
func joins(text string) bool {
	if strings.ContainsAny(text, "/|+&") {
		return true
	}
	for w := range strings.FieldsSeq(strings.ToLower(text)) {
		if slices.Contains([]string{"border", "boundary", "frontier", "frontera", "fronteira", "frontière", "grenze", "near", "and", "or", "y", "et", "und", "ou", "oder", "between", "to"}, strings.Trim(w, ".,;()")) {
			return true
		}
	}
	return false
}

func splitWith(text string, seps ...string) []string {
	for _, sep := range seps {
		if parts := strings.Split(text, sep); len(parts) > 1 {
			return parts
		}
	}
	return []string{text}
}

// lengthened writes short forms out; of several readings the nth, or the last.
func lengthened(text string, nth int) string {
	words := strings.FieldsFunc(strings.ReplaceAll(text, ".", " "), unicode.IsSpace)
	for i, w := range words {
		if long := landWords[strings.ToLower(w)]; long != nil {
			words[i] = long[min(nth, len(long)-1)]
		}
	}
	return strings.Join(words, " ")
}
