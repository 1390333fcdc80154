import type { Vocabulary } from "./vocabulary";

export const spanish: Vocabulary = {
  language: "Spanish",
  headings: {
    identifier: [
      "signatura, inv, número de inventario, nº de inventario, no de inventario, n inventario, nº inventario, núm inventario, inventario, número de registro, nº de registro, número de objeto, identificador, signatura topográfica",
      "código de barras, código, referencia, ref",
      "nº, núm, número",
    ],
    title: ["título, título breve, autor título", "objeto, nombre, nombre del objeto", "descripción, denominación"],
    height: ["altura, alto, alt, al"],
    width: ["anchura, ancho, anch, an"],
    depth: ["grosor, espesor, profundidad, fondo, prof, gr, canto"],
    length: ["longitud, largo, largura"],
    dimensions: ["dimensiones, medidas, dimensión, tamaño, dims"],
    weight: ["peso"],
    unit: ["unidad, unidades, unidad de medida"],
    enclosure: [
      "contenedor, contenedor propuesto, tipo de caja, embalaje, protección, tipo de protección, tipo de contenedor, caja propuesta",
      "protección recomendada, contenedor recomendado, nueva caja, caja recomendada",
    ],
    quantity: ["cantidad, cant, ejemplares, número de ejemplares"],
    box: ["caja, caja compartida, caja común"],
    priority: ["prioridad, urgencia"],
    batch: ["lote, tanda"],
    hazard: ["peligro, peligros, riesgo, riesgos"],
  },
  letters: { height: "h", width: "a", depth: "g, p, f", length: "l" },
  maybe: {
    enclosure: "contenedor actual, caja actual, necesita caja, embalaje actual, protección actual",
    box: "nº de caja, número de caja, caja nº, núm caja",
    quantity: "volúmenes, tomos, piezas, número de piezas, número de volúmenes",
    depth: "diámetro, diám",
    dimensions: "formato",
  },
  harmless: "objeto, libro, volumen, máx, máxima, máximo, total, aprox, cerrado, de, del, la, el, en",
  settings: { material: "material, materiales" },
  yes: "sí, s, verdadero",
  no: "no, n, falso",
  none: "ninguno, ninguna, nada, sin caja, no necesita, no procede, no requiere, bien así",
  totals: "total, totales, total general, subtotal, suma, promedio, media",
  kinds: {
    tray: "bandeja",
    "folded tray": "bandeja plegada",
    "lidded box": "caja con tapa, caja de tapa, caja telescópica, caja y tapa",
    "three-tray box": "caja con cuello, caja de tres bandejas",
    slipcase: "estuche, funda rígida, cajetín",
    "clamshell box":
      "caja de concha, caja almeja, caja de lomo abatible, caja de doble bandeja, caja clamshell, caja tipo almeja",
    "four-flap wrapper":
      "carpeta de cuatro solapas, cuatro solapas, envoltorio de cuatro solapas, camisa de cuatro solapas",
  },
  unsure: {
    caja: ["lidded box", "clamshell box"],
    "caja a medida": ["clamshell box", "lidded box"],
    carpeta: ["four-flap wrapper", "flap portfolio", "folded tray"],
    envoltorio: ["four-flap wrapper", "folded tray"],
    portafolio: ["four-flap wrapper", "clamshell box"],
  },
  notMade: "marco, sobre, caja solander",
};
