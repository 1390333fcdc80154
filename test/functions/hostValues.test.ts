import { hostCalls } from "./hostCalls";

/** The functions themselves, without the runtime around them: a thousand times as many calls in the same time. */
class CellError extends Error {
  constructor(
    readonly code: string,
    message = "",
  ) {
    super(message);
  }
}

type Call = (...args: readonly unknown[]) => unknown;
const called: Record<string, Call> = {};
Object.assign(globalThis, {
  CustomFunctions: {
    Error: CellError,
    ErrorCode: { invalidValue: "#VALUE!", notAvailable: "#N/A" },
    associate: (functions: Record<string, Call>) => Object.assign(called, functions),
  },
});

const SOAKING = process.env["SOAK"] !== undefined;
const CALLS = SOAKING ? 5_000_000 : 12_000;
const SEED = SOAKING ? Date.now() % 2 ** 31 : 20_261_128;

/** What is wrong with an answer; nothing when every cell is a text, a finite number or a told error. */
function wrongIn(answer: unknown): string | undefined {
  if (answer instanceof CellError)
    return answer.message.includes("fault of the program") || !/^.+: .+$/s.test(answer.message)
      ? `${answer.code} ${answer.message}`
      : undefined;
  if (Array.isArray(answer)) return answer.map(wrongIn).find((wrong) => wrong !== undefined);
  if (typeof answer === "string") return undefined;
  return typeof answer === "number" && Number.isFinite(answer)
    ? undefined
    : `a cell that holds ${JSON.stringify(answer) ?? "nothing"}`;
}

async function outcomeOf(call: Call, args: readonly unknown[]): Promise<unknown> {
  try {
    // Awaiting every call would double the time.
    const answer = call(...args, {});
    return answer instanceof Promise ? await (answer as Promise<unknown>) : answer;
  } catch (error) {
    return error instanceof CellError ? error : { raw: String(error) };
  }
}

test(`${CALLS} calls with what a host can pass: no cell is not a number, and none is a fault of the program`, async () => {
  await import("../../functions/index");
  const details: string[] = [];
  jest.spyOn(console, "error").mockImplementation((text: unknown) => void details.push(String(text)));
  const found = new Map<string, string>();
  const seen = { answered: 0, refused: 0 };
  let left = CALLS;
  for (const [id, args] of hostCalls(SEED)) {
    if (left-- === 0) break;
    const outcome = await outcomeOf(called[id]!, args);
    if (outcome instanceof CellError) seen.refused++;
    else seen.answered++;
    const wrong = wrongIn(outcome);
    if (wrong !== undefined && !found.has(`${id} ${wrong}`))
      found.set(
        `${id} ${wrong}`,
        `${JSON.stringify(args, plain)}\n${details.at(-1)?.split("\n").slice(0, 4).join("\n") ?? ""}`,
      );
    details.length = 0;
  }
  if (process.env["FUZZ_SEEN"] !== undefined) console.log(seen, found.size);
  expect([...found].slice(0, 10)).toEqual([]);
  // The calls reach past the first argument: a fair part is answered, and a fair part refused.
  expect(Math.min(seen.answered, seen.refused)).toBeGreaterThan(CALLS / 10);
}, 100_000_000);

function plain(_: string, value: unknown): unknown {
  return typeof value === "bigint" || (typeof value === "number" && !Number.isFinite(value)) ? String(value) : value;
}
