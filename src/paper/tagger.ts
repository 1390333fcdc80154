import type { Placed, PlacedText, TextTag } from "./page";
import type { Pen } from "./drawText";

/** Says what each thing on a page is, so that a screen reader reads headings, tables and what drawings show. */
export interface Tagger {
  /** What follows belongs to a new entry of the table of contents. */
  readonly newSection: () => void;
  /** @param draw draws the thing; given the element that a link belongs to */
  readonly tagged: (placed: Placed, draw: (link: PDFKit.PDFStructureElement | undefined) => void) => void;
  readonly endPage: () => void;
}

/** @param pen a document that was opened as tagged */
export function createTagger(pen: Pen): Tagger {
  const root = pen.struct("Document");
  pen.addStructure(root);
  let section = root;
  let elements = new Map<object, PDFKit.PDFStructureElement>();
  // Lines and frames one after the other are one artifact.
  let inArtifact = false;

  const endArtifact = (): void => {
    if (inArtifact) pen.endMarkedContent();
    inArtifact = false;
  };
  const known = (
    key: object,
    parent: () => PDFKit.PDFStructureElement,
    type: string,
    alt?: string,
  ): PDFKit.PDFStructureElement => {
    const element = elements.get(key) ?? newChild(parent(), type, alt);
    elements.set(key, element);
    return element;
  };
  const elementOf = (text: PlacedText): PDFKit.PDFStructureElement => {
    const { role, of, row, table, alt }: TextTag = text.tag ?? { role: "P", of: text };
    if (row === undefined || table === undefined) return known(of, () => section, role);
    return known(of, () => known(row, () => known(table, () => section, "Table"), "TR"), role, alt);
  };
  function newChild(parent: PDFKit.PDFStructureElement, type: string, alt?: string): PDFKit.PDFStructureElement {
    // A heading of a table heads its column.
    const about = { ...(alt === undefined ? {} : { alt }), ...(type === "TH" ? { scope: "Column" } : {}) };
    const element = pen.struct(type, about);
    parent.add(element);
    return element;
  }
  const marked = (element: PDFKit.PDFStructureElement, type: string, draw: () => void): void => {
    endArtifact();
    element.add(pen.markStructureContent(type));
    draw();
    pen.endMarkedContent();
  };

  return {
    newSection: () => {
      if (section !== root) section.end();
      section = newChild(root, "Sect");
      elements = new Map();
    },
    tagged: (placed, draw) => {
      const alt = altOf(placed);
      if (alt !== undefined) return marked(newChild(section, "Figure", alt), "Figure", () => draw(undefined));
      if (placed.kind !== "text" || placed.tag?.role === "Artifact") {
        if (!inArtifact) pen.markContent("Artifact");
        inArtifact = true;
        return draw(undefined);
      }
      if (placed.goTo === undefined) return marked(elementOf(placed), placed.tag?.role ?? "P", () => draw(undefined));
      const link = newChild(elementOf(placed), "Link");
      marked(link, "Link", () => draw(link));
      link.end();
    },
    endPage: endArtifact,
  };
}

/** What is said of a picture; undefined for what is no picture. */
function altOf(placed: Placed): string | undefined {
  if (placed.kind === "drawing") return placed.picture.title === "" ? "Drawing" : placed.picture.title;
  return placed.kind === "code" ? `QR code: ${placed.text}` : undefined;
}
