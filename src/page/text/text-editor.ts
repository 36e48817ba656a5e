import type { Desk } from '../screen/desk.ts';
import { button, element, freshId, refill } from '../show/element.ts';

export interface TextEditor {
  readonly view: HTMLElement;
  readonly refresh: () => void;
  readonly showLine: (line: number, column: number) => void;
}

/** The text itself, with every problem of it by line; each leads to its place. */
export function textEditor({ bench }: Desk): TextEditor {
  const id = freshId('text');
  const area = element('textarea', {
    id,
    class: 'text',
    rows: 24,
    spellcheck: 'false',
    autocapitalize: 'off',
    autocomplete: 'off',
    wrap: 'off',
    oninput: () => bench.write(area.value, 'the text'),
    onblur: bench.settle,
  });
  return {
    view: element('div', { class: 'text-editor' }, element('label', { for: id }, 'The setup as text'), area),
    refresh: () => {
      const { text } = bench.open.value().history;
      if (area.value !== text) area.value = text;
    },
    showLine: (line, column) => {
      const lines = area.value.split('\n');
      const found = lines[line - 1];
      area.focus();
      if (found === undefined) return;
      const start = lines.slice(0, line - 1).reduce((sum, each) => sum + each.length + 1, 0);
      area.setSelectionRange(start + Math.max(column - 1, 0), start + found.length);
      area.scrollTop = (area.scrollHeight / lines.length) * Math.max(line - 4, 0);
    },
  };
}

/** The problems of the text as a list; nothing while there are none. */
export function problemList({ bench, showLine }: Desk): {
  readonly view: HTMLElement;
  readonly refresh: () => void;
} {
  const view = element('div', { class: 'problems', 'aria-live': 'polite' });
  const refresh = (): void => {
    const { problems } = bench.reading();
    if (problems.length === 0) {
      refill(view);
      return;
    }
    refill(
      view,
      element(
        'p',
        {},
        problems.length === 1 ? 'One thing to put right:' : `${problems.length} things to put right:`,
      ),
      element(
        'ul',
        {},
        problems.map(({ line, column, message }) =>
          element(
            'li',
            {},
            button(message.replace(/^.*?:(\d+):\d+\s+/, 'Line $1: '), () => showLine(line, column), {
              class: 'link',
            }),
          ),
        ),
      ),
    );
  };
  return { view, refresh };
}
