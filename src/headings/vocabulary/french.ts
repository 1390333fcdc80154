import type { Vocabulary } from "./vocabulary";

export const french: Vocabulary = {
  language: "French",
  headings: {
    identifier: [
      "cote, inv, numéro d'inventaire, no inventaire, n° inventaire, n° d'inventaire, n d'inventaire, num inventaire, inventaire, identifiant, numéro d'objet, no objet, n° objet, numéro d'accession, n° d'accession, cotes",
      "code barres, code à barres, référence, réf",
      "n°, numéro, num, nº",
    ],
    title: ["titre, titre court, auteur titre, intitulé", "objet, nom, nom de l'objet", "description, désignation"],
    height: ["hauteur, haut, hauteurs, ht"],
    width: ["largeur, larg, largeurs, lg"],
    depth: ["épaisseur, épais, ép, profondeur, prof, épaiss"],
    length: ["longueur, long"],
    dimensions: ["dimensions, dimension, dim, mesures, format et dimensions"],
    weight: ["poids, masse, pds"],
    unit: ["unité, unités, unité de mesure"],
    enclosure: [
      "conditionnement, type de conditionnement, boîte proposée, conditionnement proposé, conditionnement prévu, nouveau conditionnement, protection, type de boîte, type de protection",
      "conditionnement recommandé, conditionnement préconisé, boîte préconisée",
    ],
    quantity: ["quantité, qté, qte, nombre d'exemplaires, exemplaires, nb ex"],
    box: ["boîte, boîte commune, boîte partagée"],
    priority: ["priorité, urgence, degré d'urgence"],
    batch: ["lot, tranche"],
    hazard: ["danger, dangers, risque, risques"],
  },
  letters: { height: "h", width: "l", depth: "p, e" },
  maybe: {
    enclosure: "conditionnement actuel, conditionnement existant, boîte nécessaire, à conditionner, contenant",
    box: "no de boîte, n° boîte, numéro de boîte, n° de boîte",
    quantity: "nombre, nb, nombre de volumes, volumes, nombre de pièces",
    depth: "diamètre, diam",
    dimensions: "format",
  },
  harmless:
    "objet, livre, volume, hors tout, max, maximum, maximale, environ, fermé, fermée, totale, total, du, de, la, le, en, du livre",
  settings: { material: "matériau, matière, matériaux" },
  yes: "oui, o, vrai",
  no: "non, n, faux",
  none: "aucun, aucune, néant, sans, rien, pas de boîte, sans objet, s o, non nécessaire, bon état",
  totals: "total, totaux, total général, sous total, somme, moyenne",
  kinds: {
    tray: "plateau, barquette",
    "folded tray": "plateau plié, barquette pliée",
    "lidded box": "boîte à couvercle, boîte avec couvercle, boîte cloche, boîte télescopique",
    "three-tray box": "boîte à gorge",
    slipcase: "étui, étui simple",
    "clamshell box":
      "boîte de conservation à dos rabattable, coquille, boîte coquille, boîte à dos tombant, boîte à double plateau",
    "four-flap wrapper":
      "pochette à quatre rabats, chemise à quatre rabats, quatre rabats, chemise à rabats, pochette à rabats",
  },
  unsure: {
    boîte: ["lidded box", "clamshell box"],
    coffret: ["clamshell box", "lidded box", "slipcase"],
    "boîte sur mesure": ["clamshell box", "lidded box"],
    "boîte de conservation": ["lidded box", "clamshell box"],
    chemise: ["four-flap wrapper", "folded tray"],
    pochette: ["four-flap wrapper", "folded tray"],
    portefeuille: ["flap portfolio", "four-flap wrapper", "clamshell box"],
  },
  notMade: "cadre, caisse, enveloppe",
};
