#!/usr/bin/env node
/**
 * Shows the page that `node build.mjs page` built: serves it to this machine alone and prints the address. With --name it only says
 * where the page is: it opens from the disk as well.
 */
import { readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join, normalize } from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { PAGE_POLICY } from './build/page.mjs';

const PORT = 8617;
const TYPES = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.webmanifest': 'application/manifest+json',
};
const folder = fileURLToPath(new URL('./dist/page/', import.meta.url));

/** Answers with the files of a folder and nothing else; `under` is the address that the folder has. */
export const pageServer = (from = folder, under = '/') =>
  createServer(({ url = '/' }, answer) => {
    const path = new URL(url, 'http://localhost').pathname;
    const name = normalize(decodeURIComponent(path.slice(under.length) || 'index.html'));
    try {
      if (!path.startsWith(under) || name.startsWith('..')) throw new Error('not ours');
      const bytes = readFileSync(join(from, name));
      answer.writeHead(200, {
        'Content-Type': TYPES[extname(name)] ?? 'application/octet-stream',
        ...(extname(name) === '.html' && name !== 'quillpath.html'
          ? { 'Content-Security-Policy': `${PAGE_POLICY}; frame-ancestors 'none'` }
          : {}),
        'X-Content-Type-Options': 'nosniff',
        'Cache-Control': 'no-cache',
      });
      answer.end(bytes);
    } catch {
      answer.writeHead(404, { 'Content-Type': 'text/plain' });
      answer.end('There is no such file.\n');
    }
  });

function serve(port) {
  const server = pageServer();
  server.once('error', (error) => {
    if (error.code !== 'EADDRINUSE' || port === 0) throw error;
    serve(0);
  });
  server.listen(port, '127.0.0.1', () => {
    process.stdout.write(`The page is at http://127.0.0.1:${server.address().port}/ (Ctrl+C ends it)\n`);
  });
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  if (process.argv[2] === '--name')
    process.stdout.write('\nThe same in a browser: open dist/page/index.html, or run: npm run page\n');
  else serve(PORT);
}
