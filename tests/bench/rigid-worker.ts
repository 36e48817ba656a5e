import { parentPort } from 'node:worker_threads';
import { rigidShots } from './rigid-shots.ts';

parentPort?.on('message', ([from, to]: readonly [number, number]) =>
  parentPort?.postMessage(rigidShots(from, to)),
);
