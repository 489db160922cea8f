import type { SavedFile } from '../../store/recordFiles.ts';

/** Hands a file to the browser, which saves it where the person keeps such things. */
export function saveFile({ name, type, content }: SavedFile): void {
  const address = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The download has its own hold on the data once it has begun.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
