import fc from 'fast-check';
import { newHistory } from '../../src/page/text/history.ts';
import { type Workbench, workbench } from '../../src/page/text/workbench.ts';
import { setupKeys } from '../../src/setup/keys.ts';
import { SetupError } from '../../src/setup/problem.ts';
import { EXAMPLE, SMALLEST } from '../unit/setup/example-text.ts';
import { oddText } from './odd-values.ts';
import { Astray, complete } from './read-or-refused.ts';
import { brokenText } from './setup-texts.ts';

/** What a person does to the form of a page. */
type Action =
  | { readonly kind: 'put'; readonly path: string; readonly value: string }
  | { readonly kind: 'add'; readonly list: string; readonly key: string; readonly value: string }
  | { readonly kind: 'remove'; readonly path: string }
  | { readonly kind: 'undo' };

const KEYS = setupKeys();
const LISTS = KEYS.filter(({ kind }) => kind === 'list').map(({ path }) => path);

/** The path of a field: entries of lists by their number. */
const numbered = (path: string, number: number): string =>
  LISTS.toSorted((a, b) => b.length - a.length).reduce(
    (told, list) => (told.startsWith(`${list}.`) ? `${list}.${number % 3}${told.slice(list.length)}` : told),
    path,
  );

const path = fc
  .tuple(fc.constantFrom(...KEYS.filter(({ kind }) => kind === 'value').map((key) => key.path)), fc.nat(2))
  .map(([key, number]) => numbered(key, number));
/** Lists of the file's top level, each with the key that its form begins an entry with. */
const lists = LISTS.filter((list) => !list.includes('.')).map((list) => {
  const first = KEYS.find((key) => key.path.startsWith(`${list}.`) && key.kind === 'value');
  return [list, first?.path.slice(list.length + 1) ?? 'name'] as const;
});

const action: fc.Arbitrary<Action> = fc.oneof(
  { weight: 6, arbitrary: fc.record({ kind: fc.constant('put' as const), path, value: oddText }) },
  {
    weight: 2,
    arbitrary: fc
      .tuple(fc.constantFrom(...lists), oddText)
      .map(([[list, key], value]) => ({ kind: 'add' as const, list, key, value })),
  },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('remove' as const), path }) },
  { weight: 1, arbitrary: fc.constant({ kind: 'undo' as const }) },
);

/** A text, and what is done to it. */
export interface Sitting {
  readonly text: string;
  readonly actions: readonly Action[];
}

export const sitting: fc.Arbitrary<Sitting> = fc.record({
  text: fc.oneof(
    { weight: 3, arbitrary: fc.constantFrom('', SMALLEST, EXAMPLE, EXAMPLE.replaceAll('\n', '\r\n')) },
    { weight: 1, arbitrary: brokenText },
  ),
  actions: fc.array(action, { minLength: 1, maxLength: 5 }),
});

/**
 * Does to the form of a page what a person does.
 *
 * @throws Astray where what was typed is not what stands in the text, or anything else is wrong
 */
export function satOrAstray({ text, actions }: Sitting): void {
  const bench = workbench({ id: 'x', name: 'setup.yaml', history: newHistory(text), revision: 1 });
  readAgain(bench);
  for (const each of actions) {
    const before = bench.open.value().history.text;
    const refused = doneTo(bench, each);
    const after = bench.open.value().history.text;
    if (refused !== null && after !== before) throw new Astray(`refused, and yet changed: ${refused}`);
    if (refused !== null && !/^[^\n]{5,300}$/.test(refused)) throw new Astray(`no reason: ${refused}`);
    readAgain(bench);
    if (refused === null && each.kind === 'put') standsThere(bench, each, before);
  }
}

function doneTo(bench: Workbench, action: Action): string | null {
  switch (action.kind) {
    case 'put':
      return bench.put(action.path, action.value);
    case 'add':
      return bench.add(action.list, { [action.key]: action.value });
    case 'remove':
      return bench.remove(action.path);
    case 'undo':
      bench.undo();
      return null;
  }
}

function readAgain(bench: Workbench): void {
  const { problems } = bench.reading();
  if (problems.length > 0) complete(new SetupError('setup.yaml', problems), bench.open.value().history.text);
}

function standsThere(
  bench: Workbench,
  { path: at, value }: Extract<Action, { kind: 'put' }>,
  before: string,
): void {
  const found = bench.values().get(at) ?? '';
  const wanted = value.trim() === '' ? '' : value;
  if (found !== wanted)
    throw new Astray(
      `typed ${JSON.stringify(value)}, but ${JSON.stringify(found)} stands at ${at}; before: ${before}`,
    );
}
