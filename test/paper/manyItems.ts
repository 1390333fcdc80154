import { DEMO_SURVEY } from "../../src/cli/demoSurvey";
import { writeCsv } from "../../src/workbook/writeCsv";

/** The demo survey's items over and over, each with an enclosure of its own: so many tickets. */
export function manyItems(count: number): Uint8Array {
  const [headings, ...rows] = DEMO_SURVEY;
  const many = Array.from({ length: count }, (_, index) => {
    const cells = [...rows[index % 37]!];
    cells[0] = `LK ${index + 1}`;
    cells[9] = "";
    if (cells[7] === "none" || cells[7] === "") cells[7] = "tray";
    return cells;
  });
  return writeCsv([headings!, ...many]);
}
