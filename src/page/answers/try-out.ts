import { formatQuantity, toSi } from '../../quantities/format.ts';
import { parseQuantity } from '../../quantities/parse.ts';
import { withEntry } from '../../setup/edit-entries.ts';
import type { Desk } from '../screen/desk.ts';
import { button, element, freshId, refill } from '../show/element.ts';
import { reportView } from '../show/report-view.ts';
import { askedOf } from './asked-of.ts';
import { newestFirst } from './newest-first.ts';

/** A number of the arrow that is tried by sliding, from its own value a part down and up. */
interface Tried {
  readonly path: string;
  readonly label: string;
  readonly dimension: 'speed' | 'mass';
  readonly unit: { readonly imperial: 'fps' | 'gr'; readonly metric: 'm/s' | 'g' };
  readonly span: number;
}

const TRIED: readonly Tried[] = [
  {
    path: 'launch.speed',
    label: 'Speed',
    dimension: 'speed',
    unit: { imperial: 'fps', metric: 'm/s' },
    span: 0.15,
  },
  {
    path: 'arrow.parts.point.mass',
    label: 'Point',
    dimension: 'mass',
    unit: { imperial: 'gr', metric: 'g' },
    span: 0.6,
  },
];
const NAME = 'tried here';

/** Other numbers tried by sliding: the marks of such an arrow on the sight as it is, and a way to keep it as a build. */
export function tryOut(desk: Desk) {
  const { bench, units } = desk;
  const place = element('div', { class: 'answer', 'aria-live': 'polite' });
  const sliders = element('div', {});
  const chosen = new Map<string, string>();
  let shown = '';

  /** The entry of `builds` that stands for what is tried. */
  const build = () => {
    const speed = chosen.get('launch.speed');
    const point = chosen.get('arrow.parts.point.mass');
    return {
      name: NAME,
      ...(point === undefined ? {} : { arrow: { parts: { point: { mass: point } } } }),
      ...(speed === undefined ? {} : { launch: { speed } }),
    };
  };
  const askNow = async (): Promise<void> => {
    const asked = askedOf(desk, 'marks', { build: NAME, every: '10 yd', from: '20 yd' });
    if (asked === null) return;
    const [{ name, text }] = asked.setups;
    const tried = { ...asked, setups: [{ name, text: withEntry(text, 'builds', build()) }] as const };
    const outcome = await desk.asker.ask('try out', tried);
    if (outcome === null) return;
    refill(
      place,
      'report' in outcome
        ? reportView(outcome.report, { title: 'Marks of the arrow tried' })
        : element('p', { class: 'warning' }, outcome.failure),
    );
  };
  const again = newestFirst(askNow);
  const slid = ({ path, label, dimension, unit, span }: Tried, typed: string): HTMLElement | null => {
    const name = unit[units.value() === 'imperial' ? 'imperial' : 'metric'];
    const value = readOrNull(typed, dimension);
    if (value === null) return null;
    const start = value / toSi(1, name);
    const id = freshId('try');
    const words = element('output', { for: id }, formatQuantity(value, name, 0));
    const input = element('input', {
      id,
      type: 'range',
      min: Math.round(start * (1 - span)),
      max: Math.round(start * (1 + span)),
      step: name === 'g' ? 0.1 : 1,
      'data-try': path,
      oninput: () => {
        const text = `${input.value} ${name}`;
        chosen.set(path, text);
        words.textContent = text;
        input.setAttribute('aria-valuetext', text);
        again();
      },
    });
    input.value = String(start);
    return element('div', { class: 'field' }, element('label', { for: id }, `${label}: `, words), input);
  };
  const rebuild = (): void => {
    const values = bench.values();
    const rows = TRIED.map((each) => slid(each, values.get(each.path) ?? ''));
    refill(sliders, rows);
  };
  const keep = (): void => {
    if (chosen.size === 0) {
      desk.say('Move one of the sliders first.');
      return;
    }
    const name = [...chosen.values()].join(', ');
    const refused = bench.add('builds', { ...build(), name });
    desk.say(refused ?? `Kept as the build “${name}”. “Which arrow” compares it with the others.`);
  };
  const view = element(
    'details',
    { class: 'panel try-out' },
    element('summary', {}, element('h2', {}, 'Try another speed or point')),
    element(
      'div',
      { class: 'panel-body' },
      sliders,
      place,
      button('Keep as a build', keep, { class: 'second' }),
    ),
  );
  const refresh = (): void => {
    if (!view.open) return;
    const values = bench.values();
    const now = [units.value(), ...TRIED.map(({ path }) => values.get(path))].join('|');
    if (now === shown) return;
    shown = now;
    chosen.clear();
    rebuild();
    refill(place);
  };
  view.addEventListener('toggle', refresh);
  return { view, refresh };
}

function readOrNull(typed: string, dimension: 'speed' | 'mass'): number | null {
  try {
    return parseQuantity(typed, dimension);
  } catch {
    return null;
  }
}
