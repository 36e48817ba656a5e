import { type Problem, readSetup, SetupError } from '../../quillpath.ts';
import { type Entry, withEntry, without } from '../../setup/edit-entries.ts';
import { isWellFormed, typedValues } from '../../setup/typed-values.ts';
import { withValues } from '../../setup/write.ts';
import { changed, type History, newHistory, redone, settled, undone } from './history.ts';
import { type Observed, observed } from './observed.ts';

/** The setup that is open: its text is the only truth, all else is read from it. */
export interface OpenText {
  readonly id: string;
  readonly name: string;
  readonly history: History;
  readonly revision: number;
}

/** What a text says, as far as it can be read. */
interface Reading {
  readonly text: string;
  readonly name: string;
  readonly problems: readonly Problem[];
  readonly title: string | null;
}

export interface Workbench {
  readonly open: Observed<OpenText>;
  readonly reading: () => Reading;
  readonly values: () => ReadonlyMap<string, string>;
  readonly write: (text: string, changing?: string | null) => void;
  /** Puts a value at a key, or takes the key away when nothing is typed. @returns why not, or null */
  readonly put: (path: string, value: string) => string | null;
  /** An entry more at the end of a list of the file's top level. @returns why not, or null */
  readonly add: (list: string, entry: Entry) => string | null;
  /** Takes away what stands at a path. @returns why not, or null */
  readonly remove: (path: string) => string | null;
  readonly settle: () => void;
  readonly undo: () => void;
  readonly redo: () => void;
  readonly take: (id: string, name: string, text: string, revision?: number) => void;
}

/** A text that holds nothing but a place to write. */
export const BLANK = 'title: My bow\n';

/** Keys and numbers of entries as the setup's own functions take them. */
const stepsOf = (path: string): readonly (string | number)[] =>
  path.split('.').map((step) => (/^\d+$/.test(step) ? Number(step) : step));

function read(text: string, name: string): Reading {
  try {
    const setup = readSetup(text, name);
    return { text, name, problems: [], title: setup.title ?? null };
  } catch (error) {
    if (error instanceof SetupError) return { text, name, problems: error.problems, title: null };
    throw error;
  }
}

export function workbench(first: OpenText): Workbench {
  const open = observed(first);
  let lastReading: Reading | undefined;
  let lastValues: { readonly text: string; readonly values: ReadonlyMap<string, string> } | undefined;
  const step = (history: History) => open.set({ ...open.value(), history });
  const write = (text: string, changing: string | null = null) =>
    step(changed(open.value().history, text, changing));
  /** Changes the text by a view of it, which a text with a mistake in its signs and spaces does not allow. */
  const changing = (changed: (text: string) => string, key: string | null = null): string | null => {
    const now = open.value().history.text;
    const text = now.trim() === '' ? BLANK : now;
    if (!isWellFormed(text)) return 'The text beside has a mistake; put it right first.';
    try {
      write(changed(text), key);
      return null;
    } catch (error) {
      return error instanceof Error ? error.message : String(error);
    }
  };
  return {
    open,
    write,
    reading: () => {
      const { name, history } = open.value();
      if (lastReading?.text !== history.text || lastReading.name !== name)
        lastReading = read(history.text, name);
      return lastReading;
    },
    values: () => {
      const { text } = open.value().history;
      if (lastValues?.text !== text) lastValues = { text, values: typedValues(text) };
      return lastValues.values;
    },
    put: (path, value) => {
      const steps = stepsOf(path);
      return changing(
        (text) => (value.trim() === '' ? without(text, steps) : withValues(text, [{ path: steps, value }])),
        path,
      );
    },
    add: (list, entry) => changing((text) => withEntry(text, list, entry)),
    remove: (path) => changing((text) => without(text, stepsOf(path))),
    settle: () => step(settled(open.value().history)),
    undo: () => step(undone(open.value().history)),
    redo: () => step(redone(open.value().history)),
    take: (id, name, text, revision = 1) => open.set({ id, name, history: newHistory(text), revision }),
  };
}
