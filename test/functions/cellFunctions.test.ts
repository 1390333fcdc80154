import { ITEM_FUNCTIONS } from "../../src/item/cellFunctions";
import { FIGURES } from "../../src/item/figureCatalogue";
import { figureOfPart } from "../../src/item/figureOfPart";
import { loadExcelRuntime } from "../runtime/excelRuntime";

const { functions } = loadExcelRuntime().metadata;
const parametersOf = (id: string) => functions.find((each) => each.id === id)?.parameters.map(({ name }) => name) ?? [];

test("functions of an item are those that take its sizes and enclosure", () => {
  const ofItem = functions.filter(({ id }) => parametersOf(id).includes("enclosure"));
  expect(Object.keys(ITEM_FUNCTIONS).sort()).toEqual(ofItem.map(({ id }) => id).sort());
});

test.each(Object.entries(ITEM_FUNCTIONS))("ENC.%s takes the weight as formulas give it", (id, { weight }) => {
  expect(parametersOf(id).includes("weight")).toBe(weight === "argument");
});

test.each([...FIGURES, figureOfPart("side wall length")!].map((figure) => [figure.name, figure] as const))(
  "the selectors of %s fill what its function asks for after the enclosure",
  (_name, { formula: [fn, ...selectors] }) => {
    const parameters = parametersOf(fn);
    const asked = parameters.slice(parameters.indexOf("enclosure") + 1).filter((name) => name !== "settings");
    expect(selectors).toHaveLength(asked.length);
  },
);
