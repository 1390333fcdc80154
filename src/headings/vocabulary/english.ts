import type { Vocabulary } from "./vocabulary";

export const english: Vocabulary = {
  language: "English",
  headings: {
    identifier: [
      "identifier, inv, object id, object number, object no, object nr, obj no, obj id, item number, item no, item id, accession, accession number, accession no, acc no, acc number, acc nr, accn no, call number, call no, callnumber, call num, call nr, call mark, shelfmark, shelf mark, pressmark, inventory number, inventory no, inventory nr, inv no, inv nr, inv number, catalogue number, catalogue no, catalog number, catalog no, cat no, cat number, museum number, museum no, registration number, registration no, reg no, collection number, collection no, signature",
      "id, uid, barcode, bar code, record number, record no, record id, reference, ref, ref no, reference no, reference number",
      "no, nr, number, num, #, sl no, s no, serial no, row, row no",
    ],
    title: [
      "title, short title, book title, item title, object title, title of work, title description, author title, title author",
      "object name, item name, name, object, item",
      "description, object description, item description, desc",
    ],
    height: ["height, ht, hgt, hght, hgth, heigth"],
    width: ["width, wd, wdt, wdth, wth, breadth"],
    depth: ["depth, dpth, dp, dpt, thickness, thick, thk, thkness, thck, th, spine width, spine thickness"],
    length: ["length, len, lgth, lnth, lth"],
    dimensions: ["dimensions, dimension, dims, dim, size, sizes, measurements, measurement, measures, meas"],
    weight: ["weight, wt, wgt, wght, mass"],
    unit: [
      "unit, units, uom, unit of measure, unit of measurement, units of measure, measurement unit, dimension unit",
    ],
    enclosure: [
      "enclosure, enclosures, enclosure type, type of enclosure, housing, housing type, type of housing, box type, type of box, enclosure kind, kind of enclosure, kind of box",
      "recommended enclosure, recommended housing, proposed enclosure, proposed housing, new enclosure, new housing, enclosure recommended, housing recommended, enclosure proposed, housing proposed, planned enclosure, planned housing, enclosure rec, rec enclosure, housing rec, rec housing",
    ],
    quantity: ["quantity, qty, copies, no of copies, number of copies, no of items, number of items, item count"],
    box: ["box, shared box, box group, boxed with, boxed together"],
    priority: ["priority, prio, priority rating, priority level, treatment priority, conservation priority"],
    batch: ["batch, batch no, batch number, batch id"],
    hazard: ["hazard, hazards, hazardous, hazard note, hazard notes, hazardous materials"],
  },
  letters: { height: "h", width: "w", depth: "d, t", length: "l" },
  maybe: {
    enclosure:
      "current housing, current enclosure, existing housing, existing enclosure, present housing, old housing, enclosure needed, housing needed, needs enclosure, needs box, box needed, needs housing, enclosure y n, container, container type",
    box: "box no, box number, box nr, box id",
    quantity: "count, no of pieces, pieces, number of pieces, volumes, vols, no of volumes, number of volumes",
    weight: "g, kg, lb, lbs, oz",
    depth: "diameter, diam, dia, ø",
    dimensions: "format",
  },
  harmless:
    "object, item, book, volume, artefact, artifact, overall, max, maximum, approx, approximate, closed, measured, actual, total, the, of, in",
  settings: {},
  yes: "yes, y, x, true, ✓, ✔, 1",
  no: "no, n, false, 0",
  none: "none, n/a, na, -, –, —, no box, no enclosure, no housing, nothing, nil, ok, ok as is, as is, leave, not needed, not required, none needed, does not need one, has one, has enclosure, already boxed, boxed",
  totals: "total, totals, grand total, subtotal, sub total, sum, average, mean, total items",
  kinds: {
    tray: "open tray, box tray, support tray",
    "folded tray": "scored tray, creased tray",
    "lidded box":
      "box and lid, box with lid, box lid, lid box, lift off lid box, lift off lid, telescope box, telescoping box, drop on lid box",
    "three-tray box": "shoulder box, shouldered box, neck box, box with neck, three part box",
    slipcase: "slip case, slip box",
    "clamshell box":
      "clamshell, clam shell, clamshell case, clam shell box, drop spine, drop spine box, drop back, drop back box, dropback, dropspine, double tray box, book box, clamshell drop spine",
    "drop-front box": "drop front, drop front box, drop fronted box, front drop box, fall front box",
    "four-flap wrapper":
      "four flap, four flap wrapper, 4 flap, 4 flap wrapper, four flap enclosure, four flap folder, phase box, phase wrapper, phased box, phase enclosure",
    "folded clamshell":
      "corrugated clamshell, corrugated clamshell box, corrugated drop spine box, folding clamshell, folding clamshell box",
    "flap portfolio":
      "portfolio, portfolio case, portfolio with flaps, three flap portfolio, 3 flap portfolio, print portfolio, map portfolio",
  },
  unsure: {
    box: ["lidded box", "clamshell box", "three-tray box"],
    "drop box": ["clamshell box", "drop-front box"],
    "corrugated box": ["folded clamshell", "lidded box"],
    "custom box": ["clamshell box", "lidded box"],
    "new box": ["clamshell box", "lidded box"],
    "archival box": ["lidded box", "clamshell box"],
    wrapper: ["four-flap wrapper", "folded tray"],
    "wrap around": ["four-flap wrapper", "clamshell box"],
    folder: ["four-flap wrapper", "folded tray"],
    case: ["slipcase", "clamshell box"],
    enclosure: ["lidded box", "clamshell box", "four-flap wrapper"],
    housing: ["lidded box", "clamshell box", "four-flap wrapper"],
  },
  notMade: "solander box, solander, solander case, envelope, encapsulation, sleeve, pamphlet binder, frame, crate",
};
