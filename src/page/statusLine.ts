/** The two lines below the grid: what is wrong with the selected cell, and what the page has to say. */
export interface StatusLine {
  readonly cell: (text: string, wrong: boolean) => void;
  readonly say: (text: string, wrong?: boolean) => void;
  /** Says what is true until the workbook changes again. */
  readonly saySaved: (text: string) => void;
  /** Takes away what is no longer true. */
  readonly changed: () => void;
}

/** @param document the page */
export function statusLine(document: Document): StatusLine {
  const say = lineOf(document, "said");
  let saved: string | undefined;
  return {
    cell: lineOf(document, "cell"),
    say,
    saySaved: (text) => {
      saved = text;
      say(text);
    },
    changed: () => {
      if (elementById(document, "said").textContent === saved) say("");
      saved = undefined;
    },
  };
}

/** The element of the page with that id. @throws Error when there is none */
export function elementById<Kind extends HTMLElement = HTMLElement>(document: Document, id: string): Kind {
  const element = document.getElementById(id);
  if (element === null) throw new Error(`page.html has no #${id}`);
  return element as Kind;
}

function lineOf(document: Document, id: string): (text: string, wrong?: boolean) => void {
  const line = elementById(document, id);
  return (text, wrong = false) => {
    line.textContent = text;
    line.classList.toggle("wrong", wrong);
  };
}
