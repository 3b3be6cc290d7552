package place

// What the EPSG Geodetic Parameter Dataset numbers that decimal latitude and
// longitude may refer to.
//
// Source: EPSG dataset v10.076 of 2022-08-31 (epsg.org), as PROJ 9.1.1 ships
// it. Codes include deprecated ones, which are still codes; names are of those
// in force.
const (
	// crsCodes are the geographic two-dimensional reference systems.
	crsCodes = `
3819 3821 3824 3889 3906 4001-4016 4018-4025 4027-4036 4041-4047 4052-4055 4075 4081 4120-4176 4178-4185
4188-4216 4218-4289 4291-4304 4306-4319 4322 4324 4326 4463 4470 4475 4483 4490 4555 4558 4600-4646 4657-4765
4801-4811 4813-4821 4823-4824 4901-4904 5013 5132 5228-5229 5233 5246 5252 5264 5324 5340 5354 5360 5365 5371
5373 5381 5393 5451 5464 5467 5489 5524 5527 5546 5561 5593 5681 5886 6135 6207 6311 6318 6322 6325 6365 6668
6706 6783 6881-6883 6892 6894 6980 6983 6987 6990 7035 7037 7039 7041 7073 7084 7086 7088 7133 7136 7139 7373
7683 7686 7798 7844 7881 7886 8042-8043 8086 8232 8237 8240 8246 8249 8252 8255 8351 8427-8428 8431 8449 8545
8685 8694 8699 8818 8860 8888 8900 8902 8907 8949 8972-9000 9003 9006 9009 9012 9014 9017 9019 9053-9057
9059-9069 9072 9075 9140 9148 9153 9184 9248 9251 9253 9294 9299 9309 9333 9364 9372 9380 9384 9403 9453 9470
9474-9475 9547 9696 9702 9739 9755 9758 9763 9777 9779 9782 9784 9866 9871 9939 9964 9969 9974 9990 20033
20041
`
	// datumCodes are the geodetic datums.
	datumCodes = `
1024-1026 1029 1031-1038 1041-1048 1052-1053 1055-1058 1060-1078 1081 1095 1100 1111-1118 1120 1128 1132-1133
1135-1139 1141-1145 1147 1152-1160 1165-1168 1173-1174 1178-1189 1191-1198 1201 1204 1206-1209 1211-1212 1214
1217-1218 1220-1221 1223 1225 1227-1249 1251-1254 1257-1259 1263-1264 1266 1268 1271-1273 1286 1289 1291 1293
1295 1304-1305 1308-1315 1317 1319-1322 1324 1327 6001-6016 6018-6022 6024-6025 6027-6036 6041-6045 6047
6052-6055 6120-6176 6178-6185 6188-6216 6218-6289 6291-6304 6306-6319 6322 6324 6326 6600-6616 6618-6661
6663-6668 6670-6765 6801-6811 6813-6821 6896 6901-6904
`
	// ellipsoidCodes are the ellipsoids.
	ellipsoidCodes = `
1024-1026 7001-7016 7018-7022 7024-7025 7027-7036 7041-7059
`
	// crsNames has a geographic two-dimensional reference system a line: code,
	// name and, behind a bar, the name of its datum where the two differ and no
	// other such system uses that datum.
	crsNames = `
3819 HD1909|Hungarian Datum 1909
3821 TWD67|Taiwan Datum 1967
3824 TWD97|Taiwan Datum 1997
3889 IGRS|Iraqi Geospatial Reference System
3906 MGI 1901
4023 MOLDREF99
4046 RGRDC 2005|Reseau Geodesique de la RDC 2005
4075 SREF98|Serbian Reference Network 1998
4081 REGCAN95|Red Geodesica de Canarias 1995
4120 Greek
4121 GGRS87|Greek Geodetic Reference System 1987
4122 ATS77|Average Terrestrial System 1977
4123 KKJ|Kartastokoordinaattijarjestelma (1966)
4124 RT90|Rikets koordinatsystem 1990
4127 Tete
4128 Madzansua
4129 Observatario
4130 Moznet|Moznet (ITRF94)
4131 Indian 1960
4132 FD58|Final Datum 1958
4133 EST92|Estonia 1992
4134 PSD93|PDO Survey Datum 1993
4135 Old Hawaiian
4136 St. Lawrence Island
4137 St. Paul Island
4138 St. George Island
4139 Puerto Rico
4141 Israel 1993
4142 Locodjo 1965
4143 Abidjan 1987
4144 Kalianpur 1937
4145 Kalianpur 1962
4146 Kalianpur 1975
4147 Hanoi 1972
4148 Hartebeesthoek94
4149 CH1903
4150 CH1903+
4151 CHTRS95|Swiss Terrestrial Reference System 1995
4152 NAD83(HARN)|NAD83 (High Accuracy Reference Network)
4153 Rassadiran
4154 ED50(ED77)|European Datum 1950(1977)
4155 Dabola 1981
4156 S-JTSK|System of the Unified Trigonometrical Cadastral Network
4157 Mount Dillon
4158 Naparima 1955
4159 ELD79|European Libyan Datum 1979
4160 Chos Malal 1914
4161 Pampa del Castillo
4162 Korean 1985|Korean Datum 1985
4163 Yemen NGN96|Yemen National Geodetic Network 1996
4164 South Yemen
4165 Bissau
4166 Korean 1995|Korean Datum 1995
4167 NZGD2000|New Zealand Geodetic Datum 2000
4168 Accra
4169 American Samoa 1962
4170 SIRGAS 1995|Sistema de Referencia Geocentrico para America del Sur 1995
4171 RGF93 v1
4173 IRENET95
4174 Sierra Leone 1924|Sierra Leone Colony 1924
4175 Sierra Leone 1968
4176 Australian Antarctic|Australian Antarctic Datum 1998
4178 Pulkovo 1942(83)
4179 Pulkovo 1942(58)
4180 EST97|Estonia 1997
4181 LUREF|Luxembourg Reference Frame
4182 Azores Occidental 1939|Azores Occidental Islands 1939
4183 Azores Central 1948|Azores Central Islands 1948
4184 Azores Oriental 1940|Azores Oriental Islands 1940
4188 OSNI 1952
4189 REGVEN|Red Geodesica Venezolana
4190 POSGAR 98|Posiciones Geodesicas Argentinas 1998
4191 Albanian 1987
4192 Douala 1948
4193 Manoca 1962
4194 Qornoq 1927
4195 Scoresbysund 1952
4196 Ammassalik 1958
4197 Garoua
4198 Kousseri
4199 Egypt 1930
4200 Pulkovo 1995
4201 Adindan
4202 AGD66|Australian Geodetic Datum 1966
4203 AGD84|Australian Geodetic Datum 1984
4204 Ain el Abd|Ain el Abd 1970
4205 Afgooye
4206 Agadez
4207 Lisbon|Lisbon 1937
4208 Aratu
4209 Arc 1950
4210 Arc 1960
4211 Batavia
4212 Barbados 1938
4213 Beduaram
4214 Beijing 1954
4215 BD50|Reseau National Belge 1950
4216 Bermuda 1957
4218 Bogota 1975
4219 Bukit Rimpah
4220 Camacupa 1948
4221 Campo Inchauspe
4222 Cape
4223 Carthage
4224 Chua
4225 Corrego Alegre 1970-72
4227 Deir ez Zor
4229 Egypt 1907
4230 ED50|European Datum 1950
4231 ED87|European Datum 1987
4232 Fahud
4236 Hu Tzu Shan 1950
4237 HD72|Hungarian Datum 1972
4238 ID74|Indonesian Datum 1974
4239 Indian 1954
4240 Indian 1975
4241 Jamaica 1875
4242 JAD69|Jamaica 1969
4243 Kalianpur 1880
4244 Kandawala
4245 Kertau 1968
4246 KOC|Kuwait Oil Company
4247 La Canoa
4248 PSAD56|Provisional South American Datum 1956
4249 Lake
4250 Leigon
4251 Liberia 1964
4252 Lome
4253 Luzon 1911
4254 Hito XVIII 1963
4255 Herat North
4256 Mahe 1971
4257 Makassar
4258 ETRS89|European Terrestrial Reference System 1989 ensemble
4259 Malongo 1987
4261 Merchich
4262 Massawa
4263 Minna
4265 Monte Mario
4266 M'poraloko
4267 NAD27|North American Datum 1927
4269 NAD83|North American Datum 1983
4270 Nahrwan 1967
4271 Naparima 1972
4272 NZGD49|New Zealand Geodetic Datum 1949
4273 NGO 1948
4274 Datum 73
4275 NTF|Nouvelle Triangulation Francaise
4276 NSWC 9Z-2
4277 OSGB36|Ordnance Survey of Great Britain 1936
4278 OSGB70|OSGB 1970 (SN)
4279 OS(SN)80|OS (SN) 1980
4281 Palestine 1923
4282 Pointe Noire|Congo 1960 Pointe Noire
4283 GDA94|Geocentric Datum of Australia 1994
4284 Pulkovo 1942
4285 Qatar 1974
4286 Qatar 1948
4288 Loma Quintana
4289 Amersfoort
4292 Sapper Hill 1943
4293 Schwarzeck
4295 Serindung
4297 Tananarive|Tananarive 1925
4298 Timbalai 1948
4299 TM65
4300 TM75|Geodetic Datum of 1965
4301 Tokyo
4302 Trinidad 1903
4303 TC(1948)|Trucial Coast 1948
4304 Voirol 1875
4306 Bern 1938
4307 Nord Sahara 1959
4308 RT38|Stockholm 1938
4309 Yacare
4310 Yoff
4311 Zanderij
4312 MGI|Militar-Geographische Institut
4313 BD72|Reseau National Belge 1972
4314 DHDN|Deutsches Hauptdreiecksnetz
4315 Conakry 1905
4316 Dealul Piscului 1930
4318 NGN|National Geodetic Network
4319 KUDAMS|Kuwait Utility
4322 WGS 72|World Geodetic System 1972
4324 WGS 72BE|WGS 72 Transit Broadcast Ephemeris
4326 WGS 84|World Geodetic System 1984 ensemble
4463 RGSPM06
4470 RGM04
4475 Cadastre 1997
4483 Mexico ITRF92
4490 China Geodetic Coordinate System 2000|China 2000
4555 New Beijing
4558 RRAF 1991|Reseau de Reference des Antilles Francaises 1991
4600 Anguilla 1957
4601 Antigua 1943
4602 Dominica 1945
4603 Grenada 1953
4604 Montserrat 1958
4605 St. Kitts 1955
4606 St. Lucia 1955
4607 St. Vincent 1945
4608 NAD27(76)|North American Datum 1927 (1976)
4609 NAD27(CGQ77)|North American Datum 1927 (CGQ77)
4610 Xian 1980
4611 Hong Kong 1980
4612 JGD2000|Japanese Geodetic Datum 2000
4613 Segara|Gunung Segara
4614 QND95|Qatar National Datum 1995
4615 Porto Santo|Porto Santo 1936
4616 Selvagem Grande
4617 NAD83(CSRS)|NAD83 Canadian Spatial Reference System
4618 SAD69|South American Datum 1969
4619 SWEREF99
4620 Point 58
4621 Fort Marigot
4622 Guadeloupe 1948
4623 CSG67|Centre Spatial Guyanais 1967
4624 RGFG95
4625 Martinique 1938
4626 Reunion 1947
4627 RGR92
4628 Tahiti 52
4629 Tahaa 54
4630 IGN72 Nuku Hiva
4632 Combani 1950
4633 IGN56 Lifou
4636 Petrels 1972
4637 Perroud 1950|Pointe Geologie Perroud 1950
4638 Saint Pierre et Miquelon 1950
4639 MOP78
4641 IGN53 Mare
4642 ST84 Ile des Pins
4643 ST71 Belep
4644 NEA74 Noumea
4646 Grand Comoros
4657 Reykjavik 1900
4658 Hjorsey 1955
4659 ISN93|Islands Net 1993
4660 Helle 1954
4661 LKS92|Latvia 1992
4662 IGN72 Grande Terre
4663 Porto Santo 1995
4664 Azores Oriental 1995|Azores Oriental Islands 1995
4665 Azores Central 1995|Azores Central Islands 1995
4666 Lisbon 1890
4667 IKBD-92|Iraq-Kuwait Boundary Datum 1992
4668 ED79|European Datum 1979
4669 LKS94|Lithuania 1994 (ETRS89)
4670 IGM95|Istituto Geografico Militaire 1995
4671 Voirol 1879
4672 Chatham Islands 1971|Chatham Islands Datum 1971
4673 Chatham Islands 1979|Chatham Islands Datum 1979
4674 SIRGAS 2000|Sistema de Referencia Geocentrico para las AmericaS 2000
4675 Guam 1963
4676 Vientiane 1982
4677 Lao 1993
4678 Lao 1997|Lao National Datum 1997
4679 Jouik 1961
4680 Nouakchott 1965
4682 Gulshan 303
4683 PRS92|Philippine Reference System 1992
4684 Gan 1970
4686 MAGNA-SIRGAS|Marco Geocentrico Nacional de Referencia
4687 RGPF|Reseau Geodesique de la Polynesie Francaise
4688 Fatu Iva 72
4689 IGN63 Hiva Oa
4690 Tahiti 79
4691 Moorea 87
4692 Maupiti 83
4693 Nakhl-e Ghanem
4694 POSGAR 94|Posiciones Geodesicas Argentinas 1994
4695 Katanga 1955
4696 Kasai 1953
4697 IGC 1962 6th Parallel South|IGC 1962 Arc of the 6th Parallel South
4698 IGN 1962 Kerguelen
4699 Le Pouce 1934
4700 IGN Astro 1960
4701 IGCB 1955|Institut Geographique du Congo Belge 1955
4702 Mauritania 1999
4703 Mhast 1951|Missao Hidrografico Angola y Sao Tome 1951
4704 Mhast (onshore)
4705 Mhast (offshore)
4706 Egypt Gulf of Suez S-650 TL
4707 Tern Island 1961
4708 Cocos Islands 1965
4709 Iwo Jima 1945
4710 Astro DOS 71
4711 Marcus Island 1952
4712 Ascension Island 1958
4713 Ayabelle Lighthouse
4714 Bellevue
4715 Camp Area Astro
4716 Phoenix Islands 1966
4717 Cape Canaveral
4718 Solomon 1968
4719 Easter Island 1967
4720 Fiji 1986|Fiji Geodetic Datum 1986
4721 Fiji 1956
4722 South Georgia 1968
4723 GCGD59|Grand Cayman Geodetic Datum 1959
4724 Diego Garcia 1969
4725 Johnston Island 1961
4726 SIGD61|Sister Islands Geodetic Datum 1961
4727 Midway 1961
4728 PN84|Pico de las Nieves 1984
4729 Pitcairn 1967
4730 Santo 1965
4732 Marshall Islands 1960
4733 Wake Island 1952
4734 Tristan 1968
4735 Kusaie 1951
4736 Deception Island
4737 Korea 2000|Geocentric datum of Korea
4738 Hong Kong 1963
4739 Hong Kong 1963(67)
4740 PZ-90|Parametry Zemli 1990
4741 FD54|Faroe Datum 1954
4742 GDM2000|Geodetic Datum of Malaysia 2000
4743 Karbala 1979
4744 Nahrwan 1934
4745 RD/83|Rauenberg Datum/83
4746 PD/83|Potsdam Datum/83
4747 GR96|Greenland 1996
4748 Vanua Levu 1915
4749 RGNC91-93|Reseau Geodesique de Nouvelle Caledonie 91-93
4750 ST87 Ouvea
4751 Kertau (RSO)
4752 Viti Levu 1912
4753 fk89
4754 LGD2006|Libyan Geodetic Datum 2006
4755 DGN95|Datum Geodesi Nasional 1995
4756 VN-2000|Vietnam 2000
4757 SVY21
4758 JAD2001|Jamaica 2001
4759 NAD83(NSRS2007)|NAD83 (National Spatial Reference System 2007)
4760 WGS 66|World Geodetic System 1966
4761 HTRS96|Croatian Terrestrial Reference System
4762 BDA2000|Bermuda 2000
4763 Pitcairn 2006
4764 RSRGD2000|Ross Sea Region Geodetic Datum 2000
4765 Slovenia 1996|Slovenia Geodetic Datum 1996
4801 Bern 1898 (Bern)|CH1903 (Bern)
4802 Bogota 1975 (Bogota)
4803 Lisbon (Lisbon)|Lisbon 1937 (Lisbon)
4804 Makassar (Jakarta)
4805 MGI (Ferro)|Militar-Geographische Institut (Ferro)
4806 Monte Mario (Rome)
4807 NTF (Paris)|Nouvelle Triangulation Francaise (Paris)
4809 BD50 (Brussels)|Reseau National Belge 1950 (Brussels)
4810 Tananarive (Paris)|Tananarive 1925 (Paris)
4811 Voirol 1875 (Paris)
4813 Batavia (Jakarta)
4814 RT38 (Stockholm)|Stockholm 1938 (Stockholm)
4815 Greek (Athens)
4816 Carthage (Paris)
4817 NGO 1948 (Oslo)
4818 S-JTSK (Ferro)|System of the Unified Trigonometrical Cadastral Network (Ferro)
4820 Segara (Jakarta)|Gunung Segara (Jakarta)
4821 Voirol 1879 (Paris)
4823 Sao Tome
4824 Principe
4901 ATF (Paris)|Ancienne Triangulation Francaise (Paris)
4903 Madrid 1870 (Madrid)
4904 Lisbon 1890 (Lisbon)
5013 PTRA08|Autonomous Regions of Portugal 2008
5132 Tokyo 1892
5228 S-JTSK/05|System of the Unified Trigonometrical Cadastral Network/05
5229 S-JTSK/05 (Ferro)|System of the Unified Trigonometrical Cadastral Network/05 (Ferro)
5233 SLD99|Sri Lanka Datum 1999
5246 GDBD2009|Geocentric Datum Brunei Darussalam 2009
5252 TUREF|Turkish National Reference Frame
5264 DRUKREF 03|Bhutan National Geodetic Datum
5324 ISN2004|Islands Net 2004
5340 POSGAR 2007|Posiciones Geodesicas Argentinas 2007
5354 MARGEN|Marco Geodesico Nacional de Bolivia
5360 SIRGAS-Chile 2002|SIRGAS-Chile realization 1 epoch 2002
5365 CR05|Costa Rica 2005
5371 MACARIO SOLIS|Sistema Geodesico Nacional de Panama MACARIO SOLIS
5373 Peru96
5381 SIRGAS-ROU98
5393 SIRGAS_ES2007.8
5451 Ocotepeque 1935
5464 Sibun Gorge 1922
5467 Panama-Colon 1911
5489 RGAF09
5524 Corrego Alegre 1961
5527 SAD69(96)|South American Datum 1969(96)
5546 PNG94|Papua New Guinea Geodetic Datum 1994
5561 UCS-2000|Ukraine 2000
5593 FEH2010|Fehmarnbelt Datum 2010
5681 DB_REF|Deutsche Bahn Reference System
5886 TGD2005|Tonga Geodetic Datum 2005
6135 CIGD11|Cayman Islands Geodetic Datum 2011
6207 Nepal 1981
6311 CGRS93|Cyprus Geodetic Reference System 1993
6318 NAD83(2011)|NAD83 (National Spatial Reference System 2011)
6322 NAD83(PA11)|NAD83 (National Spatial Reference System PA11)
6325 NAD83(MA11)|NAD83 (National Spatial Reference System MA11)
6365 Mexico ITRF2008
6668 JGD2011|Japanese Geodetic Datum 2011
6706 RDN2008|Rete Dinamica Nazionale 2008
6783 NAD83(CORS96)|NAD83 (Continuously Operating Reference Station 1996)
6881 Aden 1925
6882 Bekaa Valley 1920
6883 Bioko
6892 South East Island 1943
6894 Gambia
6983 IG05 Intermediate CRS|IG05 Intermediate Datum
6990 IG05/12 Intermediate CRS|IG05/12 Intermediate Datum
7035 RGSPM06 (lon-lat)
7037 RGR92 (lon-lat)
7039 RGM04 (lon-lat)
7041 RGFG95 (lon-lat)
7073 RGTAAF07
7084 RGF93 v1 (lon-lat)
7086 RGAF09 (lon-lat)
7133 RGTAAF07 (lon-lat)
7136 IGD05|Israeli Geodetic Datum 2005
7139 IGD05/12|Israeli Geodetic Datum 2005(2012)
7373 ONGD14|Oman National Geodetic Datum 2014
7683 GSK-2011|Geodezicheskaya Sistema Koordinat 2011
7686 Kyrg-06|Kyrgyzstan Geodetic Datum 2006
7798 BGS2005|Bulgaria Geodetic System 2005
7844 GDA2020|Geocentric Datum of Australia 2020
7881 St. Helena Tritan
7886 SHGD2015|St. Helena Geodetic Datum 2015
8042 Gusterberg (Ferro)
8043 St. Stephen (Ferro)
8086 ISN2016|Islands Net 2016
8232 NAD83(CSRS96)|North American Datum of 1983 (CSRS96)
8237 NAD83(CSRS)v2|North American Datum of 1983 (CSRS) version 2
8240 NAD83(CSRS)v3|North American Datum of 1983 (CSRS) version 3
8246 NAD83(CSRS)v4|North American Datum of 1983 (CSRS) version 4
8249 NAD83(CSRS)v5|North American Datum of 1983 (CSRS) version 5
8252 NAD83(CSRS)v6|North American Datum of 1983 (CSRS) version 6
8255 NAD83(CSRS)v7|North American Datum of 1983 (CSRS) version 7
8351 S-JTSK [JTSK03]|System of the Unified Trigonometrical Cadastral Network [JTSK03]
8427 Hong Kong Geodetic CS|Hong Kong Geodetic
8428 Macao 1920
8431 Macao 2008|Macao Geodetic Datum 2008
8545 NAD83(HARN Corrected)|NAD83 (High Accuracy Reference Network - Corrected)
8685 SRB_ETRS89|Serbian Spatial Reference System 2000
8694 Camacupa 2015
8699 RSAO13|Reference System de Angola 2013
8818 MTRF-2000|MOMRA Terrestrial Reference Frame 2000
8860 NAD83(FBN)|NAD83 (Federal Base Network)
8888 WGS 84 (Transit)|World Geodetic System 1984 (Transit)
8900 RGWF96
8902 RGWF96 (lon-lat)
8907 CR-SIRGAS
8949 SIRGAS-Chile 2010|SIRGAS-Chile realization 2 epoch 2010
8972 SIRGAS-CON DGF00P01|SIRGAS Continuously Operating Network DGF00P01
8973 SIRGAS-CON DGF01P01|SIRGAS Continuously Operating Network DGF01P01
8974 SIRGAS-CON DGF01P02|SIRGAS Continuously Operating Network DGF01P02
8975 SIRGAS-CON DGF02P01|SIRGAS Continuously Operating Network DGF02P01
8976 SIRGAS-CON DGF04P01|SIRGAS Continuously Operating Network DGF04P01
8977 SIRGAS-CON DGF05P01|SIRGAS Continuously Operating Network DGF05P01
8978 SIRGAS-CON DGF06P01|SIRGAS Continuously Operating Network DGF06P01
8979 SIRGAS-CON DGF07P01|SIRGAS Continuously Operating Network DGF07P01
8980 SIRGAS-CON DGF08P01|SIRGAS Continuously Operating Network DGF08P01
8981 SIRGAS-CON SIR09P01|SIRGAS Continuously Operating Network SIR09P01
8982 SIRGAS-CON SIR10P01|SIRGAS Continuously Operating Network SIR10P01
8983 SIRGAS-CON SIR11P01|SIRGAS Continuously Operating Network SIR11P01
8984 SIRGAS-CON SIR13P01|SIRGAS Continuously Operating Network SIR13P01
8985 SIRGAS-CON SIR14P01|SIRGAS Continuously Operating Network SIR14P01
8986 SIRGAS-CON SIR15P01|SIRGAS Continuously Operating Network SIR15P01
8987 SIRGAS-CON SIR17P01|SIRGAS Continuously Operating Network SIR17P01
8988 ITRF88|International Terrestrial Reference Frame 1988
8989 ITRF89|International Terrestrial Reference Frame 1989
8990 ITRF90|International Terrestrial Reference Frame 1990
8991 ITRF91|International Terrestrial Reference Frame 1991
8992 ITRF92|International Terrestrial Reference Frame 1992
8993 ITRF93|International Terrestrial Reference Frame 1993
8994 ITRF94|International Terrestrial Reference Frame 1994
8995 ITRF96|International Terrestrial Reference Frame 1996
8996 ITRF97|International Terrestrial Reference Frame 1997
8997 ITRF2000|International Terrestrial Reference Frame 2000
8998 ITRF2005|International Terrestrial Reference Frame 2005
8999 ITRF2008|International Terrestrial Reference Frame 2008
9000 ITRF2014|International Terrestrial Reference Frame 2014
9003 IGS97
9006 IGS00
9009 IGb00
9012 IGS05
9014 IGS08
9017 IGb08
9019 IGS14
9053 WGS 84 (G730)|World Geodetic System 1984 (G730)
9054 WGS 84 (G873)|World Geodetic System 1984 (G873)
9055 WGS 84 (G1150)|World Geodetic System 1984 (G1150)
9056 WGS 84 (G1674)|World Geodetic System 1984 (G1674)
9057 WGS 84 (G1762)|World Geodetic System 1984 (G1762)
9059 ETRF89|European Terrestrial Reference Frame 1989
9060 ETRF90|European Terrestrial Reference Frame 1990
9061 ETRF91|European Terrestrial Reference Frame 1991
9062 ETRF92|European Terrestrial Reference Frame 1992
9063 ETRF93|European Terrestrial Reference Frame 1993
9064 ETRF94|European Terrestrial Reference Frame 1994
9065 ETRF96|European Terrestrial Reference Frame 1996
9066 ETRF97|European Terrestrial Reference Frame 1997
9067 ETRF2000|European Terrestrial Reference Frame 2000
9068 ETRF2005|European Terrestrial Reference Frame 2005
9069 ETRF2014|European Terrestrial Reference Frame 2014
9072 NAD83(MARP00)|North American Datum of 1983 (MARP00)
9075 NAD83(PACP00)|North American Datum of 1983 (PACP00)
9140 KOSOVAREF01|Kosovo Reference System 2001
9148 SIRGAS-Chile 2013|SIRGAS-Chile realization 3 epoch 2013
9153 SIRGAS-Chile 2016|SIRGAS-Chile realization 4 epoch 2016
9248 Tapi Aike
9251 MMN|Ministerio de Marina Norte
9253 MMS|Ministerio de Marina Sur
9294 ONGD17|Oman National Geodetic Datum 2017
9299 HS2-IRF|HS2 Intermediate Reference Frame
9309 ATRF2014|Australian Terrestrial Reference Frame 2014
9333 KSA-GRF17|Kingdom of Saudi Arabia Geodetic Reference Frame 2017
9364 TPEN11-IRF|TPEN11 Intermediate Reference Frame
9372 MML07-IRF|MML07 Intermediate Reference Frame
9380 IGb14
9384 AbInvA96_2020-IRF|AbInvA96_2020 Intermediate Reference Frame
9403 PN68|Pico de las Nieves 1968
9453 GBK19-IRF|GBK19 Intermediate Reference Frame
9470 SRGI2013|Sistem Referensi Geospasial Indonesia 2013
9474 PZ-90.02|Parametry Zemli 1990.02
9475 PZ-90.11|Parametry Zemli 1990.11
9547 LTF2004(G)|Lyon Turin Ferroviaire 2004
9696 REDGEOMIN|Red Geodesica Para Mineria en Chile
9702 ETRF2000-PL|ETRF2000 Poland
9739 EOS21-IRF|EOS21 Intermediate Reference Frame
9755 WGS 84 (G2139)|World Geodetic System 1984 (G2139)
9758 ECML14_NB-IRF|ECML14_NB Intermediate Reference Frame
9763 EWR2-IRF|EWR2 Intermediate Reference Frame
9777 RGF93 v2
9779 RGF93 v2 (lon-lat)
9782 RGF93 v2b
9784 RGF93 v2b (lon-lat)
9866 MRH21-IRF|MRH21 Intermediate Reference Frame
9871 MOLDOR11-IRF|MOLDOR11 Intermediate Reference Frame
9939 EBBWV14-IRF|EBBWV14 Intermediate Reference Frame
9964 HULLEE13-IRF|HULLEE13 Intermediate Reference Frame
9969 SCM22-IRF|SCM22 Intermediate Reference Frame
9974 FNL22-IRF|FNL22 Intermediate Reference Frame
9990 ITRF2020|International Terrestrial Reference Frame 2020
20033 MWC18-IRF|MWC18 Intermediate Reference Frame
20041 SIRGAS-Chile 2021|SIRGAS-Chile realization 5 epoch 2021
`
	// ellipsoidNames has an ellipsoid a line: code and name.
	ellipsoidNames = `
1024 CGCS2000
1025 GSK-2011
1026 Zach 1812
7001 Airy 1830
7002 Airy Modified 1849
7003 Australian National Spheroid
7004 Bessel 1841
7005 Bessel Modified
7007 Clarke 1858
7008 Clarke 1866
7010 Clarke 1880 (Benoit)
7011 Clarke 1880 (IGN)
7012 Clarke 1880 (RGS)
7013 Clarke 1880 (Arc)
7014 Clarke 1880 (SGA 1922)
7015 Everest 1830 (1937 Adjustment)
7016 Everest 1830 (1967 Definition)
7018 Everest 1830 Modified
7019 GRS 1980
7020 Helmert 1906
7021 Indonesian National Spheroid
7022 International 1924
7024 Krassowsky 1940
7025 NWL 9D
7027 Plessis 1817
7028 Struve 1860
7029 War Office
7030 WGS 84
7031 GEM 10C
7032 OSU86F
7033 OSU91A
7034 Clarke 1880
7036 GRS 1967
7041 Average Terrestrial System 1977
7042 Everest (1830 Definition)
7043 WGS 72
7044 Everest 1830 (1962 Definition)
7045 Everest 1830 (1975 Definition)
7046 Bessel Namibia (GLM)
7048 GRS 1980 Authalic Sphere
7049 IAG 1975
7050 GRS 1967 Modified
7051 Danish 1876
7052 Clarke 1866 Authalic Sphere
7053 Hough 1960
7054 PZ-90
7055 Clarke 1880 (international foot)
7056 Everest 1830 (RSO 1969)
7057 International 1924 Authalic Sphere
7058 Hughes 1980
`
)
