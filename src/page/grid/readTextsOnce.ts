import { StringValueObject, ValueObjectFactory } from "@univerjs/engine-formula";

/** More texts than a survey repeats. */
const MOST_TEXTS = 20_000;

/**
 * Keeps the engine from asking of the same text again and again whether it is a date, a time or a number: of every text
 * in a formula, each time that it is worked out.
 */
export function readTextsOnce(): void {
  const create = ValueObjectFactory.create.bind(ValueObjectFactory);
  const texts = new Map<string, string>();
  ValueObjectFactory.create = (value, isIgnoreNumberPattern) => {
    if (typeof value !== "string") return create(value, isIgnoreNumberPattern);
    const known = texts.get(value);
    if (known !== undefined) return StringValueObject.create(known);
    const made = create(value, isIgnoreNumberPattern);
    if (isIgnoreNumberPattern !== true && made.isString()) {
      if (texts.size === MOST_TEXTS) texts.clear();
      texts.set(value, String(made.getValue()));
    }
    return made;
  };
}
