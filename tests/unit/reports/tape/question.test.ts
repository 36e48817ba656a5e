import { describe, expect, it } from 'vitest';
import { filled } from '../../../../src/reports/asked/fill.ts';
import { question } from '../../../../src/reports/tape/question.ts';

describe('the ranges of a tape that nobody wrote', () => {
  it.each([
    [{}, 'imperial', '20 yd', '100 yd'],
    [{ in: 'metres' }, 'imperial', '20 m', '100 m'],
    [{}, 'metric', '20 m', '100 m'],
    [{ in: 'metres', from: '18 yd' }, 'imperial', '18 yd', '100 m'],
  ] as const)('%o with %s units are from %s to %s', (given, system, from, to) =>
    expect(filled(question, given, system)).toMatchObject({ from, to }),
  );
});
