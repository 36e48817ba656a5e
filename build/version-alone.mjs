import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/** For esbuild: a module that imports our package.json gets the version and nothing else of it. */
export const versionAlone = (root) => ({
  name: 'version-alone',
  setup({ onLoad }) {
    onLoad({ filter: /[/\\]package\.json$/ }, ({ path }) => {
      if (path !== join(root, 'package.json')) return undefined;
      const { version } = JSON.parse(readFileSync(path, 'utf8'));
      return { contents: JSON.stringify({ version }), loader: 'json' };
    });
  },
});
