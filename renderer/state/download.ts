import type { MadeFile } from '../../core/api/projectApi.ts';

/** Hands a file to the user through the browser's own download. */
export function download(file: MadeFile): void {
  const url = URL.createObjectURL(new Blob([file.bytes as BlobPart], { type: file.mediaType }));
  const link = document.createElement('a');
  link.href = url;
  link.download = file.fileName;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}
