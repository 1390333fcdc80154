import { rmSync } from "node:fs";
import { tmpdir } from "node:os";

/** Removes the folder that `before` made. */
export default function after(): void {
  rmSync(tmpdir(), { recursive: true, force: true });
}
