/**
 * Keeps the pieces of the command line with their code as V8 compiled it: half of a short run is compiling. Run by itself, in a process
 * like those that will use the code, it is given the folder of the pieces and that of the project.
 */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import process from 'node:process';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { Script } from 'node:vm';
import { crc32 } from 'node:zlib';

/** The first line of a piece, which says which one it is: as in src/cli/start/kept-code.ts. */
const IDENTITY_BYTES = 20;

/**
 * Only what has run is compiled, and only what is compiled is kept. A tape takes longest and runs most of what every answer needs; what
 * more were kept would be read at every start, which takes as long as to compile it where it is needed.
 */
const asked = (setup, folder) => ['tape', setup, '--out', join(folder, 'tape.pdf')];

/**
 * Write the pieces and keep their code. Before Node 20.15 there is no checksum to tell sound code by, so none are kept.
 *
 * @param boot the function that starts the modules, as text
 */
export function keepCode(folder, { pieces, boot }, root) {
  if (typeof crc32 !== 'function') return;
  mkdirSync(folder);
  for (const [name, text] of Object.entries(pieces)) writeFileSync(join(folder, `${name}.js`), text);
  const argv = [fileURLToPath(import.meta.url), folder, root];
  const { status } = spawnSync(process.execPath, argv, { input: boot, stdio: ['pipe', 'ignore', 'inherit'] });
  if (status !== 0) throw new Error('the code of the command line could not be kept: see the messages above');
}

/** Answer as the program would, then write the code that has come about. */
function askAndKeep(folder, root) {
  const compiled = ['core', 'paper'].map((name) => {
    const filename = join(folder, `${name}.js`);
    const source = readFileSync(filename);
    return { filename, source, script: new Script(source.toString('latin1'), { filename }) };
  });
  const [core, paper] = compiled.map(({ script }) => script);
  const boot = new Script(`(${readFileSync(STANDARD_INPUT, 'utf8')})`).runInThisContext();
  const here = join(folder, 'core.js');
  const parts = core.runInThisContext();
  const more = () => paper.runInThisContext();
  const out = mkdtempSync(join(tmpdir(), 'quillpath-build-'));
  process.argv.splice(2, process.argv.length, ...asked(join(root, 'examples/mountain-hunt/setup.yaml'), out));
  process.on('exit', (status) => {
    rmSync(out, { recursive: true });
    if (status !== 0) return;
    for (const { filename, source, script } of compiled)
      write(`${filename}.cache`, source, script.createCachedData());
  });
  boot(parts, createRequire(here), pathToFileURL(here).href, more);
}

const STANDARD_INPUT = 0;

/** The file is whole or not there: it is written under another name first. */
function write(file, source, code) {
  const head = Buffer.alloc(4);
  head.writeUInt32LE(crc32(code, crc32(source.subarray(0, IDENTITY_BYTES))));
  writeFileSync(`${file}.part`, Buffer.concat([head, code]));
  renameSync(`${file}.part`, file);
}

const [, started, folder, root] = process.argv;
if (started === fileURLToPath(import.meta.url)) askAndKeep(folder, root);
