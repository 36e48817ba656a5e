import { describe, expect, it } from 'vitest';
import { allClaims } from './all-claims.ts';

describe.each([...(await allClaims())])('$claim', ({ cases, unit, source, notCovered }) => {
  it('has cases, a source, and says what it does not cover', () => {
    expect(cases.length).toBeGreaterThan(0);
    expect(source).not.toBe('');
    expect(notCovered).not.toBe('');
  });

  it.each([...cases])(`$name: off by $error, allowed $allowed (${unit})`, ({ error, allowed }) => {
    expect(allowed).toBeGreaterThan(0);
    expect(error).toBeGreaterThanOrEqual(0);
    expect(error).toBeLessThanOrEqual(allowed);
  });
});
