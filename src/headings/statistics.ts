export function within(value: number | undefined, [least, most]: readonly [number, number]): boolean {
  return value !== undefined && value >= least && value <= most;
}

export function median(values: readonly number[]): number | undefined {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)];
}

export function rounded(value: number): string {
  return String(value >= 100 ? Math.round(value) : Number(value.toPrecision(3)));
}
