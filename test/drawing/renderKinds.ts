import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { KINDS_FOLDER, renderedKinds } from "./renderedKinds";

// Writes the drawings of the table of kinds; run from the root of the repository.
mkdirSync(KINDS_FOLDER, { recursive: true });
for (const { file, svg } of renderedKinds()) writeFileSync(join(KINDS_FOLDER, file), svg);
