import qrcode from 'qrcode-generator';

/** The modules of a QR code that holds `text`, medium error correction (15 %), the smallest version that does. */
export function qrModules(text: string): boolean[][] {
  const code = qrcode(0, 'M');
  code.addData(text, 'Byte');
  code.make();
  const count = code.getModuleCount();
  return Array.from({ length: count }, (_, row) =>
    Array.from({ length: count }, (_, column) => code.isDark(row, column)),
  );
}
