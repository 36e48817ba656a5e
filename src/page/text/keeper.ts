import type { Kept, Shelf } from './kept.ts';
import type { OpenText, Workbench } from './workbench.ts';

/** Keeps the open text on the device with every change, and knows what else is kept. */
export interface Keeper {
  readonly kept: () => readonly Kept[];
  readonly load: () => Promise<readonly Kept[]>;
  readonly remove: (id: string) => Promise<void>;
  /** Waits until all that was changed is kept. */
  readonly settled: () => Promise<void>;
}

export const newId = (): string =>
  crypto.randomUUID?.() ?? `${Date.now()}-${Math.random().toString(36).slice(2)}`;

/**
 * @param bench whose text is kept, each version in its turn
 * @param say told what a person must know: no room, or another tab that changed the same setup
 * @param changed called when the list of what is kept has changed
 */
export function keeper(
  bench: Workbench,
  shelf: Shelf,
  say: (words: string) => void,
  changed: () => void,
): Keeper {
  let all: readonly Kept[] = [];
  let chain: Promise<void> = Promise.resolve();
  let lastText = '';
  let lastId = '';
  const revisions = new Map<string, number>();

  const keep = async ({ id, name, history: { text } }: OpenText): Promise<void> => {
    const revision = (revisions.get(id) ?? all.find((each) => each.id === id)?.revision ?? 100) + 1;
    const kept: Kept = { id, name, text, revision, changed: Date.now() };
    try {
      if (await shelf.keep(kept)) {
        revisions.set(id, revision);
        all = [kept, ...all.filter((each) => each.id !== id)];
        changed();
        return;
      }
      // Another tab has changed it: ours is kept as a setup of its own, so that neither is lost.
      const copy = { ...kept, id: newId(), name: name.replace(/(\.\w+)?$/, ' (second)$1'), revision: 1 };
      await shelf.keep(copy);
      revisions.set(copy.id, 1);
      all = [copy, ...all];
      bench.open.set({ ...bench.open.value(), id: copy.id, name: copy.name });
      say('Another tab has changed this setup. Yours goes on as a copy of its own; both are kept.');
      changed();
    } catch {
      say(
        'This device has no room to keep the setup. Save it as a file, under Keep, before you leave the page.',
      );
    }
  };
  bench.open.watch((open) => {
    const { text } = open.history;
    if (open.id === lastId && text === lastText) return;
    const isNew = open.id !== lastId;
    lastId = open.id;
    lastText = text;
    // What was only opened is not yet changed.
    if (isNew && all.some((each) => each.id === open.id && each.text === text)) return;
    chain = chain.then(() => keep(bench.open.value()));
  });
  return {
    kept: () => all,
    load: async () => {
      try {
        all = await shelf.all();
      } catch {
        say('This browser keeps nothing here. Save your setup as a file before you leave the page.');
      }
      return all;
    },
    remove: async (id) => {
      await shelf.remove(id).catch(() => say('It could not be removed.'));
      all = all.filter((each) => each.id !== id);
      changed();
    },
    settled: () => chain,
  };
}
