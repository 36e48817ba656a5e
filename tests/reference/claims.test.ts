import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Claim } from './claim.ts';

const files = readdirSync('tests/reference/claims').filter((name) => name.endsWith('.ts'));
const modules: { claims: readonly Claim[] }[] = await Promise.all(
  files.map((name) => import(`./claims/${name}`)),
);
const claims = modules.flatMap((module) => module.claims);

it('there is at least one claim in every file', () => {
  expect(modules.filter((module) => module.claims.length === 0)).toEqual([]);
});

describe.each(claims)('$claim', ({ cases, unit }) => {
  it('has cases', () => expect(cases.length).toBeGreaterThan(0));

  it.each([...cases])(`$name: off by $error, allowed $allowed (${unit})`, ({ error, allowed }) => {
    expect(allowed).toBeGreaterThan(0);
    expect(error).toBeGreaterThanOrEqual(0);
    expect(error).toBeLessThanOrEqual(allowed);
  });
});
