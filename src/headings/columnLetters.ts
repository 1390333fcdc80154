/** `3` -> `C`: the sheet's own name of a column. */
export function columnLetters(column: number): string {
  let text = "";
  for (let n = column; n > 0; n = Math.floor((n - 1) / 26)) text = String.fromCharCode(65 + ((n - 1) % 26)) + text;
  return text;
}

/** `C` -> `3`, also written `column C`; undefined for what is no such name. */
export function columnOfLetters(text: string): number | undefined {
  const letters = /^\s*(?:column\s+)?([a-z]{1,3})\s*$/i.exec(text)?.[1];
  if (letters === undefined) return undefined;
  return [...letters.toUpperCase()].reduce((n, letter) => n * 26 + letter.charCodeAt(0) - 64, 0);
}
