import type { Block, Report } from '../../quillpath.ts';
import { cautionText } from '../../reports/report.ts';
import { type Child, element } from './element.ts';
import { plotView } from './plot-view.ts';
import { tableView } from './table-view.ts';

/** What tables and plots without a title of their own are called by who cannot see them. */
export interface Labels {
  readonly title: string;
}

/** Sentences, with the line breaks that are meant. */
const sentences = (text: string, attributes: Readonly<Record<string, string>> = {}): HTMLElement =>
  element('p', attributes, text);

/** One thing of a report as the page shows it. */
function blockView(block: Block, { title }: Labels, isShort: boolean): Child {
  switch (block.kind) {
    case 'verdict':
      return sentences(block.text, { class: 'verdict' });
    case 'head':
      return sentences(isShort && block.short !== undefined ? block.short : block.lines.join('\n'), {
        class: 'head',
      });
    case 'warning':
      return element('p', { class: 'warning' }, element('strong', {}, 'Warning: '), block.text);
    case 'caution':
      return sentences(
        cautionText(isShort && block.short !== undefined ? { ...block, text: block.short } : block),
        { class: 'caution' },
      );
    case 'table':
      return tableView(block.table, `${title}, table`, block.note);
    case 'plot':
      return plotView(block.plot, title);
    case 'sheet':
      return null;
    case 'note':
      return sentences(block.text, { class: 'note' });
    case 'paragraph':
      return sentences(block.text);
  }
}

const isFor =
  (reading: 'short' | 'whole') =>
  ({ only }: Block): boolean =>
    only === undefined || only === reading;

const FIRST: readonly Block['kind'][] = ['verdict', 'warning'];
const LOOKED_UP: readonly Block['kind'][] = ['table'];

/** A folded part; what is in it is made when it is first opened. */
function folded(words: string, make: () => Child, isOpen = false): HTMLDetailsElement {
  const body = element('div', {});
  const view = element('details', {}, element('summary', {}, words), body);
  const open = (): void => {
    if (!view.open || body.firstChild !== null) return;
    const made = make();
    body.append(element('div', {}, made));
  };
  view.addEventListener('toggle', open);
  view.open = isOpen;
  if (isOpen) open();
  return view;
}

/**
 * A report for a screen: the answer first, the picture next, then the short reading; its tables and the whole reading are folded
 * behind their names.
 *
 * @param picture what stands in place of the plots, where the question has a picture of its own
 */
export function reportView({ blocks }: Pick<Report, 'blocks'>, labels: Labels, picture?: Node): HTMLElement {
  const told = blocks.filter((block) => !('text' in block) || block.text !== '');
  const short = told.filter(isFor('short'));
  const whole = told.filter(isFor('whole'));
  const view = (list: readonly Block[], isShort: boolean): readonly Child[] =>
    list.map((block) => blockView(block, labels, isShort));
  const plots = whole.filter(({ kind }) => kind === 'plot');
  const of = (kinds: readonly Block['kind'][]) => short.filter(({ kind }) => kinds.includes(kind));
  const others = short.filter(({ kind }) => ![...FIRST, ...LOOKED_UP, 'plot'].includes(kind));
  const tables = of(LOOKED_UP);
  const isCut = blocks.some(({ only }) => only === 'whole');
  return element(
    'div',
    { class: 'report' },
    view(of(FIRST), true),
    picture,
    picture === undefined ? view(plots.slice(0, 1), false) : null,
    view(others, true),
    tables.length === 0
      ? null
      : folded('Table', () => view(tables, true), plots.length === 0 && picture === undefined),
    isCut ? folded('More: every table, chart and note', () => view(whole, false)) : null,
  );
}
