import { cellText, type Table } from '../../documents/table/table.ts';
import { askedOf } from '../answers/asked-of.ts';
import type { Desk } from '../screen/desk.ts';
import { element, freshId } from '../show/element.ts';

export interface WindClock {
  readonly view: HTMLElement;
  readonly refresh: () => void;
}

const HOURS = 12;
const SPEED = {
  imperial: { unit: 'mph', most: 30, start: 10 },
  metric: { unit: 'm/s', most: 14, start: 4 },
} as const;

/** The wind by the hour it comes from and its speed: how far it carries the arrow at the range that is shown. */
export function windClock(desk: Desk, range: () => string): WindClock {
  let hour = 3;
  const id = freshId('wind');
  const said = element('output', { class: 'drift' });
  const speedWords = element('span', {});
  const speed = element('input', { id, type: 'range', min: 1, step: 1, oninput: () => refresh() });
  const hours = Array.from({ length: HOURS }, (_, i) => {
    const at = i === 0 ? HOURS : i;
    const made = element(
      'button',
      {
        type: 'button',
        role: 'radio',
        'aria-label': `from ${at} o'clock`,
        onclick: () => choose(at),
        onkeydown: (event: KeyboardEvent) => {
          const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
          if (step === undefined) return;
          event.preventDefault();
          choose(((at - 1 + step + HOURS) % HOURS) + 1);
          hours[hour % HOURS]?.focus();
        },
      },
      String(at),
    );
    made.style.setProperty('--hour', String(i));
    return made;
  });
  const choose = (at: number): void => {
    hour = at;
    refresh();
  };
  const systemNow = () => (desk.units.value() === 'imperial' ? 'imperial' : 'metric');
  let system: keyof typeof SPEED = systemNow();
  const setUnits = (): void => {
    system = systemNow();
    speed.max = String(SPEED[system].most);
    speed.value = String(SPEED[system].start);
  };
  setUnits();
  const refresh = (): void => {
    if (system !== systemNow()) setUnits();
    const wind = `${speed.value} ${SPEED[system].unit}`;
    speedWords.textContent = wind;
    speed.setAttribute('aria-valuetext', wind);
    for (const [i, each] of hours.entries()) {
      const isIt = i === hour % HOURS;
      each.setAttribute('aria-checked', String(isIt));
      each.tabIndex = isIt ? 0 : -1;
    }
    const asked = askedOf(desk, 'wind', { from: range(), to: range(), speed: wind });
    if (asked === null) return;
    void desk.asker.ask('wind at the range', asked).then((outcome) => {
      if (outcome === null) return;
      said.textContent = 'report' in outcome ? driftWords(outcome.report.rows, hour) : outcome.failure;
    });
  };
  const view = element(
    'details',
    { class: 'wind' },
    element('summary', {}, 'Wind'),
    element(
      'div',
      { class: 'clock', role: 'radiogroup', 'aria-label': 'Where the wind comes from' },
      hours,
      said,
    ),
    element('div', { class: 'field' }, element('label', { for: id }, 'Speed: ', speedWords), speed),
  );
  view.addEventListener('toggle', () => {
    if (view.open) refresh();
  });
  return {
    view,
    refresh: () => {
      if (view.open) refresh();
    },
  };
}

/** The drift from one hour in words: "2.7 in left". */
function driftWords({ columns, rows }: Table, hour: number): string {
  const i = columns.findIndex(({ name }) => name === 'lateral');
  const column = columns[i];
  const cell = rows.find((row) => row[0] === `${hour} o'clock`)?.[i];
  if (column === undefined || typeof cell !== 'number') return '';
  const size = cellText(Math.abs(cell), column);
  if (Number(size) === 0) return 'no drift';
  return `${size} ${column.unit} ${cell < 0 ? 'left' : 'right'}`;
}
