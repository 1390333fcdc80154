import { Layer } from "@univerjs/engine-render";

/** A part of a picture, which notes that it is to be drawn again when the work in hand is done. */
interface Marked {
  /** Calls the note off; null when there is none. */
  readonly _debounceDirtyFunc: (() => void) | null;
  makeDirtyWithDebounce: (state?: boolean) => void;
}

/**
 * Keeps the grid from calling off and making the same note again, with a message channel of its own each time: a selected
 * cell is drawn of dozens of shapes, and each of them notes that it has changed.
 */
export function markOnce(): void {
  const layer = Layer.prototype as unknown as Marked;
  const { makeDirtyWithDebounce: mark } = layer;
  const noted = new WeakMap<Marked, boolean>();
  layer.makeDirtyWithDebounce = function (state = true) {
    if (this._debounceDirtyFunc && noted.get(this) === state) return;
    noted.set(this, state);
    mark.call(this, state);
  };
}
