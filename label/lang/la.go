package lang

func latin() Vocabulary {
	return Vocabulary{
		Comma: ", ", LastComma: " & ", And: " et ",
		Det: "Det.", Conf: "Conf.", Rev: "Rev.",
		Colon: ": ", Depth: "Prof.",
		With: "cum", Also: "item", Among: "cum", Alt: "Alt.",
		Vernacular: "Nomen vernaculum", Uses: "Usus", Duplicates: "Dupl.",
		Cultivated: "Culta", Accession: "accessio", WildOrigin: "origo spontanea",
		NoNumber: "s.n.", NoDate: "s.d.", NoPlace: "s.loc.", NoCollector: "s.coll.",

		SheetOf: "plagula {n} ex {of}", PacketOf: "involucrum {n} ex {of}", BoxOf: "capsa {n} ex {of}", JarOf: "ampulla {n} ex {of}",
		Sheet: "plagula", Packet: "involucrum", Box: "capsa", Jar: "ampulla",
		WithPacket: "cum involucro", WithPackets: "cum involucris {n}",
		WithBox: "cum capsa", WithBoxes: "cum capsis {n}",
		WithJar: "cum ampulla", WithJars: "cum ampullis {n}",
		InPacket: "{what} in involucro", InBox: "{what} in capsa", InJar: "{what} in ampulla",
		PartOf: "Pars: {what}", Contents: "Continet",
		Continued: "schedula continuata", Of: "ex", Reprinted: "iterum impressa",
		Withheld: "Locus exactus reservatus", WithheldSite: "Locus exactus et habitatio reservata",

		CaptionFamily: "Familia", CaptionName: "Nomen", CaptionDet: "Det.", CaptionType: "Typus",
		CaptionPlace: "Locus", CaptionCoords: "Positio", CaptionElevation: "Altitudo",
		CaptionHabitat: "Habitat", CaptionAssociates: "Sociae", CaptionPlant: "Planta",
		CaptionVernacular: "Nomen vernac.", CaptionUses: "Usus", CaptionRemarks: "Notae", CaptionPermit: "Licentia",
		CaptionCollector: "Legit", CaptionDate: "Dies", CaptionTeam: "Cum",
		CaptionCatalogue: "No. cat.",
		CaptionStatus:    "Status",

		SlipDetermination: "Determinavit", SlipConfirmation: "Confirmavit", SlipRevision: "Revidit", SlipComment: "Nota",
		SlipType: "Typus", SlipTypeOf: "nominis", SlipIsotypes: "Isotypi in", SlipSheet: "Plagula no.",

		TagPress: "Prelum", TagBundle: "Fasciculus", TagPlants: "Plantae: {n}",
		TagDryer: "Siccatorium", TagFreezer: "Gelatorium", TagIn: "intus", TagOut: "foras",
		TagDay: "dies 1", TagDays: "dies {n}",
		CautionFreezer:     "Frigus urit: manus muniantur. Saccus clausus maneat donec tepescat",
		CautionDryer:       "Periculum incendii: siccatorium supra chartam inflammabilem numquam sine custode relinquatur. Aer admittatur",
		CautionDeepFreezer: "In tanto frigore glutina cedere possunt: plagulae conglutinatae excludantur",
		CautionLocal:       "Regulae domus et leges loci praevaleant",
	}
}
