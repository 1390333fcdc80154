import PDFDocument from "pdfkit";
import { drawPlaced } from "./drawPlaced";
import { POINTS } from "./drawText";
import type { Page } from "./page";
import { createTagger } from "./tagger";
import type { Typesetter } from "./typesetter";

export interface RenderOptions {
  readonly title: string;
  /** Of creation; a fixed day where it is undefined. */
  readonly date?: Date;
  /** Called now and then with the share of pages done; awaited, so that a page stays alive. */
  readonly onProgress?: (fraction: number) => void | Promise<void>;
}

const FIXED_DATE = new Date(0);
const PROGRESS_EVERY = 16;

/** Pages as a tagged PDF, fonts embedded, everything vectors. */
export async function renderPages(
  pages: readonly Page[],
  type: Typesetter,
  { title, date = FIXED_DATE, onProgress }: RenderOptions,
): Promise<Uint8Array> {
  const pen = new PDFDocument({
    autoFirstPage: false,
    pdfVersion: "1.7",
    lang: "en",
    displayTitle: true,
    tagged: true,
    // No font by default: its own is not embedded.
    font: "",
    info: { Title: title, Creator: "Enclosure Columns", CreationDate: date, ModDate: date },
  });
  const chunks: Uint8Array[] = [];
  const ended = new Promise<void>((resolve, reject) => {
    pen.on("data", (chunk: Uint8Array) => chunks.push(chunk));
    pen.on("end", resolve);
    pen.on("error", reject);
  });
  // An open font is taken as it is, which the types leave out.
  for (const [name, font] of type.fonts) pen.registerFont(name, font as unknown as Uint8Array);
  const preferences = (pen as unknown as PenInside)._root.data.ViewerPreferences;
  preferences.data["PrintScaling"] = "None";
  const tagger = createTagger(pen);
  let [section, parent] = ["", pen.outline];
  for (const [index, page] of pages.entries()) {
    pen.addPage({ size: [page.width * POINTS, page.height * POINTS], margin: 0 });
    for (const name of page.names ?? []) pen.addNamedDestination(name, "Fit");
    if (page.bookmark !== "") {
      tagger.newSection();
      const { section: own = "" } = page;
      if (own !== section) [section, parent] = [own, own === "" ? pen.outline : pen.outline.addItem(own)];
      parent.addItem(page.bookmark);
    }
    for (const placed of page.placed) tagger.tagged(placed, (link) => drawPlaced(pen, placed, type, link));
    tagger.endPage();
    if (index % PROGRESS_EVERY === 0) await onProgress?.(index / pages.length);
  }
  pen.end();
  await ended;
  await onProgress?.(1);
  return joined(chunks);
}

/** Templates are true only at full size; the library has no option for it. */
interface PenInside {
  readonly _root: { readonly data: { readonly ViewerPreferences: { readonly data: Record<string, string> } } };
}

function joined(chunks: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(chunks.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const chunk of chunks) {
    whole.set(chunk, at);
    at += chunk.length;
  }
  return whole;
}
