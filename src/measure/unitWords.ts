import type { LengthUnit } from "./units";

/** A unit of mass that an item's weight may be written in. */
export type MassUnit = "g" | "kg" | "lb" | "oz";

/** Units of mass to choose from, those that go with a unit of length first. */
export function massUnitsBeside(unit: LengthUnit): readonly MassUnit[] {
  return unit === "in" || unit === "ft" ? ["lb", "oz", "kg", "g"] : ["kg", "g", "lb", "oz"];
}

/**
 * Words for units of length, in lower case, in each of the languages and scripts that headings are read in. Common
 * practice, no source.
 */
export const LENGTH_WORDS: Readonly<Record<LengthUnit, readonly string[]>> = {
  mm: words(
    "mm mms millimetre millimetres millimeter millimeters millimètre millimètres milímetro milímetros millimetro millimetri milimetr milimetry milimetrów мм миллиметр миллиметры миллиметров миллиметрах مم ملم مليمتر ملليمتر 毫米 公厘",
  ),
  cm: words(
    "cm cms centimetre centimetres centimeter centimeters centimètre centimètres zentimeter centímetro centímetros centimetro centimetri centymetr centymetry centymetrów см сантиметр сантиметры сантиметров сантиметрах سم سنتيمتر سنتمتر 厘米 公分 釐米",
  ),
  m: words(
    "m metre metres meter meters mètre mètres metro metros metri metr metry metrów м метр метры метров م متر 米 公尺",
  ),
  in: words(
    "in ins inch inches zoll pouce pouces po pulgada pulgadas pulg pollice pollici polegada polegadas pol duim tum cal cale cali дюйм дюйма дюймы дюймов بوصة إنش انش 英寸 吋 英吋",
  ),
  ft: words("ft foot feet pied pieds pie pies piede piedi pé pés fuß voet fot stopa stopy фут фута футов قدم 英尺 呎"),
};

/** The same for units of mass. */
export const MASS_WORDS: Readonly<Record<MassUnit, readonly string[]>> = {
  g: words(
    "g gr gm gms gram grams gramme grammes gramm gramo gramos grammo grammi grama gramas gramy gramów г гр грамм грамма граммы граммов غ غم جم غرام جرام 克 公克",
  ),
  kg: words(
    "kg kgs kilo kilos kilogram kilograms kilogramme kilogrammes kilogramm kilogramo kilogramos chilogrammo chilogrammi chilo chili quilograma quilogramas quilo quilos kilogramy kilogramów кг килограмм килограмма килограммы килограммов كغ كغم كجم كيلو كيلوغرام كيلوجرام 公斤 千克",
  ),
  lb: words("lb lbs pound pounds libra libras libbra libbre фунт фунта фунтов رطل 磅"),
  oz: words("oz ounce ounces onza onzas oncia once onça onças унция унции унций أونصة 盎司"),
};

/** The words as alternatives of a pattern, the longest first, so that none is taken for its own beginning. */
export function alternatives(list: readonly string[]): string {
  return [...list].sort((a, b) => b.length - a.length).join("|");
}

function words(text: string): readonly string[] {
  return text.split(" ");
}
