package lang

func german() Vocabulary {
	return Vocabulary{
		Comma: ", ", LastComma: " & ", And: " und ",
		Det: "Det.", Conf: "Conf.", Rev: "Rev.",
		Colon: ": ", Depth: "Tiefe",
		With: "mit", Among: "mit", Collected: "Leg.", Alt: "Alt.",
		Vernacular: "Volksname", Uses: "Verwendung", Permit: "Genehmigung", Duplicates: "Dupl.",
		Cultivated: "Kultiviert", Accession: "Akzession", WildOrigin: "Wildherkunft",
		NoNumber: "s.n.", NoDate: "s.d.", NoPlace: "s.loc.", NoCollector: "s.coll.",

		SheetOf: "Bogen {n} von {of}", PacketOf: "Tüte {n} von {of}", BoxOf: "Schachtel {n} von {of}", JarOf: "Glas {n} von {of}",
		Sheet: "Bogen", Packet: "Tüte", Box: "Schachtel", Jar: "Glas",
		WithPacket: "mit Tüte", WithPackets: "mit {n} Tüten",
		WithBox: "mit Schachtel", WithBoxes: "mit {n} Schachteln",
		WithJar: "mit Glas", WithJars: "mit {n} Gläsern",
		InPacket: "{what} in Tüte", InBox: "{what} in Schachtel", InJar: "{what} in Glas",
		PartOf: "Gehört zu {what}", Contents: "Inhalt",
		Continued: "Fortsetzung des Etiketts", Of: "von",
		Withheld: "Genauer Fundort zurückgehalten",
		PlantsOf: "Pflanzen: {what}", FloraOf: "Flora: {what}",

		CaptionFamily: "Familie", CaptionName: "Name", CaptionDet: "Det.", CaptionType: "Typus",
		CaptionPlace: "Fundort", CaptionCoords: "Koordinaten", CaptionElevation: "Höhe",
		CaptionHabitat: "Standort", CaptionAssociates: "Begleiter", CaptionPlant: "Pflanze",
		CaptionVernacular: "Volksname", CaptionUses: "Verwendung", CaptionRemarks: "Bemerkungen", CaptionPermit: "Genehmigung",
		CaptionCollector: "Sammler", CaptionNumber: "Nummer", CaptionDate: "Datum", CaptionTeam: "Mit",
		CaptionDuplicates: "Dubletten", CaptionProject: "Projekt", CaptionCatalogue: "Kat.-Nr.",
		CaptionStatus: "Status", CaptionPart: "Teil", CaptionInstitution: "Herbarium",

		SlipDetermination: "Bestimmung", SlipConfirmation: "Bestätigung", SlipRevision: "Revision", SlipComment: "Bemerkung",
		SlipType: "Typus", SlipTypeOf: "von", SlipIsotypes: "Isotypen in", SlipSheet: "Bogen Nr.",
		SlipName: "Name", SlipDate: "Datum", SlipInstitution: "Herbarium",

		TagPress: "Presse", TagBundle: "Bündel", TagNumbers: "Nr. {n} bis {of}", TagPlants: "Pflanzen: {n}",
		TagInPress: "In der Presse", TagDryer: "Trockner", TagFreezer: "Gefrierschrank", TagIn: "hinein", TagOut: "heraus",
		TagDays: "{n} Tage", TagDone: "Erledigt",
		CautionFreezer: "Kälteverbrennungen: isolierende Handschuhe tragen. Den Beutel geschlossen lassen, bis er Zimmertemperatur hat",
		CautionDryer:   "Brandgefahr: den Trockner nie unbeaufsichtigt über brennbarem Papier laufen lassen. Den Raum lüften",
		CautionPoison:  "Früher behandelte Bögen können Gift tragen: Handschuhe anziehen, nicht essen, den Raum lüften",
	}
}
