import { render } from "preact";
import type { BookPort } from "../host/port";
import { Pane } from "./Pane";
import { paneModel } from "./paneModel";
import type { PanePlace } from "./viewProps";

/**
 * Puts the pane into an element: the same in Excel and beside the local workbook.
 *
 * @returns takes it out again
 */
export function mountPane(element: HTMLElement, port: BookPort, place: PanePlace): () => void {
  const model = paneModel(port);
  element.classList.add("enclosure-pane");
  render(<Pane model={model} place={place} />, element);
  void model.start();
  return () => {
    void model.stop();
    render(null, element);
  };
}
