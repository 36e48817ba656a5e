import { type Problem, readSetup, SetupError } from '../../quillpath.ts';
import { without } from '../../setup/edit-entries.ts';
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
  readonly settle: () => void;
  readonly undo: () => void;
  readonly redo: () => void;
  readonly take: (id: string, name: string, text: string, revision?: number) => void;
}

/** A text that holds nothing but a place to write. */
export const BLANK = 'title: My bow\n';

/** Keys and numbers of entries as the setup's own functions take them. */
export const stepsOf = (path: string): readonly (string | number)[] =>
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
      const now = open.value().history.text;
      const text = now.trim() === '' ? BLANK : now;
      if (!isWellFormed(text)) return 'The text beside has a mistake; put it right first.';
      const steps = stepsOf(path);
      try {
        write(value.trim() === '' ? without(text, steps) : withValues(text, [{ path: steps, value }]), path);
        return null;
      } catch (error) {
        return error instanceof Error ? error.message : String(error);
      }
    },
    settle: () => step(settled(open.value().history)),
    undo: () => step(undone(open.value().history)),
    redo: () => step(redone(open.value().history)),
    take: (id, name, text, revision = 1) => open.set({ id, name, history: newHistory(text), revision }),
  };
}
