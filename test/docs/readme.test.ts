import { existsSync, readFileSync } from "node:fs";
import { KINDS } from "../../src/enclosure/registry";
import { FIGURES } from "../../src/item/figureCatalogue";
import { PART_FIGURES } from "../../src/item/figureOfPart";
import { loadExcelRuntime } from "../runtime/excelRuntime";

const README = readFileSync("README.md", "utf8");

/** Formulas of README's tables whose arguments are numbers and texts, with the answer printed beside them. */
const EXAMPLES = [...README.matchAll(/^\| `=ENC\.([A-Z.]+)\(([^`[]*)\)` \| (.*?) ?\|$/gm)].map(
  ([, id, args, answer]) => ({ id: id!, args: argumentsOf(args!), answer: answer! }),
);

const runtime = loadExcelRuntime();

test.each(EXAMPLES.map((example) => [example.id, example] as const))(
  "ENC.%s answers as README says",
  async (id, { args, answer }) => {
    const cell = await runtime.callCell(id, args);
    expect(cell).toHaveProperty("value");
    const answered = (cell as { readonly value: unknown }).value;
    const value = (Array.isArray(answered) ? answered : [[answered]]) as unknown[][];
    // A table is described, not printed.
    if (value.length > 1) return expect(answer.length).toBeGreaterThan(20);
    const only = value[0]![0];
    if (typeof only === "number")
      return expect(only.toFixed(decimals(answer))).toBe(Number(answer).toFixed(decimals(answer)));
    return expect(only).toBe(answer);
  },
);

test("README shows every function", () => {
  const shown = new Set([...README.matchAll(/=ENC\.([A-Z.]+)\(/g)].map(([, id]) => id));
  expect([...shown].sort()).toEqual(runtime.metadata.functions.map(({ id }) => id).sort());
});

test.each(KINDS.map(({ name }) => [name]))("README lists the %s with its drawing", (name) => {
  expect(README).toContain(`| \`${name}\` |`);
  expect(existsSync(`src/drawing/kinds/${name.replaceAll(" ", "-")}.svg`)).toBe(true);
});

test("README lists the figures of the catalogue", () => {
  const rows = FIGURES.map(({ name, byDefault, meaning, unit, formula: [fn] }) => [
    `\`${name}\`${byDefault ? " *" : ""}`,
    meaning,
    unit,
    `\`ENC.${fn}\``,
  ]);
  const table = [["figure", "meaning", "in", "answered by"], ["---", "---", "---", "---"], ...rows]
    .map((cells) => `| ${cells.join(" | ")} |`)
    .join("\n");
  expect(README).toContain(table.replace("| --- | --- | --- | --- |", "|---|---|---|---|"));
  expect(README).toContain(`${PART_FIGURES.said} (\`${PART_FIGURES.example}\`)`);
});

test("README gives the two commands, which package.json knows", () => {
  const { scripts } = JSON.parse(readFileSync("package.json", "utf8")) as { scripts: Record<string, string> };
  expect(README).toContain("npm ci && npm run demo");
  expect(README).toContain("npm ci && npm test");
  expect(Object.keys(scripts)).toEqual(expect.arrayContaining(["demo", "test"]));
});

/** README rounds; it is held to what it prints. */
function decimals(answer: string): number {
  return answer.split(".")[1]?.length ?? 0;
}

function argumentsOf(text: string): (string | number)[] {
  return [...text.matchAll(/"((?:[^"]|"")*)"|([\d.]+)/g)].map(([, quoted, number]) =>
    quoted === undefined ? Number(number) : quoted.replaceAll('""', '"'),
  );
}
