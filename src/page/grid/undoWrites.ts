import { CanceledError, ICommandService, IUndoRedoService, type Injector } from "@univerjs/core";

/** Where the grid has no step of its own left to undo, the last write into the file is taken back. */
export function undoWrites(injector: Injector, takeBack: () => void): void {
  injector.get(ICommandService).beforeCommandExecuted(({ id }) => {
    if (id !== "univer.command.undo" || injector.get(IUndoRedoService).pitchTopUndoElement()) return;
    takeBack();
    throw new CanceledError();
  });
}
