import { type SectionMarks, sectionMarks } from '../../../core/drawing/strokes/sectionPatterns.ts';

/** How a section is told from its neighbours: by its letter first, then the marks on its line, then its colour. */
export interface SectionStyle {
  readonly marks: SectionMarks;
  readonly colour: string;
}

/**
 * The colours of M. Okabe and K. Ito, "Color Universal Design", 2008, which people with any of the common kinds of
 * colour blindness tell apart; their black is the ink of the line itself. Neighbours in the list differ most.
 */
const colours: readonly string[] = ['#0072b2', '#e69f00', '#009e73', '#cc79a7', '#56b4e9', '#d55e00', '#f0e442'];

/** The marks are those of the printed sheets. With eight of them and seven colours a pair comes again after 56 sections. */
export function sectionStyle(index: number): SectionStyle {
  return { marks: sectionMarks(index), colour: colours[index % colours.length]! };
}
