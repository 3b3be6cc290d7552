package lang

func portuguese() Vocabulary {
	return Vocabulary{
		Comma: ", ", LastComma: " & ", And: " e ",
		Det: "Det.", Conf: "Conf.", Rev: "Rev.",
		Colon: ": ", Depth: "Prof.",
		With: "com", Also: "e ainda", Among: "com", Alt: "Alt.",
		Vernacular: "Nome vulgar", Uses: "Usos", Duplicates: "Dupl.",
		Cultivated: "Cultivada", Accession: "acesso", WildOrigin: "origem silvestre",
		NoNumber: "s.n.", NoDate: "s.d.", NoPlace: "s.loc.", NoCollector: "s.coll.",

		SheetOf: "folha {n} de {of}", PacketOf: "envelope {n} de {of}", BoxOf: "caixa {n} de {of}", JarOf: "frasco {n} de {of}",
		Sheet: "folha", Packet: "envelope", Box: "caixa", Jar: "frasco",
		WithPacket: "com envelope", WithPackets: "com {n} envelopes",
		WithBox: "com caixa", WithBoxes: "com {n} caixas",
		WithJar: "com frasco", WithJars: "com {n} frascos",
		InPacket: "{what} em envelope", InBox: "{what} em caixa", InJar: "{what} em frasco",
		PartOf: "Pertence a {what}", Contents: "Conteúdo",
		Continued: "continuação da etiqueta", Of: "de", Reprinted: "reimpressa",
		Withheld: "Local exato reservado", WithheldSite: "Local exato e habitat reservados",

		CaptionFamily: "Família", CaptionName: "Nome", CaptionDet: "Det.", CaptionType: "Tipo",
		CaptionPlace: "Local", CaptionCoords: "Coordenadas", CaptionElevation: "Altitude",
		CaptionHabitat: "Habitat", CaptionAssociates: "Companheiras", CaptionPlant: "Planta",
		CaptionVernacular: "Nome vulgar", CaptionUses: "Usos", CaptionRemarks: "Observações", CaptionPermit: "Licença",
		CaptionCollector: "Coletor", CaptionDate: "Data", CaptionTeam: "Com",
		CaptionCatalogue: "N.º cat.",
		CaptionStatus:    "Estatuto",

		SlipDetermination: "Determinação", SlipConfirmation: "Confirmação", SlipRevision: "Revisão", SlipComment: "Comentário",
		SlipType: "Tipo", SlipTypeOf: "de", SlipIsotypes: "Isótipos em", SlipSheet: "Folha n.º",

		TagPress: "Prensa", TagBundle: "Maço", TagPlants: "Plantas: {n}",
		TagDryer: "Estufa", TagFreezer: "Congelador", TagIn: "entrada", TagOut: "saída",
		TagDay: "1 dia", TagDays: "{n} dias",
		CautionFreezer:     "Queimaduras pelo frio: usar luvas isolantes. Manter o saco fechado até atingir a temperatura ambiente",
		CautionDryer:       "Risco de incêndio: nunca deixar a estufa sem vigilância sobre papel inflamável. Manter a sala arejada",
		CautionDeepFreezer: "A este frio as colas podem ceder: não incluir folhas montadas",
		CautionLocal:       "As regras da casa e as normas locais prevalecem",
	}
}
