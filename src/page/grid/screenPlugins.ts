/** What the grid types and shows its menus with: a script of its own (webpack.config.js), read beside the others. */
export { UniverDocsUIPlugin } from "@univerjs/docs-ui";
export { ILayoutService, UniverUIPlugin } from "@univerjs/ui";
