import { LifecycleService, LifecycleStages, LocaleType, LogLevel, Univer, type Injector } from "@univerjs/core";
import { FUniver } from "@univerjs/core/facade";
import { defaultTheme } from "@univerjs/themes";
import { UniverDocsPlugin } from "@univerjs/docs";
import { UniverSheetsDataValidationPlugin } from "@univerjs/sheets-data-validation";
import { UniverSheetsDataValidationUIPlugin } from "@univerjs/sheets-data-validation-ui";
import { UniverSheetsFilterPlugin } from "@univerjs/sheets-filter";
import { UniverSheetsFilterUIPlugin } from "@univerjs/sheets-filter-ui";
import { UniverFindReplacePlugin } from "@univerjs/find-replace";
import { UniverSheetsConditionalFormattingPlugin } from "@univerjs/sheets-conditional-formatting";
import { UniverSheetsConditionalFormattingUIPlugin } from "@univerjs/sheets-conditional-formatting-ui";
import { UniverSheetsFindReplacePlugin } from "@univerjs/sheets-find-replace";
import { UniverSheetsNotePlugin } from "@univerjs/sheets-note";
import { UniverSheetsNoteUIPlugin } from "@univerjs/sheets-note-ui";
import { UniverSheetsFormulaUIPlugin } from "@univerjs/sheets-formula-ui";
import { UniverSheetsNumfmtPlugin } from "@univerjs/sheets-numfmt";
import { UniverSheetsNumfmtUIPlugin } from "@univerjs/sheets-numfmt-ui";
import { UniverSheetsSortPlugin } from "@univerjs/sheets-sort";
import { UniverSheetsSortUIPlugin } from "@univerjs/sheets-sort-ui";
import { UniverSheetsTablePlugin } from "@univerjs/sheets-table";
import { UniverSheetsTableUIPlugin } from "@univerjs/sheets-table-ui";
import { UniverSheetsUIPlugin } from "@univerjs/sheets-ui";
import "@univerjs/ui/facade";
import "@univerjs/docs-ui/facade";
import "@univerjs/sheets/facade";
import "@univerjs/sheets-ui/facade";
import "@univerjs/engine-formula/facade";
import "@univerjs/sheets-formula/facade";
import "@univerjs/sheets-formula-ui/facade";
import "@univerjs/sheets-numfmt/facade";
import "@univerjs/sheets-filter/facade";
import "@univerjs/sheets-sort/facade";
import "@univerjs/sheets-table/facade";
import type { IFunctionInfo } from "@univerjs/engine-formula";
import { BOOK_ID, TABLE_STYLE } from "../gridTerms";
import { keepDialogs } from "./keepDialogs";
import {
  CalculationMode,
  IRenderManagerService,
  UniverFormulaEnginePlugin,
  UniverRenderEnginePlugin,
  UniverSheetsFormulaPlugin,
  UniverSheetsPlugin,
} from "./enginePlugins";
import { takeFreshSuggestionsOnly } from "./freshSuggestions";
import { offerValues } from "./offerValues";
import { HIDDEN_MENUS } from "./refusedCommands";
import { ILayoutService, UniverDocsUIPlugin, UniverUIPlugin } from "./screenPlugins";
import { gridTexts } from "./gridTexts";

/** The spreadsheet of the page. */
export interface Grid {
  readonly api: FUniver;
  readonly injector: Injector;
  /** Draws the workbook, and makes its formulas live. */
  readonly draw: () => Promise<void>;
  /** Gives the keyboard to the cells. */
  readonly focus: () => void;
}

export interface GridOptions {
  readonly container: HTMLElement;
  /** Where the values of an argument are offered. */
  readonly values: HTMLElement;
  readonly dark: boolean;
  /** What to tell of our functions while they are typed. */
  readonly functions: readonly IFunctionInfo[];
}

/** Makes an empty spreadsheet in the page. */
export function createGrid({ container, values, dark, functions }: GridOptions): Grid {
  const univer = new Univer({
    locale: LocaleType.EN_US,
    locales: { [LocaleType.EN_US]: gridTexts() },
    logLevel: LogLevel.WARN,
    darkMode: dark,
    theme: { ...defaultTheme, primary: TEAL },
  });
  const injector = univer.__getInjector();
  takeFreshSuggestionsOnly(injector);
  offerValues(injector, functions, values);
  univer.registerPlugin(UniverDocsPlugin);
  univer.registerPlugin(UniverRenderEnginePlugin);
  univer.registerPlugin(UniverUIPlugin, { container, header: true, toolbar: false, menu: HIDDEN_MENUS });
  univer.registerPlugin(UniverDocsUIPlugin);
  univer.registerPlugin(UniverFormulaEnginePlugin);
  univer.registerPlugin(UniverSheetsPlugin);
  univer.registerPlugin(UniverSheetsUIPlugin, {
    formulaBar: true,
    footer: { sheetBar: true, statisticBar: true, menus: false, zoomSlider: true },
    disableForceStringAlert: true,
    disableForceStringMark: true,
    menu: HIDDEN_MENUS,
  });
  univer.registerPlugin(UniverSheetsNumfmtPlugin, { disableTextFormatAlert: true, disableTextFormatMark: true });
  univer.registerPlugin(UniverSheetsNumfmtUIPlugin, { menu: HIDDEN_MENUS });
  univer.registerPlugin(UniverSheetsFormulaPlugin, {
    initialFormulaComputing: CalculationMode.NO_CALCULATION,
    description: [...functions],
  });
  univer.registerPlugin(UniverSheetsFormulaUIPlugin);
  univer.registerPlugin(UniverSheetsDataValidationPlugin);
  univer.registerPlugin(UniverSheetsDataValidationUIPlugin, { menu: HIDDEN_MENUS, showEditOnDropdown: false });
  univer.registerPlugin(UniverSheetsConditionalFormattingPlugin);
  univer.registerPlugin(UniverSheetsConditionalFormattingUIPlugin, { menu: HIDDEN_MENUS });
  univer.registerPlugin(UniverSheetsNotePlugin);
  univer.registerPlugin(UniverSheetsNoteUIPlugin, { menu: HIDDEN_MENUS });
  univer.registerPlugin(UniverFindReplacePlugin);
  univer.registerPlugin(UniverSheetsFindReplacePlugin);
  univer.registerPlugin(UniverSheetsFilterPlugin);
  univer.registerPlugin(UniverSheetsFilterUIPlugin, { menu: HIDDEN_MENUS });
  univer.registerPlugin(UniverSheetsSortPlugin);
  univer.registerPlugin(UniverSheetsSortUIPlugin, { menu: HIDDEN_MENUS });
  univer.registerPlugin(UniverSheetsTablePlugin, { userThemes: [QUIET_TABLE] });
  univer.registerPlugin(UniverSheetsTableUIPlugin, { hideAnchor: true, menu: HIDDEN_MENUS });
  const api = FUniver.newAPI(univer);
  // By default the grid waits a third of a second after its screen has come, and then does the same.
  const draw = async (): Promise<void> => {
    const screen = injector.get(ILayoutService);
    while (screen.getContentElement() === undefined) await nextFrame();
    keepDialogs(injector);
    injector.get(IRenderManagerService).getRenderById(BOOK_ID)?.engine.mount(screen.getContentElement());
    // The next frame draws, and the one after that comes when it is done.
    await nextFrame();
    await nextFrame();
    // Until what takes the keys is there, they would be lost.
    while (document.getElementById(KEYBOARD) === null) await nextFrame();
    const life = injector.get(LifecycleService);
    if (life.stage < LifecycleStages.Rendered) life.stage = LifecycleStages.Rendered;
  };
  return { api, injector, draw, focus: () => injector.get(ILayoutService).focus() };
}

/** The grid's part that takes what is typed. */
const KEYBOARD = "__editor___INTERNAL_EDITOR__DOCS_NORMAL";

/** The accent of the page (`--accent` in page.css), lighter and darker. */
const TEAL = {
  50: "#eef6f5",
  100: "#d9ebe9",
  200: "#b5d8d4",
  300: "#8cc2bd",
  400: "#5aa39d",
  500: "#37857f",
  600: "#1f6b66",
  700: "#1f5f5b",
  800: "#194b48",
  900: "#123634",
};

/** A band behind the headings and no more: the file's own fills stay in sight. */
const QUIET_TABLE = {
  name: TABLE_STYLE,
  style: { headerRowStyle: { bg: { rgb: "#e6e1d8" }, cl: { rgb: "#23211e" } } },
};

function nextFrame(): Promise<unknown> {
  return new Promise(requestAnimationFrame);
}
