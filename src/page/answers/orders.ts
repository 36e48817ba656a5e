import type { Drawing } from '../../quillpath.ts';
import type { Asked, Outcome } from './answer.ts';

/** What a worker is sent. */
export type Order =
  | { readonly id: number; readonly asked: Asked }
  | { readonly id: number; readonly paper: PaperOrder };

/** A document as a PDF. */
export interface PaperOrder {
  readonly drawing: Drawing;
  readonly title: string;
  readonly dated: number;
}

/** What a worker says: that it is ready, how far it is, what it found. */
export type Reply =
  | { readonly ready: true }
  | { readonly id: number; readonly label: string; readonly done: number; readonly total: number }
  | { readonly id: number; readonly outcome: Outcome }
  | { readonly id: number; readonly pdf: Uint8Array }
  | { readonly id: number; readonly failed: string };
