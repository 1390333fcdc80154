/** Prints a text of several lines; letters that a terminal would obey are shown as marks. */
export function print(text: string): void {
  console.log(visibleText(text));
}

/** Prints to the error stream, one message a line. */
export function warn(line: string): void {
  console.error(visibleLine(line));
}

/**
 * A text of several lines with every letter that a terminal obeys shown as a visible mark: `␛` for escape, `‹9B›` for
 * those without a picture. Line breaks and tabs stay.
 */
export function visibleText(text: string): string {
  return text.replace(OBEYED, mark);
}

/** The same for what must stay one line: a message, a cell of a survey. */
export function visibleLine(text: string): string {
  return text.replace(OBEYED_IN_LINE, mark);
}

/** JSON whose every such letter is escaped, so that it reads back as it was. */
export function visibleJson(value: unknown): string {
  const json = JSON.stringify(value, null, 2);
  return json.replace(OBEYED, (letter) => `\\u${hexadecimal(letter).padStart(4, "0")}`);
}

/** Control letters of both sets (ISO 6429), and those that turn the direction of writing (UAX 9). */
const CONTROLS = "\\u0000-\\u0008\\u000b-\\u001f\\u007f-\\u009f\\u2028\\u2029\\u202a-\\u202e\\u2066-\\u2069";
const OBEYED = new RegExp(`[${CONTROLS}]`, "g");
const OBEYED_IN_LINE = new RegExp(`[\\t\\n${CONTROLS}]`, "g");
const DELETE = 0x7f;
const SPACE = 0x20;
/** The pictures of the first 32 letters begin here; that of delete is the 34th. */
const PICTURES = 0x2400;
const DELETE_PICTURE = 0x2421;

function mark(letter: string): string {
  const code = letter.charCodeAt(0);
  if (code < SPACE) return String.fromCharCode(PICTURES + code);
  return code === DELETE ? String.fromCharCode(DELETE_PICTURE) : `‹${hexadecimal(letter)}›`;
}

function hexadecimal(letter: string): string {
  return letter.charCodeAt(0).toString(16).toUpperCase();
}
