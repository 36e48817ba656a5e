import type { SetupKey } from '../../setup/keys.ts';
import { rulerDrawing } from '../first/ruler-drawings.ts';
import type { Desk } from '../screen/desk.ts';
import { element, freshId, refill } from '../show/element.ts';
import { type FieldView, fieldView } from './field.ts';
import { keyLabel } from './key-groups.ts';

/** The keys of one section, or of one entry of a list: those that are needed or there, and a way to the others. */
export interface SectionView {
  readonly view: HTMLElement;
  readonly refresh: () => void;
}

/**
 * @param keys of the section, with their paths as the schema has them
 * @param section the path that labels leave out
 * @param place where a key stands in the text: with the number of the entry, in a list
 */
export function sectionView(
  desk: Desk,
  keys: readonly SetupKey[],
  section: string,
  place: (path: string) => string = (path) => path,
): SectionView {
  const { bench } = desk;
  const view = element('div', { class: 'fields' });
  const opened = new Set<string>();
  let shown = '';
  let fields: readonly FieldView[] = [];
  const isThere = ({ path, needed }: SetupKey): boolean =>
    bench.values().has(place(path)) || opened.has(path) || (needed && sectionIsThere(path));
  /** A needed key of a part that is not there is not needed. */
  const sectionIsThere = (path: string): boolean => {
    const parent = path.split('.').slice(0, -1).join('.');
    if (parent === '' || parent === section || !parent.startsWith(section)) return true;
    return [...bench.values().keys()].some((other) => other.startsWith(`${place(parent)}.`));
  };
  const build = (there: readonly SetupKey[]): void => {
    const focused = document.activeElement?.getAttribute('data-path');
    fields = there.map((key) => fieldView(desk, key, place(key.path), keyLabel(key.path, section)));
    const rows = fields.map(({ view: field, path }) => {
      const drawing = rulerDrawing(path);
      if (drawing === null) return field;
      field.append(
        element('details', { class: 'where' }, element('summary', {}, 'Where to measure'), drawing),
      );
      return field;
    });
    const absent = keys.filter((key) => !there.includes(key));
    refill(view, rows, absent.length === 0 ? null : moreKeys(absent));
    fields.find(({ path }) => path === focused)?.input.focus();
  };
  const moreKeys = (absent: readonly SetupKey[]): HTMLElement => {
    const id = freshId('more');
    const list = element(
      'select',
      {
        id,
        onchange: () => {
          opened.add(list.value);
          const added = list.value;
          refresh();
          fields.find(({ path }) => path === place(added))?.input.focus();
        },
      },
      element('option', { value: '' }, 'choose…'),
      absent.map(({ path }) => element('option', { value: path }, keyLabel(path, section))),
    );
    return element('div', { class: 'field more-keys' }, element('label', { for: id }, 'Add a value'), list);
  };
  const refresh = (): void => {
    const there = keys.filter(isThere);
    const names = there.map(({ path }) => path).join(' ');
    if (names !== shown || fields.length === 0) build(there);
    shown = names;
    for (const field of fields) field.refresh();
  };
  refresh();
  return { view, refresh };
}
