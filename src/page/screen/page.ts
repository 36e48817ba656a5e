import type { Named } from '../answers/answer.ts';
import { asker } from '../answers/asker.ts';
import { firstMinutes } from '../first/first-minutes.ts';
import { chooseFiles, readFiles, saveFile, takeDropped } from '../keep/files.ts';
import { element } from '../show/element.ts';
import { newHistory } from '../text/history.ts';
import { keeper, newId } from '../text/keeper.ts';
import type { Kept } from '../text/kept.ts';
import { observed } from '../text/observed.ts';
import { deviceShelf } from '../text/shelf.ts';
import { problemList, textEditor } from '../text/text-editor.ts';
import { BLANK, workbench } from '../text/workbench.ts';
import { bowArea } from './bow-area.ts';
import type { Desk } from './desk.ts';
import { looks, rememberedUnits } from './looks.ts';
import { keepOffline } from './offline.ts';
import { shell } from './shell.ts';

/** Areas that come with the second script, in their order on the page. */
const LATER = ['range', 'answers', 'keep'] as const;

interface Shown {
  readonly view: HTMLElement;
  readonly refresh: () => void;
}

/** Builds the page into a place of the document, and opens what was open last. */
export async function startPage(place: HTMLElement): Promise<void> {
  const bench = workbench({ id: newId(), name: 'my-bow.yaml', history: newHistory(BLANK), revision: 1 });
  const units = observed(rememberedUnits());
  const sound = observed<Named | null>(null);
  const frame = shell(bench);
  const store = keeper(bench, deviceShelf(), frame.say, () => areas.get('keep')?.refresh());
  const desk: Desk = {
    bench,
    asker: asker(),
    units,
    sound,
    others: () =>
      store
        .kept()
        .filter(({ id }) => id !== bench.open.value().id)
        .map(({ name, text }) => ({ name, text })),
    say: frame.say,
    save: (name, content, type) => {
      saveFile(name, content, type);
      frame.say(`Saved ${name}.`);
    },
    showLine: (line, column) => {
      frame.go('bow');
      bow.showText();
      editor.showLine(line, column);
    },
    go: frame.go,
  };

  const take = ({ id, name, text, revision }: Kept): void => {
    bench.take(id, name, text, revision);
    frame.go(bench.reading().problems.length === 0 ? 'range' : 'bow');
  };
  const add = (name: string, text: string): void =>
    take({ id: newId(), name, text, revision: 1, changed: Date.now() });
  const example = async (index: number): Promise<void> => {
    const { EXAMPLES } = await import('../packs/examples.ts');
    const found = EXAMPLES[index];
    if (found !== undefined) add(found.name, found.text);
  };
  const openFiles = async (files: readonly File[]): Promise<void> => {
    try {
      for (const { name, text } of await readFiles(files)) add(name, text);
    } catch (error) {
      frame.say(error instanceof Error ? error.message : String(error));
    }
  };
  const fresh = (): void => {
    bench.take(newId(), 'my-bow.yaml', BLANK);
    frame.go('first');
  };

  const editor = textEditor(desk);
  const problems = problemList(desk);
  const bow = bowArea(desk, editor, problems);
  const first = firstMinutes(desk, () => void example(0));
  const areas = new Map<string, Shown>([['first', first]]);

  /** One step from the text to all that shows it; only the area that is seen is asked. */
  const showAll = (): void => {
    const { problems: found, name, text, title } = bench.reading();
    const isAnother = sound.value() !== null && shownId !== bench.open.value().id;
    shownId = bench.open.value().id;
    if (found.length === 0) {
      if (sound.value()?.text !== text || sound.value()?.name !== name) sound.set({ name, text });
    } else if (isAnother) sound.set(null);
    frame.title(title ?? name, found.length, sound.value() !== null);
    if (frame.area() === 'bow' || (frame.area() !== 'first' && frame.isWide())) bow.refresh();
    areas.get(frame.area())?.refresh();
    if (frame.area() === 'bow' && frame.isWide()) areas.get('range')?.refresh();
  };
  let shownId = '';
  let isWaiting = false;
  const soon = (): void => {
    if (isWaiting) return;
    isWaiting = true;
    requestAnimationFrame(() => {
      isWaiting = false;
      showAll();
    });
  };
  bench.open.watch(soon);
  units.watch(() => {
    bow.rebuild();
    soon();
  });
  frame.whenGone(soon);
  takeDropped((files) => void openFiles(files));
  frame.fill(place, [
    element('div', { 'data-place': 'first' }, first.view),
    element('div', { 'data-place': 'bow' }, bow.view),
    ...LATER.map((area) => element('div', { 'data-place': area })),
  ]);
  const look = looks(units);
  const fillLater = async (): Promise<void> => {
    const { answersArea, atRange, keepArea } = await import('./areas.ts');
    const keeping = {
      kept: store.kept,
      take,
      remove: ({ id }: Kept) => void store.remove(id),
      fresh,
      openFiles: () => chooseFiles((files) => void openFiles(files)),
      example: (index: number) => void example(index),
    };
    const made = [atRange(desk), answersArea(desk), keepArea(desk, keeping, look)] as const;
    for (const [i, area] of LATER.entries()) {
      const view = made[i];
      if (view === undefined) continue;
      areas.set(area, view);
      place.querySelector(`[data-place="${area}"]`)?.append(view.view);
    }
  };
  const filled = fillLater();

  const [last] = await store.load();
  if (last === undefined) frame.go('first');
  else {
    bench.take(last.id, last.name, last.text, last.revision);
    if (bench.reading().problems.length > 0) frame.go('first');
    else if (frame.area() === 'first') frame.go('range');
  }
  showAll();
  await filled;
  showAll();
  areas.get('keep')?.refresh();
  addEventListener('beforeunload', () => void store.settled());
  const idle = 'requestIdleCallback' in globalThis ? requestIdleCallback : setTimeout;
  idle(
    () =>
      void desk.asker
        .warm()
        .catch(() => frame.say('A part of the page is missing; some questions cannot be asked.')),
  );
  keepOffline(frame.say);
}
