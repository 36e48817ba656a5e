import { plotText } from '../../documents/plot/terminal-plot.ts';
import { foldText } from '../../documents/render/fold-text.ts';
import { renderTableText } from '../../documents/render/text.ts';
import { type Block, cautionText, type Reading } from '../../reports/report.ts';
import { plotSize } from './plot-size.ts';

/** How a report is to be printed. */
export interface Printed {
  /** Of the lines, characters. */
  readonly width: number;
  readonly reading: Reading;
  /** The names of the documents written. */
  readonly files: readonly string[];
}

/** What stands at the end of a short report that leaves something out. */
const MORE = 'More with --all: every table, chart and note.';

/** A report for a terminal: paragraphs with one empty line between them, and one line end after the last. */
export function reportText(blocks: readonly Block[], printed: Printed): string {
  const { reading } = printed;
  const read = blocks.filter(({ only }) => only === undefined || only === reading);
  const shown = read
    .map((block) => ({ kind: block.kind, text: blockText(block, printed).trimEnd() }))
    .filter(({ text }) => text !== '');
  const isCut = reading === 'short' && blocks.some(({ only }) => only === 'whole');
  return `${[...shown, ...(isCut ? [{ kind: 'note' as const, text: foldText(MORE, printed.width) }] : [])]
    .map(({ kind, text }, i) => (i === 0 ? '' : gap(shown[i - 1]?.kind, kind)) + text)
    .join('')}\n`;
}

const WARNED: readonly Block['kind'][] = ['verdict', 'head', 'warning'];

/** Warnings belong to the verdict or the head above them, and cautions to one another, without an empty line. */
const gap = (before: Block['kind'] | undefined, kind: Block['kind']): string =>
  (kind === 'warning' && before !== undefined && WARNED.includes(before)) ||
  (kind === 'caution' && before === 'caution') ||
  (kind === 'note' && before === 'caution')
    ? '\n'
    : '\n\n';

function blockText(block: Block, printed: Printed): string {
  const { width, reading, files } = printed;
  const fold = (text: string): string => foldText(text, width);
  switch (block.kind) {
    case 'head':
      return fold(reading === 'short' && block.short !== undefined ? block.short : block.lines.join('\n'));
    case 'warning':
      return fold(`Warning: ${block.text}`);
    case 'caution':
      return fold(
        reading === 'short' && block.short !== undefined
          ? cautionText({ ...block, text: block.short })
          : cautionText(block),
      );
    case 'table':
      return [
        renderTableText(block.table, { width, keepsAll: reading === 'whole' }).trimEnd(),
        ...(block.note === undefined ? [] : [fold(block.note)]),
      ].join('\n');
    case 'plot':
      return plotText(block.plot, plotSize(width));
    case 'sheet':
      return files.length === 0
        ? ''
        : fold(`Wrote ${files.join(', ')}${block.about === '' ? '.' : `: ${block.about}.`}`);
    default:
      return fold(block.text);
  }
}
