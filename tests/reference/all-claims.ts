import { readdirSync } from 'node:fs';
import type { Claim } from './claim.ts';

/** Every claim of `claims/`, a file at a time in the order of their names; a file without claims is an error. */
export async function allClaims(): Promise<readonly Claim[]> {
  const names = readdirSync('tests/reference/claims')
    .filter((name) => name.endsWith('.ts'))
    .map((name) => name.slice(0, -3))
    .toSorted();
  const modules = await Promise.all(
    names.map(async (name) => {
      const { claims }: { claims: readonly Claim[] } = await import(`./claims/${name}.ts`);
      if (claims.length === 0) throw new Error(`tests/reference/claims/${name}.ts makes no claim`);
      return claims;
    }),
  );
  return modules.flat();
}
