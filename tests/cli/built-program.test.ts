import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, inject, it } from 'vitest';
import { atTerminal } from './terminal.ts';

const program = join(inject('dist'), 'main.js');
const folder = mkdtempSync(join(tmpdir(), 'quillpath-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** The clock of `terminal.ts`, for a process of its own. */
const CLOCK = `data:text/javascript,${encodeURIComponent(
  "globalThis.Date=class extends Date{constructor(...a){super(...(a.length>0?a:['2026-01-02T03:04:05Z']))}}",
)}`;

describe('the program as it is built', () => {
  // The build puts small stand-ins in the place of packages of which a document needs nothing or little.
  it.each(['tape', 'fit'])(
    'writes the PDF of %s that its sources write, to the last byte',
    async (question) => {
      const [asked, name] = [
        [question, 'examples/mountain-hunt/setup.yaml'],
        join(folder, `${question}.pdf`),
      ];
      const { files } = await atTerminal([...asked, '--out', name]);
      execFileSync(process.execPath, ['--import', CLOCK, program, ...asked, '--out', name]);
      expect(Buffer.compare(readFileSync(name), Buffer.from(files.get(name) ?? ''))).toBe(0);
    },
  );
});
