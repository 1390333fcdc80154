import type { Size } from "./amounts";
import type { Measures } from "./likelihood";

export interface Other {
  readonly sizes: readonly (Size | "weight")[];
  readonly factor: number;
}

export function scaled(each: Measures, { sizes, factor }: Other): Measures {
  const by = (size: Size | "weight", value: number) => (sizes.includes(size) ? value / factor : value);
  return {
    height: by("height", each.height),
    width: by("width", each.width),
    depth: by("depth", each.depth),
    weightKg: each.weightKg === undefined ? undefined : by("weight", each.weightKg),
  };
}
