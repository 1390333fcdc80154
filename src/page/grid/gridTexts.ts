import { mergeLocales } from "@univerjs/core";
import designTexts from "@univerjs/design/locale/en-US";
import docsTexts from "@univerjs/docs-ui/locale/en-US";
import findTexts from "@univerjs/find-replace/locale/en-US";
import conditionalUiTexts from "@univerjs/sheets-conditional-formatting-ui/locale/en-US";
import noteUiTexts from "@univerjs/sheets-note-ui/locale/en-US";
import formulaTexts from "@univerjs/sheets-formula/locale/en-US";
import formulaUiTexts from "@univerjs/sheets-formula-ui/locale/en-US";
import validationUiTexts from "@univerjs/sheets-data-validation-ui/locale/en-US";
import validationTexts from "@univerjs/sheets-data-validation/locale/en-US";
import filterUiTexts from "@univerjs/sheets-filter-ui/locale/en-US";
import numfmtTexts from "@univerjs/sheets-numfmt-ui/locale/en-US";
import sheetsTexts from "@univerjs/sheets/locale/en-US";
import sheetsUiTexts from "@univerjs/sheets-ui/locale/en-US";
import sortUiTexts from "@univerjs/sheets-sort-ui/locale/en-US";
import tableTexts from "@univerjs/sheets-table/locale/en-US";
import tableUiTexts from "@univerjs/sheets-table-ui/locale/en-US";
import uiTexts from "@univerjs/ui/locale/en-US";

/** The texts of the grid and its plugins. */
export function gridTexts() {
  return mergeLocales(
    designTexts,
    docsTexts,
    findTexts,
    conditionalUiTexts,
    noteUiTexts,
    formulaTexts,
    formulaUiTexts,
    filterUiTexts,
    validationTexts,
    validationUiTexts,
    numfmtTexts,
    sheetsTexts,
    sheetsUiTexts,
    sortUiTexts,
    tableTexts,
    tableUiTexts,
    uiTexts,
    PLAINER_TEXTS,
  );
}

/** The words of a filter, of a table and of a range. */
const PLAIN_FILTER = {
  "by-values": "By value",
  "by-conditions": "By rule",
  "clear-filter": "Show all rows",
  confirm: "Show these rows",
  "search-placeholder": "Words to look for, with spaces between",
  "select-all": "All",
};

/** What the grid says in words of every day, and of a sort in words that tell what will happen to the rows. */
const PLAINER_TEXTS = {
  "sheets-ui": {
    ...sheetsUiTexts["sheets-ui"],
    rightClick: {
      ...sheetsUiTexts["sheets-ui"].rightClick,
      insertRowsAfterSuffix: "rows below",
      insertColsLeftSuffix: "columns left",
      insertColsRightSuffix: "columns right",
      deleteSelectedRow: "Delete the selected rows",
      deleteSelectedColumn: "Delete the selected columns",
      hideSelectedRow: "Hide the selected rows",
      hideSelectedColumn: "Hide the selected columns",
      showHideRow: "Show hidden rows",
      showHideColumn: "Show hidden columns",
      rowHeight: "Row height",
      columnWidth: "Column width",
      fitContent: "As large as the contents",
    },
    statusbar: { ...sheetsUiTexts["sheets-ui"].statusbar, count: "Numbers", countA: "Cells filled" },
  },
  "find-replace": {
    ...findTexts["find-replace"],
    dialog: {
      ...findTexts["find-replace"].dialog,
      title: "Find and replace",
      "find-placeholder": "Words or a number",
      "replace-placeholder": "What comes in its place",
      "replace-all": "Replace all",
      "case-sensitive": "Capitals count",
      "match-the-whole-cell": "Whole cells alone",
      "find-direction": { title: "In which order", row: "Row by row", column: "Column by column" },
      "find-scope": { title: "Where", "current-sheet": "This sheet", workbook: "All sheets" },
      "find-by": { title: "In what", value: "Values", formula: "Formulas" },
      "no-match": "That was the last. No more is found.",
      "no-result": "Not found",
    },
    replace: {
      ...findTexts["find-replace"].replace,
      "all-success": "Replaced {0}",
      "all-failure": "Nothing was replaced",
      confirm: { title: "Replace all that is found?" },
    },
  },
  "sheets-filter-ui": {
    ...filterUiTexts["sheets-filter-ui"],
    panel: { ...filterUiTexts["sheets-filter-ui"].panel, ...PLAIN_FILTER },
  },
  "sheets-table-ui": {
    ...tableUiTexts["sheets-table-ui"],
    filter: { ...tableUiTexts["sheets-table-ui"].filter, ...PLAIN_FILTER },
    columnMenu: {
      "insert-left": "Insert a column left",
      "insert-right": "Insert a column right",
      delete: "Delete this column",
    },
  },
  "sheets-sort-ui": {
    ...sortUiTexts["sheets-sort-ui"],
    general: {
      ...sortUiTexts["sheets-sort-ui"].general,
      "sort-asc": "Selected cells alone, A to Z",
      "sort-asc-cur": "Selected cells alone, A to Z",
      "sort-desc": "Selected cells alone, Z to A",
      "sort-desc-cur": "Selected cells alone, Z to A",
      "sort-asc-ext": "Whole rows, A to Z",
      "sort-desc-ext": "Whole rows, Z to A",
      "sort-custom": "Whole rows, by several columns",
    },
    dialog: {
      ...sortUiTexts["sheets-sort-ui"].dialog,
      "sort-reminder": "Sort which rows?",
      "sort-reminder-desc": "Rows are sorted whole, so that every item stays together.",
      "sort-reminder-ext": "Everything around the selected rows, the headings too",
      "sort-reminder-no": "The selected rows, without the headings",
    },
  },
};
