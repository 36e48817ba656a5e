import type { Option, Question } from '../../quillpath.ts';
import type { Desk } from '../screen/desk.ts';
import { element, freshId } from '../show/element.ts';
import type { Given, Said } from './given.ts';
import { optionLabel } from './option-label.ts';

/** Options that take several words, with semicolons between. */
const LISTS: readonly Option['kind'][] = ['list', 'optional list'];

/** Options that stand for the place or the arrow of every answer; they are asked last. */
const STANDING: readonly string[] = [
  'build',
  'place',
  'altitude',
  'temperature',
  'pressure',
  'seaLevelPressure',
  'humidity',
];

interface Slid {
  readonly unit: string;
  readonly low: number;
  readonly high: number;
  readonly step: number;
  readonly start: number;
}

/** A slider of a quantity that has a default: from nothing to three times as much. */
const AS_MUCH_AGAIN = 3;
const SLID: ReadonlySet<string> = new Set(['speed', 'angle', 'share']);

function sliderOf(option: Option): Slid | null {
  if (option.kind !== 'text' || !SLID.has(option.of)) return null;
  const found = /^([\d.]+)\s*(\D+)$/.exec(option.value);
  if (found === null) return null;
  const start = Number(found[1]);
  const step = 10 ** (Math.floor(Math.log10(start * AS_MUCH_AGAIN)) - 1);
  return { unit: found[2] ?? '', low: 0, high: start * AS_MUCH_AGAIN, step, start };
}

/** Heights and temperatures of a place, slid where the question may be asked for another place. */
const PLACES: Readonly<Record<string, Readonly<Record<'imperial' | 'metric', Slid>>>> = {
  altitude: {
    imperial: { unit: 'ft', low: 0, high: 12000, step: 100, start: 0 },
    metric: { unit: 'm', low: 0, high: 3600, step: 50, start: 0 },
  },
  temperature: {
    imperial: { unit: 'degF', low: -10, high: 110, step: 1, start: 59 },
    metric: { unit: 'degC', low: -25, high: 45, step: 1, start: 15 },
  },
};

const isImperial = ({ units }: Desk): boolean => units.value() === 'imperial';

/** The options of a question as a form: what is typed is read as the command line reads it. */
export function optionForm(desk: Desk, question: Question, asked: () => void) {
  const given: Record<string, Given[string]> = {};
  const say = (name: string, value: Said): void => {
    const option = question.options[name];
    if (value === '' || value === false) delete given[name];
    else
      given[name] =
        option !== undefined && LISTS.includes(option.kind) ? String(value).split(/\s*;\s*/) : value;
    asked();
  };
  const entries = Object.entries(question.options);
  const own = entries.filter(([name]) => !STANDING.includes(name));
  const standing = entries.filter(([name]) => STANDING.includes(name));
  const rows = (list: typeof entries) =>
    list.map(([name, option]) => optionRow(name, option, desk, (value) => say(name, value)));
  const view = element(
    'details',
    { class: 'options' },
    element('summary', {}, 'Change what is asked'),
    rows(own),
    standing.length === 0
      ? null
      : element('fieldset', {}, element('legend', {}, 'Another place or arrow'), rows(standing)),
  );
  return { view, given: (): Given => ({ ...given }) };
}

/** A field for a text that stands in a file of its own. */
function fileField(
  described: Readonly<Record<string, string>>,
  say: (value: Said) => void,
): HTMLInputElement {
  const input = element('input', {
    ...described,
    type: 'file',
    onchange: async () => {
      const [file] = input.files ?? [];
      say(file === undefined ? '' : { name: file.name, text: await file.text() });
    },
  });
  return input;
}

function defaultWords(option: Option, desk: Desk): string {
  switch (option.kind) {
    case 'range':
      return `${option.yards} ${isImperial(desk) ? 'yd' : 'm'}`;
    case 'text':
    case 'count':
    case 'choice':
      return String(option.value);
    default:
      return '';
  }
}

function optionRow(name: string, option: Option, desk: Desk, say: (value: Said) => void): HTMLElement {
  const id = freshId('option');
  const hint = freshId('hint');
  const described = { id, 'aria-describedby': hint, 'data-option': name };
  const words = element('p', { id: hint, class: 'hint' }, `${option.what}.`);
  const label = element('label', { for: id }, optionLabel(name));
  if (option.kind === 'flag') {
    const box = element('input', { ...described, type: 'checkbox', onchange: () => say(box.checked) });
    return element('div', { class: 'field tick' }, box, label, words);
  }
  if (option.kind === 'text file')
    return element('div', { class: 'field' }, label, fileField(described, say), words);
  if (option.kind === 'choice' || option.kind === 'subject') {
    const choices = option.kind === 'subject' ? ['', ...option.choices] : option.choices;
    const first = option.kind === 'subject' ? '' : option.value;
    const list = element(
      'select',
      { ...described, onchange: () => say(list.value) },
      choices.map((each) =>
        element('option', { value: each, selected: each === first }, each === '' ? 'all of it' : each),
      ),
    );
    return element('div', { class: 'field' }, label, list, words);
  }
  const input = element('input', {
    ...described,
    type: 'text',
    autocomplete: 'off',
    placeholder: defaultWords(option, desk),
    oninput: () => say(input.value.trim()),
  });
  const slid = PLACES[name]?.[isImperial(desk) ? 'imperial' : 'metric'] ?? sliderOf(option);
  return element(
    'div',
    { class: 'field' },
    label,
    input,
    slid === null
      ? null
      : slider(slid, optionLabel(name), (value) => {
          input.value = value;
          say(value);
        }),
    words,
  );
}

function slider(
  { unit, low, high, step, start }: Slid,
  label: string,
  say: (value: string) => void,
): HTMLElement {
  const input = element('input', {
    type: 'range',
    min: low,
    max: high,
    step,
    'aria-label': `${label}, slider`,
    oninput: () => {
      const value = `${Number(input.value)} ${unit.trim()}`;
      input.setAttribute('aria-valuetext', value);
      say(value);
    },
  });
  input.value = String(start);
  return input;
}
