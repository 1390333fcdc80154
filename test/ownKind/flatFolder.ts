import { assembled } from "../../src/enclosure/assembly";
import { caseBoardOf, freePlay, oneFace, roundedUp } from "../../src/enclosure/build/allowances";
import { CASE_BLANKS, caseBlanks } from "../../src/enclosure/build/caseBlanks";
import { NO_CAUTIONS, WALLS, type Kind } from "../../src/enclosure/kind";
import { flatPart, lyingPart, panelsOf, type PartSpec } from "../../src/enclosure/placedPart";
import { boundingBox, cuboid, Y, Z } from "../../src/enclosure/space";
import { openBodies, piecesOf } from "../../src/enclosure/view";

/**
 * Two boards and a spine hinged with cloth: no walls, no tray. It is in no list of kinds but that of its own test.
 *
 *     ______________
 *    |  ____item____     spine at the left, a joint off the boards
 *    | ______________
 */
export const flatFolder: Kind = {
  name: "flat folder",
  otherNames: ["two-board folder"],
  trays: [],
  parts: ["folder board", "folder spine"],
  coverings: CASE_BLANKS,
  constructions: [],
  body: WALLS,
  folded: false,
  options: ["caseBoard", "hingeLap"],
  assemble(item, settings) {
    const [c, board, fit] = [oneFace(settings), caseBoardOf(settings), freePlay(settings, "snug")];
    const up = (size: number) => roundedUp(size, settings.roundTo);
    const q = board.caliper;
    const joint = 2 * q + 2 * c;
    const [width, height] = [up(item.width + fit.x), up(item.height + fit.y)];
    const depth = up(item.depth + 2 * c + fit.z);
    const spec = (name: string): PartSpec => ({ name, tray: "", role: "case", material: "board", board, trim: 0 });
    const boards = lyingPart(spec("folder board"), "spine", [
      cuboid(0, width, 0, height, -q, 0),
      cuboid(0, width, 0, height, depth, depth + q),
    ]);
    const tall = height >= depth;
    const spine = flatPart(spec("folder spine"), tall ? Y : Z, tall ? Z : Y, Y, [
      cuboid(-joint, q - joint, 0, height, 0, depth),
    ]);
    const parts = [boards, spine];
    const holder = {
      name: "",
      openSpine: true,
      mouth: undefined,
      construction: undefined,
      rings: [],
      closedCorners: false,
      inside: cuboid(0, width, 0, height, 0, depth),
      outside: boundingBox(panelsOf(parts)),
      spans: [
        { part: boards, boards: 0, of: boards },
        { part: boards, boards: 0, of: boards },
        { part: spine, boards: 0, of: boards },
      ],
      covering: c,
      coveredFaces: [0, 0, 2],
      rim: 0,
      tabs: 0,
      floor: q,
    } as const;
    return assembled(
      {
        kind: flatFolder,
        parts,
        trays: [holder],
        holder,
        cover: {
          boards,
          spine,
          boardWidth: width,
          boardHeight: height,
          boardCaliper: q,
          spineWidth: depth,
          joint,
          hingeLap: settings.hingeLap,
          liningHeight: height,
          covering: c,
        },
        cushion: item.cushion,
      },
      settings,
    );
  },
  blanks: ({ cover }, settings) => caseBlanks(cover!, settings),
  cautions: NO_CAUTIONS,
  opened: ({ parts }) => openBodies(panelsOf(parts)),
  apart: ({ parts, holder }) => ({
    arranged: "above",
    groups: [{ pieces: piecesOf(parts), around: holder.inside, bed: [] }],
    between: [],
  }),
  order: () => [
    { text: "Cut boards and spine with the grain parallel to the spine.", parts: [], caution: "blade" },
    {
      text: "Lay out the folder boards and the folder spine, a joint apart, and glue them down.",
      parts: ["folder board", "folder spine"],
      caution: "adhesive",
    },
    { text: "Turn the case covering in all round.", parts: ["case covering"] },
    { text: "Glue the spine lining over the spine and on to the boards.", parts: ["spine lining"] },
    { text: "Press flat until dry, the spine free.", parts: [] },
  ],
};
