import { useEffect, useMemo, useRef, useState } from "preact/hooks";
import { helpTopics, topicsFor } from "./helpTopics";
import type { ViewName } from "./viewProps";

interface HelpProps {
  readonly view: ViewName;
  readonly close: () => void;
}

/** Topics shown at once. */
const MOST_TOPICS = 12;

/** Help for the view that is open, and for whatever is looked for. */
export function HelpPanel({ view, close }: HelpProps) {
  const [question, setQuestion] = useState("");
  const input = useRef<HTMLInputElement>(null);
  useEffect(() => input.current?.focus(), []);
  const topics = useMemo(helpTopics, []);
  const asked = question.trim() !== "";
  const found = asked ? topicsFor(question, topics) : topics.filter(({ about }) => about === view);
  return (
    <section
      id="help"
      class="helping"
      aria-label={`Help: ${view}`}
      onKeyDown={({ key }) => key === "Escape" && question === "" && close()}
    >
      <label class="field">
        Help: {view}. Or look for something
        <input
          ref={input}
          type="search"
          value={question}
          placeholder="such as fit, turn-in, clamshell"
          onInput={(event) => setQuestion(event.currentTarget.value)}
        />
      </label>
      {found.length === 0 && <p>Nothing has these words. Try one word, such as board.</p>}
      <dl>
        {found.slice(0, MOST_TOPICS).map(({ about, title, text }) => (
          <div key={`${about} ${title}`}>
            <dt>
              {title} {asked && <span class="quiet">{about}</span>}
            </dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
      {found.length > MOST_TOPICS && <p class="quiet">{found.length - MOST_TOPICS} more: add a word.</p>}
    </section>
  );
}
