import type { Server } from 'node:http';

/** Answers with the files of a folder and nothing else; `under` is the address that the folder has. */
export declare const pageServer: (from?: string, under?: string) => Server;
