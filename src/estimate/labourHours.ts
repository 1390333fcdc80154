import { kindNamed } from "../enclosure/kindNamed";
import { InputError, shown } from "../measure/errors";
import { DEFINITIONS, type Settings } from "../settings/schema";

/**
 * Hours to make one enclosure, by the name of its kind.
 *
 * @throws InputError when a name is no kind's, or a kind has two numbers
 */
export function labourHours({ labourHours: given }: Settings): ReadonlyMap<string, number> {
  const hours = new Map<string, number>();
  for (const [name, each] of given) {
    const kind = knownKind(name);
    if (hours.has(kind)) throw refused(`${kind} twice`, "give each enclosure once");
    hours.set(kind, each);
  }
  return hours;
}

function knownKind(name: string): string {
  try {
    return kindNamed(name).name;
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    // The nearest names, else all of them.
    throw refused(shown(name), error.cure === "" ? error.expected : error.cure);
  }
}

function refused(got: string, cure: string): InputError {
  const { name, accepts } = DEFINITIONS.labourHours;
  return new InputError(name, got, `give ${accepts}`, cure);
}
