import type { Narrative } from "../application/section";
import { textTable } from "./textTable";

/** Lines of paragraphs are at most this long; tables are as wide as they are. */
const LINE_LENGTH = 100;

/** The narrative as plain text. */
export function narrativeText({ title, notice, sections }: Narrative): string {
  const lines = [
    ...underlined(title, "="),
    ...(notice === "" ? [] : ["", ...wrapped(notice)]),
    ...sections.flatMap(({ heading, paragraphs, tables }) => [
      "",
      ...underlined(heading, "-"),
      ...paragraphs.flatMap((paragraph) => ["", ...wrapped(paragraph)]),
      ...tables.flatMap(([name, rows]) => ["", name, "", textTable(rows)]),
    ]),
  ];
  return `${lines.join("\n")}\n`;
}

function underlined(text: string, rule: string): readonly string[] {
  return [text, rule.repeat(text.length)];
}

function wrapped(text: string): readonly string[] {
  const lines: string[] = [];
  for (const word of text.split(/\s+/)) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= LINE_LENGTH) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}
