import type { ComponentProps } from "preact";
import { useMemo, useState } from "preact/hooks";
import { curvePicture, type Curve } from "../drawing/curvePicture";
import { CURVE_COUNTS, curvePoint, ownPoint, type CurvePoint } from "../estimate/sizesCurve";
import { plainRows } from "../item/answers";
import { areaIn, fromMm } from "../measure/units";
import type { Settings } from "../settings/schema";
import { HEAVY_BOXES, OTHER_KINDS, otherKinds } from "../survey/otherKinds";
import { problemRows } from "../survey/problemRows";
import { shelfRows, shelfSpace, tooTallRows } from "../survey/shelfSpace";
import type { SizedSurvey } from "../survey/sizeSurvey";
import { Drawing } from "./Drawing";
import { FigureTable } from "./FigureTable";
import { Amount, Table } from "./Table";
import type { ViewProps } from "./viewProps";

/** Work for one count of sizes: a part of a second, and the same answer on any machine. */
const LOOKS = 3_000_000;

interface Found {
  readonly of: unknown;
  readonly own: CurvePoint;
  readonly points: readonly CurvePoint[];
}

/** The room in the store, now and when boxed, and what fewer sizes would cost. */
export function StoreView({ survey, state }: ViewProps) {
  const { sized, cells } = survey;
  const { settings } = sized;
  const [found, setFound] = useState<Found>();
  const [working, setWorking] = useState<number>();
  const tables = useMemo(() => {
    const space = shelfSpace(sized, cells);
    return [
      ["Room in the store", narrow(plainRows(shelfRows(space, settings)))],
      ["Too tall for every shelf", plainRows(tooTallRows(space, settings))],
      ["Left out", plainRows(problemRows(sized))],
    ] as const;
  }, [sized]);
  const work = async (): Promise<void> => {
    const points: CurvePoint[] = [];
    for (const count of CURVE_COUNTS) {
      setWorking(count);
      // The page shows what is being done before it does it.
      await new Promise((resolve) => setTimeout(resolve));
      points.push(curvePoint(sized, count, { looks: LOOKS }));
    }
    setFound({ of: sized, own: ownPoint(sized), points });
    setWorking(undefined);
  };
  const shown = found !== undefined && found.of === sized ? found : undefined;
  const hasItems = sized.outcomes.some(({ state: outcome }) => outcome === "sized");
  return (
    <>
      {tables.map(
        ([name, rows]) =>
          rows.length > 1 && (
            <>
              <h2>{name}</h2>
              <FigureTable label={name} unit={settings.answerUnit} rows={rows} />
            </>
          ),
      )}
      <p class="quiet">{HEAVY_BOXES}</p>
      <OtherKinds survey={sized} disabled={!hasItems} />
      <h2>Fewer, standard sizes</h2>
      <div class="row">
        <button
          type="button"
          disabled={!hasItems || working !== undefined || state.doing !== undefined}
          onClick={() => void work()}
        >
          Show what standard sizes would take
        </button>
      </div>
      {working !== undefined && <p>Looking for the best {working} sizes…</p>}
      {shown !== undefined && <SizesCurve {...shown} survey={sized} />}
    </>
  );
}

/** Sizes every row as each kind, so only when asked. */
function OtherKinds({ survey, disabled }: { readonly survey: SizedSurvey; readonly disabled: boolean }) {
  const [found, setFound] = useState<{ readonly of: unknown; readonly rows: ReturnType<typeof otherKinds> }>();
  const rows = found?.of === survey ? found.rows : undefined;
  return (
    <>
      <h2>Other enclosures</h2>
      {rows === undefined ? (
        <div class="row">
          <button type="button" disabled={disabled} onClick={() => setFound({ of: survey, rows: otherKinds(survey) })}>
            Show what each kind of enclosure would take
          </button>
        </div>
      ) : (
        <>
          <p>{OTHER_KINDS}</p>
          <FigureTable label="Other enclosures" unit={survey.settings.answerUnit} rows={rows} />
        </>
      )}
    </>
  );
}

/** Shelf, way and height in one column, so that what is more stays in sight. */
function narrow([, ...rows]: ReturnType<typeof plainRows>): ReturnType<typeof plainRows> {
  return [
    ["kept", "number", "now", "boxed", "more", "in"],
    ...rows.map(([shelf, kept, height, ...figures]) => [
      [shelf === "all" ? "" : shelf, kept, height].filter((part) => part !== "").join(", "),
      ...figures,
    ]),
  ];
}

function SizesCurve({ own, points, survey: { settings } }: Found & { readonly survey: SizedSurvey }) {
  const curves: readonly Curve[] = [
    { name: "board", shares: points.map(({ boardM2 }) => boardM2 / own.boardM2) },
    ...(own.cost === undefined || own.cost === 0
      ? []
      : [{ name: "cost", shares: points.map(({ cost }) => (cost ?? own.cost!) / own.cost!) }]),
    { name: "shelf", shares: points.map(({ shelf }) => shelf / own.shelf) },
  ];
  const title = "Board, cost and shelf by the number of standard sizes, beside each made to measure";
  return (
    <>
      <Drawing picture={curvePicture(title, CURVE_COUNTS, curves)} />
      <Table
        label="Standard sizes"
        headings={headings(settings)}
        rows={[...distinct(points), own].map((point) => pointRow(point, settings))}
      />
      <p class="quiet">
        Each beside what all made to measure take. Cost is of material by its area, without the waste of sheets. The
        sizes themselves: ENC.SIZES, or the command sizes.
      </p>
    </>
  );
}

/** Past the number of sizes that a survey has, more of them change nothing. */
function distinct(points: readonly CurvePoint[]): readonly CurvePoint[] {
  return points.filter(({ sizes }, at) => points.findIndex((each) => each.sizes === sizes) === at);
}

function headings({ answerUnit: unit, currency }: Settings): readonly string[] {
  const inFeet = unit === "in";
  const money = currency === "" ? "material" : `material, ${currency}`;
  return ["sizes", inFeet ? "board, ft2" : "board, m2", money, inFeet ? "shelf, ft" : "shelf, m"];
}

function pointRow(
  { sizes, boardM2, cost, shelf }: CurvePoint,
  { answerUnit: unit }: Settings,
): ComponentProps<typeof Table>["rows"][number] {
  return [
    sizes === 0 ? "made to measure" : sizes,
    areaIn(boardM2, unit),
    cost === undefined ? "" : <Amount>{cost.toFixed(2)}</Amount>,
    fromMm(shelf, unit === "in" ? "ft" : "m"),
  ];
}
