import { useRef, useState } from "preact/hooks";
import type { Picture } from "../drawing/picture";
import { Drawing } from "./Drawing";

interface EnlargedProps {
  readonly picture: Picture;
  /** The same drawing with more room; it is made when it is asked for. */
  readonly large: () => Picture;
}

/** A drawing that a press on it or on its button shows over the whole window; Escape or another press closes it. */
export function Enlarged({ picture, large }: EnlargedProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const [open, setOpen] = useState(false);
  const show = () => {
    setOpen(true);
    dialog.current?.showModal();
  };
  return (
    <>
      <div class="enlarge" onClick={show}>
        <Drawing picture={picture} />
      </div>
      <button type="button" class="enlarge" aria-label={`Enlarge: ${picture.title}`} onClick={show}>
        Enlarge
      </button>
      <dialog ref={dialog} class="enlarged" aria-label={picture.title} onClose={() => setOpen(false)}>
        {open && (
          <>
            <Drawing picture={large()} />
            <button type="button" onClick={() => dialog.current?.close()}>
              Close
            </button>
          </>
        )}
      </dialog>
    </>
  );
}
