/** What an element of the grid is given, by attribute, or by what it says; undefined takes the attribute away. */
type Given = Readonly<Record<string, string | ((text: string) => string) | undefined>>;

/** Parts of the grid that say nothing to a screen reader by themselves, or something that is no known role. */
const PARTS: readonly (readonly [selector: string, given: Given])[] = [
  ['[data-u-comp="defined-name"] input', { "aria-label": "Cell or name to go to" }],
  ['[data-u-comp="defined-name"] a[aria-haspopup]', { role: "button", "aria-label": "Names in this workbook" }],
  ['header [data-u-comp="formula-bar"] > div > button', { "aria-label": "Taller formula line" }],
  ['[data-u-comp="sheet-bar-append-button"]', { "aria-label": "New sheet" }],
  ['[data-u-comp="sheet-bar-append-button"]:has(> .univerjs-icon-more-icon)', { "aria-label": "Later sheets" }],
  ['[data-u-comp="sheet-bar-append-button"]:has(> .univer-rotate-180)', { "aria-label": "Earlier sheets" }],
  ['[aria-haspopup] > [data-u-comp="sheet-bar-append-button"]', { "aria-label": "List of sheets" }],
  [
    'div[aria-haspopup]:has(> [data-u-comp="sheet-bar-append-button"])',
    { "aria-haspopup": undefined, "aria-expanded": undefined },
  ],
  ['[role="track"]', { role: "presentation" }],
  ['[role="presentation"] > a[role="button"]', { "aria-label": "Zoom to 100 %" }],
  ['button[role="handle"]', { role: undefined, "aria-label": "Zoom" }],
  ['footer [data-u-comp="button"]:has(~ div):not([aria-haspopup])', { "aria-label": "Smaller" }],
  ['footer div ~ [data-u-comp="button"]:not([aria-haspopup])', { "aria-label": "Larger" }],
  ['canvas[tabindex="1"]', { tabindex: "0" }],
  // A choice that opens, which is no button and takes no key by itself.
  [
    'div[type="button"][aria-haspopup], div[role="button"][data-slot]',
    { role: "button", type: undefined, tabindex: "0" },
  ],
  // What can be scrolled, and has nothing in it that takes the keyboard.
  [".univer-overflow-y-auto.univer-scrollbar-thin", { tabindex: "0" }],
  // An entry of a menu with a number in it: nothing that is pressed can hold something that is typed into.
  ["button:has(input)", { role: "group", "aria-label": (text) => text.replaceAll(/[+-]+/g, " ... ") }],
  ["button input", { "aria-label": "Number" }],
  ['[data-u-comp="sheets-dropdown-list"] input', { "aria-label": "Choice to look for" }],
];

/** Names the parts of the grid and of its menus and dialogs, now and whenever they are drawn again. */
export function nameParts(container: HTMLElement): void {
  nameWithin(container);
  const { body } = container.ownerDocument;
  // Menus and dialogs lie beside the page's own parts.
  const beside = new WeakSet<Node>();
  const look = (): void => {
    for (const place of Array.from(body.querySelectorAll<HTMLElement>(":scope > div")))
      if (!beside.has(place)) {
        beside.add(place);
        nameWithin(place);
      }
  };
  look();
  new MutationObserver(look).observe(body, { childList: true });
}

function nameWithin(place: HTMLElement): void {
  const name = (): void => {
    for (const [selector, given] of PARTS)
      for (const element of Array.from(place.querySelectorAll(selector)))
        for (const [attribute, told] of Object.entries(given)) {
          const value = typeof told === "function" ? told(element.textContent) : told;
          if (value === undefined) element.removeAttribute(attribute);
          else if (element.getAttribute(attribute) !== value) element.setAttribute(attribute, value);
        }
  };
  name();
  const attributeFilter = ["role", "tabindex", "aria-expanded"];
  new MutationObserver(name).observe(place, { subtree: true, childList: true, attributes: true, attributeFilter });
}
