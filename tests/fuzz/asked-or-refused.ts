import process from 'node:process';
import type { Io } from '../../src/cli/io.ts';
import { printReport } from '../../src/cli/output/print-report.ts';
import { reportError } from '../../src/cli/output/report-error.ts';
import { renderSvg } from '../../src/documents/render/svg.ts';
import { quietly } from '../../src/reports/occasion.ts';
import { QUESTIONS, type QuestionName } from '../../src/reports/questions.ts';
import type { Report } from '../../src/reports/report.ts';
import { inUnits } from '../../src/reports/session.ts';
import type { OpenSetup } from '../../src/setup/open.ts';
import { Astray, GIVEN } from './read-or-refused.ts';

/** What is asked of a sound setup, with few arrows where there could be many. */
export const ASKED: readonly (readonly [name: QuestionName, given: Readonly<Record<string, unknown>>])[] = [
  ['marks', { every: '20 yd' }],
  ['fly', { every: '20 yd' }],
  ['fit', {}],
  ['tape', {}],
  ['check', {}],
  ['cant', { every: '40 yd' }],
  ['wind', { every: '40 yd' }],
  ['card', { every: '20 yd' }],
  ['slope', { every: '30 yd', stand: '20 ft' }],
  ['misjudge', { every: '40 yd' }],
  ['swing', { every: '40 yd' }],
  ['broadhead', { every: '40 yd' }],
  ['pins', {}],
  ['tune', {}],
  ['compare', { every: '30 yd', arrows: 0 }],
  ['scatter', { every: '40 yd', arrows: 24 }],
  ['vary', { over: ['arrow.mass=400gr,450gr'] }],
];

/** What a person sees of it, with line ends and the like taken off by the door. */
const ASTRAY = /\bundefined\b|\[object |\bNaN\b|\bInfinity\b|\bnull\b/;
/** A question takes well under a second; what takes this long, s, is no answer. */
const LONGEST_ANSWER = 10;

/**
 * Asks one question of a sound setup, and prints the answer in every way, or the reason why there is none.
 *
 * @returns whether there is an answer
 * @throws Astray for an answer with numbers that are none, or a reason that is no reason
 */
export async function askedOrRefused(
  setup: OpenSetup,
  name: QuestionName,
  given: Readonly<Record<string, unknown>>,
  units: 'imperial' | 'metric',
): Promise<boolean> {
  const before = process.cpuUsage();
  const told = { out: '', err: '' };
  const io = screen(told);
  try {
    const report = await QUESTIONS[name].ask(
      [inUnits(setup, units)],
      given,
      units,
      quietly('2026-01-02', true),
    );
    sound(name, report, io, told, setup.text);
    const { user, system } = process.cpuUsage(before);
    const taken = (user + system) / 1e6;
    if (taken > LONGEST_ANSWER) throw new Astray(`${name} took ${taken.toFixed(1)} s`);
    return true;
  } catch (error) {
    if (error instanceof Astray) throw error;
    reasonable(name, error, reportError(error, io, false), told.err);
    return false;
  }
}

/** A terminal that keeps what it is told. */
export const screen = (told: { out: string; err: string }): Io => ({
  out: (text) => {
    told.out += text;
  },
  err: (text) => {
    told.err += text;
  },
  readText: () => {
    throw new Error('no file is read here');
  },
  fonts: async () => ({ font: new Uint8Array(), boldFont: new Uint8Array() }),
  exists: () => false,
  writeWhole: () => {},
  now: () => new Date(0),
  columns: 80,
});

function sound(name: string, report: Report, io: Io, told: { out: string }, text: string): void {
  const wrong =
    notFinite(report.data, 'data') ?? notFinite(report.blocks, 'blocks') ?? notFinite(report.rows, 'rows');
  if (wrong !== null) throw new Astray(`${name}: ${wrong}`);
  for (const form of [{}, { all: true }, { csv: true }]) printReport(io, form, report, []);
  for (const page of report.sheet?.pages ?? []) told.out += renderSvg(page, { title: report.title });
  const found = ASTRAY.exec(told.out);
  if (found !== null && !GIVEN.test(text))
    throw new Astray(`${name} prints ${around(told.out, found.index)}`);
}

function reasonable(name: string, error: unknown, code: number, words: string): void {
  const says = `${name}: ${words.trim()}`;
  if (words.startsWith('Unexpected')) throw error;
  if (code !== 1 && code !== 2) throw new Astray(`exit code ${code} of ${says}`);
  if (ASTRAY.test(words)) throw new Astray(says);
}

export const around = (text: string, index: number): string =>
  JSON.stringify(text.slice(Math.max(0, index - 80), index + 40));

/** The place of the first number that is none; null where all are finite. */
export function notFinite(value: unknown, path: string): string | null {
  if (typeof value === 'number') return Number.isFinite(value) ? null : `${path} is ${value}`;
  if (typeof value !== 'object' || value === null) return null;
  for (const [key, child] of Object.entries(value)) {
    const found = notFinite(child, `${path}.${key}`);
    if (found !== null) return found;
  }
  return null;
}
