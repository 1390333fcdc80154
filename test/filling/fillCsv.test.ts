import { fillCsv } from "../../src/filling/fillCsv";
import { readCsv } from "../../src/workbook/readCsv";

test("a survey longer than the arguments that a call can take is filled", () => {
  const rows = Array.from({ length: 150_000 }, (_, i) => `S ${i},300,210,40,none`);
  const csv = readCsv(new TextEncoder().encode(["Shelfmark,Height,Width,Depth,Enclosure", ...rows].join("\n")));
  const { sized, bytes } = fillCsv(csv, ["problem"], [], {});
  expect(sized.outcomes.length).toBe(150_000);
  expect(bytes.length).toBeGreaterThan(150_000 * 20);
});
