import { hasAlpha, type PngHeader, readPngHeader, rowBytes } from '../../../core/exchange/image/png/pngHeader.ts';
import { type PngColours, PngDamaged, rowToRgba, unfilter } from '../../../core/exchange/image/png/pngRows.ts';
import { message } from '../../../core/words/message.ts';
import { BlockFile } from './blockFile.ts';
import { damagedPicture, PictureProblem, type PictureReader, stripPx } from './reader.ts';
import { wholeReader } from './wholeReader.ts';

export async function pngReader(file: Blob): Promise<PictureReader> {
  const blocks = new BlockFile(file);
  const header = readPngHeader(await blocks.read(0, 33));
  if (!header) throw new PictureProblem(damagedPicture);
  const { colours, dataAt } = await readColours(blocks);
  const opaque = !hasAlpha(header, colours.transparency);
  if (header.interlaced)
    return wholeReader(
      file,
      header,
      { opaque, turned: false },
      message('window.background.pictures.atOnce.interlaced'),
    );
  return {
    widthPx: header.widthPx,
    heightPx: header.heightPx,
    opaque,
    place: null,
    async *strips() {
      try {
        yield* stripsOf(rowsOf(blocks, dataAt), header, colours);
      } catch (error) {
        throw error instanceof PngDamaged || error instanceof TypeError ? new PictureProblem(damagedPicture) : error;
      }
    },
  };
}

const longestColours = 4096;

/** Palette and transparency, and where the pixels begin. */
async function readColours(blocks: BlockFile): Promise<{ colours: PngColours; dataAt: number }> {
  let palette: Uint8Array | null = null;
  let transparency: Uint8Array | null = null;
  for (let at = 8; ; ) {
    const { type, length } = await chunkAt(blocks, at);
    if (type === 'IDAT') return { colours: { palette, transparency }, dataAt: at };
    if ((type === 'PLTE' || type === 'tRNS') && length <= longestColours) {
      const content = (await blocks.read(at + 8, length)).slice();
      if (type === 'PLTE') palette = content;
      else transparency = content;
    }
    if (type === 'IEND') throw new PictureProblem(damagedPicture);
    at += 12 + length;
  }
}

async function chunkAt(blocks: BlockFile, at: number): Promise<{ type: string; length: number }> {
  const head = await blocks.read(at, 8);
  if (head.length < 8) throw new PictureProblem(damagedPicture);
  const length = new DataView(head.buffer, head.byteOffset).getUint32(0);
  return { type: String.fromCharCode(...head.subarray(4)), length };
}

/** The pixels' bytes, unpacked by the browser as they are asked for. */
function rowsOf(blocks: BlockFile, dataAt: number): ReadableStreamDefaultReader<Uint8Array<ArrayBuffer>> {
  let at = dataAt;
  let left = 0;
  const packed = new ReadableStream<Uint8Array<ArrayBuffer>>({
    async pull(controller) {
      while (left === 0) {
        const { type, length } = await chunkAt(blocks, at);
        if (type !== 'IDAT') return controller.close();
        at += 8;
        left = length;
        if (left === 0) at += 4;
      }
      const piece = await blocks.read(at, Math.min(left, 1 << 20));
      if (piece.length === 0) return controller.error(new PictureProblem(damagedPicture));
      at += piece.length;
      left -= piece.length;
      // The checksum is not looked at: what is packed has its own.
      if (left === 0) at += 4;
      controller.enqueue(piece.slice());
    },
  });
  return packed.pipeThrough(new DecompressionStream('deflate')).getReader();
}

async function* stripsOf(
  unpacked: ReadableStreamDefaultReader<Uint8Array<ArrayBuffer>>,
  header: PngHeader,
  colours: PngColours,
) {
  const { widthPx, heightPx } = header;
  const lineBytes = 1 + rowBytes(header);
  let line = new Uint8Array(lineBytes);
  let before = new Uint8Array(lineBytes);
  let filled = 0;
  let row = 0;
  let strip = new ImageData(widthPx, Math.min(stripPx, heightPx));
  let topPx = 0;
  while (row < heightPx) {
    const { value, done } = await unpacked.read();
    if (done) throw new PngDamaged();
    for (let at = 0; at < value.length && row < heightPx; ) {
      const taken = Math.min(lineBytes - filled, value.length - at);
      line.set(value.subarray(at, at + taken), filled);
      at += taken;
      filled += taken;
      if (filled < lineBytes) continue;
      unfilter(line[0]!, line.subarray(1), before.subarray(1), header);
      rowToRgba(line.subarray(1), header, colours, strip.data, (row - topPx) * widthPx * 4);
      [line, before] = [before, line];
      filled = 0;
      row += 1;
      if (row - topPx < strip.height) continue;
      yield { topPx, heightPx: strip.height, image: await createImageBitmap(strip) };
      topPx = row;
      if (row < heightPx) strip = new ImageData(widthPx, Math.min(stripPx, heightPx - row));
    }
  }
  await unpacked.cancel();
}
