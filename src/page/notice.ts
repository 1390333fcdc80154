import { elementById } from "./statusLine";

/** A button of a notice, and what it does; the notice goes away before. */
export interface Answer {
  readonly label: string;
  readonly act: () => void;
}

/**
 * Says something over the workbook that stays until it is answered.
 *
 * @returns takes it away
 */
export function notice(document: Document, text: string, answers: readonly Answer[]): () => void {
  const box = document.createElement("div");
  const close = (): void => box.remove();
  const said = document.createElement("p");
  said.role = "alert";
  box.append(
    said,
    ...answers.map(({ label, act }) => {
      const button = document.createElement("button");
      button.type = "button";
      button.textContent = label;
      button.addEventListener("click", () => {
        close();
        act();
      });
      return button;
    }),
  );
  elementById(document, "notices").append(box);
  // A text that comes after its place is read out.
  said.textContent = text;
  return close;
}
