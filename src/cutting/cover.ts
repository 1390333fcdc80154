/** What one kind of sheet offers: the share it can hold, its weight, and how many there are. */
export interface Offer {
  readonly share: number;
  readonly weight: number;
  readonly limit: number;
}

/** Sums of shares are binary fractions: what is this near below a whole number of sheets counts as that number. */
const ROUNDING = 1e-7;

/**
 * The least weight of sheets that together offer a total share, at least; sheets may be taken in parts, and the
 * weight is rounded up to one that whole sheets can have.
 *
 * @returns Infinity when all there is does not offer as much
 */
export function coverWeight(total: number, offers: readonly Offer[]): number {
  const [only] = offers;
  if (offers.length === 1 && only !== undefined) {
    const sheets = Math.ceil(total / only.share - ROUNDING);
    return sheets <= only.limit ? sheets * only.weight : Number.POSITIVE_INFINITY;
  }
  const useful = offers.filter((offer) => offer.share > 0 && offer.limit > 0);
  const cheapestFirst = useful.sort((one, other) => one.weight / one.share - other.weight / other.share);
  let left = total;
  let weight = 0;
  for (const offer of cheapestFirst) {
    if (left <= 0) break;
    const sheets = Math.min(left / offer.share, offer.limit);
    left -= sheets * offer.share;
    weight += sheets * offer.weight;
  }
  if (left > total * ROUNDING) return Number.POSITIVE_INFINITY;
  const step = weightStep(offers.map((offer) => offer.weight));
  return step === 0 ? 0 : Math.ceil(weight / step - ROUNDING) * step;
}

/** The greatest weight of which all are multiples; 0 when all are 0. */
export function weightStep(weights: readonly number[]): number {
  return weights.reduce((one, other) => {
    let [a, b] = [one, other];
    while (b > 0) [a, b] = [b, a % b];
    return a;
  }, 0);
}
