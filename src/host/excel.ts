/// <reference types="office-js" />

/**
 * Waits for Excel to answer the pane.
 *
 * @returns true inside Excel; false in a plain browser, and when Office.js did not load
 */
export async function excelAnswers(): Promise<boolean> {
  if (typeof Office === "undefined") return false;
  const { host } = await Office.onReady();
  return host === Office.HostType.Excel;
}
