import { CanceledError, ICommandService, type Injector } from "@univerjs/core";

/** Commands that a save could not carry, with what the page says instead. */
const REFUSED: readonly (readonly [commands: RegExp, why: string])[] = [
  [
    /^sheet\.command\.(insert-range|delete-range-move|move-(rows|cols)|table-insert-row-at|append-row)/,
    "Parts of rows cannot be inserted, moved or deleted here: formulas, charts and names would lose their places. Insert or delete whole rows or columns.",
  ],
  [
    /^sheet\.command\.(copy-sheet|set-worksheet-(name|order|hidden|show|right-to-left)|remove-sheet|set-tab-color)/,
    "Sheets of the file cannot be renamed, moved, hidden, copied or deleted here. Do that in your spreadsheet program.",
  ],
  [
    /^sheet\.command\.(set-(range-)?(bold|italic|underline|stroke|strike-through|overline|subscript|superscript|font|fontsize|text-color|text-rotation|text-wrap|background-color|border|horizontal|vertical|style)|set-(once|infinite)-format|apply-format|reset-|paste-format|clear-selection-format|add-worksheet-merge|remove-worksheet-merge|set-worksheet-default-style|set-gridlines)/,
    "The look of cells (bold, colours, borders, merged cells) cannot be changed here. Change it in your spreadsheet program.",
  ],
  [
    /^sheet\.command\.(add-table|delete-table|set-table-config|(add|remove)-table-theme|(insert|set|remove)-defined-name)/,
    "Tables and names of the file cannot be changed here. Change them in your spreadsheet program.",
  ],
  [
    /^(data-validation\.command\.|sheet\.command\.((update|add)DataValidation|remove-(all-)?data-validation))/,
    "Lists of choices cannot be changed here. Change them in your spreadsheet program.",
  ],
  [
    /^sheet\.command\.(.*-conditional-rule|conditional-formatting.*|(update|delete|toggle)-note.*)$|^sheet\.operation\.(open\.conditional\.formatting\.panel|add-note-popup)$/,
    "Conditional formats and comments cannot be changed here. Change them in your spreadsheet program.",
  ],
  [
    /^sheet\.command\.(add|set|delete|change|view)-?.*(protection|permission)/,
    "Protection cannot be changed here. Change it in your spreadsheet program.",
  ],
];

/**
 * Refuses, before anything changes, what a save could not carry.
 *
 * @param say shows the user why
 */
export function refuseCommands(injector: Injector, say: (why: string) => void): void {
  injector.get(ICommandService).beforeCommandExecuted(({ id }) => {
    const refused = REFUSED.find(([commands]) => commands.test(id));
    if (refused === undefined) return;
    say(refused[1]);
    throw new CanceledError();
  });
}

/** What changes cells, widths, heights or frozen parts, beside what is refused in any sheet. */
const CHANGING =
  /^sheet\.command\.(set-range-values|clear-selection|auto-(fill|clear)|refill|copy-(down|right|formula)|cut|paste|optional-paste|sort-range|reorder-range|move-range|numfmt|split-text|text-to-number|toggle-cell|repeat-last|(delta|set)-(worksheet-)?(col(umn)?-(auto-)?width|row-(auto-)?height|row-is-auto-height)|hide-(row|col)-confirm|set-(rows|col)-hidden|set-(col-visible-on-cols|selected-(cols|rows)-visible|specific-rows-visible)|cancel-frozen|set-((row|col|selection|first-row|first-column)-)?frozen)|^(univer|sheet)\.command\.(cut|paste)|^formula-ui\.operation\.insert-function|^sheet\.operation\.set-cell-edit-visible/;

/**
 * Refuses, before anything changes, what would change a protected sheet: a save keeps it as it is.
 *
 * @param lockedSheet name of the sheet that the command is for, if it is protected
 * @param say shows the user why
 */
export function refuseLockedChanges(
  injector: Injector,
  lockedSheet: (sheetId: string | undefined) => string | undefined,
  say: (why: string) => void,
): void {
  injector.get(ICommandService).beforeCommandExecuted(({ id, params }) => {
    if (!CHANGING.test(id)) return;
    const { visible, subUnitId } = (params ?? {}) as { readonly visible?: boolean; readonly subUnitId?: string };
    // Leaving a cell is no change.
    if (visible === false) return;
    const name = lockedSheet(subUnitId);
    if (name === undefined) return;
    say(`The sheet "${name}" is protected and stays as it is. To change it, unprotect it in your spreadsheet program.`);
    throw new CanceledError();
  });
}

/** Entries of the grid's own menus for what is refused. */
export const HIDDEN_MENUS: Readonly<Record<string, { readonly hidden: boolean }>> = Object.fromEntries(
  [
    "sheet.command.insert-range-move-right-confirm",
    "sheet.command.insert-range-move-down-confirm",
    "sheet.command.delete-range-move-left-confirm",
    "sheet.command.delete-range-move-up-confirm",
    "sheet.operation.add-note-popup",
    "sheet.command.delete-note",
    "sheet.command.toggle-note-popup",
    "sheet.menu.sheets-sort-ctx-hidden",
    "sheet.contextMenu.permission",
    "sheet.command.copy-sheet",
    "sheet.command.remove-sheet-confirm",
    "sheet.command.set-worksheet-hidden",
    "sheet.command.set-tab-color",
    "sheet.operation.rename-sheet",
    "sheet.command.add-worksheet-merge",
    "ui-sheet.command.show-menu-list",
    "sheet.command.add-range-protection-from-sheet-bar",
    "sheet.command.delete-worksheet-protection-from-sheet-bar",
    "sheet.command.change-sheet-protection-from-sheet-bar",
    "sheet.command.view-sheet-permission-from-sheet-bar",
  ].map((id) => [id, { hidden: true }]),
);
