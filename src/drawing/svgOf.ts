import { IN_PAGE, type Look } from "./look";
import { PEN, type ClosedStyle, type Ink, type Picture, type Shape, type Stroke, type TextShape } from "./picture";
import type { Point } from "./projection";
import { element, escaped, type Attributes } from "./svg";

const FONT = "system-ui, 'Segoe UI', sans-serif";
const GROUND_CORNER = 6;
const BOLD = 600;
/** Width of the rim of paper round text, units. */
const RIM = 3;

/** A picture as SVG text: in a page, or in a file of its own. Every text in it is escaped. */
export function svgOf({ title, width, height, shapes }: Picture, look: Look = IN_PAGE): string {
  const ground = look.ground
    ? element("rect", { width, height, rx: GROUND_CORNER, fill: look.paper, stroke: "none" })
    : "";
  return element(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      viewBox: `0 0 ${width} ${height}`,
      width,
      height,
      role: "img",
      "aria-label": title,
      "font-family": FONT,
      fill: "none",
      stroke: look.ink,
      "stroke-width": PEN.width,
      "stroke-linejoin": "round",
      "stroke-linecap": "round",
    },
    ground,
    ...shapes.map((shape) => elementOf(shape, look)),
  );
}

function elementOf(shape: Shape, look: Look): string {
  switch (shape.kind) {
    case "polygon":
      return element("polygon", { points: pairs(shape.points), ...closed(shape, look) });
    case "rectangle": {
      const [x, y] = shape.corner;
      return element("rect", { x, y, width: shape.width, height: shape.height, ...closed(shape, look) });
    }
    case "circle": {
      const [cx, cy] = shape.middle;
      return element("circle", { cx, cy, r: shape.radius, ...closed(shape, look) });
    }
    case "polyline": {
      const [[x1, y1], [x2, y2]] = shape.points as readonly [Point, Point];
      const place = shape.points.length === 2 ? { x1, y1, x2, y2 } : { points: pairs(shape.points) };
      return element(shape.points.length === 2 ? "line" : "polyline", { ...place, ...stroked(shape.stroke, look) });
    }
    case "hatch": {
      const d = shape.lines.map(([[x1, y1], [x2, y2]]) => `M${x1} ${y1}L${x2} ${y2}`).join("");
      return element("path", { d, ...stroked(shape.stroke, look) });
    }
    case "text":
      return lettered(shape, look);
  }
}

function lettered({ at: [x, y], text, size, anchor, bold, upright }: TextShape, look: Look): string {
  const attributes = {
    x,
    y,
    "font-size": size,
    "text-anchor": anchor === "start" ? undefined : anchor,
    "font-weight": bold ? BOLD : undefined,
    transform: upright ? `rotate(-90 ${x} ${y})` : undefined,
    fill: look.ink,
    stroke: look.paper,
    "stroke-width": RIM,
    "paint-order": "stroke",
  };
  return element("text", attributes, escaped(text));
}

function closed({ fill, stroke }: ClosedStyle, look: Look): Attributes {
  const filled = fill === undefined ? {} : { fill: colour(fill, look), "fill-opacity": opacity(fill) };
  return { ...filled, ...(stroke === undefined ? { stroke: "none" } : stroked(stroke, look)) };
}

/** What the whole drawing has already is not said again. */
function stroked({ ink, width, dash }: Stroke, look: Look): Attributes {
  return {
    stroke: ink === PEN.ink ? undefined : colour(ink, look),
    "stroke-opacity": opacity(ink),
    "stroke-width": width === PEN.width ? undefined : width,
    "stroke-dasharray": dash?.join(" "),
  };
}

function colour(ink: Ink, look: Look): string {
  return ink === 0 ? look.paper : look.ink;
}

function opacity(ink: Ink): number | undefined {
  return ink === 0 || ink === 1 ? undefined : ink;
}

function pairs(points: readonly Point[]): string {
  return points.map(([x, y]) => `${x},${y}`).join(" ");
}
