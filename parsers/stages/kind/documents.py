"""Words by which documents that are no datasheet are known."""

from parsers.stages.kind.vocabulary import Vocabulary

DOCUMENTS = (
    Vocabulary(
        kind="application_note",
        title=(r"application (note|report|brief)", r"(design|application)( and application)? guide", r"white ?paper|tutorial|应用笔记"),
        opening=(
            r"application (note|report|brief|guide|information note)", r"\ban-?\d{2,5}\b|\band?\d{4}\b|\bslu?[apv]\d{3}",
            r"(design|application|selection)( and application)? guide", r"\babstract\b", r"\bintroduction\b",
            r"(in )?this (application (note|report)|paper|article)\b", r"white ?paper|technical (note|article|report)|tutorial|seminar",
            r"this (document|note|paper|application note) (describes|discusses|explains|shows|provides|is)", r"应用(笔记|指南)",
            r"table of contents|\bcontents\b",
        ),
        body=(
            r"application note", r"\breferences\b", r"\bconclusions?\b|\bsummary\b", r"\bequation|\beq\.",
            r"\bfigure \d+ (shows|illustrates|depicts)|(shown|see) in (fig|figure)", r"\bdesigner",
            r"this (application note|document|paper|article)", r"\bin this (section|chapter|paper|note|example)",
            r"let us|we (can|have|will|assume)|assum(e|ing) that",
        ),
    ),
    Vocabulary(
        kind="article",
        opening=(
            r"last edited|posted|by [a-z]+ [a-z]+,", r"如何|方法|什么|怎么|怎样",
            r"\b(a|our) (client|customer|project|hobby)|homebrew|home-brew|journal|magazine|blog", r"application requirements",
            r"步骤|检测|测试.{0,8}好坏",
        ),
        body=(
            r"\bwe (decided|chose|designed|used|built|found|needed)|\bi (used|have|found|built|decided|wanted)\b",
            r"the (author|writer|team|client|customer|project)\b", r"\bkits?\b|constructor|\bbuilt\b|construction",
            r"about the author|references|acknowledg", r"magazine|journal|volume \d|issue \d", r"红笔|万用表", r"在本文|本文|我们|大家|朋友",
            r"design (goals|team|challenge|process)|cost of the|to market",
        ),
    ),
    Vocabulary(
        kind="bill_of_materials",
        title=(r"bill of materials?|\bbom\b|parts list|物料清单", r"item (qty|quantity) (reference|designator|part)"),
        opening=(
            r"bill of materials?|\bbom\b|parts list", r"(item|qty|quantity)\b.{0,60}(reference|designator|part|description)",
            r"manufacturer.{0,4}part ?(number|no)", r"物料清单",
        ),
        body=(
            r"\bqty\b|quantity", r"(cap|capacitor),? (cer|ceramic)", r"res(istor)?,? (smd|thick|\d)",
            r"murata|yageo|tdk|taiyo|panasonic|kemet|vishay", r"digi-?key|mouser|farnell", r"designator|reference",
        ),
    ),
    Vocabulary(
        kind="cross_reference",
        title=(r"cross[- ]?reference|selection guide|selector guide|product selector",),
        opening=(
            r"cross[- ]?reference", r"replacement|equivalent|substitut",
            r"selection (table|guide)|selector guide|product (guide|list|table|selector)|line-?up",
        ),
        body=(
            r"cross[- ]?reference", r"(replacement|substitut|equivalent)s?\b.{0,30}(part|device|type|vend)", r"competitor|vend[eo]r",
            r"part( number)? vdss|vdss rds",
        ),
    ),
    Vocabulary(
        kind="manual",
        title=(
            r"evaluation (board|kit|module)|demo(nstration)? board",
            r"user('?s)?[- ]?(guide|manual)|getting started|quick[- ]start|terms of use|说明书|手册",
            r"(installation|instruction|operating|service|owner'?s|operation) (manual|guide|instructions)",
        ),
        opening=(
            r"user('?s)?[- ]?(guide|manual)", r"evaluation (board|kit|module)|demo(nstration)? board|\bevm\b|reference design",
            r"getting started|quick[- ]start|introduction to .{0,20}(environment|software|tool)",
            r"terms of use|license agreement|licen[sc]e|agrees? to be bound",
            r"(installation|instruction|operating|service|owner'?s|operation) (manual|guide|instructions)", r"说明书|用户手册|使用手册",
            r"targeted simulator|simulation model|spice model",
        ),
        body=(
            r"step \d|click|double-click|menu|browse|folder", r"install(ation|ing)?\b", r"\blicen[sc]e|\bagreement|warrant(y|ies)|liabilit",
            r"connect the|turn on|quick start|set ?up|preset the power supply", r"jumper|\bjp\d|\btp\d", r"evaluation board|\bevm\b",
            r"warning|caution", r"copyright|intellectual property|the user",
        ),
    ),
    Vocabulary(
        kind="schematic",
        title=(r"sheet: ?\d|\(sheet: \d|kicad|\.sch\b|schdoc|easyeda|原理图", r"\bschematics?$|block ?diagram$"),
        opening=(
            r"sheet: ?\d|sheet \d+ ?(of|/) ?\d|\(sheet: \d", r"kicad|eagle|altium|orcad|easyeda|\.sch\b|schdoc",
            r"\btitle:|drawn by|\brev: ?[\dv]", r"size: ?a\d|\bid: \d/\d", r"schematics?\b|block ?diagram|wiring|原理图",
        ),
        body=(
            r"\bgnd\b.{0,200}\bgnd\b", r"\br\d+\b.{0,80}\br\d+\b", r"\bc\d+\b.{0,80}\bc\d+\b",
            r"\b\d+(k\d*|r\d*|n|u\d*|p)\b.{0,60}\b\d+(k\d*|r\d*|n|u\d*|p)\b", r"\+(3v3|5v|12v|batt)|vbus|vbat", r"\bu\d+\b.{0,300}\bq\d+\b",
        ),
    ),
    Vocabulary(
        kind="drawing",
        title=(r"gerber|silk ?screen|(fabrication|assembly) drawing|outline drawing|drawing (no|number)",),
        opening=(
            r"\b(gerber|silk ?screen|top layer|bottom layer|drill|fabrication|assembly) ?(drawing|layer|plot|top)?\b",
            r"dimensions? (are )?in mm|unless otherwise specified.{0,40}tolerance|third angle", r"scale:? ?\d+[:/]\d+",
            r"drawing (no|number)|outline drawing",
        ),
        body=(r"tolerances?", r"\bscale\b", r"\bdrawn\b|checked|approved", r"material:"),
    ),
)  # fmt: skip
