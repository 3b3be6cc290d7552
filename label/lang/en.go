package lang

func english() Vocabulary {
	return Vocabulary{
		Comma: ", ", LastComma: " & ", And: " and ",
		Det: "Det.", Conf: "Conf.", Rev: "Rev.",
		Colon: ": ", Depth: "Depth",
		With: "with", Among: "with", Collected: "Coll.", Alt: "Alt.",
		Vernacular: "Vernacular name", Uses: "Uses", Permit: "Permit", Duplicates: "Dupl.",
		Cultivated: "Cultivated", Accession: "accession", WildOrigin: "wild origin",
		NoNumber: "s.n.", NoDate: "s.d.", NoPlace: "s.loc.", NoCollector: "s.coll.",

		SheetOf: "sheet {n} of {of}", PacketOf: "packet {n} of {of}", BoxOf: "box {n} of {of}", JarOf: "jar {n} of {of}",
		Sheet: "sheet", Packet: "packet", Box: "box", Jar: "jar",
		WithPacket: "with packet", WithPackets: "with {n} packets",
		WithBox: "with box", WithBoxes: "with {n} boxes",
		WithJar: "with jar", WithJars: "with {n} jars",
		InPacket: "{what} in packet", InBox: "{what} in box", InJar: "{what} in jar",
		PartOf: "Part of {what}", Contents: "Contents",
		Continued: "label continued", Of: "of",
		Withheld: "Exact place withheld",
		PlantsOf: "Plants of {what}", FloraOf: "Flora of {what}",

		CaptionFamily: "Family", CaptionName: "Name", CaptionDet: "Det.", CaptionType: "Type",
		CaptionPlace: "Locality", CaptionCoords: "Position", CaptionElevation: "Elevation",
		CaptionHabitat: "Habitat", CaptionAssociates: "Associates", CaptionPlant: "Plant",
		CaptionVernacular: "Vernacular", CaptionUses: "Uses", CaptionRemarks: "Remarks", CaptionPermit: "Permit",
		CaptionCollector: "Collector", CaptionNumber: "Number", CaptionDate: "Date", CaptionTeam: "With",
		CaptionDuplicates: "Duplicates", CaptionProject: "Project", CaptionCatalogue: "Cat. no.",
		CaptionStatus: "Status", CaptionPart: "Part", CaptionInstitution: "Herbarium",

		SlipDetermination: "Determination", SlipConfirmation: "Confirmation", SlipRevision: "Revision", SlipComment: "Comment",
		SlipType: "Type", SlipTypeOf: "of", SlipIsotypes: "Isotypes at", SlipSheet: "Sheet no.",
		SlipName: "Name", SlipDate: "Date", SlipInstitution: "Herbarium",

		TagPress: "Press", TagBundle: "Bundle", TagNumbers: "Nos. {n} to {of}", TagPlants: "Plants: {n}",
		TagInPress: "In press", TagDryer: "Dryer", TagFreezer: "Freezer", TagIn: "in", TagOut: "out",
		TagDays: "{n} days", TagDone: "Done",
		CautionFreezer: "Cold burns: wear insulated gloves. Keep the bag closed until it is at room temperature",
		CautionDryer:   "Fire risk: never leave a dryer unattended above flammable paper. Keep the room aired",
		CautionPoison:  "Sheets treated long ago may carry poison: wear gloves, do not eat, air the room",
	}
}
