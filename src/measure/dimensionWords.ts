/** Which way a measure runs. */
export type DimensionTerm = "height" | "width" | "depth" | "length" | "diameter";

/**
 * Words for a direction beside a measure, in lower case, in each of the languages that headings are read in. A word that
 * means another direction in another language is left out (`largo`). Common practice, no source.
 */
export const DIMENSION_WORDS: Readonly<Record<DimensionTerm, readonly string[]>> = {
  height: words(
    "height high tall hgt ht h hauteur haut höhe hoehe altura alto alt altezza hoogte höjd wysokość wys высота выс الارتفاع ارتفاع 高度 高",
  ),
  width: words(
    "width wide breadth broad wd w largeur larg breite br anchura ancho anch larghezza largh largura breedte bredd szerokość szer ширина шир العرض عرض 宽度 寬度 宽 寬",
  ),
  depth: words(
    "thickness thick thk th depth deep dp d épaisseur épais ép profondeur prof tiefe dicke stärke staerke grosor espesor profundidad spessore spess profondità espessura esp profundidade dikte diepte djup tjocklek grubość grub głębokość gł толщина толщ глубина глуб السمك سمك العمق عمق 厚度 厚 深度 深",
  ),
  length: words(
    "length long l longueur länge laenge longitud lunghezza lungh comprimento comp lengte längd długość dł длина дл الطول طول 长度 長度 长 長",
  ),
  diameter: words(
    "diameter diam dia diamètre diámetro diám diametro diâmetro durchmesser durchm doorsnede średnica диаметр диам القطر قطر 直径 直徑",
  ),
};

/**
 * Single letters that are a direction only before a number: behind one they are pages (`24 p`), grams (`30 г`) or tons
 * (`3 t`).
 */
export const LEADING_LETTERS: Readonly<Partial<Record<DimensionTerm, readonly string[]>>> = {
  height: words("в"),
  width: words("b ш"),
  depth: words("t p т г"),
  length: words("д"),
};

function words(text: string): readonly string[] {
  return text.split(" ");
}
