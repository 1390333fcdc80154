import { existsSync, mkdirSync } from "node:fs";
import { basename, join } from "node:path";
import { completenessOf, completenessText } from "../estimate/completeness";
import { saveBeside } from "../files/saveBeside";
import { explained } from "../files/systemErrors";
import { InputError } from "../measure/errors";
import {
  applicationPack,
  PACK_ADVICE,
  PACK_BUDGET,
  PACK_DOCUMENT,
  PACK_DRAWINGS,
  PACK_PDF,
  refuseNoCurrency,
} from "../pack/applicationPack";
import type { Output } from "./output";
import { loadFont, dateOf, DAY, paperOf, plannedEstimate } from "./paper";
import type { BesideOptions } from "./planBeside";
import { savedLines, type ReadSurvey } from "./sheets";

/** As they were typed. */
export interface ApplyCommand {
  readonly out: string | undefined;
  readonly paper: string | undefined;
  readonly date: string | undefined;
  readonly replace: boolean;
  /** How long to search for plans. */
  readonly search: BesideOptions;
}

/** `apply`: an application for funds in a folder, as one PDF and as parts to edit; every number the same in all. */
export async function applyCommand(read: ReadSurvey, command: ApplyCommand): Promise<Output> {
  const { sized: survey, cells } = read;
  const { settings } = survey;
  const folder = folderOf(command);
  refuseNoCurrency(settings.currency);
  refuseOld(folder, command.replace);
  const [paper, date] = [paperOf(command.paper), dateOf(command.date)];
  const name = basename(read.path);
  const estimate = await plannedEstimate(read, command.search);
  const options = { paper, printed: `${name}, ${DAY.format(date)}`, date };
  const { files, notice, funds, narrative } = await applicationPack(
    { survey, cells, estimate, name },
    options,
    loadFont,
  );
  const saved = saveAll(read, folder, files, command.replace);
  const counts = completenessOf(
    survey,
    estimate.plans.flatMap(({ plans }) => plans),
  );
  const { cost, contingency, total, match, inKind, requested } = estimate;
  return {
    text: [...(notice === "" ? [] : [notice, ""]), funds, completenessText(counts), "", ...saved, "", PACK_ADVICE].join(
      "\n",
    ),
    json: { notice, cost, contingency, total, match, inKind, requested, completeness: counts, narrative, files: saved },
  };
}

function folderOf({ out }: ApplyCommand): string {
  if (out !== undefined && out.trim() !== "") return out;
  throw new InputError("out", "nothing", "give the folder for the application", "such as --out application");
}

/** Before a search that may take minutes. */
function refuseOld(folder: string, replace: boolean): void {
  const there = [PACK_PDF, PACK_DOCUMENT, PACK_BUDGET]
    .map((name) => join(folder, name))
    .find((path) => existsSync(path));
  if (there === undefined || replace) return;
  throw new InputError("out", `"${there}", which is there already`, "give another folder", "or say --replace");
}

function saveAll(
  { path, bytes: inputBytes }: ReadSurvey,
  folder: string,
  files: readonly (readonly [name: string, bytes: Uint8Array])[],
  replace: boolean,
): readonly string[] {
  try {
    mkdirSync(join(folder, PACK_DRAWINGS), { recursive: true });
  } catch (error) {
    throw explained(error, "out", folder);
  }
  return files.flatMap(([name, bytes]) =>
    savedLines(
      saveBeside({ input: path, inputBytes, output: join(folder, ...name.split("/")), bytes, replace }),
      "written",
    ),
  );
}
