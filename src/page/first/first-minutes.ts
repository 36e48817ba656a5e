import { setupKeys } from '../../setup/keys.ts';
import { askedOf } from '../answers/asked-of.ts';
import { type FieldView, fieldView } from '../form/field.ts';
import type { Desk } from '../screen/desk.ts';
import { button, element, refill } from '../show/element.ts';
import { reportView } from '../show/report-view.ts';
import { rulerDrawing } from './ruler-drawings.ts';

/** The five numbers that marks need, in the order in which they are measured, with the words of a first evening. */
const FIVE: readonly { readonly path: string; readonly title: string; readonly how: string }[] = [
  {
    path: 'launch.speed',
    title: 'How fast is your arrow?',
    how: 'Shoot a few arrows over a chronograph and take their mean.',
  },
  {
    path: 'arrow.mass',
    title: 'How much does it weigh?',
    how: 'Lay the whole arrow, as you shoot it, on a grain scale.',
  },
  {
    path: 'arrow.diameter',
    title: 'How thick is the shaft?',
    how: 'Measure across the bare shaft; it is also printed with most shafts.',
  },
  {
    path: 'bow.peep_height',
    title: 'How high is your eye above the arrow?',
    how: 'At full draw, let somebody measure from the middle of the arrow up to the peep, square to the arrow.',
  },
  {
    path: 'sight.peep_to_pin',
    title: 'How far is it from the peep to the pin?',
    how: 'At full draw, from the peep to the sight pin.',
  },
];

/** What the cards lead to. */
export interface FirstMinutes {
  readonly view: HTMLElement;
  readonly refresh: () => void;
}

/** What an empty page asks: five numbers, each with a drawing that shows where to put the ruler. */
export function firstMinutes(desk: Desk, tryExample: () => void): FirstMinutes {
  const keys = setupKeys();
  const fields: FieldView[] = [];
  const cards = FIVE.flatMap(({ path, title, how }, i) => {
    const key = keys.find((each) => each.path === path);
    if (key === undefined) return [];
    const field = fieldView(desk, key, path, title, false);
    fields.push(field);
    field.view.classList.add('card');
    field.view.prepend(element('p', { class: 'count' }, `${i + 1} of ${FIVE.length}`));
    field.input.before(element('p', {}, how));
    field.input.after(rulerDrawing(path) ?? '');
    return [field.view];
  });
  const left = element('p', { class: 'left', role: 'status' });
  const result = element('div', { class: 'result', 'aria-live': 'polite' });
  const onward = element(
    'div',
    { class: 'buttons' },
    button('Take it to the range', () => desk.go('range')),
    button('Ask more of it', () => desk.go('answers'), { class: 'second' }),
  );
  const marks = element('div', {});
  const showMarks = async (): Promise<void> => {
    const step = desk.units.value() === 'imperial' ? '10 yd' : '10 m';
    const asked = askedOf(desk, 'marks', { every: step });
    const outcome = asked === null ? null : await desk.asker.ask('first marks', asked);
    if (outcome === null) return;
    const shown =
      'report' in outcome
        ? reportView(outcome.report, { title: 'Marks' })
        : element('p', { class: 'warning' }, outcome.failure);
    refill(marks, shown);
    // A button that is taken away and put back under a finger is not pressed: marks come anew when a field is left for it.
    if (onward.parentElement !== result) refill(result, element('h2', {}, 'Your marks'), marks, onward);
    result.querySelector('details')?.setAttribute('open', '');
  };
  const view = element(
    'section',
    { class: 'first', 'aria-label': 'First minutes' },
    element('h2', {}, 'Five numbers, and your sight marks are here'),
    element(
      'p',
      { class: 'lead' },
      'Write each with its unit, as you would say it: 283 fps, 28 1/2 in, 29 g. Nothing that you type leaves this device.',
    ),
    button('Try the example', tryExample, { class: 'second' }),
    element('div', { class: 'cards' }, cards),
    left,
    result,
  );
  return {
    view,
    refresh: () => {
      for (const field of fields) field.refresh();
      const open = FIVE.filter(({ path }) => (desk.bench.values().get(path) ?? '') === '');
      const words = open.map(({ path }) => path.split('.').at(-1)?.replaceAll('_', ' '));
      const more =
        open.length === 0
          ? 'Put right what is marked, and your marks stand here.'
          : `Still to measure: ${words.join(', ')}.`;
      const isSound = desk.bench.reading().problems.length === 0;
      left.textContent = isSound ? 'That is all that is needed.' : more;
      if (isSound) void showMarks();
      else refill(result);
    },
  };
}
