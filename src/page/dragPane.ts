/** Narrowest pane, and what is left of the window for the cells, pixels. */
const NARROWEST = 260;
const LEFT_FOR_CELLS = 340;
const USUAL = 380;
/** One press of an arrow key, pixels. */
const STEP = 20;

const KEPT = "pane width";

/**
 * The edge between cells and pane is dragged, or moved by the arrow keys; Home gives the usual width back. The browser keeps
 * the width.
 */
export function dragPane(edge: HTMLElement, pane: HTMLElement): void {
  const root = pane.ownerDocument.documentElement;
  const widest = (): number => Math.max(NARROWEST, root.clientWidth - LEFT_FOR_CELLS);
  let asked = Number(localStorage.getItem(KEPT) ?? USUAL) || USUAL;
  const show = (wanted: number): void => {
    const width = Math.round(Math.min(widest(), Math.max(NARROWEST, wanted)));
    root.style.setProperty("--pane-width", `${width}px`);
    edge.setAttribute("aria-valuenow", String(width));
    edge.setAttribute("aria-valuemin", String(NARROWEST));
    edge.setAttribute("aria-valuemax", String(widest()));
  };
  const set = (wanted: number): void => {
    show(wanted);
    asked = Number(edge.getAttribute("aria-valuenow"));
    localStorage.setItem(KEPT, String(asked));
  };
  show(asked);
  // A window that grows gives back the width that was asked for.
  pane.ownerDocument.defaultView?.addEventListener("resize", () => show(asked));
  edge.addEventListener("pointerdown", (event) => {
    event.preventDefault();
    edge.setPointerCapture(event.pointerId);
    edge.classList.add("dragged");
  });
  edge.addEventListener("pointermove", ({ clientX, pointerId }) => {
    if (edge.hasPointerCapture(pointerId)) set(pane.getBoundingClientRect().right - clientX);
  });
  edge.addEventListener("lostpointercapture", () => edge.classList.remove("dragged"));
  edge.addEventListener("dblclick", () => set(USUAL));
  edge.addEventListener("keydown", (event) => {
    const { width } = pane.getBoundingClientRect();
    const wanted = { ArrowLeft: width + STEP, ArrowRight: width - STEP, Home: USUAL }[event.key];
    if (wanted === undefined) return;
    event.preventDefault();
    set(wanted);
  });
}
