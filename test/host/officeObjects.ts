/*
 * How Office.js works, whatever the program behind it: objects are promises of things that are looked up in the order in
 * which they were named, once `sync` sends the batch; a property is read after it was loaded and sent, never before; a
 * step that fails ends the batch and leaves the steps before it done; a batch and its answer take up to 5 MB.
 */

/** A kind of object: what can be loaded of it, set on it, reached from it and done with it. */
export interface Kind<Model> {
  readonly get?: Readonly<Record<string, (model: Model) => unknown>>;
  readonly set?: Readonly<Record<string, (model: Model, value: never) => void>>;
  /** Objects reached without a call. */
  readonly part?: Readonly<Record<string, readonly [() => AnyKind, (model: Model) => unknown]>>;
  /** Objects reached by a call; undefined is the null object, a throw an error of the program. */
  readonly find?: Readonly<Record<string, readonly [() => AnyKind, (model: Model, ...args: never[]) => unknown]>>;
  readonly act?: Readonly<Record<string, (model: Model, ...args: never[]) => void>>;
  readonly items?: readonly [() => AnyKind, (model: Model) => readonly unknown[]];
}

export type AnyKind = Kind<never>;

/** An error as Office.js throws it. */
export class OfficeError extends Error {
  override readonly name = "RichApi.Error";

  constructor(
    readonly code: string,
    message: string = code,
  ) {
    super(`${code}: ${message}`);
  }
}

/** One batch after another, with the number of rounds. */
export interface Batch {
  readonly sync: () => Promise<void>;
  readonly root: (kind: AnyKind, model: unknown) => object;
}

export const MOST_BYTES = 5_000_000;

export function batch(onRound: () => void): Batch {
  let steps: (() => void)[] = [];
  let asked = 0;
  let answered = 0;
  let round = 0;

  const object = (kind: AnyKind, find: () => unknown): Proxied => {
    const { get = {}, set = {}, part = {}, find: finds = {}, act = {}, items } = kind as Kind<unknown>;
    const loaded = new Map<string, unknown>();
    const parts = new Map<string, Proxied>();
    let model: unknown;
    let list: Proxied[] | undefined;
    let listed = -1;
    let sent = false;
    steps.push(() => {
      model = find();
      sent = true;
    });
    const load = (path: readonly string[]): void => {
      const [first = "", ...rest] = path;
      if (model === undefined) return;
      if (items && first === "items") {
        if (listed !== round) list = items[1](model).map((each) => object(items[0](), () => each));
        listed = round;
        settle();
        for (const item of list!) item[INSIDE].load(rest);
      } else if (part[first]) {
        partOf(first);
        settle();
        parts.get(first)![INSIDE].load(rest);
      } else if (get[first]) {
        const value = get[first](model);
        answered += JSON.stringify(value ?? null).length;
        loaded.set(first, value);
      } else throw new OfficeError("InvalidArgument", `nothing called ${path.join("/")} can be loaded`);
    };
    /** Looks up what was named while loading. */
    const settle = (): void => {
      const named = steps.splice(0);
      for (const step of named) step();
    };
    const partOf = (key: string): Proxied => {
      const [kindOf, reach] = part[key]!;
      const known = parts.get(key) ?? object(kindOf(), () => (model === undefined ? undefined : reach(model)));
      parts.set(key, known);
      return known;
    };
    const needed = (): unknown => {
      if (model === undefined) throw new OfficeError("InvalidObjectPath", "a null object");
      return model;
    };
    const inside = { load, model: () => model };
    const self: Proxied = new Proxy({} as Proxied, {
      get: (_, key) => {
        if (key === INSIDE) return inside;
        if (typeof key === "symbol" || key === "then" || key === "toJSON") return undefined;
        if (key === "load")
          return (paths: string | readonly string[]) => {
            const wanted = typeof paths === "string" ? paths.split(",") : paths;
            steps.push(() => wanted.forEach((path) => load(path.trim().split("/"))));
            return self;
          };
        if (key === "isNullObject") {
          if (!sent) throw new OfficeError("PropertyNotLoaded", key);
          return model === undefined;
        }
        if (key === "items") {
          if (!list) throw new OfficeError("PropertyNotLoaded", key);
          return list;
        }
        if (part[key]) return partOf(key);
        if (finds[key]) {
          const [kindOf, reach] = finds[key];
          return (...args: unknown[]) => object(kindOf(), () => reach(needed(), ...(args.map(plain) as never[])));
        }
        if (act[key])
          return (...args: unknown[]) => void steps.push(() => act[key]!(needed(), ...(args.map(plain) as never[])));
        if (loaded.has(key)) return loaded.get(key);
        if (get[key]) throw new OfficeError("PropertyNotLoaded", key);
        throw new Error(`this stand-in for Excel has no ${key}`);
      },
      set: (_, key, value: never) => {
        const change = set[String(key)];
        if (!change) throw new Error(`this stand-in for Excel cannot set ${String(key)}`);
        asked += JSON.stringify(value).length;
        steps.push(() => change(needed(), value));
        return true;
      },
    });
    return self;
  };

  return {
    root: (kind, model) => object(kind, () => model),
    sync: async () => {
      await Promise.resolve();
      onRound();
      round++;
      const now = steps;
      steps = [];
      answered = 0;
      const size = asked;
      asked = 0;
      if (size > MOST_BYTES) throw new OfficeError("RequestPayloadSizeLimitExceeded");
      for (const step of now) step();
      if (answered > MOST_BYTES) throw new OfficeError("ResponsePayloadSizeLimitExceeded");
    },
  };
}

const INSIDE = Symbol("inside");

interface Proxied {
  readonly [INSIDE]: { readonly load: (path: readonly string[]) => void; readonly model: () => unknown };
}

function plain(argument: unknown): unknown {
  const inside = typeof argument === "object" && argument !== null && (argument as Partial<Proxied>)[INSIDE];
  return inside ? inside.model() : argument;
}
