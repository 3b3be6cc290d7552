package lang

func german() Vocabulary {
	return Vocabulary{
		Comma: ", ", LastComma: " & ", And: " und ",
		Det: "Det.", Conf: "Conf.", Rev: "Rev.",
		Colon: ": ", Depth: "Tiefe",
		With: "mit", Also: "dazu", Among: "mit", Alt: "Alt.",
		Vernacular: "Volksname", Uses: "Verwendung", Duplicates: "Dupl.",
		Cultivated: "Kultiviert", Accession: "Akzession", WildOrigin: "Wildherkunft",
		NoNumber: "s.n.", NoDate: "s.d.", NoPlace: "s.loc.", NoCollector: "s.coll.",

		SheetOf: "Bogen {n} von {of}", PacketOf: "Tüte {n} von {of}", BoxOf: "Schachtel {n} von {of}", JarOf: "Glas {n} von {of}",
		Sheet: "Bogen", Packet: "Tüte", Box: "Schachtel", Jar: "Glas",
		WithPacket: "mit Tüte", WithPackets: "mit {n} Tüten",
		WithBox: "mit Schachtel", WithBoxes: "mit {n} Schachteln",
		WithJar: "mit Glas", WithJars: "mit {n} Gläsern",
		InPacket: "{what} in Tüte", InBox: "{what} in Schachtel", InJar: "{what} in Glas",
		PartOf: "Gehört zu {what}", Contents: "Inhalt",
		Continued: "Fortsetzung des Etiketts", Of: "von", Reprinted: "nachgedruckt",
		Withheld: "Genauer Fundort zurückgehalten", WithheldSite: "Genauer Fundort und Standort zurückgehalten",

		CaptionFamily: "Familie", CaptionName: "Name", CaptionDet: "Det.", CaptionType: "Typus",
		CaptionPlace: "Fundort", CaptionCoords: "Koordinaten", CaptionElevation: "Höhe",
		CaptionHabitat: "Standort", CaptionAssociates: "Begleiter", CaptionPlant: "Pflanze",
		CaptionVernacular: "Volksname", CaptionUses: "Verwendung", CaptionRemarks: "Bemerkungen", CaptionPermit: "Genehmigung",
		CaptionCollector: "Sammler", CaptionDate: "Datum", CaptionTeam: "Mit",
		CaptionCatalogue: "Kat.-Nr.",
		CaptionStatus:    "Status",

		SlipDetermination: "Bestimmung", SlipConfirmation: "Bestätigung", SlipRevision: "Revision", SlipComment: "Bemerkung",
		SlipType: "Typus", SlipTypeOf: "von", SlipIsotypes: "Isotypen in", SlipSheet: "Bogen Nr.",

		TagPress: "Presse", TagBundle: "Bündel", TagPlants: "Pflanzen: {n}",
		TagDryer: "Trockner", TagFreezer: "Gefrierschrank", TagIn: "hinein", TagOut: "heraus",
		TagDay: "1 Tag", TagDays: "{n} Tage",
		CautionFreezer:     "Kälteverbrennungen: isolierende Handschuhe tragen. Den Beutel geschlossen lassen, bis er Zimmertemperatur hat",
		CautionDryer:       "Brandgefahr: den Trockner nie unbeaufsichtigt über brennbarem Papier laufen lassen. Den Raum lüften",
		CautionDeepFreezer: "Bei dieser Kälte kann Klebstoff versagen: keine montierten Bögen hineingeben",
		CautionLocal:       "Hausregeln und örtliche Vorschriften gehen vor",
	}
}
