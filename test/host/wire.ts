/*
 * The far side of Office.js: one request of Microsoft's script is a list of actions on object paths, done in order; a step
 * that fails ends the request and leaves the steps before it done. What the stand-in lacks is refused without a code, so
 * that nobody takes it for an error of Excel's.
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
  /** The property by which its collection finds it again. */
  readonly key?: string;
}

export type AnyKind = Kind<never>;

/** An error that Excel answers with. */
export class OfficeError extends Error {
  override readonly name = "OfficeError";

  constructor(
    readonly code: string,
    message: string = code,
  ) {
    super(`${code}: ${message}`);
  }
}

interface Called {
  readonly Arguments?: readonly unknown[];
  /** Beside each argument, the object path that it is; 0 where it is a value. */
  readonly ReferencedObjectPathIds?: readonly number[];
}

interface Path {
  readonly ObjectPathType: number;
  readonly Name: string;
  readonly ParentObjectPathId?: number;
  readonly ArgumentInfo?: Called;
}

interface Action {
  readonly Id: number;
  readonly ActionType: number;
  readonly Name: string;
  readonly ObjectPathId: number;
  readonly ArgumentInfo?: Called;
  readonly QueryInfo?: { readonly Select?: readonly string[] };
}

interface Request {
  readonly Actions: readonly Action[];
  readonly ObjectPaths: Readonly<Record<string, Path>>;
}

/** An object that a path leads to; without a model it is the null object. */
interface Found {
  readonly kind: Kind<unknown>;
  readonly model: unknown;
}

/** What Microsoft's script calls the kinds of path and of action. */
const PATH = { root: 1, service: 2, method: 3, property: 4, indexer: 5, reference: 6, nothing: 7 } as const;
const ACTION = { instantiate: 1, query: 2, method: 3, set: 4, trace: 5 } as const;

/** Of Office itself, whether the pane is shown. */
const VISIBILITY = "Microsoft.AppRuntime.AppRuntimeService";

/** Answers requests about a workbook. @returns what takes the JSON of a request, and gives that of its answer */
export function wireTo(rootKind: AnyKind, root: unknown): (request: string) => string {
  const kept = new Map<string, Found>();
  return (text) => {
    const { Actions, ObjectPaths } = JSON.parse(text) as Request;
    const found = new Map<number, Found>();
    const references = new Map<number, string>();

    const at = (id: number): Found => {
      const known = found.get(id) ?? look(ObjectPaths[id]!);
      found.set(id, known);
      return known;
    };
    const argumentsOf = ({ Arguments = [], ReferencedObjectPathIds = [] }: Called = {}): never[] =>
      Arguments.map((value, place) => {
        const id = ReferencedObjectPathIds[place] ?? 0;
        return (id === 0 ? (value ?? undefined) : needed(at(id)).model) as never;
      });
    const look = ({ ObjectPathType, Name, ParentObjectPathId, ArgumentInfo }: Path): Found => {
      if (ObjectPathType === PATH.root) return { kind: rootKind as Kind<unknown>, model: root };
      if (ObjectPathType === PATH.service && Name === VISIBILITY) return { kind: {}, model: Name };
      if (ObjectPathType === PATH.nothing) return { kind: {}, model: undefined };
      if (ObjectPathType === PATH.reference) {
        const known = kept.get(Name);
        if (known === undefined) throw new OfficeError("InvalidReference", Name);
        return known;
      }
      if (ParentObjectPathId === undefined) throw new Error(`this stand-in for Excel has no ${Name}`);
      const parent = at(ParentObjectPathId);
      const { part = {}, find = {}, items } = parent.kind;
      const name = ObjectPathType === PATH.indexer ? "getItem" : lowered(Name);
      if (ObjectPathType === PATH.property && part[name]) {
        const [kind, reach] = part[name];
        return { kind: kind() as Kind<unknown>, model: parent.model === undefined ? undefined : reach(parent.model) };
      }
      const args = argumentsOf(ArgumentInfo);
      if (name === "getItemAt" && items) {
        const [index] = args as unknown as [number];
        return { kind: items[0]() as Kind<unknown>, model: items[1](needed(parent).model)[index] };
      }
      if (!find[name]) throw new Error(`this stand-in for Excel has no ${name}`);
      const [kind, reach] = find[name];
      return { kind: kind() as Kind<unknown>, model: reach(needed(parent).model, ...args) };
    };
    const done = ({ Id, ActionType, Name, ObjectPathId, ArgumentInfo, QueryInfo }: Action): unknown => {
      if (ActionType === ACTION.trace) return void TraceIds.push(Id);
      const own = at(ObjectPathId);
      if (ActionType === ACTION.instantiate)
        return own.model === undefined ? null : { ...keyOf(own), ...referenceOf(references.get(ObjectPathId)) };
      if (ActionType === ACTION.query)
        return own.model === undefined
          ? null
          : loaded(
              own,
              (QueryInfo?.Select ?? []).map((path) => path.split("/")),
            );
      const args = argumentsOf(ArgumentInfo);
      const name = lowered(Name);
      if (ActionType === ACTION.set) {
        if (!own.kind.set?.[name]) throw new Error(`this stand-in for Excel cannot set ${name}`);
        return own.kind.set[name](needed(own).model, ...(args as unknown as [never]));
      }
      if (ActionType !== ACTION.method)
        throw new Error(`this stand-in for Excel takes no action of type ${ActionType}`);
      if (Name === "_KeepReference") {
        const reference = `object ${kept.size + 1}`;
        if (own.model !== undefined) kept.set(reference, own);
        return void references.set(ObjectPathId, reference);
      }
      if (Name === "_RemoveReference") return void kept.delete(String(args[0]));
      if (!own.kind.act?.[name]) throw new Error(`this stand-in for Excel cannot do ${name}`);
      return own.kind.act[name](needed(own).model, ...args);
    };

    const TraceIds: number[] = [];
    const Results: { readonly ActionId: number; readonly Value: unknown }[] = [];
    for (const [ActionIndex, action] of Actions.entries()) {
      try {
        Results.push({ ActionId: action.Id, Value: done(action) ?? null });
      } catch (error) {
        if (!(error instanceof OfficeError)) throw error;
        const { code, message } = error;
        return JSON.stringify({
          Results,
          TraceIds,
          Error: { Code: code, Message: message, Location: "", ActionIndex },
        });
      }
    }
    return JSON.stringify({ Results, TraceIds });
  };
}

function needed(found: Found): Found {
  if (found.model === undefined) throw new OfficeError("InvalidObjectPath", "a null object");
  return found;
}

/** What was asked of an object, under the names of the wire. */
function loaded({ kind, model }: Found, paths: readonly (readonly string[])[]): object {
  const { get = {}, part = {}, items } = kind;
  const asked = new Map<string, (readonly string[])[]>();
  for (const [first = "", ...rest] of paths) asked.set(first, [...(asked.get(first) ?? []), rest]);
  const values = [...asked].map(([name, rest]): readonly [string, unknown] => {
    if (name === "items" && items)
      return [
        "_Items",
        items[1](model).map((each) => loaded({ kind: items[0]() as Kind<unknown>, model: each }, rest)),
      ];
    if (part[name]) {
      const [kindOf, reach] = part[name];
      return [raised(name), loaded({ kind: kindOf() as Kind<unknown>, model: reach(model) }, rest)];
    }
    if (!get[name]) throw new Error(`this stand-in for Excel cannot load ${name}`);
    return [raised(name), get[name](model)];
  });
  return { ...keyOf({ kind, model }), ...Object.fromEntries(values) };
}

function keyOf({ kind, model }: Found): object {
  return kind.key === undefined ? {} : { [raised(kind.key)]: kind.get![kind.key]!(model) };
}

function referenceOf(reference: string | undefined): object {
  return reference === undefined ? {} : { _ReferenceId: reference };
}

const lowered = (name: string): string => name.charAt(0).toLowerCase() + name.slice(1);
const raised = (name: string): string => name.charAt(0).toUpperCase() + name.slice(1);
