/** What the grid types and shows its menus with: a separate script, read in parallel with the others. */
export { IEditorService, UniverDocsUIPlugin } from "@univerjs/docs-ui";
export { ILayoutService, UniverUIPlugin } from "@univerjs/ui";
