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

/** What the grid says of a sort, in words that tell what will happen to the rows. */
const PLAINER_TEXTS = {
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
