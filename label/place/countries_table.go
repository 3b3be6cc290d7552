package place

// countryTable has a country or area of ISO 3166-1 a line: alpha-2 and alpha-3
// code, the English name to print, the English short name of ISO where it
// differs, and the names in Portuguese, Spanish, French, German, traditional
// Chinese and Latin.
//
// Sources: codes and short names from ISO 3166-1 as of 2023 (no code has come
// or gone since 2011, and Türkiye, Eswatini and North Macedonia have the names
// they took), by way of Debian's iso-codes 4.15; the other names from Unicode
// CLDR 42 (Portuguese as in Portugal, Chinese as in Taiwan), shortened where
// CLDR adds a remark in brackets or says whose territory it is; Latin names
// from memory, after the usage of botanical diagnoses, empty where there is no
// settled one.
const countryTable = `
AD|AND|Andorra||Andorra|Andorra|Andorre|Andorra|安道爾|
AE|ARE|United Arab Emirates||Emirados Árabes Unidos|Emiratos Árabes Unidos|Émirats arabes unis|Vereinigte Arabische Emirate|阿拉伯聯合大公國|
AF|AFG|Afghanistan||Afeganistão|Afganistán|Afghanistan|Afghanistan|阿富汗|Afgania
AG|ATG|Antigua and Barbuda||Antígua e Barbuda|Antigua y Barbuda|Antigua-et-Barbuda|Antigua und Barbuda|安地卡及巴布達|
AI|AIA|Anguilla||Anguila|Anguila|Anguilla|Anguilla|安奎拉|
AL|ALB|Albania||Albânia|Albania|Albanie|Albanien|阿爾巴尼亞|Albania
AM|ARM|Armenia||Arménia|Armenia|Arménie|Armenien|亞美尼亞|Armenia
AO|AGO|Angola||Angola|Angola|Angola|Angola|安哥拉|Angola
AQ|ATA|Antarctica||Antártida|Antártida|Antarctique|Antarktis|南極洲|Antarctica
AR|ARG|Argentina||Argentina|Argentina|Argentine|Argentinien|阿根廷|Argentina
AS|ASM|American Samoa||Samoa Americana|Samoa Americana|Samoa américaines|Amerikanisch-Samoa|美屬薩摩亞|
AT|AUT|Austria||Áustria|Austria|Autriche|Österreich|奧地利|Austria
AU|AUS|Australia||Austrália|Australia|Australie|Australien|澳洲|Australia
AW|ABW|Aruba||Aruba|Aruba|Aruba|Aruba|荷屬阿魯巴|
AX|ALA|Åland Islands||Ilhas Alanda|Islas Aland|Îles Åland|Ålandinseln|奧蘭群島|
AZ|AZE|Azerbaijan||Azerbaijão|Azerbaiyán|Azerbaïdjan|Aserbaidschan|亞塞拜然|
BA|BIH|Bosnia and Herzegovina||Bósnia e Herzegovina|Bosnia y Herzegovina|Bosnie-Herzégovine|Bosnien und Herzegowina|波士尼亞與赫塞哥維納|Bosnia et Herzegovina
BB|BRB|Barbados||Barbados|Barbados|Barbade|Barbados|巴貝多|
BD|BGD|Bangladesh||Bangladeche|Bangladés|Bangladesh|Bangladesch|孟加拉|
BE|BEL|Belgium||Bélgica|Bélgica|Belgique|Belgien|比利時|Belgica
BF|BFA|Burkina Faso||Burquina Faso|Burkina Faso|Burkina Faso|Burkina Faso|布吉納法索|
BG|BGR|Bulgaria||Bulgária|Bulgaria|Bulgarie|Bulgarien|保加利亞|Bulgaria
BH|BHR|Bahrain||Barém|Baréin|Bahreïn|Bahrain|巴林|
BI|BDI|Burundi||Burundi|Burundi|Burundi|Burundi|蒲隆地|
BJ|BEN|Benin||Benim|Benín|Bénin|Benin|貝南|
BL|BLM|Saint Barthélemy||São Bartolomeu|San Bartolomé|Saint-Barthélemy|St. Barthélemy|聖巴瑟米|
BM|BMU|Bermuda||Bermudas|Bermudas|Bermudes|Bermuda|百慕達|
BN|BRN|Brunei|Brunei Darussalam|Brunei|Brunéi|Brunei|Brunei|汶萊|
BO|BOL|Bolivia|Bolivia, Plurinational State of|Bolívia|Bolivia|Bolivie|Bolivien|玻利維亞|Bolivia
BQ|BES|Caribbean Netherlands|Bonaire, Sint Eustatius and Saba|Países Baixos Caribenhos|Caribe neerlandés|Pays-Bas caribéens|Karibische Niederlande|荷蘭加勒比區|
BR|BRA|Brazil||Brasil|Brasil|Brésil|Brasilien|巴西|Brasilia
BS|BHS|Bahamas||Baamas|Bahamas|Bahamas|Bahamas|巴哈馬|
BT|BTN|Bhutan||Butão|Bután|Bhoutan|Bhutan|不丹|
BV|BVT|Bouvet Island||Ilha Bouvet|Isla Bouvet|Île Bouvet|Bouvetinsel|布威島|
BW|BWA|Botswana||Botsuana|Botsuana|Botswana|Botsuana|波札那|
BY|BLR|Belarus||Bielorrússia|Bielorrusia|Biélorussie|Belarus|白俄羅斯|Ruthenia Alba
BZ|BLZ|Belize||Belize|Belice|Belize|Belize|貝里斯|
CA|CAN|Canada||Canadá|Canadá|Canada|Kanada|加拿大|Canada
CC|CCK|Cocos (Keeling) Islands||Ilhas dos Cocos (Keeling)|Islas Cocos|Îles Cocos|Kokosinseln|科克斯（基靈）群島|
CD|COD|Democratic Republic of the Congo|Congo, The Democratic Republic of the|República Democrática do Congo|República Democrática del Congo|République démocratique du Congo|Demokratische Republik Kongo|剛果民主共和國|
CF|CAF|Central African Republic||República Centro-Africana|República Centroafricana|République centrafricaine|Zentralafrikanische Republik|中非共和國|
CG|COG|Republic of the Congo|Congo|República do Congo|República del Congo|République du Congo|Republik Kongo|剛果共和國|
CH|CHE|Switzerland||Suíça|Suiza|Suisse|Schweiz|瑞士|Helvetia
CI|CIV|Côte d'Ivoire||Costa do Marfim|Costa de Marfil|Côte d'Ivoire|Elfenbeinküste|象牙海岸|
CK|COK|Cook Islands||Ilhas Cook|Islas Cook|Îles Cook|Cookinseln|庫克群島|
CL|CHL|Chile||Chile|Chile|Chili|Chile|智利|Chilia
CM|CMR|Cameroon||Camarões|Camerún|Cameroun|Kamerun|喀麥隆|Cameronia
CN|CHN|China||China|China|Chine|China|中國|Sina
CO|COL|Colombia||Colômbia|Colombia|Colombie|Kolumbien|哥倫比亞|Columbia
CR|CRI|Costa Rica||Costa Rica|Costa Rica|Costa Rica|Costa Rica|哥斯大黎加|Costa Rica
CU|CUB|Cuba||Cuba|Cuba|Cuba|Kuba|古巴|Cuba
CV|CPV|Cabo Verde||Cabo Verde|Cabo Verde|Cap-Vert|Cabo Verde|維德角|
CW|CUW|Curaçao||Curaçau|Curazao|Curaçao|Curaçao|庫拉索|
CX|CXR|Christmas Island||Ilha do Natal|Isla de Navidad|Île Christmas|Weihnachtsinsel|聖誕島|
CY|CYP|Cyprus||Chipre|Chipre|Chypre|Zypern|賽普勒斯|Cyprus
CZ|CZE|Czechia||Chéquia|Chequia|Tchéquie|Tschechien|捷克|Cechia
DE|DEU|Germany||Alemanha|Alemania|Allemagne|Deutschland|德國|Germania
DJ|DJI|Djibouti||Jibuti|Yibuti|Djibouti|Dschibuti|吉布地|
DK|DNK|Denmark||Dinamarca|Dinamarca|Danemark|Dänemark|丹麥|Dania
DM|DMA|Dominica||Domínica|Dominica|Dominique|Dominica|多米尼克|
DO|DOM|Dominican Republic||República Dominicana|República Dominicana|République dominicaine|Dominikanische Republik|多明尼加共和國|
DZ|DZA|Algeria||Argélia|Argelia|Algérie|Algerien|阿爾及利亞|Algeria
EC|ECU|Ecuador||Equador|Ecuador|Équateur|Ecuador|厄瓜多|Aequatoria
EE|EST|Estonia||Estónia|Estonia|Estonie|Estland|愛沙尼亞|Estonia
EG|EGY|Egypt||Egito|Egipto|Égypte|Ägypten|埃及|Aegyptus
EH|ESH|Western Sahara||Sara Ocidental|Sáhara Occidental|Sahara occidental|Westsahara|西撒哈拉|
ER|ERI|Eritrea||Eritreia|Eritrea|Érythrée|Eritrea|厄利垂亞|
ES|ESP|Spain||Espanha|España|Espagne|Spanien|西班牙|Hispania
ET|ETH|Ethiopia||Etiópia|Etiopía|Éthiopie|Äthiopien|衣索比亞|Aethiopia
FI|FIN|Finland||Finlândia|Finlandia|Finlande|Finnland|芬蘭|Finnia
FJ|FJI|Fiji||Fiji|Fiyi|Fidji|Fidschi|斐濟|
FK|FLK|Falkland Islands|Falkland Islands (Malvinas)|Ilhas Falkland|Islas Malvinas|Îles Malouines|Falklandinseln|福克蘭群島|
FM|FSM|Micronesia|Micronesia, Federated States of|Micronésia|Micronesia|Micronésie|Mikronesien|密克羅尼西亞|
FO|FRO|Faroe Islands||Ilhas Faroé|Islas Feroe|Îles Féroé|Färöer|法羅群島|
FR|FRA|France||França|Francia|France|Frankreich|法國|Gallia
GA|GAB|Gabon||Gabão|Gabón|Gabon|Gabun|加彭|
GB|GBR|United Kingdom||Reino Unido|Reino Unido|Royaume-Uni|Vereinigtes Königreich|英國|Britannia
GD|GRD|Grenada||Granada|Granada|Grenade|Grenada|格瑞那達|
GE|GEO|Georgia||Geórgia|Georgia|Géorgie|Georgien|喬治亞|Georgia
GF|GUF|French Guiana||Guiana Francesa|Guayana Francesa|Guyane française|Französisch-Guayana|法屬圭亞那|
GG|GGY|Guernsey||Guernesey|Guernesey|Guernesey|Guernsey|根息|
GH|GHA|Ghana||Gana|Ghana|Ghana|Ghana|迦納|
GI|GIB|Gibraltar||Gibraltar|Gibraltar|Gibraltar|Gibraltar|直布羅陀|
GL|GRL|Greenland||Gronelândia|Groenlandia|Groenland|Grönland|格陵蘭|Groenlandia
GM|GMB|Gambia||Gâmbia|Gambia|Gambie|Gambia|甘比亞|
GN|GIN|Guinea||Guiné|Guinea|Guinée|Guinea|幾內亞|
GP|GLP|Guadeloupe||Guadalupe|Guadalupe|Guadeloupe|Guadeloupe|瓜地洛普|
GQ|GNQ|Equatorial Guinea||Guiné Equatorial|Guinea Ecuatorial|Guinée équatoriale|Äquatorialguinea|赤道幾內亞|
GR|GRC|Greece||Grécia|Grecia|Grèce|Griechenland|希臘|Graecia
GS|SGS|South Georgia and South Sandwich Islands|South Georgia and the South Sandwich Islands|Ilhas Geórgia do Sul e Sandwich do Sul|Islas Georgia del Sur y Sandwich del Sur|Géorgie du Sud-et-les Îles Sandwich du Sud|Südgeorgien und die Südlichen Sandwichinseln|南喬治亞與南三明治群島|
GT|GTM|Guatemala||Guatemala|Guatemala|Guatemala|Guatemala|瓜地馬拉|Guatimalia
GU|GUM|Guam||Guame|Guam|Guam|Guam|關島|
GW|GNB|Guinea-Bissau||Guiné-Bissau|Guinea-Bisáu|Guinée-Bissau|Guinea-Bissau|幾內亞比索|
GY|GUY|Guyana||Guiana|Guyana|Guyana|Guyana|蓋亞那|
HK|HKG|Hong Kong||Hong Kong|Hong Kong|Hong Kong|Hongkong|香港|
HM|HMD|Heard and McDonald Islands|Heard Island and McDonald Islands|Ilhas Heard e McDonald|Islas Heard y McDonald|Îles Heard-et-MacDonald|Heard und McDonaldinseln|赫德島及麥唐納群島|
HN|HND|Honduras||Honduras|Honduras|Honduras|Honduras|宏都拉斯|
HR|HRV|Croatia||Croácia|Croacia|Croatie|Kroatien|克羅埃西亞|Croatia
HT|HTI|Haiti||Haiti|Haití|Haïti|Haiti|海地|Haitia
HU|HUN|Hungary||Hungria|Hungría|Hongrie|Ungarn|匈牙利|Hungaria
ID|IDN|Indonesia||Indonésia|Indonesia|Indonésie|Indonesien|印尼|Indonesia
IE|IRL|Ireland||Irlanda|Irlanda|Irlande|Irland|愛爾蘭|Hibernia
IL|ISR|Israel||Israel|Israel|Israël|Israel|以色列|Israel
IM|IMN|Isle of Man||Ilha de Man|Isla de Man|Île de Man|Isle of Man|曼島|
IN|IND|India||Índia|India|Inde|Indien|印度|India
IO|IOT|British Indian Ocean Territory||Território Britânico do Oceano Índico|Territorio Británico del Océano Índico|Territoire britannique de l'océan Indien|Britisches Territorium im Indischen Ozean|英屬印度洋領地|
IQ|IRQ|Iraq||Iraque|Irak|Irak|Irak|伊拉克|
IR|IRN|Iran|Iran, Islamic Republic of|Irão|Irán|Iran|Iran|伊朗|Irania
IS|ISL|Iceland||Islândia|Islandia|Islande|Island|冰島|Islandia
IT|ITA|Italy||Itália|Italia|Italie|Italien|義大利|Italia
JE|JEY|Jersey||Jersey|Jersey|Jersey|Jersey|澤西島|
JM|JAM|Jamaica||Jamaica|Jamaica|Jamaïque|Jamaika|牙買加|Iamaica
JO|JOR|Jordan||Jordânia|Jordania|Jordanie|Jordanien|約旦|Iordania
JP|JPN|Japan||Japão|Japón|Japon|Japan|日本|Iaponia
KE|KEN|Kenya||Quénia|Kenia|Kenya|Kenia|肯亞|Kenia
KG|KGZ|Kyrgyzstan||Quirguistão|Kirguistán|Kirghizstan|Kirgisistan|吉爾吉斯|
KH|KHM|Cambodia||Camboja|Camboya|Cambodge|Kambodscha|柬埔寨|
KI|KIR|Kiribati||Quiribáti|Kiribati|Kiribati|Kiribati|吉里巴斯|
KM|COM|Comoros||Comores|Comoras|Comores|Komoren|葛摩|
KN|KNA|Saint Kitts and Nevis||São Cristóvão e Neves|San Cristóbal y Nieves|Saint-Christophe-et-Niévès|St. Kitts und Nevis|聖克里斯多福及尼維斯|
KP|PRK|North Korea|Korea, Democratic People's Republic of|Coreia do Norte|Corea del Norte|Corée du Nord|Nordkorea|北韓|Corea Septentrionalis
KR|KOR|South Korea|Korea, Republic of|Coreia do Sul|Corea del Sur|Corée du Sud|Südkorea|南韓|Corea Meridionalis
KW|KWT|Kuwait||Koweit|Kuwait|Koweït|Kuwait|科威特|
KY|CYM|Cayman Islands||Ilhas Caimão|Islas Caimán|Îles Caïmans|Kaimaninseln|開曼群島|
KZ|KAZ|Kazakhstan||Cazaquistão|Kazajistán|Kazakhstan|Kasachstan|哈薩克|
LA|LAO|Laos|Lao People's Democratic Republic|Laos|Laos|Laos|Laos|寮國|
LB|LBN|Lebanon||Líbano|Líbano|Liban|Libanon|黎巴嫩|Libanus
LC|LCA|Saint Lucia||Santa Lúcia|Santa Lucía|Sainte-Lucie|St. Lucia|聖露西亞|
LI|LIE|Liechtenstein||Listenstaine|Liechtenstein|Liechtenstein|Liechtenstein|列支敦斯登|Lichtenstenum
LK|LKA|Sri Lanka||Sri Lanca|Sri Lanka|Sri Lanka|Sri Lanka|斯里蘭卡|
LR|LBR|Liberia||Libéria|Liberia|Liberia|Liberia|賴比瑞亞|Liberia
LS|LSO|Lesotho||Lesoto|Lesoto|Lesotho|Lesotho|賴索托|
LT|LTU|Lithuania||Lituânia|Lituania|Lituanie|Litauen|立陶宛|Lituania
LU|LUX|Luxembourg||Luxemburgo|Luxemburgo|Luxembourg|Luxemburg|盧森堡|Luxemburgum
LV|LVA|Latvia||Letónia|Letonia|Lettonie|Lettland|拉脫維亞|Lettonia
LY|LBY|Libya||Líbia|Libia|Libye|Libyen|利比亞|Libya
MA|MAR|Morocco||Marrocos|Marruecos|Maroc|Marokko|摩洛哥|Marocum
MC|MCO|Monaco||Mónaco|Mónaco|Monaco|Monaco|摩納哥|Monoecus
MD|MDA|Moldova|Moldova, Republic of|Moldávia|Moldavia|Moldavie|Moldau|摩爾多瓦|Moldavia
ME|MNE|Montenegro||Montenegro|Montenegro|Monténégro|Montenegro|蒙特內哥羅|Mons Niger
MF|MAF|Saint-Martin|Saint Martin (French part)|Saint-Martin|Saint-Martin|Saint-Martin|Saint-Martin|法屬聖馬丁|
MG|MDG|Madagascar||Madagáscar|Madagascar|Madagascar|Madagaskar|馬達加斯加|
MH|MHL|Marshall Islands||Ilhas Marshall|Islas Marshall|Îles Marshall|Marshallinseln|馬紹爾群島|
MK|MKD|North Macedonia||Macedónia do Norte|Macedonia del Norte|Macédoine du Nord|Nordmazedonien|北馬其頓|Macedonia Septentrionalis
ML|MLI|Mali||Mali|Mali|Mali|Mali|馬利|
MM|MMR|Myanmar||Mianmar|Myanmar|Myanmar|Myanmar|緬甸|
MN|MNG|Mongolia||Mongólia|Mongolia|Mongolie|Mongolei|蒙古|Mongolia
MO|MAC|Macao||Macau|Macao|Macao|Macau|澳門|
MP|MNP|Northern Mariana Islands||Ilhas Marianas do Norte|Islas Marianas del Norte|Îles Mariannes du Nord|Nördliche Marianen|北馬利安納群島|
MQ|MTQ|Martinique||Martinica|Martinica|Martinique|Martinique|馬丁尼克|
MR|MRT|Mauritania||Mauritânia|Mauritania|Mauritanie|Mauretanien|茅利塔尼亞|Mauritania
MS|MSR|Montserrat||Monserrate|Montserrat|Montserrat|Montserrat|蒙哲臘|
MT|MLT|Malta||Malta|Malta|Malte|Malta|馬爾他|Melita
MU|MUS|Mauritius||Maurícia|Mauricio|Maurice|Mauritius|模里西斯|
MV|MDV|Maldives||Maldivas|Maldivas|Maldives|Malediven|馬爾地夫|
MW|MWI|Malawi||Maláui|Malaui|Malawi|Malawi|馬拉威|
MX|MEX|Mexico||México|México|Mexique|Mexiko|墨西哥|Mexicum
MY|MYS|Malaysia||Malásia|Malasia|Malaisie|Malaysia|馬來西亞|
MZ|MOZ|Mozambique||Moçambique|Mozambique|Mozambique|Mosambik|莫三比克|Mozambicum
NA|NAM|Namibia||Namíbia|Namibia|Namibie|Namibia|納米比亞|Namibia
NC|NCL|New Caledonia||Nova Caledónia|Nueva Caledonia|Nouvelle-Calédonie|Neukaledonien|新喀里多尼亞|Nova Caledonia
NE|NER|Niger||Níger|Níger|Niger|Niger|尼日|
NF|NFK|Norfolk Island||Ilha Norfolk|Isla Norfolk|Île Norfolk|Norfolkinsel|諾福克島|
NG|NGA|Nigeria||Nigéria|Nigeria|Nigeria|Nigeria|奈及利亞|Nigeria
NI|NIC|Nicaragua||Nicarágua|Nicaragua|Nicaragua|Nicaragua|尼加拉瓜|Nicaragua
NL|NLD|Netherlands||Países Baixos|Países Bajos|Pays-Bas|Niederlande|荷蘭|Nederlandia
NO|NOR|Norway||Noruega|Noruega|Norvège|Norwegen|挪威|Norvegia
NP|NPL|Nepal||Nepal|Nepal|Népal|Nepal|尼泊爾|Nepalia
NR|NRU|Nauru||Nauru|Nauru|Nauru|Nauru|諾魯|
NU|NIU|Niue||Niuê|Niue|Niue|Niue|紐埃島|
NZ|NZL|New Zealand||Nova Zelândia|Nueva Zelanda|Nouvelle-Zélande|Neuseeland|紐西蘭|Nova Zelandia
OM|OMN|Oman||Omã|Omán|Oman|Oman|阿曼|
PA|PAN|Panama||Panamá|Panamá|Panama|Panama|巴拿馬|Panama
PE|PER|Peru||Peru|Perú|Pérou|Peru|秘魯|Peruvia
PF|PYF|French Polynesia||Polinésia Francesa|Polinesia Francesa|Polynésie française|Französisch-Polynesien|法屬玻里尼西亞|
PG|PNG|Papua New Guinea||Papua-Nova Guiné|Papúa Nueva Guinea|Papouasie-Nouvelle-Guinée|Papua-Neuguinea|巴布亞紐幾內亞|Papua Nova Guinea
PH|PHL|Philippines||Filipinas|Filipinas|Philippines|Philippinen|菲律賓|Philippinae
PK|PAK|Pakistan||Paquistão|Pakistán|Pakistan|Pakistan|巴基斯坦|Pakistania
PL|POL|Poland||Polónia|Polonia|Pologne|Polen|波蘭|Polonia
PM|SPM|Saint Pierre and Miquelon||São Pedro e Miquelão|San Pedro y Miquelón|Saint-Pierre-et-Miquelon|St. Pierre und Miquelon|聖皮埃與密克隆群島|
PN|PCN|Pitcairn Islands|Pitcairn|Ilhas Pitcairn|Islas Pitcairn|Îles Pitcairn|Pitcairninseln|皮特肯群島|
PR|PRI|Puerto Rico||Porto Rico|Puerto Rico|Porto Rico|Puerto Rico|波多黎各|Portus Dives
PS|PSE|Palestine|Palestine, State of|Palestina|Palestina|Palestine|Palästina|巴勒斯坦|
PT|PRT|Portugal||Portugal|Portugal|Portugal|Portugal|葡萄牙|Lusitania
PW|PLW|Palau||Palau|Palaos|Palaos|Palau|帛琉|
PY|PRY|Paraguay||Paraguai|Paraguay|Paraguay|Paraguay|巴拉圭|Paraquaria
QA|QAT|Qatar||Catar|Catar|Qatar|Katar|卡達|
RE|REU|Réunion||Reunião|Reunión|La Réunion|Réunion|留尼旺|
RO|ROU|Romania||Roménia|Rumanía|Roumanie|Rumänien|羅馬尼亞|Romania
RS|SRB|Serbia||Sérvia|Serbia|Serbie|Serbien|塞爾維亞|Serbia
RU|RUS|Russia|Russian Federation|Rússia|Rusia|Russie|Russland|俄羅斯|Russia
RW|RWA|Rwanda||Ruanda|Ruanda|Rwanda|Ruanda|盧安達|
SA|SAU|Saudi Arabia||Arábia Saudita|Arabia Saudí|Arabie saoudite|Saudi-Arabien|沙烏地阿拉伯|Arabia Saudiana
SB|SLB|Solomon Islands||Ilhas Salomão|Islas Salomón|Îles Salomon|Salomonen|索羅門群島|
SC|SYC|Seychelles||Seicheles|Seychelles|Seychelles|Seychellen|塞席爾|
SD|SDN|Sudan||Sudão|Sudán|Soudan|Sudan|蘇丹|Sudania
SE|SWE|Sweden||Suécia|Suecia|Suède|Schweden|瑞典|Suecia
SG|SGP|Singapore||Singapura|Singapur|Singapour|Singapur|新加坡|
SH|SHN|Saint Helena|Saint Helena, Ascension and Tristan da Cunha|Santa Helena|Santa Elena|Sainte-Hélène|St. Helena|聖赫勒拿島|
SI|SVN|Slovenia||Eslovénia|Eslovenia|Slovénie|Slowenien|斯洛維尼亞|Slovenia
SJ|SJM|Svalbard and Jan Mayen||Svalbard e Jan Mayen|Svalbard y Jan Mayen|Svalbard et Jan Mayen|Svalbard und Jan Mayen|挪威屬斯瓦巴及尖棉|
SK|SVK|Slovakia||Eslováquia|Eslovaquia|Slovaquie|Slowakei|斯洛伐克|Slovacia
SL|SLE|Sierra Leone||Serra Leoa|Sierra Leona|Sierra Leone|Sierra Leone|獅子山|
SM|SMR|San Marino||São Marinho|San Marino|Saint-Marin|San Marino|聖馬利諾|Sanctus Marinus
SN|SEN|Senegal||Senegal|Senegal|Sénégal|Senegal|塞內加爾|Senegalia
SO|SOM|Somalia||Somália|Somalia|Somalie|Somalia|索馬利亞|Somalia
SR|SUR|Suriname||Suriname|Surinam|Suriname|Suriname|蘇利南|
SS|SSD|South Sudan||Sudão do Sul|Sudán del Sur|Soudan du Sud|Südsudan|南蘇丹|
ST|STP|São Tomé and Príncipe|Sao Tome and Principe|São Tomé e Príncipe|Santo Tomé y Príncipe|Sao Tomé-et-Principe|São Tomé und Príncipe|聖多美普林西比|
SV|SLV|El Salvador||Salvador|El Salvador|Salvador|El Salvador|薩爾瓦多|
SX|SXM|Sint Maarten|Sint Maarten (Dutch part)|Sint Maarten|Sint Maarten|Sint Maarten|Sint Maarten|荷屬聖馬丁|
SY|SYR|Syria|Syrian Arab Republic|Síria|Siria|Syrie|Syrien|敘利亞|Syria
SZ|SWZ|Eswatini||Essuatíni|Esuatini|Eswatini|Eswatini|史瓦帝尼|
TC|TCA|Turks and Caicos Islands||Ilhas Turcas e Caicos|Islas Turcas y Caicos|Îles Turques-et-Caïques|Turks- und Caicosinseln|土克斯及開科斯群島|
TD|TCD|Chad||Chade|Chad|Tchad|Tschad|查德|
TF|ATF|French Southern Territories||Territórios Austrais Franceses|Territorios Australes Franceses|Terres australes françaises|Französische Süd- und Antarktisgebiete|法屬南部屬地|
TG|TGO|Togo||Togo|Togo|Togo|Togo|多哥|
TH|THA|Thailand||Tailândia|Tailandia|Thaïlande|Thailand|泰國|Thailandia
TJ|TJK|Tajikistan||Tajiquistão|Tayikistán|Tadjikistan|Tadschikistan|塔吉克|
TK|TKL|Tokelau||Toquelau|Tokelau|Tokelau|Tokelau|托克勞群島|
TL|TLS|Timor-Leste||Timor-Leste|Timor-Leste|Timor oriental|Timor-Leste|東帝汶|
TM|TKM|Turkmenistan||Turquemenistão|Turkmenistán|Turkménistan|Turkmenistan|土庫曼|
TN|TUN|Tunisia||Tunísia|Túnez|Tunisie|Tunesien|突尼西亞|Tunesia
TO|TON|Tonga||Tonga|Tonga|Tonga|Tonga|東加|
TR|TUR|Türkiye||Turquia|Turquía|Turquie|Türkei|土耳其|Turcia
TT|TTO|Trinidad and Tobago||Trindade e Tobago|Trinidad y Tobago|Trinité-et-Tobago|Trinidad und Tobago|千里達及托巴哥|
TV|TUV|Tuvalu||Tuvalu|Tuvalu|Tuvalu|Tuvalu|吐瓦魯|
TW|TWN|Taiwan|Taiwan, Province of China|Taiwan|Taiwán|Taïwan|Taiwan|台灣|Taivania
TZ|TZA|Tanzania|Tanzania, United Republic of|Tanzânia|Tanzania|Tanzanie|Tansania|坦尚尼亞|Tanzania
UA|UKR|Ukraine||Ucrânia|Ucrania|Ukraine|Ukraine|烏克蘭|Ucraina
UG|UGA|Uganda||Uganda|Uganda|Ouganda|Uganda|烏干達|Uganda
UM|UMI|United States Minor Outlying Islands||Ilhas Menores Afastadas dos Estados Unidos|Islas menores alejadas de los Estados Unidos|Îles mineures éloignées des États-Unis|Amerikanische Überseeinseln|美國本土外小島嶼|
US|USA|United States||Estados Unidos|Estados Unidos|États-Unis|Vereinigte Staaten|美國|Civitates Foederatae Americae
UY|URY|Uruguay||Uruguai|Uruguay|Uruguay|Uruguay|烏拉圭|Uraquaria
UZ|UZB|Uzbekistan||Usbequistão|Uzbekistán|Ouzbékistan|Usbekistan|烏茲別克|
VA|VAT|Vatican City|Holy See (Vatican City State)|Cidade do Vaticano|Ciudad del Vaticano|État de la Cité du Vatican|Vatikanstadt|梵蒂岡|Civitas Vaticana
VC|VCT|Saint Vincent and Grenadines|Saint Vincent and the Grenadines|São Vicente e Granadinas|San Vicente y las Granadinas|Saint-Vincent-et-les Grenadines|St. Vincent und die Grenadinen|聖文森及格瑞那丁|
VE|VEN|Venezuela|Venezuela, Bolivarian Republic of|Venezuela|Venezuela|Venezuela|Venezuela|委內瑞拉|Venetiola
VG|VGB|British Virgin Islands|Virgin Islands, British|Ilhas Virgens Britânicas|Islas Vírgenes Británicas|Îles Vierges britanniques|Britische Jungferninseln|英屬維京群島|
VI|VIR|United States Virgin Islands|Virgin Islands, U.S.|Ilhas Virgens dos Estados Unidos|Islas Vírgenes de los Estados Unidos|Îles Vierges des États-Unis|Amerikanische Jungferninseln|美屬維京群島|
VN|VNM|Vietnam|Viet Nam|Vietname|Vietnam|Viêt Nam|Vietnam|越南|Vietnamia
VU|VUT|Vanuatu||Vanuatu|Vanuatu|Vanuatu|Vanuatu|萬那杜|
WF|WLF|Wallis and Futuna||Wallis e Futuna|Wallis y Futuna|Wallis-et-Futuna|Wallis und Futuna|瓦利斯群島和富圖那群島|
WS|WSM|Samoa||Samoa|Samoa|Samoa|Samoa|薩摩亞|
YE|YEM|Yemen||Iémen|Yemen|Yémen|Jemen|葉門|
YT|MYT|Mayotte||Maiote|Mayotte|Mayotte|Mayotte|馬約特島|
ZA|ZAF|South Africa||África do Sul|Sudáfrica|Afrique du Sud|Südafrika|南非|Africa Australis
ZM|ZMB|Zambia||Zâmbia|Zambia|Zambie|Sambia|尚比亞|Zambia
ZW|ZWE|Zimbabwe||Zimbabué|Zimbabue|Zimbabwe|Simbabwe|辛巴威|
`
