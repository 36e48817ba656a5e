import process from 'node:process';
import { THREAD } from '../world/thread-role.ts';

/**
 * One file is the program and its threads. Whether it is a thread is asked only of one that may be: what knows takes a while to
 * load.
 */
async function isThread(): Promise<boolean> {
  return process.argv[2] === THREAD && !(await import('node:worker_threads')).isMainThread;
}

void isThread().then((itIs) => (itIs ? import('../world/worker.ts') : import('../main.ts')));
