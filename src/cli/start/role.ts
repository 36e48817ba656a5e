import { workerData } from 'node:worker_threads';
import { THREAD } from '../world/thread-role.ts';

/** One file is the program and its threads. */
if (workerData === THREAD) void import('../world/worker.ts');
else void import('../main.ts');
