import type { PackOptions } from '../../api/packOptions.ts';
import type { Project } from '../../model/project.ts';
import type { TakeOff } from '../../quantities/types.ts';
import type { CrossingRow } from '../../record/crossingRegister.ts';
import type { Survey, TestSheet } from '../../survey/types.ts';
import type { TextPagesInput } from '../flow/textPages.ts';

/** The dark modules of a QR code, row by row, without its quiet zone. The printer that owns the encoder supplies it. */
export type MakeQr = (text: string) => readonly (readonly boolean[])[];

/** All that a handover pack is made from. */
export interface PackInput extends TextPagesInput {
  readonly project: Project;
  readonly survey: Survey;
  readonly options: PackOptions;
  readonly testSheets: readonly TestSheet[];
  readonly crossings: readonly CrossingRow[];
  /** What was built, counted; null where materials are not asked for. */
  readonly takeOff: TakeOff | null;
  readonly makeQr: MakeQr;
  /** Bytes of a photo (JPEG), or null where the file does not have it. */
  readonly photoBytes: (blobId: string) => Uint8Array | null;
}
