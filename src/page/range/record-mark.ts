import { localDay } from '../../quantities/calendar-day.ts';
import { setupKeys } from '../../setup/keys.ts';
import type { Desk } from '../screen/desk.ts';
import { button, element, freshId } from '../show/element.ts';
import { groupWords, markEntry } from './mark-entry.ts';
import { targetFace } from './target-face.ts';

/** Sizes of faces that are shot at, mm across, by what an archer calls them (common practice, no source). */
const FACES: readonly { readonly words: string; readonly mm: number }[] = [
  { words: '20 cm', mm: 200 },
  { words: '40 cm', mm: 400 },
  { words: '60 cm', mm: 600 },
  { words: '80 cm', mm: 800 },
  { words: '122 cm', mm: 1220 },
  { words: '8 in', mm: 203.2 },
  { words: '12 in', mm: 304.8 },
  { words: '18 in', mm: 457.2 },
  { words: '24 in', mm: 609.6 },
  { words: '36 in', mm: 914.4 },
];
const USUAL_FACE = 400;

export interface RecordMark {
  readonly view: HTMLElement;
  readonly refresh: () => void;
}

/**
 * A mark from the range: what was set, and where the arrows hit.
 *
 * @param range the range that is shown, as it was typed
 */
export function recordMark(desk: Desk, range: () => string): RecordMark {
  const { bench, units, say } = desk;
  const said = element('p', { class: 'group-words', role: 'status' });
  const face = targetFace(() => {
    said.textContent = groupWords(face.hits(), units.value());
  });
  said.textContent = groupWords([], units.value());
  const [readingId, pencilId, faceId] = [freshId('reading'), freshId('pencil'), freshId('face')];
  const number = { type: 'text', inputmode: 'decimal', autocomplete: 'off' };
  const reading = element('input', { id: readingId, ...number, 'data-record': 'reading' });
  const pencil = element('input', { id: pencilId, ...number, placeholder: '28 mm', 'data-record': 'pencil' });
  const hasPencil = setupKeys().some(({ path }) => path === 'marks.on_tape');
  const size = element(
    'select',
    { id: faceId, onchange: () => face.resize(Number(size.value)) },
    FACES.map(({ words, mm }) => element('option', { value: mm, selected: mm === USUAL_FACE }, words)),
  );
  const dateFor = (): string | null => {
    const paths = [...bench.values().keys()].filter((path) => /^marks\.\d+\.range$/.test(path));
    const dated = paths.every((path) => bench.values().has(path.replace(/range$/, 'date')));
    return dated ? localDay(new Date()) : null;
  };
  const keep = (): void => {
    const typed = { reading: reading.value.trim(), pencil: pencil.value.trim() };
    if (typed.reading === '' && typed.pencil === '' && face.hits().length === 0) {
      say('Write what the sight read, or tap where the arrows hit.');
      return;
    }
    const entry = markEntry({ range: range(), ...typed, hits: face.hits(), date: dateFor() }, units.value());
    const refused = bench.add('marks', entry);
    if (refused !== null) {
      say(refused);
      return;
    }
    const [problem] = bench.reading().problems;
    if (problem !== undefined) {
      bench.undo();
      say(problem.message.replace(/^.*?:\d+:\d+\s+/, ''));
      return;
    }
    reading.value = '';
    pencil.value = '';
    face.clear();
    say(`Kept the mark at ${range()}.`);
  };
  const view = element(
    'details',
    { class: 'record' },
    element('summary', {}, 'Record a mark here'),
    element('div', { class: 'field' }, element('label', { for: readingId }, 'What the scale reads'), reading),
    hasPencil
      ? element(
          'div',
          { class: 'field' },
          element('label', { for: pencilId }, 'or the pencil line, from the line of the zero range'),
          pencil,
        )
      : null,
    element('div', { class: 'field' }, element('label', { for: faceId }, 'Face, across'), size),
    face.view,
    said,
    element(
      'div',
      { class: 'buttons' },
      button('Undo', face.undo, { class: 'second' }),
      button('Take the chosen one away', face.remove, { class: 'second' }),
      button('Keep this mark', keep, { class: 'main' }),
    ),
  );
  return {
    view,
    refresh: () => {
      said.textContent = groupWords(face.hits(), units.value());
    },
  };
}
