import { statSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { DEPLOYED, loadExcelRuntime } from "./excelRuntime";

// Excel's limits, from Microsoft's documentation of custom functions and their metadata.
const LONGEST_NAME = 64;
const SHORTEST_NAME = 3;
const LONGEST_DESCRIPTION = 1024;
const LONGEST_PARAMETER_DESCRIPTION = 512;
const LARGEST_METADATA_BYTES = 1_000_000;
// Our own limit: the script loads each time a workbook opens.
const LARGEST_SCRIPT_BYTES = 195_000;

const CELL_REFERENCE = /^([A-Z]{1,3}\d+|R\d*C\d*)$/i;

const { metadata, associatedIds, callCell } = loadExcelRuntime();
const { functions } = metadata;

test("there are functions, and each declared one is associated with code and the reverse", () => {
  expect(functions.length).toBeGreaterThan(0);
  expect([...associatedIds].sort()).toEqual(functions.map(({ id }) => id).sort());
});

test("no two functions share a name", () => {
  expect(new Set(functions.map(({ name }) => name.toUpperCase())).size).toBe(functions.length);
});

test("a function that answers one value says so: others may spill", () => {
  const single = functions.filter(({ result }) => result.dimensionality !== "matrix").map(({ id }) => id);
  expect(single.sort()).toEqual([
    ...["BOARD.AREA", "BOARD.CALIPER", "BOARD.MODULUS", "BOARD.STOCK", "CAUTIONS", "FRACTION", "MASS", "MEASURE"],
    ...["PROBLEM", "SIZE"],
  ]);
});

test("cells of data types reach a function as their plain values, errors among them", async () => {
  expect(metadata.allowCustomDataForDataTypeAny).toBe(true);
  const formatted = (basicValue: number | string) => ({ type: "FormattedNumber", basicType: "Double", basicValue });
  const failed = { type: "Error", basicType: "Error", basicValue: "#N/A" };
  const plain = await callCell("MASS", [300, 210, 40, "tray", [["wall board", 3]]]);
  expect(plain).toEqual({ value: expect.any(Number) });
  expect(await callCell("MASS", [formatted(300), 210, 40, "tray", [["wall board", formatted(3)]]])).toEqual(plain);
  const refused = { error: "#VALUE!", message: expect.stringMatching(/^depth: got "#N\/A"/) };
  expect(await callCell("MASS", [300, 210, failed, "tray"])).toEqual(refused);
  expect(await callCell("MASS", [300, 210, { error: "#N/A" }, "tray"])).toEqual(refused);
});

test("a cell that holds an error reaches the function", () => {
  expect(metadata.allowErrorForDataTypeAny).toBe(true);
});

describe.each(functions.map((entry) => [entry.id, entry] as const))("%s", (_id, entry) => {
  test.each(["id", "name"] as const)("its %s is one that Excel takes", (key) => {
    expect(entry[key]).toMatch(/^[A-Za-z][A-Za-z0-9._]*$/);
    expect(entry[key]).not.toMatch(CELL_REFERENCE);
    expect(entry[key].length).toBeGreaterThanOrEqual(SHORTEST_NAME);
    expect(entry[key].length).toBeLessThanOrEqual(LONGEST_NAME);
  });

  test("it is described in one line of at most 1024 characters", () => {
    expectOneLine(entry.description, LONGEST_DESCRIPTION);
  });

  test("every parameter is described in one line of at most 512 characters", () => {
    entry.parameters.forEach(({ description }) => expectOneLine(description, LONGEST_PARAMETER_DESCRIPTION));
  });

  test("what may be left off comes last, and only the last parameter repeats and may be left off", () => {
    const firstOptional = entry.parameters.findIndex(({ optional }) => optional === true);
    if (firstOptional >= 0)
      entry.parameters.slice(firstOptional).forEach(({ optional }) => expect(optional).toBe(true));
    const repeating = entry.parameters.filter((parameter) => parameter.repeating === true);
    repeating.forEach((parameter) => {
      expect(parameter).toBe(entry.parameters.at(-1));
      expect(parameter.optional).toBe(true);
    });
  });

  test("every parameter arrives unconverted", () => {
    entry.parameters.forEach(({ type }) => expect(type).toBe("any"));
  });
});

// Microsoft's schema of functions in a manifest, whose fields functions.json has; only the flag on errors is not in it.
test("functions.json keeps to Microsoft's published schema", () => {
  const plain = JSON.parse(JSON.stringify({ ...metadata, allowErrorForDataTypeAny: undefined })) as object;
  const validate = schemaOf("extensionCustomFunctions");
  expect([validate(plain), validate.errors ?? []]).toEqual([true, []]);
  const nameless = { ...plain, functions: [{ ...functions[0], name: "" }] };
  expect(validate(nameless)).toBe(false);
});

test("functions.json is under 1 MB", () => {
  expect(statSync(join(DEPLOYED, "functions.json")).size).toBeLessThan(LARGEST_METADATA_BYTES);
});

test("functions.js is under 195 kB", () => {
  expect(statSync(join(DEPLOYED, "functions.js")).size).toBeLessThan(LARGEST_SCRIPT_BYTES);
});

interface Validate {
  (data: unknown): boolean;
  readonly errors?: readonly unknown[] | null;
}

/** One definition of the newest schema that Microsoft's package holds, checked by the validator that it brings. */
function schemaOf(definition: string): Validate {
  const manifests = createRequire(require.resolve("@microsoft/app-manifest"));
  const Ajv = manifests("ajv-draft-04") as new (options: object) => { compile: (schema: object) => Validate };
  const { definitions } = manifests("./json-schemas/teams/v1.30/MicrosoftTeams.schema.json") as { definitions: object };
  return new Ajv({ strict: false, allErrors: true, logger: false }).compile({
    definitions,
    $ref: `#/definitions/${definition}`,
  });
}

const expectOneLine = (text: string | undefined, longest: number): void => {
  expect(text).toMatch(/^\S.*\S$/);
  // What the generator makes of a {@link}.
  expect(text).not.toContain("[object");
  expect(text?.length).toBeLessThanOrEqual(longest);
};
