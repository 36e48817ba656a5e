import type { Desk } from '../screen/desk.ts';
import { element, freshId, refill } from '../show/element.ts';
import type { Named } from './answer.ts';

/** The other setups of the device, to be set beside this one. */
export function otherSetups(desk: Desk, changed: () => void) {
  const chosen = new Set<string>();
  const list = element('div', {});
  const show = (): void => {
    const others = desk.others();
    refill(
      list,
      others.length === 0
        ? element('p', { class: 'hint' }, 'Other setups that are kept on this device can stand here.')
        : others.map((each) => row(each)),
    );
  };
  const row = ({ name, text }: Named): HTMLElement => {
    const id = freshId('beside');
    const box = element('input', {
      id,
      type: 'checkbox',
      checked: chosen.has(text),
      onchange: () => {
        if (box.checked) chosen.add(text);
        else chosen.delete(text);
        changed();
      },
    });
    return element('div', { class: 'tick' }, box, element('label', { for: id }, name));
  };
  const view = element('details', {}, element('summary', {}, 'Set another setup beside it'), list);
  view.addEventListener('toggle', show);
  return { view, chosen: (): readonly Named[] => desk.others().filter(({ text }) => chosen.has(text)) };
}
