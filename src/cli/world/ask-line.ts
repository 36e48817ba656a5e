import { createInterface, type Interface } from 'node:readline';

/** The lines that were typed: several may come at once when they are pasted, and none may be lost between two questions. */
let open: Interface | undefined;
let isClosed = false;
const typed: string[] = [];
let waiting: ((line: string | null) => void) | undefined;

/** Where a person types and reads. */
export interface Terminal {
  readonly input: NodeJS.ReadStream;
  readonly output: NodeJS.WriteStream;
}

/** One line from the person at the terminal; null when there are no more, as after Ctrl-C or Ctrl-D. */
export function askLine(terminal: Terminal, prompt: string): Promise<string | null> {
  open ??= opened(terminal);
  terminal.input.ref();
  open.setPrompt(prompt);
  if (!isClosed) open.prompt();
  return new Promise<string | null>((resolve) => {
    const first = typed.shift();
    if (first !== undefined) resolve(first);
    else if (isClosed) resolve(null);
    else waiting = resolve;
  }).finally(() => {
    // Between two questions nothing keeps the program from ending.
    terminal.input.unref();
  });
}

function opened(terminal: Terminal): Interface {
  const lines = createInterface(terminal);
  lines.on('line', (line) => {
    if (waiting === undefined) typed.push(line);
    else answer(line);
  });
  lines.on('close', () => {
    isClosed = true;
    answer(null);
  });
  return lines;
}

function answer(line: string | null): void {
  const resolve = waiting;
  waiting = undefined;
  resolve?.(line);
}
