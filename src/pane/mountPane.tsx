import { render } from "preact";
import type { BookPort } from "../host/port";
import { Pane } from "./Pane";
import { paneModel } from "./paneModel";

/** What a host lends the pane besides the workbook. */
export interface PanePlace {
  /** The script that plans in a worker. */
  readonly planWorker: string;
  /** The folder of the fonts for printing, with a slash at its end. */
  readonly fonts: string;
}

/** Puts the pane into an element: the same in Excel and beside the local workbook. */
export function mountPane(element: HTMLElement, port: BookPort, place: PanePlace): void {
  const model = paneModel(port);
  element.classList.add("enclosure-pane");
  render(<Pane model={model} place={place} />, element);
  void model.start();
}
