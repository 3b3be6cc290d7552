package lang

func portuguese() Vocabulary {
	return Vocabulary{
		Comma: ", ", LastComma: " & ", And: " e ",
		Det: "Det.", Conf: "Conf.", Rev: "Rev.",
		Colon: ": ", Depth: "Prof.",
		With: "com", Among: "com", Collected: "Col.", Alt: "Alt.",
		Vernacular: "Nome vulgar", Uses: "Usos", Permit: "Licença", Duplicates: "Dupl.",
		Cultivated: "Cultivada", Accession: "acesso", WildOrigin: "origem silvestre",
		NoNumber: "s.n.", NoDate: "s.d.", NoPlace: "s.loc.", NoCollector: "s.coll.",

		SheetOf: "folha {n} de {of}", PacketOf: "envelope {n} de {of}", BoxOf: "caixa {n} de {of}", JarOf: "frasco {n} de {of}",
		Sheet: "folha", Packet: "envelope", Box: "caixa", Jar: "frasco",
		WithPacket: "com envelope", WithPackets: "com {n} envelopes",
		WithBox: "com caixa", WithBoxes: "com {n} caixas",
		WithJar: "com frasco", WithJars: "com {n} frascos",
		InPacket: "{what} em envelope", InBox: "{what} em caixa", InJar: "{what} em frasco",
		PartOf: "Pertence a {what}", Contents: "Conteúdo",
		Continued: "continuação da etiqueta", Of: "de",
		Withheld: "Local exato reservado",
		PlantsOf: "Plantas: {what}", FloraOf: "Flora: {what}",

		CaptionFamily: "Família", CaptionName: "Nome", CaptionDet: "Det.", CaptionType: "Tipo",
		CaptionPlace: "Local", CaptionCoords: "Coordenadas", CaptionElevation: "Altitude",
		CaptionHabitat: "Habitat", CaptionAssociates: "Companheiras", CaptionPlant: "Planta",
		CaptionVernacular: "Nome vulgar", CaptionUses: "Usos", CaptionRemarks: "Observações", CaptionPermit: "Licença",
		CaptionCollector: "Coletor", CaptionNumber: "Número", CaptionDate: "Data", CaptionTeam: "Com",
		CaptionDuplicates: "Duplicados", CaptionProject: "Projeto", CaptionCatalogue: "N.º cat.",
		CaptionStatus: "Estatuto", CaptionPart: "Parte", CaptionInstitution: "Herbário",

		SlipDetermination: "Determinação", SlipConfirmation: "Confirmação", SlipRevision: "Revisão", SlipComment: "Comentário",
		SlipType: "Tipo", SlipTypeOf: "de", SlipIsotypes: "Isótipos em", SlipSheet: "Folha n.º",
		SlipName: "Nome", SlipDate: "Data", SlipInstitution: "Herbário",

		TagPress: "Prensa", TagBundle: "Maço", TagNumbers: "N.ºs {n} a {of}", TagPlants: "Plantas: {n}",
		TagInPress: "Na prensa", TagDryer: "Estufa", TagFreezer: "Congelador", TagIn: "entrada", TagOut: "saída",
		TagDays: "{n} dias", TagDone: "Feito",
		CautionFreezer: "Queimaduras pelo frio: usar luvas isolantes. Manter o saco fechado até atingir a temperatura ambiente",
		CautionDryer:   "Risco de incêndio: nunca deixar a estufa sem vigilância sobre papel inflamável. Manter a sala arejada",
		CautionPoison:  "As folhas tratadas há muito podem conter veneno: usar luvas, não comer, arejar a sala",
	}
}
