/** What the grid calculates and draws with: a separate script, read in parallel with the others. */
export { UniverFormulaEnginePlugin } from "@univerjs/engine-formula";
export { IRenderManagerService, UniverRenderEnginePlugin } from "@univerjs/engine-render";
export { UniverSheetsPlugin } from "@univerjs/sheets";
export { CalculationMode, UniverSheetsFormulaPlugin } from "@univerjs/sheets-formula";
