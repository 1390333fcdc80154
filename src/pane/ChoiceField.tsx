import { useEffect, useRef, useState } from "preact/hooks";

export interface Option {
  readonly value: string;
  readonly label: string;
}

interface ChoiceFieldProps {
  readonly label: string;
  /** What is chosen; empty where nothing is. */
  readonly value: string;
  /** Says what holds where nothing is chosen; left out, something must be. */
  readonly usual?: string;
  readonly options: readonly Option[];
  /** What else can be written out, such as `a length such as 2`; left out, nothing. */
  readonly other?: string;
  readonly busy: boolean;
  readonly choose: (value: string) => void;
}

/** No value of a setting holds this sign. */
const OTHER = "\u0000";

/** A list to choose from; where other values are taken too, its last line opens a field to write one. */
export function ChoiceField({ label, value, usual, options, other, busy, choose }: ChoiceFieldProps) {
  const [writing, setWriting] = useState(false);
  if (writing)
    return (
      <Written
        label={label}
        value={value}
        hint={other ?? ""}
        done={(written) => {
          setWriting(false);
          if (written !== undefined && written !== value) choose(written);
        }}
      />
    );
  const isKnown = value === "" || options.some((option) => option.value === value);
  return (
    <label class="field">
      {label}
      <select
        value={value}
        aria-busy={busy}
        onChange={({ currentTarget }) => {
          const wanted = currentTarget.value;
          // Until the workbook has it, the list shows what the workbook has.
          currentTarget.value = value;
          if (wanted === OTHER) setWriting(true);
          else if (!busy) choose(wanted);
        }}
      >
        {usual !== undefined && <option value="">{usual}</option>}
        {!isKnown && <option value={value}>{value}</option>}
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
        {other !== undefined && <option value={OTHER}>other…</option>}
      </select>
    </label>
  );
}

interface WrittenProps {
  readonly label: string;
  readonly value: string;
  readonly hint: string;
  /** Called with nothing where it is given up. */
  readonly done: (written: string | undefined) => void;
}

function Written({ label, value, hint, done }: WrittenProps) {
  const input = useRef<HTMLInputElement>(null);
  useEffect(() => input.current?.focus(), []);
  const finish = () => done(input.current?.value.trim());
  return (
    <div
      class="field"
      onKeyDown={(event) => {
        if (event.key === "Escape") done(undefined);
        if (event.key !== "Enter" || event.target !== input.current) return;
        // It may be in a form of its own.
        event.preventDefault();
        finish();
      }}
    >
      <label class="field">
        {label}
        <input ref={input} defaultValue={value} />
      </label>
      <span class="quiet">{hint}</span>
      <span class="row">
        <button type="button" onClick={finish}>
          Set
        </button>
        <button type="button" onClick={() => done(undefined)}>
          Cancel
        </button>
      </span>
    </div>
  );
}
