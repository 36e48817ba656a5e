import * as fs from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { writeWhole } from '../../src/cli/world/whole-file.ts';

/** What the system was asked for, in order. */
const calls = vi.hoisted((): { name: string; args: readonly unknown[] }[] => []);
vi.mock('node:fs', async (importOriginal) => {
  const real = await importOriginal<typeof fs>();
  const told = <A extends readonly unknown[], R>(name: string, call: (...args: A) => R) => {
    return (...args: A): R => {
      calls.push({ name, args });
      return call(...args);
    };
  };
  return {
    ...real,
    openSync: told('open', real.openSync),
    fsyncSync: told('sync', real.fsyncSync),
    renameSync: told('rename', real.renameSync),
  };
});

const folder = fs.mkdtempSync(join(tmpdir(), 'quillpath-'));
afterAll(() => fs.rmSync(folder, { recursive: true, force: true }));
beforeEach(() => calls.splice(0));

describe('a file that is written whole', () => {
  const target = join(folder, 'tape.svg');

  it('is on the disk before it has its name, so that a power cut leaves the old one or the new one', () => {
    writeWhole(target, 'new');
    expect(calls.map(({ name }) => name)).toEqual(['open', 'sync', 'rename']);
    expect(calls.at(-1)?.args[1]).toBe(fs.realpathSync(target));
  });

  it('is written beside its name under one that nobody foresees, and through no link that is laid there', () => {
    for (const content of ['one', 'two']) writeWhole(target, content);
    const opened = calls.filter(({ name }) => name === 'open');
    expect(new Set(opened.map(({ args }) => args[0])).size).toBe(2);
    for (const { args } of opened)
      expect(args).toEqual([expect.stringMatching(/-[0-9a-f]{16}\.part$/), 'wx']);
    expect(fs.readFileSync(target, 'utf8')).toBe('two');
    expect(fs.readdirSync(folder)).toEqual(['tape.svg']);
  });
});
