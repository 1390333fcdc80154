import { elementById } from "./statusLine";

/** The question for the name of a new file. */
export interface NameQuestion {
  /** Shows it with a name to begin with; `act` runs when the user agrees, and not when they leave it. */
  readonly ask: (name: string, act: () => void) => void;
  /** As it was agreed to last. */
  readonly name: () => string;
}

/** A box over the page, which keeps the keyboard until it is answered; Escape leaves it. */
export function askName(document: Document): NameQuestion {
  const box = elementById<HTMLDialogElement>(document, "naming");
  const typed = elementById<HTMLInputElement>(document, "new-name");
  let agreed: () => void = () => undefined;
  box.addEventListener("close", () => {
    if (box.returnValue === "save") agreed();
  });
  return {
    ask(name, act) {
      agreed = act;
      typed.value = name;
      box.returnValue = "";
      box.showModal();
      typed.select();
    },
    name: () => typed.value,
  };
}
