/** What the grid calculates and draws with: a script of its own (webpack.config.js), read beside the others. */
export { UniverFormulaEnginePlugin } from "@univerjs/engine-formula";
export { IRenderManagerService, UniverRenderEnginePlugin } from "@univerjs/engine-render";
export { UniverSheetsPlugin } from "@univerjs/sheets";
export { CalculationMode, UniverSheetsFormulaPlugin } from "@univerjs/sheets-formula";
