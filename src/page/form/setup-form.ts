import type { Desk } from '../screen/desk.ts';
import { element } from '../show/element.ts';
import { entriesView } from './entries-view.ts';
import { type KeyGroup, keyGroups } from './key-groups.ts';
import { type SectionView, sectionView } from './section-view.ts';

/** What a newcomer needs open: the sections with numbers that no answer can do without, and the marks. */
const OPEN: readonly string[] = ['', 'bow', 'arrow', 'launch', 'sight', 'marks'];

const TITLES: Readonly<Record<string, string>> = { '': 'Name', 'arrow.parts': 'Parts of the arrow' };

const titleOf = ({ path }: KeyGroup): string =>
  TITLES[path] ?? path.slice(0, 1).toUpperCase() + path.slice(1).replaceAll('_', ' ');

/** "The bow" under the title "Bow" tells nothing. */
const isTold = ({ path, what }: KeyGroup): boolean => path !== '' && what !== `the ${path}`;

/** The whole setup as a form: a view of the text, section by section. */
export function setupForm(desk: Desk): SectionView {
  const made = new Map<string, SectionView>();
  const sections = keyGroups().map((group) => {
    const body = element('div', {});
    const view = element(
      'details',
      { class: 'section', 'data-section': group.path },
      element('summary', {}, titleOf(group)),
      isTold(group) ? element('p', { class: 'hint' }, `${group.what.replaceAll('`', '')}.`) : null,
      body,
    );
    const open = (): void => {
      if (!view.open || made.has(group.path)) return;
      const section = group.isList ? entriesView(desk, group) : sectionView(desk, group.keys, group.path);
      made.set(group.path, section);
      body.append(section.view);
    };
    view.addEventListener('toggle', open);
    view.open = OPEN.includes(group.path);
    open();
    return view;
  });
  return {
    view: element('div', { class: 'setup-form' }, sections),
    refresh: () => {
      for (const section of made.values()) section.refresh();
    },
  };
}
