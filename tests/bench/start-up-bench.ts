import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { at } from '../../src/numerics/at.ts';
import { summary } from './timing.ts';

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

/** Whole processes against an empty one, in turn. */
export function startUpLines(): readonly string[] {
  const folder = mkdtempSync(join(tmpdir(), 'bench-'));
  const commands: readonly (readonly [string, number, readonly string[]])[] = [
    ['--version', 1.3, ['dist/main.js', '--version']],
    ['marks', 3, ['dist/main.js', 'marks', SETUP]],
    ['tape', 4, ['dist/main.js', 'tape', SETUP, '--out', join(folder, 'tape.pdf')]],
  ];
  const all = [['-e', '0'], ...commands.map(([, , args]) => args)];
  const times = all.map((): number[] => []);
  for (let round = 0; round < ROUNDS; round += 1)
    for (const [i, args] of all.entries()) times[i]?.push(launchTime(args));
  const medians = times.map((list) => summary(list).median);
  const [empty, ours] = [at(medians, 0), medians.slice(1)];
  const lines = commands.map(([name, target, args], i) => {
    const peak = spawnSync(process.execPath, ['--import', MEMORY_HOOK, ...args], { encoding: 'utf8' });
    const memory = Number(/peak (\d+)/.exec(peak.stderr)?.[1]) / 1024;
    const time = at(ours, i);
    const share = `${(time / empty).toFixed(2)} times node -e 0 (target ${target})`;
    return `${name}: ${time.toFixed(0)} ms, ${share}; peak memory ${memory.toFixed(0)} MB (target 150)`;
  });
  rmSync(folder, { recursive: true });
  return lines;
}
