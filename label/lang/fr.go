package lang

func french() Vocabulary {
	return Vocabulary{
		Comma: ", ", LastComma: " & ", And: " et ",
		Det: "Dét.", Conf: "Conf.", Rev: "Rév.",
		Colon: "\u202f: ", Depth: "Prof.",
		With: "avec", Among: "avec", Collected: "Réc.", Alt: "Alt.",
		Vernacular: "Nom vernaculaire", Uses: "Usages", Permit: "Autorisation", Duplicates: "Doubles",
		Cultivated: "Plante cultivée", Accession: "accession", WildOrigin: "origine sauvage",
		NoNumber: "s.n.", NoDate: "s.d.", NoPlace: "s.loc.", NoCollector: "s.coll.",

		SheetOf: "planche {n} sur {of}", PacketOf: "pochette {n} sur {of}", BoxOf: "boîte {n} sur {of}", JarOf: "bocal {n} sur {of}",
		Sheet: "planche", Packet: "pochette", Box: "boîte", Jar: "bocal",
		WithPacket: "avec pochette", WithPackets: "avec {n} pochettes",
		WithBox: "avec boîte", WithBoxes: "avec {n} boîtes",
		WithJar: "avec bocal", WithJars: "avec {n} bocaux",
		InPacket: "{what} en pochette", InBox: "{what} en boîte", InJar: "{what} en bocal",
		PartOf: "Appartient à {what}", Contents: "Contenu",
		Continued: "suite de l’étiquette", Of: "sur",
		Withheld: "Lieu exact réservé",
		PlantsOf: "Plantes\u202f: {what}", FloraOf: "Flore\u202f: {what}",

		CaptionFamily: "Famille", CaptionName: "Nom", CaptionDet: "Dét.", CaptionType: "Type",
		CaptionPlace: "Localité", CaptionCoords: "Coordonnées", CaptionElevation: "Altitude",
		CaptionHabitat: "Milieu", CaptionAssociates: "Compagnes", CaptionPlant: "Plante",
		CaptionVernacular: "Nom vernac.", CaptionUses: "Usages", CaptionRemarks: "Remarques", CaptionPermit: "Autorisation",
		CaptionCollector: "Récolteur", CaptionNumber: "Numéro", CaptionDate: "Date", CaptionTeam: "Avec",
		CaptionDuplicates: "Doubles", CaptionProject: "Projet", CaptionCatalogue: "N° cat.",
		CaptionStatus: "Statut", CaptionPart: "Partie", CaptionInstitution: "Herbier",

		SlipDetermination: "Détermination", SlipConfirmation: "Confirmation", SlipRevision: "Révision", SlipComment: "Commentaire",
		SlipType: "Type", SlipTypeOf: "de", SlipIsotypes: "Isotypes à", SlipSheet: "Planche n°",
		SlipName: "Nom", SlipDate: "Date", SlipInstitution: "Herbier",

		TagPress: "Presse", TagBundle: "Liasse", TagNumbers: "Nos {n} à {of}", TagPlants: "Plantes\u202f: {n}",
		TagInPress: "Sous presse", TagDryer: "Séchoir", TagFreezer: "Congélateur", TagIn: "entrée", TagOut: "sortie",
		TagDays: "{n} jours", TagDone: "Fait",
		CautionFreezer: "Brûlures par le froid : porter des gants isolants. Garder le sac fermé jusqu’à ce qu’il soit à la température de la pièce",
		CautionDryer:   "Risque d’incendie : ne jamais laisser le séchoir sans surveillance au-dessus de papier inflammable. Aérer la pièce",
		CautionPoison:  "Les planches traitées jadis peuvent porter du poison : mettre des gants, ne pas manger, aérer la pièce",
	}
}
