import { elementById } from "./statusLine";

/**
 * F6 goes from one part of the page to the next and Shift+F6 back, as spreadsheets and browsers do: in the grid the Tab key
 * goes to the next cell, so that nothing else leads out of it.
 *
 * @param focusGrid gives the keyboard to the cells
 */
export function keyboardRing(document: Document, focusGrid: () => void): void {
  const part = (id: string) => elementById(document, id);
  const stops: readonly Stop[] = [
    { holds: (at) => part("bar").contains(at), take: () => taken(part("bar")) },
    { holds: (at) => part("notices").contains(at), take: () => taken(part("notices")) },
    { holds: (at) => part("pane").contains(at) || at === part("edge"), take: () => taken(part("pane")) },
  ];
  const grid: Stop = {
    holds: () => true,
    take: () => {
      focusGrid();
      return true;
    },
  };
  const ring = [...stops, grid];
  document.defaultView?.addEventListener(
    "keydown",
    (event) => {
      if (event.key !== "F6" || event.ctrlKey || event.altKey || event.metaKey) return;
      if (document.querySelector("dialog[open]") !== null) return;
      // Taken before the grid sees it.
      event.preventDefault();
      event.stopImmediatePropagation();
      const now = ring.findIndex(({ holds }) => holds(document.activeElement));
      const step = event.shiftKey ? ring.length - 1 : 1;
      for (let at = (now + step) % ring.length; at !== now; at = (at + step) % ring.length)
        if (ring[at]!.take()) return;
    },
    { capture: true },
  );
}

interface Stop {
  readonly holds: (at: Element | null) => boolean;
  /** Gives it the keyboard; no when there is nothing in it to press. */
  readonly take: () => boolean;
}

const TAKES_KEYS = "button:not(:disabled), input:not(:disabled), select:not(:disabled), a[href], [tabindex='0']";

/** The chosen tab of a part, else the first thing in it that takes keys. */
function taken(part: HTMLElement): boolean {
  const takers = Array.from(part.querySelectorAll<HTMLElement>(TAKES_KEYS)).filter((each) => each.checkVisibility());
  const taker = takers.find((each) => each.getAttribute("aria-selected") === "true") ?? takers[0];
  taker?.focus();
  return taker !== undefined;
}
