import { headedFigure } from "../filling/headedFigure";
import type { WorkbookUnit } from "../measure/units";
import type { FigureChoice, FigureGroup } from "./figureChoices";

interface GroupsProps {
  readonly groups: readonly FigureGroup[];
  readonly ticked: readonly string[];
  /** What is looked for; empty for all. */
  readonly wanted: string;
  readonly unit: WorkbookUnit;
  readonly tick: (name: string) => void;
}

/** The figures on offer, by purpose, folded; those that are looked for are unfolded. */
export function FigureGroups({ groups, ticked, wanted, unit, tick }: GroupsProps) {
  const shown = groups
    .map(({ purpose, choices }) => ({ purpose, choices: choices.filter((choice) => fits(choice, wanted)) }))
    .filter(({ choices }) => choices.length > 0);
  if (shown.length === 0) return <p>No figure has “{wanted.trim()}” in its name.</p>;
  return (
    <>
      {shown.map(({ purpose, choices }) => {
        const count = choices.filter(({ name }) => ticked.includes(name)).length;
        return (
          <details key={purpose} class="group" open={wanted.trim() !== "" || (count > 0 && choices.length <= FEW)}>
            <summary>
              {purpose} <span class="quiet">{`${count} of ${choices.length}`}</span>
            </summary>
            {choices.map(({ name, meaning }) => (
              <label key={name}>
                <input type="checkbox" checked={ticked.includes(name)} onChange={() => tick(name)} />
                <span>
                  {meaning}
                  <span class="quiet">{headedFigure(name, unit).slice(name.length)}</span>
                </span>
              </label>
            ))}
          </details>
        );
      })}
    </>
  );
}

/** Figures of a group that is unfolded where some of them are chosen. */
const FEW = 8;

/** Every word that is looked for is in the name or the meaning. */
function fits({ name, meaning }: FigureChoice, wanted: string): boolean {
  const text = `${name} ${meaning}`.toLowerCase();
  return wanted
    .toLowerCase()
    .split(/\s+/)
    .every((word) => text.includes(word));
}
