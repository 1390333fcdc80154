import { kindNamed } from "../enclosure/kindNamed";
import type { Kind } from "../enclosure/kind";
import { KINDS } from "../enclosure/registry";
import { boardsOnOffer } from "../filling/boardColumns";
import { rowDecision, rowSays } from "../filling/rowDecision";
import { NO_ENCLOSURE } from "../item/sizeItem";
import { cellText } from "../measure/blank";
import { InputError } from "../measure/errors";
import { DEFINITIONS, type SettingKey } from "../settings/schema";
import { ChoiceField, type Option } from "./ChoiceField";
import { kindCells } from "./kindCells";
import type { PaneModel, PaneSurvey } from "./paneState";
import { choiceOptions, otherChoice } from "./settingChoices";
import { writeAgain } from "./writeFigures";

interface DecisionsProps {
  readonly model: PaneModel;
  readonly survey: PaneSurvey;
  readonly index: number;
  readonly busy: boolean;
}

/** What is decided for one row, each written into the row when it is chosen. */
export function Decisions({ model, survey, index, busy }: DecisionsProps) {
  const { sized, chosen } = survey;
  const item = sized.survey.items[index]!;
  const { enclosure } = sized.survey.recognition.columns;
  const kind = knownKind(item.cells.enclosure);
  const decide = (key: SettingKey, name: string) => (text: string) =>
    void model.write(
      text === "" ? `The usual ${name} for ${item.identifier}` : `${sentence(name)}: ${text} for ${item.identifier}`,
      (now) => ({ edits: rowDecision(now, index, key, text) }),
      // Formulas of columns that stand already are to read a column that was just added.
      (now) =>
        sameSettings(now, survey) || survey.standing.length === 0 ? undefined : writeAgain(now, survey.standing),
    );
  const use = (name: string) =>
    void model.write(`Kind: ${name === "" ? "not chosen" : name} for ${item.identifier}`, (now) => ({
      edits: { cells: kindCells(now.sized, index, name, chosen.sheet.name) ?? [] },
    }));
  const field = (key: SettingKey, label: string, usual: string, options: readonly Option[]) => (
    <ChoiceField
      key={`${label} ${item.row}`}
      label={label}
      value={rowSays(survey, index, key)}
      usual={usual}
      options={options}
      {...otherChoice(key)}
      busy={busy}
      choose={decide(key, label.toLowerCase())}
    />
  );
  const byKind = DECIDED.filter((key) => takes(kind, key) || rowSays(survey, index, key) !== "");
  return (
    <div class="decisions" role="group" aria-label={`Decisions for ${item.identifier}`}>
      {enclosure !== undefined && (
        <ChoiceField
          label="Kind"
          value={kind?.name ?? cellText(item.cells.enclosure)}
          usual="not chosen"
          options={[...KINDS.map(({ name }) => name), NO_ENCLOSURE].map((name) => ({ value: name, label: name }))}
          busy={busy}
          choose={use}
        />
      )}
      {field(
        "wallBoard",
        "Board",
        "by the board guide",
        boardsOnOffer(sized).map((name) => ({ value: name, label: name })),
      )}
      {byKind.map((key) =>
        field(key, sentence(DEFINITIONS[key].name), "usual", choiceOptions(key, sized.settings.stock, kind)),
      )}
    </div>
  );
}

/** Beside kind and board, what a binder decides on object by object. */
const DECIDED = ["fit", "construction", "closure"] as const satisfies readonly SettingKey[];

function takes(kind: Kind | undefined, key: SettingKey): boolean {
  if (kind === undefined) return false;
  if (key === "construction" && kind.constructions.length < 2) return false;
  return !DEFINITIONS[key].option || kind.options.includes(key);
}

function knownKind(enclosure: unknown): Kind | undefined {
  try {
    return kindNamed(enclosure);
  } catch (error) {
    if (error instanceof InputError) return undefined;
    throw error;
  }
}

function sameSettings(now: PaneSurvey, before: PaneSurvey): boolean {
  const names = ({ sized }: PaneSurvey) => sized.survey.recognition.settings.map(({ setting }) => setting).join("|");
  return names(now) === names(before);
}

function sentence(name: string): string {
  return name.charAt(0).toUpperCase() + name.slice(1);
}
