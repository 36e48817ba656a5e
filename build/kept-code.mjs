/**
 * Keeps the code of the command line as V8 compiled it, beside the script: half of a short run is compiling. Run by itself, in a process
 * like those that will use the code, it is given the script and the folder of the project.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import process from 'node:process';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { Script } from 'node:vm';
import { crc32 } from 'node:zlib';

/** The first two lines of the script, which say which one it is: as in src/cli/start/kept-code.ts. */
const IDENTITY_BYTES = 40;

/** What is asked for most: only what has run is compiled, and only what is compiled is kept. */
const asked = (setup, folder) => [
  ['tape', setup, '--out', join(folder, 'tape.pdf')],
  ['card', setup, '--out', join(folder, 'card.svg')],
  ['cant', setup],
  ['check', setup],
  ['fit', setup],
  ['marks', setup],
];

/** Keep the code of a script. Before Node 20.15 there is no checksum to tell sound code by, so none is kept. */
export function keepCode(script, root) {
  if (typeof crc32 !== 'function') return;
  const argv = [fileURLToPath(import.meta.url), script, root];
  const { status } = spawnSync(process.execPath, argv, { stdio: ['ignore', 'ignore', 'inherit'] });
  if (status !== 0) throw new Error('the code of the command line could not be kept: see the messages above');
}

/** Ask everything in turn in this one process, then write the code that has come about. */
function askAndKeep(script, root) {
  const source = readFileSync(script);
  const compiled = new Script(source.toString('latin1'), { filename: script });
  const start = compiled.runInThisContext();
  const load = createRequire(script);
  const folder = mkdtempSync(join(tmpdir(), 'quillpath-build-'));
  const left = asked(join(root, 'examples/mountain-hunt/setup.yaml'), folder);
  process.on('beforeExit', () => {
    const argv = left.shift();
    if (argv === undefined) return;
    process.argv.splice(2, process.argv.length, ...argv);
    // Something to wait for, without which the process would not come back here.
    setImmediate(() => start(load, pathToFileURL(script).href));
  });
  process.on('exit', (status) => {
    rmSync(folder, { recursive: true });
    if (status === 0) write(`${script}.cache`, source, compiled.createCachedData());
  });
}

/** The file is whole or not there: it is written under another name first. */
function write(file, source, code) {
  const head = Buffer.alloc(4);
  head.writeUInt32LE(crc32(code, crc32(source.subarray(0, IDENTITY_BYTES))));
  writeFileSync(`${file}.part`, Buffer.concat([head, code]));
  renameSync(`${file}.part`, file);
}

const [, started, script, root] = process.argv;
if (started === fileURLToPath(import.meta.url)) askAndKeep(script, root);
