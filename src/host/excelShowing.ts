/** Whether the pane can be seen. The page runs without it too: Excel starts it to calculate. */
export interface Showing {
  readonly now: () => boolean;
  /** Calls back each time the pane comes into sight. @returns what stops it */
  readonly onShow: (listener: () => void) => () => void;
}

/** What is asked of the page that the pane is. */
export interface PageOfPane {
  readonly innerWidth: number;
  readonly document: Listened & { readonly hidden: boolean };
  readonly addEventListener: Listened["addEventListener"];
}

interface Listened {
  readonly addEventListener: (sign: string, listener: () => void) => void;
}

/**
 * Watches whether Excel shows the pane. Excel reports a change but not how it began, so a page of no size, or one that the
 * browser calls hidden, counts as not shown; whoever types or points into it sees it.
 */
export function excelShowing(page = globalThis as unknown as PageOfPane): Showing {
  let shown = !page.document.hidden && page.innerWidth > 0;
  const listeners = new Set<() => void>();
  const set = (now: boolean): void => {
    if (now === shown) return;
    shown = now;
    if (shown) for (const listener of listeners) listener();
  };
  page.document.addEventListener("visibilitychange", () => set(!page.document.hidden));
  page.addEventListener("resize", () => page.innerWidth > 0 && !page.document.hidden && set(true));
  for (const sign of ["pointerdown", "keydown", "focus"]) page.addEventListener(sign, () => set(true));
  // Only Excel with a shared runtime has it.
  void Office.addin
    ?.onVisibilityModeChanged(({ visibilityMode }) => set(visibilityMode === Office.VisibilityMode.taskpane))
    ?.catch(() => undefined);
  return {
    now: () => shown,
    onShow: (listener) => {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
  };
}

/** A pane that is always in sight. */
export const ALWAYS_SHOWN: Showing = { now: () => true, onShow: () => () => undefined };
