import type { Saving } from "../host/excelPlace";
import type { PaneModel, PaneState, PaneSurvey } from "./paneState";

/** What a host gives the pane in addition to the workbook. */
export interface PanePlace {
  /** The script that plans in a worker. */
  readonly planWorker: string;
  /** The folder of the fonts for printing, with a slash at its end. */
  readonly fonts: string;
  /** How a page may save a file here; undefined where it is a download, as in any browser. */
  readonly saving?: Saving;
  /** Lets the user choose a file to open; undefined where the workbook is the host's to open. */
  readonly openFile?: () => void;
}

export type ViewName = "This item" | "Columns" | "Problems" | "Board and cost" | "Store" | "Set up";

/** What each view is given. */
export interface ViewProps {
  readonly model: PaneModel;
  readonly survey: PaneSurvey;
  readonly state: PaneState;
  readonly place: PanePlace;
  readonly open: (view: ViewName) => void;
}
