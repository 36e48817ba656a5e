import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { at } from '../../src/numerics/at.ts';
import type { Figure } from './figure.ts';
import { median } from './timing.ts';

const SETUP = 'examples/mountain-hunt/setup.yaml';
const ROUNDS = 11;

/** A hook that tells a process's own peak memory on its standard error when it ends. */
const MEMORY_HOOK =
  'data:text/javascript,' +
  'process.on("exit",()=>process.stderr.write("peak "+process.resourceUsage().maxRSS+"\\n"))';

const launchTime = (args: readonly string[]): number => {
  const start = performance.now();
  const { status } = spawnSync(process.execPath, args, { stdio: 'ignore' });
  if (status !== 0) throw new Error(`node ${args.join(' ')} ended with ${status}`);
  return performance.now() - start;
};

/** What package.json says is started. */
const entry = (): string => {
  const { bin } = JSON.parse(readFileSync('package.json', 'utf8'));
  return typeof bin === 'string' ? bin : bin.quillpath;
};

/** Own peak memory of a process, MB. */
function peakMemory(args: readonly string[]): number {
  const { stderr } = spawnSync(process.execPath, ['--import', MEMORY_HOOK, ...args], { encoding: 'utf8' });
  const [, kilobytes] = /peak (\d+)/.exec(stderr) ?? [];
  if (kilobytes === undefined) throw new Error(`node ${args.join(' ')} told no peak memory`);
  return Number(kilobytes) / 1024;
}

/** Whole processes against an empty one, in turn: time and peak memory. */
export function startUpFigures(): readonly Figure[] {
  const folder = mkdtempSync(join(tmpdir(), 'bench-'));
  const empty = ['-e', '0'];
  const program = entry();
  const commands: readonly (readonly [string, number, readonly string[]])[] = [
    ['--version', 1.1, [program, '--version']],
    ['marks', 2.5, [program, 'marks', SETUP]],
    ['tape', 3.6, [program, 'tape', SETUP, '--out', join(folder, 'tape.pdf')]],
  ];
  const rounds = Array.from({ length: ROUNDS }, () =>
    [empty, ...commands.map(([, , args]) => args)].map((args) => launchTime(args)),
  );
  const least = peakMemory(empty);
  const of = 'node -e 0';
  const figures = commands.flatMap(([name, target, args], i): readonly Figure[] => {
    const time = median(rounds.map((round) => at(round, i + 1)));
    const ratio = time / median(rounds.map((round) => at(round, 0)));
    const peak = peakMemory(args);
    return [
      { name, ratio, of, target, more: `${time.toFixed(0)} ms` },
      {
        name: `peak memory of ${name}`,
        ratio: peak / least,
        of,
        more: `${peak.toFixed(0)} MB (target 150 MB)`,
      },
    ];
  });
  rmSync(folder, { recursive: true });
  return figures;
}
