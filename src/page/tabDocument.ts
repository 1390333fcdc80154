/** The workbook of this tab: a reload finds it again, and no other tab has it. */
export interface TabDocument {
  /** The workbook that this tab had before it was loaded again, if no other tab has taken it. */
  readonly former: () => Promise<string | undefined>;
  /** From now on this tab has that workbook alone. */
  readonly take: (document: string) => Promise<void>;
  /** Those of the given workbooks that are open in some tab. */
  readonly open: (documents: readonly string[]) => Promise<readonly string[]>;
}

const KEY = "document";

/** A tab that is made a copy of another has its session store too: what a tab holds for itself is a lock. */
export function tabDocument(): TabDocument {
  let release: () => void = () => undefined;
  const hold = (document: string): Promise<boolean> =>
    new Promise((resolve) => {
      void navigator.locks.request(nameOf(document), { ifAvailable: true }, (lock) => {
        resolve(lock !== null);
        if (lock === null) return undefined;
        release();
        return new Promise<void>((free) => (release = free));
      });
    });
  return {
    former: async () => {
      const former = sessionStorage.getItem(KEY) ?? undefined;
      return former !== undefined && (await hold(former)) ? former : undefined;
    },
    take: async (document) => {
      if (sessionStorage.getItem(KEY) !== document || !(await isHeld(document))) await hold(document);
      sessionStorage.setItem(KEY, document);
    },
    open: async (documents) => {
      const held = await heldNames();
      return documents.filter((each) => held.has(nameOf(each)));
    },
  };
}

function nameOf(document: string): string {
  return `enclosure workbook ${document}`;
}

async function heldNames(): Promise<ReadonlySet<string | undefined>> {
  return new Set(((await navigator.locks.query()).held ?? []).map(({ name }) => name));
}

async function isHeld(document: string): Promise<boolean> {
  return (await heldNames()).has(nameOf(document));
}
