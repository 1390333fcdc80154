import type { Template, TemplateLine } from "./template";

/** A piece drawn wider than it is, its length to scale: the lines along a long narrow strip lie apart. */
export function widenedTemplate(template: Template, times: number): Template {
  const { width, alongWidth, lines, corners } = template;
  const wider = ([x, y]: TemplateLine["from"]): TemplateLine["from"] => [x, y * times];
  return {
    ...template,
    width: width * times,
    alongWidth: alongWidth.map((stretch) => ({ ...stretch, length: stretch.length * times })),
    lines: lines.map((line) => ({ ...line, from: wider(line.from), to: wider(line.to) })),
    corners: corners.map((corner) => ({ ...corner, width: corner.width * times })),
  };
}
