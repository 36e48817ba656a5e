import { LARGEST_FILE, setupsIn } from './state-file.ts';

export interface OpenedFile {
  readonly name: string;
  readonly text: string;
}

/** Offers bytes or text as a file to be saved. */
export function saveFile(name: string, content: string | Uint8Array, type: string): void {
  const bytes = typeof content === 'string' ? content : content.slice();
  const address = URL.createObjectURL(new Blob([bytes], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  const A_MINUTE = 60_000;
  setTimeout(() => URL.revokeObjectURL(address), A_MINUTE);
}

/** The setups in files that were chosen or dropped. @throws Error with a sentence for a file that is no setup */
export async function readFiles(files: readonly File[]): Promise<readonly OpenedFile[]> {
  const read = await Promise.all(
    files.map(async (file) => {
      if (file.size > LARGEST_FILE) throw new Error(`${file.name} is too long for a setup file.`);
      return setupsIn(file.name, await file.text());
    }),
  );
  return read.flat();
}

/** Lets a person choose files. */
export function chooseFiles(chosen: (files: readonly File[]) => void): void {
  const input = document.createElement('input');
  input.type = 'file';
  input.multiple = true;
  input.accept = '.yaml,.yml,.json,.txt';
  input.addEventListener('change', () => chosen([...(input.files ?? [])]));
  input.click();
}

/** Takes files that are dropped anywhere on the page. */
export function takeDropped(dropped: (files: readonly File[]) => void): void {
  document.addEventListener('dragover', (event) => event.preventDefault());
  document.addEventListener('drop', (event) => {
    event.preventDefault();
    dropped([...(event.dataTransfer?.files ?? [])]);
  });
}
