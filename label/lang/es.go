package lang

func spanish() Vocabulary {
	return Vocabulary{
		Comma: ", ", LastComma: " & ", And: " y ",
		Det: "Det.", Conf: "Conf.", Rev: "Rev.",
		Colon: ": ", Depth: "Prof.",
		With: "con", Also: "además", Among: "con", Alt: "Alt.",
		Vernacular: "Nombre vulgar", Uses: "Usos", Duplicates: "Dupl.",
		Cultivated: "Cultivada", Accession: "accesión", WildOrigin: "origen silvestre",
		NoNumber: "s.n.", NoDate: "s.d.", NoPlace: "s.loc.", NoCollector: "s.coll.",

		SheetOf: "pliego {n} de {of}", PacketOf: "sobre {n} de {of}", BoxOf: "caja {n} de {of}", JarOf: "frasco {n} de {of}",
		Sheet: "pliego", Packet: "sobre", Box: "caja", Jar: "frasco",
		WithPacket: "con sobre", WithPackets: "con {n} sobres",
		WithBox: "con caja", WithBoxes: "con {n} cajas",
		WithJar: "con frasco", WithJars: "con {n} frascos",
		InPacket: "{what} en sobre", InBox: "{what} en caja", InJar: "{what} en frasco",
		PartOf: "Parte de {what}", Contents: "Contenido",
		Continued: "continuación de la etiqueta", Of: "de", Reprinted: "reimpresa",
		Withheld: "Lugar exacto reservado", WithheldSite: "Lugar exacto y hábitat reservados",

		CaptionFamily: "Familia", CaptionName: "Nombre", CaptionDet: "Det.", CaptionType: "Tipo",
		CaptionPlace: "Localidad", CaptionCoords: "Coordenadas", CaptionElevation: "Altitud",
		CaptionHabitat: "Hábitat", CaptionAssociates: "Acompañantes", CaptionPlant: "Planta",
		CaptionVernacular: "Nombre vulgar", CaptionUses: "Usos", CaptionRemarks: "Observaciones", CaptionPermit: "Permiso",
		CaptionCollector: "Colector", CaptionDate: "Fecha", CaptionTeam: "Con",
		CaptionCatalogue: "N.º cat.",
		CaptionStatus:    "Estado",

		SlipDetermination: "Determinación", SlipConfirmation: "Confirmación", SlipRevision: "Revisión", SlipComment: "Comentario",
		SlipType: "Tipo", SlipTypeOf: "de", SlipIsotypes: "Isótipos en", SlipSheet: "Pliego n.º",

		TagPress: "Prensa", TagBundle: "Paquete", TagPlants: "Plantas: {n}",
		TagDryer: "Secadora", TagFreezer: "Congelador", TagIn: "entrada", TagOut: "salida",
		TagDay: "1 día", TagDays: "{n} días",
		CautionFreezer:     "Quemaduras por frío: usar guantes aislantes. Mantener la bolsa cerrada hasta que alcance la temperatura ambiente",
		CautionDryer:       "Riesgo de incendio: no dejar nunca la secadora sin vigilancia sobre papel inflamable. Mantener la sala ventilada",
		CautionDeepFreezer: "Con este frío los adhesivos pueden fallar: dejar fuera los pliegos montados",
		CautionLocal:       "Las reglas de la casa y las normas locales prevalecen",
	}
}
