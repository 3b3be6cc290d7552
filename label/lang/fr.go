package lang

func french() Vocabulary {
	return Vocabulary{
		Comma: ", ", LastComma: " & ", And: " et ",
		Det: "Dét.", Conf: "Conf.", Rev: "Rév.",
		Colon: "\u202f: ", Depth: "Prof.",
		With: "avec", Also: "ainsi que", Among: "avec", Alt: "Alt.",
		Vernacular: "Nom vernaculaire", Uses: "Usages", Duplicates: "Doubles",
		Cultivated: "Plante cultivée", Accession: "accession", WildOrigin: "origine sauvage",
		NoNumber: "s.n.", NoDate: "s.d.", NoPlace: "s.loc.", NoCollector: "s.coll.",

		SheetOf: "planche {n} sur {of}", PacketOf: "pochette {n} sur {of}", BoxOf: "boîte {n} sur {of}", JarOf: "bocal {n} sur {of}",
		Sheet: "planche", Packet: "pochette", Box: "boîte", Jar: "bocal",
		WithPacket: "avec pochette", WithPackets: "avec {n} pochettes",
		WithBox: "avec boîte", WithBoxes: "avec {n} boîtes",
		WithJar: "avec bocal", WithJars: "avec {n} bocaux",
		InPacket: "{what} en pochette", InBox: "{what} en boîte", InJar: "{what} en bocal",
		PartOf: "Appartient à {what}", Contents: "Contenu",
		Continued: "suite de l’étiquette", Of: "sur", Reprinted: "réimprimée",
		Withheld: "Lieu exact réservé", WithheldSite: "Lieu exact et milieu réservés",

		CaptionFamily: "Famille", CaptionName: "Nom", CaptionDet: "Dét.", CaptionType: "Type",
		CaptionPlace: "Localité", CaptionCoords: "Coordonnées", CaptionElevation: "Altitude",
		CaptionHabitat: "Milieu", CaptionAssociates: "Compagnes", CaptionPlant: "Plante",
		CaptionVernacular: "Nom vernac.", CaptionUses: "Usages", CaptionRemarks: "Remarques", CaptionPermit: "Autorisation",
		CaptionCollector: "Récolteur", CaptionDate: "Date", CaptionTeam: "Avec",
		CaptionCatalogue: "N° cat.",
		CaptionStatus:    "Statut",

		SlipDetermination: "Détermination", SlipConfirmation: "Confirmation", SlipRevision: "Révision", SlipComment: "Commentaire",
		SlipType: "Type", SlipTypeOf: "de", SlipIsotypes: "Isotypes à", SlipSheet: "Planche n°",

		TagPress: "Presse", TagBundle: "Liasse", TagPlants: "Plantes\u202f: {n}",
		TagDryer: "Séchoir", TagFreezer: "Congélateur", TagIn: "entrée", TagOut: "sortie",
		TagDay: "1 jour", TagDays: "{n} jours",
		CautionFreezer:     "Brûlures par le froid\u202f: porter des gants isolants. Garder le sac fermé jusqu’à ce qu’il soit à la température de la pièce",
		CautionDryer:       "Risque d’incendie\u202f: ne jamais laisser le séchoir sans surveillance au-dessus de papier inflammable. Aérer la pièce",
		CautionDeepFreezer: "À ce froid, les colles peuvent céder\u202f: ne pas y mettre de planches montées",
		CautionLocal:       "Les règles de la maison et la réglementation locale priment",
	}
}
