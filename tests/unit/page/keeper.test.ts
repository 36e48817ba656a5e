import { beforeEach, describe, expect, it } from 'vitest';
import { newHistory } from '../../../src/page/text/history.ts';
import { keeper } from '../../../src/page/text/keeper.ts';
import type { Kept, Shelf } from '../../../src/page/text/kept.ts';
import { workbench } from '../../../src/page/text/workbench.ts';

/** A device's store as two tabs share it. */
function sharedShelf(hasRoom = true) {
  const stored = new Map<string, Kept>();
  const shelf: Shelf = {
    all: async () => [...stored.values()],
    keep: async (kept) => {
      if (!hasRoom) throw new Error('full');
      const there = stored.get(kept.id);
      const isNewer = there === undefined || there.revision === kept.revision - 1 || there.text === kept.text;
      if (isNewer) stored.set(kept.id, kept);
      return isNewer;
    },
    remove: async (id) => {
      stored.delete(id);
    },
  };
  return { stored, shelf };
}

async function tab(shelf: Shelf) {
  const said: string[] = [];
  const bench = workbench({ id: 'new', name: 'bow.yaml', history: newHistory('title: x\n'), revision: 1 });
  const keep = keeper(
    bench,
    shelf,
    (words) => said.push(words),
    () => {},
  );
  for (const { id, name, text, revision } of await keep.load()) bench.take(id, name, text, revision);
  return { bench, keep, said };
}

describe('nothing is lost', () => {
  let shared: ReturnType<typeof sharedShelf>;
  beforeEach(() => {
    shared = sharedShelf();
  });

  it('every change is kept, and the next visit finds it', async () => {
    const first = await tab(shared.shelf);
    first.bench.write('title: y\n');
    first.bench.write('title: z\n');
    await first.keep.settled();
    const again = await tab(shared.shelf);
    expect(again.bench.open.value().history.text).toBe('title: z\n');
    again.bench.write('title: w\n');
    await again.keep.settled();
    expect([...shared.stored.values()].map(({ text }) => text)).toEqual(['title: w\n']);
  });

  it('a second tab that changes the same setup goes on as a copy', async () => {
    const first = await tab(shared.shelf);
    first.bench.write('title: y\n');
    await first.keep.settled();
    const [one, two] = [await tab(shared.shelf), await tab(shared.shelf)];
    one.bench.write('title: one\n');
    await one.keep.settled();
    two.bench.write('title: two\n');
    await two.keep.settled();
    expect([...shared.stored.values()].map(({ text }) => text).sort()).toEqual([
      'title: one\n',
      'title: two\n',
    ]);
    expect(two.said.join()).toContain('Another tab');
    two.bench.write('title: two more\n');
    await two.keep.settled();
    expect([...shared.stored.values()].map(({ text }) => text).sort()).toEqual([
      'title: one\n',
      'title: two more\n',
    ]);
  });

  it('a device without room says so', async () => {
    const { bench, keep, said } = await tab(sharedShelf(false).shelf);
    bench.write('title: y\n');
    await keep.settled();
    expect(said.join()).toContain('no room');
    expect(bench.open.value().history.text).toBe('title: y\n');
  });
});

describe('a form field is a view of the text', () => {
  it('writes its key and nothing else, and takes it away when it is emptied', async () => {
    const { bench } = await tab(sharedShelf().shelf);
    bench.write('title: x   # mine\nlaunch: { speed: 280 fps } # cold\n');
    bench.put('launch.speed', '283 fps');
    expect(bench.open.value().history.text).toBe('title: x   # mine\nlaunch: { speed: 283 fps } # cold\n');
    expect(bench.values().get('launch.speed')).toBe('283 fps');
    bench.put('launch.speed', '');
    expect(bench.open.value().history.text).toBe('title: x   # mine\n');
  });
  it('writes nothing into a text that cannot be read', async () => {
    const { bench } = await tab(sharedShelf().shelf);
    bench.write('title: [\n');
    expect(bench.put('launch.speed', '283 fps')).toContain('mistake');
    expect(bench.open.value().history.text).toBe('title: [\n');
  });
});
