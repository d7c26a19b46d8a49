import type { PhonePhoto } from '../../../core/exchange/phone/phonePage.ts';
import { localDate } from '../../../core/words/dates.ts';
import type { OpenFile } from '../../state/appState.ts';
import { download } from '../../state/download.ts';
import { host } from '../../state/session.ts';
import { figuresOf } from '../../state/useFigures.ts';
import { measureText } from './measureText.ts';

/** Small copies only, and no more than a phone opens at once. */
const mostPhotoBytes = 12 * 1024 * 1024;
const atOnce = 8;

export interface PhoneFileMade {
  readonly fileName: string;
  /** Photos that found no room. */
  readonly photosLeft: number;
}

/** Makes the page for the phone and hands it over. */
export async function makePhoneFile({ project, survey, fileName }: OpenFile): Promise<PhoneFileMade> {
  const { phonePage } = await import('../../../core/exchange/phone/phonePage.ts');
  const { photos, left } = await crossingPhotos(project);
  const date = localDate(new Date());
  await document.fonts.ready;
  const html = phonePage({ project, survey, date, measure: measureText, photos });
  const made = figuresOf(project).words.window.find.along.fileName({ property: fileName, date });
  download({ fileName: made, mediaType: 'text/html', bytes: new TextEncoder().encode(html) });
  return { fileName: made, photosLeft: left };
}

async function crossingPhotos(project: OpenFile['project']): Promise<{ photos: PhonePhoto[]; left: number }> {
  const all = [...project.photo.values()].filter(({ of }) => of?.kind === 'crossing' || of?.kind === 'inGround');
  const photos: PhonePhoto[] = [];
  let bytesSoFar = 0;
  for (let from = 0; from < all.length && bytesSoFar < mostPhotoBytes; from += atOnce) {
    const some = all.slice(from, from + atOnce);
    const answer = await host().project.photoBytes({ blobIds: some.map(({ thumbId }) => thumbId) });
    if (!answer.ok) break;
    answer.value.forEach((bytes, i) => {
      if (!bytes || bytesSoFar + bytes.length > mostPhotoBytes) return;
      bytesSoFar += bytes.length;
      photos.push({ crossingId: some[i]!.of!.id, caption: some[i]!.caption, base64: base64Of(bytes) });
    });
  }
  return { photos, left: all.length - photos.length };
}

/** In pieces: a call takes only so many arguments. */
function base64Of(bytes: Uint8Array): string {
  let letters = '';
  for (let at = 0; at < bytes.length; at += 0x8000) letters += String.fromCharCode(...bytes.subarray(at, at + 0x8000));
  return btoa(letters);
}
