package lang

func spanish() Vocabulary {
	return Vocabulary{
		Comma: ", ", LastComma: " & ", And: " y ",
		Det: "Det.", Conf: "Conf.", Rev: "Rev.",
		Colon: ": ", Depth: "Prof.",
		With: "con", Among: "con", Collected: "Col.", Alt: "Alt.",
		Vernacular: "Nombre vulgar", Uses: "Usos", Permit: "Permiso", Duplicates: "Dupl.",
		Cultivated: "Cultivada", Accession: "accesión", WildOrigin: "origen silvestre",
		NoNumber: "s.n.", NoDate: "s.d.", NoPlace: "s.loc.", NoCollector: "s.coll.",

		SheetOf: "pliego {n} de {of}", PacketOf: "sobre {n} de {of}", BoxOf: "caja {n} de {of}", JarOf: "frasco {n} de {of}",
		Sheet: "pliego", Packet: "sobre", Box: "caja", Jar: "frasco",
		WithPacket: "con sobre", WithPackets: "con {n} sobres",
		WithBox: "con caja", WithBoxes: "con {n} cajas",
		WithJar: "con frasco", WithJars: "con {n} frascos",
		InPacket: "{what} en sobre", InBox: "{what} en caja", InJar: "{what} en frasco",
		PartOf: "Parte de {what}", Contents: "Contenido",
		Continued: "continuación de la etiqueta", Of: "de",
		Withheld: "Lugar exacto reservado",
		PlantsOf: "Plantas de {what}", FloraOf: "Flora de {what}",

		CaptionFamily: "Familia", CaptionName: "Nombre", CaptionDet: "Det.", CaptionType: "Tipo",
		CaptionPlace: "Localidad", CaptionCoords: "Coordenadas", CaptionElevation: "Altitud",
		CaptionHabitat: "Hábitat", CaptionAssociates: "Acompañantes", CaptionPlant: "Planta",
		CaptionVernacular: "Nombre vulgar", CaptionUses: "Usos", CaptionRemarks: "Observaciones", CaptionPermit: "Permiso",
		CaptionCollector: "Colector", CaptionNumber: "Número", CaptionDate: "Fecha", CaptionTeam: "Con",
		CaptionDuplicates: "Duplicados", CaptionProject: "Proyecto", CaptionCatalogue: "N.º cat.",
		CaptionStatus: "Estado", CaptionPart: "Parte", CaptionInstitution: "Herbario",

		SlipDetermination: "Determinación", SlipConfirmation: "Confirmación", SlipRevision: "Revisión", SlipComment: "Comentario",
		SlipType: "Tipo", SlipTypeOf: "de", SlipIsotypes: "Isótipos en", SlipSheet: "Pliego n.º",
		SlipName: "Nombre", SlipDate: "Fecha", SlipInstitution: "Herbario",

		TagPress: "Prensa", TagBundle: "Paquete", TagNumbers: "N.os {n} a {of}", TagPlants: "Plantas: {n}",
		TagInPress: "En prensa", TagDryer: "Secadora", TagFreezer: "Congelador", TagIn: "entrada", TagOut: "salida",
		TagDays: "{n} días", TagDone: "Hecho",
		CautionFreezer: "Quemaduras por frío: usar guantes aislantes. Mantener la bolsa cerrada hasta que alcance la temperatura ambiente",
		CautionDryer:   "Riesgo de incendio: no dejar nunca la secadora sin vigilancia sobre papel inflamable. Mantener la sala ventilada",
		CautionPoison:  "Los pliegos tratados hace mucho pueden llevar veneno: usar guantes, no comer, ventilar la sala",
	}
}
