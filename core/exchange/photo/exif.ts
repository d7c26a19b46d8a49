import type { LonLat } from '../../model/things.ts';

/** What a camera wrote into a photo. */
export interface PhotoTags {
  /** ISO 8601 local date and time, without a zone: the camera's own clock. */
  readonly takenAt: string | null;
  readonly gps: LonLat | null;
}

const none: PhotoTags = { takenAt: null, gps: null };

/** Tags of the Exif standard (CIPA DC-008, the same as JEITA CP-3451), by their numbers in TIFF 6.0 directories. */
const tag = {
  exifDirectory: 0x8769,
  gpsDirectory: 0x8825,
  dateTime: 0x0132,
  dateTimeOriginal: 0x9003,
  latitudeRef: 1,
  latitude: 2,
  longitudeRef: 3,
  longitude: 4,
} as const;

/** Date and place from a JPEG's Exif tags; nulls where it has none, or they can't be read. Never throws. */
export function photoTags(jpeg: Uint8Array): PhotoTags {
  try {
    const tiff = exifSegment(jpeg);
    return tiff ? readTags(new Tiff(tiff)) : none;
  } catch (error) {
    if (error instanceof RangeError) return none;
    throw error;
  }
}

/** The TIFF inside a JPEG's APP1 segment that begins "Exif"; null where there is none. */
function exifSegment(jpeg: Uint8Array): DataView | null {
  const view = new DataView(jpeg.buffer, jpeg.byteOffset, jpeg.byteLength);
  if (view.byteLength < 4 || view.getUint16(0) !== 0xffd8) return null;
  let at = 2;
  while (at + 4 <= view.byteLength && view.getUint8(at) === 0xff) {
    const marker = view.getUint8(at + 1);
    // The picture itself begins: no more segments.
    if (marker === 0xda) return null;
    const length = view.getUint16(at + 2);
    const isExif = marker === 0xe1 && length >= 16 && view.getUint32(at + 4) === 0x45786966;
    if (isExif) return new DataView(view.buffer, view.byteOffset + at + 10, length - 8);
    at += 2 + length;
  }
  return null;
}

function readTags(tiff: Tiff): PhotoTags {
  const main = tiff.directory(tiff.firstDirectory);
  const exif = tiff.directoryAt(main, tag.exifDirectory);
  const gps = tiff.directoryAt(main, tag.gpsDirectory);
  const taken = tiff.text(exif, tag.dateTimeOriginal) ?? tiff.text(main, tag.dateTime);
  return { takenAt: taken === null ? null : isoTime(taken), gps: place(tiff, gps) };
}

/** "2031:05:02 09:30:00" as ISO 8601. Cameras without a set clock write blanks or zeros. */
function isoTime(written: string): string | null {
  const [, year, month, day, time] = /^(\d{4}):(\d\d):(\d\d) (\d\d:\d\d:\d\d)$/.exec(written.trim()) ?? [];
  const iso = `${year}-${month}-${day}T${time}`;
  return year === undefined || Number.isNaN(Date.parse(`${iso}Z`)) || year === '0000' ? null : iso;
}

function place(tiff: Tiff, gps: Directory): LonLat | null {
  const lat = degrees(tiff.rationals(gps, tag.latitude), tiff.text(gps, tag.latitudeRef), 'S');
  const lon = degrees(tiff.rationals(gps, tag.longitude), tiff.text(gps, tag.longitudeRef), 'W');
  return lat === null || lon === null || Math.abs(lat) > 90 || Math.abs(lon) > 180 ? null : [lon, lat];
}

/** Degrees, minutes and seconds as degrees. */
function degrees(parts: readonly number[], ref: string | null, negative: string): number | null {
  const [deg, min = 0, sec = 0] = parts;
  if (deg === undefined) return null;
  const value = deg + min / 60 + sec / 3600;
  if (!Number.isFinite(value)) return null;
  return ref?.trim().toUpperCase() === negative ? -value : value;
}

interface Entry {
  readonly type: number;
  readonly count: number;
  /** Where its value, or the offset of its value, stands. */
  readonly at: number;
}

type Directory = ReadonlyMap<number, Entry>;

/** More entries than any camera writes. */
const mostEntries = 500;

/** The few parts of TIFF 6.0 that Exif needs. Reading past the end throws a RangeError. */
class Tiff {
  readonly #view: DataView;
  readonly #little: boolean;

  constructor(view: DataView) {
    this.#view = view;
    this.#little = view.getUint16(0) === 0x4949;
  }

  get firstDirectory(): number {
    return this.#view.getUint32(4, this.#little);
  }

  directory(offset: number): Directory {
    const entries = new Map<number, Entry>();
    const count = Math.min(mostEntries, this.#view.getUint16(offset, this.#little));
    for (let i = 0; i < count; i++) {
      const at = offset + 2 + i * 12;
      entries.set(this.#view.getUint16(at, this.#little), {
        type: this.#view.getUint16(at + 2, this.#little),
        count: this.#view.getUint32(at + 4, this.#little),
        at: at + 8,
      });
    }
    return entries;
  }

  /** The directory that a tag points to; an empty one without the tag. */
  directoryAt(from: Directory, number: number): Directory {
    const entry = from.get(number);
    return entry ? this.directory(this.#view.getUint32(entry.at, this.#little)) : new Map();
  }

  text(from: Directory, number: number): string | null {
    const entry = from.get(number);
    if (entry?.type !== 2 || entry.count > 1000) return null;
    const start = entry.count > 4 ? this.#view.getUint32(entry.at, this.#little) : entry.at;
    let text = '';
    for (let i = 0; i < entry.count; i++) {
      const code = this.#view.getUint8(start + i);
      if (code === 0) break;
      text += String.fromCharCode(code);
    }
    return text;
  }

  rationals(from: Directory, number: number): number[] {
    const entry = from.get(number);
    if (entry?.type !== 5 || entry.count > 10) return [];
    const start = this.#view.getUint32(entry.at, this.#little);
    return Array.from(
      { length: entry.count },
      (_, i) =>
        this.#view.getUint32(start + i * 8, this.#little) / this.#view.getUint32(start + i * 8 + 4, this.#little),
    );
  }
}
