import { plotText, type TerminalSize } from '../../documents/plot/terminal-plot.ts';
import { renderTableText } from '../../documents/render/text.ts';
import { cautionText } from '../../reports/cautions.ts';
import type { Block } from '../../reports/report.ts';

/** A report for a terminal: paragraphs with one empty line between them, and one line end after the last. */
export function reportText(blocks: readonly Block[], size: TerminalSize, files: readonly string[]): string {
  const shown = blocks
    .map((block) => ({ kind: block.kind, text: blockText(block, size, files).trimEnd() }))
    .filter(({ text }) => text !== '');
  return `${shown
    .map(({ kind, text }, i) => (i === 0 ? '' : gap(shown[i - 1]?.kind, kind)) + text)
    .join('')}\n`;
}

const WARNED: readonly Block['kind'][] = ['verdict', 'head', 'warning'];

/** Warnings belong to the verdict or the head above them, and cautions to one another, without an empty line. */
const gap = (before: Block['kind'] | undefined, kind: Block['kind']): string =>
  (kind === 'warning' && before !== undefined && WARNED.includes(before)) ||
  (kind === 'caution' && before === 'caution')
    ? '\n'
    : '\n\n';

function blockText(block: Block, size: TerminalSize, files: readonly string[]): string {
  switch (block.kind) {
    case 'head':
      return block.lines.join('\n');
    case 'warning':
      return `Warning: ${block.text}`;
    case 'caution':
      return cautionText(block);
    case 'table':
      return [renderTableText(block.table).trimEnd(), ...(block.note === undefined ? [] : [block.note])].join(
        '\n',
      );
    case 'plot':
      return plotText(block.plot, size);
    case 'sheet':
      return files.length === 0
        ? ''
        : `Wrote ${files.join(', ')}${block.about === '' ? '.' : `: ${block.about}.`}`;
    default:
      return block.text;
  }
}
