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
  port = 0,
): Promise<Served & { folder: string }> {
  const at = (one: number) =>
    serveBook({
      path: join(folder, name),
      bytes,
      folder,
      dist: resolve("dist"),
      port: one,
      onFault: console.error,
    });
  // The port of before may be another program's by now.
  const served = await at(port).catch(() => at(0));
  return { ...served, folder };
}
