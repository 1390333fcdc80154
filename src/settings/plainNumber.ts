/**
 * A number without a unit, written as number or text; NaN for anything else. A comma before one or two figures is a
 * decimal comma; before three it may mean thousands, and is refused.
 */
export function plainNumber(value: unknown, suffix = ""): number {
  if (typeof value !== "string") return typeof value === "number" ? value : Number.NaN;
  const trimmed = value.trim();
  const bare = suffix !== "" && trimmed.endsWith(suffix) ? trimmed.slice(0, -suffix.length).trim() : trimmed;
  return PLAIN.test(bare) ? Number(bare.replace(",", ".")) : Number.NaN;
}

const PLAIN = /^[-+]?(?:\d+(?:\.\d*|,\d{1,2})?|\.\d+)$/;
