package lang

func chinese() Vocabulary {
	return Vocabulary{
		Comma: "、", LastComma: "、", And: "、",
		Det: "鑑定", Conf: "確認", Rev: "修訂",
		Colon: "：", Depth: "水深",
		With: "同行", Also: "另有", Among: "伴生", Alt: "海拔",
		Vernacular: "俗名", Uses: "用途", Duplicates: "複份",
		Cultivated: "栽培", Accession: "登錄號", WildOrigin: "野外來源",
		NoNumber: "s.n.", NoDate: "s.d.", NoPlace: "s.loc.", NoCollector: "s.coll.",

		SheetOf: "第 {n} 張，共 {of} 張", PacketOf: "第 {n} 袋，共 {of} 袋", BoxOf: "第 {n} 盒，共 {of} 盒", JarOf: "第 {n} 瓶，共 {of} 瓶",
		Sheet: "臘葉標本", Packet: "紙袋", Box: "盒", Jar: "瓶",
		WithPacket: "附紙袋", WithPackets: "附紙袋 {n} 個",
		WithBox: "附盒", WithBoxes: "附盒 {n} 個",
		WithJar: "附瓶", WithJars: "附瓶 {n} 個",
		InPacket: "{what}（紙袋）", InBox: "{what}（盒）", InJar: "{what}（瓶）",
		PartOf: "屬於 {what}", Contents: "內含物",
		Continued: "標籤續", Of: "/", Reprinted: "重印",
		Withheld: "確切地點保密", WithheldSite: "確切地點與生境保密",

		CaptionFamily: "科名", CaptionName: "學名", CaptionDet: "鑑定者", CaptionType: "模式",
		CaptionPlace: "採集地", CaptionCoords: "座標", CaptionElevation: "海拔",
		CaptionHabitat: "生育地", CaptionAssociates: "伴生植物", CaptionPlant: "植物",
		CaptionVernacular: "俗名", CaptionUses: "用途", CaptionRemarks: "備註", CaptionPermit: "許可證",
		CaptionCollector: "採集者", CaptionDate: "日期", CaptionTeam: "同行",
		CaptionCatalogue: "館號",
		CaptionStatus:    "狀態",

		SlipDetermination: "鑑定", SlipConfirmation: "確認", SlipRevision: "修訂", SlipComment: "註記",
		SlipType: "模式標本", SlipTypeOf: "：", SlipIsotypes: "等模式存於", SlipSheet: "標本號",

		TagPress: "標本夾", TagBundle: "捆", TagPlants: "標本 {n} 份",
		TagDryer: "烘乾", TagFreezer: "冷凍", TagIn: "入", TagOut: "出",
		TagDay: "1 天", TagDays: "{n} 天",
		CautionFreezer:     "小心凍傷：請戴隔熱手套，袋子回到室溫前不要打開",
		CautionDryer:       "小心火災：烘乾機下有可燃紙張時不可無人看管，保持室內通風",
		CautionDeepFreezer: "此低溫下黏膠可能失效：已裝貼的標本請勿放入",
		CautionLocal:       "以本館規定及當地法規為準",
	}
}
