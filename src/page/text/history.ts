/** A text with what it was before and after: undo and redo are texts. */
export interface History {
  readonly before: readonly string[];
  readonly text: string;
  readonly after: readonly string[];
  /** What the last step changed; a step that goes on with the same is one with it. */
  readonly changing: string | null;
}

/** More steps back than anyone takes; it bounds the memory of a long evening. */
const MOST_STEPS = 500;

export const newHistory = (text: string): History => ({ before: [], text, after: [], changing: null });

/** @param changing what is being changed, a key or the text itself, so that letters of one number make one step */
export function changed(history: History, text: string, changing: string | null): History {
  if (text === history.text) return history;
  const goesOn = changing !== null && changing === history.changing;
  const before = goesOn ? history.before : [...history.before, history.text].slice(-MOST_STEPS);
  return { before, text, after: [], changing };
}

/** Where a step ends although the next may change the same thing: when a field is left. */
export const settled = (history: History): History => ({ ...history, changing: null });

export function undone({ before, text, after, changing }: History): History {
  const last = before.at(-1);
  if (last === undefined) return { before, text, after, changing };
  return { before: before.slice(0, -1), text: last, after: [text, ...after], changing: null };
}

export function redone({ before, text, after, changing }: History): History {
  const [next, ...rest] = after;
  if (next === undefined) return { before, text, after, changing };
  return { before: [...before, text], text: next, after: rest, changing: null };
}
