import type { Desk } from '../screen/desk.ts';
import { button, element, refill } from '../show/element.ts';
import type { Kept } from '../text/kept.ts';
import { stateText } from './state-file.ts';

/** What the area needs of the page besides the desk. */
export interface Keeping {
  readonly kept: () => readonly Kept[];
  readonly take: (kept: Kept) => void;
  readonly remove: (kept: Kept) => void;
  readonly fresh: () => void;
  readonly openFiles: () => void;
  readonly example: (index: number) => void;
}

const EXAMPLE_NAMES = [
  'A hunting bow for the mountains',
  'A field course in metres',
  'Which build',
  'Home and away',
] as const;

const titleOf = ({ name, text }: Kept): string => /^title:\s*(.*?)\s*(#.*)?$/m.exec(text)?.[1] ?? name;

/** Setups on the device, files, examples, and how the page looks. */
export function keepArea(desk: Desk, keeping: Keeping, looks: HTMLElement) {
  const list = element('ul', { class: 'kept' });
  const { bench, save } = desk;
  const fileName = (): string => bench.open.value().name;
  const saveAll = (): void =>
    save('quillpath-all.json', stateText(keeping.kept(), desk.units.value()), 'application/json');
  const refresh = (): void => {
    const { id } = bench.open.value();
    refill(
      list,
      keeping.kept().map((kept) =>
        element(
          'li',
          {},
          button(titleOf(kept), () => keeping.take(kept), {
            class: 'link',
            'aria-current': kept.id === id ? 'true' : undefined,
          }),
          button('Remove', () => keeping.remove(kept), {
            class: 'second',
            'aria-label': `Remove ${titleOf(kept)} from this device`,
          }),
        ),
      ),
    );
  };
  return {
    view: element(
      'section',
      { class: 'keep', 'aria-label': 'Keep' },
      element('h2', {}, 'This setup'),
      element(
        'div',
        { class: 'buttons' },
        button('Save as a file', () => save(fileName(), bench.open.value().history.text, 'application/yaml')),
        button('Open files', keeping.openFiles, { class: 'second' }),
        button('Begin another', keeping.fresh, { class: 'second' }),
      ),
      element(
        'p',
        { class: 'hint' },
        'The file is plain text, and the command line reads it. Files may also be dragged onto the page.',
      ),
      element('h2', {}, 'On this device'),
      list,
      button('Save all of them as one file', saveAll, { class: 'second' }),
      element('h2', {}, 'Examples'),
      element(
        'div',
        { class: 'buttons' },
        EXAMPLE_NAMES.map((name, i) => button(name, () => keeping.example(i), { class: 'second' })),
      ),
      element('p', { class: 'hint' }, 'Every number in them is invented.'),
      element('h2', {}, 'How it looks'),
      looks,
      element(
        'p',
        { class: 'hint' },
        'Nothing you type leaves this device: the page asks nobody for anything. Keep files of what you would miss; ' +
          'a browser may clear what it stores.',
      ),
    ),
    refresh,
  };
}
