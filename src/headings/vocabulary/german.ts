import type { Vocabulary } from "./vocabulary";

export const german: Vocabulary = {
  language: "German",
  headings: {
    identifier: [
      "signatur, inventarnummer, inv, inventarnr, inventar nr, inv nr, inv nummer, objektnummer, objekt nr, objektnr, standnummer, akzessionsnummer, zugangsnummer, katalognummer, kennung, signaturen",
      "strichcode, kennziffer, referenz",
      "nr, nummer, lfd nr, laufende nummer, lfdnr",
    ],
    title: [
      "titel, kurztitel, titel verfasser, verfasser titel",
      "objekt, bezeichnung, objektbezeichnung, name",
      "beschreibung",
    ],
    height: ["höhe, hoehe, hh"],
    width: ["breite, br, breite vorn"],
    depth: ["tiefe, dicke, stärke, staerke, rückenstärke, buchblockstärke"],
    length: ["länge, laenge, lg"],
    dimensions: ["maße, masse cm, abmessungen, abmessung, maße in cm, größe, groesse, maßangaben, format in cm"],
    weight: ["gewicht, gew"],
    unit: ["einheit, maßeinheit, einheiten"],
    enclosure: [
      "schutzbehältnis, behältnis, verpackung, schutzverpackung, verpackungsart, verpackungstyp, schachteltyp, schachtelart, kassettentyp, art der verpackung, art des behältnisses, behältnisart, umhüllung, schutzhülle",
      "neue verpackung, geplante verpackung, empfohlene verpackung, empfohlenes behältnis, verpackung neu, behältnis neu, vorgeschlagene verpackung",
    ],
    quantity: ["anzahl, menge, stückzahl, stück, exemplare"],
    box: ["gemeinsamer karton, gemeinsame schachtel, gemeinsame kassette"],
    priority: ["priorität, dringlichkeit, prio, dringlichkeitsstufe"],
    batch: ["los, charge, paket"],
    hazard: ["gefahr, gefahren, gefährdung, gefahrstoff, gefahrstoffe, schadstoffe"],
  },
  letters: { height: "h", width: "b", depth: "t, d", length: "l" },
  maybe: {
    enclosure:
      "verpackung alt, alte verpackung, vorhandene verpackung, jetzige verpackung, verpackung nötig, kassette nötig",
    box: "karton nr, kartonnummer, schachtel nr, karton, kasten nr",
    quantity: "bände, bandzahl, teile, zahl der bände, blatt",
    weight: "masse",
    depth: "durchmesser, durchm, ø",
    dimensions: "format",
  },
  harmless: "objekt, buch, band, gesamt, max, maximal, ca, geschlossen, gemessen, in, des, der, einband",
  settings: { material: "material, werkstoff" },
  yes: "ja, j",
  no: "nein, n",
  none: "keine, keines, kein, entfällt, nicht nötig, ohne, in ordnung, vorhanden, keine verpackung, nicht erforderlich",
  totals: "summe, gesamt, gesamtsumme, zwischensumme, insgesamt, durchschnitt, mittelwert",
  kinds: {
    tray: "wanne, tablett, schale, offene wanne",
    "folded tray": "faltwanne, falttablett",
    "lidded box":
      "stülpschachtel, stülpdeckelschachtel, stülpdeckelkarton, schachtel mit deckel, karton mit deckel, deckelschachtel, stülpdeckelkasten",
    "three-tray box": "halsschachtel, schachtel mit hals, dreiteilige schachtel",
    slipcase: "schuber, buchschuber",
    "clamshell box": "klappkassette, buchkassette, kassette mit klappdeckel, klappdeckelkassette, klappschachtel",
    "four-flap wrapper":
      "vierklappenumschlag, vierklappenmappe, umschlag mit vier klappen, klappenmappe, vierklappen mappe, jurismappe",
  },
  unsure: {
    schachtel: ["lidded box", "clamshell box"],
    kassette: ["clamshell box", "lidded box"],
    karton: ["lidded box", "clamshell box"],
    kasten: ["lidded box", "clamshell box"],
    mappe: ["four-flap wrapper", "flap portfolio", "folded tray"],
    umschlag: ["four-flap wrapper", "folded tray"],
    hülle: ["four-flap wrapper", "slipcase"],
    box: ["lidded box", "clamshell box", "three-tray box"],
  },
  notMade: "rahmen, kiste, tasche, mappe mit falz",
};
