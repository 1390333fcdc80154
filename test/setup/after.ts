import { rmSync } from "node:fs";
import { made } from "./before";

/** Removes the folder that `before` made, and no other: it does not ask the environment, which anybody may change. */
export default function after(): void {
  if (made !== undefined) rmSync(made, { recursive: true, force: true });
}
