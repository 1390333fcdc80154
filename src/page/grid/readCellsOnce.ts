import { Worksheet, type ICellData, type Nullable } from "@univerjs/core";
import { Scene, sheetHeaderViewportKeys, SpreadsheetSkeleton, type IViewportInfo } from "@univerjs/engine-render";
import { known } from "./known";

type Cells = Map<number, Nullable<ICellData>>;

interface Sheet {
  getCell: (row: number, column: number) => Nullable<ICellData>;
}

interface Picture {
  render: (context?: unknown) => void;
}

/** How a sheet is laid out: among it the looks of the cells that were drawn, as long as nothing changes. */
interface Layout {
  readonly _stylesCache: object;
  readonly _drawingRange: Area;
  setStylesCache: (view: IViewportInfo) => unknown;
  readonly updateVisibleRange: (view: IViewportInfo) => boolean;
  _setStylesCacheForOneCell: (row: number, column: number, options: LookOptions) => void;
}

interface Area {
  readonly startRow: number;
  readonly endRow: number;
  readonly startColumn: number;
  readonly endColumn: number;
}

interface LookOptions {
  /** What of the cell is wanted besides its text. */
  readonly cacheItem?: { readonly bg: boolean; readonly border: boolean };
}

/** What a part of the screen was last drawn from. */
interface Drawn {
  readonly looks: object;
  readonly area: Area;
}

/** More columns than a sheet has. */
const COLUMNS = 1 << 15;

/**
 * Keeps the grid from asking for the look of every cell in sight in every frame. By itself it does so whenever anything
 * on the sheet moves, such as the frame round the selected cell, though it then draws the cells as a picture made
 * before; and for one drawing it asks each cell several times, through a dozen plugins. Here a part of the screen asks
 * only when its cells are drawn, and within a frame, in which nothing can change, each cell answers once.
 */
export function readCellsOnce(): void {
  const sheet = Worksheet.prototype as unknown as Sheet;
  const scene = Scene.prototype as unknown as Picture;
  const { getCell } = sheet;
  const { render } = scene;
  let frame: { readonly cells: Map<object, Cells>; readonly texts: Map<object, Set<number>> } | undefined;
  sheet.getCell = function (row, column) {
    if (frame === undefined) return getCell.call(this, row, column);
    const cells = known(frame.cells, this, (): Cells => new Map());
    const place = row * COLUMNS + column;
    if (cells.has(place)) return cells.get(place);
    const cell = getCell.call(this, row, column);
    cells.set(place, cell);
    return cell;
  };
  scene.render = function (context) {
    if (frame !== undefined) return render.call(this, context);
    frame = { cells: new Map(), texts: new Map() };
    try {
      render.call(this, context);
    } finally {
      frame = undefined;
    }
  };

  const layout = SpreadsheetSkeleton.prototype as unknown as Layout;
  const { setStylesCache: lookAt, _setStylesCacheForOneCell: lookAtCell } = layout;
  const drawn = new WeakMap<object, Map<string, Drawn>>();
  layout.setStylesCache = function (view) {
    const parts = known(drawn, this, () => new Map<string, Drawn>());
    const { viewportKey: part } = view;
    this.updateVisibleRange(view);
    const { _drawingRange: area, _stylesCache: looks } = this;
    const before = parts.get(part);
    if (isHeading(part)) return this;
    if (isStill(view) && before?.looks === looks && isSame(before.area, area)) return this;
    parts.set(part, { looks, area });
    return lookAt.call(this, view);
  };
  // A text may reach into its neighbours: the texts of twenty columns on both sides are asked for too.
  layout._setStylesCacheForOneCell = function (row, column, options) {
    const isTextAlone = options.cacheItem?.bg === false;
    const texts = frame && known(frame.texts, this._stylesCache, () => new Set<number>());
    const place = row * COLUMNS + column;
    if (isTextAlone && texts?.has(place)) return;
    texts?.add(place);
    lookAtCell.call(this, row, column, options);
  };
}

/** The letters of columns and the numbers of rows are drawn without a look at the cells. */
function isHeading(part: string): boolean {
  return (sheetHeaderViewportKeys as readonly string[]).includes(part);
}

/** Whether a part of the screen shows the picture that was made of it before. */
function isStill({ isDirty, isForceDirty, diffBounds, diffCacheBounds, diffX, diffY, cacheCanvas }: IViewportInfo) {
  if (isDirty || isForceDirty || !cacheCanvas) return false;
  return diffBounds.length === 0 && diffCacheBounds.length === 0 && diffX === 0 && diffY === 0;
}

function isSame(one: Area, other: Area): boolean {
  return (
    one.startRow === other.startRow &&
    one.endRow === other.endRow &&
    one.startColumn === other.startColumn &&
    one.endColumn === other.endColumn
  );
}
