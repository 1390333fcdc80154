/** An orthotropic plate as its four stiffnesses, N mm, under an even pressure, N/mm2. */
export interface DifferencePlate {
  readonly spanX: number;
  readonly spanY: number;
  readonly bendingX: number;
  readonly bendingY: number;
  /** D12 in M_x = -(D1 w_xx + D12 w_yy) */
  readonly coupling: number;
  /** Dk in M_xy = 2 Dk w_xy */
  readonly twisting: number;
  readonly pressure: number;
  readonly freeEdge: "none" | "x0";
}

/**
 * Sag at the centre, or at the middle of the free edge, from the plate equation in central differences: nothing of the
 * series in src. Two grids are taken to the limit (errors fall with the square of the step).
 */
export function finiteDifferenceSag(plate: DifferencePlate): number {
  const coarse = sagOnGrid(plate, 16);
  const fine = sagOnGrid(plate, 32);
  return fine + (fine - coarse) / 3;
}

type Stencil = Map<number, number>;

function sagOnGrid(plate: DifferencePlate, cells: number): number {
  const { spanX, spanY, bendingX, bendingY, coupling, twisting, pressure, freeEdge } = plate;
  const free = freeEdge === "x0";
  const hx = spanX / cells;
  const hy = spanY / cells;
  const middle = cells / 2;
  const first = free ? -2 : 1; // two rows of ghost points beyond a free edge
  const rows = cells - first;

  /** Adds `weight` times w at (i, j): mirrored about y = middle, odd about supported edges, nothing on them. */
  const add = (stencil: Stencil, i: number, j: number, weight: number): void => {
    if (j > middle) return add(stencil, i, cells - j, weight);
    if (j < 0) return add(stencil, i, -j, -weight);
    if (i > cells) return add(stencil, 2 * cells - i, j, -weight);
    if (!free && i < 0) return add(stencil, -i, j, -weight);
    if (j === 0 || i === cells || (!free && i === 0)) return;
    const unknown = (i - first) * middle + j - 1;
    stencil.set(unknown, (stencil.get(unknown) ?? 0) + weight);
  };
  const secondY = (stencil: Stencil, i: number, j: number, weight: number): void => {
    for (const [step, part] of [
      [-1, 1],
      [0, -2],
      [1, 1],
    ] as const)
      add(stencil, i, j + step, (weight * part) / hy ** 2);
  };

  const equation = (i: number, j: number): Stencil => {
    const stencil: Stencil = new Map();
    if (i === -2) {
      for (const [at, part] of [
        [2, 1],
        [1, -2],
        [-1, 2],
        [-2, -1],
      ] as const) {
        add(stencil, at, j, (bendingX * part) / (2 * hx ** 3));
      }
      secondY(stencil, 1, j, (coupling + 4 * twisting) / (2 * hx));
      secondY(stencil, -1, j, -(coupling + 4 * twisting) / (2 * hx));
      return stencil;
    }
    if (i === -1) {
      for (const [at, part] of [
        [-1, 1],
        [0, -2],
        [1, 1],
      ] as const)
        add(stencil, at, j, (bendingX * part) / hx ** 2);
      secondY(stencil, 0, j, coupling);
      return stencil;
    }
    for (const [step, part] of [
      [-2, 1],
      [-1, -4],
      [0, 6],
      [1, -4],
      [2, 1],
    ] as const) {
      add(stencil, i + step, j, (bendingX * part) / hx ** 4);
      add(stencil, i, j + step, (bendingY * part) / hy ** 4);
    }
    for (const [step, part] of [
      [-1, 1],
      [0, -2],
      [1, 1],
    ] as const) {
      secondY(stencil, i + step, j, (2 * (coupling + 2 * twisting) * part) / hx ** 2);
    }
    return stencil;
  };

  const size = rows * middle;
  const matrix: Float64Array[] = [];
  for (let i = first; i < cells; i++) {
    for (let j = 1; j <= middle; j++) {
      const row = new Float64Array(size + 1);
      for (const [unknown, weight] of equation(i, j)) row[unknown] = weight;
      row[size] = i < 0 ? 0 : pressure;
      matrix.push(row);
    }
  }
  const w = solve(matrix);
  return w[((free ? 0 : middle) - first) * middle + middle - 1]!;
}

/** Elimination with row exchanges; zeros of the band are skipped. */
function solve(matrix: Float64Array[]): Float64Array {
  const size = matrix.length;
  for (let column = 0; column < size; column++) {
    let pivot = column;
    for (let row = column + 1; row < size; row++) {
      if (Math.abs(matrix[row]![column]!) > Math.abs(matrix[pivot]![column]!)) pivot = row;
    }
    [matrix[column], matrix[pivot]] = [matrix[pivot]!, matrix[column]!];
    const from = matrix[column]!;
    for (let row = column + 1; row < size; row++) {
      const to = matrix[row]!;
      const factor = to[column]! / from[column]!;
      if (factor === 0) continue;
      for (let at = column; at <= size; at++) to[at]! -= factor * from[at]!;
    }
  }
  const answer = new Float64Array(size);
  for (let row = size - 1; row >= 0; row--) {
    let rest = matrix[row]![size]!;
    for (let at = row + 1; at < size; at++) rest -= matrix[row]![at]! * answer[at]!;
    answer[row] = rest / matrix[row]![row]!;
  }
  return answer;
}
