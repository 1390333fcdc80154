/** One call as the host sends it: id, function, marshalled arguments, flags. */
export type Invocation = readonly [id: number, functionId: string, args: readonly unknown[], flags: number];

/** What the runtime reports for one call. A failed call carries its message, where it kept one, in `value`. */
export interface InvocationResult {
  readonly id: number;
  readonly ok: boolean;
  readonly value: unknown;
  readonly errorCode: number | undefined;
}

export interface HostBridge {
  /** The object that the runtime looks for as `window._richApiNativeBridge`. */
  readonly native: NativeBridge;
  /** Sends calls to the runtime in one message, as Excel does in one recalculation. */
  readonly invoke: (calls: readonly Invocation[]) => void;
}

/**
 * The native side of Excel as the custom-functions runtime sees it: messages are JSON text both ways, so nothing
 * but data crosses. Every request is answered with success; results of calls go to `onResult`.
 */
export function hostBridge(onResult: (result: InvocationResult) => void): HostBridge {
  const native: NativeBridge = {
    onMessageFromHost: undefined,
    sendMessageToHost: (text) => {
      const { id, type, message } = JSON.parse(text) as RuntimeMessage;
      if (type !== REQUEST) return;
      const { body } = message;
      const { Actions: actions = [] } = (typeof body === "string" ? JSON.parse(body) : body) as RequestBody;
      actions.flatMap(resultsIn).forEach(onResult);
      const answers = actions.filter(({ Name }) => Name !== undefined).map(({ Id }) => ({ ActionId: Id, Value: null }));
      const reply = { statusCode: HTTP_OK, headers: {}, body: JSON.stringify({ Results: answers }) };
      setTimeout(() => deliver({ id, type: REQUEST, message: reply }), 0);
    },
  };
  const deliver = (message: object): void => native.onMessageFromHost?.(JSON.stringify(message));
  const invoke = (calls: readonly Invocation[]): void => {
    const entries = calls.map(([id, functionId, args, flags]) => ({
      messageCategory: CUSTOM_FUNCTION_MESSAGE,
      messageType: INVOCATION,
      message: [id, functionId, args, null, flags],
    }));
    deliver({ type: EVENT, message: { entries } });
  };
  return { native, invoke };
}

interface NativeBridge {
  onMessageFromHost: ((text: string) => void) | undefined;
  readonly sendMessageToHost: (text: string) => void;
}

interface RuntimeMessage {
  readonly id: number;
  readonly type: number;
  readonly message: { readonly body: unknown };
}

interface RequestBody {
  readonly Actions?: readonly Action[];
}

interface Action {
  readonly Id: number;
  readonly Name?: string;
  readonly ArgumentInfo?: { readonly Arguments?: readonly unknown[] };
}

type ResultRecord = readonly [id: number, ok: boolean, value: unknown, errorCode?: number];

// Numbers of the protocol, read from custom-functions-runtime.debug.js of @microsoft/office-js.
const REQUEST = 1;
const EVENT = 3;
const CUSTOM_FUNCTION_MESSAGE = 1;
const INVOCATION = 1000;
const HTTP_OK = 200;

const resultsIn = ({ Name, ArgumentInfo }: Action): InvocationResult[] => {
  if (Name !== "SetInvocationArrayResults") return [];
  const records = (ArgumentInfo?.Arguments?.[0] ?? []) as readonly ResultRecord[];
  return records.map(([id, ok, value, errorCode]) => ({ id, ok, value, errorCode: ok ? undefined : errorCode }));
};
