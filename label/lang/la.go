package lang

func latin() Vocabulary {
	return Vocabulary{
		Comma: ", ", LastComma: " & ", And: " et ",
		Det: "Det.", Conf: "Conf.", Rev: "Rev.",
		Colon: ": ", Depth: "Prof.",
		With: "cum", Among: "cum", Collected: "Leg.", Alt: "Alt.",
		Vernacular: "Nomen vernaculum", Uses: "Usus", Permit: "Licentia", Duplicates: "Dupl.",
		Cultivated: "Culta", Accession: "accessio", WildOrigin: "origo spontanea",
		NoNumber: "s.n.", NoDate: "s.d.", NoPlace: "s.loc.", NoCollector: "s.coll.",

		SheetOf: "plagula {n} ex {of}", PacketOf: "involucrum {n} ex {of}", BoxOf: "capsa {n} ex {of}", JarOf: "ampulla {n} ex {of}",
		Sheet: "plagula", Packet: "involucrum", Box: "capsa", Jar: "ampulla",
		WithPacket: "cum involucro", WithPackets: "cum involucris {n}",
		WithBox: "cum capsa", WithBoxes: "cum capsis {n}",
		WithJar: "cum ampulla", WithJars: "cum ampullis {n}",
		InPacket: "{what} in involucro", InBox: "{what} in capsa", InJar: "{what} in ampulla",
		PartOf: "Pars: {what}", Contents: "Continet",
		Continued: "schedula continuata", Of: "ex",
		Withheld: "Locus exactus reservatus",
		PlantsOf: "Plantae: {what}", FloraOf: "Flora: {what}",

		CaptionFamily: "Familia", CaptionName: "Nomen", CaptionDet: "Det.", CaptionType: "Typus",
		CaptionPlace: "Locus", CaptionCoords: "Positio", CaptionElevation: "Altitudo",
		CaptionHabitat: "Habitat", CaptionAssociates: "Sociae", CaptionPlant: "Planta",
		CaptionVernacular: "Nomen vernac.", CaptionUses: "Usus", CaptionRemarks: "Notae", CaptionPermit: "Licentia",
		CaptionCollector: "Legit", CaptionNumber: "Numerus", CaptionDate: "Dies", CaptionTeam: "Cum",
		CaptionDuplicates: "Duplicata", CaptionProject: "Inceptum", CaptionCatalogue: "No. cat.",
		CaptionStatus: "Status", CaptionPart: "Pars", CaptionInstitution: "Herbarium",

		SlipDetermination: "Determinavit", SlipConfirmation: "Confirmavit", SlipRevision: "Revidit", SlipComment: "Nota",
		SlipType: "Typus", SlipTypeOf: "nominis", SlipIsotypes: "Isotypi in", SlipSheet: "Plagula no.",
		SlipName: "Nomen", SlipDate: "Dies", SlipInstitution: "Herbarium",

		TagPress: "Prelum", TagBundle: "Fasciculus", TagNumbers: "Nos. {n} ad {of}", TagPlants: "Plantae: {n}",
		TagInPress: "In prelo", TagDryer: "Siccatorium", TagFreezer: "Gelatorium", TagIn: "intus", TagOut: "foras",
		TagDays: "dies {n}", TagDone: "Factum",
		CautionFreezer: "Frigus urit: manus muniantur. Saccus clausus maneat donec tepescat",
		CautionDryer:   "Periculum incendii: siccatorium supra chartam inflammabilem numquam sine custode relinquatur. Aer admittatur",
		CautionPoison:  "Plagulae olim tractatae venenum continere possunt: manus muniantur, nihil edatur, aer admittatur",
	}
}
