import { formatQuantity } from '../../quantities/format.ts';
import { askedOf } from '../answers/asked-of.ts';
import type { Desk } from '../screen/desk.ts';
import { button, element, freshId, refill } from '../show/element.ts';
import { markShown } from './mark-cells.ts';
import { recordMark } from './record-mark.ts';
import { tapeStrip } from './tape-strip.ts';
import { windClock } from './wind-clock.ts';

export interface AtRange {
  readonly view: HTMLElement;
  readonly refresh: () => void;
}

const SPAN = { least: 10, most: 100, start: 40 } as const;

/** The setup in the hand: big digits for one range, its wind, and what was just shot. */
export function atRange(desk: Desk): AtRange {
  const { units } = desk;
  const unit = (): string => (units.value() === 'imperial' ? 'yd' : 'm');
  const [typedId, sliderId] = [freshId('range'), freshId('slide')];
  const verdict = element('p', { class: 'verdict' });
  const digits = element('output', { class: 'digits', for: typedId });
  const error = element('p', { class: 'error-words' });
  const nextRange = element('div', { class: 'next' });
  const trouble = element('p', { class: 'fault', role: 'status' });
  const typed = element('input', {
    id: typedId,
    type: 'text',
    inputmode: 'decimal',
    autocomplete: 'off',
    class: 'range-typed',
    oninput: () => show(false),
  });
  const slider = element('input', {
    id: sliderId,
    type: 'range',
    min: SPAN.least,
    max: SPAN.most,
    step: 1,
    'aria-label': 'Range, slider',
    oninput: () => set(Number(slider.value)),
  });
  /** The range as a question takes it: with the unit of the reader when none is typed. */
  const range = (): string => {
    const text = typed.value.trim();
    return /^[\d.,]+$/.test(text) ? `${text} ${unit()}` : text;
  };
  const strip = tapeStrip((at) => set(at));
  const set = (at: number): void => {
    typed.value = String(at);
    show(true);
  };
  const wind = windClock(desk, range);
  const record = recordMark(desk, range);
  const stepBy = (by: number) => () => {
    const now = Number(typed.value);
    if (Number.isFinite(now)) set(Math.max(1, now + by));
  };
  const showMark = async (): Promise<void> => {
    const asked = askedOf(desk, 'marks', { from: range(), to: range() });
    if (asked === null) return;
    const outcome = await desk.asker.ask('mark at the range', asked);
    if (outcome === null) return;
    const shown = 'report' in outcome ? markShown(outcome.report.rows, 0) : null;
    trouble.textContent = 'report' in outcome ? '' : outcome.failure;
    if (shown === null) {
      refill(digits, '–');
      error.textContent = 'report' in outcome ? 'The arrow or the sight does not reach it.' : '';
      return;
    }
    refill(digits, shown.mark, element('small', {}, ` ${shown.markUnit}`));
    const mark = shown.error === '' ? '' : `± ${shown.error} on the sight, `;
    error.textContent = `${mark}± ${shown.onTarget} ${shown.onTargetUnit} on the target`;
  };
  const show = (isNumber: boolean): void => {
    if (typed.value.trim() === '') return;
    const value = Number(typed.value);
    if (Number.isFinite(value)) {
      slider.value = String(value);
      slider.setAttribute('aria-valuetext', range());
      strip.point(value);
    } else if (isNumber) return;
    void showMark();
    wind.refresh();
  };
  const showTape = async (): Promise<void> => {
    const asked = askedOf(desk, 'tape', {
      in: units.value() === 'imperial' ? 'yards' : 'metres',
      from: `${SPAN.start / 2} ${unit()}`,
      anyway: true,
    });
    const outcome = asked === null ? null : await desk.asker.ask('tape at the range', asked);
    if (outcome !== null && 'report' in outcome) strip.show(outcome.report.rows);
  };
  const showFit = async (): Promise<void> => {
    const fit = askedOf(desk, 'fit', {});
    if (fit === null) return;
    const hasMarks = [...desk.bench.values().keys()].some((path) => path.startsWith('marks.'));
    const asked = hasMarks ? fit : askedOf(desk, 'marks', {});
    const outcome = asked === null ? null : await desk.asker.ask('fit at the range', asked);
    if (outcome === null) return;
    if (!('report' in outcome)) {
      verdict.textContent = outcome.failure;
      return;
    }
    const { blocks, data } = outcome.report;
    const words = blocks.flatMap((block) =>
      block.kind === 'verdict' && block.only !== 'whole' ? [block.text] : [],
    );
    const warnings = blocks.filter((block) => block.kind === 'warning' && block.only !== 'whole');
    verdict.textContent = words.filter((text) => text !== '').join(' ');
    const next = 'next_range_m' in data && typeof data.next_range_m === 'number' ? data.next_range_m : null;
    const name = next === null ? '' : formatQuantity(next, units.value() === 'imperial' ? 'yd' : 'm', 0);
    refill(
      nextRange,
      warnings.map((block) => element('p', { class: 'warning' }, block.kind === 'warning' ? block.text : '')),
      next === null
        ? null
        : button(`Shoot next at ${name}`, () => set(Number(name.split(' ')[0])), { class: 'second' }),
    );
  };
  const unitWords = element('span', { class: 'unit' });
  const refresh = (): void => {
    unitWords.textContent = unit();
    if (typed.value === '') typed.value = String(SPAN.start);
    void showTape().then(() => show(true));
    void showFit();
    record.refresh();
    show(false);
  };
  const view = element(
    'section',
    { class: 'at-range', 'aria-label': 'At the range' },
    strip.view,
    element(
      'div',
      { class: 'range-line' },
      element('label', { for: typedId }, 'Range'),
      button('−', stepBy(-1), { class: 'step', 'aria-label': 'nearer' }),
      typed,
      unitWords,
      button('+', stepBy(1), { class: 'step', 'aria-label': 'farther' }),
    ),
    slider,
    element('div', { class: 'mark-now', 'aria-live': 'polite' }, digits, error),
    trouble,
    verdict,
    nextRange,
    wind.view,
    record.view,
  );
  return { view, refresh };
}
