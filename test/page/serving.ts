import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { DEMO_SURVEY } from "../../src/cli/demoSurvey";
import { serveBook, type Served } from "../../src/page/server/serveBook";
import { writeCsv } from "../../src/workbook/writeCsv";

/** The built page, served from a folder of its own. */
export async function serving(
  name = "survey.csv",
  bytes = writeCsv(DEMO_SURVEY),
  folder = mkdtempSync(join(tmpdir(), "page-")),
): Promise<Served & { folder: string }> {
  const served = await serveBook({
    path: join(folder, name),
    bytes,
    folder,
    dist: resolve("dist"),
    port: 0,
    onFault: console.error,
  });
  return { ...served, folder };
}
