import { formatQuantity, toSi } from '../../quantities/format.ts';
import type { UnitSystem } from '../../quillpath.ts';
import type { SetupKey } from '../../setup/keys.ts';
import { type Limit, otherUnit } from '../../setup/schema/limit.ts';
import type { Desk } from '../screen/desk.ts';
import { element, freshId } from '../show/element.ts';

/** A view of one key of the text. */
export interface FieldView {
  readonly path: string;
  readonly view: HTMLElement;
  readonly input: HTMLInputElement | HTMLSelectElement;
  /** Shows what the text says now, unless somebody is typing here, and what is wrong with it. */
  readonly refresh: () => void;
}

/** Metric units where the reader has chosen them; the schema's own otherwise. */
const unitFor = ({ unit }: Limit, system: UnitSystem) =>
  system !== 'imperial' && !['mm', 'deg', '%', '1'].includes(unit) ? otherUnit(unit) : unit;

/** What might be typed, as a pale example in the field. */
function exampleOf(limit: Limit, system: UnitSystem): string {
  const unit = unitFor(limit, system);
  if (unit === limit.unit) return `${limit.example}${unit === '1' ? '' : ` ${unit}`}`;
  const value = toSi(limit.example, limit.unit);
  return formatQuantity(value, unit, 1).replace('.0 ', ' ');
}

function limitWords(limit: Limit, system: UnitSystem): string {
  const unit = unitFor(limit, system);
  const bound = (value: number): string =>
    unit === limit.unit
      ? String(value)
      : formatQuantity(toSi(value, limit.unit), unit, 1).replace(/\.0? .*/, '');
  const name = unit === '1' ? '' : ` ${formatQuantity(0, unit, 0).replace(/^0\s?/, '')}`;
  return `${bound(limit.min)} to ${bound(limit.max)}${name}`;
}

const plain = (words: string): string => words.replaceAll('`', '');

/**
 * @param key what the schema says of it
 * @param path where it stands in the text, entries by their number
 * @param isMarked whether the label says that it is needed
 */
export function fieldView(
  desk: Desk,
  key: SetupKey,
  path: string,
  label: string,
  isMarked = key.needed,
): FieldView {
  const { bench, units } = desk;
  const [id, hint, fault] = [freshId('field'), freshId('hint'), freshId('fault')];
  const put = (value: string): void => {
    const refused = bench.put(path, value);
    if (refused !== null) desk.say(refused);
  };
  const shared = {
    id,
    'data-path': path,
    'aria-describedby': `${hint} ${fault}`,
    onblur: bench.settle,
  };
  const input =
    key.words === undefined
      ? element('input', {
          ...shared,
          type: 'text',
          autocomplete: 'off',
          autocapitalize: 'off',
          spellcheck: 'false',
          placeholder: key.limit === undefined ? '' : exampleOf(key.limit, units.value()),
          oninput: () => put(input.value),
        })
      : element(
          'select',
          { ...shared, onchange: () => put(input.value) },
          ['', ...key.words].map((word) =>
            element('option', { value: word }, word === '' ? 'not said' : word),
          ),
        );
  const limits = key.limit === undefined ? '' : `; ${limitWords(key.limit, units.value())}`;
  const without = key.fallback === null ? '' : `. Left out: ${plain(key.fallback)}`;
  const error = element('p', { id: fault, class: 'fault' });
  const view = element(
    'div',
    { class: 'field' },
    element('label', { for: id }, label, isMarked ? element('span', { class: 'needed' }, ' needed') : null),
    input,
    element('p', { id: hint, class: 'hint' }, `${plain(key.what)}${limits}${without}.`),
    error,
  );
  const refresh = (): void => {
    const typed = bench.values().get(path) ?? '';
    if (document.activeElement !== input || key.words !== undefined) input.value = typed;
    const problem = bench.reading().problems.find((each) => each.path === path);
    const isMissing = typed === '';
    error.textContent = problem === undefined || isMissing ? '' : `${reasonOf(problem.message)}`;
    if (problem === undefined || isMissing) input.removeAttribute('aria-invalid');
    else input.setAttribute('aria-invalid', 'true');
  };
  refresh();
  return { path, view, input, refresh };
}

/** The message without the place, which the field itself is. */
const reasonOf = (message: string): string => message.replace(/^.*?:\d+:\d+\s+[^:]*: /, '');
