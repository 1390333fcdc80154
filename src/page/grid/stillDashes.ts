import { SelectionControl } from "@univerjs/sheets-ui";

/**
 * Lets the dashes round copied cells stand still. By themselves they move as long as the copy lasts, and the whole grid is
 * drawn again for every frame of the screen.
 */
export function stillDashes(): void {
  const frame = SelectionControl.prototype as unknown as { _startAntLineAnimation: () => void };
  frame._startAntLineAnimation = () => undefined;
}
