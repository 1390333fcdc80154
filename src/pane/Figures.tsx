import { assembledView, closedView } from "../drawing/assembledView";
import type { Assembly } from "../enclosure/assembly";
import { Enlarged } from "./Enlarged";

const SMALL = { width: 200, height: 140 } as const;
const LARGE = { width: 900, height: 630 } as const;

/** The enclosure open and, where it closes, closed: beside each other where the pane has room for both. */
export function Figures({ assembly }: { readonly assembly: Assembly }) {
  const closed = closedView(assembly, SMALL);
  // Head and spine are named once: on the closed figure, or on that of an enclosure that never closes.
  const open = (size: typeof SMALL | typeof LARGE) =>
    assembledView(assembly, { ...size, closed: closed === undefined });
  return (
    <div class="figures">
      <div>
        <Enlarged picture={open(SMALL)} large={() => open(LARGE)} />
      </div>
      {closed !== undefined && (
        <div>
          <Enlarged picture={closed} large={() => closedView(assembly, LARGE)!} />
        </div>
      )}
    </div>
  );
}
