import { describe, expect, it } from 'vitest';
import { slipOf } from '../../../src/quantities/explain.ts';
import { parseQuantity } from '../../../src/quantities/parse.ts';
import { QuantityError } from '../../../src/quantities/quantity-error.ts';
import { SLIPS } from '../../../src/quantities/slips.ts';

const cases = SLIPS.map((slip) => [slip.name, slip] as const);

function errorOf(read: () => unknown): QuantityError {
  try {
    read();
  } catch (error) {
    if (error instanceof QuantityError) return error;
  }
  throw new Error('it was read');
}

describe.each(cases)('%s', (_name, slip) => {
  const { text, dimension } = slip.example;
  const error = errorOf(() => parseQuantity(text, dimension));

  it('is known by its example, and by none that is tried before it', () =>
    expect(slipOf(text.trim()).slip).toBe(slip));
  it('gives its code, and says what was written', () => {
    expect(error.code).toBe(slip.code);
    expect(error.found).toBe(text);
    if (slip.code !== 'empty') expect(error.reason).toContain(text.trim().slice(0, 40));
  });
  it('says something to write that can be read', () => {
    const [, written = ''] = /^"([^"]*)"/.exec(error.suggestion) ?? [];
    expect(Number.isFinite(parseQuantity(written, dimension))).toBe(true);
  });
});

it('no two slips have one name', () =>
  expect(new Set(SLIPS.map(({ name }) => name)).size).toBe(SLIPS.length));
