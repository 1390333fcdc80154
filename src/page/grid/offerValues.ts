import { ICommandService, type Injector } from "@univerjs/core";
import type { IFunctionInfo } from "@univerjs/engine-formula";
import { IEditorBridgeService } from "@univerjs/sheets-ui";
import { argumentValues } from "../../item/argumentValues";
import { NAMESPACE } from "../functions/metadata";
import { argumentAt, goingOn, quotedText } from "../argumentAt";
import { IEditorService } from "./screenPlugins";

/** A value that can be put in, and where. */
interface Offer {
  readonly parameter: string;
  readonly values: readonly string[];
  readonly from: number;
  readonly to: number;
  /** The user has begun to type it. */
  readonly begun: boolean;
  readonly editor: string;
}

/** Values shown at once. */
const MOST_VALUES = 12;

/**
 * While an argument of our functions is typed that takes one of some words, shows them below the grid: a press puts one
 * in, and so does Tab, the first of them, once a quote is typed. To be called before the grid's plugins listen to keys.
 *
 * @param line the element that they are shown in
 */
export function offerValues(injector: Injector, functions: readonly IFunctionInfo[], line: HTMLElement): void {
  let offer: Offer | undefined;
  const put = async (value: string): Promise<void> => {
    if (offer === undefined) return;
    const { editor, from, to } = offer;
    show(undefined);
    await injector.get(ICommandService).executeCommand("doc.command.insert-text", {
      unitId: editor,
      body: { dataStream: `"${value}"` },
      range: { startOffset: from, endOffset: to, collapsed: from === to },
      segmentId: "",
    });
  };
  const show = (next: Offer | undefined): void => {
    offer = next;
    line.hidden = next === undefined;
    line.replaceChildren(
      ...(next === undefined
        ? []
        : [
            `${next.parameter}: `,
            ...next.values.slice(0, MOST_VALUES).map((value) => button(document, value, () => void put(value))),
            ...(next.values.length > MOST_VALUES ? ["type a few letters for the others"] : []),
          ]),
    );
  };
  const look = (): void => show(offerNow(injector, functions));
  // The formula is in the editor a moment after the key.
  for (const event of ["keyup", "pointerup"]) addEventListener(event, () => setTimeout(look, 0), { capture: true });
  addEventListener(
    "keydown",
    (event) => {
      if (event.key !== "Tab" || event.shiftKey || event.ctrlKey || event.altKey || offer?.begun !== true) return;
      event.preventDefault();
      event.stopImmediatePropagation();
      void put(offer.values[0]!);
    },
    { capture: true },
  );
}

function offerNow(injector: Injector, functions: readonly IFunctionInfo[]): Offer | undefined {
  if (!injector.get(IEditorBridgeService).isVisible().visible) return undefined;
  const editor = injector.get(IEditorService).getFocusEditor();
  const [cursor] = editor?.getSelectionRanges() ?? [];
  if (editor === undefined || editor === null || cursor?.collapsed !== true) return undefined;
  const text = (editor.getDocumentData().body?.dataStream ?? "").replace(/\r\n$/, "");
  const at = argumentAt(text, cursor.startOffset);
  const known = functions.find(({ functionName }) => functionName === `${NAMESPACE}.${at?.name}`);
  if (at === undefined || known === undefined) return undefined;
  const parameter = known.functionParameter[at.index]?.name ?? "";
  const place = known.functionParameter.findIndex(({ name }) => name === "enclosure");
  const all = argumentValues({ name: at.name, parameter, enclosure: quotedText(at.before[place]) });
  const values = goingOn(all, at.typed);
  if (values.length === 0) return undefined;
  return {
    parameter,
    values,
    from: at.from,
    to: cursor.startOffset,
    begun: at.typed !== "",
    editor: editor.getEditorId(),
  };
}

function button(document: Document, value: string, press: () => void): HTMLButtonElement {
  const element = document.createElement("button");
  element.type = "button";
  element.textContent = value;
  // The keyboard stays in the cell.
  element.addEventListener("mousedown", (event) => event.preventDefault());
  element.addEventListener("click", press);
  return element;
}
