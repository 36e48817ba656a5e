import type { SetupKey } from '../../setup/keys.ts';
import type { Desk } from '../screen/desk.ts';
import { button, element, freshId, refill } from '../show/element.ts';
import { type KeyGroup, keyLabel } from './key-groups.ts';
import { type SectionView, sectionView } from './section-view.ts';

/** The entries of a list (marks, builds, places), each with its keys and a way to remove it, and a way to begin another. */
export function entriesView(desk: Desk, { path: list, keys }: KeyGroup): SectionView {
  const { bench } = desk;
  const first = keys.find(({ needed }) => needed) ?? keys[0];
  const place = element('div', {});
  const view = element('div', {}, place, first === undefined ? null : adder(desk, list, first));
  let sections: readonly SectionView[] = [];
  const countOf = (): number => {
    const numbers = [...bench.values().keys()]
      .filter((path) => path.startsWith(`${list}.`))
      .map((path) => Number(path.slice(list.length + 1).split('.')[0]));
    return Math.max(-1, ...numbers) + 1;
  };
  const build = (count: number): void => {
    sections = Array.from({ length: count }, (_, i) =>
      sectionView(desk, keys, list, (path) => `${list}.${i}${path.slice(list.length)}`),
    );
    refill(
      place,
      sections.map((section, i) =>
        element(
          'fieldset',
          { class: 'entry' },
          element('legend', {}, titleOf(desk, list, i, first)),
          section.view,
          button(
            'Remove',
            () => {
              const refused = bench.remove(`${list}.${i}`);
              if (refused !== null) desk.say(refused);
            },
            {
              'aria-label': `Remove ${titleOf(desk, list, i, first)}`,
            },
          ),
        ),
      ),
    );
  };
  const refresh = (): void => {
    const count = countOf();
    if (count !== sections.length) build(count);
    for (const section of sections) section.refresh();
    for (const [i, legend] of [...place.querySelectorAll('legend')].entries())
      legend.textContent = titleOf(desk, list, i, first);
  };
  refresh();
  return { view, refresh };
}

function titleOf({ bench }: Desk, list: string, i: number, first: SetupKey | undefined): string {
  const name =
    first === undefined ? undefined : bench.values().get(`${list}.${i}.${keyLabel(first.path, list)}`);
  return `${i + 1}${name === undefined ? '' : `: ${name}`}`;
}

function adder({ bench, say }: Desk, list: string, first: SetupKey): HTMLElement {
  const id = freshId('new');
  const name = keyLabel(first.path, list);
  const input = element('input', { id, type: 'text', autocomplete: 'off', placeholder: name });
  const add = (): void => {
    const typed = input.value.trim();
    if (typed === '') {
      say(`Write the ${name} first.`);
      input.focus();
      return;
    }
    const refused = bench.add(list, { [name.replaceAll(' ', '_')]: typed });
    if (refused === null) input.value = '';
    else say(refused);
  };
  return element(
    'div',
    { class: 'field adder' },
    element('label', { for: id }, `One more: ${name}`),
    input,
    button('Add', add),
  );
}
