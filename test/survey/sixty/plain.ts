import { type Writer, cm, grams, text, type Kinds, type Layout, survey } from "./made";

/** Words by language: two surveys each that nothing may be asked about. */
const PLAIN: readonly (readonly [language: string, kinds: Kinds, first: Layout, second: Layout])[] = [
  [
    "French",
    kinds("boîte à double plateau", "pochette à quatre rabats", "étui", "boîte à couvercle"),
    inCm("Cote", "Titre", "Hauteur (cm)", "Largeur (cm)", "Épaisseur (cm)", "Poids (kg)", "Conditionnement"),
    inMm("N° d'inventaire", "Intitulé", "H en mm", "L en mm", "P en mm", "Masse en g", "Type de protection"),
  ],
  [
    "German",
    kinds("Klappkassette", "Vierklappenumschlag", "Schuber", "Stülpschachtel"),
    inCm("Signatur", "Titel", "Höhe in cm", "Breite in cm", "Rückenstärke in cm", "Gewicht in kg", "Schutzbehältnis"),
    asText("Inv.-Nr.", "Objekt", "Maße (H x B x T) in cm", "Gewicht (g)", "Verpackung"),
  ],
  [
    "Spanish",
    kinds("caja de concha", "carpeta de cuatro solapas", "estuche", "caja con tapa"),
    inCm("Signatura", "Título", "Alto (cm)", "Ancho (cm)", "Grosor (cm)", "Peso (kg)", "Contenedor"),
    inMm(
      "Nº de inventario",
      "Objeto",
      "Altura en mm",
      "Anchura en mm",
      "Profundidad en mm",
      "Peso en g",
      "Tipo de caja",
    ),
  ],
  [
    "Italian",
    kinds("scatola a conchiglia", "cartella a quattro alette", "astuccio", "scatola con coperchio"),
    inCm("Segnatura", "Titolo", "Altezza (cm)", "Larghezza (cm)", "Spessore (cm)", "Peso (kg)", "Contenitore"),
    asText("Collocazione", "Oggetto", "Dimensioni (H x L x P) in cm", "Peso (g)", "Tipo di scatola"),
  ],
  [
    "Portuguese",
    kinds("caixa em concha", "pasta de quatro abas", "estojo", "caixa com tampa"),
    inCm("Cota", "Título", "Altura (cm)", "Largura (cm)", "Espessura (cm)", "Peso (kg)", "Acondicionamento"),
    inMm("Nº de tombo", "Objeto", "Altura em mm", "Largura em mm", "Lombada em mm", "Peso em g", "Tipo de caixa"),
  ],
  [
    "Dutch",
    kinds("boekdoos", "vierklepsomslag", "foedraal", "doos met deksel"),
    inCm("Plaatskenmerk", "Titel", "Hoogte (cm)", "Breedte (cm)", "Dikte (cm)", "Gewicht (kg)", "Verpakking"),
    asText("Objectnummer", "Voorwerp", "Afmetingen (h x b x d) in cm", "Gewicht (g)", "Soort doos"),
  ],
  [
    "Swedish",
    kinds("bokask", "fyrflikigt omslag", "bokfodral", "ask med lock"),
    inCm("Signum", "Titel", "Höjd (cm)", "Bredd (cm)", "Tjocklek (cm)", "Vikt (kg)", "Förpackning"),
    inMm("Inventarienummer", "Benämning", "Höjd i mm", "Bredd i mm", "Djup i mm", "Vikt i g", "Typ av ask"),
  ],
  [
    "Polish",
    kinds("pudło muszlowe", "teczka czteroskrzydłowa", "futerał", "pudełko z wiekiem"),
    inCm("Sygnatura", "Tytuł", "Wysokość (cm)", "Szerokość (cm)", "Grubość (cm)", "Waga (kg)", "Opakowanie"),
    asText("Nr inw.", "Obiekt", "Wymiary (wys. x szer. x gł.) w cm", "Masa (g)", "Rodzaj opakowania"),
  ],
  [
    "Russian",
    kinds("коробка-книжка", "папка с четырьмя клапанами", "слипкейс", "коробка с крышкой"),
    inCm("Шифр", "Название", "Высота, см", "Ширина, см", "Толщина, см", "Вес, кг", "Тип контейнера"),
    asText("Инв. №", "Предмет", "Размеры (В х Ш х Г), см", "Масса, г", "Упаковка", " х "),
  ],
  [
    "Arabic",
    kinds("علبة صدفية", "غلاف بأربعة أجنحة", "جراب", "علبة بغطاء"),
    inCm("رقم الحفظ", "العنوان", "الارتفاع (سم)", "العرض (سم)", "السمك (سم)", "الوزن (كغ)", "نوع الحافظة"),
    inMm("رقم الجرد", "اسم القطعة", "الارتفاع (مم)", "العرض (مم)", "العمق (مم)", "الوزن (غ)", "نوع العلبة"),
  ],
  [
    "Chinese",
    kinds("翻盖盒", "四合套", "书套", "天地盖盒"),
    inCm("索书号", "题名", "高度（厘米）", "宽度（厘米）", "厚度（厘米）", "重量（公斤）", "装具"),
    asText("登录号", "名称", "尺寸（高×宽×厚，厘米）", "重量（克）", "装具类型", "×"),
  ],
  [
    "English",
    kinds("drop-spine box", "phase box", "slip-case", "telescope box"),
    inCm("Call number", "Title", "Height (cm)", "Width (cm)", "Thickness (cm)", "Weight (kg)", "Housing"),
    inMm("Acc. no.", "Object name", "H/mm", "W/mm", "T/mm", "Wt (g)", "Recommended enclosure"),
  ],
];

function kinds(clamshell: string, flaps: string, slip: string, lid: string): Kinds {
  return { "clamshell box": clamshell, "four-flap wrapper": flaps, slipcase: slip, "lidded box": lid };
}

function inCm(...headings: readonly string[]): Layout {
  return { headings, row: ({ id, title, size, kg }) => [id, title, ...size.map(cm), kg] };
}

function inMm(...headings: readonly string[]): Layout {
  return { headings, row: ({ id, title, size, kg }) => [id, title, ...size, grams(kg)] };
}

function asText(id: string, title: string, size: string, weight: string, kind: string, by = " x "): Layout {
  return {
    headings: [id, title, size, weight, kind],
    row: (each) => [each.id, each.title, text(each, by), grams(each.kg)],
  };
}

const WRITERS: readonly Writer[] = ["exceljs", "csv", "write-excel-file", "xml"];

export const plain = PLAIN.flatMap(([language, words, ...layouts], i) =>
  layouts.map((layout, j) =>
    survey(`${language} ${j + 1}`, language, false, {
      ...layout,
      writer: i === 0 && j === 0 ? "libreoffice" : WRITERS[(i + j) % WRITERS.length]!,
      row: (object, index) => [...layout.row(object, index), words[object.kind]],
    }),
  ),
);
