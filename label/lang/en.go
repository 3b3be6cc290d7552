package lang

func english() Vocabulary {
	return Vocabulary{
		Comma: ", ", LastComma: " & ", And: " and ",
		Det: "Det.", Conf: "Conf.", Rev: "Rev.",
		Colon: ": ", Depth: "Depth",
		With: "with", Also: "also", Among: "with", Alt: "Alt.",
		Vernacular: "Vernacular name", Uses: "Uses", Duplicates: "Dupl.",
		Cultivated: "Cultivated", Accession: "accession", WildOrigin: "wild origin",
		NoNumber: "s.n.", NoDate: "s.d.", NoPlace: "s.loc.", NoCollector: "s.coll.",

		SheetOf: "sheet {n} of {of}", PacketOf: "packet {n} of {of}", BoxOf: "box {n} of {of}", JarOf: "jar {n} of {of}",
		Sheet: "sheet", Packet: "packet", Box: "box", Jar: "jar",
		WithPacket: "with packet", WithPackets: "with {n} packets",
		WithBox: "with box", WithBoxes: "with {n} boxes",
		WithJar: "with jar", WithJars: "with {n} jars",
		InPacket: "{what} in packet", InBox: "{what} in box", InJar: "{what} in jar",
		PartOf: "Part of {what}", Contents: "Contents",
		Continued: "label continued", Of: "of", Reprinted: "reprinted",
		Withheld: "Exact place withheld", WithheldSite: "Exact place and habitat withheld",

		CaptionFamily: "Family", CaptionName: "Name", CaptionDet: "Det.", CaptionType: "Type",
		CaptionPlace: "Locality", CaptionCoords: "Position", CaptionElevation: "Elevation",
		CaptionHabitat: "Habitat", CaptionAssociates: "Associates", CaptionPlant: "Plant",
		CaptionVernacular: "Vernacular", CaptionUses: "Uses", CaptionRemarks: "Remarks", CaptionPermit: "Permit",
		CaptionCollector: "Collector", CaptionDate: "Date", CaptionTeam: "With",
		CaptionCatalogue: "Cat. no.",
		CaptionStatus:    "Status",

		SlipDetermination: "Determination", SlipConfirmation: "Confirmation", SlipRevision: "Revision", SlipComment: "Comment",
		SlipType: "Type", SlipTypeOf: "of", SlipIsotypes: "Isotypes at", SlipSheet: "Sheet no.",

		TagPress: "Press", TagBundle: "Bundle", TagPlants: "Plants: {n}",
		TagDryer: "Dryer", TagFreezer: "Freezer", TagIn: "in", TagOut: "out",
		TagDay: "1 day", TagDays: "{n} days",
		CautionFreezer:     "Cold burns: wear insulated gloves. Keep the bag closed until it is at room temperature",
		CautionDryer:       "Fire risk: never leave a dryer unattended above flammable paper. Keep the room aired",
		CautionDeepFreezer: "At this cold adhesives may fail: leave mounted sheets out",
		CautionLocal:       "Your house’s rules and local codes come before this",
	}
}
